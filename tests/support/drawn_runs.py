"""Runs whose figures and reports are looked at: ordinary jackets, and jackets at the edges."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache
from pathlib import Path

from jacketcheck.api import check_input
from jacketcheck.errors import NotEvaluatedError
from jacketcheck.figures import draw
from jacketcheck.figures.drawing import Drawing
from jacketcheck.host.loading import load_host
from jacketcheck.inputs.load import InputFile, read_text
from jacketcheck.report import CheckReport, VariantResults
from jacketcheck.units import DisplaySystem

__all__ = ["EXTREMES", "case_text", "drawing_of", "drawings", "run_again", "run_of"]

_CASE = Path(__file__).parents[2] / "reference_cases" / "quarry-road-pier" / "repair.toml"

EXTREMES = """
[variants."one line of bolts outside"]
bolts.columns = 1
bolts.tightening = "snug"
splice.sides = "outside"
sleeve.seam_angle = "37 deg"
sleeve.seam_gap = "0 in"
remove = ["added_bars", "footing"]

[variants."many bars, wide seams"]
sleeve.inner_diameter = "1700 mm"
column.bars.count = 40
column.bars.first_angle = "4.5 deg"
column.bars.size = "No. 8"
damage.1.bars = [1, 2, 3, 4, 30, 31, 32, 33]
damage.2.clock = ["5:05"]
damage.2.surface = "unchipped"
damage.3.bars = [5]
damage.3.state = "yielded"
bolts.columns = 4
bolts.rows = 14
bolts.pitch = "95 mm"
bolts.gauge = "70 mm"
sleeve.seam_angle = "12 deg"

[variants."nothing fractured"]
damage = []
"""
"""Variants that stretch layouts: few and many bolts, few and many bars, missing parts."""


def case_text() -> str:
    """Text of the reference case."""
    return _CASE.read_text("utf-8")


@lru_cache(maxsize=4)
def run_of(text: str) -> tuple[CheckReport, InputFile]:
    """Check every variant of a text, with the built-in plug-in only; done once for a text."""
    return run_again(text)


def run_again(text: str) -> tuple[CheckReport, InputFile]:
    """The same, done anew."""
    host = load_host(installed=False)
    repair = read_text(text, source="repair.toml", catalog=host.catalog)
    return check_input(repair, host=host), repair


_DRAWN: dict[tuple[str, int, DisplaySystem], tuple[VariantResults, Drawing]] = {}
"""Drawings, each with the results that it shows, which keeps their identity from being reused."""


def drawing_of(name: str, table: VariantResults, system: DisplaySystem = "si") -> Drawing:
    """A figure of one variant alone, drawn once for the same results."""
    key = (name, id(table), system)
    if key not in _DRAWN:
        ((_, drawing),) = draw(name, (table,), system=system)
        _DRAWN[key] = table, drawing
    return _DRAWN[key][1]


def drawings(
    name: str, report: CheckReport, system: DisplaySystem
) -> Iterator[tuple[str, Drawing]]:
    """A figure of every variant that has one, with the variant's name."""
    for table in report.tables:
        try:
            yield table.variant, drawing_of(name, table, system)
        except NotEvaluatedError:
            continue
