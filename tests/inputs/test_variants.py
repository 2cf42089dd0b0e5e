"""Variants: overrides by path, removals, and what is wrong with either."""

from __future__ import annotations

import copy
from typing import Any

import pytest

from jacketcheck.errors import InputError
from jacketcheck.inputs import read_text
from jacketcheck.inputs.overrides import apply_overrides

BASE: dict[str, Any] = {
    "sleeve": {"thickness": "10 mm", "steel": "S"},
    "damage": [{"bars": [1, 2], "surface": "chipped"}, {"bars": [3]}, {"bars": [4]}],
}


def changed(overrides: dict[str, Any]) -> dict[str, Any]:
    result, problems = apply_overrides(BASE, overrides)
    assert not problems
    return result


def refused(overrides: dict[str, Any]) -> list[str]:
    _, problems = apply_overrides(BASE, overrides)
    return [str(problem) for problem in problems]


@pytest.mark.parametrize(
    "overrides",
    [
        {"sleeve": {"thickness": "12 mm"}},
        {"sleeve.thickness": "12 mm"},
    ],
)
def test_nested_tables_and_dotted_paths_mean_the_same(overrides: dict[str, Any]) -> None:
    assert changed(overrides)["sleeve"] == {"thickness": "12 mm", "steel": "S"}


def test_entries_of_a_list_are_counted_from_one() -> None:
    result = changed({"damage": {"1": {"surface": "unchipped"}}, "damage.2.bars": [5]})
    assert result["damage"] == [
        {"bars": [1, 2], "surface": "unchipped"},
        {"bars": [5]},
        {"bars": [4]},
    ]


def test_a_single_entry_of_an_inner_list() -> None:
    assert changed({"damage.1.bars.2": 7})["damage"][0]["bars"] == [1, 7]


def test_a_whole_list_can_be_replaced() -> None:
    assert changed({"damage": []})["damage"] == []


def test_tables_that_were_not_there_are_made() -> None:
    assert changed({"footing.depth": "1 m"})["footing"] == {"depth": "1 m"}


def test_removal_counts_entries_before_any_goes() -> None:
    result = changed({"remove": ["damage.1", "damage.3", "sleeve.steel"]})
    assert result == {"sleeve": {"thickness": "10 mm"}, "damage": [{"bars": [3]}]}


def test_neither_base_nor_overrides_are_changed() -> None:
    overrides = {"damage": [{"bars": [9]}], "sleeve.thickness": "1 m", "remove": ["damage.1"]}
    before = copy.deepcopy((BASE, overrides))
    changed(overrides)
    assert (BASE, overrides) == before


@pytest.mark.parametrize(
    ("overrides", "message"),
    [
        ({"damage.0.state": "x"}, 'damage.0.state = "x": has no entry "0", there are 3'),
        ({"damage.4.state": "x"}, 'damage.4.state = "x": has no entry "4", there are 3'),
        ({"damage.-1": {}}, 'damage.-1 = {}: has no entry "-1", there are 3'),
        ({"damage.first": 1}, 'damage.first = 1: has no entry "first", there are 3'),
        ({"damage.٣": 1}, 'damage."٣" = 1: has no entry "٣", there are 3'),
        (
            {"sleeve.thickness.unit": "mm"},
            'sleeve.thickness.unit = "mm": goes on below "thickness", which is not a table',
        ),
        (
            {"sleeve": {"thickness": "1 mm"}, "sleeve.thickness": "2 mm"},
            'sleeve.thickness = "2 mm": is overridden twice',
        ),
        ({"remove": "sleeve"}, 'remove = "sleeve": must be a list of paths in quotes'),
        ({"remove": [1]}, "remove = [1]: must be a list of paths in quotes"),
        ({"remove": ["slee"]}, 'remove = "slee": holds no "slee" in the file'),
        ({"remove": ["damage.9"]}, 'remove = "damage.9": has no entry "9", there are 3'),
        (
            {"remove": ["sleeve.steel.x"]},
            'remove = "sleeve.steel.x": goes on below "steel", which is not a table',
        ),
    ],
)
def test_paths_that_lead_nowhere(overrides: dict[str, Any], message: str) -> None:
    assert refused(overrides) == [message]


def test_variants_of_the_file(repair_text: str) -> None:
    file = read_text(repair_text)
    assert list(file.variants) == ["base", "thin and snug", "plain"]
    base, thin, plain = file.variants.values()
    assert file.base is base
    assert thin.sleeve.thickness == 6.35
    assert thin.bolts.tightening == "snug"
    assert [record.surface for record in thin.damage] == ["unchipped", None]
    assert thin.column == base.column
    assert plain.added_bars is None
    assert plain.bolts.end_distance is None
    assert plain.damage == base.damage[:1]
    assert base.sleeve.thickness == 12.7


def test_problems_of_variants_are_told_beside_those_of_the_file(repair_text: str) -> None:
    text = (
        repair_text.replace('strength = "8 ksi"', 'strength = "8"')
        + '[variants."a.b"]\nsleeve.thickness = "5 kN"\n[variants.c]\nsleeve.thicknes = "1 in"\n'
    )
    with pytest.raises(InputError) as caught:
        read_text(text)
    assert [problem.path for problem in caught.value.problems] == [
        "grout.strength",
        'variants."a.b".sleeve.thickness',
        "variants.c.sleeve.thicknes",
    ]


def test_another_wrong_value_in_a_variant_is_told_as_well(repair_text: str) -> None:
    text = (
        repair_text.replace('strength = "8 ksi"', 'strength = "8"')
        + '[variants.c]\ngrout.strength = "9"\n'
    )
    with pytest.raises(InputError) as caught:
        read_text(text)
    assert [(one.path, one.value) for one in caught.value.problems] == [
        ("grout.strength", '"8"'),
        ("variants.c.grout.strength", '"9"'),
    ]


@pytest.mark.parametrize(
    ("addition", "message"),
    [
        ("[variants.base]\n", "variants.base: is the name of the file itself, see job.variant"),
        ("[variants]\nx = 4\n", "variants.x = 4: must be a table of overrides"),
        (
            '[variants." "]\n',
            'variants." ": must have a name of 1 to 60 printable characters',
        ),
        (
            '[variants."\\u001b"]\n',
            'variants."\\u001b": must have a name of 1 to 60 printable characters',
        ),
        (
            f"[variants.{'x' * 61}]\n",
            f'variants."{"x" * 40}…": must have a name of 1 to 60 printable characters',
        ),
        (
            "".join(f"[variants.v{number}]\n" for number in range(199)),
            "has more than 200 variants",
        ),
    ],
)
def test_variants_that_cannot_be(repair_text: str, addition: str, message: str) -> None:
    with pytest.raises(InputError) as caught:
        read_text(repair_text + addition)
    assert [str(problem) for problem in caught.value.problems] == [message]


def test_variants_must_be_tables() -> None:
    with pytest.raises(InputError, match="variants = 3: must hold tables"):
        read_text("variants = 3")


def test_a_variant_may_mend_the_file_no_more_than_break_it(repair_text: str) -> None:
    text = repair_text.replace('strength = "8 ksi"', 'strength = "8"')
    with pytest.raises(InputError, match=r"1 problem\n  grout\.strength"):
        read_text(text + '[variants.c]\ngrout.strength = "9 ksi"\n')
