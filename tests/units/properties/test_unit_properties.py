"""Round trips through text and through the units of the output, for every unit we read."""

from __future__ import annotations

import string

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jacketcheck.units import DisplaySystem, display, parse_quantity

LENGTHS = [
    "mm",
    "cm",
    "m",
    "km",
    "µm",
    "in",
    "inch",
    "inches",
    "ft",
    "foot",
    "feet",
    "mil",
    "metres",
]
FORCES = ["N", "kN", "MN", "lbf", "lb", "pounds", "kip", "kips"]
STRESSES = ["Pa", "kPa", "MPa", "GPa", "bar", "psi", "ksi", "N/mm²", "kip/in^2", "lbf/ft**2"]
MOMENTS = ["N*mm", "kN*m", "kNm", "kip*ft", "kip-ft", "kip in", "lb·ft"]
ANGLES = ["deg", "degrees", "°", "rad"]
RATIOS = ["", "%", "percent", "mm/mm", "in/ft"]
KINDS = [
    *((unit, "mm") for unit in LENGTHS),
    *((unit, "N") for unit in FORCES),
    *((unit, "MPa") for unit in STRESSES),
    *((unit, "N*mm") for unit in MOMENTS),
    *((unit, "deg") for unit in ANGLES),
    *((unit, "1") for unit in RATIOS),
]
numbers = st.floats(min_value=1e-6, max_value=1e9)


@pytest.mark.parametrize(("unit", "target"), KINDS)
@given(number=numbers)
def test_value_is_proportional_to_the_number(unit: str, target: str, number: float) -> None:
    one = parse_quantity(f"1 {unit}", target)
    assert parse_quantity(f"{number!r} {unit}", target) == pytest.approx(number * one, rel=1e-14)
    assert parse_quantity(f"-{number!r} {unit}", target) == pytest.approx(-number * one, rel=1e-14)


@pytest.mark.parametrize("system", ["si", "us"])
@pytest.mark.parametrize(
    ("unit", "spelled"),
    [("mm", "mm"), ("N", "N"), ("MPa", "MPa"), ("N mm", "N*mm"), ("N/mm", "N/mm"), ("kg", "kg")],
)
@given(number=numbers)
def test_what_is_shown_reads_back(
    unit: str, spelled: str, system: DisplaySystem, number: float
) -> None:
    factor, printed = display(unit, system)
    written = f"{number * factor!r} {'lbm' if printed == 'lb' else printed}"
    assert parse_quantity(written, spelled) == pytest.approx(number, rel=1e-13)


@given(
    whole=st.integers(0, 99),
    over=st.integers(0, 63),
    power=st.integers(0, 6),
    feet=st.integers(0, 99),
)
def test_fractions_and_feet_are_exact(whole: int, over: int, power: int, feet: int) -> None:
    under = 2**power
    # 25.4 in = 127/5 of them; integers divide correctly rounded
    in_mm = (whole * under + over) * 127 / (5 * under)
    assert parse_quantity(f"{whole}-{over}/{under} in", "mm") == in_mm
    both = ((feet * 12 + whole) * under + over) * 127 / (5 * under)
    assert parse_quantity(f"{feet} ft {whole} {over}/{under} in", "mm") == both


@given(text=st.text(max_size=70), target=st.sampled_from(["mm", "N", "MPa", "deg", "1", "N*mm"]))
def test_any_text_gives_a_finite_number_or_a_value_error(text: str, target: str) -> None:
    _parse_or_refuse(text, target)


@given(
    number=st.sampled_from(["1", "1.5", "1/2", "-3", "1e5"]),
    unit=st.text(alphabet=string.ascii_letters + "*/^-. 1234°µ%²'\"", max_size=12),
    target=st.sampled_from(["mm", "N", "MPa", "deg", "1"]),
)
def test_any_unit_gives_a_finite_number_or_a_value_error(
    number: str, unit: str, target: str
) -> None:
    _parse_or_refuse(f"{number} {unit}", target)


def _parse_or_refuse(text: str, target: str) -> None:
    try:
        value = parse_quantity(text, target)
    except ValueError as error:
        message = str(error)
        assert message
        assert message.isprintable()
        assert not message.endswith(".")
    else:
        assert abs(value) < float("inf")
