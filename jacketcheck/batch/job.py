"""The job of one file: read it, check it, keep the rows; whatever it does comes back as a value."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal, TypeAlias

from jacketcheck.api import check_input
from jacketcheck.batch.records import Pier, packed, pier_of
from jacketcheck.batch.settings import BatchSettings, Maker, makers
from jacketcheck.errors import InputError
from jacketcheck.host.loading import load_host
from jacketcheck.host.outcome import describe
from jacketcheck.inputs.load import read_text
from jacketcheck.inputs.toml_text import decoded
from jacketcheck.inputs.written import printable

__all__ = ["Checker", "Fate", "Job", "Outcome", "failure"]

Fate: TypeAlias = Literal["checked", "input error", "failed"]


@dataclass(frozen=True, slots=True)
class Job:
    """A file to check: what messages call it, and its bytes."""

    source: str
    content: bytes


@dataclass(frozen=True, slots=True)
class Outcome:
    """What came of a job.

    Attributes
    ----------
    fate
        Checked, refused because of what the file says, or failed through no fault of the file.
    body
        The pier, packed.
    worn
        Whether a plug-in outlasted its time: the process that ran it still carries it.
    """

    fate: Fate
    body: bytes
    worn: bool = False


def failure(message: str, fate: Fate = "failed") -> Outcome:
    """The outcome of a job that has no results."""
    return Outcome(fate, packed(Pier(message=message)))


class Checker:
    """Checks one file after the other with plug-ins that are loaded once.

    Parameters
    ----------
    settings
        What to check by.
    """

    def __init__(self, settings: BatchSettings) -> None:
        self._settings = settings
        self._host = load_host(without=settings.without, time_limit=settings.plugin_seconds)
        self._mismatch = _mismatch(makers(self._host), settings.made_by)

    def check(self, job: Job) -> Outcome:
        """Check one file; never raises."""
        if self._mismatch:
            return failure(self._mismatch)
        # each file is asked everything, whatever an earlier one did to a plug-in: results must
        # not depend on which files a process has seen
        self._host.given_up.clear()
        try:
            return Outcome("checked", packed(self._pier(job)), worn=bool(self._host.given_up))
        except InputError as error:
            return failure(_told(error), "input error")
        except Exception as error:  # noqa: BLE001 - one file must not stop the others
            return failure(describe(error))

    def _pier(self, job: Job) -> Pier:
        text = decoded(job.content, job.source)
        repair = read_text(text, source=job.source, catalog=self._host.catalog)
        variants = None if self._settings.variants == "all" else (repair.base_name,)
        report = check_input(
            repair, host=self._host, provisions=self._settings.provisions, variants=variants
        )
        return pier_of(report)


def _told(error: InputError) -> str:
    """Every problem of an input in one line; the name of the file stands beside it."""
    problems = "; ".join(str(problem) for problem in error.problems)
    return printable(f"{problems} ({error.remark})" if error.remark else problems)


def _mismatch(here: tuple[Maker, ...], wanted: tuple[Maker, ...]) -> str:
    """What is loaded otherwise than where the batch was started; empty if nothing is."""
    lines = [
        f"{name} ({distribution} {version}) {'is missing' if one in wanted else 'is in the way'}"
        for one in sorted({*here} ^ {*wanted})
        for name, distribution, version in [one]
    ]
    return f"the worker's plug-ins differ from the batch's: {'; '.join(lines)}" if lines else ""
