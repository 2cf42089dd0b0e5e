"""Quantity types for the input models: text with a unit, checked against a plausible range.

The bounds are there to catch slips of the pen (a sleeve of ten metres, a stress without its k),
not to judge a design; they are wide and they are printed in every message.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Annotated, Any, TypeAlias

from pydantic import GetCoreSchemaHandler, GetJsonSchemaHandler
from pydantic.json_schema import JsonSchemaValue
from pydantic_core import CoreSchema, PydanticCustomError, core_schema

from jacketcheck.units import parse_quantity

__all__ = [
    "Angle",
    "BarDiameterLength",
    "ClearLength",
    "ColumnHeight",
    "CrackWidth",
    "Force",
    "HeightAboveFooting",
    "MemberLength",
    "Modulus",
    "Quantity",
    "Ratio",
    "Spacing",
    "Strain",
    "Strength",
    "Thickness",
]


@dataclass(frozen=True)
class Quantity:
    """Pydantic annotation: a quantity of one dimension within a plausible range.

    Attributes
    ----------
    unit
        Internal unit that the validated number is in.
    kind
        What it is called in messages, e.g. ``a length``.
    low, high
        Plausible range, bounds included, in `unit`.
    examples
        Texts that would be accepted.
    """

    unit: str
    kind: str
    low: float
    high: float
    examples: tuple[str, ...]

    def _fail(self, reason: str) -> PydanticCustomError:
        return PydanticCustomError(
            "quantity",
            "{reason}; allowed is {kind} from {low} to {high} {unit}, e.g. {example}",
            {
                "reason": reason,
                "kind": self.kind,
                "low": f"{self.low:g}",
                "high": f"{self.high:g}",
                "unit": "" if self.unit == "1" else self.unit,
                "example": " or ".join(f'"{example}"' for example in self.examples),
            },
        )

    def validate(self, value: object) -> float:
        """Turn what was written into a number in the internal unit, or say what is wrong."""
        number = self._number(value)
        if not math.isfinite(number):
            raise self._fail("is not a finite number")
        if number < 0.0 and self.low >= 0.0:
            raise self._fail("is negative")
        if not self.low <= number <= self.high:
            raise self._fail("is outside the plausible range")
        return number

    def _number(self, value: object) -> float:
        if isinstance(value, int | float) and not isinstance(value, bool):
            if self.unit != "1":
                raise self._fail("has no unit")
            return float(value)
        if not isinstance(value, str):
            raise self._fail("is not a text with a number and a unit")
        try:
            return parse_quantity(value, self.unit)
        except ValueError as error:
            raise self._fail(str(error)) from error

    def __get_pydantic_core_schema__(
        self, source: Any, handler: GetCoreSchemaHandler
    ) -> CoreSchema:
        """Validate with `validate`, whatever the annotated type is."""
        return core_schema.no_info_plain_validator_function(self.validate)

    def __get_pydantic_json_schema__(
        self, schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> JsonSchemaValue:
        """Publish as text with a unit (a plain number where there is no dimension)."""
        return {
            "type": ["string", "number"] if self.unit == "1" else "string",
            "description": f"{self.kind} from {self.low:g} to {self.high:g} {self.unit}",
            "examples": list(self.examples),
        }


Thickness: TypeAlias = Annotated[
    float, Quantity("mm", "a thickness", 1.0, 150.0, ("10 mm", "3/8 in"))
]
ClearLength: TypeAlias = Annotated[
    float, Quantity("mm", "a clear length", 0.0, 1000.0, ("50 mm", "2 in"))
]
Spacing: TypeAlias = Annotated[float, Quantity("mm", "a spacing", 5.0, 3000.0, ("75 mm", "3 in"))]
BarDiameterLength: TypeAlias = Annotated[
    float, Quantity("mm", "a diameter", 5.0, 300.0, ("40 mm", "1-1/2 in"))
]
HeightAboveFooting: TypeAlias = Annotated[
    float, Quantity("mm", "a height", 0.0, 80_000.0, ("100 mm", "4 in"))
]
MemberLength: TypeAlias = Annotated[
    float, Quantity("mm", "a length", 100.0, 10_000.0, ("1200 mm", "48 in"))
]
ColumnHeight: TypeAlias = Annotated[
    float, Quantity("mm", "a height", 500.0, 80_000.0, ("6 m", "20 ft"))
]
CrackWidth: TypeAlias = Annotated[
    float, Quantity("mm", "a crack width", 0.0, 20.0, ("0.4 mm", "1/64 in"))
]
Force: TypeAlias = Annotated[float, Quantity("N", "a force", 0.0, 1.0e9, ("2500 kN", "600 kip"))]
Strength: TypeAlias = Annotated[
    float, Quantity("MPa", "a strength", 0.1, 2000.0, ("345 MPa", "50 ksi"))
]
Modulus: TypeAlias = Annotated[
    float, Quantity("MPa", "a modulus", 100.0, 300_000.0, ("25 GPa", "3600 ksi"))
]
Angle: TypeAlias = Annotated[
    float, Quantity("deg", "an angle", -360.0, 360.0, ("30 deg", "0.5 rad"))
]
Strain: TypeAlias = Annotated[float, Quantity("1", "a strain", 1e-5, 0.2, ("0.004", "0.4 %"))]
Ratio: TypeAlias = Annotated[float, Quantity("1", "a ratio", 0.0, 100.0, ("1.2", "120 %"))]
