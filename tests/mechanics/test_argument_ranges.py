"""Every formula of hoop action and confinement: bad arguments are named, arrays broadcast."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import numpy as np
import pytest

from jacketcheck.errors import DomainError
from jacketcheck.mechanics import (
    clamping,
    concrete_properties,
    confinement,
    core_concrete,
    hoop,
    jacket_thickness,
    lateral_pressure,
    retained_pressure,
    seam_stiffness,
)

Formula = Callable[..., Any]

FORMULAS: list[tuple[Formula, dict[str, float]]] = [
    (hoop.hoop_force, {"pressure": 2.0, "inner_radius": 600.0}),
    (hoop.pressure_for_hoop_force, {"hoop_force": 900.0, "inner_radius": 600.0}),
    (hoop.hoop_stress, {"pressure": 2.0, "inner_radius": 600.0, "thickness": 8.0}),
    (hoop.yield_pressure, {"yield_strength": 250.0, "thickness": 8.0, "inner_radius": 600.0}),
    (
        hoop.sleeve_compliance,
        {"inner_radius": 600.0, "thickness": 8.0, "elastic_modulus": 200e3},
    ),
    (hoop.seam_compliance, {"inner_radius": 600.0, "seam_stiffness": 9e3}),
    (
        hoop.grout_compliance,
        {"inner_radius": 650.0, "core_radius": 600.0, "grout_modulus": 25e3},
    ),
    (
        hoop.radial_compliance,
        {
            "inner_radius": 650.0,
            "core_radius": 600.0,
            "thickness": 8.0,
            "elastic_modulus": 200e3,
            "seam_stiffness": 9e3,
            "grout_modulus": 25e3,
        },
    ),
    (hoop.core_pressure, {"pressure": 2.0, "inner_radius": 650.0, "core_radius": 600.0}),
    (hoop.bolt_hoop_force, {"hoop_force": 900.0, "pitch": 75.0, "bolt_columns": 2.0}),
    (
        seam_stiffness.splice_plate_stiffness,
        {"total_plate_thickness": 20.0, "free_length": 120.0, "elastic_modulus": 200e3},
    ),
    (
        seam_stiffness.bolt_shear_stiffness,
        {"bolt_diameter": 20.0, "bolt_tensile_strength": 800.0, "shear_planes": 2.0},
    ),
    (
        seam_stiffness.bolt_bearing_stiffness,
        {
            "bolt_diameter": 20.0,
            "plate_thickness": 8.0,
            "plate_tensile_strength": 400.0,
            "end_distance": 40.0,
            "line_spacing": 60.0,
        },
    ),
    (
        seam_stiffness.bearing_type_seam_stiffness,
        {
            "shear_stiffness": 300e3,
            "sleeve_bearing_stiffness": 90e3,
            "splice_bearing_stiffness": 120e3,
            "plate_stiffness": 20e3,
            "pitch": 75.0,
            "bolt_columns": 2.0,
        },
    ),
    (concrete_properties.elastic_modulus_aci_metric, {"compressive_strength": 30.0}),
    (concrete_properties.elastic_modulus_aci_customary, {"compressive_strength": 30.0}),
    (concrete_properties.elastic_modulus_mander, {"unconfined_strength": 30.0}),
    (concrete_properties.expected_concrete_strength, {"compressive_strength": 30.0}),
    (
        concrete_properties.unconfined_peak_strain,
        {"unconfined_strength": 30.0, "elastic_modulus": 27e3},
    ),
    (confinement.strength_ratio, {"pressure_ratio": 0.1}),
    (confinement.pressure_ratio_for_strength_ratio, {"strength_ratio": 1.5}),
    (confinement.confined_strength, {"unconfined_strength": 30.0, "lateral_pressure": 2.0}),
    (
        confinement.confined_peak_strain,
        {"strength_ratio": 1.5, "unconfined_peak_strain": 0.002},
    ),
    (
        confinement.popovics_stress,
        {"strain": 0.003, "peak_stress": 40.0, "peak_strain": 0.005, "elastic_modulus": 27e3},
    ),
    (
        confinement.confined_stress,
        {
            "strain": 0.003,
            "lateral_pressure": 2.0,
            "unconfined_strength": 30.0,
            "elastic_modulus": 27e3,
            "unconfined_peak_strain": 0.002,
        },
    ),
    (
        confinement.ultimate_strain,
        {
            "volumetric_ratio": 0.02,
            "yield_strength": 250.0,
            "steel_ultimate_strain": 0.12,
            "confined_strength": 50.0,
        },
    ),
    (
        confinement.combined_ultimate_strain,
        {
            "hoop_volumetric_ratio": 0.005,
            "hoop_yield_strength": 420.0,
            "hoop_ultimate_strain": 0.09,
            "jacket_volumetric_ratio": 0.02,
            "jacket_yield_strength": 250.0,
            "jacket_ultimate_strain": 0.12,
            "confined_strength": 50.0,
        },
    ),
    (
        lateral_pressure.hoop_volumetric_ratio,
        {"bar_area": 200.0, "core_diameter": 1000.0, "spacing": 100.0},
    ),
    (
        lateral_pressure.hoop_effectiveness,
        {"clear_spacing": 90.0, "core_diameter": 1000.0, "longitudinal_ratio": 0.02},
    ),
    (
        lateral_pressure.spiral_effectiveness,
        {"clear_spacing": 90.0, "core_diameter": 1000.0, "longitudinal_ratio": 0.02},
    ),
    (
        lateral_pressure.effective_hoop_pressure,
        {"volumetric_ratio": 0.008, "yield_strength": 420.0, "effectiveness": 0.95},
    ),
    (
        lateral_pressure.hoop_lateral_stiffness,
        {"volumetric_ratio": 0.008, "elastic_modulus": 200e3, "effectiveness": 0.95},
    ),
    (lateral_pressure.jacket_volumetric_ratio, {"thickness": 8.0, "diameter": 1200.0}),
    (
        lateral_pressure.jacket_lateral_pressure,
        {"thickness": 8.0, "diameter": 1200.0, "yield_strength": 250.0},
    ),
    (
        core_concrete.dilation_coefficient,
        {
            "unconfined_strength": 30.0,
            "elastic_modulus": 27e3,
            "unconfined_peak_strain": 0.002,
        },
    ),
    (core_concrete.printed_dilation_coefficient, {"unconfined_strength": 30.0}),
    (
        core_concrete.secant_lateral_strain,
        {
            "axial_strain": 0.003,
            "axial_stress": 30.0,
            "elastic_modulus": 27e3,
            "dilation_coefficient": 400.0,
        },
    ),
    (
        clamping.ring_crack_perimeter,
        {"bar_count": 20.0, "bar_circle_diameter": 1000.0, "bar_diameter": 32.0, "cover": 50.0},
    ),
    (clamping.separate_crack_perimeter, {"bar_diameter": 32.0, "cover": 50.0}),
    (
        clamping.crack_perimeter,
        {"bar_count": 20.0, "bar_circle_diameter": 1000.0, "bar_diameter": 32.0, "cover": 50.0},
    ),
    (
        clamping.required_clamping_pressure,
        {
            "bar_force": 300e3,
            "anchorage_length": 600.0,
            "crack_perimeter": 230.0,
            "friction_coefficient": 1.4,
        },
    ),
    (
        clamping.available_clamping_pressure,
        {
            "core_radius": 600.0,
            "radial_compliance": 0.3,
            "yield_pressure": 2.5,
            "slip_pressure": 2.2,
            "hoop_strain": 0.001,
            "radial_play": 0.1,
        },
    ),
    (
        clamping.column_hoop_clamping_pressure,
        {
            "hoop_area": 129.0,
            "diameter": 1200.0,
            "spacing": 150.0,
            "elastic_modulus": 200e3,
            "hoop_strain": 0.001,
        },
    ),
    (
        jacket_thickness.confinement_thickness,
        {
            "ultimate_axial_strain": 0.015,
            "diameter": 1200.0,
            "confined_strength": 45.0,
            "yield_strength": 250.0,
            "steel_ultimate_strain": 0.12,
        },
    ),
    (
        jacket_thickness.clamping_thickness,
        {
            "clamping_pressure": 2.0,
            "column_hoop_pressure": 0.2,
            "diameter": 1200.0,
            "elastic_modulus": 200e3,
            "hoop_strain": 0.001,
        },
    ),
    (retained_pressure.seam_opening, {"sleeve_clearance": 2.0, "splice_clearance": 3.0}),
    (retained_pressure.radial_play, {"seam_slip": 3.0}),
    (retained_pressure.hoop_strain_lost_by_slip, {"seam_slip": 3.0, "inner_radius": 600.0}),
    (
        retained_pressure.shared_loss,
        {
            "movement": 0.002,
            "slip_pressure": 2.0,
            "yield_pressure": 2.5,
            "clearance": 0.0015,
            "inner_radius": 600.0,
            "radial_compliance": 0.3,
        },
    ),
    (
        retained_pressure.hoop_strain_lost_by_yield,
        {"peak_hoop_strain": 0.003, "yield_strain": 0.00125},
    ),
    (
        retained_pressure.retained_pressure,
        {
            "hoop_strain": 0.001,
            "slip_loss": 0.0002,
            "yield_loss": 0.0003,
            "inner_radius": 600.0,
            "radial_compliance": 0.3,
            "yield_pressure": 2.5,
        },
    ),
]


EACH_ARGUMENT = [
    pytest.param(formula, arguments, name, id=f"{formula.__name__}-{name}")
    for formula, arguments in FORMULAS
    for name in arguments
]


def _numbers(result: object) -> list[Any]:
    """The result itself, or the numeric fields of a record."""
    values = list(vars(result).values()) if hasattr(result, "__dataclass_fields__") else [result]
    return [value for value in values if np.asarray(value).dtype.kind != "U"]


@pytest.mark.parametrize(("formula", "arguments", "name"), EACH_ARGUMENT)
@pytest.mark.parametrize("bad", [np.nan, -1.0, -np.inf])
def test_a_bad_argument_is_refused(
    formula: Formula, arguments: dict[str, float], name: str, bad: float
) -> None:
    with pytest.raises(DomainError):
        formula(**{**arguments, name: bad})
    with pytest.raises(DomainError):
        formula(**{**arguments, name: np.array([arguments[name], bad])})


@pytest.mark.parametrize(("formula", "arguments", "name"), EACH_ARGUMENT)
def test_arrays_broadcast(formula: Formula, arguments: dict[str, float], name: str) -> None:
    single = _numbers(formula(**arguments))
    column = np.full((3, 1), arguments[name])
    row = {key: np.full(2, value) for key, value in arguments.items() if key != name}
    many = _numbers(formula(**{**row, name: column}))
    shape = (3, 2) if row else (3, 1)
    for one, several in zip(single, many, strict=True):
        assert np.ndim(one) == 0
        assert np.broadcast_shapes(np.shape(several), shape) == shape
        assert several == pytest.approx(np.full(np.shape(several), one), rel=1e-12)


def test_every_formula_is_listed() -> None:
    modules = (
        clamping,
        concrete_properties,
        confinement,
        core_concrete,
        hoop,
        jacket_thickness,
        lateral_pressure,
        retained_pressure,
        seam_stiffness,
    )
    public = {
        name
        for module in modules
        for name in module.__all__
        if callable(getattr(module, name)) and name.islower()
    }
    assert {formula.__name__ for formula, _ in FORMULAS} == public


@pytest.mark.parametrize(
    ("formula", "arguments"),
    [
        pytest.param(
            confinement.strength_ratio,
            {"pressure_ratio": confinement.PRESSURE_RATIO_LIMIT + 1e-6},
            id="pressure-beyond-the-peak",
        ),
        pytest.param(
            confinement.pressure_ratio_for_strength_ratio,
            {"strength_ratio": confinement.STRENGTH_RATIO_LIMIT + 1e-6},
            id="strength-beyond-the-peak",
        ),
        pytest.param(
            confinement.pressure_ratio_for_strength_ratio,
            {"strength_ratio": 0.999},
            id="strength-below-unconfined",
        ),
        pytest.param(
            confinement.popovics_stress,
            {"strain": 0.001, "peak_stress": 30.0, "peak_strain": 0.002, "elastic_modulus": 15e3},
            id="modulus-at-the-secant",
        ),
        pytest.param(
            core_concrete.printed_dilation_coefficient,
            {"unconfined_strength": 129.96},
            id="printed-coefficient-at-zero",
        ),
        pytest.param(
            core_concrete.dilation_coefficient,
            {"unconfined_strength": 100.0, "elastic_modulus": 50e3},
            id="coefficient-at-zero",
        ),
        pytest.param(
            core_concrete.secant_lateral_strain,
            {
                "axial_strain": 0.001,
                "axial_stress": 27.1,
                "elastic_modulus": 27e3,
                "dilation_coefficient": 400.0,
            },
            id="stiffer-than-elastic",
        ),
        pytest.param(
            hoop.grout_compliance,
            {"inner_radius": 599.0, "core_radius": 600.0, "grout_modulus": 25e3},
            id="sleeve-inside-the-core",
        ),
        pytest.param(
            hoop.core_pressure,
            {"pressure": 1.0, "inner_radius": 599.0, "core_radius": 600.0},
            id="sleeve-inside-the-core-pressure",
        ),
        pytest.param(
            hoop.bolt_hoop_force,
            {"hoop_force": 100.0, "pitch": 75.0, "bolt_columns": 0.5},
            id="half-a-bolt",
        ),
        pytest.param(
            lateral_pressure.hoop_effectiveness,
            {"clear_spacing": 2000.0, "core_diameter": 1000.0, "longitudinal_ratio": 0.02},
            id="hoops-too-far-apart",
        ),
        pytest.param(
            lateral_pressure.spiral_effectiveness,
            {"clear_spacing": 50.0, "core_diameter": 1000.0, "longitudinal_ratio": 1.0},
            id="all-bars",
        ),
        pytest.param(
            jacket_thickness.confinement_thickness,
            {
                "ultimate_axial_strain": 0.0039,
                "diameter": 1200.0,
                "confined_strength": 45.0,
                "yield_strength": 250.0,
                "steel_ultimate_strain": 0.12,
            },
            id="below-unconfined-strain",
        ),
    ],
)
def test_beyond_the_range_of_validity(formula: Formula, arguments: dict[str, float]) -> None:
    with pytest.raises(DomainError):
        formula(**arguments)


def test_range_edges_are_allowed() -> None:
    assert confinement.strength_ratio(confinement.PRESSURE_RATIO_LIMIT) > 4.0
    assert confinement.pressure_ratio_for_strength_ratio(1.0) == pytest.approx(0.0, abs=1e-15)
    assert hoop.grout_compliance(inner_radius=600.0, core_radius=600.0, grout_modulus=25e3) == 0.0
    assert lateral_pressure.jacket_volumetric_ratio(0.0, diameter=1200.0) == 0.0
    tight = lateral_pressure.hoop_effectiveness(0.0, core_diameter=900.0, longitudinal_ratio=0.04)
    assert tight == 1.0  # 1 / 0.96 would be more than all of the core
    with np.errstate(all="raise"):
        tiny = confinement.strength_ratio(2.83e-17)
    assert confinement.confined_peak_strain(tiny) == 0.002
