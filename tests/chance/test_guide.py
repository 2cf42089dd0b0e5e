"""The guide's tables are those of the code."""

from __future__ import annotations

from pathlib import Path

from jacketcheck.chance.limits import COVERED, WITHOUT_PROBABILITY
from jacketcheck.chance.variables import NAMES
from jacketcheck.inputs.chance import Chance

GUIDE = (Path(__file__).parents[2] / "jacketcheck" / "chance" / "README.md").read_text("utf-8")


def test_covered_limit_states() -> None:
    rows = [f"| {limit.id} | {limit.effort} | {limit.event} |" for limit in COVERED]
    assert "|---|---|---|\n" + "\n".join(rows) + "\n" in GUIDE


def test_limit_states_without_a_probability() -> None:
    rows = [f"| {name} | {reason} |" for name, reason in WITHOUT_PROBABILITY.items()]
    assert "|---|---|\n" + "\n".join(rows) + "\n" in GUIDE


def test_example_is_valid() -> None:
    import tomllib

    lines = [line[4:] for line in GUIDE.splitlines() if line.startswith("    ")]
    table = tomllib.loads("\n".join(lines))["chance"]
    assert {one.name for one in Chance.model_validate(table).variables} <= set(NAMES)
