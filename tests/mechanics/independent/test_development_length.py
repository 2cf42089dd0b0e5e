"""Mean splitting stress against another library; developed length against uniform bond."""

from __future__ import annotations

import pytest
from structuralcodes.codes import mc2010

from jacketcheck.mechanics._customary_units import INCH, KSI, PSI
from jacketcheck.mechanics.bond_strength import splice_bond_strength, splitting_bar_stress
from jacketcheck.mechanics.development_length import development_length


@pytest.mark.parametrize("length", [320.0, 640.0, 1200.0])
@pytest.mark.parametrize("index", [0.0, 0.03])
def test_splitting_stress_of_another_library(length: float, index: float) -> None:
    stress = splitting_bar_stress(
        31.0,
        bar_diameter=32.0,
        length=length,
        minimum_cover=40.0,
        maximum_cover=90.0,
        transverse_index=index,
    )
    expected = mc2010.f_stm(
        f_cm=31.0, phi=32.0, l_b=length, c_min=40.0, c_max=90.0, k_m=12.0, K_tr=index
    )
    assert stress == pytest.approx(expected, rel=1e-12)


@pytest.mark.parametrize("cover", [1.0, 1.5, 2.0])
def test_code_is_safer_than_the_tests_it_came_from(cover: float) -> None:
    # The general equation of ACI 318 is a safe fit of Orangun, Jirsa and Breen (1977)
    length = float(
        development_length(
            INCH,
            yield_strength=60.0 * KSI,
            concrete_strength=4000.0 * PSI,
            cover_dimension=(cover + 0.5) * INCH,
        )
    )
    bond = splice_bond_strength(
        4000.0 * PSI, bar_diameter=INCH, cover_dimension=cover * INCH, length=length
    )
    assert 4.0 * length / INCH * bond > 60.0 * KSI
