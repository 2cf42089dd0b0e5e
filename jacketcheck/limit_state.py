"""What a limit state and a set of provisions are, for our own and for anyone's."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Final, Literal, TypeAlias, get_args

from jacketcheck.jacket.jacket import Jacket
from jacketcheck.results import Result

__all__ = [
    "Effort",
    "Evaluate",
    "LimitState",
    "ModelFactor",
    "NoScatter",
    "Provisions",
    "Scatter",
    "limit_state",
]

Evaluate: TypeAlias = Callable[[Jacket], Sequence[Result]]
Effort: TypeAlias = Literal["closed-form", "bond", "sections"]
_EFFORTS: Final = get_args(Effort)

_IDENTIFIER = re.compile(r"[a-z][a-z0-9]*(-[a-z0-9]+)*")
_LONGEST_IDENTIFIER = 60


def _check_identifier(kind: str, text: object) -> None:
    good = isinstance(text, str) and len(text) <= _LONGEST_IDENTIFIER
    if not good or _IDENTIFIER.fullmatch(str(text)) is None:
        raise ValueError(
            f"{kind} id {text!r}: must be lower-case words joined by hyphens, "
            f"at most {_LONGEST_IDENTIFIER} characters"
        )


@dataclass(frozen=True, slots=True)
class ModelFactor:
    """How a rule's nominal capacity scatters about what tests give: a random factor on it.

    Attributes
    ----------
    name
        Lower-case words joined by hyphens.
    title
        What scatters, in a few words.
    mean, variation
        Mean of the factor (the rule's bias) and its coefficient of variation [-].
    source
        Paper, standard, or ``engineering judgement``.
    distribution
        ``lognormal`` or ``normal``.
    """

    name: str
    title: str
    mean: float
    variation: float
    source: str
    distribution: Literal["lognormal", "normal"] = "lognormal"

    def __post_init__(self) -> None:
        """Reject what is no factor on a capacity, or names no source."""
        _check_identifier("model factor", self.name)
        if not (self.title.strip() and self.source.strip()):
            raise ValueError(f"model factor {self.name}: title or source is empty")
        if self.distribution not in {"lognormal", "normal"}:
            raise ValueError(f"model factor {self.name}: {self.distribution!r} is no distribution")
        if not (0.0 < self.mean < 10.0 and 0.0 <= self.variation <= _LARGEST_VARIATION):
            allowed = f"a mean from 0 to 10 and a variation of at most {_LARGEST_VARIATION:g}"
            raise ValueError(f"model factor {self.name}: must have {allowed}")


_LARGEST_VARIATION: Final = 0.20
"""Largest coefficient of variation of a factor that may be normal and must stay positive."""


@dataclass(frozen=True, slots=True)
class Scatter:
    """What of a limit state is exceeded between actual values.

    Attributes
    ----------
    event
        What exceeds what, in a line.
    rules
        Keys of the rules that count, as in `Result.rule`; all limits of it by default. Where
        several codes word one physical limit, the one whose model the scatter belongs to.
    model
        Scatter of the rule's model: a published variable of the package by its name, e.g.
        ``bolted-plate``, or one of the limit state's own; empty where the scatter of materials,
        dimensions and loads is all.
    model_rules
        Keys of those of the rules that the model belongs to; all that count by default.
    steady
        Whether the ratio has no jumps, so that a first-order index says something.
    """

    event: str
    rules: tuple[str, ...] = ()
    model: str | ModelFactor = ""
    model_rules: tuple[str, ...] = ()
    steady: bool = True


@dataclass(frozen=True, slots=True)
class NoScatter:
    """Why a limit state has no probability of its own, e.g. a rule of layout."""

    reason: str


@dataclass(frozen=True, slots=True)
class LimitState:
    """One check that can be asked of a jacket.

    Attributes
    ----------
    id
        Lower-case words joined by hyphens, unique within its provisions; a limit state of other
        provisions with the same id is replaced by it.
    title
        What is checked, in a few words.
    provisions
        Set of provisions it belongs to.
    evaluate
        Function of the jacket that returns one result or more.
    monotonic
        Leaf of the jacket and direction (+1 or -1) in which the largest ratio must move, at most,
        when that leaf grows; 0 says that it may move either way. Used by the conformance kit.
    effort
        What the evaluation takes, so that a search can ask for the cheap ones first.
        ``closed-form`` needs no section analysis beyond the checked axial strain of the core and
        the share of added bars in tension, and its ratios never fall when either of the two
        grows; ``bond`` keeps to the same and solves the bond of bars as well; ``sections`` is
        everything else.
    scatter
        What of it scatters, or why it has no probability; None where nothing is said: then all its
        limits count with nominal capacities.
    """

    id: str
    title: str
    provisions: str
    evaluate: Evaluate
    monotonic: Mapping[str, int] = field(default_factory=dict)
    effort: Effort = "sections"
    scatter: Scatter | NoScatter | None = None

    def __post_init__(self) -> None:
        """Reject what could not be listed or called."""
        _check_identifier("limit state", self.id)
        _check_identifier("provisions", self.provisions)
        if not (isinstance(self.title, str) and self.title.strip()):
            raise ValueError(f"limit state {self.id}: title is empty")
        if not callable(self.evaluate):
            raise TypeError(f"limit state {self.id}: evaluate is not callable")
        if not isinstance(self.monotonic, Mapping):
            raise TypeError(f"limit state {self.id}: monotonic is not a mapping of paths")
        if self.effort not in _EFFORTS:
            known = ", ".join(_EFFORTS)
            raise ValueError(f"limit state {self.id}: effort {self.effort!r} is none of {known}")
        if not isinstance(self.scatter, Scatter | NoScatter | None):
            raise TypeError(f"limit state {self.id}: scatter is neither Scatter nor NoScatter")


@dataclass(frozen=True, slots=True)
class Provisions:
    """A named set of limit states, usually a country's codes.

    Attributes
    ----------
    id
        Name used in ``--provisions``.
    title
        Codes and their editions, in a line.
    inherits
        Provisions whose limit states hold wherever this set brings none of the same id;
        None only for a set that stands alone.
    omits
        Inherited limit states that do not apply, each with the reason; they stay visible.
    faying_codes
        Codes whose faying classes count; empty for those of the inherited set.
    """

    id: str
    title: str
    inherits: str | None = "us"
    omits: Mapping[str, str] = field(default_factory=dict)
    faying_codes: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        """Reject what could not be listed."""
        _check_identifier("provisions", self.id)
        if self.inherits is not None:
            _check_identifier("inherited provisions", self.inherits)
        if not (isinstance(self.title, str) and self.title.strip()):
            raise ValueError(f"provisions {self.id}: title is empty")
        if not isinstance(self.omits, Mapping):
            raise TypeError(f"provisions {self.id}: omits is not a mapping of ids to reasons")
        if not (
            isinstance(self.faying_codes, tuple)
            and all(isinstance(code, str) for code in self.faying_codes)
        ):
            raise TypeError(f"provisions {self.id}: faying_codes is not a tuple of texts")
        for omitted, reason in self.omits.items():
            _check_identifier("omitted limit state", omitted)
            if not (isinstance(reason, str) and reason.strip()):
                raise ValueError(f"provisions {self.id}: omits {omitted} without a reason")


def limit_state(
    id: str,  # noqa: A002 - the attribute it sets
    *,
    title: str,
    provisions: str = "us",
    monotonic: Mapping[str, int] | None = None,
    effort: Effort = "sections",
    scatter: Scatter | NoScatter | None = None,
) -> Callable[[Evaluate], LimitState]:
    """Turn a function of the jacket into a limit state.

    Examples
    --------
    >>> @limit_state("sleeve-stock", title="Sleeve plate in stock", provisions="example")
    ... def sleeve_stock(jacket):
    ...     return []
    >>> sleeve_stock.id
    'sleeve-stock'
    """

    def wrap(evaluate: Evaluate) -> LimitState:
        return LimitState(id, title, provisions, evaluate, monotonic or {}, effort, scatter)

    return wrap
