"""What governs each variant of the reference case and what follows from it; guards change only."""

from __future__ import annotations

from pathlib import Path

import pytest
from pytest_regressions.data_regression import DataRegressionFixture

from jacketcheck.api import check
from jacketcheck.report import CheckReport
from jacketcheck.results import Status
from tests.cli.conftest import CASE

SLIPS = '"AISC A", "AASHTO A"'


@pytest.fixture(scope="module")
def reports(tmp_path_factory: pytest.TempPathFactory) -> dict[str, CheckReport]:
    """The reference case, and the same with mill scale at the seams."""
    path: Path = tmp_path_factory.mktemp("mill-scale") / "repair.toml"
    text = CASE.read_text("utf-8")
    assert '"AISC B", "AASHTO B"' in text
    path.write_text(text.replace('"AISC B", "AASHTO B"', SLIPS), "utf-8")
    return {"as it is": check(CASE), "mill scale": check(path, variants=["chipped"])}


def test_causes(reports: dict[str, CheckReport], data_regression: DataRegressionFixture) -> None:
    data_regression.check(
        {
            f"{name}: {table.variant}": {
                "verdict": table.status.value,
                "governing": table.governing.limit_state,
                "exceeds": {
                    f"{row.limit_state}; {row.location}; {row.clause}": sorted(
                        {cause.limit_state for cause in table.causes_of(row)}
                    )
                    for row in table.results
                    if row.status is Status.EXCEEDS
                },
            }
            for name, report in reports.items()
            for table in report.tables
        }
    )
