"""Everything a shop gets of one variant: flat patterns and quantities, with who and what."""

from __future__ import annotations

from dataclasses import dataclass
from importlib.metadata import version

from jacketcheck.api import build_variants, choose_variants
from jacketcheck.coverage import CAUTIONS
from jacketcheck.host.host import Host, PluginInfo
from jacketcheck.inputs.load import InputFile
from jacketcheck.inputs.repair_file import Job
from jacketcheck.schedule.counts import Allowances
from jacketcheck.shop.patterns import FlatPattern, flat_patterns
from jacketcheck.shop.quantities import USUAL_WASTE_PERCENT, Quantity, quantities

__all__ = ["ShopPackage", "shop_package"]


@dataclass(frozen=True, slots=True)
class ShopPackage:
    """What a shop gets.

    Attributes
    ----------
    job, variant
        Who and what.
    source, digest
        Name and SHA-256 of the repair file.
    version
        Version of jacketcheck.
    faying_classes
        Name and what must stay unpainted, for the words on the drawings.
    patterns, quantities
        What to cut, and how much of everything.
    plugins, switched_off
        Plug-ins that were asked for catalogue entries, and those that were not.
    """

    job: Job
    variant: str
    source: str
    digest: str
    version: str
    faying_classes: tuple[tuple[str, str], ...]
    patterns: tuple[FlatPattern, ...]
    quantities: tuple[Quantity, ...]
    cautions: tuple[str, ...] = CAUTIONS
    plugins: tuple[PluginInfo, ...] = ()
    switched_off: tuple[str, ...] = ()


def shop_package(
    repair: InputFile,
    *,
    host: Host,
    variant: str | None = None,
    allowances: Allowances | None = None,
    waste_percent: float = USUAL_WASTE_PERCENT,
) -> ShopPackage:
    """Patterns and quantities of one variant; by default of the file without overrides.

    Raises
    ------
    InputError
        If the variant is not in the file, or its jacket cannot be built.
    """
    name = repair.base_name if variant is None else variant
    jackets = build_variants(repair, host=host, variants=choose_variants(repair, [name]))
    jacket = jackets[name]
    patterns = flat_patterns(jacket)
    return ShopPackage(
        job=repair.base.job,
        variant=name,
        source=repair.source,
        digest=repair.digest,
        version=version("jacketcheck"),
        faying_classes=tuple((one.name, one.keep_unpainted) for one in jacket.bolts.faying_classes),
        patterns=patterns,
        quantities=quantities(
            jacket,
            patterns,
            catalog=host.catalog,
            allowances=allowances,
            waste_percent=waste_percent,
        ),
        plugins=host.plugins,
        switched_off=host.switched_off,
    )
