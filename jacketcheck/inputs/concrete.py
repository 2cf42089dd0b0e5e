"""Strength of concrete as people write it: a stress and its specimen, or a grade."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Annotated, Any, Final, Literal, Self, TypeAlias

from jacketcheck.errors import DomainError
from jacketcheck.inputs.quantity import Quantity
from jacketcheck.mechanics.grout_cubes import (
    CYLINDER_OVER_CUBE,
    cylinder_strength_of_cubes,
)

__all__ = ["ConcreteClass", "CylinderStrength", "GroutSpecimen", "strength_basis"]

GroutSpecimen: TypeAlias = Literal["cylinder", "cube-150", "cube-100", "cube-50", "prism-40"]
"""Cylinders of height twice the diameter; cubes by their side in mm (cube-50: 2 in cubes of ASTM
C109); halves of 40 × 40 × 160 mm prisms of EN 196-1."""

_CUBE_GRADE: Final = re.compile(r"M\s?(\d{1,3}(?:\.\d+)?)")
_CLASS: Final = re.compile(r"C\s?(\d{1,3})\s?/\s?(\d{1,3})")
_HALF_CLASS: Final = re.compile(r"[CcBb]\s?\d{1,3}(?:\.\d+)?")
_WITH_SPECIMEN: Final = re.compile(r"(?P<stress>.*?)[\s,]+\(?(?P<specimen>cylinder|cube)s?\)?")
_CUBES: Final = "150 mm cubes"
_CLASS_RATIOS: Final = 0.75, 0.9
"""Cylinder over cube: 0.78 (C35/45) to 0.87 (C100/115) in EN 206:2013+A2:2021 Table 12, and wider
for national classes."""


class CylinderStrength(float):
    """Strength of 150 × 300 mm cylinders [MPa] that knows what it was written as.

    Attributes
    ----------
    basis
        How it follows from what was written; plain ``cylinder`` where nothing was converted.
    """

    basis: str = "cylinder"

    def __new__(cls, value: float, basis: str = "cylinder") -> Self:
        """Keep the basis beside the number."""
        strength = super().__new__(cls, value)
        strength.basis = basis
        return strength

    def __reduce__(self) -> tuple[type[Self], tuple[float, str]]:
        return type(self), (float(self), self.basis)


def strength_basis(strength: Any) -> str:
    """What a strength is that of, with its conversion; a number or array is that of cylinders."""
    return strength.basis if isinstance(strength, CylinderStrength) else "cylinder"


@dataclass(frozen=True)
class _ConcreteQuantity(Quantity):
    """Reads ``28 MPa`` and ``28 MPa cylinder``, ``35 MPa cube``, ``M35`` and ``C28/35``."""

    def validate(self, value: object) -> float:
        """As every quantity, and keep what it was written as."""
        number = super().validate(value)
        return CylinderStrength(number, self._read(value)[1])

    def _number(self, value: object) -> float:
        return self._read(value)[0]

    def _read(self, value: object) -> tuple[float, str]:
        """Cylinder strength, and how it follows from what was written."""
        text = value.strip() if isinstance(value, str) and len(value) <= _LONGEST else ""
        if grade := _CUBE_GRADE.fullmatch(text):
            return _of_cubes(float(grade[1]), f"{text}, {grade[1]} MPa of {_CUBES}")
        if found := _CLASS.fullmatch(text):
            cylinder, cube = float(found[1]), float(found[2])
            if not _CLASS_RATIOS[0] * cube <= cylinder <= _CLASS_RATIOS[1] * cube:
                raise self._fail("is no strength class: cylinders come first, cubes second")
            return cylinder, f"{text}, cylinder first (EN 206:2013+A2:2021 4.3.1)"
        if _HALF_CLASS.fullmatch(text):
            raise self._fail("does not say whether cylinders or cubes are meant")
        if named := _WITH_SPECIMEN.fullmatch(text):
            stress = super()._number(named["stress"])
            if named["specimen"] == "cylinder":
                return stress, "cylinder"
            return self._of_any_cubes(stress)
        return super()._number(value), "cylinder"

    def _of_any_cubes(self, stress: float) -> tuple[float, str]:
        by_ratio, basis = _of_cubes(stress, f"{stress:.4g} MPa of {_CUBES}")
        try:
            by_class = float(cylinder_strength_of_cubes(stress, cube_side=150.0))
        except DomainError:
            raise self._fail("is beyond the strengths of cubes that are tabulated") from None
        if by_class < by_ratio:
            return by_class, f"{stress:.4g} MPa of {_CUBES}, by EN 1992-1-1:2004 Table 3.1"
        return by_ratio, basis


def _of_cubes(stress: float, written: str) -> tuple[float, str]:
    ratio = f"{CYLINDER_OVER_CUBE:g} (IS 516:1959 5.6.1, from memory)"
    return stress * CYLINDER_OVER_CUBE, f"{written} × {ratio}"


_LONGEST: Final = 60

ConcreteClass: TypeAlias = Annotated[
    float,
    _ConcreteQuantity(
        "MPa", "a cylinder strength of concrete", 5.0, 150.0,
        ("28 MPa", "4 ksi", "35 MPa cube", "M35", "C30/37"),
    ),
]  # fmt: skip
