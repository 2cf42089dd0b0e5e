"""Limit states that the Eurocodes word otherwise, for any set of partial factors.

Identifiers are those of the built-in limit states that they replace; `jacket-shear` and
`lap-clamping` are new.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import partial
from typing import Final, Literal, Protocol

from jacketcheck.plugin import Jacket, LimitState, NoScatter, Result, Scatter
from jacketcheck_europe.limit_states.added_bars import (
    added_bar_development,
    added_bar_lap,
    lap_clamping,
)
from jacketcheck_europe.limit_states.block_tearing import seam_block_shear
from jacketcheck_europe.limit_states.column_shear import column_shear, jacket_shear
from jacketcheck_europe.limit_states.displacement import displacement_capacity, hinge_hoops
from jacketcheck_europe.limit_states.footing_anchorage import added_bar_anchorage
from jacketcheck_europe.limit_states.grout_interface import grout_interface
from jacketcheck_europe.limit_states.hoop_yield import hoop_clamping, hoop_dilation
from jacketcheck_europe.limit_states.seam_bolts import (
    seam_bolt_row,
    seam_bolt_shear,
    sleeve_bearing,
    splice_bearing,
)
from jacketcheck_europe.limit_states.seam_detailing import bolt_edge_distance, bolt_spacing
from jacketcheck_europe.limit_states.seam_plates import (
    sleeve_gross_yield,
    sleeve_net_rupture,
    splice_gross_yield,
    splice_net_rupture,
)
from jacketcheck_europe.limit_states.seam_slip import seam_slip
from jacketcheck_europe.partial_factors import RECOMMENDED, PartialFactors

__all__ = ["limit_states"]


class Rows(Protocol):
    """Rows of a limit state with some partial factors."""

    def __call__(self, jacket: Jacket, factors: PartialFactors) -> list[Result]:
        """Rows of a jacket."""


@dataclass(frozen=True, slots=True)
class _State:
    """A limit state before its partial factors are chosen; see `jacketcheck.plugin.LimitState`."""

    id: str
    title: str
    rows: Rows
    monotonic: Mapping[str, int] = field(default_factory=dict)
    effort: Literal["closed-form", "bond", "sections"] = "closed-form"
    scatter: Scatter | NoScatter | None = None


_PLATES: Final = "bolted-plate"
_LAYOUT: Final = NoScatter("a rule of layout, which the jacket meets as drawn or not: no scatter")


def _plates(event: str, *rules: str) -> Scatter:
    """Plates at bolts: the scatter of their strength is that of the model."""
    return Scatter(event, rules=rules, model=_PLATES)


_STATES: Final = (
    _State(
        "hoop-dilation",
        "Hoop yield of the sleeve under dilation",
        hoop_dilation,
        {"sleeve.steel.yield_strength": -1},
        scatter=Scatter(
            "hoop strain at the checked axial strain, laps included, exceeds the actual "
            "yield strain",
            rules=("hoop-strain",),
        ),
    ),
    _State(
        "hoop-clamping",
        "Hoop yield of the sleeve under clamping",
        hoop_clamping,
        {"sleeve.thickness": -1, "sleeve.steel.yield_strength": -1},
        scatter=Scatter(
            "hoop stress of the clamping that fractured bars need exceeds the actual yield "
            "strength",
            rules=("hoop-stress",),
        ),
    ),
    _State(
        "seam-slip",
        "Slip of the seam bolts",
        seam_slip,
        {"bolts.pretension": -1},
        scatter=Scatter(
            "hoop force on a bolt exceeds friction under its actual pretension", rules=("slip",)
        ),
    ),
    _State(
        "seam-bolt-shear",
        "Shear of the seam bolts",
        seam_bolt_shear,
        {"bolts.tensile_stress_area": -1},
        scatter=Scatter(
            "hoop force on a bolt exceeds its shear strength, actual tensile strength",
            rules=("bolt-shear",),
        ),
    ),
    _State(
        "sleeve-bearing",
        "Bearing and tear-out of the sleeve at the bolts",
        sleeve_bearing,
        {"bolts.seam_edge_distance": 0},
        scatter=_plates(
            "hoop force on a bolt exceeds bearing of the sleeve, actual strength", "bearing"
        ),
    ),
    _State(
        "splice-bearing",
        "Bearing and tear-out of the splice plates at the bolts",
        splice_bearing,
        {"bolts.plate_edge_distance": 0},
        scatter=_plates(
            "hoop force on a bolt exceeds bearing of the plates, actual strength", "bearing"
        ),
    ),
    _State(
        "seam-bolt-row",
        "Strength of a bolt row",
        seam_bolt_row,
        scatter=_plates(
            "hoop force on a row exceeds the strength of its group of bolts", "bolt-row"
        ),
    ),
    _State(
        "sleeve-gross-yield",
        "Gross yield of the sleeve at the seam",
        sleeve_gross_yield,
        scatter=NoScatter("hoop-dilation and hoop-clamping count every sample that exceeds it"),
    ),
    _State(
        "sleeve-net-rupture",
        "Net section of the sleeve at the bolts",
        sleeve_net_rupture,
        scatter=_plates("hoop force exceeds the net section, actual strength", "rupture"),
    ),
    _State(
        "splice-gross-yield",
        "Yield of the splice plates over the seam",
        splice_gross_yield,
        {"splice.steel.yield_strength": -1},
        scatter=_plates("hoop force exceeds the gross section, actual yield strength", "gross"),
    ),
    _State(
        "splice-net-rupture",
        "Net section of the splice plates",
        splice_net_rupture,
        scatter=_plates("hoop force exceeds the net section, actual strength", "rupture"),
    ),
    _State(
        "seam-block-shear",
        "Block shear at the seam",
        seam_block_shear,
        scatter=_plates(
            "hoop force on a row exceeds block tearing, actual strengths", "block-tearing"
        ),
    ),
    _State(
        "displacement-capacity", "Displacement capacity", displacement_capacity, effort="sections"
    ),
    _State(
        "hinge-hoops",
        "Hoops in the relocated hinge",
        hinge_hoops,
        {"column.ties.spacing": 1, "column.layer.diameter": -1},
        scatter=_LAYOUT,
    ),
    _State(
        "column-shear",
        "Shear of the column above the repair",
        column_shear,
        {"column.ties.area": -1, "column.ties.spacing": 1},
        "sections",
    ),
    _State(
        "jacket-shear",
        "Shear of the column inside the jacket",
        jacket_shear,
        # a thicker sleeve also draws hoop force, of which the seams may have none left
        {"sleeve.thickness": 0},
        "sections",
    ),
    _State("grout-interface", "Shear between column and grout", grout_interface),
    _State(
        "added-bar-anchorage",
        "Anchorage of the added bars in the footing",
        added_bar_anchorage,
        {"added_bars.embedment": -1},
    ),
    _State(
        "added-bar-development",
        "Development of the added bars in the repair",
        added_bar_development,
        {"added_bars.height": -1, "grout.strength": -1},
    ),
    _State(
        "added-bar-lap",
        "Laps of added bars and column bars",
        added_bar_lap,
        {"added_bars.height": -1},
    ),
    _State(
        "lap-clamping",
        "Clamping of the laps of added bars",
        lap_clamping,
        {"added_bars.height": -1},
    ),
    _State("bolt-spacing", "Spacing of the seam bolts", bolt_spacing, scatter=_LAYOUT),
    _State(
        "bolt-edge-distance",
        "Edge distances of the seam bolts",
        bolt_edge_distance,
        scatter=_LAYOUT,
    ),
)


def limit_states(
    provisions: str = "europe", factors: PartialFactors = RECOMMENDED
) -> tuple[LimitState, ...]:
    """Limit states of a set of provisions with its partial factors.

    Parameters
    ----------
    provisions
        Set that the limit states belong to: ``europe``, or that of a national annex.
    factors
        Partial factors and other nationally determined parameters.

    Returns
    -------
    tuple of LimitState
        In the order in which they are evaluated.

    Examples
    --------
    >>> from dataclasses import replace
    >>> own = replace(RECOMMENDED, label="of an invented annex", section=1.05)
    >>> states = limit_states("northland", own)
    >>> states[0].provisions, states[0].id
    ('northland', 'hoop-dilation')
    """
    return tuple(
        LimitState(
            one.id,
            one.title,
            provisions,
            partial(one.rows, factors=factors),
            one.monotonic,
            effort=one.effort,
            scatter=one.scatter,
        )
        for one in _STATES
    )
