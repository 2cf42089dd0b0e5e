from __future__ import annotations

import subprocess
import sys
from importlib.metadata import version
from pathlib import Path

import pytest

from jacketcheck.cli.main import _COMMANDS
from tests.support.cli_runs import Run


def test_no_command_prints_the_help_and_gives_two(run: Run) -> None:
    ran = run()
    assert ran.code == 2
    for name in _COMMANDS:
        assert name in ran.out


@pytest.mark.parametrize("name", _COMMANDS)
def test_every_command_has_help(run: Run, name: str) -> None:
    ran = run(name, "--help")
    assert ran.code == 0
    assert name in ran.out


def test_an_unknown_option_is_one_line_and_gives_two(run: Run, case: Path) -> None:
    ran = run("check", case, "--colour")
    assert ran.code == 2
    assert len(ran.err.strip().splitlines()) == 1
    assert "--help" in ran.err


def test_version(run: Run) -> None:
    assert run("--version").out.strip() == f"jacketcheck {version('jacketcheck')}"


def test_a_file_that_is_not_there_is_one_error(run: Run, tmp_path: Path) -> None:
    ran = run("check", tmp_path / "none.toml")
    assert ran.code == 2
    assert "none.toml" in ran.err


def test_the_module_runs_like_the_command(case: Path) -> None:
    ran = subprocess.run(
        [sys.executable, "-m", "jacketcheck", "check", str(case)],
        capture_output=True,
        text=True,
        check=False,
    )
    assert ran.returncode == 0
    assert "governed by" in ran.stdout


def test_output_into_a_closed_pipe_is_no_error(case: Path) -> None:
    command = f"{sys.executable} -m jacketcheck check {case} --variant all | head -1"
    ran = subprocess.run(command, shell=True, capture_output=True, text=True, check=False)
    assert ran.stdout.startswith("Quarry Road")
    assert ran.stderr == ""


@pytest.mark.parametrize(
    "heavy", ["scipy.optimize", "scipy.stats", "matplotlib", "ezdxf", "pandas", "dask"]
)
def test_checking_does_not_import_what_it_does_not_need(case: Path, heavy: str) -> None:
    code = (
        "import sys; from jacketcheck.cli.main import main; "
        f"main(['check', {str(case)!r}]); sys.exit({heavy!r} in sys.modules)"
    )
    ran = subprocess.run([sys.executable, "-c", code], capture_output=True, check=False)
    assert ran.returncode == 0
