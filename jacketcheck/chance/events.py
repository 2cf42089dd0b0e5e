"""Events whose probability is estimated: what the limit states of some provisions declare."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass, field
from typing import Final

from jacketcheck.errors import InputError, InputProblem
from jacketcheck.host.host import Host, Registered
from jacketcheck.limit_state import Effort, LimitState, ModelFactor, NoScatter, Scatter

__all__ = ["Event", "Events", "events_of"]

_UNDECLARED: Final = (
    "no declared scatter: every limit of it counts, its resistance taken as nominal, without what "
    "its rows tell of resistance factors; materials, dimensions and loads scatter"
)
_NOT_ASKED: Final = "was not asked for"


@dataclass(frozen=True, slots=True)
class Event:
    """One limit state whose probability of exceedance is estimated.

    Attributes
    ----------
    id
        Its identifier; with its provisions where several sets have limit states of that name.
    limit_state, provisions
        Identifier, and the set that it is asked in.
    title, effort
        As the limit state has them.
    text
        What exceeds what, in a line.
    rules
        Keys of the rules that count; all limits if empty.
    model, model_rules
        Random variable that the capacity is multiplied with, none if empty; and the keys of the
        rules that it belongs to, all if empty.
    steady
        Whether the ratio has no jumps, so that a first-order index says something.
    declared
        Whether the limit state says what of it scatters.
    """

    id: str
    limit_state: str
    provisions: str
    title: str
    effort: Effort
    text: str
    rules: tuple[str, ...] = ()
    model: str = ""
    model_rules: tuple[str, ...] = ()
    steady: bool = True
    declared: bool = True


@dataclass(frozen=True, slots=True)
class Events:
    """Everything that some provisions have to say.

    Attributes
    ----------
    asked
        Events to be estimated.
    without
        Why other limit states have no probability, by identifier.
    models
        Model factors that limit states bring themselves.
    """

    asked: tuple[Event, ...]
    without: dict[str, str] = field(default_factory=dict)
    models: tuple[ModelFactor, ...] = ()


def events_of(
    host: Host, provisions: Sequence[str], *, only: Collection[str] | None = None
) -> Events:
    """Events of the limit states of some provisions, in the order in which they are registered.

    A limit state that several sets have in common is one event.

    Parameters
    ----------
    host
        Where limit states come from.
    provisions
        Names of the sets.
    only
        Identifiers of the limit states that are asked for; all by default.

    Raises
    ------
    InputError
        If a set is not known, `only` names what has no probability, or two limit states bring
        different model factors of one name.
    """
    found: list[tuple[str, Registered]] = []
    seen: set[tuple[str, str]] = set()
    for name in provisions:
        omitted = host.omitted(name)
        for one in host.limit_states(name):
            key = one.limit_state.provisions, one.limit_state.id
            if key not in seen and one.limit_state.id not in omitted:
                seen.add(key)
                found.append((name, one))
    ids = [one.limit_state.id for _, one in found]
    events = [
        _event(name, one.limit_state, alone=ids.count(one.limit_state.id) == 1)
        for name, one in found
        if not isinstance(one.limit_state.scatter, NoScatter)
    ]
    without = {
        one.limit_state.id: one.limit_state.scatter.reason
        for _, one in found
        if isinstance(one.limit_state.scatter, NoScatter)
    }
    _require_known(only, events, without)
    if only is not None:
        left_out = [one for one in events if not {one.id, one.limit_state} & set(only)]
        without |= {one.id: _NOT_ASKED for one in left_out}
        events = [one for one in events if one not in left_out]
    return Events(tuple(events), without, _models([one.limit_state for _, one in found]))


def _event(provisions: str, limit_state: LimitState, *, alone: bool) -> Event:
    scatter = limit_state.scatter
    declared = isinstance(scatter, Scatter)
    said = scatter if isinstance(scatter, Scatter) else Scatter(_UNDECLARED)
    name = limit_state.id if alone else f"{provisions}/{limit_state.id}"
    return Event(
        id=name,
        limit_state=limit_state.id,
        provisions=provisions,
        title=limit_state.title if alone else f"{limit_state.title} ({provisions})",
        effort=limit_state.effort,
        text=said.event,
        rules=said.rules,
        model=said.model.name if isinstance(said.model, ModelFactor) else said.model,
        model_rules=said.model_rules,
        steady=said.steady,
        declared=declared,
    )


def _models(limit_states: Sequence[LimitState]) -> tuple[ModelFactor, ...]:
    found: dict[str, ModelFactor] = {}
    for one in limit_states:
        model = one.scatter.model if isinstance(one.scatter, Scatter) else ""
        if isinstance(model, ModelFactor) and found.setdefault(model.name, model) != model:
            message = f"limit state {one.id} brings another model factor of that name"
            raise InputError([InputProblem("provisions", model.name, message)], source="chance")
    return tuple(found.values())


def _require_known(
    only: Collection[str] | None, events: Sequence[Event], without: dict[str, str]
) -> None:
    known = {name for one in events for name in (one.id, one.limit_state)}

    def why_not(name: str) -> str:
        if name in without:
            return f"has no probability of its own: {without[name]}"
        return f"has no probability; known are {', '.join(sorted(known))}"

    problems = [
        InputProblem("CHECK", repr(name), why_not(name)) for name in only or () if name not in known
    ]
    if problems:
        raise InputError(problems, source="chance")
