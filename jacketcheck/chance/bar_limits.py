"""Bars: bond of the fractured ones, and anchorage, laps and interface of the added ones."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.analysis.interface import SHEAR_FACTOR
from jacketcheck.chance.hoop_limits import HOOP_FORCE, LAPS
from jacketcheck.chance.limit import Limit, unfactored
from jacketcheck.chance.realisation import Realisation
from jacketcheck.limit_states.added_bars import added_bar_development, added_bar_lap
from jacketcheck.limit_states.bar_bond import bar_length
from jacketcheck.limit_states.editions import ACI
from jacketcheck.limit_states.footing_anchorage import added_bar_anchorage
from jacketcheck.limit_states.grout_interface import grout_interface
from jacketcheck.mechanics._arrays import Real
from jacketcheck.mechanics.adhesive_anchors import ANCHOR_STRENGTH_REDUCTION
from jacketcheck.mechanics.anchor_reinforcement import ANCHOR_REINFORCEMENT_FACTOR
from jacketcheck.mechanics.plate_strength import AISC_TENSION_YIELD_FACTOR

__all__ = ["BAR_LIMITS"]

_FRICTION: Final = ("slip-coefficient", "bolt-pretension")

_CROSSING: Final = f"{ACI} 17.5.2.1"
_STEEL: Final = (_CROSSING, f"{ACI} R17.5.2.1")

_anchored_by_length = unfactored(added_bar_anchorage, model="anchorage", without=_STEEL)
_anchored_by_strength = unfactored(
    added_bar_anchorage,
    resistance_factor=ANCHOR_STRENGTH_REDUCTION,
    model="anchorage",
    without=_STEEL,
)
_crossing = unfactored(
    added_bar_anchorage, resistance_factor=ANCHOR_REINFORCEMENT_FACTOR, clause=_CROSSING
)


def _anchorage(sample: Realisation) -> Real:
    """Grouted bars are judged by length, which holds no resistance factor.

    A breakout that counts beside a length keeps its factor: the safe side. Reinforcement in its
    place is steel, with its specified yield strength.
    """
    added = sample.jacket.added_bars
    grouted = added is not None and added.bond_strength is None
    held = (_anchored_by_length if grouted else _anchored_by_strength)(sample)
    if added is None or added.anchor_reinforcement is None:
        return held
    return np.maximum(held, _crossing(sample))


BAR_LIMITS: Final = (
    Limit(
        id="grout-interface",
        title="Shear between column and grout",
        effort="closed-form",
        event="1.25 times the actual yield force of half of the added bars exceeds friction under "
        "the pressure that the sleeve keeps, hardly any in samples that slip",
        variables=(*HOOP_FORCE, *_FRICTION, "added-bar-yield", "grout-strength",
                   "interface-friction"),
        ratio=unfactored(
            grout_interface,
            resistance_factor=SHEAR_FACTOR,
            model="interface-friction",
            clause="AASHTO",
        ),
        steady=False,
    ),
    Limit(
        id="added-bar-anchorage",
        title="Anchorage of the added bars in the footing",
        effort="closed-form",
        event="length that the actual yield strength needs exceeds the embedment; with an "
        "adhesive, the yield force exceeds bond or breakout without resistance factor, the 0.75 "
        "for earthquakes kept, or yield of the anchor reinforcement",
        variables=("added-bar-yield", "footing-concrete", "grout-strength", "anchorage"),
        ratio=_anchorage,
    ),
    Limit(
        id="added-bar-lap",
        title="Laps of added bars and column bars",
        effort="closed-form",
        event="hoop force of the laps at the actual tensile strength exceeds yield of the sleeve",
        variables=(*LAPS, "sleeve-yield", "sleeve-thickness"),
        ratio=unfactored(added_bar_lap, resistance_factor=AISC_TENSION_YIELD_FACTOR),
    ),
    Limit(
        id="added-bar-development",
        title="Development of the added bars in the repair",
        effort="bond",
        event="length that develops the actual yield strength exceeds the length beside the column "
        "bars; in samples that slip, splitting is not held",
        variables=(*HOOP_FORCE, *_FRICTION, "added-bar-yield", "grout-strength", "anchorage"),
        ratio=unfactored(added_bar_development, model="anchorage"),
        steady=False,
    ),
    Limit(
        id="bar-length",
        title="Bond of the fractured bars",
        effort="bond",
        event="length that develops the bars' target stress with their actual bond exceeds the "
        "length available; in samples that slip, splitting is not held",
        variables=(*HOOP_FORCE, *_FRICTION, "column-bar-yield", "column-bar-tensile",
                   "grout-strength", "bond-stress"),
        ratio=unfactored(bar_length),
        steady=False,
    ),
)  # fmt: skip
