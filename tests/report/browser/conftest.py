"""A headless Chromium, where one is installed."""

from __future__ import annotations

import os
import shutil
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, sync_playwright

from jacketcheck.render.report_blocks import report_blocks
from jacketcheck.render.report_html import report_html
from tests.support.drawn_runs import case_text, run_of
from tests.support.written_report import Written

NAMES = ("chromium", "chromium-browser", "google-chrome")


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """The browser that JACKETCHECK_BROWSER names, or the first that is found."""
    found = (shutil.which(name) for name in NAMES)
    path = os.environ.get("JACKETCHECK_BROWSER") or next(filter(None, found), None)
    if path is None:
        pytest.skip(f"no browser is installed: looked for {', '.join(NAMES)}")
    with sync_playwright() as playwright:
        started = playwright.chromium.launch(executable_path=path, args=["--no-sandbox"])
        yield started
        started.close()


@pytest.fixture(scope="session")
def report_file(written: Written, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The report as a file."""
    path = tmp_path_factory.mktemp("report") / "report.html"
    path.write_text(written.html, "utf-8")
    return path


@pytest.fixture(scope="session")
def short_file(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A report on one variant that exceeds limits: every kind of element, and fewer of each."""
    run, repair = run_of(case_text())
    table = next(one for one in run.tables if one.variant == "thin, snug bolts")
    short = replace(run, tables=(run.tables[0], replace(table, results=table.results[:12])))
    path = tmp_path_factory.mktemp("report") / "short.html"
    path.write_text(report_html(report_blocks(short, repair, system="si")), "utf-8")
    return path


@pytest.fixture
def opened(browser: Browser, report_file: Path) -> Iterator[Page]:
    """The report in a new window."""
    context = browser.new_context(viewport={"width": 1100, "height": 900}, offline=True)
    page = context.new_page()
    page.goto(report_file.as_uri())
    yield page
    context.close()
