"""The command for a whole inventory: what it prints, writes and returns."""

from __future__ import annotations

import csv
import sys
from pathlib import Path

import pytest

from jacketcheck.coverage import CAUTIONS, NOT_COVERED
from tests.support.cli_runs import Run
from tests.support.inventories import lines_of, write_pier


@pytest.fixture
def inventory(tmp_path: Path) -> Path:
    """Two piers, the second with a sleeve that is too thin."""
    write_pier(tmp_path / "piers" / "north" / "1.toml", kips=600)
    thin = write_pier(tmp_path / "piers" / "south" / "2.toml", kips=610)
    text = thin.read_text("utf-8")
    assert 'thickness = "3/4 in"' in text
    thin.write_text(text.replace('thickness = "3/4 in"', 'thickness = "3/8 in"'), "utf-8")
    return tmp_path / "piers"


def test_summary_and_tables_say_what_the_check_of_each_file_says(run: Run, inventory: Path) -> None:
    ran = run("batch", inventory)
    assert ran.err == ""
    output = inventory.with_name("piers-checked")
    assert ran.out.startswith((output / "summary.txt").read_text("utf-8"))
    for text in (*CAUTIONS, *NOT_COVERED):
        assert text in ran.out
    assert "checked 2 of 2 files now, 0 before" in ran.out

    results, piers = lines_of(output / "results.csv"), lines_of(output / "piers.csv")
    codes = []
    for pier in piers:
        alone = run("check", inventory / pier["file"], "--format", "csv")
        codes.append(alone.code)
        expected = list(csv.DictReader(alone.out.splitlines()))
        found = [line for line in results if line["file"] == pier["file"]]
        assert len(found) == len(expected) > 20
        for one, other in zip(found, expected, strict=True):
            for name in ("limit_state", "ratio", "verdict", "clause", "variant"):
                assert one[name] == other[name]
        judged = next(line for line in expected if line["verdict"] in {"ok", "EXCEEDS"})
        assert (pier["limit_state"], pier["ratio"]) == (judged["limit_state"], judged["ratio"])
    assert codes == [0, 1]
    assert ran.code == 1
    # the worst pier first, and what governs it
    worst = ran.out.split("Largest ratios")[1]
    assert worst.index("south/2.toml") < worst.index("north/1.toml")
    assert worst.index(piers[1]["title"][:10]) < worst.index("north/1.toml")


def test_a_file_that_cannot_be_used_gives_two_beside_one_that_exceeds(
    run: Run, inventory: Path
) -> None:
    (inventory / "torn.toml").write_text("[job\n")
    ran = run("batch", inventory, "--workers", "1")
    assert ran.code == 2
    assert "torn.toml" in ran.out.split("Not checked in full, all")[1]


@pytest.mark.parametrize(
    ("options", "words"),
    [
        (["--workers", "0"], "must be 1 to"),
        (["--provisions", "nowhere"], "nowhere"),
        (["--pattern", "*.none"], "holds no file named *.none"),
        (["--file-seconds", "0"], "not between 0 and 86400"),
    ],
)
def test_an_option_that_cannot_be_used_gives_two(
    run: Run, inventory: Path, options: list[str], words: str
) -> None:
    ran = run("batch", inventory, *options)
    assert ran.code == 2
    assert words in ran.err


def test_a_folder_that_is_not_there_gives_two(run: Run, tmp_path: Path) -> None:
    ran = run("batch", tmp_path / "none")
    assert ran.code == 2
    assert "is not there" in ran.err
    assert not list(tmp_path.iterdir())


@pytest.mark.parametrize(
    ("module", "options"), [("pyarrow", ["--format", "both"]), ("distributed", ["--dask", "a:1"])]
)
def test_a_missing_extra_gives_two(
    run: Run,
    inventory: Path,
    monkeypatch: pytest.MonkeyPatch,
    module: str,
    options: list[str],
) -> None:
    monkeypatch.setitem(sys.modules, module, None)
    ran = run("batch", inventory, *options)
    assert ran.code == 2
    assert "install" in ran.err
