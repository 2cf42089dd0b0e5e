"""Records refuse figures that cannot be right; banded figures know their range."""

from __future__ import annotations

import dataclasses
import math
from typing import Any

import numpy as np
import pytest

from jacketcheck.catalog import Bar, FayingClass, PlateSteel, StrengthBand, built_in_catalog
from jacketcheck.catalog.bands import band_index, band_value
from jacketcheck.errors import CatalogError, DomainError

CATALOG = built_in_catalog()
BOLT = CATALOG.bolts["ASTM F3125 A325"]
SIZE = BOLT.sizes["7/8 in"]
REBAR = CATALOG.rebar_steels["ASTM A706 Grade 60"]
PLATE = CATALOG.plate_steels["EN S355"]


@pytest.mark.parametrize("area", [math.nan, math.inf, 0.0, -1.0, "500"])
def test_bar_with_an_impossible_area(area: Any) -> None:
    with pytest.raises(CatalogError, match=r"bar size 'X' has area = .*; must be a number above"):
        Bar(name="X", diameter=25.0, area=area, source="a standard")


def test_record_without_name_or_source() -> None:
    with pytest.raises(CatalogError, match="has no source"):
        Bar(name="X", diameter=25.0, area=491.0, source=" ")
    with pytest.raises(CatalogError, match="is an empty name"):
        Bar(name="", diameter=25.0, area=491.0, source="a standard")


@pytest.mark.parametrize(
    ("changes", "message"),
    [
        ({"pretension": math.nan}, "has pretension = nan"),
        ({"nut_width": -1.0}, "has nut_width"),
        ({"holes": {"standard": 25.0}}, "must have holes standard, oversized"),
        ({"holes": {**SIZE.holes, "standard": 22.0}}, "a hole that is not larger than the bolt"),
        ({"edge_increments": {}}, "must have edge_increments oversized"),
        ({"edge_increments": {**SIZE.edge_increments, "oversized": -1.0}}, "below zero"),
        ({"edge_increments": {**SIZE.edge_increments, "oversized": math.nan}}, "below zero"),
        ({"thread_lengths": ()}, "thread_lengths that do not ascend, or none"),
    ],
)
def test_malformed_bolt_size(changes: dict[str, Any], message: str) -> None:
    with pytest.raises(CatalogError, match=message):
        dataclasses.replace(SIZE, **changes)


@pytest.mark.parametrize(
    ("changes", "message"),
    [
        ({"tensile_strength": math.inf}, "has tensile_strength"),
        ({"sizes": type(BOLT.sizes)("size", [])}, "has no sizes"),
        ({"length_increments": ((100.0, 5.0), (100.0, 10.0))}, "length_increments"),
    ],
)
def test_malformed_bolt_product(changes: dict[str, Any], message: str) -> None:
    with pytest.raises(CatalogError, match=message):
        dataclasses.replace(BOLT, **changes)


@pytest.mark.parametrize(
    ("changes", "message"),
    [
        ({"hardening_strain": ()}, "has hardening_strain that do not ascend, or none"),
        ({"ultimate_strain": ((50.0, 0.09), (30.0, 0.06))}, "has ultimate_strain"),
        ({"ultimate_strain": ((50.0, math.nan),)}, "has ultimate_strain = nan"),
        ({"overstrength": 0.0}, "has overstrength"),
    ],
)
def test_malformed_rebar_steel(changes: dict[str, Any], message: str) -> None:
    with pytest.raises(CatalogError, match=message):
        dataclasses.replace(REBAR, **changes)


def test_malformed_plate_steel() -> None:
    with pytest.raises(CatalogError, match="has bands that do not ascend, or none"):
        dataclasses.replace(PLATE, bands=())
    with pytest.raises(CatalogError, match="has yield_strength = nan"):
        dataclasses.replace(PLATE, bands=(StrengthBand(16.0, math.nan, 470.0),))


def test_malformed_faying_class() -> None:
    with pytest.raises(CatalogError, match="needs a code and a letter"):
        FayingClass(code="", letter="B", slip_coefficient=0.5, preparation="", source="a code")
    with pytest.raises(CatalogError, match="has slip_coefficient = nan"):
        FayingClass(
            code="X", letter="B", slip_coefficient=math.nan, preparation="", source="a code"
        )


def test_strengths_of_one_plate_are_floats() -> None:
    found = PLATE.strengths(20.0)
    assert isinstance(found.yield_strength, float)
    assert isinstance(found.tensile_strength, float)


def test_strengths_of_many_plates_keep_their_shape() -> None:
    thickness = np.array([[10.0, 16.0, 16.1], [41.0, 100.0, 150.0]])
    found = PLATE.strengths(thickness)
    assert np.array_equal(found.yield_strength, [[355, 355, 345], [335, 315, 295]])
    assert np.array_equal(found.tensile_strength, [[470, 470, 470], [470, 470, 450]])


def test_limit_of_a_band_bears_rounding() -> None:
    assert PLATE.strengths(0.016 * 1000.0 * (1.0 + 1e-12)).yield_strength == 355.0
    steel: PlateSteel = CATALOG.plate_steel("A36")
    assert steel.strengths(8.0 * 25.4).yield_strength == pytest.approx(248.2, abs=0.05)


@pytest.mark.parametrize("thickness", [0.0, -5.0, math.nan, math.inf, 151.0])
def test_thickness_out_of_range(thickness: float) -> None:
    with pytest.raises(DomainError, match="thickness of EN S355 plate"):
        PLATE.strengths(thickness)
    with pytest.raises(DomainError, match="thickness of EN S355 plate"):
        PLATE.strengths(np.array([10.0, thickness]))


def test_plate_beyond_the_standard_names_the_limit() -> None:
    with pytest.raises(DomainError, match=r"plate = 151.0: must be at most 150"):
        PLATE.strengths(np.array([10.0, 151.0, 200.0]))


def test_strains_by_diameter() -> None:
    diameters = np.array([CATALOG.bar(name).diameter for name in ("No. 5", "No. 9", "No. 18")])
    assert np.array_equal(REBAR.hardening_strain_at(diameters), [0.0150, 0.0125, 0.0050])
    assert np.array_equal(REBAR.ultimate_strain_at(diameters), [0.090, 0.090, 0.060])
    assert isinstance(REBAR.ultimate_strain_at(32.0), float)


def test_bar_between_printed_sizes_takes_the_next_larger() -> None:
    """A 35.7 mm bar lies between No. 10 (32.3 mm) and No. 11 (35.8 mm)."""
    assert REBAR.ultimate_strain_at(CATALOG.bar("35M").diameter) == 0.060


@pytest.mark.parametrize("diameter", [0.0, math.nan, 60.0])
def test_bar_diameter_out_of_range(diameter: float) -> None:
    with pytest.raises(DomainError, match="bar diameter"):
        REBAR.hardening_strain_at(diameter)
    with pytest.raises(DomainError, match="bar diameter"):
        REBAR.ultimate_strain_at(np.array([20.0, diameter]))


def test_every_bar_goes_with_the_steels_of_its_country() -> None:
    countries = {"ASTM": "No. 18", "EN": "EN 50", "CSA": "55M"}
    for steel in CATALOG.rebar_steels.values():
        largest = CATALOG.bar(countries[steel.name.split()[0]]).diameter
        assert steel.hardening_strain_at(largest) > 0.0
        assert steel.ultimate_strain_at(largest) > 0.0


@pytest.mark.parametrize("length", [0.0, -1.0, math.nan, 1000.0])
def test_bolt_length_out_of_range(length: float) -> None:
    with pytest.raises(DomainError, match="bolt length"):
        SIZE.thread_length(np.array([50.0, length]))


def test_stocked_lengths() -> None:
    product = dataclasses.replace(BOLT, length_increments=((20.0, 5.0), (50.0, 10.0)))
    assert np.array_equal(product.stocked_lengths, [5.0, 10.0, 15.0, 20.0, 30.0, 40.0, 50.0])


def test_bands() -> None:
    bands = ((10.0, 1.0), (20.0, 2.0))
    assert band_value(bands, 10.0, name="x") == 1.0
    assert band_value(bands, 10.001, name="x") == 2.0
    assert np.array_equal(band_index((10.0, 20.0), np.array([5.0, 15.0]), name="x"), [0, 1])
    with pytest.raises(DomainError, match=r"x = 20.1: must be at most 20"):
        band_value(bands, 20.1, name="x")


def test_exact_source_of_a_field() -> None:
    steel = CATALOG.rebar_steel("A706 Gr 80")
    assert "engineering judgement" in steel.source_of("ultimate_strain")
    assert steel.source_of("expected_yield") == steel.source
