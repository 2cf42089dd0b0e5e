"""What a jacket takes: steel, bolts, holes in the footing, bars to be chipped free.

Plates count without deducting holes. Nothing here is a limit state; sizing compares designs by it.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np

from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics._arrays import Real

__all__ = ["STEEL_DENSITY", "Quantities", "quantities"]

STEEL_DENSITY: Final = 7.85e-6
"""Density of steel [kg/mm³], 490 lb/ft³ (ASTM A6/A6M, from memory)."""

_PROTRUSION: Final = 0.3
"""Bolt beyond its nut, in diameters (common practice, no published source)."""


@dataclass(frozen=True, eq=False)
class Quantities:
    """Steel and work of a jacket; numbers, or arrays over designs.

    Attributes
    ----------
    sleeve_mass, splice_mass, bolt_mass, added_bar_mass
        Half-shells; splice plates of both seams; bolts with nuts and washers; added bars [kg].
    bolt_count
        Bolts of the whole jacket.
    hole_count, drilled_length
        Holes in the footing for added bars, and their length together [m].
    chipped_bar_count, chipped_length
        Damaged bars that are chipped free, and their length within the repair together [m].
    """

    sleeve_mass: Real
    splice_mass: Real
    bolt_mass: Real
    added_bar_mass: Real
    bolt_count: Real
    hole_count: Real
    drilled_length: Real
    chipped_bar_count: int
    chipped_length: Real

    @property
    def steel_mass(self) -> Real:
        """All steel that the repair adds [kg]."""
        return np.add(self.sleeve_mass, self.splice_mass) + np.add(
            self.bolt_mass, self.added_bar_mass
        )


def quantities(jacket: Jacket) -> Quantities:
    """Steel and work of a jacket, of one design or of many.

    Notes
    -----
    A bolt is taken as a cylinder through grip, two washers, nut and a protrusion of 0.3 diameters,
    with a hexagonal head and a nut of the catalogue's widths and heights; a damaged bar counts as
    chipped free over the whole height of the repair.

    Examples
    --------
    >>> from jacketcheck.inputs import read_text
    >>> from jacketcheck.jacket import build_jacket
    >>> from jacketcheck.starter import starter_text
    >>> jacket = build_jacket(read_text(starter_text("si")).base)
    >>> found = quantities(jacket)
    >>> bool(found.steel_mass > found.sleeve_mass > 0.0)
    True
    """
    added = jacket.added_bars
    count, embedment, height, area = (
        (0.0, 0.0, 0.0, 0.0)
        if added is None
        else (added.layer.count, added.embedment, added.height, added.layer.area)
    )
    chipped = sum(
        1 for bar in jacket.column.bars if bar.state != "intact" and bar.surface == "chipped"
    )
    return Quantities(
        sleeve_mass=_sleeve_mass(jacket),
        splice_mass=_splice_mass(jacket),
        bolt_mass=np.multiply(jacket.bolts.count, _one_bolt(jacket)),
        added_bar_mass=STEEL_DENSITY * np.multiply(count, area) * np.add(height, embedment),
        bolt_count=jacket.bolts.count,
        hole_count=count,
        drilled_length=np.multiply(count, embedment) / 1000.0,
        chipped_bar_count=chipped,
        chipped_length=chipped * np.asarray(jacket.repair_height)[()] / 1000.0,
    )


def _sleeve_mass(jacket: Jacket) -> Real:
    sleeve = jacket.sleeve
    circumference = np.pi * np.add(sleeve.inner_diameter, sleeve.thickness)
    length = circumference - 2.0 * np.asarray(sleeve.seam_gap)
    return STEEL_DENSITY * length * sleeve.thickness * sleeve.height


def _splice_mass(jacket: Jacket) -> Real:
    splice = jacket.splice
    section = np.multiply(splice.width, splice.total_thickness)
    return 2.0 * STEEL_DENSITY * section * jacket.sleeve.height


def _one_bolt(jacket: Jacket) -> Real:
    """Mass of one bolt with its nut and two washers [kg]."""
    bolts = jacket.bolts
    shank = bolts.area
    hexagon = np.sqrt(3.0) / 2.0 * np.square(bolts.nut_width)
    length = (
        np.add(jacket.grip, 2.0 * np.asarray(bolts.washer_thickness))
        + bolts.nut_height
        + np.multiply(_PROTRUSION, bolts.diameter)
    )
    nut = (hexagon - shank) * bolts.nut_height
    washer = (np.pi / 4.0 * np.square(bolts.washer_diameter) - shank) * bolts.washer_thickness
    volume: Real = shank * length + hexagon * bolts.head_height + nut + 2.0 * washer
    return np.multiply(STEEL_DENSITY, volume)
