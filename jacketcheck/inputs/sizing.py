"""Bounds of a search for the lightest and quickest jacket that works."""

from __future__ import annotations

from typing import Annotated, TypeAlias

from pydantic import BeforeValidator, Field

from jacketcheck.inputs.base import InputModel
from jacketcheck.inputs.catalog_name import (
    BarName,
    BoltProductName,
    PlateSteelName,
    RebarSteelName,
)
from jacketcheck.inputs.jacket import SpliceSides
from jacketcheck.inputs.quantity import ClearLength, MemberLength
from jacketcheck.inputs.tried import TriedCount, TriedHeight, TriedSpacing, TriedThickness
from jacketcheck.mechanics._arguments import Surface

__all__ = [
    "FieldWork",
    "Sizing",
    "TriedAddedBars",
    "TriedBolts",
    "TriedRepair",
    "TriedSleeve",
    "TriedSplice",
]


def _as_tuple(value: object) -> object:
    """One entry may be written without brackets."""
    return (value,) if isinstance(value, str) else value


_Several = BeforeValidator(_as_tuple, json_schema_input_type=str | tuple[str, ...])
_LONGEST = 60

Hours: TypeAlias = Annotated[float, Field(ge=0.0, le=1000.0, allow_inf_nan=False, strict=True)]


class TriedSleeve(InputModel):
    """Sleeves that a search may try; what is left out stays as the file has it."""

    thickness: TriedThickness | None = Field(
        default=None,
        description="Thicknesses: a list, or bounds; without a step the stock plates between them.",
        examples=[{"least": "8 mm", "most": "20 mm"}],
    )
    steel: Annotated[tuple[PlateSteelName, ...], _Several] = Field(
        default=(),
        max_length=_LONGEST,
        description="Plate steels, the preferred one first.",
        examples=[["ASTM A36", "ASTM A572 Grade 50"]],
    )


class TriedSplice(InputModel):
    """Splice plates that a search may try; plates inside are as thick as outside."""

    sides: Annotated[tuple[SpliceSides, ...], _Several] = Field(
        default=(),
        max_length=2,
        description="Plates outside only, or inside too.",
        examples=[["outside", "both"]],
    )
    thickness: TriedThickness | None = Field(
        default=None,
        description="Thicknesses: a list, or bounds; without a step the stock plates between them.",
        examples=[["10 mm", "12 mm", "16 mm"]],
    )
    steel: Annotated[tuple[PlateSteelName, ...], _Several] = Field(
        default=(),
        max_length=_LONGEST,
        description="Plate steels, the preferred one first.",
        examples=[["ASTM A572 Grade 50"]],
    )


class TriedBolts(InputModel):
    """Bolt groups that a search may try; the rows follow from height and pitch."""

    product: Annotated[tuple[BoltProductName, ...], _Several] = Field(
        default=(),
        max_length=_LONGEST,
        description="Standards and grades, the preferred one first.",
        examples=[["ASTM F3125 A325", "ASTM F3125 A490"]],
    )
    diameter: Annotated[tuple[str, ...], _Several] = Field(
        default=(),
        max_length=_LONGEST,
        description="Nominal sizes; one that a product is not made in is passed over.",
        examples=[["3/4 in", "7/8 in", "1 in"]],
    )
    columns: TriedCount | None = Field(
        default=None,
        description="Bolt lines on each side of a seam.",
        examples=[[1, 2, 3]],
    )
    pitch: TriedSpacing | None = Field(
        default=None,
        description="Spacing of the rows: a list, bounds with a step, or multiples of the bolt "
        "diameter, rounded up.",
        examples=[{"least": "75 mm", "most": "150 mm", "step": "25 mm"}],
    )
    gauge: TriedSpacing | None = Field(
        default=None,
        description="Spacing of the columns, in the same ways.",
        examples=[{"diameters": [3.0]}],
    )
    seam_edge_distance: TriedSpacing | None = Field(
        default=None,
        description="First bolt line to the sleeve's edge at the seam, in the same ways.",
        examples=[{"diameters": [2.0, 2.5]}],
    )
    plate_edge_distance: TriedSpacing | None = Field(
        default=None,
        description="Last bolt line to the splice plate's edge, in the same ways.",
        examples=[{"diameters": [2.0]}],
    )
    end_distance: TriedSpacing | None = Field(
        default=None,
        description="Least distance of first and last row to the sleeve's ends where the rows are "
        "not written: as bolts.end_distance has it, else 1.5 bolt diameters.",
        examples=[{"diameters": [1.5]}],
    )


class TriedRepair(InputModel):
    """Repaired regions that a search may try."""

    height: TriedHeight | None = Field(
        default=None,
        description="Footing top to the top of the repair: a list, or bounds with a step.",
        examples=[{"least": "1.2 m", "most": "1.6 m", "step": "0.1 m"}],
    )
    surface: Annotated[tuple[Surface, ...], _Several] = Field(
        default=(),
        max_length=2,
        description="Whether cracked concrete is chipped away around the damaged bars, wherever "
        "sides or damage records say nothing else.",
        examples=[["unchipped", "chipped"]],
    )


class TriedAddedBars(InputModel):
    """Added bars that a search may try; holes are larger than bars by the same clearance."""

    left_out: bool = Field(
        default=False,
        strict=True,
        description="Whether the repair without added bars is tried as well.",
        examples=[True],
    )
    size: Annotated[tuple[BarName, ...], _Several] = Field(
        default=(),
        max_length=_LONGEST,
        description="Bar sizes from the catalogue.",
        examples=[["No. 8", "No. 9"]],
    )
    count: TriedCount | None = Field(
        default=None,
        description="Number of bars: a list, or bounds with a step.",
        examples=[{"least": 8, "most": 24, "step": 4}],
    )
    embedment: TriedHeight | None = Field(
        default=None,
        description="Length of the bars in the footing: a list, or bounds with a step.",
        examples=[{"least": "0.9 m", "most": "1.5 m", "step": "0.1 m"}],
    )
    height: TriedHeight | None = Field(
        default=None,
        description="Length above the footing; by default as far below the top of the repair as "
        "the file has it, else 75 mm.",
        examples=[["1.2 m", "1.3 m"]],
    )
    steel: RebarSteelName | None = Field(
        default=None,
        description="Steel; default as in added_bars.",
        examples=["ASTM A706 Grade 60"],
    )
    circle_diameter: MemberLength | None = Field(
        default=None,
        description="Circle of the bar centres; default as in added_bars, else midway between "
        "column and sleeve.",
        examples=["1400 mm"],
    )
    hole_clearance: ClearLength | None = Field(
        default=None,
        description="Diameter of hole less that of bar; default as in added_bars.",
        examples=["20 mm"],
    )
    breakout_precluded: bool | None = Field(
        default=None,
        strict=True,
        description="Engineering judgement; default as in added_bars.",
        examples=[True],
    )


class FieldWork(InputModel):
    """Hours by which designs are compared: engineering judgement, put your own in their place."""

    hours_per_bolt: Hours = Field(
        default=0.15, description="Place, tighten and inspect one bolt.", examples=[0.2]
    )
    hours_per_hole: Hours = Field(
        default=0.5,
        description="Set up for one hole in the footing, clean it, set and grout its bar.",
        examples=[0.5],
    )
    hours_per_metre_drilled: Hours = Field(
        default=1.0, description="Drill one metre of hole.", examples=[1.2]
    )
    hours_per_metre_chipped: Hours = Field(
        default=2.0,
        description="Free and clean one damaged bar over one metre of its length.",
        examples=[2.5],
    )


class Sizing(InputModel):
    """What the command size may try; whatever is not named stays as the file has it."""

    sleeve: TriedSleeve = Field(default_factory=TriedSleeve)
    splice: TriedSplice = Field(default_factory=TriedSplice)
    bolts: TriedBolts = Field(default_factory=TriedBolts)
    repair: TriedRepair = Field(default_factory=TriedRepair)
    added_bars: TriedAddedBars | None = None
    field_work: FieldWork = Field(default_factory=FieldWork)
