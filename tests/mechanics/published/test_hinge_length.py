"""Plastic hinge lengths worked out from the published equations.

SI forms: Priestley, Seible and Calvi 1996; US forms: AASHTO Guide Spec Seismic 2nd ed. (2011)
4.11.6 and Caltrans SDC 7.6.2.  Numbers are recomputed from the equations to the digits shown.
"""

from __future__ import annotations

import numpy as np
import pytest

from jacketcheck.mechanics._customary_units import INCH, KSI
from jacketcheck.mechanics.hinge_length import (
    guide_spec_hinge_length,
    guide_spec_jacketed_hinge_length,
    hardening_hinge_length,
    hinge_length,
    jacketed_hinge_length,
)


def test_unjacketed_si() -> None:
    # J-07: 0.08 x 6000 + 0.022 x 475 x 32
    length = hinge_length(6000.0, expected_yield=475.0, bar_diameter=32.0)
    assert length == pytest.approx(814.4, abs=0.05)


def test_unjacketed_si_minimum() -> None:
    # J-07: 0.044 x 475 x 32 governs a short span
    length = hinge_length(1000.0, expected_yield=475.0, bar_diameter=32.0)
    assert length == pytest.approx(668.8, abs=0.05)


@pytest.mark.parametrize(
    ("span", "diameter", "expected"),
    [
        pytest.param(240.0, 1.27, 32.15, id="J-08"),
        pytest.param(36.0, 1.41, 28.76, id="J-09"),
    ],
)
def test_unjacketed_us(span: float, diameter: float, expected: float) -> None:
    length = guide_spec_hinge_length(
        span * INCH, expected_yield=68.0 * KSI, bar_diameter=diameter * INCH
    )
    assert length / INCH == pytest.approx(expected, abs=0.0051)


def test_jacketed_si() -> None:
    # J-10: 50 + 0.044 x 475 x 32
    length = jacketed_hinge_length(50.0, expected_yield=475.0, bar_diameter=32.0)
    assert length == pytest.approx(718.8, abs=0.05)


def test_jacketed_us() -> None:
    # J-11: 2 + 0.3 x 68 x 1.41
    length = guide_spec_jacketed_hinge_length(
        2.0 * INCH, expected_yield=68.0 * KSI, bar_diameter=1.41 * INCH
    )
    assert length / INCH == pytest.approx(30.76, abs=0.0051)


def test_the_two_forms_are_the_same_rule_rounded() -> None:
    # J-12: 0.022 and 0.044 per MPa are 0.1517 and 0.3034 per ksi, printed 0.15 and 0.3
    given = {"expected_yield": 469.0, "bar_diameter": 35.8}
    for span in (1000.0, 8000.0):
        si, us = hinge_length(span, **given), guide_spec_hinge_length(span, **given)
        assert us < si
        assert us == pytest.approx(si, rel=0.02)


@pytest.mark.parametrize(
    ("tensile", "expected"),
    [
        # k = 0.2 x (1.3 - 1) = 0.06: 0.06 x 6000 + 334.4
        pytest.param(1.3 * 475.0, 694.4, id="k-0.06"),
        # k = 0.2 x (1.6 - 1) = 0.12, limited to 0.08
        pytest.param(1.6 * 475.0, 814.4, id="k-limited"),
        # no hardening: twice the penetration length
        pytest.param(475.0, 668.8, id="minimum"),
    ],
)
def test_hardening_form(tensile: float, expected: float) -> None:
    # Priestley, Calvi and Kowalsky 2007, sec. 4.2.8
    length = hardening_hinge_length(
        6000.0, expected_yield=475.0, expected_tensile=tensile, bar_diameter=32.0
    )
    assert length == pytest.approx(expected, abs=0.05)


def test_arrays_broadcast() -> None:
    spans = np.array([1000.0, 6000.0])
    lengths = hinge_length(spans, expected_yield=475.0, bar_diameter=32.0)
    assert np.asarray(lengths) == pytest.approx([668.8, 814.4], abs=0.05)
