"""Overrides put a value at a path and change nothing else."""

from __future__ import annotations

import copy
from typing import Any

from hypothesis import given
from hypothesis import strategies as st

from jacketcheck.inputs.overrides import apply_overrides

keys = st.text(alphabet="abcde_", min_size=1, max_size=3).filter(lambda key: key != "remove")
values = st.integers() | st.text(max_size=5) | st.booleans() | st.lists(st.integers(), max_size=3)
tables = st.recursive(
    st.dictionaries(keys, values, min_size=1, max_size=3),
    lambda inner: st.dictionaries(keys, values | inner | st.lists(inner, min_size=1, max_size=3),
                                  min_size=1, max_size=3),
    max_leaves=12,
)  # fmt: skip


def paths_of(value: Any, path: tuple[str, ...] = ()) -> list[tuple[str, ...]]:
    """Paths of everything below a value, list entries from one."""
    if isinstance(value, dict):
        children = list(value.items())
    elif isinstance(value, list):
        children = [(str(index), child) for index, child in enumerate(value, start=1)]
    else:
        return [path]
    below = [found for key, child in children for found in paths_of(child, (*path, key))]
    return [path, *below]


def at(value: Any, path: tuple[str, ...]) -> Any:
    for key in path:
        value = value[int(key) - 1] if isinstance(value, list) else value[key]
    return value


@given(base=tables, data=st.data())
def test_an_override_puts_its_value_there_and_nowhere_else(base: Any, data: st.DataObject) -> None:
    path = data.draw(st.sampled_from([path for path in paths_of(base) if path]))
    before = copy.deepcopy(base)
    mark = data.draw(st.integers())
    result, problems = apply_overrides(base, {".".join(path): mark})
    assert not problems
    assert base == before
    assert at(result, path) == mark
    for other in paths_of(base):
        related = other[: len(path)] == path or path[: len(other)] == other
        if not related:
            assert at(result, other) == at(base, other)


@given(base=tables, data=st.data())
def test_overriding_with_what_is_there_changes_nothing(base: Any, data: st.DataObject) -> None:
    path = data.draw(st.sampled_from([path for path in paths_of(base) if path]))
    result, problems = apply_overrides(base, {".".join(path): at(base, path)})
    if not problems:  # an override that is itself a table overrides only what it holds
        assert result == base


@given(base=tables, data=st.data())
def test_removing_a_field_of_a_table_takes_just_that(base: Any, data: st.DataObject) -> None:
    path = data.draw(st.sampled_from([path for path in paths_of(base) if path]))
    result, problems = apply_overrides(base, {"remove": [".".join(path)]})
    assert not problems
    expected = copy.deepcopy(base)
    holder = at(expected, path[:-1])
    if isinstance(holder, list):
        del holder[int(path[-1]) - 1]
    else:
        del holder[path[-1]]
    assert result == expected


@given(
    base=tables,
    path=st.lists(keys | st.text(max_size=3) | st.integers(-1, 4).map(str), min_size=1, max_size=5),
)
def test_any_path_is_either_followed_or_refused(base: Any, path: list[str]) -> None:
    for overrides in ({".".join(path): 1}, {"remove": [".".join(path)]}):
        _, problems = apply_overrides(base, overrides)
        for problem in problems:
            assert str(problem).isprintable()
