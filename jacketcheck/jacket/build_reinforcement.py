"""Bars with the catalogue's figures for their size and steel."""

from __future__ import annotations

import math
from typing import Final

import numpy as np

from jacketcheck.catalog.catalog import Catalog
from jacketcheck.catalog.records import RebarSteel
from jacketcheck.inputs.jacket import AddedBars
from jacketcheck.inputs.repair_file import RepairInput
from jacketcheck.jacket.column_parts import BarLayer, Rebar
from jacketcheck.jacket.jacket_parts import AddedBarLayer, AnchorReinforcement
from jacketcheck.mechanics._arrays import Real

__all__ = ["build_added_bars", "build_layer", "build_rebar"]

_STEEL_FIGURES: Final = (
    "yield_strength",
    "tensile_strength",
    "expected_yield",
    "expected_tensile",
    "hardening_strain",
    "ultimate_strain",
    "elastic_modulus",
    "overstrength",
)


def build_rebar(
    steel: RebarSteel,
    diameter: Real,
    *,
    measured_yield: Real | None = None,
    measured_tensile: Real | None = None,
    overstrength: Real | None = None,
) -> Rebar:
    """Steel of one bar diameter [mm]; what the column's input gives takes the catalogue's place."""
    expected_yield = steel.expected_yield if measured_yield is None else measured_yield
    expected_tensile = steel.expected_tensile if measured_tensile is None else measured_tensile
    replaced = {
        "expected_yield": (measured_yield, "input column.bars.measured_yield"),
        "expected_tensile": (measured_tensile, "input column.bars.measured_tensile"),
        "overstrength": (overstrength, "input judgement.overstrength"),
    }
    written = {name: text for name, (value, text) in replaced.items() if value is not None}
    return Rebar(
        yield_strength=steel.yield_strength,
        tensile_strength=steel.tensile_strength,
        expected_yield=expected_yield,
        expected_tensile=expected_tensile,
        hardening_strain=steel.hardening_strain_at(diameter),
        ultimate_strain=steel.ultimate_strain_at(diameter),
        elastic_modulus=steel.elastic_modulus,
        overstrength=steel.overstrength if overstrength is None else overstrength,
        name=steel.name,
        source=steel.source,
        sources={**{name: steel.source_of(name) for name in _STEEL_FIGURES}, **written},
    )


def build_layer(
    catalog: Catalog,
    *,
    size: str,
    steel: Rebar,
    count: Real,
    circle_radius: Real,
    first_angle_degrees: float,
) -> BarLayer:
    """Bars of one size on a circle."""
    bar = catalog.bar(size)
    return BarLayer(
        diameter=bar.diameter,
        area=bar.area,
        count=count,
        circle_radius=circle_radius,
        first_angle=math.radians(first_angle_degrees),
        steel=steel,
        size=bar.name,
        source=bar.source,
        sources={
            **{name: bar.source_of(name) for name in ("diameter", "area")},
            "total_area": bar.source_of("area"),
        },
    )


def build_added_bars(repair: RepairInput, catalog: Catalog) -> AddedBarLayer | None:
    """Bars grouted into the footing, if the input has any."""
    written = repair.added_bars
    if written is None:
        return None
    bar = catalog.bar(written.size)
    layer = build_layer(
        catalog,
        size=written.size,
        steel=build_rebar(catalog.rebar_steel(written.steel), bar.diameter),
        count=written.count,
        circle_radius=np.divide(written.circle_diameter, 2.0),
        first_angle_degrees=written.first_angle,
    )
    return AddedBarLayer(
        layer=layer,
        height=written.height,
        embedment=written.embedment,
        hole_diameter=written.hole_diameter,
        bond_strength=written.bond_strength,
        breakout_precluded=written.breakout_precluded,
        anchor_reinforcement=_anchor_reinforcement(written, catalog),
    )


def _anchor_reinforcement(added: AddedBars, catalog: Catalog) -> AnchorReinforcement | None:
    written = added.anchor_reinforcement
    if written is None:
        return None
    bar = catalog.bar(written.size)
    return AnchorReinforcement(
        diameter=bar.diameter,
        area=bar.area,
        count=written.count,
        steel=build_rebar(catalog.rebar_steel(written.steel), bar.diameter),
        angle=np.radians(written.angle),
        distance=written.distance,
        length_above=written.length_above,
        length_below=written.length_below,
        end_above=written.end_above,
        end_below=written.end_below,
        size=bar.name,
        source=bar.source,
        sources={name: bar.source_of(name) for name in ("diameter", "area")},
    )
