"""Whatever an input says, no file is opened but the input itself and what the command writes."""

from __future__ import annotations

import os
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any, Final

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from jacketcheck.as_built import read_as_built_text
from jacketcheck.cli.main import main
from jacketcheck.errors import InputError
from jacketcheck.inputs import read_text
from tests.fuzz.toml_writing import value_text

ROOT: Final = Path(__file__).parents[2]
REPAIR: Final = (ROOT / "tests" / "inputs" / "repair_us.toml").read_text("utf-8")
RECORD: Final = (ROOT / "tests" / "as_built" / "willow_weir_built.toml").read_text("utf-8")
WILLOW: Final = (ROOT / "tests" / "schedule" / "willow_weir.toml").read_text("utf-8")
_WATCHED: Final = (
    "open",
    "os.",
    "socket.",
    "subprocess.",
    "shutil.",
    "glob.",
    "urllib.",
    "ftplib.",
)
_INSTALLED: Final = tuple({os.path.realpath(sys.prefix), os.path.realpath(sys.base_prefix)})

_seen: list[tuple[str, str]] | None = None


def _hook(event: str, arguments: tuple[Any, ...]) -> None:
    """An audit hook cannot be taken away; it only writes down while somebody listens."""
    if _seen is not None and event.startswith(_WATCHED):
        _seen.append((event, str(arguments[0]) if arguments else ""))


sys.addaudithook(_hook)


@contextmanager
def watched() -> Iterator[list[tuple[str, str]]]:
    """What is opened meanwhile."""
    global _seen  # noqa: PLW0603 - the hook is the process's
    found: list[tuple[str, str]] = []
    _seen = found
    try:
        yield found
    finally:
        _seen = None


def foreign(seen: list[tuple[str, str]], *allowed: Path) -> list[tuple[str, str]]:
    """What was opened besides our own modules, installed libraries and what is allowed."""
    ours = (str(ROOT / "jacketcheck"), "/dev/null", *_INSTALLED, *map(str, allowed))
    return [
        (event, path)
        for event, path in seen
        if not path.startswith(ours) and not path.isdigit()  # a number is an open file's
    ]


@pytest.fixture
def bait(tmp_path: Path) -> Path:
    """A file that is there to be opened, if anything opens what an input names."""
    path = tmp_path / "bait.toml"
    path.write_text('secret = "of no concern"\n', "utf-8")
    return path


def disguises(bait: Path) -> list[str]:
    """Ways to name a file in a text."""
    return [
        str(bait), f"file://{bait}", f"../{bait.name}", f"~/{bait.name}", f"$(cat {bait})",
        f"`cat {bait}`", f"!include {bait}", f"@{bait}", f"{{{{{bait}}}}}", f"${{file:{bait}}}",
        f"![x]({bait})", f'<img src="{bait}">', f"<!ENTITY x SYSTEM '{bait}'>", f"| cat {bait}",
        f"\\\\host\\share\\{bait.name}", f"http://127.0.0.1:9{bait}", f"%{bait}%", "/dev/stdin",
        f"../../../../../..{bait}", f"{bait}#1", f"py:open('{bait}')", f"$\\input{{{bait}}}$",
    ]  # fmt: skip


def hostile_repair(text: str) -> str:
    """A valid repair whose every free text, and a variant, names a file."""
    written = REPAIR
    for field in ("title", "number", "engineer", "note"):
        old = next(line for line in written.splitlines() if line.startswith(f"{field} = "))
        written = written.replace(old, f"{field} = {value_text(text)}", 1)
    written = written.replace('variant = "base"', 'variant = "as written"', 1)
    return f"{written}\n[variants.{value_text(text[:60])}]\nsleeve.thickness = '10 mm'\n"


@pytest.fixture
def repair(tmp_path: Path) -> Callable[[str], Path]:
    def write(text: str) -> Path:
        path = tmp_path / "in" / "repair.toml"
        path.parent.mkdir(exist_ok=True)
        path.write_text(hostile_repair(text), "utf-8")
        return path

    return write


def run(*arguments: object) -> int:
    try:
        return main([str(one) for one in arguments])
    except SystemExit as stop:
        return int(stop.code or 0)


_COMMANDS: Final[dict[str, tuple[str, ...]]] = {
    "check": ("--variant", "all"),
    "check as JSON": ("--format", "json"),
    "explain": ("seam-slip",),
    "bolts": (),
    "sweep": ("--vary", "sleeve.thickness=10 mm,12 mm", "--only", "hoop-clamping"),
    "report": ("--no-figures", "--variant", "all", "--overwrite", "--output", "OUT/report.html"),
    "report in Markdown": ("--no-figures", "--overwrite", "--output", "OUT/report.md"),
    "report with figures": ("--overwrite", "--output", "OUT/report.html"),
    "draw": ("plan", "--variant", "all", "--overwrite", "--output", "OUT"),
    "shop": ("--output", "OUT", "--overwrite"),
}


@pytest.mark.parametrize("name", _COMMANDS)
def test_commands_open_their_input_and_output_alone(
    tmp_path: Path,
    bait: Path,
    repair: Callable[[str], Path],
    capsys: pytest.CaptureFixture[str],
    name: str,
) -> None:
    out, command = tmp_path / "out", name.split()[0]  # noqa: PLC0207 - plainer
    out.mkdir()
    more = [one.replace("OUT", str(out)) for one in _COMMANDS[name]]
    texts = disguises(bait)[: 3 if command in {"report", "draw", "shop"} else 10]
    for place, text in enumerate([texts[0], *texts]):
        path = repair(text)
        with watched() as seen:
            code = run(command, path, *more)
        assert code in {0, 1, 3}, (text, capsys.readouterr().err)
        if place:  # the first run also reads what libraries need
            assert foreign(seen, path, out) == [], text
        assert str(bait) not in [opened for _, opened in seen]
    folders = {path.parent for path in tmp_path.rglob("*") if path.is_file()}
    assert folders <= {tmp_path, path.parent, out, *out.iterdir()}


def test_confirm_opens_its_two_files_alone(
    tmp_path: Path, bait: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    repair, record = tmp_path / "repair.toml", tmp_path / "record.toml"
    repair.write_text(WILLOW, "utf-8")
    for place, text in enumerate(disguises(bait)[:8]):
        written = RECORD.replace('"Shop and site records, pier 2"', value_text(text))
        record.write_text(written.replace('"C. Tester"', value_text(text)), "utf-8")
        with watched() as seen:
            code = run("confirm", repair, record)
        assert code in {0, 1, 3}, (text, capsys.readouterr().err)
        assert not place or foreign(seen, repair, record) == []
        assert str(bait) not in [path for _, path in seen]


@given(data=st.data())
@settings(
    max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
def test_no_field_of_an_input_opens_a_file(bait: Path, data: st.DataObject) -> None:
    text = data.draw(st.sampled_from(disguises(bait)))
    lines = (REPAIR if data.draw(st.booleans()) else RECORD).splitlines()
    quoted = [place for place, line in enumerate(lines) if ' = "' in line]
    place = data.draw(st.sampled_from(quoted))
    lines[place] = f"{lines[place].split(' = ')[0]} = {value_text(text)}"
    with watched() as seen:
        for read in (read_text, read_as_built_text):
            try:
                read("\n".join(lines))
            except InputError as error:
                str(error)
    assert foreign(seen) == []
