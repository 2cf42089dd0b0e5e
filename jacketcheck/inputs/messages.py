"""From what pydantic found to what the user reads: path, value as written, what is allowed."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any, TypeAlias, get_args

from pydantic import BaseModel, ValidationError
from pydantic_core import ErrorDetails

from jacketcheck.errors import InputProblem
from jacketcheck.inputs.written import dotted, shown

__all__ = ["problems_of"]

Location: TypeAlias = tuple[int | str, ...]

_MOST_HINTS = 50
"""Problems up to which unknown fields are compared with the known ones, which takes time."""


def problems_of(error: ValidationError, model: type[BaseModel]) -> list[InputProblem]:
    """Every problem of a failed validation of `model`."""
    errors = error.errors(include_url=False)
    lists = {found["loc"][:-1] for found in errors}
    return [
        InputProblem(
            dotted(found["loc"]),
            "" if found["type"] == "missing" else shown(found["input"]),
            _message(found, model, hint=number < _MOST_HINTS),
        )
        for number, found in enumerate(errors)
        # a list with a wrong entry is not too short as well
        if not (found["type"] == "too_short" and found["loc"] in lists)
    ]


def _message(found: ErrorDetails, model: type[BaseModel], *, hint: bool) -> str:
    kind = found["type"]
    if kind == "extra_forbidden":
        return _unknown_field(found["loc"], model) if hint else "is not a known field"
    if kind == "tuple_type" and isinstance(found["input"], Mapping):
        return f"must be a list of tables, each written [[{dotted(found['loc'])}]]"
    wording = _WORDINGS.get(kind)
    if wording is not None:
        return wording(found.get("ctx", {}))
    text = found["msg"].removeprefix("Value error, ")
    return text[:1].lower() + text[1:]


_WORDINGS: dict[str, Callable[[dict[str, Any]], str]] = {
    "missing": lambda _: "is missing",
    "model_type": lambda _: "must be a table",
    "tuple_type": lambda _: "must be a list",
    "string_type": lambda _: "must be a text in quotes",
    "string_unicode": lambda _: "holds characters that are no text",
    "bool_type": lambda _: "must be true or false, without quotes",
    "int_type": lambda _: "must be a whole number, without quotes",
    "float_type": lambda _: "must be a number, without quotes",
    "finite_number": lambda _: "must be a finite number",
    "int_from_float": lambda _: "must be a whole number",
    "greater_than_equal": lambda limits: f"must be at least {limits['ge']}",
    "less_than_equal": lambda limits: f"must be at most {limits['le']}",
    "literal_error": lambda limits: f"must be {limits['expected'].replace(chr(39), chr(34))}",
    "string_too_long": lambda limits: f"must have at most {limits['max_length']} characters",
    "string_too_short": lambda _: "is empty",
    "too_short": lambda limits: f"must have at least {_entries(limits['min_length'])}",
    "too_long": lambda limits: f"must have at most {_entries(limits['max_length'])}",
}


def _entries(count: int) -> str:
    return f"{count} entr{'y' if count == 1 else 'ies'}"


def _unknown_field(location: Location, model: type[BaseModel]) -> str:
    from difflib import get_close_matches  # noqa: PLC0415 - only needed for a bad name

    known = _fields_beside(location, model)
    near = get_close_matches(str(location[-1])[:100], known, n=1)
    if near:
        return f"is not a known field; did you mean {near[0]}?"
    return f"is not a known field; known are {', '.join(known)}"


def _fields_beside(location: Location, model: type[BaseModel]) -> list[str]:
    """Names of the fields that are allowed where an unknown one was found."""
    for step in location[:-1]:
        if isinstance(step, str):
            annotation = model.model_fields[step].annotation
            model = next(
                kind
                for kind in (annotation, *get_args(annotation))
                if isinstance(kind, type) and issubclass(kind, BaseModel)
            )
    return list(model.model_fields)
