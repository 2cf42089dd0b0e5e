"""Editions that the provisions follow; they stand in the clause of every row."""

from __future__ import annotations

from typing import Final

__all__ = [
    "EN_1090",
    "EN_1992",
    "EN_1992_2",
    "EN_1992_4",
    "EN_1993",
    "EN_1993_8",
    "EN_1998_2",
    "EN_1998_3",
]

EN_1090: Final = "EN 1090-2:2018"
EN_1992: Final = "EN 1992-1-1:2004"
EN_1992_2: Final = "EN 1992-2:2005"
EN_1992_4: Final = "EN 1992-4:2018"
EN_1993: Final = "EN 1993-1-1:2005"
EN_1993_8: Final = "EN 1993-1-8:2005"
EN_1998_2: Final = "EN 1998-2:2005"
EN_1998_3: Final = "EN 1998-3:2005"
