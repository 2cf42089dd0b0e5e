"""Bars, steels, bolts and faying classes of India."""

from jacketcheck_india.catalog.bars import BARS
from jacketcheck_india.catalog.bolts import BOLTS
from jacketcheck_india.catalog.faying import FAYING_CLASSES
from jacketcheck_india.catalog.plate_steels import PLATE_STEELS
from jacketcheck_india.catalog.rebar_steels import REBAR_STEELS

__all__ = ["BARS", "BOLTS", "FAYING_CLASSES", "PLATE_STEELS", "REBAR_STEELS"]
