"""One pint registry, built when the first quantity is read."""

from __future__ import annotations

import re
from functools import lru_cache
from importlib.resources import as_file, files
from typing import TYPE_CHECKING

from jacketcheck.units._usual_factors import USUAL_FACTORS

if TYPE_CHECKING:
    import pint

__all__ = ["conversion_factor", "registry"]

_PREFIXED = frozenset({"meter", "gram", "newton", "pascal", "newton_meter"})
"""Units that take a prefix; without this list ``min`` would be a thousandth of an inch."""
_NAME = re.compile(r"[^\W\d_]\w*")


@lru_cache(maxsize=1)
def registry() -> pint.UnitRegistry[float]:
    """Build the registry from ``definitions.txt``."""
    import pint  # noqa: PLC0415 - a sixth of a second that `--help` need not pay

    with as_file(files("jacketcheck.units").joinpath("definitions.txt")) as path:
        return pint.UnitRegistry(path)


@lru_cache(maxsize=512)
def conversion_factor(unit: str, target: str) -> float:
    """Multiply a value in `unit` by this to get it in `target`; both as pint spells them.

    Raises
    ------
    ValueError
        If `unit` is not known or has another dimension than `target`.

    Examples
    --------
    >>> conversion_factor("inch", "mm")
    25.4
    """
    usual = USUAL_FACTORS.get((unit, target))
    return _factor_from_registry(unit, target) if usual is None else usual


def _factor_from_registry(unit: str, target: str) -> float:
    import pint  # noqa: PLC0415 - as in `registry`

    units = registry()
    if not all(_may_be_written(name) for name in _NAME.findall(unit)):
        raise ValueError(f"unit {unit!r} is not known")
    try:
        given = units.parse_units(unit)
    except (pint.PintError, ValueError) as error:
        raise ValueError(f"unit {unit!r} is not known") from error
    wanted = units.parse_units(target)
    if given.dimensionality != wanted.dimensionality:
        raise ValueError(f"unit {unit!r} has the wrong dimension")
    # 15 significant digits drop the noise of going through metres: an inch is 25.4 mm, not 25.39…
    return float(f"{units.convert(1.0, given, wanted):.15g}")


def _may_be_written(name: str) -> bool:
    """Whether a name is a unit, with a prefix only where that is usual."""
    if name == "dimensionless":
        return True
    readings = registry().parse_unit_name(name)
    return bool(readings) and (not readings[0][0] or readings[0][1] in _PREFIXED)
