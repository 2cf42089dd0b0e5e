"""The random variables of one jacket: published statistics, and what its file says instead."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Final, get_args

import numpy as np

from jacketcheck.chance.dependence import Dependence
from jacketcheck.chance.distributions import LARGEST_VARIATION, Marginal
from jacketcheck.chance.statistics import published_correlations, published_statistics
from jacketcheck.errors import DomainError, InputError, InputProblem
from jacketcheck.inputs.chance import Chance, Correlation, Scatter, VariableName
from jacketcheck.inputs.written import shown
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.limit_state import ModelFactor
from jacketcheck.mechanics._arrays import Floats, Real

__all__ = ["NAMES", "Scattering", "Variable", "Variables", "random_variables"]

NAMES: Final[tuple[str, ...]] = get_args(VariableName)
"""All random variables, in the order in which they are listed."""


@dataclass(frozen=True, slots=True)
class Variable:
    """One random variable: a factor on a value of the jacket, or on what a model predicts.

    Attributes
    ----------
    name, title, relative_to, source
        As published, or the file's own source.
    marginal
        Distribution of the factor.
    held
        Whether it is held at its mean.
    range_source
        Why its distribution is cut where it is; empty where it is not.
    """

    name: str
    title: str
    relative_to: str
    source: str
    marginal: Marginal
    held: bool = False
    range_source: str = ""

    @property
    def scatters(self) -> bool:
        """Whether it varies from sample to sample."""
        return not self.held and self.marginal.variation > 0.0


@dataclass(frozen=True, eq=False)
class Scattering:
    """Some variables that scatter, ready to be sampled.

    Attributes
    ----------
    variables
        In the order of the rows of the points.
    dependence
        Their correlation.
    """

    variables: tuple[Variable, ...]
    dependence: Dependence

    @property
    def names(self) -> tuple[str, ...]:
        """Names in order."""
        return tuple(one.name for one in self.variables)

    def values(self, independent: Floats) -> dict[str, Real]:
        """Factors by variable from independent standard normal points, (variables, points)."""
        normal = self.dependence.correlated(independent)
        return {
            one.name: one.marginal.at(row) for one, row in zip(self.variables, normal, strict=True)
        }


@dataclass(frozen=True, eq=False)
class Variables:
    """All random variables of one jacket, with their correlations.

    Attributes
    ----------
    by_name
        Variables that the jacket has a use for.
    correlations
        Correlation coefficients of pairs [-], with sources.
    """

    by_name: Mapping[str, Variable]
    correlations: Mapping[tuple[str, str], tuple[float, str]]

    def __iter__(self) -> Iterator[Variable]:
        return iter(self.by_name.values())

    def joined_by(self, variable: Variable) -> Variables:
        """The same with one more variable, which is correlated with none."""
        return replace(self, by_name={**self.by_name, variable.name: variable})

    def means(self) -> dict[str, Real]:
        """Mean factor of every variable; 1 for what the jacket has no use for."""
        ones: dict[str, Real] = dict.fromkeys(NAMES, 1.0)
        return ones | {one.name: one.marginal.mean for one in self}

    def scattering(self) -> Scattering:
        """All that scatter."""
        return self.among(self.by_name)

    def among(self, names: Collection[str]) -> Scattering:
        """Those of some variables that scatter.

        Raises
        ------
        DomainError
            If their correlation coefficients contradict each other.
        """
        chosen = tuple(one for one in self if one.name in names and one.scatters)
        position = {one.name: index for index, one in enumerate(chosen)}
        pairs = {
            (position[first], position[second]): coefficient
            for (first, second), (coefficient, _) in self.correlations.items()
            if first in position and second in position
        }
        return Scattering(chosen, Dependence.of([one.marginal for one in chosen], pairs))


def random_variables(
    jacket: Jacket, written: Chance | None = None, *, models: Collection[ModelFactor] = ()
) -> Variables:
    """Random variables of a jacket.

    Parameters
    ----------
    jacket
        One design.
    written
        What the file says of them.
    models
        Factors that limit states bring themselves.

    Raises
    ------
    InputError
        With every variable or correlation of the file that cannot be used.
    """
    written = Chance() if written is None else written
    problems: list[InputProblem] = []
    by_name = {name: _published(jacket, name) for name in NAMES if _is_of_use(jacket, name)}
    for model in models:
        if model.name in NAMES:
            message = (
                "is the name of a published variable; a model factor of a plug-in needs another"
            )
            problems.append(InputProblem("model factor", model.name, message))
        by_name[model.name] = _brought(model)
    for index, one in enumerate(written.variables, start=1):
        path = f"chance.variables.{index}"
        if one.name in (earlier.name for earlier in written.variables[: index - 1]):
            problems.append(InputProblem(f"{path}.name", shown(one.name), "has an entry already"))
        elif one.name in by_name:
            changed, found = _changed(by_name[one.name], one, path)
            by_name[one.name] = _cut(changed, jacket) if one.name in NAMES else changed
            problems += found
    correlations = _correlations(by_name, written.correlations)
    variables = Variables(by_name, correlations)
    problems += _contradictions(variables)
    if problems:
        raise InputError(problems, source="chance")
    return variables


def _published(jacket: Jacket, name: str) -> Variable:
    statistics = published_statistics(name, _facts(jacket, name))
    variation = statistics.variation(_reference(jacket, name))
    kind, source = statistics.distribution, statistics.source
    if variation > LARGEST_VARIATION[kind]:
        kind, variation = "lognormal", min(variation, LARGEST_VARIATION["lognormal"])
        source += "; lognormal, as it scatters so much that a normal variable would reach zero"
    marginal = Marginal(kind, statistics.mean_ratio, variation)
    variable = Variable(name, statistics.title, statistics.relative_to, source, marginal)
    return _cut(variable, jacket)


def _cut(variable: Variable, jacket: Jacket) -> Variable:
    """The variable cut to the range where physics and formulas hold.

    Not where that would take much of it away: then its samples beyond the range are evaluated as
    far as they can be, and what cannot is told.
    """
    statistics = published_statistics(variable.name, _facts(jacket, variable.name))
    reference, whole = _reference(jacket, variable.name), variable.marginal
    lowest, highest = statistics.lowest / reference, statistics.highest / reference
    if not lowest < whole.mean < highest:
        return variable
    cut = replace(whole, lowest=lowest, highest=highest)
    if cut.cut_off > _MOST_CUT_OFF:
        return variable
    return replace(variable, marginal=cut, range_source=statistics.range_source)


_MOST_CUT_OFF: Final = 0.05
"""Most of a distribution that is cut off [-]."""


def _brought(model: ModelFactor) -> Variable:
    """Variable of a factor that a limit state brings."""
    marginal = Marginal(model.distribution, model.mean, model.variation)
    return Variable(model.name, model.title, "nominal capacity", model.source, marginal)


def _changed(
    variable: Variable, written: Scatter, path: str
) -> tuple[Variable, list[InputProblem]]:
    """The variable as the file has it, or what is wrong with that."""
    kind = written.distribution or variable.marginal.distribution
    variation = written.coefficient_of_variation
    if variation is None:
        variation = variable.marginal.variation
    if variation > LARGEST_VARIATION[kind]:
        message = f"must be at most {LARGEST_VARIATION[kind]:g} for a {kind} variable"
        field = f"{path}.coefficient_of_variation"
        return variable, [InputProblem(field, f"{variation:g}", message)]
    mean = variable.marginal.mean if written.mean_ratio is None else written.mean_ratio
    given = written.model_fields_set & {"distribution", "mean_ratio", "coefficient_of_variation"}
    source = variable.source
    if given:
        source = written.source or "input chance.variables"
        if len(given) < 3:
            source += f"; what it leaves out: {variable.source}"
    marginal = Marginal(kind, mean, variation)
    changed = replace(variable, marginal=marginal, source=source, held=written.held)
    return replace(changed, range_source=""), []


def _correlations(
    by_name: Mapping[str, Variable], written: Collection[Correlation]
) -> dict[tuple[str, str], tuple[float, str]]:
    """Published coefficients, replaced and joined by those of the file."""
    found = {
        frozenset(one.between): (one.coefficient, one.source) for one in published_correlations()
    }
    found |= {
        frozenset(one.between): (one.coefficient, "input chance.correlations") for one in written
    }
    order = {name: index for index, name in enumerate(NAMES)}
    pairs = {tuple(sorted(pair, key=order.__getitem__)): value for pair, value in found.items()}
    return {(a, b): value for (a, b), value in pairs.items() if a in by_name and b in by_name}


def _contradictions(variables: Variables) -> list[InputProblem]:
    """Correlations that no set of variables can have."""
    try:
        variables.among(NAMES)
    except DomainError as error:
        message = f"contradict each other, or the published ones beside them ({error})"
        return [InputProblem("chance.correlations", "", message)]
    return []


def _facts(jacket: Jacket, name: str) -> dict[str, str]:
    """What the published cases ask for."""
    faying = min(jacket.bolts.faying_classes, key=lambda one: one.slip_coefficient)
    steel = jacket.splice.steel if name.startswith("splice") else jacket.sleeve.steel
    return {
        "tightening": jacket.bolts.tightening,
        "bolt product": jacket.bolts.product,
        "faying class": faying.name,
        "steel": steel.name,
    }


def _reference(jacket: Jacket, name: str) -> float:
    """Value that a published standard deviation belongs to [N, mm, MPa]."""
    column, added = jacket.column, jacket.added_bars
    values: dict[str, Real] = {
        "column-concrete": column.concrete.expected,
        "grout-strength": jacket.grout.strength,
        "column-bar-yield": column.layer.steel.expected_yield,
        "column-bar-tensile": column.layer.steel.expected_tensile,
        "column-hoop-yield": column.ties.expected_yield,
        "column-cover": column.cover,
    }
    if added is not None:
        values["added-bar-yield"] = added.layer.steel.expected_yield
        values["added-bar-tensile"] = added.layer.steel.expected_tensile
    return float(np.asarray(values.get(name, 1.0)))


def _is_of_use(jacket: Jacket, name: str) -> bool:
    """Whether the jacket has what a variable is about."""
    if name in {"added-bar-yield", "added-bar-tensile", "anchorage", "interface-friction"}:
        return jacket.added_bars is not None
    if name == "footing-concrete":
        return jacket.footing is not None
    if name == "bolt-pretension":
        return jacket.bolts.pretensioned
    return True
