"""A record of what was built to fill in, with what was specified beside each field."""

from __future__ import annotations

import json
from importlib.resources import files
from typing import Any

from jacketcheck.as_built.bolt_as_built import bolt_as_built
from jacketcheck.as_built.models import AsBuilt
from jacketcheck.as_built.specified import Specified
from jacketcheck.errors import DomainError
from jacketcheck.render.shop_numbers import shop_quantity
from jacketcheck.schedule.counts import Allowances, bolt_counts
from jacketcheck.schedule.length import bolt_length
from jacketcheck.units import DisplaySystem

__all__ = ["blank_record"]


def blank_record(specified: Specified, *, title: str, variant: str, system: DisplaySystem) -> str:
    """Text of the record; as it is, it reads and says that nothing is there yet.

    Fields to fill in are empty, and an empty text is refused: what was specified must not pass for
    what was measured.
    """
    bolts, assembly = specified.jacket.bolts, specified.assembly
    counts = bolt_counts(specified.jacket, assembly, Allowances())
    template = (files("jacketcheck.render") / "blank_record.toml").read_text("utf-8")
    return template.format(
        title=" ".join(title.split()),
        variant=json.dumps(variant, ensure_ascii=False),
        count=counts.installed,
        order=counts.installed + counts.spares,
        product=bolts.product,
        size=bolts.size,
        washers_under_head=len(assembly.washers_at("head")),
        washers_under_nut=sum(one.part != "indicator" for one in assembly.washers_at("nut")),
        faying_classes=", ".join(one.name for one in bolts.faying_classes),
        method=bolts.tightening,
        fillers=int(specified.jacket.splice.fillers),
        sleeve_steel=specified.jacket.sleeve.steel.name,
        splice_steel=specified.jacket.splice.steel.name,
        **_quantities(specified, system),
    )


def _quantities(specified: Specified, system: DisplaySystem) -> dict[str, str]:
    """Specified lengths, stresses and forces as text."""
    jacket, assembly = specified.jacket, specified.assembly
    bolts, sleeve, splice = jacket.bolts, jacket.sleeve, jacket.splice
    inside = float(splice.inside_thickness)
    least = float(bolts.specified_pretension)
    try:
        length: float | str = bolt_length(assembly).ordered
    except DomainError:
        length = "not stocked"
    bolt = bolt_as_built(AsBuilt(), specified)
    verified = bolt.verification_tension if least > 0.0 else "not known"
    quantities: dict[str, dict[str, Any]] = {
        "mm": {
            "hole_along": sleeve.hole.along,
            "hole_across": sleeve.hole.across,
            "splice_hole_along": splice.hole.along,
            "splice_hole_across": splice.hole.across,
            "sleeve_thickness": sleeve.thickness,
            "inner_diameter": sleeve.inner_diameter,
            "seam_gap": sleeve.seam_gap,
            "gap": sleeve.gap,
            "splice_thickness": splice.outside_thickness,
            "plate_radius": float(sleeve.inner_radius) + float(sleeve.thickness),
            "filler_thickness": float(splice.filler_thickness) or "none",
            "inside_thickness": inside if inside > 0.0 else "none",
            "length": length,
        },
        "MPa": {
            "tensile_strength": assembly.product.tensile_strength,
            "sleeve_yield": sleeve.steel.yield_strength,
            "splice_yield": splice.steel.yield_strength,
            "grout": jacket.grout.strength,
        },
        "N": {"verification": verified, "pretension": least},
    }
    return {
        name: shop_quantity(value if isinstance(value, str) else float(value), unit, system)
        for unit, values in quantities.items()
        for name, value in values.items()
    }
