"""Anchorage length of an added bar, written down once for footing, repair and lap."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from jacketcheck.plugin import AddedBarLayer, Real, Steps
from jacketcheck_europe.editions import EN_1992
from jacketcheck_europe.mechanics import anchorage
from jacketcheck_europe.mechanics.concrete import (
    LARGEST_STRENGTH_FOR_BOND,
    characteristic_tensile_strength,
)
from jacketcheck_europe.partial_factors import PartialFactors

__all__ = ["AnchorageNeed", "add_anchorage", "add_bar", "anchorage_need"]


class AnchorageNeed(NamedTuple):
    """What an added bar needs to reach its expected yield strength.

    Attributes
    ----------
    tensile_strength
        f_ctk,0.05 of the concrete, of C60/75 at most [MPa].
    size_coefficient
        η_2.
    bond_strength
        f_bd [MPa].
    basic_length
        l_b,rqd [mm].
    cover_coefficient
        α_2.
    anchorage_length
        l_bd [mm].
    lap_length
        l_0, all bars lapped at one section [mm].
    """

    tensile_strength: Real
    size_coefficient: Real
    bond_strength: Real
    basic_length: Real
    cover_coefficient: Real
    anchorage_length: Real
    lap_length: Real


def anchorage_need(
    added: AddedBarLayer, concrete_strength: Real, cover: Real, factors: PartialFactors
) -> AnchorageNeed:
    """Lengths for an upright straight bar; neither stirrups nor transverse pressure are counted."""
    layer = added.layer
    tensile = characteristic_tensile_strength(
        np.minimum(concrete_strength, LARGEST_STRENGTH_FOR_BOND)
    )
    bond = anchorage.bond_strength(
        tensile, diameter=layer.diameter, partial_factor=factors.concrete
    )
    basic = anchorage.basic_anchorage_length(
        layer.diameter, bar_stress=layer.steel.expected_yield, bond_strength=bond
    )
    coefficient = anchorage.cover_coefficient(cover, diameter=layer.diameter)
    return AnchorageNeed(
        tensile_strength=tensile,
        size_coefficient=anchorage.size_coefficient(layer.diameter),
        bond_strength=bond,
        basic_length=basic,
        cover_coefficient=coefficient,
        anchorage_length=anchorage.design_anchorage_length(
            basic, diameter=layer.diameter, cover=coefficient
        ),
        lap_length=anchorage.design_lap_length(
            basic, diameter=layer.diameter, lap=anchorage.lap_coefficient(1.0), cover=coefficient
        ),
    )


def add_bar(added: AddedBarLayer, steps: Steps) -> None:
    """Write down the size of an added bar."""
    steps.figure("φ", added.layer.size, added.layer, "diameter", "mm")
    steps.figure("A_b", added.layer.size, added.layer, "area", "mm2")


def add_anchorage(
    added: AddedBarLayer,
    concrete_strength: Real,
    cover: Real,
    factors: PartialFactors,
    steps: Steps,
    *,
    lap: bool = False,
) -> AnchorageNeed:
    """Write down the length of an anchorage or of a lap, and return what it rests on."""
    need, steel = anchorage_need(added, concrete_strength, cover, factors), added.layer.steel
    steps.add("f_ctk", "5% fractile, f_ck not above 60 MPa", need.tensile_strength, "MPa",
              f"{EN_1992} Table 3.1, 8.4.2(2)")  # fmt: skip
    steps.add("η_1", "upright bar, good bond", 1.0, "1", f"{EN_1992} 8.4.2(2)")
    steps.add("η_2", "min(1, (132 mm − φ)/100 mm)", need.size_coefficient, "1",
              f"{EN_1992} 8.4.2(2)")  # fmt: skip
    steps.add("γ_C", "concrete", factors.concrete, "1", f"{EN_1992} 2.4.2.4")
    steps.add("f_bd", "2.25 η_1 η_2 f_ctk/γ_C", need.bond_strength, "MPa", f"{EN_1992} Eq. 8.2")
    steps.figure("σ_sd", "expected yield", steel, "expected_yield", "MPa")
    steps.add("l_b,rqd", "(φ/4) σ_sd/f_bd", need.basic_length, "mm", f"{EN_1992} Eq. 8.3")
    steps.add("α_2", "1 − 0.15 (c_d − φ)/φ, from 0.7 to 1", need.cover_coefficient, "1",
              f"{EN_1992} Table 8.2")  # fmt: skip
    if lap:
        steps.add("α_6", "all bars lapped at one section", anchorage.lap_coefficient(1.0), "1",
                  f"{EN_1992} Table 8.3")  # fmt: skip
        steps.add("l_0", "α_2 α_6 l_b,rqd ≥ max(0.3 α_6 l_b,rqd, 15 φ, 200 mm)", need.lap_length,
                  "mm", f"{EN_1992} 8.7.3")  # fmt: skip
    else:
        steps.add("l_bd", "α_2 l_b,rqd ≥ max(0.3 l_b,rqd, 10 φ, 100 mm)", need.anchorage_length,
                  "mm", f"{EN_1992} 8.4.4")  # fmt: skip
    return need
