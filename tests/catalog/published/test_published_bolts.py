"""Bolt figures against AISC 360-22, AASHTO LRFD, ISO 898-1, EN 1993-1-8 and EN 1090-2."""

from __future__ import annotations

import pytest

from jacketcheck.catalog import BoltSize, built_in_catalog

INCH = 25.4
KIP = 4448.2216152605
KSI = KIP / INCH**2

A325 = "ASTM F3125 A325"
A490 = "ASTM F3125 A490"
A325M = "ASTM F3125 A325M"
A490M = "ASTM F3125 A490M"

INCH_SIZES = (
    "1/2 in", "5/8 in", "3/4 in", "7/8 in", "1 in", "1-1/8 in", "1-1/4 in", "1-3/8 in", "1-1/2 in",
)  # fmt: skip
METRIC_SIZES = ("M16", "M20", "M22", "M24", "M27", "M30", "M36")


def size(product: str, name: str) -> BoltSize:
    return built_in_catalog().bolt_product(product).size(name)


@pytest.mark.parametrize(
    ("name", "area"),
    [
        # ISO 898-1, nominal stress area of coarse threads [mm2]
        pytest.param(name, area, id=f"A-01-{name}")
        for name, area in zip(
            ("M12", *METRIC_SIZES), (84.3, 157, 245, 303, 353, 459, 561, 817), strict=True
        )
    ],
)
@pytest.mark.parametrize("product", ["EN 14399 HR 8.8", "EN 14399 HV 10.9", A325M])
def test_metric_stress_area(product: str, name: str, area: float) -> None:
    assert size(product, name).tensile_stress_area == area


@pytest.mark.parametrize(
    ("name", "area"),
    [
        # ASME B1.1 and AISC Manual Table 7-17 [in2]; the Manual rounds further than B1.1
        pytest.param(name, area, id=f"A-02-{name}")
        for name, area in zip(
            INCH_SIZES,
            (0.1419, 0.226, 0.334, 0.462, 0.606, 0.763, 0.969, 1.155, 1.405),
            strict=True,
        )
    ],
)
def test_inch_stress_area(name: str, area: float) -> None:
    area_found = size(A325, name).tensile_stress_area
    assert area_found == pytest.approx(area * INCH**2, rel=0.005)


@pytest.mark.parametrize(
    ("product", "tensile_strength"),
    [
        # ASTM F3125; AISC 360-22 J3.3 user note for the metric grades
        pytest.param(A325, 120 * KSI, id="A-03-A325"),
        pytest.param(A490, 150 * KSI, id="A-03-A490"),
        pytest.param(A325M, 830.0, id="A-03-A325M"),
        pytest.param(A490M, 1040.0, id="A-03-A490M"),
    ],
)
def test_tensile_strength(product: str, tensile_strength: float) -> None:
    found = built_in_catalog().bolt_product(product).tensile_strength
    assert found == pytest.approx(tensile_strength, rel=1e-12)


@pytest.mark.parametrize(
    ("product", "tensile_strength", "yield_strength"),
    [
        # EN 1993-1-8:2005 Table 3.1
        pytest.param("ISO 898-1 8.8", 800.0, 640.0, id="A-04-8.8"),
        pytest.param("ISO 898-1 10.9", 1000.0, 900.0, id="A-04-10.9"),
        pytest.param("EN 14399 HV 10.9", 1000.0, 900.0, id="A-04-HV"),
    ],
)
def test_iso_class(product: str, tensile_strength: float, yield_strength: float) -> None:
    found = built_in_catalog().bolt_product(product)
    assert (found.tensile_strength, found.yield_strength) == (tensile_strength, yield_strength)


@pytest.mark.parametrize(
    ("product", "tension", "included", "excluded"),
    [
        # AISC 360-22 Table J3.2 [ksi]
        pytest.param(A325, 90, 54, 68, id="B-01-A325"),
        pytest.param(A490, 113, 68, 84, id="B-01-A490"),
        pytest.param("ASTM F3125 F1852", 90, 54, 68, id="B-01-F1852"),
        pytest.param("ASTM F3125 F2280", 113, 68, 84, id="B-01-F2280"),
    ],
)
def test_nominal_stress(product: str, tension: float, included: float, excluded: float) -> None:
    found = built_in_catalog().bolt_product(product)
    assert found.tensile_stress == pytest.approx(tension * KSI, rel=1e-12)
    assert found.shear_stress_included == pytest.approx(included * KSI, rel=1e-12)
    assert found.shear_stress_excluded == pytest.approx(excluded * KSI, rel=1e-12)


@pytest.mark.parametrize(
    ("product", "tension", "included", "excluded"),
    [
        # AISC 360-22 Table J3.2 [MPa]; AISC 360-16 Table J3.2M has 372, 469 and 579 in shear,
        # which the newer table rounds to the nearest 10 MPa
        pytest.param(A325M, 620, 370, 470, id="B-02-A325M"),
        pytest.param(A490M, 780, 470, 580, id="B-02-A490M"),
    ],
)
def test_metric_nominal_stress(
    product: str, tension: float, included: float, excluded: float
) -> None:
    found = built_in_catalog().bolt_product(product)
    stresses = (found.tensile_stress, found.shear_stress_included, found.shear_stress_excluded)
    assert stresses == (tension, included, excluded)


# AISC 360-22 Table J3.1 [kip]; AASHTO LRFD 9th ed. Table 6.13.2.8-1 has the same values
PRETENSION_A325 = (12, 19, 28, 39, 51, 64, 81, 97, 118)
PRETENSION_A490 = (15, 24, 35, 49, 64, 80, 102, 121, 148)


@pytest.mark.parametrize(
    ("name", "kips"),
    [
        pytest.param(name, kips, id=f"{'P-01' if kips <= 51 else 'P-03'}-{name}")
        for name, kips in zip(INCH_SIZES, PRETENSION_A325, strict=True)
    ],
)
def test_pretension_a325(name: str, kips: float) -> None:
    assert size(A325, name).pretension == pytest.approx(kips * KIP, rel=1e-9)


@pytest.mark.parametrize(
    ("name", "older_kips"),
    [
        # AISC 360-05 and -10 Table J3.1, from 105 ksi above 1 in: must not come back
        pytest.param("1-1/8 in", 56, id="P-02-1-1/8"),
        pytest.param("1-1/4 in", 71, id="P-02-1-1/4"),
        pytest.param("1-3/8 in", 85, id="P-02-1-3/8"),
        pytest.param("1-1/2 in", 103, id="P-02-1-1/2"),
    ],
)
def test_pretension_is_not_that_of_older_editions(name: str, older_kips: float) -> None:
    pretension = size(A325, name).pretension
    assert pretension is not None
    assert pretension > 1.1 * older_kips * KIP


@pytest.mark.parametrize(
    ("name", "kips"),
    [
        pytest.param(name, kips, id=f"P-04-{name}")
        for name, kips in zip(INCH_SIZES, PRETENSION_A490, strict=True)
    ],
)
def test_pretension_a490(name: str, kips: float) -> None:
    assert size(A490, name).pretension == pytest.approx(kips * KIP, rel=1e-9)


@pytest.mark.parametrize(
    ("product", "name", "kilonewtons"),
    [
        # AISC 360-22 Table J3.1M
        *(
            pytest.param(A325M, name, kilonewtons, id=f"P-05-{name}")
            for name, kilonewtons in zip(
                METRIC_SIZES, (91, 142, 176, 205, 267, 326, 475), strict=True
            )
        ),
        *(
            pytest.param(A490M, name, kilonewtons, id=f"P-06-{name}")
            for name, kilonewtons in zip(
                METRIC_SIZES, (114, 179, 221, 257, 334, 408, 595), strict=True
            )
        ),
    ],
)
def test_metric_pretension(product: str, name: str, kilonewtons: float) -> None:
    assert size(product, name).pretension == 1000.0 * kilonewtons


@pytest.mark.parametrize(
    ("product", "name", "kilonewtons"),
    [
        # EN 1993-1-8:2005 Eq. 3.7, printed to a tenth of a kN
        pytest.param("EN 14399 HR 8.8", "M16", 87.9, id="P-08-M16"),
        pytest.param("EN 14399 HR 8.8", "M20", 137.2, id="P-08-M20"),
        pytest.param("EN 14399 HR 8.8", "M24", 197.7, id="P-08-M24"),
        pytest.param("EN 14399 HR 8.8", "M30", 314.2, id="P-08-M30"),
        pytest.param("EN 14399 HR 10.9", "M16", 109.9, id="P-09-M16"),
        pytest.param("EN 14399 HR 10.9", "M20", 171.5, id="P-09-M20"),
        pytest.param("EN 14399 HV 10.9", "M24", 247.1, id="P-09-M24"),
        pytest.param("EN 14399 HV 10.9", "M30", 392.7, id="P-09-M30"),
        # EN 1090-2:2018, table of preloads, printed to the nearest kN
        pytest.param("EN 14399 HR 8.8", "M12", 47.0, id="EN-1090-2-8.8-M12"),
        pytest.param("EN 14399 HR 8.8", "M36", 458.0, id="EN-1090-2-8.8-M36"),
        pytest.param("EN 14399 HR 10.9", "M12", 59.0, id="EN-1090-2-10.9-M12"),
        pytest.param("EN 14399 HR 10.9", "M36", 572.0, id="EN-1090-2-10.9-M36"),
    ],
)
def test_preload_of_iso_bolts(product: str, name: str, kilonewtons: float) -> None:
    tolerance = 0.5 if kilonewtons.is_integer() else 0.06
    assert size(product, name).pretension == pytest.approx(
        1000.0 * kilonewtons, abs=1000.0 * tolerance
    )


@pytest.mark.parametrize(
    ("name", "inches"),
    [
        # AISC 360-22 Table J3.4; 1.25 d above 1-1/4 in
        pytest.param(name, inches, id=f"L-06-{name}")
        for name, inches in zip(
            INCH_SIZES, (0.75, 0.875, 1, 1.125, 1.25, 1.5, 1.625, 1.71875, 1.875), strict=True
        )
    ],
)
def test_least_edge_distance(name: str, inches: float) -> None:
    assert size(A325, name).min_edge_distance == pytest.approx(inches * INCH, rel=1e-12)


@pytest.mark.parametrize(
    ("name", "millimetres"),
    [
        # AISC 360-22 Table J3.4M
        pytest.param(name, millimetres, id=f"L-07-{name}")
        for name, millimetres in zip(METRIC_SIZES, (22, 26, 28, 30, 34, 38, 46), strict=True)
    ],
)
def test_least_metric_edge_distance(name: str, millimetres: float) -> None:
    assert size(A490M, name).min_edge_distance == millimetres


@pytest.mark.parametrize(
    ("name", "increments"),
    [
        # AISC 360-22 Table J3.5 [in]: oversized, short slot, long slot (0.75 d), all at the edge
        pytest.param("7/8 in", (1 / 16, 1 / 8, 0.65625), id="J3.5-7/8"),
        pytest.param("1 in", (1 / 8, 1 / 8, 0.75), id="J3.5-1"),
        pytest.param("1-1/8 in", (1 / 8, 3 / 16, 0.84375), id="J3.5-1-1/8"),
    ],
)
def test_edge_increment(name: str, increments: tuple[float, ...]) -> None:
    found = size(A325, name).edge_increments
    names = ("oversized", "short-slot", "long-slot")
    assert [found[hole] / INCH for hole in names] == pytest.approx(increments)
    assert found["short-slot-along-edge"] == found["long-slot-along-edge"] == 0.0


@pytest.mark.parametrize(
    ("name", "holes"),
    [
        # AISC 360-22 Table J3.3 [in]: standard, oversized, short slot, long slot
        pytest.param("1/2 in", (9 / 16, 5 / 8, 9 / 16, 11 / 16, 9 / 16, 1.25), id="L-10-11-1/2"),
        pytest.param(
            "5/8 in", (11 / 16, 13 / 16, 11 / 16, 7 / 8, 11 / 16, 1.5625), id="L-10-11-5/8"
        ),
        pytest.param("3/4 in", (13 / 16, 15 / 16, 13 / 16, 1, 13 / 16, 1.875), id="L-10-11-3/4"),
        pytest.param(
            "7/8 in", (15 / 16, 1.0625, 15 / 16, 1.125, 15 / 16, 2.1875), id="L-10-11-7/8"
        ),
        pytest.param("1 in", (1.125, 1.25, 1.125, 1.3125, 1.125, 2.5), id="L-10-11-1"),
    ],
)
def test_holes(name: str, holes: tuple[float, ...]) -> None:
    assert [hole / INCH for hole in size(A325, name).holes.values()] == pytest.approx(holes)


@pytest.mark.parametrize(
    ("name", "holes"),
    [
        # AISC 360-22 Table J3.3M [mm]
        pytest.param("M16", (18, 20, 18, 22, 18, 40), id="L-12-M16"),
        pytest.param("M20", (22, 24, 22, 26, 22, 50), id="L-12-M20"),
        pytest.param("M22", (24, 28, 24, 30, 24, 55), id="L-12-M22"),
        pytest.param("M24", (27, 30, 27, 32, 27, 60), id="L-12-M24"),
        pytest.param("M27", (30, 35, 30, 37, 30, 67), id="L-12-M27"),
        pytest.param("M30", (33, 38, 33, 40, 33, 75), id="L-12-M30"),
        pytest.param("M36", (39, 44, 39, 46, 39, 90), id="L-12-M36"),
    ],
)
def test_metric_holes(name: str, holes: tuple[float, ...]) -> None:
    assert tuple(size(A325M, name).holes.values()) == holes


@pytest.mark.parametrize(
    ("name", "standard", "oversized", "short_slot", "long_slot"),
    [
        # EN 1090-2:2018 Table 11 [mm]: d and the nominal clearance
        pytest.param("M12", 13, 15, 16, 30, id="L-13-M12"),
        pytest.param("M16", 18, 20, 22, 40, id="L-13-M16"),
        pytest.param("M20", 22, 24, 26, 50, id="L-13-M20"),
        pytest.param("M22", 24, 26, 28, 55, id="L-13-M22"),
        pytest.param("M24", 26, 30, 32, 60, id="L-13-M24"),
        pytest.param("M27", 30, 35, 37, 67.5, id="L-13-M27"),
        pytest.param("M30", 33, 38, 40, 75, id="L-13-M30"),
        pytest.param("M36", 39, 44, 46, 90, id="L-13-M36"),
    ],
)
def test_european_holes(
    name: str, standard: float, oversized: float, short_slot: float, long_slot: float
) -> None:
    holes = size("EN 14399 HR 8.8", name).holes
    assert holes == {
        "standard": standard,
        "oversized": oversized,
        "short-slot-width": standard,
        "short-slot-length": short_slot,
        "long-slot-width": standard,
        "long-slot-length": long_slot,
    }


@pytest.mark.parametrize(
    ("name", "inches"),
    [
        # RCSC Table C-2.2 [in]: to be added to the grip
        pytest.param(name, inches, id=f"L-16-{name}")
        for name, inches in zip(
            INCH_SIZES[:7], (0.6875, 0.875, 1, 1.125, 1.25, 1.5, 1.625), strict=True
        )
    ],
)
def test_grip_allowance(name: str, inches: float) -> None:
    assert size(A325, name).grip_allowance == pytest.approx(inches * INCH)


@pytest.mark.parametrize(
    ("name", "flats", "head", "nut", "thread", "washer"),
    [
        # ASME B18.2.6 and ASTM F436 [in], as in AISC Manual Table 7-14
        pytest.param("3/4 in", 1.25, 15 / 32, 47 / 64, 1.375, 1.46875, id="B18.2.6-3/4"),
        pytest.param("7/8 in", 1.4375, 35 / 64, 55 / 64, 1.5, 1.75, id="B18.2.6-7/8"),
        pytest.param("1 in", 1.625, 39 / 64, 63 / 64, 1.75, 2.0, id="B18.2.6-1"),
    ],
)
def test_hardware(  # noqa: PLR0917 - one column of the table each
    name: str, flats: float, head: float, nut: float, thread: float, washer: float
) -> None:
    found = size(A490, name)
    assert found.nut_width / INCH == pytest.approx(flats)
    assert found.head_height / INCH == pytest.approx(head)
    assert found.nut_height / INCH == pytest.approx(nut)
    assert found.thread_length(4.0 * INCH) == pytest.approx(thread * INCH)
    assert found.washer_diameter / INCH == pytest.approx(washer)


@pytest.mark.parametrize(
    ("product", "name", "length", "thread"),
    [
        # EN 14399-3:2015 and EN 14399-4:2015, reference length b [mm]
        pytest.param("EN 14399 HR 8.8", "M20", 125.0, 46.0, id="HR-M20-short"),
        pytest.param("EN 14399 HR 8.8", "M20", 130.0, 52.0, id="HR-M20-long"),
        pytest.param("EN 14399 HR 10.9", "M24", 100.0, 54.0, id="HR-M24"),
        pytest.param("EN 14399 HV 10.9", "M24", 100.0, 39.0, id="HV-M24"),
        # ASTM A325M, ASME B18.2.3.7M: up to and above 100 mm
        pytest.param(A325M, "M24", 100.0, 41.0, id="A325M-M24-short"),
        pytest.param(A325M, "M24", 110.0, 48.0, id="A325M-M24-long"),
    ],
)
def test_thread_length(product: str, name: str, length: float, thread: float) -> None:
    assert size(product, name).thread_length(length) == thread


@pytest.mark.parametrize(
    ("name", "socket", "tightening", "entering"),
    [
        # AISC Manual, entering and tightening clearances, aligned bolts [in]
        pytest.param("3/4 in", 2.25, 1.25, 0.75, id="7-15-3/4"),
        pytest.param("7/8 in", 2.5, 1.375, 0.875, id="7-15-7/8"),
        pytest.param("1 in", 2.625, 1.4375, 0.9375, id="7-15-1"),
        pytest.param("1-1/8 in", 2.875, 1.5625, 1.0625, id="7-15-1-1/8"),
    ],
)
def test_wrench_clearance(name: str, socket: float, tightening: float, entering: float) -> None:
    found = size(A325, name)
    assert found.socket_diameter == pytest.approx(socket * INCH)
    assert found.tightening_clearance == pytest.approx(tightening * INCH)
    assert found.entering_clearance == pytest.approx(entering * INCH)
