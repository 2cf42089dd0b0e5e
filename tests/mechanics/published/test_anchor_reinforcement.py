"""Anchor reinforcement and development of its ends, by hand after ACI 318-19 (from memory).

Hooks: 60,000 psi, 4000 psi, psi_r 1.6, psi_o 1.25, psi_c 4000/15,000 + 0.6 = 0.8667:
60,000 × 1.7333/(55 × 63.246) = 29.90, times d_b^1.5.
"""

from __future__ import annotations

import numpy as np
import pytest

from jacketcheck.errors import DomainError
from jacketcheck.mechanics._arguments import BarEnd
from jacketcheck.mechanics.anchor_reinforcement import (
    anchor_reinforcement_strength,
    end_development_length,
)

KSI = 6.894757293168
INCH = 25.4


@pytest.mark.parametrize(
    ("diameter", "end", "inches"),
    [
        (1.0, "hooked", 29.90),
        (0.75, "hooked", 19.42),
        (1.0, "headed", 21.92),  # 75 in the place of 55
        (0.25, "headed", 6.0),  # not below 6 in
        # 25.4.2.3, other cases: 3 × 60,000/(50 × 63.246) for No. 6, over 40 for No. 7 and larger
        (0.75, "straight", 42.69),
        (1.0, "straight", 71.15),
    ],
)
def test_development_of_an_end(diameter: float, end: BarEnd, inches: float) -> None:
    found = end_development_length(
        diameter * INCH, yield_strength=60.0 * KSI, concrete_strength=4.0 * KSI, end=end
    )
    assert float(found) / INCH == pytest.approx(inches, abs=0.01)


def test_strong_concrete_counts_once() -> None:
    # 6000 psi: psi_c = 1; 60,000 × 2/(55 × 77.46) = 28.17
    found = end_development_length(
        INCH, yield_strength=60.0 * KSI, concrete_strength=6.0 * KSI, end="hooked"
    )
    assert float(found) / INCH == pytest.approx(28.17, abs=0.01)


def test_tension_along_the_anchors() -> None:
    # 60 No. 6 of 60 ksi, upright and at 60 degrees
    area = 60 * 0.44 * INCH**2
    found = anchor_reinforcement_strength(
        area, yield_strength=60.0 * KSI, angle=np.radians([0.0, 60.0])
    )
    np.testing.assert_allclose(found / 4448.2216, [1584.0, 792.0], rtol=1e-6)


@pytest.mark.parametrize("angle", [-0.1, np.pi / 2.0, np.nan])
def test_bars_that_do_not_cross(angle: float) -> None:
    with pytest.raises(DomainError, match="angle"):
        anchor_reinforcement_strength(1000.0, yield_strength=420.0, angle=angle)
