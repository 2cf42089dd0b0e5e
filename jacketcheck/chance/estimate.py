"""Probability that each limit state is exceeded, and that the repair as a whole is."""

from __future__ import annotations

import math
from collections.abc import Collection, Sequence
from dataclasses import replace
from typing import Final

from jacketcheck.chance.array_counting import count_by_arrays
from jacketcheck.chance.base_strain import BaseStrain, PowerLaw
from jacketcheck.chance.counts import Counts
from jacketcheck.chance.evaluation import Evaluation
from jacketcheck.chance.events import Event, events_of
from jacketcheck.chance.model import EFFORTS, Model, Progress, without_progress
from jacketcheck.chance.points import DEFAULT_SEED
from jacketcheck.chance.remarks import remarks
from jacketcheck.chance.result import ChanceResult, Changes, LimitChance, Settings
from jacketcheck.chance.rows import limit_chances, system_chance
from jacketcheck.chance.section_counting import Analysed, analysed, count_by_sections
from jacketcheck.chance.variables import Variables, random_variables
from jacketcheck.errors import NotEvaluatedError
from jacketcheck.host.host import Host
from jacketcheck.host.loading import load_host
from jacketcheck.inputs.chance import Chance
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.limit_state import Effort

__all__ = ["DEFAULTS", "chance_of_exceedance", "model_at_means", "settings_of"]

DEFAULTS: Final = Settings(
    samples=131_072, bond_samples=4_096, section_samples=256, method="sobol", seed=DEFAULT_SEED
)
"""How samples are drawn where nothing is said."""


_WITHOUT_SECTIONS: Final[tuple[Effort, ...]] = ("closed-form", "bond")


def settings_of(written: Chance | None, changes: Changes | None = None) -> Settings:
    """Settings of a file, with the defaults for what it leaves out, and changes to them."""
    settings = DEFAULTS
    if written is not None:
        settings = settings.changed(
            Changes(
                samples=written.samples,
                bond_samples=written.bond_samples,
                section_samples=written.section_samples,
                method=written.method,
                seed=written.seed,
            )
        )
    return settings if changes is None else settings.changed(changes)


def chance_of_exceedance(
    jacket: Jacket,
    *,
    written: Chance | None = None,
    settings: Settings | None = None,
    only: Collection[str] | None = None,
    host: Host | None = None,
    provisions: Sequence[str] = ("us",),
    progress: Progress = without_progress,
) -> ChanceResult:
    """Estimate the probabilities of one jacket.

    Parameters
    ----------
    jacket
        One design.
    written
        What its file says of the scatter.
    settings
        How samples are drawn; by default as the file says.
    only
        Limit states to look at; all by default.
    host
        Where limit states come from; the built-in ones by default.
    provisions
        Sets of provisions whose limit states are asked.
    progress
        Shows how far the work is.

    Returns
    -------
    ChanceResult
        Probabilities given an earthquake that forms the relocated hinge.

    Raises
    ------
    InputError
        If the file's scatter cannot be used, or `only` names what has no probability.
    NotEvaluatedError
        If none of the limit states applies to the jacket.

    Notes
    -----
    The limit states themselves are evaluated, on a jacket whose fields are samples of actual
    values: resistance factors are taken out, and what a code replaces by a factor (mean pretension
    over its minimum, overstrength of the hinge) is a random variable. Variables are correlated by
    a Gaussian copula. The repair as a whole is exceeded where any of the limit states is.
    """
    host = load_host(installed=False) if host is None else host
    events = events_of(host, provisions, only=only)
    settings = settings_of(written) if settings is None else settings
    variables = random_variables(jacket, written, models=events.models)
    estimate = _Estimate(jacket, variables, settings, host, progress)
    without = dict(events.without)
    asked = events.asked
    if not settings.section_samples:
        asked = tuple(event for event in asked if event.effort != "sections")
        reason = "needs section analyses, of which no sample was asked for (section samples)"
        without |= {event.id: reason for event in events.asked if event not in asked}
    applying = estimate.applicable(asked)
    counts = estimate.count(applying)
    if not applying:
        raise NotEvaluatedError("none of the limit states with a probability applies")
    rows = limit_chances(applying, counts, estimate.model, at_means=estimate.at_means)
    return ChanceResult(
        settings=settings,
        variables=estimate.model.variables,
        limits=tuple(sorted(rows, key=_likeliest_first)),
        system=system_chance(counts, rows),
        not_applicable=estimate.not_applicable,
        without_probability=without,
        notes=remarks(applying, estimate.model, rows, only=only),
    )


def _likeliest_first(row: LimitChance) -> tuple[float, float]:
    """Key to sort by; a ratio that could not be found counts as infinite."""
    ratio = math.inf if math.isnan(row.ratio_at_means) else row.ratio_at_means
    return -row.probability, -ratio


def model_at_means(
    jacket: Jacket,
    *,
    written: Chance | None = None,
    settings: Settings = DEFAULTS,
    host: Host | None = None,
) -> Model:
    """What all samples share, the strain of the base as it is with mean values."""
    host = load_host(installed=False) if host is None else host
    variables = random_variables(jacket, written)
    return _Estimate(jacket, variables, settings, host, without_progress).model


class _Estimate:
    """The estimate while it is being made."""

    def __init__(
        self,
        jacket: Jacket,
        variables: Variables,
        settings: Settings,
        host: Host,
        progress: Progress,
    ) -> None:
        unknown = BaseStrain("frozen", None, math.inf, 1.0)
        self.model = Model(jacket, variables, unknown, settings, Evaluation(host))
        # every variable at its mean: from here the strain of the base is known
        mean = self._at_means(())
        [found], [share], [shear] = mean.strain, mean.share, mean.shear
        strain = BaseStrain.at_means(
            jacket.demands.axial_strain,
            float(found) if math.isfinite(found) else math.inf,
            float(share),
        )
        # until samples say more, the shear grows with the largest moment of the hinge
        if math.isfinite(shear):
            factor = variables.by_name["hinge-moment"].marginal.mean
            strain = strain.with_shear(PowerLaw(float(shear) / factor, {"hinge-moment": 1.0}))
        self.model = replace(self.model, strain=strain)
        self._progress = progress
        self.at_means: dict[str, float] = {}

    @property
    def not_applicable(self) -> dict[str, str]:
        """Events that the jacket has nothing for."""
        return self.model.evaluation.not_applicable

    def _at_means(self, events: Sequence[Event]) -> Analysed:
        return analysed(events, self.model, self.model.variables.means(), 1)

    def applicable(self, events: Sequence[Event]) -> tuple[Event, ...]:
        """Events that the jacket has something for, with their ratios at mean values."""
        cheap = [event for event in events if event.effort != "sections"]
        dear = [event for event in events if event.effort == "sections"]
        means = self.model.variables.means()
        ratios = self.model.cheap_ratios(cheap, means, size=1) | self._at_means(dear).ratios
        applying = tuple(event for event in events if event.id not in self.not_applicable)
        self.at_means = {event.id: float(ratios[event.id][0]) for event in applying}
        # what is missing with mean values is missing in every sample
        evaluation = self.model.evaluation
        evaluation.hopeless.update(
            name
            for name, ratio in self.at_means.items()
            if math.isnan(ratio) and name in evaluation.lacking
        )
        return applying

    def count(self, events: Sequence[Event]) -> dict[Effort, Counts]:
        """Count exceedances, what needs sections first: the others build on it."""
        by_effort = {
            effort: [event for event in events if event.effort == effort] for effort in EFFORTS
        }
        counts: dict[Effort, Counts] = {}
        cheap = [*by_effort["closed-form"], *by_effort["bond"]]
        if by_effort["sections"]:
            counts["sections"], strain = count_by_sections(
                by_effort["sections"], self.model, cheaper=cheap, progress=self._progress
            )
            variables = self.model.variables
            if strain.variables:
                variables = variables.joined_by(strain.residual)
            self.model = replace(self.model, strain=strain, variables=variables)
        cheaper: list[Event] = []
        for effort in _WITHOUT_SECTIONS:
            if by_effort[effort]:
                counts[effort] = count_by_arrays(
                    by_effort[effort],
                    self.model,
                    effort=effort,
                    cheaper=cheaper,
                    progress=self._progress,
                )
            cheaper = [*cheaper, *by_effort[effort]]
        return counts
