"""Limit states through the installed entry point, against hand calculation on an invented case."""

from __future__ import annotations

import math
from collections.abc import Callable

import numpy as np
import pytest

from jacketcheck.engine import evaluate
from jacketcheck.host import Host
from jacketcheck.jacket import Jacket
from jacketcheck.jacket.designs import pick, with_values
from jacketcheck.plugin import hoop_demand
from jacketcheck.results import Kind, Result, Status

Rows = Callable[..., dict[str, Result]]
JacketOf = Callable[[str], Jacket]

ROW = "hardest-worked row"
SLIP = "Slip of the seam bolts"
ANCHORAGE = "Anchorage of the added bars in the footing"


def only(rows: dict[str, Result]) -> Result:
    (row,) = rows.values()
    return row


def own_ids(host: Host) -> list[str]:
    return [
        one.limit_state.id
        for one in host.limit_states("india")
        if one.limit_state.provisions == "india"
    ]


def test_every_other_limit_state_is_inherited(host: Host) -> None:
    assert {one.limit_state.id for one in host.limit_states("us")} == {
        one.limit_state.id for one in host.limit_states("india")
    }
    assert len(own_ids(host)) == 15


def test_slip(jacket: Jacket, rows: Rows) -> None:
    found = rows(jacket, "india", "seam-slip")
    nominal = 0.5 * 2 * 0.7 * 800.0 * 353.0  # joint of 150 mm is shorter than 15 d
    ultimate = found[f"{SLIP} @ {ROW}"]
    service = found[f"{SLIP}, factor at service load @ {ROW}"]
    assert ultimate.capacity == pytest.approx(nominal / 1.25, rel=1e-12)
    assert service.capacity == pytest.approx(nominal / 1.10, rel=1e-12)
    assert (ultimate.kind, service.kind) == (Kind.LIMIT, Kind.REPORTED)
    assert ultimate.demand == pytest.approx(float(hoop_demand(jacket).bolt_force), rel=1e-12)


def test_snug_bolts_have_no_capacity_and_a_probable_value(jacket_of: JacketOf, rows: Rows) -> None:
    found = rows(jacket_of("snug"), "india", "seam-slip")
    assert found[f"{SLIP} @ {ROW}"].ratio == math.inf
    assert "snug" in found[f"{SLIP} @ {ROW}"].notes[0]
    probable = found[f"Probable slip load of snug bolts @ {ROW}"]
    assert (probable.kind, probable.capacity) == (Kind.REPORTED, 0.5 * 2 * 40e3)


def test_a_method_without_minimum_tension_is_not_evaluated(jacket_of: JacketOf, rows: Rows) -> None:
    row = only(rows(jacket_of("calibrated wrench"), "india", "seam-slip"))
    assert row.status is Status.NOT_EVALUATED
    assert "part-turn" in row.notes[0]


def test_a_class_of_another_code_is_not_converted(jacket_of: JacketOf, rows: Rows) -> None:
    row = only(rows(jacket_of("no class of this code"), "india", "seam-slip"))
    assert row.status is Status.NOT_EVALUATED
    assert "names AISC B, AASHTO B" in row.notes[0]


def test_bolts_and_plates_they_bear_on(jacket: Jacket, rows: Rows) -> None:
    shear = 800.0 / math.sqrt(3.0) * 2 * 353.0 / 1.25  # grip of 40 mm is shorter than 5 d
    # 26 mm holes: 55/78 = 0.705 and 75/78 - 0.25 = 0.712 in the sleeve, 50/78 in the plates
    sleeve = 2.5 * (55.0 / 78.0) * 24.0 * 16.0 * 410.0 / 1.25
    splice = 2.5 * (50.0 / 78.0) * 24.0 * 24.0 * 490.0 / 1.25
    expected = {
        "seam-bolt-shear": shear,
        "sleeve-bearing": sleeve,
        "splice-bearing": splice,
        "seam-bolt-row": 3.0 * min(shear, sleeve, splice),
    }
    for name, capacity in expected.items():
        assert only(rows(jacket, "india", name)).capacity == pytest.approx(capacity), name


def test_grips_beyond_five_diameters_cost_strength(jacket_of: JacketOf, rows: Rows) -> None:
    row = only(rows(jacket_of("long grip"), "india", "seam-bolt-shear"))
    # M20, grip 120 mm: 8/(3 + 6); the joint of 150 mm is no long one
    capacity = 800.0 / math.sqrt(3.0) * 2 * 245.0 / 1.25 * 8.0 / 9.0
    assert row.capacity == pytest.approx(capacity, rel=1e-9)
    beyond = only(rows(jacket_of("grip beyond the code"), "india", "seam-bolt-shear"))
    assert beyond.status is Status.NOT_EVALUATED
    assert "grip_over_diameter" in beyond.notes[0]


def test_oversized_holes_and_one_column(jacket_of: JacketOf, rows: Rows) -> None:
    jacket = jacket_of("one side, one column")
    bearing = only(rows(jacket, "india", "sleeve-bearing"))
    # 30 mm holes, no neighbour: 55/90, and 0.7 for the hole
    assert bearing.capacity == pytest.approx(
        2.5 * 0.7 * 55.0 / 90.0 * 24.0 * 16.0 * 410.0 / 1.25, rel=1e-9
    )
    slip = rows(jacket, "india", "seam-slip")[f"{SLIP} @ {ROW}"]
    assert slip.capacity == pytest.approx(0.5 * 0.85 * 0.7 * 800.0 * 353.0 / 1.25, rel=1e-9)
    assert not [name for name in rows(jacket, "india", "bolt-spacing") if "gauge" in name]


def test_plates(jacket: Jacket, rows: Rows) -> None:
    net = (120.0 - 28.0) / 120.0  # punched holes count 2 mm larger
    expected = {
        "sleeve-gross-yield": 16.0 * 250.0 / 1.10,
        "sleeve-net-rupture": 0.9 * 16.0 * net * 410.0 / 1.25,
        "splice-gross-yield": 24.0 * 350.0 / 1.10,
        "splice-net-rupture": 0.9 * 24.0 * net * 490.0 / 1.25,
    }
    for name, capacity in expected.items():
        row = only(rows(jacket, "india", name))
        assert row.capacity == pytest.approx(capacity, rel=1e-9), name
        assert row.demand == pytest.approx(float(hoop_demand(jacket).force))


def test_plates_on_one_side_are_bent(jacket_of: JacketOf, rows: Rows) -> None:
    row = only(rows(jacket_of("one side, one column"), "india", "splice-gross-yield"))
    # fully plastic rectangle under N and N e: (N/N_p)² + 4 e N/(t N_p) = 1, e = (16 + 25)/2
    plastic, lever = 25.0 * 330.0, 4.0 * 20.5 / 25.0
    force = plastic * (math.sqrt(lever**2 + 4.0) - lever) / 2.0
    assert row.capacity == pytest.approx(force / 1.10, rel=1e-9)
    assert "bend" in row.notes[0]


def test_block_shear_by_enumeration(jacket: Jacket, rows: Rows) -> None:
    def weakest(edge: float, thickness: float, yields: float, tensile: float) -> float:
        found = []
        gross = edge + 2 * 75.0
        net = gross - 2.5 * 28.0
        for count in range(1, 12):
            for at_end in (False, True):
                planes = 1 if at_end else 2
                wide = (count - 1) * 120.0 + (65.0 if at_end else 0.0)
                holes = (count - 1 + (0.5 if at_end else 0.0)) * 28.0
                first = planes * gross * yields / math.sqrt(3.0) / 1.1
                first += 0.9 * (wide - holes) * tensile / 1.25
                second = 0.9 * planes * net * tensile / math.sqrt(3.0) / 1.25
                second += wide * yields / 1.1
                found.append(min(first, second) * thickness / count)
        return min(found)

    found = rows(jacket, "india", "seam-block-shear")
    sleeve = found["Block shear at the seam @ sleeve"]
    plates = found["Block shear at the seam @ splice plates"]
    assert sleeve.capacity == pytest.approx(weakest(55.0, 16.0, 250.0, 410.0), rel=1e-9)
    assert plates.capacity == pytest.approx(weakest(50.0, 24.0, 350.0, 490.0), rel=1e-9)


def test_layout(jacket: Jacket, rows: Rows) -> None:
    spacing = rows(jacket, "india", "bolt-spacing")
    assert spacing["Least bolt spacing @ columns (gauge)"].ratio == pytest.approx(60.0 / 75.0)
    assert spacing["Largest bolt spacing @ rows (pitch)"].ratio == pytest.approx(120.0 / 300.0)
    at_edge = spacing["Largest bolt spacing in the line at an edge @ rows (pitch)"]
    assert at_edge.ratio == pytest.approx(120.0 / 148.0)
    along = spacing["Largest bolt spacing along the force @ columns (gauge)"]
    assert along.ratio == pytest.approx(75.0 / 192.0)
    edges = rows(jacket, "india", "bolt-edge-distance")
    place = "vertical edge of the plate"
    assert edges[f"Least edge distance @ {place}"].ratio == pytest.approx(1.7 * 26.0 / 50.0)
    machined = edges[f"Least edge distance, rolled or machine-cut edge @ {place}"]
    assert (machined.kind, machined.demand) == (Kind.REPORTED, 39.0)
    farthest = edges[f"Largest edge distance @ {place}"]
    assert farthest.capacity == pytest.approx(12.0 * 12.0 * math.sqrt(250.0 / 350.0))
    assert edges[f"Largest edge distance, exposed to corrosion @ {place}"].capacity == 88.0


def test_anchorage_in_grout(jacket: Jacket, rows: Rows) -> None:
    found = rows(jacket, "india", "added-bar-anchorage")
    held = found[f"{ANCHORAGE} @ embedment in grout"]
    # cylinders of 28 MPa are cubes of 35 MPa, M35: 1.7 x 1.6 MPa; 1.15 x 500 MPa
    assert held.demand == pytest.approx(25.0 * 575.0 / (4.0 * 2.72), rel=1e-9)
    assert (held.capacity, held.status) == (1100.0, Status.EXCEEDS)
    assert f"{ANCHORAGE} @ breakout of the ring of bars" in found


def test_anchorage_without_a_rule_of_its_own(jacket_of: JacketOf, rows: Rows) -> None:
    none = only(rows(jacket_of("no added bars"), "india", "added-bar-anchorage"))
    assert none.status is Status.NOT_APPLICABLE
    adhesive = rows(jacket_of("adhesive"), "india", "added-bar-anchorage")
    assert {one.clause for one in adhesive.values()} == {"ACI 318-19 17.6.5", "ACI 318-19 17.6.2"}


def test_a_grade_is_that_of_cubes(jacket_of: JacketOf, rows: Rows) -> None:
    found = rows(jacket_of("M30 footing"), "india", "added-bar-anchorage")
    # M30: 1.5 x 1.6 MPa; formulas of other codes get 24 MPa of cylinders
    held = found[f"{ANCHORAGE} @ embedment in grout"]
    assert held.demand == pytest.approx(25.0 * 575.0 / (4.0 * 2.40), rel=1e-9)
    assert {step.symbol: step.value for step in held.steps}["f′c"] == pytest.approx(24.0)


def test_concrete_below_the_table_is_not_evaluated(jacket_of: JacketOf, rows: Rows) -> None:
    row = only(rows(jacket_of("weak footing"), "india", "added-bar-anchorage"))
    assert row.status is Status.NOT_EVALUATED
    assert "cube_strength" in row.notes[0]


def test_many_designs_at_once(host: Host, jacket: Jacket) -> None:
    values = {
        "sleeve.thickness": np.array([8.0, 16.0, 25.0]),
        "bolts.columns": np.array([1.0, 3.0, 2.0]),
        "bolts.gauge": np.array([75.0, 75.0, 110.0]),
        "splice.inside_thickness": np.array([12.0, 16.0, 12.0]),
        "footing.concrete_strength": np.array([20.0, 29.0, 45.0]),
    }
    many = with_values(jacket, values)
    ids = own_ids(host)
    together = evaluate(many, host=host, provisions="india", only=ids)
    for index in range(3):
        alone = {
            (one.limit_state, one.title, one.location, one.clause): one
            for one in evaluate(pick(many, index), host=host, provisions="india", only=ids)
        }
        for row in together:
            single = alone[row.limit_state, row.title, row.location, row.clause]
            np.testing.assert_allclose(
                np.broadcast_to(row.ratio, 3)[index], single.ratio, rtol=1e-9, err_msg=row.title
            )


def test_every_row_says_edition_and_source(host: Host, jacket: Jacket) -> None:
    found = evaluate(jacket, host=host, provisions="india", only=own_ids(host))
    assert {one.status for one in found} <= {Status.OK, Status.EXCEEDS, Status.REPORTED}
    for row in found:
        editions = ("IS 800:2007", "IS 456:2000", "ACI 318-19", "AASHTO LRFD 9th ed. (2020)")
        assert any(one in row.clause for one in editions), row.clause
        assert all(step.source for step in row.steps)


def test_a_design_beyond_the_code_leaves_the_others_their_answer(
    jacket: Jacket, rows: Rows
) -> None:
    grips = with_values(jacket, {"splice.outside_thickness": np.array([12.0, 200.0])})
    for name in ("seam-bolt-shear", "seam-bolt-row"):
        row = only(rows(grips, "india", name))
        alone = only(rows(jacket, "india", name))
        assert np.asarray(row.capacity)[0] == pytest.approx(alone.capacity)
        assert np.isnan(np.asarray(row.capacity)[1])
        assert row.status is Status.NOT_EVALUATED
    footings = with_values(jacket, {"footing.concrete_strength": np.array([15.0, 28.0])})
    held = rows(footings, "india", "added-bar-anchorage")[f"{ANCHORAGE} @ embedment in grout"]
    assert list(np.isnan(np.asarray(held.demand))) == [True, False]


def _struts(jacket: Jacket) -> float:
    """Bars beside one another above the fracture at 100 mm, less the offset that struts cross."""
    circle = float(jacket.column.layer.circle_radius)
    return 1320.0 - 100.0 - math.hypot(710.0 - circle, math.pi * circle / 20.0)


def test_development_in_the_repair(jacket: Jacket, rows: Rows) -> None:
    row = only(rows(jacket, "india", "added-bar-development"))
    # grout above M40: 1.9 x 1.6 MPa; 1.15 x 500 MPa
    assert float(jacket.grout.strength) >= 40.0
    assert row.demand == pytest.approx(25.0 * 575.0 / (4.0 * 3.04), rel=1e-9)
    assert row.capacity == pytest.approx(_struts(jacket), rel=1e-9)


def test_length_of_the_laps(jacket: Jacket, rows: Rows) -> None:
    found = rows(jacket, "india", "added-bar-lap")
    length = found["Laps of added bars and column bars @ length of the laps"]
    # 16 bars of 25 mm on 1420 mm stand 279 mm apart, with bars of 28 mm between: more than 150 mm
    assert length.demand == pytest.approx(25.0 * 575.0 / (4.0 * 3.04), rel=1e-9)
    assert length.capacity == pytest.approx(_struts(jacket), rel=1e-9)
    assert len(found) == 3
    many = with_values(jacket, {"added_bars.layer.count": np.array([16.0, 24.0])})
    close = rows(many, "india", "added-bar-lap")
    both = np.asarray(close["Laps of added bars and column bars @ length of the laps"].demand)
    assert both[1] / both[0] == pytest.approx(1.4, rel=1e-9)


def test_bars_too_thick_to_be_lapped_are_not_evaluated(jacket: Jacket, rows: Rows) -> None:
    """IS 456 welds bars above 36 mm."""
    thick = with_values(jacket, {"added_bars.layer.diameter": 40.0})
    row = only(rows(thick, "india", "added-bar-lap"))
    assert row.status is Status.NOT_EVALUATED
    assert "36" in row.notes[0]


def test_repairs_without_added_bars_need_no_lengths(jacket_of: JacketOf, rows: Rows) -> None:
    for name in ("added-bar-development", "added-bar-lap"):
        row = only(rows(jacket_of("no added bars"), "india", name))
        assert row.status is Status.NOT_APPLICABLE
