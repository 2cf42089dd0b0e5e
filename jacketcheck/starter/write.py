"""The starter file: an example's values, each under what its input model says of it."""

from __future__ import annotations

import tomllib
from collections.abc import Iterator, Mapping, Sequence
from importlib.resources import files
from textwrap import wrap
from typing import Any, Literal, get_args, get_origin

from pydantic import BaseModel
from pydantic.fields import FieldInfo

from jacketcheck.inputs.catalog_name import CatalogName
from jacketcheck.inputs.quantity import Quantity
from jacketcheck.inputs.repair_file import RepairInput
from jacketcheck.units import DisplaySystem

__all__ = ["starter_text"]

_WIDTH = 98
_HEAD = """\
# A repair for jacketcheck. Lines that begin with # are comments; lines that begin with "#:" are
# optional fields with an example: take the "#: " away to use one. Every quantity carries its unit,
# US customary or SI, mixed as you like. The column is invented: put your own in its place.
"""
_TAIL = """
# Variants override any field by its path; entries of a list are counted from one.
# Compare them with: jacketcheck check FILE --variant all
[variants."snug bolts"]
bolts.tightening = "snug"

[variants."bar 1 not chipped"]
damage.1.surface = "unchipped"
"""
_CATALOGUES = {
    "bar": "bars",
    "rebar_steel": "rebar-steels",
    "bolt_product": "bolts",
    "plate_steel": "plate-steels",
    "faying_class": "faying-classes",
    "bond_model": "bond-models",
}


def starter_text(system: DisplaySystem) -> str:
    """A valid repair file in the units of a system, with a comment on every field.

    Examples
    --------
    >>> "[sleeve]" in starter_text("si")
    True
    """
    name = f"example_{system}.toml"
    example = tomllib.loads(files("jacketcheck.starter").joinpath(name).read_text("utf-8"))
    lines = [_HEAD]
    for section, field in RepairInput.model_fields.items():
        lines += _section(section, field, example.get(section), system)
    return "\n".join(lines) + _TAIL


def _section(path: str, field: FieldInfo, value: Any, system: DisplaySystem) -> Iterator[str]:
    """One table of the file, or the tables of a list."""
    model = _model_in(field.annotation)
    if model is None:
        return
    yield from _comment(_summary(model), bar=True)
    if isinstance(value, list):
        for index, entry in enumerate(value):
            yield f"[[{path}]]"
            # what a field means is told once, at the first entry
            yield from _fields(model, entry, system, brief=index > 0)
        return
    yield f"[{path}]"
    yield from _fields(model, value or {}, system, brief=False)
    for name, inner in model.model_fields.items():
        below = _model_in(inner.annotation)
        if below is not None and not _is_list(inner):
            yield from _section(f"{path}.{name}", inner, (value or {}).get(name), system)


def _fields(
    model: type[BaseModel], values: Mapping[str, Any], system: DisplaySystem, *, brief: bool
) -> Iterator[str]:
    for name, field in model.model_fields.items():
        if _model_in(field.annotation) is not None and not _is_list(field):
            continue
        given = name in values
        if brief and not given:
            continue
        if not brief:
            yield from _comment(f"{field.description} {_allowed(field)}".strip())
        shown = _toml(values[name]) if given else _toml(_example(field, system))
        yield f"{name} = {shown}" if given else f"#: {name} = {shown}"
    yield ""


def _comment(text: str, *, bar: bool = False) -> Iterator[str]:
    if bar:
        yield "# " + "-" * (_WIDTH - 2)
    for line in wrap(text, _WIDTH - 2, break_on_hyphens=False):
        yield f"# {line}"


def _summary(model: type[BaseModel]) -> str:
    return (model.__doc__ or "").strip().splitlines()[0]


def _model_in(annotation: Any) -> type[BaseModel] | None:
    """The input model that an annotation holds, be it optional or in a list."""
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return annotation
    return next((model for part in get_args(annotation) if (model := _model_in(part))), None)


def _is_list(field: FieldInfo) -> bool:
    return get_origin(field.annotation) is tuple


def _parts(field: FieldInfo) -> Iterator[Any]:
    """Everything that an annotation is made of."""
    yield from field.metadata
    waiting = [field.annotation]
    while waiting:
        part = waiting.pop()
        yield part
        waiting += get_args(part)


def _allowed(field: FieldInfo) -> str:
    """What may be written: the words of a choice, or where names are listed."""
    for part in _parts(field):
        if get_origin(part) is Literal:
            return "One of: " + ", ".join(f'"{word}"' for word in get_args(part)) + "."
        if isinstance(part, CatalogName):
            return f"Listed by: jacketcheck catalog {_CATALOGUES[part.lookup]}."
    return ""


def _example(field: FieldInfo, system: DisplaySystem) -> Any:
    """What an optional field could hold: an example of its own, its default, or its type's."""
    if field.examples:
        return field.examples[0]
    quantity = next((part for part in _parts(field) if isinstance(part, Quantity)), None)
    default = field.default if isinstance(field.default, str | int | float) else None
    if quantity is None:
        choices = next((get_args(p) for p in _parts(field) if get_origin(p) is Literal), ("",))
        return choices[-1] if default is None else default
    if default is not None and quantity.unit in {"1", "deg"}:
        return f"{default:g} deg" if quantity.unit == "deg" else default
    return quantity.examples[0 if system == "si" else -1]


def _toml(value: Any) -> str:
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, str):
        return '"' + value.replace("\\", "\\\\").replace('"', '\\"') + '"'
    if isinstance(value, Mapping):
        return "{ " + ", ".join(f"{name} = {_toml(entry)}" for name, entry in value.items()) + " }"
    if isinstance(value, Sequence):
        return "[" + ", ".join(_toml(entry) for entry in value) + "]"
    return f"{value:g}" if isinstance(value, float) else str(value)
