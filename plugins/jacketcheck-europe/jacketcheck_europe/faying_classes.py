"""Classes of friction surfaces that an input names: ``EN 1090 A`` to ``D``, ``C galvanized``.

The same letters stand for other slip factors in other codes, so that no class is the same as one
of another code: a surface must be prepared, and tested where it is coated, for its own.
"""

from __future__ import annotations

from typing import Final

from jacketcheck.plugin import FayingClass
from jacketcheck_europe.editions import EN_1090, EN_1993_8

__all__ = ["EN_CODE", "FAYING_CLASSES"]

EN_CODE: Final = "EN 1090"
"""Code that an input names with a class."""

_BARE: Final = (
    "no paint and no overspray anywhere between the plates and under the washers; oil, dirt, loose "
    "rust and burrs removed; a strip around the joint stays untreated until it has been inspected"
)
_COATED: Final = (
    "nothing over the coating between the plates and under the washers; thickness of the coating "
    "measured on the friction surfaces themselves"
)

_CLASSES: Final = (
    ("A", 0.50, "blast-cleaned with shot or grit, loose rust removed, not pitted", _BARE),
    (
        "B",
        0.40,
        (
            "blast-cleaned and metal-sprayed with aluminium or zinc up to 80 µm; or blast-cleaned "
            "and coated with alkali-zinc silicate of 60 µm nominal; a thicker coat may slip earlier"
        ),
        _COATED,
    ),
    (
        "C galvanized",
        0.35,
        (
            "hot-dip galvanized to EN ISO 1461 and sweep-blasted, or abraded as well; preload may "
            "be lost as the zinc creeps"
        ),
        _COATED,
    ),
    ("C", 0.30, "wire-brushed or flame-cleaned, loose rust removed", _BARE),
    ("D", 0.20, "as rolled", _BARE),
)

FAYING_CLASSES: Final = tuple(
    FayingClass(
        code=EN_CODE,
        letter=letter,
        slip_coefficient=slip_factor,
        preparation=preparation,
        keep_unpainted=keep_unpainted,
        source=f"{EN_1090} Table 17 (from memory)"
        if letter.endswith("galvanized")
        else f"{EN_1090} Table 17; {EN_1993_8} Table 3.7",
        sources={
            "preparation": "EN 1090-2:2008+A1:2011 Table 18; thicknesses of the 2018 edition from "
            "memory",
            "keep_unpainted": f"{EN_1090} 8.4",
        },
        aliases=(
            f"{EN_CODE} class {letter}",
            f"{EN_CODE}-2 {letter}",
            f"{EN_CODE}-2 class {letter}",
        ),
    )
    for letter, slip_factor, preparation, keep_unpainted in _CLASSES
)
"""The 2018 edition puts galvanized surfaces in class C with a factor of their own, which stands
from memory; the table of EN 1993-1-8:2005 does not know them."""
