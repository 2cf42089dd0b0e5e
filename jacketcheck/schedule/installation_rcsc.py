"""Pretensioning by RCSC: the figures of each method."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from contextlib import suppress
from types import MappingProxyType
from typing import Final

from jacketcheck.errors import DomainError
from jacketcheck.jacket.bolt_fit import ROUNDING
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics._customary_units import INCH
from jacketcheck.mechanics.bolt_installation import (
    OVER_ROTATION,
    UNDER_ROTATION,
    bridge_turn_tolerance,
    tightening_torque,
    turn_of_nut_rotation,
    verification_tension,
)
from jacketcheck.mechanics.indicator_gaps import open_gaps_at_verification
from jacketcheck.schedule.assembly import Assembly
from jacketcheck.schedule.length import bolt_length
from jacketcheck.schedule.records import ScheduleLine, Verdict

__all__ = ["BRIDGE_TOLERANCE", "TURNS", "rcsc_lines"]

_METHODS: Final = "RCSC 2020 Section 8.2 (from memory)"
TURNS: Final = "RCSC 2020 Table 8.1 (8.2 in the 2014 edition; from memory)"
"""Where the turn of the nut and its tolerance stand."""
BRIDGE_TOLERANCE: Final = (
    "AASHTO LRFD Bridge Construction Specifications, 4th ed. (2017), 11.5.6.4 (from memory)"
)
"""Where the tolerance on bridges stands."""
_VERIFICATION: Final = "RCSC 2020 Section 7 (from memory)"
_OPENINGS: Final = "RCSC 2020 Section 7.2 (from memory)"
_TORQUE: Final = "T = K d P: Budynas and Nisbett, Shigley, 10th ed. (2015), Eq. 8-27"
_FILE: Final = "repair file bolts.torque_coefficient"
_CALIBRATION: Final = "RCSC 2020 Section 8.2.2 (from memory; as in the 2014 edition)"
_FHWA: Final = "FHWA, Use of Direct Tension Indicators in Bridge Structural Steel (2003)"

_SHORT_BOLTS: Final = (
    "South Dakota DOT test procedure SD 503, table of short bolts (1/2 to 1-1/4 in); beyond by the "
    "same rule"
)

FEELER: Final = 0.127
"""Feeler gauge for direct tension indicators on bridges [mm]: 0.005 in."""


def rcsc_lines(jacket: Jacket, assembly: Assembly) -> tuple[ScheduleLine, ...]:
    """Pretension, and the figures of the method."""
    bolts = jacket.bolts
    least = float(bolts.pretension)
    lines: tuple[ScheduleLine, ...] = (
        ScheduleLine("pretension at least", least, "N", bolts.pretension_source),
        ScheduleLine(
            "tension to reach in verification",
            float(verification_tension(least)),
            "N",
            _VERIFICATION,
            "1.05 × pretension",
            "the specification's table prints it rounded to whole kips or kilonewtons",
        ),
    )
    with suppress(DomainError):  # a bolt that is not stocked is an open point already
        lines += (_calibrator_line(assembly, bolt_length(assembly).ordered),)
    return lines + _LINES[bolts.tightening](jacket, assembly)


def _calibrator_line(assembly: Assembly, length: float) -> ScheduleLine:
    """Whether the bolt is long enough for a usual tension calibrator."""
    shortest = 2.0 * assembly.size.diameter + INCH
    fits = length >= shortest - ROUNDING
    return ScheduleLine(
        "shortest bolt for a usual tension calibrator",
        shortest,
        "mm",
        _SHORT_BOLTS,
        "2 d + 1 in",
        ""
        if fits
        else "the bolts to install are shorter: try them in a drilled plate with a direct tension "
        "indicator, or try longer ones of the same lot and diameter",
    )


def _turn_lines(jacket: Jacket, assembly: Assembly) -> tuple[ScheduleLine, ...]:
    item, diameter = "turn of the nut beyond snug-tight", float(jacket.bolts.diameter)
    by_test = "find it by test in a tension calibrator"
    try:
        length = bolt_length(assembly).ordered
    except DomainError:
        note = "no such bolt is stocked, see length"
        return (ScheduleLine(item, by_test, "", TURNS, note=note, verdict=Verdict.NOT_EVALUATED),)
    slenderness = ScheduleLine("bolt length over diameter", length / diameter, "1", "geometry")
    try:
        rotation = float(turn_of_nut_rotation(length, diameter=diameter))
    except DomainError:
        note = "longer than twelve diameters, where the table ends"
        return (
            slenderness,
            ScheduleLine(item, by_test, "", TURNS, note=note, verdict=Verdict.NOT_EVALUATED),
        )
    return (
        slenderness,
        ScheduleLine(
            item,
            rotation,
            "deg",
            TURNS,
            "1/3 turn up to 4 d, 1/2 up to 8 d, 2/3 up to 12 d; faces normal to the bolt",
            "of the nut against the bolt, whichever is turned; hold the other",
        ),
        ScheduleLine("turn may fall short by", UNDER_ROTATION, "deg", f"{TURNS}, footnote"),
        ScheduleLine("turn may exceed by", OVER_ROTATION, "deg", f"{TURNS}, footnote"),
        ScheduleLine(
            "on bridges, turn may be off either way by",
            float(bridge_turn_tolerance(rotation)),
            "deg",
            BRIDGE_TOLERANCE,
            "30° up to 1/2 turn, 45° from 2/3 turn on",
            "where both apply, the smaller of the two counts on each side",
        ),
    )


def _wrench_lines(jacket: Jacket, assembly: Assembly) -> tuple[ScheduleLine, ...]:
    bolts, rules = jacket.bolts, assembly.rules
    diameter = float(bolts.diameter)
    tension = float(verification_tension(float(bolts.pretension)))

    def torque(item: str, coefficient: float, source: str, note: str) -> ScheduleLine:
        value = tightening_torque(diameter, tension=tension, torque_coefficient=coefficient)
        basis = f"K d P, K = {coefficient:g}, P = 1.05 × pretension"
        return ScheduleLine(item, float(value), "N mm", f"{_TORQUE}; {source}", basis, note)

    lines = []
    if bolts.torque_coefficient is None:
        note = "the repair file has no K; the range below only helps to choose the wrench"
        lines.append(
            ScheduleLine("torque", "from the day's calibration", "", _CALIBRATION, note=note)
        )
    else:
        note = "a first trial only: the day's calibration governs"
        lines.append(torque("torque by calibrated K", float(bolts.torque_coefficient), _FILE, note))
    if rules is not None and rules.torque_coefficients is not None:
        low, high = rules.torque_coefficients
        lines += [
            torque("lowest torque to expect", low, rules.source_of("torque_coefficient_low"),
                   "well lubricated"),
            torque("highest torque to expect", high, rules.source_of("torque_coefficient_high"),
                   "the wrench must reach it; a lot that needs more is lubricated and tested "
                   "again, or refused"),
        ]  # fmt: skip
    return tuple(lines)


def _indicator_lines(_: Jacket, __: Assembly) -> tuple[ScheduleLine, ...]:
    return (
        ScheduleLine("feeler gauge", FEELER, "mm", _FHWA, "0.005 in on bridges"),
        ScheduleLine(
            "in verification, at 1.05 × pretension",
            f"the gauge still enters more than half of the gaps: {_still_open()}",
            "",
            f"{_OPENINGS}; {_FHWA}",
            note="refused in more of them, the indicator closes too early: refuse the lot",
        ),
        ScheduleLine(
            "installed",
            "the gauge is refused in at least half of the gaps between the bumps (of an odd number "
            "the larger half)",
            "",
            _METHODS,
        ),
        ScheduleLine(
            "snug-tight",
            "not yet: the gauge still enters more than half of the gaps",
            "",
            _METHODS,
        ),
    )


def _still_open() -> str:
    """Least number of open gaps for the indicators that are made."""
    return ", ".join(f"{int(open_gaps_at_verification(gaps))} of {gaps}" for gaps in range(4, 10))


def _twist_off_lines(_: Jacket, __: Assembly) -> tuple[ScheduleLine, ...]:
    return (
        ScheduleLine("installed", "the splined end is sheared off by the wrench", "", _METHODS,
                     note="one that sheared off while snugging tells nothing: replace the bolt"),
        ScheduleLine("lubrication", "as delivered; never cleaned or oiled on site", "", _METHODS),
    )  # fmt: skip


Lines = Callable[[Jacket, Assembly], tuple[ScheduleLine, ...]]
_LINES: Final[Mapping[str, Lines]] = MappingProxyType(
    {
        "turn-of-nut": _turn_lines,
        "calibrated-wrench": _wrench_lines,
        "direct-tension-indicator": _indicator_lines,
        "twist-off": _twist_off_lines,
    }
)
