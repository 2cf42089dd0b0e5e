"""Which washers (and indicators) go under head and nut of the seam bolts, and why.

The head lies inside, in the annulus; the nut lies outside, where it can be turned and inspected.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Final

import numpy as np

from jacketcheck.catalog.assembly_rules import EN_1090, AssemblyRules
from jacketcheck.catalog.records import BoltProduct, BoltSize
from jacketcheck.jacket.jacket_parts import Sleeve, Splice
from jacketcheck.mechanics._arguments import HoleType, Tightening
from jacketcheck.mechanics.en_washer_rules import en_required_washers
from jacketcheck.mechanics.washer_rules import WasherRule, required_washers

__all__ = ["Washer", "bolt_washers", "outer_holes", "washer_thickness"]

_CUSTOM: Final = "common practice, no published source"
_INDICATOR_SOURCE: Final = (
    "RCSC 2020 Commentary to Section 2 (from memory): counted like a washer; the maker's thickness "
    "governs"
)


@dataclass(frozen=True, slots=True)
class Washer:
    """One washer (or indicator) of an assembly.

    Attributes
    ----------
    place
        ``head`` or ``nut``.
    part
        ``washer``, ``plate washer`` or ``indicator``.
    description
        What to order.
    thickness
        Thickness counted for the bolt's length [mm].
    reason, source
        Why it is there, and the rule that asks for it.
    required
        Whether a code asks for it.
    """

    place: str
    part: str
    description: str
    thickness: float
    reason: str
    source: str
    required: bool = True


def outer_holes(sleeve: Sleeve, splice: Splice) -> tuple[HoleType, HoleType]:
    """Hole types under head and nut: the sleeve's under the head where no plate lies inside."""
    both = np.all(np.greater(splice.inside_thickness, 0.0))
    return (splice if both else sleeve).hole.kind, splice.hole.kind


def bolt_washers(
    product: BoltProduct,
    size: BoltSize,
    *,
    head_hole: HoleType,
    nut_hole: HoleType,
    tightening: Tightening,
    plate_yield: float,
    weathering: bool = False,
) -> tuple[Washer, ...] | None:
    """Washers of one bolt.

    Parameters
    ----------
    product, size
        Catalogue entries of the bolt.
    head_hole, nut_hole
        Hole types of the outer plies under head and nut; see `outer_holes`.
    tightening
        How the bolts are installed.
    plate_yield
        Lowest specified yield strength of the outer plies [MPa].
    weathering
        Whether the parts have to weather like an unpainted sleeve.

    Returns
    -------
    tuple of Washer or None
        None where the catalogue has no rules for the product.
    """
    if product.rules is None:
        return None
    parts = product.rules.weathered() if weathering else product.rules
    rules = _rules(
        product,
        parts,
        size,
        holes={"head": head_hole, "nut": nut_hole},
        tightening=tightening,
        plate_yield=plate_yield,
    )
    has_indicator = tightening == "direct-tension-indicator"
    washers: list[Washer] = []
    for place in ("head", "nut"):
        here = [rule for rule in rules if _place(rule) == place]
        below = [rule for rule in here if rule.on_ply]
        above = [rule for rule in here if not rule.on_ply]
        if place == "nut" and has_indicator:
            # from the ply outwards: what covers the hole, the indicator, what the nut turns on
            washers += [*_stack(parts, size, below), _indicator(parts, size)]
            below = []
        stack = _stack(parts, size, [*below, *above])
        washers += stack
        bare = not any(one.part == "washer" for one in stack)
        if place == "nut" and tightening != "snug" and bare:
            washers.append(_customary(parts, size))
    return tuple(washers)


def _stack(rules: AssemblyRules, size: BoltSize, here: Sequence[WasherRule]) -> list[Washer]:
    """Plate washer and hardened washer that satisfy all rules for a place."""
    plates = [rule for rule in here if rule.part == "plate washer"]
    hardened = [rule for rule in here if rule.part == "washer"]
    place = "" if not here else _place(here[0])
    washers = []
    if plates:
        washers.append(_merged(place, plates[0].kind, plates, 0.0))
    if hardened:
        washers.append(_merged(place, rules.washer, hardened, size.washer_thickness))
    return washers


def washer_thickness(washers: Sequence[Washer], place: str) -> float:
    """Thickness of all washers and indicators under the ``head`` or under the ``nut`` [mm]."""
    return sum((one.thickness for one in washers if one.place == place), 0.0)


def _rules(
    product: BoltProduct,
    rules: AssemblyRules,
    size: BoltSize,
    *,
    holes: Mapping[str, HoleType],
    tightening: Tightening,
    plate_yield: float,
) -> tuple[WasherRule, ...]:
    """What the product's standard asks for."""
    if rules.installation is not None:
        cases = rules.installation.washers
        return tuple(
            replace(one.rule, on_ply=one.rule.on_ply or bool(one.holes))
            for one in cases
            if one.applies(tightening=tightening, hole=holes[_place(one.rule)])
        )
    if rules.standard == EN_1090:
        return en_required_washers(
            bolt_tensile_strength=product.tensile_strength,
            tightening=tightening,
            head_side_hole=holes["head"],
            nut_side_hole=holes["nut"],
        )
    return required_washers(
        bolt_diameter=size.diameter,
        bolt_tensile_strength=product.tensile_strength,
        tightening=tightening,
        head_side_hole=holes["head"],
        nut_side_hole=holes["nut"],
        plate_yield_strength=plate_yield,
        round_head=product.assembly == "twist-off",
    )


def _place(rule: WasherRule) -> str:
    """The nut is what is turned: the head lies in the annulus."""
    return "nut" if rule.place == "turned element" else rule.place


def _merged(
    place: str, kind: str, rules: Sequence[WasherRule], standard_thickness: float
) -> Washer:
    """One washer that satisfies all rules for a place."""
    part = rules[0].part
    least = max(rule.min_thickness or 0.0 for rule in rules)
    thick = least > standard_thickness and part == "washer"
    return Washer(
        place=place,
        part=part,
        description=kind,
        thickness=max(standard_thickness, least),
        reason="; ".join(dict.fromkeys(rule.reason for rule in rules))
        + (", a thick one" if thick else ""),
        source="; ".join(dict.fromkeys(rule.source for rule in rules)),
    )


def _customary(rules: AssemblyRules, size: BoltSize) -> Washer:
    return Washer(
        place="nut",
        part="washer",
        description=rules.washer,
        thickness=size.washer_thickness,
        reason="no code asks for it here; usual under a nut that is turned on a bridge",
        source=_CUSTOM,
        required=False,
    )


def _indicator(rules: AssemblyRules, size: BoltSize) -> Washer:
    return Washer(
        place="nut",
        part="indicator",
        description=rules.indicator,
        thickness=size.washer_thickness,
        reason="under the nut's washer, bumps against the washer, never on an enlarged hole: the "
        "head's side cannot be reached with a feeler gauge",
        source=_INDICATOR_SOURCE,
    )
