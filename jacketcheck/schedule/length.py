"""Length of the bolts: what the grip needs, what is stocked, and how the thread lies."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Final

from jacketcheck.errors import DomainError
from jacketcheck.jacket.bolt_fit import ROUNDING, Allowance, length_allowances, thread_lie
from jacketcheck.schedule.assembly import Assembly, with_parts
from jacketcheck.units import in_both_systems
from jacketcheck.units.inches import inch_text

__all__ = [
    "BoltLength",
    "ThreadFit",
    "bolt_length",
    "native_length",
    "thread_fit",
    "too_long",
    "washers_that_exclude_threads",
]

MOST_EXTRA_WASHERS: Final = 3
"""Washers that are added to a bolt at most (EN 1090-2:2018 8.2.4, from memory)."""


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

    parts: tuple[Allowance, ...]
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
    clear_threads
        Length of full thread that must stay free between nut and shank.
    least_clamp
        Least thickness between head and nut on which the nut can be tightened.
    threads_excluded
        Whether threads stay clear of all shear planes; None where the run-out is not known.
    """

    thread_length: float
    full_shank: float | None
    clear_threads: float
    least_clamp: float
    threads_excluded: bool | None


def bolt_length(assembly: Assembly) -> BoltLength:
    """Needed and ordered length.

    Raises
    ------
    DomainError
        If no bolt that long is stocked.
    """
    fit, product = assembly.fit, assembly.product
    needed, ordered = float(fit.needed), float(fit.length)
    if not math.isfinite(ordered):
        longest = product.length_increments[-1][0]
        raise DomainError("bolt length", needed, f"at most {longest:g}, the longest stocked")
    parts = length_allowances(product, assembly.size)
    if assembly.size.grip_allowance is None:
        short = needed - assembly.clamp_length - sum(part.length for part in parts)
        source = product.source_of("length_tolerances")
        short = short if short > ROUNDING else 0.0
        parts += (Allowance("what a bolt may be short", short, source),)
    return BoltLength(parts, needed, ordered)


def thread_fit(assembly: Assembly, length: float) -> ThreadFit:
    """How the thread of a bolt of some length [mm] lies in the joint.

    Raises
    ------
    DomainError
        If the catalogue has no thread length for it.
    """
    lie = thread_lie(assembly.product, assembly.size, length)
    if not math.isfinite(lie.least_clamp):
        raise DomainError("bolt length", length, "one with a thread length in the catalogue")
    shank = None if lie.full_shank is None else float(lie.full_shank)
    return ThreadFit(
        thread_length=float(lie.thread_length),
        full_shank=shank,
        clear_threads=float(lie.clear_threads),
        least_clamp=float(lie.least_clamp),
        threads_excluded=None if shank is None else shank >= assembly.shear_plane_depth - ROUNDING,
    )


def washers_that_exclude_threads(assembly: Assembly) -> tuple[int, BoltLength] | None:
    """Washers to add under the nut, and the bolt that goes with them, so that the shank is longer.

    None where three more washers do not help, or the run-out of the thread is not known.
    """
    here = [one for one in assembly.washers_at("nut") if one.part == "washer"]
    if not here:
        return None
    for count in range(1, MOST_EXTRA_WASHERS + 1):
        more = with_parts(assembly, washers=(*(assembly.washers or ()), *([here[0]] * count)))
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
