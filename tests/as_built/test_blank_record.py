"""The record to fill in names every field, and is worth nothing until it is filled in."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

import pytest
from pydantic import BaseModel

from jacketcheck.as_built import LineVerdict, confirm, read_as_built_text
from jacketcheck.as_built.models import AsBuilt
from jacketcheck.as_built.specified import specified_by
from jacketcheck.catalog import built_in_catalog
from jacketcheck.cli import main
from jacketcheck.errors import InputError
from jacketcheck.host import Host
from jacketcheck.inputs import InputFile
from jacketcheck.render.blank_record import blank_record

REPAIR = Path(__file__).parents[1] / "schedule" / "willow_weir.toml"


def blank(repair: InputFile, variant: str = "turns") -> str:
    specified = specified_by(repair.variants[variant], built_in_catalog())
    return blank_record(specified, title="A pier", variant=variant, system="us")


def uncommented(text: str) -> str:
    """All fields with a hash before them put to use."""
    return re.sub(r"^# (\[|\w+ =)", r"\1", text, flags=re.MULTILINE)


def fields_of(model: type[BaseModel]) -> dict[str, set[str]]:
    found = {}
    for name, field in model.model_fields.items():
        arguments = getattr(field.annotation, "__args__", (field.annotation,))
        table: Any = next(one for one in arguments if isinstance(one, type))
        found[name] = set(table.model_fields)
    return found


def test_every_field_is_there_and_no_other(repair: InputFile) -> None:
    tables: dict[str, set[str]] = {}
    for line in uncommented(blank(repair)).splitlines():
        if match := re.match(r"\[(\w+)\]", line):
            table = tables.setdefault(match[1], set())
        elif match := re.match(r"(\w+) =", line):
            table.add(match[1])
    assert tables == fields_of(AsBuilt)


@pytest.mark.parametrize("variant", ["turns", "HV combined", "very thick", "snug only"])
def test_unfilled_it_confirms_nothing(repair: InputFile, host: Host, variant: str) -> None:
    text = blank(repair, variant)
    with pytest.raises(InputError, match="records nothing"):
        read_as_built_text(text)
    # one table filled in, the rest declared as still to come
    text = text.replace(', "grout"]', "]").replace("# [grout] ", "[grout] ")
    text = text.replace(
        '# cylinder_strength = [""]', 'cylinder_strength = ["8 ksi", "8 ksi", "8 ksi"]'
    )
    confirmation = confirm(repair, read_as_built_text(text), host=host, provisions=["bench"])
    verdicts = [line.verdict for line in confirmation.lines]
    assert verdicts.count(LineVerdict.NOT_YET) == 6
    assert verdicts.count(LineVerdict.ACCEPTED) == 1


def test_empty_fields_are_refused(repair: InputFile) -> None:
    text = uncommented(blank(repair))
    # what is neither text nor list is no TOML at all until it is filled in
    text = re.sub(r"^(\w+ =)( +#.*)$", r"\1 true\2", text, flags=re.MULTILINE)
    with pytest.raises(InputError) as caught:
        read_as_built_text(text)
    paths = {problem.path for problem in caught.value.problems}
    assert {"holes.along.1", "bolts.length", "sleeve.thickness.1", "grout.cube_side"} <= paths
    assert {"tightening.calibration.1.torque", "bolts.marks", "faying.faying_class.1"} <= paths


def test_what_was_specified_stands_beside(repair: InputFile) -> None:
    text = blank(repair)
    for shown in ("specified: 2-1/4 in", "at least 40.95 kip", "specified: AISC B, AASHTO B"):
        assert shown in text
    assert "specified: none" in text  # no plates inside


def test_as_a_command(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["confirm", str(REPAIR), "--blank", "--variant", "HR torque", "--units", "si"]) == 0
    out = capsys.readouterr().out
    assert 'variant = "HR torque"' in out
    assert "specified: 55 mm" in out
    assert main(["confirm", str(REPAIR)]) == 2
    assert "--blank prints a record to fill in" in capsys.readouterr().err
