"""What designs are compared by: steel, bolts, and work in the field."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np

from jacketcheck.inputs.sizing import FieldWork
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.jacket.quantities import Quantities, quantities
from jacketcheck.mechanics._arrays import Floats, Real

__all__ = ["Objectives", "field_hours", "objectives"]

_DIGITS: Final = 6
"""Decimals that count when designs are compared: less is rounding."""


@dataclass(frozen=True, slots=True)
class Objectives:
    """What one design takes: steel [kg], bolts, and work in the field [h]."""

    steel_mass: float
    bolt_count: int
    field_hours: float


def field_hours(found: Quantities, work: FieldWork) -> Real:
    """Hours in the field by which designs are compared [h].

    Parameters
    ----------
    found
        Quantities of one design or of many.
    work
        Hours for each bolt, hole, metre drilled and metre of bar chipped free.

    Notes
    -----
    An index and no estimate of cost: what all designs have in common, e.g. access, lifting and
    grouting, is left out. The hours are engineering judgement.
    """
    return (
        np.multiply(work.hours_per_bolt, found.bolt_count)
        + np.multiply(work.hours_per_hole, found.hole_count)
        + np.multiply(work.hours_per_metre_drilled, found.drilled_length)
        + np.multiply(work.hours_per_metre_chipped, found.chipped_length)
    )


def objectives(jacket: Jacket, work: FieldWork, *, count: int) -> Floats:
    """Steel mass [kg], bolts and hours [h] of each design, shape (count, 3)."""
    found = quantities(jacket)
    columns = (found.steel_mass, found.bolt_count, field_hours(found, work))
    return np.round(np.stack([np.broadcast_to(one, (count,)) for one in columns], axis=1), _DIGITS)
