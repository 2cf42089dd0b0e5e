"""Australian and New Zealand provisions for jacketcheck.

Two sets of provisions, ``australia`` and ``new-zealand``: each replaces those limit states of
``us`` that its codes word otherwise and inherits the rest. The package also brings bar sizes,
reinforcing and plate steels, AS/NZS 1252 bolts and the faying surface of each code.
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
from jacketcheck_australasia import catalog
from jacketcheck_australasia.codes import AS_3600, AS_4100, NZS_3101, NZS_3404
from jacketcheck_australasia.limit_states import LIMIT_STATES

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
    Provisions(
        AS_4100.provisions,
        f"{AS_4100.name}, {AS_3600}; the rest as in us",
        faying_codes=("AS 4100",),
    ),
    Provisions(
        NZS_3404.provisions,
        f"{NZS_3404.name}, {NZS_3101}; the rest as in us",
        faying_codes=("NZS 3404",),
    ),
)


@hookimpl
def jacketcheck_provisions() -> Sequence[Provisions]:
    """Australia and New Zealand."""
    return _PROVISIONS


@hookimpl
def jacketcheck_limit_states() -> Sequence[LimitState]:
    """Those that the codes word otherwise than the built-in provisions."""
    return LIMIT_STATES


@hookimpl
def jacketcheck_bars() -> Sequence[Bar]:
    """Bar sizes of AS/NZS 4671."""
    return catalog.BARS


@hookimpl
def jacketcheck_rebar_steels() -> Sequence[RebarSteel]:
    """Grades 300E, 500E and 500N of AS/NZS 4671."""
    return catalog.REBAR_STEELS


@hookimpl
def jacketcheck_bolts() -> Sequence[BoltProduct]:
    """AS/NZS 1252 bolts of property class 8.8."""
    return catalog.BOLTS


@hookimpl
def jacketcheck_plate_steels() -> Sequence[PlateSteel]:
    """Plates of AS/NZS 3678."""
    return catalog.PLATE_STEELS


@hookimpl
def jacketcheck_faying_classes() -> Sequence[FayingClass]:
    """The as-rolled surface of each code."""
    return catalog.FAYING_CLASSES
