"""Symbols that an expression uses, and those among them that no step above has introduced.

An expression is a formula, or words with symbols among them. A symbol is told from a word by how
it is written: one letter, a letter with an index (``A_b``, ``F_u,s``), a Greek letter, a prime
(``f′c``), or what a step above calls so. ``A_e/A_g`` and ``p(ε_cl)`` are symbols where a step is
named like that.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable, Iterator
from typing import Final

from jacketcheck.results import Step

__all__ = [
    "CONSTANTS",
    "FUNCTIONS",
    "UNITS",
    "unknown_symbols",
    "uses_any",
    "without_introduction",
]

FUNCTIONS: Final = frozenset({"min", "max", "ln", "log", "exp", "sin", "cos", "tan", "cot"})
CONSTANTS: Final = frozenset({"π"})
UNITS: Final = frozenset({"N", "kN", "mm", "m", "in", "ft", "lb", "kip", "psi", "ksi", "MPa"})
"""Units beside numbers, as in ``6 in``, or after the words ``in`` and ``and``."""

_WORD: Final = re.compile(
    r"[^\W\d_²³][^\W_²³]*[′″]?[^\W_²³]*(?:_[^\W_²³]+(?:,[^\W_²³]+)*)?[′″]?"
    r"|\d{3}[A-Z]\b|\d+(?:\.\d+)*(?:\([a-z]\))?|\S"
)
"""Words, grades of steel such as 500E, numbers and signs."""
_GREEK: Final = re.compile(r"[Α-Ωα-ωϵϕ]")


def without_introduction(steps: Iterable[Step]) -> Iterator[tuple[Step, str]]:
    """Every step with each symbol of its expression that no earlier step of the row carries."""
    known: set[str] = set()
    for step in steps:
        for symbol in unknown_symbols(step.expression, known):
            yield step, symbol
        known.add(step.symbol)


def uses_any(expression: str, known: Collection[str]) -> bool:
    """Whether an expression uses any of the known symbols, and so is more than words.

    Examples
    --------
    >>> uses_any("2.4 d", {"d"}), uses_any("hole of a bolt", {"d"})
    (True, False)
    """
    return any(word in known for word in _words(expression, sorted(known, key=len, reverse=True)))


def unknown_symbols(expression: str, known: Collection[str]) -> tuple[str, ...]:
    """Symbols of an expression that are not among the known ones, each once.

    Examples
    --------
    >>> unknown_symbols("min(K_1 f′c, 2.5 d) A_cv", {"A_cv", "d"})
    ('K_1', 'f′c')
    >>> unknown_symbols("length of a bolt, 6 in at most", ())
    ()
    >>> unknown_symbols("AS/NZS 4671 500E", ())
    ()
    """
    words = list(_words(expression, sorted(known, key=len, reverse=True)))
    return tuple(
        dict.fromkeys(
            word
            for index, word in enumerate(words)
            if word not in known and _is_symbol(word, words, index)
        )
    )


def _words(text: str, names: Collection[str]) -> Iterator[str]:
    """What stands in an expression: known symbols whole, then words, numbers and signs."""
    rest = text.lstrip()
    while rest:
        known = next((name for name in names if _begins(rest, name)), None)
        found = _WORD.match(rest)
        word = known or (found.group() if found else rest[0])
        yield word
        rest = rest[len(word) :].lstrip()


def _begins(text: str, name: str) -> bool:
    """Whether a text begins with a whole symbol, not with the head of a longer one."""
    if not name or not text.startswith(name):
        return False
    found = _WORD.match(text)
    return len(name) >= len(found.group() if found else "") or not name[-1].isalnum()


def _is_symbol(word: str, words: list[str], index: int) -> bool:
    """Whether a word that no step carries is written like a symbol."""
    if word in FUNCTIONS | CONSTANTS or not word[0].isalpha():
        return False
    before = words[index - 1] if index else ""
    if word in UNITS and (before[:1].isdigit() or before in {"in", "and"}):
        return False
    if "_" in word or "′" in word or "″" in word or _GREEK.search(word):
        return True
    after = words[index + 1] if index + 1 < len(words) else ""
    # an article before a noun, or a letter that only names something, stands among words
    named = before[:1].isdigit() and index > 1 and _is_plain(words[index - 2])
    return len(word) == 1 and not (named or _is_plain(before) or _is_plain(after))


def _is_plain(word: str) -> bool:
    return len(word) > 1 and word.isalnum() and word[0].isalpha() and word not in FUNCTIONS
