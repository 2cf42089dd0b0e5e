"""Shear that the sleeve carries: hoop force in every seam row, and what seams leave for it."""

from __future__ import annotations

import math

import numpy as np
import pytest

from jacketcheck.analysis.hoop_demand import hoop_demand
from jacketcheck.jacket.designs import with_values
from tests.support.jackets import built, row, rows, symbol


def test_hoop_force_of_shear_is_in_the_demand() -> None:
    jacket = built()
    shear = float(row(jacket, "repair-shear").demand)
    tension = shear / (math.pi / 2.0 * float(jacket.column.diameter))
    found = hoop_demand(jacket)
    assert float(found.shear_force) == pytest.approx(tension, rel=1e-12)
    for name in ("sleeve-gross-yield", "sleeve-net-rupture", "splice-gross-yield"):
        for one in rows(jacket, name):
            assert float(one.demand) == pytest.approx(float(found.force), rel=1e-12)
            assert symbol(one, "N_V") == pytest.approx(tension, rel=1e-12)


def test_seams_that_just_hold_leave_just_enough() -> None:
    """Where friction equals the whole demand, what it leaves beside the rest is N_V."""
    jacket = built()
    force = float(hoop_demand(jacket).bolt_force)
    at = with_values(
        jacket,
        {
            "bolts.pretension": float(jacket.bolts.pretension)
            * force
            / symbol(row(jacket, "clamping", "bar 11"), "V_slip")
        },
    )
    found = row(at, "repair-shear")
    assert symbol(found, "N_2") == pytest.approx(float(hoop_demand(at).shear_force), rel=1e-6)
    assert float(found.ratio) == pytest.approx(1.0 / 0.9, rel=1e-6)


def test_weak_seams_leave_nothing_and_strong_ones_leave_yield() -> None:
    pretension = np.array([10e3, 120e3, 173.5e3, 400e3])
    ratio = np.asarray(
        row(with_values(built(), {"bolts.pretension": pretension}), "repair-shear").ratio
    )
    assert np.isinf(ratio[0])
    assert np.all(np.diff(ratio[1:]) <= 0.0)


def test_snug_bolts_bear() -> None:
    assert float(row(built(variant="thin, snug bolts"), "repair-shear").ratio) < 1.0
