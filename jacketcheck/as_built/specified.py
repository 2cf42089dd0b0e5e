"""What was specified: the repair file's variant, its jacket and its bolt assembly."""

from __future__ import annotations

from dataclasses import dataclass

from jacketcheck.catalog.catalog import Catalog
from jacketcheck.inputs.repair_file import RepairInput
from jacketcheck.jacket.build import build_jacket
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.schedule.assembly import Assembly, assembly_of

__all__ = ["Specified", "specified_by"]


@dataclass(frozen=True, slots=True)
class Specified:
    """One variant of a repair file.

    Attributes
    ----------
    repair, jacket
        Input and what is built from it.
    assembly
        The bolt with its washers, as the schedule has it.
    catalog
        What names stand for.
    """

    repair: RepairInput
    jacket: Jacket
    assembly: Assembly
    catalog: Catalog


def specified_by(repair: RepairInput, catalog: Catalog) -> Specified:
    """Build what a variant specifies; raises InputError where it cannot be built."""
    jacket = build_jacket(repair, catalog=catalog)
    return Specified(repair, jacket, assembly_of(jacket, catalog), catalog)
