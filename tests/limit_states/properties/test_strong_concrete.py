"""Grout and concrete of high strength: every row has a number, and dilation stays in order."""

from __future__ import annotations

import numpy as np
from hypothesis import example, given, settings
from hypothesis import strategies as st

from jacketcheck.mechanics.concrete_properties import elastic_modulus_mander, unconfined_peak_strain
from jacketcheck.mechanics.core_concrete import CoreConcrete
from jacketcheck.mechanics.dilation import dilation_equilibrium
from jacketcheck.mechanics.restraint import Restraint
from jacketcheck.results import Kind
from tests.support.jackets import built, row, rows

JUDGED = ("hoop-dilation", "base-moment", "moment-along-height", "clamping", "load-capacity")
SLEEVE = Restraint(
    inner_radius=762.0,
    core_radius=610.0,
    radial_compliance=0.25,
    sleeve_compliance=0.15,
    yield_pressure=6.0,
)


@settings(max_examples=8)
@given(grout=st.floats(85.0, 100.0), concrete=st.floats(30.0, 110.0))
@example(grout=100.0, concrete=100.0)
@example(grout=88.36, concrete=30.0)
def test_every_row_has_a_number(grout: float, concrete: float) -> None:
    found = rows(
        built(
            f'grout.strength = "{grout} MPa"\ncolumn.concrete_strength = "{concrete / 1.3} MPa"\n'
            f'column.concrete_expected = "{concrete} MPa"'
        ),
        *JUDGED,
    )
    assert not [one for one in found if one.kind is Kind.NOT_EVALUATED]
    assert all(np.isfinite(float(one.demand)) for one in found)


def _hoop_strain(strength: float, axial_strain: float) -> float:
    modulus = elastic_modulus_mander(strength)
    peak = unconfined_peak_strain(strength, elastic_modulus=modulus)
    core = CoreConcrete(strength, modulus, peak)
    return float(dilation_equilibrium(axial_strain, core=core, restraint=SLEEVE).sleeve_hoop_strain)


@given(strength=st.floats(20.0, 120.0), axial_strain=st.floats(0.0005, 0.006))
def test_dilation_does_not_jump_with_strength(strength: float, axial_strain: float) -> None:
    before, after = (_hoop_strain(factor * strength, axial_strain) for factor in (1.0, 1.01))
    assert abs(after - before) <= 0.2 * before


@given(strength=st.floats(60.0, 120.0), axial_strain=st.floats(0.0005, 0.006))
def test_strong_concrete_dilates_like_that_of_60_mpa(strength: float, axial_strain: float) -> None:
    assert _hoop_strain(strength, axial_strain) <= 1.1 * _hoop_strain(60.0, axial_strain)


def test_the_modulus_of_the_grout_counts_in_sections() -> None:
    soft, stiff = (
        float(row(built(f'grout.elastic_modulus = "{modulus} GPa"'), "base-moment").capacity)
        for modulus in (15.0, 40.0)
    )
    assert soft < 0.995 * stiff
