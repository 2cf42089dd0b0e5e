"""What an input may not ask of the catalogue, and damage records that contradict each other."""

from __future__ import annotations

from collections.abc import Callable, Iterator

import numpy as np

from jacketcheck.catalog.catalog import Catalog
from jacketcheck.errors import CatalogError, DomainError, InputProblem
from jacketcheck.inputs.repair_file import RepairInput
from jacketcheck.jacket.bar_positions import bar_numbers, nearest_bar

__all__ = ["lookup_problems"]


def lookup_problems(repair: RepairInput, catalog: Catalog) -> list[InputProblem]:
    """Every look-up that fails, and every contradiction among records."""
    return [
        *_failed_lookups(repair, catalog),
        *_strength_problems(repair, catalog),
        *_bolt_problems(repair),
        *_damage_problems(repair),
        *_faying_problems(repair, catalog),
    ]


def _failed_lookups(repair: RepairInput, catalog: Catalog) -> Iterator[InputProblem]:
    splice, bolts = repair.splice, repair.bolts
    sleeve_steel = catalog.plate_steel(repair.sleeve.steel)
    splice_steel = catalog.plate_steel(splice.steel)
    lookups: list[tuple[str, object, Callable[[], object]]] = [
        (
            "bolts.diameter",
            bolts.diameter,
            lambda: catalog.bolt_product(bolts.product).size(bolts.diameter),
        ),
        (
            "sleeve.thickness",
            repair.sleeve.thickness,
            lambda: sleeve_steel.strengths(repair.sleeve.thickness),
        ),
        ("splice.thickness", splice.thickness, lambda: splice_steel.strengths(splice.thickness)),
        (
            "splice.inside_thickness",
            splice.inside_thickness,
            lambda: splice_steel.strengths(
                splice.thickness if splice.inside_thickness is None else splice.inside_thickness
            ),
        ),
    ]
    bars = [("column.bars", repair.column.bars), ("column.hoops", repair.column.hoops)]
    if repair.added_bars is not None:
        bars.append(("added_bars", repair.added_bars))
    for path, written in bars:
        steel, bar = catalog.rebar_steel(written.steel), catalog.bar(written.size)
        lookups += [
            (
                f"{path}.steel",
                written.steel,
                lambda s=steel, b=bar: s.ultimate_strain_at(b.diameter),
            ),
            (
                f"{path}.steel",
                written.steel,
                lambda s=steel, b=bar: s.hardening_strain_at(b.diameter),
            ),
        ]
    for path, value, look_up in lookups:
        try:
            look_up()
        except CatalogError as error:
            yield InputProblem(path, repr(value), error.problem)
        except DomainError as error:
            yield InputProblem(path, str(value), str(error))


def _strength_problems(repair: RepairInput, catalog: Catalog) -> Iterator[InputProblem]:
    bars = repair.column.bars
    steel = catalog.rebar_steel(bars.steel)
    yields = steel.expected_yield if bars.measured_yield is None else bars.measured_yield
    tensile = steel.expected_tensile if bars.measured_tensile is None else bars.measured_tensile
    if np.any(np.less_equal(tensile, yields)):
        yield InputProblem(
            "column.bars.measured_tensile",
            f"{np.min(tensile):g} MPa",
            f"must exceed the yield strength {np.max(yields):g} MPa; give both from the same tests",
        )


def _bolt_problems(repair: RepairInput) -> Iterator[InputProblem]:
    bolts = repair.bolts
    if bolts.columns > 1 and bolts.gauge is None:
        yield InputProblem(
            "bolts.gauge", "", f"is missing; {bolts.columns} columns need their spacing"
        )
    if bolts.rows is None and bolts.end_distance is None:
        yield InputProblem("bolts.rows", "", "is missing; give rows, end_distance or both")
    if bolts.measured_tension is not None and bolts.tightening != "snug":
        yield InputProblem(
            "bolts.measured_tension",
            f"{bolts.measured_tension:g} N",
            "is for snug-tight bolts; pretensioned bolts count with their minimum pretension",
        )
    if repair.splice.sides == "outside" and repair.splice.inside_thickness is not None:
        yield InputProblem(
            "splice.inside_thickness",
            f"{repair.splice.inside_thickness:g} mm",
            'needs sides = "both"',
        )


def _damage_problems(repair: RepairInput) -> Iterator[InputProblem]:
    count = repair.column.bars.count
    seen: dict[int, int] = {}
    for index, record in enumerate(repair.damage, start=1):
        if not record.bars and not record.clock:
            yield InputProblem(f"damage.{index}", "", "names no bar; give bars, clock or both")
        for position in record.clock:
            if nearest_bar(position, repair.column.bars) is None:
                yield InputProblem(
                    f"damage.{index}.clock",
                    repr(position),
                    "is midway between two bars; name the bar by its number",
                )
        for number in bar_numbers(record, repair.column.bars):
            if number > count:
                yield InputProblem(
                    f"damage.{index}.bars", str(number), f"must be at most {count}, the bar count"
                )
            elif number in seen:
                yield InputProblem(
                    f"damage.{index}.bars",
                    str(number),
                    f"is named already in damage.{seen[number]}; a bar has one record",
                )
            else:
                seen[number] = index
    if len(seen) == count and all(
        record.state in {"fractured", "buckled"} for record in repair.damage
    ):
        yield InputProblem("damage", "", "leaves no bar that crosses the base unbroken")


def _faying_problems(repair: RepairInput, catalog: Catalog) -> Iterator[InputProblem]:
    codes: dict[str, str] = {}
    for name in repair.bolts.faying_class:
        code = catalog.faying_class(name).code
        if code in codes:
            yield InputProblem(
                "bolts.faying_class",
                repr(name),
                f"is a second class of {code}, after {codes[code]}",
            )
        codes[code] = name
