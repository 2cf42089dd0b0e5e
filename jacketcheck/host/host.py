"""The host: what all plug-ins bring, in one place, with a name to every problem."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from jacketcheck.catalog.catalog import Catalog
from jacketcheck.errors import InputError, InputProblem
from jacketcheck.host.isolation import DEFAULT_TIME_LIMIT
from jacketcheck.inputs.written import shown
from jacketcheck.limit_state import LimitState, Provisions

__all__ = ["Host", "PluginInfo", "PluginProblem", "Registered"]


@dataclass(frozen=True, slots=True)
class PluginInfo:
    """A plug-in as it is listed.

    Attributes
    ----------
    name
        Name of its entry point.
    distribution, version
        What was installed.
    built_in
        Whether it is the package's own.
    provisions, limit_states, entries
        What it brought; limit states as ``provisions/id``, catalogue entries as ``bars/No. 9``.
    problems
        Why it, or a part of it, could not be used.
    """

    name: str
    distribution: str
    version: str
    built_in: bool = False
    provisions: tuple[str, ...] = ()
    limit_states: tuple[str, ...] = ()
    entries: tuple[str, ...] = ()
    problems: tuple[str, ...] = ()

    @property
    def origin(self) -> str:
        """Distribution with its version."""
        return f"{self.distribution} {self.version}"


@dataclass(frozen=True, slots=True)
class PluginProblem:
    """Something that a plug-in brought and that cannot be used; it becomes a visible row.

    `provisions` is None where the problem may touch any provisions.
    """

    plugin: PluginInfo
    what: str
    message: str
    provisions: str | None = None


@dataclass(frozen=True, slots=True)
class Registered:
    """A limit state and the plug-in that brought it."""

    limit_state: LimitState
    plugin: PluginInfo


@dataclass(frozen=True)
class Host:
    """All plug-ins of one run; see `jacketcheck.host.load_host`.

    Attributes
    ----------
    plugins
        In the order in which they were asked.
    catalog
        Built-in entries and those of plug-ins.
    problems
        Whatever could not be used.
    time_limit
        Seconds that one call of a foreign limit state may take.
    switched_off
        What was left out on purpose.
    given_up
        Limit states, by provisions and id, that outlasted the time limit once and are not asked
        again: each would cost that time, and a thread that never ends, for every jacket.
    """

    plugins: tuple[PluginInfo, ...]
    catalog: Catalog
    provisions: Mapping[str, Provisions]
    registered: tuple[Registered, ...]
    problems: tuple[PluginProblem, ...] = ()
    time_limit: float = DEFAULT_TIME_LIMIT
    switched_off: tuple[str, ...] = ()
    given_up: dict[tuple[str, str], str] = field(default_factory=dict, compare=False, repr=False)

    def lineage(self, provisions: str) -> tuple[Provisions, ...]:
        """A set of provisions and those it inherits from, the farthest first.

        Raises
        ------
        InputError
            If a set is not known or inherits from itself.
        """
        chain: list[Provisions] = []
        name: str | None = provisions
        while name is not None:
            found = self.provisions.get(name)
            if found is None:
                raise self._unusable(provisions, self._unknown(name, provisions))
            if found.id in (one.id for one in chain):
                raise self._unusable(provisions, f"inherits from itself, by way of {name!r}")
            chain.append(found)
            name = found.inherits
        return tuple(reversed(chain))

    def limit_states(self, provisions: str) -> tuple[Registered, ...]:
        """Limit states of a set of provisions, inherited ones replaced where it has its own."""
        chosen: dict[str, Registered] = {}
        for ancestor in self.lineage(provisions):
            for one in self.registered:
                if one.limit_state.provisions == ancestor.id:
                    chosen[one.limit_state.id] = one
        return tuple(chosen.values())

    def title_of(self, provisions: str) -> str:
        """Title of a set of provisions, with the plug-in that brought it; as for `lineage`."""
        title = self.lineage(provisions)[-1].title
        foreign = (one for one in self.plugins if not one.built_in)
        owner = next((one.origin for one in foreign if provisions in one.provisions), "")
        return f"{title} (plug-in {owner})" if owner else title

    def added_by(self, one: Registered) -> str:
        """Distribution that added a limit state to a set that another plug-in has brought.

        Empty for what a set brings itself. A reader takes a row for one of the set's own unless it
        says otherwise, and its title and clause may be anything.
        """
        name = one.limit_state.provisions
        is_own = any(
            name in plugin.provisions
            for plugin in self.plugins
            if (plugin.name, plugin.distribution) == (one.plugin.name, one.plugin.distribution)
        )
        return "" if is_own or one.plugin.built_in else one.plugin.distribution

    def faying_codes(self, provisions: str) -> tuple[str, ...]:
        """Codes whose faying classes a set of provisions counts."""
        named = [ancestor.faying_codes for ancestor in self.lineage(provisions)]
        return next((codes for codes in reversed(named) if codes), ())

    def omitted(self, provisions: str) -> dict[str, str]:
        """Limit states that do not apply in a set of provisions, with the reasons.

        What a set leaves out is back where a set that inherits from it brings its own.
        """
        reasons: dict[str, str] = {}
        for ancestor in self.lineage(provisions):
            for one in self.registered:
                if one.limit_state.provisions == ancestor.id:
                    reasons.pop(one.limit_state.id, None)
            reasons.update(ancestor.omits)
        return reasons

    def problems_for(self, provisions: str) -> tuple[PluginProblem, ...]:
        """Problems that touch a set of provisions."""
        names = {ancestor.id for ancestor in self.lineage(provisions)}
        return tuple(
            problem
            for problem in self.problems
            if problem.provisions is None or problem.provisions in names
        )

    def _unknown(self, name: str, asked: str) -> str:
        known = f"is not known; known are {', '.join(sorted(self.provisions))}"
        return known if name == asked else f"inherits from {name!r}, which {known}"

    def _unusable(self, asked: str, message: str) -> InputError:
        failed = [f"{p.plugin.name} ({p.plugin.origin}) {p.message}" for p in self.problems]
        if failed:
            message += f"; plug-ins with problems: {'; '.join(failed)}"
        return InputError([InputProblem("provisions", shown(asked), message)], source="options")
