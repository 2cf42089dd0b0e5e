"""The curve of pressure against axial strain, and where sleeve and seams give way."""

from __future__ import annotations

import numpy as np
import pytest

from jacketcheck.analysis.hoop_demand import other_hoop_force
from jacketcheck.analysis.pressure_curve import pressure_curve
from jacketcheck.jacket.designs import with_values
from jacketcheck.jacket.jacket import Jacket


def test_the_plateau_is_yield_of_a_thin_shell(jacket: Jacket) -> None:
    curve, sleeve = pressure_curve(jacket), jacket.sleeve
    for values, strength in (
        (curve.minimum, sleeve.steel.yield_strength),
        (curve.expected, sleeve.steel.expected_yield),
    ):
        plateau = float(strength) * float(sleeve.thickness) / float(sleeve.inner_radius)
        assert values[-1] == pytest.approx(plateau)
        assert np.all(np.diff(values) >= -1e-9)
        assert values[0] == 0.0


def test_laps_take_their_share(jacket: Jacket) -> None:
    curve = pressure_curve(jacket)
    share = float(other_hoop_force(jacket)) / float(jacket.sleeve.inner_radius)
    assert curve.lap_pressure == pytest.approx(share)
    assert curve.yield_pressure - curve.yield_less_laps == pytest.approx(share)


def test_yield_and_slip_lie_on_the_curves(jacket: Jacket) -> None:
    curve = pressure_curve(jacket)
    at_yield = np.interp(curve.yield_strain, curve.axial_strain, curve.minimum)
    assert at_yield == pytest.approx(curve.yield_less_laps, rel=2e-3)
    if np.isfinite(curve.slip_strain):
        at_slip = np.interp(curve.slip_strain, curve.axial_strain, curve.expected)
        assert at_slip == pytest.approx(curve.slip_less_laps, rel=2e-3)
    checked = np.interp(curve.checked_strain, curve.axial_strain, curve.expected)
    assert checked == pytest.approx(curve.checked_expected, rel=2e-3)


def test_a_thinner_sleeve_yields_earlier_and_seams_that_outlast_it_do_not_slip(
    jacket: Jacket,
) -> None:
    thin = with_values(jacket, {"sleeve.thickness": float(jacket.sleeve.thickness) / 4.0})
    curve, thicker = pressure_curve(thin), pressure_curve(jacket)
    assert curve.yield_strain < thicker.yield_strain
    assert curve.slip_strain == np.inf or curve.slip_less_laps < curve.expected[-1]
