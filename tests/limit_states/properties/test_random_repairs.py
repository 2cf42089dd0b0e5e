"""What holds of every limit state on repairs drawn at random."""

from __future__ import annotations

from functools import lru_cache
from random import Random

import numpy as np
import pytest
from hypothesis import HealthCheck, Phase, given, settings

from jacketcheck.analysis.least_demand import with_least_demand
from jacketcheck.conformance.bench import GROWTH
from jacketcheck.conformance.rows import differences, worst_ratios
from jacketcheck.conformance.standard import in_units
from jacketcheck.engine import evaluate
from jacketcheck.host import Host, load_host
from jacketcheck.inputs import read_text
from jacketcheck.inputs.repair_file import RepairInput
from jacketcheck.jacket import Jacket, build_jacket
from jacketcheck.jacket.designs import leaves, pick, with_values
from jacketcheck.results import Kind, Result, Status
from tests.fuzz.repairs import valid_repair
from tests.fuzz.strategies import repairs
from tests.fuzz.toml_writing import Table, document

SOME = settings(
    max_examples=15,
    deadline=None,
    suppress_health_check=[HealthCheck.too_slow],
    database=None,
    phases=[Phase.generate],  # a shrunken repair tells no more, and takes minutes
)
NOISE = 1e-5
"""What iterations of section analyses leave in a ratio."""


@lru_cache(maxsize=1)
def host() -> Host:
    return load_host(installed=False)


WITHOUT_SECTIONS = tuple(
    one.limit_state.id for one in host().limit_states("us") if one.limit_state.effort != "sections"
)


def written(tables: Table) -> RepairInput:
    return read_text(document({**tables, "variants": {}}), catalog=host().catalog).base


def built(repair: RepairInput) -> Jacket:
    return build_jacket(repair, catalog=host().catalog)


def rows_of(jacket: Jacket, *names: str) -> tuple[Result, ...]:
    return evaluate(jacket, host=host(), only=names or None)


@given(tables=repairs())
@SOME
def test_rows_are_whole_and_equal_repairs_get_equal_answers(tables: Table) -> None:
    first, second = (rows_of(built(written(tables))) for _ in range(2))
    _ratios_are_demand_over_capacity_or_the_row_says_why_there_is_none(first)
    assert list(differences(first, second)) == []


def _ratios_are_demand_over_capacity_or_the_row_says_why_there_is_none(
    rows: tuple[Result, ...],
) -> None:
    for row in rows:
        demand, capacity, ratio = float(row.demand), float(row.capacity), float(row.ratio)
        if row.kind is Kind.LIMIT:
            assert demand >= 0.0, row
            assert 0.0 <= capacity < np.inf, row
            assert ratio == (demand / capacity if capacity else np.inf if demand else 0.0), row
            assert row.status is (Status.OK if ratio <= 1.0 else Status.EXCEEDS)
            assert row.clause, row
            assert row.steps, row
        elif row.kind is Kind.REPORTED:
            assert not np.isnan(demand), row
        else:
            assert any(note.strip() for note in row.notes), row


@pytest.mark.parametrize("seed", range(10))
def test_answers_do_not_depend_on_the_units_of_the_input(seed: int) -> None:
    repair = written(valid_repair(Random(seed)))  # noqa: S311 - repeatable, not secret
    in_si, in_us = (
        built(in_units(repair, system, catalog=host().catalog)) for system in ("si", "us")
    )
    assert list(differences(rows_of(in_si), rows_of(in_us), tolerance=NOISE)) == []
    # as if the base were strained as little as it ever can be, so that no section is solved
    exact = [rows_of(with_least_demand(one), *WITHOUT_SECTIONS) for one in (in_si, in_us)]
    assert list(differences(*exact, tolerance=1e-9)) == []


@pytest.mark.parametrize("seed", range(8))
def test_ratios_move_as_limit_states_declare(seed: int) -> None:
    jacket = built(written(valid_repair(Random(seed))))  # noqa: S311 - repeatable, not secret
    numbers = {leaf: value for leaf, value in leaves(jacket) if isinstance(value, float) and value}

    @lru_cache
    def growing(leaf: str) -> list[Jacket]:
        """Jackets in which a leaf grows, the same for every limit state."""
        grown = with_values(jacket, {leaf: numbers[leaf] * np.array(GROWTH)})
        return [pick(grown, index) for index in range(len(GROWTH))]

    moved = 0
    for one in host().limit_states("us"):
        name, tolerance = (
            one.limit_state.id,
            1e-4 if one.limit_state.effort == "sections" else NOISE,
        )
        for leaf, direction in one.limit_state.monotonic.items():
            if direction == 0 or leaf not in numbers:
                continue
            alone = [rows_of(one, name) for one in growing(leaf)]
            worst = [one for one in map(worst_ratios, alone) if one is not None]
            found = np.array([float(np.max(one)) for one in worst])
            with np.errstate(invalid="ignore"):
                steps = np.diff(found) * direction
            assert not np.any(steps < -tolerance * np.maximum(1.0, found[1:])), (leaf, name, found)
            moved += 1
    assert moved > 5
