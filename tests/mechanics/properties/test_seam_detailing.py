"""What layout limits and installation figures must do for any input."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jacketcheck.mechanics._arguments import HoleType
from jacketcheck.mechanics.bolt_installation import (
    max_acceptance_torque,
    required_bolt_length,
    shortest_grip,
    threads_clear_shear_plane,
    tightening_torque,
    turn_of_nut_rotation,
)
from jacketcheck.mechanics.seam_detailing import (
    aashto_max_edge_distance,
    aashto_max_sealing_spacing,
    aashto_min_end_distance,
    aashto_min_spacing,
    aisc_max_edge_distance,
    aisc_max_spacing,
    aisc_min_edge_distance,
    aisc_min_spacing,
    aisc_preferred_spacing,
)
from jacketcheck.mechanics.wrench_access import (
    wrench_clearance_between_bolts,
    wrench_clearance_to_obstruction,
)

diameters = st.floats(12.0, 40.0)
thicknesses = st.floats(3.0, 60.0)
enlarged: st.SearchStrategy[HoleType] = st.sampled_from(
    ["oversized", "short-slot-perpendicular", "long-slot-parallel"]
)


@given(diameter=diameters, clearance=st.floats(0.5, 10.0))
def test_least_spacing_keeps_a_diameter_clear_and_is_below_the_preferred_one(
    diameter: float, clearance: float
) -> None:
    hole = diameter + clearance
    least = float(aisc_min_spacing(diameter, hole=hole))
    assert least - hole >= diameter * (1.0 - 1e-12)
    standard = float(aisc_min_spacing(diameter, hole=diameter * 1.1))
    assert standard < float(aisc_preferred_spacing(diameter))


@given(diameter=diameters, slot=st.floats(1.0, 80.0), hole_type=enlarged)
def test_enlarged_holes_never_come_closer(
    diameter: float, slot: float, hole_type: HoleType
) -> None:
    hole = diameter + slot
    standard = float(aashto_min_spacing(diameter, hole=hole, hole_type="standard"))
    spacing = float(aashto_min_spacing(diameter, hole=hole, hole_type=hole_type))
    assert spacing >= standard
    assert spacing - hole >= 2.0 * diameter * (1.0 - 1e-12)
    end = float(aashto_min_end_distance(30.0, diameter=diameter, hole=hole, hole_type=hole_type))
    assert end >= 30.0
    assert end - hole / 2.0 >= diameter * (1.0 - 1e-12)


@given(thickness=thicknesses)
def test_weathering_steel_has_the_stricter_limits(thickness: float) -> None:
    spacing = [float(aisc_max_spacing(thickness, exposure=e)) for e in ("weathering", "painted")]
    edge = [float(aisc_max_edge_distance(thickness, exposure=e)) for e in ("weathering", "painted")]
    assert spacing[0] < spacing[1]
    assert edge[0] < edge[1]
    assert edge[0] == pytest.approx(float(aashto_max_edge_distance(thickness)))


@given(thin=thicknesses, more=st.floats(0.0, 30.0))
def test_thicker_plates_never_need_closer_bolts(thin: float, more: float) -> None:
    assert aashto_max_sealing_spacing(thin) <= aashto_max_sealing_spacing(thin + more)
    assert aashto_max_edge_distance(thin) <= aashto_max_edge_distance(thin + more)


@given(table=st.floats(18.0, 60.0), increment=st.floats(0.0, 30.0))
def test_increment_is_added(table: float, increment: float) -> None:
    least = float(aisc_min_edge_distance(table, increment=increment))
    assert least - increment == pytest.approx(table)


@given(tightening=st.floats(20.0, 60.0), entering=st.floats(0.0, 60.0), socket=st.floats(0.0, 120))
def test_wrench_clears_everything(tightening: float, entering: float, socket: float) -> None:
    room = float(
        wrench_clearance_to_obstruction(
            tightening_clearance=tightening, entering_clearance=entering, socket_diameter=socket
        )
    )
    assert room == max(tightening, entering, socket / 2.0)


@given(socket=st.floats(30.0, 120.0), nut=st.floats(18.0, 70.0))
def test_socket_passes_the_corner_of_the_next_nut(socket: float, nut: float) -> None:
    room = float(wrench_clearance_between_bolts(socket_diameter=socket, nut_width=nut))
    corner_to_corner = nut / (3.0**0.5 / 2.0)
    assert room - socket / 2.0 == pytest.approx(corner_to_corner / 2.0)


@given(diameter=diameters, tension=st.floats(0.0, 500e3), coefficient=st.floats(0.05, 0.25))
def test_torque_stays_acceptable_up_to_a_coefficient_of_a_quarter(
    diameter: float, tension: float, coefficient: float
) -> None:
    torque = tightening_torque(diameter, tension=tension, torque_coefficient=coefficient)
    assert float(torque) <= float(max_acceptance_torque(diameter, tension=tension)) * (1 + 1e-12)


@given(
    diameter=diameters,
    short=st.floats(0.5, 12.0),
    longer=st.floats(0.5, 12.0),
    faces=st.integers(0, 2),
)
def test_longer_bolts_never_turn_less(
    diameter: float, short: float, longer: float, faces: int
) -> None:
    short, longer = sorted((short, longer))
    turns = [
        float(turn_of_nut_rotation(slender * diameter, diameter=diameter, sloped_faces=faces))
        for slender in (short, longer)
    ]
    assert turns[0] <= turns[1]
    assert 120.0 <= turns[0] <= 360.0


@given(grip=st.floats(8.0, 80.0), allowance=st.floats(17.0, 45.0), washers=st.floats(0.0, 16.0))
def test_shank_and_thread_make_up_the_bolt(grip: float, allowance: float, washers: float) -> None:
    length = float(required_bolt_length(grip, grip_allowance=allowance, washer_thickness=washers))
    assert length - grip - washers == pytest.approx(allowance)
    thread = 36.0
    shank = float(shortest_grip(length, thread_length=thread))
    clear = threads_clear_shear_plane(
        length, thread_length=thread, transition_length=0.0, shear_plane_depth=grip
    )
    assert bool(clear) is (shank >= grip)
