"""Losses that the numbers of other limit states have used, by the limit state that fails then."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.analysis.interface import height_of_transfer, interface
from jacketcheck.analysis.memo import remembered
from jacketcheck.analysis.retained import clamping_supply, retained
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics._arrays import Real

__all__ = ["SEAM_SLIP", "added_bar_losses", "pressure_losses", "supply_losses"]

SEAM_SLIP: Final = "seam-slip"
HOOP_YIELD: Final = "hoop-dilation"
HOOP_CLAMPING: Final = "hoop-clamping"
"""Identifiers of the limit states in every set of provisions that brings its own."""


@remembered
def pressure_losses(jacket: Jacket) -> tuple[str, ...]:
    """Limit states whose failure lowers what `bond_pressure` gives, or lets the grout split.

    For `Result.follows_from` of a row that counts on this pressure: slip of the seams where they
    slip or slide, in any design, and yield of the sleeve where it has taken anything.
    """
    kept = retained(jacket)
    losses = {
        SEAM_SLIP: np.any(kept.slips) or np.any(np.greater(kept.loss.slip, 0.0)),
        HOOP_YIELD: np.any(np.greater(kept.loss.plastic, 0.0)),
    }
    return tuple(name for name, used in losses.items() if used)


@remembered
def supply_losses(jacket: Jacket) -> tuple[str, ...]:
    """Limit states whose failure bounds the pressure that the sleeve supplies for clamping.

    Those behind what it keeps; seams that slip, and a sleeve that yields before all is supplied.
    """
    supply, kept = clamping_supply(jacket), pressure_losses(jacket)
    losses = {
        SEAM_SLIP: SEAM_SLIP in kept or _lowers(supply.at_slip, supply.at_hoop_strain),
        HOOP_YIELD: HOOP_YIELD in kept,
        HOOP_CLAMPING: _lowers(supply.at_yield, supply.at_hoop_strain),
    }
    return tuple(name for name, used in losses.items() if used)


@remembered
def added_bar_losses(jacket: Jacket) -> tuple[str, ...]:
    """Limit states whose failure keeps added bars, or sections with them, from their strength.

    Anchorage in the footing, development in the grout, and friction on the column's face where it
    passes less than half of the bars pull with at 1.25 f_y.
    """
    added = jacket.added_bars
    if added is None:
        return ()
    top = np.minimum(added.height, jacket.repair_height)
    passed = np.multiply(interface(jacket).resistance, height_of_transfer(jacket, top))
    pull = np.multiply(1.25 * added.layer.steel.yield_strength, added.layer.total_area) / 2.0
    friction = ("grout-interface",) if _lowers(passed, pull) else ()
    return ("added-bar-anchorage", "added-bar-development", *friction)


def _lowers(pressure: Real, without: Real) -> bool:
    """Whether a pressure is below what it would be otherwise, in any design."""
    return bool(np.any(np.less(pressure, np.multiply(without, 1.0 - 1e-9))))
