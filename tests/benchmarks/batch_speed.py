"""Time a batch in one process beside two, and its peak memory beside that of four times as many.

Run as ``python tests/benchmarks/batch_speed.py`` on a machine with two idle cores; ``--piers N``
sets the size.  The piers are the reference case under axial loads that all differ, checked by all
limit states.  The first table is of the command from start to end, start-up and output included,
beside the speed once all processes are at work, and the processor time, which does not depend on
what else the machine does: where it stays the same and the gain is small, the cores were not free.
The second is the largest resident memory of the process that runs the batch, and of its largest
worker, as the operating system counted them.
"""

from __future__ import annotations

import argparse
import json
import os
import subprocess
import sys
import tempfile
from pathlib import Path
from typing import NamedTuple

from tabulate import tabulate

CASE = Path(__file__).parents[2] / "reference_cases" / "quarry-road-pier" / "repair.toml"
LOAD = 'axial_load = "600 kip"'
ASKED = 1.8
SLACK = 1.10
"""Memory at four times as many piers over memory at one, up to which it counts as flat."""

_RUN = """
import json, resource, sys, time
from jacketcheck.batch import run_batch
begin, marks = time.perf_counter(), []
run_batch(
    sys.argv[1], sys.argv[2], workers=int(sys.argv[3]),
    watch=lambda state: marks.append((time.perf_counter(), state.done)),
)
kinds = (resource.RUSAGE_SELF, resource.RUSAGE_CHILDREN)
used = [resource.getrusage(kind) for kind in kinds]
spent = sum(one.ru_utime + one.ru_stime for one in used)
peaks = [one.ru_maxrss for one in used]
(first, some), (last, every) = marks[0], marks[-1]
print(json.dumps([time.perf_counter() - begin, (every - some) / (last - first), spent, *peaks]))
"""


class Measured(NamedTuple):
    """Seconds in all, files a second once all are at work, processor seconds, peak memory [kB]."""

    seconds: float
    speed: float
    processor_seconds: float
    memory: float
    worker_memory: float


def inventory(folder: Path, count: int) -> Path:
    """Piers of which no two are alike."""
    text = CASE.read_text("utf-8")
    assert LOAD in text
    folder.mkdir()
    for index in range(count):
        kips = 500 + 100 * index / count
        (folder / f"pier {index:05}.toml").write_text(
            text.replace(LOAD, f'axial_load = "{kips:.4f} kip"'), "utf-8"
        )
    return folder


def measured(folder: Path, workers: int) -> Measured:
    """Run a batch in a process of its own."""
    with tempfile.TemporaryDirectory() as output:
        ran = subprocess.run(
            [sys.executable, "-c", _RUN, str(folder), output, str(workers)],
            capture_output=True,
            text=True,
            check=True,
        )
    return Measured(*json.loads(ran.stdout))


def main() -> int:
    """Print both tables; the exit code tells whether what is asked for is reached."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--piers", type=int, default=150, help="default: %(default)s")
    count: int = parser.parse_args().piers
    with tempfile.TemporaryDirectory() as place:
        small = inventory(Path(place) / "small", count)
        large = inventory(Path(place) / "large", 4 * count)
        one, two, many = measured(small, 1), measured(small, 2), measured(large, 2)
    print(f"load of the machine over the last minute: {os.getloadavg()[0]:.1f}")
    print()
    rows = [
        ["in all, s", one.seconds, two.seconds, one.seconds / two.seconds],
        [
            "processor seconds",
            one.processor_seconds,
            two.processor_seconds,
            one.processor_seconds / two.processor_seconds,
        ],
        ["files a second", one.speed, two.speed, two.speed / one.speed],
    ]
    headers = [f"{count} piers", "one process", "two", "gain"]
    print(tabulate(rows, headers=headers, floatfmt=".2f"))
    print(f"asked for: a gain of {ASKED}")
    print()
    memory: list[tuple[str, float, float, float]] = [
        (name, before / 1024, after / 1024, after / before)
        for name, before, after in (
            ("batch", two.memory, many.memory),
            ("largest worker", two.worker_memory, many.worker_memory),
        )
    ]
    headers = ["peak memory, MB", f"{count} piers", f"{4 * count} piers", "ratio"]
    print(tabulate(memory, headers=headers, floatfmt=("", ".1f", ".1f", ".2f")))
    is_flat = all(row[3] <= SLACK for row in memory)
    return 0 if two.speed / one.speed >= ASKED and is_flat else 1


if __name__ == "__main__":
    sys.exit(main())
