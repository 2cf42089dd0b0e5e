"""Every bolt and plate formula: arrays like scalars, and no answer outside its range."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from typing import Any

import numpy as np
import pytest

from jacketcheck.errors import DomainError
from jacketcheck.mechanics import (
    bolt_bearing,
    bolt_installation,
    bolt_strength,
    bolt_tension,
    plate_strength,
    seam_detailing,
    slip,
    slip_hole_factors,
    slip_tension,
    splice_bending,
    wrench_access,
)
from jacketcheck.mechanics._arrays import Floats, Real
from jacketcheck.mechanics.block_shear import (
    BlockShearAreas,
    aashto_block_shear_resistance,
    aisc_block_shear_strength,
    seam_block,
)
from jacketcheck.mechanics.washer_rules import required_washers

FORMULAS: dict[Callable[..., Real], dict[str, float]] = {
    slip.aisc_slip_resistance: {"slip_coefficient": 0.5, "pretension": 173e3, "slip_planes": 2.0},
    partial(slip.aashto_slip_resistance, hole_size_factor=0.85): {
        "surface_factor": 0.5,
        "pretension": 173e3,
        "slip_planes": 2.0,
    },
    slip.aisc_filler_factor: {"fillers": 2.0},
    slip_tension.aisc_slip_tension_reduction: {"bolt_tension": 40e3, "pretension": 173e3},
    slip_tension.aashto_slip_tension_reduction: {"bolt_tension": 40e3, "pretension": 173e3},
    slip.probable_slip_load: {"slip_coefficient": 0.5, "bolt_tension": 20e3, "slip_planes": 1.0},
    bolt_strength.bolt_area: {"diameter": 22.0},
    bolt_strength.seam_joint_length: {"columns": 3.0, "gauge": 70.0},
    bolt_strength.aisc_long_joint_factor: {"joint_length": 1000.0},
    bolt_strength.aashto_long_joint_factor: {"joint_length": 1000.0},
    bolt_strength.aisc_bolt_shear_strength: {
        "diameter": 22.0,
        "shear_stress": 372.0,
        "shear_planes": 1.0,
        "long_joint_factor": 0.833,
    },
    partial(bolt_strength.aashto_bolt_shear_resistance, threads="included"): {
        "diameter": 22.0,
        "tensile_strength": 830.0,
        "shear_planes": 1.0,
        "long_joint_factor": 0.83,
    },
    bolt_tension.aisc_bolt_tension_strength: {"diameter": 22.0, "tensile_stress": 620.0},
    bolt_tension.aashto_bolt_tension_resistance: {"diameter": 22.0, "tensile_strength": 830.0},
    bolt_tension.aisc_tensile_stress_with_shear: {
        "required_shear_stress": 150.0,
        "tensile_stress": 620.0,
        "shear_stress": 372.0,
    },
    bolt_tension.aashto_bolt_tension_with_shear: {
        "shear": 60e3,
        "tension_resistance": 200e3,
        "shear_resistance": 125e3,
    },
    bolt_bearing.clear_distance_to_edge: {"edge_distance": 38.0, "hole": 24.0},
    bolt_bearing.clear_distance_between_holes: {"spacing": 75.0, "hole": 24.0},
    bolt_bearing.bearing_strength: {"diameter": 22.0, "thickness": 8.0, "tensile_strength": 400.0},
    bolt_bearing.tear_out_strength: {
        "clear_distance": 26.0,
        "thickness": 8.0,
        "tensile_strength": 400.0,
    },
    bolt_bearing.hole_strength: {
        "diameter": 22.0,
        "clear_distance": 26.0,
        "thickness": 8.0,
        "tensile_strength": 400.0,
    },
    plate_strength.seam_strip_width: {"pitch": 75.0, "end_distance": 30.0},
    plate_strength.net_width: {
        "gross_width": 75.0,
        "hole_count": 1.0,
        "hole": 24.0,
        "damage": 2.0,
    },
    plate_strength.effective_net_area: {"net_area": 500.0, "gross_area": 800.0},
    plate_strength.gross_yield_strength: {"yield_strength": 250.0, "gross_area": 800.0},
    plate_strength.net_rupture_strength: {
        "tensile_strength": 400.0,
        "effective_net_area": 500.0,
        "hole_factor": 0.9,
    },
    plate_strength.aisc_shear_yield_strength: {"yield_strength": 250.0, "gross_area": 800.0},
    plate_strength.aisc_shear_rupture_strength: {"tensile_strength": 400.0, "net_area": 500.0},
    plate_strength.aashto_shear_yield_resistance: {"yield_strength": 250.0, "gross_area": 800.0},
    plate_strength.aashto_shear_rupture_resistance: {
        "tensile_strength": 400.0,
        "net_area": 500.0,
        "hole_factor": 0.9,
    },
    splice_bending.splice_eccentricity: {
        "sleeve_thickness": 6.0,
        "outside_thickness": 10.0,
        "inside_thickness": 0.0,
    },
    splice_bending.splice_moment: {"hoop_force": 900.0, "eccentricity": 8.0, "moment_factor": 1.0},
    splice_bending.eccentric_splice_strength: {
        "thickness": 10.0,
        "steel_strength": 250.0,
        "eccentricity": 8.0,
        "net_ratio": 0.7,
        "moment_factor": 1.0,
    },
    splice_bending.eccentric_splice_first_yield: {
        "thickness": 10.0,
        "yield_strength": 250.0,
        "eccentricity": 8.0,
    },
    seam_detailing.aisc_min_spacing: {"diameter": 22.0, "hole": 24.0},
    seam_detailing.aisc_preferred_spacing: {"diameter": 22.0},
    partial(seam_detailing.aashto_min_spacing, hole_type="oversized"): {
        "diameter": 22.0,
        "hole": 28.0,
    },
    partial(seam_detailing.aisc_max_spacing, exposure="painted"): {"thickness": 8.0},
    seam_detailing.aashto_max_sealing_spacing: {"thickness": 8.0},
    seam_detailing.aisc_min_edge_distance: {"standard_hole_distance": 28.0, "increment": 2.0},
    partial(seam_detailing.aashto_min_end_distance, hole_type="oversized"): {
        "table_distance": 28.0,
        "diameter": 22.0,
        "hole": 28.0,
    },
    partial(seam_detailing.aisc_max_edge_distance, exposure="weathering"): {"thickness": 8.0},
    seam_detailing.aashto_max_edge_distance: {"thickness": 8.0},
    wrench_access.wrench_clearance_to_obstruction: {
        "tightening_clearance": 35.0,
        "entering_clearance": 20.0,
        "socket_diameter": 57.0,
    },
    wrench_access.wrench_clearance_between_bolts: {"socket_diameter": 57.0, "nut_width": 36.5},
    bolt_installation.tightening_torque: {
        "diameter": 22.0,
        "tension": 173e3,
        "torque_coefficient": 0.18,
    },
    bolt_installation.max_acceptance_torque: {"diameter": 22.0, "tension": 173e3},
    bolt_installation.verification_tension: {"pretension": 173e3},
    bolt_installation.turn_of_nut_rotation: {"bolt_length": 65.0, "diameter": 22.0},
    bolt_installation.required_bolt_length: {
        "grip": 18.0,
        "grip_allowance": 28.6,
        "washer_thickness": 4.0,
    },
    bolt_installation.unthreaded_length: {
        "bolt_length": 65.0,
        "thread_length": 38.0,
        "transition_length": 7.0,
    },
    bolt_installation.shortest_grip: {"bolt_length": 65.0, "thread_length": 38.0},
}
"""Formulas with arguments inside their range."""


def name_of(formula: Callable[..., Real]) -> str:
    return str(getattr(formula, "func", formula).__name__)


CASES = [
    pytest.param(formula, arguments, id=name_of(formula)) for formula, arguments in FORMULAS.items()
]
CASES_BY_ARGUMENT = [
    pytest.param(formula, arguments, argument, id=f"{name_of(formula)}-{argument}")
    for formula, arguments in FORMULAS.items()
    for argument in arguments
]


@pytest.mark.parametrize(("formula", "arguments"), CASES)
def test_arrays_give_what_scalars_give(
    formula: Callable[..., Real], arguments: dict[str, float]
) -> None:
    expected = float(formula(**arguments))
    assert np.isfinite(expected)
    arrays: dict[str, Floats] = {name: np.full((2, 1), value) for name, value in arguments.items()}
    arrays[next(iter(arrays))] = np.full(3, next(iter(arguments.values())))
    got = formula(**arrays)
    shape = (2, 3) if len(arguments) > 1 else (3,)
    np.testing.assert_allclose(got, np.full(shape, expected), rtol=1e-12)


@pytest.mark.parametrize("bad", [np.nan, np.inf, -1.0], ids=["nan", "inf", "negative"])
@pytest.mark.parametrize(("formula", "arguments", "argument"), CASES_BY_ARGUMENT)
def test_outside_the_range_there_is_no_answer(
    formula: Callable[..., Real], arguments: dict[str, float], argument: str, bad: float
) -> None:
    with pytest.raises(DomainError):
        formula(**{**arguments, argument: bad})
    with pytest.raises(DomainError):
        formula(**{**arguments, argument: np.array([arguments[argument], bad])})


@pytest.mark.parametrize(
    "word_in",
    [
        pytest.param(slip_hole_factors.aisc_slip_resistance_factor, id="aisc"),
        pytest.param(slip_hole_factors.rcsc_slip_resistance_factor, id="rcsc"),
        pytest.param(
            partial(slip_hole_factors.rcsc_slip_resistance_factor, "standard"), id="edition"
        ),
        pytest.param(slip_hole_factors.aashto_hole_size_factor, id="aashto"),
        pytest.param(plate_strength.punched_hole_factor, id="hole-making"),
        pytest.param(
            lambda word: bolt_bearing.bearing_strength(
                22.0, thickness=8.0, tensile_strength=400.0, hole=word
            ),
            id="bearing",
        ),
        pytest.param(lambda word: seam_detailing.aisc_max_spacing(8.0, exposure=word), id="paint"),
        pytest.param(
            lambda word: seam_detailing.aashto_min_spacing(22.0, hole=24.0, hole_type=word),
            id="spacing",
        ),
        pytest.param(
            lambda word: bolt_strength.aashto_bolt_shear_resistance(
                22.0, tensile_strength=830.0, threads=word, shear_planes=1
            ),
            id="threads",
        ),
    ],
)
def test_unknown_words_name_the_choices(word_in: Callable[..., object]) -> None:
    keyword = {"edition": "1999"} if isinstance(word_in, partial) else {}
    with pytest.raises(DomainError, match="one of"):
        word_in(**keyword) if keyword else word_in("elliptical")


def test_factors_never_exceed_one() -> None:
    with pytest.raises(DomainError, match="hole_size_factor"):
        slip.aashto_slip_resistance(0.5, pretension=1e5, slip_planes=1, hole_size_factor=1.1)
    with pytest.raises(DomainError, match="filler_factor"):
        slip.aisc_slip_resistance(0.5, pretension=1e5, slip_planes=1, filler_factor=1.1)
    with pytest.raises(DomainError, match="moment_factor"):
        splice_bending.splice_moment(900.0, eccentricity=8.0, moment_factor=1.1)


def test_snug_bolts_among_pretensioned_ones() -> None:
    slips = slip.aisc_slip_resistance(
        0.5, pretension=1e5, slip_planes=1, pretensioned=np.array([True, False])
    )
    np.testing.assert_array_equal(np.asarray(slips) > 0.0, [True, False])


def test_holes_that_leave_no_steel() -> None:
    with pytest.raises(DomainError, match="net_width"):
        plate_strength.net_width(24.0, hole_count=1, hole=22.0, damage=2.0)
    with pytest.raises(DomainError, match="clear_distance_to_edge"):
        bolt_bearing.clear_distance_to_edge(10.0, hole=22.0)
    with pytest.raises(DomainError, match="clear_distance_between_holes"):
        bolt_bearing.clear_distance_between_holes(20.0, hole=22.0)
    with pytest.raises(DomainError, match="area_of_holes"):
        plate_strength.effective_net_area(500.0, gross_area=499.0)


def test_rows_and_columns_are_whole() -> None:
    plate = bolt_bearing.HoleStrengths(edge=80e3, inner=120e3)
    with pytest.raises(DomainError, match="whole"):
        bolt_bearing.seam_row_strength(100e3, columns=1.5, sleeve=plate, outside_plate=plate)
    with pytest.raises(DomainError, match="columns"):
        bolt_bearing.seam_row_strength(100e3, columns=0, sleeve=plate, outside_plate=plate)


def test_hole_strengths_must_be_numbers() -> None:
    plate = bolt_bearing.HoleStrengths(edge=80e3, inner=120e3)
    with pytest.raises(DomainError, match="sleeve_inner"):
        bolt_bearing.seam_row_strength(
            100e3, columns=2, sleeve=plate._replace(inner=np.nan), outside_plate=plate
        )
    with pytest.raises(DomainError, match="inside_edge"):
        bolt_bearing.seam_row_strength(
            100e3,
            columns=2,
            sleeve=plate,
            outside_plate=plate,
            inside_plate=plate._replace(edge=-1.0),
        )


@pytest.mark.parametrize(
    "strength",
    [
        partial(aisc_block_shear_strength, yield_strength=250.0, tensile_strength=400.0),
        partial(
            aashto_block_shear_resistance,
            yield_strength=250.0,
            tensile_strength=400.0,
            hole_factor=0.9,
        ),
    ],
    ids=["aisc", "aashto"],
)
@pytest.mark.parametrize(
    "areas",
    [
        BlockShearAreas(np.nan, 1500.0, 500.0),
        BlockShearAreas(2000.0, 0.0, 500.0),
        BlockShearAreas(2000.0, 1500.0, -1.0),
        BlockShearAreas(2000.0, 1500.0, np.array([500.0, np.nan])),
    ],
    ids=["gross", "net", "tension", "array"],
)
def test_blocks_need_areas(
    strength: Callable[[BlockShearAreas], Real], areas: BlockShearAreas
) -> None:
    with pytest.raises(DomainError):
        strength(areas)


def test_blocks_broadcast_over_designs() -> None:
    rows = np.array([2.0, 8.0, 20.0])
    block = seam_block(
        rows,
        at_end=False,
        columns=1,
        pitch=75.0,
        gauge=0.0,
        edge_distance=40.0,
        end_distance=40.0,
        thickness=np.array([[6.0], [10.0]]),
        hole_along=24.0,
        hole_across=24.0,
        damage=2.0,
    )
    expected = (rows - 1.0) * 49.0 * np.array([[6.0], [10.0]])
    np.testing.assert_allclose(block.areas.net_tension, expected)


@pytest.mark.parametrize("length", [12.001, 20.0])
def test_bolts_longer_than_twelve_diameters_need_a_test(length: float) -> None:
    with pytest.raises(DomainError, match="test"):
        bolt_installation.turn_of_nut_rotation(length * 22.0, diameter=22.0)


@pytest.mark.parametrize("faces", [-1, 3])
def test_a_bolt_has_two_outer_faces(faces: int) -> None:
    with pytest.raises(DomainError, match="sloped_faces"):
        bolt_installation.turn_of_nut_rotation(65.0, diameter=22.0, sloped_faces=faces)


def test_lengths_converted_from_inches_stay_in_their_band() -> None:
    # 4 d of a 7/8 bolt, 3-1/2 in, after a conversion that is off in the last digit
    diameter = 0.875 * 25.4
    for length in (3.5 * 25.4 * (1.0 - 1e-15), 3.5 * 25.4 * (1.0 + 1e-15)):
        assert float(bolt_installation.turn_of_nut_rotation(length, diameter=diameter)) == 120.0


def test_fully_threaded_bolt_has_no_shank() -> None:
    assert float(bolt_installation.unthreaded_length(40.0, thread_length=40.0)) == 0.0
    assert float(bolt_installation.unthreaded_length(40.0, thread_length=50.0)) == 0.0


@pytest.mark.parametrize(
    "wrong",
    [
        {"bolt_diameter": np.nan},
        {"bolt_tensile_strength": -1.0},
        {"plate_yield_strength": 0.0},
        {"tightening": "hammer"},
        {"nut_side_hole": "square"},
    ],
    ids=str,
)
def test_washers_need_sound_arguments(wrong: dict[str, Any]) -> None:
    sound: dict[str, Any] = {
        "bolt_diameter": 22.0,
        "bolt_tensile_strength": 830.0,
        "tightening": "turn-of-nut",
        "head_side_hole": "standard",
        "nut_side_hole": "standard",
        "plate_yield_strength": 345.0,
    }
    with pytest.raises(DomainError):
        required_washers(**{**sound, **wrong})


def test_long_slot_of_a_large_group_150_bolt_needs_both_washers() -> None:
    rules = required_washers(
        bolt_diameter=30.0,
        bolt_tensile_strength=1040.0,
        tightening="turn-of-nut",
        head_side_hole="long-slot-parallel",
        nut_side_hole="standard",
        plate_yield_strength=345.0,
    )
    assert [rule.place for rule in rules] == ["head", "head"]
    assert all(rule.reason and rule.source for rule in rules)
