"""Probabilities of exceedance as JSON and CSV, at full precision, with a published schema."""

from __future__ import annotations

import csv
import io
import math
from collections.abc import Sequence
from typing import Literal

from pydantic import BaseModel, ConfigDict, Field

from jacketcheck.chance.distributions import Distribution
from jacketcheck.chance.intervals import CONFIDENCE
from jacketcheck.chance.points import Method
from jacketcheck.chance.report import ChanceReport
from jacketcheck.chance.result import ChanceResult, Driver, LimitChance
from jacketcheck.chance.variables import Variable
from jacketcheck.host.made_by import made_by
from jacketcheck.limit_state import Effort
from jacketcheck.render.chance_numbers import driver_text
from jacketcheck.render.numbers import MISSING
from jacketcheck.render.records import plain_cell

__all__ = ["ChanceDocument", "chance_csv", "chance_document", "chance_json"]

SCHEMA_VERSION = 1


class _Record(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True)


class DriverRecord(_Record):
    """Influence of one variable."""

    variable: str
    shift: float = Field(
        description="Standard deviations by which it lies off its mean in samples that exceed."
    )
    clear: bool = Field(description="Whether the shift is more than three standard errors.")
    rank_correlation: float = Field(description="Spearman's, with the ratio.")
    importance: float | None = Field(description="Share at the design point; null without one.")


class LimitRecord(_Record):
    """One limit state."""

    limit_state: str
    title: str
    event: str
    effort: Effort
    ratio_at_means: float | Literal["infinite"] | None
    probability: float = Field(description="What could not be evaluated counts as exceeded.")
    lowest: float = Field(description="The same if what could not be evaluated holds.")
    interval: tuple[float, float] = Field(description="Covers both.")
    open: bool = Field(description="Whether what could not be evaluated leaves the answer open.")
    samples: int
    exceeded: int = Field(description="What could not be evaluated is not among them.")
    unevaluated: int
    reason: str
    declared: bool = Field(
        description="Whether its scatter is declared; if not, its resistance is nominal."
    )
    first_order_index: float | None
    drivers: list[DriverRecord]


class VariableRecord(_Record):
    """One random variable."""

    name: str
    title: str
    relative_to: str
    distribution: Distribution
    mean: float
    coefficient_of_variation: float
    lowest: float = Field(description="Where the distribution is cut, as a factor.")
    highest: float | None = Field(description="The same; null where it is not cut.")
    cut_off: float = Field(description="Probability of what is cut off.")
    range_source: str
    held: bool
    source: str


class CorrelationRecord(_Record):
    """Correlation of two variables."""

    between: tuple[str, str]
    coefficient: float
    source: str


class SystemRecord(_Record):
    """The repair as a whole."""

    probability: float = Field(description="What could not be evaluated counts as exceeded.")
    lowest: float = Field(description="The same if what could not be evaluated holds.")
    interval: tuple[float, float] = Field(description="Covers both.")
    lower_bound: float
    upper_bound: float
    increments: dict[str, float] = Field(description="What each effort adds to the cheaper ones.")
    drivers: list[DriverRecord]


class VariantRecord(_Record):
    """Estimate of one variant."""

    variant: str
    method: Method = Field(description="As asked for.")
    drawn_by: dict[str, Method] = Field(description="By effort: few samples otherwise than many.")
    seed: int
    confidence: float
    system: SystemRecord
    limits: list[LimitRecord]
    variables: list[VariableRecord]
    correlations: list[CorrelationRecord]
    without_probability: dict[str, str]
    not_applicable: dict[str, str]
    notes: list[str]


class ChanceDocument(_Record):
    """The whole output."""

    schema_version: Literal[1]
    made_by: str = Field(description="The package and plug-ins, with versions.")
    title: str
    source: str
    sha256: str
    exit_code: int
    variants: list[VariantRecord]
    not_covered: list[str] = Field(description="What is left to the engineer.")
    cautions: list[str]


def chance_document(report: ChanceReport) -> ChanceDocument:
    """Turn the estimates into the published record."""
    return ChanceDocument(
        schema_version=SCHEMA_VERSION,
        made_by=made_by(report.version, report.plugins, report.switched_off),
        title=report.job.title,
        source=report.source,
        sha256=report.digest,
        exit_code=int(report.exit_code),
        variants=[_variant(name, result) for name, result in report.results.items()],
        not_covered=list(report.not_covered),
        cautions=list(report.cautions),
    )


def chance_json(report: ChanceReport) -> str:
    """The estimates as JSON text."""
    return chance_document(report).model_dump_json(indent=2) + "\n"


_COLUMNS = (
    "variant", "limit_state", "title", "ratio_at_means", "probability", "lowest", "low", "high",
    "samples", "exceeded", "unevaluated", "first_order_index", "moved_most_by", "reason",
)  # fmt: skip
_CSV_DRIVERS = 3
_SYSTEM = "any"


def chance_csv(report: ChanceReport) -> str:
    """The estimates as CSV text: a line for each limit state, and one for any of them."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(_COLUMNS)
    for variant, result in report.results.items():
        system = result.system
        lines: list[tuple[object, ...]] = [
            (_SYSTEM, "any limit state", None, system.probability, system.lowest, *system.interval,
             None, None, None, None, _moved(system.drivers), "")
        ]  # fmt: skip
        lines += [
            (one.id, one.title, _ratio(one), one.probability, one.lowest, *one.interval,
             one.samples, one.exceeded, one.unevaluated, one.first_order_index,
             _moved(one.drivers), one.reason)
            for one in result.limits
        ]  # fmt: skip
        writer.writerows([plain_cell(cell) for cell in (variant, *line)] for line in lines)
    return out.getvalue()


def _moved(drivers: Sequence[Driver]) -> str:
    text = driver_text(drivers, _CSV_DRIVERS)
    return "" if text == MISSING else text


def _variant(name: str, result: ChanceResult) -> VariantRecord:
    system = result.system
    return VariantRecord(
        variant=name,
        method=result.settings.method,
        drawn_by={
            effort: result.settings.drawn(effort)
            for effort in dict.fromkeys(limit.effort for limit in result.limits)
        },
        seed=result.settings.seed,
        confidence=CONFIDENCE,
        system=SystemRecord(
            probability=system.probability,
            lowest=system.lowest,
            interval=tuple(system.interval),
            lower_bound=system.lower_bound,
            upper_bound=system.upper_bound,
            increments={str(effort): share for effort, share in system.increments.items()},
            drivers=[_driver(one) for one in system.drivers],
        ),
        limits=[_limit(one) for one in result.limits],
        variables=[_variable(one) for one in result.variables],
        correlations=[
            CorrelationRecord(between=pair, coefficient=coefficient, source=source)
            for pair, (coefficient, source) in result.variables.correlations.items()
        ],
        without_probability=dict(result.without_probability),
        not_applicable=dict(result.not_applicable),
        notes=list(result.notes),
    )


def _limit(one: LimitChance) -> LimitRecord:
    return LimitRecord(
        limit_state=one.id,
        title=one.title,
        event=one.event,
        effort=one.effort,
        ratio_at_means=_ratio(one),
        probability=one.probability,
        lowest=one.lowest,
        interval=tuple(one.interval),
        open=one.open,
        samples=one.samples,
        exceeded=one.exceeded,
        unevaluated=one.unevaluated,
        reason=one.reason,
        declared=one.declared,
        first_order_index=one.first_order_index,
        drivers=[_driver(driver) for driver in one.drivers],
    )


def _ratio(one: LimitChance) -> float | Literal["infinite"] | None:
    if math.isnan(one.ratio_at_means):
        return None
    return "infinite" if math.isinf(one.ratio_at_means) else one.ratio_at_means


def _driver(one: Driver) -> DriverRecord:
    return DriverRecord(
        variable=one.name,
        shift=one.shift,
        clear=one.clear,
        rank_correlation=one.correlation,
        importance=one.importance,
    )


def _variable(one: Variable) -> VariableRecord:
    return VariableRecord(
        name=one.name,
        title=one.title,
        relative_to=one.relative_to,
        distribution=one.marginal.distribution,
        mean=one.marginal.mean,
        coefficient_of_variation=one.marginal.variation,
        lowest=max(one.marginal.lowest, 0.0),
        highest=None if math.isinf(one.marginal.highest) else one.marginal.highest,
        cut_off=one.marginal.cut_off,
        range_source=one.range_source,
        held=one.held,
        source=one.source,
    )
