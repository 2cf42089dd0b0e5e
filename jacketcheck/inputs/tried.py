"""Bounds of one number in a search: a list of values, or the least, the most and a step."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Annotated, Any, TypeAlias, get_args

from pydantic import GetCoreSchemaHandler, GetJsonSchemaHandler
from pydantic.json_schema import JsonSchemaValue
from pydantic_core import CoreSchema, PydanticCustomError, core_schema

from jacketcheck.inputs.quantity import MemberLength, Quantity, Spacing, Thickness
from jacketcheck.inputs.written import shown

__all__ = ["MAX_VALUES", "Tried", "TriedCount", "TriedHeight", "TriedSpacing", "TriedThickness"]

MAX_VALUES = 500
"""Values of one number in a search at most."""

_KEYS = ("least", "most", "step")


@dataclass(frozen=True, slots=True)
class Tried:
    """What a search may try for one number, in internal units.

    Attributes
    ----------
    values
        Values as listed; empty where bounds are given.
    least, most
        Bounds, both included; None where values are listed.
    step
        Step from the least upwards; None where stock sizes are meant.
    diameters
        Multiples of the bolt diameter, instead of values.
    """

    values: tuple[float, ...] = ()
    least: float | None = None
    most: float | None = None
    step: float | None = None
    diameters: tuple[float, ...] = ()


@dataclass(frozen=True)
class TriedRule:
    """Pydantic annotation: how bounds of one quantity may be written.

    Attributes
    ----------
    quantity
        What each value must be.
    step
        What the step must be; None where a step makes no sense without one.
    stock
        Whether bounds may do without a step, because there are stock sizes.
    diameters
        Whether multiples of the bolt diameter may be given instead.
    whole
        Whether values must be whole numbers.
    """

    quantity: Quantity
    step: Quantity
    stock: bool = False
    diameters: bool = False
    whole: bool = False

    def validate(self, value: object) -> Tried:
        """Read a value, a list or a table of bounds; every problem is told in one message."""
        if isinstance(value, Tried):
            return value
        problems: list[str] = []
        if isinstance(value, Mapping):
            found = self._bounds(value, problems)
        else:
            written = value if isinstance(value, list | tuple) else [value]
            found = Tried(values=tuple(self._all(written, problems)))
            if not written:
                problems.append("is an empty list; must name at least one value")
        if len(found.values) > MAX_VALUES or len(found.diameters) > MAX_VALUES:
            problems.append(f"has more than {MAX_VALUES} values")
        if problems:
            raise PydanticCustomError("tried", "{text}", {"text": "; ".join(problems)})
        return found

    def _all(self, written: list[Any] | tuple[Any, ...], problems: list[str]) -> Iterator[float]:
        seen: set[float] = set()
        for index, one in enumerate(written[: MAX_VALUES + 1], start=1):
            number = self._one(f"entry {index}", one, self.quantity, problems)
            if number is None:
                continue
            if number in seen:
                problems.append(f"entry {index} = {shown(one)}: is there twice")
            seen.add(number)
            yield number

    def _bounds(self, table: Mapping[str, Any], problems: list[str]) -> Tried:
        if set(table) == {"diameters"} and self.diameters:
            return self._multiples(table["diameters"], problems)
        if unknown := [key for key in table if key not in _KEYS]:
            problems.append(f"{', '.join(map(shown, unknown))}: must be {self._allowed()}")
            return Tried()
        needed = ("least", "most") if self.stock or self.whole else _KEYS
        problems += [f"{key} is missing" for key in needed if key not in table]
        kinds = {"least": self.quantity, "most": self.quantity, "step": self.step}
        found = {key: self._one(key, table[key], kinds[key], problems) for key in table}
        least, most, step = (found.get(key) for key in _KEYS)
        if self.whole and "step" not in table:
            step = 1.0
        if least is not None and most is not None and least > most:
            problems.append("least is above most")
        elif least is not None and most is not None and step and (most - least) / step > MAX_VALUES:
            problems.append(f"has more than {MAX_VALUES} values")
        return Tried(least=least, most=most, step=step)

    def _multiples(self, written: Any, problems: list[str]) -> Tried:
        listed = written if isinstance(written, list) else [written]
        kind = Quantity("1", "a multiple of the bolt diameter", 0.5, 20.0, ("3", "2.5"))
        found = [self._one("diameters", one, kind, problems) for one in listed]
        if not listed:
            problems.append("diameters is an empty list; must name at least one multiple")
        return Tried(diameters=tuple(one for one in found if one is not None))

    def _one(self, place: str, written: Any, kind: Quantity, problems: list[str]) -> float | None:
        try:
            number = kind.validate(written)
        except PydanticCustomError as error:
            problems.append(f"{place} = {shown(written)}: {error.message()}")
            return None
        if self.whole and not float(number).is_integer():
            problems.append(f"{place} = {shown(written)}: must be a whole number")
            return None
        return number

    def _allowed(self) -> str:
        bounds = "{ least, most }" if self.stock else "{ least, most, step }"
        forms = ["a list", bounds] + ["{ diameters = […] }"] * self.diameters
        return " or ".join(forms)

    def __get_pydantic_core_schema__(
        self, source: Any, handler: GetCoreSchemaHandler
    ) -> CoreSchema:
        """Validate with `validate`."""
        return core_schema.no_info_plain_validator_function(self.validate)

    def __get_pydantic_json_schema__(
        self, schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> JsonSchemaValue:
        """Publish as a value, a list of values, or a table of bounds."""
        numeric = self.quantity.unit == "1"
        one: dict[str, Any] = {"type": ["string", "number"] if numeric else "string"}
        bounds: dict[str, Any] = {
            "type": "object",
            "properties": dict.fromkeys(_KEYS, one),
            "required": ["least", "most"] if self.stock or self.whole else list(_KEYS),
            "additionalProperties": False,
        }
        forms: list[dict[str, Any]] = [one, {"type": "array", "items": one, "minItems": 1}, bounds]
        if self.diameters:
            number = {"type": "number"}
            several = {"anyOf": [number, {"type": "array", "items": number, "minItems": 1}]}
            forms.append(
                {
                    "type": "object",
                    "properties": {"diameters": several},
                    "required": ["diameters"],
                    "additionalProperties": False,
                }
            )
        return {"anyOf": forms, "$comment": self.quantity.allowed}


def _quantity(annotated: Any) -> Quantity:
    found: Quantity = get_args(annotated)[1]
    return found


_STEP = Quantity("mm", "a step", 0.1, 10_000.0, ("5 mm", "1/4 in"))
_COUNT = Quantity("1", "a whole number", 1.0, 500.0, ("8", "12"))
_COUNT_STEP = Quantity("1", "a whole number", 1.0, 500.0, ("1", "2"))

TriedThickness: TypeAlias = Annotated[Tried, TriedRule(_quantity(Thickness), _STEP, stock=True)]
TriedSpacing: TypeAlias = Annotated[Tried, TriedRule(_quantity(Spacing), _STEP, diameters=True)]
TriedHeight: TypeAlias = Annotated[Tried, TriedRule(_quantity(MemberLength), _STEP)]
TriedCount: TypeAlias = Annotated[Tried, TriedRule(_COUNT, _COUNT_STEP, whole=True)]
