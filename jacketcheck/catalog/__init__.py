"""Catalogues of bars, bolts, steels and faying classes, with the source of every figure."""

from jacketcheck.catalog.catalog import Catalog, built_in_catalog
from jacketcheck.catalog.entries import Entries
from jacketcheck.catalog.plate_steels import stock_plate_thicknesses
from jacketcheck.catalog.records import (
    Bar,
    BoltProduct,
    BoltSize,
    FayingClass,
    PlateSteel,
    RebarSteel,
    StrengthBand,
    Strengths,
)

__all__ = [
    "Bar",
    "BoltProduct",
    "BoltSize",
    "Catalog",
    "Entries",
    "FayingClass",
    "PlateSteel",
    "RebarSteel",
    "StrengthBand",
    "Strengths",
    "built_in_catalog",
    "stock_plate_thicknesses",
]
