"""Assembly rules: each product has its own, and they refuse what cannot be right."""

from __future__ import annotations

import dataclasses
import math
from typing import Any

import pytest

from jacketcheck.catalog import built_in_catalog
from jacketcheck.catalog.assembly_rules import built_in_assembly_rules
from jacketcheck.catalog.installation_rules import InstallationRules
from jacketcheck.errors import CatalogError

CATALOG = built_in_catalog()


@pytest.mark.parametrize("name", list(CATALOG.bolts))
def test_every_product_names_its_parts(name: str) -> None:
    rules = CATALOG.bolts[name].rules
    assert rules is not None
    assert rules.name == name
    assert rules.standard == ("EN 1090-2" if name.startswith("EN") else "RCSC")
    for field in ("torque_coefficient_low", "torque_coefficient_high", "reuse", "protrusion"):
        assert rules.source_of(field) != rules.source


@pytest.mark.parametrize("name", list(CATALOG.bolts))
def test_every_size_says_how_its_thread_runs_out(name: str) -> None:
    for size in CATALOG.bolts[name].sizes.values():
        assert size.transition_length is not None
        assert size.transition_length >= 2.0 * size.thread_pitch


@pytest.mark.parametrize(
    ("changes", "message"),
    [
        ({"nut": " "}, "do not name nut"),
        ({"reuse": ""}, "do not name reuse"),
        ({"torque_coefficient_low": math.nan}, "has torque_coefficient_low"),
        ({"torque_coefficient_high": 0.01}, "upside down"),
        ({"protrusion": -1.0}, "below zero"),
        ({"clear_threads": ((math.inf, math.nan),)}, "below zero"),
        ({"clear_threads": ((8.0, 1.0), (4.0, 1.0))}, "do not ascend"),
        ({"torque_coefficient_low": None}, "half of a torque coefficient range"),
        ({"standard": "XX 1"}, "neither of RCSC, EN 1090-2, and not brought"),
        ({"installation": InstallationRules(name="XX 1", source="a", washers=())}, "but bring"),
        ({"max_tensile_strength": math.inf}, "has max_tensile_strength"),
        ({"source": ""}, "has no source"),
    ],
)
def test_malformed_rules(changes: dict[str, Any], message: str) -> None:
    with pytest.raises(CatalogError, match=message):
        dataclasses.replace(built_in_assembly_rules("ASTM F3125 A325"), **changes)


def test_length_tolerances_out_of_order() -> None:
    product = CATALOG.bolts["EN 14399 HR 8.8"]
    with pytest.raises(CatalogError, match="length_tolerances out of order"):
        dataclasses.replace(product, length_tolerances=((50.0, 1.0), (50.0, 2.0)))
