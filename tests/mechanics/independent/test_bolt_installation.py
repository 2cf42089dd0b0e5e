"""Torque and geometry of bolts against a units library and drawn positions."""

from __future__ import annotations

import pint
import pytest

from jacketcheck.mechanics.bolt_installation import (
    shortest_grip,
    threads_clear_shear_plane,
    tightening_torque,
)


def test_torque_against_a_units_library() -> None:
    units: pint.UnitRegistry[float] = pint.UnitRegistry()
    torque = 0.18 * units.Quantity(0.875, "inch") * units.Quantity(39.0, "kip")
    expected = torque.to("N*mm").magnitude
    ours = tightening_torque(
        units.Quantity(0.875, "inch").to("mm").magnitude,
        tension=units.Quantity(39.0, "kip").to("N").magnitude,
        torque_coefficient=0.18,
    )
    assert float(ours) == pytest.approx(expected, rel=1e-12)


@pytest.mark.parametrize("ply", [6.0, 10.0, 20.0, 21.9, 22.1, 30.0])
def test_threads_against_stations_along_the_bolt(ply: float) -> None:
    # mark each tenth of a millimetre of the bolt as shank or thread and look at the shear plane
    length, thread, transition = 65.0, 36.0, 7.0
    stations = [station / 10.0 for station in range(int(length * 10) + 1)]
    shank = [station for station in stations if station <= length - thread - transition]
    clear = threads_clear_shear_plane(
        length, thread_length=thread, transition_length=transition, shear_plane_depth=ply
    )
    assert bool(clear) is (max(shank) >= ply)


def test_nut_stops_at_the_end_of_the_thread() -> None:
    # the nut can travel over the thread only: its face gets no nearer to the head than the rest
    length, thread = 65.0, 36.0
    travel = [length - thread / 100 * part for part in range(101)]
    assert float(shortest_grip(length, thread_length=thread)) == pytest.approx(min(travel))
