"""Jackets of many designs: some taken, several joined, and those left out that do not fit."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from jacketcheck.catalog.catalog import built_in_catalog
from jacketcheck.inputs import RepairInput
from jacketcheck.inputs.replaced import replaced
from jacketcheck.jacket import Jacket, build_jacket
from jacketcheck.jacket.designs import (
    choices,
    design_count,
    has_designs,
    joined,
    leaves,
    pick,
    repeated,
    take,
    with_values,
)
from jacketcheck.jacket.many import assemble_designs

THICKNESSES = np.array([6.35, 9.525, 12.7, 25.4])


@pytest.fixture
def many(jacket: Jacket) -> Jacket:
    return with_values(jacket, {"sleeve.thickness": THICKNESSES})


def test_taking_designs_keeps_their_order(many: Jacket) -> None:
    some = take(many, np.array([2, 0]))
    assert np.asarray(some.sleeve.thickness).tolist() == [12.7, 6.35]
    assert design_count(some) == 2
    assert some.memo == {} or "analysis" not in some.memo
    assert not np.asarray(some.sleeve.thickness).flags.writeable


def test_taking_from_a_single_design_changes_nothing(jacket: Jacket) -> None:
    assert take(jacket, np.array([0])) == jacket


def test_joining_puts_designs_one_after_the_other(jacket: Jacket, many: Jacket) -> None:
    whole = joined([many, jacket, take(many, np.array([3]))])
    expected = [*THICKNESSES, jacket.sleeve.thickness, 25.4]
    assert np.asarray(whole.sleeve.thickness).tolist() == expected
    assert whole.sleeve.gap == jacket.sleeve.gap, "what all share stays a single number"
    for index in range(4):
        assert dict(leaves(pick(whole, index))) == dict(leaves(pick(many, index)))


def test_designs_that_are_all_alike_keep_their_number(jacket: Jacket) -> None:
    assert design_count(joined([jacket, jacket, jacket])) == 3
    assert design_count(joined([repeated(jacket, 2), jacket])) == 3
    assert has_designs(repeated(jacket, 1))


def test_what_cannot_be_joined(jacket: Jacket) -> None:
    with pytest.raises(ValueError, match="no jacket to join"):
        joined([])
    with pytest.raises(ValueError, match="designs differ in column_face"):
        joined([jacket, replace(jacket, column_face="smooth")])


def test_choices_are_what_designs_share(jacket: Jacket, many: Jacket) -> None:
    found = dict(choices(jacket))
    assert found["sleeve.hole.kind"] == jacket.sleeve.hole.kind
    assert "sleeve.thickness" not in found
    assert "bolts.size" not in found, "labels may differ"
    assert choices(many) == choices(jacket)


def test_designs_that_cannot_be_built_are_left_out(repair_input: RepairInput) -> None:
    catalog = built_in_catalog()
    heights = np.array([1371.6, 1371.6, 20_000.0, 1371.6])
    # the steel's standard ends at 8 in; the column's span is shorter than 20 m
    values = {"sleeve.thickness": np.array([9.525, 250.0, 9.525, 12.7]), "repair.height": heights}
    free = replaced(repair_input, {"bolts.rows": None})
    found = assemble_designs(free, values, count=4, catalog=catalog)
    assert found.indexes.tolist() == [0, 3]
    assert found.jacket is not None
    assert np.asarray(found.jacket.sleeve.thickness).tolist() == [9.525, 12.7]
    refused = {one.path: one.indexes.tolist() for one in found.refusals}
    assert refused == {"sleeve.thickness": [1], "repair.height": [2]}
    [height] = [one.reason for one in found.refusals if one.path == "repair.height"]
    assert "point of contraflexure" in height


def test_one_design_and_none(repair_input: RepairInput) -> None:
    catalog = built_in_catalog()
    one = assemble_designs(repair_input, {}, count=1, catalog=catalog)
    assert one.jacket is not None
    assert design_count(one.jacket) == 1
    assert dict(leaves(pick(one.jacket, 0))) == dict(leaves(build_jacket(repair_input)))
    three = assemble_designs(repair_input, {"sleeve.thickness": 12.7}, count=3, catalog=catalog)
    assert three.jacket is not None
    assert design_count(three.jacket) == 3
    none = assemble_designs(repair_input, {}, count=0, catalog=catalog)
    assert none.jacket is None
    assert none.indexes.size == 0
    misfit = assemble_designs(
        repair_input, {"sleeve.inner_diameter": 100.0}, count=2, catalog=catalog
    )
    assert misfit.jacket is None
    assert misfit.refusals[0].indexes.tolist() == [0, 1]
