"""One bolt of the seam with everything between its head and its nut.

The head lies inside, in the annulus; the nut lies outside, where it can be turned and inspected.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from jacketcheck.catalog.assembly_rules import AssemblyRules
from jacketcheck.catalog.catalog import Catalog
from jacketcheck.catalog.records import BoltProduct, BoltSize
from jacketcheck.jacket.bolt_fit import BoltFit, bolt_fit
from jacketcheck.jacket.bolt_washers import Washer, bolt_washers, outer_holes, washer_thickness
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics._arguments import Tightening

__all__ = ["Assembly", "Ply", "assembly_of", "with_parts"]


@dataclass(frozen=True, slots=True)
class Ply:
    """A plate in the grip: name and thickness [mm]."""

    name: str
    thickness: float


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
    fit
        The bolt that is ordered, and how its thread lies.
    weathering
        Whether the sleeve is of unpainted weathering steel, so that the bolts have to weather too.
    """

    product: BoltProduct
    size: BoltSize
    plies: tuple[Ply, ...]
    washers: tuple[Washer, ...] | None
    tightening: Tightening
    fit: BoltFit
    weathering: bool = False

    @property
    def rules(self) -> AssemblyRules | None:
        """Parts, marks and installation rules of the product, for the sleeve's exposure."""
        rules = self.product.rules
        return rules.weathered() if rules is not None and self.weathering else rules

    @property
    def bolt_type(self) -> str:
        """What an order adds to the product, e.g. ``Type 3`` for weathering steel; may be empty."""
        rules = self.product.rules
        parts = None if rules is None or not self.weathering else rules.weathering
        return "" if parts is None else parts.bolt

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
        under_head = washer_thickness(self.washers or (), "head")
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
    weathering = sleeve.exposure == "weathering"
    size = product.size(bolts.size)
    plies = [
        Ply("inside splice plate", float(splice.inside_thickness)),
        Ply("sleeve", float(sleeve.thickness)),
        # next to the plate at the nut: the shear plane there is the farthest from the head
        Ply("fillers", float(splice.filler_thickness)),
        Ply("outside splice plate", float(splice.outside_thickness)),
    ]
    weakest = min(float(sleeve.steel.yield_strength), float(splice.steel.yield_strength))
    head_hole, nut_hole = outer_holes(sleeve, splice)
    return Assembly(
        product=product,
        size=size,
        plies=tuple(ply for ply in plies if ply.thickness > 0.0),
        washers=bolt_washers(
            product,
            size,
            head_hole=head_hole,
            nut_hole=nut_hole,
            tightening=bolts.tightening,
            plate_yield=weakest,
            weathering=weathering,
        ),
        tightening=bolts.tightening,
        fit=bolts.fit,
        weathering=weathering,
    )


def with_parts(
    assembly: Assembly,
    *,
    washers: Sequence[Washer],
    product: BoltProduct | None = None,
    size: BoltSize | None = None,
    tightening: Tightening | None = None,
    plies: Sequence[Ply] | None = None,
) -> Assembly:
    """The assembly with other washers, perhaps other bolt, method and plates; length follows."""
    product = assembly.product if product is None else product
    size = assembly.size if size is None else size
    plies = assembly.plies if plies is None else tuple(plies)
    return Assembly(
        product=product,
        size=size,
        plies=plies,
        washers=tuple(washers),
        tightening=assembly.tightening if tightening is None else tightening,
        fit=bolt_fit(
            product,
            size,
            grip=sum(ply.thickness for ply in plies),
            head_washers=washer_thickness(washers, "head"),
            nut_washers=washer_thickness(washers, "nut"),
        ),
        weathering=assembly.weathering,
    )
