"""Rotation of plastic hinges of piers."""

from __future__ import annotations

import numpy as np

from jacketcheck.plugin import Real, require_at_least, require_positive

__all__ = ["design_plastic_rotation", "largest_hoop_spacing", "plastic_hinge_length"]


def plastic_hinge_length(span: Real, *, yield_strength: Real, bar_diameter: Real) -> Real:
    """Length of the plastic hinge of a pier.

    Parameters
    ----------
    span
        Hinge to the section of zero moment L [mm], above zero; scalar or array.
    yield_strength
        Characteristic yield strength of the longitudinal bars f_yk [MPa], above zero.
    bar_diameter
        Their diameter d_bL [mm], above zero.

    Returns
    -------
    Real
        ``L_p = 0.10 L + 0.015 f_yk d_bL`` [mm], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument is not finite and above zero.

    References
    ----------
    EN 1998-2:2005, E.3.2(5), Eq. E.19, from memory.

    Examples
    --------
    >>> float(plastic_hinge_length(6000.0, yield_strength=500.0, bar_diameter=32.0))
    840.0
    """
    require_positive(span=span, yield_strength=yield_strength, bar_diameter=bar_diameter)
    return 0.10 * np.asarray(span) + 0.015 * np.multiply(yield_strength, bar_diameter)


def design_plastic_rotation(
    ultimate_curvature: Real,
    *,
    yield_curvature: Real,
    hinge_length: Real,
    span: Real,
    effective_depth: Real,
    partial_factor: Real,
) -> Real:
    """Design plastic rotation of the hinge of a pier, as a chord rotation over its span.

    Parameters
    ----------
    ultimate_curvature
        Φ_u [1/mm], at least `yield_curvature`; scalar or array.
    yield_curvature
        Φ_y [1/mm], above zero.
    hinge_length
        L_p [mm], above zero, at most twice the span.
    span
        Hinge to the section of zero moment L [mm], above zero.
    effective_depth
        Effective depth of the section d [mm], above zero, at most the span.
    partial_factor
        γ_R,p [-], above zero.

    Returns
    -------
    Real
        θ_p,d [rad], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    ``θ_p,u = (Φ_u - Φ_y) L_p (1 - L_p/(2 L))``, for shear spans below three effective depths times
    ``√(L/(3 d))``; ``θ_p,d = θ_p,u/γ_R,p``.

    References
    ----------
    EN 1998-2:2005, E.3.2, Eq. E.16b and E.20, and 4.2.4.4(2), from memory.

    Examples
    --------
    >>> rotation = design_plastic_rotation(
    ...     6.0e-5, yield_curvature=4.0e-6, hinge_length=840.0, span=6000.0, effective_depth=1100.0,
    ...     partial_factor=1.4)
    >>> round(float(rotation), 5)
    0.03125
    """
    require_positive(
        yield_curvature=yield_curvature,
        hinge_length=hinge_length,
        span=span,
        effective_depth=effective_depth,
        partial_factor=partial_factor,
    )
    slenderness = np.divide(span, effective_depth)
    require_at_least(
        0.0,
        plastic_curvature=np.subtract(ultimate_curvature, yield_curvature),
        lever=np.subtract(np.multiply(2.0, span), hinge_length),
    )
    require_at_least(1.0, slenderness=slenderness)
    ultimate = (
        np.subtract(ultimate_curvature, yield_curvature)
        * hinge_length
        * (1.0 - np.divide(hinge_length, np.multiply(2.0, span)))
    )
    return ultimate * np.minimum(np.sqrt(slenderness / 3.0), 1.0) / partial_factor


def largest_hoop_spacing(bar_diameter: Real, *, strength_ratio: Real = 1.0) -> Real:
    """Spacing of hoops up to which they keep the bars of a hinge from buckling.

    Parameters
    ----------
    bar_diameter
        Diameter of the longitudinal bars d_bL [mm], above zero; scalar or array.
    strength_ratio
        f_tk/f_yk of the transverse reinforcement [-], at least 1, the default, which gives the
        smallest spacing of the rule.

    Returns
    -------
    Real
        Largest spacing s_L [mm], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    ``s_L <= δ d_bL`` with ``5 <= δ = 2.5 f_tk/f_yk + 2.25 <= 6``.

    References
    ----------
    EN 1998-2:2005, 6.2.2(2), Eq. 6.9, from memory.

    Examples
    --------
    >>> float(largest_hoop_spacing(32.0)), float(largest_hoop_spacing(32.0, strength_ratio=1.2))
    (160.0, 168.0)
    """
    require_positive(bar_diameter=bar_diameter)
    require_at_least(1.0, strength_ratio=strength_ratio)
    factor = np.clip(2.5 * np.asarray(strength_ratio) + 2.25, 5.0, 6.0)
    return np.multiply(factor, bar_diameter)
