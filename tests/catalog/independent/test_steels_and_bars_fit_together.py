"""Bars and steels against geometry, unit conversion by a general library, and code factors."""

from __future__ import annotations

import math

import pint
import pytest
from structuralcodes.codes import ec2_2004

from jacketcheck.catalog import Bar, RebarSteel, built_in_catalog

CATALOG = built_in_catalog()


@pytest.mark.parametrize("bar", CATALOG.bars.values(), ids=lambda bar: bar.name)
def test_area_is_that_of_a_circle(bar: Bar) -> None:
    """Printed areas are rounded to 0.01 in², Canadian diameters to 0.1 mm."""
    circle = math.pi * bar.diameter**2 / 4.0
    assert bar.area == pytest.approx(circle, abs=0.005 * 25.4**2 + 0.05 * bar.diameter)


@pytest.mark.parametrize("ductility_class", ["B", "C"])
def test_european_bars_by_another_library(ductility_class: str) -> None:
    """EN 1992-1-1 Annex C by an independent implementation; factors of EN 1998-2 Annex E."""
    steel = CATALOG.rebar_steel(f"B500{ductility_class}")
    properties = ec2_2004.reinforcement_duct_props(fyk=500, ductility_class=ductility_class)
    assert steel.yield_strength == 500.0
    assert steel.tensile_strength == pytest.approx(properties["ftk"])
    assert steel.ultimate_strain_at(32.0) == pytest.approx(properties["epsuk"])
    assert steel.expected_yield == pytest.approx(1.15 * 500.0)
    assert steel.expected_tensile == pytest.approx(1.20 * properties["ftk"])


def test_units_are_converted_as_by_pint() -> None:
    units: pint.UnitRegistry[float] = pint.UnitRegistry()
    bolt = CATALOG.bolt_product("A325").size("7/8 in")
    bar = CATALOG.bar("No. 11")
    steel = CATALOG.plate_steel("A572 Gr 50")
    assert bolt.pretension == pytest.approx(units.Quantity(39, "kip").to("newton").magnitude)
    assert bar.area == pytest.approx(units.Quantity(1.56, "inch**2").to("mm**2").magnitude)
    assert steel.strengths(10.0).yield_strength == pytest.approx(
        units.Quantity(50, "ksi").to("MPa").magnitude
    )
    assert steel.max_thickness == pytest.approx(units.Quantity(4, "inch").to("mm").magnitude)


@pytest.mark.parametrize("steel", CATALOG.rebar_steels.values(), ids=lambda steel: steel.name)
def test_stress_strain_points_are_in_order(steel: RebarSteel) -> None:
    assert steel.yield_strength < steel.tensile_strength
    assert steel.yield_strength < steel.expected_yield < steel.expected_tensile
    yield_strain = steel.expected_yield / steel.elastic_modulus
    for _, hardening in steel.hardening_strain:
        assert yield_strain < hardening
        for _, ultimate in steel.ultimate_strain:
            assert hardening < ultimate
