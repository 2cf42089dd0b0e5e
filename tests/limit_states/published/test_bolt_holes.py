"""Holes of each ply, smallest sizes, and rows of codes for which something is missing."""

from __future__ import annotations

from collections.abc import Sequence

import pytest

from jacketcheck.jacket.jacket import Jacket
from jacketcheck.limit_states.bolt_holes import bolt_holes, smallest_sizes
from jacketcheck.limit_states.seam_bolts import sleeve_bearing, splice_bearing
from jacketcheck.limit_states.seam_detailing import bolt_spacing, wrench_clearance
from jacketcheck.limit_states.seam_slip import seam_slip
from jacketcheck.results import Result, Status
from tests.support.jackets import built

INCH = 25.4
LONG = "long-slot-perpendicular"


def statuses(results: Sequence[Result]) -> list[Status]:
    return [one.status for one in results]


def slip_capacities(jacket: Jacket) -> list[float]:
    return [float(row.capacity) for row in seam_slip.evaluate(jacket)]


def test_long_slots_in_one_of_two_plies_only() -> None:
    # AISC 360-22 J3.3 and AASHTO LRFD 9th ed. 6.13.2.4.1d, from memory: long slots in only one of
    # the connected parts at an individual faying surface
    everywhere = built(f'bolts.hole = "{LONG}"')
    assert statuses(bolt_holes.evaluate(everywhere)) == [Status.EXCEEDS] * 2
    for ply in ("sleeve", "splice"):
        one = built(f'{ply}.hole = "{LONG}"')
        assert statuses(bolt_holes.evaluate(one)) == [Status.OK] * 2


@pytest.mark.parametrize(
    ("hole", "allowed"),
    [
        # AISC 360-22 J3.3 and AASHTO LRFD 9th ed. 6.13.2.4.1, from memory: oversized holes in
        # slip-critical joints only; slots of bearing joints normal to the force
        ("standard", True),
        ("oversized", False),
        ("short-slot-perpendicular", True),
        ("short-slot-parallel", False),
        ("long-slot-parallel", False),
    ],
)
def test_bearing_joints(hole: str, allowed: bool) -> None:  # noqa: FBT001 - a table's column
    snug = built(f'bolts.tightening = "snug"\nsplice.hole = "{hole}"')
    clauses = [row.status for row in bolt_holes.evaluate(snug) if "snug" in row.location]
    assert clauses == [Status.OK if allowed else Status.EXCEEDS] * 2


def test_slip_by_the_ply_that_clamps_least() -> None:
    # phi 0.70 (AISC 360-22 J3.9) and K_h 0.70 (AASHTO Table 6.13.2.8-2) for long slots across the
    # force, 1.00 for standard holes; both in whichever ply they are
    plain = slip_capacities(built(""))
    for ply in ("sleeve", "splice"):
        slotted = slip_capacities(built(f'{ply}.hole = "{LONG}"'))
        assert slotted == pytest.approx([0.7 * one for one in plain], rel=1e-12)


def test_bearing_by_the_hole_of_the_plate() -> None:
    plain, slotted = built(""), built('splice.hole = "long-slot-parallel"')
    assert [float(row.capacity) for row in sleeve_bearing.evaluate(slotted)] == pytest.approx(
        [float(row.capacity) for row in sleeve_bearing.evaluate(plain)]
    )
    for longer, shorter in zip(
        splice_bearing.evaluate(slotted), splice_bearing.evaluate(plain), strict=True
    ):
        assert float(longer.capacity) < float(shorter.capacity)


def test_smallest_sizes_of_a_bridge() -> None:
    # AASHTO LRFD 9th ed. 6.13.2.5: bolts of 5/8 in; 6.7.3: steel of 5/16 in; from memory
    thin = built('sleeve.thickness = "1/4 in"\nsplice.inside_thickness = "1/4 in"')
    bolt, sleeve, plates = smallest_sizes.evaluate(thin)
    assert bolt.status is Status.OK
    assert float(sleeve.ratio) == pytest.approx(5 / 4)
    assert float(plates.ratio) == pytest.approx(5 / 4)
    small = built('bolts.diameter = "1/2 in"\nbolts.threads = "included"')
    assert float(smallest_sizes.evaluate(small)[0].ratio) == pytest.approx(5 / 4)


def test_sealing_by_the_thinner_outer_ply() -> None:
    # 4 + 4 t in, AASHTO LRFD 9th ed. Eq. 6.13.2.6.2-1: the sleeve is an outer ply of a single lap
    single = built(
        'splice.sides = "outside"\nsplice.thickness = "5/8 in"\nsleeve.thickness = "3/8 in"'
    )
    sealing = [one for one in bolt_spacing.evaluate(single) if "sealing" in one.title]
    assert sealing
    for row in sealing:
        assert float(row.capacity) == pytest.approx((4 + 4 * 3 / 8) * INCH)


def test_every_code_has_its_slip_row() -> None:
    aisc, aashto = seam_slip.evaluate(built('bolts.faying_class = "AISC B"'))
    assert aisc.status is Status.OK
    assert aashto.status is Status.NOT_EVALUATED
    assert "AASHTO" in aashto.clause
    assert "no faying class of AASHTO" in aashto.notes[0]


METRIC = 'bolts.product = "ASTM F3125 A325M"\nbolts.diameter = "M24"'


def test_an_unknown_wrench_is_not_evaluated() -> None:
    (row,) = wrench_clearance.evaluate(built(METRIC))
    assert row.status is Status.NOT_EVALUATED
    assert "bolts.socket_diameter" in row.notes[0]


def test_a_wrench_of_the_input() -> None:
    rows = wrench_clearance.evaluate(built(f'{METRIC}\nbolts.socket_diameter = "66 mm"'))
    between, footing = rows[0], rows[1]
    # half the socket and the corners of a nut of 41 mm (ASME B18.2.4.6M) across its flats
    assert float(between.demand) == pytest.approx(33.0 + 41.0 / 3**0.5)
    # half the socket and 1/8 in, as AISC Manual Table 7-15 has it for inch sockets
    assert float(footing.demand) == pytest.approx(33.0 + 3.175)
