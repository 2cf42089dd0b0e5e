"""What follows from the fields that a search varies: rows, bar heights, holes, inside plates."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Final

import numpy as np

from jacketcheck.catalog.catalog import Catalog
from jacketcheck.errors import InputError, InputProblem
from jacketcheck.inputs.jacket import AddedBars
from jacketcheck.inputs.repair_file import RepairInput
from jacketcheck.inputs.replaced import replaced
from jacketcheck.inputs.sizing import TriedAddedBars
from jacketcheck.mechanics._arrays import Real
from jacketcheck.sizing.axes import Axis

__all__ = ["field_values", "with_added_bars"]

_END_DISTANCE: Final = 1.5
"""Ends of sleeve and plates beyond the last row, in bolt diameters (common practice)."""

_BELOW_TOP: Final = 75.0
"""Top of the added bars below the top of the repair [mm] (common practice)."""

_MODULES: Final = {"us": 25.4 / 8.0, "si": 5.0}
"""Bolt spacings given in diameters are rounded up to 1/8 in or 5 mm (common practice)."""

_FREES_ROWS: Final = {"bolts.pitch", "bolts.end_distance", "repair.height"}


def field_values(
    repair: RepairInput,
    axes: tuple[Axis, ...],
    values: Mapping[str, Any],
    *,
    catalog: Catalog,
) -> dict[str, Any]:
    """New value of every field that changes, those that follow from others included.

    Parameters
    ----------
    repair
        Input whose values hold where nothing else is given.
    axes
        Axes of the search.
    values
        Value of each axis: one, or an array over designs for a number.
    catalog
        What the input may name.

    Notes
    -----
    The rows follow from height and pitch where one of them, or the end distance, is varied. Plates
    inside are as thick as outside where the splice is varied. Holes for added bars are larger than
    the bar by the same clearance, and the bars end as far below the top of the repair, as written.
    """
    put = {axis.path: values[axis.path] for axis in axes if not axis.is_written}
    size = put.get("bolts.diameter", repair.bolts.diameter)
    product = catalog.bolt_product(put.get("bolts.product", repair.bolts.product))
    diameter = product.size(size).diameter
    for axis in axes:
        if axis.in_diameters and axis.path in put:
            put[axis.path] = _rounded_up(put[axis.path], diameter, repair)
    if put.keys() & {"splice.sides", "splice.thickness"}:
        put["splice.inside_thickness"] = None
    if put.keys() & _FREES_ROWS:
        put["bolts.rows"] = None
        if "bolts.end_distance" not in put and repair.bolts.end_distance is None:
            put["bolts.end_distance"] = _rounded_up(_END_DISTANCE, diameter, repair)
    if repair.added_bars is not None:
        put |= _of_added_bars(repair, repair.added_bars, put, catalog)
    return put


def _of_added_bars(
    repair: RepairInput, written: AddedBars, put: Mapping[str, Any], catalog: Catalog
) -> dict[str, Any]:
    """Hole and height of the added bars."""
    found: dict[str, Any] = {}
    if "added_bars.size" in put:
        clearance = written.hole_diameter - catalog.bar(written.size).diameter
        bar = catalog.bar(put["added_bars.size"])
        found["added_bars.hole_diameter"] = float(f"{bar.diameter + clearance:.12g}")
    if "repair.height" in put and "added_bars.height" not in put:
        below = repair.repair.height - written.height
        found["added_bars.height"] = np.subtract(put["repair.height"], below)[()]
    return found


def _rounded_up(multiple: Real, diameter: float, repair: RepairInput) -> Real:
    module = _MODULES[repair.job.units]
    rounded: Real = np.round(np.ceil(np.multiply(multiple, diameter) / module - 1e-9) * module, 9)
    return rounded


def with_added_bars(
    repair: RepairInput, tried: TriedAddedBars | None, *, catalog: Catalog
) -> RepairInput:
    """Input with added bars to start from, if any are tried.

    Raises
    ------
    InputError
        If the file has no added bars and the bounds leave out what is needed to begin with.
    """
    if tried is None or tried == TriedAddedBars():
        return repair
    written = repair.added_bars
    if written is None:
        written = _first_bars(repair, tried, catalog)
        return replaced(repair, {"added_bars": written})
    changes: dict[str, Any] = {}
    if tried.steel is not None:
        changes["steel"] = tried.steel
    if tried.circle_diameter is not None:
        changes["circle_diameter"] = tried.circle_diameter
    if tried.breakout_precluded is not None:
        changes["breakout_precluded"] = tried.breakout_precluded
    if tried.hole_clearance is not None:
        changes["hole_diameter"] = catalog.bar(written.size).diameter + tried.hole_clearance
    return replaced(repair, {f"added_bars.{name}": value for name, value in changes.items()})


def _first_bars(repair: RepairInput, tried: TriedAddedBars, catalog: Catalog) -> AddedBars:
    """Added bars out of the bounds alone; the axes replace what they vary."""
    missing = [
        name
        for name in ("size", "count", "embedment", "steel", "hole_clearance")
        if not getattr(tried, name)
    ]
    if missing or tried.steel is None or tried.hole_clearance is None:
        message = "is missing; the file has no added bars to start from"
        problems = [InputProblem(f"sizing.added_bars.{name}", "", message) for name in missing]
        raise InputError(problems, source="sizing")
    middle = (repair.column.diameter + repair.sleeve.inner_diameter) / 2.0
    return AddedBars.model_construct(
        size=tried.size[0],
        count=1,
        steel=tried.steel,
        circle_diameter=tried.circle_diameter or middle,
        first_angle=0.0,
        height=repair.repair.height - _BELOW_TOP,
        embedment=_BELOW_TOP,
        hole_diameter=catalog.bar(tried.size[0]).diameter + tried.hole_clearance,
        bond_strength=None,
        breakout_precluded=bool(tried.breakout_precluded),
    )
