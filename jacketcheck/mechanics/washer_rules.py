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
holes [mm]: 5/16 in (RCSC 2014 Table 6.1; AISC 360-05 J3.1)."""

LOW_YIELD_STRENGTH: Final = 40.0 * KSI
"""Softer steel needs washers under both ends of Group 150 bolts [MPa] (RCSC 2014 6.2.1)."""

GROUP_150_TENSILE_STRENGTH: Final = 1000.0
"""Bolts from this tensile strength on count as Group 150 [MPa]: property class 10.9 of ISO 898-1,
which A490M bolts have."""

LARGE_DIAMETER: Final = 1.0 * INCH
"""Diameter above which Group 150 bolts need thick washers over enlarged holes [mm] (RCSC 2014
Table 6.1)."""

_HARDENED: Final = "hardened washer ASTM F436"
_PLATE: Final = "plate washer or continuous bar of structural steel that covers the slot"
_SOURCE: Final = (
    "RCSC, Specification for Structural Joints Using High-Strength Bolts (2014), Section 6, "
    "from memory"
)


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
    """

    place: WasherPlace
    kind: str
    reason: str
    min_thickness: float | None = None
    source: str = _SOURCE
    part: WasherPart = "washer"


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
    if shape == "long slot":
        plate = WasherRule(place, _PLATE, reason, THICK_WASHER, part="plate washer")
        hardened = WasherRule(place, _HARDENED, f"{reason}, over the plate washer")
        return (plate, hardened) if large else (plate,)
    return (WasherRule(place, _HARDENED, reason, THICK_WASHER if large else None),)


def required_washers(
    *,
    bolt_diameter: float,
    bolt_tensile_strength: float,
    tightening: Tightening,
    head_side_hole: HoleType,
    nut_side_hole: HoleType,
    plate_yield_strength: float,
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

    Returns
    -------
    tuple
        Rules that apply, empty where none does. Two rules for one place are met by one washer
        that satisfies both, save for a hardened washer on top of a plate washer.

    Raises
    ------
    DomainError
        If a figure is not finite and above zero, or a word is unknown.

    Notes
    -----
    Group 150 bolts in steel of less than 40 ksi yield, when pretensioned: hardened washers under
    head and nut. Calibrated wrench, direct tension indicators: under the turned element.
    Twist-off: under the nut. Oversized holes and short slots in an outer ply: a hardened washer,
    at least 5/16 in thick for Group 150 bolts over 1 in. Long slots: a plate washer or continuous
    bar of at least 5/16 in. A stack of thin washers does not make up a thick one. Outer faces that
    slope by more than 1 in 20 need bevelled washers besides; a sleeve's curvature lies symmetric to
    the bolt and is no slope in that sense.

    References
    ----------
    RCSC, Specification for Structural Joints Using High-Strength Bolts (2014), Section 6 and Table
    6.1, from memory; AISC 360-05, Specification for Structural Steel Buildings (2005), J3.1 user
    note for the thick washers; AISC 360-22 (2022), J3.3, refers to RCSC.

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
    if is_group_150 and tightening != "snug" and plate_yield_strength < LOW_YIELD_STRENGTH:
        reason = "Group 150 bolt in steel of less than 40 ksi yield strength"
        rules += (WasherRule("head", _HARDENED, reason), WasherRule("nut", _HARDENED, reason))
    rules += _hole_rules("head", head_side_hole, large=large)
    return rules + _hole_rules("nut", nut_side_hole, large=large)
