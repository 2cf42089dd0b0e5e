"""Bolt shear through packings."""

from __future__ import annotations

import pytest
from jacketcheck_europe.mechanics.bolts import packing_factor


@pytest.mark.parametrize(
    ("packing", "diameter", "factor"),
    [(0.0, 20.0, 1.0), (20.0 / 3.0, 20.0, 1.0), (10.0, 20.0, 9.0 / 9.5), (24.0, 24.0, 9.0 / 11.0)],
)
def test_packings(packing: float, diameter: float, factor: float) -> None:
    # EN 1993-1-8:2005 Eq. 3.3 (from memory): 9 d/(8 d + 3 t_p), at most 1
    assert float(packing_factor(packing, diameter=diameter)) == pytest.approx(factor)
