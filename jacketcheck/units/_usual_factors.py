"""Factors between the units that repairs are usually written and shown in.

They are what the registry gives, so that a run that meets no other unit need not build it; a test
holds the two together.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

__all__ = ["USUAL_FACTORS"]

USUAL_FACTORS: Final[Mapping[tuple[str, str], float]] = MappingProxyType(
    {
        ("mm", "mm"): 1.0,
        ("cm", "mm"): 10.0,
        ("m", "mm"): 1000.0,
        ("in", "mm"): 25.4,
        ("inch", "mm"): 25.4,
        ("ft", "mm"): 304.8,
        ("N", "N"): 1.0,
        ("kN", "N"): 1000.0,
        ("MN", "N"): 1000000.0,
        ("lbf", "N"): 4.4482216152605,
        ("kip", "N"): 4448.2216152605,
        ("kips", "N"): 4448.2216152605,
        ("Pa", "MPa"): 1e-06,
        ("kPa", "MPa"): 0.001,
        ("MPa", "MPa"): 1.0,
        ("GPa", "MPa"): 1000.0,
        ("N/mm**2", "MPa"): 1.0,
        ("psi", "MPa"): 0.00689475729316836,
        ("ksi", "MPa"): 6.89475729316836,
        ("deg", "deg"): 1.0,
        ("rad", "deg"): 57.2957795130823,
        ("percent", "dimensionless"): 0.01,
        ("mm", "in"): 0.0393700787401575,
        ("mm**2", "mm**2"): 1.0,
        ("mm**2", "in**2"): 0.0015500031000062,
        ("mm**3", "m**3"): 1e-09,
        ("mm**3", "ft**3"): 3.53146667214886e-08,
        ("mm**4", "mm**4"): 1.0,
        ("mm**4", "in**4"): 2.40250961002883e-06,
        ("N", "kN"): 0.001,
        ("N", "kip"): 0.000224808943099711,
        ("N/mm", "kN/m"): 1.0,
        ("N/mm", "kip/in"): 0.00571014715473265,
        ("N/mm**3", "MPa/mm"): 1.0,
        ("N/mm**3", "ksi/in"): 3.68395853834731,
        ("mm/MPa", "mm/MPa"): 1.0,
        ("mm/MPa", "in/ksi"): 0.271447137526313,
        ("MPa", "ksi"): 0.145037737730209,
        ("N*mm", "kN*m"): 1e-06,
        ("N*mm", "kip*ft"): 7.37562149277265e-07,
        ("mm**-1", "m**-1"): 1000.0,
        ("mm**-1", "in**-1"): 25.4,
        ("kg", "kg"): 1.0,
        ("kg", "lbm"): 2.20462262184878,
        ("rad", "rad"): 1.0,
        ("dimensionless", "dimensionless"): 1.0,
    }
)
"""Factor by unit and target, both as pint spells them, to 15 significant digits."""
