"""Plate and reinforcing steels against their standards."""

from __future__ import annotations

import pytest

from jacketcheck.catalog import built_in_catalog

INCH = 25.4
KSI = 4448.2216152605 / INCH**2
A706 = "ASTM A706 Grade 60"


@pytest.mark.parametrize(
    ("name", "expected_yield", "expected_tensile"),
    [
        # AASHTO Guide Spec Seismic 2nd ed. (2011) Table 8.4.2-1 [ksi]
        pytest.param(A706, 68, 95, id="M-01"),
        pytest.param("ASTM A615 Grade 60", 68, 95, id="M-01-A615"),
        # Caltrans SDC 2.0 (2019) Table 3.3.3-1 [ksi]
        pytest.param("ASTM A706 Grade 80", 85, 112, id="M-04"),
    ],
)
def test_expected_strength(name: str, expected_yield: float, expected_tensile: float) -> None:
    steel = built_in_catalog().rebar_steel(name)
    assert steel.expected_yield == pytest.approx(expected_yield * KSI, rel=1e-12)
    assert steel.expected_tensile == pytest.approx(expected_tensile * KSI, rel=1e-12)


def test_metric_expected_strength_and_yield_strain() -> None:
    """AASHTO Guide Spec Seismic 2nd ed. (2011) Table 8.4.2-1, also 469 and 655 MPa and 0.0023."""
    steel = built_in_catalog().rebar_steel(A706)
    assert steel.expected_yield == pytest.approx(469.0, abs=0.5)
    assert steel.expected_tensile == pytest.approx(655.0, abs=0.5)
    assert steel.expected_yield / steel.elastic_modulus == pytest.approx(0.0023, abs=0.00006)


@pytest.mark.parametrize(
    ("bar", "strain"),
    [
        # AASHTO Guide Spec Seismic 2nd ed. (2011) Table 8.4.2-1
        pytest.param("No. 3", 0.0150, id="M-02-3"),
        pytest.param("No. 8", 0.0150, id="M-02-8"),
        pytest.param("No. 9", 0.0125, id="M-02-9"),
        pytest.param("No. 10", 0.0115, id="M-02-10"),
        pytest.param("No. 11", 0.0115, id="M-02-11"),
        pytest.param("No. 14", 0.0075, id="M-02-14"),
        pytest.param("No. 18", 0.0050, id="M-02-18"),
    ],
)
def test_onset_of_hardening(bar: str, strain: float) -> None:
    catalog = built_in_catalog()
    diameter = catalog.bar(bar).diameter
    assert catalog.rebar_steel(A706).hardening_strain_at(diameter) == strain


@pytest.mark.parametrize(
    ("name", "bar", "strain"),
    [
        # AASHTO Guide Spec Seismic 2nd ed. (2011) Table 8.4.2-1
        pytest.param(A706, "No. 4", 0.090, id="M-03-4"),
        pytest.param(A706, "No. 10", 0.090, id="M-03-10"),
        pytest.param(A706, "No. 11", 0.060, id="M-03-11"),
        pytest.param(A706, "No. 18", 0.060, id="M-03-18"),
        pytest.param("ASTM A615 Grade 60", "No. 10", 0.060, id="A615-10"),
        pytest.param("ASTM A615 Grade 60", "No. 11", 0.040, id="A615-11"),
    ],
)
def test_reduced_ultimate_strain(name: str, bar: str, strain: float) -> None:
    catalog = built_in_catalog()
    diameter = catalog.bar(bar).diameter
    assert catalog.rebar_steel(name).ultimate_strain_at(diameter) == strain


@pytest.mark.parametrize(
    ("name", "factor"),
    [
        # AASHTO Guide Spec Seismic 2nd ed. (2011) 8.5
        pytest.param(A706, 1.2, id="M-06-A706"),
        pytest.param("ASTM A615 Grade 60", 1.4, id="M-06-A615"),
        # EN 1998-2:2005 5.3(4)
        pytest.param("EN B500C", 1.35, id="EN-1998-2"),
    ],
)
def test_overstrength(name: str, factor: float) -> None:
    assert built_in_catalog().rebar_steel(name).overstrength == factor


@pytest.mark.parametrize(
    ("name", "thickness", "yield_strength", "tensile_strength"),
    [
        # EN 10025-2:2004 Table 7 [MPa], at both sides of each limit
        pytest.param("EN S235", 16.0, 235, 360, id="S235-16"),
        pytest.param("EN S235", 16.5, 225, 360, id="S235-over-16"),
        pytest.param("EN S235", 60.0, 215, 360, id="S235-60"),
        pytest.param("EN S235", 150.0, 195, 350, id="S235-150"),
        pytest.param("EN S275", 10.0, 275, 410, id="S275-10"),
        pytest.param("EN S275", 40.0, 265, 410, id="S275-40"),
        pytest.param("EN S275", 63.0, 255, 410, id="S275-63"),
        pytest.param("EN S355", 16.0, 355, 470, id="S355-16"),
        pytest.param("EN S355", 20.0, 345, 470, id="S355-20"),
        pytest.param("EN S355", 50.0, 335, 470, id="S355-50"),
        pytest.param("EN S355", 80.0, 325, 470, id="S355-80"),
        pytest.param("EN S355", 100.0, 315, 470, id="S355-100"),
        pytest.param("EN S355", 120.0, 295, 450, id="S355-120"),
    ],
)
def test_european_plate(
    name: str, thickness: float, yield_strength: float, tensile_strength: float
) -> None:
    found = built_in_catalog().plate_steel(name).strengths(thickness)
    assert found == (yield_strength, tensile_strength)


@pytest.mark.parametrize(
    ("name", "inches", "yield_strength", "tensile_strength", "expected_ratio"),
    [
        # ASTM A36, A572, A588 and AASHTO LRFD Table 6.4.1-1 [ksi]; AISC 341-22 Table A3.2
        pytest.param("ASTM A36", 0.375, 36, 58, 1.3, id="A36"),
        pytest.param("ASTM A572 Grade 50", 0.5, 50, 65, 1.1, id="A572"),
        pytest.param("ASTM A588", 4.0, 50, 70, 1.1, id="A588-4"),
        pytest.param("ASTM A588", 4.5, 46, 67, 1.1, id="A588-over-4"),
        pytest.param("ASTM A709 Grade 50W", 0.5, 50, 70, 1.1, id="A709-50W"),
    ],
)
def test_american_plate(
    name: str, inches: float, yield_strength: float, tensile_strength: float, expected_ratio: float
) -> None:
    steel = built_in_catalog().plate_steel(name)
    found = steel.strengths(inches * INCH)
    assert found.yield_strength == pytest.approx(yield_strength * KSI, rel=1e-12)
    assert found.tensile_strength == pytest.approx(tensile_strength * KSI, rel=1e-12)
    assert steel.expected_ratio == expected_ratio
