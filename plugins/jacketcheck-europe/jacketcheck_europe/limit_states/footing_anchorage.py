"""Anchorage of the added bars in the holes of the footing: embedment, adhesive and breakout."""

from __future__ import annotations

import numpy as np

from jacketcheck.mechanics.adhesive_anchors import UNCRACKED_BOND_RATIO, ring_area_share
from jacketcheck.plugin import (
    BREAKOUT_OPEN,
    AddedBarLayer,
    FootingBlock,
    Jacket,
    Kind,
    NotEvaluatedError,
    Real,
    Result,
    Steps,
    not_applicable,
    us_added_bar_anchorage,
)
from jacketcheck_europe.editions import EN_1992, EN_1992_4
from jacketcheck_europe.limit_states._anchorage import add_anchorage, add_bar
from jacketcheck_europe.limit_states._rows import resistance_row
from jacketcheck_europe.mechanics import fastenings
from jacketcheck_europe.partial_factors import PartialFactors

__all__ = ["added_bar_anchorage"]

_TITLE = "Anchorage of the added bars in the footing"
_GROUT = (
    "engineering judgement: grout in a roughened and cleaned drilled hole holds the bar as cast "
    "concrete would; a product assessed for post-installed bars has its own bond strength and may "
    "ask for more than the least anchorage length"
)
_ADHESIVE = (
    "factor γ_inst and bond strength of glued bars come from the product's assessment, for seismic "
    "actions of category C1 or C2; bond in uncracked concrete is taken as twice that in cracked "
    "(engineering judgement)"
)
_LONGER = (
    f"embedment above {fastenings.LARGEST_EMBEDMENT:g} bar diameters: bond is counted over that "
    "length only; beyond it use bars in grout, or the product's rules for post-installed bars"
)
_SHORTER = (
    f"embedment below {fastenings.LEAST_EMBEDMENT:g} bar diameters, the least that bond fasteners "
    "are assessed for"
)
_REINFORCED = "anchor reinforcement stands in the place of breakout"
_BREAKOUT = (
    "a cone of concrete breaks out of the footing before the bars yield, unless reinforcement of "
    "the footing takes their tension (added_bars.anchor_reinforcement)"
)


def added_bar_anchorage(jacket: Jacket, factors: PartialFactors) -> list[Result]:
    """Embedment in grout or adhesive, and breakout of the ring of bars."""
    added, footing = jacket.added_bars, jacket.footing
    if added is None:
        return [not_applicable(_TITLE, "no added bars")]
    if footing is None:
        raise NotEvaluatedError("no footing is given for the added bars")
    if added.bond_strength is None:
        held = _grouted(jacket, added, footing, factors)
    else:
        held = _adhesive(added, added.bond_strength, factors)
    rows = [held, _breakout(added, footing, factors)]
    if added.anchor_reinforcement is not None:
        # the steel of EN 1992-4 7.2.1.9 counts 1/1.15, more than the factor 0.75 of these rows
        _held, _cone, *crossing = us_added_bar_anchorage.evaluate(jacket)
        rows += crossing
    return rows


def _grouted(
    jacket: Jacket, added: AddedBarLayer, footing: FootingBlock, factors: PartialFactors
) -> Result:
    steps, layer = Steps(), added.layer
    add_bar(added, steps)
    concrete = steps.add("f_ck", "the weaker of footing and grout",
                         np.minimum(footing.concrete_strength, jacket.grout.strength), "MPa",
                         f"{footing.source_of('concrete_strength')}; "
                         f"{jacket.grout.source_of('strength')}")  # fmt: skip
    half = np.subtract(layer.spacing, layer.diameter) / 2.0
    cover = steps.add("c_d", "half of the clear bar spacing", half, "mm", "geometry")
    need = add_anchorage(added, concrete, cover, factors, steps)
    capacity = steps.add("l", "embedment", added.embedment, "mm", "input added_bars.embedment")
    return resistance_row(
        _TITLE,
        "embedment in grout",
        steps,
        demand=need.anchorage_length,
        capacity=capacity,
        unit="mm",
        clause=f"{EN_1992} 8.4.4",
        factors=factors,
        notes=(_GROUT,),
    )


def _adhesive(added: AddedBarLayer, bond_stress: Real, factors: PartialFactors) -> Result:
    steps, layer = Steps(), added.layer
    clause = f"{EN_1992_4} 7.2.1.6, Table C.3"
    add_bar(added, steps)
    _add_ring(added, steps)
    steps.add("τ_Rk", "characteristic, cracked concrete", bond_stress, "MPa",
              "input added_bars.bond_strength")  # fmt: skip
    counted = steps.add(
        "h_b",
        f"min(h_ef, {fastenings.LARGEST_EMBEDMENT:g} φ), over which bond is counted",
        np.minimum(added.embedment, np.multiply(fastenings.LARGEST_EMBEDMENT, layer.diameter)),
        "mm",
        clause,
    )
    single = steps.add(
        "N⁰_Rk,p",
        "τ_Rk π φ h_b",
        fastenings.bond_resistance(bond_stress, diameter=layer.diameter, embedment=counted),
        "N",
        clause,
    )
    reach = steps.add(
        "c_cr,Np",
        "3.65 φ √(2 τ_Rk) ≤ 1.5 h_b",
        fastenings.bond_reach(
            layer.diameter,
            uncracked_bond_stress=np.multiply(UNCRACKED_BOND_RATIO, bond_stress),
            embedment=counted,
        ),
        "mm",
        clause,
    )
    share = _add_share(added, reach, steps, ("c_cr,Np", "A_p,N", "A⁰_p,N"),
                       f"{clause}, no group factor")  # fmt: skip
    steps.add("N_Rk", "k_N N⁰_Rk,p", share * single, "N", clause)
    capacity = _add_design(steps, share * single, fastenings.BOND_SEISMIC_FACTOR, factors, clause)
    return resistance_row(
        _TITLE,
        "bond of the adhesive",
        steps,
        demand=_add_force(added, steps),
        capacity=capacity,
        unit="N",
        clause=clause,
        factors=factors,
        notes=(_ADHESIVE, *_outside(added)),
    )


def _outside(added: AddedBarLayer) -> tuple[str, ...]:
    """What is said of embedments that no assessment of bond fasteners covers."""
    diameters = np.divide(added.embedment, added.layer.diameter)
    longer = np.any(np.greater(diameters, fastenings.LARGEST_EMBEDMENT))
    shorter = np.any(np.less(diameters, fastenings.LEAST_EMBEDMENT))
    return (*((_LONGER,) if longer else ()), *((_SHORTER,) if shorter else ()))


def _breakout(added: AddedBarLayer, footing: FootingBlock, factors: PartialFactors) -> Result:
    steps = Steps()
    clause = f"{EN_1992_4} 7.2.1.4, Table C.3"
    add_bar(added, steps)
    _add_ring(added, steps)
    steps.figure("f_ck", "footing", footing, "concrete_strength", "MPa")
    steps.add("k_1", "cracked concrete", fastenings.CRACKED_CONE_COEFFICIENT, "1", clause)
    single = steps.add(
        "N⁰_Rk,c",
        "k_1 √f_ck h_ef^1.5, N and mm",
        fastenings.cone_resistance(footing.concrete_strength, embedment=added.embedment),
        "N",
        clause,
    )
    reach = steps.add("c_cr,N", "1.5 h_ef", fastenings.cone_reach(added.embedment), "mm", clause)
    share = _add_share(added, reach, steps, ("c_cr,N", "A_c,N", "A⁰_c,N"), clause)
    steps.add("N_Rk", "k_N N⁰_Rk,c", share * single, "N", clause)
    capacity = _add_design(steps, share * single, fastenings.CONE_SEISMIC_FACTOR, factors, clause)
    if added.anchor_reinforcement is not None:
        note = _REINFORCED
    else:
        note = BREAKOUT_OPEN if added.breakout_precluded else _BREAKOUT
    return resistance_row(
        _TITLE,
        "breakout of the ring of bars",
        steps,
        demand=_add_force(added, steps),
        capacity=capacity,
        unit="N",
        clause=clause,
        factors=factors,
        notes=(note,),
        kind=Kind.LIMIT if note is _BREAKOUT else Kind.REPORTED,
    )


def _add_ring(added: AddedBarLayer, steps: Steps) -> None:
    layer = added.layer
    steps.add("h_ef", "embedment", added.embedment, "mm", "input added_bars.embedment")
    steps.add("n", "bars on the ring", layer.count, "1", "input added_bars.count")
    steps.add("R_b", "radius of the ring", layer.circle_radius, "mm",
              "input added_bars.circle_diameter")  # fmt: skip


def _add_share(
    added: AddedBarLayer, reach: Real, steps: Steps, symbols: tuple[str, str, str], clause: str
) -> Real:
    """Write down the share of its influence area that each bar of the ring has to itself [-]."""
    radius, (distance, area, alone) = added.layer.circle_radius, symbols
    inner = np.maximum(np.subtract(radius, reach), 0.0)
    ring = np.pi * (np.square(np.add(radius, reach)) - np.square(inner))
    steps.add(area, f"π ((R_b + {distance})² − max(R_b − {distance}, 0)²)", ring, "mm2",
              f"{clause}, area of the ring")  # fmt: skip
    steps.add(alone, f"(2 {distance})²", np.square(np.multiply(2.0, reach)), "mm2", clause)
    share = ring_area_share(reach, circle_radius=radius, count=added.layer.count)
    return steps.add("k_N", f"{area}/(n {alone}) ≤ 1", share, "1", clause)


def _add_design(
    steps: Steps, characteristic: Real, seismic: float, factors: PartialFactors, clause: str
) -> Real:
    """Design resistance of one bar under seismic action [N]."""
    steps.add("α_eq", "earthquake, group of bars", seismic, "1", f"{EN_1992_4} Table C.3")
    steps.add("γ_C", "concrete", factors.concrete, "1", f"{EN_1992_4} Table 4.1")
    steps.add("γ_inst", "installation of the product", factors.installation, "1",
              f"{EN_1992_4} Table 4.1")  # fmt: skip
    steps.add("γ_Mc", "γ_C γ_inst", factors.concrete * factors.installation, "1",
              f"{EN_1992_4} Table 4.1")  # fmt: skip
    design = np.multiply(seismic, characteristic) / (factors.concrete * factors.installation)
    return steps.add("N_Rd", "α_eq N_Rk/γ_Mc", design, "N", clause)


def _add_force(added: AddedBarLayer, steps: Steps) -> Real:
    """Force of one bar at its expected yield strength [N]."""
    steel = added.layer.steel
    steps.figure("f_ye", steel.name, steel, "expected_yield", "MPa")
    force = np.multiply(steel.expected_yield, added.layer.area)
    return steps.add("N_Ed", "f_ye A_b", force, "N", "expected yield of one bar")
