"""Holes as measured: the specified type still, or one that slips or spreads more."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Final

from jacketcheck.as_built.models import HoleRecord
from jacketcheck.as_built.records import Change, Comparison, Outcome
from jacketcheck.as_built.specified import Specified
from jacketcheck.catalog.records import BoltSize
from jacketcheck.mechanics._arguments import HoleType
from jacketcheck.mechanics._customary_units import INCH

__all__ = ["HOLES_BY_PENALTY", "compare_holes", "hole_type_that_covers"]

_RCSC_TOLERANCE: Final = INCH / 32.0
_RCSC_SOURCE: Final = "RCSC 2014 Table 3.1 footnote: 1/32 in above the nominal size (from memory)"
_EN_TOLERANCE: Final = 0.5
_EN_SOURCE: Final = "EN 1090-2:2018 Table B.8: 0.5 mm (from memory)"
HOLES_BY_PENALTY: Final[tuple[HoleType, ...]] = (
    "standard",
    "short-slot-perpendicular",
    "oversized",
    "short-slot-parallel",
    "long-slot-perpendicular",
    "long-slot-parallel",
)
"""Hole types, the least reduction of slip resistance first (AISC 360-22 J3.9)."""


def compare_holes(record: HoleRecord, specified: Specified) -> Iterator[Comparison]:
    """One line for the larger dimension of the holes."""
    bolts, size = specified.jacket.bolts, specified.assembly.size
    along = max(record.along)
    across = max(record.across or record.along)
    smallest = min((*record.along, *(record.across or ())))
    tolerance = _EN_TOLERANCE if specified.european else _RCSC_TOLERANCE
    source = _EN_SOURCE if specified.european else _RCSC_SOURCE
    measured, nominal = along, float(bolts.hole_along)
    if across - float(bolts.hole_across) > along - nominal:
        measured, nominal = across, float(bolts.hole_across)
    line = Comparison(
        part="holes",
        item="size of the holes",
        specified=nominal,
        measured=measured,
        unit="mm",
        rule="at most nominal and tolerance",
        source=f"{bolts.hole_source}; {source}",
        outcome=Outcome.MEETS,
    )
    within = (
        along <= float(bolts.hole_along) + tolerance
        and across <= float(bolts.hole_across) + tolerance
    )
    if smallest < float(bolts.diameter):
        note = "the smallest is smaller than the bolt: ream them"
        yield replace(line, measured=smallest, outcome=Outcome.FAILS, note=note)
    elif within:
        yield line
    else:
        yield _enlarged(
            line, hole_type_that_covers(size, along=along, across=across, tolerance=tolerance)
        )


def _enlarged(line: Comparison, covering: HoleType | None) -> Comparison:
    if covering is None:
        note = "larger than any hole that a slip-critical joint may have: ask the engineer"
        return replace(line, outcome=Outcome.FAILS, note=note)
    change = Change({"bolts.hole": covering})
    return replace(
        line,
        outcome=Outcome.DEVIATES,
        rechecks=(change,),
        as_built=change,
        note=f"checked as {covering.replace('-', ' ')} holes, which need hardened washers",
    )


def hole_type_that_covers(
    size: BoltSize, *, along: float, across: float, tolerance: float
) -> HoleType | None:
    """The hole type with the least reduction that a measured hole [mm] still fits in."""
    for kind in HOLES_BY_PENALTY:
        wide, high = _dimensions(size, kind)
        if along <= wide + tolerance and across <= high + tolerance:
            return kind
    return None


def _dimensions(size: BoltSize, kind: HoleType) -> tuple[float, float]:
    """Along and across the hoop force [mm]."""
    if kind in {"standard", "oversized"}:
        return size.holes[kind], size.holes[kind]
    slot = kind.rpartition("-")[0]
    width, length = size.holes[f"{slot}-width"], size.holes[f"{slot}-length"]
    return (length, width) if kind.endswith("parallel") else (width, length)
