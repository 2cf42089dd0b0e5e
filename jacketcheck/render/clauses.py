"""Which rule a row goes by, and whose it is where it is none of the provisions asked for.

It may be inherited from another set, or a plug-in's that was added to a set which is not its own:
title and clause of such a row may be those of any other row, so that it always says so.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final, Protocol

__all__ = [
    "ADDED",
    "INHERITED",
    "added_legend",
    "by_rule_of",
    "clause_text",
    "inherited_legend",
    "owner_text",
    "whose",
]

INHERITED: Final = "°"
"""Mark of a ratio by an inherited rule, where there is no room for a word."""
ADDED: Final = "+"
"""Mark of a ratio by a rule that a plug-in has added to a set which is not its own."""


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

    @property
    def added_by(self) -> str:
        """The plug-in that added it to that set; empty for the set's own."""


def whose(row: Ruled) -> str:
    """The set that an inherited rule is of; empty for a set's own rules."""
    return row.written_by if row.written_by != row.provisions else ""


def clause_text(row: Ruled) -> str:
    """The clause, with the set that it comes from where another set was asked for."""
    owners = [f"of {whose(row)}"] if whose(row) else []
    if row.added_by:
        owners.append(f"added by plug-in {row.added_by}")
    return " ".join(
        part for part in (row.clause, f"({', '.join(owners)})" if owners else "") if part
    )


def by_rule_of(row: Ruled) -> str:
    """What is said behind a row's name where its rule is an inherited one; else nothing."""
    inherited = f", by a rule of {whose(row)}" if whose(row) else ""
    return f"{inherited}, added by plug-in {row.added_by}" if row.added_by else inherited


def owner_text(row: Ruled) -> str:
    """The provisions that were asked for, and whose the rule is where it is none of theirs."""
    inherited = f", inherited from {whose(row)}" if whose(row) else ""
    added = f", added by plug-in {row.added_by}" if row.added_by else ""
    return f"{row.provisions}{inherited}{added}"


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


def added_legend(rows: Iterable[Ruled]) -> str:
    """What the mark of added rules beside ratios means; empty where there are none."""
    owners = sorted({row.added_by for row in rows} - {""})
    return f"{ADDED} by a rule that plug-in {', '.join(owners)} has added" if owners else ""
