"""Shear that the sleeve carries where the repair is, and the hoop force that it makes of it."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.analysis.hinge import hinge
from jacketcheck.analysis.memo import remembered
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics._arrays import Real
from jacketcheck.results import Steps

__all__ = ["add_shear_force", "shear_force", "shear_hoop_force"]

_SOURCE: Final = "statics: cracks at 45°, as limit state repair-shear counts the sleeve"


@remembered
def shear_force(jacket: Jacket) -> Real:
    """Shear of the column inside the repair [N], all of it in the sleeve.

    Damaged concrete, its hoops and added bars are not counted by the row on shear, and so take
    nothing off the sleeve here.
    """
    return hinge(jacket).shear


def shear_hoop_force(jacket: Jacket) -> Real:
    """Hoop force for each unit of height by which the sleeve carries the shear [N/mm].

    ``V/((pi/2) D)``: what `jacketcheck.mechanics.jacket_shear.jacket_shear` makes a strength of.
    """
    return np.divide(shear_force(jacket), 0.5 * np.pi * np.asarray(jacket.column.diameter))


def add_shear_force(jacket: Jacket, steps: Steps) -> Real:
    """Write down the hoop force from shear and return it [N/mm]; the column D stands above."""
    steps.add("V_o", "shear of the relocated hinge, all of it in the sleeve", shear_force(jacket),
              "N", "limit state repair-shear")  # fmt: skip
    return steps.add("N_V", "V_o/((π/2) D)", shear_hoop_force(jacket), "N/mm", _SOURCE)
