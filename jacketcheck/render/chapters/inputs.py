"""The input as it was written and as it was used, and what each variant overrides."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any, Final, NamedTuple

from pydantic import BaseModel

from jacketcheck.inputs.fields import quantity_of
from jacketcheck.inputs.load import InputFile
from jacketcheck.inputs.repair_file import RepairInput
from jacketcheck.inputs.written import dotted
from jacketcheck.render.report_parts import Chapter, Column, Paragraph, Table
from jacketcheck.units import display

__all__ = ["inputs"]

_NOT_CHECKED: Final = frozenset({"job", "sizing"})
_DEFAULT: Final = "default"
_WIDTHS: Final = (24, 40, 18, 18)


class _Line(NamedTuple):
    """One field: path, meaning, as written (None where it was left out), as used."""

    path: str
    meaning: str
    written: str | None
    used: str


def inputs(repair: InputFile, variants: Sequence[str]) -> Chapter:
    """Every field of the file, table by table, then the overrides of the variants."""
    lines = list(_lines(repair.base, repair.written[repair.base_name], ()))
    blocks: list[Table | Paragraph] = [
        Paragraph(
            f"The file without overrides, which is variant {repair.base_name}. Numbers were used "
            "in N, mm and MPa and are shown in SI; what was left out has its default."
        )
    ]
    for name in RepairInput.model_fields:
        own = [line for line in lines if line.path.partition(".")[0] == name]
        if own:
            blocks.append(_table(name, own))
    others = [name for name in variants if name != repair.base_name]
    if others:
        blocks.append(_overrides(repair, lines, others))
    return Chapter("Input", "input", tuple(blocks))


def _table(name: str, lines: list[_Line]) -> Table:
    columns = tuple(Column(text) for text in ("field", "meaning", "as written", "as used"))
    rows = tuple(
        (line.path, line.meaning, _DEFAULT if line.written is None else line.written, line.used)
        for line in lines
    )
    return Table(f"Input: {name.replace('_', ' ')}", columns, rows, widths=_WIDTHS)


def _overrides(repair: InputFile, base: list[_Line], variants: Sequence[str]) -> Table:
    """Fields in which the variants differ from the file, one column for each."""
    columns = {repair.base_name: base}
    for name in variants:
        columns[name] = list(_lines(repair.variants[name], repair.written[name], ()))
    paths = list(dict.fromkeys(line.path for lines in columns.values() for line in lines))
    values = {
        name: {line.path: _DEFAULT if line.written is None else line.written for line in lines}
        for name, lines in columns.items()
    }
    rows = []
    for path in paths:
        cells = [of_variant.get(path, "–") for of_variant in values.values()]
        if len(set(cells)) > 1:
            rows.append((path, *cells))
    headings = tuple(Column(text) for text in ("field", *columns))
    return Table("Fields in which variants differ, as written", headings, tuple(rows))


def _lines(
    model: BaseModel, written: Mapping[str, Any], path: tuple[int | str, ...]
) -> Iterator[_Line]:
    for name, info in type(model).model_fields.items():
        if not path and name in _NOT_CHECKED:
            continue
        value, here = getattr(model, name), (*path, name)
        given = written.get(name)
        if isinstance(value, BaseModel):
            yield from _lines(value, given if isinstance(given, Mapping) else {}, here)
        elif isinstance(value, tuple) and value and isinstance(value[0], BaseModel):
            entries = given if isinstance(given, Sequence) else ()
            for index, entry in enumerate(value):
                own = entries[index] if index < len(entries) else {}
                yield from _lines(entry, own if isinstance(own, Mapping) else {}, (*here, index))
        elif value is not None or given is not None:
            quantity = quantity_of(info)
            unit = "" if quantity is None else quantity.unit
            shown = None if name not in written else _text(given)
            if shown is None and value == ():
                continue
            yield _Line(dotted(here), info.description or "", shown, _used(value, unit))


def _text(value: object) -> str:
    """A value as it stands in the file, without its quotes."""
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, list | tuple):
        return ", ".join(_text(entry) for entry in value)
    return str(value)


def _used(value: Any, unit: str) -> str:
    if not unit or not isinstance(value, float | int) or isinstance(value, bool):
        return _text(value)
    factor, printed = display(unit, "si")
    text = f"{value * factor:.6g}"
    return text if printed == "—" else f"{text} {printed}".replace(" °", "°")
