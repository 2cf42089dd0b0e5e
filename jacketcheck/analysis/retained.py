"""Pressure that the sleeve keeps for the next cycle, and what bond and friction may count on."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from jacketcheck.analysis.clamping import clamping_supply
from jacketcheck.analysis.dilation import dilation
from jacketcheck.analysis.hoop_action import hoop_action
from jacketcheck.analysis.hoop_demand import hoop_demand
from jacketcheck.analysis.memo import remembered
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics._arrays import Real
from jacketcheck.mechanics.hoop import core_pressure
from jacketcheck.mechanics.retained_pressure import (
    RetainedPressure,
    hoop_strain_lost_by_slip,
    hoop_strain_lost_by_yield,
    retained_pressure,
)

__all__ = ["Retained", "bond_pressure", "retained"]


@dataclass(frozen=True, eq=False)
class Retained:
    """Pressure on the next cycle, at the hoop strain up to which clamping is counted.

    Attributes
    ----------
    slips
        Whether the seams slip under their hoop force, laps included.
    slip_loss, yield_loss
        Hoop strain that slip would take, and that yield at the checked strain takes [-].
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
        np.greater(hoop_demand(jacket).bolt_force, action.slip_force),
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
