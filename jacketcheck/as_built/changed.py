"""A repair, and the jacket built from it, with some values as built."""

from __future__ import annotations

from typing import Any

from jacketcheck.as_built.records import Change
from jacketcheck.catalog.catalog import Catalog
from jacketcheck.inputs.repair_file import RepairInput
from jacketcheck.jacket.build import build_jacket
from jacketcheck.jacket.designs import with_values
from jacketcheck.jacket.jacket import Jacket

__all__ = ["changed_jacket", "changed_repair"]


def changed_repair(repair: RepairInput, change: Change) -> RepairInput:
    """Copy of an input with the change's fields."""
    tables: dict[str, dict[str, Any]] = {}
    for path, value in change.fields.items():
        table, _, field = path.partition(".")
        tables.setdefault(table, {})[field] = value
    return repair.model_copy(
        update={
            table: getattr(repair, table).model_copy(update=fields)
            for table, fields in tables.items()
        }
    )


def changed_jacket(repair: RepairInput, change: Change, catalog: Catalog) -> Jacket:
    """Jacket with a change.

    Raises
    ------
    InputError
        If the jacket cannot be built.
    """
    jacket = build_jacket(changed_repair(repair, change), catalog=catalog)
    return with_values(jacket, change.leaves) if change.leaves else jacket
