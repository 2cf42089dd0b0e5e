"""``jacketcheck sweep`` as a user meets it."""

from __future__ import annotations

import csv
import io
import json
from pathlib import Path

import jsonschema
import pytest

from tests.support.cli_runs import Run

THICKNESS = "sleeve.thickness=3/8 in:3/4 in:1/8 in"


def test_text_holds_every_design_and_every_limit_state(run: Run, case: Path) -> None:
    ran = run("sweep", case, "--vary", THICKNESS)
    assert ran.code == 1
    for words in (
        "4 designs:",
        "sleeve.thickness in",
        "0.375",
        "0.750",
        "Each limit state over all designs",
        "Hoop yield of the sleeve under dilation",
        "Not covered here",
        "judgement of a licensed engineer",
    ):
        assert words in ran.out, words


def test_every_form_tells_the_same_ratios(run: Run, case: Path) -> None:
    asked = ("sweep", case, "--vary", THICKNESS, "--vary", "bolts.tightening=snug,turn-of-nut")
    document = json.loads(run(*asked, "--format", "json").out)
    rows = list(csv.DictReader(io.StringIO(run(*asked, "--format", "csv").out)))
    assert document["designs"] == len(rows) == 8
    for place, row in enumerate(rows):
        assert float(row["sleeve.thickness [mm]"]) == document["fields"][0]["values"][place]
        assert row["bolts.tightening"] == document["fields"][1]["values"][place]
        assert row["verdict"] == document["verdicts"][place]
        ratio = row["governing ratio"]
        assert document["governing_ratios"][place] == (
            ratio if ratio == "infinite" else float(ratio)
        )
    assert run(*asked, "--format", "markdown").out.startswith("# Sweep")


def test_json_follows_the_published_schema(run: Run, case: Path) -> None:
    schema = json.loads(run("schema", "sweep").out)
    ran = run("sweep", case, "--vary", "bolts.pitch=1 in,4-3/4 in", "--format", "json")
    document = json.loads(ran.out)
    jsonschema.validate(document, schema)
    assert document["exit_code"] == ran.code == 0
    assert document["verdicts"] == ["cannot be built", "ok"]
    assert set(document["refusals"]) == {"0"}


def test_only_what_is_asked_for(run: Run, case: Path) -> None:
    ran = run("sweep", case, "--vary", THICKNESS, "--only", "seam-slip", "--format", "json")
    assert {row["limit_state"] for row in json.loads(ran.out)["rows"]} == {"seam-slip"}


def test_values_side_by_side(run: Run, case: Path) -> None:
    ran = run(
        "sweep", case, "--vary", "bolts.columns=2:3", "--zip", "--vary", "sleeve.steel=ASTM A36,"
        "ASTM A572 Grade 50", "--format", "csv",
    )  # fmt: skip
    rows = list(csv.DictReader(io.StringIO(ran.out)))
    assert [(row["bolts.columns [1]"], row["sleeve.steel"]) for row in rows] == [
        ("2", "ASTM A36"),
        ("3", "ASTM A572 Grade 50"),
    ]


def test_more_designs_than_are_shown(run: Run, case: Path) -> None:
    asked = ("sweep", case, "--vary", "bolts.pitch=4 in:4-3/4 in:30", "--only", "bolt-spacing")
    text = run(*asked, "--limit", "10").out
    assert "20 more designs not shown" in text
    whole = run(*asked, "--limit", "10", "--format", "csv").out
    assert len(whole.splitlines()) == 31


@pytest.mark.parametrize(
    ("varied", "words"),
    [
        pytest.param((THICKNESS,), "sleeve.thickness [in]", id="one number"),
        pytest.param((THICKNESS, "bolts.columns=1:3"), "bolts.columns 2", id="two fields"),
        pytest.param(
            ("bolts.tightening=snug,turn-of-nut",), "turn-of-nut", id="names along the axis"
        ),
    ],
)
def test_a_plot(run: Run, case: Path, tmp_path: Path, varied: tuple[str, ...], words: str) -> None:
    path = tmp_path / "plot.svg"
    options = [part for one in varied for part in ("--vary", one)]
    assert run("sweep", case, *options, "--plot", path).code == 1
    text = path.read_text("utf-8")
    assert words in text
    assert "demand over capacity" in text
    assert "<title" in text
    assert list(tmp_path.iterdir()) == [path]


def test_a_plot_as_pixels(run: Run, case: Path, tmp_path: Path) -> None:
    path = tmp_path / "plot.PNG"
    run("sweep", case, "--vary", THICKNESS, "--plot", path)
    assert path.read_bytes().startswith(b"\x89PNG")


@pytest.mark.parametrize(
    ("options", "told"),
    [
        pytest.param(("--vary", "sleeve.thick=1 in"), "did you mean sleeve.thickness", id="field"),
        pytest.param(("--vary", "bolts.columns=1:3", "--only", "slip"), "seam-slip", id="state"),
        pytest.param(
            ("--vary", "bolts.columns=1:3", "--plot", "a.pdf"),
            "must end in .svg or .png",
            id="plot",
        ),
        pytest.param((), "required: --vary", id="nothing varies"),
        pytest.param(("--vary", "bolts.columns=1:3", "--variant", "x"), '"x"', id="variant"),
        pytest.param(
            ("--vary", "bolts.columns=1:3", "--vary", "bolts.columns=2"), "twice", id="twice"
        ),
    ],
)
def test_options_that_cannot_be_used(
    run: Run, case: Path, options: tuple[str, ...], told: str
) -> None:
    ran = run("sweep", case, *options)
    assert ran.code == 2
    assert told in ran.err
    assert not ran.out


def test_designs_of_which_none_can_be_built(run: Run, case: Path, tmp_path: Path) -> None:
    asked = ("--vary", "bolts.pitch=1 in,1.1 in")
    ran = run("sweep", case, *asked)
    assert ran.code == 2
    assert "2 cannot be built" in ran.out
    forms = [run("sweep", case, *asked, "--format", form) for form in ("csv", "json", "markdown")]
    assert [one.code for one in forms] == [2, 2, 2]
    path = tmp_path / "plot.svg"
    assert run("sweep", case, *asked, "--plot", path).code == 2
    assert "demand over capacity" in path.read_text("utf-8")
