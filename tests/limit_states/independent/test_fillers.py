"""Fillers in the seam, worked out by hand from the same seam without them."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import pytest

from jacketcheck.errors import InputError
from jacketcheck.inputs import RepairInput, read_text
from jacketcheck.jacket import Jacket, build_jacket
from jacketcheck.limit_states.editions import AASHTO, AISC
from jacketcheck.limit_states.seam_bolts import seam_bolt_row, seam_bolt_shear
from jacketcheck.limit_states.seam_slip import seam_slip
from jacketcheck.mechanics._customary_units import INCH
from jacketcheck.results import Result


def filled(repair: RepairInput, **fields: Any) -> Jacket:
    splice = repair.splice.model_copy(update=fields)
    return build_jacket(repair.model_copy(update={"splice": splice}))


def of(rows: Sequence[Result], code: str) -> Result:
    return next(row for row in rows if row.clause.startswith(code))


@pytest.fixture
def bare(jacket: Jacket) -> Jacket:
    return jacket


def test_two_fillers_at_a_plane_slip_sooner_by_aisc_only(
    repair_input: RepairInput, bare: Jacket
) -> None:
    # AISC 360-22 J3.9: h_f 0.85 for two or more; AASHTO 6.13.6.1.4 leaves slip alone
    one = filled(repair_input, fillers=1, filler_thickness=3.0)
    two = filled(repair_input, fillers=2, filler_thickness=6.0)
    for jacket, factor in ((one, 1.0), (two, 0.85)):
        ratio = (
            of(seam_slip.evaluate(jacket), AISC).capacity
            / of(seam_slip.evaluate(bare), AISC).capacity
        )
        assert float(ratio) == pytest.approx(factor)
        same = (
            of(seam_slip.evaluate(jacket), AASHTO).capacity
            / of(seam_slip.evaluate(bare), AASHTO).capacity
        )
        assert float(same) == pytest.approx(1.0)
        assert any("fillers" in note for note in of(seam_slip.evaluate(jacket), AASHTO).notes)


def test_thick_fillers_weaken_bolts_in_shear(repair_input: RepairInput, bare: Jacket) -> None:
    # 1/2 in: AISC 1 - 0.4 (0.5 - 0.25) = 0.9; AASHTO (1 + g)/(1 + 2 g), g = 0.5 / smaller of the
    # sleeve and both splice plates [in]
    jacket = filled(repair_input, fillers=1, filler_thickness=0.5 * INCH)
    smaller = min(float(bare.sleeve.thickness), float(bare.splice.total_thickness)) / INCH
    share = 0.5 / smaller
    factors = {AISC: 0.9, AASHTO: (1.0 + share) / (1.0 + 2.0 * share)}
    for code, factor in factors.items():
        before, after = (
            of(seam_bolt_shear.evaluate(bare), code),
            of(seam_bolt_shear.evaluate(jacket), code),
        )
        assert float(after.capacity / before.capacity) == pytest.approx(factor)
        assert any(step.symbol == "k_f" for step in after.steps)
        rows = of(seam_bolt_row.evaluate(bare), code), of(seam_bolt_row.evaluate(jacket), code)
        assert float(rows[1].capacity) <= float(rows[0].capacity)


def test_thin_fillers_leave_shear_alone(repair_input: RepairInput, bare: Jacket) -> None:
    jacket = filled(repair_input, fillers=1, filler_thickness=3.0)
    for code in (AISC, AASHTO):
        before, after = (
            of(seam_bolt_shear.evaluate(bare), code),
            of(seam_bolt_shear.evaluate(jacket), code),
        )
        assert float(after.capacity) == pytest.approx(float(before.capacity))


def test_fillers_lengthen_the_grip(repair_input: RepairInput, bare: Jacket) -> None:
    jacket = filled(repair_input, fillers=2, filler_thickness=12.0)
    assert float(jacket.grip) == pytest.approx(float(bare.grip) + 12.0)
    assert float(jacket.bolts.fit.needed) == pytest.approx(float(bare.bolts.fit.needed) + 12.0)


@pytest.mark.parametrize("line", ["fillers = 1", 'filler_thickness = "1/4 in"'])
def test_fillers_have_number_and_thickness(repair_text: str, line: str) -> None:
    text = repair_text.replace("[splice]\n", f"[splice]\n{line}\n")
    with pytest.raises(InputError, match="filler_thickness"):
        build_jacket(read_text(text).base)
