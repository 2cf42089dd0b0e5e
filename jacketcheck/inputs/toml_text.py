"""From bytes to TOML tables; whatever is wrong with them is told with its line."""

from __future__ import annotations

import os
import re
import select
import stat
import tomllib
from pathlib import Path
from typing import Any

from jacketcheck.errors import InputError, InputProblem
from jacketcheck.inputs.written import file_name, printable

__all__ = ["decoded", "parse_toml", "refusal", "text_of_file"]

LARGEST_FILE = 250_000
DEEPEST_NESTING = 12
LONGEST_LINE = 2000
_LONGEST_SHOWN_LINE = 80
_PATIENCE = 5.0
"""Time that a pipe may stay silent [s]."""
_BYTE_ORDER_MARK = "\N{ZERO WIDTH NO-BREAK SPACE}"
_POSITION = re.compile(r"(?P<reason>.*) \(at line (?P<line>\d+), column (?P<column>\d+)\)")
_BARE_QUANTITY = re.compile(r"=\s*[+-]?[0-9.][0-9./\- ]*\s*[A-Za-z%°'\"]")


def refusal(source: str, message: str) -> InputError:
    """The error for an input that cannot be read at all."""
    return InputError([InputProblem("", "", message)], source=source)


def text_of_file(path: Path | str) -> tuple[str, str]:
    """Text of a file, and the name by which messages call it.

    Raises
    ------
    InputError
        If the file cannot be read, is too large or is not UTF-8.
    """
    name = file_name(path)
    try:
        content = _content(Path(path))
    except TimeoutError as error:
        raise refusal(name, "is a pipe that nobody writes to") from error
    except OSError as error:
        reason = (error.strerror or type(error).__name__).lower()
        raise refusal(name, f"cannot be read: {reason}") from error
    except ValueError as error:
        raise refusal(name, "cannot be read: not a file name") from error
    if len(content) > LARGEST_FILE:
        raise refusal(name, f"is larger than {LARGEST_FILE // 1000} kB")
    source = file_name(Path(path).name)
    return decoded(content, source), source


def _content(path: Path) -> bytes:
    """Bytes of a file, or of a pipe as long as somebody writes to it; a little more than allowed.

    A pipe that nobody has opened to write would be waited for without end.
    """
    if stat.S_ISREG(path.stat().st_mode):
        with path.open("rb") as file:
            return file.read(LARGEST_FILE + 1)
    content = b""
    handle = os.open(path, os.O_RDONLY | getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_NOCTTY", 0))
    with os.fdopen(handle, "rb", buffering=0) as pipe:
        while len(content) <= LARGEST_FILE:
            if not select.select([pipe], [], [], _PATIENCE)[0]:
                raise TimeoutError
            part = pipe.read(LARGEST_FILE + 1 - len(content))
            if not part:
                break
            content += part
    return content


def decoded(content: bytes, source: str) -> str:
    """Text of a file; raises InputError unless it is UTF-8."""
    try:
        return content.decode("utf-8")
    except UnicodeDecodeError as error:
        line = content[: error.start].count(b"\n") + 1
        raise refusal(source, f"line {line}: is not UTF-8 text") from error


def parse_toml(text: str, source: str) -> dict[str, Any]:
    """The tables of a TOML text.

    Raises
    ------
    InputError
        If the text is empty, is not TOML, or has lines or nested tables beyond all use.
    """
    if not text.strip():
        raise refusal(source, "is empty")
    if text.startswith(_BYTE_ORDER_MARK):
        raise refusal(source, "line 1: starts with a byte order mark; save it as UTF-8 without one")
    for number, line in enumerate(text.split("\n"), start=1):
        if len(line) > LONGEST_LINE:  # a key of many thousand parts keeps the parser busy for hours
            raise refusal(source, f"line {number}: is longer than {LONGEST_LINE} characters")
    try:
        table = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise refusal(source, _syntax_message(str(error), text)) from error
    except RecursionError as error:
        raise refusal(source, f"nests more than {DEEPEST_NESTING} levels") from error
    except ValueError as error:
        # Python refuses to convert a decimal integer of more than some thousand digits
        raise refusal(source, "is not valid TOML: an integer is too long") from error
    if _is_deeper(table, DEEPEST_NESTING):
        raise refusal(source, f"nests more than {DEEPEST_NESTING} levels")
    return table


def _syntax_message(message: str, text: str) -> str:
    """The parser's message behind the line that it is about."""
    found = _POSITION.fullmatch(message)
    if found is None:
        return f"is not valid TOML: {_lower_first(printable(message))}"
    number = int(found["line"])
    line = text.split("\n")[number - 1].strip()
    hint = "; a quantity stands in quotes" if _BARE_QUANTITY.search(line) else ""
    reason = _lower_first(printable(found["reason"]))
    if reason == "cannot overwrite a value":
        reason = "the key is there already"
    return f"line {number}, column {found['column']}: {reason}{hint}: {_cut(printable(line))}"


def _is_deeper(table: dict[str, Any], levels: int) -> bool:
    """Whether tables and lists nest deeper than some levels; not recursive, so never too deep."""
    layer: list[Any] = [table]
    for _ in range(levels):
        layer = [
            child
            for parent in layer
            for child in (parent.values() if isinstance(parent, dict) else parent)
            if isinstance(child, dict | list)
        ]
        if not layer:
            return False
    return True


def _cut(line: str) -> str:
    return line if len(line) <= _LONGEST_SHOWN_LINE else f"{line[:_LONGEST_SHOWN_LINE]}…"


def _lower_first(text: str) -> str:
    return text[:1].lower() + text[1:]
