"""Forces in a column whose plastic hinge has moved above a repair.

When a stiff repair of height ``H`` covers the base, the hinge forms above it.  The same moment now
acts over a shorter span, so that the shear rises, and the footing must carry more moment than the
hinge.
"""

from __future__ import annotations

from typing import Final, NamedTuple

import numpy as np

from jacketcheck.errors import DomainError
from jacketcheck.mechanics._arrays import Real, require_at_least, require_positive

__all__ = [
    "P_DELTA_LIMIT",
    "RelocatedHinge",
    "moment_at_height",
    "overstrength_moment",
    "p_delta_ratio",
    "relocated_hinge",
]

P_DELTA_LIMIT: Final = 0.25
"""Largest `p_delta_ratio` for which P-Delta effects may be left out of the analysis of a
reinforced concrete column (AASHTO Guide Spec Seismic 2nd ed. (2011) 4.11.5, from memory)."""


class RelocatedHinge(NamedTuple):
    """Forces of a column whose plastic hinge has moved above a repair.

    Attributes
    ----------
    shear
        Shear along the column [N].
    base_moment
        Moment at the footing [N mm].
    amplification
        Moment at the footing over that in the hinge [-].
    """

    shear: Real
    base_moment: Real
    amplification: Real


def relocated_hinge(
    hinge_moment: Real,
    *,
    clear_height: Real,
    repair_height: Real,
    top_moment: Real = 0.0,
    top_depth: Real = 0.0,
) -> RelocatedHinge:
    """Shear and base moment when a hinge forms at the top of the repair.

    Parameters
    ----------
    hinge_moment
        Moment in the relocated hinge [N mm], above zero, overstrength included; scalar or array.
    clear_height
        Footing top to the cap's soffit, or to the point of contraflexure of a cantilever [mm].
    repair_height
        Footing top to the hinge [mm], at least zero.
    top_moment
        Moment in the hinge at the top of a column in double curvature [N mm]; zero (default) for
        a cantilever.
    top_depth
        Soffit to the hinge at the top [mm]; zero (default) where it was not moved.

    Returns
    -------
    RelocatedHinge
        Shear [N], base moment [N mm] and amplification [-], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range, or the hinges leave no height between them.

    Notes
    -----
    ``V = (M + M_top) / (h - H - H_top)`` and ``M_base = M + V H``; for a cantilever
    ``M_base = M L / (L - H)``.

    References
    ----------
    Statics.

    Examples
    --------
    >>> hinge = relocated_hinge(2000e6, clear_height=3000.0, repair_height=500.0)
    >>> float(hinge.shear), float(hinge.base_moment), float(hinge.amplification)
    (800000.0, 2400000000.0, 1.2)
    """
    require_positive(hinge_moment=hinge_moment, clear_height=clear_height)
    require_at_least(0.0, repair_height=repair_height, top_moment=top_moment, top_depth=top_depth)
    between = np.asarray(np.subtract(clear_height, np.add(repair_height, top_depth)))
    if not np.all(between > 0.0):
        raise DomainError(
            "repair_height",
            float(np.max(np.add(repair_height, top_depth))),
            f"below the clear height {float(np.min(clear_height)):g}",
        )
    shear = np.add(hinge_moment, top_moment) / between
    base = hinge_moment + shear * repair_height
    return RelocatedHinge(shear, base, base / hinge_moment)


def moment_at_height(height: Real, *, hinge: RelocatedHinge) -> Real:
    """Moment along the column once its hinge has formed.

    Parameters
    ----------
    height
        Height above the footing [mm], at least zero; scalar or array.
    hinge
        Forces from `relocated_hinge`.

    Returns
    -------
    Real
        Moment [N mm], negative beyond the point of contraflexure.

    Raises
    ------
    DomainError
        If the height is negative or not finite.

    References
    ----------
    Statics: ``M(z) = M_base - V z``.

    Examples
    --------
    >>> hinge = relocated_hinge(2000e6, clear_height=3000.0, repair_height=500.0)
    >>> moment_at_height(np.array([0.0, 500.0, 3000.0]), hinge=hinge).tolist()
    [2400000000.0, 2000000000.0, 0.0]
    """
    require_at_least(0.0, height=height)
    return hinge.base_moment - np.multiply(hinge.shear, height)


def p_delta_ratio(axial_load: Real, *, displacement: Real, hinge_moment: Real) -> Real:
    """Moment of the axial load over the plastic moment, to be compared with `P_DELTA_LIMIT`.

    Parameters
    ----------
    axial_load
        Axial compression from dead load [N], at least zero; scalar or array.
    displacement
        Lateral offset between the point of contraflexure and the far end of the hinge [mm], at
        least zero.
    hinge_moment
        Idealised plastic moment at expected strengths [N mm], above zero.

    Returns
    -------
    Real
        ``P Delta / Mp`` [-], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    References
    ----------
    AASHTO Guide Spec Seismic 2nd ed. (2011), Eq. 4.11.5-1 (from memory).

    Examples
    --------
    >>> float(p_delta_ratio(3000e3, displacement=200.0, hinge_moment=4000e6))
    0.15
    """
    require_at_least(0.0, axial_load=axial_load, displacement=displacement)
    require_positive(hinge_moment=hinge_moment)
    return np.multiply(axial_load, displacement) / hinge_moment


def overstrength_moment(plastic_moment: Real, *, overstrength_factor: Real) -> Real:
    """Moment that capacity-protected parts must expect from a hinge.

    Parameters
    ----------
    plastic_moment
        Idealised plastic moment at expected strengths [N mm], above zero; scalar or array.
    overstrength_factor
        Factor for the bars' hardening and their strength above the expected one [-], at least
        one: 1.2 for ASTM A706 and 1.4 for ASTM A615 bars.

    Returns
    -------
    Real
        Overstrength moment [N mm], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    References
    ----------
    AASHTO Guide Spec Seismic 2nd ed. (2011), Eq. 8.5-1 (factors from memory).

    Examples
    --------
    >>> float(overstrength_moment(2000e6, overstrength_factor=1.2))
    2400000000.0
    """
    require_positive(plastic_moment=plastic_moment)
    require_at_least(1.0, overstrength_factor=overstrength_factor)
    return np.multiply(plastic_moment, overstrength_factor)
