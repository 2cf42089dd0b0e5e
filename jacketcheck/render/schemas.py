"""Published JSON schemas."""

from __future__ import annotations

import ast
import inspect
import sys
from collections.abc import Iterator
from textwrap import dedent
from typing import Any

from pydantic import BaseModel
from pydantic.json_schema import JsonSchemaMode

from jacketcheck.as_built.models import AsBuilt
from jacketcheck.inputs.repair_file import RepairInput
from jacketcheck.render.chance_records import ChanceDocument
from jacketcheck.render.confirm_records import ConfirmationDocument
from jacketcheck.render.records import OutputDocument
from jacketcheck.render.schedule_records import ScheduleDocument
from jacketcheck.render.sizing_records import SizingDocument
from jacketcheck.render.sweep_records import SweepDocument

__all__ = [
    "as_built_schema",
    "bolts_schema",
    "chance_schema",
    "confirm_schema",
    "input_schema",
    "output_schema",
    "size_schema",
    "sweep_schema",
]

_DIALECT = "https://json-schema.org/draft/2020-12/schema"


def input_schema() -> dict[str, Any]:
    """Schema of a repair file, its variants included."""
    schema = _schema(RepairInput, "validation")
    schema["$schema"] = _DIALECT
    schema["title"] = "jacketcheck repair file"
    schema["properties"]["variants"] = {
        "type": "object",
        "description": "Overrides by variant name: nested tables or dotted paths; list entries "
        "are counted from one; remove lists paths of fields that go back to their defaults.",
        "additionalProperties": {"type": "object"},
    }
    return schema


def output_schema() -> dict[str, Any]:
    """Schema of the JSON output of a check."""
    return {"$schema": _DIALECT, **_schema(OutputDocument, "serialization")}


def as_built_schema() -> dict[str, Any]:
    """Schema of a record of what was built."""
    schema = _schema(AsBuilt, "validation")
    return {**schema, "$schema": _DIALECT, "title": "jacketcheck as-built record"}


def bolts_schema() -> dict[str, Any]:
    """Schema of the JSON output of a bolt schedule."""
    return {"$schema": _DIALECT, **_schema(ScheduleDocument, "serialization")}


def confirm_schema() -> dict[str, Any]:
    """Schema of the JSON output of a confirmation."""
    return {"$schema": _DIALECT, **_schema(ConfirmationDocument, "serialization")}


def chance_schema() -> dict[str, Any]:
    """Schema of the JSON output of the probabilities of exceedance."""
    return {"$schema": _DIALECT, **_schema(ChanceDocument, "serialization")}


def size_schema() -> dict[str, Any]:
    """Schema of the JSON output of a search for designs."""
    return {"$schema": _DIALECT, **_schema(SizingDocument, "serialization")}


def sweep_schema() -> dict[str, Any]:
    """Schema of the JSON output of a sweep."""
    return {"$schema": _DIALECT, **_schema(SweepDocument, "serialization")}


def _schema(model: type[BaseModel], mode: JsonSchemaMode) -> dict[str, Any]:
    if sys.flags.optimize > 1:  # an interpreter with -OO has no docstrings: read them anew
        for one in _all_models(BaseModel):
            if one.__module__.startswith("jacketcheck.") and one.__doc__ is None:
                (definition,) = ast.parse(dedent(inspect.getsource(one))).body
                assert isinstance(definition, ast.ClassDef)  # noqa: S101 - it is the source of a class
                one.__doc__ = ast.get_docstring(definition)
    return model.model_json_schema(mode=mode)


def _all_models(base: type[BaseModel]) -> Iterator[type[BaseModel]]:
    for model in base.__subclasses__():
        yield model
        yield from _all_models(model)
