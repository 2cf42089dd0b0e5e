"""Which washers structural bolts need, and why."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final, Literal, TypeAlias

from jacketcheck.mechanics._arguments import HoleType, Tightening, choose
from jacketcheck.mechanics._arrays import require_positive
from jacketcheck.mechanics._customary_units import INCH, KSI

__all__ = ["WasherPart", "WasherPlace", "WasherRule", "required_washers"]

WasherPlace: TypeAlias = Literal["head", "nut", "turned element"]
"""Under the head, under the nut, or under whichever of them is turned."""

WasherPart: TypeAlias = Literal["washer", "plate washer"]
"""A round washer, or a plate that covers the hole and may have a washer on top."""

THICK_WASHER: Final = 5.0 / 16.0 * INCH
"""Least thickness of plate washers, and of washers for large high-strength bolts over enlarged
holes [mm]: 5/16 in (RCSC 2020 Table 6.1, from memory; AISC 360-05 J3.1)."""

LOW_YIELD_STRENGTH: Final = 40.0 * KSI
"""Softer steel needs washers under both ends of Group 150 bolts [MPa] (RCSC 2020 Section 6, from
memory)."""

BRIDGE_LOW_YIELD_STRENGTH: Final = 50.0 * KSI
"""The same on bridges [MPa] (AASHTO LRFD 9th ed. (2020) 6.13.2.3.2, from memory)."""

GROUP_150_TENSILE_STRENGTH: Final = 1000.0
"""Bolts from this tensile strength on count as Group 150 [MPa]: property class 10.9 of ISO 898-1,
which A490M bolts have."""

LARGE_DIAMETER: Final = 1.0 * INCH
"""Diameter above which Group 150 bolts need thick washers over enlarged holes [mm] (RCSC 2020
Table 6.1, from memory)."""

_HARDENED: Final = "hardened washer ASTM F436"
_PLATE: Final = "plate washer or continuous bar of structural steel that covers the slot"
_SOURCE: Final = (
    "RCSC, Specification for Structural Joints Using High-Strength Bolts (2020), Section 6 (from "
    "memory; rules as in the 2014 edition)"
)
_BRIDGE_SOURCE: Final = "AASHTO LRFD 9th ed. (2020) 6.13.2.3.2 (from memory)"


@dataclass(frozen=True, slots=True)
class WasherRule:
    """One washer that a bolt needs.

    Attributes
    ----------
    place
        ``head``, ``nut``, or ``turned element`` for whichever of them is turned.
    kind
        What has to be put there.
    reason
        Why.
    min_thickness
        Least thickness of one piece [mm]; None where the standard washer will do.
    source
        Where the rule stands.
    part
        Washer or plate washer.
    on_ply
        Whether it has to cover the hole: an indicator then lies between it and the washer that
        the nut turns on, and one washer cannot be both.
    """

    place: WasherPlace
    kind: str
    reason: str
    min_thickness: float | None = None
    source: str = _SOURCE
    part: WasherPart = "washer"
    on_ply: bool = False


_METHOD_RULES: Final[Mapping[str, tuple[WasherRule, ...]]] = MappingProxyType(
    {
        "snug": (),
        "turn-of-nut": (),
        "calibrated-wrench": (
            WasherRule("turned element", _HARDENED, "torque needs an even friction surface"),
        ),
        "direct-tension-indicator": (
            WasherRule(
                "turned element", _HARDENED, "the turned element must not grind the indicator"
            ),
        ),
        "twist-off": (
            WasherRule("nut", _HARDENED, "the spline's torque needs an even friction surface"),
        ),
    }
)

_SHAPES: Final[Mapping[str, str]] = MappingProxyType(
    {
        "standard": "",
        "oversized": "oversized hole",
        "short-slot-perpendicular": "short slot",
        "short-slot-parallel": "short slot",
        "long-slot-perpendicular": "long slot",
        "long-slot-parallel": "long slot",
    }
)


def _hole_rules(place: WasherPlace, hole: HoleType, *, large: bool) -> tuple[WasherRule, ...]:
    """Rules for the outer ply under the head or the nut."""
    shape = choose(_SHAPES, hole, name=f"{place}_side_hole")
    if not shape:
        return ()
    reason = f"{shape} in the outer ply"
    thickness = THICK_WASHER if large else None
    if shape != "long slot":
        return (WasherRule(place, _HARDENED, reason, thickness, on_ply=True),)
    plate = WasherRule(place, _PLATE, reason, THICK_WASHER, part="plate washer", on_ply=True)
    source = _SOURCE if large else _BRIDGE_SOURCE
    over = f"{reason}, over the plate washer"
    return (plate, WasherRule(place, _HARDENED, over, source=source, on_ply=True))


def _soft_steel_rules(plate_yield: float, *, round_head: bool) -> tuple[WasherRule, ...]:
    """Rules for Group 150 bolts; a strength that went through a conversion is not yet lower."""
    for limit, source in (
        (LOW_YIELD_STRENGTH, _SOURCE),
        (BRIDGE_LOW_YIELD_STRENGTH, _BRIDGE_SOURCE),
    ):
        if plate_yield < limit * (1.0 - 1e-9):
            text = f"{limit / KSI:.0f} ksi"
            reason = f"Group 150 bolt in steel of less than {text} yield strength"
            nut = WasherRule("nut", _HARDENED, reason, source=source)
            head = WasherRule("head", _HARDENED, reason, source=source)
            return (nut,) if round_head else (head, nut)
    return ()


def required_washers(
    *,
    bolt_diameter: float,
    bolt_tensile_strength: float,
    tightening: Tightening,
    head_side_hole: HoleType,
    nut_side_hole: HoleType,
    plate_yield_strength: float,
    round_head: bool = False,
) -> tuple[WasherRule, ...]:
    """Washers that a structural bolt needs, each with its reason.

    Parameters
    ----------
    bolt_diameter
        Nominal bolt diameter [mm], above zero.
    bolt_tensile_strength
        Specified tensile strength of the bolt [MPa], above zero.
    tightening
        How the bolts are installed.
    head_side_hole, nut_side_hole
        Hole types of the outer plies under the head and the nut.
    plate_yield_strength
        Lowest specified yield strength of the outer plies [MPa], above zero.
    round_head
        Whether the bolt has the round head of a twist-off assembly, as wide as a washer.

    Returns
    -------
    tuple
        Rules that apply, empty where none does. Two rules for one place are met by one washer
        that satisfies both, save for a hardened washer on top of a plate washer, and for an
        indicator in between: see `WasherRule.on_ply`.

    Raises
    ------
    DomainError
        If a figure is not finite and above zero, or a word is unknown.

    Notes
    -----
    Group 150 bolts in steel of less than 40 ksi yield (on bridges 50 ksi), when pretensioned:
    hardened washers under head and nut, save under a round head, which bears like a washer.
    Calibrated wrench, direct tension indicators: under the turned element. Twist-off: under the
    nut. Oversized holes and short slots in an outer ply: a hardened washer, at least 5/16 in thick
    for Group 150 bolts over 1 in. Long slots: a plate washer or continuous bar of at least 5/16 in,
    on bridges with a hardened washer on it whatever the grade. An indicator never lies on an
    enlarged hole itself. A stack of thin washers does not make up a thick one. Outer faces that
    slope by more than 1 in 20 need bevelled washers besides; a sleeve's curvature lies symmetric to
    the bolt and is no slope in that sense.

    References
    ----------
    RCSC, Specification for Structural Joints Using High-Strength Bolts (2020), Section 6 and Table
    6.1, from memory; AISC 360-05, Specification for Structural Steel Buildings (2005), J3.1 user
    note for the thick washers; AISC 360-22 (2022), J3.3, refers to RCSC; AASHTO LRFD Bridge Design
    Specifications, 9th ed. (2020), 6.13.2.3.2, from memory, for bridges.

    Examples
    --------
    >>> rules = required_washers(
    ...     bolt_diameter=22.0, bolt_tensile_strength=830.0, tightening="calibrated-wrench",
    ...     head_side_hole="standard", nut_side_hole="standard", plate_yield_strength=345.0)
    >>> [rule.place for rule in rules]
    ['turned element']
    """
    require_positive(
        bolt_diameter=bolt_diameter,
        bolt_tensile_strength=bolt_tensile_strength,
        plate_yield_strength=plate_yield_strength,
    )
    is_group_150 = bolt_tensile_strength >= GROUP_150_TENSILE_STRENGTH
    large = is_group_150 and bolt_diameter > LARGE_DIAMETER
    rules = choose(_METHOD_RULES, tightening, name="tightening")
    if is_group_150 and tightening != "snug":
        rules += _soft_steel_rules(plate_yield_strength, round_head=round_head)
    rules += _hole_rules("head", head_side_hole, large=large)
    return rules + _hole_rules("nut", nut_side_hole, large=large)
