"""What must hold for any confined core, whatever the numbers."""

from __future__ import annotations

from dataclasses import dataclass, fields, replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from jacketcheck.mechanics.concrete_properties import elastic_modulus_mander
from jacketcheck.mechanics.confinement import (
    PRESSURE_RATIO_LIMIT,
    combined_ultimate_strain,
    confined_strength,
    pressure_ratio_for_strength_ratio,
    strength_ratio,
    ultimate_strain,
)
from jacketcheck.mechanics.core_concrete import CoreConcrete, printed_dilation_coefficient
from jacketcheck.mechanics.dilation import (
    DilationEquilibrium,
    axial_strain_at_hoop_strain,
    axial_strain_at_sleeve_yield,
    dilation_equilibrium,
)
from jacketcheck.mechanics.restraint import Restraint

STRENGTH = st.floats(20.0, 45.0)
AXIAL = st.floats(1e-5, 0.05)
BEYOND_PEAK = st.floats(0.003, 0.03)


@dataclass(frozen=True)
class Design:
    """A core in a sleeve with a stiff annulus of a twentieth of its radius."""

    strength: float
    radius: float
    thickness: float
    play: float = 0.0
    hoops: float = 0.0
    unit: float = 1.0

    @property
    def core(self) -> CoreConcrete:
        modulus = np.asarray(elastic_modulus_mander(self.strength))
        return CoreConcrete(self.unit * self.strength, self.unit * modulus)

    @property
    def restraint(self) -> Restraint:
        inner = 1.05 * self.radius
        shell = inner**2 / (self.unit * 200e3 * self.thickness)
        return Restraint(
            inner_radius=inner,
            core_radius=self.radius,
            radial_compliance=shell * 1.05,
            sleeve_compliance=shell,
            yield_pressure=self.unit * 300.0 * self.thickness / inner,
            radial_play=self.play,
            column_hoop_stiffness=self.unit * self.hoops,
            column_hoop_yield_pressure=self.unit * 0.002 * self.hoops,
        )

    def at(self, axial_strain: float) -> DilationEquilibrium:
        return dilation_equilibrium(axial_strain, core=self.core, restraint=self.restraint)


DESIGNS = st.builds(
    Design,
    strength=STRENGTH,
    radius=st.floats(250.0, 1500.0),
    thickness=st.floats(3.0, 15.0),
    play=st.one_of(st.just(0.0), st.floats(0.01, 1.5)),
    hoops=st.one_of(st.just(0.0), st.floats(50.0, 900.0)),
)


@given(st.floats(0.0, PRESSURE_RATIO_LIMIT - 1e-9), st.floats(0.0, PRESSURE_RATIO_LIMIT - 1e-9))
def test_more_pressure_never_lowers_the_strength(one: float, other: float) -> None:
    low, high = sorted((one, other))
    assert strength_ratio(high) >= strength_ratio(low) - 1e-12
    assert strength_ratio(low) >= 1.0


@given(st.floats(0.0, 2.2))
def test_the_inverse_gives_the_pressure_back(ratio: float) -> None:
    back = pressure_ratio_for_strength_ratio(np.maximum(strength_ratio(ratio), 1.0))
    assert back == pytest.approx(ratio, abs=1e-9)


@given(STRENGTH, st.floats(0.0, 10.0), st.floats(0.1, 1000.0))
def test_strength_scales_with_the_unit_of_stress(
    strength: float, pressure: float, unit: float
) -> None:
    scaled = confined_strength(strength * unit, lateral_pressure=pressure * unit)
    assert scaled == pytest.approx(unit * confined_strength(strength, lateral_pressure=pressure))


@given(st.floats(1e-4, 0.05), st.floats(1e-4, 0.05), st.floats(0.05, 0.2), st.floats(0.05, 0.2))
def test_two_steels_are_never_better_than_the_ductile_one_alone(
    hoops: float, jacket: float, hoop_strain: float, jacket_strain: float
) -> None:
    together = combined_ultimate_strain(
        hoop_volumetric_ratio=hoops,
        hoop_yield_strength=400.0,
        hoop_ultimate_strain=hoop_strain,
        jacket_volumetric_ratio=jacket,
        jacket_yield_strength=250.0,
        jacket_ultimate_strain=jacket_strain,
        confined_strength=50.0,
    )
    parts = (
        float(
            ultimate_strain(
                volumetric_ratio=ratio,
                yield_strength=strength,
                steel_ultimate_strain=strain,
                confined_strength=50.0,
            )
        )
        - 0.004
        for ratio, strength, strain in (
            (hoops, 400.0, hoop_strain),
            (jacket, 250.0, jacket_strain),
        )
    )
    assert together <= 0.004 + sum(parts) + 1e-12


@given(st.floats(1e-4, 0.05), st.floats(0.05, 0.2))
def test_absent_hoops_do_not_count(ratio: float, strain: float) -> None:
    together = combined_ultimate_strain(
        hoop_volumetric_ratio=0.0,
        hoop_yield_strength=400.0,
        hoop_ultimate_strain=0.01,
        jacket_volumetric_ratio=ratio,
        jacket_yield_strength=250.0,
        jacket_ultimate_strain=strain,
        confined_strength=50.0,
    )
    alone = ultimate_strain(
        volumetric_ratio=ratio,
        yield_strength=250.0,
        steel_ultimate_strain=strain,
        confined_strength=50.0,
    )
    assert together == pytest.approx(alone, rel=1e-12)


@given(AXIAL, DESIGNS)
def test_pressure_stays_between_zero_and_yield_and_balances(axial: float, design: Design) -> None:
    restraint, state = design.restraint, design.at(axial)
    assert 0.0 <= state.sleeve_pressure <= restraint.yield_pressure
    assert 0.0 <= state.core_pressure <= restraint.largest_core_pressure * (1.0 + 1e-12)
    again = design.core.lateral_strain(axial, pressure=state.core_pressure)
    assert again == pytest.approx(state.lateral_strain, abs=2e-12, rel=1e-12)
    assert bool(state.sleeve_yielded) == (state.sleeve_pressure == restraint.yield_pressure)
    assert state.sleeve_plastic_strain >= 0.0
    if not state.sleeve_engaged:
        assert state.sleeve_pressure == 0.0


@given(BEYOND_PEAK, DESIGNS, st.floats(1.0, 2.0))
def test_a_thicker_sleeve_is_never_strained_more(
    axial: float, design: Design, factor: float
) -> None:
    thicker = replace(design, thickness=factor * design.thickness)
    thin, thick = design.at(axial), thicker.at(axial)
    assert thick.sleeve_hoop_strain <= thin.sleeve_hoop_strain + 1e-9
    assert thick.sleeve_pressure >= thin.sleeve_pressure - 1e-9
    thin_stress = thin.sleeve_pressure * 1.05 * design.radius / design.thickness
    thick_stress = thick.sleeve_pressure * 1.05 * thicker.radius / thicker.thickness
    assert thick_stress <= thin_stress + 1e-6


@given(BEYOND_PEAK, DESIGNS, st.floats(0.0, 2.0))
def test_play_never_adds_pressure(axial: float, design: Design, more: float) -> None:
    tight, snug = design.at(axial), replace(design, play=design.play + more).at(axial)
    assert snug.sleeve_pressure <= tight.sleeve_pressure + 1e-9
    assert snug.lateral_strain >= tight.lateral_strain - 1e-11


@given(st.floats(8e-4, 0.02), DESIGNS)
def test_axial_strain_at_a_hoop_strain_comes_back(hoop_strain: float, design: Design) -> None:
    core, restraint = design.core, design.restraint
    axial = float(axial_strain_at_hoop_strain(hoop_strain, core=core, restraint=restraint))
    state = design.at(axial)
    assert state.sleeve_hoop_strain == pytest.approx(hoop_strain, abs=1e-9)
    first = float(axial_strain_at_sleeve_yield(core=core, restraint=restraint))
    assert state.axial_strain_at_sleeve_yield == first
    if abs(axial - first) > 1e-9:
        assert bool(state.sleeve_yielded) == (axial > first)


def _numbers(state: DilationEquilibrium) -> list[float]:
    return [float(np.asarray(getattr(state, field.name))) for field in fields(state)]


@given(AXIAL, DESIGNS)
def test_size_does_not_matter(axial: float, design: Design) -> None:
    larger = replace(
        design,
        radius=4.0 * design.radius,
        thickness=4.0 * design.thickness,
        play=4.0 * design.play,
    )
    assert _numbers(larger.at(axial)) == pytest.approx(
        _numbers(design.at(axial)), rel=1e-7, abs=1e-8
    )


@given(AXIAL, DESIGNS)
def test_the_unit_of_stress_does_not_matter(axial: float, design: Design) -> None:
    one, other = design.at(axial), replace(design, unit=0.125).at(axial)
    assert other.lateral_strain == pytest.approx(one.lateral_strain, rel=1e-7, abs=1e-11)
    assert other.sleeve_pressure == pytest.approx(0.125 * one.sleeve_pressure, abs=1e-8)
    assert other.concrete_stress == pytest.approx(0.125 * one.concrete_stress, rel=1e-7)


def test_the_printed_coefficient_is_bound_to_its_unit() -> None:
    assert printed_dilation_coefficient(30.0) != pytest.approx(printed_dilation_coefficient(3.0))


def test_arrays_give_what_single_numbers_give() -> None:
    axial = np.array([0.0, 1e-4, 0.002, 0.006, 0.03])[:, None]
    thickness = np.array([4.0, 9.0])
    core = CoreConcrete(30.0, elastic_modulus_mander(30.0))
    together = dilation_equilibrium(
        axial,
        core=core,
        restraint=Restraint(
            600.0, 570.0, 1.9 / thickness, 1.8 / thickness, 0.5 * thickness, 0.1, 300.0, 0.6
        ),
    )
    for i, eps in enumerate(axial[:, 0]):
        for j, wall in enumerate(thickness):
            restraint = Restraint(600.0, 570.0, 1.9 / wall, 1.8 / wall, 0.5 * wall, 0.1, 300.0, 0.6)
            alone = dilation_equilibrium(float(eps), core=core, restraint=restraint)
            for field in fields(alone):
                value = getattr(alone, field.name)
                assert np.ndim(value) == 0
                assert getattr(together, field.name)[i, j] == pytest.approx(value, abs=1e-9)
