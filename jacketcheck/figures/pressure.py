"""Pressure on the sleeve against axial strain of the core, with yield and slip."""

from __future__ import annotations

import numpy as np
from matplotlib.axes import Axes

from jacketcheck.analysis.pressure_curve import PressureCurve, pressure_curve
from jacketcheck.figures.drawing import Drawing
from jacketcheck.figures.labels import LineEnd, Mark, name_line_ends, name_positions
from jacketcheck.figures.style import INK, LINES, PAPER, SOFT, chart, new_figure, styled
from jacketcheck.figures.words import axis_label, length_text, quantity, shown
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.units import DisplaySystem

__all__ = ["pressure"]


@styled
def pressure(jacket: Jacket, *, system: DisplaySystem) -> Drawing:
    """Draw the pressure as the core is strained; one design.

    Parameters
    ----------
    jacket
        The jacket.
    system
        Units of the axes.

    Returns
    -------
    Drawing
        Pressure with the specified minimum and the expected yield strength of the sleeve.
    """
    curve = pressure_curve(jacket)
    figure = new_figure(7.0, 3.2)
    axes = chart(figure, right=1.95, top=0.45)
    strain = curve.axial_strain
    top = max(curve.expected[-1], curve.checked_expected, curve.yield_pressure)
    if np.isfinite(curve.slip_less_laps):
        top = max(top, curve.slip_less_laps)
    axes.set_xlim(0.0, float(strain[-1]))
    axes.set_ylim(0.0, 1.08 * shown(top, "MPa", system))
    ends = []
    lines = ((curve.expected, "sleeve at expected\nyield strength"),
             (curve.minimum, "sleeve at specified\nyield strength"))  # fmt: skip
    for (values, name), style in zip(lines, LINES, strict=False):
        y = shown(1.0, "MPa", system) * values
        axes.plot(strain, y, color=style.color, linestyle=style.dashes)
        ends.append(LineEnd(float(strain[-1]), float(y[-1]), name, style.color))
    ends += _limits(axes, curve, system)
    name_line_ends(axes, ends)
    name_positions(axes, [Mark(curve.checked_strain, "checked strain")])
    _points(axes, curve, system)
    axes.set_xlabel(axis_label("axial strain of the core", "1", system))
    axes.set_ylabel(axis_label("pressure on the sleeve", "MPa", system))
    return Drawing(
        name="pressure",
        title="Pressure on the sleeve against axial strain of the core",
        alt=_alt(curve, system),
        figure=figure,
        remark=_remark(curve, system),
    )


def _limits(axes: Axes, curve: PressureCurve, system: DisplaySystem) -> list[LineEnd]:
    """Level lines at yield of the sleeve and slip of the seams."""
    with_laps = ",\nlaps included" if curve.lap_pressure > 0.0 else ""
    limits = [(curve.yield_less_laps, f"sleeve yields{with_laps}")]
    if np.isfinite(curve.slip_less_laps):
        limits.append((curve.slip_less_laps, f"seams slip{with_laps}"))
    ends = []
    for value, text in limits:
        y = shown(value, "MPa", system)
        axes.axhline(y, color=SOFT, linewidth=0.9, linestyle=(0.0, (2.0, 1.5)))
        ends.append(LineEnd(float(curve.axial_strain[-1]), y, text))
    return ends


def _points(axes: Axes, curve: PressureCurve, system: DisplaySystem) -> None:
    """The checked state, full; yield and slip, hollow."""
    marks = [
        (curve.checked_strain, curve.checked_expected, INK),
        (curve.yield_strain, curve.yield_less_laps, PAPER),
        (curve.slip_strain, curve.slip_less_laps, PAPER),
    ]
    for strain, value, face in marks:
        if np.isfinite(strain):
            axes.plot(
                strain,
                shown(value, "MPa", system),
                marker="o",
                markersize=5.5,
                markerfacecolor=face,
                markeredgecolor=INK,
                zorder=6,
            )


def _alt(curve: PressureCurve, system: DisplaySystem) -> str:
    def words(value: float, unit: str = "1") -> str:
        return quantity(value, unit, system)

    sentences = [
        (
            "Pressure of the dilating core on the sleeve: at the checked axial strain of "
            f"{words(curve.checked_strain)} it is {words(curve.checked_expected, 'MPa')}."
        ),
    ]
    laps = ""
    if curve.lap_pressure > 0.0:
        laps = ", with the laps of the added bars,"
    sentences.append(
        f"The sleeve (specified yield strength){laps} yields at "
        f"{words(curve.yield_less_laps, 'MPa')} and a strain of {words(curve.yield_strain)}."
    )
    if not np.isfinite(curve.slip_pressure):
        sentences.append(
            "The bolts are snug-tight: the curves are those of bolts that bear from the start; "
            "holes may let the sleeve engage only after up to "
            f"{length_text(curve.initial_play, system)} of radial play."
        )
    elif np.isfinite(curve.slip_strain):
        sentences.append(
            f"The seams{laps} slip at {words(curve.slip_less_laps, 'MPa')} and a strain of "
            f"{words(curve.slip_strain)}."
        )
    else:
        sentences.append(
            f"The seams{laps} would slip at {words(curve.slip_less_laps, 'MPa')}, which the sleeve "
            "does not reach."
        )
    return " ".join(sentences)


def _remark(curve: PressureCurve, system: DisplaySystem) -> str:
    parts = ["Full point: state that is checked; hollow points: first yield and slip."]
    if curve.lap_pressure > 0.0:
        share = quantity(curve.lap_pressure, "MPa", system)
        parts.append(
            "The laps of the added bars take as much of the sleeve and its seams as "
            f"{share} would; the level lines are lower by that."
        )
    return " ".join(parts)
