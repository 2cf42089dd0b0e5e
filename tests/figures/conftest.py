"""One run whose figures all tests look at."""

from __future__ import annotations

import pytest

from jacketcheck.jacket.jacket import Jacket
from jacketcheck.report import CheckReport, VariantResults
from tests.support.drawn_runs import EXTREMES, case_text, run_of


@pytest.fixture(scope="session")
def report() -> CheckReport:
    """Every variant of the reference case, and variants that stretch layouts."""
    return run_of(case_text() + EXTREMES)[0]


@pytest.fixture(scope="session")
def table(report: CheckReport) -> VariantResults:
    """The reference case without overrides."""
    return report.tables[0]


@pytest.fixture(scope="session")
def drawn_jacket(table: VariantResults) -> Jacket:
    """Its jacket."""
    return table.jacket
