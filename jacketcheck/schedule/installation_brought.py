"""Tightening by the standard that a plug-in brings with its bolts: the figures of each method."""

from __future__ import annotations

from dataclasses import replace

from jacketcheck.catalog.installation_rules import InstallationRules
from jacketcheck.errors import DomainError
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.schedule.assembly import Assembly
from jacketcheck.schedule.length import bolt_length
from jacketcheck.schedule.records import ScheduleLine, Verdict

__all__ = ["brought_lines"]


def brought_lines(
    jacket: Jacket, assembly: Assembly, rules: InstallationRules
) -> tuple[ScheduleLine, ...]:
    """Minimum tension, and the figures of the method or why it is not allowed."""
    bolts, method = jacket.bolts, jacket.bolts.tightening
    tension = ScheduleLine(
        "bolt tension at least", float(bolts.pretension), "N", bolts.pretension_source
    )
    if method in rules.ruled_out:
        refused = ScheduleLine(
            "allowed", "no", "", rules.name, note=rules.ruled_out[method], verdict=Verdict.PROBLEM
        )
        return (tension, refused)
    figures = [
        ScheduleLine(one.item, one.value, one.unit, one.source, note=one.note)
        for one in rules.figures
        if one.method == method
    ]
    if method == "turn-of-nut" and rules.turns:
        figures = [*_turn_lines(assembly, rules), *figures]
    return (tension, *(figures or [_not_known(method, rules)]))


def _turn_lines(assembly: Assembly, rules: InstallationRules) -> list[ScheduleLine]:
    item, source = "turn of the nut beyond snug-tight", rules.source_of("turns")
    by_test = ScheduleLine(item, "find it by test", "", source, verdict=Verdict.NOT_EVALUATED)
    try:
        slenderness = bolt_length(assembly).ordered / assembly.size.diameter
    except DomainError:
        return [replace(by_test, note="no such bolt is stocked, see length")]
    ratio = ScheduleLine("bolt length over diameter", slenderness, "1", "geometry")
    band = rules.turn(slenderness)
    if band is None:
        longest = rules.turns[-1].longest
        return [ratio, replace(by_test, note=f"longer than {longest:g} d, where the table ends")]
    steps = ", ".join(f"{one.rotation:g}° up to {one.longest:g} d" for one in rules.turns)
    note = "of the nut against the bolt; hold the head"
    return [
        ratio,
        ScheduleLine(item, band.rotation, "deg", source, steps, note),
        ScheduleLine("turn may fall short by", band.under, "deg", source),
        ScheduleLine("turn may exceed by", band.over, "deg", source),
    ]


def _not_known(method: str, rules: InstallationRules) -> ScheduleLine:
    return ScheduleLine(
        "figures of the method",
        "not known",
        "",
        rules.source,
        note=f"{rules.name} gives no figures for {method.replace('-', ' ')} that are known here",
        verdict=Verdict.NOT_EVALUATED,
    )
