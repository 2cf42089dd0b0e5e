"""What may be imported is what is listed, and importing the package costs nothing."""

from __future__ import annotations

import ast
import subprocess
import sys
from pathlib import Path

import pytest

import jacketcheck
from jacketcheck import conformance, plugin

ROOT = Path(__file__).parents[1]


@pytest.mark.parametrize("module", [jacketcheck, plugin, conformance], ids=lambda one: one.__name__)
def test_every_listed_name_is_there_and_the_list_is_sorted(module: object) -> None:
    names: list[str] = module.__all__  # type: ignore[attr-defined] # a module
    assert names == sorted(names, key=_in_order_of_the_linter)
    assert len(set(names)) == len(names)
    for name in names:
        assert getattr(module, name) is not None
        assert name in dir(module)


def _in_order_of_the_linter(name: str) -> tuple[int, str]:
    """Constants, then classes, then functions."""
    return (0 if name.isupper() else 1 if name[0].isupper() else 2, name)


@pytest.mark.parametrize("module", [jacketcheck, plugin, conformance], ids=lambda one: one.__name__)
def test_nothing_is_imported_that_is_not_listed(module: object) -> None:
    source = Path(str(module.__file__)).read_text("utf-8")  # type: ignore[attr-defined] # a module
    imported = {
        alias.asname or alias.name
        for node in ast.walk(ast.parse(source))
        if isinstance(node, ast.ImportFrom) and str(node.module).startswith("jacketcheck")
        for alias in node.names
    }
    assert imported == set(module.__all__)  # type: ignore[attr-defined] # a module


def test_an_unknown_name() -> None:
    with pytest.raises(AttributeError, match="module 'jacketcheck' has no attribute 'chek'"):
        jacketcheck.chek  # noqa: B018 - that is what is tested


def test_everything_public_says_what_it_is() -> None:
    for module in (jacketcheck, plugin, conformance):
        for name in module.__all__:
            thing = getattr(module, name)
            if isinstance(thing, type) or callable(thing):
                assert str(thing.__doc__).strip(), name


def test_importing_the_package_imports_nothing_else() -> None:
    code = (
        "import sys; before = set(sys.modules); import jacketcheck; "
        "print(sorted({one.partition('.')[0] for one in set(sys.modules) - before}))"
    )
    run = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=True, cwd=ROOT
    )
    loaded = set(ast.literal_eval(run.stdout))
    assert not loaded & {"numpy", "pydantic", "pluggy", "scipy", "pint", "tabulate"}, loaded
