"""What is added to the column: sleeve, seam, grout and added bars."""

from __future__ import annotations

from typing import Annotated, Literal, Self, TypeAlias

from pydantic import BeforeValidator, Field, model_validator

from jacketcheck.inputs.base import Count, InputModel
from jacketcheck.inputs.catalog_name import (
    BarName,
    BoltProductName,
    FayingClassName,
    PlateSteelName,
    RebarSteelName,
)
from jacketcheck.inputs.column import ClockPosition
from jacketcheck.inputs.concrete import ConcreteClass, GroutSpecimen
from jacketcheck.inputs.quantity import (
    AdhesiveStrength,
    Angle,
    AngleToBars,
    BarDiameterLength,
    ClearLength,
    ConcreteStrength,
    Force,
    MemberLength,
    Modulus,
    Spacing,
    Thickness,
    TorqueCoefficient,
)
from jacketcheck.mechanics._arguments import (
    BarEnd,
    ColumnFace,
    Exposure,
    HoleMaking,
    HoleType,
    Surface,
    ThreadPosition,
    Tightening,
)

__all__ = [
    "AddedBars",
    "AnchorReinforcement",
    "Bolts",
    "Footing",
    "Grout",
    "Repair",
    "Sleeve",
    "SlipTest",
    "Splice",
    "SpliceSides",
    "SurfaceSector",
]

SpliceSides: TypeAlias = Literal["outside", "both"]
"""Splice plates outside only, or inside too."""


def _as_tuple(value: object) -> object:
    """One class may be written without brackets."""
    return (value,) if isinstance(value, str) else value


class SurfaceSector(InputModel):
    """A side of the column whose surface is prepared otherwise than the rest."""

    clock_from: ClockPosition = Field(description="Where the side begins, clockwise.")
    clock_to: ClockPosition = Field(description="Where the side ends, clockwise.")
    surface: Surface = Field(description="Surface preparation on this side.")

    @model_validator(mode="after")
    def _has_an_extent(self) -> Self:
        if self.clock_from == self.clock_to:
            raise ValueError("clock_from and clock_to must differ")
        return self


class Repair(InputModel):
    """The repaired region as a whole."""

    height: MemberLength = Field(description="Footing top to the top of the repair.")
    gap: ClearLength = Field(
        description="Gap between footing and sleeve, so that the sleeve carries no axial load."
    )
    surface: Surface = Field(
        description="Whether cracked concrete is chipped away around the damaged bars."
    )
    sides: tuple[SurfaceSector, ...] = Field(
        default=(),
        max_length=24,
        description="Sides whose surface is prepared otherwise; a damage record overrides both.",
        examples=[[{"clock_from": "4:00", "clock_to": "8:00", "surface": "unchipped"}]],
    )
    column_face: ColumnFace = Field(
        default="smooth",
        description="Face of the column against the grout: roughened to an amplitude of 6 mm "
        "(1/4 in), or not.",
    )


class Sleeve(InputModel):
    """Two half-shells of steel plate."""

    inner_diameter: MemberLength = Field(description="Inside diameter.")
    thickness: Thickness = Field(description="Plate thickness.")
    steel: PlateSteelName = Field(description='Plate steel from the catalogue, e.g. "ASTM A36".')
    exposure: Exposure = Field(
        default="painted", description="Painted (or dry) plates, or unpainted weathering steel."
    )
    seam_gap: ClearLength = Field(description="Opening between the two half-shells at a seam.")
    hole: HoleType | None = Field(
        default=None, description="Bolt holes of the half-shells; default bolts.hole."
    )
    seam_angle: Angle = Field(
        default=90.0,
        description="Angle of the first seam, clockwise from 12 o'clock seen from above; the "
        "other lies opposite.",
    )


class Splice(InputModel):
    """Splice plates over each seam, as high as the sleeve."""

    sides: SpliceSides = Field(description="Plates outside only, or inside too.")
    thickness: Thickness = Field(description="Thickness of the outside plate.")
    inside_thickness: Thickness | None = Field(
        default=None, description="Thickness of the inside plate; default as outside."
    )
    steel: PlateSteelName = Field(description="Plate steel from the catalogue.")
    hole: HoleType | None = Field(
        default=None, description="Bolt holes of the splice plates; default bolts.hole."
    )
    fillers: Count = Field(
        default=0,
        ge=0,
        le=6,
        description="Most filler plates between the sleeve and one splice plate.",
    )
    filler_thickness: Thickness | None = Field(
        default=None,
        description="Thickness of all fillers that a bolt passes through; with fillers only.",
    )


class SlipTest(InputModel):
    """A slip coefficient from tests of the surface itself, by the test method of one code."""

    code: str = Field(
        min_length=1,
        description="Code whose test method was followed, as faying classes are written with it.",
        examples=["RCSC"],
    )
    slip_coefficient: float = Field(
        ge=0.05, le=0.8, description="Slip coefficient that the code takes from the tests."
    )
    surface: str = Field(min_length=1, description="Preparation and coating, as tested.")
    report: str = Field(min_length=1, description="Test report: laboratory, number and date.")


class Bolts(InputModel):
    """The bolt group on one side of one seam; the other three are alike."""

    product: BoltProductName = Field(description='Standard and grade, e.g. "ASTM F3125 A325".')
    diameter: str = Field(description='Nominal size, e.g. "7/8 in" or "M24".')
    rows: Count | None = Field(
        default=None,
        ge=2,
        le=500,
        description="Bolts above one another, along the seam; default as many as fit between the "
        "end distances.",
    )
    columns: Count = Field(ge=1, le=6, description="Bolt lines beside one another, on each side.")
    pitch: Spacing = Field(description="Spacing of the rows.")
    gauge: Spacing | None = Field(
        default=None, description="Spacing of the columns; needed with two columns or more."
    )
    seam_edge_distance: Spacing = Field(
        description="First bolt line to the sleeve's edge at the seam."
    )
    plate_edge_distance: Spacing = Field(
        description="Last bolt line to the splice plate's vertical edge."
    )
    end_distance: Spacing | None = Field(
        default=None,
        description="First and last row to the sleeve's and the plates' ends; default what the "
        "rows leave, half at each end. Without rows: the least that must be left.",
    )
    hole: HoleType = Field(
        description="Hole type; slots relative to the hoop force. Holds for all plies whose own "
        "field (sleeve.hole, splice.hole) says nothing else: long slots may be in one ply only."
    )
    hole_making: HoleMaking = Field(
        default="punched",
        description="Drilled (or subdrilled and reamed) holes, or punched full size.",
    )
    threads: ThreadPosition = Field(
        description="Threads included in or excluded from the shear planes."
    )
    faying_class: Annotated[tuple[FayingClassName, ...], BeforeValidator(_as_tuple)] = Field(
        default=(),
        description='Class with its code, e.g. "AISC B"; one for each code that is asked for and '
        "has no slip test.",
        examples=["AISC B"],
    )
    slip_tests: tuple[SlipTest, ...] = Field(
        default=(),
        description="Tested slip coefficients, each in the place of a class of its code.",
        examples=[
            [
                {
                    "code": "RCSC",
                    "slip_coefficient": 0.42,
                    "surface": "blast-cleaned, zinc-rich primer of 60 µm",
                    "report": "laboratory, number, date",
                }
            ]
        ],
    )
    tightening: Tightening = Field(description="How the bolts are installed.")
    socket_diameter: Spacing | None = Field(
        default=None,
        description="Outside diameter of the socket or tool at the nut, from the tool's maker; "
        "needed where no table has the bolt (metric and twist-off assemblies).",
    )
    tightening_clearance: Spacing | None = Field(
        default=None,
        description="Bolt axis to the nearest obstruction that the tool needs; default by the "
        "table, or half of the socket's diameter and 3 mm (1/8 in).",
    )
    torque_coefficient: TorqueCoefficient | None = Field(
        default=None, description="K of T = K d P from a calibrated test."
    )
    measured_tension: Force | None = Field(
        default=None,
        description="Measured tension in snug bolts, for a probable value only.",
        examples=["50 kN"],
    )


class Grout(InputModel):
    """Grout in the annulus between column and sleeve."""

    strength: ConcreteStrength = Field(
        description="Compressive strength at loading, of the specimen that is named."
    )
    specimen: GroutSpecimen = Field(
        default="cylinder",
        description="Specimen of the strength: cylinder of height twice the diameter, cube with "
        "its side in mm (cube-50 also for 2 in cubes of ASTM C109), or half of a 40 × 40 × 160 mm "
        "prism of EN 196-1.",
    )
    elastic_modulus: Modulus | None = Field(
        default=None, description="Default 4700 √f MPa (ACI 318-19 19.2.2.1)."
    )


class AnchorReinforcement(InputModel):
    """Bars of the footing that cross the breakout surface of the added bars: evidence."""

    size: BarName = Field(description="Bar size from the catalogue.")
    count: Count = Field(
        ge=1, le=1000, description="Bars, or legs, that cross the breakout surface in all."
    )
    steel: RebarSteelName = Field(description="Steel from the catalogue.")
    angle: AngleToBars = Field(
        default=0.0, description="Angle between these bars and the added bars."
    )
    distance: ClearLength = Field(description="From the added bars to the farthest that counts.")
    length_above: MemberLength = Field(
        description="From the breakout surface to the bars' end towards the column."
    )
    length_below: MemberLength = Field(
        description="From the breakout surface to the bars' end towards the footing's base."
    )
    end_above: BarEnd = Field(description="How the end towards the column is made.")
    end_below: BarEnd = Field(description="How the end towards the base is made.")


class AddedBars(InputModel):
    """Bars grouted into holes drilled in the footing, standing in the annulus."""

    size: BarName = Field(description="Bar size from the catalogue.")
    count: Count = Field(ge=1, le=200, description="Number of bars, evenly spaced.")
    steel: RebarSteelName = Field(description="Steel from the catalogue.")
    circle_diameter: MemberLength = Field(description="Diameter of the circle of bar centres.")
    first_angle: Angle = Field(default=0.0, description="Angle of the first bar, clockwise.")
    height: MemberLength = Field(description="Length of the bars above the footing.")
    embedment: MemberLength = Field(description="Length of the bars in the footing.")
    hole_diameter: BarDiameterLength = Field(description="Diameter of the drilled holes.")
    bond_strength: AdhesiveStrength | None = Field(
        default=None,
        description="Characteristic bond strength of a qualified adhesive in cracked concrete; "
        "leave out where the holes are filled with the grout.",
    )
    breakout_precluded: bool = Field(
        default=False,
        strict=True,
        description="That no cone of concrete can break out of the footing is shown elsewhere, by "
        "struts and ties: an open point of every result.",
    )
    anchor_reinforcement: AnchorReinforcement | None = Field(
        default=None,
        description="Bars of the footing that take the tension in breakout's place; they are "
        "checked.",
    )


class Footing(InputModel):
    """What the added bars are anchored in."""

    concrete_strength: ConcreteClass = Field(
        description="Specified compressive strength, of cylinders unless said otherwise: cubes, "
        "or a grade."
    )
    depth: MemberLength | None = Field(default=None, description="Depth of the footing.")
