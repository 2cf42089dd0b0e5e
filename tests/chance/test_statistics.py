"""The data files: complete, within bounds, with sources; and used."""

from __future__ import annotations

import pytest

from jacketcheck.catalog.catalog import built_in_catalog
from jacketcheck.chance.distributions import LARGEST_VARIATION, Marginal
from jacketcheck.chance.events import events_of
from jacketcheck.chance.realisation import realise
from jacketcheck.chance.statistics import (
    _entries,
    published_correlations,
    published_statistics,
)
from jacketcheck.chance.variables import NAMES
from jacketcheck.host.loading import load_host
from jacketcheck.jacket import Jacket
from jacketcheck.jacket.designs import leaves
from jacketcheck.mechanics._arrays import Real

FACTS = ("tightening", "bolt product", "faying class", "steel")
TURNED = {"tightening": "turn-of-nut"}


def test_every_variable_has_an_entry_and_no_other() -> None:
    assert set(_entries()) == set(NAMES)


@pytest.mark.parametrize("name", NAMES)
def test_entry(name: str) -> None:
    entry = _entries()[name]
    for case in [entry, *entry.get("cases", [])]:
        merged = {**entry, **case}
        assert merged["source"].strip()
        one_of = {"coefficient_of_variation", "standard_deviation"} & set(merged)
        assert len(one_of) == 1
        if "coefficient_of_variation" in merged:
            assert merged["coefficient_of_variation"] <= LARGEST_VARIATION[merged["distribution"]]
            Marginal(
                merged["distribution"], merged["mean_ratio"], merged["coefficient_of_variation"]
            )
        assert set(case.get("when", {})) <= set(FACTS)
    assert entry["title"] == entry["title"].strip()
    assert entry["relative_to"]


@pytest.mark.parametrize("name", NAMES)
def test_every_variable_changes_the_jacket_or_a_capacity(pier: Jacket, name: str) -> None:
    ones: dict[str, Real] = dict.fromkeys(NAMES, 1.0)
    changed = dict(leaves(realise(pier, {**ones, name: 1.2}))) != dict(leaves(realise(pier, ones)))
    models = {event.model for event in events_of(load_host(installed=False), ["us"]).asked}
    # friction on the face counts in its own row, and for what it hands over to the sections
    twice = name == "interface-friction"
    assert changed + (name in models) == 1 + twice


def test_correlations_are_between_variables() -> None:
    pairs = [frozenset(one.between) for one in published_correlations()]
    assert len(set(pairs)) == len(pairs)
    for one in published_correlations():
        assert set(one.between) <= set(NAMES)
        assert 0.0 < one.coefficient < 1.0
        assert one.source


@pytest.mark.parametrize(
    ("name", "facts", "mean", "variation"),
    [
        ("bolt-pretension", TURNED | {"bolt product": "ASTM F3125 A325"}, 1.35, 0.10),
        ("bolt-pretension", TURNED | {"bolt product": "ASTM F3125 A490"}, 1.26, 0.10),
        ("bolt-pretension", {"tightening": "calibrated-wrench"}, 1.13, 0.10),
        ("bolt-pretension", TURNED | {"bolt product": "EN 14399 HV 10.9"}, 1.14, 0.08),
        ("slip-coefficient", {"faying class": "AASHTO A"}, 1.0, 0.21),
        ("sleeve-yield", {"steel": "EN S355"}, 1.15, 0.07),
        ("splice-yield", {"steel": "ASTM A709 Grade 50W"}, 1.1, 0.105),
        ("sleeve-yield", {"steel": "somebody's own"}, 1.1, 0.105),
    ],
)
def test_first_case_that_holds_counts(
    name: str, facts: dict[str, str], mean: float, variation: float
) -> None:
    found = published_statistics(name, facts)
    assert (found.mean_ratio, found.coefficient_of_variation) == (mean, variation)


def test_standard_deviation_belongs_to_a_value() -> None:
    found = published_statistics("column-bar-yield", {})
    assert found.variation(500.0) == pytest.approx(30.0 / 500.0)


def test_cases_name_what_the_catalogue_has() -> None:
    """Every word of a case is the beginning of a catalogue name, so that none is a slip."""
    catalog = built_in_catalog()
    known = {
        "bolt product": tuple(catalog.bolts),
        "faying class": tuple(catalog.faying_classes),
        "steel": tuple(catalog.plate_steels),
        "tightening": ("turn-of-nut", "calibrated-wrench", "twist-off"),
    }
    for entry in _entries().values():
        for case in entry.get("cases", []):
            for key, words in case["when"].items():
                for word in words:
                    assert any(name.startswith(word) for name in known[key]), word
