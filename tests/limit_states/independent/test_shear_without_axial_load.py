"""AASHTO Guide Spec Seismic 8.6.2: no concrete part without axial compression; the row says so."""

from __future__ import annotations

import pytest

from tests.support.jackets import built, row, symbol


def test_the_step_of_the_code_is_named() -> None:
    without, small = (
        row(built(f'actions.axial_load = "{load} kip"'), "column-shear", "AASHTO")
        for load in (0.0, 0.5)
    )
    assert symbol(without, "V_c") == 0.0
    assert any("8.6.2" in note for note in without.notes)
    assert symbol(small, "V_c") > 0.0
    assert not small.notes
    hoops = symbol(without, "V_s")
    assert symbol(small, "V_s") == pytest.approx(hoops)
    assert float(without.capacity) == pytest.approx(symbol(without, "φ") * hoops)
