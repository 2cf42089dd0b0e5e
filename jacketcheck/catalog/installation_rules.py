"""How the bolts of a standard are tightened and inspected: records for standards of a plug-in.

RCSC and EN 1090-2 are built in, see `jacketcheck.schedule`. A plug-in whose bolts follow another
standard brings these records with its `AssemblyRules`; what they leave out shows in the bolt
schedule as not known.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import NamedTuple

from jacketcheck.catalog.bands import bands_are_ordered
from jacketcheck.catalog.entries import Sourced, require_figures
from jacketcheck.errors import CatalogError
from jacketcheck.mechanics._arguments import HoleType, Tightening
from jacketcheck.mechanics.washer_rules import WasherRule

__all__ = [
    "InstallationRules",
    "InstallationStep",
    "LotTest",
    "MethodFigure",
    "TurnBand",
    "WasherCase",
]


class TurnBand(NamedTuple):
    """Turn of the nut beyond snug-tight for bolts up to a length.

    Attributes
    ----------
    longest
        Longest bolt, from under its head to its end, in diameters.
    rotation
        Turn of the nut against the bolt [°].
    under, over
        What the turn may fall short of that, and exceed it [°].
    """

    longest: float
    rotation: float
    under: float
    over: float


class MethodFigure(NamedTuple):
    """A figure or word that a method of tightening needs.

    Attributes
    ----------
    method
        Method it belongs to.
    item, value, unit
        What it is; a number in the unit, or a word.
    source
        Where it stands.
    note
        What a reader must know; may be empty.
    """

    method: Tightening
    item: str
    value: float | str
    unit: str
    source: str
    note: str = ""


class WasherCase(NamedTuple):
    """A washer that the standard asks for, and when.

    Attributes
    ----------
    rule
        Place, kind, reason and source.
    methods
        Methods of tightening for which it is asked for; empty for all.
    holes
        Hole types in the outer ply there for which it is asked for; empty for all.
    """

    rule: WasherRule
    methods: tuple[Tightening, ...] = ()
    holes: tuple[HoleType, ...] = ()

    def applies(self, *, tightening: Tightening, hole: HoleType) -> bool:
        """Whether the washer is needed."""
        return (not self.methods or tightening in self.methods) and (
            not self.holes or hole in self.holes
        )


class LotTest(NamedTuple):
    """Assemblies of each lot that a test uses up: what for, how many, and who asks for it.

    None at all is written as zero, so that the schedule can say who asks for none.
    """

    purpose: str
    pieces: int
    source: str


class InstallationStep(NamedTuple):
    """A thing to do or to look at; `methods` names those it belongs to, none stands for all."""

    text: str
    source: str
    methods: tuple[Tightening, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class InstallationRules(Sourced):
    """Rules of one standard for washers, tightening, tests and inspection.

    Attributes
    ----------
    name
        Standard, as `AssemblyRules.standard` names it.
    washers
        Washers that are asked for; an empty tuple where none ever is.
    turns
        Turn of the nut by bolt length, ascending; empty where it is not known.
    figures
        What else methods of tightening need.
    ruled_out
        Methods that the standard does not allow, each with what it says instead.
    tests
        Assemblies used up by tests.
    procedure, inspection
        Steps between snugging and grouting, and what an inspector looks at besides.
    """

    name: str
    washers: tuple[WasherCase, ...]
    turns: tuple[TurnBand, ...] = ()
    figures: tuple[MethodFigure, ...] = ()
    ruled_out: Mapping[Tightening, str] = field(default_factory=dict, hash=False)
    tests: tuple[LotTest, ...] = ()
    procedure: tuple[InstallationStep, ...] = ()
    inspection: tuple[InstallationStep, ...] = ()

    def __post_init__(self) -> None:
        """Check figures, order and sources."""
        kind = "installation rules"
        require_figures(kind, self.name, self.source, {})
        if self.turns and not bands_are_ordered(tuple(band.longest for band in self.turns)):
            raise CatalogError(kind, self.name, "have turns that do not ascend")
        for band in self.turns:
            figures = {"longest bolt": band.longest, "turn": band.rotation}
            require_figures(kind, self.name, self.source, figures)
            if not (band.under >= 0.0 and band.over >= 0.0):
                raise CatalogError(kind, self.name, "have a tolerance on a turn below zero")
        for test in self.tests:
            if test.pieces < 0:
                raise CatalogError(kind, self.name, f"count {test.pieces} {test.purpose}")
        sources = [
            *(figure.source for figure in self.figures),
            *(step.source for step in (*self.procedure, *self.inspection)),
            *(test.source for test in self.tests),
            *(case.rule.source for case in self.washers),
        ]
        if not all(source.strip() for source in sources):
            raise CatalogError(kind, self.name, "have a figure, test or step without a source")

    def turn(self, slenderness: float) -> TurnBand | None:
        """Turn for a bolt of some length over diameter; None beyond the longest tabulated."""
        # a length that went through a conversion still belongs to the band it ends
        fitting = (band for band in self.turns if slenderness <= band.longest * (1.0 + 1e-9))
        return next(fitting, None)
