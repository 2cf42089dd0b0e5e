"""Rows that have no ratio."""

from __future__ import annotations

from jacketcheck.results import Kind, Result

__all__ = ["not_applicable"]


def not_applicable(title: str, reason: str, *, location: str = "", clause: str = "") -> Result:
    """A row that says why a limit state does not apply to this jacket."""
    return Result(
        title=title,
        location=location,
        demand=0.0,
        capacity=0.0,
        unit="1",
        clause=clause,
        notes=(reason,),
        kind=Kind.NOT_APPLICABLE,
    )
