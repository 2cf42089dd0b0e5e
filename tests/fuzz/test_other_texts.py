"""Texts besides repair files that somebody else may write: records, and what a sweep varies."""

from __future__ import annotations

import copy
import time
import tomllib
from functools import lru_cache
from pathlib import Path
from random import Random

import pytest
from hypothesis import Phase, given, settings
from hypothesis import strategies as st

from jacketcheck.as_built import confirm, read_as_built_text
from jacketcheck.errors import InputError
from jacketcheck.host import Host, load_host
from jacketcheck.inputs import InputFile, read_text
from jacketcheck.inputs.fields import field_paths
from jacketcheck.results import Status
from jacketcheck.sweep.vary import read_varied
from tests.fuzz.judge import refusal_defects, report_defects
from tests.fuzz.mutations import TABLE_MUTATIONS, TEXT_MUTATIONS
from tests.fuzz.toml_writing import Table, document

TESTS = Path(__file__).parents[1]
SOME = settings(max_examples=150, deadline=None, database=None, phases=[Phase.generate])
OF_REPAIRS = ("table dropped", "no table", "many entries", "many variants", "entangled variants")
OF_ALL = [name for name in TABLE_MUTATIONS if name not in OF_REPAIRS]


@lru_cache(maxsize=1)
def host() -> Host:
    return load_host(installed=False)


@lru_cache(maxsize=1)
def repair() -> InputFile:
    return read_text((TESTS / "schedule" / "willow_weir.toml").read_text("utf-8"))


@lru_cache(maxsize=1)
def record() -> Table:
    return tomllib.loads((TESTS / "as_built" / "willow_weir_built.toml").read_text("utf-8"))


def confirmed(content: bytes) -> str:
    """What becomes of a record: refused in words, or a verdict."""
    try:
        text = content.decode()
    except UnicodeDecodeError:
        return "not text"
    try:
        found = confirm(repair(), read_as_built_text(text), host=host())
    except InputError as error:
        refusal_defects(error)
        return "refused"
    report_defects(found.report)
    for line in found.lines:
        again = line.recheck
        if again is not None and again.status is Status.OK:
            # no row to name means that no ratio rises
            assert 0.0 <= again.ratio <= 1.0 or not again.governing
    return "confirmed"


@pytest.mark.parametrize("seed", range(30))
def test_a_broken_record_is_refused_in_words_or_compared(seed: int) -> None:
    random = Random(seed)  # noqa: S311 - repeatable, not secret
    tables = copy.deepcopy(record())
    for _ in range(random.randint(0, 2)):
        name = random.choice(OF_ALL)
        TABLE_MUTATIONS[name](random, tables)
    content = document(tables).encode("utf-8", "surrogatepass")
    if random.random() < 0.4:
        content, _ = TEXT_MUTATIONS[random.choice(list(TEXT_MUTATIONS))](random, content)
    begin = time.process_time()
    confirmed(content)
    assert time.process_time() - begin < 5.0


def test_the_record_itself_is_compared() -> None:
    assert confirmed(document(copy.deepcopy(record())).encode()) == "confirmed"


PARTS = st.sampled_from(
    [
        "sleeve.thickness", "bolts.pitch", "damage.1.height", "actions.axial_strain", "=", ":", ",",
        "10 mm", "1/2 in", "3/4 in", "0", "1", "-1", "5", "1e9", "1e999", "nan", "inf", "500 kip",
        "true", "snug", "", " ", ".", "..", "×", "\x00", "\ud800", "9" * 400, "1/0", "0.001 mm",
        "1:2:3", "[", "]", "{", '"', "'", "\\", "%s", "a" * 3000,
    ]
)  # fmt: skip


@given(text=st.lists(PARTS, max_size=9).map("".join) | st.text(max_size=40))
@SOME
def test_any_text_of_what_varies(text: str) -> None:
    values_or_refusal(text)


@given(data=st.data())
@SOME
def test_any_values_of_any_field(data: st.DataObject) -> None:
    path = data.draw(st.sampled_from(sorted(field_paths(repair().base))))
    values = data.draw(st.lists(PARTS, min_size=1, max_size=7).map("".join))
    values_or_refusal(f"{path}={values}")


def values_or_refusal(text: str) -> None:
    begin, told, count = time.process_time(), "", 1
    try:
        count = len(read_varied(text, repair().base, catalog=host().catalog).values)
    except InputError as error:
        told = str(error)
    assert told.replace("\n", "").isprintable() or not told
    assert len(told) < 20_000
    assert 1 <= count <= 1_000_000
    assert time.process_time() - begin < 5.0
