"""Bolt products: grades of a family of sizes, put together from the tables of several standards."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any, NamedTuple

from jacketcheck.catalog._load import UNITS, aliases_of, read_file, read_table, without_noise
from jacketcheck.catalog.assembly_rules import built_in_assembly_rules
from jacketcheck.catalog.bands import Bands
from jacketcheck.catalog.entries import Entries
from jacketcheck.catalog.records import BoltProduct, BoltSize

__all__ = ["built_in_bolts"]

_STRESSES = ("tensile_stress", "shear_stress_included", "shear_stress_excluded")
_WRENCH = ("socket_diameter", "tightening_clearance", "entering_clearance")


class _Part(NamedTuple):
    """Some fields of a bolt size, and their sources."""

    fields: Mapping[str, Any]
    sources: Mapping[str, str]


def built_in_bolts() -> Iterator[BoltProduct]:
    """ASTM F3125 bolts in inches and metric, and EN 14399 assemblies."""
    written = read_file("bolt_products")
    for entry in written["products"]:
        family, grade = written["families"][entry["family"]], written["grades"][entry["grade"]]
        tolerances = written["length_tolerances"].get(family.get("length_tolerances"))
        yield _product(entry, family, grade, tolerances)


def _product(
    entry: Mapping[str, Any],
    family: Mapping[str, Any],
    grade: Mapping[str, Any],
    tolerances: Mapping[str, Any] | None,
) -> BoltProduct:
    unit = UNITS[grade["unit"]]
    tensile_strength = grade["tensile_strength"] * unit
    name = entry["name"]
    return BoltProduct(
        name=name,
        tensile_strength=tensile_strength,
        yield_strength=grade["yield_strength"] * unit,
        **{field: _stress(grade, field, tensile_strength, unit) for field in _STRESSES},
        sizes=Entries(f"size of {name}", _sizes(entry, family, grade, tensile_strength)),
        length_increments=_scaled(family["lengths"]["increments"], family["lengths"]["unit"]),
        length_tolerances=()
        if tolerances is None
        else _scaled(tolerances["below_nominal"], tolerances["unit"]),
        rules=built_in_assembly_rules(name),
        assembly=entry.get("assembly", "heavy hex"),
        galvanizing_allowed=entry.get("galvanizing_allowed", True),
        source=entry["source"],
        sources={
            **dict.fromkeys(_STRESSES, grade["stress_source"]),
            "length_increments": family["length_source"],
            **({} if tolerances is None else {"length_tolerances": family["tolerance_source"]}),
        },
        aliases=tuple(entry["aliases"]),
    )


def _stress(grade: Mapping[str, Any], field: str, tensile_strength: float, unit: float) -> float:
    """Printed stress, or the printed share of the tensile strength."""
    if field in grade:
        return float(grade[field]) * unit
    return without_noise(float(grade[f"{field}_over_strength"]) * tensile_strength)


def _scaled(pairs: Sequence[Sequence[float]], unit: str) -> Bands:
    return tuple(
        (without_noise(limit * UNITS[unit]), without_noise(value * UNITS[unit]))
        for limit, value in pairs
    )


def _sizes(
    entry: Mapping[str, Any],
    family: Mapping[str, Any],
    grade: Mapping[str, Any],
    tensile_strength: float,
) -> Iterator[BoltSize]:
    """Sizes of a product, from the smallest to the largest that it is made in."""
    threads = read_table(family["threads"])
    names = list(threads.rows)
    first = names.index(entry.get("smallest_size", names[0]))
    last = names.index(entry.get("largest_size", names[-1]))
    sources: dict[str, str] = {}  # the same for all sizes of a product
    for name in names[first : last + 1]:
        thread = threads.rows[name]
        holes = _holes(family, name, thread["diameter"])
        parts = (
            _Part(thread, threads.sources),
            holes,
            _edges(family, name, thread["diameter"], holes.fields["holes"]),
            _pretension(family, grade, name, tensile_strength * thread["tensile_stress_area"]),
            _hardware(family, name),
            _wrench(entry, name),
        )
        if not sources:
            sources = {field: text for part in parts for field, text in part.sources.items()}
        yield BoltSize(
            name=name,
            **{field: value for part in parts for field, value in part.fields.items()},
            source=threads.source,
            sources=sources,
            aliases=aliases_of(name, threads.settings["aliases"]),
        )


def _holes(family: Mapping[str, Any], name: str, diameter: float) -> _Part:
    """Printed holes, or printed clearances around the bolt."""
    if "holes" in family:
        table = read_table(family["holes"])
        return _Part({"holes": dict(table.rows[name])}, {"holes": table.source})
    table = read_table(family["clearances"])
    clearance = table.rows[name]
    standard = diameter + clearance["standard"]
    long_slot = diameter * (1.0 + table.settings["long_slot_clearance_over_diameter"])
    holes = {
        "standard": standard,
        "oversized": diameter + clearance["oversized"],
        "short-slot-width": standard,
        "short-slot-length": diameter + clearance["short-slot"],
        "long-slot-width": standard,
        "long-slot-length": long_slot,
    }
    return _Part({"holes": holes}, {"holes": table.source})


def _edges(
    family: Mapping[str, Any], name: str, diameter: float, holes: Mapping[str, float]
) -> _Part:
    """Printed edge distances, or printed multiples of the hole."""
    if "edges" not in family:
        return _edges_over_hole(read_file(family["edges_over_hole"]), holes)
    table = read_table(family["edges"])
    row = table.rows[name]
    increments = {
        "oversized": row["oversized"],
        "short-slot": row["short-slot"],
        "short-slot-along-edge": 0.0,
        "long-slot": table.settings["long_slot_increment_over_diameter"] * diameter,
        "long-slot-along-edge": 0.0,
    }
    return _Part(
        {"min_edge_distance": row["standard"], "edge_increments": increments},
        {"min_edge_distance": table.source, "edge_increments": table.settings["increment_source"]},
    )


def _edges_over_hole(rule: Mapping[str, Any], holes: Mapping[str, float]) -> _Part:
    least = rule["round_hole_over_diameter"] * holes["standard"]
    increments = {"oversized": rule["round_hole_over_diameter"] * holes["oversized"] - least}
    for slot in ("short-slot", "long-slot"):
        width, length = holes[f"{slot}-width"], holes[f"{slot}-length"]
        across = rule["slot_over_width"] * width - least
        increments[f"{slot}-along-edge"] = across
        # the rule counts from the centre of the round end, the increment from that of the slot
        increments[slot] = across + (length - width) / 2.0
    return _Part(
        {
            "min_edge_distance": without_noise(least),
            "edge_increments": {hole: without_noise(more) for hole, more in increments.items()},
        },
        {"min_edge_distance": rule["source"], "edge_increments": rule["increment_source"]},
    )


def _pretension(
    family: Mapping[str, Any], grade: Mapping[str, Any], name: str, tensile_capacity: float
) -> _Part:
    """Printed pretension, or the printed share of the tensile capacity in the threads."""
    if "pretension" in family:
        table = read_table(family["pretension"])
        pretension = table.rows[name].get(grade["pretension"])
        return _Part({"pretension": pretension}, {"pretension": table.source})
    return _Part(
        {"pretension": without_noise(grade["pretension_over_strength"] * tensile_capacity)},
        {"pretension": grade["pretension_source"]},
    )


def _hardware(family: Mapping[str, Any], name: str) -> _Part:
    """Nut, head, washer and thread length."""
    table = read_table(family["hardware"])
    row = dict(table.rows[name])
    unit = UNITS[table.settings["length_unit"]]
    thread_lengths = tuple(
        (without_noise(limit * unit), row.pop(column))
        for number, limit in enumerate(table.settings["thread_length_limits"], start=1)
        if (column := f"thread_length_{number}") in row
    )
    fields = {**row, "thread_lengths": thread_lengths}
    return _Part(fields, {one: table.sources.get(one, table.source) for one in fields})


def _wrench(entry: Mapping[str, Any], name: str) -> _Part:
    """Clearances for the wrench, where they are published for the product."""
    if "wrench" not in entry:
        return _Part({}, dict.fromkeys(_WRENCH, "no published value"))
    table = read_table(entry["wrench"])
    return _Part(table.rows[name], table.sources)
