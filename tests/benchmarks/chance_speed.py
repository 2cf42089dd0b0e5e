"""Time the probability of exceedance: samples by effort, and the command with its defaults.

Run as ``OMP_NUM_THREADS=1 python tests/benchmarks/chance_speed.py``.  All work on the same jacket,
one after the other in the same process, drawing of the samples included.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

from tabulate import tabulate

from jacketcheck.chance import chance_of_exceedance
from jacketcheck.chance.array_counting import count_by_arrays
from jacketcheck.chance.estimate import DEFAULTS, model_at_means
from jacketcheck.chance.events import events_of
from jacketcheck.chance.section_counting import count_by_sections
from jacketcheck.host.loading import load_host
from jacketcheck.inputs import read_input
from jacketcheck.jacket import build_jacket

CASE = Path(__file__).parents[2] / "reference_cases" / "quarry-road-pier" / "repair.toml"
SLIP = ("seam-slip", "hoop-dilation", "hoop-clamping")


def fastest(call: Callable[[], object], *, repeats: int) -> float:
    """Shortest processor time of some calls [s], after one to warm up."""
    times = []
    for _ in range(repeats + 1):
        start = time.process_time()
        call()
        times.append(time.process_time() - start)
    return min(times[1:])


def main() -> int:
    """Print the table."""
    jacket, host = build_jacket(read_input(CASE).base), load_host(installed=False)
    events = events_of(host, ["us"]).asked
    model = model_at_means(jacket)
    closed = [event for event in events if event.effort == "closed-form"]
    bond = [event for event in events if event.effort == "bond"]
    sections = [event for event in events if event.effort == "sections"]
    slip = [event for event in closed if event.id in SLIP]
    settings = model.settings
    few = replace(model, settings=replace(settings, section_samples=64))
    cases: list[tuple[str, int, Callable[[], object], int]] = [
        ("slip and hoop action", settings.samples,
         lambda: count_by_arrays(slip, model, effort="closed-form"), 2),
        ("all in closed form", settings.samples,
         lambda: count_by_arrays(closed, model, effort="closed-form"), 2),
        ("bond of bars", settings.bond_samples,
         lambda: count_by_arrays(bond, model, effort="bond"), 2),
        ("section analyses", 64, lambda: count_by_sections(sections, few), 1),
        ("the whole estimate with its defaults", settings.samples,
         lambda: chance_of_exceedance(jacket, settings=DEFAULTS, host=host), 1),
    ]  # fmt: skip
    rows = [
        [what, count, seconds := fastest(call, repeats=repeats), 1e6 * seconds / count]
        for what, count, call, repeats in cases
    ]
    headers = ["what", "samples", "time [s]", "per sample [us]"]
    print(tabulate(rows, headers, floatfmt=("", ",.0f", ".2f", ",.1f")))
    return 0


if __name__ == "__main__":
    sys.exit(main())
