"""How the probability of exceedance is estimated, and scatter that is known better."""

from __future__ import annotations

from typing import Annotated, Literal, Self, TypeAlias

from pydantic import Field, model_validator

from jacketcheck.inputs.base import Count, InputModel, Text
from jacketcheck.inputs.quantity import CorrelationCoefficient, MeanRatio, Variation

__all__ = ["Chance", "Correlation", "Scatter", "VariableName"]

VariableName: TypeAlias = Literal[
    "slip-coefficient",
    "bolt-pretension",
    "bolt-strength",
    "sleeve-yield",
    "sleeve-tensile",
    "sleeve-thickness",
    "splice-yield",
    "splice-tensile",
    "splice-thickness",
    "column-concrete",
    "column-bar-yield",
    "column-bar-tensile",
    "column-hoop-yield",
    "column-cover",
    "added-bar-yield",
    "added-bar-tensile",
    "footing-concrete",
    "grout-strength",
    "axial-load",
    "hinge-moment",
    "axial-strain",
    "clamping-friction",
    "interface-friction",
    "bond-stress",
    "bolt-shear",
    "bolted-plate",
    "anchorage",
    "section-strength",
    "column-shear",
    "displacement",
]
"""Random variables of the estimate."""

Samples: TypeAlias = Annotated[Count, Field(ge=16, le=10_000_000)]


class Scatter(InputModel):
    """Distribution of one variable; what is left out stays as published."""

    name: VariableName = Field(description="Variable.")
    distribution: Literal["normal", "lognormal", "uniform"] | None = Field(
        default=None, description="Kind of distribution."
    )
    mean_ratio: MeanRatio | None = Field(
        default=None, description="Mean over the value that the published mean is relative to."
    )
    coefficient_of_variation: Variation | None = Field(
        default=None, description="Standard deviation over mean."
    )
    held: bool = Field(
        default=False, strict=True, description="Whether the variable is held at its mean."
    )
    source: Text = Field(
        default="",
        description="Where the figures come from.",
        examples=["tests of the delivered bolts"],
    )


class Correlation(InputModel):
    """Correlation of two variables, instead of the published one."""

    between: tuple[VariableName, VariableName] = Field(
        description="Names of the two.", examples=[["sleeve-yield", "splice-yield"]]
    )
    coefficient: CorrelationCoefficient = Field(description="Correlation coefficient.")

    @model_validator(mode="after")
    def _is_of_two(self) -> Self:
        if self.between[0] == self.between[1]:
            raise ValueError("between must name two different variables")
        return self


class Chance(InputModel):
    """Settings of the probability of exceedance, and what is known of the scatter."""

    samples: Samples | None = Field(
        default=None,
        description="Samples for limit states in closed form.",
        examples=[100_000],
    )
    bond_samples: Samples | None = Field(
        default=None,
        description="Samples for limit states that solve the bond of bars.",
        examples=[4096],
    )
    section_samples: Annotated[Count, Field(ge=0, le=1_000_000)] | None = Field(
        default=None,
        description="Samples for limit states that need section analyses; 0 leaves these out.",
        examples=[256],
    )
    method: Literal["sobol", "latin-hypercube", "random"] = Field(
        default="sobol",
        description="How samples are drawn; those too few for a Sobol sequence always come from a "
        "Latin hypercube.",
    )
    seed: Annotated[Count, Field(ge=0, le=2**63 - 1)] | None = Field(
        default=None, description="Seed of the samples.", examples=[1]
    )
    variables: tuple[Scatter, ...] = Field(
        default=(),
        max_length=60,
        description="Variables whose scatter is known better.",
        examples=[
            [{"name": "bolt-pretension", "mean_ratio": 1.2, "coefficient_of_variation": 0.05}]
        ],
    )
    correlations: tuple[Correlation, ...] = Field(
        default=(),
        max_length=200,
        description="Correlations that are known better.",
        examples=[[{"between": ["sleeve-yield", "splice-yield"], "coefficient": 0.3}]],
    )
