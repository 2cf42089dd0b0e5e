"""Bounds of a search: every form that may be written, and what is wrong with the others."""

from __future__ import annotations

from typing import Any

import pytest
from pydantic import ValidationError

from jacketcheck.errors import InputError
from jacketcheck.inputs import read_text
from jacketcheck.inputs.sizing import FieldWork, Sizing
from jacketcheck.inputs.tried import Tried


def sizing(**tables: Any) -> Sizing:
    return Sizing.model_validate(tables)


@pytest.mark.parametrize(
    ("written", "tried"),
    [
        ("10 mm", Tried(values=(10.0,))),
        (["3/8 in", "10 mm"], Tried(values=(9.525, 10.0))),
        ({"least": "8 mm", "most": "1 in"}, Tried(least=8.0, most=25.4)),
        ({"least": "8 mm", "most": "8 mm", "step": "1 mm"}, Tried((), 8.0, 8.0, 1.0)),
    ],
)
def test_thicknesses(written: object, tried: Tried) -> None:
    assert sizing(sleeve={"thickness": written}).sleeve.thickness == tried


@pytest.mark.parametrize(
    ("written", "tried"),
    [
        (8, Tried(values=(8.0,))),
        ([8, 12], Tried(values=(8.0, 12.0))),
        ({"least": 8, "most": 24}, Tried(least=8.0, most=24.0, step=1.0)),
        ({"least": 8, "most": 24, "step": 4}, Tried(least=8.0, most=24.0, step=4.0)),
    ],
)
def test_counts(written: object, tried: Tried) -> None:
    assert sizing(bolts={"columns": written}).bolts.columns == tried


def test_multiples_of_the_bolt_diameter() -> None:
    found = sizing(bolts={"pitch": {"diameters": [3, 4.5]}, "gauge": {"diameters": 3}}).bolts
    assert found.pitch == Tried(diameters=(3.0, 4.5))
    assert found.gauge == Tried(diameters=(3.0,))


def test_one_name_needs_no_brackets() -> None:
    assert sizing(sleeve={"steel": "ASTM A36"}).sleeve.steel == ("ASTM A36",)
    assert sizing(repair={"surface": "chipped"}).repair.surface == ("chipped",)


@pytest.mark.parametrize(
    ("written", "messages"),
    [
        ([], ["is an empty list; must name at least one value"]),
        (["8 mm", "8 mm"], ['entry 2 = "8 mm": is there twice']),
        (["8 mm", "9 kN"], ["entry 2 = \"9 kN\": unit 'kN' has the wrong dimension"]),
        (["x", "400 mm"], ['entry 1 = "x": is not a number', 'entry 2 = "400 mm": is outside']),
        ({"least": "8 mm"}, ["most is missing"]),
        ({"least": "9 mm", "most": "8 mm"}, ["least is above most"]),
        ({"from": "8 mm", "most": "9 mm"}, ['"from": must be a list or { least, most }']),
        ({"least": "1 mm", "most": "150 mm", "step": "0.1 mm"}, ["has more than 500 values"]),
        ({"least": "8 mm", "most": "9 mm", "step": "0 mm"}, ['step = "0 mm": is zero']),
        ({"diameters": [3]}, ['"diameters": must be a list or { least, most }']),
    ],
)
def test_thicknesses_that_cannot_be_used(written: object, messages: list[str]) -> None:
    with pytest.raises(ValidationError) as caught:
        sizing(sleeve={"thickness": written})
    [problem] = caught.value.errors()
    assert problem["loc"] == ("sleeve", "thickness")
    for message in messages:
        assert message in problem["msg"]


def test_other_bounds_that_cannot_be_used() -> None:
    with pytest.raises(ValidationError) as caught:
        sizing(
            bolts={"columns": [1.5, 0], "pitch": {"least": "3 in", "most": "4 in"}},
            added_bars={"count": {"least": 8, "most": 24, "step": 0.5}, "left_out": "no"},
            repair={"surface": ["chipped", "blasted"]},
            field_work={"hours_per_bolt": -1.0, "hours_per_hole": float("nan")},
            sleve={},
        )
    places = {".".join(map(str, one["loc"])): one["msg"] for one in caught.value.errors()}
    assert set(places) == {
        "bolts.columns",
        "bolts.pitch",
        "added_bars.count",
        "added_bars.left_out",
        "repair.surface.1",
        "field_work.hours_per_bolt",
        "field_work.hours_per_hole",
        "sleve",
    }
    assert "entry 1 = 1.5: must be a whole number; entry 2 = 0: is zero" in places["bolts.columns"]
    assert places["bolts.pitch"] == "step is missing"


def test_problems_of_the_bounds_are_told_with_all_others(repair_text: str) -> None:
    text = repair_text.replace('thickness = ["1/4 in", "3/8 in"]', "thickness = [1, 2]")
    text = text.replace("[sizing.repair]", '[sizing.repair]\nhight = "1 m"')
    with pytest.raises(InputError) as caught:
        read_text(text)
    found = {one.path: one.message for one in caught.value.problems}
    assert set(found) == {"sizing.sleeve.thickness", "sizing.repair.hight"}
    assert found["sizing.repair.hight"].endswith("did you mean height?")


def test_names_are_looked_up_in_the_catalogue(repair_text: str) -> None:
    text = repair_text.replace('steel = ["ASTM A36", ', 'steel = ["ASTM A63", ')
    with pytest.raises(InputError, match=r'sizing.sleeve.steel.1 = "ASTM A63"'):
        read_text(text)


def test_default_hours_are_what_the_documentation_says() -> None:
    hours = FieldWork()
    assert (hours.hours_per_bolt, hours.hours_per_hole) == (0.15, 0.5)
    assert (hours.hours_per_metre_drilled, hours.hours_per_metre_chipped) == (1.0, 2.0)
