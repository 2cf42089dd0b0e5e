"""Friction between column and grout, which makes the parts around the column act with it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np

from jacketcheck.analysis.memo import remembered_for_all
from jacketcheck.analysis.retained import bond_pressure
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics._arrays import Floats, Real
from jacketcheck.mechanics.interface_shear import (
    InterfaceSurface,
    aashto_friction_coefficient,
    aashto_interface_shear_limit,
)

__all__ = ["SHEAR_FACTOR", "Interface", "height_of_transfer", "interface"]

SHEAR_FACTOR: Final = 0.90
"""Resistance factor for shear, normal-weight concrete (AASHTO LRFD 9th ed. (2020) 5.5.4.2)."""


@dataclass(frozen=True, eq=False)
class Interface:
    """Face between column and grout.

    Attributes
    ----------
    surface
        Contact surface.
    pressure
        Pressure that friction may count on [MPa].
    friction
        Coefficient of friction [-].
    largest_stress
        Shear stress that is not exceeded, whatever the pressure [MPa].
    resistance
        Factored shear that half of the perimeter passes for each unit of height [N/mm].
    """

    surface: InterfaceSurface
    pressure: Real
    friction: Real
    largest_stress: Real
    resistance: Real


@remembered_for_all
def interface(jacket: Jacket) -> Interface:
    """Friction under the pressure that the sleeve keeps, by AASHTO; cohesion is not counted."""
    column = jacket.column
    surface: InterfaceSurface = jacket.column_face
    friction, pressure = aashto_friction_coefficient(surface), bond_pressure(jacket)
    largest = aashto_interface_shear_limit(
        1.0,
        concrete_strength=np.minimum(column.concrete.specified, jacket.grout.strength),
        surface=surface,
    )
    stress = np.minimum(np.multiply(friction, pressure), largest)
    half = np.pi * np.asarray(column.diameter) / 2.0
    resistance = SHEAR_FACTOR * stress * half * jacket.models.interface_resistance
    return Interface(surface, pressure, friction, largest, resistance)


def height_of_transfer(jacket: Jacket, top: Real, *, above: Floats | float = 0.0) -> Real:
    """Height over which friction acts below a top and above a section [mm].

    The sleeve presses on nothing in the gap below it.
    """
    return np.maximum(np.subtract(top, np.maximum(above, jacket.sleeve.gap)), 0.0)
