"""A run that is killed or interrupted at any moment is taken up again by the same command."""

from __future__ import annotations

import signal
import subprocess
import time
from collections import Counter
from pathlib import Path

import pytest

from jacketcheck.batch import run_batch
from tests.support.inventories import COMMAND, environment, lines_of, run_command, write_inventory

LOADS = range(601, 613)
WORKERS = 2

pytestmark = pytest.mark.usefixtures("bench")


def started(inventory: Path, output: Path, log: Path) -> subprocess.Popen[str]:
    """A slow run of which at least four files are done or being done."""
    process = subprocess.Popen(
        [*COMMAND, str(inventory), "-o", str(output), "--provisions", "bench", "--workers", "2"],
        env=environment(BENCH_LOG=str(log), BENCH_PAUSE="0.4"),
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
    )
    end = time.monotonic() + 60
    while len(logged(log)) < 4 + WORKERS:
        assert process.poll() is None, process.communicate()
        assert time.monotonic() < end
        time.sleep(0.02)
    return process


def logged(log: Path) -> list[str]:
    """Axial loads that have been evaluated, in that order."""
    return log.read_text().split() if log.exists() else []


def test_nothing_is_lost_by_a_kill_and_nothing_done_twice(inventory: Path, tmp_path: Path) -> None:
    names = write_inventory(inventory, LOADS)
    output, log, second = tmp_path / "output", tmp_path / "log", tmp_path / "second"
    process = started(inventory, output, log)
    process.send_signal(signal.SIGKILL)
    process.communicate()
    # nothing is there but the journal: no half table
    assert not [path for path in output.iterdir() if not path.name.startswith("journal")]

    ran = run_command(inventory, "-o", output, "--provisions", "bench", BENCH_LOG=str(second))
    assert ran.returncode == 0, ran.stderr
    first, again = logged(log), logged(second)
    assert f"checked {len(again)} of 12 files now, {12 - len(again)} before" in ran.stdout
    assert len(again) < 12
    assert sorted({*first, *again}) == [str(load) for load in LOADS]
    assert max(Counter(first).values()) == max(Counter(again).values()) == 1
    # only what was in a worker's hands, or had just left them, may be done anew
    assert len({*first} & {*again}) <= 2 * WORKERS
    assert [line["file"] for line in lines_of(output / "piers.csv")] == names

    undisturbed = tmp_path / "undisturbed"
    run_batch(inventory, undisturbed, provisions=("bench",), workers=1)
    for name in ("piers.csv", "results.csv", "summary.txt"):
        assert (output / name).read_bytes() == (undisturbed / name).read_bytes()


def test_an_interrupted_run_says_how_to_go_on(inventory: Path, tmp_path: Path) -> None:
    write_inventory(inventory, LOADS)
    output, log = tmp_path / "output", tmp_path / "log"
    process = started(inventory, output, log)
    process.send_signal(signal.SIGINT)
    printed, errors = process.communicate(timeout=20)
    assert process.returncode == 130
    assert printed == ""
    assert "the same command goes on from there" in errors
    assert "Traceback" not in errors
    stopped_at = len(logged(log))
    time.sleep(0.5)
    assert len(logged(log)) == stopped_at < 12, "a worker outlived the run"
