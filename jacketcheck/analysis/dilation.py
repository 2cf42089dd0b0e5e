"""Dilation of the core at the axial strain that the base reaches."""

from __future__ import annotations

from dataclasses import dataclass

from jacketcheck.analysis.axial_strain import checked_axial_strain
from jacketcheck.analysis.hoop_action import core_concrete, restraint
from jacketcheck.analysis.memo import remembered_for_all
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics._arrays import Real
from jacketcheck.mechanics.dilation import (
    DilationEquilibrium,
    axial_strain_at_sleeve_yield,
    dilation_equilibrium,
)

__all__ = ["Dilation", "dilation"]


@dataclass(frozen=True, eq=False)
class Dilation:
    """State of the ring at the checked axial strain.

    Attributes
    ----------
    minimum
        With the sleeve's specified minimum yield strength: what the sleeve must survive.
    expected
        With its expected yield strength: what the seams must survive.
    yield_axial_strain
        Axial strain at which the sleeve first yields [-].
    """

    minimum: DilationEquilibrium
    expected: DilationEquilibrium
    yield_axial_strain: Real


@remembered_for_all
def dilation(jacket: Jacket) -> Dilation:
    """Equilibrium of core and ring; neither the column's hoops nor play relieve the sleeve."""
    strain, core = checked_axial_strain(jacket).value, core_concrete(jacket)
    minimum = restraint(jacket, expected_sleeve=False, column_hoops=False, play=False)
    expected = restraint(jacket, expected_sleeve=True, column_hoops=False, play=False)
    return Dilation(
        minimum=dilation_equilibrium(strain, core=core, restraint=minimum),
        expected=dilation_equilibrium(strain, core=core, restraint=expected),
        yield_axial_strain=axial_strain_at_sleeve_yield(core=core, restraint=minimum),
    )
