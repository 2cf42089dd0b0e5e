"""Whatever happens to what is printed, the exit code tells the verdict."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path
from typing import Final

import pytest

from jacketcheck.cli._streams import Outlet

ROOT: Final = Path(__file__).parents[2]
CASE: Final = ROOT / "reference_cases" / "quarry-road-pier" / "repair.toml"
JACKETCHECK: Final = f"{sys.executable} -m jacketcheck"
EXCEEDS: Final = f"{JACKETCHECK} check {CASE} --variant thin"


def shell(command: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(["/bin/bash", "-c", command], capture_output=True, text=True, check=False)


@pytest.mark.parametrize(
    ("command", "code"),
    [
        (f"{EXCEEDS} | true; exit ${{PIPESTATUS[0]}}", 1),
        (f"{EXCEEDS} | head -1; exit ${{PIPESTATUS[0]}}", 1),
        (f"{EXCEEDS} --format json | head -c 1; exit ${{PIPESTATUS[0]}}", 1),
        (f"{JACKETCHECK} check {CASE} | true; exit ${{PIPESTATUS[0]}}", 0),
        (f"{EXCEEDS} >&-", 2),
        (f"{EXCEEDS} >/dev/full", 2),
        (f"{EXCEEDS} >&- 2>&-", 2),
        (f"{JACKETCHECK} check none.toml 2>/dev/full", 2),
        (f"{JACKETCHECK} check none.toml 2>&-", 2),
        (f"{JACKETCHECK} check none.toml >&- 2>&-", 2),
        (f"{JACKETCHECK} check {CASE} --colour 2>/dev/full", 2),
        (f"{JACKETCHECK} check {CASE} <&-", 0),
    ],
)
def test_exit_codes_do_not_depend_on_the_streams(command: str, code: int) -> None:
    ran = shell(command)
    assert ran.returncode == code
    assert "Traceback" not in ran.stderr
    assert "Exception ignored" not in ran.stderr


def test_a_closed_output_is_told() -> None:
    assert shell(f"{EXCEEDS} >&-").stderr == "jacketcheck: cannot write the output: it is closed\n"


def test_messages_do_not_stray_into_the_output() -> None:
    assert shell(f"{JACKETCHECK} check none.toml 2>&-").stdout == ""


def test_files_do_not_take_the_place_of_a_closed_stream(tmp_path: Path) -> None:
    piers = tmp_path / "piers"
    piers.mkdir()
    (piers / "pier.toml").write_bytes(CASE.read_bytes())
    batch = f"{JACKETCHECK} batch {piers} -o {tmp_path / 'out'} --workers 1"
    assert shell(f"{batch} >&- 2>&-").returncode == 2
    again = shell(batch)  # the journal is sound
    assert again.returncode == 0
    assert "checked 0 of 1 files now, 1 before" in again.stdout


@pytest.mark.parametrize("backend", ["nonsense", "module://none", ""])
def test_any_backend_in_the_environment(tmp_path: Path, backend: str) -> None:
    ran = shell(f"MPLBACKEND={backend} {JACKETCHECK} draw {CASE} plan -o {tmp_path / 'plan.png'}")
    assert (ran.returncode, ran.stderr) == (0, "")
    assert (tmp_path / "plan.png").read_bytes().startswith(b"\x89PNG")


def test_schemas_do_not_depend_on_optimization() -> None:
    names = "input output as-built bolts confirm chance size sweep"
    command = f"for name in {names}; do {JACKETCHECK} schema $name || exit; done"
    plain, *others = (
        shell(f"export PYTHONOPTIMIZE={level}; {command}").stdout for level in (0, 1, 2)
    )
    assert '"description": "Loads and seismic demands."' in plain
    assert plain.count('"$schema"') == 8
    assert others == [plain, plain]


def test_an_outlet_passes_on_until_the_first_failure() -> None:
    class Full(Outlet):
        pass

    class Stream:
        closed = False
        taken = ""

        def write(self, text: str) -> None:
            if text == "full":
                raise OSError(28, "no room")
            self.taken += text

    stream = Stream()
    outlet = Full(stream)  # type: ignore[arg-type] # what it needs of a stream
    for text in ("a", "b", "full", "c"):
        outlet.write(text)
    assert stream.taken == "ab"
    assert outlet.error is not None
    assert not outlet.reader_left
