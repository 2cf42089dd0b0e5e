"""Cylinder strength of cubes against the strength classes."""

from __future__ import annotations

import numpy as np
import pytest

from jacketcheck.errors import DomainError
from jacketcheck.mechanics.grout_cubes import cylinder_strength_of_cubes

# EN 1992-1-1:2004 Table 3.1, exact
CLASSES = [
    (12, 15), (16, 20), (20, 25), (25, 30), (30, 37), (35, 45), (40, 50), (45, 55), (50, 60),
    (55, 67), (60, 75), (70, 85), (80, 95), (90, 105),
]  # fmt: skip


@pytest.mark.parametrize(("cylinder", "cube"), CLASSES)
def test_strength_classes(cylinder: float, cube: float) -> None:
    assert float(cylinder_strength_of_cubes(cube, cube_side=150.0)) == pytest.approx(cylinder)


def test_two_inch_cubes_are_taken_at_0_76() -> None:
    # 0.95 x 0.8 at 52.63 MPa, where a 150 mm cube would give C40/50
    assert float(cylinder_strength_of_cubes(50.0 / 0.95, cube_side=50.8)) == pytest.approx(40.0)


def test_arrays() -> None:
    found = cylinder_strength_of_cubes(np.array([25.0, 37.0]), cube_side=150.0)
    np.testing.assert_allclose(found, [20.0, 30.0])


@pytest.mark.parametrize("strength", [0.0, -1.0, float("nan"), 106.0])
def test_strengths_outside_the_table(strength: float) -> None:
    with pytest.raises(DomainError):
        cylinder_strength_of_cubes(strength, cube_side=150.0)


@pytest.mark.parametrize("side", [39.0, 201.0, float("nan")])
def test_cubes_that_nobody_tests(side: float) -> None:
    with pytest.raises(DomainError):
        cylinder_strength_of_cubes(40.0, cube_side=side)
