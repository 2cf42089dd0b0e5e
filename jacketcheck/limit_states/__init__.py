"""The built-in limit states, one module each, registered through the same hooks as anyone's."""

from __future__ import annotations

from collections.abc import Sequence

from jacketcheck.hookspecs import hookimpl
from jacketcheck.limit_state import LimitState, Provisions
from jacketcheck.limit_states.added_bars import added_bar_development, added_bar_lap
from jacketcheck.limit_states.bar_bond import bar_bond, bar_length
from jacketcheck.limit_states.bolt_holes import bolt_holes, smallest_sizes
from jacketcheck.limit_states.bolt_threads import bolt_threads
from jacketcheck.limit_states.clearances import annulus_clearance, sleeve_gap
from jacketcheck.limit_states.column_response import (
    displacement_capacity,
    load_capacity,
    p_delta,
)
from jacketcheck.limit_states.column_shear import column_shear, repair_shear
from jacketcheck.limit_states.column_stability import column_stability
from jacketcheck.limit_states.confinement import clamping, retained_pressure
from jacketcheck.limit_states.damage_depth import damage_depth
from jacketcheck.limit_states.footing_anchorage import added_bar_anchorage
from jacketcheck.limit_states.footing_depth import footing_depth
from jacketcheck.limit_states.grout_interface import grout_interface
from jacketcheck.limit_states.hinge_hoops import hinge_hoops
from jacketcheck.limit_states.hoop_yield import hoop_clamping, hoop_dilation
from jacketcheck.limit_states.relocated_hinge import base_moment, moment_along_height
from jacketcheck.limit_states.seam_bolts import (
    seam_bolt_row,
    seam_bolt_shear,
    sleeve_bearing,
    splice_bearing,
)
from jacketcheck.limit_states.seam_detailing import (
    bolt_edge_distance,
    bolt_spacing,
    wrench_clearance,
)
from jacketcheck.limit_states.seam_plates import (
    seam_block_shear,
    sleeve_gross_yield,
    sleeve_net_rupture,
    splice_gross_yield,
    splice_net_rupture,
)
from jacketcheck.limit_states.seam_reserve import seam_reserve
from jacketcheck.limit_states.seam_slip import seam_slip
from jacketcheck.limit_states.usual_ranges import usual_ranges

__all__ = ["jacketcheck_limit_states", "jacketcheck_provisions"]

US = Provisions(
    "us",
    "AISC 360-22, RCSC 2020, AASHTO LRFD 9th ed. (2020), AASHTO Guide Spec Seismic 2nd ed. (2011), "
    "ACI 318-19, fib Model Code 2010, published jacket research",
    inherits=None,
    faying_codes=("AISC", "AASHTO", "RCSC"),
)

_BUILT_IN: tuple[LimitState, ...] = (
    hoop_dilation,
    hoop_clamping,
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
    seam_reserve,
    clamping,
    retained_pressure,
    bar_bond,
    bar_length,
    base_moment,
    moment_along_height,
    load_capacity,
    displacement_capacity,
    p_delta,
    column_stability,
    hinge_hoops,
    damage_depth,
    column_shear,
    repair_shear,
    grout_interface,
    added_bar_anchorage,
    footing_depth,
    added_bar_development,
    added_bar_lap,
    sleeve_gap,
    annulus_clearance,
    bolt_holes,
    smallest_sizes,
    bolt_spacing,
    bolt_edge_distance,
    wrench_clearance,
    bolt_threads,
    usual_ranges,
)


@hookimpl
def jacketcheck_provisions() -> Sequence[Provisions]:
    """The provisions of the United States."""
    return (US,)


@hookimpl
def jacketcheck_limit_states() -> Sequence[LimitState]:
    """All built-in limit states, in the order in which a load passes through the repair."""
    return _BUILT_IN
