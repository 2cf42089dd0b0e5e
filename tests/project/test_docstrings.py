"""Docstrings of the formulas say what a reader needs: arguments, units, range, errors, source."""

from __future__ import annotations

import importlib
import inspect
import pkgutil
import re
from collections.abc import Callable, Iterator
from typing import Any

import pytest

import jacketcheck.mechanics

# whole numbers of things need no unit
COUNTS = {
    "bar_count", "bars_developed", "bolt_columns", "columns", "count", "crossing_bars", "fillers",
    "hole_count", "rows", "shear_planes", "slip_planes",
}  # fmt: skip
# searches that cannot go wrong
NEVER_RAISE = {"section_limits.peak_point"}

SECTIONS = re.compile(
    r"^\s*(Parameters|Returns|Raises|Notes|References|Examples)\n\s*-+$", re.MULTILINE
)
UNIT = re.compile(r"\[[^\]]+\]")


def formulas() -> Iterator[tuple[str, Callable[..., Any]]]:
    for info in pkgutil.iter_modules(jacketcheck.mechanics.__path__):
        if info.name.startswith("_"):
            continue
        module = importlib.import_module(f"jacketcheck.mechanics.{info.name}")
        for name in module.__all__:
            thing = getattr(module, name)
            if inspect.isfunction(thing):
                yield f"{info.name}.{name}", thing


FORMULAS = dict(formulas())


def section(text: str, title: str) -> str:
    """Body of a section of a docstring."""
    parts = SECTIONS.split(text)
    for index in range(1, len(parts), 2):
        if parts[index] == title:
            return parts[index + 1]
    return ""


def documented_arguments(text: str) -> dict[str, str]:
    """Names in the Parameters section with what is said of each."""
    found: dict[str, str] = {}
    names: list[str] = []
    indent = None
    for line in section(text, "Parameters").splitlines():
        if not line.strip():
            continue
        depth = len(line) - len(line.lstrip())
        indent = depth if indent is None else indent
        if depth == indent:
            names = [name.strip() for name in line.split(",")]
            found.update(dict.fromkeys(names, ""))
        else:
            for name in names:
                found[name] += " " + line.strip()
    return found


@pytest.mark.parametrize("name", FORMULAS)
def test_arguments_are_those_of_the_signature(name: str) -> None:
    function = FORMULAS[name]
    documented = documented_arguments(inspect.getdoc(function) or "")
    assert list(documented) == list(inspect.signature(function).parameters)
    assert all(documented.values())


@pytest.mark.parametrize("name", FORMULAS)
def test_numbers_carry_their_unit(name: str) -> None:
    function = FORMULAS[name]
    text = inspect.getdoc(function) or ""
    documented = documented_arguments(text)
    for argument, parameter in inspect.signature(function).parameters.items():
        if argument in COUNTS:
            continue
        if str(parameter.annotation) in {"Real", "float", "Floats", "Real | None", "Floats | None"}:
            assert UNIT.search(documented[argument]), f"{argument} has no unit"
    if str(inspect.signature(function).return_annotation) in {"Real", "float", "Floats"}:
        assert UNIT.search(section(text, "Returns")), "what is returned has no unit"


@pytest.mark.parametrize("name", FORMULAS)
def test_source_and_errors_are_named(name: str) -> None:
    text = inspect.getdoc(FORMULAS[name]) or ""
    assert section(text, "References").strip(), "no source"
    if inspect.signature(FORMULAS[name]).parameters:
        assert name in NEVER_RAISE or section(text, "Raises").strip(), "no errors named"
        assert section(text, "Returns").strip()


@pytest.mark.parametrize("name", FORMULAS)
def test_two_numbers_cannot_be_swapped_unnoticed(name: str) -> None:
    parameters = list(inspect.signature(FORMULAS[name]).parameters.values())
    positional = [p for p in parameters if p.kind is p.POSITIONAL_OR_KEYWORD]
    assert len(positional) <= 2, "everything after the first obvious argument is keyword-only"
