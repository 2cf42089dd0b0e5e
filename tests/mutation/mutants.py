"""Small changes to a module, each of which tests should notice."""

from __future__ import annotations

import ast
import copy
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Any, Final

__all__ = ["Mutant", "code_of", "mutants_of"]

_ARITHMETIC: Final[dict[type[ast.operator], type[ast.operator]]] = {
    ast.Add: ast.Sub,
    ast.Sub: ast.Add,
    ast.Mult: ast.Div,
    ast.Div: ast.Mult,
    ast.Pow: ast.Mult,
    ast.FloorDiv: ast.Div,
    ast.Mod: ast.Mult,
    ast.BitAnd: ast.BitOr,
    ast.BitOr: ast.BitAnd,
}
_COMPARISONS: Final[dict[type[ast.cmpop], tuple[type[ast.cmpop], ...]]] = {
    ast.Lt: (ast.LtE, ast.GtE),
    ast.LtE: (ast.Lt, ast.Gt),
    ast.Gt: (ast.GtE, ast.LtE),
    ast.GtE: (ast.Gt, ast.Lt),
    ast.Eq: (ast.NotEq,),
    ast.NotEq: (ast.Eq,),
    ast.Is: (ast.IsNot,),
    ast.IsNot: (ast.Is,),
    ast.In: (ast.NotIn,),
    ast.NotIn: (ast.In,),
}
_TWINS: Final = {
    one: other
    for pair in (
        ("maximum", "minimum"), ("max", "min"), ("fmax", "fmin"), ("floor", "ceil"),
        ("argmax", "argmin"), ("any", "all"), ("greater", "less"), ("less_equal", "less"),
        ("greater_equal", "greater"), ("sin", "cos"), ("add", "subtract"),
        ("multiply", "divide"), ("logical_and", "logical_or"), ("sqrt", "square"),
    )
    for one, other in (pair, pair[::-1])
}  # fmt: skip
_SWAPPED: Final = frozenset({"where", "subtract", "divide"})
_MESSAGES: Final = frozenset({"DomainError", "ValueError", "lru_cache", "field", "Literal"})


@dataclass(frozen=True)
class Mutant:
    """One change.

    Attributes
    ----------
    module
        Dotted name.
    number
        Number of the change within the module.
    line
        Line of the source.
    change
        What is changed, as code.
    """

    module: str
    number: int
    line: int
    change: str


def mutants_of(module: str, source: str) -> list[Mutant]:
    """Every mutant of a module, in order."""
    return [
        Mutant(module, number, node.lineno, _shown(node, other))
        for number, (node, other) in enumerate(_changes(ast.parse(source)))
    ]


def code_of(source: str, number: int, *, path: str) -> Any:
    """Compiled source with one change."""
    tree = ast.parse(source)
    node, other = list(_changes(tree))[number]
    changed = ast.fix_missing_locations(_Replacement(node, other).visit(tree))
    return compile(changed, path, "exec")


class _Replacement(ast.NodeTransformer):
    """Puts one node in the place of another."""

    def __init__(self, old: ast.AST, new: ast.AST) -> None:
        self._old = old
        self._new = new

    def visit(self, node: ast.AST) -> Any:
        """Replace the node, or look further."""
        return ast.copy_location(self._new, node) if node is self._old else super().visit(node)


def _changes(tree: ast.Module) -> Iterator[tuple[Any, ast.AST]]:
    """Each node that can be changed, with what takes its place."""
    for node in _executed(tree):
        for other in _others(node):
            yield node, other


def _executed(node: ast.AST) -> Iterator[ast.AST]:
    """Nodes that do something: no annotations, docstrings, exports or texts of errors."""
    if isinstance(node, ast.AnnAssign):
        # an alias of types does nothing either
        is_alias = _name(node.annotation) == "TypeAlias"
        children: list[ast.AST | None] = [] if is_alias else [node.value]
    elif isinstance(node, ast.FunctionDef):
        yield node
        children = [*node.body, *node.args.defaults, *node.args.kw_defaults]
    elif (
        (isinstance(node, ast.Assign) and _name(node.targets[0]) == "__all__")
        or isinstance(node, ast.JoinedStr)
        or (isinstance(node, ast.Call) and _name(node.func) in _MESSAGES)
    ):
        children = []
    else:
        yield node
        children = list(ast.iter_child_nodes(node))
    for child in children:
        if child is not None:
            yield from _executed(child)


def _others(node: ast.AST) -> Iterator[ast.AST]:
    changes = _CHANGES.get(type(node))
    if changes is not None:
        yield from changes(node)


def _other_operations(node: ast.BinOp) -> Iterator[ast.AST]:
    kind = _ARITHMETIC.get(type(node.op))
    if kind is not None:
        yield ast.BinOp(node.left, kind(), node.right)
        yield node.left
        if not isinstance(node.op, ast.Pow):
            yield node.right


def _other_comparisons(node: ast.Compare) -> Iterator[ast.AST]:
    alone = len(node.ops) == 1
    for index, operation in enumerate(node.ops):
        kinds = _COMPARISONS[type(operation)]
        for kind in kinds if alone else kinds[:1]:
            ops = [*node.ops[:index], kind(), *node.ops[index + 1 :]]
            yield ast.Compare(node.left, ops, node.comparators)


def _other_junctions(node: ast.BoolOp) -> Iterator[ast.AST]:
    yield ast.BoolOp(ast.Or() if isinstance(node.op, ast.And) else ast.And(), node.values)


def _without_negation(node: ast.UnaryOp) -> Iterator[ast.AST]:
    if not isinstance(node.op, ast.UAdd) and not isinstance(node.operand, ast.Constant):
        yield node.operand


def _dropped_calls(node: ast.Expr) -> Iterator[ast.AST]:
    if isinstance(node.value, ast.Call):
        yield ast.Pass()


def _other_branches(node: ast.IfExp) -> Iterator[ast.AST]:
    yield ast.IfExp(node.test, node.orelse, node.body)


def _other_constants(node: ast.Constant) -> Iterator[ast.AST]:
    value = node.value
    if isinstance(value, bool):
        yield ast.Constant(not value)
    elif isinstance(value, int):
        yield ast.Constant(value + 1)
    elif isinstance(value, float):
        yield ast.Constant(value * 1.1 if value else 1.0)


def _other_calls(node: ast.Call) -> Iterator[ast.AST]:
    name = _name(node.func)
    if name in _TWINS:
        called = copy.copy(node.func)
        if isinstance(called, ast.Attribute):
            called.attr = _TWINS[name]
        elif isinstance(called, ast.Name):
            called.id = _TWINS[name]
        yield ast.Call(called, node.args, node.keywords)
    if name in _SWAPPED and len(node.args) >= 2 and not _has_star(node):
        *first, one, other = node.args
        yield ast.Call(node.func, [*first, other, one], node.keywords)


_CHANGES: Final[dict[type[ast.AST], Callable[[Any], Iterator[ast.AST]]]] = {
    ast.BinOp: _other_operations,
    ast.Compare: _other_comparisons,
    ast.BoolOp: _other_junctions,
    ast.UnaryOp: _without_negation,
    ast.Constant: _other_constants,
    ast.Call: _other_calls,
    ast.Expr: _dropped_calls,
    ast.IfExp: _other_branches,
}


def _has_star(node: ast.Call) -> bool:
    return any(isinstance(one, ast.Starred) for one in node.args)


def _name(node: ast.AST) -> str:
    if isinstance(node, ast.Attribute):
        return node.attr
    return node.id if isinstance(node, ast.Name) else ""


def _shown(node: ast.AST, other: ast.AST) -> str:
    old, new = (" ".join(ast.unparse(one).split()) for one in (node, other))
    return f"{old[:90]} -> {new[:90]}"
