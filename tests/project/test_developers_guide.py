"""The guide for developers is held to the code: examples run, headings and signatures agree."""

from __future__ import annotations

import ast
import inspect
import re
import sys
import tomllib
from pathlib import Path
from types import ModuleType

import pytest

import jacketcheck
from jacketcheck import conformance, hookspecs, plugin
from jacketcheck.conformance import (
    ALL_CHECKS,
    ConformanceError,
    conformance_cases,
    standard_repairs,
)
from jacketcheck.hookspecs import API_VERSION, ENTRY_POINT_GROUP, HOOK_NAMES
from jacketcheck.limit_state import Provisions
from jacketcheck.results import Result

ROOT = Path(__file__).parents[2]
GUIDE = (ROOT / "DEVELOPERS.md").read_text("utf-8")
BLOCKS = re.findall(r"```python\n(.*?)```", GUIDE, re.DOTALL)


def part(title: str) -> str:
    """Text below a heading, up to the next one of its level or above."""
    marks, _, _ = title.partition(" ")
    after = GUIDE.partition(f"\n{title}\n")[2]
    assert after, f"no heading {title}"
    return re.split(rf"\n#{{1,{len(marks)}}} ", after)[0]


@pytest.fixture
def north(monkeypatch: pytest.MonkeyPatch) -> ModuleType:
    """The plug-in of the first example."""
    module = ModuleType("north")
    exec(BLOCKS[0], module.__dict__)  # noqa: S102 - it is our own text
    monkeypatch.setitem(sys.modules, "north", module)
    return module


def test_the_first_example_has_ten_lines() -> None:
    assert len([line for line in BLOCKS[0].splitlines() if line.strip()]) == 10


@pytest.mark.usefixtures("north")
def test_the_first_example_works(
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    (tmp_path / "repair.toml").write_text(standard_repairs()["metric"], "utf-8")
    monkeypatch.chdir(tmp_path)
    space: dict[str, object] = {}
    exec(BLOCKS[1], space)  # noqa: S102 - it is our own text
    report = space["report"]
    assert isinstance(report, jacketcheck.CheckReport)
    assert report.provisions == ("us", "north")
    own = [
        row
        for table in report.tables
        if (table.variant, table.provisions) == ("metric", "north")
        for row in table.results
        if row.limit_state == "sleeve-gap"
    ]
    (row,) = own
    assert row.origin == "north"
    # 50 mm of the 70 mm that are there
    assert row.ratio == pytest.approx(50.0 / 70.0)
    assert "\nnorth [" in capsys.readouterr().out
    assert {one.name for one in report.plugins} == {"built-in", "north"}


def test_the_kit_says_of_the_first_example_what_the_guide_says(north: ModuleType) -> None:
    failed = []
    for case in conformance_cases(north):
        try:
            case()
        except ConformanceError:
            failed.append(case.id)
    assert failed == ["limit state north/sleeve-gap: rows_name_their_sources"]
    assert f"`{failed[0]}`" in part("### The conformance kit")


def test_the_packaging_example_is_a_plug_in() -> None:
    (block,) = re.findall(r"```toml\n(.*?)```", GUIDE, re.DOTALL)
    project = tomllib.loads(block)["project"]
    assert project["entry-points"] == {ENTRY_POINT_GROUP: {"north": "jacketcheck_north"}}
    example = tomllib.loads(
        (ROOT / "plugins/jacketcheck-example/pyproject.toml").read_text("utf-8")
    )
    assert example["project"]["requires-python"] == project["requires-python"]
    assert example["project"]["dependencies"] == project["dependencies"]
    assert ENTRY_POINT_GROUP in example["project"]["entry-points"]


def test_hooks_are_described_in_the_order_in_which_they_are_asked() -> None:
    headings = re.findall(r"^#### (\w+)$", part("### Hooks"), re.MULTILINE)
    assert tuple(headings) == HOOK_NAMES


@pytest.mark.parametrize("name", HOOK_NAMES)
def test_each_hook_is_described_with_its_signature_and_version(name: str) -> None:
    text = part(f"#### {name}")
    source = inspect.getsource(getattr(hookspecs, name))
    (function,) = (
        node for node in ast.walk(ast.parse(source)) if isinstance(node, ast.FunctionDef)
    )
    assert function.returns is not None
    arguments = ast.unparse(function.args)
    signature = f"def {name}({arguments}) -> {ast.unparse(function.returns)}"
    assert f"```python\n{signature}\n```" in text
    (since,) = re.findall(r"Since version (\d+)", str(getattr(hookspecs, name).__doc__))
    assert f"since version {since}" in text


def test_the_checks_of_the_kit_are_listed_as_they_are() -> None:
    rows = re.findall(r"^\| `(\w+)` \| (.+) \|$", part("### The conformance kit"), re.MULTILINE)
    assert rows == [(one.name, one.asks) for one in ALL_CHECKS]


def test_public_names_are_those_that_are_exported() -> None:
    before, _, text = part("### What is public").partition("**Registering**")
    assert set(re.findall(r"`(\w+)`", before)) - {"jacketcheck"} == {
        *jacketcheck.__all__,
        *conformance.__all__,
    }
    named = re.findall(r"`(\w+)`", text)
    assert sorted(named) == sorted(set(named)), "named twice"
    assert set(named) == set(plugin.__all__)


@pytest.mark.parametrize(("record", "title"), [(Result, "### What a limit state gets and returns")])
def test_fields_of_a_result_are_described(record: type, title: str) -> None:
    cells = re.findall(r"^\| (`\w+`(?:, `\w+`)*) \|", part(title), re.MULTILINE)
    described = {name for cell in cells for name in re.findall(r"\w+", cell)}
    filled_by_engine = {"limit_state", "provisions", "written_by", "origin", "added_by"}
    assert described == set(inspect.signature(record).parameters) - filled_by_engine


def test_provisions_are_described_with_their_fields() -> None:
    (written,) = re.findall(r"`Provisions\((.*)\)`", part("#### jacketcheck_provisions"))
    names = re.findall(r"(\w+)(?:=|,|$)", re.sub(r"=\([^)]*\)|=\{\}|=\"us\"", "", written))
    assert names == list(inspect.signature(Provisions).parameters)


def test_the_version_of_the_hooks_is_told() -> None:
    assert f"`API_VERSION` is {API_VERSION}." in part("### How the hooks grow")


def test_links_within_the_guide_lead_somewhere() -> None:
    anchors = {
        re.sub(r"[^\w -]", "", title).lower().replace(" ", "-")
        for title in re.findall(r"^#+ (.+)$", GUIDE, re.MULTILINE)
    }
    for target in re.findall(r"\]\(#([\w-]+)\)", GUIDE):
        assert target in anchors
    for folder in re.findall(r"`(plugins/[\w/-]+)`", GUIDE):
        assert (ROOT / folder).is_dir()
