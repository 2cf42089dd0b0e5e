"""Steps that the rows on added bars have in common."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.jacket.jacket import Jacket
from jacketcheck.jacket.jacket_parts import AddedBarLayer
from jacketcheck.limit_states.editions import ACI
from jacketcheck.mechanics._arrays import Real
from jacketcheck.mechanics.adhesive_anchors import (
    ANCHOR_STRENGTH_REDUCTION,
    SEISMIC_ANCHOR_FACTOR,
    ring_area_share,
)
from jacketcheck.results import Steps

__all__ = [
    "ANCHORAGE",
    "FAR_EDGES",
    "add_added_bar",
    "add_anchor_factor",
    "add_footing_strength",
    "add_ring",
    "add_ring_share",
]

ANCHORAGE: Final = "Anchorage of the added bars in the footing"
FAR_EDGES: Final = (
    "engineering judgement: the edges of the footing are taken as far away, and no bars of the "
    "footing as crossing the cone"
)


def add_added_bar(added: AddedBarLayer, steps: Steps) -> None:
    """Write down diameter and area of an added bar."""
    steps.figure("d_b", added.layer.size, added.layer, "diameter", "mm")
    steps.figure("A_b", added.layer.size, added.layer, "area", "mm2")


def add_ring(added: AddedBarLayer, steps: Steps) -> None:
    """Write down the ring that the added bars stand on."""
    steps.add("r", "circle of added bars", added.layer.circle_radius, "mm",
              "input added_bars.circle_diameter")  # fmt: skip
    steps.add("n", "added bars", added.layer.count, "1", "input added_bars.count")


def add_ring_share(added: AddedBarLayer, steps: Steps, mark: str, reach: Real, clause: str) -> Real:
    """Write down the share of its influence area that each bar of the ring has to itself [-].

    The distance ``c_Na`` or ``c_Nc``, by its mark, and the ring stand above it.
    """
    radius, distance = added.layer.circle_radius, f"c_{mark}"
    inner = np.maximum(np.subtract(radius, reach), 0.0)
    ring = np.pi * (np.square(np.add(radius, reach)) - np.square(inner))
    steps.add(f"A_{mark}", f"π ((r + {distance})² − max(r − {distance}, 0)²)", ring, "mm2",
              f"{clause}.1, area of the ring")  # fmt: skip
    alone = np.square(np.multiply(2.0, reach))
    steps.add(f"A_{mark}0", f"(2 {distance})²", alone, "mm2", f"{clause}.1")
    share = ring_area_share(reach, circle_radius=radius, count=added.layer.count)
    return steps.add("ψ_A", f"A_{mark}/(n A_{mark}0) ≤ 1", share, "1", clause)


def add_footing_strength(jacket: Jacket, steps: Steps, symbol: str) -> None:
    """Write down the strength of the footing's concrete."""
    if jacket.footing is not None:
        steps.figure(symbol, "footing", jacket.footing, "concrete_strength", "MPa")


def add_anchor_factor(steps: Steps) -> float:
    """Write down the resistance factor of anchors and return it."""
    steps.add("φ_0", "post-installed anchor, sensitive to installation",
              ANCHOR_STRENGTH_REDUCTION, "1", f"{ACI} 17.5.3")  # fmt: skip
    steps.add("φ_E", "earthquake", SEISMIC_ANCHOR_FACTOR, "1", f"{ACI} 17.10.5.4")
    factor = ANCHOR_STRENGTH_REDUCTION * SEISMIC_ANCHOR_FACTOR
    return steps.add("φ", "φ_0 φ_E", factor, "1", f"{ACI} 17.10.5.4")
