"""Displacements against double integration of the curvature along the column."""

from __future__ import annotations

import numpy as np
import pytest

from jacketcheck.errors import DomainError
from jacketcheck.mechanics.bar_steel import BarSteel
from jacketcheck.mechanics.concrete_law import popovics_concrete_law
from jacketcheck.mechanics.force_displacement import force_displacement
from jacketcheck.mechanics.hinge_displacement import plastic_displacement, yield_displacement
from jacketcheck.mechanics.moment_curvature import (
    MomentCurvature,
    curvature_range,
    moment_curvature,
)
from jacketcheck.mechanics.section import BarGroup, CircularSection, ConcreteZone
from jacketcheck.mechanics.section_limits import first_yield, ultimate_point

STEEL = BarSteel(475.0, 655.0, 0.0115, 0.09, 200e3)


@pytest.mark.parametrize("repair", [0.0, 800.0, 2000.0])
@pytest.mark.parametrize("ratio", [0.0, 0.4, 1.0])
def test_elastic_displacement_by_integration(repair: float, ratio: float) -> None:
    span, phi = 6000.0, 3e-6
    below = np.linspace(0.0, repair, 20_001)
    above = np.linspace(repair, span, 20_001)

    def part(z: np.ndarray[tuple[int], np.dtype[np.float64]], flexibility: float) -> float:
        curvature = flexibility * phi * (span - z) / (span - repair)
        return float(np.trapezoid(curvature * (span - z), z))

    expected = part(below, ratio) + part(above, 1.0)
    found = yield_displacement(phi, shear_span=span, repair_height=repair, stiffness_ratio=ratio)
    assert found == pytest.approx(expected, rel=1e-6)


def test_equal_stiffness_gives_the_whole_column() -> None:
    # with the repaired part as stiff as the column, base curvature phi L / L' over a span L
    found = yield_displacement(3e-6, shear_span=6000.0, repair_height=1000.0, stiffness_ratio=1.0)
    assert found == pytest.approx(3e-6 * 6000.0 / 5000.0 * 6000.0**2 / 3.0)


def test_plastic_displacement_by_integration() -> None:
    # constant plastic curvature over the hinge length above the repair
    span, repair, hinge, phi = 6000.0, 900.0, 700.0, 3e-5
    z = np.linspace(repair, repair + hinge, 10_001)
    expected = np.trapezoid(phi * (span - z), z)
    found = plastic_displacement(
        phi * hinge, shear_span=span, hinge_length=hinge, repair_height=repair
    )
    assert found == pytest.approx(expected, rel=1e-9)


def _response() -> MomentCurvature:
    core = popovics_concrete_law(
        peak_stress=47.0, peak_strain=0.0077, elastic_modulus=27400.0, ultimate_strain=0.02
    )
    bars = BarGroup.ring(20, radius=510.0, area=819.0, steel=STEEL)
    section = CircularSection((ConcreteZone("core", 1200.0, core),), (bars,))
    return moment_curvature(section, axial_load=3e6, curvature=curvature_range(section, count=400))


def test_envelope_of_a_cantilever() -> None:
    response = _response()
    start, ultimate = first_yield(response), ultimate_point(response)
    envelope = force_displacement(
        response, clear_height=6000.0, hinge_length=700.0, repair_height=1000.0, p_delta=False
    )
    assert envelope.displacement[0] == envelope.force[0] == 0.0
    assert np.all(np.diff(envelope.displacement) > 0.0)
    assert envelope.force == pytest.approx(envelope.moment / 5000.0)
    assert envelope.curvature[-1] == ultimate.curvature
    # at first yield phi L'^2 / 3; at the ultimate by the two parts worked out by hand
    at_yield = np.interp(start.curvature, envelope.curvature, envelope.displacement)
    assert at_yield == pytest.approx(start.curvature * 5000.0**2 / 3.0, rel=2e-3)
    elastic = start.curvature * ultimate.moment / start.moment
    expected = elastic * 5000.0**2 / 3.0 + (ultimate.curvature - elastic) * 700.0 * 4650.0
    assert envelope.ultimate_displacement == pytest.approx(expected, rel=1e-9)


def test_p_delta_lowers_the_force_only() -> None:
    response = _response()
    with_load, without = (
        force_displacement(response, clear_height=6000.0, hinge_length=700.0, p_delta=counted)
        for counted in (True, False)
    )
    assert with_load.displacement == pytest.approx(without.displacement)
    lost = without.force - with_load.force
    assert lost == pytest.approx(3e6 * without.displacement / 6000.0)
    assert with_load.peak_force < without.peak_force


def test_double_curvature_is_two_cantilevers() -> None:
    response = _response()
    half = force_displacement(response, clear_height=3000.0, hinge_length=500.0)
    whole = force_displacement(
        response, clear_height=6000.0, hinge_length=500.0, double_curvature=True
    )
    assert whole.displacement == pytest.approx(2.0 * half.displacement)
    # moments balance: V h + P D = 2 M, and the same for each half
    assert whole.force == pytest.approx(half.force)


def test_moving_the_hinge_up_stiffens_and_shortens() -> None:
    response = _response()
    base = force_displacement(response, clear_height=6000.0, hinge_length=700.0, p_delta=False)
    moved = force_displacement(
        response, clear_height=6000.0, hinge_length=700.0, repair_height=1000.0, p_delta=False
    )
    assert moved.peak_force == pytest.approx(base.peak_force * 6000.0 / 5000.0)
    assert moved.ultimate_displacement < base.ultimate_displacement


def test_section_without_yield_is_refused() -> None:
    response = _response()
    short = moment_curvature(response.section, axial_load=3e6, curvature=np.array([1e-7, 2e-7]))
    with pytest.raises(DomainError, match="first yield"):
        force_displacement(short, clear_height=6000.0, hinge_length=700.0)
    with pytest.raises(DomainError):
        force_displacement(response, clear_height=900.0, hinge_length=700.0, repair_height=1000.0)


@pytest.mark.parametrize("double_curvature", [False, True])
@pytest.mark.parametrize("ratio", [0.0, 0.4])
def test_elastic_branch_with_bending_of_the_repaired_part(
    *, double_curvature: bool, ratio: float
) -> None:
    response, height, repair = _response(), 7000.0, 1500.0
    envelope = force_displacement(
        response,
        clear_height=height,
        hinge_length=600.0,
        repair_height=repair,
        double_curvature=double_curvature,
        stiffness_ratio=ratio,
    )
    hinges = 2 if double_curvature else 1
    span = (height - repair) / hinges
    # curvature falls linearly from the hinge to the point of contraflexure, and goes on growing
    # into the repaired part, of which there is one, by the same statics
    above, below = np.linspace(0.0, span, 5001), np.linspace(span, span + repair, 5001)
    of_one = hinges * np.trapezoid(above**2 / span, above)
    of_one += ratio * np.trapezoid(below**2 / span, below)
    first = first_yield(response).curvature
    elastic = (envelope.curvature > 0.0) & (envelope.curvature <= first)
    assert elastic.sum() > 3
    displacement = envelope.displacement[elastic] / envelope.curvature[elastic]
    assert displacement == pytest.approx(of_one, rel=1e-5)
