"""What all input models share: frozen, and closed to fields that nobody knows."""

from __future__ import annotations

from pydantic import BaseModel, ConfigDict

__all__ = ["InputModel"]


class InputModel(BaseModel):
    """Base of the input models; instances cannot be changed and unknown fields are errors."""

    model_config = ConfigDict(
        frozen=True, extra="forbid", str_strip_whitespace=True, str_max_length=300
    )
