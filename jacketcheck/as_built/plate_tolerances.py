"""What a plate may be thinner or thicker than ordered and still be what was ordered."""

from __future__ import annotations

import tomllib
from functools import lru_cache
from importlib.resources import files
from typing import Any, NamedTuple

__all__ = ["ThicknessTolerance", "thickness_tolerance"]


class ThicknessTolerance(NamedTuple):
    """Amounts under and over the ordered thickness [mm], and where they stand."""

    below: float
    above: float
    source: str


def thickness_tolerance(steel: str, thickness: float) -> ThicknessTolerance:
    """Mill tolerance of a plate by its steel; none where the standard is not known.

    Examples
    --------
    >>> thickness_tolerance("ASTM A36", 12.7).below
    0.254
    >>> thickness_tolerance("house steel", 12.7)
    ThicknessTolerance(below=0.0, above=0.0, source='no tolerance known: as ordered')
    """
    for standard in _standards():
        if steel.startswith(standard["steel_prefix"]):
            below, above = (
                next((amount for thickest, amount in standard[side] if thickness <= thickest), 0.0)
                for side in ("below", "above")
            )
            return ThicknessTolerance(below, above, standard["source"])
    return ThicknessTolerance(0.0, 0.0, "no tolerance known: as ordered")


@lru_cache(maxsize=1)
def _standards() -> list[dict[str, Any]]:
    content = (files("jacketcheck.as_built") / "data" / "plate_tolerances.toml").read_bytes()
    standards: list[dict[str, Any]] = tomllib.loads(content.decode())["standards"]
    return standards
