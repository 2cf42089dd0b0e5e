"""Inputs that an engineer calls a slip of the pen, or a design beyond what the checks know.

Expected numbers are worked by hand from the reference case: column 48 in, 30 ft, No. 9 bars, hoops
at 4 in, footing 60 in deep, embedment 42 in in holes of 1-3/4 in.
"""

from __future__ import annotations

import numpy as np
import pytest

from jacketcheck.errors import InputError
from jacketcheck.jacket.designs import stack, with_values
from jacketcheck.results import Kind, Status
from tests.support.jackets import built, row, rows, symbol

INCH = 25.4


def test_the_reference_case_is_usual() -> None:
    (only,) = rows(built(), "usual-ranges")
    assert only.kind is Kind.REPORTED
    assert only.demand == 0.0
    assert only.capacity == len(only.steps) - 2 == 16


@pytest.mark.parametrize(
    ("change", "field", "told"),
    [
        ('actions.axial_load = "0 kN"', "actions.axial_load", "0, usually 0.02 to 0.35"),
        ('actions.axial_load = "600 lbf"', "actions.axial_load", "8.29e-05"),
        ('actions.displacement_demand = "0 mm"', "actions.displacement_demand", "0.002 to 0.08"),
        ("added_bars.count = 1", "added_bars.count", "1, usually 6 to 120"),
        ('sleeve.inner_diameter = "96 in"', "sleeve.inner_diameter", "0.5, usually 0.02 to 0.2"),
        ('sleeve.seam_gap = "9 in"', "sleeve.seam_gap", "229 mm, usually 3 to 50.8"),
        ('column.height = "60 ft"', "column.height", "15, usually 2.5 to 12"),
        ('grout.strength = "3 ksi"', "grout.strength", "0.75, usually 1 to 5"),
        ('added_bars.embedment = "7 in"', "added_bars.embedment", "7, usually 8 to 60"),
    ],
)
def test_an_unusual_input_leaves_its_row_open(change: str, field: str, told: str) -> None:
    (found, listed) = rows(built(change), "usual-ranges")
    assert found.status is Status.NOT_EVALUATED
    assert found.location == field
    assert told in found.notes[0]
    assert f'judgement.confirmed = ["{field}"]' in found.notes[0]
    assert listed.demand == 1.0


def test_what_is_confirmed_stays_visible() -> None:
    jacket = built('added_bars.count = 1\njudgement.confirmed = ["added_bars.count"]')
    (found, listed) = rows(jacket, "usual-ranges")
    assert found.kind is Kind.REPORTED
    assert (found.demand, found.capacity) == (6.0, 1.0)
    assert "judgement.confirmed" in found.notes[0]
    assert listed.demand == 1.0


def test_confirming_what_no_input_has_is_an_error() -> None:
    with pytest.raises(InputError, match=r"judgement\.confirmed"):
        built('judgement.confirmed = ["repair.hight"]')


def test_among_many_designs_only_the_unusual_one_is_open() -> None:
    jacket = stack([built(), built('sleeve.seam_gap = "9 in"')])
    (found, listed) = rows(jacket, "usual-ranges")
    assert np.array_equal(np.isnan(np.asarray(found.ratio)), [False, True])
    assert np.array_equal(np.asarray(listed.demand), [0.0, 1.0])


def test_a_slender_column() -> None:
    # 0.75 π² 0.4 E_c I_g/(2 L)²: E_c = 5000 √f′ce with f′ce = 1.3 x 4 ksi = 35.85 MPa; D = 48 in
    modulus = 5000.0 * np.sqrt(1.3 * 4.0 * 6.894757)
    inertia = np.pi * (48 * INCH) ** 4 / 64
    for feet in (30.0, 130.0):
        found = row(built(f'column.height = "{feet} ft"'), "column-stability")
        capacity = 0.75 * np.pi**2 * 0.4 * modulus * inertia / (2.0 * feet * 12 * INCH) ** 2
        assert float(found.capacity) == pytest.approx(capacity, rel=1e-6)
    assert found.status is Status.EXCEEDS


def test_double_curvature_buckles_at_four_times_the_load() -> None:
    single = row(built(), "column-stability")
    double = row(built('column.curvature = "double"'), "column-stability")
    assert float(double.capacity) == pytest.approx(4.0 * float(single.capacity))


@pytest.mark.parametrize(("spacing", "ratio"), [("4 in", 4 / 6), ("69 in", 69 / 6)])
def test_hoops_in_the_relocated_hinge(spacing: str, ratio: float) -> None:
    # 6 in governs: D/5 = 9.6 in, 6 d_b = 6.77 in
    found = row(built(f'column.hoops.spacing = "{spacing}"'), "hinge-hoops")
    assert float(found.ratio) == pytest.approx(ratio)


def test_concrete_under_the_added_bars() -> None:
    found = row(built(), "footing-depth")
    assert float(found.demand) == pytest.approx((42 + 3.5) * INCH)  # 2 x 1-3/4 in exceeds 3 in
    assert row(built('footing.depth = "42.1 in"'), "footing-depth").status is Status.EXCEEDS


def test_a_footing_of_unknown_depth_is_not_a_pass() -> None:
    (found,) = rows(built('remove = ["footing.depth"]'), "footing-depth")
    assert found.kind is Kind.NOT_EVALUATED
    assert "footing.depth" in found.notes[0]


def test_spalling_into_the_core() -> None:
    (found,) = rows(built(), "damage-depth")
    # 2 in of cover, a No. 5 hoop of 5/8 in and a No. 9 bar of 1.128 in
    assert float(found.capacity) == pytest.approx((2 + 0.625 + 1.128) * INCH, rel=1e-3)
    assert symbol(found, "s_d") == pytest.approx(2 * INCH)
    deep = row(built('damage.1.spalling_depth = "20 in"'), "damage-depth")
    assert deep.status is Status.EXCEEDS


def test_damage_at_bars_that_hold_is_said() -> None:
    jacket = built('damage.3.state = "yielded"')
    found = rows(jacket, "damage-depth")
    assert found[1].kind is Kind.REPORTED
    assert found[1].demand == 2.0  # bars 3 and 19 have a crack along them


@pytest.mark.parametrize(
    ("change", "field"),
    [
        ('sleeve.seam_gap = "39 in"', "sleeve.seam_gap"),
        ('added_bars.hole_diameter = "25.4001 mm"', "added_bars.hole_diameter"),
        ('column.concrete_expected = "3.5 ksi"', "column.concrete_expected"),
        (
            (
                'repair.sides = [{clock_from = "10:00", clock_to = "2:00", surface = "chipped"}, '
                '{clock_from = "1:00", clock_to = "3:00", surface = "unchipped"}]'
            ),
            "repair.sides.2",
        ),
    ],
)
def test_what_nobody_can_mean_is_an_error(change: str, field: str) -> None:
    with pytest.raises(InputError) as caught:
        built(change)
    assert [problem.path for problem in caught.value.problems] == [field]


def test_sides_that_touch_or_agree_are_fine() -> None:
    built(
        'repair.sides = [{clock_from = "10:00", clock_to = "2:00", surface = "unchipped"}, '
        '{clock_from = "2:00", clock_to = "4:00", surface = "chipped"}, '
        '{clock_from = "3:00", clock_to = "5:00", surface = "chipped"}]'
    )


def test_an_unusual_number_is_never_ok_whatever_it_is() -> None:
    jacket = with_values(built(), {"demands.axial_load": np.array([2.67e6, 1.0, np.nan, 1e30])})
    (found, _) = rows(jacket, "usual-ranges")
    assert np.array_equal(np.isnan(np.asarray(found.ratio)), [False, True, True, True])


def test_columns_of_bolts_far_apart() -> None:
    # 4 in + 4 x 1/2 in = 6 in for sealing, min(24 x 1/2, 12) = 12 in for contact
    jacket = built('bolts.gauge = "18 in"\nsplice.thickness = "1/2 in"')
    sealing = row(jacket, "bolt-spacing", "sealing", "gauge")
    contact = row(jacket, "bolt-spacing", "Largest bolt spacing|columns (gauge)")
    assert float(sealing.ratio) == pytest.approx(18 / 6)
    assert float(contact.ratio) == pytest.approx(18 / 12)
