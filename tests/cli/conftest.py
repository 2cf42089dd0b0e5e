"""Running the command line inside the test process, and the repair files it is run on."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from jacketcheck.cli.main import main
from tests.support.cli_runs import Ran, Run

CASE = Path(__file__).parents[2] / "reference_cases" / "quarry-road-pier" / "repair.toml"


@pytest.fixture
def run(capsys: pytest.CaptureFixture[str]) -> Run:
    """Run a command and catch what it prints."""

    def call(*arguments: object) -> Ran:
        try:
            code = main([str(argument) for argument in arguments])
        except SystemExit as stop:
            code = stop.code if isinstance(stop.code, int) else 1
        printed = capsys.readouterr()
        return Ran(code, printed.out, printed.err)

    return call


@pytest.fixture
def case() -> Path:
    """The reference case."""
    return CASE


@pytest.fixture
def edited(tmp_path: Path) -> Callable[..., Path]:
    """A copy of the reference case with some texts replaced; each must be there."""

    def write(*replacements: tuple[str, str]) -> Path:
        text = CASE.read_text("utf-8")
        for old, new in replacements:
            assert old in text, old
            text = text.replace(old, new)
        path = tmp_path / "repair.toml"
        path.write_text(text, "utf-8")
        return path

    return write
