"""Shear at the interface between concretes cast at different times."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final, Literal, TypeAlias

import numpy as np

from jacketcheck.plugin import Real, require_at_least, require_positive
from jacketcheck_europe.mechanics._tables import choose

__all__ = ["InterfaceSurface", "friction_coefficient", "interface_shear_strength"]

InterfaceSurface: TypeAlias = Literal["very smooth", "smooth", "rough", "indented"]
"""Cast against steel or planed forms; left as it is after vibration; roughness of 3 mm at least;
indented as the standard's figure shows."""

_FRICTION: Final[Mapping[str, float]] = MappingProxyType(
    {"very smooth": 0.5, "smooth": 0.6, "rough": 0.7, "indented": 0.9}
)


def friction_coefficient(surface: InterfaceSurface) -> float:
    """Coefficient of friction of an interface.

    Parameters
    ----------
    surface
        ``very smooth``, ``smooth``, ``rough`` or ``indented``.

    Returns
    -------
    float
        μ [-].

    Raises
    ------
    DomainError
        If the word is unknown.

    References
    ----------
    EN 1992-1-1:2004, 6.2.5(2); all but the indented surface from memory.

    Examples
    --------
    >>> friction_coefficient("rough")
    0.7
    """
    return choose(_FRICTION, surface, name="surface")


def interface_shear_strength(
    normal_stress: Real,
    *,
    friction: Real,
    design_strength: Real,
    effectiveness: Real,
    cohesion_stress: Real = 0.0,
) -> Real:
    """Design shear strength of an interface without reinforcement across it.

    Parameters
    ----------
    normal_stress
        Least compression across the interface that acts together with the shear σ_n [MPa], at
        least zero; scalar or array.
    friction
        μ from `friction_coefficient` [-], above zero.
    design_strength
        f_cd of the weaker concrete [MPa], above zero.
    effectiveness
        ν from `jacketcheck_europe.mechanics.concrete.strut_effectiveness` [-], above zero.
    cohesion_stress
        c f_ctd [MPa], at least zero; zero for an interface that may have cracked.

    Returns
    -------
    Real
        v_Rdi [MPa], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``v_Rdi = c f_ctd + μ σ_n <= 0.5 ν f_cd``, with σ_n not above 0.6 f_cd.

    References
    ----------
    EN 1992-1-1:2004, 6.2.5(1), Eq. 6.25.

    Examples
    --------
    >>> float(interface_shear_strength(
    ...     2.0, friction=0.7, design_strength=17.0, effectiveness=0.528))
    1.4
    """
    require_at_least(0.0, normal_stress=normal_stress, cohesion_stress=cohesion_stress)
    require_positive(
        friction=friction, design_strength=design_strength, effectiveness=effectiveness
    )
    pressed = np.minimum(normal_stress, np.multiply(0.6, design_strength))
    strength = np.add(cohesion_stress, np.multiply(friction, pressed))
    return np.minimum(strength, 0.5 * np.multiply(effectiveness, design_strength))
