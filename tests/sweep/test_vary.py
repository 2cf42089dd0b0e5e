"""What a sweep varies, as it is written."""

from __future__ import annotations

import pytest

from jacketcheck.errors import InputError
from jacketcheck.inputs import RepairInput
from jacketcheck.sweep.vary import Varied, read_varied
from tests.support.jackets import host
from tests.support.sized_designs import file_with


@pytest.fixture(scope="module")
def base() -> RepairInput:
    """The reference case."""
    return file_with("").base


def read(text: str, base: RepairInput) -> Varied:
    return read_varied(text, base, catalog=host().catalog)


@pytest.mark.parametrize(
    ("text", "values"),
    [
        pytest.param("sleeve.thickness=10 mm:20 mm:3", (10.0, 15.0, 20.0), id="count"),
        pytest.param("sleeve.thickness=10 mm:20 mm:5 mm", (10.0, 15.0, 20.0), id="step"),
        pytest.param("sleeve.thickness=20 mm:10 mm:5 mm", (20.0, 15.0, 10.0), id="downwards"),
        pytest.param(
            "sleeve.thickness=1/4 in:12.7 mm:1/8 in", (6.35, 9.525, 12.7), id="units mixed"
        ),
        pytest.param("sleeve.thickness = 1/2 in, 10 mm", (12.7, 10.0), id="list, in its order"),
        pytest.param("sleeve.thickness=3/8 in", (9.525,), id="one value"),
        pytest.param("bolts.columns=1:4", (1, 2, 3, 4), id="counts"),
        pytest.param("added_bars.count=10:20:5", (10, 15, 20), id="counts by step"),
        pytest.param("bolts.columns=3,1", (3, 1), id="list of counts"),
        pytest.param(
            "bolts.product=ASTM F3125 A325,ASTM F3125 A490",
            ("ASTM F3125 A325", "ASTM F3125 A490"),
            id="names of the catalogue",
        ),
        pytest.param("bolts.tightening=snug,turn-of-nut", ("snug", "turn-of-nut"), id="kinds"),
        pytest.param(
            "actions.axial_strain=0.002:0.004:0.001", (0.002, 0.003, 0.004), id="without unit"
        ),
        pytest.param("added_bars.breakout_precluded=true,false", (True, False), id="yes or no"),
        pytest.param("damage.1.height=4 in:8 in:2", (101.6, 203.2), id="entry of a list"),
    ],
)
def test_values(base: RepairInput, text: str, values: tuple[object, ...]) -> None:
    assert read(text, base).values == values


def test_what_varies_in_numbers_goes_in_one_array(base: RepairInput) -> None:
    assert read("sleeve.thickness=10 mm,12 mm", base).is_array
    assert read("added_bars.count=10,12", base).is_array
    assert not read("bolts.tightening=snug", base).is_array
    assert (read("bolts.columns=1:3", base).unit, read("bolts.pitch=4 in", base).unit) == (
        "1",
        "mm",
    )


@pytest.mark.parametrize(
    ("text", "told"),
    [
        pytest.param("sleeve.thickness", "must be PATH=START:STOP:COUNT", id="no values"),
        pytest.param("=3", "must be PATH=", id="no path"),
        pytest.param("sleeve.thick=1 in", "did you mean sleeve.thickness", id="near name"),
        pytest.param("sleeve=1 in", "is not a single value of the input", id="a table"),
        pytest.param("sleeve.thickness=1", "has no unit; must be a thickness from", id="no unit"),
        pytest.param(
            "sleeve.thickness=1 kg", "unit 'kg' has the wrong dimension", id="wrong dimension"
        ),
        pytest.param("sleeve.thickness=9 m", "must be a thickness from 1 mm", id="absurd"),
        pytest.param("sleeve.thickness=nan mm", "thickness", id="not a number"),
        pytest.param("sleeve.thickness=1 in:2 in", "must be START:STOP:COUNT, or", id="two parts"),
        pytest.param("sleeve.thickness=1 in:2 in:1", "must be from 2 to 100,000", id="one"),
        pytest.param(
            "sleeve.thickness=1/4 in:1 in:999999", "must be from 2 to 100,000", id="huge count"
        ),
        pytest.param(
            "sleeve.thickness=1/4 in:1 in:1/7 in",
            "does not come to its stop in steps of 1/7 in",
            id="missed stop",
        ),
        pytest.param(
            "sleeve.thickness=1/4 in:1 in:2 kg", "step \"2 kg\" unit 'kg'", id="step of mass"
        ),
        pytest.param(
            "sleeve.thickness=1/4 in:1 in:-1 mm", "must be above zero", id="negative step"
        ),
        pytest.param("sleeve.thickness=1/4 in:1 in:0 mm", "must be above zero", id="no step"),
        pytest.param("sleeve.thickness=1/4 in:1 in:1e-9 mm", "has more than 100,000", id="tiny"),
        pytest.param("sleeve.thickness=1 in:1 in:3", "starts where it stops", id="empty range"),
        pytest.param("sleeve.thickness=1 in,1 in", "twice", id="the same twice"),
        pytest.param("bolts.columns=1:4:2", "does not come to its stop in steps of 2", id="counts"),
        pytest.param("bolts.columns=1:4:0.5", "a whole number above zero", id="half counts"),
        pytest.param("bolts.columns=0:4", "must be at least 1", id="no column"),
        pytest.param("bolts.product=ASTM F3125 A326", "did you mean ASTM F3125 A325", id="no bolt"),
        pytest.param("bolts.tightening=hand", 'must be "snug"', id="unknown kind"),
    ],
)
def test_what_cannot_be_used_is_told(base: RepairInput, text: str, told: str) -> None:
    with pytest.raises(InputError) as caught:
        read(text, base)
    assert told in str(caught.value)


def test_every_value_that_cannot_be_used_is_told(base: RepairInput) -> None:
    with pytest.raises(InputError) as caught:
        read("sleeve.thickness=1,2 kg,10 mm", base)
    assert len(caught.value.problems) == 2
