"""Moment demand and capacity along the height of the repair."""

from __future__ import annotations

from jacketcheck.analysis.base import base_section
from jacketcheck.analysis.height import HeightProfile, height_profile, worst_height
from jacketcheck.figures.drawing import Drawing
from jacketcheck.figures.labels import Mark, name_positions
from jacketcheck.figures.style import INK, LINES, SMALL, SOFT, WARNING, chart, new_figure, styled
from jacketcheck.figures.words import axis_label, length_text, quantity, shown
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.units import DisplaySystem

__all__ = ["moment_height"]


@styled
def moment_height(jacket: Jacket, *, system: DisplaySystem) -> Drawing:
    """Draw demand and capacity from the footing to where the hinge begins; one design.

    Parameters
    ----------
    jacket
        The jacket.
    system
        Units of the axes.

    Returns
    -------
    Drawing
        Height upwards; where the demand exceeds the capacity the area between them is hatched.
    """
    profile = height_profile(jacket)
    figure = new_figure(7.0, 3.5)
    axes = chart(figure, right=1.9, top=0.42)
    height = profile.height * shown(1.0, "mm", system)
    demand = profile.demand * shown(1.0, "N mm", system)
    capacity = profile.capacity * shown(1.0, "N mm", system)
    axes.set_xlim(0.0, 1.12 * max(float(demand.max()), float(capacity.max())))
    axes.set_ylim(0.0, float(height[-1]))
    marks = []
    for (values, name), style in zip(
        ((demand, "demand"), (capacity, "capacity")), LINES, strict=False
    ):
        axes.plot(values, height, color=style.color, linestyle=style.dashes)
        marks.append(Mark(float(values[-1]), name, style.color))
    axes.fill_betweenx(
        height,
        capacity,
        demand,
        where=demand > capacity,
        interpolate=True,
        facecolor="none",
        edgecolor=WARNING,
        hatch="////",
        linewidth=0.0,
    )
    name_positions(axes, marks, down=False)
    worst = worst_height(jacket)
    level = shown(float(worst.height), "mm", system)
    exceeds = float(worst.demand) > float(worst.capacity)
    words = "exceeds its capacity\nmost" if exceeds else "nearest to its capacity\nabove the base"
    axes.axhline(level, color=SOFT, linewidth=0.9, linestyle=(0.0, (2.0, 1.5)))
    axes.text(1.02, level, words, va="center", fontsize=SMALL, color=WARNING if exceeds else INK,
              transform=axes.get_yaxis_transform())  # fmt: skip
    axes.set_xlabel(axis_label("moment", "N mm", system))
    axes.set_ylabel(axis_label("height above the footing", "mm", system))
    return Drawing(
        name="moment-height",
        title="Moment demand and capacity along the repair",
        alt=_alt(jacket, profile, system),
        figure=figure,
        remark="Fractured bars develop upwards from their fracture, added bars from both of their "
        "ends. Drawn up to where the yielding of the hinge reaches into the repair.",
    )


def _alt(jacket: Jacket, profile: HeightProfile, system: DisplaySystem) -> str:
    worst, base = worst_height(jacket), base_section(jacket)

    def moment(value: float) -> str:
        return quantity(value, "N mm", system)

    above = "exceeds" if float(worst.demand) > float(worst.capacity) else "stays below"
    at_base = "exceeds" if profile.demand[0] > float(base.moment_capacity) else "stays below"
    return (
        "With the relocated hinge at its overstrength the demand falls from "
        f"{moment(profile.demand[0])} at the footing to {moment(profile.demand[-1])} where "
        f"the hinge begins, {length_text(worst.hinge_bottom, system)} above it. At the footing it "
        f"{at_base} the capacity of {moment(float(base.moment_capacity))}. Above, it comes nearest "
        f"to the capacity, or exceeds it most, at {length_text(worst.height, system)}: a "
        f"demand of {moment(float(worst.demand))} {above} a capacity of "
        f"{moment(float(worst.capacity))}."
    )
