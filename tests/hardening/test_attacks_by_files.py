"""Pipes that stay silent, thousands of unknown keys, links out of an inventory, a torn journal."""

from __future__ import annotations

import os
import shutil
import sqlite3
import threading
from collections.abc import Callable
from contextlib import closing
from pathlib import Path
from typing import Any, Final

import ezdxf
import pytest

from jacketcheck.cli.main import main
from jacketcheck.errors import InputError
from jacketcheck.inputs import messages, read_input, read_text, toml_text

ROOT: Final = Path(__file__).parents[2]
CASE: Final = ROOT / "reference_cases" / "quarry-road-pier" / "repair.toml"


def test_a_pipe_without_a_writer_is_not_waited_for(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(toml_text, "_PATIENCE", 0.05)
    os.mkfifo(tmp_path / "pipe")
    with pytest.raises(InputError, match="is a pipe that nobody writes to"):
        read_input(tmp_path / "pipe")


def test_a_pipe_with_a_writer_is_read(tmp_path: Path) -> None:
    pipe = tmp_path / "pipe"
    os.mkfifo(pipe)
    threading.Thread(target=pipe.write_bytes, args=(CASE.read_bytes(),), daemon=True).start()
    assert read_input(pipe).base == read_input(CASE).base


def test_unknown_keys_are_not_compared_again_for_every_variant(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    compared: list[tuple[Any, ...]] = []
    real = messages._unknown_field

    def counted(*given: Any) -> Any:
        compared.append(given)
        return real(*given)

    monkeypatch.setattr(messages, "_unknown_field", counted)
    base = CASE.read_text("utf-8").partition("# Cracked concrete is left")[0]
    keys = "".join(f"key_{number} = 1\n" for number in range(8000))
    variants = "".join(f'[variants.v{n}]\nsleeve.thickness = "{n} mm"\n' for n in range(5, 105))
    with pytest.raises(InputError, match="variants, look-ups and geometry") as refused:
        read_text(keys + base + variants)
    assert len(refused.value.problems) == 8000
    assert len(compared) < 100


@pytest.fixture
def inventory(tmp_path: Path) -> Path:
    folder = tmp_path / "piers"
    folder.mkdir()
    shutil.copy(CASE, folder / "a.toml")
    return folder


def batch(inventory: Path, *more: str) -> int:
    return main(["batch", str(inventory), "--workers", "1", *more])


def test_a_batch_does_not_follow_links_out_of_its_folder(inventory: Path, tmp_path: Path) -> None:
    secret = tmp_path / "secret.txt"
    secret.write_text("the first line is nobody's business\n", "utf-8")
    (inventory / "b.toml").symlink_to(secret)
    (inventory / "c.toml").symlink_to("a.toml")
    (inventory / "d.toml").symlink_to("d.toml")
    assert batch(inventory) == 2
    out = tmp_path / "piers-checked"
    for path in (out / "piers.csv", out / "results.csv", out / "summary.txt"):
        assert "business" not in path.read_text("utf-8")
    lines = (out / "piers.csv").read_text("utf-8").splitlines()
    assert "is a link that leads out of the folder" in lines[2]
    assert ",ok," in lines[3]
    assert "cannot be read" in lines[4]


def _not_a_database(journal: Path) -> None:
    journal.write_bytes(b"not a database" * 1000)


def _cut(journal: Path) -> None:
    journal.write_bytes(journal.read_bytes()[:5000])


def _torn_page(journal: Path) -> None:
    content = bytearray(journal.read_bytes())
    content[4096:] = bytes(one ^ 0x5A for one in content[4096:])
    journal.write_bytes(content)


def _no_table(journal: Path) -> None:
    with closing(sqlite3.connect(journal, isolation_level=None)) as database:
        database.execute("DROP TABLE evaluations")


def _other_body(journal: Path) -> None:
    with closing(sqlite3.connect(journal, isolation_level=None)) as database:
        database.execute("UPDATE evaluations SET body = x'00'")


@pytest.mark.parametrize("damage", [_not_a_database, _cut, _torn_page, _no_table, _other_body])
def test_a_damaged_journal_is_told_and_nothing_is_lost(
    inventory: Path,
    tmp_path: Path,
    capsys: pytest.CaptureFixture[str],
    damage: Callable[[Path], None],
) -> None:
    assert batch(inventory) == 0
    out = tmp_path / "piers-checked"
    damage(out / "journal.sqlite")
    before = {path.name: path.read_bytes() for path in out.glob("[!j]*")}
    capsys.readouterr()
    assert batch(inventory) == 2
    told = capsys.readouterr().err
    assert "--fresh begins anew" in told
    assert "Traceback" not in told
    for name, content in before.items():
        assert (out / name).read_bytes() == content
    assert batch(inventory, "--fresh") == 0


class TestDrawingsForTheShop:
    @pytest.fixture
    def titled(self, tmp_path: Path) -> Path:
        title = r'"Pier 3, 100 %% grouted, 5 %%c\nsecond line ^J"'
        text = CASE.read_text("utf-8").replace('"Quarry Road overpass, pier 3 (invented)"', title)
        path = tmp_path / "repair.toml"
        path.write_text(text, "utf-8")
        return path

    def test_equal_inputs_give_equal_files(self, titled: Path, tmp_path: Path) -> None:
        for name in ("first", "second"):
            assert main(["shop", str(titled), "-o", str(tmp_path / name)]) == 0
        for path in (tmp_path / "first").iterdir():
            assert path.read_bytes() == (tmp_path / "second" / path.name).read_bytes()

    def test_a_title_reads_as_it_was_written(self, titled: Path, tmp_path: Path) -> None:
        assert main(["shop", str(titled), "-o", str(tmp_path / "out")]) == 0
        for path in (tmp_path / "out").glob("*.dxf"):
            drawing = ezdxf.readfile(path)
            assert not drawing.audit().errors
            words = [one.plain_text() for one in drawing.modelspace().query("TEXT")]
            assert "QR-03: Pier 3, 100 %% grouted, 5 %%c" in words
            assert "second line ^J" in words
