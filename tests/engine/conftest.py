"""Small plug-ins whose limit states misbehave."""

from __future__ import annotations

from collections.abc import Callable
from types import ModuleType
from typing import Any

import pytest

from jacketcheck.engine import evaluate
from jacketcheck.hookspecs import hookimpl
from jacketcheck.host import Host, PluginInfo, load_host
from jacketcheck.jacket import Jacket
from jacketcheck.limit_state import LimitState, Provisions
from jacketcheck.results import Result

NORTH = PluginInfo("north", "jacketcheck-north", "1.2")

HostOf = Callable[..., Host]
Evaluate = Callable[..., tuple[Result, ...]]


def good(jacket: Jacket) -> list[Result]:
    """A limit state that works: axial load over a capacity of 10 MN."""
    return [Result("Sound check", "here", jacket.demands.axial_load, 1e7, "N", "a clause")]


@pytest.fixture
def host_of() -> HostOf:
    """A host with provisions `alone`: sound limit states before and after the given ones."""

    def made(*functions: Callable[[Any], Any], seconds: float = 5.0) -> Host:
        states = [
            LimitState("sound-before", "Sound check before", "alone", good),
            *(
                LimitState(f"odd-{index}", f"Odd check {index}", "alone", function)
                for index, function in enumerate(functions, start=1)
            ),
            LimitState("sound-after", "Sound check after", "alone", good),
        ]
        module = ModuleType("made_for_a_test")
        hooks = {
            "jacketcheck_provisions": lambda: [Provisions("alone", "Test", inherits=None)],
            "jacketcheck_limit_states": lambda: states,
        }
        for name, hook in hooks.items():
            setattr(module, name, hookimpl(hook))
        return load_host(installed=False, extra=[(NORTH, module)], time_limit=seconds)

    return made


@pytest.fixture
def results_with(host_of: HostOf, jacket: Jacket) -> Evaluate:
    """Results of the given functions between two sound limit states, by limit state."""

    def found(
        *functions: Callable[[Any], Any], of: Jacket | None = None, seconds: float = 5.0
    ) -> tuple[Result, ...]:
        host = host_of(*functions, seconds=seconds)
        return evaluate(jacket if of is None else of, host=host, provisions="alone")

    return found
