"""No output takes the place of an input, and of no other file unless that is asked for."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Final

import pytest

from jacketcheck.cli.main import main
from jacketcheck.errors import InputError
from jacketcheck.files import write_atomically

ROOT: Final = Path(__file__).parents[2]
CASE: Final = ROOT / "reference_cases" / "quarry-road-pier" / "repair.toml"

WRITERS: Final[dict[str, Callable[[Path, Path], list[str]]]] = {
    "size --save": lambda file, out: ["size", str(file), "--save", str(out)],
    "report in HTML": lambda file, out: [
        *("report", str(file), "--no-figures", "-o", str(out), "--format", "html"),
    ],
    "report in Markdown": lambda file, out: [
        *("report", str(file), "--no-figures", "-o", str(out), "--format", "markdown"),
    ],
    "draw": lambda file, out: ["draw", str(file), "plan", "--format", "svg", "-o", str(out)],
}


@pytest.fixture
def repair(tmp_path: Path) -> Path:
    return Path(shutil.copy(CASE, tmp_path / "repair"))


@pytest.mark.parametrize("name", WRITERS)
@pytest.mark.parametrize("overwrite", [False, True])
@pytest.mark.parametrize("way", ["itself", "symbolic link", "hard link", "roundabout"])
def test_an_input_is_never_written(
    repair: Path, capsys: pytest.CaptureFixture[str], name: str, way: str, *, overwrite: bool
) -> None:
    out = repair.with_name("other")
    if way == "itself":
        out = repair
    elif way == "symbolic link":
        out.symlink_to(repair)
    elif way == "hard link":
        out.hardlink_to(repair)
    else:
        out = repair.parent / ".." / repair.parent.name / repair.name
    code = main([*WRITERS[name](repair, out), *["--overwrite"] * overwrite])
    assert code == 2
    assert "is an input of this command" in capsys.readouterr().err
    assert repair.read_bytes() == CASE.read_bytes()


def test_the_plot_of_a_sweep_is_no_input_either(
    repair: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    repair = repair.rename(repair.with_suffix(".svg"))
    vary = ["--vary", "sleeve.thickness=10 mm,12 mm"]
    assert main(["sweep", str(repair), *vary, "--plot", str(repair), "--overwrite"]) == 2
    assert "is an input of this command" in capsys.readouterr().err
    assert repair.read_bytes() == CASE.read_bytes()


@pytest.mark.parametrize("name", WRITERS)
def test_another_file_is_replaced_only_if_asked(
    repair: Path, capsys: pytest.CaptureFixture[str], name: str
) -> None:
    out = repair.with_name("mine")
    out.write_text("mine", "utf-8")
    assert main(WRITERS[name](repair, out)) == 2
    assert "exists already; --overwrite replaces it" in capsys.readouterr().err
    assert out.read_text("utf-8") == "mine"


def test_the_figures_of_a_report_are_not_written_over_others(
    repair: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    figures = repair.parent / "r-figures"
    figures.mkdir()
    mine = figures / "02-ratios.svg"
    mine.write_text("mine", "utf-8")
    target = repair.with_name("r.md")
    assert main(["report", str(repair), "-o", str(target)]) == 2
    assert mine.read_text("utf-8") == "mine"
    assert not target.exists()
    assert "02-ratios.svg" in capsys.readouterr().err
    assert main(["report", str(repair), "-o", str(target), "--overwrite"]) == 0
    assert "<svg" in mine.read_text("utf-8")


def test_a_batch_leaves_files_of_others_alone(
    repair: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    piers, out = repair.parent / "piers", repair.parent / "out"
    piers.mkdir()
    out.mkdir()
    shutil.copy(CASE, piers)
    for name in ("piers.csv", "results.parquet"):  # the second would be removed as out of date
        (out / name).write_text("mine", "utf-8")
    command = ["batch", str(piers), "-o", str(out), "--workers", "1"]
    assert main(command) == 2
    assert "--overwrite replaces it" in capsys.readouterr().err
    assert {path.name: path.read_text("utf-8") for path in out.iterdir()} == {
        "piers.csv": "mine",
        "results.parquet": "mine",
    }
    assert main([*command, "--overwrite"]) == 0
    assert main(command) == 0  # its own output it writes anew


def test_a_batch_does_not_write_through_links(
    repair: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    piers, out = repair.parent / "piers", repair.parent / "out"
    piers.mkdir()
    out.mkdir()
    pier = Path(shutil.copy(CASE, piers))
    (out / "piers.csv").symlink_to(pier)
    command = ["batch", str(piers), "-o", str(out), "--workers", "1", "--overwrite"]
    assert main(command) == 2
    assert "piers.csv is not a regular file" in capsys.readouterr().err
    assert pier.read_bytes() == CASE.read_bytes()


class TestWhatIsNoRegularFile:
    def test_a_link_stays_and_its_file_is_written(self, tmp_path: Path) -> None:
        (tmp_path / "far").mkdir()
        real, link = tmp_path / "far" / "real", tmp_path / "link"
        real.write_text("old", "utf-8")
        link.symlink_to(real)
        write_atomically(link, "new", overwrite=True)
        assert link.is_symlink()
        assert real.read_text("utf-8") == "new"

    def test_a_link_to_nothing_makes_the_file(self, tmp_path: Path) -> None:
        (tmp_path / "link").symlink_to(tmp_path / "real")
        write_atomically(tmp_path / "link", "new")
        assert (tmp_path / "link").is_symlink()
        assert (tmp_path / "real").read_text("utf-8") == "new"

    def test_a_loop_of_links_is_refused(self, tmp_path: Path) -> None:
        (tmp_path / "loop").symlink_to(tmp_path / "loop")
        with pytest.raises(InputError, match="cannot be written"):
            write_atomically(tmp_path / "loop", "new", overwrite=True)

    def test_a_pipe_takes_the_content(self, tmp_path: Path) -> None:
        pipe = tmp_path / "pipe"
        os.mkfifo(pipe)
        reader = os.open(pipe, os.O_RDONLY | os.O_NONBLOCK)
        write_atomically(pipe, "x" * 50_000)  # less than a pipe holds
        with os.fdopen(reader, "rb") as stream:
            assert stream.read() == b"x" * 50_000
        assert pipe.is_fifo()

    def test_a_pipe_that_nobody_reads_is_refused(self, tmp_path: Path) -> None:
        os.mkfifo(tmp_path / "pipe")
        with pytest.raises(InputError, match="nobody reads the pipe"):
            write_atomically(tmp_path / "pipe", "x", overwrite=True)
        assert (tmp_path / "pipe").is_fifo()

    def test_a_device_stays_a_device(self) -> None:
        write_atomically("/dev/null", "x")
        assert Path("/dev/null").is_char_device()

    def test_a_folder_is_refused(self, tmp_path: Path) -> None:
        with pytest.raises(InputError, match="is a folder"):
            write_atomically(tmp_path, "x", overwrite=True)

    def test_permissions_are_kept(self, tmp_path: Path) -> None:
        path = tmp_path / "private"
        path.write_text("old", "utf-8")
        path.chmod(0o600)
        write_atomically(path, "new", overwrite=True)
        assert path.stat().st_mode & 0o777 == 0o600


@pytest.mark.parametrize("name", ["-", "/dev/stdout"])
@pytest.mark.parametrize("to", ["pipe", "file"])
def test_a_report_goes_to_standard_output(repair: Path, name: str, to: str) -> None:
    command = [sys.executable, "-m", "jacketcheck", "report", str(repair), "--no-figures"]
    target = repair.with_name("out.html")
    with target.open("wb") as file:
        ran = subprocess.run(
            [*command, "--output", name],
            stdout=file if to == "file" else subprocess.PIPE,
            stderr=subprocess.PIPE,
            check=False,
            timeout=120,
        )
    written = target.read_bytes() if to == "file" else ran.stdout
    assert ran.returncode == 0
    assert ran.stderr == b""
    assert written.startswith(b"<!DOCTYPE html>")
    assert written.rstrip().endswith(b"</html>")


@pytest.mark.parametrize(
    "arguments",
    [
        ["report", "FILE", "-o", "-", "--format", "markdown"],
        ["size", "FILE", "--save", "-"],
        ["shop", "FILE", "-o", "-"],
        ["batch", "FOLDER", "-o", "-"],
    ],
)
def test_what_does_not_fit_into_standard_output_is_refused(
    repair: Path, capsys: pytest.CaptureFixture[str], arguments: list[str]
) -> None:
    names = {"FILE": str(repair), "FOLDER": str(repair.parent)}
    assert main([names.get(one, one) for one in arguments]) == 2
    assert "must be a f" in capsys.readouterr().err
    assert not Path("-").exists()
