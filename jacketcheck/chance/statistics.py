"""Published statistics of the random variables, read from data files with their sources."""

from __future__ import annotations

import math
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from importlib.resources import files
from typing import Any, Final

from jacketcheck.chance.distributions import Distribution

__all__ = ["PublishedCorrelation", "Statistics", "published_correlations", "published_statistics"]

_FILES: Final = ("bolts", "plates", "column", "models")


@dataclass(frozen=True, slots=True)
class Statistics:
    """What is published of one variable.

    Attributes
    ----------
    name, title
        Name in the input, and what it is.
    relative_to
        What the variable is a factor on.
    distribution
        Kind of distribution.
    mean_ratio
        Mean of the factor [-].
    coefficient_of_variation, standard_deviation
        Scatter: of the factor [-], or of the quantity itself in N, mm and MPa; one of the two.
    source
        Where mean and scatter come from.
    lowest, highest
        Range of the quantity itself [N, mm, MPa], where physics or a formula that uses it end.
    range_source
        Why it ends there.
    """

    name: str
    title: str
    relative_to: str
    distribution: Distribution
    mean_ratio: float
    coefficient_of_variation: float | None
    standard_deviation: float | None
    source: str
    lowest: float
    highest: float
    range_source: str

    def variation(self, reference: float) -> float:
        """Coefficient of variation [-] where the factor is on a value [N, mm, MPa]."""
        if self.standard_deviation is None:
            assert self.coefficient_of_variation is not None  # noqa: S101 - one of the two
            return self.coefficient_of_variation
        return self.standard_deviation / (self.mean_ratio * reference)


@dataclass(frozen=True, slots=True)
class PublishedCorrelation:
    """Correlation coefficient of two variables [-], with its source."""

    between: tuple[str, str]
    coefficient: float
    source: str


def published_statistics(name: str, facts: Mapping[str, str]) -> Statistics:
    """Statistics of a variable for one jacket.

    Parameters
    ----------
    name
        Variable.
    facts
        What the cases of the data files ask for, e.g. ``{"tightening": "snug"}``; a case holds
        where each of its facts begins with one of the words it lists. The first one counts.

    Examples
    --------
    >>> published_statistics("sleeve-yield", {"steel": "ASTM A36"}).mean_ratio
    1.3
    """
    entry = _entries()[name]
    found = {key: value for key, value in entry.items() if key != "cases"}
    for case in entry.get("cases", ()):
        if _holds(case["when"], facts):
            found |= {key: value for key, value in case.items() if key != "when"}
            break
    return Statistics(
        name=name,
        title=found["title"],
        relative_to=found["relative_to"],
        distribution=found["distribution"],
        mean_ratio=float(found["mean_ratio"]),
        coefficient_of_variation=found.get("coefficient_of_variation"),
        standard_deviation=found.get("standard_deviation"),
        source=found["source"],
        lowest=found.get("lowest", 0.0),
        highest=found.get("highest", math.inf),
        range_source=found.get("range_source", ""),
    )


def published_correlations() -> tuple[PublishedCorrelation, ...]:
    """Correlations of the data files."""
    return tuple(
        PublishedCorrelation(tuple(one["between"]), float(one["coefficient"]), one["source"])
        for name in _FILES
        for one in _read(name).get("correlations", ())
    )


def _holds(when: Mapping[str, list[str]], facts: Mapping[str, str]) -> bool:
    return all(facts.get(key, "").startswith(tuple(words)) for key, words in when.items())


@lru_cache(maxsize=1)
def _entries() -> Mapping[str, Mapping[str, Any]]:
    """Entries of all files by name; callers must not change what they get."""
    entries = {}
    for name in _FILES:
        content = _read(name)
        for one in content["variables"]:
            pattern = content["patterns"][one["like"]] if "like" in one else {}
            entries[one["name"]] = {**pattern, **one}
    return entries


@lru_cache(maxsize=None)
def _read(name: str) -> Mapping[str, Any]:
    data = files("jacketcheck.chance") / "data" / f"{name}.toml"
    return tomllib.loads(data.read_text("utf-8"))
