"""How much of the sleeve's own strength its seams can carry: reported, not judged."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import Final

import numpy as np

from jacketcheck.analysis.hoop_action import hoop_action
from jacketcheck.analysis.hoop_demand import add_rows
from jacketcheck.errors import NotEvaluatedError
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.limit_state import LimitState, limit_state
from jacketcheck.limit_states._rows import LAYOUT_RULE, not_evaluated
from jacketcheck.limit_states.seam_bolts import (
    seam_bolt_row,
    seam_bolt_shear,
    sleeve_bearing,
    splice_bearing,
)
from jacketcheck.limit_states.seam_plates import (
    seam_block_shear,
    sleeve_net_rupture,
    splice_gross_yield,
    splice_net_rupture,
)
from jacketcheck.limit_states.seam_slip import seam_slip
from jacketcheck.mechanics._arrays import Real
from jacketcheck.mechanics.plate_strength import gross_yield_strength
from jacketcheck.results import Kind, Result, Steps

__all__ = ["seam_hoop_forces", "seam_reserve"]

_TITLE: Final = "Seam beside the sleeve's yield"
_PER_BOLT: Final = frozenset({"seam-slip", "seam-bolt-shear"})
SEAM_STRENGTH: Final = (
    seam_bolt_shear,
    sleeve_bearing,
    splice_bearing,
    seam_bolt_row,
    sleeve_net_rupture,
    splice_gross_yield,
    splice_net_rupture,
    seam_block_shear,
)
_NOT_DESIGNED: Final = (
    "seams are designed for the hoop force that the column asks for, not to hold the sleeve's own "
    "yield: above 1, a sleeve worked beyond that force breaks or opens at its seams before it "
    "yields"
)
_VERTICAL: Final = (
    "vertical shear along the seams (V Q/I), where the sleeve bends with the column, is not part "
    "of the seam's demand"
)


@limit_state("seam-reserve", title=_TITLE, effort="closed-form", scatter=LAYOUT_RULE)
def seam_reserve(jacket: Jacket) -> list[Result]:
    """Expected yield of the sleeve beside design strength and slip resistance of its seams."""
    slip = dict(seam_hoop_forces(jacket, (seam_slip,)))
    return [
        _row(jacket, "strength of the seams", dict(seam_hoop_forces(jacket))),
        _row(jacket, "slip resistance of the seams", slip or _friction(jacket)),
    ]


def _friction(jacket: Jacket) -> dict[str, Real]:
    """Friction without a code's factors, for provisions whose slip is not worded here [N/mm]."""
    bolts = jacket.bolts
    force = np.multiply(hoop_action(jacket).slip_force, bolts.columns) / bolts.tributary_height
    return {"friction, smallest slip coefficient, no resistance factor": force}


def _row(jacket: Jacket, where: str, forces: Mapping[str, Real]) -> Result:
    if not forces:
        reason = "no row of it could be evaluated"
        return not_evaluated(_TITLE, reason, location=where, clause="no clause")
    steps, sleeve, bolts = Steps(), jacket.sleeve, jacket.bolts
    steps.figure("F_ye", sleeve.steel.name, sleeve.steel, "expected_yield", "MPa")
    steps.add("t", "sleeve", sleeve.thickness, "mm", "input sleeve.thickness")
    demand = gross_yield_strength(sleeve.steel.expected_yield, gross_area=sleeve.thickness)
    steps.add("N_ye", "F_ye t", demand, "N/mm", "thin shell")
    add_rows(jacket, steps)
    steps.add("h_t", "max(s, e_end + s/2)", bolts.tributary_height, "mm", "tributary height")
    steps.add("n_c", "columns", bolts.columns, "1", "input bolts.columns")
    for name, force in forces.items():
        steps.add("N", name, force, "N/mm", "design value of its row, per height")
    least = np.min(np.broadcast_arrays(*forces.values()), axis=0)[()]
    steps.add("N_seam", "smallest of them", least, "N/mm", "series of parts")
    return Result(_TITLE, where, demand, least, "N/mm", "no clause: capacity in the order of yield",
                  steps.lines, (_NOT_DESIGNED, _VERTICAL), kind=Kind.REPORTED)  # fmt: skip


def seam_hoop_forces(
    jacket: Jacket, limit_states: Iterable[LimitState] = SEAM_STRENGTH
) -> Iterator[tuple[str, Real]]:
    """Hoop force that each row's design value stands for, by title and clause [N/mm]."""
    for one in limit_states:
        try:
            found = one.evaluate(jacket)
        except NotEvaluatedError:  # its own row says so
            continue
        for row in found:
            if row.kind is not Kind.LIMIT:
                continue
            force = row.capacity
            if row.unit == "N":
                bolts = jacket.bolts.columns if one.id in _PER_BOLT else 1.0
                force = np.multiply(force, bolts) / jacket.bolts.tributary_height
            yield f"{row.title}, {row.location}, {row.clause}", force
