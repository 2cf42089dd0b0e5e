"""Why no design of a search works: what stands in the way, and which bound to relax."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any, Final

import numpy as np

from jacketcheck.host.host import Host
from jacketcheck.sizing.fates import Fate, Fates
from jacketcheck.sizing.probing import Probe, Relaxation
from jacketcheck.sizing.screening import Tick, no_tick
from jacketcheck.sizing.search import Found
from jacketcheck.sizing.space import Space
from jacketcheck.sizing.tally import StateTally, Tally
from jacketcheck.sizing.way_out import WayOut, find_way_out, stay

__all__ = ["Infeasibility", "Obstacle", "explain_infeasibility"]

_TARGETS: Final = 4


@dataclass(frozen=True, slots=True)
class Obstacle:
    """One limit state over the designs that were looked at.

    Attributes
    ----------
    limit_state
        Its id.
    smallest_ratio
        Smallest ratio that any of the designs reaches; under the least demand where `at_least`.
    design
        Number of the design that reaches it.
    evaluated, passed
        Number of designs.
    at_least
        Whether ratios are those under the least demand, which the full evaluation can only raise.
    """

    limit_state: str
    smallest_ratio: float
    design: int
    evaluated: int
    passed: int
    at_least: bool


@dataclass(frozen=True, slots=True)
class Infeasibility:
    """Why no design works.

    Attributes
    ----------
    obstacles
        Limit states that no design passes of those that came so far, the worst first; where there
        are none, all that any design fails.
    conflicts
        Pairs of limit states that designs pass, but none passes together.
    nearest
        Design whose largest ratio is smallest, among those evaluated furthest; -1 if there is none.
    nearest_values
        Value of each of its axes, by path.
    nearest_exceeds
        Limit states that it exceeds, with their ratios.
    nearest_follows
        What those among them follow from that are consequences of others.
    relaxations
        Bounds whose relaxation helps a limit state that no design passes even under the least
        demand, each by itself, the most promising first.
    way_out
        Bounds that together let a design work; None where nothing that was tried helps.
    """

    obstacles: tuple[Obstacle, ...]
    conflicts: tuple[tuple[str, str], ...]
    nearest: int
    nearest_values: dict[str, Any]
    nearest_exceeds: dict[str, float]
    nearest_follows: dict[str, tuple[str, ...]]
    relaxations: tuple[Relaxation, ...]
    way_out: WayOut | None


def explain_infeasibility(
    space: Space,
    fates: Fates,
    screened: Tally,
    found: Found,
    *,
    host: Host,
    provisions: Sequence[str],
    tick: Tick = no_tick,
) -> Infeasibility:
    """Find out which limit states no design passes, and which bounds are worth relaxing.

    Parameters
    ----------
    space, fates, screened, found
        Designs, their fates, and what screening and search have counted.
    host, provisions
        What designs must satisfy.
    tick
        Told how far the work is.

    Notes
    -----
    For each limit state that the least demand already rules out everywhere, values beyond the
    bounds are tried one field at a time, from the design that comes nearest to it. Then the design
    that comes nearest to working is led out of the bounds, as many fields as it takes.
    """
    probe = Probe(space, host, tuple(provisions))
    nearest = _nearest(fates, found)
    ratios = probe.in_full(nearest) if nearest >= 0 else {}
    causes = probe.causes(ratios)
    blocking = _blocking(screened, found)
    targets = [one for one in blocking if one.at_least][:_TARGETS]
    by_design: dict[int, list[str]] = {one.design: [] for one in targets}
    for one in targets:
        by_design[one.design].append(one.limit_state)
    relaxations = [
        one for design, names in by_design.items() for one in probe.relaxations(names, design)
    ]
    return Infeasibility(
        obstacles=blocking or _all_failed(screened, found),
        conflicts=(*screened.conflicts(), *found.full.conflicts()),
        nearest=nearest,
        nearest_values=space.values(nearest) if nearest >= 0 else {},
        nearest_exceeds=dict(
            sorted(
                ((name, ratio) for name, ratio in ratios.items() if ratio > 1.0),
                key=lambda pair: (pair[0] in causes, -pair[1]),
            )
        ),
        nearest_follows=causes,
        relaxations=tuple(sorted(relaxations, key=_promise)),
        way_out=_way_out(space, probe, nearest, ratios, _out_of_reach(targets, relaxations), tick),
    )


def _out_of_reach(targets: list[Obstacle], relaxations: list[Relaxation]) -> tuple[str, ...]:
    """Limit states that stay infinite in every design, whichever bound is passed."""
    helped = {one.limit_state for one in relaxations}
    return tuple(
        one.limit_state
        for one in targets
        if np.isinf(one.smallest_ratio) and one.limit_state not in helped
    )


def _way_out(  # noqa: PLR0917 - what has been found, handed on once
    space: Space,
    probe: Probe,
    nearest: int,
    ratios: dict[str, float],
    stuck: tuple[str, ...],
    tick: Tick,
) -> WayOut | None:
    """Way out from the nearest design; none is looked for where a limit state is out of reach."""
    if not ratios:
        return None
    if stuck:
        return stay(ratios, stuck, probe.causes(ratios))
    return find_way_out(space, probe, nearest, tick=lambda done, most: tick("ways out", done, most))


def _promise(one: Relaxation) -> tuple[bool, float]:
    """Key to sort by: what brings the limit state to 1 first, then by what governs."""
    then = np.inf if np.isnan(one.then_ratio) else one.then_ratio
    return one.ratio > 1.0, then


def _obstacle(name: str, one: StateTally, *, at_least: bool) -> Obstacle:
    return Obstacle(
        name, one.smallest_ratio, one.design, one.evaluated, one.passed, at_least=at_least
    )


def _blocking(screened: Tally, found: Found) -> tuple[Obstacle, ...]:
    """Limit states that no design passes."""
    blocking = [
        _obstacle(name, tally.states[name], at_least=tally is not found.full)
        for tally in (screened, found.bond, found.full)
        for name in tally.never_passed()
    ]
    return tuple({one.limit_state: one for one in blocking}.values())


def _all_failed(screened: Tally, found: Found) -> tuple[Obstacle, ...]:
    """Limit states that some design fails, those with the fewest passes first."""
    failed = [
        _obstacle(name, one, at_least=tally is not found.full)
        for tally in (screened, found.bond, found.full)
        for name, one in tally.states.items()
        if one.passed < one.evaluated
    ]
    return tuple(sorted(failed, key=lambda one: one.passed / one.evaluated))


def _nearest(fates: Fates, found: Found) -> int:
    """Design that exceeds least of those that came furthest; of equal ones, the fewest states."""
    if found.worst_ratio:
        designs, ratio = np.array(list(found.worst_ratio)), np.array([*found.worst_ratio.values()])
    else:
        designs = np.flatnonzero(np.isin(fates.fate, (Fate.CLOSED_FORM, Fate.BOND)))
        ratio = fates.least_ratio[designs]
    if not designs.size:
        return -1
    return int(designs[np.lexsort((designs, fates.exceeded[designs], ratio))[0]])
