"""Names that must stand in the catalogue; the catalogue comes in as validation context."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Any, TypeAlias

from pydantic import GetCoreSchemaHandler, ValidationInfo
from pydantic_core import CoreSchema, PydanticCustomError, core_schema

from jacketcheck.errors import CatalogError

__all__ = [
    "BarName",
    "BoltProductName",
    "BondModelName",
    "CatalogName",
    "FayingClassName",
    "PlateSteelName",
    "RebarSteelName",
]


@dataclass(frozen=True)
class CatalogName:
    """Pydantic annotation: a text that the catalogue's method `lookup` must know.

    The catalogue is taken from the validation context; without one, any text passes.
    """

    lookup: str

    def validate(self, value: str, info: ValidationInfo) -> str:
        """Return the name as the catalogue spells it, or say what is known."""
        catalog = (info.context or {}).get("catalog")
        if catalog is None:
            return value
        try:
            entry = getattr(catalog, self.lookup)(value)
        except CatalogError as error:
            raise PydanticCustomError("catalog", "{text}", {"text": error.problem}) from error
        return str(entry.name)

    def __get_pydantic_core_schema__(
        self, source: Any, handler: GetCoreSchemaHandler
    ) -> CoreSchema:
        """Validate a text first, then look it up."""
        return core_schema.with_info_after_validator_function(
            self.validate, core_schema.str_schema(min_length=1, max_length=100)
        )


BarName: TypeAlias = Annotated[str, CatalogName("bar")]
RebarSteelName: TypeAlias = Annotated[str, CatalogName("rebar_steel")]
BoltProductName: TypeAlias = Annotated[str, CatalogName("bolt_product")]
PlateSteelName: TypeAlias = Annotated[str, CatalogName("plate_steel")]
BondModelName: TypeAlias = Annotated[str, CatalogName("bond_model")]
FayingClassName: TypeAlias = Annotated[str, CatalogName("faying_class")]
