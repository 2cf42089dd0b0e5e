"""Time a moment-curvature analysis of ours and of a general-purpose library side by side.

Run as ``OMP_NUM_THREADS=1 python tests/benchmarks/section_speed.py``.  Both analyse the same
circular column with 20 bars at the same 100 curvatures, one after the other in the same process.
The library runs its fibre integration, the faster of the two it has, on a mesh as coarse as
agreement within one per cent allows.  The last column is the ratio of the median times.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Callable
from typing import Any

import numpy as np
from tabulate import tabulate

from jacketcheck.mechanics._arrays import Floats
from jacketcheck.mechanics.bar_steel import BarSteel, bar_stress
from jacketcheck.mechanics.concrete_law import ConcreteLaw, tabulated_concrete_law
from jacketcheck.mechanics.moment_curvature import moment_curvature
from jacketcheck.mechanics.section import BarGroup, CircularSection, ConcreteZone

AXIAL_LOAD = 3e6
CURVATURE = np.linspace(1e-6, 4e-5, 100)
STRIPS = 200
CORE_DIAMETER, DIAMETER, BAR_AREA = 1080.0, 1200.0, 819.0
STRAINS = 1e-3 * np.array([0.0, 0.5, 1.0, 1.5, 2.0, 3.0, 4.0, 6.0, 10.0, 15.0, 20.0, 30.0])
CORE = np.array([0.0, 12.0, 21.0, 28.0, 33.0, 39.5, 43.0, 46.5, 48.0, 47.0, 45.5, 42.0])
COVER = np.array([0.0, 12.0, 21.0, 27.0, 29.0, 26.0, 20.0, 0.0, 0.0, 0.0, 0.0, 0.0])
STEEL = BarSteel(475.0, 655.0, 0.0115, 0.09, 200e3)


def _law(curve: Floats) -> ConcreteLaw:
    return tabulated_concrete_law(STRAINS, curve, ultimate_strain=0.02)


def column() -> CircularSection:
    """The column as one of our sections."""
    zones = (
        ConcreteZone("core", CORE_DIAMETER, _law(CORE)),
        ConcreteZone("cover", DIAMETER, _law(COVER)),
    )
    return CircularSection(zones, (BarGroup.ring(20, radius=510.0, area=BAR_AREA, steel=STEEL),))


def library_section() -> Any:
    """The column as a section of structuralcodes, where tension is positive."""
    from structuralcodes.geometry import CircularGeometry, CompoundGeometry, add_reinforcement
    from structuralcodes.materials.basic import GenericMaterial
    from structuralcodes.materials.constitutive_laws import UserDefined
    from structuralcodes.sections import BeamSection

    def material(strain: Floats, stress: Floats) -> Any:
        return GenericMaterial(2500.0, constitutive_law=UserDefined(strain, stress, flag=1))

    def disc(diameter: float, curve: Floats) -> Any:
        strain = np.append(-STRAINS[::-1], 0.1)
        concrete = material(strain, np.append(-curve[::-1], 0.0))
        return CircularGeometry(diameter, concrete, n_points=48, concrete=True)

    core = disc(CORE_DIAMETER, CORE)
    geometry = CompoundGeometry([core, disc(DIAMETER, COVER) - core])
    strain = np.array([-0.09, -0.05, -0.0115, -0.002375, 0.0, 0.002375, 0.0115, 0.03, 0.05, 0.09])
    bars = material(strain, np.asarray(bar_stress(strain, STEEL)))
    section = column()
    for x, y in zip(section.bar_x, section.bar_y, strict=True):
        geometry = add_reinforcement(geometry, (x, y), 2.0 * (BAR_AREA / np.pi) ** 0.5, bars)
    return BeamSection(geometry, integrator="fiber", mesh_size=0.02)


def best_time(call: Callable[[], object], *, repeats: int) -> tuple[float, float]:
    """Shortest and median wall time of some calls [s], after two to warm up."""
    times = []
    for _ in range(repeats + 2):
        start = time.perf_counter()
        call()
        times.append(time.perf_counter() - start)
    return min(times[2:]), float(np.median(times[2:]))


def main() -> int:
    """Print the table; exit code 1 if the two disagree."""
    ours, library = column(), library_section()
    result: dict[str, Floats] = {}

    def run_ours() -> None:
        response = moment_curvature(
            ours, axial_load=AXIAL_LOAD, curvature=CURVATURE, angle=0.5 * np.pi, strips=STRIPS
        )
        result["ours"] = response.moment

    def run_library() -> None:
        found = library.section_calculator.calculate_moment_curvature(n=-AXIAL_LOAD, chi=-CURVATURE)
        result["library"] = np.abs(found.m_y)

    library.section_calculator.calculate_moment_curvature(n=-AXIAL_LOAD, chi=-CURVATURE[:1])
    fibres = sum(area.size for _, _, area, _ in library.section_calculator.integration_data)
    best, median = best_time(run_ours, repeats=200)
    library_best, library_median = best_time(run_library, repeats=3)
    rows = [
        ["jacketcheck", STRIPS + 20, CURVATURE.size, 1e3 * best, 1e3 * median, 1.0],
        [
            "structuralcodes",
            fibres,
            CURVATURE.size,
            1e3 * library_best,
            1e3 * library_median,
            library_median / median,
        ],
    ]
    headers = ["analysis", "fibres", "curvatures", "best [ms]", "median [ms]", "ratio"]
    print(tabulate(rows, headers, floatfmt=(".0f", ".0f", ".0f", ".2f", ".2f", ".0f")))
    difference = float(np.max(np.abs(result["ours"] / result["library"] - 1.0)))
    print(f"largest difference of the moments: {100.0 * difference:.2f} %")
    return int(difference > 0.01)


if __name__ == "__main__":
    sys.exit(main())
