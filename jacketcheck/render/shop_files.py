"""The shop's files by name: a drawing for each pattern, and the quantities."""

from __future__ import annotations

import csv
import io
from collections.abc import Callable

from jacketcheck.host.made_by import made_by
from jacketcheck.render.records import plain_cell
from jacketcheck.render.shop_numbers import shop_quantity
from jacketcheck.shop.drawing import dxf_text
from jacketcheck.shop.package import ShopPackage
from jacketcheck.shop.patterns import FlatPattern
from jacketcheck.units import DisplaySystem, display

__all__ = ["drawing_words", "quantities_csv", "shop_files"]


def shop_files(package: ShopPackage, *, system: DisplaySystem) -> dict[str, str]:
    """Content by file name.

    Raises
    ------
    MissingExtraError
        If ezdxf is not installed.
    """
    files = {
        f"{pattern.mark}.dxf": dxf_text(
            pattern,
            words=drawing_words(package, pattern, system=system),
            length_text=lambda length: shop_quantity(length, "mm", system),
            system=system,
        )
        for pattern in package.patterns
    }
    return {**files, "quantities.csv": quantities_csv(package, system=system)}


def drawing_words(
    package: ShopPackage, pattern: FlatPattern, *, system: DisplaySystem
) -> tuple[str, ...]:
    """Lines of text beside a pattern."""

    def size(length: float) -> str:
        return shop_quantity(length, "mm", system)

    job = f"{package.job.number}: " if package.job.number else ""
    makers = made_by(package.version, package.plugins, package.switched_off)
    return (
        f"{job}{package.job.title}",
        f"variant {package.variant}; {package.source}, SHA-256 {package.digest[:16]}",
        "",
        f"{pattern.title.upper()} - cut {pattern.pieces}",
        f"plate {size(pattern.thickness)}, {pattern.steel}",
        "seen on the face that will be outside; alike left and right, top and bottom",
        f"length {size(pattern.length)} along the middle, radius {size(pattern.middle_radius)}",
        f"roll to an inside radius of {size(pattern.inside_radius)}",
        *_hole_words(pattern, size),
        "holes lie on the radial lines of the sleeve's holes: each plate has its own gauge",
        "match-drill, or check against its mate before the second plate is drilled",
        "",
        *_faying_words(package, pattern),
        "",
        f"drawn by {makers}; unit of the drawing: {display('mm', system)[1]}",
        *package.cautions,
    )


def _hole_words(pattern: FlatPattern, size: Callable[[float], str]) -> tuple[str, ...]:
    """How many holes of which size, and where their lines and rows are."""
    hole = pattern.holes[0]
    if not hole.is_round:
        shape = f"slotted, {size(hole.width)} along the hoop × {size(hole.height)} along the seam"
    else:
        shape = f"diameter {size(hole.width)}"
    lines = sorted({round(one.x, 6) for one in pattern.holes})
    rows = sorted({round(one.y, 6) for one in pattern.holes})
    return (
        f"{len(pattern.holes)} holes, {shape}, {pattern.hole_making}",
        f"lines from the left edge: {', '.join(map(size, lines))}",
        f"rows from the lower end: {', '.join(map(size, rows))}",
    )


def _faying_words(package: ShopPackage, pattern: FlatPattern) -> tuple[str, ...]:
    faces = " and ".join(dict.fromkeys(strip.faces for strip in pattern.strips))
    classes = ", ".join(name for name, _ in package.faying_classes)
    unpainted = dict.fromkeys(text for _, text in package.faying_classes if text)
    return (f"dashed: faying surface, class {classes}, on the face(s) {faces}", *unpainted)


_CSV_COLUMNS = ("item", "value", "unit", "basis", "source")


def quantities_csv(package: ShopPackage, *, system: DisplaySystem) -> str:
    """Quantities in the units of the drawings, at full precision, and the cautions."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(_CSV_COLUMNS)
    for one in package.quantities:
        factor, printed = display(one.unit, system)
        unit = "" if printed == "—" else printed
        row = (one.item, one.value * factor, unit, one.basis, one.source)
        writer.writerow(plain_cell(cell) for cell in row)
    for caution in package.cautions:
        writer.writerow(plain_cell(cell) for cell in ("cautions", caution, "", "", ""))
    return out.getvalue()
