"""Which rule a row goes by, and whose it is where the provisions asked for inherit it."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final, Protocol

__all__ = ["INHERITED", "by_rule_of", "clause_text", "inherited_legend", "whose"]

INHERITED: Final = "°"
"""Mark of a ratio by an inherited rule, where there is no room for a word."""


class Ruled(Protocol):
    """A row that says which rule it goes by."""

    @property
    def clause(self) -> str:
        """The rule, with its edition."""

    @property
    def provisions(self) -> str:
        """The set that was asked for."""

    @property
    def written_by(self) -> str:
        """The set whose rule it is."""


def whose(row: Ruled) -> str:
    """The set that an inherited rule is of; empty for a set's own rules."""
    return row.written_by if row.written_by != row.provisions else ""


def clause_text(row: Ruled) -> str:
    """The clause, with the set that it comes from where another set was asked for."""
    owner = f"(of {whose(row)})" if whose(row) else ""
    return " ".join(part for part in (row.clause, owner) if part)


def by_rule_of(row: Ruled) -> str:
    """What is said behind a row's name where its rule is an inherited one; else nothing."""
    return f", by a rule of {whose(row)}" if whose(row) else ""


def inherited_legend(rows: Iterable[Ruled], mark: str = "") -> str:
    """What marks of inherited rules mean; empty where there are none.

    Parameters
    ----------
    rows
        All rows of a table.
    mark
        Mark beside ratios; by default the word behind the clause is explained.
    """
    owners = sorted({whose(row) for row in rows} - {""})
    shown = mark or ", ".join(f"(of {owner})" for owner in owners)
    return (
        f"{shown} by a rule that the provisions inherit from {', '.join(owners)}" if owners else ""
    )
