"""Probability that each limit state is exceeded, and that the repair as a whole is."""

from __future__ import annotations

import math
from collections.abc import Collection, Mapping, Sequence
from dataclasses import replace
from typing import Final

from jacketcheck.chance.array_counting import count_by_arrays
from jacketcheck.chance.base_strain import BaseStrain
from jacketcheck.chance.counts import Counts
from jacketcheck.chance.direct import ring_figures
from jacketcheck.chance.evaluation import section_sample, single_ratios, with_strain
from jacketcheck.chance.limit import Limit, NotApplicableError
from jacketcheck.chance.limits import COVERED, WITHOUT_PROBABILITY
from jacketcheck.chance.model import EFFORTS, Model, Progress, without_progress
from jacketcheck.chance.points import DEFAULT_SEED
from jacketcheck.chance.realisation import Realisation
from jacketcheck.chance.remarks import left_out, remarks
from jacketcheck.chance.result import ChanceResult, Changes, LimitChance, Settings
from jacketcheck.chance.rows import limit_chance, system_chance
from jacketcheck.chance.section_counting import count_by_sections
from jacketcheck.chance.variables import random_variables
from jacketcheck.errors import InputError, InputProblem, JacketcheckError, NotEvaluatedError
from jacketcheck.host.host import Host
from jacketcheck.inputs.chance import Chance
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.limit_state import Effort
from jacketcheck.mechanics._arrays import Real

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
        Limit states of plug-ins, which are listed as not covered.
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
    The margin of each limit state is ``R - S`` between actual values: resistance factors are 1,
    and what a code replaces by a factor (mean pretension over its minimum, overstrength of the
    hinge) is a random variable. Variables are correlated by a Gaussian copula. The repair as a
    whole is exceeded where any covered limit state is.
    """
    limits = _chosen(only)
    settings = settings_of(written) if settings is None else settings
    estimate = _Estimate(jacket, written, settings, progress)
    counts = estimate.count(limits)
    rows = [
        limit_chance(
            estimate.applying[name], one, estimate.model, ratio_at_means=estimate.at_means[name]
        )
        for one in counts.values()
        for name in one.exceeded
    ]
    if not rows:
        raise NotEvaluatedError("none of the limit states with a probability applies")
    return ChanceResult(
        settings=settings,
        variables=estimate.model.variables,
        limits=tuple(sorted(rows, key=_likeliest_first)),
        system=system_chance(counts, rows),
        not_applicable=estimate.not_applicable,
        without_probability=left_out(host, only=only, with_sections=settings.section_samples > 0),
        notes=remarks(list(estimate.applying.values()), estimate.model, only=only),
    )


def _likeliest_first(row: LimitChance) -> tuple[float, float]:
    """Key to sort by; a ratio that could not be found counts as infinite."""
    ratio = math.inf if math.isnan(row.ratio_at_means) else row.ratio_at_means
    return -row.probability, -ratio


def model_at_means(
    jacket: Jacket, *, written: Chance | None = None, settings: Settings = DEFAULTS
) -> Model:
    """What all samples share, the strain of the base as it is with mean values."""
    return _Estimate(jacket, written, settings, without_progress).with_ring().model


def _chosen(only: Collection[str] | None) -> tuple[Limit, ...]:
    if only is None:
        return COVERED
    known = {limit.id: limit for limit in COVERED}
    problems = [
        InputProblem("CHECK", repr(name), _why_not(name, known))
        for name in only
        if name not in known
    ]
    if problems:
        raise InputError(problems, source="chance")
    return tuple(limit for limit in COVERED if limit.id in only)


def _why_not(name: str, known: Mapping[str, Limit]) -> str:
    if name in WITHOUT_PROBABILITY:
        return f"has no probability of its own: {WITHOUT_PROBABILITY[name]}"
    return f"has no probability; known are {', '.join(sorted(known))}"


def _without_ratio(sample: Realisation) -> Real:
    del sample
    return math.nan


class _Estimate:
    """The estimate while it is being made."""

    def __init__(
        self, jacket: Jacket, written: Chance | None, settings: Settings, progress: Progress
    ) -> None:
        variables = random_variables(jacket, written)
        # every variable at its mean: from here the strain of the base is known
        self._mean = section_sample(jacket, variables.means())
        found = self._mean.base_strain
        strain = BaseStrain.at_means(
            jacket.demands.axial_strain,
            found if math.isfinite(found) else math.inf,
            self._mean.tension_share,
        )
        self.model = Model(jacket, variables, strain, None, settings)
        self.not_applicable: dict[str, str] = {}
        self._progress = progress
        self.applying: dict[str, Limit] = {}
        self.at_means: dict[str, float] = {}

    def count(self, limits: Sequence[Limit]) -> dict[Effort, Counts]:
        """Count exceedances, what needs sections first: the others build on it."""
        by_effort = self._applicable(limits)
        counts: dict[Effort, Counts] = {}
        cheap = [*by_effort["closed-form"], *by_effort["bond"]]
        if by_effort["sections"]:
            counts["sections"], strain = count_by_sections(
                by_effort["sections"], self.model, cheaper=cheap, progress=self._progress
            )
            self.model = replace(self.model, strain=strain)
            if strain.variables:
                joined = self.model.variables.joined_by(strain.residual)
                self.model = replace(self.model, variables=joined)
        self.with_ring()
        cheaper: list[Limit] = []
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

    def _applicable(self, limits: Sequence[Limit]) -> dict[Effort, list[Limit]]:
        """Limit states that apply, by effort; sections only where samples of them are wanted."""
        chosen: dict[Effort, list[Limit]] = {effort: [] for effort in EFFORTS}
        for limit in limits:
            if limit.effort == "sections" and not self.model.settings.section_samples:
                continue
            try:
                ratio = self._ratio_at_means(limit)
            except NotApplicableError as error:
                self.not_applicable[limit.id] = str(error)
                continue
            # what cannot be evaluated with mean values is not tried on every sample
            asked = replace(limit, ratio=_without_ratio) if math.isnan(ratio) else limit
            self.at_means[limit.id] = ratio
            self.applying[limit.id] = asked
            chosen[limit.effort].append(asked)
        return chosen

    def _ratio_at_means(self, limit: Limit) -> float:
        failures = self.model.failures
        if limit.effort == "sections":
            return single_ratios([limit], self._mean.realisation, failures=failures)[limit.id]
        sample = with_strain(self._mean.realisation, self.model.strain, self.model.jacket)
        return single_ratios([limit], sample, failures=failures)[limit.id]

    def with_ring(self) -> _Estimate:
        """Find the figures for comparison, unless the ring cannot be analysed at mean values."""
        means = self.model.variables.means()
        sample = with_strain(self._mean.realisation, self.model.strain, self.model.jacket)
        try:
            ring = ring_figures(sample.jacket, means)
        except JacketcheckError:
            ring = None
        self.model = replace(self.model, ring=ring)
        return self
