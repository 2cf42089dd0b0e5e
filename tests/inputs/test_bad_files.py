"""Files that cannot be read at all: always one InputError, with the line where there is one."""

from __future__ import annotations

import tomllib
from pathlib import Path

import pytest

from jacketcheck.errors import InputError
from jacketcheck.inputs import read_input, read_text


def message_of(text: str) -> str:
    with pytest.raises(InputError) as caught:
        read_text(text)
    (problem,) = caught.value.problems
    return str(problem)


@pytest.mark.parametrize("text", ["", "  \n\t\n"])
def test_empty(text: str) -> None:
    assert message_of(text) == "is empty"


def test_every_missing_table_is_told() -> None:
    with pytest.raises(InputError) as caught:
        read_text("# nothing but a remark")
    assert [str(problem) for problem in caught.value.problems] == [
        f"{name}: is missing"
        for name in ("job", "column", "repair", "sleeve", "splice", "bolts", "grout", "actions")
    ]


@pytest.mark.parametrize(
    ("text", "message"),
    [
        pytest.param(
            '[job]\ntitle = "a"\nthickness = 10 mm\n',
            "line 3, column 16: expected newline or end of document after a statement; "
            "a quantity stands in quotes: thickness = 10 mm",
            id="quantity without quotes",
        ),
        pytest.param(
            "[job]\ntitle = 3/8 in\n",
            "line 2, column 10: expected newline or end of document after a statement; "
            "a quantity stands in quotes: title = 3/8 in",
            id="fraction without quotes",
        ),
        pytest.param(
            'a = "1"\nb = "2"\na = "3"\n',
            'line 3, column 8: the key is there already: a = "3"',
            id="key twice",
        ),
        pytest.param(
            "[job]\n[job]\n",
            "line 2, column 5: cannot declare ('job',) twice: [job]",
            id="table twice",
        ),
        pytest.param("a = 1\n= 2\n", "line 2, column 1: invalid statement: = 2", id="no key"),
        pytest.param('a = "1\n', 'line 1, column 7: illegal character \'\\n\': a = "1', id="quote"),
        pytest.param("a = [1", "is not valid TOML: unclosed array (at end of document)", id="end"),
        pytest.param("a = 1\x00", "line 1, column 6: expected newline or end of document after a "
                     "statement: a = 1\\u0000", id="null character"),
        pytest.param("\ufeffa = 1", "line 1: starts with a byte order mark; save it as UTF-8 "
                     "without one", id="byte order mark"),
        pytest.param("a = 1" + "0" * 1990, "x", id="long line"),
    ],
)  # fmt: skip
def test_syntax(text: str, message: str) -> None:
    if message == "x":
        assert message_of(text + "0" * 10) == "line 1: is longer than 2000 characters"
    else:
        assert message_of(text) == message


def test_an_integer_that_python_refuses_is_no_traceback() -> None:
    digits = "1" + "0" * 1900
    with pytest.raises(InputError):
        read_text(f"[judgement]\ncrack_friction = {digits}\n")


@pytest.mark.parametrize(
    "text",
    [
        pytest.param("a = " + "[" * 13 + "]" * 13, id="lists"),
        pytest.param("a = " + "[" * 900 + "]" * 900, id="lists beyond the parser's recursion"),
        pytest.param("a." * 900 + "a = 1", id="dotted key"),
        pytest.param("[" + ".".join("a" * 900) + "]", id="table header"),
        pytest.param("a = " + "{a=" * 400 + "1" + "}" * 400, id="inline tables"),
    ],
)
def test_deep_nesting(text: str) -> None:
    assert message_of(text) == "nests more than 12 levels"


def test_a_hostile_key_does_not_keep_the_parser_busy(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delattr(tomllib, "loads")  # it is never asked
    assert message_of("a." * 100_000 + "a = 1") == "line 1: is longer than 2000 characters"


@pytest.mark.parametrize(
    ("content", "message"),
    [
        pytest.param(b"a = 1\nb = '\xe9'\n", "line 2: is not UTF-8 text", id="Latin-1"),
        pytest.param("a = 1".encode("utf-16"), "line 1: is not UTF-8 text", id="UTF-16"),
        pytest.param(
            b"\xef\xbb\xbfa = 1",
            "line 1: starts with a byte order mark; save it as UTF-8 without one",
            id="byte order mark",
        ),
        pytest.param(b"", "is empty", id="empty"),
        pytest.param(b"#" * 250_001, "is larger than 250 kB", id="large"),
    ],
)
def test_bytes(tmp_path: Path, content: bytes, message: str) -> None:
    path = tmp_path / "repair.toml"
    path.write_bytes(content)
    with pytest.raises(InputError) as caught:
        read_input(path)
    assert str(caught.value).splitlines()[1:] == [f"  {message}"]


def test_a_missing_file(tmp_path: Path) -> None:
    with pytest.raises(InputError, match="cannot be read: no such file or directory"):
        read_input(tmp_path / "none.toml")


def test_a_directory(tmp_path: Path) -> None:
    with pytest.raises(InputError, match="cannot be read: is a directory"):
        read_input(tmp_path)


@pytest.mark.parametrize("name", ["a\0b", "x" * 5000, "\x1b[31m.toml"])
def test_hostile_file_names(name: str) -> None:
    with pytest.raises(InputError, match="cannot be read") as caught:
        read_input(name)
    assert str(caught.value).replace("\n", "").isprintable()
