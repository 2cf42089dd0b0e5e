"""Bolt shear through filler plates."""

from __future__ import annotations

import pytest
from jacketcheck_australasia.mechanics.bolt_strength import filler_plate_factor


@pytest.mark.parametrize(
    ("thickness", "factor"), [(0.0, 1.0), (6.0, 1.0), (6.1, 0.85), (20.0, 0.85)]
)
def test_filler_plates(thickness: float, factor: float) -> None:
    # AS 4100 9.2.2.5 (from memory): 15 % less for more than 6 mm and up to 20 mm
    assert float(filler_plate_factor(thickness)) == factor
