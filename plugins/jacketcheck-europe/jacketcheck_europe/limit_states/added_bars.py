"""Added bars in the repair: anchorage in the grout, laps with the column's bars, their clamping."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.plugin import (
    AddedBarLayer,
    Jacket,
    Kind,
    Real,
    Result,
    Steps,
    add_clear_distance,
    add_lap_length,
    add_struts_length,
    clamping_supply,
    lap_hoop_force,
    lap_length,
    not_applicable,
)
from jacketcheck_europe.editions import EN_1992, EN_1993, EN_1998_3
from jacketcheck_europe.limit_states._anchorage import add_anchorage, add_bar, anchorage_need
from jacketcheck_europe.limit_states._rows import add_design_yield, resistance_row
from jacketcheck_europe.mechanics import jackets
from jacketcheck_europe.partial_factors import PartialFactors

__all__ = ["added_bar_development", "added_bar_lap", "lap_clamping"]

_NONE: Final = "no added bars"
_LAP: Final = "Laps of added bars and column bars"
_CLAMPING: Final = "Clamping of the laps of added bars"
_APART: Final = (
    "beyond this clear distance the lap is longer by the distance, as the row above counts"
)
_BY_ANALOGY: Final = (
    "engineering judgement: a rule of EN 1998-3 Annex A, which is for laps of a column's own bars, "
    "taken for added bars beside it"
)


def added_bar_development(jacket: Jacket, factors: PartialFactors) -> list[Result]:
    """Length that anchors the added bars' yield strength in the grout, from their top downwards."""
    title, added = "Development of the added bars in the repair", jacket.added_bars
    if added is None:
        return [not_applicable(title, _NONE)]
    steps = Steps()
    add_bar(added, steps)
    need = add_anchorage(added, *_add_surroundings(jacket, added, steps), factors, steps)
    capacity = add_struts_length(jacket, steps)
    return [
        resistance_row(
            title,
            "grout",
            steps,
            demand=need.anchorage_length,
            capacity=capacity,
            unit="mm",
            clause=f"{EN_1992} 8.4.4",
            factors=factors,
        )
    ]


def added_bar_lap(jacket: Jacket, factors: PartialFactors) -> list[Result]:
    """Hoop force of the noncontact laps against yield of the sleeve, and their length."""
    added = jacket.added_bars
    if added is None:
        return [not_applicable(_LAP, _NONE)]
    return [
        _lap_hoops(jacket, added, factors),
        _lap_length(jacket, added, factors),
        _lap_offset(jacket, added, factors),
    ]


def _lap_hoops(jacket: Jacket, added: AddedBarLayer, factors: PartialFactors) -> Result:
    steps, sleeve = Steps(), jacket.sleeve
    source = "McLean and Smith 1997"
    add_bar(added, steps)
    steps.figure("f_ue", added.layer.steel.name, added.layer.steel, "expected_tensile", "MPa")
    steps.add("n", "added bars", added.layer.count, "1", "input added_bars.count")
    add_struts_length(jacket, steps)
    force = lap_hoop_force(jacket)
    expression = "n A_b f_ue/(2π l_s), times the share of bars in tension at the base"
    demand = steps.add("N_lap", expression, force, "N/mm", source)
    steps.add("t", "sleeve", sleeve.thickness, "mm", "input sleeve.thickness")
    design = add_design_yield(sleeve.steel, factors, steps)
    capacity = steps.add("N_pl,Rd", "t f_yd", np.multiply(sleeve.thickness, design), "N/mm",
                         f"{EN_1993} 6.2.3(2)a")  # fmt: skip
    return resistance_row(
        _LAP,
        "hoop force alone, beside yield of the sleeve",
        steps,
        demand=demand,
        capacity=capacity,
        unit="N/mm",
        clause=f"{source}; {EN_1993} 6.2.3(2)a",
        factors=factors,
    )


def _lap_length(jacket: Jacket, added: AddedBarLayer, factors: PartialFactors) -> Result:
    steps = Steps()
    add_bar(added, steps)
    need = add_anchorage(added, *_add_surroundings(jacket, added, steps), factors, steps, lap=True)
    clause = f"{EN_1992} 8.7.2(3)"
    add_clear_distance(jacket, steps)
    apart = steps.add("Δ", "a_c, or 0 up to min(4 d_a, 50 mm)", _extra_length(jacket, added), "mm",
                      clause)  # fmt: skip
    demand = steps.add("l_need", "l_0 + Δ", np.add(need.lap_length, apart), "mm", clause)
    capacity = add_lap_length(jacket, steps)
    return resistance_row(
        _LAP,
        "length of the laps",
        steps,
        demand=demand,
        capacity=capacity,
        unit="mm",
        clause=f"{EN_1992} 8.7.3",
        factors=factors,
    )


def _lap_offset(jacket: Jacket, added: AddedBarLayer, factors: PartialFactors) -> Result:
    steps, clause = Steps(), f"{EN_1992} 8.7.2(3)"
    clear = add_clear_distance(jacket, steps)
    allowed = steps.add("a_max", "min(4 d_a, 50 mm)", _near(added), "mm", clause)
    return resistance_row(
        _LAP,
        "offset of the bars",
        steps,
        demand=clear,
        capacity=allowed,
        unit="mm",
        clause=clause,
        factors=factors,
        notes=(_APART,),
        kind=Kind.REPORTED,
    )


def _near(added: AddedBarLayer) -> Real:
    """Clear distance up to which lapped bars need no longer lap [mm]."""
    return np.minimum(np.multiply(4.0, added.layer.diameter), 50.0)


def _extra_length(jacket: Jacket, added: AddedBarLayer) -> Real:
    """What bars that do not touch add to their lap [mm]."""
    clear = lap_length(jacket).clear_distance
    return np.where(np.less_equal(clear, _near(added)), 0.0, clear)


def _grout_cover(jacket: Jacket, added: AddedBarLayer) -> Real:
    """Grout between an added bar and the sleeve [mm]."""
    return jacket.sleeve.inner_radius - np.add(
        added.layer.circle_radius, added.layer.diameter / 2.0
    )


def _surroundings(jacket: Jacket, added: AddedBarLayer) -> tuple[Real, Real]:
    """Strength of the grout [MPa], and the least of cover and half of the clear spacing [mm]."""
    half_spacing = np.subtract(added.layer.spacing, added.layer.diameter) / 2.0
    return jacket.grout.strength, np.minimum(half_spacing, _grout_cover(jacket, added))


def _add_surroundings(jacket: Jacket, added: AddedBarLayer, steps: Steps) -> tuple[Real, Real]:
    strength, cover = _surroundings(jacket, added)
    steps.figure("f_ck", "grout", jacket.grout, "strength", "MPa")
    steps.add("c_d", "min(grout to sleeve, half of the clear spacing)", cover, "mm", "geometry")
    return strength, cover


def lap_clamping(jacket: Jacket, factors: PartialFactors) -> list[Result]:
    """Clamping stress that lets the lapped added bars yield, and length of jacket over the lap."""
    added = jacket.added_bars
    if added is None:
        return [not_applicable(_CLAMPING, _NONE)]
    return [_clamping_stress(jacket, added), _jacket_length(jacket, added, factors)]


def _clamping_stress(jacket: Jacket, added: AddedBarLayer) -> Result:
    steps, layer, supply = Steps(), added.layer, clamping_supply(jacket)
    clause = f"{EN_1998_3} A.4.4.4, Eq. A.36"
    add_bar(added, steps)
    steps.figure("f_yL", "expected yield", layer.steel, "expected_yield", "MPa")
    steps.add("n", "added bars", layer.count, "1", "input added_bars.count")
    circle = 2.0 * np.asarray(layer.circle_radius)
    steps.add("D_b", "circle of the bars", circle, "mm", "input added_bars.circle_diameter")
    perimeter = steps.add("p", "π (D_b − φ), along the inside of the bars",
                          np.pi * (circle - layer.diameter), "mm", "geometry")  # fmt: skip
    cover = steps.add("c", "grout to sleeve", _grout_cover(jacket, added), "mm", "geometry")
    # bars that stand farther apart than they are high have no lap; 1 mm shows it
    held = np.maximum(add_struts_length(jacket, steps), 1.0)
    length = steps.add("L_s", "max(l_s, 1 mm)", held, "mm", "geometry")
    demand = steps.add(
        "σ_l",
        "A_b f_yL/{[p/(2 n) + 2 (φ + c)] L_s}",
        jackets.lap_clamping_stress(
            layer.area,
            yield_strength=layer.steel.expected_yield,
            bar_count=layer.count,
            perimeter=perimeter,
            bar_diameter=layer.diameter,
            cover=cover,
            lap_length=length,
        ),
        "MPa",
        clause,
    )
    steps.add("p_ε", f"sleeve at a hoop strain of {jackets.CLAMPING_STRAIN:g}, or as judged",
              supply.at_hoop_strain, "MPa", "input judgement.clamping_strain")  # fmt: skip
    steps.add("p_y", "sleeve at yield", supply.at_yield, "MPa", "thin shell")
    steps.add("p_slip", "seams at slip; not for snug bolts", supply.at_slip, "MPa", "friction")
    capacity = steps.add("p_av", "min(p_ε, p_y, p_slip)", supply.available, "MPa", clause)
    return Result(_CLAMPING, "laps of added bars", demand, capacity, "MPa", clause, steps.lines,
                  (_BY_ANALOGY,))  # fmt: skip


def _jacket_length(jacket: Jacket, added: AddedBarLayer, factors: PartialFactors) -> Result:
    steps = Steps()
    clause = f"{EN_1998_3} A.4.3.3"
    need = anchorage_need(added, *_surroundings(jacket, added), factors)
    steps.add("l_0", "lap length that the added bars need", need.lap_length, "mm",
              f"{EN_1992} 8.7.3")  # fmt: skip
    demand = steps.add("l_j", "1.5 l_0, half as long again as the lap",
                       np.multiply(jackets.JACKET_LENGTH_OVER_LAP, need.lap_length), "mm",
                       clause)  # fmt: skip
    height = steps.add("h_s", "height of the sleeve", jacket.sleeve.height, "mm",
                       "input repair.height less repair.gap")  # fmt: skip
    return resistance_row(
        _CLAMPING,
        "jacket over the laps",
        steps,
        demand=demand,
        capacity=height,
        unit="mm",
        clause=clause,
        factors=factors,
        notes=(_BY_ANALOGY,),
    )
