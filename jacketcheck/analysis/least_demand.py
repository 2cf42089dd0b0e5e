"""A jacket as if its base asked as little of it as it ever can, so that much is settled cheaply."""

from __future__ import annotations

import numpy as np

from jacketcheck.analysis.axial_strain import CheckedStrain, checked_axial_strain
from jacketcheck.analysis.lap import tension_share
from jacketcheck.analysis.memo import assuming
from jacketcheck.analysis.shear import shear_force
from jacketcheck.jacket.jacket import Jacket

__all__ = ["with_least_demand"]


def with_least_demand(jacket: Jacket) -> Jacket:
    """Copy of a jacket for which no section analysis is done.

    Parameters
    ----------
    jacket
        One design or many.

    Returns
    -------
    Jacket
        The same, with the declared axial strain (zero where none is declared) and one added bar
        in tension, and without shear of the column.

    Notes
    -----
    The checked strain is the larger of the declared one and the one that the section analysis
    finds, and at least one added bar counts as pulled; so neither can be smaller in the end.
    Limit states whose effort is not ``sections`` have ratios that never fall when either grows:
    what exceeds 1 here exceeds 1 in the full evaluation.
    """
    declared = jacket.demands.axial_strain
    strain = CheckedStrain(
        declared=declared,
        found=0.0,
        base_holds=True,
        value=0.0 if declared is None else declared,
    )
    added = jacket.added_bars
    share = 0.0 if added is None else np.divide(1.0, added.layer.count)
    return assuming(jacket, {checked_axial_strain: strain, tension_share: share, shear_force: 0.0})
