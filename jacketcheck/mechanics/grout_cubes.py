"""Cylinder strength of concrete and grout from tests on cubes and prisms."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.errors import DomainError
from jacketcheck.mechanics._arrays import Floats, Real, require_positive

__all__ = [
    "CUBE_CONVERSION",
    "CYLINDER_OVER_CUBE",
    "PRISM_SIDE",
    "SMALL_CUBE_FACTOR",
    "STANDARD_CUBE_SIDE",
    "cylinder_strength_of_cubes",
]

STANDARD_CUBE_SIDE: Final = 150.0
"""Side of the cube that strength classes are defined with [mm] (EN 206:2013+A2:2021 4.3.1)."""

SMALL_CUBE_FACTOR: Final = 0.95
"""Strength of a 150 mm cube over that of a smaller one (Neville, Properties of Concrete, 5th ed.
(2011), size effect of 100 mm cubes, from memory)."""

CYLINDER_OVER_CUBE: Final = 0.8
"""Strength of 150 × 300 mm cylinders over that of 150 mm cubes where a grade is given by the latter
(IS 516:1959 5.6.1, a cube being 5/4 of the cylinder, from memory; grades of IS 456:2000 6.1)."""

PRISM_SIDE: Final = 40.0
"""Side of the faces between which the halves of 40 × 40 × 160 mm prisms are crushed [mm] (EN
196-1:2016): they count as cubes of that side, which is engineering judgement."""

CUBE_CONVERSION: Final = (
    "EN 1992-1-1:2004 Table 3.1; cubes below 150 mm × 0.95 (Neville, Properties of Concrete, 5th "
    "ed. (2011), from memory)"
)
"""Source of what `cylinder_strength_of_cubes` does."""

_CYLINDER: Final = np.array([0, 12, 16, 20, 25, 30, 35, 40, 45, 50, 55, 60, 70, 80, 90], float)
_CUBE: Final = np.array([0, 15, 20, 25, 30, 37, 45, 50, 55, 60, 67, 75, 85, 95, 105], float)


def cylinder_strength_of_cubes(cube_strength: Real, *, cube_side: Real) -> Real:
    """Cylinder strength that belongs to a cube strength.

    Parameters
    ----------
    cube_strength
        Compressive strength of cubes [MPa], above zero; scalar or array.
    cube_side
        Side of the cubes [mm], from 40 to 200.

    Returns
    -------
    Real
        Compressive strength of 150 × 300 mm cylinders [MPa].

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range, or a 150 mm cube would be stronger
        than 105 MPa, where the table ends.

    Notes
    -----
    Between the strength classes by straight lines, about 0.8. Cubes below 150 mm break at higher
    stresses: their strength is first taken times 0.95, which for 2 in grout cubes makes 0.76 in
    all. A laboratory's own correlation for the grout is better than either.

    References
    ----------
    EN 1992-1-1:2004, Table 3.1 (strength classes C12/15 to C90/105); Neville, Properties of
    Concrete, 5th ed. (2011), from memory, for the size of the cube.

    Examples
    --------
    >>> float(cylinder_strength_of_cubes(50.0, cube_side=150.0))
    40.0
    """
    require_positive(cube_strength=cube_strength, cube_side=cube_side)
    sides = np.asarray(cube_side, dtype=float)
    if np.any((sides < 40.0) | (sides > 200.0)):
        raise DomainError("cube_side", float(np.max(sides)), "from 40 to 200 mm")
    factor = np.where(sides < STANDARD_CUBE_SIDE * (1.0 - 1e-3), SMALL_CUBE_FACTOR, 1.0)
    standard: Floats = np.multiply(cube_strength, factor)
    if np.any(standard > _CUBE[-1]):
        raise DomainError(
            "cube_strength of 150 mm cubes", float(np.max(standard)), f"at most {_CUBE[-1]:g} MPa"
        )
    strength: Floats = np.interp(standard, _CUBE, _CYLINDER)
    return strength
