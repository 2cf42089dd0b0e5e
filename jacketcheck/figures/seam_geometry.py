"""Where the parts of a seam lie, for the figures that show one; one design."""

from __future__ import annotations

from dataclasses import dataclass

from jacketcheck.jacket.jacket import Jacket

__all__ = ["SeamGeometry", "seam_geometry"]


@dataclass(frozen=True)
class SeamGeometry:
    """Lengths of one seam [mm].

    Attributes
    ----------
    bolt_lines
        Distance of each bolt line on one side from the middle of the seam, the nearest first.
    rows
        Height of each bolt row above the lower end of the sleeve.
    half_gap, half_width
        Half the opening between the shells, and half the width of a splice plate.
    inside_reach, outside_reach
        How far bolts stand inside and outside of the sleeve: splice plate, washer, and the larger
        of head and nut.
    """

    bolt_lines: tuple[float, ...]
    rows: tuple[float, ...]
    half_gap: float
    half_width: float
    inside_reach: float
    outside_reach: float


def seam_geometry(jacket: Jacket) -> SeamGeometry:
    """Lay a seam out in numbers."""
    sleeve, splice, bolts = jacket.sleeve, jacket.splice, jacket.bolts
    half_gap = float(sleeve.seam_gap) / 2.0
    first = half_gap + float(bolts.seam_edge_distance)
    hardware = float(bolts.washer_thickness) + max(
        float(bolts.head_height), float(bolts.nut_height)
    )
    return SeamGeometry(
        bolt_lines=tuple(first + index * float(bolts.gauge) for index in range(int(bolts.columns))),
        rows=tuple(
            float(bolts.end_distance) + index * float(bolts.pitch)
            for index in range(int(bolts.rows))
        ),
        half_gap=half_gap,
        half_width=float(splice.width) / 2.0,
        inside_reach=float(splice.inside_thickness) + hardware,
        outside_reach=float(splice.outside_thickness) + hardware,
    )
