"""What every answer of the formulas must keep to, whatever the numbers."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from jacketcheck_india.mechanics import bolt_bearing as bearing
from jacketcheck_india.mechanics import bolt_strength as bolts
from jacketcheck_india.mechanics import detailing, development, plate_strength, slip

from jacketcheck.errors import DomainError

strengths = st.floats(200.0, 1200.0)
areas = st.floats(1.0, 1e5)


@given(st.floats(0.05, 0.27), st.floats(0.0, 1e6), st.integers(1, 2))
def test_slip_is_linear_in_each_argument(factor: float, tension: float, interfaces: int) -> None:
    one = float(slip.slip_capacity(factor, bolt_tension=tension, interfaces=interfaces))
    for doubled in (
        slip.slip_capacity(2.0 * factor, bolt_tension=tension, interfaces=interfaces),
        slip.slip_capacity(factor, bolt_tension=2.0 * tension, interfaces=interfaces),
        slip.slip_capacity(factor, bolt_tension=tension, interfaces=2 * interfaces),
    ):
        assert float(doubled) == pytest.approx(2.0 * one, rel=1e-12)


@given(st.floats(0.0, 3000.0), st.floats(0.0, 3000.0), st.floats(12.0, 36.0))
def test_longer_joints_never_gain(first: float, second: float, diameter: float) -> None:
    short, long = sorted((first, second))
    assert bolts.long_joint_factor(long, diameter=diameter) <= bolts.long_joint_factor(
        short, diameter=diameter
    )


@given(st.floats(0.1, 8.0), st.floats(0.1, 8.0), st.floats(0.75, 1.0))
def test_larger_grips_never_gain(first: float, second: float, joint: float) -> None:
    short, long = sorted((first, second))

    def factor(ratio: float) -> float:
        return float(bolts.grip_factor(20.0 * ratio, diameter=20.0, long_joint_factor=joint))

    assert factor(long) <= factor(short) <= 1.0
    if long > 5.0:
        assert factor(long) <= joint


@given(st.floats(20.0, 200.0), st.floats(40.0, 300.0), st.floats(13.0, 39.0), strengths, strengths)
def test_the_bearing_factor_is_at_most_one(
    end: float, pitch: float, hole: float, bolt: float, plate: float
) -> None:
    found = bearing.bearing_factor(
        end_distance=end, pitch=pitch, hole=hole, bolt_strength=bolt, plate_strength=plate
    )
    more = bearing.bearing_factor(
        end_distance=1.1 * end, pitch=pitch, hole=hole, bolt_strength=bolt, plate_strength=plate
    )
    assert 0.0 < float(found) <= 1.0
    assert float(found) <= float(more)


@given(areas, areas, areas, areas, strengths)
def test_block_shear_grows_with_each_area(
    gross_shear: float, net_shear: float, gross_tension: float, net_tension: float, steel: float
) -> None:
    block = plate_strength.BlockAreas(gross_shear, net_shear, gross_tension, net_tension)

    def strength(areas: plate_strength.BlockAreas) -> float:
        return float(
            plate_strength.block_shear_design_strength(
                areas, yield_strength=steel, tensile_strength=1.3 * steel
            )
        )

    for name in block._fields:
        larger = block._replace(**{name: 1.2 * getattr(block, name)})
        assert strength(larger) >= strength(block)


@given(st.floats(20.0, 80.0), st.floats(20.0, 80.0))
def test_stronger_concrete_never_bonds_less(first: float, second: float) -> None:
    weak, strong = sorted((first, second))
    assert development.design_bond_stress(weak) <= development.design_bond_stress(strong)


def test_scalars_and_arrays_agree() -> None:
    grips = np.array([80.0, 120.0, 150.0])
    many = bolts.grip_factor(grips, diameter=20.0)
    single = [float(bolts.grip_factor(float(one), diameter=20.0)) for one in grips]
    np.testing.assert_allclose(many, single, rtol=0.0)


_BLOCK = plate_strength.BlockAreas(2000.0, 1500.0, 600.0, 500.0)

REFUSED: dict[str, Callable[[float], object]] = {
    "friction": lambda bad: slip.slip_capacity(bad, bolt_tension=1e5, interfaces=1),
    "tension": lambda bad: slip.slip_capacity(0.3, bolt_tension=bad, interfaces=1),
    "proof load": lambda bad: slip.proof_load(800.0, tensile_stress_area=bad),
    "joint length": lambda bad: bolts.long_joint_factor(bad, diameter=20.0),
    "grip": lambda bad: bolts.grip_factor(bad, diameter=20.0),
    "packing": bolts.packing_factor,
    "shank": lambda bad: bolts.bolt_shear_capacity(
        800.0, shank_area=bad, net_area=245.0, threads="included", shear_planes=1
    ),
    "bolt yield": lambda bad: bolts.bolt_tension_capacity(
        800.0, yield_strength=bad, shank_area=314.0, net_area=245.0
    ),
    "end distance": lambda bad: bearing.bearing_factor(
        end_distance=bad, pitch=60.0, hole=22.0, bolt_strength=800.0, plate_strength=410.0
    ),
    "thickness": lambda bad: bearing.bearing_capacity(
        20.0, thickness=bad, plate_strength=410.0, bearing_factor=0.5
    ),
    "gross area": lambda bad: plate_strength.gross_yield_capacity(250.0, gross_area=bad),
    "net area": lambda bad: plate_strength.net_rupture_capacity(410.0, net_area=bad),
    "tension plane": lambda bad: plate_strength.block_shear_design_strength(
        _BLOCK._replace(gross_tension=bad), yield_strength=250.0, tensile_strength=410.0
    ),
    "pitch": detailing.min_pitch,
    "any pitch": detailing.max_pitch,
    "tension pitch": detailing.max_tension_pitch,
    "edge line": detailing.max_edge_line_pitch,
    "edge hole": detailing.min_edge_distance,
    "far edge": lambda bad: detailing.max_edge_distance(bad, yield_strength=250.0),
    "exposed edge": detailing.max_corrosion_edge_distance,
    "concrete": development.design_bond_stress,
    "bar": lambda bad: development.development_length(bad, bar_stress=400.0, bond_stress=2.0),
}


@pytest.mark.parametrize("bad", [np.nan, -1.0, np.inf])
@pytest.mark.parametrize("quantity", REFUSED)
def test_what_is_no_quantity_is_refused(quantity: str, bad: float) -> None:
    with pytest.raises(DomainError):
        REFUSED[quantity](bad)


def test_edges_of_the_ranges_are_refused_and_named() -> None:
    with pytest.raises(DomainError, match="friction_coefficient"):
        slip.slip_capacity(0.56, bolt_tension=1e5, interfaces=1)
    with pytest.raises(DomainError, match="grip_over_diameter"):
        bolts.grip_factor(161.0, diameter=20.0)
    with pytest.raises(DomainError, match="packing_factor"):
        bolts.packing_factor(80.0)
    with pytest.raises(DomainError, match="cube_strength"):
        development.design_bond_stress(19.9)
    with pytest.raises(DomainError, match="bearing_factor"):
        bearing.bearing_factor(
            end_distance=40.0, pitch=10.0, hole=22.0, bolt_strength=800.0, plate_strength=410.0
        )
    with pytest.raises(DomainError, match="hole_making"):
        plate_strength.hole_allowance("burnt")
    with pytest.raises(DomainError, match="one of standard, oversized"):
        slip.slip_hole_factor("round")
    with pytest.raises(DomainError, match="one of sheared"):
        detailing.min_edge_distance(22.0, edge="bitten")
