"""Reading a quantity as an engineer writes it: ``10 mm``, ``1-1/8 in``, ``20 ft 6 in``."""

from __future__ import annotations

import math
import re

from jacketcheck.units._registry import conversion_factor

__all__ = ["parse_quantity"]

_LONGEST_TEXT = 60
_NUMBER = r"""
    (?:(?P<whole>\d{1,6})[ \-](?=\d+/))?      # the 1 of 1-1/8
    (?:(?P<over>\d{1,6})/(?P<under>\d{1,6})   # 3/8
      |(?P<decimal>[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d{1,4})?))
"""
_UNIT = r"(?P<unit>[A-Za-z%°µ][A-Za-z%°µ0-9²³/*^·. ]*?)?"
_TERM = re.compile(rf"\s*{_NUMBER}\s*{_UNIT}\s*(?=\d|\.\d|$)", re.VERBOSE)
_COMPOUND = re.compile(r"\s*(?P<feet>[\d.]+)\s*(?:ft|feet)\s+(?P<inches>\d.*?in(?:ch(?:es)?)?)\s*")
_SPELLINGS = {"%": "percent", "°": "deg", "²": "**2", "³": "**3", "^": "**", "·": "*"}


def parse_quantity(text: str, target: str) -> float:
    """Convert text with a unit to a number in the unit `target`.

    Parameters
    ----------
    text
        A decimal, a fraction or a whole number with a fraction, then a unit.
        Feet may be followed by inches. A dimensionless target needs no unit.
    target
        Unit of the result, e.g. ``mm``, ``N`` or ``MPa``; ``1`` for dimensionless.

    Returns
    -------
    float
        The value in `target`; always finite.

    Raises
    ------
    ValueError
        If there is no number, no unit, an unknown unit or one of another dimension, or if the
        number is not finite; the message says which.

    Examples
    --------
    >>> parse_quantity("1-1/8 in", "mm")
    28.575
    >>> parse_quantity("20 ft 6 in", "mm")
    6248.4
    >>> round(parse_quantity("50 ksi", "MPa"), 3)
    344.738
    """
    if len(text) > _LONGEST_TEXT:
        raise ValueError(f"longer than {_LONGEST_TEXT} characters")
    compound = _COMPOUND.fullmatch(text)
    if compound and target == "mm":
        return parse_quantity(f"{compound['feet']} ft", target) + parse_quantity(
            compound["inches"], target
        )
    match = _TERM.fullmatch(text)
    if match is None:
        raise ValueError("not a number followed by a unit")
    value = _number(match) * _factor(match["unit"], target)
    if not math.isfinite(value):
        raise ValueError("not a finite number")
    return value


def _number(match: re.Match[str]) -> float:
    if match["decimal"] is not None:
        return float(match["decimal"])
    if int(match["under"]) == 0:
        raise ValueError("division by zero")
    return int(match["whole"] or 0) + int(match["over"]) / int(match["under"])


def _factor(unit: str | None, target: str) -> float:
    if not unit:
        if target == "1":
            return 1.0
        raise ValueError("has no unit")
    for written, pint_spelling in _SPELLINGS.items():
        unit = unit.replace(written, pint_spelling)
    return conversion_factor(unit.strip(), "dimensionless" if target == "1" else target)
