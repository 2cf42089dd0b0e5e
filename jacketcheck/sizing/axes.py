"""What a search varies: one axis for each field, with the values that it may take."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Any, Final

import numpy as np

from jacketcheck.catalog.catalog import Catalog
from jacketcheck.catalog.plate_steels import stock_plate_thicknesses
from jacketcheck.catalog.records import BoltProduct
from jacketcheck.errors import CatalogError, InputError, InputProblem
from jacketcheck.inputs.fields import value_at
from jacketcheck.inputs.repair_file import RepairInput
from jacketcheck.inputs.sizing import Sizing
from jacketcheck.inputs.tried import Tried
from jacketcheck.inputs.written import shown

__all__ = ["CHOICES", "Axis", "axes_of", "default_sizing"]

CHOICES: Final = (
    "sleeve.steel",
    "splice.steel",
    "splice.sides",
    "bolts.product",
    "bolts.diameter",
    "bolts.columns",
    "repair.surface",
    "added_bars.size",
)
"""Fields whose values are names or kinds; the jacket is looked up anew for each."""

_NUMBERS: Final = (
    "sleeve.thickness",
    "splice.thickness",
    "repair.height",
    "bolts.pitch",
    "bolts.gauge",
    "bolts.seam_edge_distance",
    "bolts.plate_edge_distance",
    "bolts.end_distance",
    "added_bars.count",
    "added_bars.embedment",
    "added_bars.height",
)
_COUNTS: Final = {"bolts.columns", "added_bars.count"}
_STOCK: Final = "stock plates, common practice, no published source"
_WRITTEN: Final = "as written"


@dataclass(frozen=True, slots=True)
class Axis:
    """One field and what it may be.

    Attributes
    ----------
    path
        Path of the field.
    values
        Values in internal units, the preferred one first where there is an order.
    source
        Where the values come from.
    unit
        ``mm``; ``1`` for a count; empty for names and kinds.
    in_diameters
        Whether values are multiples of the bolt diameter, to be rounded up.
    step
        Step of bounds; None for a list and for stock sizes.
    """

    path: str
    values: tuple[Any, ...]
    source: str
    unit: str = ""
    in_diameters: bool = False
    step: float | None = None

    @property
    def is_choice(self) -> bool:
        """Whether values are names or kinds."""
        return self.path in CHOICES

    @property
    def is_written(self) -> bool:
        """Whether the field stays as the file has it."""
        return self.source == _WRITTEN

    @property
    def is_stock(self) -> bool:
        """Whether values are stock thicknesses."""
        return self.source == _STOCK

    def with_values(self, values: Sequence[Any]) -> Axis:
        """The same field with other values."""
        source = "beyond the bounds" if self.is_written else self.source
        return replace(self, values=tuple(values), source=source)

    def at(self, value: Any) -> Axis:
        """The same field with one value; as written where that is what the file has."""
        return self if self.values == (value,) else self.with_values((value,))


def default_sizing(repair: RepairInput, catalog: Catalog) -> Sizing:
    """What is tried where a file gives no bounds.

    Stock plates for sleeve and splice, all sizes of the bolts, one to four bolt lines on each side
    of a seam, and chipping or not.
    """
    sizes = tuple(catalog.bolt_product(repair.bolts.product).sizes)
    stock = stock_plate_thicknesses(_stock_unit(repair))
    tried = Tried(values=stock)
    return Sizing.model_validate(
        {
            "sleeve": {"thickness": tried},
            "splice": {"thickness": tried},
            "bolts": {"diameter": sizes, "columns": Tried(values=(1.0, 2.0, 3.0, 4.0))},
            "repair": {"surface": ("unchipped", "chipped")},
        }
    )


def axes_of(repair: RepairInput, sizing: Sizing, *, catalog: Catalog) -> tuple[Axis, ...]:
    """Axes of a search, one for each field that may vary; those that are not named have one value.

    Parameters
    ----------
    repair
        Input whose values hold where nothing else is named; with added bars, if they are tried.
    sizing
        Bounds.
    catalog
        What the input may name.

    Raises
    ------
    InputError
        With every bound that leaves nothing to try.
    """
    problems: list[InputProblem] = []
    axes = [
        axis
        for path in (*CHOICES, *_NUMBERS)
        if (axis := _axis(path, repair, sizing, problems)) is not None
    ]
    problems += _unknown_sizes(sizing, repair, catalog)
    if problems:
        raise InputError(problems, source="sizing")
    return tuple(axes)


def _axis(
    path: str, repair: RepairInput, sizing: Sizing, problems: list[InputProblem]
) -> Axis | None:
    table, _, name = path.partition(".")
    bounds = getattr(getattr(sizing, table), name, None)
    unit = "1" if path in _COUNTS else "" if path in CHOICES else "mm"
    if not bounds:
        if table == "added_bars" and repair.added_bars is None:
            return None
        written = value_at(path, repair)
        return Axis(path, (written,), _WRITTEN, unit)
    if not isinstance(bounds, Tried):
        return Axis(path, tuple(dict.fromkeys(bounds)), f"input sizing.{path}", unit)
    axis = _bounded(path, bounds, repair, unit)
    if not axis.values:
        message = "leaves nothing to try: no stock plate lies between the bounds"
        problems.append(InputProblem(f"sizing.{path}", "", message))
    return axis


def _bounded(path: str, tried: Tried, repair: RepairInput, unit: str) -> Axis:
    source = f"input sizing.{path}"
    if tried.diameters:
        values = tuple(dict.fromkeys(tried.diameters))
        return Axis(path, values, source, unit, in_diameters=True)
    if tried.least is None or tried.most is None:
        stock = tried.values == stock_plate_thicknesses(_stock_unit(repair))
        return Axis(path, _plain(tried.values, path), _STOCK if stock else source, unit)
    if tried.step is None:
        inside = _inside(stock_plate_thicknesses(_stock_unit(repair)), tried.least, tried.most)
        return Axis(path, inside, _STOCK, unit)
    steps = int(np.floor((tried.most - tried.least) / tried.step + 1e-9))
    values = tuple(tried.least + index * tried.step for index in range(steps + 1))
    return Axis(path, _plain(values, path), source, unit, step=tried.step)


def _inside(values: Sequence[float], least: float, most: float) -> tuple[float, ...]:
    return tuple(one for one in values if least * (1 - 1e-9) <= one <= most * (1 + 1e-9))


def _plain(values: Sequence[float], path: str) -> tuple[Any, ...]:
    """Whole numbers for counts; without the noise of adding steps up."""
    if path in _COUNTS:
        return tuple(round(one) for one in values)
    return tuple(float(f"{one:.12g}") for one in values)


def _stock_unit(repair: RepairInput) -> Any:
    """Stock plates are those of the units in which the file wants its results."""
    return "in" if repair.job.units == "us" else "mm"


def _unknown_sizes(sizing: Sizing, repair: RepairInput, catalog: Catalog) -> Iterator[InputProblem]:
    """Bolt sizes that none of the products is made in."""
    names = sizing.bolts.product or (repair.bolts.product,)
    products = [catalog.bolt_product(name) for name in names]
    for index, size in enumerate(sizing.bolts.diameter, start=1):
        if not any(_is_made(product, size) for product in products):
            known = ", ".join(dict.fromkeys(one for product in products for one in product.sizes))
            yield InputProblem(
                f"sizing.bolts.diameter.{index}",
                shown(size),
                f"is no size of {' or '.join(names)}; known are {known}",
            )


def _is_made(product: BoltProduct, size: str) -> bool:
    try:
        product.size(size)
    except CatalogError:
        return False
    return True
