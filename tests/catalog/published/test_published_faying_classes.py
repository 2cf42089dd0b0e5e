"""Slip coefficients against AISC 360-22, AASHTO LRFD 9th ed. and RCSC 2020."""

from __future__ import annotations

import pytest

from jacketcheck.catalog import built_in_catalog


@pytest.mark.parametrize(
    ("name", "coefficient"),
    [
        # AISC 360-22 J3.9
        pytest.param("AISC A", 0.30, id="S-01-A"),
        pytest.param("AISC B", 0.50, id="S-01-B"),
        # AASHTO LRFD 9th ed. (2020) Table 6.13.2.8-3
        pytest.param("AASHTO A", 0.30, id="S-12-A"),
        pytest.param("AASHTO B", 0.50, id="S-12-B"),
        pytest.param("AASHTO C", 0.30, id="S-12-C"),
        pytest.param("AASHTO D", 0.45, id="S-12-D"),
        # RCSC 2020 Section 5.4
        pytest.param("RCSC A", 0.30, id="RCSC-A"),
        pytest.param("RCSC B", 0.50, id="RCSC-B"),
    ],
)
def test_slip_coefficient(name: str, coefficient: float) -> None:
    assert built_in_catalog().faying_class(name).slip_coefficient == coefficient
