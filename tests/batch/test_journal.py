"""The journal keeps what was told to be done, whatever happened to the run that wrote it."""

from __future__ import annotations

import shutil
from collections.abc import Iterable
from dataclasses import replace
from pathlib import Path

import pytest

from jacketcheck.batch.finding import FoundFile
from jacketcheck.batch.job import failure
from jacketcheck.batch.journal import FILE_NAME, Finished, Journal
from jacketcheck.batch.settings import BatchSettings
from jacketcheck.errors import InputError

SETTINGS = BatchSettings(provisions=("us",), variants="base", made_by=(("a", "b", "1"),))


def finished(name: bytes, *, failed: bool = False) -> Finished:
    return Finished(name, "00", failure("of some kind", "failed" if failed else "input error"))


def kept(folder: Path, names: Iterable[bytes], settings: BatchSettings = SETTINGS) -> list[bool]:
    """Whether each file counts as done for a run that begins now."""
    with Journal(folder, settings) as journal:
        journal.enlist(FoundFile(name) for name in names)
        return [journal.takes_over(name, "00") for name in names]


def copied_while_open(folder: Path, target: Path, *names: bytes) -> Path:
    """What is on the disk when a run is killed that has written these files, one by one."""
    with Journal(folder, SETTINGS) as journal:
        for name in names:
            journal.add([finished(name)])
        shutil.copytree(folder, target)
    return target


def test_what_was_added_is_there_after_a_kill(tmp_path: Path) -> None:
    (tmp_path / "run").mkdir()
    killed = copied_while_open(tmp_path / "run", tmp_path / "killed", b"1", b"2")
    assert kept(killed, [b"1", b"2", b"3"]) == [True, True, False]


@pytest.mark.parametrize("lost", [1, 100, 4000])
def test_a_torn_end_costs_the_last_file_only(tmp_path: Path, lost: int) -> None:
    (tmp_path / "run").mkdir()
    killed = copied_while_open(tmp_path / "run", tmp_path / "killed", b"1", b"2")
    log = killed / f"{FILE_NAME}-wal"
    log.write_bytes(log.read_bytes()[:-lost])
    assert kept(killed, [b"1", b"2"]) == [True, False]


def test_what_failed_is_tried_again(tmp_path: Path) -> None:
    with Journal(tmp_path, SETTINGS) as journal:
        journal.add([finished(b"1"), finished(b"2", failed=True)])
    assert kept(tmp_path, [b"1", b"2"]) == [True, False]
    with Journal(tmp_path, SETTINGS) as journal:
        journal.add([finished(b"2")])
    assert kept(tmp_path, [b"1", b"2"]) == [True, True]


@pytest.mark.parametrize(
    ("change", "is_kept"),
    [
        ({"provisions": ("europe",)}, False),
        ({"variants": "all"}, False),
        ({"made_by": (("a", "b", "2"),)}, False),
        ({"without": ("c",)}, False),
        ({"plugin_seconds": 7.0}, False),
        ({"file_seconds": 7.0}, True),
    ],
)
def test_results_count_for_the_settings_that_made_them(
    tmp_path: Path, change: dict[str, object], *, is_kept: bool
) -> None:
    with Journal(tmp_path, SETTINGS) as journal:
        journal.add([finished(b"1")])
    assert kept(tmp_path, [b"1"], replace(SETTINGS, **change)) == [is_kept]  # type: ignore[arg-type] # any field


def test_results_count_for_the_content_that_they_are_of(tmp_path: Path) -> None:
    with Journal(tmp_path, SETTINGS) as journal:
        journal.add([finished(b"1")])
        journal.enlist([FoundFile(b"1")])
        assert not journal.takes_over(b"1", "01")
        assert journal.takes_over(b"1", "00")


def test_a_second_run_on_the_same_folder_is_refused(tmp_path: Path) -> None:
    with (
        Journal(tmp_path, SETTINGS),
        pytest.raises(InputError, match="another run is writing to this folder"),
    ):
        Journal(tmp_path, SETTINGS)
    with (
        Journal(tmp_path, SETTINGS),
        pytest.raises(InputError, match="another run is writing to this folder"),
    ):
        Journal(tmp_path, SETTINGS, fresh=True)
    assert kept(tmp_path, [b"1"]) == [False]


def test_a_file_that_is_no_journal_is_refused_and_replaced_on_demand(tmp_path: Path) -> None:
    (tmp_path / FILE_NAME).write_bytes(b"something else" * 100)
    with pytest.raises(InputError, match="--fresh begins anew"):
        Journal(tmp_path, SETTINGS)
    with Journal(tmp_path, SETTINGS, fresh=True) as journal:
        journal.add([finished(b"1")])
    assert kept(tmp_path, [b"1"]) == [True]
