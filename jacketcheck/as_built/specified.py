"""What was specified: the repair file's variant, its jacket and its bolt assembly."""

from __future__ import annotations

from dataclasses import dataclass

from jacketcheck.catalog.assembly_rules import EN_1090
from jacketcheck.catalog.catalog import Catalog
from jacketcheck.catalog.installation_rules import InstallationRules
from jacketcheck.inputs.repair_file import RepairInput
from jacketcheck.jacket.build import build_jacket
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics.bolt_installation import verification_tension
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

    @property
    def european(self) -> bool:
        """Whether the bolts are tightened and inspected by EN 1090-2."""
        rules = self.assembly.rules
        return rules is not None and rules.standard == EN_1090

    @property
    def installation(self) -> InstallationRules | None:
        """Rules of tightening that a plug-in brings with its bolts; None for the built-in ones."""
        return None if self.assembly.rules is None else self.assembly.rules.installation

    @property
    def verification_tension(self) -> float:
        """Tension that assemblies must reach before any is installed [N].

        RCSC asks for 5 percent more than the minimum pretension, other standards for that alone;
        zero where no pretension is known.
        """
        least = float(self.jacket.bolts.specified_pretension)
        if least <= 0.0 or self.european or self.installation is not None:
            return least
        return float(verification_tension(least))


def specified_by(repair: RepairInput, catalog: Catalog) -> Specified:
    """Build what a variant specifies; raises InputError where it cannot be built."""
    jacket = build_jacket(repair, catalog=catalog)
    return Specified(repair, jacket, assembly_of(jacket, catalog), catalog)
