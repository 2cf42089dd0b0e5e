"""What was built against what was specified, each deviation checked again."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import replace
from functools import partial, reduce
from operator import or_
from typing import Any, Final

from jacketcheck.api import check_jackets
from jacketcheck.as_built.bolt_as_built import BoltAsBuilt, bolt_as_built
from jacketcheck.as_built.changed import changed_jacket
from jacketcheck.as_built.compare_bolts import compare_bolts
from jacketcheck.as_built.compare_faying import compare_faying
from jacketcheck.as_built.compare_grout import compare_grout
from jacketcheck.as_built.compare_holes import compare_holes
from jacketcheck.as_built.compare_steel import compare_sleeve, compare_splice
from jacketcheck.as_built.compare_tightening import compare_tightening
from jacketcheck.as_built.load import PARTS, AsBuiltFile
from jacketcheck.as_built.models import AsBuilt, Record
from jacketcheck.as_built.recheck import Rechecker
from jacketcheck.as_built.records import (
    AS_BUILT,
    SPECIFIED,
    Change,
    Comparison,
    Confirmation,
    ConfirmedLine,
    LineVerdict,
    Outcome,
)
from jacketcheck.as_built.specified import Specified, specified_by
from jacketcheck.catalog.assembly_rules import RCSC
from jacketcheck.errors import InputError, InputProblem
from jacketcheck.host.host import Host
from jacketcheck.inputs.load import InputFile
from jacketcheck.inputs.written import shown
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.results import Status

__all__ = ["compare", "confirm"]

_WORTH_RECORDING: Final[Mapping[str, tuple[str, ...]]] = {
    "bolts": ("marks", "washers_under_head", "washers_under_nut", "rotational_capacity"),
    "holes": ("across",),
    "faying": ("plies_in_contact",),
    "sleeve": ("steel", "yield_strength", "diameters", "seam_gap", "gap"),
    "splice": ("steel", "yield_strength", "radius", "fillers"),
}


def confirm(
    repair: InputFile,
    record: AsBuiltFile,
    *,
    host: Host,
    provisions: Iterable[str] = ("us",),
    variant: str | None = None,
) -> Confirmation:
    """Compare what was built with what was specified, and check it again.

    Parameters
    ----------
    repair
        The repair file, read.
    record
        The record of what was built, read.
    host
        Plug-ins.
    provisions
        Sets of provisions to check by.
    variant
        Variant that was built; by default as the record says, else the file without overrides.

    Returns
    -------
    Confirmation
        Line by line, and the check as specified and as built side by side.

    Raises
    ------
    InputError
        If the variant or the provisions cannot be used, or the specified jacket cannot be built.
    """
    name = variant or record.record.record.variant or repair.base_name
    if name not in repair.variants:
        known = ", ".join(shown(one) for one in repair.variants)
        message = f"is not in {repair.source}; known are {known}"
        raise InputError(
            [InputProblem("record.variant", shown(name), message)], source=record.source
        )
    specified = specified_by(repair.variants[name], host.catalog)
    asked = tuple(dict.fromkeys((provisions,) if isinstance(provisions, str) else provisions))
    comparisons = tuple(compare(record.record, specified))
    jackets, problem = _jackets(specified, comparisons)
    report = check_jackets(repair, jackets, host=host, provisions=asked)
    baseline = {
        table.provisions: table.results for table in report.tables if table.variant == SPECIFIED
    }
    recheck = Rechecker(specified, baseline, host)
    return Confirmation(
        not_covered=report.not_covered,
        job=repair.base.job,
        record_title=_who_and_when(record.record.record),
        sources=((repair.source, repair.digest), (record.source, record.digest)),
        lines=tuple(_confirmed(one, recheck) for one in comparisons),
        report=report,
        not_recorded=_not_recorded(record.record, specified),
        as_built_problem=problem,
    )


def compare(record: AsBuilt, specified: Specified) -> Iterator[Comparison]:
    """All lines before any check is run again; a part without a table has a line of its own."""
    comparisons = _comparisons(record, bolt_as_built(record, specified))
    for part in PARTS:
        table = getattr(record, part)
        if table is not None:
            yield from comparisons[part](table, specified)
        else:
            declared = part in record.record.not_yet
            yield Comparison(
                part=part,
                item="all of it",
                specified="see repair file",
                measured="not yet" if declared else "not recorded",
                unit="",
                rule="a record, or an entry in record.not_yet",
                source="as-built record",
                outcome=Outcome.NOT_YET if declared else Outcome.UNKNOWN,
                note="" if declared else "record it, or name it in record.not_yet",
            )


def _comparisons(
    record: AsBuilt, bolt: BoltAsBuilt
) -> Mapping[str, Callable[[Any, Specified], Iterator[Comparison]]]:
    """Comparison of each part; what has to do with the bolts knows what was delivered."""
    product, size = bolt.assembly.product, bolt.assembly.size
    tightened = record.tightening is not None and record.tightening.method != "snug"
    contact = None if record.faying is None else record.faying.plies_in_contact
    return {
        "bolts": partial(compare_bolts, bolt=bolt),
        "holes": partial(compare_holes, product=product, size=size),
        "faying": partial(compare_faying, tightened=tightened),
        "tightening": partial(compare_tightening, bolt=bolt),
        "sleeve": compare_sleeve,
        "splice": partial(compare_splice, in_contact=contact, tightened=tightened),
        "grout": compare_grout,
    }


def _jackets(
    specified: Specified, comparisons: tuple[Comparison, ...]
) -> tuple[dict[str, Jacket], str]:
    """The jacket as specified and, where it can be built, with everything as built."""
    changes = [one.as_built for one in comparisons if one.as_built is not None]
    everything = reduce(or_, changes, Change())
    jackets = {SPECIFIED: specified.jacket}
    try:
        jackets[AS_BUILT] = changed_jacket(specified.repair, everything, specified.catalog)
    except InputError as error:
        return jackets, "; ".join(str(problem) for problem in error.problems)
    return jackets, ""


_VERDICTS: Final = {
    Outcome.MEETS: LineVerdict.ACCEPTED,
    Outcome.FAILS: LineVerdict.REJECTED,
    Outcome.UNKNOWN: LineVerdict.NOT_JUDGED,
    Outcome.NOT_YET: LineVerdict.NOT_YET,
}
_BY_STATUS: Final = {
    Status.OK: LineVerdict.BY_RECHECK,
    Status.EXCEEDS: LineVerdict.REJECTED,
    Status.NOT_EVALUATED: LineVerdict.NOT_JUDGED,
}


def _confirmed(comparison: Comparison, recheck: Rechecker) -> ConfirmedLine:
    if comparison.outcome is not Outcome.DEVIATES:
        return ConfirmedLine(comparison, _VERDICTS[comparison.outcome])
    found = recheck(comparison.rechecks)
    if found.problem:
        text = f"cannot be checked as built: {found.problem}"
        note = "; ".join(filter(None, (comparison.note, text)))
        comparison = replace(comparison, note=note)
    return ConfirmedLine(comparison, _BY_STATUS[found.status], found)


def _who_and_when(record: Record) -> str:
    """Title, inspector and date in a line."""
    inspector = f"recorded by {record.inspector}" if record.inspector else ""
    return ", ".join(filter(None, (record.title, inspector, record.date)))


def _not_recorded(record: AsBuilt, specified: Specified) -> tuple[str, ...]:
    """Optional fields of the tables that are there, left out."""
    rules = bolt_as_built(record, specified).assembly.rules
    elsewhere = set() if rules is None or rules.standard == RCSC else {"rotational_capacity"}
    return tuple(
        f"{part}.{field}"
        for part, fields in _WORTH_RECORDING.items()
        if (table := getattr(record, part)) is not None
        for field in fields
        if getattr(table, field) is None and field not in elsewhere
    )
