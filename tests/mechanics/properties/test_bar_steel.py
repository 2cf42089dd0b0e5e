"""What holds for every steel curve, and which numbers make none."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from jacketcheck.errors import DomainError
from jacketcheck.mechanics.bar_steel import BarSteel, bar_strain_at_stress, bar_stress

STEELS = st.builds(
    lambda fy, ratio, sh, su, exponent: BarSteel(fy, fy * ratio, sh, su, 200e3, exponent),
    st.floats(250.0, 700.0),
    st.floats(1.0, 1.9),
    st.floats(0.004, 0.02),
    st.floats(0.03, 0.15),
    st.floats(1.0, 5.0),
)
PARTS = st.floats(0.0, 1.0)


@given(STEELS, PARTS, PARTS)
def test_stress_never_falls_before_fracture(steel: BarSteel, one: float, other: float) -> None:
    less, more = sorted((one * steel.ultimate_strain, other * steel.ultimate_strain))
    assert bar_stress(less, steel) <= bar_stress(more, steel) * (1.0 + 1e-12) + 1e-9


@given(STEELS, PARTS)
def test_round_trip(steel: BarSteel, part: float) -> None:
    stress = part * steel.tensile_strength
    there = bar_strain_at_stress(stress, steel)
    assert there <= steel.ultimate_strain
    assert bar_stress(there, steel) == pytest.approx(stress, rel=1e-9, abs=1e-9)


@given(STEELS, st.floats(-0.02, 0.02))
def test_both_signs_alike(steel: BarSteel, strain: float) -> None:
    assert bar_stress(-strain, steel) == -bar_stress(strain, steel)


@given(STEELS)
def test_ultimate_strain_carries_the_tensile_strength(steel: BarSteel) -> None:
    assert bar_stress(steel.ultimate_strain, steel) == steel.tensile_strength
    assert bar_stress(np.nextafter(steel.ultimate_strain, 1.0), steel) == 0.0


def test_without_hardening_the_plateau_lasts_to_fracture() -> None:
    steel = BarSteel(469.0, 469.0, 0.0115, 0.09, 200e3)
    assert bar_stress(0.08, steel) == 469.0
    assert bar_strain_at_stress(469.0, steel) == 0.0115


def test_steels_can_be_compared_and_hashed() -> None:
    one, same = (BarSteel(469.0, 655.0, 0.0115, 0.09, 200e3) for _ in range(2))
    assert one == same
    assert hash(one) == hash(same)


@pytest.mark.parametrize(
    ("numbers", "name"),
    [
        ((0.0, 655.0, 0.0115, 0.09, 200e3), "yield_strength"),
        ((469.0, 468.0, 0.0115, 0.09, 200e3), "tensile_strength"),
        ((469.0, 655.0, 0.002, 0.09, 200e3), "hardening_strain"),
        ((469.0, 655.0, 0.09, 0.09, 200e3), "hardening_strain"),
        ((469.0, 655.0, 0.0115, float("nan"), 200e3), "ultimate_strain"),
        ((469.0, 655.0, 0.0115, 0.09, float("inf")), "elastic_modulus"),
        ((469.0, 655.0, 0.0115, 0.09, 200e3, 0.5), "hardening_exponent"),
    ],
)
def test_numbers_that_make_no_curve(numbers: tuple[float, ...], name: str) -> None:
    with pytest.raises(DomainError, match=name):
        BarSteel(*numbers)


def test_domain() -> None:
    steel = BarSteel(469.0, 655.0, 0.0115, 0.09, 200e3)
    with pytest.raises(DomainError, match="strain"):
        bar_stress(float("nan"), steel)
    with pytest.raises(DomainError, match="stress"):
        bar_strain_at_stress(np.array([0.0, 655.1]), steel)
    with pytest.raises(DomainError, match="stress"):
        bar_strain_at_stress(float("nan"), steel)
