"""An invented repair with what the package brings, checked through the installed entry point."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from jacketcheck.engine import evaluate
from jacketcheck.host import Host, load_host
from jacketcheck.inputs import InputFile, read_input
from jacketcheck.jacket import Jacket, build_jacket
from jacketcheck.results import Result

Rows = Callable[..., dict[str, Result]]


@pytest.fixture(scope="session")
def host() -> Host:
    """All installed plug-ins; this one must be among them, without a problem."""
    found = load_host()
    assert [one.message for one in found.problems] == []
    assert "india" in {one.name for one in found.plugins}
    return found


@pytest.fixture(scope="session")
def repair(host: Host) -> InputFile:
    """The repair and its variants."""
    return read_input(Path(__file__).parent / "repair.toml", catalog=host.catalog)


@pytest.fixture(scope="session")
def jacket_of(host: Host, repair: InputFile) -> Callable[[str], Jacket]:
    """Build a variant."""
    return lambda variant: build_jacket(repair.variants[variant], catalog=host.catalog)


@pytest.fixture(scope="session")
def jacket(jacket_of: Callable[[str], Jacket]) -> Jacket:
    """The base variant."""
    return jacket_of("tensioned")


@pytest.fixture(scope="session")
def rows(host: Host) -> Rows:
    """Rows of one limit state by title and location."""

    def found(jacket: Jacket, provisions: str, limit_state: str) -> dict[str, Result]:
        results = evaluate(jacket, host=host, provisions=provisions, only=[limit_state])
        return {f"{one.title} @ {one.location}": one for one in results}

    return found
