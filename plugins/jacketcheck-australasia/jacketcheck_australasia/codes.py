"""The two steel codes of the package: editions and clauses.

AS 4100 and NZS 3404 share their equations and capacity factors for bolts and plies; clauses differ
since the 2020 edition of AS 4100 was renumbered.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

__all__ = ["AS_3600", "AS_4100", "CODES", "NZS_3101", "NZS_3404", "SteelCode"]

AS_3600: Final = "AS 3600:2018"
NZS_3101: Final = "NZS 3101:2006"


@dataclass(frozen=True, slots=True)
class SteelCode:
    """Edition and clauses of a steel code.

    Attributes
    ----------
    provisions
        Set of provisions that follows the code.
    name
        Code with edition.
    faying_code
        Code as faying classes are written with it.
    slip, shear, bearing, tension, min_pitch, min_edge, max_pitch, max_edge
        Clauses.
    capacity_factors
        Table of capacity factors.
    tensioning
        Where methods of tensioning stand.
    reduces_strong_bolts
        Whether bolts stronger than class 8.8 lose capacity with threads in the shear plane.
    """

    provisions: str
    name: str
    faying_code: str
    slip: str
    shear: str
    bearing: str
    tension: str
    min_pitch: str
    min_edge: str
    max_pitch: str
    max_edge: str
    capacity_factors: str
    tensioning: str
    reduces_strong_bolts: bool

    def clause(self, number: str) -> str:
        """A clause with code and edition."""
        return f"{self.name} cl. {number}"


AS_4100: Final = SteelCode(
    provisions="australia",
    name="AS 4100:2020",
    faying_code="AS 4100",
    slip="9.2.3",
    shear="9.2.2.1",
    bearing="9.2.2.4",
    tension="7.2",
    min_pitch="9.5.1",
    min_edge="9.5.2",
    max_pitch="9.5.3",
    max_edge="9.5.4",
    capacity_factors="Table 3.4",
    tensioning="AS/NZS 5131:2016 8.5",
    reduces_strong_bolts=True,
)

NZS_3404: Final = SteelCode(
    provisions="new-zealand",
    name="NZS 3404:1997",
    faying_code="NZS 3404",
    slip="9.3.3",
    shear="9.3.2.1",
    bearing="9.3.2.4",
    tension="7.2",
    min_pitch="9.6.1",
    min_edge="9.6.2",
    max_pitch="9.6.3",
    max_edge="9.6.4",
    capacity_factors="Table 3.3(1)",
    tensioning="NZS 3404:1997 cl. 15.2.5",
    reduces_strong_bolts=False,
)

CODES: Final = (AS_4100, NZS_3404)
"""All of them."""
