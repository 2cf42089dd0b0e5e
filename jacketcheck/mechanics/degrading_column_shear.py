"""Shear strength of a circular column as the sum of concrete, axial load and hoops.

The revised model of Kowalsky and Priestley: the concrete's part depends on aspect ratio,
longitudinal steel and curvature ductility, the axial load runs to the compression zone as an
inclined strut, and hoops work over the cracked depth only.  It estimates the strength that tests
show; for design its authors take 85 % of it.
"""

from __future__ import annotations

from typing import Final, NamedTuple

import numpy as np

from jacketcheck.errors import DomainError
from jacketcheck.mechanics._arrays import Real, require_at_least, require_positive

__all__ = [
    "DegradingFactors",
    "degrading_axial_shear",
    "degrading_concrete_shear",
    "degrading_factors",
    "degrading_hoop_shear",
]

_CRACK_ANGLE: Final = np.radians(30.0)
_FULL_DUCTILITY: Final = 3.0
_RESIDUAL_DUCTILITY: Final = 15.0


class DegradingFactors(NamedTuple):
    """Factors of the concrete's part [-]: for aspect ratio, bars and curvature ductility."""

    aspect: Real
    bars: Real
    ductility: Real


def degrading_factors(
    *, aspect_ratio: Real, bar_ratio: Real, curvature_ductility: Real
) -> DegradingFactors:
    """Factors alpha, beta and gamma of `degrading_concrete_shear`.

    Parameters
    ----------
    aspect_ratio
        Shear span over diameter [-], above zero; scalar or array.
    bar_ratio
        Area of all longitudinal bars over the gross area [-], at least zero.
    curvature_ductility
        Curvature over idealised yield curvature [-], at least zero.

    Returns
    -------
    DegradingFactors
        Each shaped like what it depends on.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    References
    ----------
    As in `degrading_concrete_shear`.

    Examples
    --------
    >>> factors = degrading_factors(aspect_ratio=2.0, bar_ratio=0.01, curvature_ductility=9.0)
    >>> [round(float(factor), 3) for factor in factors]
    [1.0, 0.7, 0.17]
    """
    require_positive(aspect_ratio=aspect_ratio)
    require_at_least(0.0, bar_ratio=bar_ratio, curvature_ductility=curvature_ductility)
    return DegradingFactors(
        np.clip(np.subtract(3.0, aspect_ratio), 1.0, 1.5),
        np.minimum(0.5 + np.multiply(20.0, bar_ratio), 1.0),
        np.interp(curvature_ductility, [_FULL_DUCTILITY, _RESIDUAL_DUCTILITY], [0.29, 0.05]),
    )


def degrading_concrete_shear(
    gross_area: Real,
    *,
    concrete_strength: Real,
    aspect_ratio: Real,
    bar_ratio: Real,
    curvature_ductility: Real,
) -> Real:
    """Shear strength provided by the concrete.

    Parameters
    ----------
    gross_area
        Gross area of the column [mm²], above zero; scalar or array.
    concrete_strength
        Strength of the concrete [MPa], above zero.
    aspect_ratio
        Moment over shear and diameter ``M / (V D)``: shear span over diameter [-], above zero.
    bar_ratio
        Area of all longitudinal bars over the gross area [-], at least zero.
    curvature_ductility
        Curvature over idealised yield curvature [-], at least zero.

    Returns
    -------
    Real
        Shear [N], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    ``Vc = alpha beta gamma sqrt(f'c) (0.8 Ag)`` with ``1 <= alpha = 3 - M / (V D) <= 1.5``,
    ``beta = 0.5 + 20 rho_l <= 1`` and ``gamma`` falling linearly from 0.29 at a curvature
    ductility of 3 to 0.05 at 15 (MPa).  Secondary sources start the fall at 3 or 4; the lower
    strength is taken.

    References
    ----------
    Kowalsky and Priestley, Improved Analytical Model for Shear Strength of Circular Reinforced
    Concrete Columns in Seismic Regions, ACI Struct. J. 97(3) (2000), 388-396, title 97-S42;
    Priestley, Calvi and Kowalsky, Displacement-Based Seismic Design of Structures (2007),
    sec. 4.7.3 (factors checked against a secondary source only).

    Examples
    --------
    >>> shear = degrading_concrete_shear(
    ...     1.0e6, concrete_strength=36.0, aspect_ratio=4.0, bar_ratio=0.02,
    ...     curvature_ductility=9.0)
    >>> round(float(shear) / 1e3)
    734
    """
    require_positive(gross_area=gross_area, concrete_strength=concrete_strength)
    alpha, beta, gamma = degrading_factors(
        aspect_ratio=aspect_ratio, bar_ratio=bar_ratio, curvature_ductility=curvature_ductility
    )
    shear: Real = alpha * beta * gamma * np.sqrt(concrete_strength) * np.multiply(0.8, gross_area)
    return shear


def degrading_axial_shear(
    axial_load: Real, *, diameter: Real, neutral_axis_depth: Real, shear_span: Real
) -> Real:
    """Shear strength provided by the inclination of the axial load.

    Parameters
    ----------
    axial_load
        Axial load [N], compression positive and at least zero; scalar or array.
    diameter
        Diameter of the column [mm], above zero.
    neutral_axis_depth
        Depth of the compression zone in the hinge [mm], above zero and at most `diameter`.
    shear_span
        Hinge to the point of contraflexure [mm], above zero.

    Returns
    -------
    Real
        Shear ``P (D - c) / (2 L)`` [N], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    For a cantilever, and for each half of a column in double curvature with half the height as
    shear span.

    References
    ----------
    Kowalsky and Priestley, ACI Struct. J. 97(3) (2000), 388-396.

    Examples
    --------
    >>> shear = degrading_axial_shear(
    ...     3.0e6, diameter=1200.0, neutral_axis_depth=400.0, shear_span=6000.0)
    >>> float(shear)
    200000.0
    """
    require_at_least(0.0, axial_load=axial_load)
    require_positive(shear_span=shear_span)
    cracked = _cracked_depth(diameter, neutral_axis_depth, 0.0)
    return np.multiply(axial_load, cracked) / np.multiply(2.0, shear_span)


def degrading_hoop_shear(
    bar_area: Real,
    *,
    hoop_yield: Real,
    diameter: Real,
    neutral_axis_depth: Real,
    hoop_cover: Real,
    spacing: Real,
) -> Real:
    """Shear strength provided by circular hoops or a spiral.

    Parameters
    ----------
    bar_area
        Area of the hoop's bar [mm²], at least zero; scalar or array.
    hoop_yield
        Yield strength of the hoops [MPa], above zero.
    diameter
        Diameter of the column [mm], above zero.
    neutral_axis_depth
        Depth of the compression zone in the hinge [mm], above zero and at most `diameter`.
    hoop_cover
        Surface to the centre of the hoop's bar [mm], at least zero.
    spacing
        Spacing of the hoops, or pitch [mm], above zero.

    Returns
    -------
    Real
        Shear [N], at least zero, broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    ``Vs = (pi / 2) Asp fyh (D - c - cov) cot(30°) / s``.

    References
    ----------
    Kowalsky and Priestley, ACI Struct. J. 97(3) (2000), 388-396.

    Examples
    --------
    >>> shear = degrading_hoop_shear(
    ...     200.0, hoop_yield=400.0, diameter=1200.0, neutral_axis_depth=400.0,
    ...     hoop_cover=50.0, spacing=100.0)
    >>> round(float(shear) / 1e3)
    1632
    """
    require_at_least(0.0, bar_area=bar_area, hoop_cover=hoop_cover)
    require_positive(hoop_yield=hoop_yield, spacing=spacing)
    cracked = _cracked_depth(diameter, neutral_axis_depth, hoop_cover)
    force = 0.5 * np.pi * np.multiply(bar_area, hoop_yield)
    shear: Real = force * cracked / np.tan(_CRACK_ANGLE) / spacing
    return shear


def _cracked_depth(diameter: Real, neutral_axis_depth: Real, cover: Real) -> Real:
    """``D - c - cov`` [mm], at least zero."""
    require_positive(diameter=diameter, neutral_axis_depth=neutral_axis_depth)
    if np.any(np.greater(neutral_axis_depth, diameter)):
        raise DomainError("neutral_axis_depth", float(np.max(neutral_axis_depth)), "at most D")
    depth: Real = np.maximum(np.subtract(diameter, np.add(neutral_axis_depth, cover)), 0.0)
    return depth
