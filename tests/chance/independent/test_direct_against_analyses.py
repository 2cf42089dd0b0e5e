"""Slip and hoop yield by comparison, sample by sample against the equilibrium of each."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest

from jacketcheck.chance.array_counting import count_by_arrays
from jacketcheck.chance.direct import DIRECT, exceeded
from jacketcheck.chance.estimate import model_at_means
from jacketcheck.chance.evaluation import array_ratios
from jacketcheck.chance.limits import COVERED
from jacketcheck.inputs import RepairInput
from jacketcheck.jacket import build_jacket

LIMITS = [limit for limit in COVERED if limit.id in DIRECT]
CHANGES: dict[str, dict[str, dict[str, Any]]] = {
    "as written": {},
    "thin sleeve": {"sleeve": {"thickness": 5.0}},
    "strained more": {"actions": {"axial_strain": 0.008}},
    "up to yield of the bars": {"judgement": {"bar_target": "yield"}},
    "one bolt column": {"bolts": {"columns": 1}},
    "plates outside only": {"splice": {"sides": "outside", "inside_thickness": None}},
}


@pytest.mark.parametrize("case", CHANGES)
def test_same_samples_exceed(pier_input: RepairInput, case: str) -> None:
    tables = {
        name: getattr(pier_input, name).model_copy(update=fields)
        for name, fields in CHANGES[case].items()
    }
    jacket = build_jacket(pier_input.model_copy(update=tables))
    model = model_at_means(jacket)
    assert model.ring is not None
    scattering = model.scattering(LIMITS)
    points = 1.5 * np.random.default_rng(8).standard_normal((len(scattering.variables), 20_000))
    factors = model.factors(scattering, points)
    failures: dict[str, str] = {}
    ratios = array_ratios(
        LIMITS, jacket, factors, size=20_000, strain=model.strain, failures=failures
    )
    found, outside = exceeded(model.ring, jacket, factors, model.strain.checked(factors).value)
    assert not failures
    assert not np.any(outside)
    for name, ratio in ratios.items():
        # at a ratio of 1 but for rounding either answer is right
        clear = np.abs(ratio - 1.0) > 1e-9
        np.testing.assert_array_equal(found[name][clear], (ratio > 1.0)[clear])


def test_some_of_every_limit_state_exceed(pier_input: RepairInput) -> None:
    """The comparison above is no comparison of zeros."""
    thin = pier_input.sleeve.model_copy(update={"thickness": 5.0})
    jacket = build_jacket(pier_input.model_copy(update={"sleeve": thin}))
    counts = count_by_arrays(LIMITS, model_at_means(jacket), effort="closed-form")
    assert sum(counts.exceeded["hoop-dilation"]) > 100
