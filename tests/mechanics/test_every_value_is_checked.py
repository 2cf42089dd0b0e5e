"""Arguments that are out of range alone among others that are not, or just at an end of it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest

from jacketcheck.errors import DomainError
from jacketcheck.mechanics.adhesive_anchors import ring_area_share
from jacketcheck.mechanics.bar_steel import BarSteel, BarSteels, bar_stress
from jacketcheck.mechanics.block_shear import seam_block
from jacketcheck.mechanics.bolt_clamp_length import clamp_lengths, least_bolt_length
from jacketcheck.mechanics.bolt_installation import turn_of_nut_rotation
from jacketcheck.mechanics.bond_factors import yielded_bar_factor
from jacketcheck.mechanics.bond_law import BondLaw, weaker_bond_law
from jacketcheck.mechanics.concrete_law import elastic_concrete_law
from jacketcheck.mechanics.flat_shell import offset_on_radius
from jacketcheck.mechanics.grout_cubes import cylinder_strength_of_cubes
from jacketcheck.mechanics.jacket_shear import jacket_shear
from jacketcheck.mechanics.nominal_moment import nominal_moment
from jacketcheck.mechanics.noncontact_lap import effective_lap_length, lap_offset
from jacketcheck.mechanics.published_bond_laws import model_code_1990_bond_law
from jacketcheck.mechanics.restraint import Restraint

STEEL = BarSteel(469.0, 655.0, 0.0115, 0.09, 200e3)
STEELS = BarSteels(np.array([400.0, 400.0]), np.array([500.0, 820.0]), 0.0115, 0.09, 200e3)
LAW = BondLaw(15.0, 1.0, 2.0, 12.0, 0.4, 6.0)
RING = Restraint(
    inner_radius=800.0,
    core_radius=600.0,
    radial_compliance=0.5,
    sleeve_compliance=0.3,
    yield_pressure=6.0,
)


def block(rows: float) -> object:
    return seam_block(
        rows, at_end=False, columns=1, pitch=75.0, gauge=0.0, edge_distance=40.0,
        end_distance=40.0, thickness=10.0, hole_along=22.0, hole_across=22.0, damage=2.0,
    )  # fmt: skip


def moment(bars: list[float]) -> object:
    return nominal_moment(
        1e6, bar_position=np.array(bars), diameter=1000.0, bar_area=500.0, bar_yield=420.0,
        concrete_strength=30.0,
    )  # fmt: skip


REFUSED: dict[str, Callable[[], object]] = {
    "one of two joints with three sloped faces": lambda: turn_of_nut_rotation(
        75.0, diameter=24.0, sloped_faces=np.array([0, 3])
    ),
    "no row of bolts": lambda: block(0.0),
    "half a row of bolts": lambda: block(1.5),
    "concrete without stiffness": lambda: elastic_concrete_law(0.0),
    "concrete of negative stiffness": lambda: elastic_concrete_law(-30e3),
    "one of two laws with another exponent": lambda: weaker_bond_law(
        replace(LAW, exponent=np.array([0.4, 0.4])), replace(LAW, exponent=np.array([0.4, 0.3]))
    ),
    "ribs without spacing": lambda: model_code_1990_bond_law(
        30.0, bond_condition="good", clear_rib_spacing=0.0
    ),
    "a lap across a negative distance": lambda: lap_offset(-1.0, bar_spacing=240.0),
    "hardening at no known strain": lambda: bar_stress(
        0.001, replace(STEEL, hardening_strain=np.nan)
    ),
    "one of two steels twice as strong as it yields": lambda: yielded_bar_factor(0.01, STEELS),
    "one of two strains beyond the ultimate": lambda: yielded_bar_factor(
        np.array([0.01, 0.1]), STEEL
    ),
    "a bolt without length": lambda: clamp_lengths(0.0, thread_length=30.0, nut_height=20.0),
    "a thread without length": lambda: clamp_lengths(80.0, thread_length=0.0, nut_height=20.0),
    "a nut without height": lambda: clamp_lengths(80.0, thread_length=30.0, nut_height=0.0),
    "a negative protrusion": lambda: clamp_lengths(
        80.0, thread_length=30.0, nut_height=20.0, protrusion=-1.0
    ),
    "a negative tolerance": lambda: clamp_lengths(
        80.0, thread_length=30.0, nut_height=20.0, length_tolerance=-1.0
    ),
    "negative threads": lambda: clamp_lengths(
        80.0, thread_length=30.0, nut_height=20.0, clear_threads=-1.0
    ),
    "a bolt that ends inside its nut": lambda: least_bolt_length(
        40.0, nut_height=20.0, protrusion=-1.0
    ),
    "bars at a negative distance from the edge": lambda: ring_area_share(
        450.0, circle_radius=650.0, count=16, edge_distance=-1.0
    ),
    "a shell without radius": lambda: offset_on_radius(100.0, from_radius=0.0, to_radius=800.0),
    "a shell rolled to nothing": lambda: offset_on_radius(100.0, from_radius=800.0, to_radius=0.0),
    "one of two cubes too small": lambda: cylinder_strength_of_cubes(
        50.0, cube_side=np.array([150.0, 39.9])
    ),
    "one of two cubes too large": lambda: cylinder_strength_of_cubes(
        50.0, cube_side=np.array([150.0, 200.1])
    ),
    "one of two cubes too strong": lambda: cylinder_strength_of_cubes(
        np.array([50.0, 105.1]), cube_side=150.0
    ),
    "one of two cracks along the column": lambda: jacket_shear(
        250.0, thickness=10.0, jacket_diameter=1200.0, crack_angle=np.array([0.5, np.pi / 2.0])
    ),
    "one of three bars outside the section": lambda: moment([0.0, 100.0, 501.0]),
}


@pytest.mark.parametrize("ask", REFUSED.values(), ids=REFUSED)
def test_what_is_out_of_range_is_refused(ask: Callable[[], object]) -> None:
    with pytest.raises(DomainError):
        ask()


def test_cubes_at_the_ends_of_their_range() -> None:
    strengths = cylinder_strength_of_cubes(50.0, cube_side=np.array([40.0, 149.0, 150.0, 200.0]))
    # C40/50 of EN 1992-1-1 Table 3.1; cubes below 150 mm times 0.95 first: 47.5 lies between
    # C35/45 and C40/50
    assert strengths == pytest.approx([37.5, 37.5, 40.0, 40.0])


def test_a_lap_of_bars_in_contact_across_the_radius() -> None:
    assert float(lap_offset(0.0, bar_spacing=240.0)) == 120.0
    assert float(lap_offset(0.5, bar_spacing=240.0)) == pytest.approx(np.hypot(0.5, 120.0))


def test_a_lap_that_is_hardly_there() -> None:
    assert float(effective_lap_length(0.5, offset=0.2)) == pytest.approx(0.3)
    assert float(effective_lap_length(0.2, offset=0.5)) == 0.0


def test_a_ring_without_hoops_of_the_column() -> None:
    assert (RING.radial_play, RING.column_hoop_stiffness, RING.column_hoop_yield_pressure) == (
        0.0, 0.0, 0.0,
    )  # fmt: skip
    # statics of the grout ring: p_c R_c = p R
    assert float(RING.largest_core_pressure) == pytest.approx(6.0 * 800.0 / 600.0)
    for stiffness in (0.5, 50.0):
        hooped = replace(RING, column_hoop_stiffness=stiffness, column_hoop_yield_pressure=1.5)
        assert float(hooped.largest_core_pressure) == pytest.approx(8.0 + 1.5)


def test_bolts_and_nuts_take_no_more_than_their_lengths() -> None:
    assert float(least_bolt_length(40.0, nut_height=20.0, protrusion=0.0)) == 60.0
    plain = clamp_lengths(80.0, thread_length=30.0, nut_height=20.0)
    # from the end of the shank to where the nut is flush with the bolt's end
    assert (float(plain.least), float(plain.largest)) == (50.0, 60.0)
