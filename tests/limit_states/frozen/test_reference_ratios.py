"""Our own ratios of the invented case, to notice when they change; they prove nothing."""

from __future__ import annotations

import pytest
from pytest_regressions.data_regression import DataRegressionFixture

from tests.support.jackets import VARIANTS, built, rows


@pytest.mark.parametrize("variant", VARIANTS)
def test_every_ratio(variant: str, data_regression: DataRegressionFixture) -> None:
    """Four significant digits, in the order of evaluation."""
    found: dict[str, list[str]] = {}
    for one in rows(built(variant=variant)):
        line = f"{one.title}; {one.location}; {one.clause}: {float(one.ratio):.4g} ({one.kind})"
        found.setdefault(one.limit_state, []).append(line)
    data_regression.check(found)
