"""Labels: text that is shown and never computed with, so that designs may differ in it."""

from __future__ import annotations

from dataclasses import Field, field
from typing import Any

__all__ = ["SEVERAL", "is_label", "label"]

SEVERAL = "(several)"
"""What a label reads where the designs of one jacket differ in it."""


def label(default: str = "") -> Any:
    """A dataclass field that holds a label."""
    return field(default=default, metadata={"label": True})


def is_label(field_of: Field[Any]) -> bool:
    """Whether a dataclass field holds a label."""
    return bool(field_of.metadata.get("label", False))
