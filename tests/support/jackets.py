"""Jackets for tests of analyses and limit states: the reference case, with fields replaced."""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path
from typing import Final

from jacketcheck.engine import evaluate
from jacketcheck.host import Host, load_host
from jacketcheck.inputs import read_text
from jacketcheck.jacket import Jacket, build_jacket
from jacketcheck.results import Kind, Result

__all__ = ["CASE", "VARIANTS", "built", "built_afresh", "host", "row", "rows", "symbol"]

CASE: Final = Path(__file__).parents[2] / "reference_cases" / "quarry-road-pier" / "repair.toml"
VARIANTS: Final = ("chipped", "thick, unchipped", "thin", "thin, snug bolts")


@lru_cache(maxsize=1)
def host() -> Host:
    """Built-in limit states alone."""
    return load_host(installed=False)


@lru_cache(maxsize=512)
def _built_once(changes: str, variant: str, text: str | None) -> Jacket:
    return built_afresh(changes, variant=variant, text=text)


def built(changes: str = "", *, variant: str = "chipped", text: str | None = None) -> Jacket:
    """The reference case with some fields replaced, built once; parameters as in `built_afresh`.

    What was found of it is kept with it, for all tests of a session.
    """
    return _built_once(changes, variant, text)


def built_afresh(changes: str = "", *, variant: str = "chipped", text: str | None = None) -> Jacket:
    """The reference case with some fields replaced, of which nothing has been found yet.

    Parameters
    ----------
    changes
        Lines of TOML such as ``sleeve.thickness = "1 in"``.
    variant
        Variant that they change.
    text
        File to start from instead of the reference case.
    """
    whole = CASE.read_text("utf-8") if text is None else text
    if changes:
        shared = _lines_of(whole, variant)
        whole += f'\n[variants."changed"]\n{shared}\n{changes}\n'
        variant = "changed"
    return build_jacket(read_text(whole, catalog=host().catalog).variants[variant])


def _lines_of(text: str, variant: str) -> str:
    """What a variant of the file replaces."""
    _, found, after = text.partition(f'[variants."{variant}"]\n')
    return after.partition("\n[")[0] if found else ""


def rows(jacket: Jacket, *limit_states: str) -> tuple[Result, ...]:
    """Rows of some limit states, or of all, evaluated once for a jacket and kept with it."""
    key = ("rows of", *limit_states)
    if key not in jacket.memo:
        jacket.memo[key] = evaluate(jacket, host=host(), only=limit_states or None)
    found: tuple[Result, ...] = jacket.memo[key]
    return found


def row(jacket: Jacket, limit_state: str, *words: str) -> Result:
    """The one row of a limit state whose title, place and clause hold all words."""
    found = [
        one
        for one in rows(jacket, limit_state)
        if all(word in f"{one.title}|{one.location}|{one.clause}" for word in words)
    ]
    assert len(found) == 1, [(one.title, one.location, one.clause) for one in found]
    assert found[0].kind is not Kind.NOT_EVALUATED, found[0].notes
    return found[0]


def symbol(result: Result, name: str) -> float:
    """Value of the last step with a symbol."""
    values = [float(step.value) for step in result.steps if step.symbol == name]
    assert values, [step.symbol for step in result.steps]
    return values[-1]
