"""Length of the bolts: what the grip needs, what is stocked, and how the thread lies."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Final, NamedTuple

from jacketcheck.errors import DomainError
from jacketcheck.mechanics.bolt_clamp_length import clamp_lengths, least_bolt_length
from jacketcheck.mechanics.bolt_installation import (
    required_bolt_length,
    threads_clear_shear_plane,
    unthreaded_length,
)
from jacketcheck.schedule.assembly import Assembly
from jacketcheck.units import in_both_systems
from jacketcheck.units.inches import inch_text

__all__ = [
    "BoltLength",
    "Part",
    "ThreadFit",
    "bolt_length",
    "native_length",
    "thread_fit",
    "too_long",
    "washers_that_exclude_threads",
]

MOST_EXTRA_WASHERS: Final = 3
"""Washers that are added to a bolt at most (EN 1090-2:2018 8.2.4, from memory)."""
_PROTRUSION: Final = "EN 1090-2:2018 8.2.2: one thread pitch"
ROUNDING: Final = 1e-6
"""Lengths [mm] that differ by less than this are equal."""


class Part(NamedTuple):
    """Something that adds to a bolt's length [mm], and where the figure stands."""

    name: str
    length: float
    source: str


@dataclass(frozen=True, slots=True)
class BoltLength:
    """Length of a bolt [mm] and how it came about.

    Attributes
    ----------
    parts
        What is added to plates and washers.
    needed
        Least nominal length.
    ordered
        Shortest stocked length that is long enough.
    """

    parts: tuple[Part, ...]
    needed: float
    ordered: float


@dataclass(frozen=True, slots=True)
class ThreadFit:
    """How the thread of a bolt of some length lies in the joint [mm].

    Attributes
    ----------
    thread_length
        Thread length.
    full_shank
        Shank of full section under the head; None where the run-out of the thread is not known.
    least_clamp
        Least thickness between head and nut on which the nut can be tightened.
    threads_excluded
        Whether threads stay clear of all shear planes; None where the run-out is not known.
    """

    thread_length: float
    full_shank: float | None
    least_clamp: float
    threads_excluded: bool | None


def bolt_length(assembly: Assembly) -> BoltLength:
    """Needed and ordered length.

    Raises
    ------
    DomainError
        If no bolt that long is stocked.
    """
    size, product = assembly.size, assembly.product
    if size.grip_allowance is None:
        return _length_from_nut(assembly)
    needed = required_bolt_length(
        assembly.grip,
        grip_allowance=size.grip_allowance,
        washer_thickness=assembly.washer_thickness,
    )
    allowance = Part(
        "allowance for nut and tolerances", size.grip_allowance, size.source_of("grip_allowance")
    )
    return BoltLength((allowance,), float(needed), float(product.stock_length(needed)))


def _length_from_nut(assembly: Assembly) -> BoltLength:
    """Length of a product without a tabulated allowance: nut, protrusion and length tolerance."""
    size, product, rules = assembly.size, assembly.product, assembly.rules
    protrusion = size.thread_pitch * (1.0 if rules is None else max(rules.protrusion, 1.0))
    real = float(
        least_bolt_length(assembly.clamp_length, nut_height=size.nut_height, protrusion=protrusion)
    )
    ordered = float(product.stock_length(real))
    while ordered - _below_nominal(assembly, ordered) < real - ROUNDING:
        ordered = float(product.stock_length(ordered + 1.0))
    tolerance = _below_nominal(assembly, ordered)
    parts = (
        Part("height of the nut", size.nut_height, size.source_of("nut_height")),
        Part("standing out at least", protrusion, _PROTRUSION),
        Part("what a bolt may be short", tolerance, product.source_of("length_tolerances")),
    )
    return BoltLength(parts, real + tolerance, ordered)


def _below_nominal(assembly: Assembly, length: float) -> float:
    """What a bolt of some length may be shorter than it [mm]."""
    for longest, amount in assembly.product.length_tolerances:
        if length <= longest:
            return amount
    if assembly.product.length_tolerances:
        longest = assembly.product.length_tolerances[-1][0]
        raise DomainError("bolt length", length, f"at most {longest:g} to have a length tolerance")
    return 0.0


def thread_fit(assembly: Assembly, length: float) -> ThreadFit:
    """How the thread of a bolt of some length [mm] lies in the joint.

    Raises
    ------
    DomainError
        If the catalogue has no thread length for it.
    """
    size, rules = assembly.size, assembly.rules
    thread = float(size.thread_length(length))
    clear = 0.0 if rules is None else rules.clear_threads * size.thread_pitch
    clamp = clamp_lengths(
        length, thread_length=thread, nut_height=size.nut_height, clear_threads=clear
    )
    if size.transition_length is None:
        return ThreadFit(thread, None, float(clamp.least), None)
    shank = unthreaded_length(
        length, thread_length=thread, transition_length=size.transition_length
    )
    excluded = threads_clear_shear_plane(
        length,
        thread_length=thread,
        transition_length=size.transition_length,
        shear_plane_depth=assembly.shear_plane_depth,
    )
    return ThreadFit(thread, float(shank), float(clamp.least), bool(excluded))


def washers_that_exclude_threads(assembly: Assembly) -> tuple[int, BoltLength] | None:
    """Washers to add under the nut, and the bolt that goes with them, so that the shank is longer.

    None where three more washers do not help, or the run-out of the thread is not known.
    """
    here = [one for one in assembly.washers_at("nut") if one.part == "washer"]
    if not here:
        return None
    for count in range(1, MOST_EXTRA_WASHERS + 1):
        more = replace(assembly, washers=(*(assembly.washers or ()), *([here[0]] * count)))
        try:
            length = bolt_length(more)
            fit = thread_fit(more, length.ordered)
        except DomainError:
            return None
        if fit.threads_excluded and fit.least_clamp <= more.clamp_length + ROUNDING:
            return count, length
    return None


def too_long(assembly: Assembly, error: DomainError) -> str:
    """What to say where no bolt that long is made."""
    longest = assembly.product.length_increments[-1][0]
    needed = error.value
    text = in_both_systems(float(needed), "mm") if isinstance(needed, int | float) else str(needed)
    return f"{text} is longer than the longest that is stocked, {in_both_systems(longest, 'mm')}"


def native_length(assembly: Assembly, length: float) -> str:
    """A length as the product's standard writes it, e.g. ``2-1/2 in`` or ``80 mm``."""
    return f"{length:g} mm" if assembly.size.name.startswith("M") else inch_text(length)
