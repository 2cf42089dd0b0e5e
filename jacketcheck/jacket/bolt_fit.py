"""Which bolt goes into the seam: its stocked length, and how its thread lies in the grip."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Final, NamedTuple

import numpy as np

from jacketcheck.catalog.bands import Bands
from jacketcheck.catalog.records import BoltProduct, BoltSize
from jacketcheck.jacket._roles import label
from jacketcheck.mechanics._arrays import Floats, Real
from jacketcheck.mechanics.bolt_clamp_length import clamp_lengths, least_bolt_length
from jacketcheck.mechanics.bolt_installation import required_bolt_length, unthreaded_length

__all__ = ["ROUNDING", "BoltFit", "ThreadLie", "bolt_fit", "length_allowances", "thread_lie"]

ROUNDING: Final = 1e-6
"""Lengths [mm] that differ by less than this are equal."""
_LEAST_PROTRUSION: Final = 1.0
_PROTRUSION: Final = "EN 1090-2:2018 8.2.2: one thread pitch"


class ThreadLie(NamedTuple):
    """How the thread of a bolt of some length lies [mm].

    NaN where the catalogue has no thread length for a bolt that long.

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
    """

    thread_length: Real
    full_shank: Real | None
    clear_threads: Real
    least_clamp: Real


@dataclass(frozen=True, slots=True)
class BoltFit:
    """The bolt that is ordered, and what lies between its head and its nut besides plates [mm].

    Attributes
    ----------
    head_washers, nut_washers
        Thickness of all washers and indicators under the head and under the nut; zero where the
        catalogue does not say which the product needs.
    needed
        Least nominal length.
    length
        Shortest stocked length that is long enough; NaN where none is stocked.
    thread_length, run_out
        Length of its thread, and length over which the thread runs out into the shank; the latter
        None where the catalogue has none.
    full_shank
        Shank of full section under the head; None where the run-out is not known.
    clear_threads
        Length of full thread that must stay free between nut and shank.
    least_clamp
        Least thickness between head and nut on which the nut can be tightened.
    """

    head_washers: Real
    nut_washers: Real
    needed: Real
    length: Real
    thread_length: Real
    run_out: Real | None
    full_shank: Real | None
    clear_threads: Real
    least_clamp: Real
    washer_source: str = label()
    needed_source: str = label()
    length_source: str = label()
    thread_source: str = label()
    run_out_source: str = label()
    clear_threads_source: str = label()


class Allowance(NamedTuple):
    """Something that adds to a bolt's length [mm], and where the figure stands."""

    name: str
    length: float
    source: str


def length_allowances(product: BoltProduct, size: BoltSize) -> tuple[Allowance, ...]:
    """What a bolt must be longer than plates and washers, its own length tolerance left out."""
    if size.grip_allowance is not None:
        source = size.source_of("grip_allowance")
        return (Allowance("allowance for nut and tolerances", size.grip_allowance, source),)
    asked = 0.0 if product.rules is None else product.rules.protrusion
    own = product.rules is not None and asked >= _LEAST_PROTRUSION
    return (
        Allowance("height of the nut", size.nut_height, size.source_of("nut_height")),
        Allowance(
            "standing out at least",
            size.thread_pitch * max(asked, _LEAST_PROTRUSION),
            product.rules.source_of("protrusion") if own and product.rules else _PROTRUSION,
        ),
    )


def bolt_fit(
    product: BoltProduct,
    size: BoltSize,
    *,
    grip: Real,
    head_washers: Real = 0.0,
    nut_washers: Real = 0.0,
    washer_source: str = "",
) -> BoltFit:
    """The bolt for a grip.

    Parameters
    ----------
    product, size
        Catalogue entries of the bolt.
    grip
        Thickness of all plates [mm], above zero; scalar or array over designs.
    head_washers, nut_washers
        Thickness of all washers and indicators under the head and under the nut [mm].
    washer_source
        Rules that ask for them.
    """
    bare = _bare_length(product, size, grip=grip, washers=np.add(head_washers, nut_washers))
    tolerances = () if size.grip_allowance is not None else product.length_tolerances
    stocked = product.stocked_lengths
    short = _banded(tolerances, stocked) if tolerances else np.zeros(stocked.size)
    usable = np.isfinite(short)
    place = np.searchsorted((stocked - short)[usable], np.asarray(bare) - ROUNDING)
    length = np.append(stocked[usable], np.nan)[place]
    lie = thread_lie(product, size, length[()])
    rules = product.rules
    return BoltFit(
        head_washers=head_washers,
        nut_washers=nut_washers,
        needed=np.add(bare, np.append(short[usable], 0.0)[place])[()],
        length=length[()],
        thread_length=lie.thread_length,
        run_out=size.transition_length,
        full_shank=lie.full_shank,
        clear_threads=lie.clear_threads,
        least_clamp=lie.least_clamp,
        washer_source=washer_source or "no rule asks for one, or none is known",
        needed_source="; ".join(part.source for part in length_allowances(product, size)),
        length_source=product.source_of("length_increments"),
        thread_source=size.source_of("thread_lengths"),
        run_out_source=size.source_of("transition_length"),
        clear_threads_source="" if rules is None else rules.source_of("clear_threads"),
    )


def _bare_length(product: BoltProduct, size: BoltSize, *, grip: Real, washers: Real) -> Real:
    """Real length that a bolt must have [mm], whatever it may be short of its nominal one."""
    if size.grip_allowance is not None:
        return required_bolt_length(
            grip, grip_allowance=size.grip_allowance, washer_thickness=washers
        )
    nut, protrusion = length_allowances(product, size)
    return least_bolt_length(
        np.add(grip, washers), nut_height=nut.length, protrusion=protrusion.length
    )


def thread_lie(product: BoltProduct, size: BoltSize, length: Real) -> ThreadLie:
    """How the thread of bolts of some length [mm] lies; NaN for a length that is NaN."""
    thread = _banded(size.thread_lengths, length)
    clear: Floats = np.zeros_like(thread)
    if product.rules is not None:
        slenderness = np.divide(length, size.diameter)
        clear = size.thread_pitch * _banded(product.rules.clear_threads, slenderness)
    known = np.isfinite(thread) & np.isfinite(clear)

    def where_known(formula: Callable[[Floats, Floats, Floats], Real]) -> Real:
        # lengths without a thread get one that any formula takes, and no answer
        taken = (np.where(known, figure, 1.0) for figure in (length, thread, clear))
        answer: Floats = np.where(known, formula(*taken), np.nan)
        return answer[()]

    least = where_known(
        lambda bolt, threaded, free: (
            clamp_lengths(
                bolt, thread_length=threaded, nut_height=size.nut_height, clear_threads=free
            ).least
        )
    )
    run_out = size.transition_length
    shank = None
    if run_out is not None:
        shank = where_known(
            lambda bolt, threaded, _: unthreaded_length(
                bolt, thread_length=threaded, transition_length=run_out
            )
        )
    return ThreadLie(thread[()], shank, clear[()], least)


def _banded(bands: Bands, value: Real) -> Floats:
    """Figure of the band that holds a value; NaN beyond the last band, and for a NaN."""
    limits, figures = zip(*bands, strict=True)
    # a NaN sorts behind every number
    index = np.searchsorted(np.asarray(limits) + ROUNDING, np.asarray(value, dtype=float))
    found: Floats = np.append(figures, np.nan)[index]
    return found
