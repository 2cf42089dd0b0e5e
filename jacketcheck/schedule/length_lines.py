"""The schedule's lines on length and threads."""

from __future__ import annotations

from typing import Final

from jacketcheck.errors import DomainError
from jacketcheck.jacket.bolt_fit import ROUNDING
from jacketcheck.schedule.assembly import Assembly
from jacketcheck.schedule.length import (
    BoltLength,
    ThreadFit,
    bolt_length,
    native_length,
    thread_fit,
    too_long,
    washers_that_exclude_threads,
)
from jacketcheck.schedule.records import ScheduleLine, ScheduleSection, Verdict

__all__ = ["length_section"]

_GEOMETRY: Final = "geometry"


def length_section(assembly: Assembly, *, counted_threads: str) -> ScheduleSection:
    """Lines on length and threads; `counted_threads` is what the check counted."""
    lines = [ScheduleLine(ply.name, ply.thickness, "mm", "repair file") for ply in assembly.plies]
    lines.append(ScheduleLine("grip", assembly.grip, "mm", _GEOMETRY, "all plates"))
    lines.append(
        ScheduleLine(
            "washers and indicators", assembly.washer_thickness, "mm", "see washers", "all together"
        )
    )
    try:
        length = bolt_length(assembly)
        fit = thread_fit(assembly, length.ordered)
    except DomainError as error:
        lines.append(
            ScheduleLine("length to order", "none", "", assembly.product.source_of(
                "length_increments"), note=too_long(assembly, error), verdict=Verdict.NOT_EVALUATED)
        )  # fmt: skip
        return ScheduleSection("Length", tuple(lines))
    lines += _length_lines(assembly, length)
    lines += _thread_lines(assembly, fit, counted_threads)
    return ScheduleSection("Length", tuple(lines))


def _length_lines(assembly: Assembly, length: BoltLength) -> list[ScheduleLine]:
    stick_out = length.ordered - assembly.clamp_length - assembly.size.nut_height
    return [
        *(ScheduleLine(part.name, part.length, "mm", part.source) for part in length.parts),
        ScheduleLine("length needed", length.needed, "mm", _GEOMETRY, "sum of the above"),
        ScheduleLine(
            "length to order",
            length.ordered,
            "mm",
            assembly.product.source_of("length_increments"),
            "next stocked length",
            f"ordered as {native_length(assembly, length.ordered)}",
        ),
        ScheduleLine(
            "standing out of the nut",
            stick_out,
            "mm",
            _GEOMETRY,
            "length to order - grip - washers - nut",
            "nominal; the bolt's end must be at least flush with the nut",
            Verdict.OK if stick_out >= 0.0 else Verdict.PROBLEM,
        ),
    ]


def _thread_lines(assembly: Assembly, fit: ThreadFit, counted_threads: str) -> list[ScheduleLine]:
    free = " + full threads that stay clear" if fit.clear_threads > 0.0 else ""
    room = fit.least_clamp <= assembly.clamp_length + ROUNDING
    note = (
        "the nut would meet the end of the thread and clamp nothing: put washers under the head, "
        "or order a shorter bolt"
    )
    lines = [
        ScheduleLine(
            "thread length", fit.thread_length, "mm", assembly.size.source_of("thread_lengths")
        ),
        ScheduleLine(
            "least thickness between head and nut",
            fit.least_clamp,
            "mm",
            _GEOMETRY if assembly.rules is None else assembly.rules.source_of("clear_threads"),
            f"length - thread{free}",
            "" if room else note,
            Verdict.OK if room else Verdict.PROBLEM,
        ),
    ]
    if fit.full_shank is not None:
        source = assembly.size.source_of("transition_length")
        lines.append(
            ScheduleLine("full shank under the head", fit.full_shank, "mm", source,
                         "length - thread - run-out")
        )  # fmt: skip
        lines.append(
            ScheduleLine("farthest shear plane from the head", assembly.shear_plane_depth, "mm",
                         _GEOMETRY, "washers under the head + plates")
        )  # fmt: skip
    return [*lines, _shear_plane_line(assembly, fit, counted_threads)]


def _shear_plane_line(assembly: Assembly, fit: ThreadFit, counted_threads: str) -> ScheduleLine:
    """Whether the bolt that is ordered has its threads where the check counted them."""
    item, source = "threads in the shear planes", "AISC 360-22 Table J3.2: run-out excluded as well"
    if fit.threads_excluded is None:
        return ScheduleLine(
            item,
            "not known",
            "",
            assembly.size.source_of("transition_length"),
            note="the catalogue has no run-out of the thread; count threads as included",
            verdict=Verdict.NOT_EVALUATED if counted_threads == "excluded" else Verdict.STATED,
        )
    found = "excluded" if fit.threads_excluded else "included"
    basis = "full shank over the farthest shear plane"
    if found == counted_threads:
        return ScheduleLine(item, found, "", source, basis, "as the check counts", Verdict.OK)
    if counted_threads == "included":
        note = "the check counts them as included, which is the safe side"
        return ScheduleLine(item, found, "", source, basis, note, Verdict.OK)
    note = 'the check counts them as excluded: write bolts.threads = "included" and check again'
    if (cure := washers_that_exclude_threads(assembly)) is not None:
        count, length = cure
        washers = f"{count} more washer{'s' if count > 1 else ''} under the nut"
        note += f", or take {washers} and bolts of {native_length(assembly, length.ordered)}"
    return ScheduleLine(item, found, "", source, basis, note, Verdict.PROBLEM)
