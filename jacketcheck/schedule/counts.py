"""How many bolts, nuts and washers to order: installed, for tests, and for loss."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Final

from jacketcheck.catalog.assembly_rules import EN_1090, RCSC
from jacketcheck.catalog.installation_rules import LotTest
from jacketcheck.errors import DomainError
from jacketcheck.jacket.bolt_washers import Washer
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.schedule.assembly import Assembly
from jacketcheck.schedule.length import bolt_length, native_length
from jacketcheck.schedule.records import OrderLine, ScheduleLine, ScheduleSection

__all__ = [
    "Allowances",
    "BoltCounts",
    "bolt_counts",
    "counts_section",
    "designation",
    "order_lines",
]

_CUSTOM: Final = "common practice, no published source"
_VERIFICATION: Final = 3
_RCSC_TESTS: Final = (
    LotTest(
        "for pre-installation verification",
        _VERIFICATION,
        "RCSC 2020 Section 7 (from memory): three assemblies of each lot",
    ),
    LotTest(
        "for the rotational-capacity test",
        2,
        "AASHTO LRFD Bridge Construction Specifications, 4th ed. (2017), 11.5.6.4.2 (from "
        "memory): two assemblies of each lot",
    ),
)
_EN_TESTS: Final = (
    LotTest(
        "for the suitability test",
        5,
        "EN 1090-2:2018 8.5 and 12.5.2 (from memory): suitability test of the lot",
    ),
)
_DAILY_SOURCE: Final = "RCSC 2020 Section 8.2.2 (from memory): three on each working day"
_LEAST_LOSS: Final = 2


@dataclass(frozen=True, slots=True)
class Allowances:
    """What is ordered on top of what is installed.

    Attributes
    ----------
    loss_percent
        Bolts lost or spoilt, in percent of the installed ones.
    tightening_days
        Working days on which a calibrated wrench is set anew.
    """

    loss_percent: float = 5.0
    tightening_days: int = 2

    def __post_init__(self) -> None:
        """Refuse figures that nobody would order by."""
        if not 0.0 <= self.loss_percent <= 100.0:
            raise DomainError("loss_percent", self.loss_percent, "from 0 to 100")
        if not 1 <= self.tightening_days <= 60:
            raise DomainError("tightening_days", self.tightening_days, "from 1 to 60")


@dataclass(frozen=True, slots=True)
class BoltCounts:
    """Bolts by place and by purpose."""

    per_group: int
    per_seam: int
    installed: int
    tests: int
    daily: int
    loss: int

    @property
    def spares(self) -> int:
        """Everything on top of what is installed."""
        return self.tests + self.daily + self.loss


def bolt_counts(jacket: Jacket, assembly: Assembly, allowances: Allowances) -> BoltCounts:
    """Count the bolts of a jacket and its spares."""
    per_group = int(jacket.bolts.rows) * int(jacket.bolts.columns)
    installed = 4 * per_group
    tested = jacket.bolts.pretensioned
    by_rcsc = assembly.rules is None or assembly.rules.standard == RCSC
    daily = jacket.bolts.tightening == "calibrated-wrench" and by_rcsc
    return BoltCounts(
        per_group=per_group,
        per_seam=2 * per_group,
        installed=installed,
        tests=sum(test.pieces for test in _tests(assembly)) if tested else 0,
        daily=_VERIFICATION * allowances.tightening_days if daily else 0,
        loss=max(_LEAST_LOSS, math.ceil(installed * allowances.loss_percent / 100.0 - 1e-9)),
    )


def _tests(assembly: Assembly) -> tuple[LotTest, ...]:
    """What the tests of pretensioned bolts use up."""
    rules = assembly.rules
    if rules is not None and rules.installation is not None:
        return rules.installation.tests
    return _EN_TESTS if rules is not None and rules.standard == EN_1090 else _RCSC_TESTS


def counts_section(
    counts: BoltCounts, assembly: Assembly, allowances: Allowances
) -> ScheduleSection:
    """Lines on the number of bolts."""

    def line(item: str, value: int, source: str, basis: str = "") -> ScheduleLine:
        return ScheduleLine(item, float(value), "1", source, basis)

    lines = [
        line("bolts in a group", counts.per_group, "repair file", "rows × columns"),
        line("bolts in a seam", counts.per_seam, "repair file", "two groups"),
        line("bolts in the jacket", counts.installed, "repair file", "two seams"),
    ]
    if assembly.tightening != "snug":
        lines += [line(test.purpose, test.pieces, test.source) for test in _tests(assembly)]
    if counts.daily:
        days = f"{_VERIFICATION} on each of {allowances.tightening_days} days"
        lines.append(line("for setting the wrench", counts.daily, _DAILY_SOURCE, days))
    loss = f"{allowances.loss_percent:g} % of the installed, at least {_LEAST_LOSS}"
    lines.append(line("for loss", counts.loss, _CUSTOM, loss))
    lines.append(line("bolts to order", counts.installed + counts.spares, "sum"))
    return ScheduleSection("Number", tuple(lines))


def designation(assembly: Assembly) -> str:
    """Product, type, size and length as on an order: ``ASTM F3125 A325, 1 in × 2-3/4 in``."""
    try:
        length = native_length(assembly, bolt_length(assembly).ordered)
    except DomainError:
        length = "length not stocked"
    name = " ".join(filter(None, (assembly.product.name, assembly.bolt_type)))
    return f"{name}, {assembly.size.name} × {length}"


def order_lines(assembly: Assembly, counts: BoltCounts) -> tuple[OrderLine, ...]:
    """Every part to order, with the bolts' spares."""
    rules = assembly.rules
    bolt = "twist-off bolt" if assembly.product.assembly == "twist-off" else "bolt"
    nut = "nut (none is named in the catalogue)" if rules is None else rules.nut
    lines = [
        _line(counts, bolt, designation(assembly), 1, assembly.product.source),
        _line(
            counts,
            "nut",
            f"{nut}, {assembly.size.name}",
            1,
            assembly.product.source if rules is None else rules.source,
        ),
    ]
    kinds: dict[tuple[str, str, float], list[Washer]] = {}
    for washer in assembly.washers or ():
        kinds.setdefault((washer.part, washer.description, washer.thickness), []).append(washer)
    for (part, description, thickness), same in kinds.items():
        standard = abs(thickness - assembly.size.washer_thickness) < 1e-6
        thick = "" if standard else f", at least {native_length(assembly, thickness)} thick"
        places = " and ".join(dict.fromkeys(f"under the {one.place}" for one in same))
        text = f"{description}, {assembly.size.name}{thick} ({places})"
        source = "; ".join(dict.fromkeys(one.source for one in same))
        lines.append(_line(counts, part, text, len(same), source))
    return tuple(lines)


def _line(counts: BoltCounts, part: str, description: str, per_bolt: int, source: str) -> OrderLine:
    return OrderLine(
        part=part,
        description=description,
        per_seam=per_bolt * counts.per_seam,
        installed=per_bolt * counts.installed,
        spares=per_bolt * counts.spares,
        source=source,
    )
