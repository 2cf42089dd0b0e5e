"""Published JSON schemas."""

from __future__ import annotations

from typing import Any

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
    schema = RepairInput.model_json_schema(mode="validation")
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
    return {"$schema": _DIALECT, **OutputDocument.model_json_schema(mode="serialization")}


def as_built_schema() -> dict[str, Any]:
    """Schema of a record of what was built."""
    schema = AsBuilt.model_json_schema(mode="validation")
    return {**schema, "$schema": _DIALECT, "title": "jacketcheck as-built record"}


def bolts_schema() -> dict[str, Any]:
    """Schema of the JSON output of a bolt schedule."""
    return {"$schema": _DIALECT, **ScheduleDocument.model_json_schema(mode="serialization")}


def confirm_schema() -> dict[str, Any]:
    """Schema of the JSON output of a confirmation."""
    return {"$schema": _DIALECT, **ConfirmationDocument.model_json_schema(mode="serialization")}


def chance_schema() -> dict[str, Any]:
    """Schema of the JSON output of the probabilities of exceedance."""
    return {"$schema": _DIALECT, **ChanceDocument.model_json_schema(mode="serialization")}


def size_schema() -> dict[str, Any]:
    """Schema of the JSON output of a search for designs."""
    return {"$schema": _DIALECT, **SizingDocument.model_json_schema(mode="serialization")}


def sweep_schema() -> dict[str, Any]:
    """Schema of the JSON output of a sweep."""
    return {"$schema": _DIALECT, **SweepDocument.model_json_schema(mode="serialization")}
