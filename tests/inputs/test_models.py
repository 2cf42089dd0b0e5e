"""The models: complete in the test file, frozen, closed, and published as a schema."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterator
from typing import Any, get_args

import jsonschema
import pytest
from pydantic import BaseModel, ValidationError

from jacketcheck.inputs import RepairInput, read_text
from jacketcheck.inputs.base import InputModel


def models() -> list[type[BaseModel]]:
    found: list[type[BaseModel]] = []

    def visit(model: type[BaseModel]) -> None:
        found.append(model)
        for field in model.model_fields.values():
            for kind in (field.annotation, *get_args(field.annotation)):
                if isinstance(kind, type) and issubclass(kind, BaseModel):
                    visit(kind)

    visit(RepairInput)
    return found


def field_paths(model: type[BaseModel], path: str = "") -> Iterator[str]:
    for name, field in model.model_fields.items():
        here = f"{path}.{name}".lstrip(".")
        nested = [
            kind
            for kind in (field.annotation, *get_args(field.annotation))
            if isinstance(kind, type) and issubclass(kind, BaseModel)
        ]
        if nested:
            yield from field_paths(nested[0], here)
        else:
            yield here


def written_paths(value: Any, path: str = "") -> Iterator[str]:
    if isinstance(value, dict):
        for name, child in value.items():
            yield from written_paths(child, f"{path}.{name}".lstrip("."))
    elif isinstance(value, list) and value and isinstance(value[0], dict):
        for child in value:
            yield from written_paths(child, path)
    else:
        yield path


def test_the_test_file_writes_every_field(repair_text: str) -> None:
    table = tomllib.loads(repair_text)
    snug = table.pop("variants")["thin and snug"]
    elsewhere = {"bolts.measured_tension", "splice.fillers", "splice.filler_thickness"}
    written = set(written_paths(table)) | elsewhere & set(written_paths(snug))
    assert set(field_paths(RepairInput)) == written


@pytest.mark.parametrize("model", models(), ids=lambda model: model.__name__)
def test_models_are_frozen_closed_and_described(model: type[BaseModel]) -> None:
    assert issubclass(model, InputModel)
    assert model.model_config["frozen"]
    assert model.model_config["extra"] == "forbid"
    for name, field in model.model_fields.items():
        leaf = not any(
            isinstance(kind, type) and issubclass(kind, BaseModel)
            for kind in (field.annotation, *get_args(field.annotation))
        )
        if leaf:
            assert field.description, name
            assert field.description.endswith("."), name


def test_nothing_can_be_assigned(repair_input: RepairInput) -> None:
    with pytest.raises(ValidationError, match="frozen"):
        repair_input.sleeve.thickness = 1.0  # type: ignore[misc] # that is what is tested


def test_defaults_are_within_their_own_bounds(repair_text: str) -> None:
    text = re.sub(r"\[judgement\].*?(?=\[variants)", "", repair_text, flags=re.DOTALL)
    judgement = read_text(text).base.judgement.model_dump(exclude_none=True)
    table = tomllib.loads(text)
    table["judgement"] = judgement
    del table["variants"]
    assert RepairInput.model_validate(table).judgement.model_dump(exclude_none=True) == judgement


def test_catalogue_names_come_out_as_the_catalogue_spells_them(repair_text: str) -> None:
    text = repair_text.replace('size = "No. 10"', 'size = "#10"').replace(
        "F3125 A325", "f3125  a325"
    )
    base = read_text(text).base
    assert (base.column.bars.size, base.bolts.product) == ("No. 10", "ASTM F3125 A325")


def test_one_faying_class_needs_no_brackets(repair_text: str) -> None:
    text = repair_text.replace('["AISC B", "AASHTO B"]', '"AISC B"')
    assert read_text(text).base.bolts.faying_class == ("AISC B",)


def test_the_schema_accepts_the_file_and_refuses_another(repair_table: dict[str, Any]) -> None:
    schema = RepairInput.model_json_schema()
    validator = jsonschema.Draft202012Validator(schema)
    validator.check_schema(schema)
    assert not list(validator.iter_errors(repair_table))
    repair_table["sleeve"]["thickness"] = 12
    repair_table["bolts"]["rows"] = "ten"
    paths = {error.json_path for error in validator.iter_errors(repair_table)}
    assert paths == {"$.sleeve.thickness", "$.bolts.rows"}


def test_the_schema_tells_the_range_of_every_quantity() -> None:
    text = str(RepairInput.model_json_schema())
    assert "a thickness from 1 mm (0.03937 in) to 150 mm (5.906 in)" in text
