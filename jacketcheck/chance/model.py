"""What all samples of an estimate share, and how their progress is shown."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, field
from typing import Any, Final, TypeAlias

from jacketcheck.chance.base_strain import BaseStrain
from jacketcheck.chance.direct import RingFigures
from jacketcheck.chance.evaluation import Failures
from jacketcheck.chance.limit import BAR_TARGET, Limit, bar_target
from jacketcheck.chance.points import standard_normal_points
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
    ring
        Figures for slip and hoop yield by comparison; None where these need analyses.
    settings
        How samples are drawn.
    failures
        Why samples could not be evaluated, by limit state.
    """

    jacket: Jacket
    variables: Variables
    strain: BaseStrain
    ring: RingFigures | None
    settings: Settings
    failures: Failures = field(default_factory=dict)

    def factors(self, scattering: Scattering, points: Floats) -> dict[str, Real]:
        """Factors of all variables at some points."""
        return {**self.variables.means(), **scattering.values(points)}

    def scattering(self, limits: Iterable[Limit]) -> Scattering:
        """Variables that scatter in some limit states."""
        return self.variables.among({name for one in limits for name in self.names_of(one)})

    def names_of(self, limit: Limit) -> tuple[str, ...]:
        """Variables of a limit state, those behind the strain of the base included."""
        target = bar_target(self.jacket)
        names = tuple(target if name == BAR_TARGET else name for name in limit.variables)
        return (*names, *self.strain.variables) if "axial-strain" in names else names

    def points(self, scattering: Scattering, effort: Effort) -> Iterator[Floats]:
        """Points of an effort's replicates."""
        return standard_normal_points(
            len(scattering.variables),
            samples=self.settings.of(effort),
            method=self.settings.method,
            seed=self.settings.seed,
            stream=EFFORTS.index(effort),
        )
