"""Bolts as delivered: product, length, number, washers, certificates."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Final

from jacketcheck.as_built.bolt_as_built import BoltAsBuilt
from jacketcheck.as_built.models import BoltDelivery
from jacketcheck.as_built.records import Change, Comparison, Outcome
from jacketcheck.as_built.specified import Specified
from jacketcheck.catalog.assembly_rules import RCSC
from jacketcheck.errors import DomainError
from jacketcheck.jacket.bolt_fit import ROUNDING
from jacketcheck.schedule.assembly import Assembly
from jacketcheck.schedule.counts import Allowances, bolt_counts
from jacketcheck.schedule.length import bolt_length, native_length, thread_fit

__all__ = ["compare_bolts"]

_PART: Final = "bolts"
_FLUSH: Final = "RCSC 2020 Section 2 (from memory): bolt end at least flush with the nut"
_RC_TEST: Final = (
    "AASHTO LRFD Bridge Construction Specifications, 4th ed. (2017), 11.5.6.4.2 (from memory)"
)


def compare_bolts(
    delivery: BoltDelivery, specified: Specified, *, bolt: BoltAsBuilt
) -> Iterator[Comparison]:
    """Lines on the delivery; `bolt` is what it makes of the specified one."""
    yield _bolt(specified, bolt)
    yield _count(delivery, specified)
    yield from _washers(delivery, specified, bolt)
    yield from _length(delivery, specified, bolt.assembly)
    yield from _certificates(delivery, bolt.assembly)


def _bolt(specified: Specified, bolt: BoltAsBuilt) -> Comparison:
    planned, product, size = specified.assembly, bolt.assembly.product, bolt.assembly.size
    wanted = f"{planned.product.name}, {planned.size.name}"
    found = f"{product.name}, {size.name}"
    line = Comparison(
        part=_PART,
        item="product and size",
        specified=wanted,
        measured=found,
        unit="",
        rule="as specified",
        source="repair file bolts.product",
        outcome=Outcome.MEETS,
    )
    if wanted == found:
        return line
    if None in bolt.holes.values():
        note = f"{size.name} bolts do not belong in these holes: refuse them, or ask the engineer"
        return replace(line, outcome=Outcome.FAILS, note=note)
    kinds = sorted({kind for path, kind in bolt.change.fields.items() if path.endswith(".hole")})
    holes = f", in {' and '.join(kinds).replace('-', ' ')} holes" if kinds else ""
    return replace(
        line,
        outcome=Outcome.DEVIATES,
        rechecks=(bolt.change,),
        as_built=bolt.change,
        note=f"another bolt{holes}: length, washers, tension and turn are judged by its own rules; "
        "a new schedule has to be made",
    )


def _count(delivery: BoltDelivery, specified: Specified) -> Comparison:
    counts = bolt_counts(specified.jacket, specified.assembly, Allowances())
    enough = delivery.count >= counts.installed
    spare = delivery.count - counts.installed
    note = ""
    if not enough:
        note = f"{-spare} short of what is installed"
    elif spare < counts.spares:
        note = f"{spare} spare; the schedule has {counts.spares} for tests and loss"
    return Comparison(
        part=_PART,
        item="number",
        specified=float(counts.installed),
        measured=float(delivery.count),
        unit="1",
        rule="at least what is installed",
        source="repair file",
        outcome=Outcome.MEETS if enough else Outcome.FAILS,
        note=note,
    )


def _washers(
    delivery: BoltDelivery, specified: Specified, bolt: BoltAsBuilt
) -> Iterator[Comparison]:
    """Washers against the rules of the bolt, method, holes and plates that were built."""
    for place, count in (
        ("head", delivery.washers_under_head),
        ("nut", delivery.washers_under_nut),
    ):
        if count is None:
            continue
        planned = [one for one in specified.assembly.washers_at(place) if one.part != "indicator"]
        line = Comparison(
            part=_PART,
            item=f"washers under the {place}",
            specified=float(len(planned)),
            measured=float(count),
            unit="1",
            rule="by the standard of the bolts",
            source=bolt.assembly.product.source,
            outcome=Outcome.UNKNOWN,
            note="the catalogue has no rules on washers for this product",
        )
        if bolt.required is None:
            yield line
            continue
        here = [one for one in bolt.required if one.place == place and one.part != "indicator"]
        required = [one for one in here if one.required]
        enough = count >= len(required)
        yield replace(
            line,
            rule=f"at least {len(required)}",
            source="; ".join(dict.fromkeys(one.source for one in here)) or "no rule asks for one",
            outcome=Outcome.MEETS if enough else Outcome.FAILS,
            note="" if enough else "add them: " + "; ".join(one.reason for one in required),
        )


def _length(
    delivery: BoltDelivery, specified: Specified, assembly: Assembly
) -> Iterator[Comparison]:
    """Long enough for the nut, short enough to be tightened, threads where they were counted."""
    own = assembly.rules is not None and assembly.rules.standard != RCSC
    source = assembly.rules.source_of("protrusion") if assembly.rules and own else _FLUSH
    try:
        needed = bolt_length(assembly).needed
        fit = thread_fit(assembly, delivery.length)
    except DomainError as error:
        yield _length_line(delivery, "not known", Outcome.UNKNOWN, str(error), source)
        return
    stack = assembly.clamp_length + assembly.size.nut_height
    outcome, note = Outcome.MEETS, ""
    if fit.least_clamp > assembly.clamp_length + ROUNDING:
        outcome = Outcome.FAILS
        note = "the nut would meet the end of the thread: add washers, or change the bolts"
    elif delivery.length < stack - ROUNDING:
        outcome, note = Outcome.FAILS, "shorter than plates, washers and nut: change the bolts"
    elif delivery.length < needed - ROUNDING:
        outcome, note = _flush(delivery)
    yield _length_line(delivery, needed, outcome, note, source)
    counted = specified.jacket.bolts.threads
    excluded = fit.threads_excluded
    found = "not known" if excluded is None else "excluded" if excluded else "included"
    worse = counted == "excluded" and not excluded
    change = Change({"bolts.threads": "included"})
    yield Comparison(
        part=_PART,
        item="threads in the shear planes",
        specified=counted,
        measured=found,
        unit="",
        rule="as counted, or excluded",
        source="AISC 360-22 Table J3.2; " + assembly.size.source_of("transition_length"),
        outcome=Outcome.DEVIATES if worse else Outcome.MEETS,
        rechecks=(change,) if worse else (),
        as_built=change if worse else None,
        note=f"for {native_length(assembly, delivery.length)} long bolts",
    )


def _flush(delivery: BoltDelivery) -> tuple[Outcome, str]:
    """A bolt that is long enough only if tolerances are kind."""
    if delivery.ends_flush is None:
        return Outcome.UNKNOWN, (
            "shorter than needed with all tolerances: look at every bolt and record ends_flush"
        )
    if delivery.ends_flush:
        return Outcome.MEETS, "shorter than needed with all tolerances, and every end is flush"
    return Outcome.FAILS, "ends below the face of the nut: change these bolts"


def _length_line(
    delivery: BoltDelivery, needed: float | str, outcome: Outcome, note: str, source: str
) -> Comparison:
    return Comparison(
        part=_PART,
        item="length",
        specified=needed,
        measured=delivery.length,
        unit="mm",
        rule="at least grip, washers, nut and tolerances; nut clear of the shank",
        source=source,
        outcome=outcome,
        note=note,
    )


def _certificates(delivery: BoltDelivery, assembly: Assembly) -> Iterator[Comparison]:
    product, rules = assembly.product, assembly.rules
    yield _tensile_strength(delivery, assembly)
    if delivery.marks is not None:
        yield _word(
            "marks on heads and nuts",
            "as in the schedule",
            delivery.marks,
            good="as specified",
            source=product.source if rules is None else rules.source_of("marks"),
            remedy="keep the lot out until it is known",
        )
    if delivery.rotational_capacity is not None:
        yield _word(
            "rotational-capacity test",
            "passed",
            delivery.rotational_capacity,
            good="passed",
            source=_RC_TEST,
            remedy="lubricate and test again, or refuse the lot",
        )


def _tensile_strength(delivery: BoltDelivery, assembly: Assembly) -> Comparison:
    product, rules = assembly.product, assembly.rules
    strongest = None if rules is None else rules.max_tensile_strength
    line = Comparison(
        part=_PART,
        item="tensile strength on certificates",
        specified=product.tensile_strength,
        measured="not recorded",
        unit="MPa",
        rule="at least specified" + ("" if strongest is None else ", and not too hard"),
        source=product.source if rules is None else rules.source,
        outcome=Outcome.UNKNOWN,
        note="every lot needs its certificate",
    )
    found = delivery.tensile_strength
    if found is None:
        return line
    if min(found) < product.tensile_strength * (1.0 - 1e-6):
        note = "the lot is not what was ordered"
        return replace(line, measured=min(found), outcome=Outcome.FAILS, note=note)
    if strongest is not None and max(found) > strongest * (1.0 + 1e-6):
        note = "too hard: bolts of this strength may crack from hydrogen"
        return replace(
            line, specified=strongest, measured=max(found), outcome=Outcome.FAILS, note=note
        )
    return replace(line, measured=min(found), outcome=Outcome.MEETS, note="")


def _word(
    item: str, specified: str, measured: str, *, good: str, source: str, remedy: str
) -> Comparison:
    """A line that holds one word, of which one is good."""
    meets = measured == good
    return Comparison(
        part=_PART,
        item=item,
        specified=specified,
        measured=measured,
        unit="",
        rule=good,
        source=source,
        outcome=Outcome.MEETS if meets else Outcome.FAILS,
        note="" if meets else remedy,
    )
