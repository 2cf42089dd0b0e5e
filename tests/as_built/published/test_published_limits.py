"""What is accepted, against printed tables."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, get_args

import pytest

from jacketcheck.as_built import Confirmation, ConfirmedLine, LineVerdict
from jacketcheck.as_built.compare_holes import HOLES_BY_PENALTY, hole_type_that_covers
from jacketcheck.as_built.plate_tolerances import thickness_tolerance
from jacketcheck.catalog import built_in_catalog
from jacketcheck.mechanics._arguments import HoleType
from jacketcheck.mechanics._customary_units import INCH
from jacketcheck.mechanics.slip_hole_factors import aisc_slip_resistance_factor

CATALOG = built_in_catalog()
SIZE = CATALOG.bolt_product("A325").size("7/8 in")


@pytest.mark.parametrize(
    ("steel", "thickness", "below"),
    [
        # ASTM A6 Table 1: 0.01 in under for any thickness
        ("ASTM A572 Grade 50", 9.525, 0.254),
        ("ASTM A36", 50.8, 0.254),
        # EN 10029:2010 class A
        ("EN S355", 4.0, 0.3),
        ("EN S355", 8.0, 0.4),
        ("EN S355", 10.0, 0.5),
        ("EN S355", 20.0, 0.6),
        ("EN S355", 40.0, 0.7),
    ],
)
def test_mill_tolerances(steel: str, thickness: float, below: float) -> None:
    found = thickness_tolerance(steel, thickness)
    assert found.below == below
    assert found.above > 0.0
    assert found.source


@pytest.mark.parametrize(
    ("along", "across", "kind"),
    [
        # AISC 360-22 Table J3.3, 7/8 in bolts: 15/16; 1-1/16; 15/16 x 1-1/8; 15/16 x 2-3/16 in
        (15 / 16, 15 / 16, "standard"),
        (15 / 16, 1 + 1 / 8, "short-slot-perpendicular"),
        (1 + 1 / 16, 1 + 1 / 16, "oversized"),
        (1 + 1 / 8, 15 / 16, "short-slot-parallel"),
        (15 / 16, 2 + 3 / 16, "long-slot-perpendicular"),
        (2 + 3 / 16, 15 / 16, "long-slot-parallel"),
        (1 + 1 / 8, 1 + 1 / 8, None),
        (2 + 1 / 4, 15 / 16, None),
    ],
)
def test_hole_types_of_aisc(along: float, across: float, kind: str | None) -> None:
    found = hole_type_that_covers(SIZE, along=along * INCH, across=across * INCH, tolerance=1e-6)
    assert found == kind


def test_hole_types_go_from_the_least_reduction_to_the_largest() -> None:
    # AISC 360-22 J3.9: 1.00, 1.00, 0.85, 0.85, 0.70, 0.70
    factors = [aisc_slip_resistance_factor(kind) for kind in HOLES_BY_PENALTY]
    assert factors == [1.0, 1.0, 0.85, 0.85, 0.70, 0.70]
    assert set(HOLES_BY_PENALTY) == set(get_args(HoleType))


@pytest.mark.parametrize(
    ("variant", "torque", "verdict"),
    [
        # L-20: AASHTO 11.5.6.4, T at most 0.25 P D: 710.9 lb·ft at 39 kip and 7/8 in
        pytest.param("wrench", "710.8 lb-ft", LineVerdict.ACCEPTED, id="L-20-within"),
        pytest.param("wrench", "711.1 lb-ft", LineVerdict.REJECTED, id="L-20-beyond"),
        # L-21: EN 14399-1 K2, k_m at most 0.23: 0.23 x 22 mm x 173.5 kN = 877.8 N·m
        pytest.param("HR torque", "877 N*m", LineVerdict.ACCEPTED, id="L-21-within"),
        pytest.param("HR torque", "880 N*m", LineVerdict.REJECTED, id="L-21-beyond"),
    ],
)
def test_largest_torque_coefficient(
    confirmed: Callable[..., Confirmation], line_of: Callable[..., ConfirmedLine], variant: str,
    torque: str, verdict: LineVerdict,
) -> None:  # fmt: skip
    reading = {"torque": torque, "tension": "39 kip" if variant == "wrench" else "173.5 kN"}
    record: dict[str, Any] = {"method": "calibrated-wrench", "calibration": [reading] * 3}
    delivered = {} if variant == "wrench" else {"product": "EN 14399 HR 10.9", "diameter": "M22"}
    confirmation = confirmed(variant, tightening=record, bolts=delivered)
    assert line_of(confirmation, "torque coefficient K, highest").verdict is verdict
