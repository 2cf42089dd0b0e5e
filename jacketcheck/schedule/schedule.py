"""The bolt schedule of a jacket, and those of all variants of a repair file."""

from __future__ import annotations

from collections.abc import Iterable
from importlib.metadata import version

from jacketcheck.api import build_variants, choose_variants
from jacketcheck.catalog.catalog import Catalog, built_in_catalog
from jacketcheck.host.host import Host
from jacketcheck.inputs.load import InputFile
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.schedule.assembly import assembly_of
from jacketcheck.schedule.counts import (
    Allowances,
    bolt_counts,
    counts_section,
    designation,
    order_lines,
)
from jacketcheck.schedule.installation import installation_section
from jacketcheck.schedule.instructions import instructions
from jacketcheck.schedule.length_lines import length_section
from jacketcheck.schedule.parts_lines import (
    bolt_section,
    faying_section,
    hole_section,
    washer_section,
)
from jacketcheck.schedule.records import BoltSchedule, ScheduleReport
from jacketcheck.schedule.setting_out import setting_out_section
from jacketcheck.schedule.tightening_order import tightening_order

__all__ = ["bolt_schedule", "schedules_of"]


def bolt_schedule(
    jacket: Jacket,
    *,
    variant: str,
    catalog: Catalog | None = None,
    allowances: Allowances | None = None,
) -> BoltSchedule:
    """Everything that a shop needs to order, install and inspect the bolts of a jacket.

    Parameters
    ----------
    jacket
        A jacket of one design.
    variant
        What it is called.
    catalog
        Where its bolt stands; the built-in catalogue by default.
    allowances
        What to order on top of what is installed.

    Returns
    -------
    BoltSchedule
        Parts, figures with their sources, order of tightening, steps and inspection.

    Raises
    ------
    CatalogError
        If the catalogue does not know the bolt.
    """
    catalog = built_in_catalog() if catalog is None else catalog
    allowances = Allowances() if allowances is None else allowances
    assembly = assembly_of(jacket, catalog)
    counts = bolt_counts(jacket, assembly, allowances)
    return BoltSchedule(
        variant=variant,
        designation=designation(assembly),
        orders=order_lines(assembly, counts),
        sections=(
            bolt_section(assembly),
            counts_section(counts, assembly, allowances),
            length_section(assembly, counted_threads=jacket.bolts.threads),
            washer_section(jacket, assembly),
            hole_section(jacket, assembly),
            faying_section(jacket),
            setting_out_section(jacket),
            installation_section(jacket, assembly),
        ),
        tightening=tightening_order(rows=int(jacket.bolts.rows), columns=int(jacket.bolts.columns)),
        procedure=instructions(assembly, "procedure"),
        inspection=instructions(assembly, "inspection"),
    )


def schedules_of(
    repair: InputFile,
    *,
    host: Host,
    variants: Iterable[str] | None = None,
    allowances: Allowances | None = None,
) -> ScheduleReport:
    """Schedules of the variants of a repair file; all by default.

    Raises
    ------
    InputError
        If a variant is not in the file, or its jacket cannot be built.
    """
    jackets = build_variants(repair, host=host, variants=choose_variants(repair, variants))
    return ScheduleReport(
        job=repair.base.job,
        source=repair.source,
        digest=repair.digest,
        version=version("jacketcheck"),
        schedules=tuple(
            bolt_schedule(jacket, variant=name, catalog=host.catalog, allowances=allowances)
            for name, jacket in jackets.items()
        ),
        plugins=host.plugins,
        switched_off=host.switched_off,
    )
