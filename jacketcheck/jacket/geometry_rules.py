"""Geometry that cannot be built, told by the field that should change.

These are not limit states: a jacket that breaks one of them does not exist. Every rule works on
many designs at once, so that sizing can leave out what cannot be built.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from jacketcheck.errors import InputProblem
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.jacket.jacket_parts import AddedBarLayer
from jacketcheck.mechanics._arrays import Real
from jacketcheck.units import in_both_systems

__all__ = ["GeometryRule", "buildable", "geometry_problems", "geometry_rules"]

Flags = NDArray[np.bool_]

_OVER_RIBS = 1.1
"""Diameter of a ribbed bar over its ribs, in nominal ones: ribs stand out by 4 to 5 % of it on
either side (ASTM A615 Table 1, least heights; common practice)."""
_ROUNDING = 1e-9
_FIT = 5.0
"""Rows and end distances may miss the sleeve's height by this much [mm]; it is cut to suit."""


@dataclass(frozen=True, slots=True)
class GeometryRule:
    """One rule, and what to say of a design that breaks it.

    Attributes
    ----------
    path
        Field that should change.
    value
        What the field has, in `unit`.
    holds
        Whether each design keeps the rule.
    bound
        Limit that the value misses, in `unit`.
    relation
        How value and bound must stand, e.g. ``must exceed``.
    reason
        What the bound is.
    unit
        ``mm``, or ``1`` for a count.
    """

    path: str
    value: Real
    holds: Flags
    bound: Real
    relation: str
    reason: str
    unit: str = "mm"

    def problem(self) -> InputProblem:
        """The problem of a single design that breaks the rule."""
        value = in_both_systems(float(np.max(self.value)), self.unit)
        bound = in_both_systems(float(np.max(self.bound)), self.unit)
        return InputProblem(self.path, value, f"{self.relation} {bound}, {self.reason}")


def above(path: str, value: Real, bound: Real, reason: str) -> GeometryRule:
    """The value [mm] must exceed a bound."""
    return GeometryRule(path, value, np.greater(value, bound), bound, "must exceed", reason)


def below(path: str, value: Real, bound: Real, reason: str) -> GeometryRule:
    """The value [mm] must stay below a bound."""
    return GeometryRule(path, value, np.less(value, bound), bound, "must be less than", reason)


def at_most(path: str, value: Real, bound: Real, reason: str, unit: str = "mm") -> GeometryRule:
    """The value must not exceed a bound."""
    holds = np.less_equal(value, np.multiply(bound, 1.0 + _ROUNDING))
    return GeometryRule(path, value, holds, bound, "must be at most", reason, unit)


def geometry_problems(jacket: Jacket) -> list[InputProblem]:
    """Every rule that a single design breaks, each once."""
    broken = (rule.problem() for rule in geometry_rules(jacket) if not np.all(rule.holds))
    return list(dict.fromkeys(broken))


def buildable(jacket: Jacket) -> Flags:
    """Whether each design keeps all rules."""
    kept: Flags = np.asarray(True)  # noqa: FBT003 - what no rule has spoken about
    for rule in geometry_rules(jacket):
        kept = np.logical_and(kept, rule.holds)
    return kept


def geometry_rules(jacket: Jacket) -> Iterator[GeometryRule]:
    """All rules for a jacket."""
    yield from _column_rules(jacket)
    yield from _damage_rules(jacket)
    yield from _sleeve_rules(jacket)
    yield from _bolt_spacing_rules(jacket)
    yield from _bolt_row_rules(jacket)
    if jacket.added_bars is not None:
        yield from _added_bar_rules(jacket, jacket.added_bars)


def _column_rules(jacket: Jacket) -> Iterator[GeometryRule]:
    column = jacket.column
    layer, ties = column.layer, column.ties
    yield below(
        "column.cover",
        column.cover,
        column.radius - np.add(ties.diameter, 1.5 * np.asarray(layer.diameter)),
        "or the bars have no room inside cover and hoops",
    )
    room = np.floor(2.0 * np.pi * np.asarray(layer.circle_radius) / layer.diameter)
    yield GeometryRule(
        "column.bars.count",
        layer.count,
        # bars without any room are the rule above
        np.logical_or(np.less_equal(layer.count, room), np.less(room, 1.0)),
        room,
        "must be at most",
        "or the bars overlap on their circle",
        unit="1",
    )
    yield above(
        "column.hoops.spacing", ties.spacing, ties.diameter, "the hoops' diameter, or they overlap"
    )
    yield below(
        "repair.height",
        jacket.repair_height,
        column.shear_span,
        "the height of the column up to the point of contraflexure",
    )


def _damage_rules(jacket: Jacket) -> Iterator[GeometryRule]:
    for bar in jacket.column.bars:
        if bar.state in {"buckled", "fractured"}:
            yield below(
                f"{bar.record}.height",
                bar.damage_height,
                jacket.repair_height,
                "the height of the repair: damage above it is not bridged",
            )
        yield below(
            f"{bar.record}.spalling_depth",
            bar.spalling_depth,
            jacket.column.radius,
            "the column's radius",
        )


def _sleeve_rules(jacket: Jacket) -> Iterator[GeometryRule]:
    sleeve, splice, bolts = jacket.sleeve, jacket.splice, jacket.bolts
    yield above(
        "sleeve.inner_diameter",
        sleeve.inner_diameter,
        jacket.column.diameter,
        "the column's diameter",
    )
    yield below(
        "repair.gap", sleeve.gap, jacket.repair_height / 2.0, "half of the height of the repair"
    )
    annulus = jacket.grout.thickness
    inside = np.add(splice.inside_thickness, np.minimum(bolts.head_height, bolts.nut_height))
    yield GeometryRule(
        "sleeve.inner_diameter (annulus)",
        annulus,
        # a sleeve inside the column is the rule above
        np.logical_or(np.greater(annulus, inside), np.less_equal(annulus, 0.0)),
        inside,
        "must exceed",
        "the inside plate with the bolt's head or nut",
    )
    yield below(
        "sleeve.seam_gap",
        sleeve.seam_gap,
        sleeve.inner_diameter / 6.0,
        "a sixth of the sleeve's diameter: two half-shells must close around the column",
    )
    yield below(
        "bolts.plate_edge_distance (width of the splice plate)",
        splice.width,
        np.pi * sleeve.inner_radius,
        "half of the circumference, or the plates of the two seams meet",
    )


def _bolt_spacing_rules(jacket: Jacket) -> Iterator[GeometryRule]:
    bolts = jacket.bolts
    sleeve, splice = jacket.sleeve.hole, jacket.splice.hole
    across, along = np.maximum(sleeve.across, splice.across), np.maximum(sleeve.along, splice.along)
    overlap = "the width of nut or hole, or the bolts overlap"
    yield above("bolts.pitch", bolts.pitch, np.maximum(bolts.nut_width, across), overlap)
    least_gauge = np.maximum(bolts.nut_width, along)
    yield GeometryRule(
        "bolts.gauge",
        bolts.gauge,
        np.logical_or(np.less_equal(bolts.columns, 1), np.greater(bolts.gauge, least_gauge)),
        least_gauge,
        "must exceed",
        overlap,
    )
    for name, distance, hole in (
        ("seam_edge_distance", bolts.seam_edge_distance, sleeve),
        ("plate_edge_distance", bolts.plate_edge_distance, splice),
    ):
        yield above(f"bolts.{name}", distance, np.divide(hole.along, 2.0), "half of the hole")
    yield above(
        "bolts.end_distance",
        bolts.end_distance,
        np.divide(across, 2.0),
        "half of the hole; where it is not written it is what rows and pitch leave",
    )


def _bolt_row_rules(jacket: Jacket) -> Iterator[GeometryRule]:
    bolts, height = jacket.bolts, jacket.sleeve.height
    enough = np.greater_equal(bolts.rows, 2)
    yield GeometryRule(
        "bolts.rows",
        bolts.rows,
        enough,
        2.0,
        "must be at least",
        "more than pitch and end distances leave room for",
        unit="1",
    )
    taken = (np.asarray(bolts.rows) - 1.0) * bolts.pitch + 2.0 * np.asarray(bolts.end_distance)
    fits = np.less_equal(np.abs(taken - height), _FIT)
    yield GeometryRule(
        "bolts.pitch (rows and two end distances)",
        taken,
        np.logical_or(fits, np.logical_not(enough)),
        height,
        "must fit the sleeve's height of",
        "repair height less gap",
    )


def _added_bar_rules(jacket: Jacket, added: AddedBarLayer) -> Iterator[GeometryRule]:
    layer, circle = added.layer, 2.0 * np.asarray(added.layer.circle_radius)
    yield above(
        "added_bars.circle_diameter",
        circle,
        np.add(jacket.column.diameter, added.hole_diameter),
        "so that the drilled holes clear the column",
    )
    yield below(
        "added_bars.circle_diameter",
        circle,
        np.subtract(jacket.sleeve.inner_diameter, layer.diameter),
        "so that the bars clear the sleeve",
    )
    yield at_most(
        "added_bars.count",
        layer.count,
        np.floor(np.pi * circle / added.hole_diameter),
        "or the drilled holes overlap on their circle",
        unit="1",
    )
    yield above(
        "added_bars.hole_diameter",
        added.hole_diameter,
        np.multiply(_OVER_RIBS, layer.diameter),
        "the bar's diameter over its ribs",
    )
    yield at_most(
        "added_bars.height", added.height, jacket.repair_height, "the height of the repair"
    )
    if jacket.footing is not None and jacket.footing.depth is not None:
        yield below(
            "added_bars.embedment", added.embedment, jacket.footing.depth, "the footing's depth"
        )
