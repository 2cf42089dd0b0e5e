"""Limit states that AS 4100, NZS 3404, AS 3600 and NZS 3101 word otherwise."""

from __future__ import annotations

from typing import Final

from jacketcheck.plugin import LimitState
from jacketcheck_australasia.codes import AS_4100, CODES
from jacketcheck_australasia.limit_states.added_bars import ADDED_BARS
from jacketcheck_australasia.limit_states.seam_bolts import (
    seam_bolt_row,
    seam_bolt_shear,
    sleeve_bearing,
    splice_bearing,
)
from jacketcheck_australasia.limit_states.seam_detailing import bolt_edge_distance, bolt_spacing
from jacketcheck_australasia.limit_states.seam_plates import (
    seam_block_shear,
    sleeve_gross_yield,
    sleeve_net_rupture,
    splice_gross_yield,
    splice_net_rupture,
)
from jacketcheck_australasia.limit_states.seam_slip import seam_slip

__all__ = ["LIMIT_STATES"]

_BOTH: Final = (
    seam_slip,
    seam_bolt_shear,
    sleeve_bearing,
    splice_bearing,
    seam_bolt_row,
    sleeve_gross_yield,
    sleeve_net_rupture,
    splice_gross_yield,
    splice_net_rupture,
    bolt_spacing,
    bolt_edge_distance,
)

LIMIT_STATES: Final[tuple[LimitState, ...]] = (
    *(made(code) for code in CODES for made in _BOTH),
    seam_block_shear(AS_4100),
    *ADDED_BARS,
)
"""Of both codes; block shear has a rule in AS 4100 only."""
