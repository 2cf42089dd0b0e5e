"""Time the probability of slip and hoop yield by four ways of sampling and evaluating.

Run as ``OMP_NUM_THREADS=1 python tests/benchmarks/chance_speed.py``.  All work on the same jacket
with the same random variables, one after the other in the same process, drawing of the samples
included.  The last column is the ratio of the times for a sample to that of the direct way with
random points.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import numpy as np
from tabulate import tabulate

from jacketcheck.chance import ChanceResult, chance_of_exceedance
from jacketcheck.chance.array_counting import count_by_arrays
from jacketcheck.chance.estimate import DEFAULTS, model_at_means
from jacketcheck.chance.evaluation import section_sample, single_ratios
from jacketcheck.chance.limits import COVERED
from jacketcheck.chance.model import Model
from jacketcheck.chance.realisation import one_sample
from jacketcheck.inputs import read_input
from jacketcheck.jacket import Jacket, build_jacket

CASE = Path(__file__).parents[2] / "reference_cases" / "quarry-road-pier" / "repair.toml"
CHECKS = ("seam-slip", "hoop-dilation", "hoop-clamping")
LIMITS = tuple(limit for limit in COVERED if limit.id in CHECKS)
SAMPLES = 1_000_000
ALLOWED = 0.15
"""Time that a million samples may take [s]."""


def fastest(
    call: Callable[[], object], *, repeats: int, clock: Callable[[], float] = time.perf_counter
) -> float:
    """Shortest time of some calls [s], after one to warm up; by default on the wall."""
    times = []
    for _ in range(repeats + 1):
        start = clock()
        call()
        times.append(clock() - start)
    return min(times[1:])


def one_by_one(jacket: Jacket, count: int) -> None:
    """Each sample by itself, as the limit states are evaluated for one design."""
    model = model_at_means(jacket)
    scattering = model.scattering(LIMITS)
    points = np.random.default_rng(1).standard_normal((len(scattering.variables), count))
    factors = model.factors(scattering, points)
    for index in range(count):
        sample = section_sample(jacket, one_sample(factors, index))
        single_ratios(LIMITS, sample.realisation, failures={})


def counted(model: Model, method: str, samples: int) -> Callable[[], object]:
    """Draw and count."""
    settings = replace(model.settings, samples=samples, method=method)  # type: ignore[arg-type] # names of methods
    chosen = replace(model, settings=settings)

    def run() -> object:
        return count_by_arrays(LIMITS, chosen, effort="closed-form")

    return run


def whole(jacket: Jacket, samples: int) -> ChanceResult:
    """What the command does, with intervals, design points and ranking."""
    settings = replace(DEFAULTS, samples=samples, method="random")
    return chance_of_exceedance(jacket, settings=settings, only=CHECKS)


def main() -> int:
    """Print the table; exit code 1 if a million samples take longer than they may."""
    jacket = build_jacket(read_input(CASE).base)
    direct = model_at_means(jacket)
    by_analysis = replace(direct, ring=None)
    cases: list[tuple[str, str, int, float]] = [
        ("direct", method, SAMPLES, fastest(counted(direct, method, SAMPLES), repeats=5))
        for method in ("random", "sobol", "latin-hypercube")
    ]
    fewer = SAMPLES // 10
    cases += [
        ("equilibrium of every sample", "random", fewer,
         fastest(counted(by_analysis, "random", fewer), repeats=2)),
        ("one sample after the other", "random", 10,
         fastest(lambda: one_by_one(jacket, 10), repeats=1)),
    ]  # fmt: skip
    reference = cases[0][3] / SAMPLES
    rows = [
        [way, method, count, seconds, 1e9 * seconds / count, seconds / count / reference]
        for way, method, count, seconds in cases
    ]
    headers = ["way", "points", "samples", "time [s]", "per sample [ns]", "ratio"]
    print(tabulate(rows, headers, floatfmt=("", "", ",.0f", ".3f", ",.0f", ",.1f")))
    command = fastest(lambda: whole(jacket, SAMPLES), repeats=2)
    print(
        f"\nwith intervals, design points, ranking and the section at mean values: {command:.3f} s"
    )
    busy = fastest(counted(direct, "random", SAMPLES), repeats=5, clock=time.process_time)
    passed = cases[0][3] <= ALLOWED
    print(
        f"{SAMPLES:,} samples of slip and hoop: {cases[0][3]:.3f} s of {ALLOWED} s allowed, "
        f"{busy:.3f} s of a processor"
    )
    return int(not passed)


if __name__ == "__main__":
    sys.exit(main())
