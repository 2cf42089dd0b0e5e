"""What all input models share: frozen, and closed to fields that nobody knows."""

from __future__ import annotations

from typing import Annotated, TypeAlias

from pydantic import AfterValidator, BaseModel, ConfigDict, Field

__all__ = ["Count", "InputModel", "Text"]


class InputModel(BaseModel):
    """Base of the input models; instances cannot be changed and unknown fields are errors."""

    model_config = ConfigDict(
        frozen=True, extra="forbid", str_strip_whitespace=True, str_max_length=300
    )


def _printable(text: str) -> str:
    if not all(character.isprintable() or character == "\n" for character in text):
        raise ValueError("holds characters that cannot be printed")
    return text


Text: TypeAlias = Annotated[str, AfterValidator(_printable)]
"""A text that is printed in the output."""

Count: TypeAlias = Annotated[int, Field(strict=True)]
"""A whole number; true and "20" are none."""
