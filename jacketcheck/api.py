"""Checking a repair file from Python."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace
from importlib.metadata import version
from pathlib import Path

from jacketcheck.causes import causes_first
from jacketcheck.coverage import left_to_the_engineer
from jacketcheck.engine.evaluate import evaluate
from jacketcheck.engine.judgement_rows import judgement_rows
from jacketcheck.engine.own_classes import jacket_for
from jacketcheck.errors import InputError, InputProblem
from jacketcheck.host.host import Host
from jacketcheck.host.loading import load_host
from jacketcheck.inputs.load import InputFile, read_input
from jacketcheck.inputs.origin import with_origins
from jacketcheck.inputs.written import dotted, shown
from jacketcheck.jacket.build import build_jacket
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.report import CheckReport, VariantResults
from jacketcheck.results import Result

__all__ = ["build_variants", "check", "check_input", "check_jackets", "choose_variants"]

Progress = Callable[[Iterable[tuple[str, str]]], Iterable[tuple[str, str]]]


def check(
    path: Path | str,
    *,
    provisions: Iterable[str] = ("us",),
    variants: Iterable[str] | None = None,
    host: Host | None = None,
) -> CheckReport:
    """Check the jackets that a repair file describes.

    Parameters
    ----------
    path
        The TOML file.
    provisions
        Sets of provisions to check by.
    variants
        Names of the variants; all by default.
    host
        Plug-ins; by default those of all installed distributions.

    Returns
    -------
    CheckReport
        Results of every variant, worst first.

    Raises
    ------
    InputError
        If the file, a variant or the provisions cannot be used.
    """
    host = load_host() if host is None else host
    repair = read_input(path, catalog=host.catalog)
    return check_input(repair, provisions=provisions, variants=variants, host=host)


def check_input(
    repair: InputFile,
    *,
    host: Host,
    provisions: Iterable[str] = ("us",),
    variants: Iterable[str] | None = None,
    progress: Progress = iter,
) -> CheckReport:
    """Check an input that has been read; see `check`."""
    chosen = choose_variants(repair, variants)
    jackets = build_variants(repair, host=host, variants=chosen)
    return check_jackets(repair, jackets, host=host, provisions=provisions, progress=progress)


def check_jackets(
    repair: InputFile,
    jackets: Mapping[str, Jacket],
    *,
    host: Host,
    provisions: Iterable[str] = ("us",),
    progress: Progress = iter,
) -> CheckReport:
    """Check jackets that have been built, each under its name; see `check`.

    Raises
    ------
    InputError
        If the provisions cannot be used.
    """
    asked = tuple(dict.fromkeys((provisions,) if isinstance(provisions, str) else provisions))
    titles = {name: host.title_of(name) for name in asked}
    pairs = [(variant, name) for variant in jackets for name in asked]
    tables = []
    for variant, name in progress(pairs):
        jacket = jacket_for(jackets[variant], host=host, provisions=name)
        results = evaluate(jacket, host=host, provisions=name)
        if variant in repair.variants:
            written = repair.variants[variant]
            results += judgement_rows(written, results, host=host, provisions=name)
            results = tuple(_with_origins(one, repair, variant) for one in results)
        tables.append(VariantResults(variant, name, jacket, causes_first(results)))
    return CheckReport(
        not_covered=left_to_the_engineer(breakout_open=any(one.open_points for one in tables)),
        job=repair.base.job,
        source=repair.source,
        digest=repair.digest,
        tables=tuple(tables),
        plugins=host.plugins,
        version=version("jacketcheck"),
        provisions_titles=titles,
        switched_off=host.switched_off,
    )


def _with_origins(result: Result, repair: InputFile, variant: str) -> Result:
    """The result, its steps saying which inputs are of the variant and which are defaults."""
    steps = tuple(
        replace(step, source=with_origins(step.source, repair, variant))
        if step.source.startswith("input ")
        else step
        for step in result.steps
    )
    return replace(result, steps=steps)


def choose_variants(repair: InputFile, names: Iterable[str] | None) -> tuple[str, ...]:
    """Names of the variants asked for; all if none is named.

    Raises
    ------
    InputError
        If a name is not in the file.
    """
    if names is None:
        return tuple(repair.variants)
    chosen = tuple(dict.fromkeys((names,) if isinstance(names, str) else names))
    unknown = [name for name in chosen if name not in repair.variants]
    if unknown:
        known = ", ".join(shown(name) for name in repair.variants)
        raise InputError(
            [
                InputProblem("variant", shown(name), f"is not in the file; known are {known}")
                for name in unknown
            ],
            source=repair.source,
        )
    return chosen


def build_variants(
    repair: InputFile, *, host: Host, variants: Iterable[str]
) -> Mapping[str, Jacket]:
    """Build the jacket of each variant; raises InputError with the problems of all of them."""
    jackets: dict[str, Jacket] = {}
    problems: list[InputProblem] = []
    remarks: list[str] = []
    seen: set[InputProblem] = set()
    for name in variants:
        place = "" if name == repair.base_name else dotted(("variants", name)) + "."
        try:
            jackets[name] = build_jacket(repair.variants[name], catalog=host.catalog)
        except InputError as error:
            # what a variant merely inherits is told once
            fresh = [found for found in error.problems if found not in seen]
            seen.update(fresh)
            problems += [replace(found, path=f"{place}{found.path}") for found in fresh]
            remarks.append(error.remark)
    if problems:
        remark = "; ".join(dict.fromkeys(filter(None, remarks)))
        raise InputError(problems, source=repair.source, remark=remark)
    return jackets
