"""One bad file, or one that brings its worker down, is a visible line and stops nothing."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from tests.support.inventories import (
    ENDS_BY_EXIT,
    ENDS_BY_SIGNAL,
    HOLDS_THE_INTERPRETER,
    IS_NOT_A_NUMBER,
    RAISES,
    lines_of,
    run_command,
    write_pier,
)

pytestmark = pytest.mark.usefixtures("bench")

EXPECTED = {
    "a within.toml": ("ok", ""),
    "b exceeds.toml": ("EXCEEDS", ""),
    "c torn.toml": ("INPUT ERROR", "line 1"),
    "d impossible.toml": ("INPUT ERROR", "sleeve"),
    "e empty.toml": ("INPUT ERROR", "is empty"),
    "f exits.toml": ("FAILED", "ended its worker process with exit code 3"),
    "g faults.toml": ("FAILED", "ended its worker process by SIGSEGV"),
    "i raises.toml": ("NOT EVALUATED", "of no use"),
    "k no number.toml": ("NOT EVALUATED", "Temper"),
    "l pipe.toml": ("INPUT ERROR", "is not a regular file"),
    "m broken link.toml": ("INPUT ERROR", "cannot be read"),
    "n not text.toml": ("INPUT ERROR", "UTF-8"),
    "o within.toml": ("ok", ""),
}


def write_files(inventory: Path) -> None:
    for name, kips in {
        "a within": 600,
        "b exceeds": 690,
        "f exits": ENDS_BY_EXIT,
        "g faults": ENDS_BY_SIGNAL,
        "i raises": RAISES,
        "k no number": IS_NOT_A_NUMBER,
        "o within": 601,
    }.items():
        write_pier(inventory / f"{name}.toml", kips=kips)
    (inventory / "c torn.toml").write_text("[job\n")
    text = (inventory / "a within.toml").read_text("utf-8")
    assert 'inner_diameter = "60 in"' in text
    inside_the_column = text.replace('inner_diameter = "60 in"', 'inner_diameter = "20 in"')
    (inventory / "d impossible.toml").write_text(inside_the_column, "utf-8")
    (inventory / "e empty.toml").write_bytes(b"")
    os.mkfifo(inventory / "l pipe.toml")
    (inventory / "m broken link.toml").symlink_to("nowhere")
    (inventory / "n not text.toml").write_bytes(b"\xff\xfe")


def test_bad_files_are_told_and_the_rest_is_checked(inventory: Path, tmp_path: Path) -> None:
    write_files(inventory)
    output = tmp_path / "output"
    ran = run_command(inventory, "-o", output, "--provisions", "bench")
    assert ran.returncode == 3
    assert "Traceback" not in ran.stderr
    piers = {line["file"]: line for line in lines_of(output / "piers.csv")}
    assert {name: line["verdict"] for name, line in piers.items()} == {
        name: verdict for name, (verdict, _) in EXPECTED.items()
    }
    for name, (_, words) in EXPECTED.items():
        assert words in piers[name]["message"], name
    # whoever reads only the results, or only the summary, sees them too
    assert {line["file"] for line in lines_of(output / "results.csv")} == EXPECTED.keys()
    not_in_full = ran.stdout.split("Not checked in full")[1].split("By limit state")[0]
    for name, (verdict, _) in EXPECTED.items():
        assert (name in not_in_full) == (verdict not in {"ok", "EXCEEDS"}), name


def test_a_file_that_never_ends_is_told_after_its_time(inventory: Path, tmp_path: Path) -> None:
    # on a busy machine the other file may outlast the limit, too: only its line is looked at
    write_pier(inventory / "a.toml", kips=HOLDS_THE_INTERPRETER)
    write_pier(inventory / "b.toml")
    output = tmp_path / "output"
    ran = run_command(inventory, "-o", output, "--provisions", "bench", "--file-seconds", "1")
    assert ran.returncode == 3
    first, second = lines_of(output / "piers.csv")
    assert (first["file"], first["verdict"], second["file"]) == ("a.toml", "FAILED", "b.toml")
    assert first["message"] == "did not finish within 1 s"
