"""Tables as TOML text: a key a line, whatever the values are, so that any tree can be tried."""

from __future__ import annotations

import datetime as dt
import json
import re
from typing import Any

__all__ = ["Table", "document", "value_text"]

Table = dict[str, Any]
_BARE = re.compile(r"[A-Za-z0-9_-]+")


def document(table: Table) -> str:
    """A file with one header for each table, and each list of tables as such."""
    return "".join(f"{line}\n" for line in _lines(table, ()))


def value_text(value: Any) -> str:
    """A value as TOML writes it in a line."""
    if isinstance(value, bool):
        return str(value).lower()
    if isinstance(value, str):
        return _quoted(value)
    if isinstance(value, list):
        return f"[{', '.join(value_text(one) for one in value)}]"
    if isinstance(value, dict):
        pairs = (f"{_key(key)} = {value_text(one)}" for key, one in value.items())
        return f"{{{', '.join(pairs)}}}"
    return value.isoformat() if isinstance(value, dt.date) else repr(value)


def _lines(table: Table, path: tuple[str, ...]) -> list[str]:
    plain = {key: one for key, one in table.items() if not _has_header(one)}
    lines = [f"[{_dotted(path)}]"] if path and (plain or not table) else []
    lines += [f"{_key(key)} = {value_text(one)}" for key, one in plain.items()]
    for key, one in table.items():
        if isinstance(one, dict):
            lines += ["", *_lines(one, (*path, key))]
        elif key not in plain:
            for entry in one:
                inside = [f"{_key(name)} = {value_text(inner)}" for name, inner in entry.items()]
                lines += ["", f"[[{_dotted((*path, key))}]]", *inside]
    return lines


def _has_header(value: Any) -> bool:
    if isinstance(value, dict):
        return True
    return isinstance(value, list) and bool(value) and all(isinstance(one, dict) for one in value)


def _dotted(path: tuple[str, ...]) -> str:
    return ".".join(_key(key) for key in path)


def _key(text: str) -> str:
    return text if _BARE.fullmatch(text) else _quoted(text)


def _quoted(text: str) -> str:
    # what is not ASCII stays as it is: JSON would write surrogate pairs
    return json.dumps(text, ensure_ascii=False).replace("\x7f", "\\u007f")
