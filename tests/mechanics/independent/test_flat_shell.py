"""Flat lengths against a polygon of many corners, and clamp lengths against a bolt by hand."""

from __future__ import annotations

import numpy as np
import pytest

from jacketcheck.errors import DomainError
from jacketcheck.mechanics.bolt_clamp_length import clamp_lengths, least_bolt_length
from jacketcheck.mechanics.en_tightening import combined_method_rotation, torque_method_steps
from jacketcheck.mechanics.flat_shell import developed_half_shell, offset_on_radius


def test_half_shell_is_as_long_as_a_polygon_along_its_middle() -> None:
    radius, gap, corners = (1574.8 + 12.7) / 2.0, 25.4, 200_001
    half = gap / 2.0 / radius
    angles = np.linspace(half, np.pi - half, corners)
    points = radius * np.exp(1j * angles)
    polygon = float(np.sum(np.abs(np.diff(points))))
    length = developed_half_shell(1574.8, thickness=12.7, seam_gap=gap)
    assert float(length) == pytest.approx(polygon, rel=1e-9)


def test_holes_on_one_radial_line_meet() -> None:
    sleeve, plate, offset = 793.75, 804.9, 152.4
    on_plate = float(offset_on_radius(offset, from_radius=sleeve, to_radius=plate))
    on_sleeve = sleeve * np.exp(1j * offset / sleeve)
    on_outside = plate * np.exp(1j * on_plate / plate)
    assert np.angle(on_outside) == pytest.approx(np.angle(on_sleeve), abs=1e-12)


def test_arrays_and_ranges() -> None:
    lengths = developed_half_shell(np.array([1000.0, 2000.0]), thickness=10.0, seam_gap=20.0)
    assert np.shape(lengths) == (2,)
    for bad in (0.0, -1.0, np.nan):
        with pytest.raises(DomainError):
            developed_half_shell(bad, thickness=10.0, seam_gap=20.0)
    with pytest.raises(DomainError, match="half the circumference"):
        developed_half_shell(10.0, thickness=1.0, seam_gap=100.0)
    with pytest.raises(DomainError):
        offset_on_radius(-1.0, from_radius=1.0, to_radius=1.0)


@pytest.mark.parametrize("bad", [0.0, -1.0, np.nan])
def test_figures_that_no_bolt_has(bad: float) -> None:
    with pytest.raises(DomainError):
        clamp_lengths(bad, thread_length=30.0, nut_height=18.0)
    with pytest.raises(DomainError):
        least_bolt_length(bad, nut_height=18.0, protrusion=2.0)
    with pytest.raises(DomainError):
        torque_method_steps(20.0, pretension=bad, torque_coefficient=0.12)
    with pytest.raises(DomainError):
        combined_method_rotation(bad, diameter=20.0)
