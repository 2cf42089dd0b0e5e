"""Stress along a fractured bar: equilibrium, ends, and the better of two surfaces."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from jacketcheck.analysis.bar_profiles import bar_profiles
from jacketcheck.analysis.bond import bar_bonds
from jacketcheck.analysis.damaged_bars import target_stress
from jacketcheck.errors import NotEvaluatedError
from jacketcheck.jacket.jacket import Jacket


def test_bond_stress_balances_the_bar(jacket: Jacket) -> None:
    diameter = float(jacket.column.layer.diameter)
    for profile in bar_profiles(jacket).profiles:
        along = profile.along
        # ∫ 4 τ/d dx from the fracture to the top is the stress there
        gained = np.trapezoid(4.0 * along.bond_stress / diameter, along.distance)
        assert gained == pytest.approx(along.stress[-1], rel=0.03)
        assert along.stress[0] == 0.0
        assert np.all(np.diff(along.stress) >= -1e-9)


@pytest.mark.parametrize(("gap", "start"), [(20.0, 90.0), (150.0, 150.0)])
def test_the_bar_is_anchored_from_fracture_or_sleeve_to_top_of_repair(
    jacket: Jacket, gap: float, start: float
) -> None:
    bars = tuple(
        replace(bar, damage_height=90.0) if bar.state != "intact" else bar
        for bar in jacket.column.bars
    )
    column = replace(jacket.column, bars=bars)
    low = replace(jacket, column=column, sleeve=replace(jacket.sleeve, gap=gap))
    found = bar_profiles(low)
    assert (found.fracture_height, found.anchorage_start) == (90.0, start)
    for profile in found.profiles:
        assert profile.along.distance[[0, -1]] == pytest.approx(
            [0.0, float(low.repair_height) - start]
        )


def test_the_neediest_group_is_shown_as_its_row_has_it(jacket: Jacket) -> None:
    found, bonds = bar_profiles(jacket), bar_bonds(jacket)
    shares = [float(one.needed_length) / float(one.available_length) for one in bonds]
    neediest = bonds[int(np.argmax(shares))]
    own = found.profiles[0]
    assert own.surface == found.surface == neediest.conditions.surface
    assert own.developed == pytest.approx(
        min(float(neediest.developed_stress), float(target_stress(jacket)))
    )


def test_chipping_helps(jacket: Jacket) -> None:
    developed = {one.surface: one.developed for one in bar_profiles(jacket).profiles}
    assert developed["chipped"] >= developed["unchipped"]


def test_a_bar_without_bond_left_still_has_a_profile(jacket: Jacket) -> None:
    # snug bolts let grout and cover split: the law then falls to nothing
    snug = replace(jacket, bolts=replace(jacket.bolts, tightening="snug", pretension=0.0))
    for profile in bar_profiles(snug).profiles:
        steps = np.diff(profile.along.stress)
        assert np.all(np.isfinite(profile.along.stress))
        assert steps.max() < 0.5 * profile.developed


def test_what_cannot_be_evaluated_is_left_out_with_its_reason(jacket: Jacket) -> None:
    bars = tuple(
        replace(bar, crack_width=3.0, surface="chipped") if bar.state != "intact" else bar
        for bar in jacket.column.bars
    )
    cracked = replace(jacket, column=replace(jacket.column, bars=bars))
    found = bar_profiles(cracked)
    assert [one.surface for one in found.profiles] == ["chipped"]
    assert "crack of 3 mm" in found.left_out


def test_without_fractured_bars_there_is_nothing_to_show(jacket: Jacket) -> None:
    bars = tuple(replace(bar, state="intact") for bar in jacket.column.bars)
    whole = replace(jacket, column=replace(jacket.column, bars=bars))
    with pytest.raises(NotEvaluatedError, match="no bar"):
        bar_profiles(whole)
