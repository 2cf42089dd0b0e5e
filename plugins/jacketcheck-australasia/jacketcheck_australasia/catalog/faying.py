"""Faying surfaces with a slip factor of their own in AS 4100 and NZS 3404.

Both codes name one surface; any other needs a test, and a class of another code says nothing
about it.
"""

from __future__ import annotations

from typing import Final

from jacketcheck.plugin import FayingClass
from jacketcheck_australasia.codes import AS_4100, NZS_3404, SteelCode
from jacketcheck_australasia.mechanics.slip import AS_ROLLED_SLIP_FACTOR

__all__ = ["FAYING_CLASSES"]

_LETTER: Final = "as-rolled"


def _as_rolled(code: SteelCode, other: SteelCode) -> FayingClass:
    return FayingClass(
        code=code.faying_code,
        letter=_LETTER,
        slip_coefficient=AS_ROLLED_SLIP_FACTOR,
        preparation="clean as-rolled surfaces: no paint, oil, dirt, loose rust or loose scale",
        keep_unpainted="all faces in contact under bolt heads, nuts and washers and between the "
        "plies; no applied finish unless tested",
        same_as=(f"{other.faying_code} {_LETTER}", "AISC A", "AASHTO A", "RCSC A"),
        source=f"{code.name} cl. {code.slip}.2 (from memory)",
    )


FAYING_CLASSES: Final = (_as_rolled(AS_4100, NZS_3404), _as_rolled(NZS_3404, AS_4100))
"""One surface for each code."""
