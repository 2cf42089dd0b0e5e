"""Our own output, frozen: guards change only."""

from __future__ import annotations

import dataclasses

import pytest
from pytest_regressions.file_regression import FileRegressionFixture

from jacketcheck.render.shop_files import drawing_words, quantities_csv
from jacketcheck.render.shop_table import shop_text
from jacketcheck.shop import ShopPackage
from jacketcheck.units import DisplaySystem


@pytest.fixture
def steady(package: ShopPackage) -> ShopPackage:
    """The package without what changes with every release or edit of the file."""
    return dataclasses.replace(package, version="(version)", digest="0" * 64)


@pytest.mark.parametrize("system", ["us", "si"])
def test_table(
    file_regression: FileRegressionFixture, steady: ShopPackage, system: DisplaySystem
) -> None:
    text = shop_text(steady, system=system, written=["half-shell.dxf"])
    file_regression.check(text, extension=".txt", encoding="utf-8")


def test_quantities(file_regression: FileRegressionFixture, steady: ShopPackage) -> None:
    text = quantities_csv(steady, system="si")
    file_regression.check(text, extension=".csv", encoding="utf-8")


def test_words(file_regression: FileRegressionFixture, steady: ShopPackage) -> None:
    text = "\n".join(
        "\n".join(drawing_words(steady, one, system="us")) + "\n" for one in steady.patterns
    )
    file_regression.check(text, extension=".txt", encoding="utf-8")
