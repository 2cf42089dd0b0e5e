"""How the splice plates of one seam share the hoop force."""

from __future__ import annotations

import numpy as np

from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics import splice_bending
from jacketcheck.mechanics._arrays import Real

__all__ = ["effective_splice_thickness", "splice_eccentricity", "splice_shares"]


def splice_eccentricity(jacket: Jacket) -> Real:
    """Distance between the sleeve and the force in the plates [mm]; 0 with plates on both sides."""
    return splice_bending.splice_eccentricity(
        jacket.sleeve.thickness,
        outside_thickness=jacket.splice.outside_thickness,
        inside_thickness=jacket.splice.inside_thickness,
    )


def splice_shares(jacket: Jacket) -> tuple[Real, Real]:
    """Shares of the hoop force in the outside and in the inside plate."""
    return splice_bending.splice_plate_shares(
        jacket.sleeve.thickness,
        outside_thickness=jacket.splice.outside_thickness,
        inside_thickness=jacket.splice.inside_thickness,
    )


def effective_splice_thickness(jacket: Jacket) -> Real:
    """Thickness of one plate that would be worked as hard as the harder-worked of two [mm]."""
    outside, inside = splice_shares(jacket)
    alone = np.less_equal(inside, 0.0)
    by_inside = np.divide(jacket.splice.inside_thickness, np.where(alone, 1.0, inside))
    return np.minimum(
        np.divide(jacket.splice.outside_thickness, outside), np.where(alone, np.inf, by_inside)
    )
