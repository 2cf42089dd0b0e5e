"""Our own search over the invented case, to notice when it changes."""

from __future__ import annotations

from pytest_regressions.data_regression import DataRegressionFixture

from tests.support.sized_designs import sized

BOUNDS = """
    [sizing.sleeve]
    thickness = { least = "3/8 in", most = "3/4 in" }
    [sizing.bolts]
    columns = [2, 3]
    [sizing.added_bars]
    count = { least = 16, most = 20, step = 2 }
    size = ["No. 8", "No. 9"]
    """


def test_quarry_road_pier(data_regression: DataRegressionFixture) -> None:
    report = sized(BOUNDS)
    data_regression.check(
        {
            "fates": {fate.name: count for fate, count in report.fates.items()},
            "front": [
                {
                    "values": {a.path: one.values[a.path] for a in report.varied},
                    "steel kg": float(f"{one.costs.steel_mass:.4g}"),
                    "bolts": one.costs.bolt_count,
                    "hours": float(f"{one.costs.field_hours:.4g}"),
                    "governing": one.governing.limit_state,
                    "ratio": float(f"{float(one.governing.ratio):.3g}"),
                    "cheaper": one.proof.cheaper,
                }
                for one in report.front
            ],
        }
    )
