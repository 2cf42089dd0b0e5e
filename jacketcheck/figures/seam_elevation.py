"""Elevation of a seam: splice plate and bolts with their dimensions."""

from __future__ import annotations

from matplotlib.patches import Circle

from jacketcheck.figures.drafting import HIDDEN, block, break_line, hexagon
from jacketcheck.figures.drawing import Drawing
from jacketcheck.figures.seam_geometry import SeamGeometry, seam_geometry
from jacketcheck.figures.seam_widths import LEVELS_HEIGHT, dimension_widths
from jacketcheck.figures.sheet import Padding, Sheet
from jacketcheck.figures.style import CONCRETE, INK, PAPER, PLATE, SMALL, styled
from jacketcheck.figures.words import joined, length_text, spaced
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.units import DisplaySystem

__all__ = ["seam_elevation"]


@styled
def seam_elevation(jacket: Jacket, *, system: DisplaySystem) -> Drawing:
    """Draw one seam from outside; one design.

    Parameters
    ----------
    jacket
        The jacket.
    system
        Units of the dimensions.

    Returns
    -------
    Drawing
        To scale, the sleeve laid flat; both seams are alike.
    """
    seam = seam_geometry(jacket)
    top = float(jacket.sleeve.gap) + float(jacket.sleeve.height)
    shell = 1.45 * seam.half_width
    sheet = Sheet(
        (-shell, shell),
        (0.0, top),
        padding=Padding(left=92.0, right=92.0, bottom=26.0, top=LEVELS_HEIGHT),
        width=7.0,
        tallest=5.3,
    )
    _shell(sheet, jacket, shell)
    _plate(sheet, jacket, seam)
    dimension_widths(sheet, jacket, seam, top=top, system=system)
    _heights(sheet, jacket, seam, shell, system)
    return Drawing(
        name="seam-elevation",
        title="Elevation of a seam with its bolts",
        alt=_alt(jacket, system),
        figure=sheet.figure,
        remark="Seen from outside, the sleeve laid flat, to scale; both seams are alike.",
    )


def _shell(sheet: Sheet, jacket: Jacket, shell: float) -> None:
    low = float(jacket.sleeve.gap)
    top = low + float(jacket.sleeve.height)
    sheet.add([block((-shell, shell), (low, top), facecolor="#e9edf0", edgecolor="none")])
    for y in (low, top):
        sheet.line((-shell, shell), (y, y), linewidth=0.9)
    for x in (-shell, shell):
        break_line(sheet, (x, x), (low, top))
    ground = (-shell - sheet.points(6.0), shell + sheet.points(6.0))
    depth = sheet.points(13.0)
    sheet.add([block(ground, (-depth, 0.0), facecolor=CONCRETE, edgecolor="none")])
    sheet.line(ground, (0.0, 0.0), linewidth=1.2)
    sheet.text(0.0, -depth / 2.0, "footing", fontsize=SMALL, color=INK)


def _plate(sheet: Sheet, jacket: Jacket, seam: SeamGeometry) -> None:
    bolts, low = jacket.bolts, float(jacket.sleeve.gap)
    top = low + float(jacket.sleeve.height)
    width = (-seam.half_width, seam.half_width)
    sheet.add([block(width, (low, top), facecolor=PLATE, alpha=0.75)])
    for x in (-seam.half_gap, seam.half_gap):
        sheet.line((x, x), (low, top), **HIDDEN)
    nut = {"facecolor": PAPER, "edgecolor": INK, "linewidth": 0.6}
    radius = float(bolts.diameter) / 2.0
    for row in seam.rows:
        for line in seam.bolt_lines:
            for x in (-line, line):
                shank = Circle((x, low + row), radius, facecolor=INK, edgecolor="none")
                sheet.add([hexagon(x, low + row, float(bolts.nut_width), **nut), shank])


def _heights(
    sheet: Sheet, jacket: Jacket, seam: SeamGeometry, shell: float, system: DisplaySystem
) -> None:
    bolts, low = jacket.bolts, float(jacket.sleeve.gap)
    top = low + float(jacket.sleeve.height)
    right = shell + sheet.points(22.0)
    end = length_text(bolts.end_distance, system)
    first, last = low + seam.rows[0], low + seam.rows[-1]
    between = spaced(len(seam.rows) - 1, float(bolts.pitch), system)
    for start, stop, text in ((low, first, end), (first, last, between), (last, top, end)):
        sheet.upright(start, stop, at=right, text=text, edge=shell, side="right")
    left = -shell - sheet.points(22.0)
    if low > 0.0:
        text, fits = f"gap {length_text(low, system)}", low > sheet.points(10.0)
        sheet.upright(0.0, low, at=left, text=text, edge=-shell, side="right" if fits else "left")
    sleeve = f"sleeve {length_text(jacket.sleeve.height, system)}"
    sheet.upright(low, top, at=left, text=sleeve, edge=-shell)
    if abs(top - float(jacket.repair_height)) < 0.5:
        whole = f"repair {length_text(top, system)}"
        sheet.upright(0.0, top, at=left - sheet.points(26.0), text=whole, edge=-shell)


def _alt(jacket: Jacket, system: DisplaySystem) -> str:
    bolts, splice, sleeve = jacket.bolts, jacket.splice, jacket.sleeve
    rows, columns = int(bolts.rows), int(bolts.columns)
    across = [
        (
            f"{length_text(bolts.seam_edge_distance, system)} from the shell's edge to the first "
            "line"
        ),
        (
            f"{length_text(bolts.plate_edge_distance, system)} from the last line to the plate's "
            "edge"
        ),
    ]
    if columns > 1:
        across.insert(1, f"{length_text(bolts.gauge, system)} between lines")
    return (
        f"Splice plate {length_text(splice.width, system)} wide and "
        f"{length_text(sleeve.height, system)} high over a seam that is open by "
        f"{length_text(sleeve.seam_gap, system)}, "
        f"{length_text(sleeve.gap, system)} above the footing. On each side {rows} rows and "
        f"{columns} lines of {bolts.size} {bolts.product} bolts: rows "
        f"{length_text(bolts.pitch, system)} apart and "
        f"{length_text(bolts.end_distance, system)} from the ends; {joined(across)}."
    )
