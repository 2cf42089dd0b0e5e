"""Pressure that a sleeve has left on the next cycle, after its seams slipped or its wall yielded.

Slip opens the seams and yield stretches the wall. Either leaves the sleeve too wide: on the next
cycle the core must first dilate through that play before anything presses on it again. This is why
a snug or a thin jacket loses its bars, although it was strong enough the first time.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from jacketcheck.mechanics._arrays import Real, require_at_least, require_positive

__all__ = [
    "Loss",
    "RetainedPressure",
    "hoop_strain_lost_by_slip",
    "hoop_strain_lost_by_yield",
    "radial_play",
    "retained_pressure",
    "seam_opening",
    "shared_loss",
]


def seam_opening(*, sleeve_clearance: Real, splice_clearance: Real) -> Real:
    """Largest opening of one seam, both of its bolt groups slipped from side to side of the holes.

    Parameters
    ----------
    sleeve_clearance, splice_clearance
        Hole dimension less bolt diameter, along the hoop [mm], in the sleeve and in the splice
        plates, at least zero; scalars or arrays.

    Returns
    -------
    Real
        Opening of one seam [mm], broadcast over the arguments.

    Raises
    ------
    DomainError
        If a clearance is negative or not finite.

    Notes
    -----
    A bolt that stood against the wrong side of both holes lets sleeve and plate part by the whole
    clearance of either: ``c_sleeve + c_splice`` for each of two groups. Bolts centred in their
    holes let the seam open by half of that, bolts drifted into bearing during erection not at all.
    Nothing in the file says which, so that the bound is counted.

    References
    ----------
    Geometry; RCSC, Specification for Structural Joints Using High-Strength Bolts (2014),
    Commentary to 4.1, from memory: two hole clearances are the most that a joint can slip, about
    half of one is usual. Hole sizes by AISC 360-22 Table J3.3.

    Examples
    --------
    >>> float(seam_opening(sleeve_clearance=2.0, splice_clearance=2.0))
    8.0
    """
    require_at_least(0.0, sleeve_clearance=sleeve_clearance, splice_clearance=splice_clearance)
    return np.multiply(2.0, np.add(sleeve_clearance, splice_clearance))


def radial_play(seam_slip: Real) -> Real:
    """Outward movement of the core that the opening of two seams gives away.

    Parameters
    ----------
    seam_slip
        Opening of one seam by slip [mm], at least zero; the other opens alike. Scalar or array.

    Returns
    -------
    Real
        Radial play ``delta / pi`` [mm], same shape.

    Raises
    ------
    DomainError
        If the slip is negative or not finite.

    Notes
    -----
    The circumference grows by ``2 delta``, the radius by that over ``2 pi``.

    References
    ----------
    Geometry.

    Examples
    --------
    >>> round(float(radial_play(3.0)), 4)
    0.9549
    """
    require_at_least(0.0, seam_slip=seam_slip)
    return np.divide(seam_slip, np.pi)


def hoop_strain_lost_by_slip(seam_slip: Real, *, inner_radius: Real) -> Real:
    """Hoop strain that the opening of two seams takes away.

    Parameters
    ----------
    seam_slip
        Opening of one seam by slip [mm], at least zero; the other opens alike. Scalar or array.
    inner_radius
        Inner radius of the sleeve [mm], above zero.

    Returns
    -------
    Real
        ``2 delta / (pi D)`` [-], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    References
    ----------
    Geometry: two openings over the circumference.

    Examples
    --------
    >>> round(float(hoop_strain_lost_by_slip(3.0, inner_radius=600.0)), 5)
    0.00159
    """
    require_positive(inner_radius=inner_radius)
    return radial_play(seam_slip) / inner_radius


def hoop_strain_lost_by_yield(peak_hoop_strain: Real, *, yield_strain: Real) -> Real:
    """Hoop strain that remains in a sleeve after it was stretched beyond yield.

    Parameters
    ----------
    peak_hoop_strain
        Largest hoop strain so far ``eps_max`` [-], at least zero; scalar or array.
    yield_strain
        Yield strain ``f_y / E`` [-], above zero.

    Returns
    -------
    Real
        ``eps_max - f_y / E`` [-], zero for a sleeve that stayed elastic.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    Elastic unloading from a yield plateau. Strain hardening would leave a little less.

    References
    ----------
    Elastic, perfectly plastic steel.

    Examples
    --------
    >>> round(float(hoop_strain_lost_by_yield(0.003, yield_strain=0.00125)), 5)
    0.00175
    """
    require_at_least(0.0, peak_hoop_strain=peak_hoop_strain)
    require_positive(yield_strain=yield_strain)
    return np.maximum(np.subtract(peak_hoop_strain, yield_strain), 0.0)


@dataclass(frozen=True, eq=False)
class Loss:
    """Hoop strain of the sleeve that is lost, by cause [-]; attributes share one shape.

    Attributes
    ----------
    slip
        By the seams, which slide.
    plastic
        By the wall, which yields.
    """

    slip: Real
    plastic: Real

    @property
    def total(self) -> Real:
        """Both together [-]."""
        return np.add(self.slip, self.plastic)


def shared_loss(
    movement: Real,
    *,
    slip_pressure: Real,
    yield_pressure: Real,
    clearance: Real,
    inner_radius: Real,
    radial_compliance: Real,
) -> Loss:
    """What seams and wall lose when the core moves a ring that gives way.

    Parameters
    ----------
    movement
        Hoop strain by which the ring has given way, at the smaller of its two pressures [-], at
        least zero: movement of the core beyond the one that calls this pressure up, over the
        radius. Scalar or array.
    slip_pressure, yield_pressure
        Pressures at which the seams slide and the wall yields [MPa], at least zero.
    clearance
        Hoop strain that the seams can give away until their bolts bear [-], at least zero, from
        `hoop_strain_lost_by_slip`.
    inner_radius
        Inner radius of the sleeve [mm], above zero.
    radial_compliance
        Outward movement for each unit of pressure on the sleeve [mm/MPa], above zero.

    Returns
    -------
    Loss
        Broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    Dilation is a movement that is forced on the ring. Where the seams are the weaker, they slide at
    their resistance as far as that movement asks for and no farther, at most until the bolts bear;
    then the pressure rises again, up to yield of the wall. Where the wall is the weaker, it
    yields and the seams stay. Nothing jumps: a seam that has only just slid has lost nothing. That
    a seam slides at its full resistance, with its pretension kept, is engineering judgement.

    References
    ----------
    Equilibrium and compatibility of the ring.

    Examples
    --------
    >>> loss = shared_loss(
    ...     0.002, slip_pressure=2.0, yield_pressure=2.5, clearance=0.0015, inner_radius=600.0,
    ...     radial_compliance=0.3)
    >>> float(loss.slip), round(float(loss.plastic), 6)
    (0.0015, 0.00025)
    """
    require_at_least(
        0.0,
        movement=movement,
        slip_pressure=slip_pressure,
        yield_pressure=yield_pressure,
        clearance=clearance,
    )
    require_positive(inner_radius=inner_radius, radial_compliance=radial_compliance)
    rise = np.subtract(yield_pressure, slip_pressure) * np.divide(radial_compliance, inner_radius)
    slides = np.where(rise > 0.0, np.minimum(movement, clearance), 0.0)
    plastic = np.maximum(movement - slides - np.maximum(rise, 0.0), 0.0)
    slides, plastic = np.broadcast_arrays(slides, plastic)
    return Loss(slides[()], plastic[()])


@dataclass(frozen=True, eq=False)
class RetainedPressure:
    """Pressure before and after the losses; attributes share one shape.

    Attributes
    ----------
    before
        Pressure on the inner face of the sleeve without any loss [MPa].
    lost_strain
        Hoop strain lost by slip and by yield together [-].
    remaining_strain
        Hoop strain that still presses [-]; negative where a gap remains.
    retained
        Pressure on the next cycle [MPa]; zero where nothing remains.
    nothing_left
        Whether the losses take everything, so that the sleeve does not touch the core.
    """

    before: Real
    lost_strain: Real
    remaining_strain: Real
    retained: Real
    nothing_left: NDArray[np.bool_]


def retained_pressure(
    hoop_strain: Real,
    *,
    slip_loss: Real,
    yield_loss: Real,
    inner_radius: Real,
    radial_compliance: Real,
    yield_pressure: Real,
) -> RetainedPressure:
    """Pressure on the next cycle at a given dilation, after slip and yield.

    Parameters
    ----------
    hoop_strain
        Dilation of the core on the next cycle, as hoop strain at the sleeve's inner face [-], at
        least zero; for bars that need clamping, `CLAMPING_HOOP_STRAIN` of
        `jacketcheck.mechanics.clamping`. Scalar or array.
    slip_loss
        Hoop strain lost by slip, from `hoop_strain_lost_by_slip` [-], at least zero.
    yield_loss
        Hoop strain lost by yield, from `hoop_strain_lost_by_yield` [-], at least zero.
    inner_radius
        Inner radius of the sleeve [mm], above zero.
    radial_compliance
        Outward movement for each unit of pressure on the sleeve [mm/MPa], above zero.
    yield_pressure
        Pressure at which the sleeve yields, or its seams slide [MPa], at least zero; less what
        other hoop forces take.

    Returns
    -------
    RetainedPressure
        Pressure before and after, broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    ``p = (eps - losses) R_i / (du/dp)``, from zero to yield. The core is taken to close up between
    cycles; rubble that keeps it open would keep some of the pressure too, which is not counted.

    References
    ----------
    Equilibrium and compatibility of the ring.

    Examples
    --------
    >>> left = retained_pressure(
    ...     0.001, slip_loss=0.0, yield_loss=0.0005, inner_radius=600.0, radial_compliance=0.3,
    ...     yield_pressure=2.5)
    >>> float(left.before), float(left.retained), bool(left.nothing_left)
    (2.0, 1.0, False)
    """
    require_at_least(
        0.0,
        hoop_strain=hoop_strain,
        slip_loss=slip_loss,
        yield_loss=yield_loss,
        yield_pressure=yield_pressure,
    )
    require_positive(inner_radius=inner_radius, radial_compliance=radial_compliance)
    lost = np.add(slip_loss, yield_loss)
    remaining = np.subtract(hoop_strain, lost)
    stiffness = np.divide(inner_radius, radial_compliance)
    before = np.minimum(np.multiply(hoop_strain, stiffness), yield_pressure)
    retained = np.minimum(np.maximum(remaining, 0.0) * stiffness, yield_pressure)
    before, lost, remaining, retained = np.broadcast_arrays(before, lost, remaining, retained)
    return RetainedPressure(
        before=before[()],
        lost_strain=lost[()],
        remaining_strain=remaining[()],
        retained=retained[()],
        nothing_left=np.less_equal(remaining, 0.0) & np.greater(lost, 0.0),
    )
