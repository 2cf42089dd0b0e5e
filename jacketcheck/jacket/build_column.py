"""The damaged column: geometry, materials, and the state of every bar."""

from __future__ import annotations

import numpy as np

from jacketcheck.catalog.catalog import Catalog
from jacketcheck.inputs.concrete import strength_basis
from jacketcheck.inputs.repair_file import RepairInput
from jacketcheck.jacket.bar_positions import bar_angle, bar_numbers, surface_at
from jacketcheck.jacket.build_reinforcement import build_layer, build_rebar
from jacketcheck.jacket.column_parts import ColumnBar, Concrete, DamagedColumn, Ties
from jacketcheck.mechanics.concrete_properties import (
    elastic_modulus_mander,
    expected_concrete_strength,
)

__all__ = ["build_column"]


def build_column(repair: RepairInput, catalog: Catalog) -> DamagedColumn:
    """Column as it was built, with what the inspector recorded."""
    written = repair.column
    bar, hoop = catalog.bar(written.bars.size), catalog.bar(written.hoops.size)
    steel = build_rebar(
        catalog.rebar_steel(written.bars.steel),
        bar.diameter,
        measured_yield=written.bars.measured_yield,
        measured_tensile=written.bars.measured_tensile,
        overstrength=repair.judgement.overstrength,
    )
    inset = np.add(written.cover, hoop.diameter + bar.diameter / 2.0)
    layer = build_layer(
        catalog,
        size=written.bars.size,
        steel=steel,
        count=written.bars.count,
        circle_radius=np.subtract(np.divide(written.diameter, 2.0), inset),
        first_angle_degrees=written.bars.first_angle,
    )
    return DamagedColumn(
        diameter=written.diameter,
        height=written.height,
        cover=written.cover,
        curvature=written.curvature,
        concrete=_concrete(repair),
        layer=layer,
        ties=_ties(repair, catalog),
        bars=_bars(repair),
    )


def _concrete(repair: RepairInput) -> Concrete:
    written = repair.column
    if written.concrete_expected is None:
        expected = expected_concrete_strength(written.concrete_strength)
        source = "Caltrans SDC 3.2.6 (1.x versions): max(1.3 f′c, 5 ksi)"
    else:
        expected = written.concrete_expected
        source = f"input column.concrete_expected, {strength_basis(expected)}"
    return Concrete(
        specified=written.concrete_strength,
        expected=expected,
        elastic_modulus=elastic_modulus_mander(expected),
        sources={
            "specified": "input column.concrete_strength, "
            f"{strength_basis(written.concrete_strength)}",
            "expected": source,
        },
    )


def _ties(repair: RepairInput, catalog: Catalog) -> Ties:
    written = repair.column.hoops
    bar, steel = catalog.bar(written.size), catalog.rebar_steel(written.steel)
    inset = np.add(np.multiply(2.0, repair.column.cover), bar.diameter)
    return Ties(
        kind=written.kind,
        diameter=bar.diameter,
        area=bar.area,
        spacing=written.spacing,
        core_diameter=np.subtract(repair.column.diameter, inset),
        yield_strength=steel.yield_strength,
        expected_yield=steel.expected_yield,
        ultimate_strain=steel.ultimate_strain_at(bar.diameter),
        elastic_modulus=steel.elastic_modulus,
        size=bar.name,
        source=f"{bar.source}; {steel.source}",
        sources={
            **{name: bar.source_of(name) for name in ("diameter", "area")},
            **{
                name: steel.source_of(name)
                for name in (
                    "yield_strength",
                    "expected_yield",
                    "ultimate_strain",
                    "elastic_modulus",
                )
            },
        },
    )


def _bars(repair: RepairInput) -> tuple[ColumnBar, ...]:
    """Every bar of the column, in order of its number."""
    written = repair.column.bars
    records = {
        number: index
        for index, record in enumerate(repair.damage)
        for number in bar_numbers(record, written)
    }
    return tuple(
        _bar(repair, number, records.get(number)) for number in range(1, written.count + 1)
    )


def _bar(repair: RepairInput, number: int, index: int | None) -> ColumnBar:
    """One bar with the damage record at `index`, if it has one."""
    angle = bar_angle(number, repair.column.bars)
    surface = surface_at(angle, repair.repair)
    if index is None:
        return ColumnBar(number, angle, "intact", 0.0, 0.0, 0.0, surface)
    record = repair.damage[index]
    return ColumnBar(
        number,
        angle,
        record.state,
        record.height,
        record.crack_width,
        record.spalling_depth,
        record.surface or surface,
        record=f"damage.{index + 1}",
    )
