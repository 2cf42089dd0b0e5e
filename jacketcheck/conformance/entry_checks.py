"""What the kit asks of a catalogue entry."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import fields
from itertools import pairwise
from math import pi
from typing import Any, Final

from jacketcheck.catalog.catalog import Catalog
from jacketcheck.catalog.entries import Sourced
from jacketcheck.catalog.records import (
    Bar,
    BoltProduct,
    BoltSize,
    FayingClass,
    PlateSteel,
    RebarSteel,
)
from jacketcheck.conformance.bench import Bench
from jacketcheck.conformance.case import check
from jacketcheck.conformance.subjects import CATALOG_KINDS, Subject, SubjectKind
from jacketcheck.errors import CatalogError, InputError
from jacketcheck.inputs.repair_file import RepairInput
from jacketcheck.jacket.build import assemble_jacket

__all__ = ["ENTRY_CHECKS"]

_KINDS: Final[tuple[SubjectKind, ...]] = tuple(CATALOG_KINDS.values())
_LONGEST_NAME = 100
_NO_CODE = ("common practice", "engineering judgement", "from memory", "no published")


@check(*_KINDS)
def found_by_every_name(subject: Subject, bench: Bench) -> Iterator[str]:
    """An input may name the entry by its name and by each alias."""
    entry = subject.item
    for name in (entry.name, *entry.aliases):
        if name != " ".join(name.split()) or not name.isprintable() or len(name) > _LONGEST_NAME:
            yield (
                f"{name!r} cannot be written in an input; use printable characters, single blanks "
                f"between words and at most {_LONGEST_NAME} characters"
            )
            continue
        try:
            found = _look_up(subject.kind, bench)(name)
        except CatalogError as error:
            yield f"{error}; choose another name"
        else:
            if found is not entry and subject.kind != "bond model":
                yield f"{name!r} finds another entry; choose another name"


@check(*_KINDS)
def figures_name_their_sources(subject: Subject, _bench: Bench) -> Iterator[str]:
    """Every source is that of a figure, and names a standard or says that there is none."""
    for where, record in _records(subject.item):
        known = {one.name for one in fields(record)}
        for name, text in {"": record.source, **record.sources}.items():
            what = f"the source of {name!r}" if name else "the source"
            if name and name not in known:
                yield f"{where}gives a source for {name!r}, which is none of its figures"
            if not any(one.isdigit() for one in text) and not any(one in text for one in _NO_CODE):
                yield (
                    f"{where}{what} is {text!r}; name standard, edition and table, or say "
                    '"common practice, no published source"'
                )


@check("bar size", "reinforcing steel", "bolt product", "plate steel", "faying class")
def figures_are_plausible(subject: Subject, _bench: Bench) -> Iterator[str]:
    """Figures are in N, mm and MPa, and in order where one must exceed another."""
    found: Iterator[str] = _PLAUSIBLE[type(subject.item)](subject.item)
    for text in found:
        yield f"{text}; check the figure and its unit"


@check("bar size", "reinforcing steel", "bolt product", "plate steel", "faying class")
def stands_in_a_jacket(subject: Subject, bench: Bench) -> Iterator[str]:
    """A jacket can be made with the entry, each size of it included."""
    catalog = bench.host.catalog
    for what, repair in _repairs_with(subject, bench.inputs["metric"], catalog):
        try:
            assemble_jacket(repair, catalog=catalog)
        except InputError as error:
            yield f"{what}: {'; '.join(str(problem) for problem in error.problems)}"


ENTRY_CHECKS = (
    found_by_every_name,
    figures_name_their_sources,
    figures_are_plausible,
    stands_in_a_jacket,
)


def _look_up(kind: SubjectKind, bench: Bench) -> Callable[[str], Any]:
    catalog = bench.host.catalog
    found: Mapping[SubjectKind, Callable[[str], Any]] = {
        "bar size": catalog.bar,
        "reinforcing steel": catalog.rebar_steel,
        "bolt product": catalog.bolt_product,
        "plate steel": catalog.plate_steel,
        "faying class": catalog.faying_class,
        "bond model": catalog.bond_model,
    }
    return found[kind]


def _records(entry: Sourced) -> Iterator[tuple[str, Sourced]]:
    """An entry and the records in it."""
    yield "", entry
    if isinstance(entry, BoltProduct):
        for size in entry.sizes.values():
            yield f"{size.name}: ", size
        if entry.rules is not None:
            yield "rules: ", entry.rules


def _outside(name: str, value: float | None, low: float, high: float) -> Iterator[str]:
    if value is not None and not low <= value <= high:
        yield f"{name} is {value:g}, outside {low:g} to {high:g}"


def _bar(bar: Bar) -> Iterator[str]:
    yield from _outside("diameter [mm]", bar.diameter, 4.0, 75.0)
    circle = pi * bar.diameter**2 / 4.0
    yield from _outside("area over that of a circle of the diameter", bar.area / circle, 0.85, 1.15)


def _rebar_steel(steel: RebarSteel) -> Iterator[str]:
    yield from _outside("yield_strength [MPa]", steel.yield_strength, 200.0, 1000.0)
    yield from _outside("elastic_modulus [MPa]", steel.elastic_modulus, 150e3, 230e3)
    yield from _outside("overstrength", steel.overstrength, 1.0, 2.0)
    for name, value, over, bound in (
        ("tensile_strength", steel.tensile_strength, "yield_strength", steel.yield_strength),
        ("expected_yield", steel.expected_yield, "yield_strength", steel.yield_strength),
        ("expected_tensile", steel.expected_tensile, "expected_yield", steel.expected_yield),
    ):
        yield from _outside(f"{name} over {over}", value / bound, 1.0, 2.0)
    for (largest, ultimate), name in ((band, "ultimate_strain") for band in steel.ultimate_strain):
        yield from _outside(f"{name} of bars up to {largest:g} mm", ultimate, 0.01, 0.3)
    largest = min(steel.ultimate_strain[-1][0], steel.hardening_strain[-1][0])
    for diameter in (one for one, _ in steel.ultimate_strain if one <= largest):
        hardening = steel.hardening_strain_at(diameter)
        if hardening >= steel.ultimate_strain_at(diameter):
            yield f"hardening_strain of bars of {diameter:g} mm is not below their ultimate_strain"


def _plate_steel(steel: PlateSteel) -> Iterator[str]:
    yield from _outside("elastic_modulus [MPa]", steel.elastic_modulus, 150e3, 230e3)
    yield from _outside("expected_ratio", steel.expected_ratio, 1.0, 2.0)
    for band in steel.bands:
        where = f"of plates up to {band.max_thickness:g} mm"
        yield from _outside(f"yield_strength {where}", band.yield_strength, 150.0, 1100.0)
        ratio = band.tensile_strength / band.yield_strength
        yield from _outside(f"tensile_strength over yield_strength {where}", ratio, 1.0, 3.0)
    for thin, thick in pairwise(steel.bands):
        if thick.yield_strength > thin.yield_strength:
            yield f"yield_strength grows beyond {thin.max_thickness:g} mm"


def _faying_class(one: FayingClass) -> Iterator[str]:
    yield from _outside("slip_coefficient", one.slip_coefficient, 0.05, 0.9)


def _bolt_product(product: BoltProduct) -> Iterator[str]:
    tensile = product.tensile_strength
    yield from _outside("tensile_strength [MPa]", tensile, 300.0, 1600.0)
    for name, low in (
        ("yield_strength", 0.5),
        ("shear_stress_excluded", 0.3),
        ("shear_stress_included", 0.25),
        ("tensile_stress", 0.5),
    ):
        ratio = getattr(product, name) / tensile
        yield from _outside(f"{name} over tensile_strength", ratio, low, 1.0)
    if product.shear_stress_included > product.shear_stress_excluded:
        yield "shear_stress_included exceeds shear_stress_excluded"
    for size in product.sizes.values():
        for text in _bolt_size(size, tensile):
            yield f"{size.name}: {text}"


def _bolt_size(size: BoltSize, tensile: float) -> Iterator[str]:
    diameter = size.diameter
    yield from _outside("diameter [mm]", diameter, 8.0, 80.0)
    area = size.tensile_stress_area / (pi * diameter**2 / 4.0)
    yield from _outside("tensile_stress_area over that of the diameter", area, 0.6, 0.95)
    if size.pretension is not None:
        share = size.pretension / (tensile * size.tensile_stress_area)
        yield from _outside("pretension over tensile strength of the thread", share, 0.4, 0.9)
    for name, value, low, high in (
        ("thread_pitch", size.thread_pitch, 0.05, 0.25),
        ("nut_width", size.nut_width, 1.3, 2.3),
        ("nut_height", size.nut_height, 0.6, 1.4),
        ("head_height", size.head_height, 0.4, 1.0),
        ("washer_diameter", size.washer_diameter, 1.5, 3.5),
        ("standard hole", size.holes["standard"], 1.0, 1.3),
        ("min_edge_distance", size.min_edge_distance, 1.0, 3.0),
    ):
        yield from _outside(f"{name} over diameter", value / diameter, low, high)
    for small, large in (
        ("standard", "oversized"),
        ("short-slot-width", "short-slot-length"),
        ("short-slot-length", "long-slot-length"),
    ):
        if size.holes[small] > size.holes[large]:
            yield f"hole {small} exceeds {large}"


_PLAUSIBLE: Final[Mapping[type, Callable[[Any], Iterator[str]]]] = {
    Bar: _bar,
    RebarSteel: _rebar_steel,
    PlateSteel: _plate_steel,
    FayingClass: _faying_class,
    BoltProduct: _bolt_product,
}


def _repairs_with(
    subject: Subject, repair: RepairInput, catalog: Catalog
) -> Iterator[tuple[str, RepairInput]]:
    """A repair with the entry in every place where it may stand."""
    entry = subject.item
    if isinstance(entry, BoltProduct):
        for size in entry.sizes.values():
            written = {"product": entry.name, "diameter": size.name, "tightening": "snug"}
            yield size.name, _changed(repair, bolts=written)
    elif isinstance(entry, FayingClass):
        yield "bolts", _changed(repair, bolts={"faying_class": (entry.name,)})
    elif isinstance(entry, PlateSteel):
        thin = {"steel": entry.name, "thickness": min(6.0, entry.bands[0].max_thickness)}
        yield "sleeve and splice", _changed(repair, sleeve=thin, splice=thin)
    elif isinstance(entry, RebarSteel):
        steel = {"steel": entry.name}
        yield "added bars", _changed(repair, added_bars=steel)
        yield "column bars", _changed(repair, column={"bars": steel, "hoops": steel})
    elif isinstance(entry, Bar):
        yield (
            "added bars",
            _changed(repair, added_bars={"size": entry.name, "steel": _steel_for(entry, catalog)}),
        )


def _steel_for(bar: Bar, catalog: Catalog) -> str:
    """The first steel that has figures for a bar size; any where none has, which is then told."""
    for steel in catalog.rebar_steels.values():
        if bar.diameter <= min(steel.ultimate_strain[-1][0], steel.hardening_strain[-1][0]):
            return steel.name
    return next(iter(catalog.rebar_steels))


def _changed(repair: Any, **tables: Mapping[str, Any]) -> Any:
    """Copy of an input model with fields of its tables replaced."""
    update = {}
    for name, values in tables.items():
        table = getattr(repair, name)
        nested = {key: value for key, value in values.items() if isinstance(value, Mapping)}
        plain = {key: value for key, value in values.items() if key not in nested}
        update[name] = _changed(table, **nested).model_copy(update=plain)
    return repair.model_copy(update=update)
