"""Flat patterns of the half-shells and splice plates: outlines and holes before rolling.

A pattern is seen on the face that will be outside. Its origin is the lower left corner; x runs
along the hoop, y up. All patterns are symmetric to their vertical middle line, so that both
half-shells are cut by one pattern, and both plates of a kind by another.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from jacketcheck.jacket.jacket import Jacket
from jacketcheck.jacket.jacket_parts import Hole
from jacketcheck.mechanics.flat_shell import developed_half_shell, offset_on_radius

__all__ = ["FayingStrip", "FlatPattern", "HoleCut", "flat_patterns"]


@dataclass(frozen=True, slots=True)
class HoleCut:
    """A hole: centre and dimensions along x and y [mm]; round where the two are the same."""

    x: float
    y: float
    width: float
    height: float

    @property
    def area(self) -> float:
        """Area [mm²]; slots have round ends."""
        short, long = sorted((self.width, self.height))
        return math.pi * short**2 / 4.0 + (long - short) * short

    @property
    def is_round(self) -> bool:
        """Whether it is drilled in one go."""
        return math.isclose(self.width, self.height, abs_tol=1e-9)


@dataclass(frozen=True, slots=True)
class FayingStrip:
    """A strip of the full height that slides on another plate [mm], and on which faces."""

    start: float
    end: float
    faces: str


@dataclass(frozen=True, slots=True)
class FlatPattern:
    """One plate before it is rolled.

    Attributes
    ----------
    mark
        Name of the piece, also of its file.
    title
        What it is.
    pieces
        How many to cut.
    length, height, thickness
        Along the hoop, along the seam, and of the plate [mm].
    inside_radius
        Radius to roll to, inside [mm].
    middle_radius
        Radius of the middle of the plate, on which `length` is measured [mm].
    steel
        What it is made of.
    holes
        Row by row from below, each from left to right.
    hole_making
        ``drilled`` or ``punched``.
    strips
        Where the faces must be as the faying class says.
    """

    mark: str
    title: str
    pieces: int
    length: float
    height: float
    thickness: float
    inside_radius: float
    middle_radius: float
    steel: str
    holes: tuple[HoleCut, ...]
    hole_making: str
    strips: tuple[FayingStrip, ...]

    @property
    def net_area(self) -> float:
        """Area less holes [mm²]."""
        return self.length * self.height - sum(hole.area for hole in self.holes)


def flat_patterns(jacket: Jacket) -> tuple[FlatPattern, ...]:
    """Patterns of all plates of a jacket of one design.

    Parameters
    ----------
    jacket
        Seam edge distance, gauge and seam gap are taken along the middle of the sleeve's plate;
        the plate edge distance along the middle of the splice plate.

    Returns
    -------
    tuple of FlatPattern
        Half-shell, outside plate and, where there is one, inside plate.

    Notes
    -----
    Holes of splice plates lie on the radial lines of the sleeve's holes, so that outside plates
    have a larger gauge than the sleeve and inside plates a smaller one.
    """
    patterns = [_half_shell(jacket), _splice_plate(jacket, outside=True)]
    if float(jacket.splice.inside_thickness) > 0.0:
        patterns.append(_splice_plate(jacket, outside=False))
    return tuple(patterns)


def _half_shell(jacket: Jacket) -> FlatPattern:
    sleeve, bolts = jacket.sleeve, jacket.bolts
    length = float(
        developed_half_shell(
            float(sleeve.inner_diameter),
            thickness=float(sleeve.thickness),
            seam_gap=float(sleeve.seam_gap),
        )
    )
    lines = [
        float(bolts.seam_edge_distance) + index * float(bolts.gauge)
        for index in range(int(bolts.columns))
    ]
    both = float(jacket.splice.inside_thickness) > 0.0
    faces = "outside and inside" if both else "outside"
    reach = max(
        _covered_length(jacket, outside=True), _covered_length(jacket, outside=False) if both else 0
    )
    return FlatPattern(
        mark="half-shell",
        title="Half-shell",
        pieces=2,
        length=length,
        height=float(sleeve.height),
        thickness=float(sleeve.thickness),
        inside_radius=float(sleeve.inner_radius),
        middle_radius=_middle_radius(jacket),
        steel=sleeve.steel.name,
        holes=_holes(jacket, sleeve.hole, [*lines, *(length - line for line in reversed(lines))]),
        hole_making=bolts.hole_making,
        strips=(FayingStrip(0.0, reach, faces), FayingStrip(length - reach, length, faces)),
    )


def _splice_plate(jacket: Jacket, *, outside: bool) -> FlatPattern:
    splice, bolts = jacket.splice, jacket.bolts
    radius = _plate_radius(jacket, outside=outside)
    offsets = [
        float(offset_on_radius(offset, from_radius=_middle_radius(jacket), to_radius=radius))
        for offset in _offsets(jacket)
    ]
    half = offsets[-1] + float(bolts.plate_edge_distance)
    thickness = float(splice.outside_thickness if outside else splice.inside_thickness)
    where = "outside" if outside else "inside"
    hidden = "inside" if outside else "outside"
    lines = [*(half - offset for offset in reversed(offsets)), *(half + one for one in offsets)]
    return FlatPattern(
        mark=f"splice-{where}",
        title=f"Splice plate, {where}",
        pieces=2,
        length=2.0 * half,
        height=float(jacket.sleeve.height),
        thickness=thickness,
        inside_radius=radius - thickness / 2.0,
        middle_radius=radius,
        steel=splice.steel.name,
        holes=_holes(jacket, splice.hole, lines),
        hole_making=bolts.hole_making,
        strips=(FayingStrip(0.0, 2.0 * half, hidden),),
    )


def _offsets(jacket: Jacket) -> list[float]:
    """Bolt lines from the middle of the seam, along the middle of the sleeve's plate [mm]."""
    bolts = jacket.bolts
    first = float(jacket.sleeve.seam_gap) / 2.0 + float(bolts.seam_edge_distance)
    return [first + index * float(bolts.gauge) for index in range(int(bolts.columns))]


def _middle_radius(jacket: Jacket) -> float:
    """Radius of the middle of the sleeve's plate [mm]."""
    return float(jacket.sleeve.inner_radius) + float(jacket.sleeve.thickness) / 2.0


def _plate_radius(jacket: Jacket, *, outside: bool) -> float:
    """Radius of the middle of a splice plate [mm]."""
    sleeve, splice = jacket.sleeve, jacket.splice
    if outside:
        face = float(sleeve.inner_radius) + float(sleeve.thickness)
        return face + float(splice.outside_thickness) / 2.0
    return float(sleeve.inner_radius) - float(splice.inside_thickness) / 2.0


def _covered_length(jacket: Jacket, *, outside: bool) -> float:
    """Length of sleeve under a plate, from the sleeve's edge along its middle [mm]."""
    middle = _middle_radius(jacket)
    radius = _plate_radius(jacket, outside=outside)
    edge = float(
        offset_on_radius(
            float(jacket.bolts.plate_edge_distance), from_radius=radius, to_radius=middle
        )
    )
    return _offsets(jacket)[-1] + edge - float(jacket.sleeve.seam_gap) / 2.0


def _holes(jacket: Jacket, hole: Hole, lines: list[float]) -> tuple[HoleCut, ...]:
    """A hole in each row on each line; the rows are centred on the height."""
    bolts = jacket.bolts
    rows = int(bolts.rows)
    first = (float(jacket.sleeve.height) - (rows - 1) * float(bolts.pitch)) / 2.0
    return tuple(
        HoleCut(x, first + row * float(bolts.pitch), float(hole.along), float(hole.across))
        for row in range(rows)
        for x in lines
    )
