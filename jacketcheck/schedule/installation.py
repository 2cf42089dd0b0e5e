"""Which figures of installation apply: by the standard of the bolts, or snug-tight only."""

from __future__ import annotations

from jacketcheck.catalog.assembly_rules import EN_1090
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.schedule.assembly import Assembly
from jacketcheck.schedule.installation_brought import brought_lines
from jacketcheck.schedule.installation_en import en_lines
from jacketcheck.schedule.installation_rcsc import rcsc_lines
from jacketcheck.schedule.records import ScheduleLine, ScheduleSection, Verdict

__all__ = ["installation_section"]


def installation_section(jacket: Jacket, assembly: Assembly) -> ScheduleSection:
    """Method, pretension and the figures that the crew needs."""
    bolts, rules = jacket.bolts, assembly.rules
    method = ScheduleLine(
        "method", bolts.tightening.replace("-", " "), "", "repair file bolts.tightening"
    )
    if not bolts.pretensioned:
        lines = _snug_only(jacket)
    elif rules is None:
        lines = (
            ScheduleLine("figures of the method", "not known", "", assembly.product.source,
                         note="the catalogue has no installation rules for this product",
                         verdict=Verdict.NOT_EVALUATED),
        )  # fmt: skip
    elif rules.installation is not None:
        lines = brought_lines(jacket, assembly, rules.installation)
    elif rules.standard == EN_1090:
        lines = en_lines(jacket, assembly)
    else:
        lines = rcsc_lines(jacket, assembly)
    return ScheduleSection("Installation", (method, *lines))


def _snug_only(jacket: Jacket) -> tuple[ScheduleLine, ...]:
    return (
        ScheduleLine(
            "pretension",
            "none",
            "",
            "repair file bolts.tightening",
            note="snug-tight bolts have no design slip resistance: the seam opens by the play of "
            "the holes before it carries",
            verdict=Verdict.PROBLEM,
        ),
        ScheduleLine(
            "pretension that the bolt could have",
            float(jacket.bolts.specified_pretension),
            "N",
            jacket.bolts.pretension_source,
        ),
    )
