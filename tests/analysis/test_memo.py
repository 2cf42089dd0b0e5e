"""Analyses that designs share, and that go along when some designs are left out."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
import pytest

from jacketcheck.analysis.axial_strain import checked_axial_strain
from jacketcheck.analysis.base_state import base_state
from jacketcheck.analysis.bond import bar_bonds
from jacketcheck.analysis.hinge import hinge, original_response
from jacketcheck.analysis.least_demand import with_least_demand
from jacketcheck.analysis.memo import (
    assuming,
    design_by_design,
    remembered,
    remembered_for_all,
    same_where,
    some_designs,
)
from jacketcheck.errors import CatalogError, DomainError, JacketcheckError, NotEvaluatedError
from jacketcheck.jacket import Jacket
from jacketcheck.jacket.designs import pick, take, with_values
from jacketcheck.mechanics._arrays import Real, require_within
from tests.support.jackets import built_afresh

THICKNESS = np.array([10.0, 12.0, 14.0, 16.0])
SOME = np.array([3, 1])


@dataclass(frozen=True, eq=False)
class Found:
    """A record of numbers."""

    thickness: Real
    thick: Real


@pytest.fixture
def many() -> Jacket:
    """Four designs that differ in the sleeve."""
    return with_values(built_afresh(), {"sleeve.thickness": THICKNESS})


def counted(
    decorate: Callable[[Callable[[Jacket], Found]], Callable[[Jacket], Found]],
) -> tuple[Callable[[Jacket], Found], list[Jacket]]:
    """A function under a decorator, and the jackets that it was really asked about."""
    asked: list[Jacket] = []

    def thickness_of(jacket: Jacket) -> Found:
        asked.append(jacket)
        return Found(jacket.sleeve.thickness, np.greater(jacket.sleeve.thickness, 13.0))

    return decorate(thickness_of), asked


def test_a_design_by_itself_takes_what_was_found_for_all(many: Jacket) -> None:
    for_all, asked = counted(remembered_for_all)
    picked: list[Found] = []

    @design_by_design
    def each(jacket: Jacket) -> Found:
        picked.append(for_all(jacket))
        return picked[-1]

    found = each(many)
    assert asked == [many]
    np.testing.assert_array_equal(found.thickness, THICKNESS)
    # numbers stay numbers, flags stay flags
    assert [one.thick for one in picked] == [False, False, True, True]
    assert all(isinstance(one.thick, bool) and isinstance(one.thickness, float) for one in picked)


def test_where_all_are_refused_each_is_asked_by_itself(many: Jacket) -> None:
    @remembered_for_all
    def refuses_thin(jacket: Jacket) -> Found:
        if np.any(np.less(jacket.sleeve.thickness, 11.0)):
            raise NotEvaluatedError("too thin")
        return Found(jacket.sleeve.thickness, thick=True)

    @design_by_design
    def each(jacket: Jacket) -> Found:
        try:
            return refuses_thin(jacket)
        except NotEvaluatedError:
            return Found(np.nan, thick=False)

    np.testing.assert_array_equal(each(many).thickness, [np.nan, 12.0, 14.0, 16.0])


def test_what_was_found_of_single_designs_stays_with_those_that_are_kept(many: Jacket) -> None:
    once, asked = counted(remembered)
    each = design_by_design(once)
    each(many)
    assert len(asked) == 4
    kept = some_designs(many, SOME)
    np.testing.assert_array_equal(each(kept).thickness, THICKNESS[SOME])
    assert len(asked) == 4
    each(take(many, SOME))
    assert len(asked) == 6


def test_what_counts_as_found_does_so_for_those_that_are_kept(many: Jacket) -> None:
    once, asked = counted(remembered)
    assumed = assuming(many, {once: Found(2.0 * THICKNESS, thick=False)})
    kept = some_designs(assumed, SOME)
    np.testing.assert_array_equal(once(kept).thickness, 2.0 * THICKNESS[SOME])
    each = design_by_design(once)(kept)
    np.testing.assert_array_equal(each.thickness, 2.0 * THICKNESS[SOME])
    assert not asked


def test_the_least_demand_holds_for_some_of_the_designs(many: Jacket) -> None:
    part = some_designs(with_least_demand(many), SOME)
    assert np.all(np.equal(checked_axial_strain(part).found, 0.0))


def test_jackets_alike_in_the_key_share_an_outcome(many: Jacket) -> None:
    shared, asked = counted(same_where(lambda jacket: jacket.column))
    first, other = pick(many, 0), built_afresh('column.height = "20 ft"')
    assert shared(first) is shared(pick(many, 1))
    assert shared(other) is not shared(first)
    assert asked == [first, other]


def test_outcomes_seen_long_ago_are_dropped() -> None:
    shared, asked = counted(same_where(lambda jacket: float(jacket.sleeve.thickness)))
    jackets = [built_afresh(f'sleeve.thickness = "{number} mm"') for number in range(10, 50)]
    for jacket in jackets:
        shared(jacket)
    shared(jackets[-1])
    assert len(asked) == 40
    shared(jackets[0])
    assert len(asked) == 41


def test_a_refusal_is_not_shared() -> None:
    @same_where(lambda jacket: jacket.column)
    def refuses(jacket: Jacket) -> Found:
        raise NotEvaluatedError(jacket.title)

    for _ in range(2):
        with pytest.raises(NotEvaluatedError):
            refuses(built_afresh())


def test_the_original_column_is_analysed_once_for_all_designs(many: Jacket) -> None:
    assert original_response(pick(many, 0)) is original_response(pick(many, 3))
    moment = np.asarray(hinge(many).plastic_moment)
    assert (moment == moment[0]).all()
    heavier = with_values(pick(many, 0), {"demands.axial_load": 4e6})
    assert original_response(heavier) is not original_response(pick(many, 0))


def test_designs_together_are_as_each_alone(many: Jacket) -> None:
    state, bonds = base_state(many), bar_bonds(many)
    for index, thickness in enumerate(THICKNESS):
        alone = built_afresh(f'sleeve.thickness = "{thickness} mm"')
        strain = np.asarray(state.core_strain)[index]
        assert strain == pytest.approx(float(base_state(alone).core_strain), rel=1e-9)
        for one, group in zip(bonds, bar_bonds(alone), strict=True):
            stress = np.broadcast_to(one.developed_stress, THICKNESS.shape)[index]
            assert stress == pytest.approx(float(group.developed_stress), rel=1e-9)


@pytest.mark.parametrize(
    "refusal",
    [
        DomainError("thickness", 14.0, "not 14"),
        NotEvaluatedError("14 mm is not covered"),
        CatalogError("plate", "14 mm", "is not known"),
    ],
)
def test_a_design_that_is_refused_leaves_the_others_theirs(refusal: JacketcheckError) -> None:
    def picky(jacket: Jacket) -> Found:
        if np.any(np.equal(jacket.sleeve.thickness, 14.0)):
            raise refusal
        return Found(jacket.sleeve.thickness, np.greater(jacket.sleeve.thickness, 13.0))

    shared = remembered_for_all(picky)
    thickness_of = design_by_design(shared)
    many = with_values(built_afresh(), {"sleeve.thickness": THICKNESS})
    with pytest.raises(type(refusal)):
        thickness_of(many)
    good = some_designs(many, np.array([0, 1, 3]))
    assert np.asarray(thickness_of(good).thickness).tolist() == [10.0, 12.0, 16.0]
    with pytest.raises(type(refusal)):
        thickness_of(some_designs(many, np.array([2])))


def test_designs_out_of_range_are_set_apart_at_once() -> None:
    asked: list[int] = []

    @remembered_for_all
    def up_to_13(jacket: Jacket) -> Found:
        asked.append(np.size(jacket.sleeve.thickness))
        require_within(0.0, 13.0, thickness=jacket.sleeve.thickness)
        return Found(jacket.sleeve.thickness, thick=False)

    thickness = np.tile([10.0, 14.0, 12.0, 11.0], 256)
    many = with_values(built_afresh(), {"sleeve.thickness": thickness})
    found = design_by_design(up_to_13)
    with pytest.raises(DomainError) as refusal:
        found(many)
    assert refusal.value.out_of_range is not None
    assert refusal.value.out_of_range.tolist() == (thickness > 13.0).tolist()
    good = some_designs(many, np.flatnonzero(thickness < 13.0))
    assert np.asarray(found(good).thickness).tolist() == thickness[thickness < 13.0].tolist()
    # all, those in range, and the 256 others halved until each stands alone
    assert asked[:3] == [1024, 768, 256]
    assert len(asked) <= 2 + 2 * 256
