"""Lengths that an assembly of bolt, nut and washers can clamp, from the parts' dimensions."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from jacketcheck.mechanics._arrays import Real, require_at_least, require_positive
from jacketcheck.mechanics.bolt_installation import shortest_grip

__all__ = ["ClampLengths", "clamp_lengths", "least_bolt_length"]


class ClampLengths(NamedTuple):
    """Least and largest thickness between head and nut, washers included [mm].

    Where the least exceeds the largest, the bolt clamps nothing.
    """

    least: Real
    largest: Real


def least_bolt_length(clamp_length: Real, *, nut_height: Real, protrusion: Real) -> Real:
    """Real length that a bolt needs so that its nut is full of thread.

    Parameters
    ----------
    clamp_length
        Thickness between head and nut, washers included [mm], above zero; scalar or array.
    nut_height
        Largest height of the nut [mm], above zero.
    protrusion
        Length that must stand out of the nut [mm], at least zero.

    Returns
    -------
    Real
        Length from under the head to the end [mm]; not a nominal one, which may be short by the
        length tolerance.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    Sum of the three. For products without a tabulated allowance over the grip.

    References
    ----------
    EN 1090-2:2018, 8.2.2: at least one thread pitch beyond the nut.

    Examples
    --------
    >>> float(least_bolt_length(38.0, nut_height=18.0, protrusion=2.5))
    58.5
    """
    require_positive(clamp_length=clamp_length, nut_height=nut_height)
    require_at_least(0.0, protrusion=protrusion)
    return np.add(clamp_length, nut_height) + protrusion


def clamp_lengths(
    bolt_length: Real,
    *,
    thread_length: Real,
    nut_height: Real,
    length_tolerance: Real = 0.0,
    protrusion: Real = 0.0,
    clear_threads: Real = 0.0,
) -> ClampLengths:
    """Least and largest thickness that a bolt can clamp.

    Parameters
    ----------
    bolt_length
        Nominal length from under the head to the end [mm], above zero; scalar or array.
    thread_length
        Thread length [mm], above zero.
    nut_height
        Largest height of the nut [mm], above zero.
    length_tolerance
        What the bolt may be shorter than its nominal length [mm], at least zero.
    protrusion
        Length that must stand out of the nut [mm], at least zero.
    clear_threads
        Length of full thread that must stay free between nut and shank [mm], at least zero.

    Returns
    -------
    ClampLengths
        Least and largest thickness, washers included [mm].

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    Least: nominal length less thread, at least zero, and the threads to stay clear. Largest: least
    length less nut and protrusion, never below zero.

    References
    ----------
    Geometry; EN 1090-2:2018, 8.2.2, for protrusion (one pitch) and clear threads (four).

    Examples
    --------
    >>> clamp = clamp_lengths(
    ...     80.0, thread_length=46.0, nut_height=18.0, length_tolerance=1.5, protrusion=2.5,
    ...     clear_threads=10.0)
    >>> float(clamp.least), float(clamp.largest)
    (44.0, 58.0)
    """
    require_positive(bolt_length=bolt_length, thread_length=thread_length, nut_height=nut_height)
    require_at_least(
        0.0,
        length_tolerance=length_tolerance,
        protrusion=protrusion,
        clear_threads=clear_threads,
    )
    least = shortest_grip(bolt_length, thread_length=thread_length) + clear_threads
    largest = np.subtract(bolt_length, length_tolerance) - nut_height - protrusion
    return ClampLengths(least, np.maximum(largest, 0.0))
