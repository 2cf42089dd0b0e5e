"""High-strength structural bolts of IS 3757, property classes 8.8 and 10.9."""

from __future__ import annotations

from typing import Final, NamedTuple

from jacketcheck.plugin import BoltProduct, BoltSize, Entries
from jacketcheck_india.catalog.installation import assembly_rules
from jacketcheck_india.mechanics.detailing import min_edge_distance
from jacketcheck_india.mechanics.slip import proof_load

__all__ = ["BOLTS"]


class _Printed(NamedTuple):
    """A row of the standards' tables, in mm and mm²; clearances over the bolt."""

    diameter: float
    pitch: float
    stress_area: float
    width: float
    head: float
    nut: float
    washer: float
    washer_thickness: float
    thread_short: float
    thread_long: float
    clearance: float
    oversize: float
    short_slot: float


_ROWS: Final = (
    _Printed(16.0, 2.0, 157.0, 27.0, 10.75, 17.1, 30.0, 4.0, 31.0, 38.0, 2.0, 4.0, 6.0),
    _Printed(20.0, 2.5, 245.0, 34.0, 13.40, 20.7, 37.0, 4.0, 36.0, 43.0, 2.0, 4.0, 6.0),
    _Printed(22.0, 2.5, 303.0, 36.0, 14.90, 23.6, 39.0, 4.0, 38.0, 45.0, 2.0, 4.0, 6.0),
    _Printed(24.0, 3.0, 353.0, 41.0, 15.90, 24.2, 44.0, 4.0, 41.0, 48.0, 2.0, 6.0, 8.0),
    _Printed(27.0, 3.0, 459.0, 46.0, 17.90, 27.6, 50.0, 5.0, 44.0, 51.0, 3.0, 8.0, 10.0),
    _Printed(30.0, 3.5, 561.0, 50.0, 19.75, 30.7, 56.0, 5.0, 49.0, 56.0, 3.0, 8.0, 10.0),
    _Printed(36.0, 4.0, 817.0, 60.0, 23.55, 36.6, 66.0, 6.0, 56.0, 63.0, 3.0, 8.0, 10.0),
)

_RUN_OUT: Final = 5.0
"""Length over which a thread runs out, in pitches."""

_BOLT: Final = "IS 3757:1985 (as ISO 7412:1984, largest dimensions, from memory)"
_WASHER: Final = "IS 6649:1985 (from memory)"
_NO_VALUE: Final = "no published value"
_SOURCES: Final = {
    "pretension": "IS 800:2007 cl. 10.4.3: F_o = 0.70 f_ub A_nb",
    "holes": "IS 800:2007 Table 19 (from memory) and cl. 17.2.4.3",
    "min_edge_distance": "IS 800:2007 cl. 10.2.4.2: 1.7 hole diameters, sheared or hand flame cut",
    "edge_increments": "IS 800:2007 cl. 10.2.4.2 on the hole's dimension; slots: engineering "
    "judgement, same steel between hole and edge as at a standard hole",
    "nut_width": _BOLT,
    "head_height": _BOLT,
    "thread_lengths": _BOLT,
    "nut_height": "IS 6623:2004 (as heavy hex nuts, largest, from memory)",
    "washer_diameter": _WASHER,
    "washer_thickness": _WASHER,
    "transition_length": "engineering judgement: five pitches, as EN 14399-3:2015 (from memory)",
    "tightening_clearance": _NO_VALUE,
    "entering_clearance": _NO_VALUE,
    "socket_diameter": _NO_VALUE,
}


def _holes(row: _Printed) -> dict[str, float]:
    standard = row.diameter + row.clearance
    return {
        "standard": standard,
        "oversized": row.diameter + row.oversize,
        "short-slot-width": standard,
        "short-slot-length": row.diameter + row.short_slot,
        "long-slot-width": standard,
        "long-slot-length": 2.5 * row.diameter,
    }


def _edge_increments(holes: dict[str, float], least: float) -> dict[str, float]:
    return {
        "oversized": float(min_edge_distance(holes["oversized"])) - least,
        "short-slot": (holes["short-slot-length"] - holes["standard"]) / 2.0,
        "short-slot-along-edge": 0.0,
        "long-slot": (holes["long-slot-length"] - holes["standard"]) / 2.0,
        "long-slot-along-edge": 0.0,
    }


def _size(row: _Printed, tensile_strength: float) -> BoltSize:
    holes = _holes(row)
    least = float(min_edge_distance(holes["standard"]))
    return BoltSize(
        name=f"M{row.diameter:g}",
        diameter=row.diameter,
        thread_pitch=row.pitch,
        tensile_stress_area=row.stress_area,
        pretension=float(proof_load(tensile_strength, tensile_stress_area=row.stress_area)),
        holes=holes,
        min_edge_distance=least,
        edge_increments=_edge_increments(holes, least),
        nut_width=row.width,
        nut_height=row.nut,
        head_height=row.head,
        washer_diameter=row.washer,
        washer_thickness=row.washer_thickness,
        thread_lengths=((100.0, row.thread_short), (300.0, row.thread_long)),
        transition_length=_RUN_OUT * row.pitch,
        source="IS 3757:1985; IS 1367 (Part 3):2002 stress areas",
        sources=_SOURCES,
        aliases=(f"M {row.diameter:g}",),
    )


def _product(property_class: str, tensile_strength: float, yield_strength: float) -> BoltProduct:
    name = f"IS 3757 {property_class}"
    threaded = "AISC 360-22 Table J3.2, threaded parts: 0.75, 0.450 and 0.563 of f_ub"
    return BoltProduct(
        name=name,
        tensile_strength=tensile_strength,
        yield_strength=yield_strength,
        shear_stress_included=0.450 * tensile_strength,
        shear_stress_excluded=0.563 * tensile_strength,
        tensile_stress=0.75 * tensile_strength,
        sizes=Entries(f"size of {name}", [_size(row, tensile_strength) for row in _ROWS]),
        length_increments=((100.0, 5.0), (300.0, 10.0)),
        rules=assembly_rules(name, property_class),
        galvanizing_allowed=property_class == "8.8",
        source=f"IS 3757:1985 and IS 1367 (Part 3):2002 class {property_class}, nominal strengths "
        "(IS 800:2007 Table 1 has up to 4% more for larger bolts)",
        sources={
            "shear_stress_included": threaded,
            "shear_stress_excluded": threaded,
            "tensile_stress": threaded,
            "galvanizing_allowed": "engineering judgement for class 10.9, hydrogen embrittlement",
            "length_increments": "common practice, no published source: 5 mm up to 100 mm, 10 mm "
            "above",
        },
    )


BOLTS: Final = (_product("8.8", 800.0, 640.0), _product("10.9", 1000.0, 900.0))
"""Both property classes."""
