"""Holes as measured: the specified type still, or one that slips or spreads more."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Final

from jacketcheck.as_built.models import HoleRecord
from jacketcheck.as_built.records import Change, Comparison, Outcome
from jacketcheck.as_built.specified import Specified
from jacketcheck.catalog.assembly_rules import EN_1090
from jacketcheck.catalog.records import BoltProduct, BoltSize
from jacketcheck.jacket.bolt_fit import ROUNDING
from jacketcheck.mechanics._arguments import HoleType
from jacketcheck.mechanics._customary_units import INCH

__all__ = ["HOLES_BY_PENALTY", "compare_holes", "hole_as_built", "hole_type_that_covers"]

_RCSC_TOLERANCE: Final = INCH / 32.0
_RCSC_SOURCE: Final = "RCSC 2020 Table 3.1 footnote: 1/32 in above the nominal size (from memory)"
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


def compare_holes(
    record: HoleRecord, specified: Specified, *, product: BoltProduct, size: BoltSize
) -> Iterator[Comparison]:
    """One line for the larger dimension of the holes, for the bolt that was delivered."""
    bolts = specified.jacket.bolts
    along, across = _largest(record)
    smallest = min((*record.along, *(record.across or ())))
    _, source = _tolerance(product)
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
    kind = hole_as_built(record, specified, product, size)
    if smallest < size.diameter - ROUNDING:
        note = "the smallest is smaller than the bolt: ream them"
        yield replace(line, measured=smallest, outcome=Outcome.FAILS, note=note)
    elif kind == specified.repair.bolts.hole:
        yield line
    else:
        yield _other_type(line, kind, specified, product=product, size=size)


def hole_as_built(
    record: HoleRecord | None, specified: Specified, product: BoltProduct, size: BoltSize
) -> HoleType | None:
    """Type of the holes, as measured or else as specified, for the bolt that was delivered.

    None where the bolt does not go in, or no type is that large.
    """
    bolts, kind = specified.jacket.bolts, specified.repair.bolts.hole
    along, across = float(bolts.hole_along), float(bolts.hole_across)
    tolerance, _ = _tolerance(product)
    wide, high = (along, across) if record is None else _largest(record)
    within = wide <= along + tolerance and high <= across + tolerance
    if within and size.diameter == specified.assembly.size.diameter:
        return kind
    if min(wide, high) < size.diameter - ROUNDING:
        return None
    return hole_type_that_covers(size, along=wide, across=high, tolerance=tolerance)


def _largest(record: HoleRecord) -> tuple[float, float]:
    """Along and across the hoop force [mm]."""
    return max(record.along), max(record.across or record.along)


def _tolerance(product: BoltProduct) -> tuple[float, str]:
    """What a hole may exceed its nominal size by [mm], and where that stands."""
    if product.rules is not None and product.rules.standard == EN_1090:
        return _EN_TOLERANCE, _EN_SOURCE
    return _RCSC_TOLERANCE, _RCSC_SOURCE


def _other_type(
    line: Comparison,
    kind: HoleType | None,
    specified: Specified,
    *,
    product: BoltProduct,
    size: BoltSize,
) -> Comparison:
    if kind is None:
        note = "larger than any hole that a slip-critical joint may have: ask the engineer"
        return replace(line, outcome=Outcome.FAILS, note=note)
    change = Change({"bolts.hole": kind})
    text = f"checked as {kind.replace('-', ' ')} holes"
    if size.diameter != specified.assembly.size.diameter:
        change |= Change({"bolts.product": product.name, "bolts.diameter": size.name})
        text += f" for {size.name} bolts, as delivered"
    if kind != "standard":
        text += ", which need hardened washers"
    return replace(line, outcome=Outcome.DEVIATES, rechecks=(change,), as_built=change, note=text)


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
