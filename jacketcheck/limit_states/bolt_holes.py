"""Which holes the plies may have, and the smallest bolt and plate of a bridge."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.jacket.jacket import Jacket
from jacketcheck.limit_state import limit_state
from jacketcheck.limit_states._rows import LAYOUT_RULE, length_at_least
from jacketcheck.limit_states.editions import AASHTO, AISC
from jacketcheck.mechanics._arguments import HoleType
from jacketcheck.mechanics._customary_units import INCH
from jacketcheck.results import Result, Steps

__all__ = ["bolt_holes", "smallest_sizes"]

_TITLE: Final = "Holes that the plies may have"
_CLAUSES: Final = (f"{AISC} J3.3", f"{AASHTO} 6.13.2.4.1")
_BARRED_IN_BEARING: Final[frozenset[HoleType]] = frozenset(
    {"oversized", "short-slot-parallel", "long-slot-parallel"}
)
"""Holes in which a joint that does not hold by friction would move under its force."""
SMALLEST_BOLT: Final = 5.0 / 8.0 * INCH
"""Diameter [mm], AASHTO LRFD 9th ed. (2020) 6.13.2.5, from memory."""
SMALLEST_PLATE: Final = 5.0 / 16.0 * INCH
"""Thickness of structural steel [mm], AASHTO LRFD 9th ed. (2020) 6.7.3, from memory."""


@limit_state("bolt-holes", title=_TITLE, effort="closed-form", scatter=LAYOUT_RULE)
def bolt_holes(jacket: Jacket) -> list[Result]:
    """Long slots in one of two plies that touch; no play along the force in a bearing joint."""
    rows = [_long_slots(jacket, clause) for clause in _CLAUSES]
    if not jacket.bolts.pretensioned:
        rows += [_bearing_joint(jacket, clause) for clause in _CLAUSES]
    return rows


def _kinds(jacket: Jacket) -> dict[str, HoleType]:
    return {"half-shells": jacket.sleeve.hole.kind, "splice plates": jacket.splice.hole.kind}


def _long_slots(jacket: Jacket, clause: str) -> Result:
    """At each faying surface lie a half-shell and a splice plate."""
    steps = Steps()
    for ply, kind in _kinds(jacket).items():
        steps.add("hole", ply, kind, "", "input bolts.hole, sleeve.hole, splice.hole")
    slotted = float(sum(kind.startswith("long") for kind in _kinds(jacket).values()))
    steps.add("n", "plies with long slots, of two that touch", slotted, "1", "geometry")
    steps.add("n_max", "one of them", 1.0, "1", clause)
    return Result(_TITLE, "plies with long slots at a faying surface", slotted, 1.0, "1", clause,
                  steps.lines, without_margin=True)  # fmt: skip


def _bearing_joint(jacket: Jacket, clause: str) -> Result:
    steps = Steps()
    for ply, kind in _kinds(jacket).items():
        steps.add("hole", ply, kind, "", "input bolts.hole, sleeve.hole, splice.hole")
    barred = float(sum(kind in _BARRED_IN_BEARING for kind in _kinds(jacket).values()))
    steps.add("n", "plies with oversized holes or slots along the force", barred, "1", "geometry")
    steps.add("n_max", "none: snug-tight bolts bear", 0.0, "1", clause)
    return Result(_TITLE, "snug-tight bolts, play along the force", barred, 0.0,
                  "1", clause, steps.lines, without_margin=True)  # fmt: skip


@limit_state("smallest-sizes", title="Smallest bolt and plate of a bridge", effort="closed-form",
             scatter=LAYOUT_RULE)  # fmt: skip
def smallest_sizes(jacket: Jacket) -> list[Result]:
    """Bolt diameter, and thickness of half-shells and splice plates."""
    splice = jacket.splice
    inside = np.where(np.greater(splice.inside_thickness, 0.0), splice.inside_thickness, np.inf)
    plates = {
        "half-shells": jacket.sleeve.thickness,
        "splice plates, the thinner": np.minimum(splice.outside_thickness, inside),
    }
    return [
        length_at_least(
            "Least bolt diameter",
            "seam bolts",
            provided=jacket.bolts.diameter,
            source=jacket.bolts.source_of("diameter"),
            needed=SMALLEST_BOLT,
            clause=f"{AASHTO} 6.13.2.5",
            symbol="d",
            rule="5/8 in",
        ),
        *(
            length_at_least(
                "Least thickness of plates",
                where,
                provided=thickness,
                needed=SMALLEST_PLATE,
                clause=f"{AASHTO} 6.7.3",
                symbol="t",
                rule="5/16 in",
            )
            for where, thickness in plates.items()
        ),
    ]
