"""A small part of the long run, and files made to cost time or memory."""

from __future__ import annotations

import tempfile
import time
from functools import lru_cache
from pathlib import Path
from random import Random

import pytest
from hypothesis import HealthCheck, given, settings

from jacketcheck.errors import InputError
from jacketcheck.host import Host, load_host
from jacketcheck.inputs import read_text
from tests.fuzz.cases import case_of
from tests.fuzz.judge import Defect, judged
from tests.fuzz.mutations import GENTLE_MUTATIONS, TABLE_MUTATIONS, TEXT_MUTATIONS, Broken
from tests.fuzz.repairs import valid_repair
from tests.fuzz.strategies import broken_files, repairs
from tests.fuzz.toml_writing import Table, document

SOME = settings(
    max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow], database=None
)


@lru_cache(maxsize=1)
def host() -> Host:
    return load_host(installed=False)


def verdict_on(content: bytes, *, reason: str = "", rendered: bool = False) -> str:
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "repair.toml"
        path.write_bytes(content)
        return judged(path, host=host(), reason=reason, rendered=rendered)


@given(tables=repairs())
@SOME
def test_a_repair_that_breaks_no_rule_is_checked(tables: Table) -> None:
    assert verdict_on(document(tables).encode(), rendered=True) == "checked"


@given(broken=broken_files())
@SOME
def test_a_broken_file_is_refused_in_words_or_checked_in_full(broken: Broken) -> None:
    verdict_on(broken.content, reason=broken.reason)


@pytest.mark.parametrize("first", range(0, 100, 25))
def test_cases_of_the_long_run(first: int) -> None:
    for number in range(first, first + 25):
        case = case_of(5, number, host().catalog)
        verdict = verdict_on(case.content, reason=case.reason)
        assert not case.good or verdict == "checked", number


@pytest.mark.parametrize("name", [*TABLE_MUTATIONS, *GENTLE_MUTATIONS])
def test_every_mutation_of_tables_changes_the_file(name: str) -> None:
    mutate = {**TABLE_MUTATIONS, **GENTLE_MUTATIONS}[name]
    changed = 0
    for seed in range(20):
        random = Random(seed)  # noqa: S311 - repeatable, not secret
        tables = valid_repair(random)
        before = document(tables)
        mutate(random, tables)
        changed += document(tables) != before
    assert changed > 10


@pytest.mark.parametrize("name", TEXT_MUTATIONS)
def test_every_mutation_of_text_changes_the_file(name: str) -> None:
    random = Random(1)  # noqa: S311 - repeatable, no secret
    text = document(valid_repair(random)).encode()
    assert sum(TEXT_MUTATIONS[name](random, text)[0] != text for _ in range(20)) > 10


def test_the_judge_finds_a_file_that_was_accepted_wrongly() -> None:
    text = document(valid_repair(Random(3)))  # noqa: S311 - repeatable, no secret
    with pytest.raises(Defect, match="must be refused: says who"):
        verdict_on(text.encode(), reason="says who")


def costly_files() -> dict[str, str]:
    """Files within the limits of size that ask for much work."""
    base = document({**valid_repair(Random(3)), "variants": {}})  # noqa: S311 - repeatable, no secret
    record = '[[damage]]\nbars = [1]\nstate = "intact"\nheight = "1 mm"\n'
    numbers = f"[[damage]]\nbars = [{', '.join(['1'] * 600)}]\n"
    names = [f'"{number}"' for number in range(200)]
    return {
        "damage records": base + record * 4000,
        "bar numbers": base + numbers * 120,
        "variants that each repeat what is wrong": base
        + record * 1500
        + "".join(f"[variants.{one}]\nsleeve.thickness = 1\n" for one in names),
        "variants that remove": base
        + record * 190
        + "".join(f'[variants.{one}]\nremove = ["damage"]\n' for one in names),
        "unknown fields": base + "".join(f"[x{number}]\n" for number in range(20_000)),
        "keys of many parts": base + "".join(f"[{'a.' * 900}b{n}]\n" for n in range(100)),
        "fractions": base + 'a = "' + "1/" * 900 + '"\n',
        "hostile digits": base + f"a = {'9' * 1900}\n" * 100,
    }


@pytest.mark.parametrize("name", costly_files())
def test_no_file_within_the_limits_takes_long(name: str) -> None:
    text = costly_files()[name]
    begin = time.process_time()
    try:
        read_text(text, catalog=host().catalog)
    except InputError as error:
        assert len(str(error)) < 5_000_000  # noqa: PT017 - it may also be accepted
    assert time.process_time() - begin < 5.0
