"""Small plug-ins, made on the spot."""

from __future__ import annotations

from collections.abc import Callable
from types import ModuleType
from typing import Any

import pytest

from jacketcheck.hookspecs import hookimpl
from jacketcheck.host import Host, PluginInfo, load_host
from jacketcheck.limit_state import LimitState, Provisions
from jacketcheck.results import Result

NORTH = PluginInfo("north", "jacketcheck-north", "1.2")

Plugin = Callable[..., ModuleType]
LoadWith = Callable[..., Host]


@pytest.fixture
def north() -> PluginInfo:
    """Who the plug-ins of these tests say they are."""
    return NORTH


@pytest.fixture
def plugin() -> Plugin:
    """Make a plug-in from functions by hook, without the prefix of the hooks' names."""

    def made(**hooks: Callable[..., Any]) -> ModuleType:
        module = ModuleType("made_for_a_test")
        for name, function in hooks.items():
            setattr(module, f"jacketcheck_{name}", hookimpl(function))
        return module

    return made


@pytest.fixture
def load_with() -> LoadWith:
    """Load the built-in plug-in and some others, none that happens to be installed."""

    def loaded(*modules: object, without: tuple[str, ...] = (), seconds: float = 5.0) -> Host:
        return load_host(
            installed=False,
            extra=[(NORTH, module) for module in modules],
            without=without,
            time_limit=seconds,
        )

    return loaded


def passing(_jacket: object) -> list[Result]:
    """A limit state's answer that is within its limit."""
    return [Result("Passes", "here", 1.0, 2.0, "N", "a clause")]


@pytest.fixture
def alone() -> Provisions:
    """Provisions that stand alone, so that a test evaluates nothing else."""
    return Provisions("alone", "Provisions of a test", inherits=None)


@pytest.fixture
def limit_state() -> Callable[..., LimitState]:
    """Make a limit state of the provisions `alone`."""

    def made(
        evaluate: Callable[[Any], Any] = passing, name: str = "first", provisions: str = "alone"
    ) -> LimitState:
        return LimitState(name, f"Check {name}", provisions, evaluate)

    return made
