"""Published JSON schemas."""

from __future__ import annotations

from typing import Any

from jacketcheck.inputs.repair_file import RepairInput
from jacketcheck.render.records import OutputDocument

__all__ = ["input_schema", "output_schema"]

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
