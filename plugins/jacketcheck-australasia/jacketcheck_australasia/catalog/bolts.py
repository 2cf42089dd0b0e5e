"""High-strength bolts of AS/NZS 1252, property class 8.8."""

from __future__ import annotations

from typing import Final, NamedTuple

from jacketcheck.plugin import BoltProduct, BoltSize, Entries
from jacketcheck_australasia.catalog.installation import ASSEMBLY_RULES
from jacketcheck_australasia.mechanics.detailing import min_edge_distance

__all__ = ["BOLTS"]


class _Printed(NamedTuple):
    """A row of the standards' tables, in mm, mm² and kN."""

    diameter: float
    pitch: float
    stress_area: float
    tension: float
    width: float
    head: float
    nut: float
    washer: float


_ROWS: Final = (
    _Printed(16.0, 2.0, 157.0, 95.0, 27.0, 10.75, 17.1, 34.0),
    _Printed(20.0, 2.5, 245.0, 145.0, 34.0, 13.9, 20.7, 42.0),
    _Printed(24.0, 3.0, 353.0, 210.0, 41.0, 15.9, 24.2, 50.0),
    _Printed(30.0, 3.5, 561.0, 335.0, 50.0, 20.05, 30.7, 60.0),
    _Printed(36.0, 4.0, 817.0, 490.0, 60.0, 24.05, 36.6, 72.0),
)
_WASHER_THICKNESS: Final = 4.0
_RUN_OUT: Final = 5.0
"""Length over which a thread runs out, in pitches."""

_HOLES: Final = "AS/NZS 5131:2016 6.7; NZS 3404:1997 cl. 14.3.5.2 (from memory)"
_EDGES: Final = (
    "AS 4100:2020 Table 9.5.2, NZS 3404:1997 Table 9.6.2: 1.75 d_f, sheared or hand flame cut "
    "(from memory)"
)
_DIMENSIONS: Final = "AS/NZS 1252.1:2016 (largest dimensions, from memory)"
_NO_VALUE: Final = "no published value"


def _holes(diameter: float) -> dict[str, float]:
    """Standard 2 or 3 mm over the bolt; oversize and slots by ratio or allowance, the larger."""
    standard = diameter + (2.0 if diameter <= 24.0 else 3.0)
    return {
        "standard": standard,
        "oversized": max(1.25 * diameter, diameter + 8.0),
        "short-slot-width": standard,
        "short-slot-length": max(1.33 * diameter, diameter + 10.0),
        "long-slot-width": standard,
        "long-slot-length": 2.5 * diameter,
    }


def _edge_increments(holes: dict[str, float]) -> dict[str, float]:
    """What keeps the same steel between hole and edge as a standard hole has."""
    return {
        "oversized": (holes["oversized"] - holes["standard"]) / 2.0,
        "short-slot": (holes["short-slot-length"] - holes["standard"]) / 2.0,
        "short-slot-along-edge": 0.0,
        "long-slot": (holes["long-slot-length"] - holes["standard"]) / 2.0,
        "long-slot-along-edge": 0.0,
    }


def _size(row: _Printed) -> BoltSize:
    holes = _holes(row.diameter)
    return BoltSize(
        name=f"M{row.diameter:g}",
        diameter=row.diameter,
        thread_pitch=row.pitch,
        tensile_stress_area=row.stress_area,
        pretension=1000.0 * row.tension,
        holes=holes,
        min_edge_distance=float(min_edge_distance(row.diameter)),
        edge_increments=_edge_increments(holes),
        nut_width=row.width,
        nut_height=row.nut,
        head_height=row.head,
        washer_diameter=row.washer,
        washer_thickness=_WASHER_THICKNESS,
        thread_lengths=(
            (125.0, 2.0 * row.diameter + 6.0),
            (200.0, 2.0 * row.diameter + 12.0),
            (300.0, 2.0 * row.diameter + 25.0),
        ),
        transition_length=_RUN_OUT * row.pitch,
        source="AS/NZS 1252.1:2016; AS 1275-1985 stress areas",
        sources={
            "pretension": "AS 4100:2020 Table 15.2.2.2 (15.2.5.1 in the 1998 edition); NZS "
            "3404:1997 Table 15.2.5.1 (from memory)",
            "holes": _HOLES,
            "min_edge_distance": _EDGES,
            "edge_increments": "engineering judgement: same steel between hole and edge as at a "
            "standard hole",
            "nut_width": _DIMENSIONS,
            "nut_height": "as ASME B18.2.4.6M-2010 heavy hex (largest; from memory)",
            "head_height": _DIMENSIONS,
            "washer_diameter": _DIMENSIONS,
            "washer_thickness": "AS/NZS 1252.1:2016, middle of the permitted range (from memory)",
            "thread_lengths": "AS/NZS 1252.1:2016: 2 d + 6, + 12, + 25 mm (from memory)",
            "transition_length": "engineering judgement: five pitches, as EN 14399-3:2015 (from "
            "memory)",
            "tightening_clearance": _NO_VALUE,
            "entering_clearance": _NO_VALUE,
            "socket_diameter": _NO_VALUE,
        },
        aliases=(f"M {row.diameter:g}",),
    )


def _product() -> BoltProduct:
    name, strength = "AS/NZS 1252 8.8", 830.0
    threaded = "AISC 360-22 Table J3.2, threaded parts: 0.75, 0.450 and 0.563 of f_uf"
    return BoltProduct(
        name=name,
        tensile_strength=strength,
        yield_strength=660.0,
        shear_stress_included=0.450 * strength,
        shear_stress_excluded=0.563 * strength,
        tensile_stress=0.75 * strength,
        sizes=Entries(f"size of {name}", [_size(row) for row in _ROWS]),
        length_increments=((100.0, 5.0), (300.0, 10.0)),
        rules=ASSEMBLY_RULES,
        source="AS/NZS 1252.1:2016 property class 8.8 (830 and 660 MPa as in a bolt maker's table)",
        sources={
            "shear_stress_included": threaded,
            "shear_stress_excluded": threaded,
            "tensile_stress": threaded,
            "length_increments": "common practice, no published source: 5 mm up to 100 mm, 10 mm "
            "above",
        },
        aliases=("AS/NZS 1252", "AS/NZS 1252 8.8/TF", "AS/NZS 1252 8.8/TB", "AS/NZS 1252 8.8/S"),
    )


BOLTS: Final = (_product(),)
"""One product; its bolting category (8.8/S, 8.8/TB, 8.8/TF) follows from how it is tightened and
what it is designed for."""
