"""What a shop must know of a bolt product besides its sizes: parts, marks, installation, reuse."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Literal, TypeAlias

from jacketcheck.catalog._load import UNITS, read_file, sources_by_field, without_noise
from jacketcheck.catalog.entries import Sourced, require_figures
from jacketcheck.errors import CatalogError

__all__ = ["AssemblyRules", "InstallationStandard", "built_in_assembly_rules"]

InstallationStandard: TypeAlias = Literal["RCSC", "EN 1090-2"]
"""The standard by which bolts are tightened and inspected."""


@dataclass(frozen=True, slots=True, kw_only=True)
class AssemblyRules(Sourced):
    """Parts, marks and installation rules of a bolt product.

    Attributes
    ----------
    name
        The product that they belong to.
    standard
        Standard of tightening and inspection.
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
        Full threads that must stay free between nut and shank, in pitches of the thread.
    torque_coefficient_low, torque_coefficient_high
        Range in which a calibrated torque coefficient may lie [-].
    max_tensile_strength
        Largest tensile strength a certificate may show [MPa]; None where there is no limit.
    """

    name: str
    standard: InstallationStandard
    nut: str
    washer: str
    indicator: str
    marks: str
    reuse: str
    ordering: str = ""
    protrusion: float = 0.0
    clear_threads: float = 0.0
    torque_coefficient_low: float
    torque_coefficient_high: float
    max_tensile_strength: float | None = None

    def __post_init__(self) -> None:
        """Check the figures, and that every part is named."""
        kind = "assembly rules"
        figures = {
            "torque_coefficient_low": self.torque_coefficient_low,
            "torque_coefficient_high": self.torque_coefficient_high,
            "max_tensile_strength": self.max_tensile_strength,
        }
        require_figures(kind, self.name, self.source, figures)
        if self.torque_coefficient_high < self.torque_coefficient_low:
            raise CatalogError(kind, self.name, "have a torque coefficient range upside down")
        for field_name in ("nut", "washer", "indicator", "marks", "reuse"):
            if not getattr(self, field_name).strip():
                raise CatalogError(kind, self.name, f"do not name {field_name}")
        if not (self.protrusion >= 0.0 and self.clear_threads >= 0.0):
            raise CatalogError(kind, self.name, "have a length in threads below zero")


def built_in_assembly_rules(product: str) -> AssemblyRules:
    """Rules of a built-in bolt product, by its name."""
    written = read_file("assembly_rules")
    entry: Mapping[str, Any] = written["products"][product]
    shared: Mapping[str, Any] = written["standards"][entry["standard"]]
    strongest = entry.get("max_tensile_strength")
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
        clear_threads=entry.get("clear_threads", 0.0),
        torque_coefficient_low=shared["torque_coefficient_low"],
        torque_coefficient_high=shared["torque_coefficient_high"],
        max_tensile_strength=None
        if strongest is None
        else without_noise(strongest * UNITS[entry["strength_unit"]]),
        source=entry["source"],
        sources={**sources_by_field(shared), **sources_by_field(entry)},
    )
