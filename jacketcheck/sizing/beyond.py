"""Values just beyond the bounds of a search, to find out which bound is worth relaxing."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, Final

from jacketcheck.catalog.catalog import Catalog
from jacketcheck.catalog.plate_steels import stock_plate_thicknesses
from jacketcheck.inputs.fields import field_at
from jacketcheck.inputs.repair_file import RepairInput
from jacketcheck.sizing.axes import Axis

__all__ = ["beyond"]

_FURTHER: Final = 6
"""Values tried on each side."""

_STEPS: Final = {
    "bolts.pitch": 12.7,
    "bolts.gauge": 12.7,
    "bolts.seam_edge_distance": 6.35,
    "bolts.plate_edge_distance": 6.35,
    "bolts.end_distance": 6.35,
    "repair.height": 101.6,
    "added_bars.embedment": 101.6,
    "added_bars.height": 50.8,
    "added_bars.count": 2,
    "bolts.columns": 1,
}
"""Steps where the bounds give none [mm], or counts."""

_MOST_COLUMNS: Final = 6


def beyond(
    axis: Axis, repair: RepairInput, *, catalog: Catalog
) -> tuple[tuple[Any, ...], tuple[Any, ...]]:
    """Values below and above those of an axis, the nearest first.

    Parameters
    ----------
    axis
        Axis of a search.
    repair
        Input that the search starts from.
    catalog
        What designs may name.

    Returns
    -------
    tuple
        Values below and values above. Names and kinds are ordered by strength or size where they
        have one; other names and kinds all count as above.
    """
    if axis.is_choice and axis.path != "bolts.columns":
        return _names(axis, repair, catalog)
    if axis.values[0] is None:
        return (), ()
    low, high = min(axis.values), max(axis.values)
    if axis.path.endswith(".thickness"):
        stock = stock_plate_thicknesses("in" if repair.job.units == "us" else "mm")
        below = [one for one in reversed(stock) if one < low * (1.0 - 1e-9)]
        above = [one for one in stock if one > high * (1.0 + 1e-9)]
        return tuple(below[:_FURTHER]), tuple(above[:_FURTHER])
    step = axis.step or (0.5 if axis.in_diameters else _STEPS[axis.path])
    below = [low - step * index for index in range(1, _FURTHER + 1)]
    above = [high + step * index for index in range(1, _FURTHER + 1)]
    return tuple(_allowed(axis, below, repair)), tuple(_allowed(axis, above, repair))


def _allowed(axis: Axis, values: Sequence[Any], repair: RepairInput) -> list[Any]:
    """Values that the input would accept."""
    if axis.in_diameters:
        return [one for one in values if one >= 1.0]
    if axis.unit == "1":
        most = _MOST_COLUMNS if axis.path == "bolts.columns" else 200
        return [one for one in map(round, values) if 1 <= one <= most]
    quantity = field_at(axis.path, repair).quantity
    assert quantity is not None  # noqa: S101 - every axis in mm is a quantity
    return [one for one in values if quantity.low <= one <= quantity.high]


def _names(
    axis: Axis, repair: RepairInput, catalog: Catalog
) -> tuple[tuple[Any, ...], tuple[Any, ...]]:
    order = _order(axis, repair, catalog)
    if order is None:
        others = {"splice.sides": ("outside", "both"), "repair.surface": ("chipped", "unchipped")}
        return (), tuple(one for one in others[axis.path] if one not in axis.values)
    known = [order[name] for name in axis.values if name in order]
    if not known:
        return (), ()
    ranked = sorted(order, key=lambda name: order[name])
    below = [name for name in reversed(ranked) if order[name] < min(known)]
    above = [name for name in ranked if order[name] > max(known)]
    return tuple(below[:_FURTHER]), tuple(above[:_FURTHER])


def _order(axis: Axis, repair: RepairInput, catalog: Catalog) -> dict[str, float] | None:
    """Size or strength by name, of names in the system of those that are tried."""
    if axis.path == "bolts.diameter":
        product = catalog.bolt_product(repair.bolts.product)
        return {name: size.diameter for name, size in product.sizes.items()}
    kind = axis.values[0].split()[0]
    if axis.path == "bolts.product":
        family = [one for name, one in catalog.bolts.items() if name.split()[0] == kind]
        return {one.name: one.tensile_strength for one in family}
    if axis.path == "added_bars.size":
        bars = [one for name, one in catalog.bars.items() if name.split()[0] == kind]
        return {one.name: one.diameter for one in bars}
    if axis.path.endswith(".steel"):
        steels = [one for name, one in catalog.plate_steels.items() if name.split()[0] == kind]
        return {one.name: one.bands[0].yield_strength for one in steels}
    return None
