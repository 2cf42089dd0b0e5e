"""Bar sizes against the tables of the standards."""

from __future__ import annotations

import pytest

from jacketcheck.catalog import built_in_catalog

INCH = 25.4

# ASTM A615/A615M and A706/A706M Table 1: diameter [in], area [in2], area [mm2]
ASTM_BARS = [
    ("No. 3", 0.375, 0.11, 71),
    ("No. 4", 0.500, 0.20, 129),
    ("No. 5", 0.625, 0.31, 199),
    ("No. 6", 0.750, 0.44, 284),
    ("No. 7", 0.875, 0.60, 387),
    ("No. 8", 1.000, 0.79, 510),
    ("No. 9", 1.128, 1.00, 645),
    ("No. 10", 1.270, 1.27, 819),
    ("No. 11", 1.410, 1.56, 1006),
    ("No. 14", 1.693, 2.25, 1452),
    ("No. 18", 2.257, 4.00, 2581),
]


@pytest.mark.parametrize(
    ("name", "inches"),
    [pytest.param(bar[0], bar[1], id=f"R-01-{bar[0]}") for bar in ASTM_BARS],
)
def test_astm_diameter(name: str, inches: float) -> None:
    assert built_in_catalog().bar(name).diameter == pytest.approx(inches * INCH, rel=1e-12)


@pytest.mark.parametrize(
    ("name", "square_inches"),
    [pytest.param(bar[0], bar[2], id=f"R-02-{bar[0]}") for bar in ASTM_BARS],
)
def test_astm_area(name: str, square_inches: float) -> None:
    assert built_in_catalog().bar(name).area == pytest.approx(square_inches * INCH**2, rel=1e-12)


@pytest.mark.parametrize(
    ("name", "square_millimetres"),
    [pytest.param(bar[0], bar[3], id=f"R-03-{bar[0]}") for bar in ASTM_BARS],
)
def test_astm_area_in_the_metric_edition(name: str, square_millimetres: float) -> None:
    # printed to the nearest mm2, from areas that are themselves rounded
    assert built_in_catalog().bar(name).area == pytest.approx(square_millimetres, abs=1.1)


@pytest.mark.parametrize(
    ("name", "area"),
    [
        # EN 10080:2005, nominal cross-sectional areas, printed to a tenth
        pytest.param("EN 8", 50.3, id="R-04-8"),
        pytest.param("EN 10", 78.5, id="R-04-10"),
        pytest.param("EN 12", 113.1, id="R-04-12"),
        pytest.param("EN 16", 201.1, id="R-04-16"),
        pytest.param("EN 20", 314.2, id="R-04-20"),
        pytest.param("EN 25", 490.9, id="R-04-25"),
        pytest.param("EN 28", 615.8, id="R-04-28"),
        pytest.param("EN 32", 804.2, id="R-04-32"),
        pytest.param("EN 40", 1256.6, id="R-04-40"),
    ],
)
def test_european_area(name: str, area: float) -> None:
    assert built_in_catalog().bar(name).area == pytest.approx(area, abs=0.05)


@pytest.mark.parametrize(
    ("name", "diameter", "area"),
    [
        # CSA G30.18
        pytest.param("10M", 11.3, 100.0, id="R-05-10M"),
        pytest.param("15M", 16.0, 200.0, id="R-05-15M"),
        pytest.param("20M", 19.5, 300.0, id="R-05-20M"),
        pytest.param("25M", 25.2, 500.0, id="R-05-25M"),
        pytest.param("30M", 29.9, 700.0, id="R-05-30M"),
        pytest.param("35M", 35.7, 1000.0, id="R-05-35M"),
    ],
)
def test_canadian_bar(name: str, diameter: float, area: float) -> None:
    bar = built_in_catalog().bar(name)
    assert (bar.diameter, bar.area) == (diameter, area)
