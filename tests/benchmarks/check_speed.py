"""Time what an engineer waits for, each beside the time aimed at.

Run as ``OMP_NUM_THREADS=1 python tests/benchmarks/check_speed.py``. The command `check` is started
afresh each time, on the reference case as its file is; everything else is timed warm in this
process. The exit code is 1 where a median lies above its aim; on a busy machine the shortest time
says more. How the section analysis compares with a general-purpose library is printed by
``section_speed.py`` beside this file, in one run of both.
"""

from __future__ import annotations

import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path
from typing import Final

import numpy as np
from tabulate import tabulate

from jacketcheck.engine import evaluate
from jacketcheck.host import load_host
from jacketcheck.inputs import read_input
from jacketcheck.jacket import build_jacket
from jacketcheck.mechanics.bar_bond_laws import cracked_concrete_bar_law, grouted_bar_law
from jacketcheck.mechanics.bar_steel import BarSteel
from jacketcheck.mechanics.bond_development import developed_stress
from jacketcheck.mechanics.concrete_law import tabulated_concrete_law
from jacketcheck.mechanics.moment_curvature import moment_curvature
from jacketcheck.mechanics.section import BarGroup, CircularSection, ConcreteZone

CASE: Final = Path(__file__).parents[2] / "reference_cases" / "quarry-road-pier" / "repair.toml"
BARS: Final = 1000
STEEL: Final = BarSteel(475.0, 655.0, 0.0115, 0.09, 200e3)
STRAIN: Final = 1e-3 * np.array([0.0, 0.5, 1.0, 2.0, 4.0, 6.0, 10.0, 20.0])
CORE: Final = np.array([0.0, 12.0, 21.0, 33.0, 43.0, 46.5, 48.0, 45.5])
COVER: Final = np.array([0.0, 12.0, 21.0, 29.0, 20.0, 0.0, 0.0, 0.0])


def wall_time(call: Callable[[], object], *, repeats: int, warm: int = 2) -> tuple[float, float]:
    """Shortest and median wall time of some calls [s], after some that do not count."""
    times = []
    for _ in range(warm + repeats):
        start = time.perf_counter()
        call()
        times.append(time.perf_counter() - start)
    return min(times[warm:]), float(np.median(times[warm:]))


def cold_check(*options: str) -> Callable[[], object]:
    """The command, in a process of its own; it must get as far as a verdict."""
    command = [sys.executable, "-m", "jacketcheck", "check", str(CASE), *options]

    def run() -> None:
        done = subprocess.run(command, check=False, stdout=subprocess.DEVNULL)
        if done.returncode not in {0, 1}:
            raise SystemExit(done.returncode)

    return run


def warm_evaluation() -> Callable[[], object]:
    """Every limit state of one variant, on a jacket of which nothing is known yet."""
    host = load_host(installed=False)
    repair = read_input(CASE, catalog=host.catalog).variants["chipped"]

    def evaluated() -> object:
        return evaluate(build_jacket(repair, catalog=host.catalog), host=host)

    return evaluated


def bond_solutions() -> Callable[[], object]:
    """Stress that bond develops in bars which all differ, half of them in cracked concrete."""
    spread = np.linspace(0.0, 1.0, BARS // 2)
    grouted = grouted_bar_law(40.0 + 30.0 * spread, clear_rib_spacing=14.0, confining_pressure=2.0)
    cracked = cracked_concrete_bar_law(
        30.0 + 10.0 * spread,
        bar_diameter=28.0,
        clear_rib_spacing=14.0,
        minimum_cover=50.0,
        maximum_cover=80.0,
        confinement="stirrups",
        crack_width=0.3 * spread,
        confining_pressure=2.0,
        not_above=grouted,
    )
    length = 500.0 + 1000.0 * spread

    def solved() -> object:
        return [
            developed_stress(length, bar_diameter=28.0, law=law, steel=STEEL)
            for law in (grouted, cracked)
        ]

    return solved


def section_analysis() -> Callable[[], object]:
    """One hundred curvatures, 200 strips, 20 bars."""
    zones = (
        ConcreteZone("core", 1080.0, tabulated_concrete_law(STRAIN, CORE, ultimate_strain=0.02)),
        ConcreteZone("cover", 1200.0, tabulated_concrete_law(STRAIN, COVER, ultimate_strain=0.02)),
    )
    section = CircularSection(zones, (BarGroup.ring(20, radius=510.0, area=819.0, steel=STEEL),))
    curvature = np.linspace(1e-6, 4e-5, 100)
    return lambda: moment_curvature(section, axial_load=3e6, curvature=curvature, strips=200)


def main() -> int:
    """Print the table; exit code 1 where something takes longer than it should."""
    measured = [
        ("check of the reference case, cold", wall_time(cold_check(), repeats=5, warm=1), 1.0),
        ("the same, four variants", wall_time(cold_check("--variant", "all"), repeats=3), None),
        ("evaluation of one variant, warm", wall_time(warm_evaluation(), repeats=20), 0.05),
        ("1,000 bond solutions", wall_time(bond_solutions(), repeats=10), 0.3),
        ("moment-curvature, 100 points", wall_time(section_analysis(), repeats=200), 0.002),
    ]
    rows = [
        [what, f"{1e3 * best:.3g}", f"{1e3 * median:.3g}",
         *(("", "") if aim is None else (f"{1e3 * aim:g}", "met" if median <= aim else "missed"))]
        for what, (best, median), aim in measured
    ]  # fmt: skip
    headers = ["", "shortest [ms]", "median [ms]", "aim [ms]", ""]
    print(tabulate(rows, headers, disable_numparse=True))
    return int(any(aim is not None and median > aim for _, (_, median), aim in measured))


if __name__ == "__main__":
    sys.exit(main())
