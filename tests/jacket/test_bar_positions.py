"""Bars by number and by the clock, and the sides of the column."""

from __future__ import annotations

import math

import pytest

from jacketcheck.inputs.column import ColumnBars, Damage
from jacketcheck.inputs.jacket import Repair, SurfaceSector
from jacketcheck.jacket.bar_positions import (
    bar_angle,
    bar_numbers,
    clock_angle,
    nearest_bar,
    surface_at,
)


def bars(count: int, first_angle: float = 0.0) -> ColumnBars:
    return ColumnBars(size="No. 8", count=count, steel="S", first_angle=f"{first_angle} deg")


@pytest.mark.parametrize(
    ("position", "degrees"),
    [("12:00", 0), ("12", 0), ("12:30", 15), ("1:00", 30), ("3", 90), ("6:18", 189)],
)  # fmt: skip
def test_clock(position: str, degrees: float) -> None:
    assert clock_angle(position) == pytest.approx(math.radians(degrees))


@pytest.mark.parametrize(
    ("number", "first", "degrees"),
    [(1, 0, 0), (1, -30, 330), (4, 0, 90), (12, 30, 0), (12, 45, 15)],
)  # fmt: skip
def test_bar_angles(number: int, first: float, degrees: float) -> None:
    found = bar_angle(number, bars(12, first))
    assert 0.0 <= found < 2.0 * math.pi
    assert math.cos(found - math.radians(degrees)) == pytest.approx(1.0)


@pytest.mark.parametrize(
    ("position", "count", "first", "number"),
    [
        ("12:00", 12, 0, 1),
        ("3:00", 12, 0, 4),
        ("3:14", 24, 0, 7),
        ("3:16", 24, 0, 8),
        ("3:30", 12, 0, None),  # midway between bars 4 and 5
        ("11:45", 12, 0, 1),
        ("12:00", 12, 15, None),
        ("12:00", 20, 9, None),
        ("6:18", 20, 9, 11),
        ("12:00", 12, -360, 1),
        ("12:00", 12, 90, 10),
    ],
)
def test_nearest_bar(position: str, count: int, first: float, number: int | None) -> None:
    assert nearest_bar(position, bars(count, first)) == number


def test_bars_of_a_record_come_in_its_order() -> None:
    record = Damage(bars=(5, 2), clock=("12:00", "3:00"), state="yielded", height="0 mm")
    assert bar_numbers(record, bars(12)) == (5, 2, 1, 4)


def sides(*extents: tuple[str, str]) -> Repair:
    return Repair(
        height="1 m",
        gap="50 mm",
        surface="unchipped",
        sides=tuple(
            SurfaceSector(clock_from=start, clock_to=end, surface="chipped")
            for start, end in extents
        ),
    )


@pytest.mark.parametrize(
    ("degrees", "surface"),
    [
        (0.0, "chipped"),
        (300.0, "chipped"),
        (299.9, "unchipped"),
        (60.0, "chipped"),
        (60.1, "unchipped"),
        (180.0, "unchipped"),
        (360.0, "chipped"),
    ],
)
def test_a_side_over_twelve_o_clock(degrees: float, surface: str) -> None:
    assert surface_at(math.radians(degrees), sides(("10:00", "2:00"))) == surface


def test_without_sides_the_whole_surface_counts() -> None:
    assert surface_at(1.0, sides()) == "unchipped"
