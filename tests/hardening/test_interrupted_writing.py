"""A run that is killed, interrupted or out of room while it writes leaves no half file.

Each command runs in a process of its own, which stops half way through the first bytes that it
writes, or may not write more than a few bytes.
"""

from __future__ import annotations

import os
import re
import shutil
import signal
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path
from typing import Final

import pytest

ROOT: Final = Path(__file__).parents[2]
CASE: Final = ROOT / "reference_cases" / "quarry-road-pier" / "repair.toml"
SIZING: Final = '\n[sizing.sleeve]\nthickness = ["3/4 in", "7/8 in"]\n'
OLD: Final = b"what was there before\n"

_STOPPING: Final = """
import io, os, sys, time
from pathlib import Path

class Half(io.BufferedWriter):
    def write(self, data):
        data = bytes(data)
        mark = Path(os.environ["HALF_WRITTEN"])
        if mark.exists():
            return super().write(data)
        super().write(data[: len(data) // 2])
        self.flush()
        mark.touch()
        time.sleep(100_000)

real = os.fdopen
os.fdopen = lambda handle, mode="r", *more, **named: (
    Half(io.FileIO(handle, "wb")) if mode == "wb" else real(handle, mode, *more, **named)
)
"""
_CRAMPED: Final = """
import resource, sys
resource.setrlimit(resource.RLIMIT_FSIZE, (20, 20))
"""
_MAIN: Final = """
from jacketcheck.cli.main import main
sys.exit(main())
"""

Written = Callable[[Path], tuple[list[str], Path]]


def _report(folder: Path) -> tuple[list[str], Path]:
    target = folder / "report.html"
    return ["report", str(CASE), "--no-figures", "--overwrite", "--output", str(target)], target


def _report_in_markdown(folder: Path) -> tuple[list[str], Path]:
    target = folder / "report.md"
    return ["report", str(CASE), "--no-figures", "--overwrite", "--output", str(target)], target


def _draw(folder: Path) -> tuple[list[str], Path]:
    target = folder / "ratios.svg"
    return ["draw", str(CASE), "ratios", "--overwrite", "--output", str(target)], target


def _shop(folder: Path) -> tuple[list[str], Path]:
    arguments = ["shop", str(CASE), "--output", str(folder), "--overwrite"]
    return arguments, folder / "sleeve.dxf"


def _new(folder: Path) -> tuple[list[str], Path]:
    target = folder / "new.toml"
    return ["new", str(target), "--overwrite"], target


def _sweep(folder: Path) -> tuple[list[str], Path]:
    target = folder / "sweep.svg"
    vary = "sleeve.thickness=10 mm,12 mm"
    return ["sweep", str(CASE), "--vary", vary, "--overwrite", "--plot", str(target)], target


def _size(folder: Path) -> tuple[list[str], Path]:
    target, bounds = folder / "sized.toml", folder / "bounds.toml"
    bounds.write_text(CASE.read_text("utf-8") + SIZING, "utf-8")
    return ["size", str(bounds), "--overwrite", "--save", str(target)], target


def _batch(folder: Path) -> tuple[list[str], Path]:
    piers, target = folder / "piers", folder / "results" / "summary.csv"
    piers.mkdir()
    target.parent.mkdir()
    shutil.copy(CASE, piers)
    return ["batch", str(piers), "--output", str(target.parent), "--workers", "1"], target


COMMANDS: Final[dict[str, Written]] = {
    "report": _report, "report, Markdown": _report_in_markdown, "draw": _draw, "shop": _shop,
    "new": _new, "sweep": _sweep, "size": _size, "batch": _batch,
}  # fmt: skip


def environment(**more: str) -> dict[str, str]:
    """Environment in which a process finds what this one finds."""
    return {**os.environ, "PYTHONPATH": os.pathsep.join(sys.path), **more}


def started(folder: Path, arguments: list[str], before: str) -> subprocess.Popen[str]:
    there = environment(HALF_WRITTEN=str(folder / "half-written"))
    return subprocess.Popen(
        [sys.executable, "-c", f"{before}{_MAIN}", *arguments],
        env=there,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
    )


def stopped(folder: Path, arguments: list[str], how: signal.Signals) -> tuple[int, str]:
    """Exit code, and what was said, of a command that is stopped half way through writing."""
    process = started(folder, arguments, _STOPPING)
    while not (folder / "half-written").exists():
        if process.poll() is not None:
            pytest.fail(f"nothing was written: {process.communicate()}")
        time.sleep(0.02)
    process.send_signal(how)
    _, told = process.communicate()
    return process.returncode, told


def hidden_files(target: Path) -> list[str]:
    return [path.name for path in target.parent.iterdir() if path.name.startswith(".")]


@pytest.fixture(params=["old file", "no file"])
def was_there(request: pytest.FixtureRequest) -> bool:
    return bool(request.param == "old file")


def prepared(tmp_path: Path, name: str, *, was_there: bool) -> tuple[list[str], Path]:
    folder = tmp_path / "out"
    folder.mkdir()
    arguments, target = COMMANDS[name](folder)
    if was_there:
        target.write_bytes(OLD)
    return arguments, target


@pytest.mark.parametrize("name", COMMANDS)
def test_killed(tmp_path: Path, name: str, *, was_there: bool) -> None:
    arguments, target = prepared(tmp_path, name, was_there=was_there)
    code, _ = stopped(tmp_path, arguments, signal.SIGKILL)
    assert code == -signal.SIGKILL
    assert target.read_bytes() == OLD if was_there else not target.exists()


@pytest.mark.parametrize(
    ("how", "expected", "word"),
    [(signal.SIGINT, 130, "interrupted"), (signal.SIGTERM, 143, "terminated")],
)
@pytest.mark.parametrize("name", COMMANDS)
def test_interrupted(
    tmp_path: Path, name: str, how: signal.Signals, expected: int, word: str
) -> None:
    arguments, target = prepared(tmp_path, name, was_there=True)
    code, told = stopped(tmp_path, arguments, how)
    assert code == expected
    assert word in told
    assert "Traceback" not in told
    assert target.read_bytes() == OLD
    assert hidden_files(target) == []


@pytest.mark.parametrize("name", COMMANDS)
def test_no_room_left(tmp_path: Path, name: str, *, was_there: bool) -> None:
    arguments, target = prepared(tmp_path, name, was_there=was_there)
    _, told = (process := started(tmp_path, arguments, _CRAMPED)).communicate()
    assert process.returncode == 2
    assert re.search("cannot be written: File too large|disk I/O error", told)
    assert "Traceback" not in told
    assert target.read_bytes() == OLD if was_there else not target.exists()
    assert hidden_files(target) == []


def test_output_to_a_full_device() -> None:
    with Path("/dev/full").open("w") as full:
        ran = subprocess.run(
            [sys.executable, "-m", "jacketcheck", "check", str(CASE)],
            stdout=full, stderr=subprocess.PIPE, env=environment(), text=True, check=False,
        )  # fmt: skip
    assert ran.returncode == 2
    assert ran.stderr == "jacketcheck: cannot write the output: No space left on device\n"


def test_output_to_a_terminal_that_knows_few_characters() -> None:
    ran = subprocess.run(
        [sys.executable, "-m", "jacketcheck", "check", str(CASE)],
        env=environment(PYTHONIOENCODING="ascii"), capture_output=True, check=False,
    )  # fmt: skip
    assert ran.returncode == 0
    assert ran.stderr == b""
    assert rb"\u2026" in ran.stdout


@pytest.mark.parametrize(
    ("how", "code", "word"),
    [(signal.SIGINT, 130, "interrupted"), (signal.SIGTERM, 143, "terminated")],
)
def test_interrupted_while_it_checks(
    tmp_path: Path, how: signal.Signals, code: int, word: str
) -> None:
    patience = """
import os, sys, time
from pathlib import Path
from jacketcheck.engine import evaluate as module
import jacketcheck.api

def slow(*arguments, **named):
    Path(os.environ["HALF_WRITTEN"]).touch()
    time.sleep(100_000)

jacketcheck.api.evaluate = slow
"""
    process = started(tmp_path, ["check", str(CASE)], patience)
    while not (tmp_path / "half-written").exists() and process.poll() is None:
        time.sleep(0.02)
    process.send_signal(how)
    printed, told = process.communicate()
    assert (process.returncode, printed, told) == (code, "", f"jacketcheck: {word}\n")
