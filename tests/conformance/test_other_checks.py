"""Checks of plug-ins, provisions, entries and bond models catch what they are for."""

from __future__ import annotations

import itertools
from collections.abc import Callable
from dataclasses import fields, replace
from typing import Any

import numpy as np
import pytest

from jacketcheck.catalog.entries import Entries
from jacketcheck.limit_state import LimitState
from jacketcheck.plugin import (
    BoltProduct,
    BondConditions,
    BondLaw,
    BondModel,
    Jacket,
    Provisions,
    Result,
    built_in_catalog,
)

Findings = Callable[..., list[str]]

CATALOG = built_in_catalog()
BAR = replace(CATALOG.bar("No. 9"), name="N 29", aliases=())
STEEL = replace(CATALOG.rebar_steel("EN B500B"), name="N 500", aliases=())
PLATE = replace(CATALOG.plate_steel("EN S355"), name="N 355", aliases=())
CLASS = replace(CATALOG.faying_class("AISC B"), code="North", aliases=())
BOLTS = replace(CATALOG.bolt_product("EN 14399 HR 8.8"), name="N 8.8", aliases=())
MODEL = replace(CATALOG.bond_model("MC2010"), name="N bond", aliases=())


def state(name: str, provisions: str = "north") -> LimitState:
    def evaluate(jacket: Jacket) -> list[Result]:
        return [Result("Row", "here", 1.0, jacket.sleeve.thickness, "mm", "North Code 1:2024 2.1")]

    return LimitState(name, name, provisions, evaluate)


def test_a_plug_in_that_brings_nothing(findings: Findings) -> None:
    (found,) = findings("loads")
    assert found == (
        "brings nothing; mark its functions with hookimpl and name them as in the hooks"
    )
    assert findings("loads", bars=[BAR]) == []


def test_a_plug_in_that_cannot_be_loaded_whole(findings: Findings) -> None:
    first, second = findings("loads", bars=[replace(BAR, name="No. 9")], limit_states=[3])
    assert first == (
        "catalogue: bar size 'No. 9' is taken already, by No. 9; mend it, or no check with these "
        "provisions can pass"
    )
    assert second.startswith("jacketcheck_limit_states: brought a int, not a LimitState; mend it")


def test_a_title_without_an_edition(findings: Findings) -> None:
    (found,) = findings("title_names_editions", provisions=[Provisions("north", "North Code")])
    assert found == "the title 'North Code' has no edition or year; add it to each code"


@pytest.mark.parametrize(
    ("entry", "told"),
    [
        (
            Provisions("north", "North Code 1:2024", "nobody"),
            "inherits from 'nobody', which is not known; known are north, us; load the plug-in",
        ),
        (
            Provisions("north", "North Code 1:2024", omits={"p-dleta": "no such rule"}),
            "omits p-dleta, which it does not inherit; inherited are added-bar-anchorage, ",
        ),
        (
            Provisions("north", "North Code 1:2024", omits={"own": "no such rule"}),
            "omits own, which it brings itself, so that it is never asked; take it out",
        ),
    ],
)
def test_provisions_that_lead_nowhere(findings: Findings, entry: Provisions, told: str) -> None:
    (found,) = findings("inherits_what_is_there", provisions=[entry], limit_states=[state("own")])
    assert found.startswith(told)


def test_what_is_omitted_and_inherited_is_fine(findings: Findings) -> None:
    entry = Provisions("north", "North Code 1:2024", omits={"p-delta": "no such rule"})
    for check in ("inherits_what_is_there", "every_row_is_there", "title_names_editions"):
        assert findings(check, provisions=[entry], limit_states=[state("own")]) == []


def test_a_cause_that_no_limit_state_is(findings: Findings) -> None:
    def follows(*causes: str) -> LimitState:
        def evaluate(jacket: Jacket) -> list[Result]:
            del jacket
            return [Result("Row", "", 1.0, 2.0, "1", "North 3", follows_from=causes)]

        return LimitState("own", "Own check", "north", evaluate)

    entry = Provisions("north", "North Code 1:2024")
    asked = {"provisions": [entry], "limit_states": [follows("seam-slipp", "seam-slip")]}
    (found,) = findings("follows_what_is_there", **asked)
    assert found == "own follows from seam-slipp, which is no limit state here; name one by its id"
    asked["limit_states"] = [follows("seam-slip")]
    assert findings("follows_what_is_there", **asked) == []


def test_a_limit_state_that_stands_twice(findings: Findings) -> None:
    entry = Provisions("north", "North Code 1:2024", inherits=None)
    first, second = findings(
        "every_row_is_there", provisions=[entry], limit_states=[state("own"), state("own")]
    )
    assert first.startswith("on 'metric': plug-in north (north under test), limit state own: id is")
    assert second.startswith("on 'customary': plug-in north ")


@pytest.mark.parametrize(
    ("name", "told"),
    [
        ("N  29", "'N  29' cannot be written in an input; use printable characters, single blanks"),
        (" N 29", "' N 29' cannot be written in an input; use printable characters, single blanks"),
        ("N" * 101, "'NNNNNNNN"),
    ],
)
def test_names_that_cannot_be_written(findings: Findings, name: str, told: str) -> None:
    (found,) = findings("found_by_every_name", bars=[replace(BAR, name=name)])
    assert found.startswith(told)


def test_a_class_that_is_not_found_by_its_name(findings: Findings) -> None:
    # written without its code a class is refused, and so is an alias that is just its letter
    (found,) = findings(
        "found_by_every_name", faying_classes=[replace(CLASS, aliases=("class B",))]
    )
    assert found.startswith(
        "faying class 'class B' needs its code: AISC B or AASHTO B or RCSC B or "
    )


@pytest.mark.parametrize(
    ("bar", "told"),
    [
        (
            replace(BAR, source="the catalogue"),
            "the source is 'the catalogue'; name standard, edition and table, or say \"common",
        ),
        (
            replace(BAR, sources={"aera": "ASTM A615/A615M-20"}),
            "gives a source for 'aera', which is none of its figures",
        ),
        (
            replace(BAR, sources={"area": "a friend"}),
            "the source of 'area' is 'a friend'; name standard, edition and table",
        ),
    ],
)
def test_sources_that_say_nothing(findings: Findings, bar: Any, told: str) -> None:
    (found,) = findings("figures_name_their_sources", bars=[bar])
    assert found.startswith(told)


def with_size(**changes: Any) -> BoltProduct:
    size = replace(BOLTS.size("M24"), **changes)
    return replace(BOLTS, sizes=Entries("bolt size", [size]))


def test_sources_of_a_size_are_looked_at(findings: Findings) -> None:
    bolts = [with_size(sources={"pretention": "EN 1090-2:2018"})]
    (found,) = findings("figures_name_their_sources", bolts=bolts)
    assert found == "M24: gives a source for 'pretention', which is none of its figures"


def holes(**changes: float) -> dict[str, float]:
    return {**BOLTS.size("M24").holes, **changes}


@pytest.mark.parametrize(
    ("hook", "record", "told"),
    [
        ("bars", replace(BAR, diameter=2.9), "diameter [mm] is 2.9, outside 4 to 75"),
        ("bars", replace(BAR, area=6.45), "area over that of a circle of the diameter is 0.0100"),
        ("rebar_steels", replace(STEEL, yield_strength=72.5), "yield_strength [MPa] is 72.5, out"),
        (
            "rebar_steels",
            replace(STEEL, expected_yield=400.0),
            "expected_yield over yield_strength is 0.8, outside 1 to 2",
        ),
        (
            "rebar_steels",
            replace(STEEL, hardening_strain=((50.0, 0.06),)),
            "hardening_strain of bars of 50 mm is not below their ultimate_strain",
        ),
        (
            "rebar_steels",
            replace(STEEL, ultimate_strain=((50.0, 5.0),)),
            "ultimate_strain of bars up to 50 mm is 5, outside 0.01 to 0.3",
        ),
        ("plate_steels", replace(PLATE, elastic_modulus=200.0), "elastic_modulus [MPa] is 200, ou"),
        ("plate_steels", replace(PLATE, expected_ratio=0.9), "expected_ratio is 0.9, outside 1 to"),
        (
            "plate_steels",
            replace(
                PLATE,
                bands=(
                    PLATE.bands[0]._replace(max_thickness=16.0, yield_strength=300.0),
                    PLATE.bands[0]._replace(max_thickness=40.0, yield_strength=350.0),
                ),
            ),
            "yield_strength grows beyond 16 mm",
        ),
        ("faying_classes", replace(CLASS, slip_coefficient=45.0), "slip_coefficient is 45, outsi"),
        ("bolts", replace(BOLTS, tensile_strength=116.0), "tensile_strength [MPa] is 116, outsi"),
        (
            "bolts",
            replace(BOLTS, shear_stress_included=490.0),
            "shear_stress_included exceeds shear_stress_excluded",
        ),
        ("bolts", with_size(pretension=198.0), "M24: pretension over tensile strength of the thre"),
        (
            "bolts",
            with_size(nut_width=4.1),
            "M24: nut_width over diameter is 0.170833, outside 1.3",
        ),
        ("bolts", with_size(holes=holes(oversized=25.0)), "M24: hole standard exceeds oversized"),
    ],
)
def test_figures_in_the_wrong_unit_or_order(
    findings: Findings, hook: str, record: Any, told: str
) -> None:
    found = findings("figures_are_plausible", **{hook: [record]})
    assert any(text.startswith(told) for text in found), found
    assert all(text.endswith("; check the figure and its unit") for text in found)


@pytest.mark.parametrize(
    "check",
    [
        "found_by_every_name",
        "figures_name_their_sources",
        "figures_are_plausible",
        "stands_in_a_jacket",
    ],
)
def test_sound_entries_pass(findings: Findings, check: str) -> None:
    found = findings(
        check,
        bars=[BAR],
        rebar_steels=[STEEL],
        plate_steels=[PLATE],
        faying_classes=[CLASS],
        bolts=[BOLTS],
    )
    assert found == []


def test_an_entry_that_no_jacket_can_be_made_with(findings: Findings) -> None:
    thin = replace(STEEL, ultimate_strain=((10.0, 0.05),))
    added, column = findings("stands_in_a_jacket", rebar_steels=[thin])
    assert added.startswith("added bars: added_bars.size")
    assert "is too large: N 500 has no figures for bars of 25 mm" in added
    assert column.startswith("column bars: column.bars.size")


Law = Callable[[BondConditions], BondLaw]


def scaled(law: BondLaw, factor: Any) -> BondLaw:
    return replace(
        law,
        peak_stress=np.multiply(law.peak_stress, factor),
        residual_stress=np.multiply(law.residual_stress, factor),
    )


def plain(bar: BondConditions) -> BondLaw:
    """A sound law: proportional to strength, growing with pressure, half of it unchipped."""
    chipped = bar.surface == "chipped"
    strength = np.multiply(0.2, bar.grout_strength if chipped else bar.concrete_strength)
    strength = strength + 0.1 * np.asarray(bar.confining_pressure)
    worn = 1.0 if chipped else np.subtract(0.9, bar.crack_width) * 0.5
    peak = strength * worn * (1.0 if bar.splitting_held else 0.7)
    return BondLaw(peak, 1.0, 2.0, 10.0, 0.4, 0.4 * peak)


BOND_CHECKS = [
    "gives_a_law",
    "same_law_twice",
    "one_bar_or_many",
    "chipped_is_never_weaker",
    "pressure_never_weakens",
    "strength_never_weakens",
    "damage_never_strengthens",
]


@pytest.mark.parametrize("check", BOND_CHECKS)
def test_a_sound_bond_model_passes(findings: Findings, check: str) -> None:
    assert findings(check, bond_models=[replace(MODEL, law=plain)]) == []


def refuse_unchipped(bar: BondConditions) -> BondLaw:
    if bar.surface == "unchipped":
        raise ValueError("chip it")
    return plain(bar)


def weaker_when_chipped(bar: BondConditions) -> BondLaw:
    return scaled(plain(bar), 0.1 if bar.surface == "chipped" else 1.0)


def weaker_under_pressure(bar: BondConditions) -> BondLaw:
    return scaled(plain(bar), 1.0 / (1.0 + np.square(bar.confining_pressure)))


def weaker_in_strong_grout(bar: BondConditions) -> BondLaw:
    return scaled(plain(bar), (55.0 / np.asarray(bar.grout_strength)) ** 2)


def stronger_when_cracked(bar: BondConditions) -> BondLaw:
    return scaled(plain(bar), 1.0 + 5.0 * np.asarray(bar.crack_width))


def weaker_when_held(bar: BondConditions) -> BondLaw:
    return scaled(plain(bar), 0.5 if bar.splitting_held else 1.0)


def stronger_without_cover(bar: BondConditions) -> BondLaw:
    return scaled(plain(bar), 55.0 / np.asarray(bar.cover))


def for_one_design(bar: BondConditions) -> BondLaw:
    return plain(replace(bar, confining_pressure=float(bar.confining_pressure)))


def of_the_first_design(bar: BondConditions) -> BondLaw:
    return plain(replace(bar, confining_pressure=float(np.ravel(bar.confining_pressure)[0])))


def by_chance() -> Law:
    calls = itertools.count(1)
    return lambda bar: scaled(plain(bar), float(next(calls)))


@pytest.mark.parametrize(
    ("check", "law", "told"),
    [
        (
            "gives_a_law",
            refuse_unchipped,
            "unchipped bar of 12 mm, 0 MPa, held: plug-in north (north under test), bond model N b",
        ),
        ("same_law_twice", by_chance(), "chipped bar of 12 mm, 0 MPa, held: another law when ask"),
        (
            "one_bar_or_many",
            for_one_design,
            "chipped bar of 12 mm, 0 MPa, held, pressures as an array: plug-in north (north under",
        ),
        (
            "one_bar_or_many",
            of_the_first_design,
            "chipped bar of 12 mm, 0 MPa, held, 0.5 MPa: another law as one of several designs",
        ),
        (
            "chipped_is_never_weaker",
            weaker_when_chipped,
            # 0.1 × 0.2 × 55 MPa × (0.0001 mm / 1 mm)^0.4
            "chipped bar of 12 mm, 0 MPa, held: 0.02763 MPa at a slip of 0.0001 mm is less than un",
        ),
        (
            "pressure_never_weakens",
            weaker_under_pressure,
            "chipped bar of 12 mm, 1 MPa, held: ",
        ),
        (
            "strength_never_weakens",
            weaker_in_strong_grout,
            "chipped bar of 12 mm, 0 MPa, held: ",
        ),
        (
            "damage_never_strengthens",
            stronger_when_cracked,
            "chipped bar of 12 mm, 0 MPa, held: ",
        ),
        ("damage_never_strengthens", weaker_when_held, "chipped bar of 12 mm, 0 MPa, held: "),
        ("damage_never_strengthens", stronger_without_cover, "chipped bar of 12 mm, 0 MPa, held"),
    ],
)
def test_bond_models_that_make_no_sense(
    findings: Findings, check: str, law: Law, told: str
) -> None:
    found = findings(check, bond_models=[BondModel(**{**parts(MODEL), "law": law})])
    assert any(text.startswith(told) for text in found), found[:2]


def parts(model: BondModel) -> dict[str, Any]:
    return {one.name: getattr(model, one.name) for one in fields(model)}


def test_what_a_weaker_law_is_told_like(findings: Findings) -> None:
    first = findings("damage_never_strengthens", bond_models=[replace(MODEL, law=weaker_when_held)])
    assert first[0].endswith("take the smaller law for the weaker bar")
    assert "at a slip of 0.0001 mm is less than with seams that slip, " in first[0]
