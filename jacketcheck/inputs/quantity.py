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

from jacketcheck.units import in_both_systems, parse_quantity

__all__ = [
    "AdhesiveStrength",
    "Angle",
    "AngleToBars",
    "BarDiameterLength",
    "ClearLength",
    "ColumnHeight",
    "ConcreteStrength",
    "CorrelationCoefficient",
    "Cover",
    "CrackWidth",
    "Force",
    "FrictionCoefficient",
    "HeightAboveFooting",
    "MeanRatio",
    "MemberLength",
    "Modulus",
    "Overstrength",
    "Quantity",
    "RibSpacing",
    "Spacing",
    "SteelStrength",
    "Strain",
    "Thickness",
    "TorqueCoefficient",
    "Variation",
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

    @property
    def allowed(self) -> str:
        """Kind and range in the units of both systems."""
        low, high = in_both_systems(self.low, self.unit), in_both_systems(self.high, self.unit)
        return f"{self.kind} from {low} to {high}"

    def validate(self, value: object) -> float:
        """Turn what was written into a number in the internal unit, or say what is wrong."""
        number = self._number(value)
        if not math.isfinite(number):
            raise self._fail("is not a finite number")
        if number == 0.0 and self.low > 0.0:
            raise self._fail("is zero")
        if number < 0.0 <= self.low:
            raise self._fail("is negative")
        if not self.low <= number <= self.high:
            raise self._fail("is outside the plausible range")
        return number

    def _number(self, value: object) -> float:
        if isinstance(value, int | float) and not isinstance(value, bool):
            if self.unit != "1":
                raise self._fail("has no unit")
            try:
                return float(value)
            except OverflowError:
                return math.inf
        if not isinstance(value, str):
            raise self._fail("is not a number" if self.unit == "1" else "is not a text in quotes")
        try:
            return parse_quantity(value, self.unit)
        except ValueError as error:
            raise self._fail(str(error)) from error

    def _fail(self, reason: str) -> PydanticCustomError:
        examples = " or ".join(f'"{example}"' for example in self.examples)
        text = f"{reason}; must be {self.allowed}, e.g. {examples}"
        return PydanticCustomError("quantity", "{text}", {"text": text})

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
            "$comment": self.allowed,
            "examples": list(self.examples),
        }


Thickness: TypeAlias = Annotated[
    float, Quantity("mm", "a thickness", 1.0, 150.0, ("10 mm", "3/8 in"))
]
Cover: TypeAlias = Annotated[
    float, Quantity("mm", "a concrete cover", 5.0, 300.0, ("50 mm", "2 in"))
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
SteelStrength: TypeAlias = Annotated[
    float, Quantity("MPa", "a steel strength", 150.0, 1500.0, ("475 MPa", "69 ksi"))
]
ConcreteStrength: TypeAlias = Annotated[
    float, Quantity("MPa", "a concrete or grout strength", 5.0, 150.0, ("28 MPa", "4 ksi"))
]
AdhesiveStrength: TypeAlias = Annotated[
    float, Quantity("MPa", "a bond strength", 0.5, 60.0, ("8 MPa", "1160 psi"))
]
Modulus: TypeAlias = Annotated[
    float, Quantity("MPa", "a modulus of elasticity", 1000.0, 80_000.0, ("25 GPa", "3600 ksi"))
]
Angle: TypeAlias = Annotated[
    float, Quantity("deg", "an angle", -360.0, 360.0, ("30 deg", "0.5 rad"))
]
AngleToBars: TypeAlias = Annotated[
    float, Quantity("deg", "an angle between bars", 0.0, 75.0, ("0 deg", "45 deg"))
]
Strain: TypeAlias = Annotated[float, Quantity("1", "a strain", 1e-5, 0.2, ("0.004", "0.4 %"))]
FrictionCoefficient: TypeAlias = Annotated[
    float, Quantity("1", "a friction coefficient", 0.1, 3.0, ("1.4",))
]
RibSpacing: TypeAlias = Annotated[
    float, Quantity("1", "a clear rib spacing over bar diameter", 0.1, 2.0, ("0.5", "50 %"))
]
TorqueCoefficient: TypeAlias = Annotated[
    float, Quantity("1", "a torque coefficient", 0.05, 0.5, ("0.18",))
]
Overstrength: TypeAlias = Annotated[
    float, Quantity("1", "an overstrength factor", 1.0, 3.0, ("1.2", "120 %"))
]
MeanRatio: TypeAlias = Annotated[
    float, Quantity("1", "a ratio of mean to nominal value", 0.2, 5.0, ("1.13",))
]
Variation: TypeAlias = Annotated[
    float, Quantity("1", "a coefficient of variation", 0.0, 1.0, ("0.08", "8 %"))
]
CorrelationCoefficient: TypeAlias = Annotated[
    float, Quantity("1", "a correlation coefficient", -0.99, 0.99, ("0.5",))
]
