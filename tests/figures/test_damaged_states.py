"""Every state of damage is drawn at its own heights, and the captions say which."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from jacketcheck.figures.damaged_bars import damaged_states
from jacketcheck.figures.drawing import Drawing
from jacketcheck.figures.vertical_section import vertical_section
from jacketcheck.inputs.column import BarState
from jacketcheck.jacket.jacket import Jacket

DAMAGE: dict[int, tuple[BarState, float]] = {
    1: ("fractured", 101.6),
    2: ("fractured", 127.0),
    3: ("buckled", 279.4),
    7: ("yielded", 508.0),
}


@pytest.fixture
def damaged(drawn_jacket: Jacket) -> Jacket:
    """Fractures low, a buckle above them, and yielding that reaches highest."""
    bars = tuple(
        replace(bar, state=DAMAGE[bar.number][0], damage_height=DAMAGE[bar.number][1])
        if bar.number in DAMAGE
        else replace(bar, state="intact", damage_height=0.0)
        for bar in drawn_jacket.column.bars
    )
    return replace(drawn_jacket, column=replace(drawn_jacket.column, bars=bars))


def texts(drawing: Drawing) -> set[str]:
    (axes,) = drawing.figure.axes
    return {text.get_text() for text in axes.texts}


def test_captions_name_state_and_heights(damaged: Jacket) -> None:
    shown = texts(vertical_section(damaged, system="us"))
    assert {"fractured\nat 4 in\nand 5 in", "buckled\nat 11 in", "yielded\nat 20 in"} <= shown


def test_the_words_name_the_bars(damaged: Jacket) -> None:
    alt = vertical_section(damaged, system="us").alt
    assert "Fractured: bar 1 at 4 in and bar 2 at 5 in above the footing." in alt
    assert "bar 3 at 11 in above the footing." in alt
    assert "Yielded: bar 7 at 20 in above the footing." in alt


def test_bars_begin_where_their_damage_is(damaged: Jacket) -> None:
    (axes,) = vertical_section(damaged, system="si").figure.axes
    radius = float(damaged.column.layer.circle_radius)
    for state, lowest in (("fractured", 101.6), ("buckled", 279.4), ("yielded", 508.0)):
        x = next(one.place for one in damaged_states(damaged) if one.state == state) * radius
        uprights = [
            np.asarray(line.get_ydata(), dtype=float)
            for line in axes.lines
            if np.allclose(np.asarray(line.get_xdata(), dtype=float), x) and line.get_zorder() == 5
        ]
        assert max(float(y[0]) for y in uprights) == lowest


def test_a_sound_column_has_no_captions_of_damage(damaged: Jacket) -> None:
    bars = tuple(replace(bar, state="intact", damage_height=0.0) for bar in damaged.column.bars)
    sound = replace(damaged, column=replace(damaged.column, bars=bars))
    drawing = vertical_section(sound, system="si")
    assert not any(text.startswith(("fractured", "buckled", "yielded")) for text in texts(drawing))
    assert "ractured" not in drawing.alt
