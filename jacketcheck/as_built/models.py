"""What was delivered and measured, as the user writes it: one table for each part of the work."""

from __future__ import annotations

from typing import Annotated, Literal, TypeAlias, TypeVar

from pydantic import BeforeValidator, Field

from jacketcheck.inputs.base import Count, InputModel, Text
from jacketcheck.inputs.catalog_name import BoltProductName, FayingClassName, PlateSteelName
from jacketcheck.inputs.quantity import (
    ClearLength,
    ConcreteStrength,
    Force,
    MemberLength,
    Quantity,
    SteelStrength,
    Thickness,
)
from jacketcheck.mechanics._arguments import Tightening

__all__ = [
    "AsBuilt",
    "BoltDelivery",
    "CalibrationReading",
    "FayingRecord",
    "GroutRecord",
    "HoleRecord",
    "Part",
    "Record",
    "SleeveRecord",
    "SpliceRecord",
    "TighteningRecord",
]

Part: TypeAlias = Literal["bolts", "holes", "faying", "tightening", "sleeve", "splice", "grout"]
"""The parts of the work; each has a table of its own."""

BoltLength: TypeAlias = Annotated[
    float, Quantity("mm", "a bolt length", 15.0, 500.0, ("2-3/4 in", "80 mm"))
]
HoleSize: TypeAlias = Annotated[
    float, Quantity("mm", "a hole dimension", 5.0, 200.0, ("1-1/16 in", "26 mm"))
]
CoatThickness: TypeAlias = Annotated[
    float, Quantity("mm", "a coating thickness", 0.0, 2.0, ("3.5 mil", "0.08 mm"))
]
Torque: TypeAlias = Annotated[
    float, Quantity("N mm", "a torque", 1.0e3, 2.0e7, ("650 lb-ft", "900 N*m"))
]
Rotation: TypeAlias = Annotated[
    float, Quantity("deg", "a rotation", 0.0, 720.0, ("120 deg", "2.1 rad"))
]
CubeSide: TypeAlias = Annotated[
    float, Quantity("mm", "the side of a cube", 40.0, 200.0, ("2 in", "100 mm"))
]


GapCount: TypeAlias = Annotated[Count, Field(ge=0, le=20)]
YesOrNo: TypeAlias = Annotated[bool, Field(strict=True)]
"""true or false; "no" is neither."""


def _as_tuple(value: object) -> object:
    """One reading may be written without brackets."""
    return (value,) if isinstance(value, str | int | float) else value


Reading = TypeVar("Reading")
Readings: TypeAlias = Annotated[
    tuple[Reading, ...], BeforeValidator(_as_tuple), Field(min_length=1, max_length=500)
]
"""One reading or several."""


class Record(InputModel):
    """Who recorded what, and when."""

    title: Text = Field(default="", description="What was inspected.")
    inspector: Text = Field(default="", description="Who measured.")
    date: Text = Field(default="", description="When, as text in quotes.")
    variant: Text | None = Field(
        default=None, description="Variant of the repair file that was built; default the file."
    )
    not_yet: tuple[Part, ...] = Field(
        default=(),
        max_length=7,
        description="Parts that are not delivered or built yet: left open, without a verdict.",
    )


class BoltDelivery(InputModel):
    """Bolts as delivered, with their certificates."""

    product: BoltProductName = Field(description="Standard and grade on certificate and marks.")
    diameter: Text = Field(description='Nominal size, e.g. "7/8 in" or "M24".')
    length: BoltLength = Field(description="Nominal length.")
    count: Count = Field(ge=1, le=100_000, description="Assemblies delivered.")
    tensile_strength: Readings[SteelStrength] | None = Field(
        default=None, description="Tensile strengths on the certificates, one for each lot."
    )
    marks: Literal["as specified", "missing", "other"] | None = Field(
        default=None, description="Marks on heads and nuts."
    )
    washers_under_head: Count | None = Field(default=None, ge=0, le=8)
    washers_under_nut: Count | None = Field(default=None, ge=0, le=8)
    ends_flush: YesOrNo | None = Field(
        default=None, description="Whether every bolt end is at least flush with its nut."
    )
    rotational_capacity: Literal["passed", "failed"] | None = Field(
        default=None, description="Rotational-capacity test of the lots."
    )


class HoleRecord(InputModel):
    """Holes as measured, the largest that were found."""

    along: Readings[HoleSize] = Field(
        description="Dimension along the hoop force, in all plies if nothing is said of the plates."
    )
    across: Readings[HoleSize] | None = Field(
        default=None, description="Dimension along the seam; default as along."
    )
    splice_along: Readings[HoleSize] | None = Field(
        default=None,
        description="In the splice plates, along the hoop force; needed where they have other "
        "holes than the half-shells.",
    )
    splice_across: Readings[HoleSize] | None = Field(
        default=None, description="In the splice plates, along the seam; default as along there."
    )


class FayingRecord(InputModel):
    """Faying surfaces as prepared."""

    faying_class: Readings[FayingClassName] = Field(description='Class with its code: "AISC B".')
    paint_in_pattern: YesOrNo = Field(
        description="Whether paint or overspray was found where nothing may be painted."
    )
    coating_thickness: Readings[CoatThickness] | None = Field(
        default=None, description="Measured thickness of a coat on the faying surfaces."
    )
    tested_thickness: CoatThickness | None = Field(
        default=None, description="Thickness up to which the coat was tested for its class."
    )
    plies_in_contact: YesOrNo | None = Field(
        default=None, description="Whether all plies are in firm contact at every bolt, when snug."
    )


class CalibrationReading(InputModel):
    """One assembly in the tension calibrator."""

    torque: Torque = Field(description="Torque applied.")
    tension: Force = Field(description="Tension read.")


class TighteningRecord(InputModel):
    """How the bolts were tightened, and what was measured."""

    method: Tightening = Field(description="How they were tightened.")
    verification_tension: Readings[Force] | None = Field(
        default=None, description="Tensions reached in pre-installation verification."
    )
    calibration: tuple[CalibrationReading, ...] = Field(default=(), max_length=500)
    torque: Readings[Torque] | None = Field(
        default=None, description="Torques applied to the installed bolts."
    )
    rotation: Readings[Rotation] | None = Field(
        default=None, description="Rotations of the nuts beyond snug-tight, from the marks."
    )
    tension: Readings[Force] | None = Field(
        default=None, description="Tensions measured in installed bolts."
    )
    indicator_gaps: Count | None = Field(
        default=None, ge=1, le=20, description="Gaps between the bumps of one indicator."
    )
    open_gaps: Readings[GapCount] | None = Field(
        default=None,
        description="Gaps that the feeler gauge still entered in verification, at 1.05 times the "
        "pretension, one number for each assembly.",
    )
    indicators_closed: YesOrNo | None = Field(
        default=None, description="Whether the feeler gauge is refused as required everywhere."
    )
    splines_sheared: YesOrNo | None = Field(
        default=None, description="Whether every splined end is sheared off."
    )


class SleeveRecord(InputModel):
    """Half-shells as delivered and set up."""

    thickness: Readings[Thickness] = Field(description="Measured thicknesses.")
    steel: PlateSteelName | None = Field(default=None, description="Steel on the certificate.")
    yield_strength: Readings[SteelStrength] | None = Field(
        default=None, description="Yield strengths on the certificates."
    )
    diameters: Readings[MemberLength] | None = Field(
        default=None, description="Inside diameters, across the seams and in between."
    )
    seam_gap: Readings[ClearLength] | None = Field(
        default=None, description="Openings of the seams, at several heights."
    )
    gap: Readings[ClearLength] | None = Field(
        default=None, description="Gap between footing and sleeve, around it."
    )


class SpliceRecord(InputModel):
    """Splice plates as delivered."""

    thickness: Readings[Thickness] = Field(description="Thicknesses of the outside plates.")
    inside_thickness: Readings[Thickness] | None = Field(
        default=None, description="Thicknesses of the inside plates."
    )
    steel: PlateSteelName | None = Field(default=None, description="Steel on the certificate.")
    yield_strength: Readings[SteelStrength] | None = Field(
        default=None, description="Yield strengths on the certificates."
    )
    radius: Readings[MemberLength] | None = Field(
        default=None, description="Inside radii of the outside plates, as rolled."
    )
    fillers: Count | None = Field(
        default=None, ge=0, le=6, description="Most fillers put between sleeve and one plate."
    )
    filler_thickness: Readings[Thickness] | None = Field(
        default=None, description="Thicknesses of all fillers at a bolt, added up."
    )


class GroutRecord(InputModel):
    """Strength tests of the grout."""

    cube_strength: Readings[ConcreteStrength] | None = Field(
        default=None, description="Strengths of cubes."
    )
    cube_side: CubeSide | None = Field(default=None, description="Side of the cubes.")
    cylinder_strength: Readings[ConcreteStrength] | None = Field(
        default=None, description="Strengths of cylinders of height twice the diameter."
    )


class AsBuilt(InputModel):
    """What was delivered and measured for one jacket."""

    record: Record = Field(default_factory=Record)
    bolts: BoltDelivery | None = None
    holes: HoleRecord | None = None
    faying: FayingRecord | None = None
    tightening: TighteningRecord | None = None
    sleeve: SleeveRecord | None = None
    splice: SpliceRecord | None = None
    grout: GroutRecord | None = None
