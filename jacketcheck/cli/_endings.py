"""The ending of a file that is written: it tells the form, and must be one that can be written."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from jacketcheck.cli._outputs import is_standard_output
from jacketcheck.errors import InputError, InputProblem
from jacketcheck.inputs.written import printable

__all__ = ["form_of"]


def form_of(
    path: Path, endings: Mapping[str, str], *, option: str, asked: str | None = None
) -> str:
    """Form that a file gets, by its ending or as asked for.

    Parameters
    ----------
    path
        File to write.
    endings
        Form by ending, e.g. ``{".md": "markdown"}``.
    option
        Option that names the file.
    asked
        Form that was asked for; then the file may do without an ending. Standard output has none:
        it gets the first form where none is asked for.

    Raises
    ------
    InputError
        If the ending is unknown, or is that of another form than the one asked for.
    """
    if is_standard_output(path):
        return next(iter(endings.values())) if asked is None else asked
    ending = path.suffix.lower()
    if asked is not None and not ending:
        return asked
    form = endings.get(ending)
    if form is not None and asked in {None, form}:
        return form
    fitting = [one for one, found in endings.items() if asked in {None, found}]
    what = "" if asked is None else f" for {asked}"
    message = f"must end in {' or '.join(fitting)}{what}"
    raise InputError([InputProblem(option, printable(str(path)), message)], source="options")
