"""Each printed expression, read from the symbols above it, gives the number beside it.

The reader knows nothing of the package: it multiplies what stands side by side. Expressions that
are words, or that are in other units, are not equations; a test holds their number down.
"""

from __future__ import annotations

import math
from typing import Final

import pytest

from jacketcheck.conformance.symbols import without_introduction
from jacketcheck.jacket import Jacket
from jacketcheck.results import Kind
from tests.support.jackets import VARIANTS, built, rows
from tests.support.printed_expressions import evaluated, reproduced, value_of

ONE_SIDED: Final = 'splice.sides = "outside"'
JACKETS: Final = {
    **{name: ("", name) for name in VARIANTS},
    "one column of bolts": ("bolts.columns = 1", "chipped"),
    "plates outside": (ONE_SIDED, "chipped"),
    "unequal plates": ('splice.inside_thickness = "3/8 in"', "chipped"),
    "long slots across": ('bolts.hole = "long-slot-perpendicular"', "chipped"),
    "oversized, punched": (
        'bolts.hole = "oversized"\nbolts.hole_making = "punched"\nbolts.threads = "included"',
        "chipped",
    ),
    "double curvature": ('column.curvature = "double"', "chipped"),
    "adhesive": ('added_bars.bond_strength = "1 ksi"', "chipped"),
    "measured tension": (
        'bolts.tightening = "snug"\nbolts.measured_tension = "10 kip"',
        "chipped",
    ),
    "fillers": ('splice.fillers = 2\nsplice.filler_thickness = "3/8 in"', "chipped"),
    "weathering": ('sleeve.exposure = "weathering"', "chipped"),
}
FINAL: Final = {
    # rows whose demand and capacity can be followed to the end from printed inputs
    "seam-slip", "seam-bolt-shear", "sleeve-bearing", "splice-bearing", "seam-bolt-row",
    "sleeve-gross-yield", "sleeve-net-rupture", "splice-gross-yield", "splice-net-rupture",
    "seam-block-shear", "hoop-clamping", "hoop-dilation", "clamping", "grout-interface",
    "load-capacity", "p-delta", "repair-shear", "column-shear", "added-bar-lap",
    "annulus-clearance", "bolt-spacing", "wrench-clearance",
}  # fmt: skip


@pytest.fixture(params=JACKETS)
def jacket(request: pytest.FixtureRequest) -> Jacket:
    changes, variant = JACKETS[request.param]
    return built(changes, variant=variant)


def test_every_equation_gives_the_number_beside_it(jacket: Jacket) -> None:
    wrong = [
        (result.limit_state, result.clause, step.symbol, step.expression, step.value, printed)
        for result, step, printed in evaluated(rows(jacket))
        if not reproduced(step, printed)
    ]
    assert not wrong


def test_every_symbol_stands_above_its_use(jacket: Jacket) -> None:
    missing = [
        (result.limit_state, result.clause, step.symbol, step.expression, symbol)
        for result in rows(jacket)
        for step, symbol in without_introduction(result.steps)
    ]
    assert not missing


def test_demand_and_capacity_are_printed(jacket: Jacket) -> None:
    for result in rows(jacket):
        if result.kind in {Kind.NOT_APPLICABLE, Kind.NOT_EVALUATED}:
            continue
        printed = [float(step.value) for step in result.steps if not isinstance(step.value, str)]
        for value in (float(result.demand), float(result.capacity)):
            assert any(_same(value, one) for one in printed), (result.limit_state, value)


def _same(first: float, second: float) -> bool:
    return first == second or math.isclose(first, second, rel_tol=1e-12)


def test_what_can_be_followed_is_followed_to_the_end() -> None:
    for result in rows(built()):
        if result.limit_state in FINAL and result.kind is Kind.LIMIT:
            followed = [step for _, step, _ in evaluated([result])]
            assert any(
                _same(float(step.value), value)
                for step in followed
                for value in (float(result.demand), float(result.capacity))
            ), (result.limit_state, result.clause)


def test_few_expressions_are_words() -> None:
    """Inputs are words; of what is computed, two in three can be followed."""
    found = rows(built())
    steps = [step for result in found for step in result.steps if not isinstance(step.value, str)]
    inputs = [
        step for step in steps if "input" in step.source or not _mathematical(step.expression)
    ]
    equations = list(evaluated(found))
    assert len(equations) >= 0.9 * (len(steps) - len(inputs))


def _mathematical(expression: str) -> bool:
    return any(sign in expression for sign in "+−/√²()")


@pytest.mark.parametrize(
    ("expression", "value"),
    [
        pytest.param("2 a/(3 b) c", 2 * 2 / (3 * 3) * 4, id="side by side"),
        pytest.param("a − b + c", 2 - 3 + 4, id="signs"),
        pytest.param("2⅔ a", 8 / 3 * 2, id="mixed number"),
        pytest.param("√(a²)/√b", 2 / math.sqrt(3), id="roots"),
        pytest.param("4 in + 4 a ≤ 110", min(4 * 25.4 + 8, 110), id="inches and a bound"),
        pytest.param("max(5/8 in, a)", 5 / 8 * 25.4, id="a size in inches"),
        pytest.param("(a + b)^1.5", 5**1.5, id="power"),
        pytest.param("max(a, b)/min(b, c) ≥ 2", 2.0, id="functions"),
    ],
)
def test_the_reader_reads(expression: str, value: float) -> None:
    found = value_of(expression, {"a": 2.0, "b": 3.0, "c": 4.0})
    assert found == pytest.approx(value)
