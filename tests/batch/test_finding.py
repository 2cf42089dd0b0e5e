"""Which files belong to an inventory, and that none is read that could hold up the run."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from jacketcheck.batch.finding import content_of, find_files, shown_name
from jacketcheck.errors import InputError
from jacketcheck.inputs.toml_text import LARGEST_FILE


def names(folder: Path, **options: object) -> list[bytes]:
    return [found.name for found in find_files(folder, **options)]  # type: ignore[arg-type] # passed on


def test_files_at_any_depth_in_a_fixed_order(tmp_path: Path) -> None:
    for name in ("b.toml", "a.toml", "south/2.toml", "south/deep/3.toml", "north/1.toml", "a.txt"):
        (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / name).touch()
    (tmp_path / ".hidden.toml").touch()
    (tmp_path / ".git").mkdir()
    (tmp_path / ".git" / "4.toml").touch()
    (tmp_path / "south" / "round").symlink_to(tmp_path)  # would never end
    expected = [b"a.toml", b"b.toml", b"north/1.toml", b"south/2.toml", b"south/deep/3.toml"]
    assert names(tmp_path) == expected
    assert names(tmp_path, pattern="[ab].toml") == expected[:2]
    assert names(tmp_path, leave_out=(tmp_path / "south").resolve()) == expected[:3]


def test_a_name_that_is_no_text_is_found_read_and_shown(tmp_path: Path) -> None:
    raw = b"pier \xff.toml"
    path = os.path.join(os.fsencode(tmp_path), raw)  # noqa: PTH118 - pathlib takes no bytes
    with open(path, "wb") as file:  # noqa: PTH123 - as above
        file.write(b"x = 1")
    assert names(tmp_path) == [raw]
    assert content_of(tmp_path, raw) == b"x = 1"
    assert shown_name(raw).isprintable()


def test_a_file_that_is_too_large_is_refused(tmp_path: Path) -> None:
    (tmp_path / "fits.toml").write_bytes(b"#" * LARGEST_FILE)
    (tmp_path / "large.toml").write_bytes(b"#" * (LARGEST_FILE + 1))
    assert len(content_of(tmp_path, b"fits.toml")) == LARGEST_FILE
    with pytest.raises(InputError, match="is larger than"):
        content_of(tmp_path, b"large.toml")


@pytest.mark.parametrize(("name", "problem"), [("none", "is not there"), ("file", "not a folder")])
def test_what_is_no_folder_is_refused(tmp_path: Path, name: str, problem: str) -> None:
    (tmp_path / "file").touch()
    with pytest.raises(InputError, match=problem):
        names(tmp_path / name)
