"""What the README prints is what the commands print, and its Python runs."""

from __future__ import annotations

import doctest
import re
import shlex
from pathlib import Path

import pytest

from jacketcheck.cli.main import main

ROOT = Path(__file__).parents[2]
README = (ROOT / "README.md").read_text("utf-8")
SHOWN = re.findall(r"```console\n\$ jacketcheck (.*)\n([\s\S]*?)```", README)
LEFT_OUT = re.compile(r"^ *…$", re.MULTILINE)


@pytest.fixture(autouse=True)
def _at_the_top_level(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(ROOT)


def test_the_readme_shows_output() -> None:
    assert len(SHOWN) == 2


@pytest.mark.parametrize(("command", "shown"), SHOWN, ids=[command for command, _ in SHOWN])
def test_output_is_as_shown(command: str, shown: str, capsys: pytest.CaptureFixture[str]) -> None:
    main(shlex.split(command))
    printed = capsys.readouterr().out
    place = 0
    for part in LEFT_OUT.split(shown):
        text = part.strip("\n")
        found = printed.find(text, place)
        assert found >= 0, f"not printed by {command}:\n{text}\n\nbut:\n{printed}"
        place = found + len(text)


def test_the_python_of_the_readme_runs() -> None:
    parser = doctest.DocTestParser()
    blocks = "\n".join(re.findall(r"```pycon\n([\s\S]*?)```", README))
    test = parser.get_doctest(blocks, {}, "README.md", "README.md", 0)
    lines = [line for one in test.examples for line in one.source.splitlines()]
    assert 3 <= len(lines) <= 5
    assert doctest.DocTestRunner().run(test).failed == 0


def test_every_command_is_named() -> None:
    from jacketcheck.cli.main import _COMMANDS

    assert {name for name in _COMMANDS if f"`jacketcheck {name}" not in README} == set()


def test_the_first_paragraph_states_the_job() -> None:
    first = README.split("\n\n")[1]
    for word in ("bridge column", "sleeve", "bolts", "grout", "demand over capacity"):
        assert word in first
