"""One bolt of the seam with everything between its head and its nut.

The head lies inside, in the annulus; the nut lies outside, where it can be turned and inspected.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from jacketcheck.catalog.assembly_rules import AssemblyRules
from jacketcheck.catalog.catalog import Catalog
from jacketcheck.catalog.records import BoltProduct, BoltSize
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics._arguments import Tightening
from jacketcheck.mechanics.en_washer_rules import en_required_washers
from jacketcheck.mechanics.washer_rules import WasherRule, required_washers

__all__ = ["Assembly", "Ply", "Washer", "assembly_of"]

_CUSTOM: Final = "common practice, no published source"
_INDICATOR_SOURCE: Final = (
    "RCSC 2020 Commentary to Section 2 (from memory): counted like a washer; the maker's thickness "
    "governs"
)


@dataclass(frozen=True, slots=True)
class Ply:
    """A plate in the grip: name and thickness [mm]."""

    name: str
    thickness: float


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


@dataclass(frozen=True, slots=True)
class Assembly:
    """Bolt, nut, washers and plates.

    Attributes
    ----------
    product, size
        Catalogue entries of the bolt.
    plies
        Plates from inside to outside.
    washers
        Washers and indicators; None where the catalogue has no rules for the product.
    tightening
        How the bolts are installed.
    """

    product: BoltProduct
    size: BoltSize
    plies: tuple[Ply, ...]
    washers: tuple[Washer, ...] | None
    tightening: Tightening

    @property
    def rules(self) -> AssemblyRules | None:
        """Parts, marks and installation rules of the product."""
        return self.product.rules

    @property
    def grip(self) -> float:
        """Thickness of all plates [mm]."""
        return sum(ply.thickness for ply in self.plies)

    @property
    def washer_thickness(self) -> float:
        """Thickness of everything that is not plate [mm]."""
        return sum(washer.thickness for washer in self.washers or ())

    @property
    def clamp_length(self) -> float:
        """Thickness between head and nut [mm]."""
        return self.grip + self.washer_thickness

    @property
    def shear_plane_depth(self) -> float:
        """From under the head to the shear plane farthest from it [mm]."""
        under_head = sum(one.thickness for one in self.washers or () if one.place == "head")
        return under_head + sum(ply.thickness for ply in self.plies[:-1])

    def washers_at(self, place: str) -> tuple[Washer, ...]:
        """Washers under the head or under the nut."""
        return tuple(washer for washer in self.washers or () if washer.place == place)


def assembly_of(jacket: Jacket, catalog: Catalog) -> Assembly:
    """The bolt assembly of a jacket of one design.

    Raises
    ------
    CatalogError
        If the catalogue does not know the bolt.
    """
    bolts, sleeve, splice = jacket.bolts, jacket.sleeve, jacket.splice
    product = catalog.bolt_product(bolts.product)
    size = product.size(bolts.size)
    plies = [
        Ply("inside splice plate", float(splice.inside_thickness)),
        Ply("sleeve", float(sleeve.thickness)),
        Ply("outside splice plate", float(splice.outside_thickness)),
    ]
    rules = _washer_rules(jacket, product)
    return Assembly(
        product=product,
        size=size,
        plies=tuple(ply for ply in plies if ply.thickness > 0.0),
        washers=None if rules is None else _washers(rules, product, size, bolts.tightening),
        tightening=bolts.tightening,
    )


def _washer_rules(jacket: Jacket, product: BoltProduct) -> tuple[WasherRule, ...] | None:
    """What the product's standard asks for; None where the catalogue does not name one."""
    if product.rules is None:
        return None
    bolts = jacket.bolts
    if product.rules.standard == "EN 1090-2":
        return en_required_washers(
            bolt_tensile_strength=product.tensile_strength,
            tightening=bolts.tightening,
            head_side_hole=bolts.hole,
            nut_side_hole=bolts.hole,
        )
    weakest = min(
        float(jacket.sleeve.steel.yield_strength), float(jacket.splice.steel.yield_strength)
    )
    return required_washers(
        bolt_diameter=float(bolts.diameter),
        bolt_tensile_strength=product.tensile_strength,
        tightening=bolts.tightening,
        head_side_hole=bolts.hole,
        nut_side_hole=bolts.hole,
        plate_yield_strength=weakest,
    )


def _washers(
    rules: tuple[WasherRule, ...], product: BoltProduct, size: BoltSize, tightening: Tightening
) -> tuple[Washer, ...]:
    washers: list[Washer] = []
    for place in ("head", "nut"):
        here = [rule for rule in rules if _place(rule) == place]
        plates = [rule for rule in here if rule.kind.startswith("plate washer")]
        hardened = [rule for rule in here if not rule.kind.startswith("plate washer")]
        if plates:
            washers.append(_merged(place, "plate washer", plates[0].kind, plates, 0.0))
        if hardened:
            kind = _hardened(product)
            washers.append(_merged(place, "washer", kind, hardened, size.washer_thickness))
        elif place == "nut" and tightening != "snug":
            washers.append(_customary(product, size))
    if tightening == "direct-tension-indicator":
        washers.append(_indicator(product, size))
    return tuple(washers)


def _place(rule: WasherRule) -> str:
    """The nut is what is turned: the head lies in the annulus."""
    return "nut" if rule.place == "turned element" else rule.place


def _hardened(product: BoltProduct) -> str:
    return "hardened washer" if product.rules is None else product.rules.washer


def _merged(
    place: str, part: str, kind: str, rules: list[WasherRule], standard_thickness: float
) -> Washer:
    """One washer that satisfies all rules for a place."""
    least = max((rule.min_thickness or 0.0 for rule in rules), default=0.0)
    thick = least > standard_thickness
    return Washer(
        place=place,
        part=part,
        description=kind,
        thickness=max(standard_thickness, least),
        reason="; ".join(dict.fromkeys(rule.reason for rule in rules))
        + (", a thick one" if thick and part == "washer" else ""),
        source="; ".join(dict.fromkeys(rule.source for rule in rules)),
    )


def _customary(product: BoltProduct, size: BoltSize) -> Washer:
    return Washer(
        place="nut",
        part="washer",
        description=_hardened(product),
        thickness=size.washer_thickness,
        reason="no code asks for it here; usual under a nut that is turned on a bridge",
        source=_CUSTOM,
        required=False,
    )


def _indicator(product: BoltProduct, size: BoltSize) -> Washer:
    name = "direct tension indicator" if product.rules is None else product.rules.indicator
    return Washer(
        place="nut",
        part="indicator",
        description=name,
        thickness=size.washer_thickness,
        reason="under the nut's washer, bumps against the washer: the head's side cannot be "
        "reached with a feeler gauge",
        source=_INDICATOR_SOURCE,
    )
