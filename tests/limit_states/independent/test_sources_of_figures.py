"""Each step that prints a figure of the catalogue cites the source of that very figure."""

from __future__ import annotations

import pytest

from jacketcheck.conformance.marked_figures import marked_figures, wrongly_sourced
from tests.limit_states.independent.test_printed_steps import JACKETS
from tests.support.jackets import built, rows


@pytest.mark.parametrize("name", JACKETS)
def test_a_figure_cites_its_own_source(name: str) -> None:
    changes, variant = JACKETS[name]
    figures = marked_figures(built(changes, variant=variant))
    wrong = [
        (result.limit_state, result.clause, step.symbol, step.source, path)
        for result in rows(figures.jacket)
        for step, path in wrongly_sourced(result.steps, figures)
    ]
    assert not wrong


def test_marks_tell_figures_apart() -> None:
    figures = marked_figures(built())
    assert len(figures.marks) == len(set(figures.marks.values())) > 40
    steel = figures.jacket.column.layer.steel
    assert steel.source_of("overstrength") == "⟨column.layer.steel.overstrength⟩"
    assert figures.mark_of(float(steel.overstrength), "1") == steel.source_of("overstrength")
