"""Limit-state checks for steel jackets that relocate the plastic hinge of a damaged column.

What may be imported from here is public. So is what `jacketcheck.plugin` and
`jacketcheck.conformance` offer to authors of plug-ins, and every formula in
`jacketcheck.mechanics`.

Examples
--------
>>> from importlib.resources import files
>>> import jacketcheck
>>> path = files("jacketcheck.conformance") / "repairs" / "metric.toml"  # or any repair file
>>> report = jacketcheck.check(path, variants="metric, snug bolts in oversized holes")
>>> report.exit_code, report.governing.status, report.governing.ratio
(<ExitCode.EXCEEDS: 1>, <Status.EXCEEDS: 'EXCEEDS'>, inf)
>>> report.provisions, len(report.tables), "Slip of the seam bolts" in {
...     row.title for row in report.tables[0].results if row.ratio > 1.0
... }
(('us',), 1, True)
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from jacketcheck.api import check as check
    from jacketcheck.engine import evaluate as evaluate
    from jacketcheck.errors import InputError as InputError
    from jacketcheck.errors import JacketcheckError as JacketcheckError
    from jacketcheck.host import Host as Host
    from jacketcheck.host import load_host as load_host
    from jacketcheck.inputs import read_input as read_input
    from jacketcheck.jacket import Jacket as Jacket
    from jacketcheck.jacket import build_jacket as build_jacket
    from jacketcheck.report import CheckReport as CheckReport
    from jacketcheck.report import ExitCode as ExitCode
    from jacketcheck.report import VariantResults as VariantResults
    from jacketcheck.results import Kind as Kind
    from jacketcheck.results import Result as Result
    from jacketcheck.results import Status as Status
    from jacketcheck.results import Step as Step

__all__ = [
    "CheckReport",
    "ExitCode",
    "Host",
    "InputError",
    "Jacket",
    "JacketcheckError",
    "Kind",
    "Result",
    "Status",
    "Step",
    "VariantResults",
    "build_jacket",
    "check",
    "evaluate",
    "load_host",
    "read_input",
]

_HOMES = {
    "api": ("check",),
    "engine": ("evaluate",),
    "errors": ("InputError", "JacketcheckError"),
    "host": ("Host", "load_host"),
    "inputs": ("read_input",),
    "jacket": ("Jacket", "build_jacket"),
    "report": ("CheckReport", "ExitCode", "VariantResults"),
    "results": ("Kind", "Result", "Status", "Step"),
}
"""Where each public name lives; imported when it is asked for, so that start-up stays light."""


def __getattr__(name: str) -> Any:
    from importlib import import_module  # noqa: PLC0415 - not needed by a command

    for home, names in _HOMES.items():
        if name in names:
            return getattr(import_module(f"{__name__}.{home}"), name)
    raise AttributeError(f"module {__name__!r} has no attribute {name!r}")


def __dir__() -> list[str]:
    return sorted({*globals(), *__all__})
