"""Displacement that a plastic hinge allows, at the footing or above a repair.

Displacements are those of the point of contraflexure relative to the footing, for one hinge.  A
column in double curvature has two such parts, one on either side of its point of contraflexure,
and their displacements add.  A repair of height ``H`` leaves a span ``L - H`` for the hinge to
rotate over: the displacement capacity is smaller than that of the original column with the same
curvature capacity.
"""

from __future__ import annotations

import numpy as np

from jacketcheck.errors import DomainError
from jacketcheck.mechanics._arrays import Real, require_at_least, require_positive

__all__ = ["plastic_displacement", "plastic_rotation", "yield_displacement"]


def yield_displacement(
    yield_curvature: Real,
    *,
    shear_span: Real,
    repair_height: Real = 0.0,
    stiffness_ratio: Real = 0.0,
    strain_penetration: Real = 0.0,
) -> Real:
    """Displacement of the point of contraflexure when the hinge section yields.

    Parameters
    ----------
    yield_curvature
        Idealised yield curvature of the section in the hinge [1/mm], above zero.
    shear_span
        Footing to the point of contraflexure [mm], above `repair_height`.
    repair_height
        Footing to the hinge [mm]; zero (default) for a hinge at the footing.
    stiffness_ratio
        Flexural stiffness of the column over that of the repaired part [-], at least zero.  Zero
        (default) takes the repaired part as rigid, which understates the displacement: the
        conservative choice for a displacement capacity, but not for a displacement demand.
    strain_penetration
        Length added to the span for yield penetration of the bars below the hinge [mm], see
        `strain_penetration.penetration_length`; zero (default) is conservative for a capacity.

    Returns
    -------
    Real
        Displacement [mm], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    Moments vary linearly from the footing to the point of contraflexure, so that with
    ``L' = L - H`` and a ratio ``r`` of stiffnesses
    ``Dy = phi_y [(L' + Lsp)**2 + r (L**3 - L'**3) / L'] / 3``.  With ``H = 0`` and no strain
    penetration this is ``phi_y L**2 / 3``.

    References
    ----------
    Caltrans SDC 1.4 (2006), Eq. 3.2; strain penetration after Priestley, Calvi and Kowalsky,
    Displacement-Based Seismic Design of Structures (2007), sec. 4.2.7; repaired part by virtual
    work.

    Examples
    --------
    >>> round(float(yield_displacement(1.0e-4, shear_span=240.0)), 3)
    1.92
    """
    require_positive(yield_curvature=yield_curvature)
    require_at_least(0.0, stiffness_ratio=stiffness_ratio, strain_penetration=strain_penetration)
    reduced = _reduced_span(shear_span, repair_height)
    below = np.power(shear_span, 3) - reduced**3
    squared = np.square(reduced + strain_penetration) + stiffness_ratio * below / reduced
    return np.multiply(yield_curvature, squared) / 3.0


def _reduced_span(shear_span: Real, repair_height: Real) -> Real:
    """Length above the repair ``L - H`` [mm]."""
    require_positive(shear_span=shear_span)
    require_at_least(0.0, repair_height=repair_height)
    reduced: Real = np.asarray(np.subtract(shear_span, repair_height))
    if not np.all(reduced > 0.0):
        raise DomainError(
            "repair_height",
            float(np.max(repair_height)),
            f"below the shear span {float(np.min(shear_span)):g}",
        )
    return reduced


def plastic_rotation(curvature: Real, *, yield_curvature: Real, hinge_length: Real) -> Real:
    """Plastic rotation of a hinge.

    Parameters
    ----------
    curvature
        Curvature of the hinge section [1/mm], at least zero; scalar or array.
    yield_curvature
        Idealised yield curvature [1/mm], above zero.
    hinge_length
        Plastic hinge length [mm], above zero.

    Returns
    -------
    Real
        Rotation ``Lp (phi - phi_y)`` [rad], zero below yield, broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    References
    ----------
    Caltrans SDC 1.4 (2006), Eq. 3.4.

    Examples
    --------
    >>> theta = plastic_rotation(1.5e-3, yield_curvature=1.0e-4, hinge_length=32.154)
    >>> round(float(theta), 5)
    0.04502
    """
    require_at_least(0.0, curvature=curvature)
    require_positive(yield_curvature=yield_curvature, hinge_length=hinge_length)
    return np.multiply(hinge_length, np.maximum(np.subtract(curvature, yield_curvature), 0.0))


def plastic_displacement(
    rotation: Real, *, shear_span: Real, hinge_length: Real, repair_height: Real = 0.0
) -> Real:
    """Displacement of the point of contraflexure from rotation of the hinge.

    Parameters
    ----------
    rotation
        Plastic rotation [rad], at least zero; scalar or array.
    shear_span
        Footing to the point of contraflexure [mm], above `repair_height`.
    hinge_length
        Plastic hinge length [mm], above zero and at most twice the span above the repair.
    repair_height
        Footing to the hinge [mm]; zero (default) for a hinge at the footing.

    Returns
    -------
    Real
        Displacement ``theta (L - H - Lp / 2)`` [mm], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    The hinge rotates about its middle.

    References
    ----------
    Caltrans SDC 1.4 (2006), Eq. 3.3.

    Examples
    --------
    >>> round(float(plastic_displacement(0.045016, shear_span=240.0, hinge_length=32.154)), 2)
    10.08
    """
    require_at_least(0.0, rotation=rotation)
    require_positive(hinge_length=hinge_length)
    lever: Real = np.asarray(
        _reduced_span(shear_span, repair_height) - np.divide(hinge_length, 2.0)
    )
    if not np.all(lever > 0.0):
        raise DomainError(
            "hinge_length",
            float(np.max(hinge_length)),
            "below twice the span from the hinge to the point of contraflexure",
        )
    return np.multiply(rotation, lever)
