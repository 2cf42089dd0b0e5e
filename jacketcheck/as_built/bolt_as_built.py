"""The bolt as it was delivered and put in: what everything recorded of it is judged by."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from jacketcheck.as_built.compare_holes import holes_as_built
from jacketcheck.as_built.models import AsBuilt, BoltDelivery
from jacketcheck.as_built.plate_tolerances import thickness_tolerance
from jacketcheck.as_built.records import Change
from jacketcheck.as_built.specified import Specified
from jacketcheck.catalog.assembly_rules import EN_1090
from jacketcheck.catalog.installation_rules import InstallationRules
from jacketcheck.catalog.records import BoltProduct, BoltSize
from jacketcheck.jacket.bolt_washers import Washer, bolt_washers, outer_holes
from jacketcheck.mechanics._arguments import HoleType
from jacketcheck.mechanics.bolt_installation import verification_tension
from jacketcheck.schedule.assembly import Assembly, Ply, with_parts
from jacketcheck.schedule.length import bolt_length

__all__ = ["BoltAsBuilt", "bolt_as_built"]


@dataclass(frozen=True, slots=True)
class BoltAsBuilt:
    """A bolt of the seam as built; what the record leaves out is as specified.

    Attributes
    ----------
    assembly
        Product, size, method, plates, and washers as delivered.
    required
        Washers that the rules of the delivered product ask for, with its method, holes and
        plates; None where the catalogue has no rules for it.
    holes
        Type of the holes by field of the repair file, for the delivered diameter; None where the
        bolt does not go in, or no type is that large.
    length
        Nominal length as delivered [mm]; None where no delivery is recorded.
    change
        How product, size and holes differ from what was specified.
    """

    assembly: Assembly
    required: tuple[Washer, ...] | None
    holes: Mapping[str, HoleType | None]
    length: float | None
    change: Change

    @property
    def diameter(self) -> float:
        """Nominal diameter [mm]."""
        return self.assembly.size.diameter

    @property
    def metric(self) -> bool:
        """Whether the product is made in millimetres."""
        return self.assembly.size.name.startswith("M")

    @property
    def pretension(self) -> float:
        """Minimum pretension by the product's standard [N]; zero where none is known."""
        return self.assembly.size.pretension or 0.0

    @property
    def pretension_source(self) -> str:
        """Where the minimum pretension stands."""
        return self.assembly.size.source_of("pretension")

    @property
    def by_rcsc(self) -> bool:
        """Whether the bolt is tightened and inspected by RCSC."""
        return not self.european and self.installation is None

    @property
    def european(self) -> bool:
        """Whether the bolt is tightened and inspected by EN 1090-2."""
        rules = self.assembly.rules
        return rules is not None and rules.standard == EN_1090

    @property
    def installation(self) -> InstallationRules | None:
        """Rules of tightening that a plug-in brings with the bolt; None for the built-in ones."""
        return None if self.assembly.rules is None else self.assembly.rules.installation

    @property
    def verification_tension(self) -> float:
        """Tension that assemblies must reach before any is installed [N].

        RCSC asks for 5 percent more than the minimum pretension, other standards for that alone;
        zero where no pretension is known.
        """
        least = self.pretension
        if least <= 0.0 or self.european or self.installation is not None:
            return least
        return float(verification_tension(least))

    def counted_length(self) -> float:
        """Length as delivered, or else as ordered [mm]; DomainError where none is stocked."""
        return bolt_length(self.assembly).ordered if self.length is None else self.length


def bolt_as_built(record: AsBuilt, specified: Specified) -> BoltAsBuilt:
    """The bolt that a record tells of."""
    delivery, planned = record.bolts, specified.assembly
    product, size = planned.product, planned.size
    if delivery is not None:
        product = specified.catalog.bolt_product(delivery.product)
        size = product.size(delivery.diameter)
    method = planned.tightening if record.tightening is None else record.tightening.method
    holes = holes_as_built(record.holes, specified, product, size)
    planned_head, planned_nut = outer_holes(specified.jacket.sleeve, specified.jacket.splice)
    inside = "splice" if float(specified.jacket.splice.inside_thickness) > 0.0 else "sleeve"
    required = bolt_washers(
        product,
        size,
        head_hole=holes[f"{inside}.hole"] or planned_head,
        nut_hole=holes["splice.hole"] or planned_nut,
        tightening=method,
        plate_yield=_weakest_plate(record, specified),
        weathering=planned.weathering,
    )
    assembly = with_parts(
        planned,
        product=product,
        size=size,
        washers=_washers(delivery, required or (), size),
        tightening=method,
        plies=_plies(record, specified),
    )
    return BoltAsBuilt(
        assembly=assembly,
        required=required,
        holes=holes,
        length=None if delivery is None else delivery.length,
        change=_change(specified, product, size, holes),
    )


def _washers(
    delivery: BoltDelivery | None, required: tuple[Washer, ...], size: BoltSize
) -> list[Washer]:
    """Washers as delivered, those that are required first; indicators as required."""
    washers: list[Washer] = []
    for place in ("head", "nut"):
        here = [one for one in required if one.place == place]
        count = None if delivery is None else getattr(delivery, f"washers_under_{place}")
        if count is None:
            washers += here
            continue
        indicators = [one for one in here if one.part == "indicator"]
        others = [one for one in here if one.part != "indicator"][:count]
        extra = Washer(place, "washer", "washer", size.washer_thickness, "as delivered", "record")
        washers += indicators + others + [extra] * (count - len(others))
    return washers


def _plies(record: AsBuilt, specified: Specified) -> list[Ply]:
    """Plates as thick as measured where that is more than the mill may deliver, and fillers."""
    jacket, splice, sleeve = specified.jacket, record.splice, record.sleeve
    steels = {"sleeve": jacket.sleeve.steel.name}
    readings = {
        "sleeve": None if sleeve is None else sleeve.thickness,
        "outside splice plate": None if splice is None else splice.thickness,
        "inside splice plate": None if splice is None else splice.inside_thickness,
    }
    plies = []
    for ply in specified.assembly.plies:
        steel = steels.get(ply.name, jacket.splice.steel.name)
        most = max(readings.get(ply.name) or (0.0,))
        tolerance = thickness_tolerance(steel, ply.thickness)
        plies.append(Ply(ply.name, most) if most > ply.thickness + tolerance.above else ply)
    if splice is not None and splice.fillers is not None:
        plies = [ply for ply in plies if ply.name != "fillers"]
        if splice.filler_thickness:
            plies.insert(-1, Ply("fillers", max(splice.filler_thickness)))
    return plies


def _weakest_plate(record: AsBuilt, specified: Specified) -> float:
    """Lowest specified yield strength of the outer plies, of the steels delivered [MPa]."""
    jacket, catalog = specified.jacket, specified.catalog
    plies = (
        (record.sleeve, jacket.sleeve.steel, float(jacket.sleeve.thickness)),
        (record.splice, jacket.splice.steel, float(jacket.splice.outside_thickness)),
    )
    return min(
        float(steel.yield_strength)
        if table is None or table.steel is None
        else float(catalog.plate_steel(table.steel).strengths(thickness).yield_strength)
        for table, steel, thickness in plies
    )


def _change(
    specified: Specified,
    product: BoltProduct,
    size: BoltSize,
    holes: Mapping[str, HoleType | None],
) -> Change:
    planned, jacket = specified.assembly, specified.jacket
    written = {"sleeve.hole": jacket.sleeve.hole.kind, "splice.hole": jacket.splice.hole.kind}
    fields: dict[str, str] = {}
    if product.name != planned.product.name:
        fields["bolts.product"] = product.name
    if (product.name, size.name) != (planned.product.name, planned.size.name):
        fields["bolts.diameter"] = size.name
    fields |= {
        field: hole for field, hole in holes.items() if hole is not None and hole != written[field]
    }
    return Change(fields)
