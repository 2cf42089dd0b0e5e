"""Repairs that come with the kit, and how repairs become jackets with what a plug-in brings."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from importlib.resources import files
from pathlib import Path
from typing import Any, Final, TypeAlias, get_args

from pydantic import BaseModel

from jacketcheck.catalog.catalog import Catalog, built_in_catalog
from jacketcheck.catalog.records import FayingClass
from jacketcheck.inputs.load import read_input, read_text
from jacketcheck.inputs.quantity import Quantity
from jacketcheck.inputs.repair_file import RepairInput
from jacketcheck.jacket.build import build_jacket
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.units import DisplaySystem, display

__all__ = [
    "EDGE_CASES",
    "Repairs",
    "in_units",
    "read_repairs",
    "standard_jackets",
    "standard_repairs",
    "with_every_code",
]

Repairs: TypeAlias = Mapping[str, str | Path]
"""Repairs by name: a path, or the text of a file."""

EDGE_CASES: Final = frozenset(
    {"smallest", "largest", "metric, no damaged bars", "customary, no added bars"}
)
"""Standard jackets at the ends of what an input may ask for."""

_FILES = ("metric", "customary")


def standard_repairs() -> dict[str, str]:
    """Text of the repair files that come with the kit, each with variants, by name.

    Examples
    --------
    >>> list(standard_repairs())
    ['metric', 'customary']
    """
    folder = files("jacketcheck.conformance") / "repairs"
    return {name: (folder / f"{name}.toml").read_text("utf-8") for name in _FILES}


def standard_jackets(catalog: Catalog | None = None) -> dict[str, Jacket]:
    """Jackets of the standard repairs and all their variants, by name of the variant.

    Parameters
    ----------
    catalog
        What the jackets may be made of; a faying class of each of its codes is put in.

    Examples
    --------
    >>> jackets = standard_jackets()
    >>> jackets["smallest"].column.diameter, jackets["largest"].column.diameter
    (400.0, 3000.0)
    """
    known = built_in_catalog() if catalog is None else catalog
    return {
        name: build_jacket(repair, catalog=known)
        for name, repair in read_repairs(standard_repairs(), catalog=known).items()
    }


def read_repairs(repairs: Repairs, *, catalog: Catalog) -> dict[str, RepairInput]:
    """Every variant of every repair, with a faying class of each code."""
    found: dict[str, RepairInput] = {}
    for name, written in repairs.items():
        if isinstance(written, Path):
            file = read_input(written, catalog=catalog)
        else:
            file = read_text(written, source=name, catalog=catalog)
        for variant, repair in file.variants.items():
            free = variant if variant not in found else f"{name}: {variant}"
            found[free] = with_every_code(repair, catalog)
    return found


def with_every_code(repair: RepairInput, catalog: Catalog) -> RepairInput:
    """The repair with a faying class of each code in the catalogue.

    Of the codes that it does not name it gets the class that holds most like its first one: to
    the kit a surface is a number.
    """
    named = [catalog.faying_class(name) for name in repair.bolts.faying_class]
    tests = repair.bolts.slip_tests
    wanted = named[0].slip_coefficient if named else tests[0].slip_coefficient
    codes = {one.code for one in named} | {one.code for one in tests}
    others: dict[str, FayingClass] = {}
    for one in catalog.faying_classes.values():
        if one.code not in codes:
            best = others.setdefault(one.code, one)
            if abs(one.slip_coefficient - wanted) < abs(best.slip_coefficient - wanted):
                others[one.code] = one
    classes = (*(one.name for one in named), *(one.name for one in others.values()))
    bolts = repair.bolts.model_copy(update={"faying_class": classes})
    return repair.model_copy(update={"bolts": bolts})


def in_units(repair: RepairInput, system: DisplaySystem, *, catalog: Catalog) -> RepairInput:
    """The same repair, written down in the units of a system and read again."""
    return RepairInput.model_validate(_written(repair, system), context={"catalog": catalog})


def _written(model: BaseModel, system: DisplaySystem) -> dict[str, Any]:
    """Tables as a file would hold them; what is None is not written."""
    return {
        name: _field(value, _quantity_in(one.annotation, one.metadata), system)
        for name, one in type(model).model_fields.items()
        if (value := getattr(model, name)) is not None
    }


def _field(value: Any, quantity: Quantity | None, system: DisplaySystem) -> Any:
    if isinstance(value, BaseModel):
        return _written(value, system)
    if isinstance(value, tuple):
        return [_field(one, quantity, system) for one in value]
    if quantity is None:
        return value
    factor, unit = display(quantity.unit, system)
    return value if quantity.unit == "1" else f"{value * factor!r} {unit}"


def _quantity_in(annotation: Any, metadata: Iterable[Any]) -> Quantity | None:
    """What kind of quantity a field of an input model holds, if it holds one."""
    return next((one for one in _parts(annotation, metadata) if isinstance(one, Quantity)), None)


def _parts(annotation: Any, metadata: Iterable[Any]) -> Iterator[Any]:
    yield from metadata
    for part in get_args(annotation):
        yield part
        yield from _parts(part, getattr(part, "__metadata__", ()))
