"""How much of everything: steel, bolts, grout, and what a crane lifts."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from jacketcheck.catalog.catalog import Catalog
from jacketcheck.errors import DomainError
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.schedule.assembly import Assembly, assembly_of
from jacketcheck.schedule.counts import Allowances, bolt_counts, designation
from jacketcheck.schedule.length import bolt_length
from jacketcheck.shop.patterns import FlatPattern

__all__ = ["STEEL_DENSITY", "USUAL_WASTE_PERCENT", "Quantity", "quantities"]

STEEL_DENSITY: Final = 7.85e-6
"""Density of steel [kg/mm³] (EN 1991-1-1:2002 Table A.4, 77 to 78.5 kN/m³; AISC Manual 16th ed.
(2023), 490 lb/ft³)."""
USUAL_WASTE_PERCENT: Final = 10.0
"""Grout lost in mixing and pumping [%] (common practice, no published source)."""

_DENSITY: Final = "density 7850 kg/m³: EN 1991-1-1:2002 Table A.4; AISC Manual 16th ed. (2023)"
_GEOMETRY: Final = "geometry"
_NOMINAL: Final = "nominal dimensions of shank, head, nut and washers; " + _DENSITY
_CUSTOM: Final = "common practice, no published source"


@dataclass(frozen=True, slots=True)
class Quantity:
    """One amount.

    Attributes
    ----------
    item
        Of what.
    value
        How much, in `unit`.
    unit
        Internal unit: kg, mm3, mm2, mm, 1.
    basis
        What it consists of.
    source
        Where the figures behind it stand.
    """

    item: str
    value: float
    unit: str
    basis: str
    source: str


def quantities(
    jacket: Jacket,
    patterns: Sequence[FlatPattern],
    *,
    catalog: Catalog,
    allowances: Allowances | None = None,
    waste_percent: float = USUAL_WASTE_PERCENT,
) -> tuple[Quantity, ...]:
    """Amounts of a jacket of one design.

    Parameters
    ----------
    jacket
        The jacket.
    patterns
        Its flat patterns, the half-shell first.
    catalog
        Where its bolt stands.
    allowances
        Bolts to order on top of what is installed.
    waste_percent
        Grout to order on top of what is filled [%].

    Raises
    ------
    DomainError
        If the waste is not from 0 to 100 percent.
    """
    if not 0.0 <= waste_percent <= 100.0:
        raise DomainError("waste_percent", waste_percent, "from 0 to 100")
    assembly = assembly_of(jacket, catalog)
    return (
        *_steel(patterns),
        *_bolts(jacket, assembly, Allowances() if allowances is None else allowances),
        *_lifting(jacket, patterns, assembly),
        *_grout(jacket, waste_percent),
        *_bars(jacket),
        *_surfaces(patterns),
    )


def plate_mass(pattern: FlatPattern) -> float:
    """Mass of one plate less its holes [kg]."""
    return pattern.net_area * pattern.thickness * STEEL_DENSITY


def _steel(patterns: Sequence[FlatPattern]) -> list[Quantity]:
    rows = []
    for pattern in patterns:
        name = pattern.title.lower()
        one = plate_mass(pattern)
        rows += [
            Quantity(f"{name}: pieces", float(pattern.pieces), "1", "one pattern", _GEOMETRY),
            Quantity(f"{name}: mass of one", one, "kg", "less holes", _DENSITY),
            Quantity(f"{name}: mass of all", pattern.pieces * one, "kg", "less holes", _DENSITY),
        ]
    total = sum(pattern.pieces * plate_mass(pattern) for pattern in patterns)
    return [*rows, Quantity("plates: mass of all", total, "kg", "less holes", _DENSITY)]


def assembly_mass(assembly: Assembly) -> float | None:
    """Mass of one bolt with nut and washers [kg]; None where no such bolt is stocked.

    Head and nut are full hexagons, the shank is full over its length: some percent too much.
    """
    size = assembly.size
    try:
        length = bolt_length(assembly).ordered
    except DomainError:
        return None
    shank = math.pi * size.diameter**2 / 4.0
    hexagon = math.sqrt(3.0) / 2.0 * size.nut_width**2
    ring = math.pi * (size.washer_diameter**2 - size.diameter**2) / 4.0
    volume = shank * length + hexagon * size.head_height
    volume += (hexagon - shank) * size.nut_height
    volume += sum(max(ring, 0.0) * washer.thickness for washer in assembly.washers or ())
    return volume * STEEL_DENSITY


def _bolts(jacket: Jacket, assembly: Assembly, allowances: Allowances) -> list[Quantity]:
    counts = bolt_counts(jacket, assembly, allowances)
    name = designation(assembly)
    rows = [
        Quantity("bolts installed", float(counts.installed), "1", name, "repair file"),
        Quantity("bolts to order", float(counts.installed + counts.spares), "1",
                 f"with {counts.spares} for tests and loss, see the bolt schedule", _CUSTOM),
    ]  # fmt: skip
    mass = assembly_mass(assembly)
    if mass is not None:
        rows.append(
            Quantity("bolts installed: mass", counts.installed * mass, "kg",
                     "with nuts and washers", _NOMINAL)
        )  # fmt: skip
    return rows


def _lifting(jacket: Jacket, patterns: Sequence[FlatPattern], assembly: Assembly) -> list[Quantity]:
    shell, *plates = patterns
    bare = plate_mass(shell)
    loaded = bare + sum(plate.pieces * plate_mass(plate) for plate in plates)
    bolt = assembly_mass(assembly)
    basis = "half-shell with the splice plates of both seams"
    if bolt is not None:
        loaded += 0.5 * float(jacket.bolts.count) * bolt
        basis += " and half of the bolts"
    note = "without lifting gear; lugs and stiffness in handling are not checked here"
    return [
        Quantity("lifting mass of each half, bare", bare, "kg", note, _DENSITY),
        Quantity("lifting mass of one half, at most", loaded, "kg", basis, _DENSITY),
    ]


def _grout(jacket: Jacket, waste_percent: float) -> list[Quantity]:
    outer, inner = float(jacket.sleeve.inner_diameter), float(jacket.column.diameter)
    height = float(jacket.repair_height)
    annulus = math.pi / 4.0 * (outer**2 - inner**2) * height
    rows = [
        Quantity("grout: annulus", annulus, "mm3", "from the footing to the top of the repair, gap "
                 "under the sleeve formed; spalled and chipped concrete is extra", _GEOMETRY)
    ]  # fmt: skip
    filled = annulus
    added = jacket.added_bars
    if added is not None:
        count, area = float(added.layer.count), float(added.layer.area)
        bars = count * area * float(added.height)
        rows.append(Quantity("grout: less added bars", -bars, "mm3", "", _GEOMETRY))
        filled -= bars
        if added.bond_strength is None:
            hole = math.pi / 4.0 * float(added.hole_diameter) ** 2
            holes = count * (hole - area) * float(added.embedment)
            rows.append(
                Quantity("grout: holes in the footing", holes, "mm3", "around the bars", _GEOMETRY)
            )
            filled += holes
    waste = filled * waste_percent / 100.0
    return [
        *rows,
        Quantity("grout: waste", waste, "mm3", f"{waste_percent:g} % of the above", _CUSTOM),
        Quantity("grout: to order", filled + waste, "mm3",
                 "inside plates and bolt ends not deducted", _GEOMETRY),
    ]  # fmt: skip


def _bars(jacket: Jacket) -> list[Quantity]:
    added = jacket.added_bars
    if added is None:
        return []
    count = float(added.layer.count)
    length = float(added.height) + float(added.embedment)
    mass = count * float(added.layer.area) * length * STEEL_DENSITY
    name = f"{added.layer.size}, {added.layer.steel.name}"
    return [
        Quantity("added bars", count, "1", name, "repair file"),
        Quantity("added bars: length of one", length, "mm", "height + embedment", "repair file"),
        Quantity("added bars: mass", mass, "kg", "", f"{added.layer.source}; {_DENSITY}"),
    ]


def _surfaces(patterns: Sequence[FlatPattern]) -> list[Quantity]:
    """Area to be prepared as faying surface, on all plates."""
    area = 0.0
    for pattern in patterns:
        for strip in pattern.strips:
            faces = 2.0 if " and " in strip.faces else 1.0
            area += pattern.pieces * faces * (strip.end - strip.start) * pattern.height
    return [Quantity("faying surface to prepare", area, "mm2", "all plates, holes not deducted",
                     _GEOMETRY)]  # fmt: skip
