"""The bolt that would be ordered: whether it can be tightened, and where its thread lies."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.errors import NotEvaluatedError
from jacketcheck.jacket.bolt_fit import ROUNDING
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.limit_state import limit_state
from jacketcheck.limit_states._rows import LAYOUT_RULE, not_applicable
from jacketcheck.limit_states.editions import AISC
from jacketcheck.mechanics._arrays import Real
from jacketcheck.results import Result, Steps

__all__ = ["bolt_threads"]

_TITLE: Final = "Threads of the seam bolts"
_CLAUSE: Final = f"{AISC} Table J3.2, threads and their run-out excluded"
_GEOMETRY: Final = "geometry"
_NOTE: Final = (
    "the bolt is the shortest stocked one that the grip with its washers asks for; another length "
    "or other washers on site change the answer"
)


@limit_state(
    "bolt-threads",
    title=_TITLE,
    effort="closed-form",
    scatter=LAYOUT_RULE,
)
def bolt_threads(jacket: Jacket) -> list[Result]:
    """The nut must not meet the end of the thread; threads said to be excluded must be."""
    if not np.all(np.isfinite(jacket.bolts.fit.least_clamp)):
        raise NotEvaluatedError(
            f"no {jacket.bolts.product} {jacket.bolts.size} is stocked, or has a thread length in "
            "the catalogue, that is long enough for the grip"
        )
    return [_tightening(jacket), _shear_planes(jacket)]


def _add_bolt(jacket: Jacket, steps: Steps) -> None:
    """Write down the bolt that is ordered, and why."""
    bolts, fit = jacket.bolts, jacket.bolts.fit
    steps.add("g", "all plates", jacket.grip, "mm", "input sleeve.thickness, splice")
    steps.add("w_h", "washers under the head", fit.head_washers, "mm", fit.washer_source)
    steps.add("w_n", "washers under the nut", fit.nut_washers, "mm", fit.washer_source)
    steps.add("l_req", "g + w_h + w_n + nut, protrusion and tolerances", fit.needed, "mm",
              fit.needed_source)  # fmt: skip
    steps.add("l", f"next stocked length of {bolts.product}, {bolts.size}", fit.length, "mm",
              fit.length_source)  # fmt: skip
    steps.add("b", "length of the thread", fit.thread_length, "mm", fit.thread_source)


def _tightening(jacket: Jacket) -> Result:
    """On a shorter grip than the unthreaded length the nut turns without clamping."""
    steps, fit = Steps(), jacket.bolts.fit
    _add_bolt(jacket, steps)
    source = fit.clear_threads_source or _GEOMETRY
    steps.add("c", "full threads that stay clear", fit.clear_threads, "mm", source)
    need = steps.add("g_min", "max(l − b, 0) + c", fit.least_clamp, "mm", source)
    provided = steps.add("g_w", "g + w_h + w_n", _clamped(jacket), "mm", _GEOMETRY)
    return Result(
        _TITLE, "shortest grip on which the nut clamps", need, provided, "mm", source, steps.lines,
        notes=(_NOTE,), without_margin=True,
    )  # fmt: skip


def _clamped(jacket: Jacket) -> Real:
    fit = jacket.bolts.fit
    clamped: Real = np.add(jacket.grip, np.add(fit.head_washers, fit.nut_washers))
    return clamped


def _shear_planes(jacket: Jacket) -> Result:
    """The full shank must reach through the shear plane farthest from the head."""
    bolts, fit, where = jacket.bolts, jacket.bolts.fit, "full shank through all shear planes"
    if bolts.threads == "included":
        reason = "the check counts threads in the shear planes, wherever they lie"
        return not_applicable(_TITLE, reason, location=where, clause=_CLAUSE)
    if fit.full_shank is None or fit.run_out is None:
        raise NotEvaluatedError(
            f"the catalogue does not say how the thread of {bolts.product} {bolts.size} runs out; "
            'write bolts.threads = "included"'
        )
    steps = Steps()
    _add_bolt(jacket, steps)
    steps.add("x", "run-out of the thread", fit.run_out, "mm", fit.run_out_source)
    shank = steps.add("l_s", "max(l − b − x, 0)", fit.full_shank, "mm", _GEOMETRY)
    steps.add("t_o", "outside plate, at the nut", jacket.splice.outside_thickness, "mm",
              "input splice.thickness")  # fmt: skip
    depth = steps.add("z", "w_h + g − t_o", _farthest_plane(jacket), "mm", _GEOMETRY)
    # a shank that ends in the plane, up to rounding of a conversion, reaches it
    capacity = np.where(np.abs(np.subtract(shank, depth)) < ROUNDING, depth, shank)[()]
    return Result(
        _TITLE, where, depth, capacity, "mm", _CLAUSE, steps.lines,
        notes=(_NOTE,), without_margin=True,
    )  # fmt: skip


def _farthest_plane(jacket: Jacket) -> Real:
    """From under the head to the shear plane next to the nut [mm]."""
    inner = np.subtract(jacket.grip, jacket.splice.outside_thickness)
    depth: Real = np.add(jacket.bolts.fit.head_washers, inner)
    return depth
