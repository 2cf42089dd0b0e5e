"""From a TOML file to validated models, one for the file itself and one for each variant."""

from __future__ import annotations

import hashlib
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from pydantic import ValidationError

from jacketcheck.errors import InputError, InputProblem
from jacketcheck.inputs.overrides import apply_overrides
from jacketcheck.inputs.repair_file import RepairInput

__all__ = ["BASE_VARIANT", "InputFile", "read_input", "read_text"]

BASE_VARIANT = "as written"
"""Name of the variant that overrides nothing."""

LARGEST_FILE = 1_000_000
LARGEST_VARIANT_COUNT = 200
_LONGEST_SHOWN_VALUE = 60


@dataclass(frozen=True, slots=True)
class InputFile:
    """A validated input file.

    Attributes
    ----------
    source
        File name, or what the text was called.
    variants
        Validated input by variant name; the first is the file without overrides.
    digest
        SHA-256 of the text, so that a report can be matched with its input.
    """

    source: str
    variants: Mapping[str, RepairInput]
    digest: str

    @property
    def base(self) -> RepairInput:
        """The input without overrides."""
        return self.variants[BASE_VARIANT]


def read_input(path: Path | str) -> InputFile:
    """Read and validate a repair file.

    Parameters
    ----------
    path
        A TOML file of at most a megabyte.

    Raises
    ------
    InputError
        If the file cannot be read, is not TOML or breaks any rule; it holds every problem.
    """
    path = Path(path)
    try:
        if path.stat().st_size > LARGEST_FILE:
            raise _refusal(path.name, f"larger than {LARGEST_FILE} bytes")
        text = path.read_text("utf-8")
    except OSError as error:
        raise _refusal(str(path), f"cannot be read: {error.strerror}") from error
    except UnicodeDecodeError as error:
        raise _refusal(path.name, f"not UTF-8 text, at byte {error.start}") from error
    return read_text(text, source=path.name)


def read_text(text: str, *, source: str = "input") -> InputFile:
    """Validate a repair given as TOML text; raises InputError like `read_input`."""
    try:
        table = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise _refusal(source, f"not valid TOML: {_lower_first(str(error))}") from error
    except RecursionError as error:
        raise _refusal(source, "nested too deeply") from error
    written = table.pop("variants", {})
    problems: list[InputProblem] = []
    if not isinstance(written, Mapping):
        problems.append(InputProblem("variants", _shown(written), "must hold tables"))
        written = {}
    if len(written) > LARGEST_VARIANT_COUNT:
        raise _refusal(source, f"more than {LARGEST_VARIANT_COUNT} variants")
    variants: dict[str, RepairInput] = {}
    _validate(BASE_VARIANT, table, variants, problems, prefix="")
    for name, overrides in written.items():
        where = f"variants.{name}"
        if name == BASE_VARIANT or not isinstance(overrides, Mapping):
            problems.append(InputProblem(where, _shown(overrides), "must be a table of overrides"))
            continue
        changed, broken_paths = apply_overrides(table, overrides, where=where)
        if broken_paths:
            problems += broken_paths
        else:
            _validate(name, changed, variants, problems, prefix=f"{where}.")
    if problems:
        raise InputError(_without_repeats(problems), source=source)
    return InputFile(source, variants, hashlib.sha256(text.encode()).hexdigest())


def _validate(
    name: str,
    table: Mapping[str, Any],
    variants: dict[str, RepairInput],
    problems: list[InputProblem],
    *,
    prefix: str,
) -> None:
    try:
        variants[name] = RepairInput.model_validate(table)
    except ValidationError as error:
        problems += [
            InputProblem(
                prefix + _dotted(found["loc"]),
                "" if found["type"] == "missing" else _shown(found["input"]),
                _message(found["type"], found["msg"], found["loc"]),
            )
            for found in error.errors(include_url=False, include_context=False)
        ]


def _dotted(location: tuple[int | str, ...]) -> str:
    """Path with list entries counted from one, as in overrides."""
    return ".".join(str(step + 1) if isinstance(step, int) else step for step in location)


def _message(kind: str, message: str, location: tuple[int | str, ...]) -> str:
    if kind == "missing":
        return "is missing"
    if kind == "extra_forbidden":
        allowed = _siblings(location)
        return "is not a known field" + (f"; known are {', '.join(allowed)}" if allowed else "")
    return _lower_first(message.removeprefix("Value error, "))


def _siblings(location: tuple[int | str, ...]) -> list[str]:
    """Names of the fields that are allowed where an unknown one was found."""
    model: Any = RepairInput
    for step in location[:-1]:
        if isinstance(step, int):
            continue
        annotation = model.model_fields[step].annotation
        arguments = getattr(annotation, "__args__", (annotation,))
        model = next((kind for kind in arguments if hasattr(kind, "model_fields")), None)
        if model is None:
            return []
    return list(model.model_fields)


def _without_repeats(problems: list[InputProblem]) -> list[InputProblem]:
    """Drop what a variant merely inherits from the file itself."""
    own = {(problem.path, problem.message) for problem in problems}

    def inherited(problem: InputProblem) -> bool:
        if not problem.path.startswith("variants."):
            return False
        tail = problem.path.split(".")
        return any((".".join(tail[cut:]), problem.message) in own for cut in range(2, len(tail)))

    return [problem for problem in problems if not inherited(problem)]


def _shown(value: object) -> str:
    text = repr(value)
    return text if len(text) <= _LONGEST_SHOWN_VALUE else f"{text[:_LONGEST_SHOWN_VALUE]}…"


def _lower_first(text: str) -> str:
    return text[:1].lower() + text[1:]


def _refusal(source: str, message: str) -> InputError:
    return InputError([InputProblem("", "", message)], source=source)
