"""Which washers preloaded EN 14399 assemblies need, and why."""

from __future__ import annotations

from typing import Final

from jacketcheck.mechanics._arguments import HoleType, Tightening, choose
from jacketcheck.mechanics._arrays import require_positive
from jacketcheck.mechanics.washer_rules import GROUP_150_TENSILE_STRENGTH, WasherPlace, WasherRule

__all__ = ["en_required_washers"]

_SOURCE: Final = "EN 1090-2:2018 8.2.4 and 8.5, from memory"
_HARDENED: Final = "washer EN 14399-6"
_PLATE: Final = "plate washer of at least 4 mm"
_PLATE_THICKNESS: Final = 4.0
_ENLARGED: Final = {
    "standard": "",
    "oversized": "oversized hole",
    "short-slot-perpendicular": "short slot",
    "short-slot-parallel": "short slot",
    "long-slot-perpendicular": "long slot",
    "long-slot-parallel": "long slot",
}


def en_required_washers(
    *,
    bolt_tensile_strength: float,
    tightening: Tightening,
    head_side_hole: HoleType,
    nut_side_hole: HoleType,
) -> tuple[WasherRule, ...]:
    """Washers that an EN 14399 assembly needs, each with its reason.

    Parameters
    ----------
    bolt_tensile_strength
        Nominal tensile strength of the bolt [MPa], above zero.
    tightening
        How the bolts are installed.
    head_side_hole, nut_side_hole
        Hole types of the outer plies under the head and the nut.

    Returns
    -------
    tuple
        Rules that apply, empty where none does.

    Raises
    ------
    DomainError
        If the strength is not finite and above zero, or a word is unknown.

    Notes
    -----
    Preloaded class 8.8: under whichever of head and nut is turned; class 10.9: under both. Slots
    and oversized holes in an outer ply: a plate washer besides.

    References
    ----------
    EN 1090-2:2018, Execution of steel structures and aluminium structures, Part 2, 8.2.4, from
    memory.

    Examples
    --------
    >>> rules = en_required_washers(
    ...     bolt_tensile_strength=1000.0, tightening="calibrated-wrench",
    ...     head_side_hole="standard", nut_side_hole="standard")
    >>> [rule.place for rule in rules]
    ['head', 'nut']
    """
    require_positive(bolt_tensile_strength=bolt_tensile_strength)
    rules: tuple[WasherRule, ...] = ()
    if tightening != "snug":
        if bolt_tensile_strength >= GROUP_150_TENSILE_STRENGTH:
            reason = "preloaded class 10.9"
            rules += (
                WasherRule("head", _HARDENED, reason, source=_SOURCE),
                WasherRule("nut", _HARDENED, reason, source=_SOURCE),
            )
        else:
            reason = "preloaded class 8.8: under what is turned"
            rules += (WasherRule("turned element", _HARDENED, reason, source=_SOURCE),)
    sides: tuple[tuple[WasherPlace, HoleType], ...] = (
        ("head", head_side_hole),
        ("nut", nut_side_hole),
    )
    for place, hole in sides:
        shape = choose(_ENLARGED, hole, name=f"{place}_side_hole")
        if shape:
            reason = f"{shape} in the outer ply"
            rules += (
                WasherRule(
                    place,
                    _PLATE,
                    reason,
                    _PLATE_THICKNESS,
                    _SOURCE,
                    part="plate washer",
                    on_ply=True,
                ),
            )
    return rules
