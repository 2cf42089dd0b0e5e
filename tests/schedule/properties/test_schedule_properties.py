"""What holds for every schedule: lengths grow with the grip, every bolt has one number."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from jacketcheck.catalog import built_in_catalog
from jacketcheck.jacket import Jacket
from jacketcheck.schedule import BoltSchedule
from jacketcheck.schedule.assembly import assembly_of
from jacketcheck.schedule.length import bolt_length, thread_fit
from jacketcheck.schedule.tightening_order import rows_from_the_middle, tightening_order

CATALOG = built_in_catalog()
VARIANTS = st.sampled_from(
    ["wrench", "turns", "indicators", "twist-off", "metric", "HR torque", "HV combined"]
)
SLOW = settings(
    max_examples=40, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)


@SLOW
@given(variant=VARIANTS, sleeve=st.floats(5.0, 40.0), more=st.floats(0.0, 20.0))
def test_longer_grip_never_gives_a_shorter_bolt(
    make_jacket: Callable[..., Jacket], variant: str, sleeve: float, more: float
) -> None:
    lengths = [
        bolt_length(assembly_of(make_jacket(variant, sleeve={"thickness": t}), CATALOG))
        for t in (sleeve, sleeve + more)
    ]
    assert lengths[1].ordered >= lengths[0].ordered
    assert lengths[1].needed >= lengths[0].needed - 0.5  # the length tolerance steps with length


@SLOW
@given(variant=VARIANTS, sleeve=st.floats(5.0, 40.0), plate=st.floats(5.0, 25.0))
def test_ordered_bolts_are_long_enough_and_can_be_tightened(
    make_jacket: Callable[..., Jacket], variant: str, sleeve: float, plate: float
) -> None:
    jacket = make_jacket(variant, sleeve={"thickness": sleeve}, splice={"thickness": plate})
    assembly = assembly_of(jacket, CATALOG)
    length = bolt_length(assembly)
    assert length.ordered >= length.needed - 1e-6
    assert length.ordered >= assembly.clamp_length + assembly.size.nut_height
    assert assembly.clamp_length == pytest.approx(
        sleeve + plate + sum(washer.thickness for washer in assembly.washers or ())
    )
    assert thread_fit(assembly, length.ordered).least_clamp <= assembly.clamp_length + 13.0


@given(rows=st.integers(1, 60), columns=st.integers(1, 6))
def test_every_bolt_has_one_number(rows: int, columns: int) -> None:
    order = tightening_order(rows=rows, columns=columns)
    numbers = [number for row in order.numbers for number in row]
    assert sorted(numbers) == list(range(1, 2 * rows * columns + 1))
    assert {len(row) for row in order.numbers} == {2 * columns}
    # a whole row is done before the next begins
    assert all(max(row) - min(row) == 2 * columns - 1 for row in order.numbers)


@given(rows=st.integers(1, 200))
def test_rows_go_from_the_middle_to_the_ends(rows: int) -> None:
    order = rows_from_the_middle(rows)
    distances = [abs(row - (rows + 1) / 2.0) for row in order]
    assert sorted(order) == list(range(1, rows + 1))
    assert distances == sorted(distances)


@pytest.mark.parametrize("rows", [(0, 1), (1, 0)])
def test_no_bolts_have_no_order(rows: tuple[int, int]) -> None:
    with pytest.raises(ValueError, match="one or more"):
        tightening_order(rows=rows[0], columns=rows[1])


def test_every_line_and_instruction_has_a_source(
    schedule_of: Callable[..., BoltSchedule],
) -> None:
    for variant in ("wrench", "snug only", "slotted A490", "HR torque", "HV combined"):
        schedule = schedule_of(variant)
        assert all(line.source.strip() for line in schedule.lines())
        steps = (*schedule.procedure, *schedule.inspection)
        assert all(step.source.strip() and step.text.strip() for step in steps)
        assert all(order.source.strip() for order in schedule.orders)
