"""Moment-curvature of the original column, the repaired base and the section above the repair."""

from __future__ import annotations

import numpy as np
from matplotlib.ticker import MaxNLocator

from jacketcheck.analysis.base import base_section
from jacketcheck.analysis.hinge import hinge
from jacketcheck.analysis.section_curves import SectionCurve, section_curves
from jacketcheck.figures.drawing import Drawing
from jacketcheck.figures.labels import LineEnd, name_line_ends
from jacketcheck.figures.style import LINES, PAPER, SOFT, chart, new_figure, styled
from jacketcheck.figures.words import axis_label, quantity, shown
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.units import DisplaySystem

__all__ = ["moment_curvature"]


@styled
def moment_curvature(jacket: Jacket, *, system: DisplaySystem) -> Drawing:
    """Draw the response of the three sections; one design.

    Parameters
    ----------
    jacket
        The jacket.
    system
        Units of the axes.

    Returns
    -------
    Drawing
        From rest to the ultimate curvature of each section, with first yield and the moment that
        the relocated hinge brings to the base.
    """
    curves, demand = section_curves(jacket), float(hinge(jacket).base_moment)
    strength = float(base_section(jacket).moment_capacity)
    figure = new_figure(7.0, 3.3)
    axes = chart(figure, right=1.8, top=0.2)
    last = max(float(curve.curvature[-1]) for curve in curves)
    highest = max(demand, *(curve.peak_moment for curve in curves))
    axes.set_xlim(0.0, 1.03 * shown(last, "1/mm", system))
    axes.set_ylim(0.0, 1.08 * shown(highest, "N mm", system))
    ends = []
    for curve, style in zip(curves, LINES, strict=False):
        x = curve.curvature * shown(1.0, "1/mm", system)
        y = curve.moment * shown(1.0, "N mm", system)
        axes.plot(x, y, color=style.color, linestyle=style.dashes)
        axes.plot(x[-1], y[-1], color=style.color, marker=style.marker, markersize=5.0)
        if np.isfinite(curve.yield_curvature):
            axes.plot(
                shown(curve.yield_curvature, "1/mm", system),
                shown(curve.yield_moment, "N mm", system),
                color=style.color,
                marker=style.marker,
                markersize=4.5,
                markerfacecolor=PAPER,
            )
        ends.append(LineEnd(float(x[-1]), float(y[-1]), curve.name, style.color))
    for value, name in ((demand, "demand at the base,\nhinge relocated"),
                        (strength, "strength of the base,\nas checked")):  # fmt: skip
        level = shown(value, "N mm", system)
        axes.axhline(level, color=SOFT, linewidth=0.9, linestyle=(0.0, (2.0, 1.5)))
        ends.append(LineEnd(axes.get_xlim()[1], level, name))
    name_line_ends(axes, ends)
    axes.xaxis.set_major_locator(MaxNLocator(6, steps=[1, 2, 2.5, 5, 10]))
    axes.set_xlabel(axis_label("curvature", "1/mm", system))
    axes.set_ylabel(axis_label("moment", "N mm", system))
    return Drawing(
        name="moment-curvature",
        title="Moment-curvature of the three sections",
        alt=_alt(curves, demand, strength, system),
        figure=figure,
        remark="Expected strengths, repaired sections in their weakest direction. Hollow points: "
        "first yield; full points: ultimate curvature. The base's curve counts on all of grout "
        "ring and added bars; its strength as checked only on what friction hands over to them.",
    )


def _alt(
    curves: tuple[SectionCurve, ...], demand: float, strength: float, system: DisplaySystem
) -> str:
    sentences = []
    for curve in curves:
        text = (
            f"{curve.name.capitalize()}: largest moment "
            f"{quantity(curve.peak_moment, 'N mm', system)}"
        )
        if np.isfinite(curve.yield_curvature):
            text += f", first yield at {quantity(curve.yield_curvature, '1/mm', system)}"
        if np.isfinite(curve.ultimate_curvature):
            text += (
                f", ultimate curvature {quantity(curve.ultimate_curvature, '1/mm', system)} "
                f"({curve.ultimate_cause})"
            )
        sentences.append(f"{text}.")
    sentences.append(
        "The relocated hinge at its overstrength asks for "
        f"{quantity(demand, 'N mm', system)} at the base, which is checked with a strength of "
        f"{quantity(strength, 'N mm', system)}."
    )
    return " ".join(sentences)
