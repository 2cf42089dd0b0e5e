"""An invented repair, a record of what was built, and provisions simple enough for hand work."""

from __future__ import annotations

import tomllib
from collections.abc import Callable
from pathlib import Path
from types import ModuleType
from typing import Any

import pytest

from jacketcheck.as_built import Confirmation, ConfirmedLine, confirm, read_as_built_text
from jacketcheck.hookspecs import hookimpl
from jacketcheck.host import Host, PluginInfo, load_host
from jacketcheck.inputs import InputFile, read_input
from jacketcheck.jacket import Jacket
from jacketcheck.limit_state import LimitState, Provisions
from jacketcheck.results import Result

REPAIR = Path(__file__).parents[1] / "schedule" / "willow_weir.toml"
RECORD = Path(__file__).parent / "willow_weir_built.toml"

Tables = dict[str, Any]
Confirmed = Callable[..., Confirmation]


def _row(title: str, demand: float, capacity: float) -> list[Result]:
    return [Result(title, "here", demand, capacity, "N", "bench")]


def _slip(jacket: Jacket) -> list[Result]:
    """Friction of one bolt by the first class; 0.85 of it for other than standard holes."""
    bolts = jacket.bolts
    factor = 1.0 if jacket.sleeve.hole.kind == "standard" else 0.85
    friction = float(bolts.faying_classes[0].slip_coefficient) * float(bolts.pretension)
    return _row("slip", 70e3, factor * friction)


def _thread(jacket: Jacket) -> list[Result]:
    return _row("shear", 100e3, float(jacket.bolts.shear_stress) * float(jacket.bolts.area))


def _hoop(jacket: Jacket) -> list[Result]:
    """2.5 MPa in the sleeve against its yield strength."""
    sleeve = jacket.sleeve
    stress = 2.5 * float(sleeve.inner_diameter) / (2.0 * float(sleeve.thickness))
    return _row("hoop", stress, float(sleeve.steel.yield_strength))


def _grout(jacket: Jacket) -> list[Result]:
    return _row("grout", 45.0, float(jacket.grout.strength))


def _edge(jacket: Jacket) -> list[Result]:
    return _row("edge", 35.0, float(jacket.bolts.plate_edge_distance))


def _gap(jacket: Jacket) -> list[Result]:
    return _row("gap", 40.0, float(jacket.sleeve.gap))


def bench_host(**more: Callable[[Jacket], list[Result]]) -> Host:
    """Provisions ``bench``: six ratios that hand work can follow, and whatever a test adds."""
    states = {
        "slip": _slip, "shear": _thread, "hoop": _hoop, "grout": _grout, "edge": _edge, "gap": _gap,
        **more,
    }  # fmt: skip
    module = ModuleType("bench")
    hooks = {
        "jacketcheck_provisions": lambda: [Provisions("bench", "Bench", inherits=None)],
        "jacketcheck_limit_states": lambda: [
            LimitState(f"bench-{name}", name, "bench", function)
            for name, function in states.items()
        ],
    }
    for name, hook in hooks.items():
        setattr(module, name, hookimpl(hook))
    return load_host(installed=False, extra=[(PluginInfo("bench", "bench", "1"), module)])


@pytest.fixture(scope="session")
def host() -> Host:
    """The bench's host."""
    return bench_host()


@pytest.fixture(scope="session")
def repair() -> InputFile:
    """The repair file, read."""
    return read_input(REPAIR)


@pytest.fixture
def record_tables() -> Tables:
    """The record as tables: everything as specified."""
    tables = tomllib.loads(RECORD.read_text("utf-8"))
    tables["holes"] = {"along": ["15/16 in"]}
    tables["bolts"]["count"] = 60
    tables["sleeve"]["thickness"] = ["3/8 in"]
    tables["sleeve"]["diameters"] = ["54 in", "54 in"]
    tables["sleeve"]["seam_gap"] = ["3/4 in"]
    tables["grout"] = {"cylinder_strength": ["7.2 ksi", "7.4 ksi", "7.1 ksi"]}
    return tables


def toml(tables: Tables) -> str:
    """Tables of one level as TOML text; a table that is None is left out."""

    def value(one: Any) -> str:
        if isinstance(one, bool):
            return str(one).lower()
        if isinstance(one, list | tuple):
            return f"[{', '.join(map(value, one))}]"
        if isinstance(one, dict):
            return "{" + ", ".join(f"{key} = {value(item)}" for key, item in one.items()) + "}"
        return f'"{one}"' if isinstance(one, str) else str(one)

    lines = []
    for name, table in tables.items():
        if table is not None:
            lines.append(f"[{name}]")
            lines += [f"{key} = {value(item)}" for key, item in table.items() if item is not None]
    return "\n".join(lines)


@pytest.fixture
def confirmed(repair: InputFile, host: Host, record_tables: Tables) -> Confirmed:
    """Confirm the record with some fields changed: ``sleeve={"thickness": [...]}``.

    A field that is None is left out; so is a table.
    """

    def run(variant: str = "turns", use: Host | None = None, **tables: Any) -> Confirmation:
        changed = {**record_tables}
        for name, fields in tables.items():
            changed[name] = None if fields is None else {**changed.get(name, {}), **fields}
        changed["record"] = {**changed["record"], "variant": variant}
        record = read_as_built_text(toml(changed))
        return confirm(repair, record, host=use or host, provisions=["bench"])

    return run


@pytest.fixture(scope="session")
def line_of() -> Callable[[Confirmation, str], ConfirmedLine]:
    """The one line with an item."""

    def line(confirmation: Confirmation, item: str) -> ConfirmedLine:
        (found,) = (one for one in confirmation.lines if one.comparison.item == item)
        return found

    return line


@pytest.fixture(scope="session")
def make_host() -> Callable[..., Host]:
    """The bench's host with more limit states."""
    return bench_host
