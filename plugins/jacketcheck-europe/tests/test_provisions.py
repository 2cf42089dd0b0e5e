"""What the plug-in brings, and how it stands beside the built-in provisions."""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path

import pytest
from jacketcheck_europe.limit_states import limit_states
from jacketcheck_europe.partial_factors import ACCIDENTAL, RECOMMENDED

from jacketcheck.api import check
from jacketcheck.cli import main
from jacketcheck.conformance import host_with
from jacketcheck.engine import evaluate
from jacketcheck.host import Host, load_host
from jacketcheck.plugin import Jacket, LimitState, Provisions, hookimpl

_NEW = {"jacket-shear", "lap-clamping"}
_README = Path(__file__).parents[1] / "README.md"


def test_loads_by_its_entry_point(host: Host) -> None:
    (plugin,) = [one for one in host.plugins if one.distribution == "jacketcheck-europe"]
    assert plugin.name == "europe"
    assert plugin.provisions == ("europe",)
    assert plugin.problems == ()


def test_can_be_switched_off() -> None:
    host = load_host(without=["europe"])
    assert "europe" not in host.provisions


def test_replaces_by_the_same_id_and_inherits_the_rest(host: Host) -> None:
    own = {one.id for one in limit_states()}
    built_in = {one.limit_state.id for one in host.limit_states("us")}
    assert own - built_in == _NEW
    found = {one.limit_state.id: one.plugin.name for one in host.limit_states("europe")}
    assert set(found) == built_in | _NEW
    assert {name for name, plugin in found.items() if plugin == "europe"} == own
    assert host.omitted("europe") == {}


def test_every_row_names_an_edition(host: Host, jacket: Jacket) -> None:
    rows = evaluate(jacket, host=host, provisions="europe", only={one.id for one in limit_states()})
    assert len(rows) > len(limit_states())
    for row in rows:
        assert row.origin == "jacketcheck-europe"
        assert re.search(r"(EN \d+(-\d)*:|\b)(19|20)\d\d", row.clause), row.clause
        foreign = re.search(r"AISC|AASHTO|ACI|RCSC", row.clause)
        assert foreign is None, row.clause


def test_resistances_say_whose_partial_factors_they_have(host: Host, jacket: Jacket) -> None:
    geometry = {"bolt-spacing", "bolt-edge-distance", "lap-clamping", "hinge-hoops"}
    inherited = "Displacement at which bars buckle"
    rows = evaluate(jacket, host=host, provisions="europe", only={one.id for one in limit_states()})
    for row in rows:
        if row.limit_state not in geometry and row.title != inherited:
            assert RECOMMENDED.note in row.notes, row.title


def test_codes_side_by_side(
    repair_path: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    text = repair_path.read_text("utf-8")
    classes = 'faying_class = ["AISC B", "AASHTO B", "EN 1090 B"]'
    assert 'faying_class = "EN 1090 A"' in text
    repair = tmp_path / "repair.toml"
    repair.write_text(text.replace('faying_class = "EN 1090 A"', classes), "utf-8")
    main(["check", str(repair), "--provisions", "us,europe", "--variant", "preloaded"])
    printed = capsys.readouterr().out
    assert "AISC 360-22 J3.9" in printed
    assert "EN 1993-1-8:2005 3.9.1" in printed
    report = check(repair, provisions=("us", "europe"), variants=["preloaded"])
    us, europe = report.tables
    slip = {
        row.clause.split(" ")[0]: float(row.capacity)
        for table in (us, europe)
        for row in table.results
        if row.limit_state == "seam-slip"
    }
    # 0.5 with D_u = 1.13 by AISC, 0.5 without by AASHTO, 0.4/1.25 by EN
    assert slip["AISC"] / slip["AASHTO"] == pytest.approx(1.13, rel=1e-9)
    assert slip["EN"] / slip["AASHTO"] == pytest.approx(0.4 / 1.25 / 0.5, rel=1e-9)


def test_the_same_check_has_the_same_title_in_both_sets(host: Host, jacket: Jacket) -> None:
    """Else a comparison shows two lines with one empty cell each."""
    shared = {"seam-block-shear", "sleeve-bearing", "splice-bearing", "grout-interface"}
    catalog = host.catalog
    names = ("AISC B", "AASHTO B", "EN 1090 A")
    classes = tuple(catalog.faying_class(name) for name in names)
    both = replace(jacket, bolts=replace(jacket.bolts, faying_classes=classes))
    us, europe = (
        {
            (row.limit_state, row.title, row.location)
            for row in evaluate(both, host=host, provisions=provisions, only=shared)
        }
        for provisions in ("us", "europe")
    )
    assert us == europe


def test_a_national_annex_changes_one_place(jacket: Jacket) -> None:
    own = replace(RECOMMENDED, label="of an invented annex", section=1.1, slip=1.5)
    found = {one.id: one for one in limit_states("northland", own)}
    base = {one.id: one for one in limit_states()}
    for name, ratio in (("sleeve-gross-yield", 1.1), ("seam-slip", 1.5 / 1.25)):
        (row,), (old,) = found[name].evaluate(jacket), base[name].evaluate(jacket)
        assert float(old.capacity) / float(row.capacity) == pytest.approx(ratio, rel=1e-12)
        assert "of an invented annex" in row.notes[-1]
    assert {one.provisions for one in found.values()} == {"northland"}


def test_accidental_factors_are_the_smaller_ones(jacket: Jacket) -> None:
    (recommended,) = _of("grout-interface", limit_states()).evaluate(jacket)
    (accidental,) = _of("grout-interface", limit_states(factors=ACCIDENTAL)).evaluate(jacket)
    assert float(accidental.capacity) >= float(recommended.capacity)
    assert "accidental" in accidental.notes[-1]


def test_a_plug_in_for_a_country_inherits_these(jacket: Jacket) -> None:
    own = replace(RECOMMENDED, label="of an invented annex", slip=1.35)

    class Northland:
        @hookimpl
        def jacketcheck_provisions(self) -> list[Provisions]:
            return [Provisions("northland", "Invented annex 2020", inherits="europe")]

        @hookimpl
        def jacketcheck_limit_states(self) -> tuple[LimitState, ...]:
            return limit_states("northland", own)

    import jacketcheck_europe

    host = host_with(jacketcheck_europe, Northland())
    assert host.problems == ()
    rows = evaluate(jacket, host=host, provisions="northland", only={"seam-slip", "bar-bond"})
    assert {row.limit_state for row in rows} == {"seam-slip", "bar-bond"}


def test_the_readme_names_every_limit_state() -> None:
    text = _README.read_text("utf-8")
    missing = [one.id for one in limit_states() if f"`{one.id}`" not in text]
    assert missing == []


def test_the_example_of_the_readme_runs(jacket: Jacket) -> None:
    (code,) = re.findall(r"```python\n(.*?)```", _README.read_text("utf-8"), flags=re.DOTALL)
    namespace: dict[str, object] = {"__name__": "northland"}
    exec(compile(code, str(_README), "exec"), namespace)  # noqa: S102 - our own README

    class Module:
        """The example's hooks as they stand in a module."""

    for name, value in namespace.items():
        if name.startswith("jacketcheck_"):
            setattr(Module, name, staticmethod(value))  # type: ignore[arg-type] # whatever is to be answered
    import jacketcheck_europe

    host = host_with(jacketcheck_europe, Module())
    assert host.problems == ()
    rows = evaluate(jacket, host=host, provisions="northland", only={"sleeve-gross-yield"})
    assert [row.provisions for row in rows] == ["northland"]


def _of(name: str, states: tuple[LimitState, ...]) -> LimitState:
    return next(one for one in states if one.id == name)
