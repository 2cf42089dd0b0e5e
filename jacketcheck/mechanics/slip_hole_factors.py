"""Factors on slip resistance by hole type: a larger hole takes clamped surface away."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final, Literal

from jacketcheck.mechanics._arguments import HoleType, choose

__all__ = [
    "aashto_hole_size_factor",
    "aisc_slip_resistance_factor",
    "lowest_hole_size_factor",
    "rcsc_slip_resistance_factor",
]

_AISC_FACTORS: Final[Mapping[str, float]] = MappingProxyType(
    {
        "standard": 1.00,
        "short-slot-perpendicular": 1.00,
        "oversized": 0.85,
        "short-slot-parallel": 0.85,
        "long-slot-perpendicular": 0.70,
        "long-slot-parallel": 0.70,
    }
)

_FOUR_STEP_FACTORS: Final[Mapping[str, float]] = MappingProxyType(
    {
        "standard": 1.00,
        "oversized": 0.85,
        "short-slot-perpendicular": 0.85,
        "short-slot-parallel": 0.85,
        "long-slot-perpendicular": 0.70,
        "long-slot-parallel": 0.60,
    }
)

_LOWEST_FACTORS: Final[Mapping[str, float]] = MappingProxyType(
    {**_FOUR_STEP_FACTORS, "short-slot-parallel": 0.76}
)

_RCSC_FACTORS: Final[Mapping[str, Mapping[str, float]]] = MappingProxyType(
    {"2020": _AISC_FACTORS, "2004": _FOUR_STEP_FACTORS}
)


def aisc_slip_resistance_factor(hole: HoleType) -> float:
    """Resistance factor for slip by hole type, AISC.

    Parameters
    ----------
    hole
        Hole type; slots by their long axis relative to the force.

    Returns
    -------
    float
        Resistance factor phi [-] of load and resistance factor design.

    Raises
    ------
    DomainError
        If the hole type is unknown.

    Notes
    -----
    Standard holes and short slots across the force 1.00, oversized holes and short slots along
    the force 0.85, long slots 0.70. The safety factors of allowable strength design are 1.50,
    1.76 and 2.14; this package works with factored forces only.

    References
    ----------
    AISC 360-22, Specification for Structural Steel Buildings (2022), J3.9(a) to (c).

    Examples
    --------
    >>> aisc_slip_resistance_factor("short-slot-parallel")
    0.85
    """
    return choose(_AISC_FACTORS, hole, name="hole")


def rcsc_slip_resistance_factor(
    hole: HoleType, *, edition: Literal["2020", "2004"] = "2020"
) -> float:
    """Resistance factor for slip by hole type, RCSC.

    Parameters
    ----------
    hole
        Hole type; slots by their long axis relative to the force.
    edition
        Edition of the specification.

    Returns
    -------
    float
        Resistance factor phi [-].

    Raises
    ------
    DomainError
        If the hole type or the edition is unknown.

    Notes
    -----
    The 2020 edition has the AISC factors. The 2004 edition, met on older drawings, puts all short
    slots at 0.85 and long slots along the force at 0.60, and goes with its own slip coefficients
    (Class A 0.33).

    References
    ----------
    RCSC, Specification for Structural Joints Using High-Strength Bolts (2020), 5.4, from memory;
    RCSC, Specification for Structural Joints Using ASTM A325 or A490 Bolts (2004), 5.4.

    Examples
    --------
    >>> rcsc_slip_resistance_factor("long-slot-parallel", edition="2004")
    0.6
    """
    return choose(choose(_RCSC_FACTORS, edition, name="edition"), hole, name="hole")


def aashto_hole_size_factor(hole: HoleType) -> float:
    """Hole size factor, AASHTO.

    Parameters
    ----------
    hole
        Hole type; slots by their long axis relative to the force.

    Returns
    -------
    float
        Factor K_h [-].

    Raises
    ------
    DomainError
        If the hole type is unknown.

    Notes
    -----
    Standard 1.00; oversized and short slots in either direction 0.85; long slots across the force
    0.70, along it 0.60.

    References
    ----------
    AASHTO LRFD Bridge Design Specifications, 9th ed. (2020), Table 6.13.2.8-2, from memory; the
    same figures stand in RCSC (2004) 5.4.

    Examples
    --------
    >>> aashto_hole_size_factor("long-slot-parallel")
    0.6
    """
    return choose(_FOUR_STEP_FACTORS, hole, name="hole")


def lowest_hole_size_factor(hole: HoleType) -> float:
    """Hole size factor that no code undercuts, for slip that is not a matter of one code.

    Parameters
    ----------
    hole
        Hole type; slots by their long axis relative to the force.

    Returns
    -------
    float
        Factor [-].

    Raises
    ------
    DomainError
        If the hole type is unknown.

    Notes
    -----
    The smaller of AASHTO's and the Eurocode's for each hole: they part at short slots along the
    force, 0.85 and 0.76, and at long ones, 0.60 and 0.63.

    References
    ----------
    AASHTO LRFD Bridge Design Specifications, 9th ed. (2020), Table 6.13.2.8-2, from memory; EN
    1993-1-8:2005 Table 3.6.

    Examples
    --------
    >>> lowest_hole_size_factor("short-slot-parallel")
    0.76
    """
    return choose(_LOWEST_FACTORS, hole, name="hole")
