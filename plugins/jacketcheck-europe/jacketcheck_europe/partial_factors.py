"""Partial factors and other nationally determined parameters, in one place.

The Eurocodes recommend values and leave the choice to national annexes. A plug-in for a country
takes `RECOMMENDED`, replaces what its annex sets, and builds its limit states from that:
see `jacketcheck_europe.limit_states.limit_states`.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Final

__all__ = ["ACCIDENTAL", "RECOMMENDED", "PartialFactors"]


@dataclass(frozen=True, slots=True, kw_only=True)
class PartialFactors:
    """Nationally determined parameters; the defaults are the recommended values.

    Attributes
    ----------
    label
        Whose values these are, as printed with every row.
    section
        γ_M0, yielding of a section (EN 1993-1-1:2005 6.1(1); the same in EN 1993-2:2006).
    rupture
        γ_M2, rupture of net sections, bolts and bearing (EN 1993-1-8:2005 Table 2.1).
    slip
        γ_M3, slip at the ultimate limit state, category C (EN 1993-1-8:2005 Table 2.1).
    slip_in_service
        γ_M3,ser, slip at the serviceability limit state, category B (the same table).
    concrete, reinforcement
        γ_C and γ_S (EN 1992-1-1:2004 Table 2.1N), taken for the seismic situation too, as
        EN 1998-1:2004 5.2.4 recommends; `ACCIDENTAL` has the other set.
    compression
        α_cc for bridges (EN 1992-2:2005 3.1.6(101), from memory).
    installation
        γ_inst of glued bars, from the product's assessment (EN 1992-4:2018 Table 4.1, from
        memory); 1.2, normal installation safety, is engineering judgement.
    existing_member
        γ_el, shear of primary members (EN 1998-3:2005 A.3.3.1(1)).
    pier_shear
        γ_Bd, brittle failure of ductile piers (EN 1998-2:2005 5.6.2(2), its largest value, from
        memory).
    hinge_rotation
        γ_R,p, plastic rotation of hinges (EN 1998-2:2005 4.2.4.4(2), from memory).
    overstrength
        γ_o of concrete members (EN 1998-2:2005 5.3(4), from memory).
    """

    label: str = "recommended by the Eurocodes"
    section: float = 1.00
    rupture: float = 1.25
    slip: float = 1.25
    slip_in_service: float = 1.10
    concrete: float = 1.50
    reinforcement: float = 1.15
    compression: float = 0.85
    installation: float = 1.20
    existing_member: float = 1.15
    pier_shear: float = 1.25
    hinge_rotation: float = 1.40
    overstrength: float = 1.35

    @property
    def note(self) -> str:
        """What a reader must know of them."""
        return (
            f"partial factors {self.label} (γ_M0 {self.section:.2f}, γ_M2 {self.rupture:.2f}, "
            f"γ_M3 {self.slip:.2f}, γ_C {self.concrete:.2f}, γ_S {self.reinforcement:.2f}); a "
            "national annex may set others"
        )


RECOMMENDED: Final = PartialFactors()
"""Recommended values."""

ACCIDENTAL: Final = replace(
    RECOMMENDED,
    label="recommended by the Eurocodes for accidental situations",
    concrete=1.20,
    reinforcement=1.00,
)
"""Recommended values of EN 1992-1-1:2004 Table 2.1N for accidental situations, which a national
annex may take where strength degradation is accounted for otherwise (EN 1998-1:2004 5.2.4)."""
