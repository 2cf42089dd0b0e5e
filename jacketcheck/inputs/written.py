"""How messages show what the user wrote: values as in TOML, paths with list entries from one.

What a file holds may be anything; nothing of it reaches a terminal that is not printable.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

__all__ = ["dotted", "file_name", "printable", "shown"]

_LONGEST_PATH = 200
_LONGEST_VALUE = 60
_LONGEST_STEP = 40
_LONGEST_NUMBER_BITS = 400
_BARE_KEY = re.compile(r"[A-Za-z0-9_-]+")
_ESCAPES = {"\n": r"\n", "\t": r"\t", "\r": r"\r", '"': r"\"", "\\": r"\\"}


def shown(value: object) -> str:
    r"""A value as TOML writes it, cut where it is long.

    Examples
    --------
    >>> shown(True), shown("10 mm"), shown(["a", 2])
    ('true', '"10 mm"', '["a", 2]')
    >>> print(shown("a\x1b[31m"))
    "a\u001b[31m"
    """
    text = _toml(value)
    if len(text) <= _LONGEST_VALUE:
        return text
    return f"{text[:_LONGEST_VALUE]}…"


def dotted(steps: Iterable[int | str]) -> str:
    """Path of a field; list indices, which come from zero, are shown from one.

    Examples
    --------
    >>> dotted(("damage", 0, "height")), dotted(("variants", "snug and thin", "bolts"))
    ('damage.1.height', 'variants."snug and thin".bolts')
    """
    return ".".join(str(step + 1) if isinstance(step, int) else _key(step) for step in steps)


def file_name(path: object) -> str:
    """A path as it was given, cut from the front if it is long: its end tells the file.

    Examples
    --------
    >>> file_name("piers/north.toml")
    'piers/north.toml'
    """
    text = printable(str(path))
    return text if len(text) <= _LONGEST_PATH else f"…{text[-_LONGEST_PATH:]}"


def printable(text: str) -> str:
    """Text in one line with escapes for everything that a terminal would not print."""
    return "".join(one if one.isprintable() else _escaped(one) for one in text)


def _toml(value: object) -> str:
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, str):
        return _quoted(value[: _LONGEST_VALUE + 1])
    if isinstance(value, int) and value.bit_length() > _LONGEST_NUMBER_BITS:
        return f"an integer of {value.bit_length()} bits"
    if isinstance(value, list | tuple):
        return "[" + ", ".join(_toml(entry) for entry in value[:_LONGEST_VALUE]) + "]"
    if isinstance(value, dict):
        pairs = list(value.items())[:_LONGEST_VALUE]
        return "{" + ", ".join(f"{_key(str(key))} = {_toml(one)}" for key, one in pairs) + "}"
    return printable(str(value))


def _key(text: str) -> str:
    cut = text if len(text) <= _LONGEST_STEP else f"{text[:_LONGEST_STEP]}…"
    return cut if _BARE_KEY.fullmatch(cut) else _quoted(cut)


def _quoted(text: str) -> str:
    return '"' + "".join(_ESCAPES.get(one) or printable(one) for one in text) + '"'


def _escaped(character: str) -> str:
    number = ord(character)
    return f"\\u{number:04x}" if number < 0x10000 else f"\\U{number:08x}"
