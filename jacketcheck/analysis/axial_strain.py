"""Axial strain of the core at which its dilation is checked."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from jacketcheck.analysis.base_state import base_state
from jacketcheck.analysis.memo import design_by_design, remembered
from jacketcheck.analysis.sections import sleeved_core
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics._arrays import Real
from jacketcheck.results import Steps

__all__ = ["CheckedStrain", "add_axial_strain", "checked_axial_strain"]


@dataclass(frozen=True, eq=False)
class CheckedStrain:
    """Axial strain of the core, and where it comes from.

    Attributes
    ----------
    declared
        From the input [-]; None where it was left out.
    found
        At the edge of the column when the base carries the relocated hinge's demand [-]; where it
        cannot, the ultimate strain of the core, because the base itself would become the hinge.
    base_holds
        Whether the base carries that demand.
    value
        The larger of the two [-].
    """

    declared: Real | None
    found: Real
    base_holds: Real
    value: Real


@remembered
def checked_axial_strain(jacket: Jacket) -> CheckedStrain:
    """The declared strain, or the one that the section analysis finds if that is larger."""
    declared, base = jacket.demands.axial_strain, _base_strain(jacket)
    value = base.found if declared is None else np.maximum(declared, base.found)
    value = np.multiply(value, jacket.models.axial_strain)
    return CheckedStrain(declared, base.found, base.holds, value)


@dataclass(frozen=True, eq=False)
class _BaseStrain:
    found: Real
    holds: Real


@remembered
@design_by_design
def _base_strain(jacket: Jacket) -> _BaseStrain:
    """Strain of the core at the base, at most its ultimate strain, and whether the base holds."""
    state, ultimate = base_state(jacket), sleeved_core(jacket).ultimate_strain
    holds = bool(state.holds) and float(state.core_strain) <= ultimate
    return _BaseStrain(float(state.core_strain) if holds else ultimate, holds)


def add_axial_strain(jacket: Jacket, steps: Steps) -> Real:
    """Write the strain down with its origin and return it."""
    strain = checked_axial_strain(jacket)
    origin = "edge of the column under the base demand"
    if not np.all(strain.base_holds):
        origin += "; where the base cannot carry it, ultimate strain of the core"
    steps.add("ε_c,base", origin, strain.found, "1", "section analysis of the repaired base")
    if strain.declared is None:
        return steps.add("ε_c", "ε_c,base", strain.value, "1", "checked axial strain")
    steps.add("ε_c,in", "declared", strain.declared, "1", "input actions.axial_strain")
    return steps.add("ε_c", "max(ε_c,in, ε_c,base)", strain.value, "1", "checked axial strain")
