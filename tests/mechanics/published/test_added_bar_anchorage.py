"""Added bars in drilled holes: arithmetic of printed equations, and bounds from published tests."""

from __future__ import annotations

import pytest

from jacketcheck.mechanics._customary_units import INCH, KIP, KSI, PSI
from jacketcheck.mechanics.added_bar_anchorage import adhesive_anchorage, grouted_anchorage
from jacketcheck.mechanics.adhesive_anchors import (
    adhesive_bond_strength,
    bond_influence_distance,
    breakout_influence_distance,
    breakout_strength,
    edge_factor,
)
from jacketcheck.mechanics.bar_bond_laws import grouted_bar_law
from jacketcheck.mechanics.bar_steel import BarSteel
from jacketcheck.mechanics.bond_development import bonded_length
from jacketcheck.mechanics.noncontact_lap import (
    effective_lap_length,
    lap_hoop_force,
    largest_lap_offset,
)
from jacketcheck.mechanics.published_bond_laws import clear_rib_spacing


def test_adhesive_bond() -> None:
    # ACI 318-19 Eq. 17.6.5.2.1: pi * 1000 psi * 1 in * 10 in = 31416 lb
    strength = adhesive_bond_strength(1000.0 * PSI, bar_diameter=INCH, embedment=10.0 * INCH)
    assert strength / KIP == pytest.approx(31.416, rel=1e-5)


@pytest.mark.parametrize(
    ("inches", "stress", "expected"),
    [(1.0, 1100.0, 10.0), (1.0, 2200.0, 14.142), (0.75, 2220.0, 10.655)],
)
def test_bond_influence(inches: float, stress: float, expected: float) -> None:
    # ACI 318-19 Eq. 17.6.5.1.2b: 10 da sqrt(tau_uncr / 1100)
    distance = bond_influence_distance(inches * INCH, uncracked_bond_stress=stress * PSI)
    assert distance / INCH == pytest.approx(expected, rel=1e-4)


@pytest.mark.parametrize(
    ("strength", "inches", "coefficient", "expected"),
    [
        pytest.param(4000.0, 9.0, 17.0, 29.030, id="17 * 63.246 * 27"),
        pytest.param(4000.0, 9.0, 24.0, 40.983, id="24 * 63.246 * 27"),
        pytest.param(10_000.0, 4.0, 17.0, 12.164, id="counted at 8000: 17 * 89.443 * 8"),
    ],
)
def test_breakout(strength: float, inches: float, coefficient: float, expected: float) -> None:
    # ACI 318-19 Eq. 17.6.2.2.1, lb
    found = breakout_strength(strength * PSI, embedment=inches * INCH, coefficient=coefficient)
    assert found / KIP == pytest.approx(expected, rel=1e-4)
    assert breakout_influence_distance(inches * INCH) == pytest.approx(1.5 * inches * INCH)


def test_edge() -> None:
    # ACI 318-19 17.6.2.4, 17.6.5.4: 0.7 + 0.3 ca/c up to 1
    assert edge_factor(200.0, influence_distance=600.0) == pytest.approx(0.8, rel=1e-12)
    assert edge_factor(700.0, influence_distance=600.0) == 1.0


def test_lone_bar_has_its_whole_area() -> None:
    # A_N = A_N0 for one bar: group strengths are those of the single bar
    found = adhesive_anchorage(
        1000.0 * PSI,
        bar_diameter=INCH,
        embedment=10.0 * INCH,
        footing_strength=4000.0 * PSI,
        circle_radius=100.0 * INCH,
        count=1,
        breakout_precluded=False,
        uncracked_bond_stress=1100.0 * PSI,
    )
    assert found.bond_strength / KIP == pytest.approx(31.416, rel=1e-5)
    # 17 * 63.246 * 31.623 = 34.0 kips
    assert found.breakout_strength / KIP == pytest.approx(34.0, rel=1e-4)
    assert found.nominal_strength == found.bond_strength
    assert found.governed_by == "bond"


def test_grouted_holes_by_both_sources() -> None:
    # AASHTO Guide Spec Eq. 8.8.4-1, #11, 68 ksi, 4 ksi: 37.87 in; ACI 318-19 Eq. 25.4.2.4a with
    # 2.5: 3/40 * 68000 / 63.246 / 2.5 * 1.41 = 45.48 in
    found = grouted_anchorage(
        1.41 * INCH,
        bar_stress=68.0 * KSI,
        yield_strength=68.0 * KSI,
        footing_strength=4.0 * KSI,
        grout_strength=8.0 * KSI,
        cover_dimension=6.0 * INCH,
    )
    assert found.guide_specification_length / INCH == pytest.approx(37.87, rel=1e-3)
    assert found.development_length / INCH == pytest.approx(45.48, rel=1e-3)
    assert found.required_length == found.development_length
    assert found.governed_by == "ACI 318-19 25.4.2"
    # Steuck, Eberhard and Stanton (2009): six bar diameters at yield
    assert found.least_tested_length / INCH == pytest.approx(6.0 * 1.41, rel=1e-12)


@pytest.mark.parametrize("grout_strength", [40.0, 55.0, 70.0])
def test_bond_in_grout_agrees_with_pull_out_tests(grout_strength: float) -> None:
    # D-23: Steuck, Eberhard and Stanton, ACI Struct. J. 106(4) (2009), abstract: large bars in
    # grouted ducts develop yield over about six and fracture over about ten bar diameters. The
    # factor for yield is left out: it makes the length to fracture several times longer.
    diameter = 43.0
    steel = BarSteel(469.0, 655.0, 0.0075, 0.06, 200e3)
    law = grouted_bar_law(grout_strength, clear_rib_spacing=clear_rib_spacing(diameter))
    to_yield, to_fracture = (
        float(
            bonded_length(
                stress, bar_diameter=diameter, law=law, steel=steel, yield_reduction=False
            )
        )
        / diameter
        for stress in (469.0, 655.0)
    )
    assert to_yield == pytest.approx(6.0, rel=0.3)
    assert to_fracture == pytest.approx(10.0, rel=0.4)


def test_lap_offset_allowed() -> None:
    # ACI 318-19 25.5.1.3: the smaller of a fifth of the lap and 6 in
    assert largest_lap_offset(40.0 * INCH) == pytest.approx(6.0 * INCH, rel=1e-12)
    assert largest_lap_offset(25.0 * INCH) == pytest.approx(5.0 * INCH, rel=1e-12)


def test_lap_plus_spacing() -> None:
    # TxDOT Bridge Design Manual - LRFD ch. 5 sec. 6: total length = lap + spacing
    assert effective_lap_length(48.0 + 7.5, offset=7.5) == 48.0


def test_spacing_of_lap_hoops() -> None:
    # McLean and Smith, WA-RD 417.1 (1997): s = 2 pi A_tr f_ytr l_s / (n A_l f_ul)
    # = 2 pi * 0.31 * 60 * 40 / (20 * 1.56 * 95) = 1.5772 in
    force = lap_hoop_force(1.56 * INCH**2 * 95.0 * KSI, bar_count=20, lap_length=40.0 * INCH)
    assert 0.31 * INCH**2 * 60.0 * KSI / force / INCH == pytest.approx(1.5772, rel=1e-4)
    # AASHTO LRFD 9th ed. (2020) Eq. 5.10.8.4.2a-1 with k = 0.5
    half = lap_hoop_force(
        1.56 * INCH**2 * 95.0 * KSI, bar_count=20, lap_length=40.0 * INCH, tension_share=0.5
    )
    assert half == pytest.approx(0.5 * force, rel=1e-12)
