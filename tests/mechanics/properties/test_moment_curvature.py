"""What must hold for the response of any circular section."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from jacketcheck.mechanics._arrays import Floats
from jacketcheck.mechanics._equilibrium import EquilibriumSolver
from jacketcheck.mechanics.bar_steel import BarSteel
from jacketcheck.mechanics.concrete_law import popovics_concrete_law, unconfined_concrete_law
from jacketcheck.mechanics.moment_curvature import (
    MomentCurvature,
    curvature_range,
    moment_curvature,
)
from jacketcheck.mechanics.section import BarGroup, CircularSection, ConcreteZone
from jacketcheck.mechanics.section_geometry import chord_strips
from jacketcheck.mechanics.section_limits import (
    bilinear_curve,
    first_yield,
    nominal_point,
    peak_point,
    ultimate_point,
)

STEEL = BarSteel(475.0, 655.0, 0.0115, 0.09, 200e3)
few = settings(max_examples=30, deadline=None)


@dataclass(frozen=True)
class Column:
    """A drawn column: diameter [mm], bars, bar ratio, strengths ratio and load ratio."""

    diameter: float
    bars: int
    bar_ratio: float
    confinement: float
    load_ratio: float

    def section(
        self,
        *,
        scale: float = 1.0,
        steel: float = 1.0,
        turn: float = 0.0,
        stress_limit: Floats | float = np.inf,
    ) -> CircularSection:
        diameter = scale * self.diameter
        core = popovics_concrete_law(
            peak_stress=30.0 * self.confinement,
            peak_strain=0.002 * (5.0 * self.confinement - 4.0),
            elastic_modulus=27e3,
            ultimate_strain=0.02,
        )
        shell = unconfined_concrete_law(strength=30.0, elastic_modulus=27e3)
        area = self.bar_ratio * 0.25 * np.pi * diameter**2 / self.bars
        bars = BarGroup.ring(
            self.bars,
            radius=0.42 * diameter,
            area=steel * area,
            steel=STEEL,
            first_angle=turn,
            stress_limit=stress_limit,
        )
        zones = (ConcreteZone("core", 0.9 * diameter, core), ConcreteZone("cover", diameter, shell))
        return CircularSection(zones, (bars,))

    @property
    def axial_load(self) -> float:
        return self.load_ratio * 30.0 * 0.25 * np.pi * self.diameter**2


columns = st.builds(
    Column,
    diameter=st.floats(600.0, 2400.0),
    bars=st.integers(6, 40),
    bar_ratio=st.floats(0.005, 0.04),
    confinement=st.floats(1.1, 2.0),
    load_ratio=st.floats(-0.02, 0.3),
)
lightly_loaded = st.builds(
    Column,
    diameter=st.floats(600.0, 2400.0),
    bars=st.integers(8, 40),
    bar_ratio=st.floats(0.005, 0.03),
    confinement=st.floats(1.1, 2.0),
    load_ratio=st.floats(0.0, 0.1),
)


def _response(
    section: CircularSection, axial_load: float, angle: float = 0.0, count: int = 60
) -> MomentCurvature:
    curvature = curvature_range(section, count=count)
    return moment_curvature(section, axial_load=axial_load, curvature=curvature, angle=angle)


@few
@given(column=columns, angle=st.floats(0.0, 2.0 * np.pi))
def test_reported_strains_carry_the_axial_load(column: Column, angle: float) -> None:
    section = column.section()
    response = _response(section, column.axial_load, angle, count=30)
    edges = np.linspace(-0.5, 0.5, 3001) * section.diameter
    discs = [np.stack(chord_strips(zone.outer_diameter, edges=edges)) for zone in section.zones]
    y = discs[1][1] / discs[1][0]
    good = response.converged
    strain = response.centre_strain[good, None] + response.curvature[good, None] * y
    inner, outer = section.zones[0].law, section.zones[1].law
    force = inner.stress_at(strain) @ discs[0][0] + outer.stress_at(strain) @ (
        discs[1][0] - discs[0][0]
    )
    at_bar = -response.bar_strain[good]
    displaced = np.where(section.bar_zone == 0, inner.stress_at(at_bar), outer.stress_at(at_bar))
    force = force + (-response.bar_stress[good] - displaced) @ section.bar_area
    assert force == pytest.approx(column.axial_load, abs=3e-3 * section.squash_load)


@few
@given(column=columns, more=st.floats(0.0, 0.5))
def test_the_plane_with_the_smallest_strain_is_taken(column: Column, more: float) -> None:
    # cover that spalls gives sections a second, larger strain for the same load
    section = column.section()
    load = column.axial_load + more * 30.0 * section.gross_area
    response = _response(section, load, count=20)
    solver = EquilibriumSolver.of(section, axial_load=load, angle=0.0, strips=200)
    dense = np.concatenate([np.linspace(-0.1, -1e-4, 300), np.linspace(0.0, 0.08, 801)])
    _, excess = solver._excess(solver.fine, response.curvature, None, dense)
    over = excess > 1e-4 * section.squash_load
    whole = response.converged & ~response.bar_fractured.any(axis=1) & over.any(axis=1)
    first = dense[np.argmax(over, axis=1)]
    assert np.all(response.extreme_compressive_strain[whole] <= first[whole] + 2e-4)


@few
@given(column=columns, turns=st.integers(1, 5), angle=st.floats(0.0, 3.0))
def test_turning_by_the_bar_spacing_changes_nothing(
    column: Column, turns: int, angle: float
) -> None:
    section = column.section()
    turned = angle + turns * 2.0 * np.pi / column.bars
    one, other = (_response(section, column.axial_load, each) for each in (angle, turned))
    assert one.converged.tolist() == other.converged.tolist()
    assert other.moment == pytest.approx(one.moment, rel=1e-3, abs=1e-4 * one.moment.max())
    # and mirrored about a bar
    mirrored = _response(section, column.axial_load, -angle)
    assert mirrored.moment == pytest.approx(one.moment, rel=1e-3, abs=1e-4 * one.moment.max())
    assert mirrored.transverse_moment == pytest.approx(
        -one.transverse_moment, abs=1e-3 * one.moment.max()
    )


@few
@given(column=columns, seed=st.integers(0, 10_000), angle=st.floats(0.0, 3.0))
def test_reversing_the_bars_and_the_sense_changes_nothing(
    column: Column, seed: int, angle: float
) -> None:
    limits = np.random.default_rng(seed).choice([0.0, 200.0, 500.0, np.inf], column.bars)
    there = column.section(stress_limit=limits)
    back = column.section(stress_limit=limits, turn=np.pi)
    one = _response(there, column.axial_load, angle)
    other = _response(back, column.axial_load, angle + np.pi)
    assert other.moment == pytest.approx(one.moment, rel=1e-3, abs=1e-4 * one.moment.max())
    assert other.bar_stress == pytest.approx(one.bar_stress, abs=2.0)


@few
@given(column=lightly_loaded, seed=st.integers(0, 10_000), angle=st.floats(0.0, 3.0))
def test_limits_of_bond_only_reduce_the_moment(column: Column, seed: int, angle: float) -> None:
    limits = np.random.default_rng(seed).choice([0.0, 200.0, 400.0, np.inf], column.bars)
    whole = _response(column.section(), column.axial_load, angle)
    capped = _response(column.section(stress_limit=limits), column.axial_load, angle)
    assume(np.isfinite(limits).any())
    assert peak_point(capped).moment <= peak_point(whole).moment * (1.0 + 1e-6)
    assert np.all(np.abs(capped.bar_stress) <= np.minimum(limits, 655.0) + 1e-6)


@few
@given(column=lightly_loaded, more=st.floats(1.01, 1.6))
def test_more_steel_never_lowers_the_yield_moment(column: Column, more: float) -> None:
    weak, strong = (
        first_yield(_response(column.section(steel=steel), column.axial_load))
        for steel in (1.0, more)
    )
    assert strong.moment >= weak.moment


@few
@given(column=lightly_loaded, more=st.floats(0.005, 0.05))
def test_more_axial_load_never_lowers_the_yield_moment(column: Column, more: float) -> None:
    section = column.section()
    added = more * 30.0 * section.gross_area
    light, heavy = (
        first_yield(_response(section, load))
        for load in (column.axial_load, column.axial_load + added)
    )
    assert heavy.moment >= light.moment


@few
@given(column=columns, scale=st.floats(0.2, 3.0))
def test_moments_scale_with_the_cube_of_the_size(column: Column, scale: float) -> None:
    one = _response(column.section(), column.axial_load)
    other = _response(column.section(scale=scale), column.axial_load * scale**2)
    assert other.curvature * scale == pytest.approx(one.curvature)
    assert other.moment / scale**3 == pytest.approx(
        one.moment, rel=2e-3, abs=1e-4 * one.moment.max()
    )


@few
@given(column=lightly_loaded)
def test_limits_come_in_order(column: Column) -> None:
    response = _response(column.section(), column.axial_load, count=100)
    start, nominal, ultimate = (
        first_yield(response),
        nominal_point(response),
        ultimate_point(response),
    )
    assert start.curvature < nominal.curvature < ultimate.curvature
    curve = bilinear_curve(response)
    assert start.moment <= curve.plastic_moment <= peak_point(response).moment
    assert curve.curvature_ductility > 1.0
