"""What has been done so far, kept so that a run can be ended at any moment and taken up again.

One SQLite file beside the output. Results are only ever added, in transactions that are on the
disk before anything is told of them; a run that is killed leaves the file as it was after the last
one. A result counts for the same file name with the same content, checked with the same settings:
a file that was changed is checked again, one that was not is not. What failed through no fault of
the file is tried again.
"""

from __future__ import annotations

import contextlib
import sqlite3
from collections.abc import Iterable, Iterator
from pathlib import Path
from types import TracebackType
from typing import Any, NamedTuple, Self

from jacketcheck.batch.finding import FoundFile
from jacketcheck.batch.job import Fate, Outcome
from jacketcheck.batch.settings import BatchSettings
from jacketcheck.errors import InputError, InputProblem

__all__ = ["FILE_NAME", "Entry", "Finished", "Journal"]

FILE_NAME = "journal.sqlite"
_FORMAT = 2
_PAGE = 256
_SCHEMA = (
    "CREATE TABLE settings (digest TEXT PRIMARY KEY, text TEXT NOT NULL) WITHOUT ROWID",
    """CREATE TABLE evaluations (id INTEGER PRIMARY KEY, name BLOB NOT NULL, sha256 TEXT NOT NULL,
    settings TEXT NOT NULL, fate TEXT NOT NULL, body BLOB NOT NULL)""",
    "CREATE INDEX by_key ON evaluations (name, sha256, settings)",
    f"PRAGMA user_version = {_FORMAT}",
)
_INVENTORY = (
    "CREATE TEMP TABLE inventory (name BLOB PRIMARY KEY, sha256 TEXT NOT NULL DEFAULT '', "
    "problem TEXT NOT NULL DEFAULT '') WITHOUT ROWID"
)
_LAST = (
    "SELECT body, fate FROM evaluations WHERE name = ? AND sha256 = ? AND settings = ? "
    "ORDER BY id DESC LIMIT 1"
)


_BEGIN_ANEW = "--fresh begins anew"


class Finished(NamedTuple):
    """A file that has been evaluated: name, SHA-256 of its content, and what came of it."""

    name: bytes
    sha256: str
    outcome: Outcome


class Entry(NamedTuple):
    """A file of the inventory as the output shows it.

    Attributes
    ----------
    name, sha256
        The file; no hash where it could not be read.
    fate, body
        What came of it; no body where it could not be read.
    problem
        Why it could not be read.
    """

    name: bytes
    sha256: str
    fate: Fate
    body: bytes | None
    problem: str


class Journal:
    """The journal of a folder, held by one run at a time.

    Parameters
    ----------
    folder
        Where the output goes.
    settings
        What files are checked with.
    fresh
        Whether to begin anew.

    Raises
    ------
    InputError
        If another run holds the journal, or it cannot be used.
    """

    def __init__(self, folder: Path, settings: BatchSettings, *, fresh: bool = False) -> None:
        self._path = folder / FILE_NAME
        self._settings = settings.digest
        self._database = self._opened(fresh=fresh)
        with self._transaction():
            self._database.execute(
                "INSERT OR IGNORE INTO settings VALUES (?, ?)", (settings.digest, settings.text)
            )

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self._database.close()

    def enlist(self, found: Iterable[FoundFile]) -> int:
        """Make these the inventory of this run; returns how many there are."""
        with self._transaction():
            self._database.executemany(
                "INSERT OR IGNORE INTO inventory (name, problem) VALUES (?, ?)",
                ((one.name, one.problem) for one in found),
            )
        ((count,),) = self._ask("SELECT COUNT(*) FROM inventory")
        return int(count)

    def inventory(self) -> Iterator[FoundFile]:
        """Files of this run, by name."""
        for name, problem in self._pages("name, problem"):
            yield FoundFile(name, problem)

    def mark_unreadable(self, name: bytes, problem: str) -> None:
        """Write down for this run why a file cannot be read."""
        self._ask("UPDATE inventory SET problem = ? WHERE name = ?", problem, name)

    def takes_over(self, name: bytes, sha256: str) -> bool:
        """Note what a file holds in this run; tell whether that has been evaluated already."""
        self._ask("UPDATE inventory SET sha256 = ? WHERE name = ?", sha256, name)
        last = self._ask(_LAST, name, sha256, self._settings)
        return bool(last) and last[0][1] != "failed"

    def add(self, finished: Iterable[Finished]) -> None:
        """Keep what came of some files; on the disk when this returns."""
        with self._transaction():
            self._database.executemany(
                "INSERT INTO evaluations (name, sha256, settings, fate, body) "
                "VALUES (?, ?, ?, ?, ?)",
                (
                    (one.name, one.sha256, self._settings, one.outcome.fate, one.outcome.body)
                    for one in finished
                ),
            )

    def entries(self) -> Iterator[Entry]:
        """Everything that the output shows, by the files' names, a few at a time."""
        for name, sha256, problem in self._pages("name, sha256, problem"):
            if problem:
                yield Entry(name, "", "input error", None, problem)
                continue
            last = self._ask(_LAST, name, sha256, self._settings)
            if not last:
                raise self._refusal(f"is damaged: a result is gone; {_BEGIN_ANEW}")
            ((body, fate),) = last
            yield Entry(name, sha256, fate, body, "")

    def _pages(self, columns: str) -> Iterator[tuple[Any, ...]]:
        """Rows of the inventory by name; no query stays open while others write."""
        last = b""
        while rows := self._ask(
            f"SELECT {columns} FROM inventory WHERE name > ? ORDER BY name LIMIT {_PAGE}",  # noqa: S608 - our own columns
            last,
        ):
            yield from rows
            last = rows[-1][0]

    def _ask(self, statement: str, *values: object) -> list[Any]:
        """All rows that a statement gives."""
        try:
            return self._database.execute(statement, values).fetchall()
        except sqlite3.Error as error:
            raise self._refusal(_reason(error)) from error

    @contextlib.contextmanager
    def _transaction(self) -> Iterator[None]:
        try:
            self._database.execute("BEGIN IMMEDIATE")
            yield
            self._database.execute("COMMIT")
        except sqlite3.Error as error:
            raise self._refusal(_reason(error)) from error
        finally:
            if self._database.in_transaction:
                self._database.execute("ROLLBACK")

    def _opened(self, *, fresh: bool) -> sqlite3.Connection:
        try:
            return self._prepared(fresh=fresh)
        except sqlite3.Error as error:
            raise self._refusal(_reason(error)) from error

    def _prepared(self, *, fresh: bool) -> sqlite3.Connection:
        if fresh:
            self._clear()
        database = self._locked()
        (found,) = database.execute("PRAGMA user_version").fetchone()
        (tables,) = database.execute("SELECT COUNT(*) FROM sqlite_master").fetchone()
        if not tables:
            database.execute("BEGIN IMMEDIATE")
            for statement in _SCHEMA:
                database.execute(statement)
            database.execute("COMMIT")
        elif found != _FORMAT:
            database.close()
            raise self._refusal("is of another version; " + _BEGIN_ANEW)
        database.execute(_INVENTORY)
        return database

    def _locked(self) -> sqlite3.Connection:
        """A connection that no other run can have at the same time, and that syncs each commit."""
        database = sqlite3.connect(self._path, isolation_level=None, timeout=0.0)
        try:
            for name, value in (
                ("locking_mode", "EXCLUSIVE"),  # first: it spares the shared memory of the next
                ("journal_mode", "WAL"),
                ("synchronous", "FULL"),
            ):
                database.execute(f"PRAGMA {name} = {value}")
            database.execute("BEGIN EXCLUSIVE")
            database.execute("COMMIT")
        except sqlite3.Error:
            database.close()
            raise
        return database

    def _clear(self) -> None:
        """Remove the journal, unless another run holds it."""
        with contextlib.suppress(sqlite3.DatabaseError):
            try:
                self._locked().close()
            except sqlite3.OperationalError as error:
                if "locked" in str(error):
                    raise self._refusal(_reason(error)) from error
        for ending in ("", "-wal", "-shm", "-journal"):
            self._path.with_name(FILE_NAME + ending).unlink(missing_ok=True)

    def _refusal(self, message: str) -> InputError:
        return InputError([InputProblem("", "", message)], source=str(self._path))


def _reason(error: sqlite3.Error) -> str:
    """Why the journal cannot be used, and what helps."""
    code = getattr(error, "sqlite_errorname", "")
    if code.startswith(("SQLITE_BUSY", "SQLITE_LOCKED")):
        return "another run is writing to this folder"
    if code.startswith(("SQLITE_CORRUPT", "SQLITE_NOTADB", "SQLITE_ERROR", "SQLITE_CONSTRAINT")):
        return f"is damaged: {error}; {_BEGIN_ANEW}"
    return str(error)
