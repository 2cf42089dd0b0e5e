"""What a shop must know of a bolt product besides its sizes: parts, marks, installation, reuse."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any, Final, NamedTuple

from jacketcheck.catalog._load import UNITS, read_file, sources_by_field, without_noise
from jacketcheck.catalog.bands import Bands, bands_are_ordered
from jacketcheck.catalog.entries import Sourced, require_figures
from jacketcheck.catalog.installation_rules import InstallationRules
from jacketcheck.errors import CatalogError

__all__ = ["EN_1090", "RCSC", "AssemblyRules", "WeatheringParts", "built_in_assembly_rules"]

RCSC: Final = "RCSC"
EN_1090: Final = "EN 1090-2"
_BUILT_IN: Final = (RCSC, EN_1090)
"""Standards by which bolts are tightened and inspected, whose rules come with the package."""


class WeatheringParts(NamedTuple):
    """Parts of the same product that weather like the steel of an unpainted sleeve.

    Attributes
    ----------
    bolt
        What an order adds to product and size, e.g. ``Type 3``.
    nut, washer, indicator
        What to order with the bolt.
    marks
        Marks by which a delivered bolt is known.
    """

    bolt: str
    nut: str
    washer: str
    indicator: str
    marks: str


@dataclass(frozen=True, slots=True, kw_only=True)
class AssemblyRules(Sourced):
    """Parts, marks and installation rules of a bolt product.

    Attributes
    ----------
    name
        The product that they belong to.
    standard
        Standard of tightening and inspection: ``RCSC``, ``EN 1090-2``, or that of `installation`.
    nut, washer, indicator
        What to order with the bolt; the indicator is the direct tension indicator.
    marks
        Marks by which a delivered bolt is known.
    reuse
        Whether a bolt that was tightened once may be used again.
    ordering
        What an order must say besides product, size and length; may be empty.
    protrusion
        Least length of bolt beyond the nut after tightening, in pitches of the thread.
    clear_threads
        Full threads that must stay free between nut and shank, in pitches of the thread, by bolt
        length: pairs (longest bolt in diameters, threads).
    torque_coefficient_low, torque_coefficient_high
        Range in which a calibrated torque coefficient may lie [-]; None where none is known.
    max_tensile_strength
        Largest tensile strength a certificate may show [MPa]; None where there is no limit.
    installation
        Rules of the standard; None where it is one of the two that are built in.
    weathering
        Parts for unpainted weathering steel; None where the product has none that are known.
    """

    name: str
    standard: str
    nut: str
    washer: str
    indicator: str
    marks: str
    reuse: str
    ordering: str = ""
    protrusion: float = 0.0
    clear_threads: Bands = ((math.inf, 0.0),)
    torque_coefficient_low: float | None = None
    torque_coefficient_high: float | None = None
    max_tensile_strength: float | None = None
    installation: InstallationRules | None = None
    weathering: WeatheringParts | None = None

    @property
    def torque_coefficients(self) -> tuple[float, float] | None:
        """Range in which a calibrated torque coefficient may lie [-]; None where none is known."""
        low, high = self.torque_coefficient_low, self.torque_coefficient_high
        return None if low is None or high is None else (low, high)

    def weathered(self) -> AssemblyRules:
        """The rules with the parts for unpainted weathering steel, where these are known."""
        if self.weathering is None:
            return self
        parts = self.weathering
        return replace(
            self,
            nut=parts.nut,
            washer=parts.washer,
            indicator=parts.indicator,
            marks=parts.marks,
        )

    def __post_init__(self) -> None:
        """Check the figures, and that every part is named."""
        kind = "assembly rules"
        figures = {
            "torque_coefficient_low": self.torque_coefficient_low,
            "torque_coefficient_high": self.torque_coefficient_high,
            "max_tensile_strength": self.max_tensile_strength,
        }
        require_figures(kind, self.name, self.source, figures)
        low, high = self.torque_coefficient_low, self.torque_coefficient_high
        if (low is None) != (high is None):
            raise CatalogError(kind, self.name, "have half of a torque coefficient range")
        if low is not None and high is not None and high < low:
            raise CatalogError(kind, self.name, "have a torque coefficient range upside down")
        for field_name in ("nut", "washer", "indicator", "marks", "reuse"):
            if not getattr(self, field_name).strip():
                raise CatalogError(kind, self.name, f"do not name {field_name}")
        if self.weathering is not None and not all(part.strip() for part in self.weathering):
            raise CatalogError(kind, self.name, "leave a part for weathering steel without a name")
        threads = [self.protrusion, *(count for _, count in self.clear_threads)]
        if not all(0.0 <= count < math.inf for count in threads):
            raise CatalogError(kind, self.name, "have a length in threads below zero")
        if not bands_are_ordered(tuple(longest for longest, _ in self.clear_threads)):
            raise CatalogError(kind, self.name, "have clear threads that do not ascend, or none")
        if self.installation is None and self.standard not in _BUILT_IN:
            known = ", ".join(_BUILT_IN)
            raise CatalogError(
                kind, self.name, f"follow {self.standard!r}: neither of {known}, and not brought"
            )
        if self.installation is not None and self.standard != self.installation.name:
            raise CatalogError(
                kind, self.name, f"follow {self.standard!r} but bring {self.installation.name!r}"
            )


def built_in_assembly_rules(product: str) -> AssemblyRules:
    """Rules of a built-in bolt product, by its name."""
    written = read_file("assembly_rules")
    entry: Mapping[str, Any] = written["products"][product]
    shared: Mapping[str, Any] = written["standards"][entry["standard"]]
    strongest, weathering = entry.get("max_tensile_strength"), entry.get("weathering")
    return AssemblyRules(
        name=product,
        standard=entry["standard"],
        nut=entry["nut"],
        washer=entry["washer"],
        indicator=entry["indicator"],
        marks=entry["marks"],
        reuse=written["reuse"][entry["reuse"]],
        ordering=entry.get("ordering", ""),
        protrusion=shared["protrusion"],
        clear_threads=((math.inf, entry.get("clear_threads", 0.0)),),
        torque_coefficient_low=shared["torque_coefficient_low"],
        torque_coefficient_high=shared["torque_coefficient_high"],
        max_tensile_strength=None
        if strongest is None
        else without_noise(strongest * UNITS[entry["strength_unit"]]),
        weathering=None if weathering is None else WeatheringParts(**weathering),
        source=entry["source"],
        sources={**sources_by_field(shared), **sources_by_field(entry)},
    )
