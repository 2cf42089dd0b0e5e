"""What all samples of an estimate share, and how their progress is shown."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Final, TypeAlias

from jacketcheck.chance.base_strain import BaseStrain
from jacketcheck.chance.evaluation import Evaluation
from jacketcheck.chance.events import Event
from jacketcheck.chance.points import standard_normal_points
from jacketcheck.chance.realisation import realise
from jacketcheck.chance.result import Settings
from jacketcheck.chance.variables import Scattering, Variables
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.limit_state import Effort
from jacketcheck.mechanics._arrays import Floats, Real

__all__ = ["EFFORTS", "Model", "Progress", "without_progress"]

Progress: TypeAlias = Callable[[Iterable[Any], int, str], Iterable[Any]]
"""Shows how far some work is: items, how many they are, and what one is called."""

EFFORTS: Final[tuple[Effort, ...]] = ("closed-form", "bond", "sections")
"""Efforts, the cheapest first: each adds to the repair as a whole what the cheaper ones left."""


def without_progress(items: Iterable[Any], total: int, unit: str) -> Iterable[Any]:
    """Show nothing."""
    del total, unit
    return items


@dataclass(frozen=True, eq=False)
class Model:
    """Everything that is the same for all samples.

    Attributes
    ----------
    jacket
        One design with specified and expected values.
    variables
        Random variables.
    strain
        Axial strain of the core in samples without section analysis.
    settings
        How samples are drawn.
    evaluation
        How they are evaluated.
    """

    jacket: Jacket
    variables: Variables
    strain: BaseStrain
    settings: Settings
    evaluation: Evaluation

    def factors(self, scattering: Scattering, points: Floats) -> dict[str, Real]:
        """Factors of all variables at some points."""
        return {**self.variables.means(), **scattering.values(points)}

    def points(self, scattering: Scattering, effort: Effort) -> Iterator[Floats]:
        """Points of an effort's replicates."""
        return standard_normal_points(
            len(scattering.variables),
            samples=self.settings.of(effort),
            method=self.settings.method,
            seed=self.settings.seed,
            stream=EFFORTS.index(effort),
        )

    def cheap_ratios(
        self, events: Sequence[Event], factors: Mapping[str, Real], *, size: int
    ) -> dict[str, Floats]:
        """Ratios of events that need no section analysis, shape (size,)."""
        samples = self.strain.given_to(realise(self.jacket, factors), factors)
        return self.evaluation.ratios(events, samples, factors, size=size)
