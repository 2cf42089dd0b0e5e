"""How the splice plates of one seam share the hoop force."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics import splice_bending
from jacketcheck.mechanics._arrays import Real
from jacketcheck.results import Steps

__all__ = [
    "SpliceStrength",
    "add_splice_strength",
    "effective_planes",
    "effective_splice_thickness",
    "splice_eccentricity",
    "splice_shares",
    "splice_strength",
    "thinnest_plate",
]


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


def effective_planes(jacket: Jacket) -> Real:
    """Slip or shear planes of a bolt, each counted with the share of the one that takes most.

    Two where both plates take half of the force; of unequal plates the thinner takes more, and
    its plane slips (or its bolts shear) first.
    """
    return np.divide(1.0, np.maximum(*splice_shares(jacket)))


def effective_splice_thickness(jacket: Jacket) -> Real:
    """Thickness of one plate that would be worked as hard as the harder-worked of two [mm]."""
    outside, inside = splice_shares(jacket)
    alone = np.less_equal(inside, 0.0)
    by_inside = np.divide(jacket.splice.inside_thickness, np.where(alone, 1.0, inside))
    return np.minimum(
        np.divide(jacket.splice.outside_thickness, outside), np.where(alone, np.inf, by_inside)
    )


class SpliceStrength(NamedTuple):
    """Hoop force at which each splice plate is used up, by its share [N/mm].

    Attributes
    ----------
    outside, inside
        Of the outside plate, and of the inside one; infinite where there is none.
    """

    outside: Real
    inside: Real

    @property
    def least(self) -> Real:
        """Hoop force that the plates carry together [N/mm]."""
        return np.minimum(self.outside, self.inside)


def splice_strength(jacket: Jacket, *, stress: Real, net_ratio: Real = 1.0) -> SpliceStrength:
    """Hoop force that the splice plates carry at a stress, bending of one-sided plates included.

    Parameters
    ----------
    jacket
        One design or many.
    stress
        Stress that counts as the strength of the plates' gross section [MPa].
    net_ratio
        Share of the gross section that is there [-], where it is not in the stress already.
    """
    splice, (outside, inside) = jacket.splice, splice_shares(jacket)
    bent = splice_bending.eccentric_splice_strength(
        splice.outside_thickness,
        steel_strength=stress,
        eccentricity=splice_eccentricity(jacket),
        net_ratio=net_ratio,
    )
    present = np.greater(inside, 0.0)
    straight = np.multiply(stress, splice.inside_thickness) * net_ratio
    by_inside = np.where(present, straight / np.where(present, inside, 1.0), np.inf)
    return SpliceStrength(np.divide(bent, outside), by_inside[()])


def add_splice_strength(
    jacket: Jacket, steps: Steps, *, stress: Real, symbol: str, clause: str
) -> Real:
    """Write down the hoop force that the splice plates carry together and return it [N/mm].

    The stress of the gross section [MPa] stands above it as ``f``.
    """
    splice, (share, inside_share) = jacket.splice, splice_shares(jacket)
    steps.add("t_o", "outside plate", splice.outside_thickness, "mm", "input splice.thickness")
    steps.add("n_o", "share of the outside plate", share, "1", "statics, no bending")
    eccentricity = steps.add("e", "sleeve to plate, mid-planes; 0 with plates on both sides",
                             splice_eccentricity(jacket), "mm", "statics")  # fmt: skip
    steps.add("q", "e/t_o", np.divide(eccentricity, splice.outside_thickness), "1", "statics")
    strength = splice_strength(jacket, stress=stress)
    outside = steps.add("N_o", "f t_o/(√(1 + 4 q²) + 2 q)/n_o", strength.outside, "N/mm",
                        "plastic interaction of a rectangle")  # fmt: skip
    if not np.any(np.greater(inside_share, 0.0)):
        return steps.add(symbol, "N_o", outside, "N/mm", clause)
    steps.add("t_i", "inside plate", splice.inside_thickness, "mm", "input splice.inside_thickness")
    steps.add("n_i", "1 − n_o", inside_share, "1", "statics, no bending")
    steps.add("N_i", "f t_i/n_i", strength.inside, "N/mm", clause)
    return steps.add(symbol, "min(N_o, N_i)", strength.least, "N/mm", clause)


def thinnest_plate(jacket: Jacket) -> Real:
    """Thinnest of the plates that the bolts clamp [mm]."""
    inside = np.asarray(jacket.splice.inside_thickness)
    plates = np.minimum(
        jacket.splice.outside_thickness, np.where(np.greater(inside, 0.0), inside, np.inf)
    )
    return np.minimum(jacket.sleeve.thickness, plates)
