"""Reading a quantity as an engineer writes it: ``10 mm``, ``1-1/8 in``, ``20 ft 6 in``."""

from __future__ import annotations

import re
from fractions import Fraction

from jacketcheck.units._registry import conversion_factor

__all__ = ["parse_quantity"]

_LONGEST_TEXT = 60
_LONGEST_EXPONENT = 3
_RESPELLED = str.maketrans(
    {
        "\N{NO-BREAK SPACE}": " ",
        "\N{NARROW NO-BREAK SPACE}": " ",
        "\N{THIN SPACE}": " ",
        "\N{MINUS SIGN}": "-",
        "\N{EN DASH}": "-",
        "\N{PRIME}": "'",
        "\N{RIGHT SINGLE QUOTATION MARK}": "'",
        "\N{DOUBLE PRIME}": '"',
        "\N{RIGHT DOUBLE QUOTATION MARK}": '"',
        "\N{GREEK SMALL LETTER MU}": "µ",
        "\N{MIDDLE DOT}": "*",
        "\N{DOT OPERATOR}": "*",
        "\N{DEGREE SIGN}": "deg",
        "\N{SUPERSCRIPT TWO}": "^2",
        "\N{SUPERSCRIPT THREE}": "^3",
        "%": "percent",
    }
)
_NOT_FINITE = re.compile(r"[+-]?(?:nan|inf|infinity|∞)\b.*|[+-]?∞.*", re.IGNORECASE)
_NUMBER = re.compile(
    r"""(?P<sign>[+-]?)
    (?:(?:(?P<whole>[0-9]+)(?:[ ]+|-))?(?P<over>[0-9]+)/(?P<under>[0-9]+)   # 3/8, 1-1/8
      |(?P<decimal>[0-9]+\.?[0-9]*|\.[0-9]+)(?:[eE](?P<exponent>[+-]?[0-9]+))?)""",
    re.VERBOSE,
)
_FEET_AND_INCHES = re.compile(
    r"(?P<feet>[0-9]+(?:\.[0-9]+)?)\s*(?:ft|feet|foot|')(?:[ ]*|-|[ ]-[ ])"
    r"(?P<inches>[0-9][-0-9/. ]*)(?:in|inch|inches|\")"
)
_TONS = re.compile(r"\b(?:tonf|tonsf|tons?-force)\b|\btf\b")
_USUAL = ("mm", "cm", "m", "in", "ft", "N", "kN", "MN", "kPa", "MPa", "GPa", "psi", "ksi", "kip")
_FACTOR = r"[A-Za-zµ]+(?:(?:\*\*|\^)-?[1-4]|[1-4])?"
_UNIT = re.compile(rf"{_FACTOR}(?:(?:\s*[*/]\s*|-|\s+){_FACTOR})*")
_BETWEEN_FACTORS = re.compile(r"(?<=[A-Za-zµ1-4])(?:-|\s+)(?=[A-Za-zµ])")
_BARE_POWER = re.compile(r"(?<=[A-Za-zµ])([1-4])")


def parse_quantity(text: str, target: str) -> float:
    r"""Convert text with a unit to a number in the unit `target`.

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

    Notes
    -----
    The product of number and factor is formed exactly and rounded once, so that ``3/8 in`` and
    ``9.525 mm`` are the same number.

    Examples
    --------
    >>> parse_quantity("1-1/8 in", "mm")
    28.575
    >>> parse_quantity("20 ft 6 in", "mm"), parse_quantity("20'-6\"", "mm")
    (6248.4, 6248.4)
    >>> parse_quantity("12 kip-ft", "N*mm") == parse_quantity("12 kip*ft", "N*mm")
    True
    >>> round(parse_quantity("50 ksi", "MPa"), 3)
    344.738
    """
    if len(text) > _LONGEST_TEXT:
        raise ValueError(f"is longer than {_LONGEST_TEXT} characters")
    written = text.translate(_RESPELLED).strip()
    if _NOT_FINITE.fullmatch(written):
        raise ValueError("is not a finite number")
    pint_target = "dimensionless" if target == "1" else target
    compound = _feet_and_inches(written, pint_target)
    return _rounded(_number_and_unit(written, pint_target) if compound is None else compound)


def _feet_and_inches(written: str, target: str) -> Fraction | None:
    """Value of ``20 ft 6 in`` and its like; None where the text is none."""
    sign, size = (-1, written[1:].lstrip()) if written.startswith("-") else (1, written)
    match = _FEET_AND_INCHES.fullmatch(size)
    if match is None:
        return None
    feet = Fraction(match["feet"]) * _factor("ft", target)
    return sign * (feet + _number_and_unit(f"{match['inches'].strip()} in", target))


def _number_and_unit(written: str, target: str) -> Fraction:
    match = _NUMBER.match(written)
    unit = written[match.end() :].strip() if match else ""
    if match is None or unit[:1] in tuple(".,0123456789"):
        if "," in written:
            raise ValueError("has a comma; write a decimal point and no separators")
        raise ValueError("is not a number followed by a unit")
    return _number(match) * _factor(unit, target)


def _number(match: re.Match[str]) -> Fraction:
    sign = -1 if match["sign"] == "-" else 1
    if match["over"] is None:
        exponent = match["exponent"] or "0"
        if len(exponent.lstrip("+-")) > _LONGEST_EXPONENT:
            raise ValueError("has an exponent that is too large")
        return sign * Fraction(match["decimal"]) * Fraction(10) ** int(exponent)
    if int(match["under"]) == 0:
        raise ValueError("divides by zero")
    return sign * (int(match["whole"] or 0) + Fraction(int(match["over"]), int(match["under"])))


def _factor(unit: str, target: str) -> Fraction:
    if not unit:
        if target == "dimensionless":
            return Fraction(1)
        raise ValueError("has no unit")
    shown = {"'": "ft", '"': "in", "''": "in"}.get(unit, unit)
    if tons := _TONS.search(shown):
        raise ValueError(
            f"unit {tons[0]!r} may be short, long or metric tons; write kip, lbf or kN"
        )
    if _UNIT.fullmatch(shown) is None:
        raise ValueError(f"unit {unit!r} is not known")
    spelled = _BARE_POWER.sub(r"**\1", _BETWEEN_FACTORS.sub("*", shown)).replace("^", "**")
    try:
        return Fraction(repr(conversion_factor(spelled, target)))
    except ValueError as error:
        near = [usual for usual in _USUAL if usual.casefold() == unit.casefold() and usual != unit]
        hint = f"; did you mean {near[0]}?" if near else ""
        raise ValueError(str(error).replace(repr(spelled), repr(unit)) + hint) from error


def _rounded(value: Fraction) -> float:
    try:
        return float(value)
    except OverflowError as error:
        raise ValueError("is not a finite number") from error
