"""From a file with bounds to the designs worth choosing from."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from importlib.metadata import version
from typing import Final

import numpy as np

from jacketcheck.api import choose_variants
from jacketcheck.coverage import left_to_the_engineer
from jacketcheck.engine.evaluate import evaluate
from jacketcheck.errors import JacketcheckError
from jacketcheck.host.host import Host
from jacketcheck.inputs.load import InputFile
from jacketcheck.inputs.repair_file import RepairInput
from jacketcheck.inputs.sizing import Sizing, TriedAddedBars
from jacketcheck.jacket.build import build_jacket
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.jacket.quantities import quantities
from jacketcheck.results import Result, Status, worst_status
from jacketcheck.sizing.axes import Axis, default_sizing
from jacketcheck.sizing.fates import Fate, Fates
from jacketcheck.sizing.infeasibility import explain_infeasibility
from jacketcheck.sizing.objectives import Objectives, field_hours
from jacketcheck.sizing.pareto import beaten_by
from jacketcheck.sizing.proof import prove
from jacketcheck.sizing.report import SizedDesign, SizingReport
from jacketcheck.sizing.screening import Tick, no_tick, screen
from jacketcheck.sizing.search import Found, search
from jacketcheck.sizing.space import Space, space_of

__all__ = ["MOST_ANALYSES", "size"]

MOST_ANALYSES: Final = 5000
"""Designs that come to section analysis unless more are asked for."""


def size(
    repair: InputFile,
    *,
    host: Host,
    variant: str | None = None,
    provisions: Iterable[str] = ("us",),
    most: int = MOST_ANALYSES,
    tick: Tick = no_tick,
) -> SizingReport:
    """Find the designs within a file's bounds that work and that no other one beats.

    Parameters
    ----------
    repair
        A file that has been read; its table ``sizing`` holds the bounds. Without one, stock plates
        and all sizes of the bolts are tried.
    host
        Catalogue and limit states of plug-ins.
    variant
        Variant to start from; by default the file without overrides.
    provisions
        Sets of provisions; every design must satisfy all of them.
    most
        Designs that may come to section analysis.
    tick
        Told how far the work is.

    Raises
    ------
    InputError
        If variant, provisions or bounds cannot be used.

    Notes
    -----
    The grid of all values is searched in full. Designs are compared by steel mass, bolts and hours
    in the field. Closed-form limit states and bond are evaluated first under the least demand that
    a design can have, which rules out most of the grid for good; what is left is evaluated in full
    in the order of its costs, until nothing is left that might be better than what works.
    """
    name = choose_variants(repair, None if variant is None else [variant])[0]
    start = repair.variants[name]
    asked = tuple(dict.fromkeys((provisions,) if isinstance(provisions, str) else provisions))
    titles = {one: host.title_of(one) for one in asked}
    sizing, by_default = _bounds(start, host)
    space = space_of(start, sizing, catalog=host.catalog)
    fates, screened = screen(space, sizing.field_work, host=host, provisions=asked, tick=tick)
    found = search(space, fates, host=host, provisions=asked, most=most, tick=tick)
    task = _Task(space, fates, sizing, host, asked)
    return SizingReport(
        not_covered=left_to_the_engineer(breakout_open=start.breakout_is_open),
        job=start.job,
        source=repair.source,
        digest=repair.digest,
        variant=name,
        provisions_titles=titles,
        axes=_named(space.axes, by_default=by_default),
        tries_without_bars=space.tries_without_bars,
        default_bounds=by_default,
        work=sizing.field_work,
        count=space.count,
        fates={fate: fates.count(fate) for fate in Fate},
        refusals=fates.reasons_of(slice(None), Fate.CANNOT_BE_BUILT),
        ruled_out={
            fate: fates.reasons_of(slice(None), fate)
            for fate in (Fate.CLOSED_FORM, Fate.BOND, Fate.SECTIONS, Fate.NOT_EVALUATED)
        },
        unevaluated=dict(fates.explanations),
        unsettled=_unsettled(fates, found),
        analysed=found.analysed,
        most=most,
        front=tuple(task.sized(found)),
        infeasibility=None
        if found.front.size
        else explain_infeasibility(
            space, fates, screened, found, host=host, provisions=asked, tick=tick
        ),
        base=repair.base,
        titles=_limit_state_titles(host, asked),
        plugins=host.plugins,
        version=version("jacketcheck"),
        switched_off=host.switched_off,
    )


def _bounds(start: RepairInput, host: Host) -> tuple[Sizing, bool]:
    """Bounds of the search, and whether they are the default ones: a file may name none."""
    default = default_sizing(start, host.catalog)
    if start.sizing is None:
        return default, True
    work = start.sizing.field_work
    bare = [Sizing(field_work=work, added_bars=bars) for bars in (None, TriedAddedBars())]
    if start.sizing in bare:
        return default.model_copy(update={"field_work": work}), True
    return start.sizing, False


def _named(axes: Sequence[Axis], *, by_default: bool) -> tuple[Axis, ...]:
    """Axes whose sources say so where the values are not from the file."""
    if not by_default:
        return tuple(axes)
    return tuple(
        axis if axis.is_stock or axis.is_written else replace(axis, source="tried by default")
        for axis in axes
    )


def _unsettled(fates: Fates, found: Found) -> int:
    """Designs that could not be evaluated and that nothing in the front beats."""
    unknown = fates.having(Fate.NOT_EVALUATED)
    beaten = beaten_by(fates.costs[unknown], fates.costs[found.front])
    return int(np.count_nonzero(~beaten))


def _limit_state_titles(host: Host, provisions: Sequence[str]) -> dict[str, str]:
    return {
        one.limit_state.id: one.limit_state.title
        for name in provisions
        for one in host.limit_states(name)
    }


@dataclass(frozen=True)
class _Task:
    """What is needed to describe a design of the front."""

    space: Space
    fates: Fates
    sizing: Sizing
    host: Host
    provisions: tuple[str, ...]

    def sized(self, found: Found) -> Iterator[SizedDesign]:
        """Describe the designs of the front, each checked once more by itself."""
        for number, design in enumerate(found.front.tolist(), start=1):
            yield self._one(number, design)

    def _one(self, number: int, design: int) -> SizedDesign:
        repair, cost = self.space.repair(design), self.fates.costs[design]
        jacket = build_jacket(repair, catalog=self.host.catalog)
        taken = quantities(jacket)
        same = np.all(self.fates.costs == cost, axis=1)
        same &= np.isin(self.fates.fate, (Fate.BEATEN, Fate.WORKS))
        return SizedDesign(
            number=number,
            values=self.space.values(design),
            repair=repair,
            costs=Objectives(
                steel_mass=float(taken.steel_mass),
                bolt_count=round(float(taken.bolt_count)),
                field_hours=float(field_hours(taken, self.sizing.field_work)),
            ),
            quantities=taken,
            bolt_rows=round(float(jacket.bolts.rows)),
            governing=self._governing(jacket),
            proof=prove(cost, self.fates),
            alike=int(np.count_nonzero(same)) - 1,
        )

    def _governing(self, jacket: Jacket) -> Result:
        results = [
            result
            for name in self.provisions
            for result in evaluate(jacket, host=self.host, provisions=name)
        ]
        if worst_status(results) is not Status.OK:
            # evaluated among many it passed; one of the two evaluations is wrong
            raise JacketcheckError("a design that passes among others does not pass by itself")
        return max(results, key=lambda result: round(result.severity, 9))
