"""Listing what is installed, and what an input may name."""

from __future__ import annotations

import pytest

from jacketcheck.catalog import built_in_catalog
from tests.support.cli_runs import Run

KINDS = ("bars", "rebar-steels", "bolts", "plate-steels", "faying-classes", "bond-models")


def test_plug_ins_with_version_provisions_and_limit_states(run: Run) -> None:
    from importlib.metadata import version

    ran = run("plugins")
    assert ran.code == 0
    head = ran.out.splitlines()
    assert head[0].split()[:3] == ["plug-in", "distribution", "version"]
    assert head[2].split()[:4] == ["built-in", "jacketcheck", version("jacketcheck"), "us"]
    assert head[2].endswith("ok")
    assert "Provisions us\n" in ran.out
    assert "seam-slip              Slip of the seam bolts" in ran.out
    assert ran.out.endswith("Hooks: version 1. Switch a plug-in off with --without NAME.\n")


def test_the_catalogue_in_short_names_everything(run: Run) -> None:
    ran = run("catalog")
    assert ran.code == 0
    catalog = built_in_catalog()
    for kind in KINDS:
        assert f"{kind}: " in ran.out
        for name in getattr(catalog, kind.replace("-", "_")):
            assert name in ran.out


@pytest.mark.parametrize("kind", KINDS)
def test_a_kind_with_figures_and_sources(run: Run, kind: str) -> None:
    ran = run("catalog", kind)
    assert ran.code == 0
    assert "source" in ran.out
    entries = getattr(built_in_catalog(), kind.replace("-", "_"))
    for entry in entries.values():
        assert entry.name in ran.out
        # long sources are wrapped
        assert entry.source.split()[0] in ran.out


def test_units_of_a_kind(run: Run) -> None:
    # ASTM A615/A615M Table 1: a No. 9 bar has 1.128 in, 28.65 mm
    metric = run("catalog", "bars").out
    customary = run("catalog", "bars", "--units", "us").out
    assert "diameter [mm]" in metric
    assert "diameter [in]" in customary
    assert [line.split()[2] for line in metric.splitlines() if line.startswith("No. 9 ")] == [
        "28.65"
    ]
    assert [line.split()[2] for line in customary.splitlines() if line.startswith("No. 9 ")] == [
        "1.128"
    ]


def test_one_entry_with_the_source_of_each_figure(run: Run) -> None:
    ran = run("catalog", "bolts", "a325", "--units", "us")
    assert ran.code == 0
    assert ran.out.startswith("ASTM F3125 A325\n")
    assert "bolt product, from built-in" in ran.out
    # AISC 360-22 Tables J3.1 and J3.3: 7/8 in, group 120: 39 kip, hole 15/16 in
    size = ran.out.partition("\n7/8 in\n")[2].partition("\n1 in\n")[0]
    lines = {line[:22].strip(): line.split() for line in size.splitlines()}
    assert lines["pretension"][1:3] == ["39.00", "kip"]
    assert lines["holes: standard"][2:4] == ["0.9375", "in"]
    assert "AISC 360-22 Table J3.3" in size
    assert "length increments, bolts up to 6 in" in ran.out


def test_bands_are_told_one_by_one(run: Run) -> None:
    ran = run("catalog", "plate-steels", "EN S355")
    # EN 10025-2 Table 7
    lines = [line.split() for line in ran.out.splitlines() if line.startswith("yield strength of")]
    assert [(line[6], line[8]) for line in lines[:3]] == [
        ("16", "355.0"),
        ("40", "345.0"),
        ("63", "335.0"),
    ]


@pytest.mark.parametrize(
    ("arguments", "told"),
    [
        (("bars", "No. 12"), 'name = "No. 12": is not known; did you mean No. 1'),
        (("faying-classes", "B"), 'name = "B": needs its code: AISC B or AASHTO B'),
        (("nails",), "invalid choice: 'nails'"),
    ],
)
def test_what_is_not_there(run: Run, arguments: tuple[str, ...], told: str) -> None:
    ran = run("catalog", *arguments)
    assert ran.code == 2
    assert ran.out == ""
    assert told in ran.err
