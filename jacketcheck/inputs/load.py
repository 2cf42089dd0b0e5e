"""From a TOML file to validated models, one for the file itself and one for each variant."""

from __future__ import annotations

import hashlib
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from pydantic import ValidationError

from jacketcheck.catalog.catalog import Catalog, built_in_catalog
from jacketcheck.errors import InputError, InputProblem
from jacketcheck.inputs.overrides import apply_overrides
from jacketcheck.inputs.repair_file import RepairInput

__all__ = ["InputFile", "read_input", "read_text"]

LARGEST_FILE = 1_000_000
LARGEST_VARIANT_COUNT = 200
LONGEST_VARIANT_NAME = 60
_LONGEST_SHOWN_VALUE = 60


@dataclass(frozen=True, slots=True)
class InputFile:
    """A validated input file.

    Attributes
    ----------
    source
        File name, or what the text was called.
    variants
        Validated input by variant name; the first is the file without overrides, named by
        ``job.variant``.
    digest
        SHA-256 of the text, so that a report can be matched with its input.
    """

    source: str
    variants: Mapping[str, RepairInput]
    digest: str

    @property
    def base_name(self) -> str:
        """Name of the file without overrides."""
        return next(iter(self.variants))

    @property
    def base(self) -> RepairInput:
        """The input without overrides."""
        return self.variants[self.base_name]


def read_input(path: Path | str, *, catalog: Catalog | None = None) -> InputFile:
    """Read and validate a repair file.

    Parameters
    ----------
    path
        A TOML file of at most a megabyte.
    catalog
        What the file may name; the built-in catalogue by default.

    Returns
    -------
    InputFile
        Validated input of the file itself and of each variant.

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
    return read_text(text, source=path.name, catalog=catalog)


def read_text(text: str, *, source: str = "input", catalog: Catalog | None = None) -> InputFile:
    """Validate a repair given as TOML text; raises InputError like `read_input`."""
    table, written = _parse(text, source)
    read = _Reader(built_in_catalog() if catalog is None else catalog)
    base = read.validate(table, prefix="")
    read.base_name = base.job.variant if base is not None else ""
    if not isinstance(written, Mapping):
        read.problems.append(InputProblem("variants", _shown(written), "must hold tables"))
        written = {}
    if len(written) > LARGEST_VARIANT_COUNT:
        raise _refusal(source, f"more than {LARGEST_VARIANT_COUNT} variants")
    for name, overrides in written.items():
        read.variant(name, table, overrides)
    if read.problems:
        raise InputError(_without_repeats(read.problems), source=source)
    assert base is not None  # noqa: S101 - without it there would be a problem
    variants = {read.base_name: base, **read.variants}
    return InputFile(source, variants, hashlib.sha256(text.encode()).hexdigest())


def _parse(text: str, source: str) -> tuple[dict[str, Any], Any]:
    """The file's tables, and what stands under variants."""
    try:
        table = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise _refusal(source, f"not valid TOML: {_lower_first(str(error))}") from error
    except RecursionError as error:
        raise _refusal(source, "nested too deeply") from error
    return table, table.pop("variants", {})


class _Reader:
    """Collects validated variants, and every problem on the way."""

    def __init__(self, catalog: Catalog) -> None:
        self._context = {"catalog": catalog}
        self.base_name = ""
        self.variants: dict[str, RepairInput] = {}
        self.problems: list[InputProblem] = []

    def variant(self, name: str, table: Mapping[str, Any], overrides: object) -> None:
        """Validate the file with one variant's overrides."""
        where = f"variants.{name}"
        if not isinstance(overrides, Mapping):
            problem = InputProblem(where, _shown(overrides), "must be a table of overrides")
        elif name == self.base_name:
            problem = InputProblem(where, "", "is the name of the file itself, see job.variant")
        elif not name.strip() or len(name) > LONGEST_VARIANT_NAME:
            problem = InputProblem(
                where[:80], "", f"a name has 1 to {LONGEST_VARIANT_NAME} characters"
            )
        else:
            self._overridden(name, table, overrides, where)
            return
        self.problems.append(problem)

    def _overridden(
        self, name: str, table: Mapping[str, Any], overrides: Mapping[str, Any], where: str
    ) -> None:
        changed, broken_paths = apply_overrides(table, overrides, where=where)
        if broken_paths:
            self.problems += broken_paths
        else:
            validated = self.validate(changed, prefix=f"{where}.")
            if validated is not None:
                self.variants[name] = validated

    def validate(self, table: Mapping[str, Any], *, prefix: str) -> RepairInput | None:
        """Validate one complete set of tables; None with problems written down."""
        try:
            return RepairInput.model_validate(table, context=self._context)
        except ValidationError as error:
            self.problems += [
                InputProblem(
                    prefix + _dotted(found["loc"]),
                    "" if found["type"] == "missing" else _shown(found["input"]),
                    _message(found["type"], found["msg"], found["loc"]),
                )
                for found in error.errors(include_url=False, include_context=False)
            ]
            return None


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
