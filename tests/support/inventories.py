"""Invented inventories of piers, and an installed plug-in that checks them fast and can misbehave.

The plug-in's provisions ``bench`` hold one ratio that hand work can follow: the axial load over
650 kip. Some axial loads make its other limit state do something else. Where ``BENCH_LOG`` names a
file, each evaluation adds its axial load to it.
"""

from __future__ import annotations

import csv
import os
import subprocess
import sys
from collections.abc import Iterable
from pathlib import Path

__all__ = [
    "COMMAND",
    "ENDS_BY_EXIT",
    "ENDS_BY_SIGNAL",
    "HOLDS_THE_INTERPRETER",
    "IS_NOT_A_NUMBER",
    "RAISES",
    "SLEEPS",
    "environment",
    "install_bench",
    "lines_of",
    "run_command",
    "write_inventory",
    "write_pier",
]

COMMAND = (sys.executable, "-m", "jacketcheck", "batch")

ENDS_BY_EXIT, ENDS_BY_SIGNAL, SLEEPS, HOLDS_THE_INTERPRETER, RAISES = 701, 702, 703, 704, 705
IS_NOT_A_NUMBER = 706
"""Axial loads [kip] at which the plug-in ends its process, is slow, hangs, raises, gives NaN."""

_REPAIR = Path(__file__).parents[2] / "reference_cases" / "quarry-road-pier" / "repair.toml"

_PLUGIN = f"""
import os, re, signal, time
from jacketcheck.plugin import LimitState, Provisions, Result, hookimpl

KIP = 4448.2216152605


def load(jacket):
    if "BENCH_LOG" in os.environ:
        log = os.open(os.environ["BENCH_LOG"], os.O_WRONLY | os.O_APPEND | os.O_CREAT)
        os.write(log, b"%r\\n" % round(float(jacket.demands.axial_load) / KIP))
        os.close(log)
    time.sleep(float(os.environ.get("BENCH_PAUSE", "0")))
    return [Result("Axial load", "column", jacket.demands.axial_load, 650 * KIP, "N", "bench 1")]


def temper(jacket):
    kips = round(float(jacket.demands.axial_load) / KIP)
    if kips == {ENDS_BY_EXIT}:
        os._exit(3)
    if kips == {ENDS_BY_SIGNAL}:
        os.kill(os.getpid(), signal.SIGSEGV)
        time.sleep(60)
    if kips == {SLEEPS}:
        time.sleep(2)
    if kips == {HOLDS_THE_INTERPRETER}:
        re.match("(a+)+$", 40 * "a" + "b")
    if kips == {IS_NOT_A_NUMBER}:
        return [Result("Temper", "", float("nan"), 2.0, "1", "bench 2")]
    if kips == {RAISES}:
        raise ValueError("of no use")
    return [Result("Temper", "", 1.0, 2.0, "1", "bench 2")]


@hookimpl
def jacketcheck_provisions():
    return [Provisions("bench", "Bench 1:2024", inherits=None)]


@hookimpl
def jacketcheck_limit_states():
    return [
        LimitState("bench-load", "Axial load", "bench", load),
        LimitState("bench-temper", "Temper", "bench", temper),
    ]
"""


def install_bench(folder: Path, *, version: str = "1.0") -> Path:
    """Put the plug-in into a folder as an installed distribution would be; returns the folder."""
    (folder / "bench_of_tests.py").write_text(_PLUGIN, "utf-8")
    information = folder / f"bench_of_tests-{version}.dist-info"
    information.mkdir()
    metadata = f"Metadata-Version: 2.1\nName: bench-of-tests\nVersion: {version}\n"
    (information / "METADATA").write_text(metadata, "utf-8")
    entry_point = "[jacketcheck.plugins]\nbench = bench_of_tests\n"
    (information / "entry_points.txt").write_text(entry_point, "utf-8")
    return folder


def write_pier(path: Path, *, kips: float = 600, number: str = "") -> Path:
    """Write the reference case with another axial load."""
    text = _REPAIR.read_text("utf-8")
    assert 'axial_load = "600 kip"' in text
    text = text.replace('axial_load = "600 kip"', f'axial_load = "{kips} kip"')
    text = text.replace('number = "QR-03"', f'number = "{number or path.stem}"')
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, "utf-8")
    return path


def write_inventory(folder: Path, loads: Iterable[float]) -> list[str]:
    """Write a pier for each axial load [kip], in several folders; returns their names in order."""
    names = []
    for index, kips in enumerate(loads):
        name = f"line {index % 3}/pier {index:04}.toml"
        write_pier(folder / name, kips=kips)
        names.append(name)
    return sorted(names)


def environment(**more: str) -> dict[str, str]:
    """Environment of a command that finds what this process finds."""
    return {**os.environ, "PYTHONPATH": os.pathsep.join(sys.path), **more}


def run_command(*arguments: object, **more: str) -> subprocess.CompletedProcess[str]:
    """Run the batch in a process of its own."""
    return subprocess.run(
        [*COMMAND, *map(str, arguments)],
        env=environment(**more),
        capture_output=True,
        text=True,
        check=False,
        timeout=120,
    )


def lines_of(path: Path) -> list[dict[str, str]]:
    """Lines of a CSV table by their headings."""
    with path.open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))
