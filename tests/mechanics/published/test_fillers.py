"""Bolt shear through fillers."""

from __future__ import annotations

import pytest

from jacketcheck.mechanics._customary_units import INCH
from jacketcheck.mechanics.bolt_strength import aashto_filler_factor, aisc_filler_shear_factor


@pytest.mark.parametrize(
    ("inches", "factor"),
    [
        # AISC 360 J5.2: 1 - 0.4 (t - 0.25), not below 0.85; none up to 1/4 in
        (0.0, 1.0),
        (0.25, 1.0),
        (0.375, 0.95),
        (0.5, 0.90),
        (0.625, 0.85),
        # a filler of 25 mm: 0.7, so that 0.85 counts (AISC 360-16 J5.2)
        (25.0 / 25.4, 0.85),
    ],
)
def test_aisc(inches: float, factor: float) -> None:
    assert float(aisc_filler_shear_factor(inches * INCH)) == pytest.approx(factor)


@pytest.mark.parametrize(
    ("filler", "connected", "splices", "factor"),
    [
        # AASHTO LRFD 6.13.6.1.4 (from memory): R = (1 + g)/(1 + 2 g), g = A_f/A_p
        (0.25, 1.0, 1.25, 1.25 / 1.5),
        (0.5, 1.0, 0.5, 2.0 / 3.0),
        (1.0, 1.0, 2.0, 2.0 / 3.0),
        # below 1/4 in none
        (0.24, 0.375, 0.5, 1.0),
    ],
)
def test_aashto(filler: float, connected: float, splices: float, factor: float) -> None:
    found = aashto_filler_factor(
        filler * INCH, connected_thickness=connected * INCH, splice_thickness=splices * INCH
    )
    assert float(found) == pytest.approx(factor)
