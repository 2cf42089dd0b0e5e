"""From N, mm and MPa to the units a reader wants to see."""

from __future__ import annotations

from typing import Literal, TypeAlias, get_args

from jacketcheck.units._registry import conversion_factor

__all__ = ["DisplaySystem", "display", "in_both_systems", "known_units"]

DisplaySystem: TypeAlias = Literal["si", "us"]

_SHOWN: dict[str, dict[DisplaySystem, tuple[str, str]]] = {
    # internal unit: (pint unit, printed unit) by system
    "mm": {"si": ("mm", "mm"), "us": ("in", "in")},
    "mm2": {"si": ("mm**2", "mm²"), "us": ("in**2", "in²")},
    "mm3": {"si": ("m**3", "m³"), "us": ("ft**3", "ft³")},
    "mm4": {"si": ("mm**4", "mm⁴"), "us": ("in**4", "in⁴")},
    "N": {"si": ("kN", "kN"), "us": ("kip", "kip")},
    "N/mm": {"si": ("kN/m", "kN/m"), "us": ("kip/in", "kip/in")},
    "N/mm2/mm": {"si": ("MPa/mm", "MPa/mm"), "us": ("ksi/in", "ksi/in")},
    "mm/MPa": {"si": ("mm/MPa", "mm/MPa"), "us": ("in/ksi", "in/ksi")},
    "MPa": {"si": ("MPa", "MPa"), "us": ("ksi", "ksi")},
    "N mm": {"si": ("kN*m", "kN·m"), "us": ("kip*ft", "kip·ft")},
    "1/mm": {"si": ("m**-1", "1/m"), "us": ("in**-1", "1/in")},
    "kg": {"si": ("kg", "kg"), "us": ("lbm", "lb")},
    "rad": {"si": ("rad", "rad"), "us": ("rad", "rad")},
    "deg": {"si": ("deg", "°"), "us": ("deg", "°")},
    "1": {"si": ("dimensionless", "—"), "us": ("dimensionless", "—")},
}
_PINT_NAME = {
    "mm2": "mm**2",
    "mm3": "mm**3",
    "mm4": "mm**4",
    "N/mm2/mm": "N/mm**3",
    "N mm": "N*mm",
    "1/mm": "mm**-1",
    "1": "dimensionless",
}


def known_units() -> frozenset[str]:
    """Internal units that can be shown in either system."""
    return frozenset(_SHOWN)


def display(unit: str, system: DisplaySystem) -> tuple[float, str]:
    """Factor and printed unit for a value held in the internal `unit`.

    A unit that the table does not know is shown as it is, with a factor of one.

    Examples
    --------
    >>> display("N", "si")
    (0.001, 'kN')
    """
    shown = _SHOWN.get(unit)
    if shown is None:
        return 1.0, unit
    pint_unit, printed = shown[system]
    return conversion_factor(_PINT_NAME.get(unit, unit), pint_unit), printed


def in_both_systems(value: float, unit: str) -> str:
    """A value in the units of both systems, for a message whose reader may use either.

    Examples
    --------
    >>> in_both_systems(19.05, "mm"), in_both_systems(2.5e6, "N"), in_both_systems(1.4, "1")
    ('19.05 mm (0.75 in)', '2500 kN (562 kip)', '1.4')
    """
    first, second = (_in_system(value, unit, system) for system in get_args(DisplaySystem))
    return first if first == second else f"{first} ({second})"


def _in_system(value: float, unit: str, system: DisplaySystem) -> str:
    factor, printed = display(unit, system)
    text = f"{value * factor:.6g}" if system == "si" else f"{value * factor:.4g}"
    if "e+" in text:
        text = f"{float(text):.0f}"
    return text if printed == "—" else f"{text} {printed}"
