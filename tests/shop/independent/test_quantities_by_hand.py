"""Amounts worked out by hand in inches and pounds, from the input alone."""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import Any

import pytest

from jacketcheck.catalog import built_in_catalog
from jacketcheck.errors import DomainError
from jacketcheck.jacket import Jacket
from jacketcheck.schedule.assembly import assembly_of
from jacketcheck.shop import ShopPackage, flat_patterns, quantities
from jacketcheck.shop.quantities import assembly_mass

CATALOG = built_in_catalog()
POUND = 0.45359237
POUND_PER_CUBIC_INCH = 490.0 / 1728.0
"""Density of steel in the AISC Manual; 7850 kg/m³ is 490.06 lb/ft³."""
CUBIC_INCH = 25.4**3


def value(package: ShopPackage, item: str) -> float:
    (found,) = (one.value for one in package.quantities if one.item == item)
    return found


def test_mass_of_a_half_shell(package: ShopPackage) -> None:
    length = math.pi * 62.5 / 2.0 - 1.0
    area = length * 52.0 - 40 * math.pi * 1.125**2 / 4.0
    mass = area * 0.5 * POUND_PER_CUBIC_INCH
    found = value(package, "half-shell: mass of one") / POUND
    assert found == pytest.approx(mass, rel=2e-4)
    assert found == pytest.approx(710.9, abs=0.2)
    assert value(package, "half-shell: mass of all") == pytest.approx(2.0 * found * POUND)


def test_masses_add_up(package: ShopPackage) -> None:
    parts = sum(
        value(package, f"{name}: mass of all")
        for name in ("half-shell", "splice plate, outside", "splice plate, inside")
    )
    assert value(package, "plates: mass of all") == pytest.approx(parts)
    bare = value(package, "lifting mass of each half, bare")
    assert bare == pytest.approx(value(package, "half-shell: mass of one"))
    loaded = bare + value(package, "splice plate, outside: mass of all")
    loaded += value(package, "splice plate, inside: mass of all")
    loaded += value(package, "bolts installed: mass") / 2.0
    assert value(package, "lifting mass of one half, at most") == pytest.approx(loaded)


def test_volume_of_grout(package: ShopPackage) -> None:
    # annulus 62 over 48 in, 54 in high; 16 No. 9 bars (1.00 in²) of 50 in; adhesive in the footing
    annulus = math.pi / 4.0 * (62.0**2 - 48.0**2) * 54.0
    net = annulus - 16 * 1.0 * 50.0
    assert value(package, "grout: annulus") / CUBIC_INCH == pytest.approx(annulus, rel=1e-9)
    order = value(package, "grout: to order") / CUBIC_INCH
    assert order == pytest.approx(1.1 * net, rel=1e-9)
    assert "grout: holes in the footing" not in {one.item for one in package.quantities}


def test_grout_in_the_footing(make_jacket: Callable[..., Jacket]) -> None:
    # without adhesive the holes of 1-1/2 in, 36 in deep, are grouted around the bars
    jacket = make_jacket(added_bars={"bond_strength": None})
    found = {
        one.item: one.value for one in quantities(jacket, flat_patterns(jacket), catalog=CATALOG)
    }
    holes = 16 * (math.pi / 4.0 * 1.5**2 - 1.0) * 36.0
    assert found["grout: holes in the footing"] / CUBIC_INCH == pytest.approx(holes, rel=1e-9)


def test_mass_of_a_bolt_assembly(make_jacket: Callable[..., Jacket]) -> None:
    # published for 100 heavy hex structural bolts of 1 in with nuts: about 1.3 to 1.5 lb each at
    # 2-3/4 in; by hand: shank 2.160, head 1.393, nut 1.477, washer 0.368 in³ x 0.2836
    assembly = assembly_of(make_jacket(), CATALOG)
    hexagon = math.sqrt(3.0) / 2.0 * 1.625**2
    shank = math.pi / 4.0
    volume = shank * 2.75 + hexagon * 39 / 64 + (hexagon - shank) * 63 / 64
    volume += math.pi / 4.0 * (4.0 - 1.0) * 5 / 32
    mass = assembly_mass(assembly)
    assert mass is not None
    assert mass / POUND == pytest.approx(volume * POUND_PER_CUBIC_INCH, rel=1e-3)


def test_faying_area(package: ShopPackage) -> None:
    # two shells with two strips on two faces, and one face of each plate; by the patterns' widths
    shell, outside, inside = package.patterns
    strip = shell.strips[0].end - shell.strips[0].start
    area = 2 * 2 * 2 * strip * 52 * 25.4
    area += 2 * (outside.length + inside.length) * 52 * 25.4
    assert value(package, "faying surface to prepare") == pytest.approx(area)


def test_bars_and_bolts(package: ShopPackage) -> None:
    assert value(package, "bolts installed") == 2 * 2 * 10 * 2
    assert value(package, "added bars: length of one") == pytest.approx((50 + 36) * 25.4)
    assert value(package, "added bars: mass") / POUND == pytest.approx(
        16 * 1.0 * 86 * POUND_PER_CUBIC_INCH, rel=1e-3
    )


def test_without_bars_and_inside_plates(make_jacket: Callable[..., Jacket]) -> None:
    jacket = make_jacket(splice={"sides": "outside", "inside_thickness": None})
    patterns = flat_patterns(jacket)
    assert [pattern.mark for pattern in patterns] == ["half-shell", "splice-outside"]
    assert patterns[0].strips[0].faces == "outside"


def test_a_bolt_that_nobody_stocks_has_no_mass(make_jacket: Callable[..., Jacket]) -> None:
    jacket = make_jacket(
        sleeve={"thickness": 100.0}, splice={"sides": "outside", "thickness": 90.0,
                                             "inside_thickness": None},
    )  # fmt: skip
    found = quantities(jacket, flat_patterns(jacket), catalog=CATALOG)
    assert "bolts installed: mass" not in {one.item for one in found}


@pytest.mark.parametrize("waste", [-1.0, 101.0, math.nan])
def test_waste_that_makes_no_sense(make_jacket: Callable[..., Any], waste: float) -> None:
    jacket = make_jacket()
    with pytest.raises(DomainError, match="waste_percent"):
        quantities(jacket, flat_patterns(jacket), catalog=CATALOG, waste_percent=waste)
