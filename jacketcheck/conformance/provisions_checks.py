"""What the kit asks of a plug-in as a whole, and of a set of provisions."""

from __future__ import annotations

from collections.abc import Iterator

from jacketcheck.conformance.bench import Bench
from jacketcheck.conformance.case import check
from jacketcheck.conformance.subjects import Subject
from jacketcheck.engine.evaluate import evaluate
from jacketcheck.errors import InputError
from jacketcheck.host.host import Host, PluginInfo

__all__ = ["PLUGIN_CHECKS", "PROVISIONS_CHECKS"]


@check("plug-in")
def loads(subject: Subject, _bench: Bench) -> Iterator[str]:
    """Everything that the plug-in brings can be used."""
    plugin: PluginInfo = subject.item
    for problem in plugin.problems:
        yield f"{problem}; mend it, or no check with these provisions can pass"
    if not (plugin.problems or plugin.provisions or plugin.limit_states or plugin.entries):
        yield "brings nothing; mark its functions with hookimpl and name them as in the hooks"


@check("provisions")
def title_names_editions(subject: Subject, _bench: Bench) -> Iterator[str]:
    """The title names the codes with their editions."""
    if not any(one.isdigit() for one in subject.item.title):
        yield f"the title {subject.item.title!r} has no edition or year; add it to each code"


@check("provisions")
def inherits_what_is_there(subject: Subject, bench: Bench) -> Iterator[str]:
    """The provisions that it inherits from are known, and so is everything that it omits."""
    host, entry = bench.host, subject.item
    try:
        host.lineage(entry.id)
    except InputError as error:
        yield f"{error.problems[0].message}; load the plug-in that brings them as well"
        return
    own = {one.limit_state.id for one in host.registered if one.limit_state.provisions == entry.id}
    inherited = _inherited(host, entry.inherits)
    for name in entry.omits:
        if name in own:
            yield f"omits {name}, which it brings itself, so that it is never asked; take it out"
        elif name not in inherited:
            known = ", ".join(sorted(inherited))
            yield f"omits {name}, which it does not inherit; inherited are {known}"


@check("provisions")
def every_row_is_there(subject: Subject, bench: Bench) -> Iterator[str]:
    """Each limit state, inherited, replaced or omitted, gives a row, and no plug-in a problem."""
    host, name = bench.host, subject.item.id
    try:
        wanted = {one.limit_state.id for one in host.limit_states(name)}
    except InputError:
        return  # told by `inherits_what_is_there`
    for base in bench.bases:
        found = evaluate(bench.jackets[base], host=host, provisions=name)
        for missing in sorted(wanted - {row.limit_state for row in found}):
            yield f"on {base!r}: {missing} gives no row"
        for row in found:
            if row.limit_state == "plug-in-problem":
                yield f"on {base!r}: {row.notes[0]}"


@check("provisions")
def follows_what_is_there(subject: Subject, bench: Bench) -> Iterator[str]:
    """Each cause that a row names in follows_from is a limit state of these provisions."""
    host, name = bench.host, subject.item.id
    try:
        known = {one.limit_state.id for one in host.limit_states(name)}
    except InputError:
        return  # told by `inherits_what_is_there`
    strange = {
        (row.limit_state, cause)
        for base in bench.bases
        for row in evaluate(bench.jackets[base], host=host, provisions=name)
        for cause in row.follows_from
        if cause not in known
    }
    for state, cause in sorted(strange):
        yield f"{state} follows from {cause}, which is no limit state here; name one by its id"


PLUGIN_CHECKS = (loads,)
PROVISIONS_CHECKS = (
    title_names_editions,
    inherits_what_is_there,
    every_row_is_there,
    follows_what_is_there,
)


def _inherited(host: Host, parent: str | None) -> set[str]:
    if parent is None:
        return set()
    return {one.limit_state.id for one in host.limit_states(parent)}
