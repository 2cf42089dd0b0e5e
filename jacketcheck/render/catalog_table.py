"""What an input may name: the catalogue's entries by kind, and one entry with all its sources."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, fields
from typing import Any, Final

import numpy as np

from jacketcheck.catalog.assembly_rules import AssemblyRules, WeatheringParts
from jacketcheck.catalog.catalog import Catalog
from jacketcheck.catalog.entries import Entries, Sourced
from jacketcheck.catalog.records import (
    Bar,
    BoltProduct,
    FayingClass,
    PlateSteel,
    RebarSteel,
)
from jacketcheck.host.host import Host
from jacketcheck.render.numbers import MISSING, number_text, shown_value
from jacketcheck.render.text_style import grid, subheading
from jacketcheck.units import DisplaySystem

__all__ = ["KINDS", "catalog_text", "entry_text", "kind_text"]


@dataclass(frozen=True, slots=True)
class Kind:
    """A kind of catalogue entries.

    Attributes
    ----------
    field
        Name in `Catalog`.
    title
        What the entries are.
    named_in
        Fields of an input that name one.
    headers
        Columns between name and source, with internal units where they are numbers.
    cells
        Their cells for an entry: numbers in internal units, or texts.
    """

    field: str
    title: str
    named_in: str
    headers: tuple[tuple[str, str], ...]
    cells: Callable[[Any], Sequence[Any]]


def _bar(bar: Bar) -> Sequence[Any]:
    return bar.diameter, bar.area


def _rebar_steel(steel: RebarSteel) -> Sequence[Any]:
    return (
        steel.yield_strength,
        steel.tensile_strength,
        steel.expected_yield,
        steel.expected_tensile,
        _range([strain for _, strain in steel.ultimate_strain]),
    )


def _bolt_product(product: BoltProduct) -> Sequence[Any]:
    return product.tensile_strength, product.assembly, ", ".join(product.sizes)


def _plate_steel(steel: PlateSteel) -> Sequence[Any]:
    first = steel.bands[0]
    return first.yield_strength, first.tensile_strength, steel.max_thickness


def _faying_class(one: FayingClass) -> Sequence[Any]:
    return one.slip_coefficient, one.preparation


KINDS: Final[Mapping[str, Kind]] = {
    "bars": Kind(
        "bars",
        "Bar sizes",
        "column.bars.size, column.hoops.size, added_bars.size",
        (("diameter", "mm"), ("area", "mm2")),
        _bar,
    ),
    "rebar-steels": Kind(
        "rebar_steels",
        "Reinforcing steels",
        "column.bars.steel, column.hoops.steel, added_bars.steel",
        (
            ("yield", "MPa"),
            ("tensile", "MPa"),
            ("expected yield", "MPa"),
            ("expected tensile", "MPa"),
            ("ultimate strain", ""),
        ),
        _rebar_steel,
    ),
    "bolts": Kind(
        "bolts",
        "Bolt products and their sizes",
        "bolts.product and bolts.diameter",
        (("tensile", "MPa"), ("assembly", ""), ("sizes", "")),
        _bolt_product,
    ),
    "plate-steels": Kind(
        "plate_steels",
        "Plate steels",
        "sleeve.steel, splice.steel",
        (("yield, thin", "MPa"), ("tensile, thin", "MPa"), ("thickest plate", "mm")),
        _plate_steel,
    ),
    "faying-classes": Kind(
        "faying_classes",
        "Faying classes, always named with their code",
        "bolts.faying_class",
        (("slip coefficient", "1"), ("preparation", "")),
        _faying_class,
    ),
    "bond-models": Kind(
        "bond_models",
        "Bond models",
        "judgement.bond_model",
        (("what it is", ""),),
        lambda model: (model.title,),
    ),
}
"""Kinds as the command line spells them."""

_UNITS: Final[Mapping[str, str]] = {
    **dict.fromkeys(("area", "tensile_stress_area"), "mm2"),
    **dict.fromkeys(("pretension",), "N"),
    **dict.fromkeys(
        (
            "yield_strength",
            "tensile_strength",
            "expected_yield",
            "expected_tensile",
            "elastic_modulus",
            "shear_stress_included",
            "shear_stress_excluded",
            "tensile_stress",
            "max_tensile_strength",
        ),
        "MPa",
    ),
    **dict.fromkeys(
        (
            "diameter",
            "thread_pitch",
            "min_edge_distance",
            "nut_width",
            "nut_height",
            "head_height",
            "washer_diameter",
            "washer_thickness",
            "grip_allowance",
            "tightening_clearance",
            "entering_clearance",
            "socket_diameter",
            "transition_length",
        ),
        "mm",
    ),
}
"""Internal units of single figures; the others have none."""

_BANDS: Final[Mapping[str, tuple[str, str]]] = {
    # field: what has the diameter or length that limits a band, unit of the figure
    "hardening_strain": ("bars", "1"),
    "ultimate_strain": ("bars", "1"),
    "thread_lengths": ("bolts", "mm"),
    "length_increments": ("bolts", "mm"),
    "length_tolerances": ("bolts", "mm"),
}
_NOT_FIGURES: Final = frozenset({"name", "source", "sources", "aliases", "law", "sizes", "rules"})


def catalog_text(host: Host) -> str:
    """Names of all kinds, in short."""
    parts = []
    for name, kind in KINDS.items():
        entries = _entries(host.catalog, kind)
        listed = "; ".join(entries)
        parts.append(f"{subheading(f'{name}: {kind.title}', 'text')}\n{listed}")
        parts[-1] += f"\nnamed in {kind.named_in}"
    parts.append("More of a kind: jacketcheck catalog KIND; all of an entry: catalog KIND NAME.")
    return "\n\n".join(parts) + "\n"


def kind_text(host: Host, name: str, *, system: DisplaySystem) -> str:
    """All entries of a kind with their main figures, source and origin."""
    kind = KINDS[name]
    return (
        f"{subheading(kind.title, 'text')}\nnamed in {kind.named_in}\n\n"
        + grid(
            [
                [
                    entry.name,
                    *(
                        _cell(value, unit, system)
                        for value, (_, unit) in zip(kind.cells(entry), kind.headers, strict=True)
                    ),
                    ", ".join(entry.aliases),
                    _origin(host, kind, entry.name),
                    entry.source,
                ]
                for entry in _entries(host.catalog, kind).values()
            ],
            headers=[
                "name",
                *(_header(title, unit, system) for title, unit in kind.headers),
                "also found as",
                "plug-in",
                "source",
            ],
            align=[
                "left",
                *("right" if unit else "left" for _, unit in kind.headers),
                *("left",) * 3,
            ],
            widths=[None, *(None if unit else 48 for _, unit in kind.headers), 32, None, 48],
            style="text",
        )
        + "\n"
    )


def entry_text(host: Host, kind_name: str, name: str, *, system: DisplaySystem) -> str:
    """One entry with each figure and where it stands; raises CatalogError if there is none."""
    kind = KINDS[kind_name]
    entries = _entries(host.catalog, kind)
    # a faying class is found by its code and letter only
    entry = (
        host.catalog.faying_class(name) if kind.field == "faying_classes" else entries.find(name)
    )
    origin = _origin(host, kind, entry.name)
    parts = [f"{subheading(entry.name, 'text')}\n{entries.kind}, from {origin}"]
    parts += [_record(record, what, system) for what, record in _records(entry)]
    return "\n\n".join(parts) + "\n"


def _entries(catalog: Catalog, kind: Kind) -> Entries[Any]:
    entries: Entries[Any] = getattr(catalog, kind.field)
    return entries


def _origin(host: Host, kind: Kind, name: str) -> str:
    for plugin in host.plugins:
        if f"{kind.field}/{name}" in plugin.entries:
            return plugin.name
    return host.plugins[0].name


def _records(entry: Sourced) -> Iterator[tuple[str, Sourced]]:
    """An entry and the records in it, with what each is."""
    yield "", entry
    if isinstance(entry, BoltProduct):
        for size in entry.sizes.values():
            yield size.name, size
        if entry.rules is not None:
            yield "parts, marks and installation", entry.rules


def _record(record: Sourced, what: str, system: DisplaySystem) -> str:
    rows = [
        [label, _cell(value, unit, system), _printed(unit, system), source]
        for label, value, unit, source in _figures(record, system)
    ]
    table = grid(
        rows,
        headers=("figure", "value", "unit", "source"),
        align=("left", "left", "left", "left"),
        style="text",
    )
    return f"{what}\n{table}" if what else table


def _figures(record: Sourced, system: DisplaySystem) -> Iterator[tuple[str, Any, str, str]]:
    """Label, value, unit and source of each figure of a record."""
    for one in fields(record):
        if one.name in _NOT_FIGURES:
            continue
        value, source = getattr(record, one.name), record.source_of(one.name)
        label = one.name.replace("_", " ")
        if isinstance(value, WeatheringParts):
            for part, text in value._asdict().items():
                yield f"{label}: {part}", text, "", source
        elif isinstance(record, AssemblyRules) or not isinstance(value, Mapping | tuple):
            yield label, value, _UNITS.get(one.name, ""), source
        elif isinstance(value, Mapping):
            for key, figure in value.items():
                yield f"{label}: {key}", figure, "mm", source
        else:
            yield from _listed(one.name, label, value, source, system)


def _listed(
    name: str, label: str, value: Sequence[Any], source: str, system: DisplaySystem
) -> Iterator[tuple[str, Any, str, str]]:
    if name == "bands":
        for band in value:
            upto = f"of plates up to {_length(band.max_thickness, system)}"
            yield f"yield strength {upto}", band.yield_strength, "MPa", source
            yield f"tensile strength {upto}", band.tensile_strength, "MPa", source
    elif name in _BANDS:
        of, unit = _BANDS[name]
        for limit, figure in value:
            yield f"{label}, {of} up to {_length(limit, system)}", figure, unit, source
    else:
        yield label, ", ".join(map(str, value)), "", source


def _cell(value: Any, unit: str, system: DisplaySystem) -> str:
    if value is None or value == "":
        return MISSING
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, str):
        return value
    return number_text(shown_value(value, unit or "1", system)[0])


def _length(value: float, system: DisplaySystem) -> str:
    shown, unit = shown_value(value, "mm", system)
    return f"{shown:.6g} {unit}"


def _header(title: str, unit: str, system: DisplaySystem) -> str:
    printed = _printed(unit, system)
    return f"{title} [{printed}]" if printed else title


def _printed(unit: str, system: DisplaySystem) -> str:
    if unit in {"", "1"}:
        return ""
    return shown_value(np.float64(1.0), unit, system)[1]


def _range(values: Sequence[float]) -> str:
    low, high = number_text(min(values)), number_text(max(values))
    return low if low == high else f"{low} to {high}"
