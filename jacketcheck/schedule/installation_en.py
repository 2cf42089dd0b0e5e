"""Preloading of EN 14399 assemblies by EN 1090-2: the figures of each method."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import Final

from jacketcheck.errors import DomainError
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics.en_tightening import (
    COMBINED_METHOD_COEFFICIENT_K1,
    combined_method_rotation,
    torque_method_steps,
)
from jacketcheck.schedule.assembly import Assembly
from jacketcheck.schedule.records import ScheduleLine, Verdict

__all__ = ["en_lines"]

_TORQUE: Final = "EN 1090-2:2018 8.5.3"
_COMBINED: Final = "EN 1090-2:2018 8.5.4 and Table 21"
_INDICATOR: Final = "EN 1090-2:2018 8.5.6 and Annex H; EN 14399-9 (from memory)"
_FILE: Final = "repair file bolts.torque_coefficient, the declared k_m"
FEELER_UNDER_NUT: Final = 0.25
"""Feeler gauge for an indicator under the nut [mm] (EN 1090-2:2018 Annex H, from memory)."""


def en_lines(jacket: Jacket, assembly: Assembly) -> tuple[ScheduleLine, ...]:
    """Preload, and the figures of the method."""
    bolts = jacket.bolts
    preload = ScheduleLine(
        "preload F_p,C", float(bolts.pretension), "N", bolts.pretension_source, "0.7 f_ub A_s"
    )
    return (preload, *_LINES[bolts.tightening](jacket, assembly))


def _torque_lines(jacket: Jacket, assembly: Assembly) -> tuple[ScheduleLine, ...]:
    coefficient = jacket.bolts.torque_coefficient
    if coefficient is not None:
        return (
            ScheduleLine("mean torque coefficient k_m", float(coefficient), "1", _FILE),
            *_two_steps(jacket, float(coefficient), _FILE, ""),
        )
    lines = [
        ScheduleLine("torque", "from the k_m on the lot's declaration", "", _TORQUE,
                     note="no coefficient is in the repair file; the range below only helps to "
                     "choose the wrench")
    ]  # fmt: skip
    rules = assembly.rules
    if rules is not None and rules.torque_coefficients is not None:
        for name, value in zip(("lowest", "highest"), rules.torque_coefficients, strict=True):
            source = rules.source_of(f"torque_coefficient_{name.removesuffix('est')}")
            lines += _two_steps(jacket, value, source, f", {name} k_m")
    return tuple(lines)


def _two_steps(
    jacket: Jacket, coefficient: float, source: str, which: str
) -> tuple[ScheduleLine, ...]:
    steps = torque_method_steps(
        float(jacket.bolts.diameter),
        pretension=float(jacket.bolts.pretension),
        torque_coefficient=coefficient,
    )
    where = f"{_TORQUE}; {source}"
    return (
        ScheduleLine(f"first step, torque{which}", float(steps.first), "N mm", where,
                     f"0.75 k_m d F_p,C, k_m = {coefficient:g}", "all bolts first"),
        ScheduleLine(f"second step, torque{which}", float(steps.second), "N mm", where,
                     f"1.10 k_m d F_p,C, k_m = {coefficient:g}"),
    )  # fmt: skip


def _combined_lines(jacket: Jacket, assembly: Assembly) -> tuple[ScheduleLine, ...]:
    bolts = jacket.bolts
    declared = bolts.torque_coefficient
    coefficient = COMBINED_METHOD_COEFFICIENT_K1 if declared is None else float(declared)
    source = "k-class K1: 0.13 d F_p,C (from memory)" if declared is None else _FILE
    steps = torque_method_steps(
        float(bolts.diameter), pretension=float(bolts.pretension), torque_coefficient=coefficient
    )
    item = "second step, turn of the nut"
    first = ScheduleLine(
        "first step, torque", float(steps.first), "N mm", f"{_COMBINED}; {source}",
        f"0.75 k d F_p,C, k = {coefficient:g}",
        "the combined method: EN 1090-2 has no turn from snug-tight",
    )  # fmt: skip
    try:
        rotation = combined_method_rotation(assembly.clamp_length, diameter=float(bolts.diameter))
    except DomainError:
        return (
            first,
            ScheduleLine(item, "find it by test", "", _COMBINED,
                         note="plates and washers exceed ten diameters, where the table ends",
                         verdict=Verdict.NOT_EVALUATED),
        )  # fmt: skip
    return (
        first,
        ScheduleLine("clamp length over diameter", assembly.clamp_length / float(bolts.diameter),
                     "1", "geometry", "plates and washers"),
        ScheduleLine(item, float(rotation), "deg", _COMBINED,
                     "60° below 2 d, 90° below 6 d, 120° up to 10 d",
                     "from the mark made after the first step; hold the head"),
    )  # fmt: skip


def _indicator_lines(_: Jacket, __: Assembly) -> tuple[ScheduleLine, ...]:
    return (
        ScheduleLine("feeler gauge, indicator under the nut", FEELER_UNDER_NUT, "mm", _INDICATOR),
        ScheduleLine("installed", "the gauge is refused in as many gaps as the table of the "
                     "indicator asks for, at least half", "", _INDICATOR),
    )  # fmt: skip


def _hrc_lines(_: Jacket, assembly: Assembly) -> tuple[ScheduleLine, ...]:
    return (
        ScheduleLine("installed", "not known", "", assembly.product.source,
                     note="twist-off assemblies (system HRC, EN 14399-10) are not in the catalogue",
                     verdict=Verdict.NOT_EVALUATED),
    )  # fmt: skip


Lines = Callable[[Jacket, Assembly], tuple[ScheduleLine, ...]]
_LINES: Final[Mapping[str, Lines]] = MappingProxyType(
    {
        "calibrated-wrench": _torque_lines,
        "turn-of-nut": _combined_lines,
        "direct-tension-indicator": _indicator_lines,
        "twist-off": _hrc_lines,
    }
)
