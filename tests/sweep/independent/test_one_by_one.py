"""Designs of a sweep against the same designs, each written down as a variant and checked."""

from __future__ import annotations

import numpy as np
import pytest

from jacketcheck.report import ExitCode
from jacketcheck.sweep.report import CANNOT_BE_BUILT, SweepReport
from jacketcheck.sweep.run import sweep
from tests.support.jackets import host
from tests.support.sized_designs import Checked, check_all, file_with, grid


def swept(*varied: str, side_by_side: bool = False) -> SweepReport:
    return sweep(file_with(""), varied, host=host(), side_by_side=side_by_side)


def require_equal(report: SweepReport, alone: list[Checked]) -> None:
    names, ratio = report.ratios.by_limit_state()
    assert report.plan.count == len(alone)
    for number, one in enumerate(alone):
        if one.costs is None:
            assert report.verdicts[number] == CANNOT_BE_BUILT
            assert number in report.refusals
            continue
        found = {
            name: value
            for name, value in zip(names, ratio[:, number].tolist(), strict=True)
            if not np.isneginf(value)
        }
        assert found == pytest.approx(one.ratios, rel=1e-9)
        assert report.verdicts[number] == ("ok" if one.works else "EXCEEDS")


def test_numbers_and_names() -> None:
    report = swept(
        "sleeve.thickness=3/8 in:3/4 in:3/16 in",
        "bolts.columns=2:3",
        "bolts.tightening=snug,turn-of-nut",
    )
    designs = grid(
        sleeve_thickness=['"3/8 in"', '"9/16 in"', '"3/4 in"'],
        bolts_columns=["2", "3"],
        bolts_tightening=['"snug"', '"turn-of-nut"'],
    )
    require_equal(report, check_all(designs))


def test_damage_loads_and_bars_side_by_side() -> None:
    report = swept(
        "damage.1.height=4 in,8 in,12 in",
        "actions.axial_load=600 kip,500 kip,400 kip",
        "added_bars.count=16,18,20",
        side_by_side=True,
    )
    rows = zip(('"4 in"', '"8 in"', '"12 in"'), (600, 500, 400), ("16", "18", "20"), strict=True)
    designs = [
        (
            ("damage.1.height", height),
            ("actions.axial_load", f'"{load} kip"'),
            ("added_bars.count", count),
        )
        for height, load, count in rows
    ]
    require_equal(report, check_all(designs))


def test_designs_that_cannot_be_built_do_not_spoil_the_others() -> None:
    report = swept("bolts.pitch=1 in,4 in,4-3/4 in,9 in")
    alone = check_all(grid(bolts_pitch=['"1 in"', '"4 in"', '"4-3/4 in"', '"9 in"']))
    require_equal(report, alone)
    assert 0 < len(report.refusals) < 4
    assert all(reason.startswith("bolts.") for reason in report.refusals.values())


def test_a_sweep_of_which_nothing_can_be_built_is_an_input_error() -> None:
    report = swept("bolts.pitch=1 in,1.1 in")
    assert report.exit_code is ExitCode.INPUT
    assert np.isnan(report.ratios.worst).all()


def test_a_thousand_designs_are_those_of_a_few() -> None:
    """Every limit state of closed form and bond that does not need a section, in one go."""
    only = ["bolt-spacing", "bolt-edge-distance", "wrench-clearance", "annulus-clearance"]
    many = sweep(file_with(""), ["bolts.pitch=90 mm:130 mm:1001"], host=host(), only=only)
    few = sweep(file_with(""), ["bolts.pitch=90 mm:130 mm:5"], host=host(), only=only)
    assert many.plan.count == 1001
    np.testing.assert_allclose(many.ratios.worst[::250], few.ratios.worst, rtol=1e-12)
