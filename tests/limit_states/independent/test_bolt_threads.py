"""Threads of the seam bolts, worked by hand, and against the bolt schedule of the same jacket."""

from __future__ import annotations

import dataclasses
import math
from typing import Final

import numpy as np
import pytest

from jacketcheck.catalog import built_in_catalog
from jacketcheck.inputs import read_text
from jacketcheck.jacket import Jacket, build_jacket
from jacketcheck.jacket.designs import design_count, pick, stack
from jacketcheck.jacket.many import assemble_designs
from jacketcheck.results import Kind, Result
from jacketcheck.schedule import bolt_schedule
from jacketcheck.schedule.records import Verdict
from tests.support.jackets import CASE, built, host, rows

INCH: Final = 25.4
GRIP: Final = "shortest grip on which the nut clamps"
SHANK: Final = "full shank through all shear planes"
EXCLUDED: Final = 'bolts.threads = "excluded"'
SEAM: Final = 'splice.sides = "outside"\nsplice.thickness = "1/2 in"\nsleeve.thickness = "3/8 in"'
THIN: Final = f"{SEAM}\n{EXCLUDED}"


def found(jacket: Jacket) -> dict[str, Result]:
    return {one.location: one for one in rows(jacket, "bolt-threads")}


def test_a_thin_seam_by_hand() -> None:
    # 7/8 in A325: thread 1-1/2 in, run-out 0.28 in (ASME B18.2.6-2019 Table 2.1-1); grip 3/8 + 1/2,
    # one washer of 5/32 under the nut, allowance 1-1/8 (RCSC Table C-2.2): 2.156, so 2-1/4 in
    result = found(built(THIN))
    grip, shank = result[GRIP], result[SHANK]
    assert np.isclose(grip.demand, (2.25 - 1.5) * INCH)
    assert np.isclose(grip.capacity, (0.375 + 0.5 + 5 / 32) * INCH)
    assert np.isclose(shank.demand, 0.375 * INCH)
    assert np.isclose(shank.capacity, (2.25 - 1.5 - 0.28) * INCH)


def test_without_a_washer_the_bolt_is_shorter_and_its_thread_lies_in_the_plane() -> None:
    # 7/8 + 1-1/8 = 2 in exactly: a shank of 2 - 1.5 - 0.28 = 0.22 in against 0.375 in
    shank = found(built(f'{THIN}\nbolts.tightening = "snug"'))[SHANK]
    assert np.isclose(shank.capacity, 0.22 * INCH)
    assert float(shank.ratio) == pytest.approx(0.375 / 0.22)


def test_threads_that_are_counted_need_no_shank() -> None:
    result = found(built(f'{SEAM}\nbolts.threads = "included"'))
    assert result[SHANK].kind is Kind.NOT_APPLICABLE
    assert result[GRIP].kind is Kind.LIMIT


def test_a_bolt_that_nobody_stocks_is_not_a_pass() -> None:
    jacket = built('sleeve.thickness = "3 in"\nsplice.thickness = "4 in"')
    assert math.isnan(float(jacket.bolts.fit.length))
    (result,) = rows(jacket, "bolt-threads")
    assert result.kind is Kind.NOT_EVALUATED
    assert "is stocked" in result.notes[0]


def test_a_run_out_that_nobody_knows_is_not_a_pass() -> None:
    jacket = built(THIN)
    fit = dataclasses.replace(jacket.bolts.fit, full_shank=None, run_out=None)
    unknown = dataclasses.replace(jacket, bolts=dataclasses.replace(jacket.bolts, fit=fit))
    (result,) = rows(unknown, "bolt-threads")
    assert result.kind is Kind.NOT_EVALUATED
    assert "runs out" in result.notes[0]


@pytest.mark.parametrize("tightening", ["turn-of-nut", "snug", "direct-tension-indicator"])
@pytest.mark.parametrize("diameter", ["3/4 in", "7/8 in", "1 in"])
@pytest.mark.parametrize("sleeve", ["1/4 in", "3/8 in", "1/2 in", "3/4 in", "1 in"])
def test_the_schedule_says_the_same(sleeve: str, diameter: str, tightening: str) -> None:
    jacket = built(
        f'sleeve.thickness = "{sleeve}"\nbolts.diameter = "{diameter}"\n'
        f'bolts.tightening = "{tightening}"\n{EXCLUDED}'
    )
    lines = {line.item: line for line in bolt_schedule(jacket, variant="x").lines()}
    result = found(jacket)
    passes = bool(np.all(np.less_equal(result[SHANK].ratio, 1.0)))
    assert (lines["threads in the shear planes"].verdict is Verdict.OK) == passes
    grip = bool(np.all(np.less_equal(result[GRIP].ratio, 1.0)))
    assert (lines["least thickness between head and nut"].verdict is Verdict.OK) == grip
    assert lines["length to order"].value == float(jacket.bolts.fit.length)


def test_many_designs_as_one_by_one() -> None:
    thickness = np.array([0.25, 0.375, 0.5, 0.75, 1.0]) * INCH
    text = CASE.read_text("utf-8").replace('threads = "included"', 'threads = "excluded"')
    repair = read_text(text, catalog=host().catalog).variants["chipped"]
    designs = assemble_designs(
        repair, {"sleeve.thickness": thickness}, count=5, catalog=built_in_catalog()
    ).jacket
    assert designs is not None
    assert design_count(designs) == 5
    together = found(designs)
    for place, one_by_one in enumerate(thickness):
        written = repair.sleeve.model_copy(update={"thickness": float(one_by_one)})
        alone = build_jacket(repair.model_copy(update={"sleeve": written}))
        for where, result in found(alone).items():
            assert float(result.ratio) == pytest.approx(np.asarray(together[where].ratio)[place])
        assert float(pick(designs, place).bolts.fit.length) == float(alone.bolts.fit.length)


def test_a_length_that_is_not_stocked_stays_with_its_design() -> None:
    jackets = [built(), built('sleeve.thickness = "3 in"\nsplice.thickness = "4 in"')]
    both = stack(jackets)
    assert np.array_equal(np.isnan(both.bolts.fit.length), [False, True])
