"""The damaged column: geometry, concrete, bars and hoops, and what the inspector recorded."""

from __future__ import annotations

import re
from typing import Annotated, Literal

from pydantic import AfterValidator, Field

from jacketcheck.inputs.base import Count, InputModel
from jacketcheck.inputs.catalog_name import BarName, RebarSteelName
from jacketcheck.inputs.concrete import ConcreteClass
from jacketcheck.inputs.quantity import (
    Angle,
    ClearLength,
    ColumnHeight,
    Cover,
    CrackWidth,
    HeightAboveFooting,
    MemberLength,
    Spacing,
    SteelStrength,
)
from jacketcheck.mechanics._arguments import Surface

__all__ = ["BarState", "ClockPosition", "Column", "ColumnBars", "Damage", "Hoops"]

BarState = Literal["intact", "yielded", "buckled", "fractured"]

_CLOCK = re.compile(r"(1[0-2]|[1-9])(?::[0-5][0-9])?")


def _clock(text: str) -> str:
    if _CLOCK.fullmatch(text) is None:
        raise ValueError('must be a clock position from 1:00 to 12:59, e.g. "4:30"')
    return text


ClockPosition = Annotated[str, AfterValidator(_clock)]


class ColumnBars(InputModel):
    """Longitudinal bars, evenly spaced on a circle inside the hoops."""

    size: BarName = Field(description='Bar size from the catalogue, e.g. "No. 11" or "EN 32".')
    count: Count = Field(ge=6, le=200, description="Number of bars.")
    steel: RebarSteelName = Field(
        description='Steel from the catalogue, e.g. "ASTM A706 Grade 60".'
    )
    first_angle: Angle = Field(
        default=0.0, description="Angle of bar 1, clockwise from 12 o'clock seen from above."
    )
    measured_yield: SteelStrength | None = Field(
        default=None, description="Yield strength from tests, instead of the catalogue's expected."
    )
    measured_tensile: SteelStrength | None = Field(
        default=None, description="Tensile strength from tests, instead of the expected."
    )


class Hoops(InputModel):
    """Transverse reinforcement of the original column."""

    kind: Literal["hoops", "spiral"] = Field(description="Closed hoops or a continuous spiral.")
    size: BarName = Field(description="Bar size from the catalogue.")
    spacing: Spacing = Field(description="Centre-to-centre spacing, or pitch of the spiral.")
    steel: RebarSteelName = Field(description="Steel from the catalogue.")


class Column(InputModel):
    """A circular reinforced-concrete column on a footing."""

    diameter: MemberLength = Field(description="Outside diameter.")
    height: ColumnHeight = Field(
        description="Footing top to the point of contraflexure (single curvature) "
        "or to the soffit (double curvature)."
    )
    curvature: Literal["single", "double"] = Field(
        default="single", description="Cantilever, or fixed at both ends."
    )
    cover: Cover = Field(description="Clear cover to the hoops.")
    concrete_strength: ConcreteClass = Field(
        description="Specified compressive strength f'c, of cylinders unless said otherwise: "
        "cubes, or a grade."
    )
    concrete_expected: ConcreteClass | None = Field(
        default=None, description="Expected strength; default max(1.3 f'c, 5 ksi)."
    )
    bars: ColumnBars
    hoops: Hoops


class Damage(InputModel):
    """What the inspector recorded for one bar or a group of bars."""

    bars: tuple[Annotated[Count, Field(ge=1, le=200)], ...] = Field(
        default=(),
        max_length=200,
        description="Bar numbers, bar 1 at the first angle, counted clockwise.",
    )
    clock: tuple[ClockPosition, ...] = Field(
        default=(),
        max_length=200,
        description="Bar positions as on a clock seen from above.",
        examples=[["4:30", "5:15"]],
    )
    state: BarState = Field(description="The worst that happened to the bar.")
    height: HeightAboveFooting = Field(
        description="Height of the fracture, buckle or greatest yielding above the footing."
    )
    crack_width: CrackWidth = Field(
        default=0.0, description="Width of the crack that runs along the bar."
    )
    spalling_depth: ClearLength = Field(default=0.0, description="Depth of spalled cover.")
    surface: Surface | None = Field(
        default=None,
        description="Whether the cracked concrete around the bar is removed before grouting; "
        "default as in the repair table.",
    )
