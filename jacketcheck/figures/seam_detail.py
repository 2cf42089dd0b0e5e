"""Horizontal section through a seam: plates, bolts, grout and column, to scale."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import Any

from matplotlib.patches import Circle, Patch

from jacketcheck.figures.drafting import block, break_line
from jacketcheck.figures.drawing import Drawing
from jacketcheck.figures.seam_geometry import SeamGeometry, seam_geometry
from jacketcheck.figures.seam_widths import LEVELS_HEIGHT, dimension_widths
from jacketcheck.figures.sheet import Padding, Sheet
from jacketcheck.figures.style import (
    CONCRETE,
    GROUT,
    INK,
    PAPER,
    PLATE,
    SLEEVE,
    SOFT,
    styled,
)
from jacketcheck.figures.words import length_text
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.units import DisplaySystem

__all__ = ["seam_detail"]


@styled
def seam_detail(jacket: Jacket, *, system: DisplaySystem) -> Drawing:
    """Draw a horizontal section through one seam; one design.

    Parameters
    ----------
    jacket
        The jacket.
    system
        Units of the dimensions.

    Returns
    -------
    Drawing
        To scale, laid flat along the sleeve, outside at the top. Heights are counted from the
        inner face of the sleeve.
    """
    seam = seam_geometry(jacket)
    face = -float(jacket.grout.thickness)
    inside = face - float(jacket.column.cover)
    thickness = float(jacket.sleeve.thickness)
    half = 1.22 * seam.half_width
    sheet = Sheet(
        (-half, half),
        (inside, thickness + seam.outside_reach),
        padding=Padding(left=12.0, right=130.0, bottom=8.0, top=LEVELS_HEIGHT),
        width=7.0,
        tallest=4.2,
    )
    _ground(sheet, half, face, inside)
    _reinforcement(sheet, jacket, half)
    _plates(sheet, jacket, seam, half)
    for line in seam.bolt_lines:
        for x in (-line, line):
            sheet.add(_bolt(jacket, x))
    for x in (-half, half):
        break_line(sheet, (x, x), (inside, thickness))
    dimension_widths(sheet, jacket, seam, top=thickness + seam.outside_reach, system=system)
    _notes(sheet, jacket, seam, half, system)
    return Drawing(
        name="seam-detail",
        title="Section through a seam",
        alt=_alt(jacket, seam, system),
        figure=sheet.figure,
        remark="Horizontal section laid flat along the sleeve, to scale; on which side the nuts "
        "are is not an input.",
    )


def _ground(sheet: Sheet, half: float, face: float, inside: float) -> None:
    width = (-half, half)
    sheet.add([block(width, (face, 0.0), facecolor=GROUT, edgecolor="none")])
    sheet.add([block(width, (inside, face), facecolor=CONCRETE, edgecolor="none")])
    sheet.line(width, (face, face), linewidth=0.9)
    for y, text in (((face + 0.0) / 2.0, "grout"), ((face + inside) / 2.0, "column")):
        sheet.text(-half + sheet.points(24.0), y, text, color=SOFT)


def _added_bars(jacket: Jacket, half: float) -> list[tuple[float, float]]:
    """Centres of the added bars that stand in the drawn part of the annulus."""
    if jacket.added_bars is None:
        return []
    added = jacket.added_bars.layer
    radius, sleeve = float(added.circle_radius), float(jacket.sleeve.inner_radius)
    turn, room = 2.0 * math.pi, half - float(added.diameter)
    centres = []
    for index in range(int(added.count)):
        clock = float(added.first_angle) + turn * index / int(added.count)
        off = (clock - float(jacket.sleeve.seam_angle) + turn / 2.0) % turn - turn / 2.0
        centres.append((off * sleeve, radius - sleeve))
    return [one for one in centres if abs(one[0]) < room]


def _reinforcement(sheet: Sheet, jacket: Jacket, half: float) -> None:
    if jacket.added_bars is None:
        return
    radius = float(jacket.added_bars.layer.diameter) / 2.0
    sheet.add(
        Circle(centre, radius, facecolor=PLATE, edgecolor=INK, linewidth=0.8)
        for centre in _added_bars(jacket, half)
    )


def _plates(sheet: Sheet, jacket: Jacket, seam: SeamGeometry, half: float) -> None:
    thickness, splice = float(jacket.sleeve.thickness), jacket.splice
    for start, end in ((-half, -seam.half_gap), (seam.half_gap, half)):
        sheet.add([block((start, end), (0.0, thickness), facecolor=SLEEVE)])
    width = (-seam.half_width, seam.half_width)
    top = thickness + float(splice.outside_thickness)
    sheet.add([block(width, (thickness, top), facecolor=PLATE)])
    if float(splice.inside_thickness) > 0.0:
        sheet.add([block(width, (-float(splice.inside_thickness), 0.0), facecolor=PLATE)])


def _bolt(jacket: Jacket, x: float) -> Iterator[Patch]:
    """Shank, washer, nut outside and head inside."""
    bolts, splice = jacket.bolts, jacket.splice
    low = -float(splice.inside_thickness)
    high = float(jacket.sleeve.thickness) + float(splice.outside_thickness)
    washer, nut, head = (
        float(bolts.washer_thickness),
        float(bolts.nut_height),
        float(bolts.head_height),
    )
    half = float(bolts.diameter) / 2.0
    how: dict[str, Any] = {"facecolor": PAPER, "edgecolor": INK, "linewidth": 0.7, "zorder": 5}

    def part(breadth: float, start: float, end: float, **more: Any) -> Patch:
        return block((x - breadth / 2.0, x + breadth / 2.0), (start, end), **{**how, **more})

    yield part(2.0 * half, low - head, high + washer + nut, facecolor=INK, zorder=4)
    yield part(float(bolts.washer_diameter), high, high + washer)
    yield part(float(bolts.nut_width), high + washer, high + washer + nut)
    yield part(float(bolts.nut_width), low - head, low)


def _notes(
    sheet: Sheet, jacket: Jacket, seam: SeamGeometry, half: float, system: DisplaySystem
) -> None:
    """Names and thicknesses on the right, one below the other."""
    splice, bolts = jacket.splice, jacket.bolts
    thickness, grout = float(jacket.sleeve.thickness), float(jacket.grout.thickness)
    outside, inside = float(splice.outside_thickness), float(splice.inside_thickness)
    plate = seam.half_width - sheet.points(5.0)
    notes = [
        ((plate, thickness + outside / 2.0), f"outside plate {length_text(outside, system)}"),
        ((half - sheet.points(9.0), thickness / 2.0), f"sleeve {length_text(thickness, system)}"),
    ]
    if inside > 0.0:
        notes.append(((plate, -inside / 2.0), f"inside plate {length_text(inside, system)}"))
    if jacket.added_bars is not None:
        name = f"added bar {jacket.added_bars.layer.size}"
        notes += [(bar, name) for bar in _added_bars(jacket, half)[-1:]]
    notes.append(((half - sheet.points(9.0), -0.8 * grout), f"grout {length_text(grout, system)}"))
    x = half + sheet.points(12.0)
    y = thickness + outside / 2.0 + sheet.points(20.0)
    bolt = (seam.bolt_lines[-1], thickness + seam.outside_reach - float(bolts.nut_height) / 2.0)
    sheet.note(bolt, (x, y), f"bolt {bolts.size}, {_hole_text(jacket, system)}")
    for point, text in notes:
        y = min(y - sheet.points(13.0), point[1] + sheet.points(7.0))
        sheet.note(point, (x, y), text)


def _hole_text(jacket: Jacket, system: DisplaySystem) -> str:
    """Size of the holes along the hoop, of each ply where they differ."""
    sleeve, splice = (length_text(ply.hole.along, system) for ply in (jacket.sleeve, jacket.splice))
    if jacket.sleeve.hole.kind == jacket.splice.hole.kind:
        return f"hole {sleeve}"
    return f"hole {sleeve} in the sleeve, {splice} in the plates"


def _alt(jacket: Jacket, seam: SeamGeometry, system: DisplaySystem) -> str:
    splice, bolts = jacket.splice, jacket.bolts
    inside = float(splice.inside_thickness)
    plates = f"a plate of {length_text(splice.outside_thickness, system)} outside"
    plates += f" and one of {length_text(inside, system)} inside" if inside > 0.0 else " only"
    return (
        "Section through a seam: half-shells of "
        f"{length_text(jacket.sleeve.thickness, system)} plate, "
        f"{length_text(jacket.sleeve.seam_gap, system)} apart, joined by {plates}, "
        f"{length_text(splice.width, system)} wide, with {int(bolts.columns)} lines of "
        f"{bolts.size} bolts on each side, {_hole_text(jacket, system)}; "
        f"{int(splice.shear_planes)} shear "
        f"plane{'s' if int(splice.shear_planes) > 1 else ''}, grip "
        f"{length_text(jacket.grip, system)}. Bolts stand up to "
        f"{length_text(seam.inside_reach, system)} into the grout, which is "
        f"{length_text(jacket.grout.thickness, system)} thick."
    )
