"""Records that describe a restrained core: ranges, and what they say by hand."""

from __future__ import annotations

import numpy as np
import pytest

from jacketcheck.errors import DomainError
from jacketcheck.mechanics.core_concrete import CoreConcrete
from jacketcheck.mechanics.dilation import (
    axial_strain_at_hoop_strain,
    axial_strain_at_sleeve_yield,
    dilation_equilibrium,
)
from jacketcheck.mechanics.passive_confinement import passive_confinement
from jacketcheck.mechanics.restraint import Restraint

FIELDS = {
    "inner_radius": 640.0,
    "core_radius": 600.0,
    "radial_compliance": 0.35,
    "sleeve_compliance": 0.32,
    "yield_pressure": 2.0,
    "radial_play": 0.12,
    "column_hoop_stiffness": 500.0,
    "column_hoop_yield_pressure": 1.0,
}
CORE = CoreConcrete(30.0, 27_386.0)


@pytest.mark.parametrize("name", FIELDS)
@pytest.mark.parametrize("bad", [np.nan, -1.0, np.inf])
def test_restraint_refuses(name: str, bad: float) -> None:
    with pytest.raises(DomainError):
        Restraint(**{**FIELDS, name: bad})


@pytest.mark.parametrize(
    "change",
    [{"inner_radius": 599.0}, {"radial_compliance": 0.31}, {"yield_pressure": 0.0}],
)
def test_restraint_refuses_what_does_not_fit_together(change: dict[str, float]) -> None:
    with pytest.raises(DomainError):
        Restraint(**{**FIELDS, **change})


@pytest.mark.parametrize(
    "fields",
    [
        (np.nan, 27e3),
        (-30.0, 27e3),
        (30.0, np.nan),
        (30.0, 15e3),
        (30.0, 27e3, 0.0),
        (30.0, 27e3, 0.002, 0.0),
        (30.0, 27e3, 0.002, np.nan),
    ],
)
def test_core_refuses(fields: tuple[float, ...]) -> None:
    with pytest.raises(DomainError):
        CoreConcrete(*fields)


def test_restraint_by_hand() -> None:
    restraint = Restraint(**FIELDS)
    # 0.12 mm of play over 600 mm; then 2 MPa x 0.35 mm/MPa up to yield
    assert restraint.engagement_lateral_strain == pytest.approx(0.0002)
    assert restraint.sleeve_yield_lateral_strain == pytest.approx((0.12 + 0.7) / 600.0)
    assert restraint.yield_strain == pytest.approx(2.0 * 0.32 / 640.0)
    assert restraint.column_hoop_yield_strain == pytest.approx(0.002)
    assert restraint.largest_core_pressure == pytest.approx(2.0 * 640.0 / 600.0 + 1.0)
    lateral = np.array([0.0001, 0.0007, 0.0030])
    # movements of 0.06, 0.42, 1.80 mm: not engaged, elastic, yielded
    assert restraint.sleeve_pressure(lateral) == pytest.approx([0.0, 0.3 / 0.35, 2.0])
    assert restraint.column_hoop_pressure(lateral) == pytest.approx([0.05, 0.35, 1.0])
    assert restraint.core_pressure(lateral) == pytest.approx(
        [0.05, 0.3 / 0.35 * 640.0 / 600.0 + 0.35, 2.0 * 640.0 / 600.0 + 1.0]
    )
    # beyond yield the sleeve takes all of the movement: 1.80 - 0.82 mm over 640 mm
    plastic = 0.98 / 640.0
    assert restraint.sleeve_plastic_strain(lateral) == pytest.approx([0.0, 0.0, plastic])
    assert restraint.sleeve_hoop_strain(lateral) == pytest.approx(
        [0.0, 0.3 / 0.35 * 0.32 / 640.0, 0.001 + plastic]
    )


@pytest.mark.parametrize("hoop_strain", [0.0004, 0.001, 0.005])
def test_lateral_strain_at_a_hoop_strain_is_the_inverse(hoop_strain: float) -> None:
    restraint = Restraint(**FIELDS)
    lateral = restraint.lateral_strain_at_hoop_strain(hoop_strain)
    assert restraint.sleeve_hoop_strain(lateral) == pytest.approx(hoop_strain, rel=1e-12)


def test_column_hoops_left_out() -> None:
    fields = {**FIELDS, "column_hoop_stiffness": 0.0}
    restraint = Restraint(**fields)
    assert restraint.largest_core_pressure == pytest.approx(2.0 * 640.0 / 600.0)
    state = dilation_equilibrium(0.02, core=CORE, restraint=restraint)
    assert state.column_hoop_pressure == 0.0
    assert not state.column_hoops_yielded


def test_nothing_happens_at_zero_strain() -> None:
    state = dilation_equilibrium(0.0, core=CORE, restraint=Restraint(**FIELDS))
    assert state.lateral_strain == 0.0
    assert state.core_pressure == 0.0
    assert state.concrete_stress == 0.0
    flags = (state.sleeve_engaged, state.sleeve_yielded, state.column_hoops_yielded)
    assert not any(flags)


@pytest.mark.parametrize("bad", [np.nan, -1e-6, np.inf])
def test_strains_out_of_range(bad: float) -> None:
    restraint = Restraint(**FIELDS)
    with pytest.raises(DomainError):
        dilation_equilibrium(bad, core=CORE, restraint=restraint)
    with pytest.raises(DomainError):
        axial_strain_at_hoop_strain(bad, core=CORE, restraint=restraint)


def test_restraint_beyond_manders_curve() -> None:
    restraint = Restraint(**{**FIELDS, "yield_pressure": 70.0})
    with pytest.raises(DomainError, match=r"pressure_ratio = 2\.52.*at most 2\.395"):
        dilation_equilibrium(0.001, core=CORE, restraint=restraint)
    with pytest.raises(DomainError):
        axial_strain_at_sleeve_yield(core=CORE, restraint=restraint)


@pytest.mark.parametrize(
    "change",
    [
        {"energy_ultimate_strain": np.nan},
        {"energy_ultimate_strain": 0.0},
        {"hoop_strain_limit": np.nan},
        {"hoop_strain_limit": -0.001},
        {"axial_strain": np.array([0.0])},
        {"axial_strain": np.array([0.0, 0.002, 0.001])},
        {"axial_strain": np.array([-0.001, 0.002])},
        {"axial_strain": np.array([0.0, np.nan])},
        {"restraint": Restraint(640.0, 600.0, 0.35, 0.32, np.array([2.0, 3.0]))},
        {"core": CoreConcrete(np.array([30.0, 40.0]), 32e3)},
    ],
)
def test_passive_confinement_refuses(change: dict[str, object]) -> None:
    arguments: dict[str, object] = {
        "core": CORE,
        "restraint": Restraint(**FIELDS),
        "energy_ultimate_strain": 0.02,
        "hoop_strain_limit": 0.001,
    }
    with pytest.raises(DomainError):
        passive_confinement(**{**arguments, **change})  # type: ignore[arg-type] # wrong on purpose
