"""Slip capacities by AS 4100 9.2.3 (9.3.3 in 1998), as tabulated for design.

The table is from memory, its arithmetic was redone by hand; one decimal of a kN is given.
"""

from __future__ import annotations

import pytest
from jacketcheck_australasia.mechanics.slip import (
    AS_ROLLED_SLIP_FACTOR,
    SLIP_CAPACITY_FACTOR,
    slip_capacity,
    slip_hole_factor,
)

from jacketcheck.host import Host

TENSION = {"M16": 95e3, "M20": 145e3, "M24": 210e3, "M30": 335e3, "M36": 490e3}
"""Minimum bolt tension [N], AS 4100-1998 Table 15.2.5.1; NZS 3404:1997 alike."""


@pytest.mark.parametrize(
    ("size", "expected"),
    [
        pytest.param("M16", 23.3, id="S-24-M16"),
        pytest.param("M20", 35.5, id="S-24-M20"),
        pytest.param("M24", 51.5, id="S-24-M24"),
        pytest.param("M30", 82.1, id="S-24-M30"),
    ],
)
def test_design_capacity_of_one_interface(size: str, expected: float) -> None:
    nominal = slip_capacity(AS_ROLLED_SLIP_FACTOR, bolt_tension=TENSION[size], interfaces=1)
    assert SLIP_CAPACITY_FACTOR * float(nominal) / 1e3 == pytest.approx(expected, abs=0.051)


@pytest.mark.parametrize(
    ("hole", "expected"),
    [
        pytest.param("standard", 35.5, id="S-25-standard"),
        pytest.param("oversized", 30.2, id="S-25-oversized"),
        pytest.param("short-slot-parallel", 30.2, id="S-25-short-slot"),
        pytest.param("long-slot-perpendicular", 24.9, id="S-25-long-slot"),
    ],
)
def test_hole_factors_on_m20(hole: str, expected: float) -> None:
    nominal = slip_capacity(
        0.35, bolt_tension=TENSION["M20"], interfaces=1, hole_factor=slip_hole_factor(hole)
    )
    assert SLIP_CAPACITY_FACTOR * float(nominal) / 1e3 == pytest.approx(expected, abs=0.051)


@pytest.mark.parametrize("size", [pytest.param(size, id=f"P-10-{size}") for size in TENSION])
def test_minimum_tensions_of_the_catalogue(host: Host, size: str) -> None:
    product = host.catalog.bolt_product("AS/NZS 1252 8.8/TF")
    assert product.size(size).pretension == TENSION[size]


def test_capacity_factor_of_nzs_3404_table_3_3_2() -> None:
    assert SLIP_CAPACITY_FACTOR == 0.7
