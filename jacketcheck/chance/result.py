"""Outcome of an estimate: frozen records that outputs only format."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any, TypedDict

from jacketcheck.chance.intervals import Interval
from jacketcheck.chance.points import Method, drawn_by
from jacketcheck.chance.variables import Variables
from jacketcheck.limit_state import Effort

__all__ = ["ChanceResult", "Changes", "Driver", "LimitChance", "Settings", "SystemChance"]


class Changes(TypedDict, total=False):
    """Some of the settings; None leaves one as it is."""

    samples: int | None
    bond_samples: int | None
    section_samples: int | None
    method: Method | None
    seed: int | None


@dataclass(frozen=True, slots=True)
class Settings:
    """How samples are drawn.

    Attributes
    ----------
    samples, bond_samples, section_samples
        Least number of samples for limit states in closed form, for those that solve the bond of
        bars, and for those that need section analyses; the last may be zero.
    method
        How they are drawn.
    seed
        Seed; the same seed gives the same figures.
    """

    samples: int
    bond_samples: int
    section_samples: int
    method: Method
    seed: int

    def changed(self, changes: Changes) -> Settings:
        """The same with some of them replaced."""
        given: dict[str, Any] = {k: value for k, value in changes.items() if value is not None}
        return replace(self, **given)

    def of(self, effort: Effort) -> int:
        """Samples for limit states of an effort."""
        counts: dict[Effort, int] = {
            "closed-form": self.samples,
            "bond": self.bond_samples,
            "sections": self.section_samples,
        }
        return counts[effort]

    def drawn(self, effort: Effort) -> Method:
        """How samples of an effort are drawn: a few of them otherwise than many."""
        return drawn_by(self.of(effort), self.method)


@dataclass(frozen=True, slots=True)
class Driver:
    """How much a variable matters to a limit state.

    Attributes
    ----------
    name
        Variable.
    shift
        Standard deviations by which it lies off its mean in the samples that exceed (see
        `jacketcheck.chance.influence.tail_shifts`): positive where more of it makes exceedance
        more likely.
    clear
        Whether the shift is more than three of its standard errors.
    correlation
        Spearman's rank correlation of the variable with the ratio of demand to capacity [-].
    importance
        Share in the scatter at the design point [-]; None without one.
    """

    name: str
    shift: float
    clear: bool
    correlation: float
    importance: float | None = None


@dataclass(frozen=True, slots=True)
class LimitChance:
    """Probability that one limit state is exceeded.

    Attributes
    ----------
    id, title, effort, event
        Limit state, what a sample of it takes, and what exceeds what.
    ratio_at_means
        Demand over capacity with every variable at its mean, without resistance factors [-].
    samples, exceeded, unevaluated
        Samples drawn, those that exceed, and those that could not be evaluated.
    probability, lowest
        Share that exceeds [-], what could not be evaluated counted as exceeded, and as holding.
    interval
        Interval that covers both [-].
    first_order_index
        Reliability index by the first-order method [-]; None where there is none.
    drivers
        Variables by falling influence.
    reason
        Why samples could not be evaluated; empty where all could.
    declared
        Whether the limit state says what of it scatters.
    """

    id: str
    title: str
    effort: Effort
    event: str
    ratio_at_means: float
    samples: int
    exceeded: int
    unevaluated: int
    probability: float
    lowest: float
    interval: Interval
    first_order_index: float | None
    drivers: tuple[Driver, ...]
    reason: str = ""
    declared: bool = True

    @property
    def open(self) -> bool:
        """Whether what could not be evaluated leaves more open than the samples do anyhow."""
        return _is_open(self.probability, self.lowest, self.interval)


def _is_open(probability: float, lowest: float, interval: Interval) -> bool:
    between = probability - lowest
    return between > interval.high - interval.low - between


@dataclass(frozen=True, slots=True)
class SystemChance:
    """Probability that any of the limit states is exceeded: the repair as a series system.

    Attributes
    ----------
    probability, lowest
        Estimate [-], what could not be evaluated counted as exceeded, and as holding.
    interval
        Interval that covers both [-].
    lower_bound, upper_bound
        If the limit states were exceeded in the same samples, and if never two of them in one [-].
    increments
        What limit states of each effort add that none of the cheaper ones counts [-].
    drivers
        Variables by falling influence on the largest ratio.
    """

    probability: float
    lowest: float
    interval: Interval
    lower_bound: float
    upper_bound: float
    increments: Mapping[Effort, float]
    drivers: tuple[Driver, ...]

    @property
    def open(self) -> bool:
        """Whether what could not be evaluated leaves more open than the samples do anyhow."""
        return _is_open(self.probability, self.lowest, self.interval)


@dataclass(frozen=True, eq=False)
class ChanceResult:
    """Probabilities of one jacket.

    Attributes
    ----------
    settings
        How samples were drawn.
    variables
        Random variables with sources.
    limits
        Limit states, the likeliest exceeded first.
    system
        The repair as a whole.
    not_applicable, without_probability
        Limit states that have none here, with reasons.
    notes
        What a reader must know.
    """

    settings: Settings
    variables: Variables
    limits: tuple[LimitChance, ...]
    system: SystemChance
    not_applicable: Mapping[str, str]
    without_probability: Mapping[str, str]
    notes: tuple[str, ...]

    @property
    def open(self) -> bool:
        """Whether what could not be evaluated leaves an answer open."""
        return self.system.open or any(limit.open for limit in self.limits)
