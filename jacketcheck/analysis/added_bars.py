"""Added bars: what they develop in the footing and in the repair.

Nothing here counts on the sleeve's pressure: the pressure follows from the strain of the base, and
the base's strength from these bars.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from jacketcheck.analysis.memo import remembered
from jacketcheck.errors import NotEvaluatedError
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.jacket.jacket_parts import AddedBarLayer
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
from jacketcheck.mechanics.bar_bond_laws import grouted_bar_law
from jacketcheck.mechanics.bar_steel import BarSteels
from jacketcheck.mechanics.bond_development import (
    DevelopmentCurve,
    bonded_length,
    development_curve,
)
from jacketcheck.mechanics.bond_law import BondLaw
from jacketcheck.mechanics.development_length import reinforcement_grade_factor
from jacketcheck.mechanics.noncontact_lap import effective_lap_length, lap_offset

__all__ = [
    "FootingAnchorage",
    "LapLength",
    "RepairAnchorage",
    "added_bar_stress",
    "footing_anchorage",
    "lap_length",
    "repair_anchorage",
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
    """Lap of the added bars with the column bars: offset of the two, and length left [mm]."""

    offset: Real
    available: Real


@dataclass(frozen=True, eq=False)
class RepairAnchorage:
    """Development of the added bars in the repair, from their top downwards.

    Attributes
    ----------
    law
        Local bond law in the grout, without pressure.
    offset
        Greatest distance from an added bar to the column bar beside it [mm].
    available_length
        Length above the footing less that offset [mm].
    needed_length
        Length that develops the target stress [mm].
    """

    law: BondLaw
    offset: Real
    available_length: Real
    needed_length: Real


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
    stress = held if added.breakout_precluded else np.minimum(held, breakout)
    return FootingAnchorage(target, grouted, adhesive, stress, breakout)


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
    return LapLength(offset, effective_lap_length(added.height, offset=offset))


@remembered
def repair_anchorage(jacket: Jacket) -> RepairAnchorage:
    """Development of the added bars in the repair."""
    added, lap = _added(jacket), lap_length(jacket)
    law = grouted_bar_law(
        jacket.grout.strength,
        clear_rib_spacing=np.multiply(jacket.judgement.rib_spacing_ratio, added.layer.diameter),
    )
    return RepairAnchorage(
        law=law,
        offset=lap.offset,
        available_length=lap.available,
        needed_length=bonded_length(
            added.layer.steel.expected_yield,
            bar_diameter=added.layer.diameter,
            law=law,
            steel=_steels(added),
        ),
    )


def added_bar_stress(jacket: Jacket, heights: Floats) -> Floats:
    """Stress that each added bar can develop at some heights above the footing [MPa]; one design.

    Parameters
    ----------
    jacket
        One design.
    heights
        Heights [mm], shape (n,).

    Returns
    -------
    ndarray
        Shape (n,): the smaller of what the footing holds and what bond develops from the bar's top
        downwards, the lap's offset deducted; zero without added bars.
    """
    if jacket.added_bars is None:
        return np.zeros(heights.size)
    length = float(repair_anchorage(jacket).available_length) - heights
    developed: Floats = _development(jacket).stress_over(length[None, :])[0]
    return np.minimum(developed, float(footing_anchorage(jacket).stress))


@remembered
def _development(jacket: Jacket) -> DevelopmentCurve:
    """Stress that an added bar develops over any length in the repair; one design."""
    added = _added(jacket)
    return development_curve(
        bar_diameter=added.layer.diameter,
        law=repair_anchorage(jacket).law,
        steel=_steels(added),
    )


def _added(jacket: Jacket) -> AddedBarLayer:
    if jacket.added_bars is None:
        raise NotEvaluatedError("there are no added bars")
    return jacket.added_bars


def _steels(added: AddedBarLayer) -> BarSteels:
    steel = added.layer.steel
    return BarSteels(
        steel.expected_yield,
        steel.expected_tensile,
        steel.hardening_strain,
        steel.ultimate_strain,
        steel.elastic_modulus,
    )
