"""Pressure that the sleeve keeps at the checked strain, and what bond and friction count on."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from jacketcheck.analysis.axial_strain import checked_axial_strain
from jacketcheck.analysis.hoop_action import hoop_action
from jacketcheck.analysis.hoop_demand import hoop_demand, other_hoop_force
from jacketcheck.analysis.kept import KeptPressure, kept_pressure
from jacketcheck.analysis.memo import remembered, remembered_for_all
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics._arrays import Real
from jacketcheck.mechanics.clamping import ClampingPressure, available_clamping_pressure
from jacketcheck.mechanics.hoop import core_pressure

__all__ = ["Retained", "bond_pressure", "clamping_supply", "retained"]


@dataclass(frozen=True, eq=False)
class Retained(KeptPressure):
    """Kept pressure at the checked axial strain, laps and shear beside it.

    Attributes
    ----------
    slips
        Whether the seams slip under their hoop force: always with snug bolts.
    """

    slips: Real


@remembered_for_all
def retained(jacket: Jacket) -> Retained:
    """What the sleeve keeps of its pressure at the checked axial strain."""
    kept = kept_pressure(
        jacket,
        axial_strain=checked_axial_strain(jacket).value,
        other_hoop_force=other_hoop_force(jacket),
    )
    slips = np.logical_or(
        not jacket.bolts.pretensioned,
        np.greater(hoop_demand(jacket).bolt_force, hoop_action(jacket).slip_force),
    )
    return Retained(**vars(kept), slips=slips)


@remembered
def clamping_supply(jacket: Jacket) -> ClampingPressure:
    """Clamping pressure that the sleeve supplies, at its inner face; column hoops not counted.

    What it keeps after slip and yield is one of its limits, and no other is smaller.
    """
    kept, action = retained(jacket), hoop_action(jacket)
    return available_clamping_pressure(
        core_radius=jacket.column.radius,
        radial_compliance=action.radial_compliance,
        yield_pressure=kept.at_yield,
        slip_pressure=kept.at_slip,
        hoop_strain=jacket.judgement.clamping_strain,
        radial_play=action.initial_play,
        kept_pressure=kept.pressure,
    )


@remembered
def bond_pressure(jacket: Jacket) -> Real:
    """Pressure on the column's face that clamping, bond and friction count on [MPa]."""
    return core_pressure(
        retained(jacket).pressure,
        inner_radius=jacket.sleeve.inner_radius,
        core_radius=jacket.column.radius,
    )
