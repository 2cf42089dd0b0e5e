"""Whatever was written, a message shows it in one printable line."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from jacketcheck.inputs.written import dotted, shown

toml_values = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text() | st.dates(),
    lambda inner: st.lists(inner) | st.dictionaries(st.text(), inner),
    max_leaves=20,
)


@given(value=toml_values)
def test_any_value_is_one_short_printable_line(value: object) -> None:
    text = shown(value)
    assert text.isprintable()
    assert len(text) <= 61


@given(steps=st.lists(st.text() | st.integers(0, 500), min_size=1, max_size=6))
def test_any_path_is_printable(steps: list[int | str]) -> None:
    assert dotted(steps).isprintable()
