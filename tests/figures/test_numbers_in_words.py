"""Numbers in the alternative texts and in the drawn lines are those of the analyses."""

from __future__ import annotations

import re

import numpy as np
import pytest
from matplotlib.lines import Line2D
from matplotlib.patches import Circle, Polygon, Rectangle

from jacketcheck.analysis.bar_profiles import bar_profiles
from jacketcheck.analysis.base import base_section
from jacketcheck.analysis.displacement import envelope_of_original, envelope_of_repaired
from jacketcheck.analysis.height import height_profile, worst_height
from jacketcheck.analysis.hinge import hinge
from jacketcheck.analysis.pressure_curve import pressure_curve
from jacketcheck.analysis.section_curves import section_curves
from jacketcheck.figures import draw
from jacketcheck.figures.drawing import Drawing
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics._arrays import Floats
from jacketcheck.report import CheckReport, VariantResults
from jacketcheck.results import Kind, Status
from tests.support.drawn_runs import drawing_of

NUMBER = re.compile(r"\d+(?:\.\d+)?(?:e-?\d+)?")


def told(text: str, value: float) -> bool:
    """Whether a text holds a number, to half of its last of four digits."""
    numbers = [float(found) for found in NUMBER.findall(text)]
    return any(number == pytest.approx(value, rel=6e-4, abs=1e-12) for number in numbers)


def curves(drawing: Drawing) -> list[Line2D]:
    (axes,) = drawing.figure.axes
    return [line for line in axes.lines if np.size(line.get_xdata()) > 10]


def x_of(line: Line2D) -> Floats:
    return np.asarray(line.get_xdata(), dtype=float)


def y_of(line: Line2D) -> Floats:
    return np.asarray(line.get_ydata(), dtype=float)


def test_pressure(table: VariantResults, drawn_jacket: Jacket) -> None:
    drawing, found = drawing_of("pressure", table), pressure_curve(drawn_jacket)
    for value in (found.checked_strain, found.checked_expected, found.yield_strain,
                  found.yield_less_laps, found.slip_less_laps):  # fmt: skip
        assert told(drawing.alt, value)
    expected, minimum = curves(drawing)
    np.testing.assert_allclose(x_of(expected), found.axial_strain)
    np.testing.assert_allclose(y_of(expected), found.expected)
    np.testing.assert_allclose(y_of(minimum), found.minimum)


def test_bar_stress(table: VariantResults, drawn_jacket: Jacket) -> None:
    drawing, found = drawing_of("bar-stress", table), bar_profiles(drawn_jacket)
    assert told(drawing.alt, found.target_stress)
    assert told(drawing.alt, found.fracture_height)
    for profile, line in zip(found.profiles, curves(drawing), strict=True):
        np.testing.assert_allclose(y_of(line), profile.along.stress)
        np.testing.assert_allclose(x_of(line)[-1], float(drawn_jacket.repair_height))
        if not profile.reaches_target:
            assert told(drawing.alt, profile.developed)


def test_moment_curvature(table: VariantResults, drawn_jacket: Jacket) -> None:
    drawing = drawing_of("moment-curvature", table)
    assert told(drawing.alt, float(hinge(drawn_jacket).base_moment) / 1e6)
    assert told(drawing.alt, float(base_section(drawn_jacket).moment_capacity) / 1e6)
    for curve, line in zip(section_curves(drawn_jacket), curves(drawing), strict=True):
        assert told(drawing.alt, curve.peak_moment / 1e6)
        assert told(drawing.alt, curve.ultimate_curvature * 1e3)
        np.testing.assert_allclose(y_of(line), curve.moment / 1e6)
        np.testing.assert_allclose(x_of(line), curve.curvature * 1e3)


def test_moment_height(table: VariantResults, drawn_jacket: Jacket) -> None:
    drawing, found = drawing_of("moment-height", table), height_profile(drawn_jacket)
    worst, base = worst_height(drawn_jacket), base_section(drawn_jacket)
    for value in (found.demand[0], found.demand[-1], worst.demand, worst.capacity,
                  base.moment_capacity):  # fmt: skip
        assert told(drawing.alt, float(value) / 1e6)
    demand, capacity = curves(drawing)
    np.testing.assert_allclose(x_of(demand), found.demand / 1e6)
    np.testing.assert_allclose(x_of(capacity), found.capacity / 1e6)
    np.testing.assert_allclose(y_of(capacity), found.height)


def test_force_displacement_of_all_variants(report: CheckReport) -> None:
    ((_, drawing),) = draw("force-displacement", report.tables, system="si")
    for table in report.tables:
        envelopes = (envelope_of_original(table.jacket), envelope_of_repaired(table.jacket))
        for envelope in envelopes:
            assert told(drawing.alt, envelope.peak_force / 1e3)
            assert told(drawing.alt, envelope.ultimate_displacement)
            assert any(
                np.array_equal(y_of(line), envelope.force * 1e-3) for line in curves(drawing)
            )
        assert table.variant in drawing.alt


def test_variants_with_one_envelope_share_a_line(report: CheckReport) -> None:
    chipped, thin = (one for one in report.tables if one.variant in {"chipped", "thin"})
    ((_, drawing),) = draw("force-displacement", (chipped, thin), system="si")
    assert len(curves(drawing)) == 2
    assert "Line of chipped and thin (exceeds)" in drawing.alt


@pytest.mark.parametrize("place", range(4))
def test_ratios(report: CheckReport, place: int) -> None:
    table = report.tables[place]
    drawing = drawing_of("ratios", table)
    (axes,) = drawing.figure.axes
    worst: dict[tuple[str, str], float] = {}
    for row in table.results:
        if row.kind is Kind.LIMIT:
            key = (row.limit_state, row.title)
            worst[key] = max(worst.get(key, 0.0), float(np.max(row.ratio)))
    bars = [patch for patch in axes.patches if isinstance(patch, Rectangle)]
    limit = axes.get_xlim()[1]
    assert sorted(bar.get_width() for bar in bars) == pytest.approx(
        sorted(min(value, limit) for value in worst.values())
    )
    hatched = [bar for bar in bars if bar.get_hatch()]
    assert len(hatched) == sum(value > 1.0 for value in worst.values())
    assert f"Verdict: {table.status.value}" in drawing.alt
    exceeding = {row.title for row in table.results if row.status is Status.EXCEEDS}
    assert all(title in drawing.alt for title in exceeding)


def test_plan_has_every_bar(table: VariantResults, drawn_jacket: Jacket) -> None:
    drawing = drawing_of("plan", table)
    (axes,) = drawing.figure.axes
    radius = float(drawn_jacket.column.layer.circle_radius)
    at_circle = {
        tuple(np.round(patch.center, 3))
        for patch in axes.patches
        if isinstance(patch, Circle) and np.hypot(*patch.center) == pytest.approx(radius)
    }
    assert len(at_circle) == len(drawn_jacket.column.bars)
    numbers = {
        text.get_text(): text.get_fontweight()
        for text in axes.texts
        if np.hypot(*text.get_position()) < radius
    }
    for bar in drawn_jacket.column.bars:
        assert numbers[str(bar.number)] == ("normal" if bar.state == "intact" else "bold")
    assert "4 fractured (bars 1, 2, 11, 20)" in drawing.alt
    assert "2 buckled (bars 3, 19)" in drawing.alt


def test_plan_turns_with_the_seam(report: CheckReport) -> None:
    table = next(one for one in report.tables if one.variant.startswith("one line"))
    drawing = drawing_of("plan", table)
    (axes,) = drawing.figure.axes
    bolts = [
        patch for patch in axes.patches if isinstance(patch, Polygon) and len(patch.get_xy()) == 5
    ]
    centres = [np.mean(patch.get_xy()[:4], axis=0) for patch in bolts]
    clocks = [np.degrees(np.arctan2(x, y)) % 180.0 for x, y in centres]
    assert np.mean(clocks) == pytest.approx(37.0, abs=0.5)
    assert "at 37° and 217° clockwise from 12 o'clock" in drawing.alt


def test_seam_detail_is_to_scale(table: VariantResults, drawn_jacket: Jacket) -> None:
    (axes,) = drawing_of("seam-detail", table).figure.axes
    sizes = [
        (patch.get_width(), patch.get_height())
        for patch in axes.patches
        if isinstance(patch, Rectangle)
    ]
    splice, bolts = drawn_jacket.splice, drawn_jacket.bolts
    washer, nut, head = bolts.washer_thickness, bolts.nut_height, bolts.head_height
    length = float(drawn_jacket.grip) + float(washer) + float(nut) + float(head)
    for size in (
        (splice.width, splice.outside_thickness),
        (splice.width, splice.inside_thickness),
        (bolts.nut_width, nut),
        (bolts.nut_width, head),
        (bolts.washer_diameter, washer),
        (bolts.diameter, length),
    ):
        wanted = pytest.approx([float(one) for one in size])
        assert any(list(found) == wanted for found in sizes), size


def test_seam_elevation_has_every_bolt(table: VariantResults, drawn_jacket: Jacket) -> None:
    (axes,) = drawing_of("seam-elevation", table).figure.axes
    bolts = drawn_jacket.bolts
    shanks = [patch for patch in axes.patches if isinstance(patch, Circle)]
    assert len(shanks) == 2 * int(bolts.rows) * int(bolts.columns)
    heights = sorted({round(patch.center[1], 6) for patch in shanks})
    np.testing.assert_allclose(np.diff(heights), float(bolts.pitch))
    low = float(drawn_jacket.sleeve.gap)
    assert heights[0] - low == pytest.approx(float(bolts.end_distance))


@pytest.mark.parametrize(
    ("name", "written"),
    [
        ("plan", ("48 in", "60 in", "3/4 in")),
        ("vertical-section", ("60 in", "3 in", "59 in", "42 in", "5 in")),
        ("seam-elevation", ("4-3/4 in", "2-1/4 in", "3 in", "1 in")),
        ("seam-detail", ("3/4 in", "1/2 in", "7/8 in")),
    ],
)
def test_dimensions_read_as_they_were_written(
    name: str, written: tuple[str, ...], table: VariantResults
) -> None:
    drawing = drawing_of(name, table, "us")
    (axes,) = drawing.figure.axes
    shown = " | ".join(text.get_text() for text in axes.texts)
    for text in written:
        assert text in drawing.alt or text in shown
        assert text in shown or name == "plan"


def test_without_fractured_bars_there_is_no_bar_stress(report: CheckReport) -> None:
    from jacketcheck.errors import NotEvaluatedError

    table = next(one for one in report.tables if one.variant == "nothing fractured")
    with pytest.raises(NotEvaluatedError, match="no bar is anchored by bond alone"):
        drawing_of("bar-stress", table)
