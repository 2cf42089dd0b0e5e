"""Our own moments of one section, to notice a change; they prove nothing."""

from __future__ import annotations

import numpy as np
from pytest_regressions.data_regression import DataRegressionFixture

from jacketcheck.mechanics._arrays import Floats
from jacketcheck.mechanics.bar_steel import BarSteel
from jacketcheck.mechanics.concrete_law import popovics_concrete_law, unconfined_concrete_law
from jacketcheck.mechanics.moment_curvature import curvature_range, moment_curvature
from jacketcheck.mechanics.section import BarGroup, CircularSection, ConcreteZone


def _digits(values: Floats) -> list[float]:
    """Four significant digits: far fewer than rounding on another machine can touch."""
    return [float(f"{value:.4g}") for value in values]


def test_repaired_base(data_regression: DataRegressionFixture) -> None:
    steel = BarSteel(475.0, 655.0, 0.0115, 0.06, 200e3)
    core = popovics_concrete_law(
        peak_stress=47.0, peak_strain=0.0077, elastic_modulus=27.4e3, ultimate_strain=0.02
    )
    grout = unconfined_concrete_law(strength=45.0, elastic_modulus=30e3)
    limits = np.tile([np.inf, 300.0, 0.0, np.inf], 4)
    section = CircularSection(
        (ConcreteZone("core", 1200.0, core), ConcreteZone("grout", 1400.0, grout)),
        (
            BarGroup.ring(16, radius=510.0, area=819.0, steel=steel, stress_limit=limits),
            BarGroup.ring(8, radius=650.0, area=645.0, steel=steel, first_angle=0.2),
        ),
    )
    response = moment_curvature(
        section, axial_load=4e6, curvature=curvature_range(section, count=15), angle=0.5
    )
    data_regression.check(
        {
            "curvature": _digits(response.curvature),
            "moment": _digits(response.moment),
            "transverse_moment": _digits(response.transverse_moment),
            "core_strain": _digits(response.core_compressive_strain),
            "bars_fractured": response.bar_fractured.sum(axis=1).tolist(),
        }
    )
