"""Strength of the repaired base in its weakest direction."""

from __future__ import annotations

from dataclasses import dataclass

from jacketcheck.analysis.height import height_profile
from jacketcheck.analysis.memo import design_by_design, remembered
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics._arrays import Real

__all__ = ["BaseSection", "base_section"]


@dataclass(frozen=True, eq=False)
class BaseSection:
    """Strength of the repaired base; one design, or arrays over designs.

    Attributes
    ----------
    moment_capacity
        In the weakest direction [N mm].
    weakest_direction
        Clock angle of the side in compression there [rad].
    ring_limit
        Compression that grout ring and added bars can hand to the column above [N].
    """

    moment_capacity: Real
    weakest_direction: Real
    ring_limit: Real


@remembered
@design_by_design
def base_section(jacket: Jacket) -> BaseSection:
    """Strength at the top of the footing, the lowest station of the height's profile."""
    profile = height_profile(jacket)
    return BaseSection(
        moment_capacity=float(profile.capacity[0]),
        weakest_direction=float(profile.direction[0]),
        ring_limit=float(profile.ring_limit[0]),
    )
