"""Results: frozen records that carry every step of how they came about."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, field
from enum import Enum
from typing import Any, Final, Protocol, TypeVar

import numpy as np

from jacketcheck.mechanics._arrays import Real

__all__ = ["Kind", "Result", "Status", "Step", "Steps", "demand_capacity_ratio", "worst_status"]

Value = TypeVar("Value", bound="Real | str")


class Kind(Enum):
    """What a result is for."""

    LIMIT = "limit"
    """A demand that must not exceed a capacity."""
    REPORTED = "reported"
    """A figure worth reading beside the limits; it has no verdict."""
    NOT_APPLICABLE = "not applicable"
    """The jacket has nothing that the limit state is about; the note says what."""
    NOT_EVALUATED = "not evaluated"
    """The limit state should have been evaluated and could not be; never a pass."""


class Status(Enum):
    """Verdict on one result."""

    OK = "ok"
    EXCEEDS = "EXCEEDS"
    REPORTED = "reported"
    NOT_APPLICABLE = "not applicable"
    NOT_EVALUATED = "NOT EVALUATED"


class Sourced(Protocol):
    """A record that knows where each of its figures stands: of the catalogue, or of the jacket."""

    def source_of(self, field_name: str) -> str:
        """Where the figure in the field `field_name` stands."""


@dataclass(frozen=True, slots=True)
class Step:
    """One line of a calculation.

    Attributes
    ----------
    symbol
        Symbol of the quantity, e.g. ``φR_n``.
    expression
        What it was computed from, e.g. ``φ μ D_u h_f T_b n_s``.
    value
        A number, an array over designs, or a word.
    unit
        Internal unit: N, mm, MPa and their products, ``1`` for a ratio.
    source
        Standard with clause, paper with equation, or the field of the input.
    """

    symbol: str
    expression: str
    value: Real | str
    unit: str
    source: str


class Steps:
    """Collects the steps of a calculation while it is being done.

    Examples
    --------
    >>> steps = Steps()
    >>> area = steps.add("A_b", "π d²/4", 380.1, "mm2", "geometry")
    >>> steps.lines[0].symbol, area
    ('A_b', 380.1)
    """

    def __init__(self) -> None:
        self._lines: list[Step] = []

    def add(self, symbol: str, expression: str, value: Value, unit: str, source: str) -> Value:
        """Write a step down and hand its value back."""
        self._lines.append(Step(symbol, expression, value, unit, source))
        return value

    def figure(self, symbol: str, expression: str, record: Sourced, name: str, unit: str) -> Any:
        """Write a figure of a record down with the source of that very figure, and hand it back.

        Examples
        --------
        >>> from jacketcheck.catalog import built_in_catalog
        >>> steel = built_in_catalog().rebar_steel("EN B500C")
        >>> Steps().figure("γ_o", steel.name, steel, "overstrength", "1")
        1.35
        """
        return self.add(symbol, expression, getattr(record, name), unit, record.source_of(name))

    @property
    def lines(self) -> tuple[Step, ...]:
        """The steps so far."""
        return tuple(self._lines)


def demand_capacity_ratio(demand: Real, capacity: Real) -> Real:
    """Demand over capacity; zero demand gives zero, a demand on no capacity gives infinity.

    A NaN in either stays a NaN, and so does a negative demand or capacity: neither has a meaning
    here, and a negative ratio would read as a pass.

    Examples
    --------
    >>> demand_capacity_ratio(3.0, 4.0), demand_capacity_ratio(0.0, 0.0)
    (0.75, 0.0)
    >>> demand_capacity_ratio(1.0, 0.0), demand_capacity_ratio(1.0, -4.0)
    (inf, nan)
    """
    if isinstance(demand, float) and isinstance(capacity, float):
        return _plain_ratio(float(demand), float(capacity))
    with np.errstate(divide="ignore", invalid="ignore", over="ignore"):
        # without its sign a zero of either sign gives plus infinity
        ratio = np.divide(demand, np.abs(capacity))
    meaningful = np.greater_equal(demand, 0.0) & np.greater_equal(capacity, 0.0)
    settled = np.where(np.equal(demand, 0.0), 0.0, ratio)
    settled = np.where(meaningful, settled, np.nan)
    return settled if settled.ndim else float(settled)


def _plain_ratio(demand: float, capacity: float) -> float:
    """Ratio of two plain numbers by the same rules, without arrays' overhead."""
    if not (demand >= 0.0 and capacity >= 0.0):
        return math.nan
    if demand == 0.0:
        return 0.0
    if capacity == 0.0:
        return math.inf
    return math.nan if math.isinf(demand) and math.isinf(capacity) else demand / capacity


OPEN_POINT: Final = "open point: "
"""What a note begins with that tells what must still be shown before the verdict holds."""


@dataclass(frozen=True, slots=True)
class Result:
    """One row of the table.

    Attributes
    ----------
    title
        Name of the limit state.
    location
        Where on the jacket.
    demand, capacity
        Both in `unit`; numbers, or arrays over designs.
    unit
        Internal unit of demand and capacity.
    clause
        The rule that governs, with its edition.
    steps
        How demand and capacity came about.
    notes
        What a reader must know, e.g. which inputs are engineering judgement.
    kind
        Limit, reported figure, not applicable, or not evaluated.
    without_margin
        Whether a pass tells no margin: the ratio reads 1 whenever the check passes, because the
        capacity is not known beyond the demand (another row then tells the margin), or what is
        checked either fits or does not. Such a row does not govern while it passes.
    follows_from
        Identifiers of limit states whose failure this row's numbers have already paid for: their
        loss was used here. Where one of them indeed fails, a failure of this row is read as its
        consequence; see `jacketcheck.causes`.
    rule
        Short stable name of the rule that gave the capacity, e.g. ``aisc-slip``: what reads
        results goes by it, never by what is displayed. Unique among the limits of a limit state
        unless they are the same rule at several places.
    resistance_factor
        Factor that the capacity holds, e.g. φ, or 1/γ_M of a partial factor [-].
    bias
        What the rule's capacity, that factor taken out, is over the capacity between actual values
        [-]: a mean over a minimum that the code counts with, a share kept for design.
    limit_state, provisions, origin
        Identifier, provisions that were asked for, and distribution; filled in by the engine.
    written_by
        Set of provisions whose rule this is: another than `provisions` where that one inherits
        it; filled in by the engine.
    added_by
        Distribution of the plug-in that added the limit state to a set of provisions that it did
        not bring; empty for the set's own. Filled in by the engine.
    """

    title: str
    location: str
    demand: Real
    capacity: Real
    unit: str
    clause: str
    steps: tuple[Step, ...] = ()
    notes: tuple[str, ...] = ()
    kind: Kind = Kind.LIMIT
    without_margin: bool = False
    follows_from: tuple[str, ...] = ()
    rule: str = ""
    resistance_factor: Real = 1.0
    bias: Real = 1.0
    limit_state: str = ""
    provisions: str = ""
    written_by: str = ""
    origin: str = ""
    added_by: str = ""
    ratio: Real = field(init=False)

    def __post_init__(self) -> None:
        """Compute the ratio once."""
        object.__setattr__(self, "ratio", demand_capacity_ratio(self.demand, self.capacity))

    @property
    def inherited(self) -> bool:
        """Whether the rule is one that the provisions asked for take over from others."""
        return self.written_by not in {"", self.provisions}

    @property
    def nominal_capacity(self) -> Real:
        """Capacity without its resistance factor."""
        return np.divide(self.capacity, self.resistance_factor)

    @property
    def ratio_between_actual_values(self) -> Real:
        """Demand over capacity with neither resistance factor nor bias [-]."""
        return np.multiply(self.ratio, np.multiply(self.resistance_factor, self.bias))

    @property
    def status(self) -> Status:
        """Verdict; with arrays the worst over all designs. A NaN ratio is never a pass."""
        if self.kind is not Kind.LIMIT:
            return Status[self.kind.name]
        ratios = np.asarray(self.ratio)
        if ratios.size == 0 or np.isnan(ratios).any():
            return Status.NOT_EVALUATED
        return Status.OK if bool(np.all(ratios <= 1.0)) else Status.EXCEEDS

    @property
    def open_points(self) -> tuple[str, ...]:
        """What must still be shown before the verdict holds, by its notes."""
        return tuple(
            note.removeprefix(OPEN_POINT) for note in self.notes if note.startswith(OPEN_POINT)
        )

    @property
    def severity(self) -> float:
        """Key to sort by: what could not be evaluated first, then by ratio, then the rest."""
        if self.status is Status.NOT_EVALUATED:
            return math.inf
        if self.kind is Kind.LIMIT:
            if self.without_margin and self.status is Status.OK:
                return 0.0
            # an infinite ratio ranks below a missing answer, and above any number
            return min(float(np.max(self.ratio)), 1e300)
        return -1.0 if self.kind is Kind.REPORTED else -2.0


def worst_status(results: Sequence[Result]) -> Status:
    """Verdict on a set of results: unevaluated beats exceeded beats within limits.

    Where no row has a ratio, nothing was evaluated.
    """
    found = {result.status for result in results}
    for verdict in (Status.NOT_EVALUATED, Status.EXCEEDS, Status.OK):
        if verdict in found:
            return verdict
    return Status.NOT_EVALUATED
