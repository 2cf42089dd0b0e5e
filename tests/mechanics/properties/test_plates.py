"""What plates, blocks and eccentric splices must do for any input."""

from __future__ import annotations

from functools import partial

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jacketcheck.mechanics.block_shear import (
    aashto_block_shear_resistance,
    aisc_block_shear_strength,
    seam_block_shear_strength,
    seam_blocks,
)
from jacketcheck.mechanics.plate_strength import (
    effective_net_area,
    gross_yield_strength,
    net_rupture_strength,
    net_width,
)
from jacketcheck.mechanics.splice_bending import (
    eccentric_splice_first_yield,
    eccentric_splice_strength,
    splice_eccentricity,
    splice_plate_shares,
)

thicknesses = st.floats(3.0, 40.0)


def weakest_row(
    *, rows: int = 8, columns: int = 1, edge_distance: float = 50.0, thickness: float = 8.0
) -> float:
    blocks = seam_blocks(
        rows=rows,
        columns=columns,
        pitch=75.0,
        gauge=70.0,
        edge_distance=edge_distance,
        end_distance=40.0,
        thickness=thickness,
        hole_along=24.0,
        hole_across=24.0,
        damage=2.0,
    )
    steel = partial(aisc_block_shear_strength, yield_strength=250.0, tensile_strength=400.0)
    return float(seam_block_shear_strength(blocks, steel))


@given(width=st.floats(60.0, 300.0), hole=st.floats(10.0, 40.0), damage=st.floats(0.0, 3.0))
def test_net_is_less_than_gross_and_capped(width: float, hole: float, damage: float) -> None:
    net = float(net_width(width, hole_count=1, hole=hole, damage=damage))
    assert net < width
    effective = float(effective_net_area(net, gross_area=width))
    assert effective <= net
    assert effective <= 0.85 * width * (1.0 + 1e-12)
    rupture = float(net_rupture_strength(400.0, effective_net_area=effective))
    assert rupture < float(gross_yield_strength(400.0, gross_area=width))


@given(short=st.floats(30.0, 150.0), longer=st.floats(0.0, 100.0), columns=st.integers(1, 4))
def test_more_edge_distance_never_weakens_a_block(
    short: float, longer: float, columns: int
) -> None:
    near = weakest_row(edge_distance=short, columns=columns)
    assert weakest_row(edge_distance=short + longer, columns=columns) >= near


@given(rows=st.integers(1, 40), factor=st.floats(0.1, 10.0))
def test_blocks_scale_with_thickness(rows: int, factor: float) -> None:
    thin = weakest_row(rows=rows)
    assert weakest_row(rows=rows, thickness=8.0 * factor) == pytest.approx(factor * thin)


@given(rows=st.integers(1, 200))
def test_tall_seams_tend_to_the_net_section_between_two_rows(rows: int) -> None:
    # with so much edge distance that shear is no path, what is left per row is one net pitch
    strength = weakest_row(rows=rows, edge_distance=3000.0)
    one_pitch = 400.0 * (75.0 - 26.0) * 8.0
    assert strength > one_pitch * (rows - 1) / rows
    if rows == 200:
        assert strength == pytest.approx(one_pitch, rel=0.3)


@given(factor=st.floats(0.1, 1.0), rows=st.integers(1, 30))
def test_hole_making_scales_the_aashto_block(factor: float, rows: int) -> None:
    blocks = seam_blocks(
        rows=rows,
        columns=2,
        pitch=75.0,
        gauge=70.0,
        edge_distance=40.0,
        end_distance=40.0,
        thickness=8.0,
        hole_along=24.0,
        hole_across=24.0,
        damage=0.0,
    )
    drilled, made = (
        float(
            seam_block_shear_strength(
                blocks,
                partial(
                    aashto_block_shear_resistance,
                    yield_strength=250.0,
                    tensile_strength=400.0,
                    hole_factor=hole_factor,
                ),
            )
        )
        for hole_factor in (1.0, factor)
    )
    assert made == pytest.approx(factor * drilled)


@given(
    thickness=thicknesses,
    low=st.floats(0.0, 40.0),
    high=st.floats(0.0, 40.0),
    net_ratio=st.floats(0.1, 1.0),
)
def test_eccentricity_never_helps_and_plastic_is_never_below_first_yield(
    thickness: float, low: float, high: float, net_ratio: float
) -> None:
    low, high = sorted((low, high))
    plate = {"eccentricity": low, "net_ratio": net_ratio}
    near = float(eccentric_splice_strength(thickness, steel_strength=250.0, **plate))
    first = float(eccentric_splice_first_yield(thickness, yield_strength=250.0, **plate))
    far = float(
        eccentric_splice_strength(
            thickness, steel_strength=250.0, eccentricity=high, net_ratio=net_ratio
        )
    )
    axial = 250.0 * thickness * net_ratio
    assert far <= near * (1.0 + 1e-12)
    assert first <= near * (1.0 + 1e-12)
    assert near <= axial * (1.0 + 1e-12)
    if low == 0.0:
        assert near == pytest.approx(axial)


@given(sleeve=thicknesses, outside=thicknesses, inside=thicknesses)
def test_plates_on_both_sides_leave_no_eccentricity(
    sleeve: float, outside: float, inside: float
) -> None:
    both = splice_eccentricity(sleeve, outside_thickness=outside, inside_thickness=inside)
    assert float(both) == 0.0
    outer, inner = splice_plate_shares(sleeve, outside_thickness=outside, inside_thickness=inside)
    assert float(outer) + float(inner) == pytest.approx(1.0)
    assert (float(outer) <= 0.5) == (outside >= inside)
    alone, none = splice_plate_shares(sleeve, outside_thickness=outside)
    assert (float(alone), float(none)) == (1.0, 0.0)
