"""What must be true of a file, whatever stands in it: it is refused in words, or checked in full.

The judge reads the file a second time with the standard library's parser and a table of units of
its own, so that it can tell a file that must be refused, and a number that was read wrongly.
"""

from __future__ import annotations

import json
import math
import re
import tomllib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final, get_args

import numpy as np
from pydantic import BaseModel
from pydantic.fields import FieldInfo

from jacketcheck.api import build_variants, check_jackets
from jacketcheck.errors import InputError, InputProblem
from jacketcheck.host import Host
from jacketcheck.inputs import InputFile, read_input
from jacketcheck.inputs.fields import quantity_of
from jacketcheck.inputs.repair_file import RepairInput
from jacketcheck.jacket import Jacket
from jacketcheck.jacket.designs import leaves
from jacketcheck.render.records import report_csv, report_json
from jacketcheck.render.table import report_text
from jacketcheck.report import CheckReport
from jacketcheck.results import Kind, Result, Status
from tests.fuzz.fields import model_in
from tests.fuzz.repairs import FACTORS

__all__ = ["Defect", "Verdict", "judged", "refusal_defects", "report_defects"]

Verdict = str
"""``refused``, ``refused as a jacket`` or ``checked``."""

_QUANTITY = re.compile(r"(?P<number>[+-]?[0-9]+(?:\.[0-9]+)?(?:e[+-]?[0-9]+)?) (?P<unit>[\w/]+)")
_FOREIGN: Final = re.compile(r"\b(raised|warned|printed|did not return|Traceback|Error:)")
_ALLOWED: Final = re.compile(
    r"must |known (field|are)|did you mean|is missing|needs |already|names |leaves |nests"
    r"|is (empty|not valid TOML|larger|longer|midway|a second|there twice|the name of the file)"
    r"|line \d|more than|too (large|long)|holds |has no|goes on below|overridden twice"
    r"|starts with|not UTF-8"
)
_ABOUT_NO_VALUE: Final = re.compile(r"is missing|no bar|name of the file|a name of")
_MOST_VARIANTS: Final = 2


class Defect(Exception):  # noqa: N818 - what a case brings to light, not what a program raises
    """Something that must never be."""


@dataclass(frozen=True)
class _Reading:
    """What the standard library makes of a file."""

    table: Mapping[str, Any] | None
    reason: str


def judged(
    path: Path, *, host: Host, reason: str = "", provisions: str = "us", rendered: bool = False
) -> Verdict:
    """Read and check a file.

    Parameters
    ----------
    path
        The file.
    host
        What checks it.
    reason
        Why the file must be refused; empty where that is left to the judge.
    provisions
        Set of provisions to check by.
    rendered
        Whether the results are written in every form as well.

    Raises
    ------
    Defect
        If anything happens that must not. Whatever else escapes the package passes through.
    """
    other = _second_reading(path.read_bytes())
    reason = reason or other.reason
    try:
        file = read_input(path, catalog=host.catalog)
    except InputError as error:
        refusal_defects(error)
        return "refused"
    if other.table is not None:
        _same_numbers(file, other.table)
    try:
        jackets = build_variants(file, host=host, variants=list(file.variants)[:_MOST_VARIANTS])
    except InputError as error:
        refusal_defects(error)
        return "refused as a jacket"
    if reason:
        raise Defect(f"accepts a file that must be refused: {reason}")
    without_bolt = {name for name, jacket in jackets.items() if _lacks_a_stocked_bolt(jacket)}
    report = check_jackets(file, jackets, host=host, provisions=[provisions])
    report_defects(report)
    for table in report.tables:
        threads = {row.kind for row in table.results if row.limit_state == "bolt-threads"}
        if table.variant in without_bolt and Kind.NOT_EVALUATED not in threads:
            raise Defect(f"{table.variant}: bolt-threads takes a bolt that is not stocked")
    if rendered:
        _rendering_defects(report)
    return "checked"


# -- refusals ------------------------------------------------------------------------------------


def refusal_defects(error: InputError) -> None:
    """A refusal names the field, what stands there and what is allowed, in printable lines."""
    text = str(error)
    if not error.problems:
        raise Defect("refuses without a problem")
    for line in text.split("\n"):
        if not line.isprintable():
            raise Defect(f"prints what is not printable: {line!r}")
    if len(text) > 2_000_000:
        raise Defect(f"refuses with {len(text)} characters")
    for problem in error.problems:
        _problem_defects(problem)


def _problem_defects(problem: InputProblem) -> None:
    if not problem.message.strip():
        raise Defect(f"refuses {problem.path} without a word")
    if not _ALLOWED.search(problem.message):
        raise Defect(f"does not say what is allowed: {problem}")
    if len(str(problem)) > 3000:
        raise Defect(f"has a problem of {len(str(problem))} characters: {str(problem)[:200]}")
    if problem.path and not problem.value and not _ABOUT_NO_VALUE.search(problem.message):
        raise Defect(f"does not say what stands there: {problem}")


# -- the second reading --------------------------------------------------------------------------


def _second_reading(content: bytes) -> _Reading:
    try:
        text = content.decode("utf-8")
        if max(map(len, text.split("\n"))) > 20_000:
            return _Reading(None, "a line beyond all use")
        table = tomllib.loads(text)
    except (ValueError, RecursionError) as error:
        return _Reading(None, f"no TOML: {str(error)[:80]}")
    table.pop("variants", None)
    return _Reading(table, next(_broken(table, RepairInput, ""), ""))


def _broken(table: Mapping[str, Any], model: type[BaseModel], path: str) -> Iterator[str]:
    """Fields that are not there and must be, and fields that are there and nobody knows."""
    for name, info in model.model_fields.items():
        if name not in table:
            if info.is_required():
                yield f"without {path}{name}"
            continue
        value, inner = table[name], model_in(info)
        if inner is not None and isinstance(value, dict):
            yield from _broken(value, inner, f"{path}{name}.")
        elif inner is not None and isinstance(value, list):
            for entry in value:
                if isinstance(entry, dict):
                    yield from _broken(entry, inner, f"{path}{name}.")
        else:
            yield from _broken_value(value, info, f"{path}{name}")
    yield from (f"holds {path}{name}" for name in table if name not in model.model_fields)


def _broken_value(value: Any, info: FieldInfo, path: str) -> Iterator[str]:
    quantity = quantity_of(info)
    if quantity is None or get_args(info.annotation)[-1:] == (Ellipsis,):
        return
    if isinstance(value, bool | list | dict) or not isinstance(value, str | int | float):
        yield f"{path} is a {type(value).__name__}"
    elif isinstance(value, str) and (read := _read(value, quantity.unit)) is not None:
        slack = 1e-9 * max(abs(quantity.low), abs(quantity.high))
        if not quantity.low - slack <= read <= quantity.high + slack:
            yield f"{path} = {value} is out of range"
    elif isinstance(value, int | float) and quantity.unit != "1":
        yield f"{path} = {value} has no unit"


def _read(text: str, unit: str) -> float | None:
    """A quantity in an internal unit; None where it is not written plainly."""
    match = _QUANTITY.fullmatch(text)
    factor = FACTORS.get(unit, {}).get(match["unit"]) if match else None
    return None if match is None or factor is None else float(match["number"]) * factor


def _same_numbers(file: InputFile, table: Mapping[str, Any]) -> None:
    """Every quantity that is written plainly was read as the second reading has it."""
    for path, read, value in _pairs(table, file.base):
        if not math.isclose(read, value, rel_tol=1e-12, abs_tol=1e-300):
            raise Defect(f"reads {path} as {value!r} instead of {read!r}")


def _pairs(table: Any, model: BaseModel) -> Iterator[tuple[str, float, float]]:
    for name, info in type(model).model_fields.items():
        written, value = table.get(name), getattr(model, name)
        quantity = quantity_of(info)
        if isinstance(value, BaseModel) and isinstance(written, dict):
            yield from ((f"{name}.{at}", one, other) for at, one, other in _pairs(written, value))
        elif isinstance(value, tuple) and isinstance(written, list):
            for entry, inner in zip(written, value, strict=True):
                if isinstance(inner, BaseModel):
                    yield from _pairs(entry, inner)
        elif quantity is not None and isinstance(written, str) and isinstance(value, float):
            read = _read(written, quantity.unit)
            if read is not None:
                yield name, read, value


# -- results -------------------------------------------------------------------------------------


def _lacks_a_stocked_bolt(jacket: Jacket) -> bool:
    """Whether no stocked bolt suits the grip; only its own figures may then be missing."""
    missing = False
    for leaf, value in leaves(jacket):
        if isinstance(value, float) and not math.isfinite(value):
            if not leaf.startswith("bolts.fit."):
                raise Defect(f"builds a jacket whose {leaf} is {value}")
            missing = True
    return missing


def report_defects(report: CheckReport) -> None:
    """Every row has a ratio, a figure or a reason, and nothing passes on a missing number."""
    for table in report.tables:
        for row in table.results:
            _row_defects(row)
        statuses = {row.status for row in table.results}
        expected = (
            3 if Status.NOT_EVALUATED in statuses
            else 1 if Status.EXCEEDS in statuses
            else 0 if Status.OK in statuses
            else 3
        )  # fmt: skip
        if len(report.tables) == 1 and report.exit_code != expected:
            raise Defect(f"ends with {report.exit_code} instead of {expected}")


def _row_defects(row: Result) -> None:
    where = f"{row.limit_state} ({row.title}, {row.location})"
    for note in row.notes:
        if _FOREIGN.search(note):
            raise Defect(f"{where}: {note}")
    if row.kind is Kind.NOT_EVALUATED and not row.notes:
        raise Defect(f"{where}: not evaluated without a reason")
    if row.kind in {Kind.NOT_EVALUATED, Kind.NOT_APPLICABLE}:
        return
    numbers: list[tuple[str, Any]] = [("demand", row.demand), ("capacity", row.capacity)]
    numbers += [(f"step {one.symbol}", one.value) for one in row.steps]
    for name, value in numbers:
        if not isinstance(value, str) and np.any(np.isnan(value)):
            raise Defect(f"{where}: {name} is not a number")
    if row.kind is Kind.LIMIT:
        _ratio_defects(row, where)


def _ratio_defects(row: Result, where: str) -> None:
    """The ratio is demand over capacity, and the verdict is the ratio's."""
    demand, capacity, ratio = float(row.demand), float(row.capacity), float(row.ratio)
    if not (demand >= 0.0 and 0.0 <= capacity < math.inf):
        raise Defect(f"{where}: demand {demand}, capacity {capacity}")
    expected = demand / capacity if capacity else math.inf
    if ratio != (0.0 if demand == 0.0 else expected):
        raise Defect(f"{where}: ratio {ratio} of {demand} to {capacity}")
    if (row.status is Status.OK) != (ratio <= 1.0):
        raise Defect(f"{where}: {row.status} with a ratio of {ratio}")


def _rendering_defects(report: CheckReport) -> None:
    """The results in every form: JSON without NaN, tables of printable lines."""
    json.loads(report_json(report), parse_constant=_no_constant)
    texts = [report_csv(report)]
    texts += [
        report_text(report, system=system, style=style, width=100)
        for system in ("si", "us")
        for style in ("text", "markdown")
    ]
    for text in texts:
        for line in text.split("\n"):
            if not line.isprintable():
                raise Defect(f"prints what is not printable: {line!r}")
            if re.search(r"(?<![\w.])nan(?![\w.])", line):
                raise Defect(f"prints a number that is none: {line!r}")


def _no_constant(name: str) -> float:
    raise Defect(f"writes {name} into JSON")
