"""Looking names up, adding entries, and guards over all built-in entries."""

from __future__ import annotations

import dataclasses
import pickle
import re
from importlib.resources import files

import pytest

import jacketcheck.catalog
from jacketcheck.catalog import (
    Bar,
    BoltProduct,
    Catalog,
    Entries,
    FayingClass,
    PlateSteel,
    RebarSteel,
    StrengthBand,
    _load,
    built_in_catalog,
    stock_plate_thicknesses,
)
from jacketcheck.errors import CatalogError

CATALOG = built_in_catalog()
JUDGEMENT = re.compile("engineering judgement|common practice, no published source")
EDITION = re.compile(r"(19|20)\d\d|-\d\d\b|:\d\d")


def all_sources() -> list[tuple[str, str]]:
    records: list[Bar | RebarSteel | PlateSteel | FayingClass | BoltProduct] = [
        *CATALOG.bars.values(),
        *CATALOG.rebar_steels.values(),
        *CATALOG.plate_steels.values(),
        *CATALOG.faying_classes.values(),
        *CATALOG.bolts.values(),
    ]
    found = [
        (record.name, text)
        for record in records
        for text in (record.source, *record.sources.values())
    ]
    for product in CATALOG.bolts.values():
        for size in product.sizes.values():
            found += [(f"{product.name} {size.name}", text) for text in size.sources.values()]
    return found


def test_every_source_names_its_edition_or_says_that_it_is_judgement() -> None:
    for name, text in set(all_sources()):
        told = EDITION.search(text) or JUDGEMENT.search(text) or text == "no published value"
        assert told, f"{name}: {text}"


@pytest.mark.parametrize(
    "field",
    [
        "diameter",
        "tensile_stress_area",
        "pretension",
        "holes",
        "min_edge_distance",
        "edge_increments",
        "nut_width",
        "nut_height",
        "head_height",
        "thread_lengths",
        "washer_diameter",
        "washer_thickness",
        "tightening_clearance",
    ],
)
def test_every_figure_of_a_bolt_size_has_its_own_source(field: str) -> None:
    for product in CATALOG.bolts.values():
        for size in product.sizes.values():
            assert field in size.sources, product.name


def test_a_trace_can_cite_table_and_edition() -> None:
    product = CATALOG.bolt_product("ASTM F3125 A325")
    size = product.size("7/8 in")
    assert size.source_of("holes") == "AISC 360-22 Table J3.3"
    assert size.source_of("min_edge_distance") == "AISC 360-22 Table J3.4"
    assert "AISC 360-22 Table J3.1" in product.pretension_source
    assert "AASHTO LRFD 9th ed. (2020)" in product.pretension_source
    assert product.source_of("shear_stress_included").startswith("AISC 360-22 Table J3.2")


def test_iso_bolts_do_not_cite_the_pretension_of_aisc() -> None:
    for name in ("EN 14399 HR 8.8", "EN 14399 HR 10.9", "EN 14399 HV 10.9"):
        assert "EN 1993-1-8" in CATALOG.bolt_product(name).pretension_source
        assert "AISC" not in CATALOG.bolt_product(name).pretension_source


def test_clearances_that_nobody_publishes_are_left_out() -> None:
    for name in ("ASTM F3125 A325M", "EN 14399 HR 10.9", "ASTM F3125 F1852"):
        for size in CATALOG.bolt_product(name).sizes.values():
            assert size.tightening_clearance is None
            assert size.entering_clearance is None
            assert size.source_of("tightening_clearance") == "no published value"


def test_every_data_file_is_used() -> None:
    _load.read_table.cache_clear()
    _load.read_file.cache_clear()
    built_in_catalog.__wrapped__()
    stock_plate_thicknesses("in")
    written = [
        entry.name
        for entry in (files("jacketcheck.catalog") / "data").iterdir()
        if entry.name.endswith(".toml")
    ]
    assert _load.read_file.cache_info().currsize == len(written)


def test_names_of_the_catalogue() -> None:
    assert list(CATALOG.rebar_steels) == [
        "ASTM A706 Grade 60",
        "ASTM A706 Grade 80",
        "ASTM A615 Grade 60",
        "ASTM A615 Grade 40",
        "EN B500B",
        "EN B500C",
        "CSA G30.18 400W",
        "CSA G30.18 500W",
    ]
    assert list(CATALOG.bolts) == [
        "ASTM F3125 A325",
        "ASTM F3125 A490",
        "ASTM F3125 F1852",
        "ASTM F3125 F2280",
        "ASTM F3125 A325M",
        "ASTM F3125 A490M",
        "EN 14399 HR 8.8",
        "EN 14399 HR 10.9",
        "EN 14399 HV 10.9",
    ]
    assert len(CATALOG.bars) == 11 + 8 + 12
    assert set(CATALOG.faying_classes) == {
        "AISC A", "AISC B", "AASHTO A", "AASHTO B", "AASHTO C", "AASHTO D", "RCSC A", "RCSC B",
    }  # fmt: skip


@pytest.mark.parametrize(
    ("written", "name"),
    [
        ("#11", "No. 11"),
        ("US 11", "No. 11"),
        ("no. 11", "No. 11"),
        ("No.  11", "No. 11"),
        ("No.11", "No. 11"),
        ("25m", "25M"),
        ("Ø32", "EN 32"),
        ("32 mm", "EN 32"),
    ],
)
def test_bar_by_another_name(written: str, name: str) -> None:
    assert CATALOG.bar(written).name == name


def test_number_10_is_the_inch_bar() -> None:
    """The metric edition of the same standard calls the 3/8 in bar No. 10."""
    assert CATALOG.bar("No. 10").diameter == pytest.approx(1.27 * 25.4)
    with pytest.raises(CatalogError, match="not known"):
        CATALOG.bar("No. 36")


@pytest.mark.parametrize("written", ["7/8 in", '7/8"', "7/8in", "7/8  IN", "7/8 inch"])
def test_bolt_size_by_another_name(written: str) -> None:
    assert CATALOG.bolt_product("A325").size(written).name == "7/8 in"


@pytest.mark.parametrize(
    ("written", "name"),
    [
        ("a325", "ASTM F3125 A325"),
        ("ISO 898-1 10.9", "EN 14399 HR 10.9"),
        ("HV 10.9", "EN 14399 HV 10.9"),
        ("F2280", "ASTM F3125 F2280"),
    ],
)
def test_bolt_product_by_another_name(written: str, name: str) -> None:
    assert CATALOG.bolt_product(written).name == name


def test_unknown_name_says_what_is_near() -> None:
    with pytest.raises(CatalogError) as caught:
        CATALOG.bar("No. 12")
    assert str(caught.value).startswith("bar size 'No. 12' is not known; did you mean No. 1")
    assert len(str(caught.value)) < 90
    assert caught.value.known == tuple(CATALOG.bars)
    assert (caught.value.kind, caught.value.name) == ("bar size", "No. 12")


def test_name_unlike_any_other_lists_what_is_known() -> None:
    with pytest.raises(CatalogError) as caught:
        CATALOG.bar("zzzz")
    assert "known are No. 3, No. 4" in str(caught.value)
    assert str(caught.value).endswith("and 19 more")


def test_unknown_bolt_size_names_the_product() -> None:
    with pytest.raises(CatalogError, match="size of ASTM F3125 A490M 'M12' is not known"):
        CATALOG.bolt_product("A490M").size("M12")
    with pytest.raises(CatalogError, match="size of ASTM F3125 F1852"):
        CATALOG.bolt_product("F1852").size("1-1/2 in")


@pytest.mark.parametrize("letter", ["B", "b", "class B", "Class  b"])
def test_bare_letter_asks_for_the_code(letter: str) -> None:
    with pytest.raises(CatalogError, match="needs its code: AISC B or AASHTO B or RCSC B"):
        CATALOG.faying_class(letter)


def test_letter_of_a_single_code_still_needs_it() -> None:
    with pytest.raises(CatalogError, match="needs its code: AASHTO D"):
        CATALOG.faying_class("D")
    assert CATALOG.faying_class("AASHTO class D").name == "AASHTO D"


@pytest.mark.parametrize("entry", CATALOG.faying_classes.values(), ids=lambda entry: entry.name)
def test_same_classes_exist_and_are_never_more_favourable(entry: FayingClass) -> None:
    assert entry.preparation
    assert entry.keep_unpainted
    for name in entry.same_as:
        other = CATALOG.faying_class(name)
        assert other.code != entry.code
        assert other.slip_coefficient <= entry.slip_coefficient


@pytest.mark.parametrize(
    ("name", "allowed"),
    [
        ("A325", True),
        ("A490", False),
        ("A490M", False),
        ("F1852", False),
        ("F2280", False),
        ("HV 10.9", True),
    ],
)
def test_galvanizing(name: str, *, allowed: bool) -> None:
    assert CATALOG.bolt_product(name).galvanizing_allowed is allowed


def test_twist_off_bolts_are_told_apart() -> None:
    assert CATALOG.bolt_product("F1852").assembly == "twist-off"
    assert CATALOG.bolt_product("A325").assembly == "heavy hex"
    assert list(CATALOG.bolt_product("F1852").sizes)[-1] == "1-1/4 in"


@pytest.mark.parametrize(
    ("product", "needed", "stocked"),
    [
        ("A325", 2.30 * 25.4, 2.5 * 25.4),
        ("A325", 2.25 * 25.4, 2.25 * 25.4),
        ("A325", 6.01 * 25.4, 6.5 * 25.4),
        ("A325M", 71.0, 75.0),
        ("HR 8.8", 101.0, 110.0),
        ("HV 10.9", 101.0, 105.0),
    ],
)
def test_stock_length(product: str, needed: float, stocked: float) -> None:
    lengths = CATALOG.bolt_product(product).stocked_lengths
    assert min(lengths[lengths >= needed - 1e-6]) == pytest.approx(stocked)


def test_stock_plates_ascend() -> None:
    for plates in (stock_plate_thicknesses("in"), stock_plate_thicknesses("mm")):
        assert list(plates) == sorted(set(plates))
        assert 6.0 <= plates[0] < 6.5
        assert 50.0 <= plates[-1] < 51.0
    assert 25.4 / 2.0 in stock_plate_thicknesses("in")


def another_bar(**changes: object) -> Bar:
    fields = {"name": "X 29", "diameter": 29.0, "area": 660.5, "source": "a national standard"}
    return Bar(**{**fields, **changes})  # type: ignore[arg-type] # wrong ones on purpose


def another_plate(name: str) -> PlateSteel:
    return PlateSteel(
        name=name,
        bands=(StrengthBand(50.0, 300.0, 440.0),),
        expected_ratio=1.1,
        elastic_modulus=200_000.0,
        source="a national standard, 2020",
    )


def test_extended_is_a_copy() -> None:
    extended = CATALOG.extended(bars=[another_bar()], plate_steels=[another_plate("X 300")])
    assert extended.bar("x 29").area == 660.5
    assert extended.plate_steel("X 300").strengths(50.0) == (300.0, 440.0)
    assert extended.bar("No. 11") is CATALOG.bar("No. 11")
    assert "X 29" not in CATALOG.bars
    with pytest.raises(CatalogError):
        CATALOG.bar("X 29")


def test_every_kind_can_be_extended() -> None:
    bolt = dataclasses.replace(CATALOG.bolts["ASTM F3125 A325"], name="X bolt", aliases=())
    steel = dataclasses.replace(CATALOG.rebar_steels["EN B500C"], name="X 500", aliases=())
    faying = FayingClass(
        code="X", letter="1", slip_coefficient=0.4, preparation="primed", source="X code, 2021"
    )
    extended = CATALOG.extended(bolts=[bolt], rebar_steels=[steel], faying_classes=[faying])
    assert extended.bolt_product("x bolt").size("7/8 in").pretension is not None
    assert extended.rebar_steel("X 500").overstrength == 1.35
    assert extended.faying_class("X 1").slip_coefficient == 0.4


@pytest.mark.parametrize("name", ["No. 11", "no.   11", "#11"])
def test_taken_name_is_refused(name: str) -> None:
    with pytest.raises(CatalogError, match=r"is taken already, by No\. 11"):
        CATALOG.extended(bars=[another_bar(name=name)])


def test_taken_alias_is_refused() -> None:
    with pytest.raises(CatalogError, match=r"bar size '#11' is taken already, by No\. 11"):
        CATALOG.extended(bars=[another_bar(aliases=("#11",))])
    with pytest.raises(CatalogError, match="is taken already, by X 29"):
        CATALOG.extended(bars=[another_bar(), another_bar()])


def test_empty_catalogue_says_so() -> None:
    with pytest.raises(CatalogError, match="bar size 'a' is not known; there are none"):
        Entries[Bar]("bar size", []).find("a")


def test_entries_are_a_mapping() -> None:
    assert CATALOG.bars["No. 11"].name == "No. 11"
    assert "#11" not in CATALOG.bars
    assert CATALOG.bars.get("#11") is None
    assert repr(CATALOG.bars) == "Entries('bar size', 31 entries)"


def test_nothing_can_be_changed() -> None:
    with pytest.raises(dataclasses.FrozenInstanceError):
        CATALOG.bar("No. 11").area = 1.0  # type: ignore[misc] # that is the point
    with pytest.raises(TypeError):
        CATALOG.bars["No. 11"] = another_bar()  # type: ignore[index] # that is the point


def test_catalogue_survives_pickling() -> None:
    copy = pickle.loads(pickle.dumps(CATALOG))  # noqa: S301 - our own bytes
    assert isinstance(copy, Catalog)
    assert copy.bolt_product("A325") == CATALOG.bolt_product("A325")
    assert hash(copy.bar("#11")) == hash(CATALOG.bar("#11"))


def test_public_names() -> None:
    public = jacketcheck.catalog.__all__
    assert list(public) == sorted(public)
    assert all(hasattr(jacketcheck.catalog, name) for name in public)
