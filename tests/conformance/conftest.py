"""Small plug-ins that fail one check of the kit, and what the kit says of them."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from types import ModuleType
from typing import Any

import pytest

from jacketcheck.conformance import conformance_cases
from jacketcheck.hookspecs import hookimpl
from jacketcheck.limit_state import LimitState
from jacketcheck.plugin import Provisions

Findings = Callable[..., list[str]]

ALONE = Provisions("north", "North Code 1:2024", inherits=None)


def plug_in(**hooks: Sequence[Any]) -> ModuleType:
    """A plug-in that brings records, by hook without its prefix."""
    module = ModuleType("north")
    for name, records in hooks.items():
        setattr(module, f"jacketcheck_{name}", hookimpl(lambda records=records: records))
    return module


@pytest.fixture
def findings() -> Findings:
    """What one check finds of everything that a plug-in brings."""

    def found(check: str, *, seconds: float = 5.0, **hooks: Sequence[Any]) -> list[str]:
        cases = list(conformance_cases(plug_in(**hooks), seconds=seconds))
        asked = [case for case in cases if case.check.name == check]
        assert asked, f"no subject is asked {check}"
        return [problem for case in asked for problem in case.problems()]

    return found


@pytest.fixture
def findings_of(findings: Findings) -> Findings:
    """What one check finds of a limit state."""

    def found(
        check: str, evaluate: Callable[[Any], Any], *, seconds: float = 5.0, **more: Any
    ) -> list[str]:
        state = LimitState("first", "First", "north", evaluate, **more)
        return findings(check, seconds=seconds, provisions=[ALONE], limit_states=[state])

    return found
