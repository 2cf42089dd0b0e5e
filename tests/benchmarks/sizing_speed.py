"""Time the evaluation of many designs beside the speed that is asked for.

Run as ``OMP_NUM_THREADS=1 python tests/benchmarks/sizing_speed.py``.  The designs differ in sleeve
thickness, bolt pitch, gauge and added bars.  Three efforts are timed, one after the other in the
same process: all closed-form limit states under the least demand, as the search screens with;
those with bond; and everything, section analysis included.  Speeds are medians of three runs, by
the clock and by processor time: on an idle machine they agree, on a busy one the second still tells
what the work costs.  The last column is the ratio of the second to the speed asked for.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Callable
from pathlib import Path
from statistics import median
from typing import Any, NamedTuple

import numpy as np
from tabulate import tabulate

from jacketcheck.analysis.least_demand import with_least_demand
from jacketcheck.engine.ratios import ratios_of_designs
from jacketcheck.host.host import Host
from jacketcheck.host.loading import load_host
from jacketcheck.inputs import RepairInput, read_input
from jacketcheck.jacket import Jacket
from jacketcheck.jacket.many import assemble_designs
from jacketcheck.sizing.screening import limit_states_of

CASE = Path(__file__).parents[2] / "reference_cases" / "quarry-road-pier" / "repair.toml"
RUNS = 3


class Effort(NamedTuple):
    """What is timed, of how many designs, and the designs a second that are asked for."""

    name: str
    designs: int
    asked: float
    evaluate: Callable[[Jacket], Any]


def designs(repair: RepairInput, host: Host, count: int) -> Jacket:
    """Designs that differ in everything that a search varies in numbers."""
    random = np.random.default_rng(20_240)
    values = {
        "sleeve.thickness": random.uniform(9.5, 25.4, count),
        "splice.thickness": random.uniform(9.5, 16.0, count),
        "bolts.pitch": random.uniform(90.0, 125.0, count),
        "bolts.rows": None,
        "bolts.end_distance": 40.0,
        "bolts.gauge": random.uniform(70.0, 80.0, count),
        "added_bars.count": random.integers(10, 24, count).astype(float),
        "added_bars.embedment": random.uniform(900.0, 1200.0, count),
    }
    built = assemble_designs(repair, values, count=count, catalog=host.catalog)
    assert built.jacket is not None
    assert built.indexes.size == count
    return built.jacket


def speed(effort: Effort, repair: RepairInput, host: Host) -> tuple[float, float]:
    """Designs a second, by the clock and by processor time: building the jackets counts as well."""
    clocks: list[float] = []
    processor: list[float] = []
    for _ in range(RUNS):
        start = time.perf_counter(), time.process_time()
        effort.evaluate(designs(repair, host, effort.designs))
        clocks.append(time.perf_counter() - start[0])
        processor.append(time.process_time() - start[1])
    return effort.designs / median(clocks), effort.designs / median(processor)


def main() -> int:
    """Print the table; the exit code tells whether every speed is reached."""
    host = load_host(installed=False)
    repair = read_input(CASE, catalog=host.catalog).base
    closed = limit_states_of(host, ("us",), "closed-form")
    bond = limit_states_of(host, ("us",), "bond")
    efforts = (
        Effort(
            f"{len(closed)} closed-form limit states",
            4000,
            2000.0,
            lambda jacket: ratios_of_designs(with_least_demand(jacket), host=host, only=closed),
        ),
        Effort(
            "closed form and bond",
            1000,
            100.0,
            lambda jacket: ratios_of_designs(
                with_least_demand(jacket), host=host, only=closed | bond
            ),
        ),
        Effort(
            "everything: sections, dilation, bond",
            256,
            100.0,
            lambda jacket: ratios_of_designs(jacket, host=host),
        ),
    )
    rows, enough = [], True
    for effort in efforts:
        clock, processor = speed(effort, repair, host)
        ratio = processor / effort.asked
        enough &= ratio >= 1.0
        rows.append([effort.name, effort.designs, effort.asked, clock, processor, ratio])
    headers = ["effort", "designs", "asked for, 1/s", "by clock, 1/s", "by processor, 1/s", "ratio"]
    print(tabulate(rows, headers=headers, floatfmt=("", "", ".0f", ".0f", ".0f", ".2f")))
    return 0 if enough else 1


if __name__ == "__main__":
    sys.exit(main())
