"""Bolt products and their sizes, in N, mm and MPa."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal, TypeAlias

import numpy as np

from jacketcheck.catalog.assembly_rules import AssemblyRules
from jacketcheck.catalog.bands import Bands, band_value, bands_are_ordered
from jacketcheck.catalog.entries import Entries, Sourced, require_figures
from jacketcheck.errors import CatalogError
from jacketcheck.mechanics._arguments import HoleType
from jacketcheck.mechanics._arrays import Floats, Real

__all__ = ["Assembly", "BoltProduct", "BoltSize"]

_ROUNDING = 1e-9
"""Part of a step by which conversion may have moved a length."""

Assembly: TypeAlias = Literal["heavy hex", "twist-off"]

_SCALARS = (
    "diameter",
    "thread_pitch",
    "tensile_stress_area",
    "pretension",
    "min_edge_distance",
    "nut_width",
    "nut_height",
    "head_height",
    "washer_diameter",
    "washer_thickness",
    "grip_allowance",
    "tightening_clearance",
    "entering_clearance",
    "socket_diameter",
    "transition_length",
)
_HOLES = (
    "standard",
    "oversized",
    "short-slot-width",
    "short-slot-length",
    "long-slot-width",
    "long-slot-length",
)
_INCREMENTS = (
    "oversized",
    "short-slot",
    "short-slot-along-edge",
    "long-slot",
    "long-slot-along-edge",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class BoltSize(Sourced):
    """A bolt diameter of a product, with its hole, nut and washer.

    Attributes
    ----------
    name
        Designation as written in the input, e.g. ``7/8 in`` or ``M24``.
    diameter
        Nominal diameter [mm].
    thread_pitch
        Pitch of the thread [mm].
    tensile_stress_area
        Area in the threads [mm²].
    pretension
        Minimum pretension [N]; None where the standard gives none.
    holes
        Hole dimension by hole type [mm]: ``standard``, ``oversized``; slots give width and length
        as ``short-slot-width``, ``short-slot-length``, ``long-slot-width``, ``long-slot-length``.
    min_edge_distance
        Least edge distance for a standard hole [mm].
    edge_increments
        What is added to it for other holes [mm]: ``oversized``; ``short-slot`` and ``long-slot``
        for a slot that points at the edge, ``short-slot-along-edge`` and ``long-slot-along-edge``
        for one that runs along it.
    nut_width
        Width across flats of the nut, and of a hexagon head [mm].
    nut_height, head_height
        Heights [mm].
    washer_diameter, washer_thickness
        Outside diameter and thickness of the hardened washer [mm].
    thread_lengths
        Thread length by bolt length: pairs (longest bolt [mm], thread length [mm]).
    grip_allowance
        What a bolt must be longer than its grip, without washers [mm]; None where the length
        follows from nut height and protrusion.
    tightening_clearance, entering_clearance
        From bolt centre line to an obstruction, so that the wrench fits and so that the bolt can
        be entered [mm]; None where nothing is published.
    socket_diameter
        Outside diameter of the standard socket [mm]; None where nothing is published.
    transition_length
        Length over which the thread runs out into the shank [mm]; None where nothing is published.
    """

    name: str
    diameter: float
    thread_pitch: float
    tensile_stress_area: float
    pretension: float | None
    holes: Mapping[str, float] = field(hash=False)
    min_edge_distance: float
    edge_increments: Mapping[str, float] = field(hash=False)
    nut_width: float
    nut_height: float
    head_height: float
    washer_diameter: float
    washer_thickness: float
    thread_lengths: Bands
    grip_allowance: float | None = None
    tightening_clearance: float | None = None
    entering_clearance: float | None = None
    socket_diameter: float | None = None
    transition_length: float | None = None

    def __post_init__(self) -> None:
        """Check the figures, and that each hole lets the bolt through."""
        kind = "bolt size"
        figures = {name: getattr(self, name) for name in _SCALARS}
        require_figures(kind, self.name, self.source, {**figures, **self.holes})
        for field_name, keys in (("holes", _HOLES), ("edge_increments", _INCREMENTS)):
            if set(getattr(self, field_name)) != set(keys):
                raise CatalogError(kind, self.name, f"must have {field_name} {', '.join(keys)}")
        if min(self.holes.values()) <= self.diameter:
            raise CatalogError(kind, self.name, "has a hole that is not larger than the bolt")
        if not all(increment >= 0.0 for increment in self.edge_increments.values()):
            raise CatalogError(kind, self.name, "has edge_increments below zero")
        if not bands_are_ordered(tuple(longest for longest, _ in self.thread_lengths)):
            raise CatalogError(kind, self.name, "has thread_lengths that do not ascend, or none")

    def thread_length(self, bolt_length: Real) -> Real:
        """Thread length of a bolt [mm], scalar or array; DomainError beyond the longest bolt."""
        return band_value(self.thread_lengths, bolt_length, name="bolt length")

    def hole_size(self, kind: HoleType) -> tuple[float, float]:
        """Dimensions of a hole along and across the force [mm]."""
        if kind in {"standard", "oversized"}:
            return self.holes[kind], self.holes[kind]
        slot, _, direction = kind.rpartition("-")
        width, length = self.holes[f"{slot}-width"], self.holes[f"{slot}-length"]
        return (length, width) if direction == "parallel" else (width, length)


@dataclass(frozen=True, slots=True, kw_only=True)
class BoltProduct(Sourced):
    """A bolt product (standard and grade) with its sizes.

    Attributes
    ----------
    name
        Catalogue name, e.g. ``ASTM F3125 A325``.
    tensile_strength, yield_strength
        Specified strengths used in design [MPa].
    shear_stress_included, shear_stress_excluded
        Nominal shear stress with threads included in / excluded from the shear plane [MPa].
    tensile_stress
        Nominal tensile stress on the nominal area [MPa].
    sizes
        Sizes by designation.
    length_increments
        Stocked lengths: pairs (longest bolt [mm], step between lengths [mm]).
    assembly
        Whether the bolt is tightened by its nut or head, or carries a spline that shears off.
    galvanizing_allowed
        Whether hot-dip galvanizing is permitted.
    length_tolerances
        What a bolt may be shorter than its nominal length: pairs (longest bolt [mm], amount [mm]);
        empty where the sizes' grip allowance covers it.
    rules
        Parts that go with the bolt, marks, installation and reuse; None where nothing is known.
    """

    name: str
    tensile_strength: float
    yield_strength: float
    shear_stress_included: float
    shear_stress_excluded: float
    tensile_stress: float
    sizes: Entries[BoltSize] = field(hash=False)
    length_increments: Bands
    assembly: Assembly = "heavy hex"
    galvanizing_allowed: bool = True
    length_tolerances: Bands = ()
    rules: AssemblyRules | None = None

    def __post_init__(self) -> None:
        """Check the figures, and that there is a size."""
        figures = {
            "tensile_strength": self.tensile_strength,
            "yield_strength": self.yield_strength,
            "shear_stress_included": self.shear_stress_included,
            "shear_stress_excluded": self.shear_stress_excluded,
            "tensile_stress": self.tensile_stress,
        }
        require_figures("bolt product", self.name, self.source, figures)
        if not self.sizes:
            raise CatalogError("bolt product", self.name, "has no sizes")
        if not bands_are_ordered(tuple(longest for longest, _ in self.length_increments)):
            raise CatalogError(
                "bolt product", self.name, "has length_increments that do not ascend, or none"
            )
        tolerances = tuple(longest for longest, _ in self.length_tolerances)
        if tolerances and not bands_are_ordered(tolerances):
            raise CatalogError("bolt product", self.name, "has length_tolerances out of order")

    @property
    def pretension_source(self) -> str:
        """Where the minimum pretension of the sizes stands."""
        return next(iter(self.sizes.values())).source_of("pretension")

    def size(self, name: str) -> BoltSize:
        """Size by designation, in any case; raises CatalogError with the known sizes."""
        return self.sizes.find(name)

    @property
    def stocked_lengths(self) -> Floats:
        """All lengths that are stocked [mm], ascending.

        A band of lengths holds the multiples of its step above the band before, and its end.

        Examples
        --------
        >>> from jacketcheck.catalog import built_in_catalog
        >>> product = built_in_catalog().bolt_product("EN 14399 HR 8.8")
        >>> product.stocked_lengths[18:22].tolist()
        [95.0, 100.0, 110.0, 120.0]
        """
        shortest, bands = 0.0, []
        for longest, step in self.length_increments:
            first = np.floor(shortest / step + _ROUNDING) + 1.0
            last = np.floor(longest / step + _ROUNDING)
            bands.append(np.arange(first, last + 1.0) * step)
            shortest = longest
        lengths: Floats = np.concatenate(bands)
        return lengths
