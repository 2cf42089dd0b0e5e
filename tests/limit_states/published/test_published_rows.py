"""Whole limit states on jackets built so that a published number must come out of a row.

Sources stand with each case. Tolerances follow the printed digits; where a formula of the package
differs from the printed one by a rounding of its coefficient, the case says so.
"""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any, Final

import numpy as np
import pytest

from jacketcheck.analysis import displacement, hinge
from jacketcheck.analysis.axial_strain import CheckedStrain, checked_axial_strain
from jacketcheck.analysis.clamping import ClampingNeed, clamping_need
from jacketcheck.analysis.displacement import capacity_of_original, capacity_of_repaired
from jacketcheck.analysis.least_demand import with_least_demand
from jacketcheck.analysis.memo import assuming
from jacketcheck.analysis.shear import shear_force
from jacketcheck.jacket import Jacket
from jacketcheck.jacket.designs import with_values
from jacketcheck.mechanics.section_limits import BilinearCurve
from tests.support.jackets import built, row, symbol

INCH: Final = 25.4
KIP: Final = 4448.2216152605
KSI: Final = KIP / INCH**2
STIFF: Final = 1e12
"""Modulus [MPa] that leaves a part out of the radial compliance."""


def _pressed(pressure: float, **leaves: Any) -> Jacket:
    """A jacket without added bars whose hoop force comes from a clamping pressure on the sleeve."""
    bare = replace(built(), added_bars=None)
    jacket = with_values(
        bare,
        {
            "sleeve.inner_diameter": 1200.0,
            "sleeve.thickness": 10.0,
            "column.diameter": 1190.0,
            "sleeve.steel.yield_strength": 250.0,
            "bolts.pitch": 100.0,
            "bolts.end_distance": 40.0,
            "bolts.columns": 1,
            "bolts.gauge": 0.0,
            **leaves,
        },
    )
    need = ClampingNeed(1.0, 1.0, (1.0,), (pressure * 600.0 / 595.0,))
    at_rest = CheckedStrain(declared=0.0, found=0.0, base_holds=True, value=0.0)
    return assuming(jacket, {clamping_need: need, checked_axial_strain: at_rest, shear_force: 0.0})


def test_hoop_stress_of_a_thin_cylinder() -> None:
    """G-01: 2 MPa in 1200 mm by 10 mm gives 120 MPa; p D/(2 t)."""
    result = row(_pressed(2.0), "hoop-clamping")
    assert result.demand == pytest.approx(120.0, rel=1e-9)


def test_seam_force_of_a_half_shell() -> None:
    """G-02: 2 MPa in 1200 mm gives 1200 N/mm; p D/2."""
    result = row(_pressed(2.0), "sleeve-gross-yield", "AISC")
    assert result.demand == pytest.approx(1200.0, rel=1e-9)


@pytest.mark.parametrize(
    ("columns", "force"),
    [pytest.param(1, 120e3, id="G-03-one line"), pytest.param(2, 60e3, id="G-03-two lines")],
)
def test_force_on_a_seam_bolt(columns: int, force: float) -> None:
    """G-03: bolts at 100 mm take 120 kN with one line on a side of the seam, 60 kN with two."""
    jacket = _pressed(2.0, **{"bolts.columns": columns, "bolts.gauge": 80.0})
    assert row(jacket, "seam-slip", "AISC").demand == pytest.approx(force, rel=1e-9)


@pytest.mark.parametrize(
    ("diameter", "thickness", "modulus", "pressure", "tolerance"),
    [
        pytest.param(1200.0, 6.0, 200e3, 2.0, 1e-3, id="J-02"),
        pytest.param(48.0 * INCH, 0.248 * INCH, 29e3 * KSI, 0.300 * KSI, 2e-3, id="J-03"),
    ],
)
def test_clamping_pressure_that_a_jacket_supplies(
    diameter: float, thickness: float, modulus: float, pressure: float, tolerance: float
) -> None:
    """t = 500 D f_l/E (Seible et al. 1997): no annulus and stiff seams, a hoop strain of 0.001."""
    jacket = with_values(
        replace(built(), added_bars=None),
        {
            "column.diameter": diameter,
            "sleeve.inner_diameter": diameter,
            "sleeve.thickness": thickness,
            "sleeve.steel.elastic_modulus": modulus,
            "sleeve.steel.yield_strength": 400.0,
            "splice.steel.elastic_modulus": STIFF,
            "grout.elastic_modulus": STIFF,
        },
    )
    result = row(with_least_demand(jacket), "clamping", "bar 11")
    assert symbol(result, "p(ε_cl)") == pytest.approx(pressure, rel=tolerance)
    assert result.capacity <= pressure * (1.0 + tolerance)


def test_clamping_stress_that_a_lap_needs() -> None:
    """J-04 (Seible et al. 1997): f_l = A_s f_y/(p L) = 1.521 MPa over a crack of 247.9 mm.

    The package takes the shorter of two crack patterns, here 2 √2 (c + d_b) = 231.9 mm (Priestley,
    Seible and Calvi 1996), and so asks for more by the ratio of the two.
    """
    jacket = with_values(
        built('judgement.crack_friction = 1.0\njudgement.bar_target = "yield"'),
        {
            "column.layer.diameter": 32.0,
            "column.layer.area": 804.25,
            "column.layer.circle_radius": 534.0,
            "column.layer.steel.expected_yield": 300.0,
            "column.cover": 50.0,
            "column.ties.diameter": 0.0,
            "repair_height": 640.0 + 5.0 * INCH,
            "sleeve.gap": 50.0,
        },
    )
    result = row(jacket, "clamping", "bar 11")
    assert symbol(result, "l") == pytest.approx(640.0)
    assert result.demand == pytest.approx(1.521 * 247.9 / 231.9, rel=2e-3)


def _with_ductility(jacket: Jacket, ductility: float) -> Jacket:
    at_yield = float(capacity_of_repaired(jacket).yield_displacement)
    return with_values(jacket, {"demands.displacement": ductility * at_yield})


@pytest.mark.parametrize(
    ("ductility", "name", "value", "unit"),
    [
        pytest.param(5.0, "v_c", 0.07486, KSI, id="V-09-concrete stress"),
        pytest.param(5.0, "V_c", 108.4, KIP, id="V-09-concrete"),
        pytest.param(5.0, "V_s", 314.1, KIP, id="V-09-hoops"),
        pytest.param(5.0, "φV_n", 380.2, KIP, id="V-09-strength"),
        pytest.param(2.0, "v_c", 0.22, KSI, id="V-10-concrete stress at its limit"),
    ],
)
def test_column_shear(ductility: float, name: str, value: float, unit: float) -> None:
    """AASHTO Guide Spec Seismic 8.6: D 48 in, D′ 43 in, f'c 4 ksi, 600 kips, No. 5 at 4 in."""
    jacket = with_values(built(), {"column.ties.core_diameter": 43.0 * INCH})
    result = row(_with_ductility(jacket, ductility), "column-shear", "Guide Spec")
    assert symbol(result, name) / unit == pytest.approx(value, rel=2e-3)


@pytest.mark.parametrize(
    ("size", "footing", "length"),
    [
        pytest.param("No. 11", "4 ksi", 37.87, id="D-22-No. 11"),
        pytest.param("No. 10", "5 ksi", 30.51, id="D-22-No. 10"),
    ],
)
def test_anchorage_by_the_guide_specifications(size: str, footing: str, length: float) -> None:
    """l_ac = 0.79 d_b f_ye/√f'c (AASHTO Guide Spec Seismic 8.8.4), expected yield 68 ksi."""
    changes = f'added_bars.size = "{size}"\nfooting.concrete_strength = "{footing}"'
    result = row(
        built(f'{changes}\nadded_bars.count = 12\nadded_bars.hole_diameter = "2 in"'),
        "added-bar-anchorage",
        "embedment",
    )
    assert symbol(result, "l_ac") / INCH == pytest.approx(length, rel=1e-3)


@pytest.mark.parametrize(
    ("face", "friction", "limit"),
    [
        pytest.param("roughened", 1.0, 1.0, id="V-01, V-05-roughened"),
        pytest.param("smooth", 0.6, 0.8, id="V-01, V-05-smooth"),
    ],
)
def test_friction_of_the_columns_face(face: str, friction: float, limit: float) -> None:
    """μ, K_1 f'c and K_2 of AASHTO LRFD 5.7.4.4 for f'c 4 ksi; φ of 5.5.4.2.

    By ACI 318-19 the same μ (Table 22.9.4.2), at most 0.2 f'c = 0.8 ksi (Table 22.9.4.4) and
    φ = 0.75 (21.2.1): the two are shown beside each other.
    """
    jacket = built(f'repair.column_face = "{face}"')
    for code, largest, factor in (("AASHTO", limit, 0.90), ("ACI", 0.8, 0.75)):
        result = row(jacket, "grout-interface", code)
        assert symbol(result, "μ") == friction
        assert symbol(result, "v_max") / KSI == pytest.approx(largest, rel=1e-9)
        stress = min(friction * symbol(result, "p"), largest * KSI)
        area = math.pi * 48.0 * INCH * (59.0 - 3.0) * INCH / 2.0
        assert result.capacity == pytest.approx(factor * stress * area, rel=1e-9)


@pytest.mark.parametrize(
    ("strength", "bond"),
    [
        pytest.param(28.0, 13.23, id="D-01-28"),
        pytest.param(38.0, 15.41, id="D-01-38"),
        pytest.param(50.0, 17.68, id="D-01-50"),
    ],
)
def test_bond_of_a_chipped_bar(strength: float, bond: float) -> None:
    """2.5 √f_cm of fib Model Code 2010 Table 6.1-1, times its factor for pressure (6.1.1.3)."""
    result = row(built(f'grout.strength = "{strength} MPa"'), "bar-length", "bar 11")
    assert symbol(result, "r") == 1.0
    factor = 1.0 + math.tanh(2.0 * symbol(result, "p_k") / strength)
    assert symbol(result, "τ_max") == pytest.approx(bond * factor, rel=1e-3)


@pytest.mark.parametrize(
    ("diameter", "thickness", "strength", "shear"),
    [
        pytest.param(1200.0, 10.0, 250.0, 4712e3, id="J-14-SI"),
        pytest.param(48.0 * INCH, 0.375 * INCH, 36.0 * KSI, 1017.9 * KIP, id="J-14-US"),
    ],
)
def test_shear_that_a_jacket_carries(
    diameter: float, thickness: float, strength: float, shear: float
) -> None:
    """V = (π/2) t f_yj D, cracks at 45° (Priestley, Seible, Xiao and Verma 1994)."""
    leaves = {
        "column.diameter": diameter,
        "sleeve.thickness": thickness,
        "sleeve.steel.yield_strength": strength,
    }
    result = row(with_values(built(), leaves), "repair-shear")
    stress = symbol(result, "σ_h")
    assert stress <= strength
    assert symbol(result, "V_sj") == pytest.approx(shear * stress / strength, rel=1e-3)


def _idealised(monkeypatch: pytest.MonkeyPatch, curve: BilinearCurve) -> None:
    for module in (hinge, displacement):
        monkeypatch.setattr(module, "bilinear", lambda *_: curve)


def test_forces_of_a_relocated_hinge(monkeypatch: pytest.MonkeyPatch) -> None:
    """G-05: 2000 kN m at 0.5 m in a cantilever of 3.0 m: 800 kN, and 2400 kN m at the base."""
    _idealised(monkeypatch, BilinearCurve(1e-6, 2000e6, 2e-5, "core strain"))
    leaves = {
        "column.height": 3000.0,
        "repair_height": 500.0,
        "column.layer.steel.overstrength": 1.0,
    }
    jacket = with_values(built(), leaves)
    assert row(jacket, "repair-shear").demand == pytest.approx(800e3)
    assert row(jacket, "base-moment").demand == pytest.approx(2400e6)


def test_amplification_at_the_base(monkeypatch: pytest.MonkeyPatch) -> None:
    """G-04: L 120 in and H 24 in: L/(L − H) = 1.250."""
    _idealised(monkeypatch, BilinearCurve(1e-6, 2000e6, 2e-5, "core strain"))
    leaves = {"column.height": 120.0 * INCH, "repair_height": 24.0 * INCH}
    result = row(with_values(built(), leaves), "base-moment")
    assert symbol(result, "M_base") / symbol(result, "M_o") == pytest.approx(1.25)


def test_displacement_of_a_cantilever(monkeypatch: pytest.MonkeyPatch) -> None:
    """J-13 (Caltrans SDC 3.1.3): L 240 in, φ_y 1e-4/in, φ_u 1.5e-3/in, f_ye 68 ksi, d_b 1.27 in.

    Δ_y 1.920 in and L_p 32.154 in give Δ_p 10.08 in. The package's coefficient of 0.022 per MPa
    stands for the printed 0.15 per ksi, which makes L_p longer by 0.5 % and Δ_p by 0.4 %.
    """
    curve = BilinearCurve(1e-4 / INCH, 2000e6, 1.5e-3 / INCH, "core strain")
    _idealised(monkeypatch, curve)
    jacket = with_values(built('column.bars.size = "No. 10"'), {"column.height": 240.0 * INCH})
    capacity = capacity_of_original(jacket)
    assert capacity.yield_displacement == pytest.approx(1.920 * INCH, rel=1e-3)
    assert capacity.hinge_length == pytest.approx(32.154 * INCH, rel=6e-3)
    plastic = float(capacity.displacement) - float(capacity.yield_displacement)
    assert plastic == pytest.approx(10.08 * INCH, rel=5e-3)


def test_usual_gap() -> None:
    """J-06: about 50 mm (Chai, Priestley and Seible 1991; Priestley, Seible and Calvi 1996)."""
    assert row(built(), "sleeve-gap", "usual").demand == 50.0


def test_snug_bolts_have_no_slip_resistance() -> None:
    """AISC 360-22 J3.9 and AASHTO LRFD 6.13.2.8 count fully pretensioned bolts only."""
    for code in ("AISC", "AASHTO"):
        result = row(built(variant="thin, snug bolts"), "seam-slip", code)
        assert result.capacity == 0.0
        assert math.isinf(float(result.ratio))


def test_hoop_force_of_a_noncontact_lap() -> None:
    """Equilibrium as McLean and Smith 1997 have it: k n A_b f_u/(2 π l_s) of printed inputs."""
    result = row(built(), "added-bar-lap", "hoop force")
    printed = {step.symbol: step.value for step in result.steps}
    expected = np.prod([float(printed[name]) for name in ("k", "n", "A_b", "f_ue")])
    assert result.demand == pytest.approx(expected / (2.0 * math.pi * float(printed["l_s"])))
