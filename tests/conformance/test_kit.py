"""The kit as a whole: its cases, its pytest decorator and its jackets."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from jacketcheck.conformance import (
    ALL_CHECKS,
    ConformanceError,
    conformance_cases,
    conformance_checks,
    host_with,
    standard_jackets,
    standard_repairs,
)
from jacketcheck.conformance.standard import EDGE_CASES, in_units, read_repairs
from jacketcheck.hookspecs import hookimpl
from jacketcheck.jacket import build_jacket
from jacketcheck.jacket.designs import leaves
from jacketcheck.limit_state import LimitState
from jacketcheck.plugin import Provisions, built_in_catalog

ROOT = Path(__file__).parents[2]
EXAMPLE = ROOT / "plugins" / "jacketcheck-example"


@pytest.fixture
def example(monkeypatch: pytest.MonkeyPatch) -> Any:
    """The plug-in that is made to be copied."""
    monkeypatch.syspath_prepend(str(EXAMPLE))
    import jacketcheck_example  # type: ignore[import-not-found] # found on the path set above

    return jacketcheck_example


def test_every_check_has_a_test_in_which_it_finds_something() -> None:
    files = ("test_limit_state_checks.py", "test_other_checks.py")
    text = "".join((Path(__file__).parent / name).read_text("utf-8") for name in files)
    assert [one.name for one in ALL_CHECKS if f'"{one.name}"' not in text] == []


def test_checks_say_what_they_ask_in_a_line() -> None:
    names = [one.name for one in ALL_CHECKS]
    assert len(set(names)) == len(names)
    for one in ALL_CHECKS:
        assert 20 < len(one.asks) < 100, one.name
        assert not one.asks.endswith("."), one.name


def test_all_that_a_plug_in_brings_is_asked(example: Any) -> None:
    cases = list(conformance_cases(example))
    assert list(dict.fromkeys(str(case.subject) for case in cases)) == [
        "plug-in jacketcheck_example",
        "provisions example",
        "faying class Example 1",
        "faying class Example 2",
        "limit state example/seam-slip",
        "limit state example/least-sleeve-thickness",
    ]
    assert len({case.id for case in cases}) == len(cases)
    assert cases[0].id == "plug-in jacketcheck_example: loads"


def test_the_example_passes(example: Any) -> None:
    for case in conformance_cases(example):
        case()


def test_a_failure_tells_subject_check_and_findings() -> None:
    class Silent:
        @hookimpl
        def jacketcheck_provisions(self) -> list[Provisions]:
            return [Provisions("north", "North Code")]

    case = next(
        case for case in conformance_cases(Silent()) if case.check.name == "title_names_editions"
    )
    with pytest.raises(ConformanceError) as caught:
        case()
    assert caught.value.subject == "provisions north"
    assert caught.value.check == "title_names_editions"
    asks = "the title names the codes with their editions"
    assert str(caught.value).splitlines() == [
        f"provisions north fails title_names_editions: {asks}",
        "  the title 'North Code' has no edition or year; add it to each code",
    ]
    assert isinstance(caught.value, AssertionError)


def test_other_plug_ins_may_stand_beside() -> None:
    class Base:
        @hookimpl
        def jacketcheck_provisions(self) -> list[Provisions]:
            return [Provisions("base", "Base Code 2024")]

    class Heir:
        @hookimpl
        def jacketcheck_provisions(self) -> list[Provisions]:
            return [Provisions("heir", "Heir Code 2024", inherits="base")]

    def check(**more: Any) -> list[str]:
        cases = conformance_cases(Heir(), **more)
        found = [case for case in cases if case.check.name == "inherits_what_is_there"]
        assert [case.id for case in found] == ["provisions heir: inherits_what_is_there"]
        return list(found[0].problems())

    assert "inherits from 'base', which is not known" in check()[0]
    assert check(beside=[Base()]) == []


def test_repairs_of_the_author_are_looked_at(repair_text: str, tmp_path: Path) -> None:
    seen: list[str] = []

    def evaluate(jacket: Any) -> list[Any]:
        seen.append(jacket.title)
        return []

    class North:
        @hookimpl
        def jacketcheck_provisions(self) -> list[Provisions]:
            return [Provisions("north", "North Code 2024", inherits=None)]

        @hookimpl
        def jacketcheck_limit_states(self) -> list[LimitState]:
            return [LimitState("first", "First", "north", evaluate)]

    file = tmp_path / "own.toml"
    file.write_text(repair_text, "utf-8")
    cases = conformance_cases(North(), repairs={"own": file, "text": repair_text})
    case = next(case for case in cases if case.check.name == "answers")
    assert case.bench.bases == ("metric", "customary", "base", "text: base")
    problems = list(case.problems())
    # each file has a base and two variants
    assert sum("Fallow Lane viaduct" in title for title in seen) == 6
    assert "on 'text: plain': returned an empty sequence" in problems


def test_installed_plug_ins_go_by_any_of_their_names() -> None:
    ids = [case.id for case in conformance_cases("us")]
    assert [case.id for case in conformance_cases("built-in")] == ids
    with pytest.raises(
        ValueError, match="'nowhere' is neither a plug-in nor provisions of one; in"
    ):
        next(conformance_cases("nowhere"))


@pytest.mark.parametrize(
    ("expected", "told"),
    [
        (
            {"provisions us: title_names_edition": "typo"},
            "is none of the kit's cases; did you mean 'provisions us: title_names_editions'?",
        ),
        ({"provisions us: title_names_editions": " "}, "has no reason"),
    ],
)
def test_expected_failures_must_be_cases_and_have_reasons(
    expected: dict[str, str], told: str
) -> None:
    with pytest.raises(ValueError, match="expected failure 'provisions us: title_names_") as caught:
        conformance_checks("us", expected_failures=expected)
    assert str(caught.value).endswith(told)


A_TEST_FILE = """
from jacketcheck.conformance import conformance_checks
from jacketcheck.plugin import Provisions, hookimpl

class North:
    @hookimpl
    def jacketcheck_provisions(self):
        return [Provisions("north", "North Code", omits={"p-dleta": "no such rule"})]

@conformance_checks(North(), expected_failures={
    "provisions north: title_names_editions": "the code has no edition",
    "provisions north: every_row_is_there": "it was thought to fail",
})
def test_north(case):
    case()
"""


def test_expected_failures_are_strict(tmp_path: Path) -> None:
    (tmp_path / "test_north.py").write_text(A_TEST_FILE, "utf-8")
    run = subprocess.run(
        [sys.executable, "-m", "pytest", "-q", "-rA", "-p", "no:cacheprovider", str(tmp_path)],
        capture_output=True,
        text=True,
        check=False,
        cwd=tmp_path,
    )
    lines = run.stdout.splitlines()
    assert "2 passed, 1 xfailed" in lines[-1].replace("2 failed, ", "")
    assert any(one.startswith("XFAIL") and "the code has no edition" in one for one in lines)
    failed = {one.partition(" - ")[0] for one in lines if one.startswith("FAILED")}
    assert {name.partition("[")[2] for name in failed} == {
        "provisions north: inherits_what_is_there]",
        "provisions north: every_row_is_there]",
    }
    assert "XPASS(strict)" in run.stdout
    assert "omits p-dleta, which it does not inherit; inherited are " in run.stdout


def test_the_kit_is_imported_without_pytest() -> None:
    code = (
        "import sys; import jacketcheck.conformance as kit; list(kit.conformance_cases('us')); "
        "print('pytest' in sys.modules)"
    )
    run = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=True, cwd=ROOT
    )
    assert run.stdout.strip() == "False"


def test_standard_jackets_cover_what_an_input_may_ask_for() -> None:
    jackets = standard_jackets()
    assert len(jackets) == 11
    assert set(jackets) > EDGE_CASES
    assert {float(one.splice.shear_planes) for one in jackets.values()} == {1.0, 2.0}
    assert {one.bolts.pretensioned for one in jackets.values()} == {True, False}
    assert {one.bolts.metric for one in jackets.values()} == {True, False}
    assert {one.sleeve.hole.kind for one in jackets.values()} > {"standard", "oversized"}
    assert {one.column.curvature for one in jackets.values()} == {"single", "double"}
    assert {bool(one.added_bars) for one in jackets.values()} == {True, False}
    states = {bar.state for one in jackets.values() for bar in one.column.bars}
    assert states == {"intact", "buckled", "fractured"}
    surfaces = {bar.surface for one in jackets.values() for bar in one.column.bars}
    assert surfaces == {"chipped", "unchipped"}


def test_jackets_name_a_class_of_every_code(example: Any) -> None:
    host = host_with(example)
    for jacket in standard_jackets(host.catalog).values():
        assert [one.name for one in jacket.bolts.faying_classes] == [
            "AISC B",
            "AASHTO B",
            "RCSC B",
            "Example 1",
        ]


def test_rewriting_keeps_the_repair() -> None:
    catalog = built_in_catalog()
    for name, repair in read_repairs(standard_repairs(), catalog=catalog).items():
        for system in ("si", "us"):
            again = in_units(repair, system, catalog=catalog)
            ours = dict(leaves(build_jacket(repair, catalog=catalog)))
            theirs = dict(leaves(build_jacket(again, catalog=catalog)))
            assert ours.keys() == theirs.keys(), name
            numbers = [path for path, value in ours.items() if isinstance(value, float)]
            assert len(numbers) > 50
            assert [ours[path] for path in numbers] == pytest.approx(
                [theirs[path] for path in numbers], rel=1e-12
            )
