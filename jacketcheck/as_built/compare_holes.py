"""Holes as measured: the specified type still, or one that slips or spreads more."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Final, NamedTuple

from jacketcheck.as_built.models import HoleRecord
from jacketcheck.as_built.records import Change, Comparison, Outcome
from jacketcheck.as_built.specified import Specified
from jacketcheck.catalog.assembly_rules import EN_1090
from jacketcheck.catalog.records import BoltProduct, BoltSize
from jacketcheck.jacket.bolt_fit import ROUNDING
from jacketcheck.jacket.jacket_parts import Hole
from jacketcheck.mechanics._arguments import HoleType
from jacketcheck.mechanics._customary_units import INCH

__all__ = ["HOLES_BY_PENALTY", "compare_holes", "hole_type_that_covers", "holes_as_built"]

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


class _Ply(NamedTuple):
    """A ply with its holes as specified and as measured [mm].

    Attributes
    ----------
    name
        As printed; empty for all plies together.
    fields
        Fields of the repair file that say what hole it has.
    hole
        As specified.
    along, across
        Readings; None where nothing was recorded of this ply.
    """

    name: str
    fields: tuple[str, ...]
    hole: Hole
    along: tuple[float, ...] | None
    across: tuple[float, ...] | None


def _plies(record: HoleRecord | None, specified: Specified) -> tuple[_Ply, ...]:
    """All plies together, or sleeve and plates where they are specified or recorded apart."""
    sleeve, splice = specified.jacket.sleeve.hole, specified.jacket.splice.hole
    along = None if record is None else record.along
    across = None if record is None else record.across or record.along
    plates = None if record is None else record.splice_along
    if plates is None and sleeve.kind == splice.kind:
        return (_Ply("", ("sleeve.hole", "splice.hole"), sleeve, along, across),)
    plates_across = plates if record is None else record.splice_across or plates
    return (
        _Ply("sleeve", ("sleeve.hole",), sleeve, along, across),
        _Ply("splice plates", ("splice.hole",), splice, plates, plates_across),
    )


def compare_holes(
    record: HoleRecord, specified: Specified, *, product: BoltProduct, size: BoltSize
) -> Iterator[Comparison]:
    """A line for the larger dimension of the holes of each ply, for the bolt delivered."""
    for ply in _plies(record, specified):
        yield _compare(ply, specified, product, size)


def _compare(ply: _Ply, specified: Specified, product: BoltProduct, size: BoltSize) -> Comparison:
    hole = ply.hole
    line = Comparison(
        part="holes",
        item="size of the holes" + (f", {ply.name}" if ply.name else ""),
        specified=float(hole.along),
        measured="not recorded",
        unit="mm",
        rule="at most nominal and tolerance",
        source=f"{hole.source}; {_tolerance(product)[1]}",
        outcome=Outcome.UNKNOWN,
        note="holes of the plates are not those of the half-shells: record splice_along",
    )
    if ply.along is None or ply.across is None:
        return line
    along, across = max(ply.along), max(ply.across)
    measured, nominal = along, float(hole.along)
    if across - float(hole.across) > along - nominal:
        measured, nominal = across, float(hole.across)
    line = replace(line, specified=nominal, measured=measured, outcome=Outcome.MEETS, note="")
    smallest = min((*ply.along, *ply.across))
    kind = _kind_as_built(ply, specified, product, size)
    if smallest < size.diameter - ROUNDING:
        note = "the smallest is smaller than the bolt: ream them"
        return replace(line, measured=smallest, outcome=Outcome.FAILS, note=note)
    if kind == hole.kind:
        return line
    return _other_type(line, ply, kind, specified, product=product, size=size)


def holes_as_built(
    record: HoleRecord | None, specified: Specified, product: BoltProduct, size: BoltSize
) -> dict[str, HoleType | None]:
    """Hole types by field, as measured or else as specified, for the bolt that was delivered.

    None where the bolt does not go in, or no type is that large.
    """
    return {
        field: _kind_as_built(ply, specified, product, size)
        for ply in _plies(record, specified)
        for field in ply.fields
    }


def _kind_as_built(
    ply: _Ply, specified: Specified, product: BoltProduct, size: BoltSize
) -> HoleType | None:
    along, across = float(ply.hole.along), float(ply.hole.across)
    tolerance, _ = _tolerance(product)
    wide = along if ply.along is None else max(ply.along)
    high = across if ply.across is None else max(ply.across)
    within = wide <= along + tolerance and high <= across + tolerance
    if within and size.diameter == specified.assembly.size.diameter:
        return ply.hole.kind
    if min(wide, high) < size.diameter - ROUNDING:
        return None
    return hole_type_that_covers(size, along=wide, across=high, tolerance=tolerance)


def _tolerance(product: BoltProduct) -> tuple[float, str]:
    """What a hole may exceed its nominal size by [mm], and where that stands."""
    if product.rules is not None and product.rules.standard == EN_1090:
        return _EN_TOLERANCE, _EN_SOURCE
    return _RCSC_TOLERANCE, _RCSC_SOURCE


def _other_type(
    line: Comparison,
    ply: _Ply,
    kind: HoleType | None,
    specified: Specified,
    *,
    product: BoltProduct,
    size: BoltSize,
) -> Comparison:
    if kind is None:
        note = "larger than any hole that a slip-critical joint may have: ask the engineer"
        return replace(line, outcome=Outcome.FAILS, note=note)
    change = Change(dict.fromkeys(ply.fields, kind))
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
        wide, high = size.hole_size(kind)
        if along <= wide + tolerance and across <= high + tolerance:
            return kind
    return None
