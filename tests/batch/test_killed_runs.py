"""A run that is killed or interrupted at any moment is taken up again by the same command."""

from __future__ import annotations

import signal
import subprocess
import sys
import time
from collections import Counter
from pathlib import Path
from typing import Final

import pytest

from jacketcheck.batch import run_batch
from tests.support.inventories import COMMAND, environment, lines_of, run_command, write_inventory
from tests.support.processes import processes_with

LOADS = range(601, 613)
WORKERS = 2
OUTPUTS: Final = ("piers.csv", "results.csv", "summary.txt")

pytestmark = pytest.mark.usefixtures("bench")


def started(inventory: Path, output: Path, log: Path) -> subprocess.Popen[str]:
    """A run that stands still when some files are done and both workers have one in their hands."""
    process = subprocess.Popen(
        [
            *(*COMMAND, str(inventory), "-o", str(output), "--provisions", "bench"),
            *("--workers", str(WORKERS), "--plugin-seconds", "3600", "--file-seconds", "3600"),
        ],
        env=environment(BENCH_LOG=str(log), BENCH_HOLD="6"),
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
    )
    while len(logged(log)) < 4 + WORKERS:
        assert process.poll() is None, process.communicate()
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
    for name in OUTPUTS:
        assert (output / name).read_bytes() == (undisturbed / name).read_bytes()


@pytest.mark.parametrize(("how", "code"), [(signal.SIGINT, 130), (signal.SIGTERM, 143)])
def test_an_interrupted_run_says_how_to_go_on(
    inventory: Path, tmp_path: Path, how: signal.Signals, code: int
) -> None:
    write_inventory(inventory, LOADS)
    output, log = tmp_path / "output", tmp_path / "log"
    process = started(inventory, output, log)
    process.send_signal(how)
    printed, errors = process.communicate()
    assert process.returncode == code
    assert printed == ""
    assert "the same command goes on from there" in errors
    assert "Traceback" not in errors
    assert not processes_with(f"BENCH_LOG={log}"), "a worker outlived the run"
    assert {path.name for path in output.iterdir()} == {"journal.sqlite"}


_DIES: Final = """
import os, signal, sys
from pathlib import Path

left = int(os.environ["RENAMES"])
real = Path.replace

def replace(self, target):
    global left
    if not left:
        os.kill(os.getpid(), signal.SIGKILL)
    left -= 1
    return real(self, target)

Path.replace = replace
from jacketcheck.cli.main import main
sys.exit(main())
"""


@pytest.mark.parametrize("earlier", [False, True])
@pytest.mark.parametrize("renames", [0, 1, 2])
def test_killed_between_the_last_renames(
    inventory: Path, tmp_path: Path, renames: int, *, earlier: bool
) -> None:
    """Each of the files is whole or as it was, and the next run gives what one alone gives."""
    write_inventory(inventory, [600, 660])
    output, undisturbed = tmp_path / "output", tmp_path / "undisturbed"
    if earlier:
        run_batch(inventory, output, provisions=("bench",), workers=1)
    before = {path.name: path.read_bytes() for path in output.glob("[!j]*")}
    write_inventory(inventory, [610, 660, 620])
    run_batch(inventory, undisturbed, provisions=("bench",), workers=1)
    whole = {name: (undisturbed / name).read_bytes() for name in OUTPUTS}
    arguments = ["batch", str(inventory), "-o", str(output), "--provisions", "bench"]
    killed = subprocess.run(
        [sys.executable, "-c", _DIES, *arguments, "--workers", "1"],
        env=environment(RENAMES=str(renames)), capture_output=True, check=False,
    )  # fmt: skip
    assert killed.returncode == -signal.SIGKILL, killed.stderr
    states = []
    for name in OUTPUTS:
        path = output / name
        found = path.read_bytes() if path.exists() else None
        assert found in (whole[name], before.get(name)), name
        states.append(found == whole[name])
    assert sum(states) == renames
    resumed = run_command(*arguments[1:])
    assert "checked 0 of 3 files now, 3 before" in resumed.stdout
    assert {name: (output / name).read_bytes() for name in OUTPUTS} == whole
    assert {path.name for path in output.iterdir()} == {*OUTPUTS, "journal.sqlite"}
