"""How a shop reads numbers: fractions of an inch, pound-feet, turns of a nut."""

from __future__ import annotations

import math
from fractions import Fraction

from jacketcheck.render.numbers import number_text
from jacketcheck.units import DisplaySystem, display
from jacketcheck.units._registry import conversion_factor
from jacketcheck.units.inches import inch_text

__all__ = ["plain_number", "shop_quantity"]

_TORQUE: dict[DisplaySystem, tuple[str, str]] = {"si": ("N*m", "N·m"), "us": ("lbf*ft", "lb·ft")}


def plain_number(value: float, *, digits: int = 4) -> str:
    """A number without zeros at its end.

    Examples
    --------
    >>> plain_number(51.0), plain_number(53.55), plain_number(12.0004)
    ('51', '53.55', '12')
    """
    text = number_text(value, digits=digits)
    return text.rstrip("0").rstrip(".") if "." in text and "e" not in text else text


def shop_quantity(value: float | str, unit: str, system: DisplaySystem) -> str:
    """A quantity in the internal `unit`, or a word as it is.

    Lengths in inches are fractions where they are fractions; N mm is a torque.

    Examples
    --------
    >>> shop_quantity(69.85, "mm", "us"), shop_quantity(69.85, "mm", "si")
    ('2-3/4 in', '69.85 mm')
    >>> shop_quantity(0.127, "mm", "si"), shop_quantity(12345.67, "mm", "si")
    ('0.127 mm', '12345.67 mm')
    >>> shop_quantity(120.0, "deg", "us")
    '120° (1/3 turn)'
    """
    if isinstance(value, str):
        return value
    if not math.isfinite(value):
        return number_text(value)
    if unit == "mm":
        return inch_text(value) if system == "us" else f"{_millimetres(value)} mm"
    if unit == "N mm":
        pint_unit, printed = _TORQUE[system]
        return f"{value * conversion_factor('N*mm', pint_unit):.0f} {printed}"
    if unit == "deg":
        return f"{plain_number(value)}°{_turns(value)}"
    factor, printed = display(unit, system)
    text = plain_number(value * factor)
    return text if printed == "—" else f"{text} {printed}"


def _millimetres(value: float) -> str:
    """Hundredths of a millimetre, and thin things to three digits."""
    if 0.0 < abs(value) < 1.0:
        return plain_number(value, digits=3)
    return f"{value:.2f}".rstrip("0").rstrip(".")


def _turns(degrees: float) -> str:
    """The same as a fraction of a turn, where it is one in twelfths."""
    turns = Fraction(round(degrees / 30.0), 12)
    if turns <= 0 or abs(float(turns) * 360.0 - degrees) > 1e-6:
        return ""
    return f" ({turns} turn)"
