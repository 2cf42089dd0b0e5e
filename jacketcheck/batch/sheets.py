"""Tables written line by line, as CSV or as Parquet; memory does not grow with their length."""

from __future__ import annotations

import csv
import io
import math
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from typing import Any, BinaryIO, Protocol

from jacketcheck.batch.tables import Cell, Column
from jacketcheck.errors import MissingExtraError
from jacketcheck.render.records import plain_cell

__all__ = ["Sheet", "csv_sheet", "parquet_sheet", "require_pyarrow"]

_LINES_IN_A_GROUP = 20_000


class Sheet(Protocol):
    """Something that takes the lines of a table, one after the other."""

    def write(self, cells: Sequence[Cell]) -> None:
        """Add a line."""


class _CsvSheet:
    def __init__(self, text: io.TextIOBase) -> None:
        self._writer = csv.writer(text, lineterminator="\n")

    def write(self, cells: Sequence[Cell]) -> None:
        self._writer.writerow([plain_cell(_worded(cell)) for cell in cells])


def _worded(cell: Cell) -> Cell:
    return "infinite" if isinstance(cell, float) and math.isinf(cell) else cell


@contextmanager
def csv_sheet(stream: BinaryIO, columns: Sequence[Column]) -> Iterator[Sheet]:
    """A table as CSV in UTF-8, with headings; ``infinite`` as in that of a single check."""
    text = io.TextIOWrapper(stream, encoding="utf-8", newline="")
    sheet = _CsvSheet(text)
    sheet.write([name for name, _ in columns])
    try:
        yield sheet
    finally:
        text.detach()  # flushes, and leaves the stream to whoever opened it


class _ParquetSheet:
    def __init__(self, stream: BinaryIO, columns: Sequence[Column]) -> None:
        import pyarrow as pa  # noqa: PLC0415 - an extra
        import pyarrow.parquet as pq  # noqa: PLC0415 - an extra

        kinds = {"text": pa.string(), "number": pa.float64(), "count": pa.int64()}
        self._schema: Any = pa.schema([(name, kinds[kind]) for name, kind in columns])
        self._writer: Any = pq.ParquetWriter(stream, self._schema, compression="zstd")
        self._table = pa.Table.from_arrays
        self._array = pa.array
        self._lines: list[Sequence[Cell]] = []

    def write(self, cells: Sequence[Cell]) -> None:
        self._lines.append(cells)
        if len(self._lines) >= _LINES_IN_A_GROUP:
            self._flush()

    def close(self) -> None:
        if self._lines:
            self._flush()
        self._writer.close()

    def _flush(self) -> None:
        columns = zip(*self._lines, strict=True)
        arrays = [
            self._array(column, type=field.type)
            for column, field in zip(columns, self._schema, strict=True)
        ]
        self._writer.write_table(self._table(arrays, schema=self._schema))
        self._lines.clear()


@contextmanager
def parquet_sheet(stream: BinaryIO, columns: Sequence[Column]) -> Iterator[Sheet]:
    """A table as Parquet; raises MissingExtraError without pyarrow."""
    require_pyarrow()
    sheet = _ParquetSheet(stream, columns)
    try:
        yield sheet
    finally:
        sheet.close()


def require_pyarrow() -> None:
    """Raise MissingExtraError unless pyarrow can be imported."""
    try:
        import pyarrow as pa  # noqa: F401, PLC0415 - an extra
    except ImportError as error:
        raise MissingExtraError("parquet", "pyarrow") from error
