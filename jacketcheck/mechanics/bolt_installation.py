"""Installing pretensioned bolts: torque, turns, length, threads and the tension to verify.

Torque says little about tension unless the fasteners on the job were calibrated: every torque
coefficient is to be tested, never taken from a table.
"""

from __future__ import annotations

from typing import Final

import numpy as np
from numpy.typing import NDArray

from jacketcheck.errors import DomainError
from jacketcheck.mechanics._arguments import require_whole
from jacketcheck.mechanics._arrays import Floats, Real, require_at_least, require_positive

__all__ = [
    "ACCEPTANCE_TORQUE_COEFFICIENT",
    "OVER_ROTATION",
    "UNDER_ROTATION",
    "VERIFICATION_TENSION_RATIO",
    "bridge_turn_tolerance",
    "max_acceptance_torque",
    "required_bolt_length",
    "shortest_grip",
    "threads_clear_shear_plane",
    "tightening_torque",
    "turn_of_nut_rotation",
    "unthreaded_length",
    "verification_tension",
]

ACCEPTANCE_TORQUE_COEFFICIENT: Final = 0.25
"""Largest torque over tension times diameter in a rotational-capacity test (AASHTO LRFD Bridge
Construction Specifications 11.5.6.4, from memory)."""

VERIFICATION_TENSION_RATIO: Final = 1.05
"""Tension to reach in pre-installation verification over the minimum pretension (RCSC 2020
Section 7, from memory)."""

UNDER_ROTATION: Final = 30.0
"""What the rotation may fall short of the table [°] (RCSC 2020 Table 8.1 footnote, from memory; the
same in Table 8.2 of the 2014 edition)."""

OVER_ROTATION: Final = 60.0
"""What it may exceed the table [°] (RCSC 2020 Table 8.1 footnote, from memory; the same in Table
8.2 of the 2014 edition)."""

_LENGTH_BANDS: Final = (4.0, 8.0, 12.0)
_SIXTH_OF_A_TURN: Final = 60.0
_LARGE_TURN: Final = 240.0


def tightening_torque(diameter: Real, *, tension: Real, torque_coefficient: Real) -> Real:
    """Torque that gives a bolt tension.

    Parameters
    ----------
    diameter
        Nominal bolt diameter d [mm], above zero; scalar or array.
    tension
        Bolt tension P [N], at least zero.
    torque_coefficient
        Coefficient K from a test on the fasteners of the job [-], above zero.

    Returns
    -------
    Real
        Torque ``K d P`` [N mm].

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    K spreads from about 0.1 for well lubricated to 0.3 for black fasteners and changes with age,
    rust and dust; it holds for the lot and the condition that were tested.

    References
    ----------
    Budynas and Nisbett, Shigley's Mechanical Engineering Design, 10th ed. (2015), Eq. 8-27 and
    Table 8-15.

    Examples
    --------
    >>> round(float(tightening_torque(24.0, tension=200e3, torque_coefficient=0.2)))
    960000
    """
    require_positive(diameter=diameter, torque_coefficient=torque_coefficient)
    require_at_least(0.0, tension=tension)
    return np.multiply(torque_coefficient, diameter) * tension


def max_acceptance_torque(diameter: Real, *, tension: Real) -> Real:
    """Largest torque at which fasteners still pass a rotational-capacity test.

    Parameters
    ----------
    diameter
        Nominal bolt diameter D [mm], above zero; scalar or array.
    tension
        Bolt tension measured with the torque P [N], at least zero.

    Returns
    -------
    Real
        Torque ``0.25 P D`` [N mm].

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    More torque for the same tension means that the fasteners are not lubricated well enough.

    References
    ----------
    AASHTO LRFD Bridge Construction Specifications, 4th ed. (2017), 11.5.6.4, from memory.

    Examples
    --------
    >>> float(max_acceptance_torque(24.0, tension=200e3))
    1200000.0
    """
    return tightening_torque(
        diameter, tension=tension, torque_coefficient=ACCEPTANCE_TORQUE_COEFFICIENT
    )


def verification_tension(pretension: Real) -> Real:
    """Tension that the installation method must reach in pre-installation verification.

    Parameters
    ----------
    pretension
        Minimum pretension of the bolt [N], above zero; scalar or array.

    Returns
    -------
    Real
        Tension 1.05 times the minimum pretension [N]; the specification's table prints it rounded.

    Raises
    ------
    DomainError
        If the pretension is not finite and above zero.

    Notes
    -----
    At least three assemblies of each lot are tried in a tension calibrator.

    References
    ----------
    RCSC, Specification for Structural Joints Using High-Strength Bolts (2020), Section 7 and Table
    7.1, from memory.

    Examples
    --------
    >>> round(float(verification_tension(200e3)))
    210000
    """
    require_positive(pretension=pretension)
    return np.multiply(VERIFICATION_TENSION_RATIO, pretension)


def turn_of_nut_rotation(
    bolt_length: Real, *, diameter: Real, sloped_faces: int | NDArray[np.int_] = 0
) -> Real:
    """Rotation of the nut beyond snug-tight for turn-of-nut pretensioning.

    Parameters
    ----------
    bolt_length
        Length of the bolt from under its head to its end L [mm], above zero; scalar or array.
    diameter
        Nominal bolt diameter d [mm], above zero.
    sloped_faces
        Outer faces that are sloped to the bolt's axis, by no more than 1 to 20 and without a
        bevelled washer: 0, 1 or 2.

    Returns
    -------
    Real
        Rotation of the nut against the bolt [°], whichever of them is turned.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range, or the bolt is longer than twelve
        diameters: its rotation has to be found by test.

    Notes
    -----
    A third of a turn up to 4 d, a half up to 8 d, two thirds up to 12 d; a sixth more for each
    sloped face.

    References
    ----------
    RCSC, Specification for Structural Joints Using High-Strength Bolts (2020), Table 8.1 (8.2 in
    the 2014 edition), from memory.

    Examples
    --------
    >>> float(turn_of_nut_rotation(75.0, diameter=24.0))
    120.0
    """
    require_positive(bolt_length=bolt_length, diameter=diameter)
    require_whole(0, sloped_faces=np.asarray(sloped_faces, dtype=float))
    if np.any(np.asarray(sloped_faces) > 2):
        raise DomainError("sloped_faces", int(np.max(sloped_faces)), "0, 1 or 2")
    # a length that went through a conversion still belongs to the band it ends
    slenderness = np.divide(bolt_length, diameter) * (1.0 - 1e-9)
    if np.any(slenderness > _LENGTH_BANDS[-1]):
        raise DomainError(
            "bolt_length / diameter",
            float(np.max(slenderness)),
            "at most 12; the rotation of a longer bolt has to be found by test",
        )
    band = np.searchsorted(_LENGTH_BANDS, slenderness)
    rotation: Floats = _SIXTH_OF_A_TURN * (2.0 + band + np.asarray(sloped_faces))
    return rotation


def bridge_turn_tolerance(rotation: Real) -> Real:
    """What the rotation of turn-of-nut may be off on bridges, either way.

    Parameters
    ----------
    rotation
        Tabulated rotation [°], above zero; scalar or array.

    Returns
    -------
    Real
        Tolerance [°]: 30 up to half a turn, 45 from two thirds of a turn on.

    Raises
    ------
    DomainError
        If the rotation is not finite and above zero.

    Notes
    -----
    Editions of RCSC up to the 1980s printed the same; the newer ones allow 30° less and 60° more.

    References
    ----------
    AASHTO LRFD Bridge Construction Specifications, 4th ed. (2017), 11.5.6.4, from memory; RCSC,
    Specification for Structural Joints Using ASTM A325 or A490 Bolts (1985), Table 5, footnote a.

    Examples
    --------
    >>> float(bridge_turn_tolerance(180.0)), float(bridge_turn_tolerance(240.0))
    (30.0, 45.0)
    """
    require_positive(rotation=rotation)
    tolerance: Floats = np.where(np.asarray(rotation) >= _LARGE_TURN * (1.0 - 1e-9), 45.0, 30.0)
    return tolerance


def required_bolt_length(grip: Real, *, grip_allowance: Real, washer_thickness: Real = 0.0) -> Real:
    """Length that a bolt must have at least.

    Parameters
    ----------
    grip
        Thickness of all plates between head and nut, without washers [mm], above zero; scalar or
        array.
    grip_allowance
        Length for the nut, the protrusion and the tolerances, as tabulated for the diameter [mm],
        above zero.
    washer_thickness
        Thickness of all washers and direct tension indicators together [mm], at least zero.

    Returns
    -------
    Real
        Least length [mm], to be rounded up to a stocked one.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    Sum of the three. A longer bolt than needed may run its nut onto the end of the thread; see
    `shortest_grip`.

    References
    ----------
    RCSC, Specification for Structural Joints Using High-Strength Bolts (2020), Commentary Table
    C-2.2 (from memory; as in the 2014 edition).

    Examples
    --------
    >>> float(required_bolt_length(30.0, grip_allowance=29.0, washer_thickness=8.0))
    67.0
    """
    require_positive(grip=grip, grip_allowance=grip_allowance)
    require_at_least(0.0, washer_thickness=washer_thickness)
    return np.add(grip, grip_allowance) + washer_thickness


def unthreaded_length(
    bolt_length: Real, *, thread_length: Real, transition_length: Real = 0.0
) -> Real:
    """Length of full shank under the head of a bolt.

    Parameters
    ----------
    bolt_length
        Length from under the head to the end [mm], above zero; scalar or array.
    thread_length
        Thread length [mm], above zero.
    transition_length
        Length over which the thread runs out [mm], at least zero.

    Returns
    -------
    Real
        Length of full shank [mm]; zero for a bolt that is threaded to its head.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    References
    ----------
    Geometry; ASME B18.2.6 (2019) for the body of structural bolts, from memory.

    Examples
    --------
    >>> float(unthreaded_length(65.0, thread_length=36.0, transition_length=7.0))
    22.0
    """
    require_positive(bolt_length=bolt_length, thread_length=thread_length)
    require_at_least(0.0, transition_length=transition_length)
    return np.maximum(np.subtract(bolt_length, np.add(thread_length, transition_length)), 0.0)


def threads_clear_shear_plane(
    bolt_length: Real,
    *,
    thread_length: Real,
    transition_length: Real,
    shear_plane_depth: Real,
) -> NDArray[np.bool_]:
    """Whether threads and their run-out stay clear of the shear planes.

    Parameters
    ----------
    bolt_length
        Length from under the head to the end [mm], above zero; scalar or array.
    thread_length
        Thread length [mm], above zero.
    transition_length
        Length over which the thread runs out [mm], at least zero.
    shear_plane_depth
        From under the head to the shear plane farthest from it: washers under the head and the
        plates in between [mm], above zero.

    Returns
    -------
    ndarray
        True where threads are excluded from all shear planes.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    The full shank has to reach the farthest plane. Bolts through thin plates often cannot have
    their threads excluded: the thread of a structural bolt is longer than nut and washer.

    References
    ----------
    Geometry; AISC 360-22 (2022) Table J3.2, threads and the transition area of the shank excluded.

    Examples
    --------
    >>> bool(threads_clear_shear_plane(
    ...     65.0, thread_length=36.0, transition_length=7.0, shear_plane_depth=16.0))
    True
    """
    require_positive(shear_plane_depth=shear_plane_depth)
    shank = unthreaded_length(
        bolt_length, thread_length=thread_length, transition_length=transition_length
    )
    clear: NDArray[np.bool_] = np.asarray(np.greater_equal(shank, shear_plane_depth))
    return clear


def shortest_grip(bolt_length: Real, *, thread_length: Real) -> Real:
    """Least grip, washers included, on which the nut of a bolt can be tightened.

    Parameters
    ----------
    bolt_length
        Length from under the head to the end [mm], above zero; scalar or array.
    thread_length
        Thread length [mm], above zero.

    Returns
    -------
    Real
        Least grip with washers [mm].

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    On a shorter grip the nut meets the end of the thread and turns without clamping: the plates
    stay loose at any torque. Thin sleeves make for short grips; washers under the head cure it.

    References
    ----------
    Geometry.

    Examples
    --------
    >>> float(shortest_grip(65.0, thread_length=36.0))
    29.0
    """
    return unthreaded_length(bolt_length, thread_length=thread_length)
