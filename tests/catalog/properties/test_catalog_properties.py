"""What must hold for any thickness, length or spelling."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from jacketcheck.catalog import BoltProduct, PlateSteel, built_in_catalog

CATALOG = built_in_catalog()
PLATES = st.sampled_from(list(CATALOG.plate_steels.values()))
PRODUCTS = st.sampled_from(list(CATALOG.bolts.values()))
SHARES = st.floats(0.001, 1.0)


@given(steel=PLATES, shares=st.lists(SHARES, min_size=1, max_size=8))
def test_thicker_plates_are_never_stronger(steel: PlateSteel, shares: list[float]) -> None:
    thickness = np.sort(shares) * steel.max_thickness
    found = steel.strengths(thickness)
    assert np.all(np.diff(found.yield_strength) <= 0.0)
    assert np.all(np.diff(found.tensile_strength) <= 0.0)
    assert np.all(np.less(found.yield_strength, found.tensile_strength))
    one_by_one = [steel.strengths(float(value)) for value in thickness]
    assert np.array_equal(
        found.yield_strength, np.array([each.yield_strength for each in one_by_one])
    )


@given(product=PRODUCTS)
def test_stocked_lengths_ascend_by_steps_to_the_longest(product: BoltProduct) -> None:
    lengths = product.stocked_lengths
    steps = [step for _, step in product.length_increments]
    assert np.all(np.diff(lengths) >= min(steps) * (1.0 - 1e-9))
    assert np.all(np.diff(lengths) <= max(steps) * (1.0 + 1e-9))
    assert lengths[-1] == pytest.approx(product.length_increments[-1][0])


@given(
    data=st.data(),
    name=st.sampled_from(
        [*CATALOG.bars, *(a for bar in CATALOG.bars.values() for a in bar.aliases)]
    ),
)
def test_names_are_found_in_any_case_and_with_any_blanks(data: st.DataObject, name: str) -> None:
    blanks = st.text(" \t", min_size=1, max_size=3)
    spelled = "".join(data.draw(blanks) if letter == " " else letter for letter in name)
    for written in (spelled, spelled.upper(), spelled.lower(), f"  {spelled} "):
        assert CATALOG.bar(written) is CATALOG.bar(name)
