"""Values of a search as they are printed."""

from __future__ import annotations

from jacketcheck.render.numbers import MISSING
from jacketcheck.sizing.axes import Axis
from jacketcheck.units import DisplaySystem
from jacketcheck.units.inches import inch_text

__all__ = ["value_text"]


def value_text(axis: Axis, value: object, system: DisplaySystem) -> str:
    """A value of an axis with its unit; multiples of the bolt diameter as ``3 d``.

    Examples
    --------
    >>> value_text(Axis("sleeve.thickness", (9.525,), "an example", "mm"), 9.525, "us")
    '3/8 in'
    """
    if value is None:
        return MISSING
    if isinstance(value, int | float) and axis.unit == "mm":
        if axis.in_diameters:
            return f"{value:g} d"
        return inch_text(value) if system == "us" else f"{value:.6g} mm"
    return str(value)
