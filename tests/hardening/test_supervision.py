"""Plug-ins that no thread can stop, that take the process with them, or write when they like."""

from __future__ import annotations

import json
import os
import subprocess
import sys
import time
from pathlib import Path
from typing import Any

import pytest

from tests.support.jackets import CASE

MODULE = """
import atexit, os, re, sys, threading, time
from jacketcheck.plugin import Provisions, Result, hookimpl, limit_state

atexit.register(lambda: print("said at the end"))

def chatter():
    while True:
        time.sleep(0.01)
        print("said by a thread")

threading.Thread(target=chatter, daemon=True).start()

def rows():
    return [Result("fine", "x", 1.0, 2.0, "mm", "a clause")]

def hungry():
    kept = []
    while True:
        kept.append(bytearray(10**9))

def loud():
    os.write(1, b"said by number")
    os.system("echo said by a child")
    return rows()

ODD = {
    "backtracking": lambda: re.match(r"(a+)+$", "a" * 40 + "b") or rows(),
    "power": lambda: rows() if 9 ** 9 ** 9 else [],
    "leaves": lambda: os._exit(0),
    "crashes": lambda: os.kill(os.getpid(), 11),
    "hungry": hungry,
    "loud": loud,
    "waits": lambda: time.sleep(600.0),
    "fine": rows,
}

def odd(name):
    return limit_state(name, title=name, provisions="odd")(lambda jacket: ODD[name]())

@hookimpl
def jacketcheck_provisions():
    return [Provisions("odd", "Odd code", inherits=None)]

@hookimpl
def jacketcheck_limit_states():
    return [odd(name) for name in os.environ["ODD"].split(",")]

@hookimpl
def jacketcheck_bars():
    while True:
        yield None
"""


@pytest.fixture
def installed(tmp_path: Path) -> Path:
    """A folder that holds a distribution with the plug-in, as an installer lays it."""
    (tmp_path / "odd_plugin.py").write_text(MODULE, "utf-8")
    about = tmp_path / "odd_plugin-1.0.dist-info"
    about.mkdir()
    (about / "METADATA").write_text("Metadata-Version: 2.1\nName: odd-plugin\nVersion: 1.0\n")
    (about / "entry_points.txt").write_text("[jacketcheck.plugins]\nodd = odd_plugin\n")
    return tmp_path


def run(folder: Path, odd: str, *options: str) -> subprocess.CompletedProcess[str]:
    paths = [str(folder), str(Path(__file__).parents[2])]
    env = {**os.environ, "PYTHONPATH": os.pathsep.join(paths), "ODD": odd}
    return subprocess.run(
        [sys.executable, "-m", "jacketcheck", "check", str(CASE), "--provisions", "odd",
         "--plugin-seconds", "1", *options],
        capture_output=True, text=True, check=False, env=env, timeout=300,
    )  # fmt: skip


def notes(found: subprocess.CompletedProcess[str]) -> dict[str, tuple[str, list[str]]]:
    """Verdict and notes by limit state; the output must be JSON and nothing else."""
    said: dict[str, Any] = json.loads(found.stdout)
    (table,) = said["tables"]
    rows = table["rows"] if "rows" in table else table["results"]
    return {row["limit_state"]: (row["verdict"], row["notes"]) for row in rows}


@pytest.mark.parametrize(
    ("odd", "why"),
    [
        ("backtracking", "did not return within 1 s"),
        ("power", "did not return within 1 s"),
        ("leaves", "ended the process, exit code 0"),
        ("crashes", "ended the process, SIGSEGV"),
    ],
)
def test_what_no_thread_can_stop_is_a_row(installed: Path, odd: str, why: str) -> None:
    found = run(installed, f"{odd},fine", "--format", "json")
    rows = notes(found)
    assert rows["fine"][0] == "ok"
    verdict, told = rows[odd]
    assert verdict == "NOT EVALUATED"
    assert why in told[0]
    assert found.returncode == 3


def test_memory_has_a_bound(installed: Path) -> None:
    verdict, told = notes(run(installed, "hungry,fine", "--format", "json",
                              "--plugin-seconds", "60"))["hungry"]  # fmt: skip
    assert verdict == "NOT EVALUATED"
    assert "MemoryError" in told[0]


def test_an_iterator_without_end_is_refused(installed: Path) -> None:
    found = run(installed, "fine", "--format", "json")
    assert "more than 10000 records" in found.stdout
    assert found.returncode == 3


def test_what_a_plug_in_says_at_any_time_stays_out_of_the_output(installed: Path) -> None:
    found = run(installed, "loud,fine")
    for said in ("by number", "by a child", "at the end"):
        assert f"said {said}" not in found.stdout
    lines = [line for line in found.stdout.splitlines() if line.startswith("said")]
    assert not lines


def test_no_process_outlives_the_one_that_watches(installed: Path) -> None:
    env = {**os.environ, "ODD": "waits"}
    env["PYTHONPATH"] = os.pathsep.join([str(installed), str(Path(__file__).parents[2])])
    watching = subprocess.Popen(
        [sys.executable, "-m", "jacketcheck", "check", str(CASE), "--provisions", "odd"],
        stdout=subprocess.PIPE, env=env,
    )  # fmt: skip
    while not (children := _children(watching.pid)):
        assert watching.poll() is None
    watching.kill()
    watching.wait()
    # its output is shared: the reading ends when the last of them has let go of it
    assert watching.stdout is not None
    watching.stdout.read()
    watching.stdout.close()
    while not all(_is_over(child) for child in children):
        time.sleep(0.05)


def _children(parent: int) -> list[int]:
    found = Path(f"/proc/{parent}/task/{parent}/children")
    return [int(one) for one in found.read_text().split()] if found.exists() else []


def _is_over(process: int) -> bool:
    """Whether a process has ended, though nobody has asked how."""
    try:
        state = Path(f"/proc/{process}/stat").read_text().rpartition(")")[2].split()[0]
    except OSError:
        return True
    return state in {"Z", "X"}
