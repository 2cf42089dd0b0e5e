"""Development lengths and bond strengths against arithmetic from the printed equations."""

from __future__ import annotations

import pytest

from jacketcheck.mechanics._customary_units import INCH, KSI, PSI
from jacketcheck.mechanics.bond_strength import (
    basic_design_bond_strength,
    splice_bond_strength,
    splitting_bar_stress,
    uniform_bond_force,
    uniform_bond_length,
)
from jacketcheck.mechanics.development_length import (
    bar_size_factor,
    development_length,
    reinforcement_grade_factor,
    seismic_anchorage_length,
    simplified_development_length,
    transverse_reinforcement_index,
)


@pytest.mark.parametrize(
    ("strength", "number_8", "number_6"),
    [
        pytest.param(3000.0, 54.8, 43.8, id="D-16-17-3000"),
        pytest.param(4000.0, 47.4, 37.9, id="D-16-17-4000"),
        pytest.param(5000.0, 42.4, 33.9, id="D-16-17-5000"),
        pytest.param(6000.0, 38.7, None, id="D-16-6000"),
    ],
)
def test_simplified(strength: float, number_8: float, number_6: float | None) -> None:
    # ACI 318-19 Table 25.4.2.3: fy / (20 sqrt f'c) and fy / (25 sqrt f'c), Grade 60, psi
    for inches, expected in ((1.0, number_8), (0.75, number_6)):
        if expected is None:
            continue
        length = simplified_development_length(
            inches * INCH,
            yield_strength=60.0 * KSI,
            concrete_strength=strength * PSI,
            well_spaced=True,
        )
        assert length / (inches * INCH) == pytest.approx(expected, rel=3e-3)
        crowded = simplified_development_length(
            inches * INCH,
            yield_strength=60.0 * KSI,
            concrete_strength=strength * PSI,
            well_spaced=False,
        )
        # other cases of the table: 3 fy / (40 sqrt f'c) and 3 fy / (50 sqrt f'c)
        assert crowded == pytest.approx(1.5 * length, rel=1e-12)


@pytest.mark.parametrize(
    ("strength", "grade", "expected"),
    [
        pytest.param(4000.0, 60.0, 28.5, id="D-18-4000"),
        pytest.param(5000.0, 60.0, 25.5, id="D-18-5000"),
        pytest.param(4000.0, 80.0, 43.6, id="D-19-4000"),
        pytest.param(5000.0, 80.0, 39.0, id="D-19-5000"),
    ],
)
def test_general(strength: float, grade: float, expected: float) -> None:
    # ACI 318-19 Eq. 25.4.2.4a with (cb + Ktr)/db = 2.5
    length = development_length(
        INCH,
        yield_strength=grade * KSI,
        concrete_strength=strength * PSI,
        cover_dimension=3.0 * INCH,
        grade_factor=reinforcement_grade_factor(grade * KSI),
    )
    assert length / INCH == pytest.approx(expected, rel=3e-3)


def test_simplified_grade_80() -> None:
    # D-19: ACI 318-19 Table 25.4.2.3 with psi_g = 1.15
    length = simplified_development_length(
        INCH,
        yield_strength=80.0 * KSI,
        concrete_strength=4000.0 * PSI,
        well_spaced=True,
        grade_factor=reinforcement_grade_factor(80.0 * KSI),
    )
    assert length / INCH == pytest.approx(72.7, rel=3e-3)


def test_metric_edition() -> None:
    # D-20: ACI 318M-19 25.4.2, fy 420, f'c 28 MPa
    for diameter, expected in ((25.0, 46.7), (19.0, 37.8)):
        length = simplified_development_length(
            diameter,
            yield_strength=420.0,
            concrete_strength=28.0,
            well_spaced=True,
            edition="ACI 318M-19",
        )
        assert length / diameter == pytest.approx(expected, rel=3e-3)
    length = development_length(
        25.0,
        yield_strength=420.0,
        concrete_strength=28.0,
        cover_dimension=80.0,
        edition="ACI 318M-19",
    )
    assert length / 25.0 == pytest.approx(28.9, rel=3e-3)


@pytest.mark.parametrize(
    ("grade", "expected"),
    [(40.0, 1.0), (60.0, 1.0), (75.0, 1.15), (80.0, 1.15), (100.0, 1.3)],
)
def test_grade_factor(grade: float, expected: float) -> None:
    # D-19: ACI 318-19 Table 25.4.2.5
    assert reinforcement_grade_factor(grade * KSI) == expected


def test_size_factor() -> None:
    # ACI 318-19 Table 25.4.2.5: No. 6 and smaller, No. 7 and larger
    assert bar_size_factor(0.75 * INCH) == 0.8
    assert bar_size_factor(0.875 * INCH) == 1.0


def test_least_length_and_largest_root() -> None:
    # ACI 318-19 25.4.2.1: 12 in; 25.4.1.4: sqrt(f'c) at most 100 psi
    short = development_length(
        0.375 * INCH,
        yield_strength=60.0 * KSI,
        concrete_strength=9000.0 * PSI,
        cover_dimension=2.0 * INCH,
    )
    assert short == pytest.approx(12.0 * INCH, rel=1e-12)
    lengths = [
        float(
            development_length(
                INCH,
                yield_strength=60.0 * KSI,
                concrete_strength=strength * PSI,
                cover_dimension=1.5 * INCH,
            )
        )
        for strength in (10_000.0, 14_000.0)
    ]
    assert lengths[0] == pytest.approx(lengths[1], rel=1e-9)
    # 3/40 * 60000/100 / 1.5 = 30 in
    assert lengths[0] == pytest.approx(30.0 * INCH, rel=1e-9)


def test_transverse_index() -> None:
    # ACI 318-19 Eq. 25.4.2.4b: 40 * 0.40 / (4 * 4) = 1 in
    index = transverse_reinforcement_index(0.40 * INCH**2, spacing=4.0 * INCH, bars_developed=4)
    assert index == pytest.approx(INCH, rel=1e-12)


@pytest.mark.parametrize(
    ("inches", "concrete", "expected"),
    [
        pytest.param(1.41, 4.0, 37.87, id="D-22-#11"),
        pytest.param(1.27, 5.0, 30.51, id="D-22-#10"),
    ],
)
def test_guide_specification(inches: float, concrete: float, expected: float) -> None:
    # AASHTO Guide Spec Seismic 2nd ed. (2011) Eq. 8.8.4-1, fye 68 ksi
    length = seismic_anchorage_length(
        inches * INCH, expected_yield=68.0 * KSI, concrete_strength=concrete * KSI
    )
    assert length / INCH == pytest.approx(expected, rel=1e-3)
    # Priestley, Seible and Calvi (1996): 0.3 db fy / sqrt f'c in MPa, and 0.025 in psi
    root = (concrete * KSI) ** 0.5
    assert length == pytest.approx(0.3 * inches * INCH * 68.0 * KSI / root, rel=5e-3)
    assert length / INCH == pytest.approx(
        0.025 * inches * 68_000.0 / (concrete * 1000.0) ** 0.5, rel=5e-3
    )


def test_orangun_jirsa_breen() -> None:
    # D-21: ACI J. 74(3) (1977); c/db 2, l/db 30, no ties, f'c 4000 psi
    bond = splice_bond_strength(
        4000.0 * PSI, bar_diameter=INCH, cover_dimension=2.0 * INCH, length=30.0 * INCH
    )
    assert bond / PSI == pytest.approx(560.8, rel=1e-3)
    assert 4.0 * 30.0 * bond / PSI == pytest.approx(67_290.0, rel=1e-3)


def test_orangun_jirsa_breen_limits() -> None:
    # c/db counts to 2.5, the hoop term to 3: 1.2 + 7.5 + 50/25 + 3 = 13.7 times sqrt(4900) = 70 psi
    bond = splice_bond_strength(
        4900.0 * PSI,
        bar_diameter=INCH,
        cover_dimension=9.0 * INCH,
        length=25.0 * INCH,
        transverse_area=2.0 * INCH**2,
        transverse_yield=60.0 * KSI,
        transverse_spacing=2.0 * INCH,
    )
    assert bond / PSI == pytest.approx(13.7 * 70.0, rel=1e-9)


@pytest.mark.parametrize(
    ("length", "expected"),
    [pytest.param(500.0, 370.4, id="D-08-500"), pytest.param(250.0, 253.0, id="D-08-250")],
)
def test_model_code_bar_stress(length: float, expected: float) -> None:
    # fib Model Code 2010 (2013) Eq. 6.1-19
    stress = splitting_bar_stress(
        38.0, bar_diameter=25.0, length=length, minimum_cover=50.0, maximum_cover=50.0
    )
    assert stress == pytest.approx(expected, rel=1e-3)


def test_model_code_design_bond() -> None:
    # D-10: fib Model Code 2010 (2013) Eq. 6.1-20 and 6.1-21
    assert basic_design_bond_strength(25.0) == pytest.approx(1.167, rel=1e-3)
    assert basic_design_bond_strength(30.0) == pytest.approx(1.278, rel=1e-3)
    assert basic_design_bond_strength(25.0, position_factor=0.7) == pytest.approx(0.817, rel=1e-3)


def test_uniform_bond() -> None:
    # D-24: l/db = fs / (4 tau) with the circle's area; with the nominal area of a No. 11 bar
    circle = 3.141592653589793 / 4.0 * 32.0**2
    length = uniform_bond_length(475.0 * circle, bond_stress=12.0, perimeter_diameter=32.0)
    assert length == pytest.approx(316.7, rel=1e-3)
    number_11 = uniform_bond_length(
        1.56 * INCH**2 * 68.0 * KSI, bond_stress=1.2 * KSI, perimeter_diameter=1.41 * INCH
    )
    assert number_11 / INCH == pytest.approx(19.96, rel=1e-3)
    back = uniform_bond_force(number_11, bond_stress=1.2 * KSI, perimeter_diameter=1.41 * INCH)
    assert back == pytest.approx(1.56 * INCH**2 * 68.0 * KSI, rel=1e-12)
