"""Limit states that IS 800 and IS 456 word otherwise."""

from __future__ import annotations

from typing import Final

from jacketcheck.plugin import LimitState
from jacketcheck_india.limit_states.added_bars import (
    added_bar_anchorage,
    added_bar_development,
    added_bar_lap,
)
from jacketcheck_india.limit_states.seam_bolts import (
    seam_bolt_row,
    seam_bolt_shear,
    sleeve_bearing,
    splice_bearing,
)
from jacketcheck_india.limit_states.seam_detailing import bolt_edge_distance, bolt_spacing
from jacketcheck_india.limit_states.seam_plates import (
    seam_block_shear,
    sleeve_gross_yield,
    sleeve_net_rupture,
    splice_gross_yield,
    splice_net_rupture,
)
from jacketcheck_india.limit_states.seam_slip import seam_slip

__all__ = ["LIMIT_STATES"]

LIMIT_STATES: Final[tuple[LimitState, ...]] = (
    seam_slip,
    seam_bolt_shear,
    sleeve_bearing,
    splice_bearing,
    seam_bolt_row,
    sleeve_gross_yield,
    sleeve_net_rupture,
    splice_gross_yield,
    splice_net_rupture,
    seam_block_shear,
    added_bar_anchorage,
    added_bar_development,
    added_bar_lap,
    bolt_spacing,
    bolt_edge_distance,
)
"""In the order in which a load passes through the repair."""
