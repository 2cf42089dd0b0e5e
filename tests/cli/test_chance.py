from __future__ import annotations

import csv
import io
import json
from collections.abc import Callable
from pathlib import Path

import jsonschema
import pytest

from jacketcheck.chance.events import events_of
from jacketcheck.host.loading import load_host
from tests.support.cli_runs import Run

EVENTS = events_of(load_host(installed=False), ["us"])
Edited = Callable[..., Path]
QUICK = ("--samples", 1024, "--bond-samples", 64, "--section-samples", 0)


def test_text_tells_everything(run: Run, case: Path) -> None:
    ran = run("chance", case, *QUICK)
    assert (ran.code, ran.err) == (0, "")
    for limit in EVENTS.asked:
        assert limit.id in ran.out
    for name in EVENTS.without:
        assert f"- {name}: " in ran.out
    assert "any of the limit states below exceeded: probability 0." in ran.out
    assert (
        "Not covered here, for the engineer to check:\n- flexure and shear of the foot" in ran.out
    )
    assert "Cautions:" in ran.out
    assert "\nMade by jacketcheck " in ran.out
    assert "given an earthquake that forms the relocated hinge" in ran.out
    assert "scrambled Sobol points, seed 20240; samples: 1,024 closed form (Latin" in ran.out
    assert "JCSS Probabilistic Model Code" in ran.out


def test_markdown_is_a_table(run: Run, case: Path) -> None:
    ran = run("chance", case, *QUICK, "--format", "markdown", "--only", "seam-slip")
    assert ran.code == 0
    assert ran.out.startswith("# Probability of exceedance: Quarry Road")
    assert "\n| Slip of the seam bolts " in ran.out


def test_variants_stand_side_by_side(run: Run, case: Path) -> None:
    ran = run("chance", case, *QUICK, "--only", "seam-slip", "--variant", "all")
    rows = ran.out.split("Side by side")[1].splitlines()
    slip = next(row for row in rows if row.startswith("Slip of the seam bolts"))
    assert slip.split()[-1] == "1"  # snug bolts
    # what holds for all variants stands once
    assert ran.out.count("\nsleeve-yield ") == 1
    assert ran.out.count("- Slip of the seam bolts (seam-slip): ") == 1
    assert "bolt-pretension [chipped, thick, unchipped, thin]" in ran.out


def test_json_follows_its_schema(run: Run, case: Path) -> None:
    document = json.loads(run("chance", case, *QUICK, "--format", "json").out)
    schema = json.loads(run("schema", "chance").out)
    jsonschema.Draft202012Validator.check_schema(schema)
    jsonschema.validate(document, schema)
    variant = document["variants"][0]
    assert {row["limit_state"] for row in variant["limits"]} <= {limit.id for limit in EVENTS.asked}
    assert document["made_by"].startswith("jacketcheck ")
    assert document["not_covered"]
    assert document["cautions"]
    assert variant["drawn_by"] == {"closed-form": "latin-hypercube", "bond": "latin-hypercube"}
    assert (
        variant["system"]["probability"] >= max(row["probability"] for row in variant["limits"]) / 2
    )


def test_csv_has_a_line_for_each_limit_state_and_one_for_any(run: Run, case: Path) -> None:
    rows = list(csv.DictReader(io.StringIO(run("chance", case, *QUICK, "--format", "csv").out)))
    assert rows[0]["limit_state"] == "any"
    assert rows[0].keys() >= {"probability", "low", "high", "moved_most_by", "reason"}
    assert all(0.0 <= float(row["low"]) <= float(row["high"]) <= 1.0 for row in rows)
    assert sum(row["limit_state"] == "seam-slip" for row in rows) == 1


def test_seed_and_method_go_before_the_file(run: Run, edited: Edited) -> None:
    table = "[actions]\n"
    file = edited((table, '[chance]\nseed = 5\nmethod = "random"\nsamples = 512\n\n[actions]\n'))
    only = ("--only", "seam-slip")
    assert "random points, seed 5; samples: 512 closed form\n" in run("chance", file, *only).out
    ran = run("chance", file, *only, "--seed", 6, "--method", "latin-hypercube")
    assert "Latin hypercube, seed 6; samples: 512 closed form" in ran.out


def test_same_command_same_output(run: Run, case: Path) -> None:
    arguments = ("chance", case, *QUICK, "--only", "seam-slip", "--only", "clamping")
    first = run(*arguments, "--format", "json").out
    assert '"exceeded"' in first
    assert run(*arguments, "--format", "json").out == first


def test_scatter_of_the_file_counts(run: Run, edited: Edited) -> None:
    table = """[[chance.variables]]
name = "axial-strain"
coefficient_of_variation = 0.6
source = "our own tests"

[actions]
"""
    ran = run("chance", edited(("[actions]\n", table)), *QUICK, "--only", "hoop-dilation")
    assert "our own tests" in ran.out
    row = next(line for line in ran.out.splitlines() if line.startswith("axial-strain"))
    assert "0.60" in row


def test_what_cannot_be_evaluated_gives_three_and_a_reason(run: Run, edited: Edited) -> None:
    """Cracks wider than the bond law knows, around bars that are not chipped."""
    file = edited(('surface = "chipped"', 'surface = "unchipped"'), ('"0.4 mm"', '"0.8 mm"'))
    ran = run("chance", file, *QUICK, "--only", "bar-length")
    assert ran.code == 3
    assert "COULD NOT BE EVALUATED, counted as exceeded in the table:" in ran.out
    told = " ".join(ran.out.split())
    assert "bond is covered up to 0.5 mm" in told
    assert "probability 1," in ran.out
    assert "probability 0 if they hold, 1 if they exceed: the answer is open" in told


@pytest.mark.parametrize(
    ("arguments", "told"),
    [
        (("--only", "slip"), "'slip': has no probability; known are"),
        (("--only", "p-delta"), "no event"),
        (("--samples", "3"), "3 is not between 16 and"),
        (("--seed", "-1"), "-1 is not between 0 and"),
        (("--samples", "many"), "many is not a whole number"),
        (("--section-samples", "1000001"), "is not between 0 and 1000000"),
        (("--method", "grid"), "invalid choice: 'grid'"),
        (("--variant", "thicker"), "is not in the file"),
    ],
)
def test_wrong_options(run: Run, case: Path, arguments: tuple[str, ...], told: str) -> None:
    ran = run("chance", case, *arguments)
    assert ran.code == 2
    assert ran.out == ""
    assert told in ran.err


def test_every_problem_of_the_table_is_told(run: Run, edited: Edited) -> None:
    table = """[chance]
samples = 3
seed = 1.5

[[chance.variables]]
name = "luck"

[actions]
"""
    ran = run("chance", edited(("[actions]\n", table)))
    assert ran.code == 2
    for told in ("chance.samples = 3", "chance.seed = 1.5", 'chance.variables.1.name = "luck"'):
        assert told in ran.err
