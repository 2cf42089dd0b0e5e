"""Names that would act on a terminal, or turn the direction of writing, are refused."""

from __future__ import annotations

from types import SimpleNamespace

import pytest

from jacketcheck.hookspecs import hookimpl
from jacketcheck.host import PluginInfo, load_host
from jacketcheck.limit_state import Provisions

NORTH = PluginInfo("north", "jacketcheck-north", "1.2")


@pytest.mark.parametrize("title", ["N\t29", "red \x1b[31m", "left \u202eright", "two\nlines"])
def test_a_title_that_cannot_be_printed(title: str) -> None:
    @hookimpl
    def jacketcheck_provisions() -> list[Provisions]:
        return [Provisions("north", title)]

    plugin = SimpleNamespace(jacketcheck_provisions=jacketcheck_provisions)
    host = load_host(installed=False, extra=[(NORTH, plugin)])
    assert "north" not in host.provisions
    (problem,) = host.problems
    assert problem.message == "title holds characters that cannot be printed"
