"""Bars that are alike are solved once, and each gets its answer."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import fields
from typing import Any

import numpy as np
import pytest

from jacketcheck.mechanics._bond_rows import BarRows
from jacketcheck.mechanics.bar_bond_laws import grouted_bar_law
from jacketcheck.mechanics.bar_steel import BarSteel
from jacketcheck.mechanics.bond_development import (
    bonded_length,
    developed_stress,
    development_curve,
)
from jacketcheck.mechanics.bond_law import BondLaw

STEEL = BarSteel(469.0, 655.0, 0.0115, 0.09, 200e3)
STRENGTHS = np.array([50.0, 35.0, 50.0, 50.0, 35.0])
LENGTHS = np.array([400.0, 400.0, 400.0, 300.0, 400.0])


def law_of(strength: Any) -> BondLaw:
    return grouted_bar_law(strength, clear_rib_spacing=13.0)


def test_alike_bars_share_a_row() -> None:
    rows = BarRows.of(LENGTHS, bar_diameter=32.0, law=law_of(STRENGTHS), steel=STEEL)
    assert rows.asked.size == 3
    assert rows.shaped(rows.asked).tolist() == LENGTHS.tolist()


@pytest.mark.parametrize(
    ("lengths", "strengths", "count"),
    [(400.0, 50.0, 1), (np.full((2, 3), 400.0), 50.0, 1), (np.empty(0), 50.0, 0)],
)
def test_one_bar_many_alike_and_none(lengths: Any, strengths: Any, count: int) -> None:
    rows = BarRows.of(lengths, bar_diameter=32.0, law=law_of(strengths), steel=STEEL)
    assert rows.asked.size == count
    assert np.shape(rows.shaped(rows.asked)) == np.shape(lengths)


@pytest.mark.parametrize("function", [developed_stress, bonded_length])
def test_each_bar_gets_its_own_answer(function: Callable[..., Any]) -> None:
    def answer(asked: Any, strength: Any) -> Any:
        found = function(asked, bar_diameter=32.0, law=law_of(strength), steel=STEEL)
        return found.stress if function is developed_stress else found

    asked = LENGTHS.reshape(5, 1) + np.array([0.0, 50.0])
    together = answer(asked, STRENGTHS.reshape(5, 1))
    apart = [[answer(one, s) for one in row] for row, s in zip(asked, STRENGTHS, strict=True)]
    assert together.tolist() == apart


def test_curves_of_alike_bars() -> None:
    together = development_curve(bar_diameter=32.0, law=law_of(STRENGTHS), steel=STEEL)
    for index, strength in enumerate(STRENGTHS):
        alone = development_curve(bar_diameter=32.0, law=law_of(float(strength)), steel=STEEL)
        for one in fields(alone):
            np.testing.assert_array_equal(
                getattr(together, one.name)[index], getattr(alone, one.name)[0]
            )
