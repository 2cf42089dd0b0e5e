"""Sleeve, splice plates and bolts with the catalogue's figures."""

from __future__ import annotations

from typing import Final, NamedTuple

import numpy as np

from jacketcheck.catalog.catalog import Catalog
from jacketcheck.catalog.records import BoltProduct, BoltSize, FayingClass
from jacketcheck.inputs.jacket import Bolts, SlipTest
from jacketcheck.inputs.repair_file import RepairInput
from jacketcheck.jacket.bolt_fit import BoltFit, bolt_fit
from jacketcheck.jacket.bolt_washers import bolt_washers, outer_holes, washer_thickness
from jacketcheck.jacket.jacket_parts import BoltGroup, Hole, Plate, Sleeve, Splice
from jacketcheck.mechanics._arguments import HoleType
from jacketcheck.mechanics._arrays import Real
from jacketcheck.mechanics._customary_units import INCH

__all__ = ["build_bolts", "build_plate", "build_sleeve", "build_splice"]

_SOCKET_PLAY: Final = INCH / 8.0
"""Between socket and obstruction, as in AISC Manual Table 7-15 [mm]."""
_SIZE_FIGURES: Final = (
    "diameter",
    "tensile_stress_area",
    "nut_width",
    "nut_height",
    "head_height",
    "washer_diameter",
    "washer_thickness",
    "tightening_clearance",
    "entering_clearance",
    "socket_diameter",
)


def build_plate(catalog: Catalog, *, steel: str, thickness: Real) -> Plate:
    """Plate steel with the strengths of a thickness [mm]."""
    record = catalog.plate_steel(steel)
    strengths = record.strengths(thickness)
    return Plate(
        yield_strength=strengths.yield_strength,
        tensile_strength=strengths.tensile_strength,
        expected_yield=np.multiply(record.expected_ratio, strengths.yield_strength),
        elastic_modulus=record.elastic_modulus,
        name=record.name,
        source=record.source,
        sources={
            **dict.fromkeys(("yield_strength", "tensile_strength"), record.source_of("bands")),
            "expected_yield": f"{record.source_of('expected_ratio')}; {record.source_of('bands')}",
            "elastic_modulus": record.source_of("elastic_modulus"),
        },
    )


def sleeve_height(repair: RepairInput) -> Real:
    """Top of the repair to the gap above the footing [mm]."""
    height: Real = np.subtract(repair.repair.height, repair.repair.gap)
    return height


def build_sleeve(repair: RepairInput, catalog: Catalog) -> Sleeve:
    """The two half-shells."""
    written = repair.sleeve
    return Sleeve(
        inner_diameter=written.inner_diameter,
        thickness=written.thickness,
        height=sleeve_height(repair),
        gap=repair.repair.gap,
        seam_gap=written.seam_gap,
        seam_angle=np.radians(written.seam_angle),
        exposure=written.exposure,
        steel=build_plate(catalog, steel=written.steel, thickness=written.thickness),
        hole=_hole(repair, catalog, "sleeve", written.hole),
    )


def build_splice(repair: RepairInput, catalog: Catalog) -> Splice:
    """Splice plates of one seam; strengths are those of the thicker plate."""
    written, bolts = repair.splice, repair.bolts
    both = written.sides == "both"
    inside: Real = 0.0
    if both:
        inside = written.thickness if written.inside_thickness is None else written.inside_thickness
    gauges = np.multiply(np.subtract(bolts.columns, 1), 0.0 if bolts.gauge is None else bolts.gauge)
    one_side = repair.sleeve.seam_gap / 2.0 + np.add(
        bolts.seam_edge_distance, bolts.plate_edge_distance
    )
    return Splice(
        outside_thickness=written.thickness,
        inside_thickness=inside,
        width=2.0 * (one_side + gauges),
        shear_planes=2 if both else 1,
        fillers=np.multiply(1.0, written.fillers),
        filler_thickness=0.0 if written.filler_thickness is None else written.filler_thickness,
        steel=build_plate(
            catalog, steel=written.steel, thickness=np.maximum(written.thickness, inside)
        ),
        hole=_hole(repair, catalog, "splice", written.hole),
    )


def build_bolts(
    repair: RepairInput, catalog: Catalog, *, sleeve: Sleeve, splice: Splice
) -> BoltGroup:
    """Bolts on one side of one seam."""
    written = repair.bolts
    product = catalog.bolt_product(written.product)
    size = product.size(written.diameter)
    layout, room = _layout(written, sleeve_height(repair)), _room(size, written)
    stress = (
        product.shear_stress_included
        if written.threads == "included"
        else product.shear_stress_excluded
    )
    specified = 0.0 if size.pretension is None else size.pretension
    return BoltGroup(
        diameter=size.diameter,
        tensile_stress_area=size.tensile_stress_area,
        pretension=0.0 if written.tightening == "snug" else specified,
        specified_pretension=specified,
        tensile_strength=product.tensile_strength,
        yield_strength=product.yield_strength,
        shear_stress=stress,
        tensile_stress=product.tensile_stress,
        threads=written.threads,
        metric=size.name.startswith("M"),
        rows=layout.rows,
        columns=written.columns,
        pitch=written.pitch,
        gauge=0.0 if written.gauge is None else written.gauge,
        seam_edge_distance=written.seam_edge_distance,
        plate_edge_distance=written.plate_edge_distance,
        end_distance=layout.end_distance,
        hole_making=written.hole_making,
        standard_hole=size.holes["standard"],
        nut_width=size.nut_width,
        nut_height=size.nut_height,
        head_height=size.head_height,
        washer_diameter=size.washer_diameter,
        washer_thickness=size.washer_thickness,
        tightening_clearance=room.tightening,
        entering_clearance=room.entering,
        socket_diameter=room.socket,
        faying_classes=(
            *(catalog.faying_class(name) for name in written.faying_class),
            *(_tested(one) for one in written.slip_tests),
        ),
        tightening=written.tightening,
        measured_tension=written.measured_tension,
        torque_coefficient=written.torque_coefficient,
        fit=_fit(product, size, written, sleeve=sleeve, splice=splice),
        product=product.name,
        size=size.name,
        source=product.source,
        sources={**_bolt_sources(product, size, written), **room.sources},
    )


class _Room(NamedTuple):
    """Room that the tool needs [mm], and where the figures stand that are not the table's."""

    socket: Real | None
    tightening: Real | None
    entering: Real | None
    sources: dict[str, str]


def _room(size: BoltSize, written: Bolts) -> _Room:
    """By the file, else by the table."""
    socket, tightening, entering = (
        size.socket_diameter,
        size.tightening_clearance,
        size.entering_clearance,
    )
    sources: dict[str, str] = {}
    if written.socket_diameter is not None:
        socket, sources["socket_diameter"] = written.socket_diameter, "input bolts.socket_diameter"
        tightening = np.add(np.divide(socket, 2.0), _SOCKET_PLAY)
        sources["tightening_clearance"] = "half of bolts.socket_diameter and 1/8 in"
    if written.tightening_clearance is not None:
        tightening = written.tightening_clearance
        sources["tightening_clearance"] = "input bolts.tightening_clearance"
    return _Room(socket, tightening, entering, sources)


def _bolt_sources(product: BoltProduct, size: BoltSize, written: Bolts) -> dict[str, str]:
    """Where each figure of the bolts stands."""
    pretension = size.source_of("pretension")
    return {
        **{name: size.source_of(name) for name in _SIZE_FIGURES},
        **{
            name: product.source_of(name)
            for name in ("tensile_strength", "yield_strength", "tensile_stress")
        },
        "shear_stress": product.source_of(f"shear_stress_{written.threads}"),
        "pretension": "input bolts.tightening" if written.tightening == "snug" else pretension,
        "specified_pretension": pretension,
        "standard_hole": size.source_of("holes"),
    }


def _fit(
    product: BoltProduct, size: BoltSize, written: Bolts, *, sleeve: Sleeve, splice: Splice
) -> BoltFit:
    """The bolt that the grip asks for, with the washers that its standard asks for."""
    weakest = np.minimum(sleeve.steel.yield_strength, splice.steel.yield_strength)
    yields, places = np.unique(weakest, return_inverse=True)
    head_hole, nut_hole = outer_holes(sleeve, splice)
    stacks = [
        bolt_washers(
            product,
            size,
            head_hole=head_hole,
            nut_hole=nut_hole,
            tightening=written.tightening,
            plate_yield=float(plate_yield),
        )
        for plate_yield in yields
    ]

    def washers(place: str) -> Real:
        each = np.array([washer_thickness(stack or (), place) for stack in stacks])
        return each[places.reshape(np.shape(weakest))][()]

    return bolt_fit(
        product,
        size,
        grip=np.add(sleeve.thickness, splice.total_thickness) + splice.filler_thickness,
        head_washers=washers("head"),
        nut_washers=washers("nut"),
        washer_source="; ".join(
            dict.fromkeys(one.source for stack in stacks for one in stack or ())
        ),
    )


class _Layout(NamedTuple):
    rows: Real
    end_distance: Real


def _layout(bolts: Bolts, height: Real) -> _Layout:
    """Rows and end distance, one from the other where only one is written."""
    if bolts.rows is None:
        least = 0.0 if bolts.end_distance is None else bolts.end_distance
        spaces = np.floor((np.subtract(height, np.multiply(2.0, least))) / bolts.pitch + 1e-9)
        rows = np.maximum(spaces, 0.0) + 1.0
        return _Layout(rows, np.subtract(height, (rows - 1.0) * bolts.pitch) / 2.0)
    if bolts.end_distance is None:
        group = np.multiply(np.subtract(bolts.rows, 1), bolts.pitch)
        return _Layout(bolts.rows, np.subtract(height, group) / 2.0)
    return _Layout(bolts.rows, bolts.end_distance)


def _hole(repair: RepairInput, catalog: Catalog, ply: str, written: HoleType | None) -> Hole:
    """Bolt holes of a ply: its own, or those that are written for all."""
    size = catalog.bolt_product(repair.bolts.product).size(repair.bolts.diameter)
    kind = repair.bolts.hole if written is None else written
    along, across = size.hole_size(kind)
    edges = dict.fromkeys(
        size.source_of(name)
        for name in ("min_edge_distance", "edge_increments")
        if name == "min_edge_distance" or kind != "standard"
    )
    return Hole(
        kind=kind,
        along=along,
        across=across,
        clearance=np.subtract(along, size.diameter),
        min_edge_distance=size.min_edge_distance + _edge_increment(size, kind, "toward"),
        min_end_distance=size.min_edge_distance + _edge_increment(size, kind, "beside"),
        field="bolts.hole" if written is None else f"{ply}.hole",
        source=size.source_of("holes"),
        sources={
            **dict.fromkeys(("along", "across"), size.source_of("holes")),
            **dict.fromkeys(("min_edge_distance", "min_end_distance"), "; ".join(edges)),
        },
    )


def _edge_increment(size: BoltSize, kind: HoleType, edge: str) -> float:
    """What a hole adds to the least edge distance [mm].

    ``toward`` is a vertical edge, which the hoop force points at; ``beside`` a horizontal one.
    """
    if kind == "standard":
        return 0.0
    if kind == "oversized":
        return size.edge_increments["oversized"]
    slot, _, direction = kind.rpartition("-")
    points_at_edge = (direction == "parallel") == (edge == "toward")
    return size.edge_increments[slot if points_at_edge else f"{slot}-along-edge"]


def _tested(test: SlipTest) -> FayingClass:
    """A tested surface, as a class of the code by whose method it was tested."""
    return FayingClass(
        code=test.code,
        letter="tested",
        slip_coefficient=test.slip_coefficient,
        preparation=test.surface,
        keep_unpainted="the faying surfaces are prepared and coated as in the test report",
        source=f"slip test, {test.report}",
    )
