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
from jacketcheck.mechanics._arrays import Real

__all__ = ["GeometryRule", "buildable", "geometry_problems", "geometry_rules"]

Flags = NDArray[np.bool_]


@dataclass(frozen=True, slots=True)
class GeometryRule:
    """One rule: field, its value [mm], where it holds, and what is allowed."""

    path: str
    value: Real
    holds: Flags
    message: str

    @classmethod
    def above(cls, path: str, value: Real, bound: Real, what: str) -> GeometryRule:
        """The value must exceed a bound [mm]."""
        return cls(path, value, np.greater(value, bound), f"must exceed {_mm(bound)}, {what}")

    @classmethod
    def below(cls, path: str, value: Real, bound: Real, what: str) -> GeometryRule:
        """The value must stay below a bound [mm]."""
        return cls(path, value, np.less(value, bound), f"must be less than {_mm(bound)}, {what}")

    @classmethod
    def at_most(cls, path: str, value: Real, bound: Real, what: str) -> GeometryRule:
        """The value must not exceed a bound [mm]."""
        slack = 1e-9 * np.abs(bound)
        holds = np.less_equal(value, bound + slack)
        return cls(path, value, holds, f"must be at most {_mm(bound)}, {what}")


def geometry_problems(jacket: Jacket) -> list[InputProblem]:
    """Every rule that a single design breaks."""
    return [
        InputProblem(rule.path, _mm(rule.value), rule.message)
        for rule in geometry_rules(jacket)
        if not np.all(rule.holds)
    ]


def buildable(jacket: Jacket) -> Flags:
    """Whether each design keeps all rules."""
    return np.logical_and.reduce(
        np.broadcast_arrays(*(np.asarray(rule.holds) for rule in geometry_rules(jacket)))
    )


def geometry_rules(jacket: Jacket) -> Iterator[GeometryRule]:
    """All rules for a jacket."""
    yield from _column_rules(jacket)
    yield from _damage_rules(jacket)
    yield from _sleeve_rules(jacket)
    yield from _bolt_rules(jacket)
    if jacket.added_bars is not None:
        yield from _added_bar_rules(jacket)


def _column_rules(jacket: Jacket) -> Iterator[GeometryRule]:
    column = jacket.column
    layer = column.layer
    yield GeometryRule.above(
        "column.cover",
        layer.circle_radius,
        layer.diameter,
        "the radius of the bar circle that cover, hoops and bars leave",
    )
    yield GeometryRule.above(
        "column.bars.count", layer.spacing, layer.diameter, "the bars would overlap at this spacing"
    )
    yield GeometryRule.below(
        "repair.height", jacket.repair_height, column.shear_span,
        "the column from the footing to the point of contraflexure",
    )  # fmt: skip
    yield GeometryRule.above(
        "column.hoops.spacing", column.ties.spacing, column.ties.diameter, "hoops would overlap"
    )


def _damage_rules(jacket: Jacket) -> Iterator[GeometryRule]:
    for bar in jacket.column.bars:
        if bar.state in {"buckled", "fractured"}:
            yield GeometryRule.below(
                f"damage (bar {bar.number}, height)",
                bar.damage_height,
                jacket.repair_height,
                "the height of the repair: damage above it is not bridged",
            )
        yield GeometryRule.below(
            f"damage (bar {bar.number}, spalling depth)",
            bar.spalling_depth,
            jacket.column.radius,
            "the radius of the column",
        )


def _sleeve_rules(jacket: Jacket) -> Iterator[GeometryRule]:
    sleeve, splice, column = jacket.sleeve, jacket.splice, jacket.column
    yield GeometryRule.above(
        "sleeve.inner_diameter", sleeve.inner_diameter, column.diameter, "the column's diameter"
    )
    yield GeometryRule.below(
        "repair.gap", sleeve.gap, jacket.repair_height / 2.0, "half of the height of the repair"
    )
    yield GeometryRule.below(
        "splice.inside_thickness",
        splice.inside_thickness,
        np.maximum(jacket.grout.thickness, 1e-9),
        "the annulus between column and sleeve",
    )
    yield GeometryRule.below(
        "bolts.plate_edge_distance (plate width)",
        splice.width,
        np.pi * sleeve.inner_radius,
        "half of the circumference: the plates of the two seams would meet",
    )


def _bolt_rules(jacket: Jacket) -> Iterator[GeometryRule]:
    bolts, sleeve = jacket.bolts, jacket.sleeve
    yield GeometryRule.above(
        "bolts.pitch", bolts.pitch, bolts.nut_width, "the bolts (width across flats) would overlap"
    )
    yield GeometryRule(
        "bolts.gauge",
        bolts.gauge,
        np.logical_or(np.less_equal(bolts.columns, 1), np.greater(bolts.gauge, bolts.nut_width)),
        f"must exceed {_mm(bolts.nut_width)}, the bolts (width across flats) would overlap",
    )
    group = (np.asarray(bolts.rows) - 1.0) * bolts.pitch
    yield GeometryRule(
        "bolts.rows",
        bolts.rows,
        np.greater_equal(bolts.rows, 2),
        "must be at least 2: pitch and end distances leave no room in "
        f"a sleeve of {_mm(sleeve.height)}",
    )
    fits = np.abs(group + 2.0 * np.asarray(bolts.end_distance) - sleeve.height) <= 5.0
    yield GeometryRule(
        "bolts.pitch",
        bolts.pitch,
        np.logical_or(fits, np.less(bolts.rows, 2)),
        f"does not fit: {_count(bolts.rows)} rows and two end distances of "
        f"{_mm(bolts.end_distance)} take {_mm(group + 2.0 * np.asarray(bolts.end_distance))}, "
        f"the sleeve is {_mm(sleeve.height)} high (repair height less gap)",
    )
    half_along, half_across = np.divide(bolts.hole_along, 2.0), np.divide(bolts.hole_across, 2.0)
    for name, distance, half in (
        ("seam_edge_distance", bolts.seam_edge_distance, half_along),
        ("plate_edge_distance", bolts.plate_edge_distance, half_along),
        ("end_distance", bolts.end_distance, half_across),
    ):
        yield GeometryRule.above(f"bolts.{name}", distance, half, "half of the hole")


def _added_bar_rules(jacket: Jacket) -> Iterator[GeometryRule]:
    added, sleeve = jacket.added_bars, jacket.sleeve
    if added is None:
        return
    layer = added.layer
    radius = np.asarray(layer.circle_radius)
    yield GeometryRule.above(
        "added_bars.circle_diameter",
        2.0 * radius,
        np.add(jacket.column.diameter, layer.diameter),
        "so that the bars clear the column",
    )
    yield GeometryRule.below(
        "added_bars.circle_diameter",
        2.0 * radius,
        np.subtract(sleeve.inner_diameter, layer.diameter),
        "so that the bars clear the sleeve",
    )
    yield GeometryRule.above(
        "added_bars.count", layer.spacing, added.hole_diameter, "the drilled holes would overlap"
    )
    yield GeometryRule.above(
        "added_bars.hole_diameter", added.hole_diameter, layer.diameter, "the bar's diameter"
    )
    yield GeometryRule.at_most(
        "added_bars.height", added.height, jacket.repair_height, "the height of the repair"
    )
    if jacket.footing is not None and jacket.footing.depth is not None:
        yield GeometryRule.below(
            "added_bars.embedment", added.embedment, jacket.footing.depth, "the footing's depth"
        )


def _mm(value: Real) -> str:
    return f"{float(np.max(value)):.6g} mm"


def _count(value: Real) -> str:
    return f"{float(np.max(value)):.6g}"
