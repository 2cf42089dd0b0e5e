"""The files of the output: put together from the journal at the end, all or none of them new."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from contextlib import ExitStack, contextmanager
from pathlib import Path
from typing import Literal, NamedTuple, TypeAlias

from jacketcheck.batch.journal import FILE_NAME, Entry
from jacketcheck.batch.sheets import Sheet, csv_sheet, parquet_sheet, require_pyarrow
from jacketcheck.batch.summary import Gathering
from jacketcheck.batch.tables import (
    PIER_COLUMNS,
    RESULT_COLUMNS,
    Column,
    pier_lines,
    result_cells,
)
from jacketcheck.errors import InputError, InputProblem
from jacketcheck.files import remove_leftovers, stream_atomically
from jacketcheck.inputs.written import printable
from jacketcheck.units import DisplaySystem

__all__ = ["Form", "assemble", "output_names", "prepare", "require_own", "stale_names"]

Form: TypeAlias = Literal["csv", "parquet"]

_FORMS: tuple[Form, ...] = ("csv", "parquet")
_TABLES: dict[str, tuple[Column, ...]] = {"results": RESULT_COLUMNS, "piers": PIER_COLUMNS}
_SUMMARY = "summary.txt"


class _Sheets(NamedTuple):
    results: list[Sheet]
    piers: list[Sheet]


def output_names(forms: Iterable[Form]) -> tuple[str, ...]:
    """Names of the files that a run writes beside the journal."""
    return (*(f"{table}.{form}" for table in _TABLES for form in forms), _SUMMARY)


def stale_names(forms: Iterable[Form]) -> tuple[str, ...]:
    """Names of tables in other forms, which an earlier run may have left."""
    others = [form for form in _FORMS if form not in set(forms)]
    return tuple(name for name in output_names(others) if name != _SUMMARY)


def require_own(folder: Path, *, overwrite: bool) -> None:
    """Refuse a folder with files in the way that no earlier run has left.

    Raises
    ------
    InputError
        If a file that a run would replace or remove is there without a journal and may not be
        replaced, or is none: a link, a folder or a pipe.
    """
    own = overwrite or (folder / FILE_NAME).exists()
    problems = []
    for name in (*output_names(_FORMS), FILE_NAME):
        path = folder / name
        if path.is_symlink() or (path.exists() and not path.is_file()):
            problems.append(InputProblem("", "", f"{name} is not a regular file"))
        elif path.exists() and not own:
            message = f"{name} exists already, and is of no earlier run; --overwrite replaces it"
            problems.append(InputProblem("", "", message))
    if problems:
        raise InputError(problems, source=printable(str(folder)))


def prepare(folder: Path, forms: Iterable[Form]) -> None:
    """Make sure that the forms can be written, and clear what killed runs have left."""
    if "parquet" in forms:
        require_pyarrow()
    for name in output_names(_FORMS):
        remove_leftovers(folder / name)


def assemble(
    entries: Iterable[Entry],
    folder: Path,
    *,
    forms: tuple[Form, ...],
    system: DisplaySystem | None,
    summary_text: Callable[[Gathering], str],
) -> tuple[Path, ...]:
    """Write the tables and the summary in one pass over the journal.

    Each file takes its place when all are complete. Tables in a form that is not asked for are
    removed: they would tell of an earlier inventory.

    Parameters
    ----------
    entries
        Files of the inventory, in the order in which they are shown.
    folder
        Where to write.
    forms
        Forms of the tables.
    system
        Units of demand and capacity; None for N, mm and MPa.
    summary_text
        Words the summary.

    Returns
    -------
    tuple of Path
        What was written.
    """
    gathering = Gathering()
    with stream_atomically(folder / _SUMMARY) as summary, _sheets(folder, forms) as sheets:
        for entry in entries:
            lines = list(pier_lines(entry))
            gathering.add(lines)
            for line in lines:
                for sheet in sheets.piers:
                    sheet.write(line.cells)
                for cells in result_cells(line, system):
                    for sheet in sheets.results:
                        sheet.write(cells)
        summary.write(summary_text(gathering).encode())
    for name in stale_names(forms):
        (folder / name).unlink(missing_ok=True)
    return tuple(folder / name for name in output_names(forms))


@contextmanager
def _sheets(folder: Path, forms: tuple[Form, ...]) -> Iterator[_Sheets]:
    """Every table in every form; the files are replaced when the context ends without error."""
    makers = {"csv": csv_sheet, "parquet": parquet_sheet}
    with ExitStack() as files, ExitStack() as sheets:
        opened: dict[str, list[Sheet]] = {table: [] for table in _TABLES}
        for table, columns in _TABLES.items():
            for form in forms:
                stream = files.enter_context(stream_atomically(folder / f"{table}.{form}"))
                opened[table].append(sheets.enter_context(makers[form](stream, columns)))
        yield _Sheets(opened["results"], opened["piers"])
