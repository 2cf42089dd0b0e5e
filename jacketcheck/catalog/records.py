"""Catalogue entries: frozen records in N, mm and MPa, each with the source of its figures."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

__all__ = [
    "Bar",
    "BoltProduct",
    "BoltSize",
    "FayingClass",
    "PlateSteel",
    "RebarSteel",
]


@dataclass(frozen=True, slots=True)
class Bar:
    """A reinforcing bar size.

    Attributes
    ----------
    name
        Catalogue name, e.g. ``No. 11``, ``25M``, ``EN 32``.
    diameter
        Nominal diameter [mm].
    area
        Nominal area [mm²].
    source
        Standard that tabulates the size.
    """

    name: str
    diameter: float
    area: float
    source: str


@dataclass(frozen=True, slots=True)
class RebarSteel:
    """A reinforcing steel.

    Attributes
    ----------
    name
        Catalogue name, e.g. ``ASTM A706 Grade 60``.
    yield_strength, tensile_strength
        Specified minimum values [MPa].
    expected_yield, expected_tensile
        Expected values for seismic evaluation [MPa].
    hardening_strain
        Onset of strain hardening by bar diameter: pairs (largest diameter [mm], strain).
    ultimate_strain
        Reduced ultimate tensile strain by bar diameter: pairs (largest diameter [mm], strain).
    overstrength
        Factor on the plastic moment of members reinforced with this steel.
    elastic_modulus
        Young's modulus [MPa].
    source
        Where the figures stand.
    """

    name: str
    yield_strength: float
    tensile_strength: float
    expected_yield: float
    expected_tensile: float
    hardening_strain: tuple[tuple[float, float], ...]
    ultimate_strain: tuple[tuple[float, float], ...]
    overstrength: float
    elastic_modulus: float
    source: str


@dataclass(frozen=True, slots=True)
class PlateSteel:
    """A structural plate steel: specified minimum yield and tensile strength [MPa]."""

    name: str
    yield_strength: float
    tensile_strength: float
    source: str
    max_thickness: float | None = None


@dataclass(frozen=True, slots=True)
class BoltSize:
    """A bolt diameter of a product.

    Attributes
    ----------
    name
        Designation as written in the input, e.g. ``7/8 in`` or ``M24``.
    diameter
        Nominal diameter [mm].
    tensile_stress_area
        Area in the threads [mm²].
    pretension
        Minimum pretension [N]; None where the standard gives none.
    holes
        Hole dimension by hole type [mm]: ``standard``, ``oversized``; slots give width and length
        as ``short-slot-width``, ``short-slot-length``, ``long-slot-width``, ``long-slot-length``.
    min_edge_distance
        Least edge distance for a standard hole [mm].
    """

    name: str
    diameter: float
    tensile_stress_area: float
    pretension: float | None
    holes: Mapping[str, float]
    min_edge_distance: float
    entering_clearance: float | None = None
    socket_diameter: float | None = None


@dataclass(frozen=True, slots=True)
class BoltProduct:
    """A bolt product (standard and grade) with its sizes.

    Attributes
    ----------
    tensile_strength
        Specified tensile strength used in design [MPa].
    shear_stress_included, shear_stress_excluded
        Nominal shear stress with threads included in / excluded from the shear plane [MPa].
    tensile_stress
        Nominal tensile stress on the nominal area [MPa].
    galvanizing_allowed
        Whether hot-dip galvanizing is permitted.
    """

    name: str
    tensile_strength: float
    yield_strength: float
    shear_stress_included: float
    shear_stress_excluded: float
    tensile_stress: float
    sizes: Mapping[str, BoltSize]
    source: str
    pretension_source: str
    galvanizing_allowed: bool = True
    aliases: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class FayingClass:
    """A faying-surface class, always named together with its code.

    Attributes
    ----------
    code, letter
        ``AISC`` and ``B``; written ``AISC B`` in the input.
    slip_coefficient
        Mean slip coefficient of the class.
    preparation
        Surface preparation the class stands for.
    same_as
        Classes of other codes that stand for the same preparation, e.g. ``("AASHTO B",)``.
    """

    code: str
    letter: str
    slip_coefficient: float
    preparation: str
    source: str
    same_as: tuple[str, ...] = field(default=())

    @property
    def name(self) -> str:
        """Code and letter, e.g. ``AISC B``."""
        return f"{self.code} {self.letter}"
