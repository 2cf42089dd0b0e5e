"""Whatever stands in a file: validated input, or an InputError that a terminal can print."""

from __future__ import annotations

import copy
import json
import math
import tomllib
from functools import lru_cache
from pathlib import Path
from typing import Any

import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from jacketcheck.errors import InputError
from jacketcheck.inputs import read_text
from jacketcheck.jacket import build_jacket
from jacketcheck.jacket.designs import leaves

_TEXT = (Path(__file__).parents[1] / "repair_us.toml").read_text("utf-8")

Path_ = tuple[str | int, ...]


@lru_cache(maxsize=1)
def base() -> dict[str, Any]:
    table = tomllib.loads(_TEXT)
    del table["variants"]
    return table


def toml(value: Any) -> str:
    """A value as TOML writes it in a line."""
    if isinstance(value, bool):
        return str(value).lower()
    if isinstance(value, str):
        return json.dumps(value).replace("\x7f", "\\u007f")
    if isinstance(value, list):
        return f"[{', '.join(toml(one) for one in value)}]"
    if isinstance(value, dict):
        return f"{{{', '.join(f'{toml(key)} = {toml(one)}' for key, one in value.items())}}}"
    return str(value)


def document(table: dict[str, Any]) -> str:
    return "".join(f"{toml(key)} = {toml(value)}\n" for key, value in table.items())


def paths_below(value: Any, path: Path_ = ()) -> list[Path_]:
    pairs: Any = ()
    if isinstance(value, dict):
        pairs = value.items()
    elif isinstance(value, list):
        pairs = enumerate(value)
    return [path, *(found for key, one in pairs for found in paths_below(one, (*path, key)))]


texts = st.text(st.characters(exclude_categories=["Cs"]), max_size=20)
quantities = st.builds(
    "{} {}".format,
    st.floats(allow_nan=True) | st.integers(-10, 10**6),
    st.sampled_from(["mm", "in", "ft", "kN", "ksi", "MPa", "%", "deg", "", "m", "kip*ft"]),
)
scalars = st.booleans() | st.integers() | st.floats() | texts | quantities
anything = st.recursive(
    scalars,
    lambda inner: (
        st.lists(inner, max_size=3) | st.dictionaries(texts, inner, min_size=1, max_size=3)
    ),
    max_leaves=6,
)


def problems_of(text: str) -> str:
    """Read and build, or fail in the one way that is allowed; what the user is told."""
    try:
        for repair in read_text(text).variants.values():
            for _, value in leaves(build_jacket(repair)):
                assert not isinstance(value, float) or math.isfinite(value)
    except InputError as error:
        return str(error)
    return ""


def read_or_refuse(text: str) -> None:
    told = problems_of(text)
    assert all(line.isprintable() for line in told.split("\n"))
    assert not told or len(told.split("\n")) >= 2


@given(data=st.data(), value=anything)
def test_any_value_anywhere(data: st.DataObject, value: Any) -> None:
    table = copy.deepcopy(base())
    path = data.draw(st.sampled_from([path for path in paths_below(table) if path]))
    target: Any = table
    for key in path[:-1]:
        target = target[key]
    target[path[-1]] = value
    read_or_refuse(document(table))


@given(overrides=st.dictionaries(texts, anything, max_size=4), name=texts)
def test_any_variant(overrides: dict[str, Any], name: str) -> None:
    read_or_refuse(document({**base(), "variants": {name: overrides}}))


@given(text=st.text(max_size=200))
def test_any_text(text: str) -> None:
    read_or_refuse(text)


@given(data=st.data())
def test_any_piece_cut_out(data: st.DataObject) -> None:
    start = data.draw(st.integers(0, len(_TEXT) - 1))
    length = data.draw(st.integers(1, 80))
    read_or_refuse(_TEXT[:start] + _TEXT[start + length :])


LENGTHS = {
    ("column", "diameter"): (100.0, 10_000.0),
    ("column", "height"): (500.0, 80_000.0),
    ("column", "cover"): (5.0, 300.0),
    ("column", "hoops", "spacing"): (5.0, 3000.0),
    ("repair", "height"): (100.0, 10_000.0),
    ("repair", "gap"): (0.0, 1000.0),
    ("sleeve", "inner_diameter"): (100.0, 10_000.0),
    ("sleeve", "thickness"): (1.0, 101.0),
    ("sleeve", "seam_gap"): (0.0, 1000.0),
    ("splice", "thickness"): (1.0, 101.0),
    ("bolts", "pitch"): (5.0, 3000.0),
    ("bolts", "gauge"): (5.0, 3000.0),
    ("bolts", "end_distance"): (5.0, 3000.0),
    ("added_bars", "circle_diameter"): (100.0, 10_000.0),
    ("added_bars", "hole_diameter"): (5.0, 300.0),
}


@given(
    shares=st.lists(st.floats(0.0, 1.0), min_size=len(LENGTHS), max_size=len(LENGTHS)),
    rows=st.none() | st.integers(2, 500),
)
def test_any_plausible_lengths(shares: list[float], rows: int | None) -> None:
    table = copy.deepcopy(base())
    for (path, (low, high)), share in zip(LENGTHS.items(), shares, strict=True):
        target = table
        for key in path[:-1]:
            target = target[key]
        # more of the small ones, which are the likely ones
        target[path[-1]] = f"{low + (high - low) * np.square(share):.6f} mm"
    if rows is None:
        del table["bolts"]["rows"]
    else:
        table["bolts"]["rows"] = rows
    read_or_refuse(document(table))
