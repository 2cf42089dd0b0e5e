"""Our own sweep over the invented case, to notice when it changes."""

from __future__ import annotations

from pytest_regressions.data_regression import DataRegressionFixture

from jacketcheck.sweep.run import sweep
from tests.support.jackets import host
from tests.support.sized_designs import file_with


def test_thickness_of_the_sleeve(data_regression: DataRegressionFixture) -> None:
    report = sweep(file_with(""), ["sleeve.thickness=1/4 in:3/4 in:1/8 in"], host=host())
    ratios = report.ratios
    rows = zip(
        report.plan.column(0),
        report.verdicts,
        ratios.governing.tolist(),
        ratios.governing_ratio.tolist(),
        strict=True,
    )
    data_regression.check(
        {
            f"{value:g} mm": {
                "verdict": verdict,
                "governed by": ratios.rows[row].limit_state,
                "ratio": float(f"{ratio:.3g}"),
            }
            for value, verdict, row, ratio in rows
        }
    )
