"""How engineers write quantities, and what is refused."""

from __future__ import annotations

import pytest

from jacketcheck.units import parse_quantity


@pytest.mark.parametrize(
    ("text", "millimetres"),
    [
        ("10 mm", 10.0),
        ("10mm", 10.0),
        ("  10   mm ", 10.0),
        ("1.27 cm", 12.7),
        ("1.2192 m", 1219.2),
        (".5 in", 12.7),
        ("5. in", 127.0),
        ("+3 mm", 3.0),
        ("1e3 mm", 1000.0),
        ("1.5E-1 m", 150.0),
        ("3/8 in", 9.525),
        ('3/8"', 9.525),
        ("1-1/8 in", 28.575),
        ("1 1/8 in", 28.575),
        ("1-1/8in", 28.575),
        ("20 ft", 6096.0),
        ("20 ft 6 in", 6248.4),
        ("20 feet 6 inches", 6248.4),
        ("20 ft 6-1/2 in", 6261.1),
        ("20'6\"", 6248.4),
        ("20'-6\"", 6248.4),
        ("20' - 6 1/2\"", 6261.1),
        ("20′ 6″", 6248.4),
        ("0.5 ft 0 in", 152.4),
        ("0 ft 0 in", 0.0),
        ("100 mil", 2.54),
        ("400 µm", 0.4),
        ("400 \N{GREEK SMALL LETTER MU}m", 0.4),
        ("10\N{NO-BREAK SPACE}mm", 10.0),
        ("\N{MINUS SIGN}3 mm", -3.0),
        ("-3/8 in", -9.525),
        ("-1-1/8 in", -28.575),
        ("-5 ft 3 in", -1600.2),
        ("0 mm", 0.0),
        ("-0 mm", 0.0),
    ],
)
def test_lengths(text: str, millimetres: float) -> None:
    assert parse_quantity(text, "mm") == millimetres


@pytest.mark.parametrize(
    ("text", "target", "value"),
    [
        ("345 MPa", "MPa", 345.0),
        ("345 N/mm2", "MPa", 345.0),
        ("345 N/mm²", "MPa", 345.0),
        ("345 N/mm^2", "MPa", 345.0),
        ("345 N/mm**2", "MPa", 345.0),
        ("25 GPa", "MPa", 25_000.0),
        ("2500 kN", "N", 2.5e6),
        ("2.5 MN", "N", 2.5e6),
        ("600 kips", "N", 600 * 4448.2216152605),
        ("500 lb", "N", 500 * 4.4482216152605),
        ("12 kN*m", "N*mm", 12e6),
        ("12 kN m", "N*mm", 12e6),
        ("12 kN-m", "N*mm", 12e6),
        ("12 kN·m", "N*mm", 12e6),
        ("12 kNm", "N*mm", 12e6),
        ("30 deg", "deg", 30.0),
        ("30°", "deg", 30.0),
        ("1.4", "1", 1.4),
        ("120 %", "1", 1.2),
        ("0.4%", "1", 0.004),
        ("3/4", "1", 0.75),
        ("5 mm/mm", "1", 5.0),
    ],
)
def test_other_quantities(text: str, target: str, value: float) -> None:
    assert parse_quantity(text, target) == pytest.approx(value, rel=1e-15)


@pytest.mark.parametrize("text", ["12 kip*ft", "12 kip-ft", "12 kip ft", "12 kip·ft"])
def test_moments_in_kip_feet(text: str) -> None:
    # 1 lbf = 4.4482216152605 N, 1 ft = 304.8 mm
    assert parse_quantity(text, "N*mm") == pytest.approx(12 * 4448.2216152605 * 304.8, rel=1e-14)


@pytest.mark.parametrize(
    ("inch", "millimetre"),
    [("3/8 in", "9.525 mm"), ("1/64 in", "0.396875 mm"), ("1-1/8 in", "2.8575 cm")],
)
def test_both_systems_give_the_same_number(inch: str, millimetre: str) -> None:
    assert parse_quantity(inch, "mm") == parse_quantity(millimetre, "mm")


@pytest.mark.parametrize(
    ("text", "target", "reason"),
    [
        ("", "mm", "is not a number followed by a unit"),
        ("   ", "mm", "is not a number followed by a unit"),
        ("mm", "mm", "is not a number followed by a unit"),
        ("thick", "mm", "is not a number followed by a unit"),
        ("≈3 mm", "mm", "is not a number followed by a unit"),
        ("1.5.2 mm", "mm", "is not a number followed by a unit"),
        ("1 200 mm", "mm", "is not a number followed by a unit"),
        ("1/2 3 mm", "mm", "is not a number followed by a unit"),
        ("٣ mm", "mm", "is not a number followed by a unit"),
        ("½ in", "mm", "is not a number followed by a unit"),
        ("1½ in", "mm", "unit '½ in' is not known"),
        ("1,200 mm", "mm", "has a comma; write a decimal point and no separators"),
        ("1,5 mm", "mm", "has a comma; write a decimal point and no separators"),
        ("1_000 mm", "mm", "unit '_000 mm' is not known"),
        ("10", "mm", "has no unit"),
        ("1 1/8", "mm", "has no unit"),
        ("5 kN", "mm", "unit 'kN' has the wrong dimension"),
        ("5 ft 3 in", "N", "unit 'ft' has the wrong dimension"),
        ("5 m m", "mm", "unit 'm m' has the wrong dimension"),
        ("5 deg", "1", "unit 'deg' has the wrong dimension"),
        ("5 kg", "N", "unit 'kg' has the wrong dimension"),
        ("10 mm 5 cm", "mm", "unit 'mm 5 cm' is not known"),
        ("20 ft 6", "mm", "unit 'ft 6' is not known"),
        ("10 min", "mm", "unit 'min' is not known"),
        ("10 kin", "mm", "unit 'kin' is not known"),
        ("10 mm/", "mm", "unit 'mm/' is not known"),
        ("10 *mm", "mm", "unit '*mm' is not known"),
        ("10 furlong", "mm", "unit 'furlong' is not known"),
        ("10 nan", "mm", "unit 'nan' is not known"),
        ("10 __class__", "mm", "unit '__class__' is not known"),
        ("50 KSI", "MPa", "unit 'KSI' is not known; did you mean ksi?"),
        ("10 MM", "mm", "unit 'MM' is not known; did you mean mm?"),
        ("1/0 in", "mm", "divides by zero"),
        ("nan", "mm", "is not a finite number"),
        ("-NaN mm", "mm", "is not a finite number"),
        ("inf mm", "mm", "is not a finite number"),
        ("-Infinity", "1", "is not a finite number"),
        ("∞ mm", "mm", "is not a finite number"),
        ("1e400 mm", "mm", "is not a finite number"),
        ("1e99999 mm", "mm", "has an exponent that is too large"),
        ("1e-99999 mm", "mm", "has an exponent that is too large"),
        ("9" * 61, "mm", "is longer than 60 characters"),
    ],
)
def test_what_is_refused(text: str, target: str, reason: str) -> None:
    with pytest.raises(ValueError) as caught:  # noqa: PT011 - the text is compared below
        parse_quantity(text, target)
    assert str(caught.value) == reason


def test_a_long_row_of_digits_is_a_number() -> None:
    assert parse_quantity("9" * 50 + " mm", "mm") == pytest.approx(1e50)
