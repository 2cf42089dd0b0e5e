"""Axial strain of the core in samples without a section analysis of their own.

The checked strain is the larger of the declared one and the one that the base reaches under the
hinge's moment. Where the declared one leads in every sample that was analysed, it is the whole
story. Where not, the base's strain is taken from a fit to the samples that were analysed, with the
scatter that the fit leaves. Samples in which the base does not hold are no part of it: the moment
at the base counts them.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import Final, Literal, TypeAlias

import numpy as np
from numpy.typing import NDArray

from jacketcheck.analysis.axial_strain import CheckedStrain
from jacketcheck.chance.distributions import Marginal
from jacketcheck.chance.evaluation import strained
from jacketcheck.chance.variables import Variable
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics._arrays import Floats, Real

__all__ = ["RESIDUAL", "BaseStrain", "Origin", "PowerLaw"]

Origin: TypeAlias = Literal["declared", "fitted", "largest", "frozen"]

RESIDUAL: Final = "base-strain-fit"
"""Name of the variable for the scatter that the fit leaves."""

_CLEARLY_BELOW: Final = 0.8
_SAMPLES_PER_TERM: Final = 3
_SMALLEST_SLOPE: Final = 1e-12


@dataclass(frozen=True, eq=False)
class PowerLaw:
    """A quantity as a product of powers of factors.

    Attributes
    ----------
    at_ones
        Its value where every factor is 1.
    exponents
        Power of each variable's factor.
    scatter
        Standard deviation of the logarithm that a fit leaves [-].
    determination
        Share of the logarithm's variance that it explains [-].
    """

    at_ones: float
    exponents: Mapping[str, float] = field(default_factory=dict)
    scatter: float = 0.0
    determination: float = 1.0

    @classmethod
    def fitted(cls, found: Floats, factors: Mapping[str, Floats]) -> PowerLaw:
        """Least squares of the logarithm on the logarithms of the factors."""
        logarithm = np.log(found)
        terms = np.column_stack([np.ones(found.size), *(np.log(v) for v in factors.values())])
        solution = np.linalg.lstsq(terms, logarithm, rcond=None)[0]
        left = logarithm - terms @ solution
        freedom = max(found.size - terms.shape[1], 1)
        total = float(np.sum((logarithm - logarithm.mean()) ** 2))
        exponents = dict(zip(factors, map(float, solution[1:]), strict=True))
        return cls(
            at_ones=float(np.exp(solution[0])),
            exponents={n: power for n, power in exponents.items() if abs(power) > _SMALLEST_SLOPE},
            scatter=float(np.sqrt(np.sum(left**2) / freedom)),
            determination=1.0 - float(np.sum(left**2)) / total if total > 0.0 else 1.0,
        )

    def at(self, factors: Mapping[str, Real]) -> Real:
        """Its value at some factors."""
        logarithm: Real = np.log(self.at_ones)
        for name, power in self.exponents.items():
            logarithm = logarithm + power * np.log(factors[name])
        return np.exp(logarithm)


@dataclass(frozen=True, eq=False)
class BaseStrain:
    """Strain of the base, and the share of added bars that pull there.

    Attributes
    ----------
    origin
        ``declared``: the declared strain leads in all samples analysed; ``fitted``: from the
        factors of some variables; ``largest``: the largest of too few samples for a fit;
        ``frozen``: that of mean values in every sample.
    declared
        Declared strain [-], if any.
    found
        Strain of the base, the same in all samples; with a fit, where every factor is 1 [-].
    tension_share
        Largest share of added bars in tension of the samples analysed [-]; at mean values if there
        were none.
    exponents
        Power of each variable's factor in the fit.
    scatter
        Standard deviation of the logarithm that the fit leaves [-].
    determination
        Share of the logarithm's variance that the fit explains [-].
    shear
        Shear of the relocated hinge [N] by the factors.
    """

    origin: Origin
    declared: float | None
    found: float
    tension_share: float
    exponents: Mapping[str, float] = field(default_factory=dict)
    scatter: float = 0.0
    determination: float = 1.0
    shear: PowerLaw = field(default_factory=lambda: PowerLaw(1e-9))

    @classmethod
    def at_means(cls, declared: Real | None, found: float, tension_share: float) -> BaseStrain:
        """Without any sample analysed."""
        stated = None if declared is None else float(declared)
        leads = stated is not None and found <= _CLEARLY_BELOW * stated
        return cls("declared" if leads else "frozen", stated, found, tension_share)

    def leads(self, found: Floats, holds: NDArray[np.bool_]) -> bool:
        """Whether the declared strain stays clearly above that of every sample whose base holds."""
        if self.origin != "declared" or self.declared is None:
            return False
        kept = holds & np.isfinite(found) & (found > 0.0)
        return bool(np.all(found[kept] <= _CLEARLY_BELOW * self.declared))

    def refined(
        self, found: Floats, holds: NDArray[np.bool_], share: Floats, factors: Mapping[str, Floats]
    ) -> BaseStrain:
        """What some samples that were analysed say.

        Parameters
        ----------
        found, holds, share
            Strain of the base, whether it holds, and share of added bars in tension, by sample.
        factors
            Factors of the variables that scattered.
        """
        kept = holds & np.isfinite(found) & (found > 0.0)
        largest = max([self.tension_share, *share[kept]])
        if self.leads(found, holds):
            return replace(self, tension_share=largest)
        if not np.any(kept):
            return self
        if np.count_nonzero(kept) < _SAMPLES_PER_TERM * (len(factors) + 1):
            strain = max(self.found, float(np.max(found[kept])))
            return replace(self, origin="largest", found=strain, tension_share=largest)
        return self._fitted(found[kept], {n: v[kept] for n, v in factors.items()}, largest)

    def _fitted(self, found: Floats, factors: Mapping[str, Floats], share: float) -> BaseStrain:
        law = PowerLaw.fitted(found, factors)
        return BaseStrain(
            origin="fitted",
            declared=self.declared,
            found=law.at_ones,
            tension_share=share,
            exponents=law.exponents,
            scatter=law.scatter,
            determination=law.determination,
            shear=self.shear,
        )

    def with_shear(self, shear: PowerLaw) -> BaseStrain:
        """The same with another law of the hinge's shear."""
        return replace(self, shear=shear)

    def given_to(self, samples: Jacket, factors: Mapping[str, Real]) -> Jacket:
        """The samples without need of a section analysis of their own."""
        return strained(
            samples,
            self.checked(factors),
            share=self.tension_share,
            shear=self.shear.at(factors),
        )

    @property
    def variables(self) -> tuple[str, ...]:
        """Variables that the strain depends on, besides the model's factor."""
        return (*self.exponents, RESIDUAL) if self.origin == "fitted" else ()

    @property
    def residual(self) -> Variable:
        """Factor for the scatter that the fit leaves, of median 1."""
        variance = self.scatter**2
        return Variable(
            name=RESIDUAL,
            title="strain of the base besides its fit",
            relative_to="fit to the samples with section analyses",
            source="section analyses of this estimate",
            marginal=Marginal(
                "lognormal", math.exp(variance / 2.0), math.sqrt(math.expm1(variance))
            ),
        )

    def checked(self, factors: Mapping[str, Real]) -> CheckedStrain:
        """Checked strain of some samples, the model's factor on it included."""
        found: Real = self.found
        if self.origin == "fitted":
            logarithm: Real = np.log(np.multiply(self.found, factors.get(RESIDUAL, 1.0)))
            for name, power in self.exponents.items():
                logarithm = logarithm + power * np.log(factors[name])
            found = np.exp(logarithm)
        larger = found if self.declared is None else np.maximum(self.declared, found)
        value = np.multiply(larger, factors["axial-strain"])
        return CheckedStrain(self.declared, found, base_holds=True, value=value)
