"""What drawings of the jacket share: break lines, ground and hidden edges."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, Final

from matplotlib.patches import Patch, Polygon, Rectangle

from jacketcheck.figures.sheet import Sheet
from jacketcheck.figures.style import INK, SOFT

__all__ = ["HIDDEN", "block", "break_line", "broken_edges", "hexagon"]

HIDDEN: Final = {"color": SOFT, "linewidth": 0.8, "linestyle": (0.0, (4.0, 2.0))}
"""An edge behind something."""


def block(x: tuple[float, float], y: tuple[float, float], **how: Any) -> Rectangle:
    """A rectangle between two x and two y."""
    settings: dict[str, Any] = {"edgecolor": INK, "linewidth": 0.7, **how}
    return Rectangle((x[0], y[0]), x[1] - x[0], y[1] - y[0], **settings)


def broken_edges(sheet: Sheet, x: Sequence[float], y: Sequence[float]) -> list[tuple[float, float]]:
    """Points of an edge that is cut: straight but for one zigzag in its middle.

    `x` and `y` hold its two ends.
    """
    (x0, x1), (y0, y1) = x, y
    run = ((x1 - x0) ** 2 + (y1 - y0) ** 2) ** 0.5
    along = ((x1 - x0) / run, (y1 - y0) / run)
    across = (-along[1], along[0])
    step, reach = sheet.points(2.5), sheet.points(4.0)
    points = [(x0, y0)]
    for forward, sideways in ((-1.0, 0.0), (-0.5, 1.0), (0.5, -1.0), (1.0, 0.0)):
        distance = run / 2.0 + forward * step
        points.append(
            (
                x0 + along[0] * distance + across[0] * sideways * reach,
                y0 + along[1] * distance + across[1] * sideways * reach,
            )
        )
    return [*points, (x1, y1)]


def break_line(sheet: Sheet, x: Sequence[float], y: Sequence[float]) -> None:
    """Draw an edge where something goes on that is not drawn."""
    points = broken_edges(sheet, x, y)
    sheet.line([one[0] for one in points], [one[1] for one in points], color=SOFT, linewidth=0.7)


def hexagon(x: float, y: float, width: float, **how: Any) -> Patch:
    """A nut seen from its end, `width` across its flats."""
    half, corner = width / 2.0, width / 3.0**0.5
    corners = [
        (x - corner, y),
        (x - corner / 2.0, y + half),
        (x + corner / 2.0, y + half),
        (x + corner, y),
        (x + corner / 2.0, y - half),
        (x - corner / 2.0, y - half),
    ]
    return Polygon(corners, closed=True, **how)
