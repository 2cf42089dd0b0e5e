"""Our own output, frozen: guards change only."""

from __future__ import annotations

import dataclasses
from pathlib import Path

import pytest
from pytest_regressions.file_regression import FileRegressionFixture

from jacketcheck.host.loading import load_host
from jacketcheck.inputs import read_input
from jacketcheck.render.schedule_records import schedule_csv, schedule_json
from jacketcheck.render.schedule_table import schedule_text
from jacketcheck.schedule import ScheduleReport, schedules_of


def report(path: Path, *variants: str) -> ScheduleReport:
    found = schedules_of(read_input(path), host=load_host(), variants=variants)
    return dataclasses.replace(found, version="(version)")


@pytest.mark.parametrize("variant", ["wrench", "snug only", "HV combined"])
def test_text(file_regression: FileRegressionFixture, repair_path: Path, variant: str) -> None:
    system = "si" if variant == "HV combined" else "us"
    text = schedule_text(report(repair_path, variant), system=system)  # type: ignore[arg-type] # words from a parametrised test
    file_regression.check(text, extension=".txt", encoding="utf-8")


def test_markdown(file_regression: FileRegressionFixture, repair_path: Path) -> None:
    text = schedule_text(report(repair_path, "slotted A490"), system="us", style="markdown")
    file_regression.check(text, extension=".md", encoding="utf-8")


def test_csv(file_regression: FileRegressionFixture, repair_path: Path) -> None:
    text = schedule_csv(report(repair_path, "indicators"))
    file_regression.check(text, extension=".csv", encoding="utf-8")


def test_json(file_regression: FileRegressionFixture, repair_path: Path) -> None:
    text = schedule_json(report(repair_path, "turns"))
    file_regression.check(text, extension=".json", encoding="utf-8")
