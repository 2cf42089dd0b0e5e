"""Catalogue entries: frozen records in N, mm and MPa, each with the source of its figures.

A record checks itself when it is made, so that an entry of a plug-in cannot bring a NaN, a figure
without a source or bands out of order.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import NamedTuple

import numpy as np

from jacketcheck.catalog.bands import Bands, band_index, band_value, bands_are_ordered
from jacketcheck.catalog.bolt_records import BoltProduct, BoltSize
from jacketcheck.catalog.entries import Sourced, require_figures
from jacketcheck.errors import CatalogError
from jacketcheck.mechanics._arrays import Real

__all__ = [
    "Bar",
    "BoltProduct",
    "BoltSize",
    "FayingClass",
    "PlateSteel",
    "RebarSteel",
    "StrengthBand",
    "Strengths",
]


@dataclass(frozen=True, slots=True, kw_only=True)
class Bar(Sourced):
    """A reinforcing bar size.

    Attributes
    ----------
    name
        Catalogue name, e.g. ``No. 11``, ``25M``, ``EN 32``.
    diameter
        Nominal diameter [mm].
    area
        Nominal area [mm²].
    """

    name: str
    diameter: float
    area: float

    def __post_init__(self) -> None:
        """Check the figures."""
        figures = {"diameter": self.diameter, "area": self.area}
        require_figures("bar size", self.name, self.source, figures)


@dataclass(frozen=True, slots=True, kw_only=True)
class RebarSteel(Sourced):
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
    """

    name: str
    yield_strength: float
    tensile_strength: float
    expected_yield: float
    expected_tensile: float
    hardening_strain: Bands
    ultimate_strain: Bands
    overstrength: float
    elastic_modulus: float

    def __post_init__(self) -> None:
        """Check the figures and the order of the bands."""
        kind = "reinforcing steel"
        figures = {
            "yield_strength": self.yield_strength,
            "tensile_strength": self.tensile_strength,
            "expected_yield": self.expected_yield,
            "expected_tensile": self.expected_tensile,
            "overstrength": self.overstrength,
            "elastic_modulus": self.elastic_modulus,
        }
        require_figures(kind, self.name, self.source, figures)
        for field_name in ("hardening_strain", "ultimate_strain"):
            bands: Bands = getattr(self, field_name)
            _require_bands(kind, self.name, field_name, tuple(limit for limit, _ in bands))
            for _, strain in bands:
                require_figures(kind, self.name, self.source, {field_name: strain})

    def hardening_strain_at(self, diameter: Real) -> Real:
        """Onset of strain hardening for a bar diameter [mm]; DomainError beyond the largest bar."""
        return band_value(self.hardening_strain, diameter, name="bar diameter")

    def ultimate_strain_at(self, diameter: Real) -> Real:
        """Reduced ultimate strain for a bar diameter [mm]; DomainError beyond the largest bar."""
        return band_value(self.ultimate_strain, diameter, name="bar diameter")


class StrengthBand(NamedTuple):
    """Specified minimum strengths [MPa] of plates up to `max_thickness` [mm]."""

    max_thickness: float
    yield_strength: float
    tensile_strength: float


class Strengths(NamedTuple):
    """Specified minimum yield and tensile strength [MPa], shaped like the thickness asked for."""

    yield_strength: Real
    tensile_strength: Real


@dataclass(frozen=True, slots=True, kw_only=True)
class PlateSteel(Sourced):
    """A structural plate steel.

    Attributes
    ----------
    name
        Catalogue name, e.g. ``ASTM A36`` or ``EN S355``.
    bands
        Specified minimum strengths by plate thickness, thinnest band first.
    expected_ratio
        Expected over specified minimum yield strength.
    elastic_modulus
        Young's modulus [MPa].
    weathering
        Whether the steel may stay unpainted in the open.
    """

    name: str
    bands: tuple[StrengthBand, ...]
    expected_ratio: float
    elastic_modulus: float
    weathering: bool = False

    def __post_init__(self) -> None:
        """Check the figures and the order of the bands."""
        kind = "plate steel"
        figures = {"expected_ratio": self.expected_ratio, "elastic_modulus": self.elastic_modulus}
        require_figures(kind, self.name, self.source, figures)
        for band in self.bands:
            require_figures(kind, self.name, self.source, band._asdict())
        _require_bands(kind, self.name, "bands", tuple(band.max_thickness for band in self.bands))

    @property
    def max_thickness(self) -> float:
        """Thickest plate [mm] for which strengths are specified."""
        return self.bands[-1].max_thickness

    def strengths(self, thickness: Real) -> Strengths:
        """Specified minimum strengths [MPa] of a plate.

        Parameters
        ----------
        thickness
            Plate thickness [mm], above zero; scalar or array.

        Returns
        -------
        Strengths
            Yield and tensile strength [MPa], shaped like `thickness`.

        Raises
        ------
        DomainError
            If a plate is thicker than the standard covers, or not of positive thickness.
        """
        index = band_index(
            tuple(band.max_thickness for band in self.bands),
            thickness,
            name=f"thickness of {self.name} plate",
        )
        picked = np.asarray([band[1:] for band in self.bands])[index]
        if picked.ndim == 1:
            return Strengths(float(picked[0]), float(picked[1]))
        return Strengths(picked[..., 0], picked[..., 1])


@dataclass(frozen=True, slots=True, kw_only=True)
class FayingClass(Sourced):
    """A faying-surface class, always named together with its code.

    Attributes
    ----------
    code, letter
        ``AISC`` and ``B``; written ``AISC B`` in the input.
    slip_coefficient
        Mean slip coefficient of the class.
    preparation
        Surface preparation the class stands for.
    keep_unpainted
        What must stay free of paint, and when.
    same_as
        Classes of other codes that a surface of this class also belongs to, e.g. ``("AASHTO B",)``.
    """

    code: str
    letter: str
    slip_coefficient: float
    preparation: str
    keep_unpainted: str = ""
    same_as: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        """Check the figure, and that code and letter are both there."""
        if not (self.code.strip() and self.letter.strip()):
            raise CatalogError("faying class", self.name, "needs a code and a letter")
        figures = {"slip_coefficient": self.slip_coefficient}
        require_figures("faying class", self.name, self.source, figures)

    @property
    def name(self) -> str:
        """Code and letter, e.g. ``AISC B``."""
        return f"{self.code} {self.letter}"


def _require_bands(kind: str, name: str, field_name: str, limits: tuple[float, ...]) -> None:
    if not bands_are_ordered(limits):
        raise CatalogError(kind, name, f"has {field_name} that do not ascend, or none")
