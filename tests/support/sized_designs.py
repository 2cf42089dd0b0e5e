"""Designs of a small grid checked one at a time, as variants of a file: no search, no arrays."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import product

from jacketcheck.api import check_input
from jacketcheck.errors import InputError
from jacketcheck.inputs import InputFile, read_text
from jacketcheck.inputs.sizing import FieldWork
from jacketcheck.jacket.quantities import quantities
from jacketcheck.report import ExitCode
from jacketcheck.results import Kind
from jacketcheck.sizing.report import SizingReport
from jacketcheck.sizing.size import size
from tests.support.jackets import CASE, host

__all__ = ["Checked", "Values", "check_all", "file_with", "grid", "naive_front", "rounded", "sized"]

Values = tuple[tuple[str, str], ...]
"""Path and TOML value of each field of one design."""


@dataclass(frozen=True)
class Checked:
    """One design checked by itself.

    Attributes
    ----------
    works
        Whether it can be built and nothing exceeds 1 or is left open.
    costs
        Steel [kg], bolts, and hours in the field; None where it cannot be built.
    ratios
        Largest ratio by limit state.
    """

    values: Values
    works: bool
    costs: tuple[float, int, float] | None
    ratios: dict[str, float]


def grid(**choices: Sequence[str]) -> list[Values]:
    """All combinations; a keyword ``sleeve_thickness`` stands for ``sleeve.thickness``."""
    paths = [name.replace("_", ".", 1) for name in choices]
    return [tuple(zip(paths, values, strict=True)) for values in product(*choices.values())]


def file_with(tables: str) -> InputFile:
    """The reference case with more tables after it, or with one line of bounds."""
    if tables.startswith("sizing."):
        tables = f"[sizing]\n{tables.removeprefix('sizing.')}"
    return read_text(f"{CASE.read_text('utf-8')}\n{tables}\n", catalog=host().catalog)


@lru_cache(maxsize=16)
def sized(tables: str, variant: str | None = None, most: int = 5000) -> SizingReport:
    """Outcome of the search over the reference case with bounds."""
    return size(file_with(tables), host=host(), variant=variant, most=most)


def check_all(designs: Iterable[Values]) -> list[Checked]:
    """Check each design by itself."""
    return [_checked(values) for values in designs]


@lru_cache(maxsize=512)
def _checked(values: Values) -> Checked:
    lines = "\n".join(f"{path} = {value}" for path, value in values)
    try:
        repair = file_with(f"[variants.tried]\n{lines}")
        report = check_input(repair, host=host(), variants=["tried"])
    except InputError:
        return Checked(values, works=False, costs=None, ratios={})
    [table] = report.tables
    ratios: dict[str, float] = {}
    for row in table.results:
        if row.kind is Kind.LIMIT:
            ratios[row.limit_state] = max(ratios.get(row.limit_state, 0.0), float(row.ratio))
    taken, work = quantities(table.jacket), FieldWork()
    bolts = int(taken.bolt_count)
    hours = (
        bolts * work.hours_per_bolt
        + float(taken.hole_count) * work.hours_per_hole
        + float(taken.drilled_length) * work.hours_per_metre_drilled
        + float(taken.chipped_length) * work.hours_per_metre_chipped
    )
    works = report.exit_code is ExitCode.WITHIN
    return Checked(values, works, (float(taken.steel_mass), bolts, hours), ratios)


def naive_front(checked: Sequence[Checked]) -> set[tuple[float, int, float]]:
    """Costs that no working design beats, each compared with each other."""
    costs = {rounded(one.costs) for one in checked if one.works and one.costs is not None}
    return {
        one
        for one in costs
        if not any(
            all(a <= b for a, b in zip(other, one, strict=True)) and other != one for other in costs
        )
    }


def rounded(costs: tuple[float, int, float]) -> tuple[float, int, float]:
    """Costs without the noise of adding up in another order."""
    return round(costs[0], 5), costs[1], round(costs[2], 5)
