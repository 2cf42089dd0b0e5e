"""Many designs in one jacket."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import numpy as np
import pytest

from jacketcheck.catalog.catalog import built_in_catalog
from jacketcheck.errors import InputError
from jacketcheck.inputs import RepairInput, read_text
from jacketcheck.jacket import Jacket, build_jacket
from jacketcheck.jacket._roles import SEVERAL
from jacketcheck.jacket.build import assemble_jacket
from jacketcheck.jacket.designs import (
    design_count,
    detached,
    has_designs,
    leaves,
    pick,
    read_only,
    stack,
    with_values,
)
from jacketcheck.jacket.geometry_rules import buildable


def updated(repair: RepairInput, values: dict[str, Any]) -> RepairInput:
    """Copy with fields replaced by dotted path, without validation."""
    for path, value in values.items():
        *above, last = path.split(".")
        holders: list[Any] = [repair]
        for name in above:
            holders.append(getattr(holders[-1], name))
        changed = holders.pop().model_copy(update={last: value})
        for name, holder in zip(reversed(above), reversed(holders), strict=True):
            changed = holder.model_copy(update={name: changed})
        repair = changed
    return repair


def numbers(jacket: Jacket) -> dict[str, Any]:
    return {
        path: value
        for path, value in leaves(jacket)
        if isinstance(value, int | float | np.number | np.ndarray) and not isinstance(value, bool)
    }


SWEEP = {
    "sleeve.thickness": np.array([6.35, 9.525, 12.7, 25.4]),
    "sleeve.inner_diameter": np.array([1574.8, 1600.0, 1574.8, 1500.0]),
    "splice.thickness": np.array([9.525, 9.525, 12.7, 12.7]),
    "splice.inside_thickness": np.array([9.525, 7.9375, 12.7, 15.0]),
    "repair.height": np.array([1371.6, 1371.6, 1400.0, 1500.0]),
    "repair.gap": np.array([50.8, 40.0, 50.8, 60.0]),
    "bolts.pitch": np.array([127.0, 100.0, 130.0, 80.0]),
    "bolts.gauge": np.array([88.9, 76.2, 90.0, 100.0]),
    "bolts.columns": np.array([2, 1, 2, 3]),
    "bolts.seam_edge_distance": np.array([50.8, 45.0, 60.0, 50.8]),
    "bolts.plate_edge_distance": np.array([50.8, 45.0, 60.0, 50.8]),
    "bolts.rows": np.array([10, 12, 9, 14]),
    "column.diameter": np.array([1219.2, 1200.0, 1219.2, 1219.2]),
    "column.height": np.array([5486.4, 5000.0, 6000.0, 5486.4]),
    "column.cover": np.array([50.8, 40.0, 60.0, 50.8]),
    "column.concrete_strength": np.array([27.6, 30.0, 35.0, 40.0]),
    "column.hoops.spacing": np.array([101.6, 150.0, 75.0, 300.0]),
    "grout.strength": np.array([55.0, 60.0, 40.0, 70.0]),
    "actions.axial_load": np.array([2.7e6, 2.0e6, 3.0e6, 0.0]),
    "added_bars.count": np.array([16.0, 12.0, 20.0, 24.0]),
    "added_bars.embedment": np.array([914.4, 800.0, 1000.0, 1200.0]),
    "footing.depth": np.array([1524.0, 1500.0, 1600.0, 1700.0]),
}


@pytest.fixture
def sparse_input(repair_input: RepairInput) -> RepairInput:
    """The test repair with derived end distance, expected strength and grout modulus."""
    none = {
        "bolts.end_distance": None,
        "column.concrete_expected": None,
        "grout.elastic_modulus": None,
    }
    return updated(repair_input, none)


def test_arrays_in_the_input_give_the_stack_of_single_builds(sparse_input: RepairInput) -> None:
    catalog = built_in_catalog()
    many = assemble_jacket(updated(sparse_input, SWEEP), catalog=catalog)
    singles = [
        assemble_jacket(
            updated(sparse_input, {path: values[index] for path, values in SWEEP.items()}),
            catalog=catalog,
        )
        for index in range(4)
    ]
    assert design_count(many) == 4
    stacked = numbers(stack(singles))
    assert numbers(many).keys() == stacked.keys()
    for path, value in numbers(many).items():
        np.testing.assert_allclose(value, stacked[path], rtol=1e-14, err_msg=path)
    for index, single in enumerate(singles):
        assert numbers(pick(many, index)) == pytest.approx(numbers(single), rel=1e-14)


def test_rows_are_derived_design_by_design(sparse_input: RepairInput) -> None:
    repair = updated(
        sparse_input,
        {"bolts.rows": None, "bolts.end_distance": 40.0, "bolts.pitch": np.array([127.0, 90.0])},
    )
    bolts = assemble_jacket(repair, catalog=built_in_catalog()).bolts
    # a sleeve of 1320.8 mm less 2 x 40 mm holds 9.77 spaces of 127 mm, 13.8 of 90 mm
    np.testing.assert_array_equal(bolts.rows, [10.0, 14.0])
    np.testing.assert_allclose(bolts.end_distance, [(1320.8 - 9 * 127) / 2, (1320.8 - 13 * 90) / 2])


@pytest.mark.parametrize(
    ("path", "values"),
    [
        ("sleeve.inner_diameter", [1200.0, 1230.0, 1300.0, 1574.8]),
        ("repair.height", [1000.0, 1371.6, 5400.0, 6000.0]),
        ("repair.gap", [10.0, 50.8, 500.0, 700.0]),
        ("bolts.pitch", [30.0, 127.0, 127.4, 140.0]),
        ("bolts.gauge", [30.0, 41.0, 42.0, 1500.0]),
        ("bolts.plate_edge_distance", [10.0, 14.0, 15.0, 2000.0]),
        ("bolts.seam_edge_distance", [10.0, 14.0, 15.0, 2000.0]),
        ("column.cover", [50.0, 300.0, 560.0, 600.0]),
        ("column.hoops.spacing", [10.0, 16.0, 100.0, 3000.0]),
        ("added_bars.circle_diameter", [1219.0, 1248.0, 1546.0, 1600.0]),
        ("added_bars.count", [16.0, 112.0, 114.0, 200.0]),
        ("added_bars.height", [1300.0, 1371.6, 1371.7, 2000.0]),
        ("added_bars.hole_diameter", [20.0, 31.0, 32.0, 300.0]),
        ("added_bars.embedment", [500.0, 1523.0, 1524.0, 2000.0]),
    ],
)
def test_buildable_is_what_a_single_build_accepts(
    repair_input: RepairInput, path: str, values: list[float]
) -> None:
    catalog = built_in_catalog()
    many = assemble_jacket(updated(repair_input, {path: np.array(values)}), catalog=catalog)
    flags = np.broadcast_to(buildable(many), (4,))
    for value, flag in zip(values, flags, strict=True):
        repair = updated(repair_input, {path: value})
        if flag:
            build_jacket(repair)
        else:
            with pytest.raises(InputError) as caught:
                build_jacket(repair)
            assert caught.value.source == "geometry"
    assert flags.any()
    assert not flags.all()


def test_a_nan_is_not_buildable(jacket: Jacket) -> None:
    many = with_values(jacket, {"sleeve.inner_diameter": np.array([np.nan, 1574.8])})
    np.testing.assert_array_equal(buildable(many), [False, True])


def test_one_design_is_buildable_without_an_axis(jacket: Jacket) -> None:
    assert buildable(jacket).shape == ()
    assert bool(buildable(jacket))


def test_a_jacket_of_one_design(jacket: Jacket) -> None:
    assert not has_designs(jacket)
    assert design_count(jacket) == 1
    assert pick(jacket, 0) == jacket


def test_stack_of_one(jacket: Jacket) -> None:
    assert stack([jacket]) == jacket


def test_stacking_and_picking_go_back_and_forth(repair_text: str) -> None:
    file = read_text(
        repair_text.partition("[variants.")[0]
        + '[variants.thin]\nsleeve.thickness = "1/4 in"\nbolts.rows = 9\n'
        + 'bolts.end_distance = "6 in"\n'
    )
    jackets = [build_jacket(file.variants[name]) for name in ("base", "thin")]
    both = stack(jackets)
    assert has_designs(both)
    assert design_count(both) == 2
    for index, jacket in enumerate(jackets):
        assert numbers(pick(both, index)) == numbers(jacket)


def test_labels_may_differ_and_choices_may_not(jacket: Jacket) -> None:
    other = replace(jacket, title="another", bolts=replace(jacket.bolts, size="2 in"))
    assert stack([jacket, other]).title == SEVERAL
    assert stack([jacket, other]).bolts.size == SEVERAL
    snug = replace(jacket, bolts=replace(jacket.bolts, tightening="snug"))
    with pytest.raises(ValueError, match=r"designs differ in bolts\.tightening, which must be"):
        stack([jacket, snug])


def test_a_missing_part_is_a_choice(jacket: Jacket) -> None:
    with pytest.raises(ValueError, match=r"designs differ in added_bars, which must be the same"):
        stack([jacket, replace(jacket, added_bars=None)])


def test_nothing_and_stacks_cannot_be_stacked(jacket: Jacket) -> None:
    with pytest.raises(ValueError, match="no jacket to stack"):
        stack([])
    many = with_values(jacket, {"sleeve.thickness": np.array([1.0, 2.0])})
    with pytest.raises(ValueError, match="only jackets of one design can be stacked"):
        stack([many, jacket])


def test_values_by_path(jacket: Jacket) -> None:
    values = {
        "sleeve.thickness": np.array([10.0, 12.0]),
        "column.bars.2.damage_height": 5.0,
        "bolts.faying_classes.1.slip_coefficient": np.array([0.3, 0.5]),
    }
    changed = with_values(jacket, values)
    found = dict(leaves(changed))
    for path, value in found.items():
        np.testing.assert_array_equal(value, values.get(path, dict(leaves(jacket))[path]))
    assert design_count(changed) == 2
    assert pick(changed, 1).bolts.faying_classes[0].slip_coefficient == 0.5


def test_every_number_may_be_an_array(jacket: Jacket) -> None:
    for path, value in numbers(jacket).items():
        many = with_values(jacket, {path: np.array([value, value])})
        assert pick(many, 1) == jacket, path


@pytest.mark.parametrize("path", ["sleeve.colour", "title", "sleeve", "column.bars.21.angle", ""])
def test_unknown_paths(jacket: Jacket, path: str) -> None:
    with pytest.raises(KeyError, match="no such field of a jacket"):
        with_values(jacket, {path: 1.0})


def test_arrays_are_read_only(sparse_input: RepairInput, jacket: Jacket) -> None:
    built = assemble_jacket(updated(sparse_input, SWEEP), catalog=built_in_catalog())
    given = np.array([1.0, 2.0])
    for many in (
        built,
        stack([pick(built, 0), pick(built, 1)]),
        with_values(jacket, {"sleeve.thickness": given}),
        read_only(built),
        detached(built),
    ):
        for path, value in leaves(many):
            if isinstance(value, np.ndarray):
                assert not value.flags.writeable, path
    given[0] = 3.0  # the caller's own array stays its own


def test_copies_have_a_memory_of_their_own(jacket: Jacket) -> None:
    jacket.memo["analysis"] = "of this jacket"
    assert with_values(jacket, {"sleeve.thickness": 1.0}).memo == {}
    assert pick(jacket, 0).memo == {}
    twin = detached(jacket)
    assert "analysis" not in twin.memo
    twin.memo["analysis"] = "spoilt"
    assert jacket.memo["analysis"] == "of this jacket"
    # or an analysis of the jacket would pass for one of its changed copy
    assert replace(jacket, repair_height=1.0).memo == {}


def test_a_detached_copy_shares_nothing_that_could_be_written(jacket: Jacket) -> None:
    many = with_values(jacket, {"sleeve.thickness": np.array([10.0, 12.0])})
    twin = detached(many)
    twin.sleeve.thickness.setflags(write=True)  # type: ignore[union-attr] # it is an array
    twin.sleeve.thickness[0] = 99.0  # type: ignore[index] # it is an array
    object.__setattr__(twin.column, "diameter", 1.0)
    np.testing.assert_array_equal(many.sleeve.thickness, [10.0, 12.0])
    assert many.column == jacket.column
