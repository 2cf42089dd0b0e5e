"""Inches as a shop reads them: whole numbers with binary fractions."""

from __future__ import annotations

from fractions import Fraction

__all__ = ["inch_text"]

_FINEST = 64
_MILLIMETRES = 25.4
_SLACK = 2e-4
"""How far [in] a length may be from a fraction and still be shown as one."""


def inch_text(length: float) -> str:
    """A length [mm] in inches: a fraction down to 1/64 where it is one, else three decimals.

    Examples
    --------
    >>> inch_text(63.5), inch_text(9.525), inch_text(1225.55), inch_text(20.0)
    ('2-1/2 in', '3/8 in', '48-1/4 in', '0.787 in')
    """
    inches = length / _MILLIMETRES
    nearest = Fraction(round(inches * _FINEST), _FINEST)
    if abs(float(nearest) - inches) > _SLACK:
        return f"{inches:.3f} in"
    sign = "-" if nearest < 0 else ""
    whole, part = divmod(abs(nearest), 1)
    if not part:
        return f"{sign}{whole} in"
    return f"{sign}{whole}-{part} in" if whole else f"{sign}{part} in"
