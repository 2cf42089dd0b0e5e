"""Stress along a fractured bar, chipped free and left in cracked concrete."""

from __future__ import annotations

from jacketcheck.analysis.bar_profiles import BarProfiles, bar_profiles
from jacketcheck.figures.drawing import Drawing
from jacketcheck.figures.labels import LineEnd, Mark, name_line_ends, name_positions
from jacketcheck.figures.style import LINES, SOFT, chart, new_figure, styled
from jacketcheck.figures.words import axis_label, length_text, quantity, shown
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.units import DisplaySystem

__all__ = ["bar_stress"]


@styled
def bar_stress(jacket: Jacket, *, system: DisplaySystem) -> Drawing:
    """Draw the stress that bond builds up in the neediest fractured bars; one design.

    Parameters
    ----------
    jacket
        The jacket.
    system
        Units of the axes.

    Returns
    -------
    Drawing
        From the fracture to the top of the repair.

    Raises
    ------
    NotEvaluatedError
        If no bar is anchored by bond alone.
    """
    found = bar_profiles(jacket)
    figure = new_figure(7.0, 3.1)
    axes = chart(figure, right=1.85, top=0.45)
    top = float(jacket.repair_height)
    axes.set_xlim(0.0, shown(top, "mm", system))
    axes.set_ylim(0.0, 1.08 * shown(found.target_stress, "MPa", system))
    ends = []
    for profile in found.profiles:
        style = LINES[0 if profile.surface == "chipped" else 1]
        x = (profile.along.distance + found.anchorage_start) * shown(1.0, "mm", system)
        y = profile.along.stress * shown(1.0, "MPa", system)
        own = profile.surface == found.surface
        axes.plot(x, y, color=style.color, linestyle=style.dashes, linewidth=2.0 if own else 1.3)
        name = f"{profile.surface}\n({'this jacket' if own else 'for comparison'})"
        ends.append(LineEnd(float(x[-1]), float(y[-1]), name, style.color))
    limits = {found.yield_strength: "expected yield", found.target_stress: "target"}
    for value, name in limits.items():
        level = shown(value, "MPa", system)
        axes.axhline(level, color=SOFT, linewidth=0.9, linestyle=(0.0, (2.0, 1.5)))
        ends.append(LineEnd(shown(top, "mm", system), level, name))
    name_line_ends(axes, ends)
    name_positions(
        axes,
        [
            Mark(shown(found.fracture_height, "mm", system), "fracture"),
            Mark(shown(top, "mm", system), "top of repair"),
        ],
    )
    axes.set_xlabel(axis_label("height above the footing", "mm", system))
    axes.set_ylabel(axis_label("stress in the bar", "MPa", system))
    return Drawing(
        name="bar-stress",
        title="Stress along a fractured bar",
        alt=_alt(found, top, system),
        figure=figure,
        remark=f"{found.where[:1].upper()}{found.where[1:]}: of all groups this one needs most of "
        "the length it has. Both surfaces at the confining pressure that this jacket keeps. A bar "
        "that reaches the target with length to spare stays unstressed near its fracture.",
    )


def _alt(found: BarProfiles, top: float, system: DisplaySystem) -> str:
    target = quantity(found.target_stress, "MPa", system)
    length = length_text(top - found.anchorage_start, system)
    start = f"zero at the fracture {length_text(found.fracture_height, system)} above the footing"
    if found.anchorage_start > found.fracture_height:
        start += f" and up to the sleeve, {length_text(found.anchorage_start, system)} above it"
    sentences = [
        (
            f"Stress in {found.where}, {start}, over the {length} to the top of the repair; the "
            f"target there is {target}."
        )
    ]
    for profile in found.profiles:
        reached = quantity(profile.developed, "MPa", system)
        tail = "the target" if profile.reaches_target else f"{reached}, short of the target"
        sentences.append(f"{profile.surface.capitalize()}, the bar reaches {tail}.")
    if found.left_out:
        sentences.append(f"The other surface is not shown: {found.left_out}.")
    return " ".join(sentences)
