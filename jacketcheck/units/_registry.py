"""One pint registry, built when the first quantity is read."""

from __future__ import annotations

import re
from functools import lru_cache
from importlib.resources import as_file, files
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import pint

__all__ = ["conversion_factor", "registry"]

_NAME = r"[A-Za-zµ_]+(?:\*\*-?[1-4])?"
_UNIT_EXPRESSION = re.compile(rf"{_NAME}(?:\s*[*/]\s*{_NAME})*")


@lru_cache(maxsize=1)
def registry() -> pint.UnitRegistry[float]:
    """Build the registry from ``definitions.txt``."""
    import pint  # noqa: PLC0415 - a sixth of a second that `--help` need not pay

    with as_file(files("jacketcheck.units").joinpath("definitions.txt")) as path:
        return pint.UnitRegistry(path)


@lru_cache(maxsize=512)
def conversion_factor(unit: str, target: str) -> float:
    """Multiply a value in `unit` by this to get it in `target`.

    Raises
    ------
    ValueError
        If `unit` is not known or has another dimension than `target`.
    """
    import pint  # noqa: PLC0415

    if _UNIT_EXPRESSION.fullmatch(unit) is None:
        raise ValueError(f"unit {unit!r} is not known")
    units = registry()
    try:
        given = units.parse_units(unit)
    except pint.PintError as error:
        raise ValueError(f"unit {unit!r} is not known") from error
    wanted = units.parse_units(target)
    if given.dimensionality != wanted.dimensionality:
        raise ValueError(f"unit {unit!r} has the wrong dimension")
    # 15 significant digits drop the noise of going through metres: an inch is 25.4 mm, not 25.39…
    return float(f"{units.convert(1.0, given, wanted):.15g}")
