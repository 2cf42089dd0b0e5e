"""``jacketcheck shop`` as a user runs it: files whole or not at all, one-line errors."""

from __future__ import annotations

import csv
import io
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

import jacketcheck.cli._outputs
import jacketcheck.cli.shop
from jacketcheck.cli import main
from jacketcheck.coverage import CAUTIONS
from jacketcheck.files import write_atomically

FILES = {"half-shell.dxf", "splice-outside.dxf", "splice-inside.dxf", "quantities.csv"}


def names(folder: Path) -> set[str]:
    return {path.name for path in folder.iterdir()}


def test_files_and_table(
    capsys: pytest.CaptureFixture[str], repair_path: Path, tmp_path: Path
) -> None:
    folder = tmp_path / "to" / "the shop"
    assert main(["shop", str(repair_path), "-o", str(folder)]) == 0
    out = capsys.readouterr().out
    assert names(folder) == FILES
    assert all(name in out for name in FILES)
    assert all(caution in out for caution in CAUTIONS)
    assert "710.9 lb" in out
    rows = list(csv.DictReader(io.StringIO((folder / "quantities.csv").read_text("utf-8"))))
    shell = next(row for row in rows if row["item"] == "half-shell: mass of one")
    assert float(shell["value"]) == pytest.approx(710.9, abs=0.2)
    assert shell["unit"] == "lb"
    assert [row["value"] for row in rows if row["item"] == "cautions"] == list(CAUTIONS)
    assert all(row["source"] for row in rows if row["item"] != "cautions")


def test_units_and_variant(
    capsys: pytest.CaptureFixture[str], repair_path: Path, tmp_path: Path
) -> None:
    arguments = ["shop", str(repair_path), "-o", str(tmp_path / "out"), "--units", "si"]
    assert main([*arguments, "--variant", "thin and snug", "--waste", "0"]) == 0
    out = capsys.readouterr().out
    assert "thin and snug" in out
    assert " kg " in out
    assert "m³" in out


def test_nothing_is_replaced_unasked(
    capsys: pytest.CaptureFixture[str], repair_path: Path, tmp_path: Path
) -> None:
    folder = tmp_path / "out"
    folder.mkdir()
    (folder / "quantities.csv").write_text("mine")
    assert main(["shop", str(repair_path), "-o", str(folder)]) == 2
    said = capsys.readouterr().err
    assert "quantities.csv: 1 problem" in said
    assert "exists already; --overwrite replaces it" in said
    assert names(folder) == {"quantities.csv"}
    assert main(["shop", str(repair_path), "-o", str(folder), "--overwrite"]) == 0
    assert names(folder) == FILES
    assert (folder / "quantities.csv").read_text() != "mine"


def test_an_interrupted_run_leaves_no_half_file(
    monkeypatch: pytest.MonkeyPatch, repair_path: Path, tmp_path: Path
) -> None:
    folder = tmp_path / "out"
    written: list[Path] = []

    def interrupted(path: Path, content: str, **how: Any) -> None:
        if len(written) == 2:
            raise KeyboardInterrupt
        written.append(path)
        write_atomically(path, content, **how)

    monkeypatch.setattr(jacketcheck.cli._outputs, "write_atomically", interrupted)
    assert main(["shop", str(repair_path), "-o", str(folder)]) == 130
    assert names(folder) == {path.name for path in written}
    for path in written:
        assert path.read_text("utf-8").rstrip().endswith("EOF")


def test_a_failing_drawing_writes_nothing(
    monkeypatch: pytest.MonkeyPatch, repair_path: Path, tmp_path: Path
) -> None:
    def broken(*_: Any, **__: Any) -> str:
        raise RuntimeError("no ink")

    monkeypatch.setattr("jacketcheck.render.shop_files.dxf_text", broken)
    with pytest.raises(RuntimeError, match="no ink"):
        main(["shop", str(repair_path), "-o", str(tmp_path / "out")])
    assert not (tmp_path / "out").exists()


def test_without_ezdxf_one_line_says_what_to_install(
    capsys: pytest.CaptureFixture[str],
    monkeypatch: pytest.MonkeyPatch,
    repair_path: Path,
    tmp_path: Path,
) -> None:
    monkeypatch.setitem(sys.modules, "ezdxf", None)
    assert main(["shop", str(repair_path), "-o", str(tmp_path / "out")]) == 2
    error = capsys.readouterr().err
    assert error.count("\n") == 1
    assert "jacketcheck[shop]" in error
    assert not (tmp_path / "out").exists()


def test_a_folder_that_cannot_be_made(
    capsys: pytest.CaptureFixture[str], repair_path: Path, tmp_path: Path
) -> None:
    (tmp_path / "taken").write_text("a file")
    assert main(["shop", str(repair_path), "-o", str(tmp_path / "taken" / "in")]) == 2
    assert "cannot be made" in capsys.readouterr().err


@pytest.mark.parametrize("option", [("--waste", "101"), ("--loss", "x"), ("--units", "imperial")])
def test_options_that_make_no_sense(
    repair_path: Path, tmp_path: Path, option: tuple[str, str]
) -> None:
    with pytest.raises(SystemExit) as stopped:
        main(["shop", str(repair_path), "-o", str(tmp_path / "out"), *option])
    assert stopped.value.code == 2


def test_ezdxf_is_imported_only_when_something_is_drawn() -> None:
    code = "import sys, jacketcheck.shop, jacketcheck.cli.shop; print('ezdxf' in sys.modules)"
    found = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert found.stdout.strip() == "False"
