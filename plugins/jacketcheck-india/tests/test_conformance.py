"""The package keeps to what is asked of every plug-in, on its own repair as well."""

from __future__ import annotations

from pathlib import Path

from jacketcheck.conformance import Case, conformance_checks

REPAIR = Path(__file__).parent / "repair.toml"


@conformance_checks("india", repairs={"indian": REPAIR})
def test_conformance(case: Case) -> None:
    case()
