"""What the verdict would be where the engineer's judgement took the place of a default."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any, Final

from jacketcheck.causes import causes_first
from jacketcheck.engine.evaluate import evaluate
from jacketcheck.errors import InputError
from jacketcheck.host.host import Host
from jacketcheck.inputs.actions import Judgement
from jacketcheck.inputs.fields import field_at, value_at
from jacketcheck.inputs.repair_file import RepairInput
from jacketcheck.inputs.replaced import replaced
from jacketcheck.jacket.build import build_jacket
from jacketcheck.results import Kind, Result, Status, worst_status
from jacketcheck.units import in_both_systems

__all__ = ["JUDGED_FIELDS", "changed_judgements", "judgement_rows"]

JUDGED_FIELDS: Final = (
    *(f"judgement.{name}" for name in Judgement.model_fields if name != "confirmed"),
    "column.concrete_expected",
)
"""Fields that replace a default by the engineer's own judgement."""

_GOODNESS: Final = (Status.NOT_EVALUATED, Status.EXCEEDS, Status.OK)


def changed_judgements(repair: RepairInput) -> Iterator[tuple[str, Any]]:
    """Path and default of every judged field that an input changes."""
    for path in JUDGED_FIELDS:
        table, _, name = path.partition(".")
        field = type(getattr(repair, table)).model_fields[name]
        default = field.get_default(call_default_factory=True, validated_data={})
        if value_at(path, repair) != default:
            yield path, default


def judgement_rows(
    repair: RepairInput, results: Sequence[Result], *, host: Host, provisions: str
) -> tuple[Result, ...]:
    """One row for each judged field that the input changes.

    Parameters
    ----------
    repair
        The input that was checked.
    results
        What came of it under these provisions.
    host, provisions
        As for `evaluate`.

    Returns
    -------
    tuple of Result
        Reported rows with the ratio that governs by the default. A row is left open where the
        default would give the worse verdict and ``judgement.confirmed`` does not name the field.
    """
    own = worst_status(results)
    return tuple(
        _row(repair, path, default, own, host=host, provisions=provisions)
        for path, default in changed_judgements(repair)
    )


def _row(
    repair: RepairInput, path: str, default: Any, own: Status, *, host: Host, provisions: str
) -> Result:
    where = f"{_told(path, repair)} in place of {_told(path, replaced(repair, {path: default}))}"
    verdict, worst, governing = _by_default(repair, path, default, host, provisions)
    effect = f"by the default the verdict would be {verdict.value}{governing}"
    worse = _GOODNESS.index(verdict) < _GOODNESS.index(own)
    is_open = worse and path not in repair.judgement.confirmed
    notes = [f"engineering judgement: {effect}"]
    if is_open:
        notes.append(
            "the verdict rests on it: give evidence and stand by it with judgement.confirmed = "
            f'["{path}"], or leave it out'
        )
    return Result(
        f"Judgement: {path}",
        where,
        worst,
        1.0,
        "1",
        f"input {path}",
        notes=tuple(notes),
        kind=Kind.NOT_EVALUATED if is_open else Kind.REPORTED,
        limit_state="judgement",
        provisions=provisions,
        written_by=provisions,
        origin="jacketcheck",
    )


def _by_default(
    repair: RepairInput, path: str, default: Any, host: Host, provisions: str
) -> tuple[Status, float, str]:
    """Verdict, worst ratio and what governs with the default in the field."""
    try:
        jacket = build_jacket(replaced(repair, {path: default}), catalog=host.catalog)
    except InputError as error:
        return Status.NOT_EVALUATED, 0.0, f" ({error.problems[0].path})"
    results = evaluate(jacket, host=host, provisions=provisions)
    worst = causes_first(results)[0]
    ratio = float(worst.ratio) if worst.kind is Kind.LIMIT else 0.0
    return worst_status(results), ratio, f", governed by {worst.title}"


def _told(path: str, repair: RepairInput) -> str:
    """Value of a field as a reader would write it."""
    value = value_at(path, repair)
    quantity = field_at(path, repair).quantity
    if value is None:
        return "the default"
    return str(value) if quantity is None else in_both_systems(value, quantity.unit)
