"""Pressure of the sleeve as the core is strained; where the sleeve yields and the seams slip."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from jacketcheck.analysis.axial_strain import checked_axial_strain
from jacketcheck.analysis.dilation import dilation
from jacketcheck.analysis.hoop_action import core_concrete, hoop_action, restraint
from jacketcheck.analysis.hoop_demand import other_hoop_force
from jacketcheck.analysis.memo import remembered
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics._arrays import Floats
from jacketcheck.mechanics.core_concrete import CoreConcrete
from jacketcheck.mechanics.dilation import (
    axial_strain_at_hoop_strain,
    axial_strain_at_sleeve_yield,
    dilation_equilibrium,
)
from jacketcheck.mechanics.restraint import Restraint

__all__ = ["PressureCurve", "pressure_curve"]

_COUNT = 200
_BEYOND = 1.4


@dataclass(frozen=True, eq=False)
class PressureCurve:
    """Pressure on the inner face of the sleeve against axial strain of the core; one design.

    The curve is that of the dilating core alone. Yield and slip are marked where dilation, the laps
    of added bars and column bars, and shear together reach them.

    Attributes
    ----------
    axial_strain
        Axial strain of the core [-], shape (n,), from zero to beyond what is marked.
    minimum, expected
        Pressure with the specified minimum and with the expected yield strength of the sleeve
        [MPa], shape (n,).
    yield_pressure, slip_pressure
        Pressure at which the sleeve (specified minimum strength) yields and the seams slip without
        the laps [MPa]; slip is infinite for snug-tight bolts, which never hold by friction.
    lap_pressure
        Pressure that would cause the hoop force of laps and shear [MPa].
    yield_strain, slip_strain
        Axial strain at which yield and slip are reached, laps included [-]; infinite where the
        sleeve yields, with its expected strength, before the seams slip.
    checked_strain, checked_minimum, checked_expected
        Axial strain at which dilation is checked, and the two pressures there.
    initial_play
        Radial movement before the sleeve engages [mm].
    """

    axial_strain: Floats
    minimum: Floats
    expected: Floats
    yield_pressure: float
    slip_pressure: float
    lap_pressure: float
    yield_strain: float
    slip_strain: float
    checked_strain: float
    checked_minimum: float
    checked_expected: float
    initial_play: float

    @property
    def yield_less_laps(self) -> float:
        """Pressure at which the sleeve yields, laps included [MPa]."""
        return max(self.yield_pressure - self.lap_pressure, 0.0)

    @property
    def slip_less_laps(self) -> float:
        """Pressure at which the seams slip, laps included [MPa]."""
        return max(self.slip_pressure - self.lap_pressure, 0.0)


@remembered
def pressure_curve(jacket: Jacket) -> PressureCurve:
    """Pressure from rest to beyond the checked strain, sleeve yield and slip; one design."""
    core, action, state = core_concrete(jacket), hoop_action(jacket), dilation(jacket)
    minimum = restraint(jacket, expected_sleeve=False, column_hoops=False, play=False)
    expected = restraint(jacket, expected_sleeve=True, column_hoops=False, play=False)
    laps = float(np.divide(other_hoop_force(jacket), jacket.sleeve.inner_radius))
    checked = float(checked_axial_strain(jacket).value)
    corners = [
        float(axial_strain_at_sleeve_yield(core=core, restraint=ring))
        for ring in (minimum, expected)
    ]
    # the corners of the curves are points of theirs
    strain = np.union1d(np.linspace(0.0, _BEYOND * max(checked, *corners), _COUNT), corners)

    def pressure(ring: Restraint) -> Floats:
        found = dilation_equilibrium(strain, core=core, restraint=ring).sleeve_pressure
        return np.asarray(found)

    return PressureCurve(
        axial_strain=strain,
        minimum=pressure(minimum),
        expected=pressure(expected),
        yield_pressure=float(action.yield_pressure),
        slip_pressure=float(action.slip_pressure),
        lap_pressure=laps,
        yield_strain=_strain_at(float(action.yield_pressure) - laps, core, minimum),
        slip_strain=_strain_at(float(action.slip_pressure) - laps, core, expected),
        checked_strain=checked,
        checked_minimum=float(state.minimum.sleeve_pressure),
        checked_expected=float(state.expected.sleeve_pressure),
        initial_play=float(action.initial_play),
    )


def _strain_at(pressure: float, core: CoreConcrete, ring: Restraint) -> float:
    """Axial strain at which the core calls up a pressure [-]; infinite where it never does."""
    share = max(pressure, 0.0) / float(ring.yield_pressure)
    if share > 1.0:
        return np.inf
    hoop_strain = share * np.asarray(ring.yield_strain)
    return float(axial_strain_at_hoop_strain(hoop_strain, core=core, restraint=ring))
