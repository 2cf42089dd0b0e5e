"""The conformance kit, on this plug-in as it is installed."""

from __future__ import annotations

from pathlib import Path

from jacketcheck.conformance import Case, conformance_checks

_REPAIR = Path(__file__).parent / "repair_en.toml"


@conformance_checks("europe", repairs={"European": _REPAIR})
def test_keeps_the_contract(case: Case) -> None:
    case()
