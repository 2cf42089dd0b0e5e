"""Plates of unequal thickness: the plane of the thinner one slips and shears first."""

from __future__ import annotations

import pytest

from jacketcheck.analysis.hoop_action import hoop_action
from jacketcheck.limit_states.seam_bolts import seam_bolt_shear
from jacketcheck.limit_states.seam_slip import seam_slip
from tests.support.jackets import built

EQUAL = 'splice.thickness = "1/2 in"\nsplice.inside_thickness = "1/2 in"'
UNEQUAL = 'splice.thickness = "3/4 in"\nsplice.inside_thickness = "3/8 in"'
# moments about the sleeve of 3/4 in: the inside plate takes (3/4 + 3/4) of (3/4 + 3/4 + 3/4 + 3/8)
SHARE = 1.5 / 2.625


@pytest.mark.parametrize("limit_state", [seam_slip, seam_bolt_shear])
def test_first_plane_at_its_share(limit_state: object) -> None:
    equal, unequal = (
        [float(row.capacity) for row in limit_state.evaluate(built(one))]  # type: ignore[attr-defined] # a limit state
        for one in (EQUAL, UNEQUAL)
    )
    assert unequal == pytest.approx([0.5 / SHARE * one for one in equal], rel=1e-9)


def test_slip_force_of_the_ring() -> None:
    equal, unequal = (float(hoop_action(built(one)).slip_force) for one in (EQUAL, UNEQUAL))
    assert unequal == pytest.approx(0.5 / SHARE * equal, rel=1e-9)
