"""Files beyond all use are refused before they cost anything."""

from __future__ import annotations

import os
import resource
import subprocess
import sys
import threading
from pathlib import Path

import pytest

from jacketcheck.as_built import read_as_built
from jacketcheck.errors import InputError
from jacketcheck.inputs import read_input
from jacketcheck.inputs.toml_text import LARGEST_FILE


@pytest.mark.parametrize("read", [read_input, read_as_built])
@pytest.mark.parametrize("more", [1, 1_000_000, 200_000_000])
def test_a_large_file_is_refused_without_being_read(
    tmp_path: Path, read: object, more: int
) -> None:
    assert callable(read)
    path = tmp_path / "large.toml"
    with path.open("wb") as file:
        file.truncate(LARGEST_FILE + more)  # a hole of zeros
    before = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    with pytest.raises(InputError, match="is larger than 250 kB"):
        read(path)
    assert resource.getrusage(resource.RUSAGE_SELF).ru_maxrss - before < 50_000  # kB


@pytest.mark.parametrize("read", [read_input, read_as_built])
def test_the_largest_file_is_read(tmp_path: Path, read: object) -> None:
    assert callable(read)
    path = tmp_path / "large.toml"
    path.write_bytes((b"# nothing\n" * LARGEST_FILE)[:LARGEST_FILE])
    with pytest.raises(InputError) as caught:
        read(path)
    assert "larger" not in str(caught.value)


def test_a_file_without_end_is_refused() -> None:
    with pytest.raises(InputError, match="is larger than 250 kB"):
        read_input("/dev/zero")


def test_a_pipe_that_never_ends_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "pipe"
    os.mkfifo(path)

    def pour() -> None:
        try:
            with path.open("wb") as pipe:
                while True:
                    pipe.write(b"# nothing\n" * 1000)
        except BrokenPipeError:
            return

    threading.Thread(target=pour, daemon=True).start()
    with pytest.raises(InputError, match="is larger than 250 kB"):
        read_input(path)


@pytest.mark.parametrize(
    "command",
    ["check", "explain", "size", "sweep", "chance", "bolts", "confirm", "shop", "report", "draw"],
)
def test_every_command_refuses_a_large_file_and_writes_nothing(
    tmp_path: Path, command: str
) -> None:
    path = tmp_path / "large.toml"
    path.write_bytes(b"#" * (LARGEST_FILE + 1))
    more = {
        "explain": ["seam-slip"], "sweep": ["--vary", "sleeve.thickness=1 mm,2 mm"],
        "confirm": [str(path)], "shop": ["--output", str(tmp_path / "shop")],
        "report": ["--output", str(tmp_path / "report.html")],
        "draw": ["plan", "--output", str(tmp_path / "plan.svg")],
    }  # fmt: skip
    ran = subprocess.run(
        [sys.executable, "-m", "jacketcheck", command, str(path), *more.get(command, [])],
        capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert (ran.returncode, ran.stdout) == (2, "")
    assert "is larger than 250 kB" in ran.stderr
    assert "Traceback" not in ran.stderr
    assert list(tmp_path.iterdir()) == [path]
