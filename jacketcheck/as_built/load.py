"""From a TOML file to the validated record of what was built."""

from __future__ import annotations

import hashlib
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import get_args

from pydantic import ValidationError

from jacketcheck.as_built.models import AsBuilt, Part
from jacketcheck.catalog.catalog import Catalog, built_in_catalog
from jacketcheck.errors import CatalogError, InputError, InputProblem
from jacketcheck.inputs.messages import problems_of
from jacketcheck.inputs.toml_text import parse_toml, text_of_file
from jacketcheck.inputs.written import shown

__all__ = ["AsBuiltFile", "read_as_built", "read_as_built_text"]

PARTS: tuple[Part, ...] = get_args(Part)


@dataclass(frozen=True, slots=True)
class AsBuiltFile:
    """A validated record.

    Attributes
    ----------
    source
        File name, or what the text was called.
    record
        What it says.
    digest
        SHA-256 of the text.
    """

    source: str
    record: AsBuilt
    digest: str


def read_as_built(path: Path | str, *, catalog: Catalog | None = None) -> AsBuiltFile:
    """Read and validate a record of what was built.

    Parameters
    ----------
    path
        A TOML file in UTF-8.
    catalog
        What the file may name; the built-in catalogue by default.

    Raises
    ------
    InputError
        If the file cannot be read, is not TOML or breaks any rule; it holds every problem.
    """
    text, source = text_of_file(path)
    return read_as_built_text(text, source=source, catalog=catalog)


def read_as_built_text(
    text: str, *, source: str = "as-built record", catalog: Catalog | None = None
) -> AsBuiltFile:
    """Validate a record given as TOML text; raises InputError like `read_as_built`."""
    table = parse_toml(text, source)
    catalog = built_in_catalog() if catalog is None else catalog
    try:
        record = AsBuilt.model_validate(table, context={"catalog": catalog})
    except ValidationError as error:
        raise InputError(problems_of(error, AsBuilt), source=source) from error
    if problems := list(_contradictions(record, catalog)):
        raise InputError(problems, source=source)
    digest = hashlib.sha256(text.encode("utf-8", "surrogatepass")).hexdigest()
    return AsBuiltFile(source, record, digest)


def _contradictions(record: AsBuilt, catalog: Catalog) -> Iterator[InputProblem]:
    """What the fields may not say together."""
    for part in record.record.not_yet:
        if getattr(record, part) is not None:
            yield InputProblem("record.not_yet", shown(part), "is there: the file has its table")
    if not any(getattr(record, part) is not None for part in PARTS):
        known = ", ".join(PARTS)
        yield InputProblem("", "", f"records nothing; tables are {known}")
    if record.bolts is not None:
        try:
            catalog.bolt_product(record.bolts.product).size(record.bolts.diameter)
        except CatalogError as error:
            yield InputProblem("bolts.diameter", shown(record.bolts.diameter), error.problem)
    grout = record.grout
    if grout is not None:
        if grout.cube_strength is None and grout.cylinder_strength is None:
            message = "is missing; give cube_strength or cylinder_strength"
            yield InputProblem("grout.cube_strength", "", message)
        if (grout.cube_strength is None) != (grout.cube_side is None):
            message = "needs the strengths of the cubes" if grout.cube_side else "is missing"
            yield InputProblem("grout.cube_side", "", message)
    yield from _filler_contradictions(record)
    if record.faying is not None:
        yield from _faying_contradictions(record, catalog)


def _filler_contradictions(record: AsBuilt) -> Iterator[InputProblem]:
    splice = record.splice
    if splice is not None and bool(splice.fillers) != (splice.filler_thickness is not None):
        message = "is missing" if splice.fillers else "needs splice.fillers, a number"
        yield InputProblem("splice.filler_thickness", "", message)


def _faying_contradictions(record: AsBuilt, catalog: Catalog) -> Iterator[InputProblem]:
    faying = record.faying
    if faying is None:
        return
    codes = [catalog.faying_class(name).code for name in faying.faying_class]
    for code in dict.fromkeys(code for code in codes if codes.count(code) > 1):
        names = ", ".join(faying.faying_class)
        message = f"names two classes of {code}; a surface has one, the lower"
        yield InputProblem("faying.faying_class", shown(names), message)
