"""Modules and functions stay small, and `__all__` tells the truth."""

from __future__ import annotations

import ast
import importlib
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
PACKAGE = ROOT / "jacketcheck"
MODULES = sorted(PACKAGE.rglob("*.py"))
LONGEST_MODULE = 500
LONGEST_BODY = 50
LONG_FOR_A_REASON = {"build_bolts": "one record with as many fields as a bolt group has"}


def name_of(path: Path) -> str:
    return str(path.relative_to(PACKAGE))


def module_of(path: Path) -> str:
    parts = path.relative_to(ROOT).with_suffix("").parts
    return ".".join(parts[:-1] if parts[-1] == "__init__" else parts)


def body_lines(function: ast.FunctionDef | ast.AsyncFunctionDef) -> int:
    """Lines of a function without signature, docstring and blank lines between them."""
    statements = function.body
    if ast.get_docstring(function) is not None:
        statements = statements[1:]
    if not statements:
        return 0
    return (statements[-1].end_lineno or 0) - statements[0].lineno + 1


@pytest.mark.parametrize("path", MODULES, ids=name_of)
def test_a_module_has_one_subject(path: Path) -> None:
    lines = path.read_text("utf-8").splitlines()
    assert len(lines) <= LONGEST_MODULE
    for node in ast.walk(ast.parse("\n".join(lines))):
        if not isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
            continue
        if node.name not in LONG_FOR_A_REASON:
            assert body_lines(node) <= LONGEST_BODY, node.name


@pytest.mark.parametrize(
    "path", [path for path in MODULES if path.name != "__main__.py"], ids=name_of
)
def test_what_a_module_exports_is_sorted_and_there(path: Path) -> None:
    module = importlib.import_module(module_of(path))
    exported = getattr(module, "__all__", None)
    if exported is None:
        return
    assert list(exported) == sorted(exported, key=lambda name: (not name.isupper(), name)) or list(
        exported
    ) == sorted(exported)
    for name in exported:
        assert hasattr(module, name), name
