"""Elastic modulus and expected strength against the figures of their sources."""

from __future__ import annotations

import numpy as np
import pytest

from jacketcheck.mechanics._customary_units import KSI
from jacketcheck.mechanics.concrete_properties import (
    elastic_modulus_aci_customary,
    elastic_modulus_aci_metric,
    elastic_modulus_mander,
    expected_concrete_strength,
    unconfined_peak_strain,
)


@pytest.mark.parametrize(
    ("strength_ksi", "modulus_ksi"),
    [pytest.param(4.0, 3605.0, id="M-07-4ksi"), pytest.param(5.0, 4031.0, id="M-07-5ksi")],
)
def test_customary_modulus(strength_ksi: float, modulus_ksi: float) -> None:
    # ACI 318-19 19.2.2.1(b): 57,000 sqrt(f'c) psi; printed to four digits
    modulus = elastic_modulus_aci_customary(strength_ksi * KSI)
    assert modulus / KSI == pytest.approx(modulus_ksi, rel=1e-3)


def test_metric_modulus() -> None:
    # M-07; ACI 318M-19 19.2.2.1(b): 4700 sqrt(28) MPa
    assert elastic_modulus_aci_metric(28.0) == pytest.approx(24_870.0, rel=1e-3)


@pytest.mark.parametrize(
    ("strength", "modulus"),
    [pytest.param(30.0, 27_386.0, id="C-05"), pytest.param(25.0, 25_000.0, id="square")],
)
def test_modulus_for_manders_curve(strength: float, modulus: float) -> None:
    # Mander, Priestley and Park 1988: 5000 sqrt(f'co) MPa; printed to the MPa
    assert elastic_modulus_mander(strength) == pytest.approx(modulus, abs=0.5)


@pytest.mark.parametrize(
    ("specified_ksi", "expected_ksi"),
    [
        pytest.param(3.0, 5.0, id="M-05-bound"),
        pytest.param(4.0, 5.2, id="M-05-above"),
        pytest.param(3.846_153_846, 5.0, id="M-05-kink"),
    ],
)
def test_expected_strength(specified_ksi: float, expected_ksi: float) -> None:
    # Caltrans SDC 1.x, 3.2.6: the greater of 1.3 f'c and 5 ksi
    value = expected_concrete_strength(np.asarray(specified_ksi * KSI))
    assert value / KSI == pytest.approx(expected_ksi, rel=1e-9)


@pytest.mark.parametrize("strength", [60.0, 70.0, 80.0, 90.0, 98.0])
def test_strain_at_the_peak_of_strong_concrete(strength: float) -> None:
    """EN 1992-1-1:2004 Table 3.1, from memory: 0.7 f_cm^0.31 per mille, at most 2.8."""
    printed = min(0.7 * strength**0.31, 2.8) / 1000.0
    found = float(
        unconfined_peak_strain(strength, elastic_modulus=elastic_modulus_mander(strength))
    )
    assert 0.75 * printed <= found <= printed


@pytest.mark.parametrize("strength", [10.0, 30.0, 59.9])
def test_strain_at_the_peak_of_ordinary_concrete(strength: float) -> None:
    """Mander, Priestley and Park 1988: 0.002."""
    modulus = elastic_modulus_mander(strength)
    assert float(unconfined_peak_strain(strength, elastic_modulus=modulus)) == 0.002
