"""Tabulated bolt figures against the formulas that they were rounded from."""

from __future__ import annotations

import math

import pytest

from jacketcheck.catalog import BoltProduct, BoltSize, built_in_catalog

INCH = 25.4
KIP = 4448.2216152605

PAIRS = [
    (product, size)
    for product in built_in_catalog().bolts.values()
    for size in product.sizes.values()
]
SIZES = [pytest.param(product, size, id=f"{product.name}-{size.name}") for product, size in PAIRS]
AISC_SIZES = [
    pytest.param(product, size, id=f"{product.name}-{size.name}")
    for product, size in PAIRS
    if "AISC" in size.source_of("pretension")
]
A325_SIZES = list(built_in_catalog().bolts["ASTM F3125 A325"].sizes.values())


@pytest.mark.parametrize(("product", "size"), SIZES)
def test_stress_area_by_the_formula_of_the_thread_standard(
    product: BoltProduct, size: BoltSize
) -> None:
    """ISO 898-1: π/4 (d − 0.9382 P)²; ASME B1.1: 0.7854 (d − 0.9743 P)²."""
    factor = 0.9743 if size.name.endswith("in") else 0.9382
    area = math.pi / 4.0 * (size.diameter - factor * size.thread_pitch) ** 2
    assert size.tensile_stress_area == pytest.approx(area, rel=0.005), product.name


@pytest.mark.parametrize(("product", "size"), AISC_SIZES)
def test_pretension_is_seven_tenths_of_the_tensile_strength(
    product: BoltProduct, size: BoltSize
) -> None:
    """AISC 360-22 Table J3.1, notes: 0.70 of the tensile strength, to the nearest kip or kN."""
    assert size.pretension is not None
    step = KIP if size.name.endswith("in") else 1000.0
    share = 0.70 * product.tensile_strength * size.tensile_stress_area
    # half a step for rounding, the rest because the standard rounds the tensile strength first
    assert size.pretension == pytest.approx(share, abs=0.9 * step)


@pytest.mark.parametrize(("product", "size"), SIZES)
def test_pretension_never_exceeds_three_quarters_of_the_tensile_strength(
    product: BoltProduct, size: BoltSize
) -> None:
    assert size.pretension is not None
    tensile_capacity = product.tensile_strength * size.tensile_stress_area
    assert 0.65 * tensile_capacity < size.pretension < 0.75 * tensile_capacity
    assert size.pretension < product.yield_strength * size.tensile_stress_area


@pytest.mark.parametrize(("product", "size"), SIZES)
def test_nominal_stresses_are_the_usual_shares(product: BoltProduct, size: BoltSize) -> None:
    """AISC 360-22 commentary J3.7: 0.75, 0.450 and 0.563 of the tensile strength."""
    strength = product.tensile_strength
    assert product.tensile_stress == pytest.approx(0.75 * strength, rel=0.01), size.name
    assert product.shear_stress_included == pytest.approx(0.450 * strength, rel=0.012)
    assert product.shear_stress_excluded == pytest.approx(0.563 * strength, rel=0.012)


@pytest.mark.parametrize("name", ["1-1/8 in", "1-1/4 in", "1-3/8 in", "1-1/2 in"])
def test_holes_of_large_bolts_by_the_printed_rule(name: str) -> None:
    """AISC 360-22 Table J3.3, last line: d + 1/8, d + 5/16, d + 3/8 and 2.5 d."""
    size = built_in_catalog().bolt_product("A490").size(name)
    d = size.diameter
    assert size.holes["standard"] == pytest.approx(d + INCH / 8)
    assert size.holes["oversized"] == pytest.approx(d + 5 * INCH / 16)
    assert size.holes["short-slot-width"] == pytest.approx(d + INCH / 8)
    assert size.holes["short-slot-length"] == pytest.approx(d + 3 * INCH / 8)
    assert size.holes["long-slot-width"] == pytest.approx(d + INCH / 8)
    assert size.holes["long-slot-length"] == pytest.approx(2.5 * d)


@pytest.mark.parametrize(("product", "size"), SIZES)
def test_holes_grow_from_standard_to_long_slot(product: BoltProduct, size: BoltSize) -> None:
    holes = size.holes
    assert size.diameter < holes["standard"] < holes["oversized"], product.name
    assert holes["short-slot-width"] == holes["long-slot-width"] == holes["standard"]
    assert holes["oversized"] < holes["short-slot-length"] < holes["long-slot-length"]
    assert holes["long-slot-length"] == pytest.approx(2.5 * size.diameter, rel=0.01)


@pytest.mark.parametrize(("product", "size"), SIZES)
def test_edge_distance_leaves_steel_beside_the_hole(product: BoltProduct, size: BoltSize) -> None:
    assert size.min_edge_distance > 0.6 * size.holes["standard"] + 1.0, product.name
    assert size.min_edge_distance < 2.0 * size.diameter
    for slot in ("short-slot", "long-slot"):
        assert size.edge_increments[slot] >= size.edge_increments[f"{slot}-along-edge"]
    half_length = size.holes["long-slot-length"] / 2.0
    assert size.min_edge_distance + size.edge_increments["long-slot"] > half_length


@pytest.mark.parametrize("name", ["M16", "M24", "M36"])
def test_european_edge_distance_of_slots_counts_from_their_round_end(name: str) -> None:
    """EN 1993-1-8:2005 Table 3.3: 1.5 d0 from the centre of the end, 1.2 d0 from a round hole."""
    size = built_in_catalog().bolt_product("HR 8.8").size(name)
    width = size.holes["short-slot-width"]
    assert size.min_edge_distance == pytest.approx(1.2 * width)
    for slot in ("short-slot", "long-slot"):
        from_slot_centre = size.min_edge_distance + size.edge_increments[slot]
        end_centre_to_slot_centre = (size.holes[f"{slot}-length"] - width) / 2.0
        assert from_slot_centre - end_centre_to_slot_centre == pytest.approx(1.5 * width)
        beside = size.min_edge_distance + size.edge_increments[f"{slot}-along-edge"]
        assert beside == pytest.approx(1.5 * width)
    oversized = size.min_edge_distance + size.edge_increments["oversized"]
    assert oversized == pytest.approx(1.2 * size.holes["oversized"])


@pytest.mark.parametrize(("product", "size"), SIZES)
def test_hardware_is_in_proportion_to_the_bolt(product: BoltProduct, size: BoltSize) -> None:
    d = size.diameter
    assert 1.45 * d < size.nut_width < 1.9 * d, product.name
    assert 0.75 * d < size.nut_height < 1.08 * d
    assert 0.55 * d < size.head_height < 0.68 * d
    # the washer reaches beyond the flats, and bridges a standard hole
    assert size.nut_width < size.washer_diameter < 2.6 * d
    assert size.washer_diameter > size.holes["standard"]
    assert 1.4 * d < size.thread_lengths[0][1] < 2.6 * d


@pytest.mark.parametrize("size", A325_SIZES[1:], ids=lambda size: size.name)
def test_wrench_clearance_clears_the_socket(size: BoltSize) -> None:
    """The published clearance is half the socket and about 1/8 in."""
    assert size.socket_diameter is not None
    assert size.tightening_clearance is not None
    assert size.entering_clearance is not None
    assert size.tightening_clearance == pytest.approx(size.socket_diameter / 2 + INCH / 8)
    assert size.nut_width < size.socket_diameter
    assert size.nut_width / 2.0 < size.entering_clearance < size.tightening_clearance


@pytest.mark.parametrize("size", A325_SIZES, ids=lambda size: size.name)
def test_grip_allowance_leaves_one_to_three_threads_beyond_the_nut(size: BoltSize) -> None:
    """RCSC 2.4: the bolt's end is at least flush with the nut."""
    assert size.grip_allowance is not None
    beyond_nut = size.grip_allowance - size.nut_height
    assert 1.0 * size.thread_pitch < beyond_nut < 3.0 * size.thread_pitch
