"""Pressure that the sleeve keeps for the next cycle, and what bond and friction may count on."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from jacketcheck.analysis.clamping import beside_laps, clamping_supply
from jacketcheck.analysis.dilation import dilation
from jacketcheck.analysis.hoop_action import hoop_action
from jacketcheck.analysis.hoop_demand import hoop_demand
from jacketcheck.analysis.lap import lap_hoop_force
from jacketcheck.analysis.memo import remembered, remembered_for_all
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
    """Pressure on the next cycle, at the hoop strain of the core up to which clamping is counted.

    Attributes
    ----------
    hoop_strain
        That strain, carried to the inner face of the sleeve [-].
    slips
        Whether the seams slip under their hoop force, laps included.
    slip_loss, yield_loss
        Hoop strain of the sleeve that slip would take, and that yield at the checked strain takes,
        laps included [-].
    peak_strain
        Largest hoop strain of the sleeve: dilation at the checked strain, and laps [-].
    after_slip, after_yield
        Each loss by itself, slip as if it happened.
    after_both
        What this jacket keeps: slip where it slips, and yield.
    """

    hoop_strain: Real
    slips: Real
    slip_loss: Real
    yield_loss: Real
    peak_strain: Real
    after_slip: RetainedPressure
    after_yield: RetainedPressure
    after_both: RetainedPressure


@remembered_for_all
def retained(jacket: Jacket) -> Retained:
    """Pressure that the sleeve keeps for the next cycle."""
    action, state = hoop_action(jacket), dilation(jacket).minimum
    radius = jacket.sleeve.inner_radius
    slips = np.logical_or(
        not jacket.bolts.pretensioned,
        np.greater(hoop_demand(jacket).bolt_force, action.slip_force),
    )
    slip_loss = hoop_strain_lost_by_slip(action.seam_slip, inner_radius=radius)
    steel = jacket.sleeve.steel
    laps = lap_hoop_force(jacket) / np.multiply(steel.elastic_modulus, jacket.sleeve.thickness)
    peak = np.add(state.sleeve_hoop_strain, laps)
    yield_loss = hoop_strain_lost_by_yield(
        peak,
        yield_strain=np.divide(steel.yield_strength, steel.elastic_modulus),
    )
    # losses are strains of the sleeve; the strain that clamping counts is the core's
    strain = np.multiply(jacket.judgement.clamping_strain, jacket.column.radius) / radius

    def after(slip: Real, plastic: Real) -> RetainedPressure:
        return retained_pressure(
            strain,
            slip_loss=slip,
            yield_loss=plastic,
            inner_radius=radius,
            radial_compliance=action.radial_compliance,
            yield_pressure=beside_laps(jacket, action.yield_pressure),
        )

    return Retained(
        hoop_strain=strain,
        slips=slips,
        slip_loss=slip_loss,
        yield_loss=yield_loss,
        peak_strain=peak,
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
