"""A user's own slip coefficient, with the report of its test, in the place of a class."""

from __future__ import annotations

import pytest

from jacketcheck.errors import InputError
from jacketcheck.limit_states.seam_slip import seam_slip
from tests.support.jackets import built

_TEST = (
    'bolts.faying_class = ["AASHTO B"]\n'
    'bolts.slip_tests = [{ code = "AISC", slip_coefficient = 0.42, '
    'surface = "blast-cleaned, zinc silicate 50 µm", report = "Lab Q, 7/2024" }]'
)


def test_the_tested_coefficient_counts_for_its_code() -> None:
    by_class, tested = (seam_slip.evaluate(built(changes)) for changes in ("", _TEST))
    aisc, aashto = (
        float(new.capacity) / float(old.capacity) for new, old in zip(tested, by_class, strict=True)
    )
    # class B is 0.50 by both
    assert aisc == pytest.approx(0.42 / 0.50, rel=1e-12)
    assert aashto == pytest.approx(1.0, rel=1e-12)
    coefficient = next(one for one in tested[0].steps if one.value == 0.42)
    assert coefficient.source == "slip test, Lab Q, 7/2024"


def test_a_tested_surface_may_stand_alone() -> None:
    alone = _TEST.replace('["AASHTO B"]', "[]")
    (only,) = built(alone).bolts.faying_classes
    assert (only.name, only.slip_coefficient) == ("AISC tested", 0.42)


@pytest.mark.parametrize(
    ("changes", "message"),
    [
        (_TEST.replace("AASHTO B", "AISC B"), "has AISC B already"),
        (_TEST.replace('code = "AISC"', 'code = "Elsewhere"'), "must be one of AASHTO, AISC"),
        (_TEST.replace("0.42", "0.95"), "slip_coefficient"),
        (_TEST.replace("Lab Q, 7/2024", ""), "report"),
        ("bolts.faying_class = []", "is missing"),
    ],
)
def test_what_cannot_be_is_said(changes: str, message: str) -> None:
    with pytest.raises(InputError, match=message):
        built(changes)
