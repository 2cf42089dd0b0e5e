"""Indian provisions for jacketcheck.

The set ``india`` replaces those limit states of ``us`` that IS 800 and IS 456 word otherwise and
inherits the rest. The package also brings bar sizes, reinforcing and plate steels, IS 3757 bolts
and the faying surfaces of IS 800.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from jacketcheck.plugin import (
    Bar,
    BoltProduct,
    FayingClass,
    LimitState,
    PlateSteel,
    Provisions,
    RebarSteel,
    hookimpl,
)
from jacketcheck_india import catalog
from jacketcheck_india.codes import IS_456, IS_800
from jacketcheck_india.limit_states import LIMIT_STATES

__all__ = [
    "jacketcheck_bars",
    "jacketcheck_bolts",
    "jacketcheck_faying_classes",
    "jacketcheck_limit_states",
    "jacketcheck_plate_steels",
    "jacketcheck_provisions",
    "jacketcheck_rebar_steels",
]

_PROVISIONS: Final = (
    Provisions("india", f"{IS_800}, {IS_456}; the rest as in us", faying_codes=("IS 800",)),
)


@hookimpl
def jacketcheck_provisions() -> Sequence[Provisions]:
    """India."""
    return _PROVISIONS


@hookimpl
def jacketcheck_limit_states() -> Sequence[LimitState]:
    """Those that the codes word otherwise than the built-in provisions."""
    return LIMIT_STATES


@hookimpl
def jacketcheck_bars() -> Sequence[Bar]:
    """Bar sizes of IS 1786."""
    return catalog.BARS


@hookimpl
def jacketcheck_rebar_steels() -> Sequence[RebarSteel]:
    """Fe 415, Fe 500 and their ductile grades of IS 1786."""
    return catalog.REBAR_STEELS


@hookimpl
def jacketcheck_bolts() -> Sequence[BoltProduct]:
    """IS 3757 bolts of property classes 8.8 and 10.9."""
    return catalog.BOLTS


@hookimpl
def jacketcheck_plate_steels() -> Sequence[PlateSteel]:
    """Plates of IS 2062."""
    return catalog.PLATE_STEELS


@hookimpl
def jacketcheck_faying_classes() -> Sequence[FayingClass]:
    """Surfaces of IS 800 Table 20."""
    return catalog.FAYING_CLASSES
