"""Bars, steels, bolts and faying classes of Australia and New Zealand."""

from jacketcheck_australasia.catalog.bars import BARS
from jacketcheck_australasia.catalog.bolts import BOLTS
from jacketcheck_australasia.catalog.faying import FAYING_CLASSES
from jacketcheck_australasia.catalog.plate_steels import PLATE_STEELS
from jacketcheck_australasia.catalog.rebar_steels import REBAR_STEELS

__all__ = ["BARS", "BOLTS", "FAYING_CLASSES", "PLATE_STEELS", "REBAR_STEELS"]
