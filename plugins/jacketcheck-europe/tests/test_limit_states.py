"""Limit states on an invented pier: what each variant makes of them."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from jacketcheck_europe.limit_states._bolt_holes import (
    bearing_of_plate,
    hole_distances,
    shear_of_bolt,
    sleeve_at_bolts,
)
from jacketcheck_europe.limit_states.added_bars import (
    added_bar_development,
    added_bar_lap,
    lap_clamping,
)
from jacketcheck_europe.limit_states.column_shear import column_shear, jacket_shear
from jacketcheck_europe.limit_states.displacement import displacement_capacity, hinge_hoops
from jacketcheck_europe.limit_states.footing_anchorage import added_bar_anchorage
from jacketcheck_europe.limit_states.grout_interface import grout_interface
from jacketcheck_europe.limit_states.seam_bolts import seam_bolt_shear, sleeve_bearing
from jacketcheck_europe.limit_states.seam_detailing import bolt_edge_distance, bolt_spacing
from jacketcheck_europe.limit_states.seam_plates import (
    sleeve_gross_yield,
    sleeve_net_rupture,
    splice_gross_yield,
    splice_net_rupture,
)
from jacketcheck_europe.limit_states.seam_slip import seam_slip
from jacketcheck_europe.partial_factors import RECOMMENDED

from jacketcheck.engine import evaluate
from jacketcheck.host import Host
from jacketcheck.plugin import (
    DomainError,
    Jacket,
    Kind,
    NotEvaluatedError,
    Real,
    Result,
    hoop_demand,
)
from jacketcheck.results import Status

Jackets = dict[str, Jacket]


def step(row: Result, symbol: str) -> Real:
    """Value of a step by its symbol."""
    value = next(one.value for one in row.steps if one.symbol == symbol)
    assert not isinstance(value, str)
    return value


# Slip -------------------------------------------------------------------------------------------


def test_slip_by_hand(slip_row: Result) -> None:
    # M24 10.9: 0.7 * 1000 * 353 = 247.1 kN; two surfaces, 0.5, 1.25: 197.7 kN
    assert float(slip_row.capacity) / 1e3 == pytest.approx(197.7, abs=0.1)


def test_a_class_of_another_code_is_never_converted(host: Host, jackets: Jackets) -> None:
    jacket = jackets["foreign surface"]
    with pytest.raises(NotEvaluatedError, match=r"AISC B.*not converted"):
        seam_slip(jacket, RECOMMENDED)
    (row,) = evaluate(jacket, host=host, provisions="europe", only={"seam-slip"})
    assert row.status is Status.NOT_EVALUATED
    assert "EN 1090" in row.notes[0]


def test_only_the_class_of_en_1090_counts(host: Host, jacket: Jacket) -> None:
    catalog = host.catalog
    both = tuple(catalog.faying_class(name) for name in ("AISC B", "EN 1090 D"))
    mixed = replace(jacket, bolts=replace(jacket.bolts, faying_classes=both))
    (row,) = seam_slip(mixed, RECOMMENDED)
    assert step(row, "μ") == 0.2


def test_snug_bolts_hold_nothing_by_design(jackets: Jackets) -> None:
    design, probable = seam_slip(jackets["snug"], RECOMMENDED)
    assert float(design.capacity) == 0.0
    assert design.status is Status.EXCEEDS
    assert probable.kind is Kind.REPORTED
    # 0.5 * 60 kN * 2
    assert float(probable.capacity) == pytest.approx(60e3, rel=1e-12)


def test_preload_is_not_above_what_the_product_is_tightened_to(jacket: Jacket) -> None:
    loose = replace(jacket, bolts=replace(jacket.bolts, pretension=200e3))
    (row,) = seam_slip(loose, RECOMMENDED)
    assert step(row, "F_p,C") == 200e3


# Bolts ------------------------------------------------------------------------------------------


def test_bolt_shear_by_hand(jacket: Jacket) -> None:
    # shank of M24, 10.9: 0.6 * 1000 * 452.4 / 1.25 = 217.2 kN in each of two planes
    (row,) = seam_bolt_shear(jacket, RECOMMENDED)
    assert float(row.capacity) / 1e3 == pytest.approx(2.0 * 217.15, rel=1e-4)


def test_bolts_of_another_standard_count_as_the_class_they_reach(jacket: Jacket) -> None:
    foreign = replace(jacket, bolts=replace(jacket.bolts, tensile_strength=1034.0))
    (row,) = seam_bolt_shear(foreign, RECOMMENDED)
    assert step(row, "f_ub") == 1000.0
    assert "another standard" in row.notes[0]
    weak = replace(jacket, bolts=replace(jacket.bolts, tensile_strength=600.0))
    with pytest.raises(DomainError, match="800"):
        seam_bolt_shear(weak, RECOMMENDED)


def test_unequal_plates_load_one_plane_more(jacket: Jacket) -> None:
    splice = replace(jacket.splice, inside_thickness=6.0)
    (uneven,) = seam_bolt_shear(replace(jacket, splice=splice), RECOMMENDED)
    share = float(np.asarray(step(uneven, "k_p")))
    # (20 + 12)/(20 + 12 + 20 + 6): the thinner plate lies nearer to the sleeve
    assert share == pytest.approx(32.0 / 58.0, rel=1e-12)
    plane = float(shear_of_bolt(jacket, RECOMMENDED))
    assert float(uneven.capacity) == pytest.approx(plane / share, rel=1e-12)


def test_slots_count_from_their_ends(jackets: Jackets) -> None:
    slotted = jackets["glued, slotted"]
    slot = slotted.sleeve.hole
    plain = hole_distances(jackets["preloaded"], jackets["preloaded"].sleeve.hole)
    found = hole_distances(slotted, slot)
    longer = float(np.subtract(slot.along, slot.across))
    assert longer > 0.0
    assert float(found.hole) == float(slot.across)
    assert float(plain.seam_edge - found.seam_edge) == pytest.approx(longer / 2.0, rel=1e-9)
    assert float(plain.gauge - found.gauge) == pytest.approx(longer, rel=1e-9)
    assert float(plain.end) == float(found.end)


def test_a_single_lap_with_one_bolt_bears_less(jackets: Jackets) -> None:
    jacket = jackets["outside only"]
    alone = replace(jacket, bolts=replace(jacket.bolts, columns=1, seam_edge_distance=100.0))
    found = bearing_of_plate(alone, sleeve_at_bolts(alone), RECOMMENDED)
    # 1.5 * 470 * 24 * 20 / 1.25
    assert float(found.end) == pytest.approx(1.5 * 470.0 * 24.0 * 20.0 / 1.25, rel=1e-12)
    (row,) = sleeve_bearing(alone, RECOMMENDED)
    (rule,) = [one.expression for one in row.steps if one.symbol == "F_b,end"]
    assert "single lap" in rule


# Plates -----------------------------------------------------------------------------------------


def test_category_c_is_for_preloaded_bolts(jackets: Jackets) -> None:
    for rule in (sleeve_net_rupture, splice_net_rupture):
        assert len(rule(jackets["preloaded"], RECOMMENDED)) == 2
        assert len(rule(jackets["snug"], RECOMMENDED)) == 1


def test_sleeve_by_hand(jacket: Jacket) -> None:
    (gross,) = sleeve_gross_yield(jacket, RECOMMENDED)
    rupture, category_c = sleeve_net_rupture(jacket, RECOMMENDED)
    # S355 of 20 mm has 345 and 470 MPa; strip of 110 mm with a hole of 26 mm
    assert float(gross.capacity) == pytest.approx(345.0 * 20.0, rel=1e-12)
    net = 84.0 / 110.0
    assert float(rupture.capacity) == pytest.approx(0.9 * 470.0 * 20.0 * net / 1.25, rel=1e-12)
    assert float(category_c.capacity) == pytest.approx(345.0 * 20.0 * net, rel=1e-12)
    assert float(gross.demand) == float(hoop_demand(jacket).force)


def test_one_sided_plates_bend(jackets: Jackets) -> None:
    (both,) = splice_gross_yield(jackets["preloaded"], RECOMMENDED)
    (one,) = splice_gross_yield(jackets["outside only"], RECOMMENDED)
    # two plates of 12 mm; one of 40 mm, eccentric by 30 mm: q = 0.75
    assert float(both.capacity) == pytest.approx(2.0 * 12.0 * 355.0, rel=1e-9)
    bent = 40.0 * 345.0 / (np.sqrt(1.0 + 4.0 * 0.75**2) + 1.5)
    assert float(one.capacity) == pytest.approx(bent, rel=1e-9)
    assert "bend" in one.notes[0]


def test_thicker_outer_plates_allow_wider_bolts(jackets: Jackets) -> None:
    def largest(jacket: Jacket) -> float:
        rows = bolt_spacing(jacket, RECOMMENDED)
        return min(float(row.capacity) for row in rows if row.title.startswith("Largest"))

    # outer parts: two plates of 12 mm; sleeve of 20 mm and plate of 40 mm
    assert largest(jackets["preloaded"]) == pytest.approx(14.0 * 12.0, rel=1e-12)
    assert largest(jackets["outside only"]) == 200.0


def test_weathering_steel_has_limits_of_its_own(jacket: Jacket) -> None:
    bare = replace(jacket, sleeve=replace(jacket.sleeve, exposure="weathering"))
    rows = bolt_edge_distance(bare, RECOMMENDED)
    assert {float(row.capacity) for row in rows if row.title.startswith("Largest")} == {125.0}


# Added bars -------------------------------------------------------------------------------------


def test_embedment_by_hand(jacket: Jacket) -> None:
    embedment, breakout = added_bar_anchorage(jacket, RECOMMENDED)
    # C30/37: 0.7 * 0.30 * 30^(2/3) = 2.0276; f_bd = 2.25 * 2.0276 / 1.5 = 3.0414 MPa
    # l_b,rqd = 28/4 * 575/3.0414 = 1323.4; c_d over 6 φ: α_2 = 0.7
    assert float(embedment.demand) == pytest.approx(0.7 * 1323.4, rel=1e-3)
    assert breakout.kind is Kind.REPORTED


def test_breakout_counts_unless_precluded(jackets: Jackets) -> None:
    bond, breakout = added_bar_anchorage(jackets["glued, slotted"], RECOMMENDED)
    assert breakout.kind is Kind.LIMIT
    # 9 * π * 28 * 480 = 380.0 kN for one bar alone, 0.85/(1.5 * 1.2) of its share
    assert float(step(bond, "N⁰_Rk,p")) == pytest.approx(380.0e3, rel=1e-3)
    share = float(np.asarray(step(bond, "k_N")))
    assert float(bond.capacity) == pytest.approx(380.0e3 * share * 0.85 / 1.8, rel=1e-3)
    # 7.7 √30 480^1.5 = 443.5 kN
    assert float(step(breakout, "N⁰_Rk,c")) == pytest.approx(443.5e3, rel=1e-3)


def test_bars_far_apart_need_longer_laps(jacket: Jacket) -> None:
    _, length, offset = added_bar_lap(jacket, RECOMMENDED)
    apart, lap = float(np.asarray(step(length, "Δ"))), float(step(length, "l_0"))
    assert apart > 50.0
    assert offset.kind is Kind.REPORTED
    assert float(offset.demand) == pytest.approx(apart, rel=1e-12)
    assert float(offset.capacity) == 50.0
    assert float(length.demand) == pytest.approx(lap + apart, rel=1e-12)
    (development,) = added_bar_development(jacket, RECOMMENDED)
    # α_6 = 1.5 for all bars lapped at one section
    assert lap == pytest.approx(1.5 * float(development.demand), rel=1e-9)


@pytest.mark.parametrize(
    ("height", "added", "expected"),
    [(100.0, 1340.0, 1240.0), (40.0, 1340.0, 1280.0), (700.0, 1000.0, 300.0), (900.0, 800.0, 0.0)],
)
def test_laps_begin_above_gap_and_fractures(
    jacket: Jacket, height: float, added: float, expected: float
) -> None:
    """Gap of 60 mm; the repair is 1400 mm high, the sleeve begins at its gap."""
    bars = [
        bar if bar.state == "intact" else replace(bar, damage_height=height)
        for bar in jacket.column.bars
    ]
    column = replace(jacket.column, bars=tuple(bars))
    layer = replace(jacket.added_bars, height=added) if jacket.added_bars else None
    own = replace(jacket, column=column, added_bars=layer)
    _, length, _ = added_bar_lap(own, RECOMMENDED)
    assert float(length.capacity) == pytest.approx(expected, rel=1e-12)


def test_bond_of_an_adhesive_is_not_extrapolated(jackets: Jackets) -> None:
    jacket = jackets["glued, slotted"]
    added = jacket.added_bars
    assert added is not None
    twenty, longer = (
        added_bar_anchorage(
            replace(jacket, added_bars=replace(added, embedment=embedment)), RECOMMENDED
        )[0]
        for embedment in (20.0 * 28.0, 30.0 * 28.0)
    )
    assert float(longer.capacity) == pytest.approx(float(twenty.capacity), rel=1e-12)
    assert any("20 bar diameters" in note for note in longer.notes)
    assert not any("20 bar diameters" in note for note in twenty.notes)


def test_strong_grout_counts_up_to_c60(jacket: Jacket) -> None:
    def need(strength: float) -> float:
        own = replace(jacket, grout=replace(jacket.grout, strength=strength))
        (row,) = added_bar_development(own, RECOMMENDED)
        return float(row.demand)

    assert need(60.0) == need(75.0)
    assert need(60.0) < need(40.0)


def test_jacket_over_the_laps(jacket: Jacket) -> None:
    stress, length = lap_clamping(jacket, RECOMMENDED)
    assert stress.kind is Kind.LIMIT
    assert length.kind is Kind.LIMIT
    assert float(length.capacity) == 1400.0 - 60.0
    assert float(length.demand) == pytest.approx(1.5 * float(step(length, "l_0")), rel=1e-12)


def test_without_added_bars_nothing_is_asked(jacket: Jacket) -> None:
    bare = replace(jacket, added_bars=None)
    for rule in (
        added_bar_anchorage,
        added_bar_development,
        added_bar_lap,
        lap_clamping,
        grout_interface,
    ):
        assert [row.kind for row in rule(bare, RECOMMENDED)] == [Kind.NOT_APPLICABLE]


def test_bars_without_a_footing_are_not_evaluated(jacket: Jacket) -> None:
    with pytest.raises(NotEvaluatedError, match="no footing"):
        added_bar_anchorage(replace(jacket, footing=None), RECOMMENDED)


def test_a_smooth_face_rubs_less(jacket: Jacket) -> None:
    (rough,) = grout_interface(jacket, RECOMMENDED)
    (smooth,) = grout_interface(replace(jacket, column_face="smooth"), RECOMMENDED)
    assert step(rough, "μ") == 0.7
    assert step(smooth, "μ") == 0.5
    assert float(smooth.capacity) < float(rough.capacity)


# Column -----------------------------------------------------------------------------------------


def test_column_shear_has_two_methods(jacket: Jacket) -> None:
    existing, pier = column_shear(jacket, RECOMMENDED)
    assert "EN 1998-3" in existing.clause
    assert "EN 1998-2" in pier.clause
    # hoops of 16 mm at 100 mm: π/2 * 201.06/100 * z * 500/1.15, over 1.25
    lever = float(np.asarray(step(pier, "z")))
    hoops = np.pi / 2.0 * 201.06 / 100.0 * lever * 500.0 / 1.15 / 1.25
    assert float(pier.capacity) == pytest.approx(hoops, rel=1e-4)


def test_inside_the_jacket_the_column_counts_as_degraded(jacket: Jacket) -> None:
    existing, _ = column_shear(jacket, RECOMMENDED)
    (inside,) = jacket_shear(jacket, RECOMMENDED)
    assert float(step(inside, "V_R")) <= float(step(existing, "V_R"))
    # at most 0.5 * π/2 * 20 * 345 * 1620, and no more than the seams leave
    most = 0.25 * np.pi * 20.0 * 345.0 * 1620.0
    left = float(step(inside, "σ_h"))
    assert left < 0.5 * 345.0
    assert float(step(inside, "V_j")) == pytest.approx(most * left / (0.5 * 345.0), rel=1e-9)


def test_strong_seams_leave_the_jacket_half_of_its_yield(jacket: Jacket) -> None:
    strong = replace(
        jacket,
        bolts=replace(
            jacket.bolts,
            pretension=5.0 * np.asarray(jacket.bolts.pretension),
            shear_stress=5.0 * np.asarray(jacket.bolts.shear_stress),
            tensile_strength=5.0 * np.asarray(jacket.bolts.tensile_strength),
        ),
        splice=replace(
            jacket.splice,
            steel=replace(jacket.splice.steel, yield_strength=2e3, tensile_strength=3e3),
        ),
        sleeve=replace(jacket.sleeve, steel=replace(jacket.sleeve.steel, tensile_strength=3e3)),
    )
    (inside,) = jacket_shear(strong, RECOMMENDED)
    assert float(step(inside, "V_j")) == pytest.approx(
        0.25 * np.pi * 20.0 * 345.0 * 1620.0, rel=1e-9
    )


def test_a_squat_column_is_not_evaluated(host: Host, jacket: Jacket) -> None:
    squat = replace(jacket, column=replace(jacket.column, height=3500.0))
    rows = evaluate(squat, host=host, provisions="europe", only={"column-shear"})
    assert [row.status for row in rows] == [Status.NOT_EVALUATED]
    assert "above 2" in rows[0].notes[0]


def test_displacement_of_both_curvatures(jackets: Jackets) -> None:
    for name, hinges in (("preloaded", 1.0), ("glued, slotted", 2.0)):
        jacket = jackets[name]
        against, buckles, beside = displacement_capacity(jacket, RECOMMENDED)
        assert float(against.demand) == 90.0
        span = float(step(against, "L_rep"))
        assert span == pytest.approx((8000.0 - 1400.0) / hinges, rel=1e-12)
        # 0.10 L + 0.015 * 500 * 25
        assert float(step(against, "L_p,rep")) == pytest.approx(0.1 * span + 187.5, rel=1e-12)
        plastic = hinges * span * float(step(against, "θ_p,rep"))
        assert float(step(against, "d_u,rep")) > plastic
        assert buckles.kind is Kind.LIMIT
        assert buckles.title == "Displacement at which bars buckle"
        assert beside.kind is Kind.REPORTED
        assert float(beside.capacity) == float(against.capacity)


def test_without_a_demand_there_is_no_verdict(jacket: Jacket) -> None:
    quiet = replace(jacket, demands=replace(jacket.demands, displacement=None))
    against, _, beside = displacement_capacity(quiet, RECOMMENDED)
    assert against.kind is Kind.NOT_EVALUATED
    assert beside.kind is Kind.REPORTED


def test_hoops_restrain_the_bars_of_the_hinge(jacket: Jacket) -> None:
    (row,) = hinge_hoops(jacket, RECOMMENDED)
    # hoops at 100 mm; bars of 25 mm need them at 5 * 25 at most
    assert (float(row.demand), float(row.capacity)) == (100.0, 125.0)
    wide = replace(jacket.column, ties=replace(jacket.column.ties, spacing=130.0))
    (row,) = hinge_hoops(replace(jacket, column=wide), RECOMMENDED)
    assert row.status is Status.EXCEEDS
