"""One kept pressure: equal loss gives equal bond, nothing jumps, and chipped stays ahead."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from jacketcheck.analysis.axial_strain import CheckedStrain, checked_axial_strain
from jacketcheck.analysis.bond import bar_bonds
from jacketcheck.analysis.kept import kept_pressure
from jacketcheck.analysis.lap import tension_share
from jacketcheck.analysis.memo import assuming
from jacketcheck.analysis.retained import bond_pressure, clamping_supply, retained
from jacketcheck.jacket import Jacket
from jacketcheck.jacket.designs import with_values
from jacketcheck.mechanics.bond_law import bond_stress
from tests.support.jackets import built

SLIPS = np.array([1e-3, 0.01, 0.1, 0.3, 1.0, 2.0, 5.0, 10.0])
BARS = 3


def _strained(jacket: Jacket, strain: float) -> Jacket:
    """A jacket whose core has seen an axial strain, with half of the added bars in tension."""
    known = CheckedStrain(declared=strain, found=0.0, base_holds=True, value=strain)
    return assuming(jacket, {checked_axial_strain: known, tension_share: 0.5})


def _weak(surface: str, strain: float, **leaves: float) -> Jacket:
    text = f'repair.surface = "{surface}"'
    return _strained(
        with_values(built(text), {k.replace("__", "."): v for k, v in leaves.items()}), strain
    )


def _stress(jacket: Jacket, place: int) -> list[float]:
    return [float(one) for one in np.ravel(bond_stress(SLIPS, bar_bonds(jacket)[place].law))]


def _strain_that_keeps(jacket: Jacket, pressure: float) -> float:
    low, high = 0.0005, 0.02
    for _ in range(60):
        middle = 0.5 * (low + high)
        kept = float(retained(_strained(jacket, middle)).pressure)
        low, high = (middle, high) if kept > pressure else (low, middle)
    return low


def test_equal_loss_gives_equal_bond() -> None:
    """A wall that yielded and a seam that slid, both left with a tenth of a MPa."""
    yielded = with_values(built(variant="thin"), {"bolts.pretension": 400e3})
    slid = with_values(
        built(variant="thin"), {"bolts.pretension": 90e3, "sleeve.steel.yield_strength": 500.0}
    )
    laws = []
    for one in (yielded, slid):
        loss = retained(_strained(one, _strain_that_keeps(one, 0.1))).loss
        laws.append(_stress(_strained(one, _strain_that_keeps(one, 0.1)), 0))
        assert float(retained(_strained(one, 0.02)).pressure) == 0.0
        assert (float(loss.plastic) > 0.0) != (float(loss.slip) > 0.0)
    assert laws[0] == pytest.approx(laws[1], rel=1e-6)


def test_a_sleeve_that_keeps_nothing_holds_nothing() -> None:
    """Yielded without a seam that slips: as loose as the snug one."""
    yielded = _strained(with_values(built(variant="thin"), {"bolts.pretension": 400e3}), 0.02)
    snug = _strained(built(variant="thin, snug bolts"), 0.02)
    assert float(bond_pressure(yielded)) == float(bond_pressure(snug)) == 0.0
    for place in range(BARS):
        assert _stress(yielded, place) == pytest.approx(_stress(snug, place), rel=1e-12)
    assert float(clamping_supply(yielded).available) == 0.0


@settings(max_examples=25)
@given(
    thickness=st.floats(6.0, 30.0),
    pretension=st.floats(60e3, 250e3),
    strain=st.floats(0.0008, 0.01),
)
@example(thickness=9.525, pretension=140e3, strain=0.0026)
@example(thickness=26.5, pretension=173.5e3, strain=0.0026)
def test_more_strain_and_weaker_seams_never_keep_more(
    thickness: float, pretension: float, strain: float
) -> None:
    jacket = with_values(built(), {"sleeve.thickness": thickness, "bolts.pretension": pretension})
    stronger = with_values(jacket, {"bolts.pretension": 1.01 * pretension})

    def kept(one: Jacket, at: float) -> float:
        return float(kept_pressure(one, axial_strain=at, other_hoop_force=200.0).pressure)

    here = kept(jacket, strain)
    assert kept(jacket, 1.01 * strain) <= here * (1.0 + 1e-9)
    assert kept(stronger, strain) >= here * (1.0 - 1e-9)
    assert kept(stronger, strain) - here <= 0.2  # MPa, of some 3 to 6: no cliff


@settings(max_examples=6, deadline=None)
@given(strain=st.floats(0.001, 0.02), pretension=st.floats(60e3, 250e3))
def test_bond_is_ordered_and_does_not_jump(strain: float, pretension: float) -> None:
    chipped, unchipped, next_one = (
        _weak(surface, at, bolts__pretension=pretension)
        for surface, at in (("chipped", strain), ("unchipped", strain), ("chipped", 1.002 * strain))
    )
    for place in range(BARS):
        better, worse, after = (_stress(one, place) for one in (chipped, unchipped, next_one))
        assert all(a >= b * (1.0 - 1e-9) for a, b in zip(better, worse, strict=True))
        assert all(b <= a * (1.0 + 1e-9) for a, b in zip(better, after, strict=True))
        largest = max(better)
        assert all(a - b <= 0.05 * largest for a, b in zip(better, after, strict=True))
