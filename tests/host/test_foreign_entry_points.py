"""Entry points of another type than the standard library's, as its backport hands them out."""

from __future__ import annotations

from dataclasses import dataclass
from types import ModuleType, SimpleNamespace

import pytest

from jacketcheck.hookspecs import ENTRY_POINT_GROUP, hookimpl
from jacketcheck.host import load_host
from jacketcheck.limit_state import Provisions


@dataclass(frozen=True)
class _ForeignEntryPoint:
    """What an entry point has, in a class of its own."""

    name: str
    dist: SimpleNamespace

    def load(self) -> ModuleType:
        module = ModuleType("made_for_a_test")
        hook = hookimpl(lambda: [Provisions("north", "North Code 2020", inherits=None)])
        module.jacketcheck_provisions = hook  # type: ignore[attr-defined] # a module stands for a plug-in
        return module


def test_is_loaded_like_any_other(monkeypatch: pytest.MonkeyPatch) -> None:
    dist = SimpleNamespace(name="jacketcheck-north", version="1.2")

    def entry_points(*, group: str) -> list[_ForeignEntryPoint]:
        assert group == ENTRY_POINT_GROUP
        return [_ForeignEntryPoint("north", dist)]

    monkeypatch.setattr("jacketcheck.host.loading.entry_points", entry_points)
    host = load_host()
    assert host.problems == ()
    assert "north" in host.provisions
