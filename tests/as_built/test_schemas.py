"""Published schemas of the shop's inputs and outputs."""

from __future__ import annotations

import json
import tomllib
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from jacketcheck.cli import main

HERE = Path(__file__).parent
REPAIR = HERE.parent / "schedule" / "willow_weir.toml"
RECORD = HERE / "willow_weir_built.toml"


def printed(capsys: pytest.CaptureFixture[str], *arguments: str) -> Any:
    main(list(arguments))
    return json.loads(capsys.readouterr().out)


def test_a_record_follows_its_schema(capsys: pytest.CaptureFixture[str]) -> None:
    schema = printed(capsys, "schema", "as-built")
    record = tomllib.loads(RECORD.read_text("utf-8"))
    # one reading may stand without brackets, which a schema of lists does not know
    for table, field in (
        ("faying", "faying_class"),
        ("sleeve", "yield_strength"),
        ("sleeve", "gap"),
    ):
        record[table][field] = [record[table][field]]
    jsonschema.validate(record, schema)


@pytest.mark.parametrize(
    ("which", "arguments"),
    [
        ("bolts", ("bolts", str(REPAIR), "--format", "json")),
        ("confirm", ("confirm", str(REPAIR), str(RECORD), "--format", "json")),
    ],
)
def test_outputs_follow_their_schemas(
    capsys: pytest.CaptureFixture[str], which: str, arguments: tuple[str, ...]
) -> None:
    schema = printed(capsys, "schema", which)
    jsonschema.Draft202012Validator.check_schema(schema)
    jsonschema.validate(printed(capsys, *arguments), schema)
