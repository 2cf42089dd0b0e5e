"""One report in both forms that all tests read."""

from __future__ import annotations

import pytest

from jacketcheck.render.report_blocks import report_blocks
from jacketcheck.render.report_html import report_html
from jacketcheck.render.report_markdown import report_markdown
from tests.support.drawn_runs import case_text, run_of
from tests.support.written_report import Written


@pytest.fixture(scope="session")
def written() -> Written:
    """The reference case with all its variants, in US customary units."""
    run, repair = run_of(case_text())
    blocks = report_blocks(run, repair, system="us", date="2031-05-04")
    return Written(
        run, repair, blocks, report_html(blocks), report_markdown(blocks, folder="figures")
    )
