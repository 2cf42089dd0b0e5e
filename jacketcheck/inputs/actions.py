"""What acts on the column, and the inputs that rest on engineering judgement."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from jacketcheck.inputs.base import InputModel
from jacketcheck.inputs.catalog_name import BondModelName
from jacketcheck.inputs.quantity import (
    ClearLength,
    Force,
    FrictionCoefficient,
    Overstrength,
    RibSpacing,
    Strain,
)

__all__ = ["Actions", "Judgement"]


class Actions(InputModel):
    """Loads and seismic demands."""

    axial_load: Force = Field(description="Axial compression with the earthquake.")
    axial_strain: Strain | None = Field(
        default=None,
        description="Compressive strain at which dilation is checked; where the section analysis "
        "at the base demand finds a larger one, that one counts.",
    )
    displacement_demand: ClearLength | None = Field(
        default=None, description="Displacement demand at the top of the column."
    )


class Judgement(InputModel):
    """Values that rest on engineering judgement; each result that uses one names it."""

    clamping_strain: Strain = Field(
        default=0.001, description="Hoop strain up to which clamping pressure is counted."
    )
    crack_friction: FrictionCoefficient = Field(
        default=1.4, description="Friction coefficient on the splitting crack (clamping)."
    )
    rib_spacing_ratio: RibSpacing = Field(
        default=0.5, description="Clear rib spacing over bar diameter (residual bond)."
    )
    bar_target: Literal["tensile", "yield"] = Field(
        default="tensile",
        description="Stress that a fractured bar must reach again at the top of the repair: its "
        "expected tensile strength, so that it can fracture again, or its expected yield.",
    )
    bond_model: BondModelName = Field(
        default="fib Model Code 2010", description="Local bond law from the catalogue."
    )
    buckled_bars: Literal["as-fractured", "as-intact"] = Field(
        default="as-fractured", description="How bars that buckled without fracture are counted."
    )
    overstrength: Overstrength | None = Field(
        default=None, description="Overstrength of the plastic moment; default by bar steel."
    )
    confirmed: tuple[str, ...] = Field(
        default=(),
        max_length=40,
        description="Fields whose unusual value, or whose value in place of a default, the "
        "engineer has looked at and stands by; each stays visible as a reported row.",
        examples=[["repair.height"]],
    )
