"""No displacement capacity from a model whose bars debond or whose base does not hold."""

from __future__ import annotations

import math

import numpy as np
import pytest

from jacketcheck.causes import roots_of
from jacketcheck.jacket.designs import with_values
from jacketcheck.results import Kind, Status
from tests.support.jackets import built, row, rows

JUDGED = ("displacement-capacity", "p-delta")


@pytest.mark.parametrize("variant", ["thick, unchipped", "thin, snug bolts"])
def test_bars_that_debond_leave_no_capacity(variant: str) -> None:
    found = rows(built(variant=variant))
    roots = dict(zip(map(id, found), roots_of(found), strict=True))
    judged = [one for one in found if one.limit_state in JUDGED and one.kind is Kind.LIMIT]
    assert len(judged) == 3  # capacity, buckling of the bars above, P-Delta
    for one in judged:
        assert one.status is Status.EXCEEDS
        assert any("debond" in note for note in one.notes)
        assert roots[id(one)], "a consequence, which does not govern"


def test_sound_bars_have_one() -> None:
    for name in JUDGED:
        found = [one for one in rows(built(), name) if one.kind is Kind.LIMIT]
        assert all(one.status is Status.OK for one in found)


def test_a_base_that_does_not_hold_leaves_none() -> None:
    weak = built("added_bars.count = 4\ndamage = []")
    assert float(row(weak, "base-moment").ratio) > 1.0
    found = row(weak, "displacement-capacity", "against the demand")
    assert math.isinf(float(found.ratio))
    assert any("base does not carry" in note for note in found.notes)


def test_each_of_many_designs_by_itself() -> None:
    two = with_values(built(), {"bolts.pretension": np.array([1e3, 173.5e3])})
    ratio = np.asarray(row(two, "displacement-capacity", "against the demand").ratio)
    assert np.isinf(ratio[0])
    assert ratio[1] < 1.0
