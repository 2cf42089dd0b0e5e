"""Faying surfaces of IS 800 Table 20, each named by what it is."""

from __future__ import annotations

from typing import Final

from jacketcheck.plugin import FayingClass
from jacketcheck_india.codes import IS_800

__all__ = ["FAYING_CLASSES"]

_BARE: Final = "no paint, oil, dirt or loose rust on the faces in contact"
_COATED: Final = "nothing over the coat of the table on the faces in contact"

_ROWS: Final = (
    ("i", "untreated", 0.20, "surfaces not treated", _BARE),
    ("ii", "blasted", 0.50, "blasted with shot or grit, loose rust removed, no pitting", _BARE),
    ("iii", "blasted and galvanized", 0.10, "blasted with shot or grit, hot-dip galvanized",
     _COATED),
    ("iv", "blasted and zinc sprayed", 0.25,
     "blasted with shot or grit, spray-metallized with zinc of 50 to 70 µm", _COATED),
    ("v", "blasted and ethylzinc silicate 30-60", 0.30,
     "blasted with shot or grit, painted with ethylzinc silicate of 30 to 60 µm", _COATED),
    ("vi", "sand blasted and rusted", 0.52, "sand blasted, after light rusting", _BARE),
    ("vii", "blasted and ethylzinc silicate 60-80", 0.30,
     "blasted with shot or grit, painted with ethylzinc silicate of 60 to 80 µm", _COATED),
    ("viii", "blasted and alkalizinc silicate 60-80", 0.30,
     "blasted with shot or grit, painted with alkalizinc silicate of 60 to 80 µm", _COATED),
    ("ix", "blasted and aluminium sprayed", 0.50,
     "blasted with shot or grit, spray-metallized with aluminium of more than 50 µm", _COATED),
    ("x", "clean mill scale", 0.33, "clean mill scale", _BARE),
    ("xi", "sand blasted", 0.48, "sand blasted", _BARE),
    ("xii", "red lead", 0.10, "painted with red lead", _COATED),
)  # fmt: skip
"""Row of the table, name, coefficient of friction, preparation, what must stay free."""

_SAME_AS: Final = {
    "ii": ("AISC B", "AASHTO B", "RCSC B"),
    "iii": ("AISC A", "AASHTO C", "RCSC A"),
    "x": ("AISC A", "AASHTO A", "RCSC A"),
    "xi": ("AISC B", "AASHTO B", "RCSC B"),
}

FAYING_CLASSES: Final = tuple(
    FayingClass(
        code="IS 800",
        letter=letter,
        slip_coefficient=coefficient,
        preparation=preparation,
        keep_unpainted=free,
        same_as=_SAME_AS.get(row, ()),
        source=f"{IS_800} Table 20 ({row})",
        aliases=(f"IS 800 Table 20 {row}",),
    )
    for row, letter, coefficient, preparation, free in _ROWS
)
"""In the order of the table."""
