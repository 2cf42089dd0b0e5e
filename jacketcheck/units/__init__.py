"""The only place where units exist: text with a unit in, N, mm and MPa out, and back again.

Everything behind this module works in one coherent system. pint does the conversions; the
registry holds only the units listed in ``definitions.txt`` and is built on first use.
"""

from jacketcheck.units.display import DisplaySystem, display, in_both_systems, known_units
from jacketcheck.units.parse import parse_quantity

__all__ = ["DisplaySystem", "display", "in_both_systems", "known_units", "parse_quantity"]
