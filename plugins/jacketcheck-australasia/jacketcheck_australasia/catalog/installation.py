"""How AS/NZS 1252 bolts are ordered, tensioned and inspected: AS 4100, AS/NZS 5131, NZS 3404."""

from __future__ import annotations

from typing import Final

from jacketcheck.plugin import (
    AssemblyRules,
    InstallationRules,
    InstallationStep,
    LotTest,
    MethodFigure,
    TurnBand,
    WasherCase,
    WasherRule,
)

__all__ = ["ASSEMBLY_RULES"]

_STANDARD: Final = "AS/NZS 5131"
_SECTION_8: Final = "AS/NZS 5131:2016 Section 8; NZS 3404:1997 cl. 15.2.5 (from memory)"
_TURNS: Final = (
    "AS 4100:1998 Table 15.2.5.2, kept by AS/NZS 5131:2016; NZS 3404:1997 Table 15.2.5.2 (from "
    "memory)"
)
_HOLES: Final = "AS 4100:1998 cl. 14.3.5.2; NZS 3404:1997 cl. 14.3.5.2 (from memory)"
_SNUG: Final = "AS 4100:1998 cl. 15.2.5.2 (from memory)"
_GALVANIZERS: Final = (
    "AS/NZS 5131:2016, as told by the Galvanizers Association of Australia, design manual, "
    "tightening of high strength structural bolts"
)
_ROADS: Final = (
    "technical note TN62 Part 1, assembly and tensioning of high strength bolts (Queensland "
    "Department of Transport and Main Roads; publisher from memory)"
)
_INSPECTION: Final = "AS 4100:1998 cl. 15.4 and Appendix K (from memory)"

_TENSIONED: Final = ("turn-of-nut", "direct-tension-indicator")
_LARGE: Final = ("oversized", "short-slot-parallel", "short-slot-perpendicular")
_LONG: Final = ("long-slot-parallel", "long-slot-perpendicular")
_PLATE_THICKNESS: Final = 8.0
"""Least thickness of the plates over long slots [mm] (AS 4100:1998 cl. 14.3.5.2, from memory)."""

_WASHERS: Final = (
    WasherCase(
        WasherRule("turned element", "hardened washer", "the part that is turned",
                   source=_GALVANIZERS),
        methods=_TENSIONED,
    ),
    WasherCase(WasherRule("head", "hardened washer", "enlarged hole", source=_HOLES),
               holes=_LARGE),
    WasherCase(WasherRule("nut", "hardened washer", "enlarged hole", source=_HOLES), holes=_LARGE),
    *(
        WasherCase(
            WasherRule(place, "plate washer that covers the slot", "long slot", _PLATE_THICKNESS,
                       _HOLES, "plate washer"),
            holes=_LONG,
        )
        for place in ("head", "nut")
    ),
)  # fmt: skip

_PROCEDURE: Final = (
    InstallationStep(
        "Snug-tight is what a few impacts of an impact wrench give, or the full effort of one "
        "person with a podger spanner; go over all bolts again until none turns further.",
        _SNUG,
        _TENSIONED,
    ),
    InstallationStep(
        "After snugging, mark bolt end, nut and plate with one line; hold the head and turn the "
        "nut by the stated part of a turn, in the order of the map.",
        _SNUG,
        ("turn-of-nut",),
    ),
    InstallationStep(
        "Tighten until the gap at the indicator has closed to what its maker states, at every "
        "bolt; indicators of another batch are tried in a calibrator first.",
        f"{_SECTION_8}; {_ROADS}, 6.1",
        ("direct-tension-indicator",),
    ),
    InstallationStep(
        "Turn nuts so that their marks can be read after tightening.", _GALVANIZERS, _TENSIONED
    ),
)

_INSPECTED: Final = (
    InstallationStep(
        "At every bolt the marks show the stated turn, with its tolerance; a nut that fell short "
        "is turned on.",
        _INSPECTION,
        ("turn-of-nut",),
    ),
    InstallationStep(
        "Every indicator has closed as its maker states.",
        _SECTION_8,
        ("direct-tension-indicator",),
    ),
    InstallationStep(
        "A torque wrench only finds bolts that are grossly loose. If one is used, its torque comes "
        "from assemblies of the lot in a calibrator, three or more, and proves no tension.",
        _INSPECTION,
        _TENSIONED,
    ),
    InstallationStep(
        "At least one clear thread stands out of every nut.", _GALVANIZERS, _TENSIONED
    ),
)

_INSTALLATION: Final = InstallationRules(
    name=_STANDARD,
    washers=_WASHERS,
    turns=(
        TurnBand(4.0, 120.0, 0.0, 30.0),
        TurnBand(8.0, 180.0, 0.0, 30.0),
        TurnBand(12.0, 240.0, 0.0, 45.0),
    ),
    figures=(
        MethodFigure(
            "direct-tension-indicator",
            "average gap at the indicator at most",
            0.25,
            "mm",
            f"{_ROADS}, 6.1 (galvanized bolts)",
            "measured with a feeler gauge; what the indicator's maker states goes first",
        ),
    ),
    ruled_out={
        "calibrated-wrench": "the standard leaves the part-turn method and direct tension "
        "indicators; it gives no torque for tensioning",
        "twist-off": "AS/NZS 1252 bolts have no spline, and the standard has no such method",
    },
    tests=(
        LotTest(
            "for tests of each lot on site",
            0,
            "AS/NZS 5131:2016 gives no number (from memory); the tests of AS/NZS 1252.1 and 1252.2 "
            "are the supplier's",
        ),
    ),
    procedure=_PROCEDURE,
    inspection=_INSPECTED,
    source=_SECTION_8,
    sources={"turns": _TURNS},
)

ASSEMBLY_RULES: Final = AssemblyRules(
    name="AS/NZS 1252 8.8",
    standard=_STANDARD,
    nut="hexagon nut AS/NZS 1252.1 property class 8",
    washer="hardened washer AS/NZS 1252.1",
    indicator="direct tension indicator AS/NZS 1252.1",
    marks="head: 8.8 and the maker's mark; nut: 8 and the maker's mark",
    reuse="a bolt that was fully tensioned may be tensioned again once, in its own hole with the "
    "same grip; a galvanized one never",
    ordering="bolts, nuts and washers as assemblies of one lot, with the reports of AS/NZS 1252.1 "
    "and the verification tests of AS/NZS 1252.2",
    protrusion=1.0,
    clear_threads=((4.0, 5.0), (8.0, 7.0), (12.0, 10.0)),
    installation=_INSTALLATION,
    source="AS/NZS 1252.1:2016 (from memory)",
    sources={
        "protrusion": f"{_GALVANIZERS}: one clear thread",
        "clear_threads": "AS 4100:1998 cl. 15.2.2.2 (from memory): five free threads up to 4 d, "
        "seven up to 8 d, ten beyond",
        "reuse": "AS 4100:1998 cl. 15.2.5 (from memory)",
        "ordering": "AS/NZS 1252.1:2016 and 1252.2:2016 (from memory)",
        "torque_coefficient_high": "AS/NZS 5131:2016 gives none (from memory)",
    },
)
"""Parts, marks and installation of AS/NZS 1252 bolts."""
