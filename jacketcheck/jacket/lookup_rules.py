"""What an input may not ask of the catalogue, and what contradicts itself."""

from __future__ import annotations

from collections.abc import Callable, Iterator

import numpy as np

from jacketcheck.catalog.catalog import Catalog
from jacketcheck.errors import CatalogError, DomainError, InputProblem
from jacketcheck.inputs.column import ColumnBars, Hoops
from jacketcheck.inputs.fields import field_paths
from jacketcheck.inputs.jacket import AddedBars, AnchorReinforcement
from jacketcheck.inputs.repair_file import RepairInput
from jacketcheck.inputs.written import shown
from jacketcheck.jacket.bar_positions import bar_numbers, nearest_bar, overlap
from jacketcheck.mechanics._arrays import Real
from jacketcheck.units import in_both_systems

__all__ = ["lookup_problems"]


def lookup_problems(repair: RepairInput, catalog: Catalog) -> list[InputProblem]:
    """Every look-up that fails, and every contradiction; figures only where all names are known."""
    unknown = list(_unknown_names(repair, catalog))
    if not unknown:
        unknown += _missing_figures(repair, catalog)
        unknown += _faying_problems(repair, catalog)
        unknown += _strength_problems(repair, catalog)
        unknown += _tightening_problems(repair, catalog)
    return [
        *unknown,
        *_contradictions(repair),
        *_side_problems(repair),
        *_confirmed_problems(repair),
        *_damage_problems(repair),
    ]


def _unknown_names(repair: RepairInput, catalog: Catalog) -> Iterator[InputProblem]:
    column, added = repair.column, repair.added_bars
    lookups: list[tuple[str, str, Callable[[str], object]]] = [
        ("column.bars.size", column.bars.size, catalog.bar),
        ("column.bars.steel", column.bars.steel, catalog.rebar_steel),
        ("column.hoops.size", column.hoops.size, catalog.bar),
        ("column.hoops.steel", column.hoops.steel, catalog.rebar_steel),
        ("sleeve.steel", repair.sleeve.steel, catalog.plate_steel),
        ("splice.steel", repair.splice.steel, catalog.plate_steel),
        ("bolts.product", repair.bolts.product, catalog.bolt_product),
        ("judgement.bond_model", repair.judgement.bond_model, catalog.bond_model),
        *(("bolts.faying_class", name, catalog.faying_class) for name in repair.bolts.faying_class),
    ]
    if added is not None:
        lookups += [
            ("added_bars.size", added.size, catalog.bar),
            ("added_bars.steel", added.steel, catalog.rebar_steel),
        ]
        if added.anchor_reinforcement is not None:
            place, bars = "added_bars.anchor_reinforcement", added.anchor_reinforcement
            lookups += [
                (f"{place}.size", bars.size, catalog.bar),
                (f"{place}.steel", bars.steel, catalog.rebar_steel),
            ]
    for path, name, look_up in lookups:
        try:
            look_up(name)
        except CatalogError as error:
            yield InputProblem(path, shown(name), error.problem)


def _missing_figures(repair: RepairInput, catalog: Catalog) -> Iterator[InputProblem]:
    """Sizes and thicknesses for which the catalogue's entries have nothing."""
    bolts, splice = repair.bolts, repair.splice
    try:
        catalog.bolt_product(bolts.product).size(bolts.diameter)
    except CatalogError as error:
        yield InputProblem("bolts.diameter", shown(bolts.diameter), error.problem)
    plates = [
        ("sleeve.thickness", repair.sleeve.thickness, repair.sleeve.steel),
        ("splice.thickness", splice.thickness, splice.steel),
        ("splice.inside_thickness", splice.inside_thickness, splice.steel),
    ]
    for path, thickness, name in plates:
        thickest = catalog.plate_steel(name).max_thickness
        if thickness is not None and np.any(np.greater(thickness, thickest * (1.0 + 1e-9))):
            message = f"must be at most {_mm(thickest)}, the thickest plate of {name}"
            yield InputProblem(path, _mm(thickness), message)
    bars: list[tuple[str, ColumnBars | Hoops | AddedBars | AnchorReinforcement]] = [
        ("column.bars", repair.column.bars),
        ("column.hoops", repair.column.hoops),
    ]
    if repair.added_bars is not None:
        bars.append(("added_bars", repair.added_bars))
        if repair.added_bars.anchor_reinforcement is not None:
            crossing = repair.added_bars.anchor_reinforcement
            bars.append(("added_bars.anchor_reinforcement", crossing))
    for path, written in bars:
        steel, diameter = catalog.rebar_steel(written.steel), catalog.bar(written.size).diameter
        try:
            steel.ultimate_strain_at(diameter)
            steel.hardening_strain_at(diameter)
        except DomainError:
            message = f"is too large: {steel.name} has no figures for bars of {_mm(diameter)}"
            yield InputProblem(f"{path}.size", shown(written.size), message)


def _strength_problems(repair: RepairInput, catalog: Catalog) -> Iterator[InputProblem]:
    bars = repair.column.bars
    steel = catalog.rebar_steel(bars.steel)
    yields = steel.expected_yield if bars.measured_yield is None else bars.measured_yield
    tensile = steel.expected_tensile if bars.measured_tensile is None else bars.measured_tensile
    if np.any(np.less_equal(tensile, yields)):
        yield InputProblem(
            "column.bars.measured_tensile",
            in_both_systems(float(np.min(tensile)), "MPa"),
            f"must exceed the yield strength of {in_both_systems(float(np.max(yields)), 'MPa')}; "
            "give both from the same tests",
        )


def _tightening_problems(repair: RepairInput, catalog: Catalog) -> Iterator[InputProblem]:
    bolts = repair.bolts
    product = catalog.bolt_product(bolts.product)
    if bolts.tightening == "twist-off" and product.assembly != "twist-off":
        yield InputProblem(
            "bolts.tightening",
            shown(bolts.tightening),
            f"needs bolts with a spline, which {product.name} does not have",
        )
    try:
        pretension = product.size(bolts.diameter).pretension
    except CatalogError:
        return  # a missing size is a problem of its own
    if bolts.tightening != "snug" and pretension is None:
        yield InputProblem(
            "bolts.tightening",
            shown(bolts.tightening),
            f'must be "snug": {product.name} has no pretension for {bolts.diameter}',
        )


def _contradictions(repair: RepairInput) -> Iterator[InputProblem]:
    """Fields that need one another, or that exclude one another."""
    bolts, splice, column = repair.bolts, repair.splice, repair.column
    specified, expected = column.concrete_strength, column.concrete_expected
    if expected is not None and np.any(np.less(expected, specified)):
        yield InputProblem(
            "column.concrete_expected",
            in_both_systems(float(np.min(expected)), "MPa"),
            "must be at least column.concrete_strength, "
            f"{in_both_systems(float(np.max(specified)), 'MPa')}; where tests show less, write "
            "that as column.concrete_strength",
        )
    if np.any(np.greater(bolts.columns, 1)) and bolts.gauge is None:
        yield InputProblem("bolts.gauge", "", "is missing; columns beside one another need it")
    if bolts.rows is None and bolts.end_distance is None:
        yield InputProblem("bolts.rows", "", "is missing; give rows, end_distance or both")
    if bolts.measured_tension is not None and bolts.tightening != "snug":
        yield InputProblem(
            "bolts.measured_tension",
            in_both_systems(float(np.max(bolts.measured_tension)), "N"),
            'needs tightening = "snug"; other bolts count with their minimum pretension',
        )
    if np.any(np.greater(splice.fillers, 0)) != (splice.filler_thickness is not None):
        given = splice.filler_thickness
        yield InputProblem(
            "splice.filler_thickness",
            "" if given is None else _mm(given),
            "is missing; fillers have one"
            if given is None
            else "needs splice.fillers, their number",
        )
    if splice.sides == "outside" and splice.inside_thickness is not None:
        yield InputProblem(
            "splice.inside_thickness", _mm(splice.inside_thickness), 'needs sides = "both"'
        )


def _side_problems(repair: RepairInput) -> Iterator[InputProblem]:
    """Sides that overlap and contradict one another."""
    sides = repair.repair.sides
    for later, side in enumerate(sides, start=1):
        for earlier, other in enumerate(sides[: later - 1], start=1):
            if side.surface != other.surface and overlap(side, other):
                message = (
                    f"overlaps repair.sides.{earlier}, which says {other.surface}; "
                    "a place has one surface"
                )
                yield InputProblem(f"repair.sides.{later}", shown(side.surface), message)


def _confirmed_problems(repair: RepairInput) -> Iterator[InputProblem]:
    """Confirmed fields that no input has: they would confirm nothing."""
    known = set(field_paths(repair)) | set(type(repair).model_fields) | {"column.bars"}
    for path in repair.judgement.confirmed:
        if path not in known:
            yield InputProblem(
                "judgement.confirmed", shown(path), 'is not a field, e.g. "repair.height"'
            )


def _damage_problems(repair: RepairInput) -> Iterator[InputProblem]:
    bars = repair.column.bars
    buckled_count = repair.judgement.buckled_bars == "as-fractured"
    broken_states = {"fractured", "buckled"} if buckled_count else {"fractured"}
    holders: dict[int, int] = {}
    broken: set[int] = set()
    for index, record in enumerate(repair.damage, start=1):
        if not record.bars and not record.clock:
            yield InputProblem(f"damage.{index}", "", "names no bar; give bars, clock or both")
        for position in record.clock:
            if nearest_bar(position, bars) is None:
                yield InputProblem(
                    f"damage.{index}.clock",
                    shown(position),
                    "is midway between two bars; name the bar by its number",
                )
        for number in bar_numbers(record, bars):
            if number > bars.count:
                message = f"must be at most {bars.count}, the number of bars"
                yield InputProblem(f"damage.{index}.bars", str(number), message)
            elif number in holders:
                message = f"is named already in damage.{holders[number]}; a bar has one record"
                yield InputProblem(f"damage.{index}", f"bar {number}", message)
            else:
                holders[number] = index
                broken |= {number} if record.state in broken_states else set()
    if len(broken) == bars.count:
        yield InputProblem("damage", "", "leaves no bar that crosses the base unbroken")


def _faying_problems(repair: RepairInput, catalog: Catalog) -> Iterator[InputProblem]:
    bolts, holders = repair.bolts, dict[str, str]()
    for name in bolts.faying_class:
        code = catalog.faying_class(name).code
        if code in holders:
            message = f"is a second class of {code}, after {holders[code]}; a code has one"
            yield InputProblem("bolts.faying_class", shown(name), message)
        holders.setdefault(code, name)
    known = sorted({one.code for one in catalog.faying_classes.values()})
    for index, test in enumerate(bolts.slip_tests, start=1):
        path = f"bolts.slip_tests.{index}.code"
        if test.code not in known:
            yield InputProblem(path, shown(test.code), f"must be one of {', '.join(known)}")
        if test.code in holders:
            message = f"has {holders[test.code]} already; a surface has a class or a test by a code"
            yield InputProblem(path, shown(test.code), message)
        holders.setdefault(test.code, "a test")
    if not holders:
        message = 'is missing: a class with its code, e.g. "AISC B", or a test in bolts.slip_tests'
        yield InputProblem("bolts.faying_class", "", message)


def _mm(length: Real) -> str:
    return in_both_systems(float(np.max(length)), "mm")
