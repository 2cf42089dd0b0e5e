"""Added bars: what they develop in the footing and in the repair.

Nothing here counts on the sleeve's pressure. Whether the seams hold the grout together follows from
the strain of the base, and that strain from these bars; it is found as if they held.
"""

from __future__ import annotations

import functools
from dataclasses import dataclass

import numpy as np

from jacketcheck.analysis.damaged_bars import anchorage_start, debonding_bars
from jacketcheck.analysis.memo import remembered, remembered_for_all
from jacketcheck.catalog.bond_models import BondConditions, grouted_law
from jacketcheck.errors import NotEvaluatedError
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.jacket.jacket_parts import AddedBarLayer, AnchorReinforcement
from jacketcheck.mechanics._arrays import Floats, Real
from jacketcheck.mechanics.added_bar_anchorage import (
    AdhesiveAnchorage,
    GroutedAnchorage,
    adhesive_anchorage,
    grouted_anchorage,
)
from jacketcheck.mechanics.adhesive_anchors import (
    ANCHOR_STRENGTH_REDUCTION,
    SEISMIC_ANCHOR_FACTOR,
)
from jacketcheck.mechanics.anchor_reinforcement import (
    ANCHOR_REINFORCEMENT_FACTOR,
    anchor_reinforcement_strength,
)
from jacketcheck.mechanics.bar_steel import BarSteels
from jacketcheck.mechanics.bond_development import DevelopmentCurve, development_curve
from jacketcheck.mechanics.development_length import reinforcement_grade_factor
from jacketcheck.mechanics.noncontact_lap import effective_lap_length, lap_offset
from jacketcheck.results import Steps

__all__ = [
    "FootingAnchorage",
    "LapLength",
    "add_clear_distance",
    "add_lap_length",
    "add_struts_length",
    "added_bar_conditions",
    "added_bar_steels",
    "added_bar_stress",
    "footing_anchorage",
    "lap_length",
    "reinforced_strength",
]


@dataclass(frozen=True, eq=False)
class FootingAnchorage:
    """Anchorage of the added bars in the holes of the footing.

    Attributes
    ----------
    target_stress
        Stress to be anchored: the expected yield strength [MPa].
    grouted
        Lengths for bars in grout; None for an adhesive.
    adhesive
        Bond and breakout by the anchor method: of an adhesive, or of breakout alone for grout.
    stress
        What the footing holds [MPa]; breakout does not count where it is precluded.
    breakout_stress
        What a cone of concrete holds, with its reduction factors [MPa].
    """

    target_stress: Real
    grouted: GroutedAnchorage | None
    adhesive: AdhesiveAnchorage
    stress: Real
    breakout_stress: Real


@dataclass(frozen=True, eq=False)
class LapLength:
    """Lap of the added bars with the column bars beside them.

    Attributes
    ----------
    start, end
        Heights above the footing between which the bars stand side by side and are held [mm]: from
        the gap, or from the highest fracture of a column bar, to the top of the added bars, no
        higher than the repair.
    offset, clear_distance
        Greatest distance from an added bar to the column bar beside it, between their axes and
        between their faces [mm].
    available
        Length left when struts at 45 degrees have crossed the offset, at least zero [mm].
    """

    start: Real
    end: Real
    offset: Real
    clear_distance: Real
    available: Real

    @property
    def length(self) -> Real:
        """Length over which the bars stand side by side, at least zero [mm]."""
        return np.maximum(np.subtract(self.end, self.start), 0.0)

    @property
    def bonded_top(self) -> Real:
        """Height at which an added bar begins to take force from the bars beside it [mm]."""
        return np.subtract(self.end, self.offset)


@remembered
def footing_anchorage(jacket: Jacket) -> FootingAnchorage:
    """Anchorage of the added bars in the footing."""
    added, footing = _added(jacket), jacket.footing
    if footing is None:
        raise NotEvaluatedError("no footing is given for the added bars")
    layer, target = added.layer, added.layer.steel.expected_yield
    adhesive = adhesive_anchorage(
        # bond of grouted bars is judged by length; the anchor method is asked for breakout only
        10.0 if added.bond_strength is None else added.bond_strength,
        bar_diameter=layer.diameter,
        embedment=added.embedment,
        footing_strength=footing.concrete_strength,
        circle_radius=layer.circle_radius,
        count=layer.count,
        breakout_precluded=added.breakout_precluded,
    )
    factor = ANCHOR_STRENGTH_REDUCTION * SEISMIC_ANCHOR_FACTOR
    breakout = np.multiply(factor, adhesive.breakout_strength) / layer.area
    if added.bond_strength is not None:
        held = np.multiply(factor, adhesive.bond_strength) / layer.area
        grouted = None
    else:
        grouted = _grouted(jacket, target)
        held = np.multiply(target, added.embedment) / grouted.required_length
    if added.anchor_reinforcement is not None:
        crossing = np.divide(reinforced_strength(added.anchor_reinforcement), layer.total_area)
        stress = np.minimum(held, crossing)
    else:
        stress = held if added.breakout_precluded else np.minimum(held, breakout)
    return FootingAnchorage(target, grouted, adhesive, stress, breakout)


def reinforced_strength(bars: AnchorReinforcement) -> Real:
    """Design tension of all anchor reinforcement along the added bars [N]."""
    nominal = anchor_reinforcement_strength(
        np.multiply(bars.count, bars.area),
        yield_strength=bars.steel.yield_strength,
        angle=bars.angle,
    )
    return np.multiply(ANCHOR_REINFORCEMENT_FACTOR, nominal)


def _grouted(jacket: Jacket, target: Real) -> GroutedAnchorage:
    added, footing = _added(jacket), jacket.footing
    if footing is None:
        raise NotEvaluatedError("no footing is given for the added bars")
    return grouted_anchorage(
        added.layer.diameter,
        bar_stress=target,
        yield_strength=added.layer.steel.expected_yield,
        footing_strength=footing.concrete_strength,
        grout_strength=jacket.grout.strength,
        cover_dimension=np.divide(added.layer.spacing, 2.0),
        grade_factor=reinforcement_grade_factor(added.layer.steel.yield_strength),
    )


@remembered
def lap_length(jacket: Jacket) -> LapLength:
    """Lap of the added bars with the column bars beside them."""
    added, column = _added(jacket), jacket.column.layer
    offset = lap_offset(
        np.subtract(added.layer.circle_radius, column.circle_radius), bar_spacing=column.spacing
    )
    # in the gap nothing holds what the struts push outwards; below its fracture a bar takes nothing
    starts = [anchorage_start(bar, jacket) for bar in debonding_bars(jacket).groups]
    start = functools.reduce(np.maximum, starts, jacket.sleeve.gap)
    end = np.minimum(added.height, jacket.repair_height)
    above = np.maximum(np.subtract(end, start), 0.0)
    radii = np.add(added.layer.diameter, column.diameter) / 2.0
    clear = np.maximum(np.subtract(offset, radii), 0.0)
    return LapLength(start, end, offset, clear, effective_lap_length(above, offset=offset))


def add_lap_length(jacket: Jacket, steps: Steps) -> Real:
    """Write down over which height added bars and column bars lap, and return it [mm]."""
    added, lap = _added(jacket), lap_length(jacket)
    steps.add("h_a", "height of the added bars", added.height, "mm", "input added_bars.height")
    steps.add("H", "height of repair", jacket.repair_height, "mm", "input repair.height")
    steps.add("g", "gap, in which nothing holds the struts", jacket.sleeve.gap, "mm",
              "input repair.gap")  # fmt: skip
    steps.add("z_0", "g, or the highest fracture, below which a bar takes nothing", lap.start, "mm",
              "input repair.gap, damage")  # fmt: skip
    return steps.add("l_side", "max(min(h_a, H) − z_0, 0)", lap.length, "mm", "geometry")


def add_clear_distance(jacket: Jacket, steps: Steps) -> Real:
    """Write down the clear distance between lapped bars and return it [mm]."""
    layer, column, lap = _added(jacket).layer, jacket.column.layer, lap_length(jacket)
    steps.add("a", "offset to the column bar beside it", lap.offset, "mm", "geometry")
    steps.figure("d_a", layer.size, layer, "diameter", "mm")
    steps.figure("d_c", column.size, column, "diameter", "mm")
    return steps.add("a_c", "max(a − (d_a + d_c)/2, 0)", lap.clear_distance, "mm", "geometry")


def add_struts_length(jacket: Jacket, steps: Steps) -> Real:
    """Write down the lap that counts when struts have crossed its offset, and return it [mm]."""
    add_lap_length(jacket, steps)
    lap = lap_length(jacket)
    steps.add("a", "offset to the column bar beside it", lap.offset, "mm", "geometry")
    return steps.add("l_s", "max(l_side − a, 0)", lap.available, "mm", "struts at 45°")


def added_bar_conditions(jacket: Jacket) -> BondConditions:
    """What surrounds an added bar in the annulus: grout that is held together, no pressure."""
    added, column = _added(jacket), jacket.column
    layer, diameter = added.layer, np.asarray(added.layer.diameter)
    # half a bar diameter is the least that the splitting equation knows; the rows on room in the
    # annulus ask for more
    least = 0.5 * diameter
    to_sleeve = jacket.sleeve.inner_radius - np.add(layer.circle_radius, least)
    to_column = np.subtract(layer.circle_radius, least) - column.radius
    return BondConditions(
        surface="chipped",
        bar_diameter=diameter,
        clear_rib_spacing=np.multiply(jacket.judgement.rib_spacing_ratio, diameter),
        concrete_strength=column.concrete.expected,
        grout_strength=jacket.grout.strength,
        cover=least,
        grout_cover=np.maximum(np.minimum(to_sleeve, to_column), least),
        half_spacing=np.maximum(np.subtract(layer.spacing, diameter) / 2.0, least),
        crack_width=0.0,
        confining_pressure=0.0,
        splitting_held=True,
    )


def added_bar_stress(
    jacket: Jacket, heights: Floats, curve: DevelopmentCurve | None = None
) -> Floats:
    """Stress that each added bar can develop at some heights above the footing [MPa]; one design.

    Parameters
    ----------
    jacket
        One design.
    heights
        Heights [mm], shape (n,).
    curve
        Stress developed over a length; by default in grout that is held together.

    Returns
    -------
    ndarray
        Shape (n,): the smaller of what the footing holds and what bond develops from the bar's top
        downwards, to the gap at most, the lap's offset deducted; zero without added bars.
    """
    if jacket.added_bars is None:
        return np.zeros(heights.size)
    gap = float(jacket.sleeve.gap)
    length = np.maximum(float(lap_length(jacket).bonded_top) - np.maximum(heights, gap), 0.0)
    found = _development(jacket) if curve is None else curve
    developed: Floats = found.stress_over(length[None, :])[0]
    return np.minimum(developed, float(footing_anchorage(jacket).stress))


@remembered_for_all
def _development(jacket: Jacket) -> DevelopmentCurve:
    """Stress that an added bar develops over any length in grout that is held; one design."""
    added = _added(jacket)
    return development_curve(
        bar_diameter=added.layer.diameter,
        law=grouted_law(added_bar_conditions(jacket)),
        steel=added_bar_steels(added),
    )


def _added(jacket: Jacket) -> AddedBarLayer:
    if jacket.added_bars is None:
        raise NotEvaluatedError("there are no added bars")
    return jacket.added_bars


def added_bar_steels(added: AddedBarLayer) -> BarSteels:
    """Expected stress-strain curve of the added bars, over designs."""
    steel = added.layer.steel
    return BarSteels(
        steel.expected_yield,
        steel.expected_tensile,
        steel.hardening_strain,
        steel.ultimate_strain,
        steel.elastic_modulus,
    )
