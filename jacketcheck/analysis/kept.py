"""The one state of kept pressure: what the sleeve gives the core once it has slipped and yielded.

Clamping of the bars, their bond, splitting of the grout, friction on the column's face and laps all
count on this pressure and on no other, whatever took the rest. It is a function of the axial strain
of the core and of the hoop forces beside it, so that it can be asked for at any height.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from jacketcheck.analysis.hoop_action import core_concrete, hoop_action, restraint
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics._arrays import Real
from jacketcheck.mechanics.dilation import dilation_equilibrium
from jacketcheck.mechanics.retained_pressure import (
    Loss,
    RetainedPressure,
    hoop_strain_lost_by_slip,
    retained_pressure,
    shared_loss,
)

__all__ = ["KeptPressure", "held_share", "kept_pressure"]

_LEAST = 1e-6
"""Of the yield pressure: stands for none where other hoop forces use up all that the ring holds."""


@dataclass(frozen=True, eq=False)
class KeptPressure:
    """Pressure on the inner face of the sleeve, with what was lost on the way.

    Attributes
    ----------
    hoop_strain
        Hoop strain of the core up to which clamping is counted, carried to the sleeve [-].
    clearance
        Hoop strain that the seams would lose if they slid until their bolts bear [-].
    loss
        Hoop strain that slip and yield have taken at the axial strain of the core [-]; all of the
        clearance for snug bolts.
    yield_loss_alone
        What yield would have taken if the seams did not slide [-].
    after_clearance, after_yield, after_both
        Pressure before and after: if the seams slid as far as they can, if only the wall yielded,
        and as it is.
    at_yield, at_slip
        Pressures at which the wall yields and the seams slide, less what other hoop forces take;
        the latter infinite for snug bolts, whose play is lost from the start.
    """

    hoop_strain: Real
    clearance: Real
    loss: Loss
    yield_loss_alone: Real
    after_clearance: RetainedPressure
    after_yield: RetainedPressure
    after_both: RetainedPressure
    at_yield: Real
    at_slip: Real

    @property
    def pressure(self) -> Real:
        """The pressure that everything counts on [MPa]."""
        return self.after_both.retained


def kept_pressure(jacket: Jacket, *, axial_strain: Real, other_hoop_force: Real) -> KeptPressure:
    """What the sleeve keeps of its pressure.

    Parameters
    ----------
    jacket
        One design or many.
    axial_strain
        Axial strain that the core has seen [-].
    other_hoop_force
        Hoop force that does not press on the core, from laps and shear [N/mm].
    """
    action, sleeve, bolts = hoop_action(jacket), jacket.sleeve, jacket.bolts
    radius, compliance = sleeve.inner_radius, action.radial_compliance
    taken = np.divide(other_hoop_force, radius)
    at_yield = np.maximum(np.subtract(action.yield_pressure, taken), 0.0)
    at_slip = np.maximum(np.subtract(action.slip_pressure, taken), 0.0)
    first = np.minimum(at_yield, at_slip)
    clearance = hoop_strain_lost_by_slip(action.seam_slip, inner_radius=radius)

    yield_alone = _movement_beyond(jacket, axial_strain, at_yield)
    if bolts.pretensioned:
        loss = shared_loss(
            _movement_beyond(jacket, axial_strain, first),
            slip_pressure=at_slip,
            yield_pressure=at_yield,
            clearance=clearance,
            inner_radius=radius,
            radial_compliance=compliance,
        )
    else:
        loss = Loss(clearance, yield_alone)
    # losses are strains of the sleeve; the strain that clamping counts is the core's
    strain = np.multiply(jacket.judgement.clamping_strain, jacket.column.radius) / radius

    def after(slip: Real, plastic: Real, limit: Real) -> RetainedPressure:
        return retained_pressure(
            strain,
            slip_loss=slip,
            yield_loss=plastic,
            inner_radius=radius,
            radial_compliance=compliance,
            yield_pressure=limit,
        )

    return KeptPressure(
        hoop_strain=strain,
        clearance=clearance,
        loss=loss,
        yield_loss_alone=yield_alone,
        after_clearance=after(clearance, 0.0, at_yield),
        after_yield=after(0.0, yield_alone, at_yield),
        after_both=after(loss.slip, loss.plastic, first),
        at_yield=at_yield,
        at_slip=at_slip,
    )


def _movement_beyond(jacket: Jacket, axial_strain: Real, pressure: Real) -> Real:
    """Hoop strain by which the core moves a ring that gives way at a pressure [-]."""
    ring = restraint(jacket, expected_sleeve=False, column_hoops=False, play=False)
    least = np.multiply(_LEAST, ring.yield_pressure)
    weaker = replace(ring, yield_pressure=np.maximum(pressure, least))
    core = core_concrete(jacket)
    return dilation_equilibrium(axial_strain, core=core, restraint=weaker).sleeve_plastic_strain


def held_share(pressure: Real, need: Real) -> Real:
    """Share ``r = min(1, p_k/p_n)`` of a bar's surface that kept pressure holds [-].

    Parameters
    ----------
    pressure, need
        Pressure that is kept, and that the bar needs, at the same place [MPa].
    """
    needed = np.greater(need, 0.0)
    share = np.divide(pressure, np.where(needed, need, 1.0))
    return np.where(needed, np.minimum(share, 1.0), 1.0)[()]
