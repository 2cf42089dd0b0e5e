"""The front and its proofs against every design of small grids, checked one at a time."""

from __future__ import annotations

from dataclasses import dataclass

import pytest

from jacketcheck.sizing.fates import Fate
from jacketcheck.sizing.report import SizedDesign, SizingReport
from tests.support.sized_designs import (
    Checked,
    Values,
    check_all,
    grid,
    naive_front,
    rounded,
    sized,
)


@dataclass(frozen=True)
class Grid:
    """Bounds as a file has them, and the same designs written out."""

    bounds: str
    designs: tuple[Values, ...]


STEEL = Grid(
    """
    [sizing.sleeve]
    thickness = { least = "3/8 in", most = "9/16 in" }
    steel = ["ASTM A36", "ASTM A572 Grade 50"]
    [sizing.splice]
    thickness = ["5/16 in", "1/2 in"]
    [sizing.bolts]
    columns = [2, 3]
    [sizing.repair]
    surface = ["unchipped", "chipped"]
    """,
    tuple(
        grid(
            sleeve_steel=['"ASTM A36"', '"ASTM A572 Grade 50"'],
            bolts_columns=["2", "3"],
            repair_surface=['"unchipped"', '"chipped"'],
            sleeve_thickness=['"3/8 in"', '"7/16 in"', '"1/2 in"', '"9/16 in"'],
            splice_thickness=['"5/16 in"', '"1/2 in"'],
        )
    ),
)
BARS = Grid(
    """
    [sizing.added_bars]
    size = ["No. 8", "No. 9"]
    count = { least = 14, most = 18, step = 2 }
    embedment = ["30 in", "36 in", "42 in"]
    """,
    # a hole is wider than its bar by what it is in the file: 1-3/4 in less 1 in
    tuple(
        (*size, ("added_bars.count", count), ("added_bars.embedment", embedment))
        for size in (
            (("added_bars.size", '"No. 8"'), ("added_bars.hole_diameter", '"1.75 in"')),
            (("added_bars.size", '"No. 9"'), ("added_bars.hole_diameter", '"1.878 in"')),
        )
        for count in ("14", "16", "18")
        for embedment in ('"30 in"', '"36 in"', '"42 in"')
    ),
)
BOLTS = Grid(
    """
    [sizing.bolts]
    product = ["ASTM F3125 A325", "ASTM F3125 A490"]
    diameter = ["3/4 in", "7/8 in"]
    pitch = { diameters = [3, 5] }
    [sizing.sleeve]
    thickness = ["5/8 in"]
    """,
    # multiples of the diameter and 1.5 diameters at the ends, rounded up to 1/8 in
    tuple(
        (
            ("bolts.product", product),
            ("bolts.diameter", diameter),
            ("bolts.pitch", pitch),
            ("bolts.end_distance", end),
            ("sleeve.thickness", '"5/8 in"'),
            ("remove", '["bolts.rows"]'),
        )
        for product in ('"ASTM F3125 A325"', '"ASTM F3125 A490"')
        for diameter, pitch, end in (
            ('"3/4 in"', '"2-1/4 in"', '"1-1/8 in"'),
            ('"3/4 in"', '"3-3/4 in"', '"1-1/8 in"'),
            ('"7/8 in"', '"2-5/8 in"', '"1-3/8 in"'),
            ('"7/8 in"', '"4-3/8 in"', '"1-3/8 in"'),
        )
    ),
)
GRIDS = [
    pytest.param(STEEL, id="steel, plates, columns, chipping"),
    pytest.param(BARS, id="added bars"),
    pytest.param(BOLTS, id="bolts by diameters"),
]


def costs_of(design: SizedDesign) -> tuple[float, int, float]:
    costs = design.costs
    return rounded((costs.steel_mass, costs.bolt_count, costs.field_hours))


@pytest.mark.parametrize("case", GRIDS)
def test_the_front_is_that_of_every_design_by_itself(case: Grid) -> None:
    report, checked = sized(case.bounds), check_all(case.designs)
    assert report.count == len(checked)
    assert {costs_of(one) for one in report.front} == naive_front(checked)
    # neither everything nor nothing: a front that could be wrong
    assert 0 < sum(one.works for one in checked) < len(checked)


@pytest.mark.parametrize("case", GRIDS)
def test_every_working_design_is_in_the_front_or_beaten(case: Grid) -> None:
    report, checked = sized(case.bounds), check_all(case.designs)
    works = sum(one.works for one in checked)
    possible = report.fates[Fate.WORKS] + report.fates[Fate.BEATEN]
    assert report.fates[Fate.WORKS] <= works <= possible
    assert sum(report.fates.values()) == report.count
    assert report.fates[Fate.CANNOT_BE_BUILT] == sum(one.costs is None for one in checked)


@pytest.mark.parametrize("case", GRIDS)
def test_each_design_of_the_front_has_its_own_row_that_governs(case: Grid) -> None:
    report, checked = sized(case.bounds), check_all(case.designs)
    for design in report.front:
        alone = next(
            one
            for one in checked
            if one.costs and one.works and rounded(one.costs) == costs_of(design)
        )
        assert max(alone.ratios.values()) <= 1.0
        governing = float(design.governing.ratio)
        assert governing == pytest.approx(alone.ratios[design.governing.limit_state], rel=1e-9)


def cheaper_than(design: SizedDesign, checked: list[Checked]) -> list[Checked]:
    mine = costs_of(design)
    found = []
    for one in checked:
        if one.costs is None or rounded(one.costs) == mine:
            continue
        if all(a <= b for a, b in zip(rounded(one.costs), mine, strict=True)):
            found.append(one)
    return found


@pytest.mark.parametrize("case", GRIDS)
def test_minimality_is_proven_over_all_cheaper_designs(case: Grid) -> None:
    report, checked = sized(case.bounds), check_all(case.designs)
    for design in report.front:
        cheaper, proof = cheaper_than(design, checked), design.proof
        assert proof.cheaper == len(cheaper)
        assert proof.is_proven
        assert not any(one.works for one in cheaper)
        ruled_out = [proof.closed_form, proof.bond, proof.sections]
        assert sum(sum(found.values()) for found in ruled_out) == len(cheaper)
        for found in ruled_out:
            for state, count in found.items():
                exceed = sum(one.ratios[state] > 1.0 for one in cheaper)
                assert exceed >= count, state


def test_bounds_narrowed_to_one_design_give_that_design_and_its_proof() -> None:
    report: SizingReport = sized(STEEL.bounds)
    chosen = report.front[0]
    only = sized(
        f"""
        [sizing.sleeve]
        thickness = ["{chosen.values["sleeve.thickness"]} mm"]
        steel = ["{chosen.values["sleeve.steel"]}"]
        [sizing.splice]
        thickness = ["{chosen.values["splice.thickness"]} mm"]
        [sizing.bolts]
        columns = [{chosen.values["bolts.columns"]}]
        [sizing.repair]
        surface = ["{chosen.values["repair.surface"]}"]
        """
    )
    assert only.count == 1
    [design] = only.front
    assert costs_of(design) == costs_of(chosen)
    assert design.proof.cheaper == 0
    assert design.proof.is_closed_form
