"""Threads, washers and the like of bolt products against printed tables."""

from __future__ import annotations

import pytest

from jacketcheck.catalog import built_in_catalog
from jacketcheck.mechanics._customary_units import INCH, KSI
from jacketcheck.mechanics.bolt_installation import unthreaded_length

CATALOG = built_in_catalog()


@pytest.mark.parametrize(
    ("size", "length", "body"),
    [
        ("1/2 in", 1.5, 0.31),
        ("5/8 in", 2.25, 0.78),
        ("3/4 in", 2.0, 0.37),
        ("3/4 in", 4.5, 2.87),
        ("7/8 in", 2.5, 0.72),
        ("7/8 in", 3.0, 1.22),
        ("1 in", 2.5, 0.44),
        ("1 in", 4.0, 1.94),
        ("1-1/8 in", 3.0, 0.66),
        ("1-1/4 in", 3.5, 1.12),
        ("1-3/8 in", 4.0, 1.31),
        ("1-1/2 in", 3.5, 0.81),
    ],
)
def test_least_body_length_of_asme_b18_2_6(size: str, length: float, body: float) -> None:
    # ASME B18.2.6-2019, table of minimum body lengths, printed to 0.01 in (rounded down)
    bolt = CATALOG.bolt_product("A325").size(size)
    assert bolt.transition_length is not None
    shank = unthreaded_length(
        length * INCH,
        thread_length=float(bolt.thread_length(length * INCH)),
        transition_length=bolt.transition_length,
    )
    assert float(shank) / INCH == pytest.approx(body, abs=0.0101)


@pytest.mark.parametrize(
    ("size", "length", "shank", "grip"),
    [
        ("M12", 35, 6.75, 12.0),
        ("M16", 45, 11.0, 17.0),
        ("M20", 60, 19.5, 27.0),
        ("M22", 60, 18.5, 26.0),
        ("M24", 75, 27.0, 36.0),
        ("M27", 80, 30.0, 39.0),
        ("M30", 80, 25.5, 36.0),
    ],
)
def test_shank_and_thread_of_en_14399_4(
    size: str, length: float, shank: float, grip: float
) -> None:
    # EN 14399-4, table of l_s (least) and l_g (largest), exact
    bolt = CATALOG.bolt_product("HV 10.9").size(size)
    thread = float(bolt.thread_length(length))
    assert bolt.transition_length is not None
    assert length - thread == pytest.approx(grip)
    full = unthreaded_length(length, thread_length=thread, transition_length=bolt.transition_length)
    assert float(full) == pytest.approx(shank)


@pytest.mark.parametrize(
    ("length", "shortest"), [(35, 33.75), (50, 48.75), (55, 53.5), (80, 78.5), (85, 83.25)]
)
def test_least_length_of_en_14399_4(length: float, shortest: float) -> None:
    # EN 14399-4, column of the least length, exact
    product = CATALOG.bolt_product("HV 10.9")
    below = next(amount for longest, amount in product.length_tolerances if length <= longest)
    assert length - below == pytest.approx(shortest)


def test_threads_of_hr_bolts_run_out_over_12_mm() -> None:
    # EN 1090-2:2008, 8.2.2 note: the shank of an M20 bolt may be shorter by up to 12 mm
    assert CATALOG.bolt_product("HR 8.8").size("M20").transition_length == pytest.approx(
        12.0, abs=0.6
    )


@pytest.mark.parametrize(
    ("product", "strongest"), [("A490", 173 * KSI), ("F2280", 173 * KSI), ("A490M", 1210.0)]
)
def test_largest_tensile_strength(product: str, strongest: float) -> None:
    # ASTM F3125/F3125M: 150 to 173 ksi, 1040 to 1210 MPa
    rules = CATALOG.bolt_product(product).rules
    assert rules is not None
    assert rules.max_tensile_strength == pytest.approx(strongest)


@pytest.mark.parametrize(
    ("product", "word"),
    [("A325", "the engineer agrees"), ("A490", "never"), ("F1852", "never"), ("HR 10.9", "scrap")],
)
def test_reuse(product: str, word: str) -> None:
    # RCSC 2014, 2.3.3: uncoated A325 only, if the engineer agrees; EN 1090-2: none
    rules = CATALOG.bolt_product(product).rules
    assert rules is not None
    assert word in rules.reuse


@pytest.mark.parametrize(
    "name",
    [
        pytest.param("EN 14399 HR 10.9", id="L-19-EN"),
        pytest.param("ASTM F3125 A490M", id="L-19-RCSC"),
    ],
)
def test_the_range_of_torque_coefficients_holds_a_tested_one(name: str) -> None:
    # GB/T 1231: lots of 10.9 bolts are delivered with a mean coefficient from 0.110 to 0.150; what
    # may come must lie within what the schedule tells the crew to expect
    rules = CATALOG.bolt_product(name).rules
    assert rules is not None
    assert rules.torque_coefficients is not None
    low, high = rules.torque_coefficients
    assert low <= 0.110
    assert high >= 0.150
