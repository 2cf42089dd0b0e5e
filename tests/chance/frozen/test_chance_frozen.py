"""Our own figures of the invented case, to notice when they change."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from pytest_regressions.data_regression import DataRegressionFixture

from jacketcheck.chance import chance_of_exceedance
from jacketcheck.chance.estimate import DEFAULTS
from jacketcheck.inputs import read_input
from jacketcheck.jacket import build_jacket

CASE = Path(__file__).parents[3] / "reference_cases" / "quarry-road-pier" / "repair.toml"


def test_quarry_road_pier(data_regression: DataRegressionFixture) -> None:
    settings = replace(DEFAULTS, samples=4096, bond_samples=256, section_samples=16, seed=1)
    result = chance_of_exceedance(build_jacket(read_input(CASE).base), settings=settings)
    data_regression.check(
        {
            "system": round(result.system.probability, 3),
            "limits": {
                row.id: {
                    "ratio at means": float(f"{row.ratio_at_means:.3g}"),
                    "exceeded": f"{row.exceeded}/{row.samples}",
                    "first order": None
                    if row.first_order_index is None
                    else round(row.first_order_index, 2),
                }
                for row in result.limits
            },
            "notes": list(result.notes),
        }
    )
