"""A displacement demand beyond which bars buckle is told where the verdict stands."""

from __future__ import annotations

import pytest

from jacketcheck.analysis.displacement import capacity_of_repaired
from tests.support.jackets import built, row


@pytest.mark.parametrize(("share", "told"), [(0.99, False), (1.01, True)])
def test_bars_that_buckle_before_the_demand(share: float, told: bool) -> None:  # noqa: FBT001 - a parameter of the test
    capacity = capacity_of_repaired(built())
    demand = share * float(capacity.buckling_displacement)
    assert demand < float(capacity.displacement)
    jacket = built(f'actions.displacement_demand = "{demand} mm"')
    result = row(jacket, "displacement-capacity", "against the demand")
    assert float(result.ratio) < 1.0
    assert any("buckle" in note for note in result.notes) == told
