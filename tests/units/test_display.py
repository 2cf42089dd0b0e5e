"""What units results are shown in."""

from __future__ import annotations

import pytest

from jacketcheck.units import DisplaySystem, display, in_both_systems

INTERNAL_UNITS = [
    "mm", "mm2", "mm3", "mm4", "N", "N/mm", "N/mm2/mm", "mm/MPa", "MPa", "N mm", "1/mm", "kg",
    "rad", "deg", "1",
]  # fmt: skip


@pytest.mark.parametrize("system", ["si", "us"])
@pytest.mark.parametrize("unit", INTERNAL_UNITS)
def test_every_internal_unit_has_a_factor_above_zero(unit: str, system: DisplaySystem) -> None:
    factor, printed = display(unit, system)
    assert factor > 0.0
    assert printed


@pytest.mark.parametrize(
    ("unit", "system", "factor", "printed"),
    [
        ("N", "si", 1e-3, "kN"),
        ("mm3", "si", 1e-9, "m³"),
        ("1/mm", "si", 1e3, "1/m"),
        ("1/mm", "us", 25.4, "1/in"),
        ("N mm", "si", 1e-6, "kN·m"),
        ("N/mm2/mm", "us", 25.4 / 6.894757293168361, "ksi/in"),
        ("mm/MPa", "us", 6.894757293168361 / 25.4, "in/ksi"),
        ("1", "us", 1.0, "—"),
        ("bolts", "us", 1.0, "bolts"),
    ],
)
def test_factors(unit: str, system: DisplaySystem, factor: float, printed: str) -> None:
    found, text = display(unit, system)
    assert found == pytest.approx(factor, rel=1e-14)
    assert text == printed


@pytest.mark.parametrize(
    ("value", "unit", "text"),
    [
        (1219.2, "mm", "1219.2 mm (48 in)"),
        (1.0e9, "N", "1000000 kN (224800 kip)"),
        (345.0, "MPa", "345 MPa (50.04 ksi)"),
        (0.0, "mm", "0 mm (0 in)"),
        (30.0, "deg", "30 °"),
        (12.0, "1", "12"),
        (float("inf"), "mm", "inf mm (inf in)"),
    ],
)
def test_values_in_both_systems(value: float, unit: str, text: str) -> None:
    assert in_both_systems(value, unit) == text
