"""Steps that the rows on added bars have in common."""

from __future__ import annotations

from typing import Final

from jacketcheck.jacket.jacket_parts import AddedBarLayer
from jacketcheck.limit_states.editions import ACI
from jacketcheck.mechanics.adhesive_anchors import (
    ANCHOR_STRENGTH_REDUCTION,
    SEISMIC_ANCHOR_FACTOR,
)
from jacketcheck.results import Steps

__all__ = ["ANCHORAGE", "FAR_EDGES", "add_added_bar", "add_anchor_factor"]

ANCHORAGE: Final = "Anchorage of the added bars in the footing"
FAR_EDGES: Final = (
    "engineering judgement: the edges of the footing are taken as far away, and no bars of the "
    "footing as crossing the cone"
)


def add_added_bar(added: AddedBarLayer, steps: Steps) -> None:
    """Write down diameter and area of an added bar."""
    steps.figure("d_b", added.layer.size, added.layer, "diameter", "mm")
    steps.figure("A_b", added.layer.size, added.layer, "area", "mm2")


def add_anchor_factor(steps: Steps) -> float:
    """Write down the resistance factor of anchors and return it."""
    steps.add("φ_0", "post-installed anchor, sensitive to installation",
              ANCHOR_STRENGTH_REDUCTION, "1", f"{ACI} 17.5.3")  # fmt: skip
    steps.add("φ_E", "earthquake", SEISMIC_ANCHOR_FACTOR, "1", f"{ACI} 17.10.5.4")
    factor = ANCHOR_STRENGTH_REDUCTION * SEISMIC_ANCHOR_FACTOR
    return steps.add("φ", "φ_0 φ_E", factor, "1", f"{ACI} 17.10.5.4")
