"""Characteristic points and idealisation of responses whose answers are known."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from scipy.optimize import brentq

from jacketcheck.mechanics._arrays import Floats
from jacketcheck.mechanics.bar_steel import BarSteel
from jacketcheck.mechanics.concrete_law import popovics_concrete_law, unconfined_concrete_law
from jacketcheck.mechanics.moment_curvature import MomentCurvature, moment_curvature
from jacketcheck.mechanics.section import BarGroup, CircularSection, ConcreteZone
from jacketcheck.mechanics.section_limits import (
    bilinear_curve,
    core_strain_at_moment,
    first_yield,
    nominal_point,
    peak_point,
    point_at_bar_strain,
    point_at_core_strain,
    point_at_extreme_strain,
    ultimate_point,
)

STEEL = BarSteel(475.0, 655.0, 0.0115, 0.09, 200e3)


def _section(
    steel: BarSteel = STEEL, stress_limit: float = np.inf, ultimate: float = 0.02
) -> CircularSection:
    core = popovics_concrete_law(
        peak_stress=47.0, peak_strain=0.0077, elastic_modulus=27400.0, ultimate_strain=ultimate
    )
    shell = unconfined_concrete_law(strength=30.0, elastic_modulus=27400.0)
    bars = BarGroup.ring(20, radius=510.0, area=819.0, steel=steel, stress_limit=stress_limit)
    zones = (ConcreteZone("core", 1080.0, core), ConcreteZone("cover", 1200.0, shell))
    return CircularSection(zones, (bars,))


def _curvature(count: int, last: float) -> Floats:
    return last * (np.arange(1, count + 1) / count) ** 2


def _made_up(curvature: Floats, moment: Floats) -> MomentCurvature:
    """A response with given moments; strains grow so slowly that they govern nothing."""
    base = moment_curvature(_section(), axial_load=0.0, curvature=curvature)
    slow = 1e-3 * curvature / curvature[-1]
    return replace(
        base,
        moment=moment,
        extreme_compressive_strain=slow,
        core_compressive_strain=slow,
        extreme_tensile_strain=slow,
        bar_strain=np.outer(slow, np.ones(20)),
        bar_fractured=np.zeros((curvature.size, 20), bool),
        converged=np.ones(curvature.size, bool),
    )


def test_interpolated_points_match_a_direct_search() -> None:
    section = _section()
    response = moment_curvature(section, axial_load=3e6, curvature=_curvature(100, 6e-5))

    def exact(attribute: str, limit: float) -> float:
        def excess(phi: float) -> float:
            one = moment_curvature(section, axial_load=3e6, curvature=np.array([phi]))
            return float(getattr(one, attribute)[0]) - limit

        return float(brentq(excess, 1e-7, 6e-5, xtol=1e-12))

    for point, attribute, limit in (
        (point_at_core_strain(response, strain=0.006), "core_compressive_strain", 0.006),
        (point_at_extreme_strain(response, strain=0.004), "extreme_compressive_strain", 0.004),
        (point_at_bar_strain(response, strain=0.015), "extreme_tensile_strain", 0.015),
        (first_yield(response), "extreme_tensile_strain", 475.0 / 200e3),
    ):
        assert point.reached
        assert point.curvature == pytest.approx(exact(attribute, limit), rel=2e-3)
        one = moment_curvature(section, axial_load=3e6, curvature=np.array([point.curvature]))
        assert point.moment == pytest.approx(one.moment[0], rel=2e-3)


def test_nominal_takes_the_earlier_strain() -> None:
    light = moment_curvature(_section(), axial_load=-2e6, curvature=_curvature(100, 6e-5))
    heavy = moment_curvature(_section(), axial_load=12e6, curvature=_curvature(100, 6e-5))
    assert nominal_point(light).cause == "bar strain"
    assert nominal_point(heavy).cause == "concrete strain"
    assert first_yield(light).cause == "bar yield"
    for response in (light, heavy):
        assert first_yield(response).curvature < nominal_point(response).curvature


def test_core_governs_the_ultimate_of_a_weak_core() -> None:
    response = moment_curvature(
        _section(ultimate=0.008), axial_load=3e6, curvature=_curvature(100, 9e-5)
    )
    ultimate = ultimate_point(response)
    assert ultimate.cause == "core strain"
    assert ultimate == replace(point_at_core_strain(response, strain=0.008), cause="core strain")


def test_fracture_governs_the_ultimate_of_brittle_bars() -> None:
    brittle = replace(STEEL, ultimate_strain=0.03)
    response = moment_curvature(
        _section(brittle, ultimate=0.05), axial_load=1e6, curvature=_curvature(100, 9e-5)
    )
    ultimate = ultimate_point(response)
    assert ultimate.cause == "bar fracture"
    first = int(np.argmax(response.bar_fractured.any(axis=1)))
    low, high = response.curvature[first - 1], response.curvature[first]
    assert low <= ultimate.curvature <= high
    assert ultimate.moment == pytest.approx(response.moment[first - 1])
    # bars that slip before they reach their strength do not fracture
    slipping = moment_curvature(
        _section(brittle, stress_limit=600.0, ultimate=0.05),
        axial_load=1e6,
        curvature=_curvature(100, 9e-5),
    )
    assert not slipping.bar_fractured.any()
    assert ultimate_point(slipping).cause != "bar fracture"


def test_loss_of_equilibrium_and_end_of_analysis() -> None:
    shell = unconfined_concrete_law(strength=30.0, elastic_modulus=27400.0)
    bars = BarGroup.ring(8, radius=450.0, area=500.0, steel=STEEL)
    plain = CircularSection((ConcreteZone("core", 1000.0, shell),), (bars,))
    response = moment_curvature(plain, axial_load=12e6, curvature=np.linspace(1e-7, 3e-5, 200))
    ultimate = ultimate_point(response, moment_loss=1.0)
    assert ultimate.cause in ("loss of equilibrium", "core strain")
    assert ultimate.curvature <= response.curvature[response.valid_count - 1]
    short = moment_curvature(_section(), axial_load=3e6, curvature=_curvature(20, 1e-5))
    assert ultimate_point(short).cause == "end of analysis"
    assert ultimate_point(short).curvature == 1e-5
    nothing = moment_curvature(plain, axial_load=100e6)
    for point in (ultimate_point(nothing), peak_point(nothing), first_yield(nothing)):
        assert not point.reached
        assert np.isnan(point.moment)


def test_moment_loss_is_found_between_points() -> None:
    curvature = np.array([1e-6, 2e-6, 3e-6, 4e-6])
    response = _made_up(curvature, np.array([500.0, 1000.0, 900.0, 700.0]) * 1e6)
    ultimate = ultimate_point(response)
    assert ultimate.cause == "moment loss"
    assert ultimate.curvature == pytest.approx(3.5e-6)
    assert ultimate.moment == pytest.approx(800e6)
    assert peak_point(response).moment == 1000e6
    assert peak_point(response).curvature == 2e-6


def test_equal_area_of_an_elastic_plastic_response() -> None:
    # a response that is already bilinear is its own idealisation
    curvature = np.linspace(1e-8, 2e-5, 2001)
    yield_curvature, moment = 4e-6, 2000e6
    base = _made_up(curvature, np.minimum(curvature / yield_curvature, 1.0) * moment)
    strain = 475.0 / 200e3 * curvature / (0.7 * yield_curvature)  # bars yield on the way up
    response = replace(base, bar_strain=np.outer(strain, np.ones(20)) * 0.999)
    curve = bilinear_curve(response)
    assert curve.plastic_moment == pytest.approx(moment, rel=1e-4)
    assert curve.yield_curvature == pytest.approx(yield_curvature, rel=1e-4)
    assert curve.effective_stiffness == pytest.approx(moment / yield_curvature, rel=1e-6)
    assert curve.curvature_ductility == pytest.approx(5.0, rel=1e-3)


def test_equal_area_of_a_real_response() -> None:
    response = moment_curvature(_section(), axial_load=3e6, curvature=_curvature(200, 9e-5))
    curve, start = bilinear_curve(response), first_yield(response)
    ultimate = ultimate_point(response)
    fine = np.linspace(start.curvature, ultimate.curvature, 20_001)
    actual = np.trapezoid(np.interp(fine, response.curvature, response.moment), fine)
    ideal = np.minimum(curve.effective_stiffness * fine, curve.plastic_moment)
    assert np.trapezoid(ideal, fine) == pytest.approx(actual, rel=1e-3)
    assert curve.effective_stiffness == pytest.approx(start.moment / start.curvature, rel=1e-9)
    assert start.moment < curve.plastic_moment <= peak_point(response).moment


def test_section_that_never_yields_has_no_idealisation() -> None:
    slipping = moment_curvature(
        _section(stress_limit=200.0), axial_load=0.0, curvature=_curvature(50, 2e-6)
    )
    curve = bilinear_curve(slipping)
    assert np.isnan(curve.plastic_moment)
    assert np.isnan(curve.curvature_ductility)


def test_core_strain_at_moment() -> None:
    response = moment_curvature(_section(), axial_load=3e6, curvature=_curvature(200, 6e-5))
    peak = peak_point(response).moment
    wanted = np.array([0.0, 0.5 * peak, 0.9 * peak, peak, 1.001 * peak])
    strain = np.asarray(core_strain_at_moment(response, wanted))
    assert np.all(np.diff(strain) > 0.0)
    assert np.isinf(strain[-1])
    for row in (1, 2):
        point = point_at_core_strain(response, strain=float(strain[row]))
        assert point.moment == pytest.approx(wanted[row], rel=1e-9)
    nothing = moment_curvature(_section(), axial_load=200e6)
    assert core_strain_at_moment(nothing, 1.0) == np.inf
