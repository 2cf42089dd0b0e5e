"""Added bars in the repair: statics of the split grout, and where along the height they end."""

from __future__ import annotations

import math
from typing import Final

import numpy as np
import pytest

from jacketcheck.analysis.added_bars import added_bar_stress, lap_length
from jacketcheck.analysis.height import height_profile
from jacketcheck.analysis.repair_anchorage import repair_anchorage
from jacketcheck.analysis.retained import retained
from tests.support.jackets import VARIANTS, built, built_afresh, row

INCH: Final = 25.4
_ONE_BAR: Final = 'damage = [{ bars = [1], state = "fractured"'


def test_slipped_seams_let_the_grout_around_added_bars_split() -> None:
    """fib Model Code 2010: splitting at Eq. 6.1-5, nothing left at 1.2 times its slip.

    The energy of such a law bounds the stress that any length develops: half of it stretches the
    bar, f**2/(2 E) = 4 G/d_b.
    """
    jacket = built(variant="thin, snug bolts")
    assert bool(retained(jacket).slips)
    found, diameter, grout = repair_anchorage(jacket), INCH, 8.0 * 6.894757293168361
    to_column = (26.75 - 24.0) * INCH - diameter / 2.0
    half_spacing = (2.0 * math.pi * 26.75 * INCH / 20.0 - diameter) / 2.0
    assert to_column < half_spacing
    splitting = (
        6.5 * (grout / 25.0) ** 0.25 * (25.0 / diameter) ** 0.2
        * (to_column / diameter) ** 0.33 * (half_spacing / to_column) ** 0.1
    )  # fmt: skip
    pullout = 2.5 * math.sqrt(grout)
    assert splitting < pullout
    assert float(found.law.peak_stress) == pytest.approx(splitting, rel=1e-6)
    slip = (splitting / pullout) ** 2.5
    energy = splitting * slip / 1.4 + splitting * 0.2 * slip / 2.0
    most = math.sqrt(8.0 * 200e3 * energy / diameter)
    assert most < 68.0 * 6.894757293168361
    assert math.isinf(float(found.needed_length))
    assert math.isinf(float(row(jacket, "added-bar-development").ratio))


def test_seams_that_hold_keep_it_from_splitting() -> None:
    found = repair_anchorage(built())
    assert float(found.held_share) == 1.0
    assert float(found.law.peak_stress) == pytest.approx(2.5 * math.sqrt(8.0 * 6.894757293168361))


def test_the_lap_begins_above_gap_and_fractures() -> None:
    """Nothing holds struts in the gap; a bar takes nothing over below its fracture at 4 or 5 in."""
    offset = float(lap_length(built()).offset)
    for gap, rows, end in (("3 in", 12, "2-3/8 in"), ("6 in", 11, "3-1/4 in")):
        jacket = built(f'repair.gap = "{gap}"\nbolts.rows = {rows}\nbolts.end_distance = "{end}"')
        start = max(float(jacket.sleeve.gap), 5.0 * INCH)
        assert float(lap_length(jacket).start) == pytest.approx(start, rel=1e-12)
        left = 59.0 * INCH - start - offset
        assert float(lap_length(jacket).available) == pytest.approx(left, rel=1e-12)


def test_bond_goes_on_below_the_fractures() -> None:
    """Grout holds an added bar down to the gap, whatever happened to the column's bars."""
    low, high = (built(f'{_ONE_BAR}, height = "{at} in" }}]') for at in (4, 20))
    at = np.array([6.0, 15.0, 40.0]) * INCH
    assert lap_length(high).available < lap_length(low).available
    assert added_bar_stress(high, at) == pytest.approx(added_bar_stress(low, at), rel=1e-12)


@pytest.mark.parametrize("variant", VARIANTS)
@pytest.mark.parametrize("height", [25, 40, 59])
def test_no_height_between_the_stations_is_worse(
    monkeypatch: pytest.MonkeyPatch, variant: str, height: int
) -> None:
    """Wherever added bars end in the repair, stations four times as dense find nothing worse."""
    changes = f'added_bars.height = "{height} in"'
    profile = height_profile(built_afresh(changes, variant=variant))
    monkeypatch.setattr("jacketcheck.analysis.height._STATIONS", 41)
    dense = height_profile(built_afresh(changes, variant=variant))
    worst, found = (np.max(one.demand / one.capacity) for one in (dense, profile))
    assert worst <= found * 1.003
