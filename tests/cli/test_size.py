"""``jacketcheck size`` as a user meets it."""

from __future__ import annotations

import csv
import io
import json
import os
import sys
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from tests.support.cli_runs import Run

BOUNDS = """
[sizing.sleeve]
thickness = ["3/8 in", "1/2 in", "5/8 in"]
[sizing.bolts]
columns = [2, 3]
pitch = { diameters = [5] }
"""
NOTHING = """
[sizing.sleeve]
thickness = ["1/4 in"]
"""


@pytest.fixture
def bounded(case: Path, tmp_path: Path) -> Path:
    """The reference case with bounds."""
    path = tmp_path / "bounded.toml"
    path.write_text(case.read_text("utf-8") + BOUNDS, "utf-8")
    return path


@pytest.fixture
def hopeless(case: Path, tmp_path: Path) -> Path:
    """The reference case with bounds in which nothing works."""
    path = tmp_path / "hopeless.toml"
    path.write_text(case.read_text("utf-8") + NOTHING, "utf-8")
    return path


def test_text_holds_the_front_what_governs_and_the_proof(run: Run, bounded: Path) -> None:
    ran = run("size", bounded)
    assert ran.code == 0
    assert not ran.err
    for words in (
        "to choose from",
        "governed by",
        "4-3/8 in (5 d)",
        "Nothing cheaper works",
        "Minimal on the grid",
        "ruled out in full",
        "as written",
        "engineering judgement, sizing.field_work",
        "Not covered here",
        "judgement of a licensed engineer",
    ):
        assert words in ran.out, words


def test_every_form_tells_the_same_front(run: Run, bounded: Path) -> None:
    document = json.loads(run("size", bounded, "--format", "json").out)
    rows = list(csv.DictReader(io.StringIO(run("size", bounded, "--format", "csv").out)))
    markdown = run("size", bounded, "--format", "markdown").out
    assert len(rows) == len(document["front"]) > 0
    for row, design in zip(rows, document["front"], strict=True):
        assert float(row["steel_mass"]) == design["steel_mass"]
        assert int(row["bolts"]) == design["bolts"]
        assert float(row["ratio"]) == design["ratio"] <= 1.0
        assert row["governing"] == design["governing"]
        assert f"{design['steel_mass'] / 0.45359237:.0f}" in markdown
    assert markdown.startswith("# Sizing")
    assert "| governed by" in markdown


@pytest.mark.parametrize("which", ["bounded", "hopeless"])
def test_json_follows_the_published_schema(
    run: Run, which: str, request: pytest.FixtureRequest
) -> None:
    schema = json.loads(run("schema", "size").out)
    path = request.getfixturevalue(which)
    ran = run("size", path, "--format", "json")
    document: dict[str, Any] = json.loads(ran.out)
    jsonschema.validate(document, schema)
    assert document["exit_code"] == ran.code


def test_units_are_those_asked_for(run: Run, bounded: Path) -> None:
    metric, customary = run("size", bounded, "--units", "si").out, run("size", bounded).out
    assert "steel kg" in metric
    assert "111.125 mm (5 d)" in metric
    assert "steel lb" in customary


def test_where_nothing_works_it_says_why_and_what_to_relax(run: Run, hopeless: Path) -> None:
    ran = run("size", hopeless)
    assert ran.code == 1
    for words in (
        "no design within the bounds was shown to work",
        "What stands in the way",
        "Hoop yield of the sleeve under dilation",
        "Which bounds to relax together",
        "sizing.sleeve.thickness, 1/4 in",
        "This design works, governed by",
    ):
        assert words in ran.out, words


def test_the_saved_design_is_a_whole_file_that_works(
    run: Run, bounded: Path, tmp_path: Path
) -> None:
    saved = tmp_path / "design.toml"
    assert run("size", bounded, "--save", saved).code == 0
    checked = run("check", saved)
    assert checked.code == 0
    assert "sized 1" in checked.out
    assert {path.name for path in tmp_path.iterdir()} == {"bounded.toml", "design.toml"}


def test_there_is_nothing_to_save_where_nothing_works(
    run: Run, hopeless: Path, tmp_path: Path
) -> None:
    saved = tmp_path / "design.toml"
    ran = run("size", hopeless, "--save", saved)
    assert ran.code == 1
    assert "nothing to save" in ran.err
    assert not saved.exists()


def test_a_design_that_is_not_there_cannot_be_saved(
    run: Run, bounded: Path, tmp_path: Path
) -> None:
    ran = run("size", bounded, "--save", tmp_path / "design.toml", "--design", "99")
    assert ran.code == 2
    assert "--design = 99: must be at most" in ran.err
    assert not (tmp_path / "design.toml").exists()


@pytest.mark.parametrize(
    ("options", "told"),
    [
        pytest.param(("--limit", "0"), "0 is not between 1 and 10000000", id="nothing shown"),
        pytest.param(("--analyses", "-1"), "-1 is not between", id="negative"),
        pytest.param(("--variant", "nowhere"), "nowhere", id="no such variant"),
        pytest.param(("--provisions", "nowhere"), "nowhere", id="no such provisions"),
        pytest.param(("--format", "yaml"), "invalid choice: 'yaml'", id="no such form"),
    ],
)
def test_options_that_cannot_be_used(
    run: Run, bounded: Path, options: tuple[str, ...], told: str
) -> None:
    ran = run("size", bounded, *options)
    assert ran.code == 2
    assert told in ran.err
    assert not ran.out


def test_bounds_that_cannot_be_used(run: Run, case: Path, tmp_path: Path) -> None:
    path = tmp_path / "repair.toml"
    wrong = '[sizing.sleeve]\nthickness = ["3/8 kg"]\n[sizing.bolts]\ncolumns = [0]\nrows = [3]\n'
    path.write_text(f"{case.read_text('utf-8')}\n{wrong}", "utf-8")
    ran = run("size", path)
    assert ran.code == 2
    assert "3 problems" in ran.err
    for field in ("sizing.sleeve.thickness", "sizing.bolts.columns", "sizing.bolts.rows"):
        assert field in ran.err


def test_a_search_that_is_ended_too_soon_is_no_answer(run: Run, bounded: Path) -> None:
    ran = run("size", bounded, "--analyses", "1")
    assert ran.code in {0, 3}
    assert "--analyses allows more than 1 section analyses" in ran.out


def test_long_work_shows_how_far_it_is(
    run: Run, bounded: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    drawn: list[tuple[int, str]] = []

    class Bar:
        """Notes what it is told."""

        n = 0

        def __init__(self, **options: Any) -> None:
            assert options["delay"] == 1.0
            assert not options["leave"]
            self.total = options["total"]

        def set_description(self, what: str, *, refresh: bool) -> None:
            assert not refresh
            self.what = what

        def update(self, step: int) -> None:
            self.n += step
            drawn.append((self.n, self.what))

        def close(self) -> None:
            drawn.append((-1, "closed"))

    monkeypatch.setattr("tqdm.tqdm", Bar)
    monkeypatch.setattr(sys.stderr, "isatty", lambda: True, raising=False)
    assert run("size", bounded).code == 0
    assert list(dict.fromkeys(what for _, what in drawn)) == [
        "closed form",
        "section analysis",
        "closed",
    ]
    assert drawn[-2][0] == 6


def test_hostile_names_do_not_become_markup_or_formulas(run: Run, bounded: Path) -> None:
    text = bounded.read_text("utf-8").replace("Quarry Road overpass", "=1+1 | <b> * _x_")
    bounded.write_text(text, "utf-8")
    markdown = run("size", bounded, "--format", "markdown").out
    assert "<b>" not in markdown
    assert "_x_" not in markdown.replace("\\_x\\_", "")
    assert os.linesep in markdown
