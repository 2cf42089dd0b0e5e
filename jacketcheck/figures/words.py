"""Numbers as figures and their alt texts print them."""

from __future__ import annotations

import math
from collections.abc import Sequence

from jacketcheck.mechanics._arrays import Real
from jacketcheck.render.numbers import number_text
from jacketcheck.units import DisplaySystem, display
from jacketcheck.units.inches import inch_text

__all__ = ["axis_label", "joined", "length_text", "quantity", "shown", "spaced"]


def length_text(length: Real, system: DisplaySystem) -> str:
    """A length [mm] as on a drawing: whole or tenths of millimetres, or inches with fractions.

    Examples
    --------
    >>> length_text(1219.2, "si"), length_text(120.65, "us"), length_text(50.0, "si")
    ('1219.2 mm', '4-3/4 in', '50 mm')
    """
    if system == "us":
        return inch_text(float(length))
    # halves go up: 57.15 mm reads 57.2 mm, although its nearest float is a little less
    text = f"{math.floor(float(length) * 10.0 + 0.5 + 1e-6) / 10.0:.1f}".removesuffix(".0")
    return f"{text} mm"


def spaced(count: int, spacing: Real, system: DisplaySystem) -> str:
    """Equal spaces and their sum.

    Examples
    --------
    >>> spaced(10, 120.65, "us"), spaced(1, 76.2, "us")
    ('10 × 4-3/4 in = 47-1/2 in', '3 in')
    """
    if count == 1:
        return length_text(spacing, system)
    whole = length_text(count * float(spacing), system)
    return f"{count} × {length_text(spacing, system)} = {whole}"


def quantity(value: float, unit: str, system: DisplaySystem) -> str:
    """A value held in an internal unit, with the unit of the reader.

    Examples
    --------
    >>> quantity(2.5e6, "N mm", "si"), quantity(0.00321, "1", "si")
    ('2.500 kN·m', '0.003210')
    """
    factor, printed = display(unit, system)
    text = number_text(value * factor)
    return text if printed == "—" else f"{text} {printed}"


def shown(value: float, unit: str, system: DisplaySystem) -> float:
    """A value held in an internal unit as a number in the reader's unit."""
    return value * display(unit, system)[0]


def axis_label(what: str, unit: str, system: DisplaySystem) -> str:
    """Label of an axis with its unit in brackets.

    Examples
    --------
    >>> axis_label("moment", "N mm", "us"), axis_label("axial strain", "1", "si")
    ('moment [kip·ft]', 'axial strain [–]')
    """
    printed = display(unit, system)[1]
    return f"{what} [{'–' if printed == '—' else printed}]"


def joined(parts: Sequence[str]) -> str:
    """Parts of a sentence in a row.

    Examples
    --------
    >>> joined(["a", "b", "c"]), joined(["a"])
    ('a, b and c', 'a')
    """
    *most, last = parts
    return f"{', '.join(most)} and {last}" if most else last
