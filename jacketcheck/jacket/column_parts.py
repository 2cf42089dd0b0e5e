"""The damaged column inside the jacket.

N, mm, MPa; angles in radians, clockwise from 12 o'clock seen from above.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from jacketcheck.inputs.column import BarState
from jacketcheck.jacket._roles import Figures, label
from jacketcheck.mechanics._arguments import Surface
from jacketcheck.mechanics._arrays import Real

__all__ = ["BarLayer", "ColumnBar", "Concrete", "DamagedColumn", "FootingBlock", "Rebar", "Ties"]


@dataclass(frozen=True, slots=True)
class Concrete(Figures):
    """Concrete or grout.

    Attributes
    ----------
    specified, expected
        Compressive strength f′c and f′ce [MPa].
    elastic_modulus
        Modulus that goes with the expected strength [MPa].
    """

    specified: Real
    expected: Real
    elastic_modulus: Real

    @property
    def expected_source(self) -> str:
        """Where the expected strength comes from."""
        return self.source_of("expected")


@dataclass(frozen=True, slots=True)
class Rebar(Figures):
    """Reinforcing steel of one bar size.

    Attributes
    ----------
    yield_strength, tensile_strength
        Specified minimum strengths [MPa].
    expected_yield, expected_tensile
        Strengths for seismic evaluation [MPa]: measured, or expected by the catalogue.
    hardening_strain, ultimate_strain
        Onset of hardening and reduced ultimate strain [-] for this bar diameter.
    overstrength
        Factor on the plastic moment [-].
    """

    yield_strength: Real
    tensile_strength: Real
    expected_yield: Real
    expected_tensile: Real
    hardening_strain: Real
    ultimate_strain: Real
    elastic_modulus: Real
    overstrength: Real
    name: str = label()


@dataclass(frozen=True, slots=True)
class BarLayer(Figures):
    """Bars of one size and steel, evenly spaced on a circle around the column's axis.

    Attributes
    ----------
    diameter, area
        Nominal diameter [mm] and area of one bar [mm²].
    count
        Number of bars.
    circle_radius
        Radius of the circle through the bar centres [mm].
    first_angle
        Angle of the first bar [rad].
    """

    diameter: Real
    area: Real
    count: Real
    circle_radius: Real
    first_angle: Real
    steel: Rebar
    size: str = label()

    @property
    def spacing(self) -> Real:
        """Distance between neighbouring bar centres along the circle [mm]."""
        return 2.0 * np.pi * self.circle_radius / self.count

    @property
    def total_area(self) -> Real:
        """Area of all bars [mm²]."""
        return self.area * self.count


@dataclass(frozen=True, slots=True)
class ColumnBar:
    """One longitudinal bar and what happened to it.

    Attributes
    ----------
    number
        Counted clockwise, from 1.
    angle
        Clockwise from 12 o'clock seen from above [rad].
    state
        ``intact``, or the worst that was recorded.
    damage_height
        Height of the damage above the footing [mm]; 0 for an intact bar.
    crack_width
        Width of the crack along the bar [mm].
    spalling_depth
        Depth of spalled cover at the bar [mm].
    surface
        Whether the cracked concrete around the bar is removed before grouting.
    record
        Path of the damage record in the input; empty for a bar without one.
    """

    number: int
    angle: float
    state: BarState
    damage_height: Real
    crack_width: Real
    spalling_depth: Real
    surface: Surface
    record: str = label()


@dataclass(frozen=True, slots=True)
class Ties(Figures):
    """Hoops or spiral of the original column; strengths [MPa], lengths [mm]."""

    kind: str
    diameter: Real
    area: Real
    spacing: Real
    core_diameter: Real
    yield_strength: Real
    expected_yield: Real
    ultimate_strain: Real
    elastic_modulus: Real
    size: str = label()


@dataclass(frozen=True, slots=True)
class DamagedColumn:
    """Circular column: diameter, height to contraflexure or soffit and cover [mm]."""

    diameter: Real
    height: Real
    cover: Real
    curvature: str
    concrete: Concrete
    layer: BarLayer
    ties: Ties
    bars: tuple[ColumnBar, ...]

    @property
    def radius(self) -> Real:
        """Radius of the face between column and grout [mm]."""
        return self.diameter / 2.0

    @property
    def gross_area(self) -> Real:
        """Gross area [mm²]."""
        return np.pi * np.square(self.diameter) / 4.0

    @property
    def shear_span(self) -> Real:
        """Footing top to the point of contraflexure [mm]; half the height in double curvature."""
        return self.height / 2.0 if self.curvature == "double" else self.height

    def in_state(self, *states: BarState) -> tuple[ColumnBar, ...]:
        """Bars in any of the given states."""
        return tuple(bar for bar in self.bars if bar.state in states)


@dataclass(frozen=True, slots=True)
class FootingBlock(Figures):
    """What the added bars are anchored in; depth [mm] is None where it was not given.

    The strength is that of cylinders [MPa].
    """

    concrete_strength: Real
    depth: Real | None
