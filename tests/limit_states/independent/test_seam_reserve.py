"""The seam beside the sleeve's yield: what force the weakest row of the seam stands for."""

from __future__ import annotations

import pytest

from jacketcheck.limit_states.seam_reserve import seam_reserve
from jacketcheck.results import Kind
from tests.support.jackets import built, rows

SEAM = (
    "seam-bolt-shear", "sleeve-bearing", "splice-bearing", "seam-bolt-row", "sleeve-net-rupture",
    "splice-gross-yield", "splice-net-rupture", "seam-block-shear",
)  # fmt: skip


@pytest.mark.parametrize("variant", ["chipped", "thin"])
def test_force_at_which_the_first_row_reaches_one(variant: str) -> None:
    jacket = built(variant=variant)
    strength, slip = seam_reserve.evaluate(jacket)
    # every row of the seam is proportional to the hoop force: at N/ratio it reads 1
    (gross, *_) = rows(jacket, "sleeve-gross-yield")
    hoop = float(gross.demand)
    worst = max(float(one.ratio) for one in rows(jacket, *SEAM))
    assert float(strength.capacity) == pytest.approx(hoop / worst, rel=1e-9)
    slipping = max(float(one.ratio) for one in rows(jacket, "seam-slip"))
    assert float(slip.capacity) == pytest.approx(hoop / slipping, rel=1e-9)
    assert strength.kind is slip.kind is Kind.REPORTED


def test_expected_yield_of_the_sleeve() -> None:
    # ASTM A36 plate: F_y 36 ksi, R_y 1.3 (AISC 341-22 Table A3.2), 3/4 in: 35.1 kip/in
    strength, _ = seam_reserve.evaluate(built('sleeve.steel = "ASTM A36"'))
    assert float(strength.demand) == pytest.approx(1.3 * 36 * 0.75 * 4448.2216 / 25.4, rel=1e-3)


def test_snug_bolts_hold_nothing_by_friction() -> None:
    _, slip = seam_reserve.evaluate(built(variant="thin, snug bolts"))
    assert float(slip.capacity) == 0.0
