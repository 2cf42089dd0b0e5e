"""Dilation of the core at the axial strain that the base reaches, and what it leaves behind."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from jacketcheck.analysis.axial_strain import checked_axial_strain
from jacketcheck.analysis.clamping import clamping_supply
from jacketcheck.analysis.hoop_action import core_concrete, hoop_action, restraint
from jacketcheck.analysis.memo import remembered
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics._arrays import Real
from jacketcheck.mechanics.dilation import (
    DilationEquilibrium,
    axial_strain_at_sleeve_yield,
    dilation_equilibrium,
)
from jacketcheck.mechanics.hoop import core_pressure
from jacketcheck.mechanics.retained_pressure import (
    RetainedPressure,
    hoop_strain_lost_by_slip,
    hoop_strain_lost_by_yield,
    retained_pressure,
)

__all__ = ["Dilation", "Retained", "bond_pressure", "dilation", "retained"]


@dataclass(frozen=True, eq=False)
class Dilation:
    """State of the ring at the checked axial strain.

    Attributes
    ----------
    minimum
        With the sleeve's specified minimum yield strength: what the sleeve must survive.
    expected
        With its expected yield strength: what the seams must survive.
    yield_axial_strain
        Axial strain at which the sleeve first yields [-].
    """

    minimum: DilationEquilibrium
    expected: DilationEquilibrium
    yield_axial_strain: Real


@remembered
def dilation(jacket: Jacket) -> Dilation:
    """Equilibrium of core and ring; the column's own hoops are not counted to relieve the sleeve."""
    strain, core = checked_axial_strain(jacket).value, core_concrete(jacket)
    minimum = restraint(jacket, expected_sleeve=False, column_hoops=False)
    expected = restraint(jacket, expected_sleeve=True, column_hoops=False)
    return Dilation(
        minimum=dilation_equilibrium(strain, core=core, restraint=minimum),
        expected=dilation_equilibrium(strain, core=core, restraint=expected),
        yield_axial_strain=axial_strain_at_sleeve_yield(core=core, restraint=minimum),
    )


@dataclass(frozen=True, eq=False)
class Retained:
    """Pressure on the next cycle, at the hoop strain up to which clamping is counted.

    Attributes
    ----------
    slips
        Whether the seams slip at the checked strain.
    after_slip, after_yield
        Each loss by itself, slip as if it happened.
    after_both
        What this jacket keeps: slip where it slips, and yield.
    """

    slips: Real
    slip_loss: Real
    yield_loss: Real
    after_slip: RetainedPressure
    after_yield: RetainedPressure
    after_both: RetainedPressure


@remembered
def retained(jacket: Jacket) -> Retained:
    """Pressure that the sleeve keeps for the next cycle."""
    action, state = hoop_action(jacket), dilation(jacket).minimum
    radius = jacket.sleeve.inner_radius
    slips = np.logical_or(
        not jacket.bolts.pretensioned,
        np.greater(dilation(jacket).expected.sleeve_pressure, action.slip_pressure),
    )
    slip_loss = hoop_strain_lost_by_slip(action.seam_slip, inner_radius=radius)
    yield_loss = hoop_strain_lost_by_yield(
        state.sleeve_hoop_strain,
        yield_strain=np.divide(
            jacket.sleeve.steel.yield_strength, jacket.sleeve.steel.elastic_modulus
        ),
    )

    def after(slip: Real, plastic: Real) -> RetainedPressure:
        return retained_pressure(
            jacket.judgement.clamping_strain,
            slip_loss=slip,
            yield_loss=plastic,
            inner_radius=radius,
            radial_compliance=action.radial_compliance,
            yield_pressure=action.yield_pressure,
        )

    return Retained(
        slips=slips,
        slip_loss=slip_loss,
        yield_loss=yield_loss,
        after_slip=after(slip_loss, 0.0),
        after_yield=after(0.0, yield_loss),
        after_both=after(np.where(slips, slip_loss, 0.0), yield_loss),
    )


@remembered
def bond_pressure(jacket: Jacket) -> Real:
    """Pressure on the column's face that bond may count on [MPa].

    The smaller of what the sleeve supplies before the cracks open and what it keeps for the next
    cycle.
    """
    available = np.minimum(clamping_supply(jacket).available, retained(jacket).after_both.retained)
    return core_pressure(
        available, inner_radius=jacket.sleeve.inner_radius, core_radius=jacket.column.radius
    )
