"""From a TOML file to validated models, one for the file itself and one for each variant."""

from __future__ import annotations

import hashlib
import unicodedata
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from pydantic import ValidationError

from jacketcheck.catalog.catalog import Catalog, built_in_catalog
from jacketcheck.errors import InputError, InputProblem
from jacketcheck.inputs.messages import problems_of
from jacketcheck.inputs.overrides import apply_overrides
from jacketcheck.inputs.repair_file import Job, RepairInput
from jacketcheck.inputs.toml_text import parse_toml, refusal, text_of_file
from jacketcheck.inputs.written import dotted, shown

__all__ = ["ALL", "InputFile", "read_input", "read_text"]

LARGEST_VARIANT_COUNT = 200
LONGEST_VARIANT_NAME = 60
ALL = "all"
"""What asks for every variant, and hence names none."""
_VARIANTS, _JOB = "variants", "job"
MOST_INHERITED_PROBLEMS = 100
"""Problems of the file itself up to which its variants are looked at: each has them all again."""
_REMARK = "look-ups and geometry are checked once these are mended"
_REMARK_ON_ALL = "variants, look-ups and geometry are checked once these are mended"


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
    written
        The tables of each variant as they were written, overrides in their places.
    """

    source: str
    variants: Mapping[str, RepairInput]
    digest: str
    written: Mapping[str, Mapping[str, Any]]

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
        A TOML file in UTF-8.
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
    text, source = text_of_file(path)
    return read_text(text, source=source, catalog=catalog)


def read_text(text: str, *, source: str = "input", catalog: Catalog | None = None) -> InputFile:
    """Validate a repair given as TOML text; raises InputError like `read_input`."""
    table = parse_toml(text, source)
    variants = table.pop(_VARIANTS, {})
    reading = _Reading(table, built_in_catalog() if catalog is None else catalog)
    if not isinstance(variants, Mapping):
        reading.problems.append(InputProblem(_VARIANTS, shown(variants), "must hold tables"))
        variants = {}
    if len(variants) > LARGEST_VARIANT_COUNT:
        raise refusal(source, f"has more than {LARGEST_VARIANT_COUNT} variants")
    if len(reading.problems) > MOST_INHERITED_PROBLEMS:
        raise InputError(reading.problems, source=source, remark=_REMARK_ON_ALL)
    for name, overrides in variants.items():
        reading.add_variant(name, overrides)
    if reading.problems:
        raise InputError(reading.problems, source=source, remark=_REMARK)
    digest = hashlib.sha256(text.encode("utf-8", "surrogatepass")).hexdigest()
    return InputFile(source, reading.variants, digest, reading.written)


class _Reading:
    """Validates the file and its variants; writes every problem down, and each only once."""

    def __init__(self, table: Mapping[str, Any], catalog: Catalog) -> None:
        self._table = table
        self._context = {"catalog": catalog}
        self._base_name = _base_name(table)
        self.variants: dict[str, RepairInput] = {}
        self.written: dict[str, Mapping[str, Any]] = {}
        self.problems = self._validate(self._base_name, table)
        if _seen_as(self._base_name) == ALL:
            message = f'must not be "{ALL}", which stands for every variant'
            self.problems.append(InputProblem("job.variant", shown(self._base_name), message))
        self._own_problems = frozenset(self.problems)
        self._names = {_seen_as(self._base_name): self._base_name}

    def add_variant(self, name: str, overrides: object) -> None:
        """Validate the file with one variant's overrides."""
        place = dotted((_VARIANTS, name))
        if not isinstance(overrides, Mapping):
            found = [InputProblem("", shown(overrides), "must be a table of overrides")]
        elif found := self._name_problems(name):
            pass
        elif _JOB in {key.partition(".")[0] for key in overrides}:
            message = "cannot be overridden: it stands for the whole file"
            found = [InputProblem(_JOB, "", message)]
        else:
            changed, found = apply_overrides(self._table, overrides)
            found = found or self._validate(name, changed)
        self.problems += [
            InputProblem(f"{place}.{one.path}" if one.path else place, one.value, one.message)
            for one in found
            if one not in self._own_problems  # the variant merely inherits it
        ]

    def _name_problems(self, name: str) -> list[InputProblem]:
        """What is wrong with the name of a variant, if anything."""
        same = self._names.setdefault(_seen_as(name), name)
        if not (name.strip() and name.isprintable() and len(name) <= LONGEST_VARIANT_NAME):
            message = f"must have a name of 1 to {LONGEST_VARIANT_NAME} printable characters"
        elif _seen_as(name) == ALL:
            message = f'must not be called "{ALL}", which stands for every variant'
        elif same == self._base_name:
            message = "is the name of the file itself, see job.variant"
        elif same != name:
            message = f"reads like {shown(same)}"
        else:
            return []
        return [InputProblem("", "", message)]

    def _validate(self, name: str, table: Mapping[str, Any]) -> list[InputProblem]:
        """Keep the input if one complete set of tables is valid; else say what is wrong."""
        try:
            self.variants[name] = RepairInput.model_validate(table, context=self._context)
        except ValidationError as error:
            return problems_of(error, RepairInput)
        self.written[name] = table
        return []


def _seen_as(name: str) -> str:
    """A name as it looks: whatever blanks and forms of characters it is written with."""
    return " ".join(unicodedata.normalize("NFKC", name).split())


def _base_name(table: Mapping[str, Any]) -> str:
    """What the file calls itself, valid or not."""
    job = table.get("job")
    name = job.get("variant") if isinstance(job, Mapping) else None
    default: str = Job.model_fields["variant"].default
    return name.strip() if isinstance(name, str) else default
