"""Layers point one way: a package may import only packages named before it."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

PACKAGE = Path(__file__).parents[2] / "jacketcheck"

# from the lowest layer to the highest; what stands on one line may import one another
LAYERS: tuple[tuple[str, ...], ...] = (
    ("errors",),
    ("coverage", "files", "units"),
    ("mechanics",),
    ("catalog",),
    ("inputs",),
    ("starter",),
    ("jacket",),
    ("results",),
    ("causes",),
    ("analysis",),
    ("limit_state",),
    ("hookspecs",),
    ("limit_states",),
    ("host",),
    ("engine",),
    ("report",),
    ("api", "plugin"),
)
# the parts on top of the interface: each may use anything above this line, and one another
TOP = (
    "as_built", "batch", "chance", "conformance", "figures", "render", "schedule", "shop",
    "sizing", "sweep", "cli", "__main__", "__init__",
)  # fmt: skip


def level(name: str) -> int:
    for index, layer in enumerate(LAYERS):
        if name in layer:
            return index
    assert name in TOP, f"{name} is in no layer: put it in LAYERS or TOP"
    return len(LAYERS) + (1 if name in {"cli", "__main__", "__init__"} else 0)


def imported(path: Path) -> Iterator[str]:
    """First part below jacketcheck of everything that a module imports at run time."""
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(node, ast.ImportFrom) and node.module and node.level == 0:
            names = [node.module]
            if node.module == "jacketcheck":
                names = [f"jacketcheck.{alias.name}" for alias in node.names]
        elif isinstance(node, ast.Import):
            names = [alias.name for alias in node.names]
        else:
            continue
        for name in names:
            parts = name.split(".")
            if parts[0] == "jacketcheck" and len(parts) > 1:
                yield parts[1]


MODULES = sorted(PACKAGE.rglob("*.py"))


@pytest.mark.parametrize("path", MODULES, ids=lambda path: str(path.relative_to(PACKAGE)))
def test_no_module_imports_a_higher_layer(path: Path) -> None:
    relative = path.relative_to(PACKAGE)
    own = relative.parts[0].removesuffix(".py")
    for other in imported(path):
        assert level(other) <= level(own), f"{own} imports {other}, a higher layer"
