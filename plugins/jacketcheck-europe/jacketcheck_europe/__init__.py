"""Eurocode provisions for bolted, grouted steel jackets, as a plug-in of jacketcheck.

The provisions ``europe`` replace what EN 1992, EN 1993 and EN 1998 word otherwise and inherit the
rest of the mechanics from the built-in ones.
"""

from __future__ import annotations

from collections.abc import Sequence

from jacketcheck.plugin import FayingClass, LimitState, Provisions, hookimpl
from jacketcheck_europe import editions
from jacketcheck_europe.faying_classes import FAYING_CLASSES
from jacketcheck_europe.limit_states import limit_states

__all__ = [
    "EUROPE",
    "jacketcheck_faying_classes",
    "jacketcheck_limit_states",
    "jacketcheck_provisions",
]

EUROPE = Provisions(
    "europe",
    f"{editions.EN_1992}, {editions.EN_1992_4}, {editions.EN_1993}, {editions.EN_1993_8}, "
    f"{editions.EN_1998_2}, {editions.EN_1998_3}, {editions.EN_1090}, recommended partial factors; "
    "mechanics of the built-in provisions",
    faying_codes=("EN 1090",),
)


@hookimpl
def jacketcheck_provisions() -> Sequence[Provisions]:
    """The provisions ``europe``."""
    return (EUROPE,)


@hookimpl
def jacketcheck_faying_classes() -> Sequence[FayingClass]:
    """Friction surfaces of EN 1090-2."""
    return FAYING_CLASSES


@hookimpl
def jacketcheck_limit_states() -> Sequence[LimitState]:
    """Limit states with the recommended partial factors."""
    return limit_states()
