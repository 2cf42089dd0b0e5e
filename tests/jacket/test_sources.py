"""Each figure of the built jacket stands where its own record of the catalogue says."""

from __future__ import annotations

import pytest

from jacketcheck.catalog import built_in_catalog
from jacketcheck.errors import InputError
from jacketcheck.inputs import read_text
from jacketcheck.jacket.build import assemble_jacket
from jacketcheck.jacket.build_reinforcement import build_layer, build_rebar
from jacketcheck.jacket.build_steelwork import build_plate
from tests.support.jackets import CASE

CATALOG = built_in_catalog()
STEEL_FIGURES = (
    "yield_strength",
    "tensile_strength",
    "expected_yield",
    "expected_tensile",
    "hardening_strain",
    "ultimate_strain",
    "elastic_modulus",
    "overstrength",
)
SIZE_FIGURES = (
    "diameter",
    "tensile_stress_area",
    "nut_width",
    "nut_height",
    "head_height",
    "washer_diameter",
    "washer_thickness",
    "tightening_clearance",
    "entering_clearance",
    "socket_diameter",
)


@pytest.mark.parametrize("name", CATALOG.rebar_steels)
def test_reinforcing_steel(name: str) -> None:
    record = CATALOG.rebar_steel(name)
    built = build_rebar(record, 16.0)
    assert {one: built.source_of(one) for one in STEEL_FIGURES} == {
        one: record.source_of(one) for one in STEEL_FIGURES
    }


def test_the_overstrength_of_a_european_bar_is_european() -> None:
    built = build_rebar(CATALOG.rebar_steel("EN B500C"), 16.0)
    assert built.source_of("overstrength").startswith("EN 1998-2:2005 5.3(4)")
    assert built.source_of("expected_tensile").startswith("EN 1998-2:2005 Annex E, 1.20 f_tk")
    assert built.source_of("yield_strength") == "EN 1992-1-1:2004 Annex C, Table C.1"


@pytest.mark.parametrize("name", CATALOG.bars)
def test_bar(name: str) -> None:
    record = CATALOG.bar(name)
    built = build_layer(
        CATALOG,
        size=name,
        steel=build_rebar(CATALOG.rebar_steel("EN B500C"), 16.0),
        count=8,
        circle_radius=500.0,
        first_angle_degrees=0.0,
    )
    for field in ("diameter", "area"):
        assert built.source_of(field) == record.source_of(field)


@pytest.mark.parametrize("name", CATALOG.plate_steels)
def test_plate_steel(name: str) -> None:
    record = CATALOG.plate_steel(name)
    built = build_plate(CATALOG, steel=name, thickness=10.0)
    assert built.source_of("yield_strength") == record.source_of("bands")
    assert built.source_of("tensile_strength") == record.source_of("bands")
    assert built.source_of("elastic_modulus") == record.source_of("elastic_modulus")
    for field in ("expected_ratio", "bands"):
        assert record.source_of(field) in built.source_of("expected_yield")


@pytest.mark.parametrize(
    ("product", "size"),
    [
        pytest.param(product.name, size, id=f"{product.name}, {size}")
        for product in CATALOG.bolts.values()
        for size in product.sizes
    ],
)
def test_bolt(product: str, size: str) -> None:
    repair = read_text(CASE.read_text("utf-8")).base
    record = CATALOG.bolt_product(product)
    bolt = record.size(size)
    tightening = "turn-of-nut" if record.assembly == "heavy hex" else "twist-off"
    written = {"product": product, "diameter": size, "tightening": tightening}
    bolts = repair.bolts.model_copy(update=written)
    try:
        jacket = assemble_jacket(repair.model_copy(update={"bolts": bolts}), catalog=CATALOG)
    except InputError as error:
        pytest.skip(str(error))
    built = jacket.bolts
    for field in SIZE_FIGURES:
        assert built.source_of(field) == bolt.source_of(field)
    for field in ("tensile_strength", "yield_strength", "tensile_stress"):
        assert built.source_of(field) == record.source_of(field)
    assert built.source_of("pretension") == bolt.source_of("pretension")
    assert built.source_of("shear_stress") == record.source_of(f"shear_stress_{bolts.threads}")
    hole = jacket.sleeve.hole
    assert hole.source_of("along") == hole.source_of("across") == bolt.source_of("holes")
    assert bolt.source_of("min_edge_distance") in hole.source_of("min_edge_distance")
