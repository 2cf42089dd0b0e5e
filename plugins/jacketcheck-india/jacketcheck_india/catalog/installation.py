"""How IS 3757 bolts are ordered, tightened and inspected: IS 4000."""

from __future__ import annotations

from typing import Final

from jacketcheck.plugin import (
    AssemblyRules,
    InstallationRules,
    InstallationStep,
    LotTest,
    TurnBand,
    WasherCase,
    WasherRule,
)

__all__ = ["assembly_rules"]

_STANDARD: Final = "IS 4000"
_IS_4000: Final = "IS 4000:1992 (from memory)"
_METHODS: Final = "IS 4000:1992, foreword: torque control gave way to direct tension indication"
_TURNS: Final = (
    "IS 4000:1992, part-turn method (from memory; its foreword says that it draws on the "
    "Australian bolting code, whose turns these are)"
)
_TENSIONED: Final = ("turn-of-nut", "direct-tension-indicator")
_LARGE: Final = ("oversized", "short-slot-parallel", "short-slot-perpendicular")
_LONG: Final = ("long-slot-parallel", "long-slot-perpendicular")
_PLATE_THICKNESS: Final = 8.0
"""Least thickness of the plates over long slots [mm] (IS 4000:1992, from memory)."""


def _washers(property_class: str) -> tuple[WasherCase, ...]:
    """Under the part that is turned; for class 10.9 under the other one too."""
    hard = "hardened washer"
    turned = WasherRule("turned element", hard, "the part that is turned", source=_IS_4000)
    held = WasherRule("head", hard, "class 10.9: under head and nut", source=_IS_4000)
    return (
        WasherCase(turned, methods=_TENSIONED),
        *([WasherCase(held, methods=_TENSIONED)] if property_class == "10.9" else []),
        *(
            WasherCase(WasherRule(place, hard, "enlarged hole", source=_IS_4000), holes=_LARGE)
            for place in ("head", "nut")
        ),
        *(
            WasherCase(
                WasherRule(place, "plate washer that covers the slot", "long slot",
                           _PLATE_THICKNESS, _IS_4000, "plate washer"),
                holes=_LONG,
            )
            for place in ("head", "nut")
        ),
    )  # fmt: skip


_PROCEDURE: Final = (
    InstallationStep(
        "Snug-tight is what a few impacts of an impact wrench give, or the full effort of one "
        "person with an ordinary spanner.",
        _IS_4000,
        _TENSIONED,
    ),
    InstallationStep(
        "After snugging, mark bolt end, nut and plate with one line; hold the head and turn the "
        "nut by the stated part of a turn, in the order of the map.",
        _IS_4000,
        ("turn-of-nut",),
    ),
    InstallationStep(
        "Tighten until the gap at the indicator has closed to what its maker states, at every "
        "bolt.",
        _METHODS,
        ("direct-tension-indicator",),
    ),
)

_INSPECTED: Final = (
    InstallationStep(
        "At every bolt the marks show the stated turn, with its tolerance; a nut that fell short "
        "is turned on.",
        _IS_4000,
        ("turn-of-nut",),
    ),
    InstallationStep(
        "Every indicator has closed as its maker states.", _IS_4000, ("direct-tension-indicator",)
    ),
    InstallationStep("At least one clear thread stands out of every nut.", _IS_4000, _TENSIONED),
)


def _installation(property_class: str) -> InstallationRules:
    return InstallationRules(
        name=_STANDARD,
        washers=_washers(property_class),
        turns=(
            TurnBand(4.0, 120.0, 0.0, 30.0),
            TurnBand(8.0, 180.0, 0.0, 30.0),
            TurnBand(12.0, 240.0, 0.0, 45.0),
        ),
        ruled_out={
            "calibrated-wrench": "IS 4000:1992 put direct tension indication in the place of "
            "torque control: it gives no torque and no coefficient",
            "twist-off": "IS 3757 bolts have no spline, and IS 4000 has no such method",
        },
        tests=(
            LotTest(
                "for tests of each lot on site", 0, "IS 4000:1992 gives no number (from memory)"
            ),
        ),
        procedure=_PROCEDURE,
        inspection=_INSPECTED,
        source=_METHODS,
        sources={"turns": _TURNS},
    )


def assembly_rules(name: str, property_class: str) -> AssemblyRules:
    """Parts, marks and installation of a product."""
    nut_class = property_class.partition(".")[0]
    return AssemblyRules(
        name=name,
        standard=_STANDARD,
        nut=f"high strength structural nut IS 6623 class {nut_class}",
        washer="hardened washer IS 6649",
        indicator="direct tension indicator to suit IS 3757 bolts (no Indian standard known)",
        marks=f"head: {property_class}S and the maker's mark; nut: {nut_class}S and the maker's "
        "mark",
        reuse="a bolt that was fully tightened is not used again"
        if property_class == "10.9"
        else "a bolt that was fully tightened may be tightened again once, in its own hole; a "
        "galvanized one never",
        ordering="bolts, nuts and washers as assemblies of one lot",
        protrusion=1.0,
        clear_threads=((12.0, 1.0),),
        installation=_installation(property_class),
        source="IS 3757:1985, IS 6623:2004, IS 6649:1985 (from memory)",
        sources={
            "protrusion": f"{_IS_4000}: one clear thread",
            "clear_threads": f"{_IS_4000}: one thread beside the run-out",
            "reuse": _IS_4000,
            "ordering": "common practice, no published source",
            "torque_coefficient_high": "IS 4000:1992 gives none; torque control was taken out",
        },
    )
