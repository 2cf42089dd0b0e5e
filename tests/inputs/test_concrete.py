"""Strengths of concrete and grout as people write them."""

from __future__ import annotations

import copy
import pickle
from typing import Any, Final

import pytest
from pydantic import TypeAdapter, ValidationError

from jacketcheck.as_built.changed import changed_jacket
from jacketcheck.as_built.records import Change
from jacketcheck.catalog import built_in_catalog
from jacketcheck.errors import InputError
from jacketcheck.inputs import read_text
from jacketcheck.inputs.concrete import ConcreteClass, strength_basis
from jacketcheck.jacket.build import build_jacket
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.starter import starter_text

READER: Final = TypeAdapter[Any](ConcreteClass)
STARTER: Final = starter_text("si").replace('specimen = "cylinder"\n', "")

# IS 456:2000 6.1: M30 is 30 MPa of 150 mm cubes; EN 206 Table 12: C30/37 is 30 MPa of cylinders and
# 37 MPa of cubes; the factors 0.8 (IS 516:1959 5.6.1) and 35/45 (EN 1992-1-1 Table 3.1)
WRITTEN: Final = {
    "30 MPa": 30.0,
    "30 MPa cylinder": 30.0,
    "M30": 24.0,
    "M 25": 20.0,
    "C30/37": 30.0,
    "C 35/45": 35.0,
    "C28/35": 28.0,
    "30 MPa cube": 24.0,
    "30 MPa, cubes": 24.0,
    "30 MPa (cubes)": 24.0,
    "45 MPa cube": 35.0,
    "5 ksi cylinder": 34.4738,
}


@pytest.mark.parametrize(("text", "cylinders"), WRITTEN.items())
def test_cylinder_strength_of_what_is_written(text: str, cylinders: float) -> None:
    assert READER.validate_python(text) == pytest.approx(cylinders, rel=1e-5)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("C30", "does not say whether cylinders or cubes"),
        ("B25", "does not say whether cylinders or cubes"),
        ("C37/30", "cylinders come first"),
        ("C30/300", "cylinders come first"),
        ("M500", "outside the plausible range"),
        ("120 MPa cube", "beyond the strengths of cubes"),
        ("30 MPa prism", "unit"),
        ("M", "is not a number"),
        (30, "has no unit"),
        (True, "is not a text"),
    ],
)
def test_what_cannot_be_taken(text: object, told: str) -> None:
    with pytest.raises(ValidationError, match=told):
        READER.validate_python(text)


def test_copies_keep_what_was_written() -> None:
    strength = READER.validate_python("M30")
    for one in (copy.deepcopy(strength), pickle.loads(pickle.dumps(strength))):  # noqa: S301 - our own
        assert one == 24.0
        assert strength_basis(one).startswith("M30, 30 MPa of 150 mm cubes × 0.8")
    assert strength_basis(24.0) == "cylinder"


def jacket_of(*replaced: tuple[str, str]) -> Jacket:
    text = STARTER
    for old, new in replaced:
        assert old in text
        text = text.replace(old, new)
    return build_jacket(read_text(text).base)


def strengths() -> tuple[str, str]:
    """The starter's lines on the column's concrete and the grout."""
    lines = STARTER.splitlines()
    concrete = next(line for line in lines if line.startswith("concrete_strength ="))
    grout = next(line for line in lines if line.startswith("strength ="))
    return concrete, grout


def test_every_strength_says_its_specimen() -> None:
    concrete, grout = strengths()
    jacket = jacket_of(
        (concrete, 'concrete_strength = "M30"'),
        (grout, 'strength = "60 MPa"\nspecimen = "cube-50"'),
    )
    assert float(jacket.column.concrete.specified) == 24.0
    assert "150 mm cubes × 0.8" in jacket.column.concrete.source_of("specified")
    assert jacket.footing is not None
    assert "150 mm cubes × 0.8" in jacket.footing.source_of("concrete_strength")
    # 60 MPa × 0.95 = 57 MPa of 150 mm cubes, between C45/55 and C50/60: 45 + 2/5 × 5
    assert float(jacket.grout.strength) == pytest.approx(47.0)
    assert "of cube-50: as cubes of 50 mm" in jacket.grout.source_of("strength")
    assert jacket_of().grout.source_of("strength") == "input grout.strength, cylinder"


@pytest.mark.parametrize(
    ("specimen", "cylinders"),
    # C45/55 and C50/60 by straight lines; below 150 mm × 0.95
    [("cylinder", 60.0), ("cube-150", 50.0), ("cube-100", 47.0), ("prism-40", 47.0)],
)
def test_grout_by_specimen(specimen: str, cylinders: float) -> None:
    _, grout = strengths()
    jacket = jacket_of((grout, f'strength = "60 MPa"\nspecimen = "{specimen}"'))
    assert float(jacket.grout.strength) == pytest.approx(cylinders)


def test_cubes_beyond_the_table_are_refused() -> None:
    _, grout = strengths()
    with pytest.raises(InputError, match=r"grout\.strength: cube_strength"):
        jacket_of((grout, 'strength = "140 MPa"\nspecimen = "cube-50"'))


def test_a_measured_strength_of_cylinders_is_not_converted_again() -> None:
    _, grout = strengths()
    repair = read_text(STARTER.replace(grout, 'strength = "60 MPa"\nspecimen = "cube-50"')).base
    change = Change({"grout.strength": 40.0, "grout.specimen": "cylinder"})
    assert float(changed_jacket(repair, change, built_in_catalog()).grout.strength) == 40.0
