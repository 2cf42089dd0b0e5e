"""From a file and what varies to the ratios of every design."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Iterator, Sequence
from difflib import get_close_matches
from importlib.metadata import version
from typing import Final, TypeAlias

import numpy as np

from jacketcheck.api import choose_variants
from jacketcheck.coverage import left_to_the_engineer
from jacketcheck.engine.ratios import DesignRatios, merged_ratios, ratios_of_designs
from jacketcheck.errors import InputError, InputProblem
from jacketcheck.host.host import Host
from jacketcheck.inputs.load import InputFile
from jacketcheck.inputs.repair_file import RepairInput
from jacketcheck.inputs.written import shown
from jacketcheck.jacket.designs import take
from jacketcheck.jacket.many import Indexes, assemble_designs
from jacketcheck.sweep.plan import Plan, plan_of
from jacketcheck.sweep.report import SweepReport
from jacketcheck.sweep.vary import read_varied

__all__ = ["Tick", "sweep"]

Tick: TypeAlias = Callable[[str, int, int], None]

_AT_A_TIME: Final = 512


def _no_tick(what: str, done: int, total: int) -> None:
    pass


def sweep(
    repair: InputFile,
    varied: Sequence[str],
    *,
    host: Host,
    variant: str | None = None,
    provisions: Iterable[str] = ("us",),
    only: Collection[str] | None = None,
    side_by_side: bool = False,
    tick: Tick = _no_tick,
) -> SweepReport:
    """Evaluate designs that differ in some fields.

    Parameters
    ----------
    repair
        A file that has been read.
    varied
        What varies, each as ``path=start:stop:count`` or ``path=value,value,...``.
    host
        Catalogue and limit states of plug-ins.
    variant
        Variant to start from; by default the file without overrides.
    provisions
        Sets of provisions to check by.
    only
        Limit states to evaluate; all by default.
    side_by_side
        Whether values go together one by one instead of in every combination.
    tick
        Told how far the work is.

    Raises
    ------
    InputError
        If variant, fields, values, provisions or limit states cannot be used.
    """
    name = choose_variants(repair, None if variant is None else [variant])[0]
    start = repair.variants[name]
    asked = tuple(dict.fromkeys((provisions,) if isinstance(provisions, str) else provisions))
    titles = {one: host.title_of(one) for one in asked}
    states = {
        one.limit_state.id: one.limit_state.title for p in asked for one in host.limit_states(p)
    }
    _require_known(only, states)
    plan = plan_of(
        [read_varied(text, start, catalog=host.catalog) for text in varied],
        side_by_side=side_by_side,
    )
    refusals: dict[int, str] = {}
    parts = _evaluated(start, plan, refusals, host, asked, only, tick)
    return SweepReport(
        not_covered=left_to_the_engineer(breakout_open=start.breakout_is_open),
        job=start.job,
        source=repair.source,
        digest=repair.digest,
        variant=name,
        provisions_titles=titles,
        plan=plan,
        ratios=merged_ratios(parts, count=plan.count),
        refusals=refusals,
        titles=states,
        plugins=host.plugins,
        version=version("jacketcheck"),
        switched_off=host.switched_off,
    )


def _evaluated(  # noqa: PLR0917 - what a sweep consists of, handed on once
    start: RepairInput,
    plan: Plan,
    refusals: dict[int, str],
    host: Host,
    provisions: tuple[str, ...],
    only: Collection[str] | None,
    tick: Tick,
) -> Iterator[tuple[Indexes, DesignRatios]]:
    """Ratios of the designs that can be built, some at a time; the others are written down."""
    done = 0
    for values, designs in plan.groups():
        built = assemble_designs(start, values, count=designs.size, catalog=host.catalog)
        for refusal in built.refusals:
            reason = f"{refusal.path}: {refusal.reason}" if refusal.path else refusal.reason
            refusals |= dict.fromkeys(designs[refusal.indexes].tolist(), reason)
            done += refusal.indexes.size
        if built.jacket is None:
            continue
        for some in _portions(built.indexes.size):
            jacket = take(built.jacket, some)
            found = ratios_of_designs(jacket, host=host, provisions=provisions, only=only)
            yield designs[built.indexes[some]], found
            done += some.size
            tick("designs", done, plan.count)


def _portions(count: int) -> Iterator[Indexes]:
    for start in range(0, count, _AT_A_TIME):
        yield np.arange(start, min(start + _AT_A_TIME, count))


def _require_known(only: Collection[str] | None, known: Collection[str]) -> None:
    problems = []
    for name in only or ():
        if name not in known:
            near = get_close_matches(name, known, n=3)
            hint = f"did you mean {' or '.join(near)}?" if near else f"known are {', '.join(known)}"
            problems.append(InputProblem("--only", shown(name), f"is not a limit state; {hint}"))
    if problems:
        raise InputError(problems, source="options")
