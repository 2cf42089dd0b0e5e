"""Schedules worked out by hand, and the stocked length found by trying all of them."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from jacketcheck.catalog import built_in_catalog
from jacketcheck.jacket import Jacket
from jacketcheck.jacket.bolt_fit import bolt_fit
from jacketcheck.schedule import Allowances, BoltSchedule, bolt_schedule
from jacketcheck.schedule.assembly import assembly_of
from jacketcheck.schedule.length import bolt_length, thread_fit
from jacketcheck.schedule.records import ScheduleLine

MakeSchedule = Callable[..., BoltSchedule]
LineOf = Callable[[BoltSchedule, str], ScheduleLine]
CATALOG = built_in_catalog()


def test_wrench_variant_by_hand(schedule_of: MakeSchedule, line_of: LineOf) -> None:
    # grip 3/8 + 1/2 = 7/8; washer 5/32; allowance 1-1/8; sum 2.15625 -> 2-1/4 in
    # 9 rows x 1 column x 4 groups = 36; spares 3 + 2 + 3 x 2 days + 2 (5 % of 36 = 1.8)
    schedule = schedule_of("wrench")
    assert schedule.designation == "ASTM F3125 A325, 7/8 in × 2-1/4 in"
    assert line_of(schedule, "length needed").value == pytest.approx(2.15625 * 25.4)
    # 2.25 - 0.875 - 0.15625 - 55/64
    assert line_of(schedule, "standing out of the nut").value == pytest.approx(0.359375 * 25.4)
    bolt = schedule.orders[0]
    assert (bolt.per_seam, bolt.installed, bolt.spares, bolt.order) == (18, 36, 13, 49)
    assert {order.order for order in schedule.orders} == {49}


def test_m20_hv_assembly_by_hand(schedule_of: MakeSchedule, line_of: LineOf) -> None:
    # 10 + 12 mm plates, two washers of 4: clamp 30; nut 16, one pitch 2.5: 48.5; a 50 mm bolt is
    # 48.75 mm at least. Shank 50 - 33 - 7.5 = 9.5 < 4 + 10. Clamp 1.5 d: 60 degrees.
    # 0.75 x 0.13 x 20 x 171.5 = 334.4 N·m
    schedule = schedule_of("HV combined", sleeve={"thickness": 10.0}, splice={"thickness": 12.0})
    assert schedule.designation == "EN 14399 HV 10.9, M20 × 50 mm"
    assert line_of(schedule, "length needed").value == pytest.approx(49.75)
    assert line_of(schedule, "full shank under the head").value == pytest.approx(9.5)
    assert line_of(schedule, "farthest shear plane from the head").value == pytest.approx(14.0)
    assert line_of(schedule, "threads in the shear planes").value == "included"
    assert line_of(schedule, "first step, torque").value == pytest.approx(334.4e3, rel=1e-3)
    assert line_of(schedule, "second step, turn of the nut").value == 60.0


def test_m24_hr_assembly_by_hand() -> None:
    # plates of 40 + 45 mm, one washer of 4: clamp 89; nut 21.5, pitch 3: 113.5; 120 mm bolts are
    # 118.25 mm at least, 110 mm ones 108.25: M24 x 120. Least clamp 120 - 54 + 4 x 3 = 78.
    product = CATALOG.bolt_product("HR 8.8")
    size = product.size("M24")
    assert float(size.thread_length(120.0)) == 54.0
    assert bolt_fit(product, size, grip=85.0, nut_washers=4.0).length == 120.0


@pytest.mark.parametrize("variant", ["wrench", "metric", "HR torque", "HV combined"])
@pytest.mark.parametrize("thickness", [6.0, 9.525, 13.0, 19.0, 25.4, 38.0])
def test_ordered_length_is_the_first_that_fits(
    make_jacket: Callable[..., Jacket], variant: str, thickness: float
) -> None:
    jacket = make_jacket(variant, sleeve={"thickness": thickness})
    assembly = assembly_of(jacket, CATALOG)
    ordered = bolt_length(assembly).ordered
    nut, pitch = assembly.size.nut_height, assembly.size.thread_pitch
    candidates = (
        [0.25 * 25.4 * count for count in range(4, 25)]
        if variant == "wrench"
        else [5.0 * count for count in range(4, 21)]
    )

    def fits(length: float) -> bool:
        if variant == "wrench":
            return length >= assembly.clamp_length + 1.125 * 25.4 - 1e-6
        short = 1.05 if length <= 30 else 1.25 if length <= 50 else 1.5 if length <= 80 else 1.75
        return length - short >= assembly.clamp_length + nut + pitch - 1e-6

    assert ordered == pytest.approx(min(length for length in candidates if fits(length)))


def test_threads_by_drawing_the_bolt(make_jacket: Callable[..., Jacket]) -> None:
    # 1 in x 2-3/4 in A325: 2.75 - 1.75 = 1 in to the thread, 0.31 in of run-out: full shank 0.69 in
    assembly = assembly_of(
        make_jacket("turns", bolts={"diameter": "1 in", "pitch": 130.0}), CATALOG
    )
    fit = thread_fit(assembly, 2.75 * 25.4)
    assert fit.full_shank == pytest.approx(0.69 * 25.4)
    assert fit.least_clamp == pytest.approx(25.4)
    # the only shear plane lies at the sleeve's 3/8 in: clear
    assert fit.threads_excluded


def test_allowances_add_up(make_jacket: Callable[..., Jacket]) -> None:
    # 10 % of 36 -> 4; no days for turns; 3 + 2 tests
    schedule = bolt_schedule(
        make_jacket("turns"), variant="x", allowances=Allowances(loss_percent=10.0)
    )
    assert schedule.orders[0].spares == 4 + 5
    wrench = bolt_schedule(
        make_jacket("wrench"), variant="x", allowances=Allowances(0.0, tightening_days=3)
    )
    assert wrench.orders[0].spares == 2 + 5 + 9
