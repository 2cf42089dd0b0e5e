"""The table of usual factors against the registry that it stands for."""

from __future__ import annotations

import subprocess
import sys

import pytest

from jacketcheck.units._registry import _factor_from_registry
from jacketcheck.units._usual_factors import USUAL_FACTORS
from jacketcheck.units.display import _PINT_NAME, _SHOWN


@pytest.mark.parametrize("pair", USUAL_FACTORS, ids=" to ".join)
def test_the_registry_gives_the_same(pair: tuple[str, str]) -> None:
    assert USUAL_FACTORS[pair] == _factor_from_registry(*pair)


def test_every_unit_that_is_shown_is_usual() -> None:
    shown = {
        (_PINT_NAME.get(unit, unit), name)
        for unit, systems in _SHOWN.items()
        for name, _ in systems.values()
    }
    assert shown <= set(USUAL_FACTORS)


def test_usual_units_leave_the_registry_unbuilt() -> None:
    program = (
        "import sys; from jacketcheck.units import parse_quantity; "
        "parse_quantity('2-3/4 in', 'mm'); parse_quantity('50 ksi', 'MPa'); "
        "sys.exit('pint' in sys.modules)"
    )
    assert subprocess.run([sys.executable, "-c", program], check=False).returncode == 0
