"""What the catalogue does not have, and what contradicts itself."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest

from jacketcheck.catalog.catalog import built_in_catalog
from jacketcheck.catalog.entries import Entries
from jacketcheck.errors import InputError
from jacketcheck.inputs import RepairInput
from jacketcheck.jacket import build_jacket

Problems = Callable[..., list[str]]


@pytest.fixture
def problems_of(repair_table: dict[str, Any]) -> Problems:
    """Problems of building the test repair after changes by path; None takes a field out."""

    def of(**changes: object) -> list[str]:
        for path, value in changes.items():
            target: Any = repair_table
            *above, last = path.split("__")
            for key in above:
                target = target[int(key)] if isinstance(target, list) else target[key]
            if value is None:
                del target[last]
            else:
                target[last] = value
        # without a catalogue in the context, names are not looked up before the jacket is built
        with pytest.raises(InputError) as caught:
            build_jacket(RepairInput.model_validate(repair_table))
        assert caught.value.remark == "geometry is checked once these are mended"
        return [str(problem) for problem in caught.value.problems]

    return of


@pytest.mark.parametrize(
    ("changes", "message"),
    [
        ({"bolts__diameter": "1-3/16 in"}, 'bolts.diameter = "1-3/16 in": is not known; '),
        ({"bolts__diameter": "25 mm"}, 'bolts.diameter = "25 mm": is not known; '),
        pytest.param(
            {"sleeve__thickness": "5 in"},
            "sleeve.thickness = 127 mm (5 in): must be at most 101.6 mm (4 in), the thickest "
            "plate of ASTM A572 Grade 50",
        ),
        pytest.param(
            {"splice__inside_thickness": "105 mm"},
            "splice.inside_thickness = 105 mm (4.134 in): must be at most 101.6 mm (4 in), the "
            "thickest plate of ASTM A572 Grade 50",
        ),
        pytest.param(
            {"added_bars__size": "No. 18", "added_bars__steel": "EN B500B"},
            'added_bars.size = "No. 18": is too large: EN B500B has no figures for bars of '
            "57.3278 mm (2.257 in)",
        ),
        pytest.param(
            {"column__bars__measured_tensile": "65 ksi"},
            "column.bars.measured_tensile = 448.159 MPa (65 ksi): must exceed the yield strength "
            "of 455.054 MPa (66 ksi); give both from the same tests",
        ),
        pytest.param(
            {"bolts__gauge": None},
            "bolts.gauge: is missing; columns beside one another need it",
        ),
        pytest.param(
            {"bolts__measured_tension": "12 kip"},
            'bolts.measured_tension = 53.3787 kN (12 kip): needs tightening = "snug"; other '
            "bolts count with their minimum pretension",
        ),
        pytest.param(
            {"splice__sides": "outside"},
            'splice.inside_thickness = 7.9375 mm (0.3125 in): needs sides = "both"',
        ),
        pytest.param(
            {"bolts__tightening": "twist-off"},
            'bolts.tightening = "twist-off": needs bolts with a spline, which ASTM F3125 A325 '
            "does not have",
        ),
        pytest.param(
            {"bolts__faying_class": ["AISC B", "AISC A"]},
            'bolts.faying_class = "AISC A": is a second class of AISC, after AISC B; a code has '
            "one",
        ),
        pytest.param(
            {"damage__1__bars": []},
            "damage.2: names no bar; give bars, clock or both",
        ),
        pytest.param(
            {"damage__0__clock": ["12:00"]},
            'damage.1.clock = "12:00": is midway between two bars; name the bar by its number',
        ),
        ({"damage__1__bars": [21]}, "damage.2.bars = 21: must be at most 20, the number of bars"),
        pytest.param(
            {"damage__1__bars": [3, 2]},
            "damage.2 = bar 2: is named already in damage.1; a bar has one record",
        ),
        pytest.param(
            {"damage__1__bars": [3, 3]},
            "damage.2 = bar 3: is named already in damage.2; a bar has one record",
        ),
        pytest.param(
            {"damage__1__bars": [n for n in range(3, 21) if n != 11]},
            "damage: leaves no bar that crosses the base unbroken",
        ),
    ],
)  # fmt: skip
def test_one_problem(problems_of: Problems, changes: dict[str, object], message: str) -> None:
    (problem,) = problems_of(**changes)
    assert problem.startswith(message) if message.endswith("; ") else problem == message


def test_rows_and_end_distance_cannot_both_be_left_out(problems_of: Problems) -> None:
    (problem,) = problems_of(bolts__rows=None, bolts__end_distance=None)
    assert problem == "bolts.rows: is missing; give rows, end_distance or both"


def test_unknown_names_are_all_told(problems_of: Problems) -> None:
    found = problems_of(
        column__bars__size="No. 12",
        column__hoops__steel="iron",
        sleeve__steel="iron",
        splice__steel="iron",
        bolts__product="nails",
        bolts__faying_class=["B"],
        added_bars__steel="iron",
        judgement__bond_model="glue",
        damage__1__bars=[21],
    )
    assert [problem.partition(" = ")[0] for problem in found] == [
        "column.bars.size",
        "column.hoops.steel",
        "sleeve.steel",
        "splice.steel",
        "bolts.product",
        "judgement.bond_model",
        "bolts.faying_class",
        "added_bars.steel",
        "damage.2.bars",
    ]


def test_bars_that_buckled_may_be_all_of_them_where_they_count_as_intact(
    repair_table: dict[str, Any],
) -> None:
    repair_table["damage"] = [
        {"bars": list(range(1, 21)), "state": "buckled", "height": "100 mm"}
    ]  # fmt: skip
    repair_table["judgement"]["buckled_bars"] = "as-intact"
    build_jacket(RepairInput.model_validate(repair_table))
    repair_table["judgement"]["buckled_bars"] = "as-fractured"
    with pytest.raises(InputError, match="leaves no bar that crosses the base unbroken"):
        build_jacket(RepairInput.model_validate(repair_table))


def test_bolts_without_a_pretension_can_only_be_snug(repair_input: RepairInput) -> None:
    catalog = built_in_catalog()
    product = catalog.bolt_product("ASTM F3125 A325")
    plain = replace(product.size("1 in"), name="plain", aliases=(), pretension=None)
    extended = catalog.extended(
        bolts=[replace(product, name="Plain", aliases=(), sizes=Entries("size", [plain]))]
    )
    update = {"product": "Plain", "diameter": "plain"}
    bolts = repair_input.bolts.model_copy(update=update)
    repair = repair_input.model_copy(update={"bolts": bolts})
    with pytest.raises(InputError, match='must be "snug": Plain has no pretension for plain'):
        build_jacket(repair, catalog=extended)
    snug = bolts.model_copy(update={"tightening": "snug"})
    jacket = build_jacket(repair.model_copy(update={"bolts": snug}), catalog=extended)
    assert jacket.bolts.specified_pretension == 0.0
