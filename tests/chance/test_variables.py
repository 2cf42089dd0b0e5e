"""What a file may say of the scatter, and what it may not."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import numpy as np
import pytest

from jacketcheck.chance.variables import NAMES, random_variables
from jacketcheck.errors import InputError
from jacketcheck.inputs import RepairInput
from jacketcheck.inputs.chance import Chance
from jacketcheck.jacket import Jacket, build_jacket


def written(**tables: Any) -> Chance:
    return Chance.model_validate(tables)


def entry(name: str, **figures: Any) -> dict[str, Any]:
    return {"name": name, **figures}


def test_published_scatter_of_a_standard_deviation(jacket: Jacket) -> None:
    steel = jacket.column.layer.steel
    found = random_variables(jacket).by_name["column-bar-yield"].marginal
    assert found.standard_deviation * float(steel.expected_yield) == pytest.approx(30.0)


def test_thin_cover_scatters_too_much_for_a_normal_variable(repair_input: RepairInput) -> None:
    """8 mm of 25 mm: a normal variable would be negative once in a thousand times."""
    column = repair_input.column.model_copy(update={"cover": 25.0})
    jacket = build_jacket(repair_input.model_copy(update={"column": column}))
    cover = random_variables(jacket).by_name["column-cover"]
    assert cover.marginal.distribution == "lognormal"
    assert cover.marginal.standard_deviation * 25.0 == pytest.approx(8.0)
    assert "lognormal" in cover.source
    assert np.all(cover.marginal.at(np.array([-8.0, 8.0])) > 0.0)


def test_what_is_left_out_stays_as_published(jacket: Jacket) -> None:
    published = random_variables(jacket).by_name["bolt-strength"]
    changed = random_variables(
        jacket, written(variables=[entry("bolt-strength", mean_ratio=1.15)])
    ).by_name["bolt-strength"]
    assert changed.marginal.mean == 1.15
    assert changed.marginal.variation == published.marginal.variation
    assert changed.marginal.distribution == published.marginal.distribution
    assert changed.source.startswith("input chance.variables")
    assert published.source in changed.source


def test_source_of_the_file_is_shown(jacket: Jacket) -> None:
    one = entry("axial-load", mean_ratio=1.0, coefficient_of_variation=0.05,
                distribution="normal", source="weighed")  # fmt: skip
    assert (
        random_variables(jacket, written(variables=[one])).by_name["axial-load"].source == "weighed"
    )


def test_held_variable_does_not_scatter(jacket: Jacket) -> None:
    found = random_variables(jacket, written(variables=[entry("axial-strain", held=True)]))
    assert "axial-strain" not in found.among(NAMES).names
    assert found.means()["axial-strain"] == 1.0


def test_correlation_of_the_file_replaces_the_published_one(jacket: Jacket) -> None:
    pair = {"between": ["sleeve-tensile", "sleeve-yield"], "coefficient": 0.2}
    found = random_variables(jacket, written(correlations=[pair])).correlations
    assert found["sleeve-yield", "sleeve-tensile"] == (0.2, "input chance.correlations")


def test_variables_without_a_use_are_left_out(repair_input: RepairInput) -> None:
    bare = build_jacket(repair_input.model_copy(update={"added_bars": None, "footing": None}))
    found = random_variables(bare)
    gone = {
        "added-bar-yield",
        "added-bar-tensile",
        "anchorage",
        "interface-friction",
        "footing-concrete",
    }
    assert set(NAMES) - set(found.by_name) == gone
    assert found.means()["anchorage"] == 1.0
    assert ("added-bar-yield", "added-bar-tensile") not in found.correlations


def test_every_problem_is_told_at_once(jacket: Jacket) -> None:
    wrong = written(
        variables=[
            entry("axial-load", coefficient_of_variation=0.5),
            entry("bolt-shear"),
            entry("bolt-shear"),
        ],
        correlations=[
            {"between": ["sleeve-yield", "splice-yield"], "coefficient": 0.9},
            {"between": ["sleeve-tensile", "splice-yield"], "coefficient": -0.9},
        ],
    )
    with pytest.raises(InputError) as raised:
        random_variables(jacket, wrong)
    paths = [problem.path for problem in raised.value.problems]
    assert paths == [
        "chance.variables.1.coefficient_of_variation",
        "chance.variables.3.name",
        "chance.correlations",
    ]
    assert "at most 0.2 for a normal variable" in str(raised.value)


@pytest.mark.parametrize(
    ("table", "told"),
    [
        ({"samples": 3}, "chance.samples = 3: must be at least 16"),
        ({"seed": -1}, "chance.seed = -1: must be at least 0"),
        ({"method": "grid"}, 'chance.method = "grid": must be "sobol"'),
        ({"sampels": 100}, "did you mean samples?"),
        ({"variables": [{"name": "luck"}]}, 'chance.variables.1.name = "luck": must be'),
        ({"variables": [{"name": "bolt-shear", "mean_ratio": 9}]}, "from 0.2 to 5"),
        ({"variables": [{"name": "bolt-shear", "coefficient_of_variation": -0.1}]}, "is negative"),
        ({"correlations": [{"between": ["bolt-shear", "bolt-shear"], "coefficient": 0.1}]},
         "must name two different variables"),
        ({"correlations": [{"between": ["bolt-shear"], "coefficient": 0.1}]}, "is missing"),
        ({"correlations": [{"between": ["bolt-shear", "axial-load"], "coefficient": 1}]},
         "outside the plausible range"),
    ],
)  # fmt: skip
def test_wrong_fields(
    problems_of_chance: Callable[..., str], table: dict[str, Any], told: str
) -> None:
    assert told in problems_of_chance(table)


@pytest.fixture
def problems_of_chance(repair_table: dict[str, Any]) -> Callable[..., str]:
    """Message for a repair file with another chance table."""
    from pydantic import ValidationError

    from jacketcheck.inputs.messages import problems_of

    def told(table: dict[str, Any]) -> str:
        with pytest.raises(ValidationError) as raised:
            RepairInput.model_validate({**repair_table, "chance": table})
        return "\n".join(str(problem) for problem in problems_of(raised.value, RepairInput))

    return told


def test_values_follow_the_order_of_the_points(jacket: Jacket) -> None:
    found = random_variables(jacket).among({"bolt-shear", "sleeve-yield", "sleeve-tensile"})
    assert found.names == ("sleeve-yield", "sleeve-tensile", "bolt-shear")
    values = found.values(np.array([[1.0], [0.0], [-1.0]]))
    assert values["sleeve-yield"] > random_variables(jacket).by_name["sleeve-yield"].marginal.mean
    # a strong sleeve is strong in tension as well
    assert values["sleeve-tensile"] > 1.2
    assert values["bolt-shear"] < 1.11
