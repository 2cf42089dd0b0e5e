from __future__ import annotations

import json
import tomllib
from pathlib import Path

import jsonschema
import pytest

from tests.support.cli_runs import Run


@pytest.mark.parametrize("units", ["us", "si"])
def test_the_starter_file_can_be_checked_at_once(run: Run, tmp_path: Path, units: str) -> None:
    path = tmp_path / "start.toml"
    assert run("new", path, "--units", units).code == 0
    ran = run("check", path)
    assert ran.code in {0, 1}
    assert "NOT EVALUATED" not in ran.out


def test_a_file_that_exists_is_kept_unless_told_otherwise(run: Run, tmp_path: Path) -> None:
    path = tmp_path / "mine.toml"
    path.write_text("mine", "utf-8")
    assert run("new", path).code == 2
    assert path.read_text("utf-8") == "mine"
    assert run("new", path, "--overwrite").code == 0
    assert "[sleeve]" in path.read_text("utf-8")
    assert list(tmp_path.iterdir()) == [path]


def test_a_dash_prints_the_starter_file(run: Run) -> None:
    assert "[sleeve]" in run("new", "-").out


@pytest.mark.parametrize("which", ["input", "output", "chance", "size", "sweep"])
def test_schemas_are_valid_schemas(run: Run, which: str) -> None:
    schema = json.loads(run("schema", which).out)
    jsonschema.Draft202012Validator.check_schema(schema)


@pytest.mark.parametrize("units", ["us", "si"])
def test_the_starter_file_follows_the_input_schema(run: Run, units: str) -> None:
    schema = json.loads(run("schema", "input").out)
    jsonschema.validate(tomllib.loads(run("new", "-", "--units", units).out), schema)


def test_the_input_schema_refuses_an_unknown_field(run: Run) -> None:
    schema = json.loads(run("schema", "input").out)
    table = tomllib.loads(run("new", "-").out)
    table["sleeve"]["colour"] = "red"
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(table, schema)
