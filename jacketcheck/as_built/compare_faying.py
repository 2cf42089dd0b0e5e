"""Faying surfaces as prepared."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from typing import Final

from jacketcheck.as_built.models import FayingRecord
from jacketcheck.as_built.records import Change, Comparison, Outcome
from jacketcheck.as_built.specified import Specified
from jacketcheck.catalog.records import FayingClass

__all__ = ["compare_faying"]

_PART: Final = "faying"
_COATS: Final = "RCSC 2020 Section 3.2.2 (from memory)"
_SNUG: Final = "RCSC 2020 Section 8.1 (from memory); EN 1090-2:2018 8.3"


def compare_faying(
    record: FayingRecord, specified: Specified, *, tightened: bool
) -> Iterator[Comparison]:
    """Class by class, then paint, coats and contact; `tightened` where bolts are pretensioned."""
    prepared = [specified.catalog.faying_class(name) for name in record.faying_class]
    named = set(specified.catalog.faying_classes)
    wanted = specified.jacket.bolts.faying_classes
    found = {one.name: _counterpart(one, prepared) for one in wanted if one.name in named}
    for one in wanted:
        yield _class_line(one, found, specified) if one.name in named else _tested_line(one)
    yield _paint(record)
    if record.coating_thickness is not None:
        yield _coat(record, max(record.coating_thickness))
    if record.plies_in_contact is not None or tightened:
        yield _contact(record.plies_in_contact)


def _counterpart(wanted: FayingClass, prepared: list[FayingClass]) -> str | None:
    """Name of the class that the wanted class's code gives to the surface as prepared."""
    for one in prepared:
        if one.code == wanted.code:
            return one.name
    same = (name for one in prepared for name in one.same_as)
    return next((name for name in same if name.startswith(f"{wanted.code} ")), None)


def _tested_line(wanted: FayingClass) -> Comparison:
    """A tested surface has no class that a record could name."""
    return Comparison(
        part=_PART,
        item=f"surface tested by {wanted.code}",
        specified=wanted.preparation,
        measured="not recorded",
        unit="",
        rule="prepared and coated as tested",
        source=wanted.source,
        outcome=Outcome.UNKNOWN,
        note="compare preparation, coating and its thickness with the test report",
    )


def _class_line(
    wanted: FayingClass, found: Mapping[str, str | None], specified: Specified
) -> Comparison:
    name = found[wanted.name]
    line = Comparison(
        part=_PART,
        item=f"class by {wanted.code}",
        specified=wanted.name,
        measured=name or "not recorded",
        unit="",
        rule="a slip coefficient at least as high",
        source=wanted.source,
        outcome=Outcome.MEETS,
    )
    if name is None:
        note = f"the record names no class of {wanted.code}, nor one that is the same"
        return replace(line, outcome=Outcome.UNKNOWN, note=note)
    coefficient = specified.catalog.faying_class(name).slip_coefficient
    if coefficient >= wanted.slip_coefficient:
        return line
    # one surface: the classes of all codes change with it
    change = Change({"bolts.faying_class": tuple(new or old for old, new in found.items())})
    return replace(
        line,
        outcome=Outcome.DEVIATES,
        rechecks=(change,),
        as_built=change,
        note=f"slip coefficient {coefficient:g} instead of {wanted.slip_coefficient:g}",
    )


def _paint(record: FayingRecord) -> Comparison:
    painted = record.paint_in_pattern
    return Comparison(
        part=_PART,
        item="paint or overspray in the bolt pattern",
        specified="none",
        measured="found" if painted else "none",
        unit="",
        rule="none where nothing may be painted",
        source=_COATS,
        outcome=Outcome.FAILS if painted else Outcome.MEETS,
        note="the surface has no class: take the paint off and prepare it again" if painted else "",
    )


def _coat(record: FayingRecord, thickest: float) -> Comparison:
    line = Comparison(
        part=_PART,
        item="thickness of the coat",
        specified="not recorded",
        measured=thickest,
        unit="mm",
        rule="at most as tested for the class",
        source=_COATS,
        outcome=Outcome.UNKNOWN,
        note="record tested_thickness from the coat's certificate",
    )
    if record.tested_thickness is None:
        return line
    thick = thickest > record.tested_thickness * (1.0 + 1e-9)
    return replace(
        line,
        specified=record.tested_thickness,
        outcome=Outcome.FAILS if thick else Outcome.MEETS,
        note="thicker than tested: the class does not hold" if thick else "",
    )


def _contact(in_contact: bool | None) -> Comparison:  # noqa: FBT001 - the record's own answer
    line = Comparison(
        part=_PART,
        item="plies in firm contact when snug",
        specified="at every bolt",
        measured="not recorded",
        unit="",
        rule="at every bolt, before bolts are tightened further",
        source=_SNUG,
        outcome=Outcome.UNKNOWN,
        note="plates that do not touch hold nothing by friction: record plies_in_contact",
    )
    if in_contact is None:
        return line
    if in_contact:
        return replace(line, measured="at every bolt", outcome=Outcome.MEETS, note="")
    note = (
        "snug again; if gaps stay, roll the plates anew, or fill them and record splice.fillers "
        "and splice.filler_thickness"
    )
    return replace(line, measured="not everywhere", outcome=Outcome.FAILS, note=note)
