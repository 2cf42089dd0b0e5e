"""How each limit state stands in a set of provisions: its own, inherited or left out."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal, TypeAlias

from jacketcheck.host.host import Host, Registered

__all__ = ["Standing", "Way", "standings"]

Way: TypeAlias = Literal["own", "replaces", "inherited", "omitted"]


@dataclass(frozen=True, slots=True)
class Standing:
    """A limit state in a set of provisions.

    Attributes
    ----------
    registered
        The limit state that counts, and who brought it.
    way
        ``own``: brought by the set, and new; ``replaces``: brought by it instead of an inherited
        one; ``inherited``; ``omitted``: inherited and left out.
    other
        Provisions whose limit state is replaced, inherited or left out; empty for an own one.
    reason
        Why it is left out.
    """

    registered: Registered
    way: Way
    other: str = ""
    reason: str = ""


def standings(host: Host, provisions: str) -> Iterator[Standing]:
    """Every limit state of a set of provisions; raises InputError like `Host.lineage`."""
    parent = host.lineage(provisions)[-1].inherits
    inherited = (
        {} if parent is None else {one.limit_state.id: one for one in host.limit_states(parent)}
    )
    omitted = host.omitted(provisions)
    for one in host.limit_states(provisions):
        name, home = one.limit_state.id, one.limit_state.provisions
        if name in omitted:
            yield Standing(one, "omitted", home, omitted[name])
        elif home != provisions:
            yield Standing(one, "inherited", home)
        elif name in inherited:
            yield Standing(one, "replaces", inherited[name].limit_state.provisions)
        else:
            yield Standing(one, "own")
