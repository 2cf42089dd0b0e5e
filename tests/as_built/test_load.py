"""Reading a record: every problem at once, with path, value and what is allowed."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from jacketcheck.as_built import confirm, read_as_built, read_as_built_text
from jacketcheck.errors import InputError
from jacketcheck.host import Host
from jacketcheck.inputs import InputFile

RECORD = Path(__file__).parent / "willow_weir_built.toml"


def test_the_record_reads() -> None:
    file = read_as_built(RECORD)
    assert file.source == "willow_weir_built.toml"
    record = file.record
    assert record.bolts is not None
    assert record.bolts.product == "ASTM F3125 A325"
    assert record.bolts.length == pytest.approx(57.15)
    assert record.holes is not None
    assert record.holes.along == (23.8125, 25.4)
    assert record.sleeve is not None
    # one reading needs no brackets
    assert record.sleeve.yield_strength is not None
    assert len(record.sleeve.yield_strength) == 1


def test_every_problem_is_told_at_once() -> None:
    text = RECORD.read_text("utf-8")
    for good, bad in (
        ("count = 45", 'count = "many"'),
        ('along = ["15/16 in", "1 in"]', 'along = ["15/16", "1 in"]'),
        ("paint_in_pattern = false", 'paint_in_pattern = "no"'),
        ('method = "turn-of-nut"', 'method = "by feel"'),
        ('steel = "ASTM A572 Grade 50"\nyield', 'stel = "ASTM A572 Grade 50"\nyield'),
        ('cube_side = "2 in"', 'cube_side = "2 kip"'),
        ('product = "A325"', 'product = "A326"'),
        ('rotation = ["115 deg", "130 deg", "125 deg"]', "rotation = []"),
    ):  # fmt: skip
        assert good in text
        text = text.replace(good, bad)
    with pytest.raises(InputError) as caught:
        read_as_built_text(text)
    problems = {problem.path: str(problem) for problem in caught.value.problems}
    assert len(problems) == 8
    assert "has no unit" in problems["holes.along.1"]
    assert "did you mean steel?" in problems["sleeve.stel"]
    assert '"turn-of-nut"' in problems["tightening.method"]
    assert "wrong dimension" in problems["grout.cube_side"]
    assert "did you mean" in problems["bolts.product"]
    assert "at least 1 entry" in problems["tightening.rotation"]
    assert "bolts.count" in problems
    assert "faying.paint_in_pattern" in problems


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("", "is empty"),
        ('[record]\ntitle = "x"', "records nothing; tables are bolts"),
        ('[grout]\ncube_side = "2 in"', "give cube_strength or cylinder_strength"),
        ('[grout]\ncube_strength = ["60 MPa"]', "grout.cube_side: is missing"),
        ('[grout]\ncylinder_strength = ["60 MPa"]\ncube_side = "2 in"', "needs the strengths"),
        (
            '[record]\nnot_yet = ["grout"]\n[grout]\ncylinder_strength = "60 MPa"',
            "the file has its table",
        ),
        (
            '[faying]\nfaying_class = ["AISC A", "AISC B"]\npaint_in_pattern = false',
            "names two classes of AISC",
        ),
        (
            '[bolts]\nproduct = "A325"\ndiameter = "M20"\nlength = "60 mm"\ncount = 3',
            "bolts.diameter",
        ),
        ('[faying]\nfaying_class = "B"\npaint_in_pattern = false', "needs its code"),
    ],
)
def test_records_that_cannot_be_used(text: str, message: str) -> None:
    with pytest.raises(InputError, match=message):
        read_as_built_text(text)


def test_a_file_that_is_not_there(tmp_path: Path) -> None:
    with pytest.raises(InputError, match="cannot be read: no such file"):
        read_as_built(tmp_path / "nothing.toml")


def test_a_variant_that_is_not_in_the_repair_file(repair: InputFile, host: Host) -> None:
    record = read_as_built_text('[record]\nvariant = "tuns"\n[grout]\ncylinder_strength = "60 MPa"')
    with pytest.raises(InputError, match=r"record.variant = \"tuns\".*known are"):
        confirm(repair, record, host=host, provisions=["bench"])


def test_the_variant_of_the_command_comes_first(
    confirmed: Callable[..., Any], repair: InputFile, host: Host
) -> None:
    record = read_as_built_text('[record]\nvariant = "tuns"\n[grout]\ncylinder_strength = "60 MPa"')
    confirmation = confirm(repair, record, host=host, provisions="bench", variant="metric")
    assert confirmation.report.tables[0].jacket.bolts.size == "M22"
    del confirmed
