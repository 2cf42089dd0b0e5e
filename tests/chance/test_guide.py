"""The guide's tables are those of the code."""

from __future__ import annotations

from pathlib import Path

from jacketcheck.chance.events import events_of
from jacketcheck.chance.variables import NAMES
from jacketcheck.host.loading import load_host
from jacketcheck.inputs.chance import Chance

EVENTS = events_of(load_host(installed=False), ["us"])
GUIDE = (Path(__file__).parents[2] / "jacketcheck" / "chance" / "README.md").read_text("utf-8")


def test_covered_limit_states() -> None:
    rows = [f"| {one.id} | {one.effort} | {one.text} |" for one in EVENTS.asked]
    assert "|---|---|---|\n" + "\n".join(rows) + "\n" in GUIDE


def test_limit_states_without_a_probability() -> None:
    rows = [f"| {name} | {reason} |" for name, reason in EVENTS.without.items()]
    assert "|---|---|\n" + "\n".join(rows) + "\n" in GUIDE


def test_example_is_valid() -> None:
    import tomllib

    lines = [line[4:] for line in GUIDE.splitlines() if line.startswith("    ")]
    table = tomllib.loads("\n".join(lines))["chance"]
    assert {one.name for one in Chance.model_validate(table).variables} <= set(NAMES)
