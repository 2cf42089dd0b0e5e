"""Faying-surface classes."""

from __future__ import annotations

from collections.abc import Iterator

from jacketcheck.catalog._load import read_file
from jacketcheck.catalog.records import FayingClass

__all__ = ["built_in_faying_classes"]


def built_in_faying_classes() -> Iterator[FayingClass]:
    """Classes of AISC, AASHTO and RCSC."""
    table = read_file("faying_classes")
    for entry in table["classes"]:
        yield FayingClass(
            code=entry["code"],
            letter=entry["letter"],
            slip_coefficient=entry["slip_coefficient"],
            preparation=entry["preparation"],
            keep_unpainted=table["keep_unpainted"][entry["keep_unpainted"]],
            same_as=tuple(entry.get("same_as", ())),
            source=entry["source"],
            aliases=(f"{entry['code']} class {entry['letter']}",),
        )
