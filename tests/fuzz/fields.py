"""What the input models say of a field of the tables."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, Literal, get_args, get_origin

from pydantic import BaseModel
from pydantic.fields import FieldInfo

from jacketcheck.catalog.catalog import built_in_catalog
from jacketcheck.catalog.entries import Entries
from jacketcheck.inputs.catalog_name import CatalogName
from jacketcheck.inputs.repair_file import RepairInput

__all__ = ["choices_at", "info_at", "model_in"]

_ENTRIES = {
    "bar": "bars", "rebar_steel": "rebar_steels", "bolt_product": "bolts",
    "plate_steel": "plate_steels", "faying_class": "faying_classes", "bond_model": "bond_models",
}  # fmt: skip


def info_at(path: Sequence[str | int]) -> FieldInfo | None:
    """Field of the input at a path; None where there is none."""
    model: type[BaseModel] | None = RepairInput
    info = None
    for key in path:
        if isinstance(key, int):
            continue
        if model is None or key not in model.model_fields:
            return None
        info = model.model_fields[key]
        model = model_in(info)
    return info


def model_in(info: FieldInfo) -> type[BaseModel] | None:
    """Input model of a field, if it holds tables."""
    return next(
        (kind for kind in _parts(info) if isinstance(kind, type) and issubclass(kind, BaseModel)),
        None,
    )


def choices_at(path: Sequence[str | int]) -> list[str]:
    """What a field may be where it is one of some words; empty where it is not."""
    info = info_at(path)
    if info is None:
        return []
    if path[-1] == "diameter" and path[0] == "bolts":
        return ["1/2 in", "7/8 in", "1 in", "1-1/2 in", "M12", "M24", "M36"]
    for part in _parts(info):
        if isinstance(part, CatalogName):
            entries: Entries[Any] = getattr(built_in_catalog(), _ENTRIES[part.lookup])
            return [entry.name for entry in entries.values()]
        if get_origin(part) is Literal:
            return list(get_args(part))
    return []


def _parts(info: FieldInfo) -> list[Any]:
    """Annotation and metadata of a field, whatever they are wrapped in."""
    found: list[Any] = []
    waiting = [*info.metadata, info.annotation]
    while waiting:
        part = waiting.pop()
        found.append(part)
        if get_origin(part) is not Literal:
            waiting += [*get_args(part), *getattr(part, "__metadata__", ())]
    return found
