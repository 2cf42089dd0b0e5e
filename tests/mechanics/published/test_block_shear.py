"""Block shear against worked examples."""

from __future__ import annotations

import pytest

from jacketcheck.mechanics._customary_units import INCH, KIP, KSI
from jacketcheck.mechanics.block_shear import (
    AASHTO_BLOCK_SHEAR_FACTOR,
    AISC_BLOCK_SHEAR_FACTOR,
    BlockShearAreas,
    aashto_block_shear_resistance,
    aisc_block_shear_strength,
    seam_block,
)
from jacketcheck.mechanics.plate_strength import AISC_HOLE_DAMAGE

HOLE = 15.0 / 16.0 * INCH
"""Standard hole of a 7/8 bolt."""


def block(
    rows: int, *, bolts: int, gage: float, edge: float, end: float, thickness: float
) -> BlockShearAreas:
    """Block at a plate's end, bolts in line with the force 3 in apart; inches."""
    return seam_block(
        rows,
        at_end=True,
        columns=bolts,
        pitch=gage * INCH,
        gauge=3.0 * INCH,
        edge_distance=edge * INCH,
        end_distance=end * INCH,
        thickness=thickness * INCH,
        hole_along=HOLE,
        hole_across=HOLE,
        damage=AISC_HOLE_DAMAGE,
    ).areas


def test_one_line_of_three_bolts() -> None:
    # L-04: AISC 360 Eq. J4-5, three 7/8 bolts, spacing 3, end 1.5, side edge 1.5, t 0.5 in, F_y 50,
    # F_u 65 ksi: areas 3.75, 2.50, 0.50 in2; 130.0 kips nominal, 97.5 kips design, all exact
    areas = block(1, bolts=3, gage=3.0, edge=1.5, end=1.5, thickness=0.5)
    assert [float(area) / INCH**2 for area in areas] == pytest.approx([3.75, 2.50, 0.50])
    strength = aisc_block_shear_strength(
        areas, yield_strength=50.0 * KSI, tensile_strength=65.0 * KSI
    )
    assert float(strength) / KIP == pytest.approx(130.0, rel=1e-12)
    assert float(AISC_BLOCK_SHEAR_FACTOR * strength) / KIP == pytest.approx(97.5, rel=1e-12)


def test_cap_by_shear_yielding() -> None:
    # L-04: the capped form is 145.0 kips; with so much net area that it governs
    areas = block(1, bolts=3, gage=3.0, edge=1.5, end=1.5, thickness=0.5)
    capped = areas._replace(net_shear=areas.gross_shear)
    strength = aisc_block_shear_strength(
        capped, yield_strength=50.0 * KSI, tensile_strength=65.0 * KSI
    )
    assert float(strength) / KIP == pytest.approx(145.0, rel=1e-12)


@pytest.mark.parametrize(
    ("areas", "planes", "expected"),
    [
        pytest.param(
            block(1, bolts=3, gage=3.0, edge=1.5, end=2.0, thickness=0.375), 1, 82.2, id="web-plate"
        ),
        pytest.param(
            block(1, bolts=4, gage=4.0, edge=1.5, end=1.5, thickness=0.75), 2, 381.0, id="case-1"
        ),
        pytest.param(
            block(2, bolts=4, gage=4.0, edge=1.5, end=1.5, thickness=0.75), 1, 300.0, id="case-3"
        ),
        pytest.param(
            block(1, bolts=4, gage=4.0, edge=1.25, end=1.75, thickness=0.570), 2, 294.0, id="flange"
        ),
    ],
)
def test_blocks_of_the_aisc_design_examples(
    areas: BlockShearAreas, planes: int, expected: float
) -> None:
    # AISC, Companion to the Steel Construction Manual, v16.0 (AISC 360-22), Example II.B-1, design
    # strength in kips. Three digits, after components rounded to three digits: 0.3%.
    strength = aisc_block_shear_strength(
        areas, yield_strength=50.0 * KSI, tensile_strength=65.0 * KSI
    )
    design = planes * AISC_BLOCK_SHEAR_FACTOR * strength / KIP
    assert float(design) == pytest.approx(expected, rel=0.003)


def test_block_of_aashto() -> None:
    # AASHTO LRFD 9th ed. 6.13.4 with phi_bs 0.80 (6.5.4.2) and R_p 0.90, worked by hand for areas
    # 3.75, 2.50, 0.50 in2: 0.9 (0.58 x 65 x 2.50 + 65 x 0.50) = 114.075, times 0.80 = 91.26 kips
    areas = BlockShearAreas(3.75 * INCH**2, 2.50 * INCH**2, 0.50 * INCH**2)
    resistance = AASHTO_BLOCK_SHEAR_FACTOR * aashto_block_shear_resistance(
        areas, yield_strength=50.0 * KSI, tensile_strength=65.0 * KSI, hole_factor=0.9
    )
    assert float(resistance) / KIP == pytest.approx(91.26, abs=0.005)
