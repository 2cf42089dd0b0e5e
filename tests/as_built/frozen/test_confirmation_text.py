"""Our own output by the bench's provisions, frozen: guards change only."""

from __future__ import annotations

import dataclasses
from collections.abc import Callable
from pathlib import Path

import pytest
from pytest_regressions.file_regression import FileRegressionFixture

from jacketcheck.as_built import Confirmation, confirm, read_as_built
from jacketcheck.host import Host
from jacketcheck.inputs import InputFile
from jacketcheck.render.confirm_records import confirmation_csv, confirmation_json
from jacketcheck.render.confirm_table import confirmation_text
from jacketcheck.render.text_style import TextStyle

RECORD = Path(__file__).parents[1] / "willow_weir_built.toml"


def steady(confirmation: Confirmation) -> Confirmation:
    """Without what changes with every release."""
    plugins = tuple(dataclasses.replace(one, version="0") for one in confirmation.report.plugins)
    report = dataclasses.replace(confirmation.report, version="(version)", plugins=plugins)
    return dataclasses.replace(confirmation, report=report)


@pytest.fixture
def confirmation(repair: InputFile, host: Host) -> Confirmation:
    """The record as written."""
    return steady(confirm(repair, read_as_built(RECORD), host=host, provisions=["bench"]))


@pytest.mark.parametrize("style", ["text", "markdown"])
def test_text(
    file_regression: FileRegressionFixture, confirmation: Confirmation, style: TextStyle
) -> None:
    text = confirmation_text(confirmation, system="us", style=style)
    file_regression.check(text, extension=".txt" if style == "text" else ".md", encoding="utf-8")


def test_json(file_regression: FileRegressionFixture, confirmation: Confirmation) -> None:
    file_regression.check(confirmation_json(confirmation), extension=".json", encoding="utf-8")


def test_csv(file_regression: FileRegressionFixture, confirmation: Confirmation) -> None:
    file_regression.check(confirmation_csv(confirmation), extension=".csv", encoding="utf-8")


def test_open_points(
    file_regression: FileRegressionFixture, confirmed: Callable[..., Confirmation]
) -> None:
    found = steady(
        confirmed(
            bolts={"length": "2 in", "count": 30},
            tightening={"rotation": None, "tension": ["36 kip", "40 kip"]},
            grout=None,
            record={"not_yet": ["grout"], "title": "Second visit"},
            sleeve={"diameters": ["41 in", "41 in"]},
        )
    )
    text = confirmation_text(found, system="si")
    file_regression.check(text, extension=".txt", encoding="utf-8")
