"""A circular reinforced-concrete section: nested concrete zones and bars.

Axes have their origin in the column's centre.  A bending direction is the angle of the line from
the centre to the extreme compressive fibre; the opposite sense is that angle plus 180 degrees.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from jacketcheck.errors import DomainError
from jacketcheck.mechanics._arrays import Floats, require_finite, require_positive
from jacketcheck.mechanics.bar_steel import BarSteel
from jacketcheck.mechanics.concrete_law import ConcreteLaw
from jacketcheck.mechanics.section_geometry import bar_ring

__all__ = ["BarGroup", "CircularSection", "ConcreteZone"]

Flags = NDArray[np.bool_]


@dataclass(frozen=True, eq=False)
class ConcreteZone:
    """A disc, or a ring around the zone before it, of one concrete.

    Attributes
    ----------
    name
        Such as ``core``, ``cover`` or ``grout``.
    outer_diameter
        Outer diameter [mm]; the inner one is the outer diameter of the zone before.
    law
        Stress-strain curve of the concrete.
    """

    name: str
    outer_diameter: float
    law: ConcreteLaw


@dataclass(frozen=True, eq=False)
class BarGroup:
    """Bars of one steel.

    Attributes
    ----------
    x, y
        Coordinates of the bar centres from the column's centre [mm], shape (n,).
    area
        Area of each bar [mm²], shape (n,).
    steel
        Stress-strain parameters of the steel.
    stress_limit
        Largest stress, in tension and in compression, that bond can develop in each bar [MPa],
        shape (n,); infinite where the bar is fully anchored, zero for a bar below its fracture.
    """

    x: Floats
    y: Floats
    area: Floats
    steel: BarSteel
    stress_limit: Floats

    def __post_init__(self) -> None:
        """Reject arrays of different lengths and numbers that are no bars."""
        shapes = {self.x.shape, self.y.shape, self.area.shape, self.stress_limit.shape}
        if len(shapes) != 1 or self.x.ndim != 1 or self.x.size == 0:
            raise DomainError("bars", shapes, "one-dimensional arrays of equal length")
        require_finite(x=self.x, y=self.y)
        require_positive(area=self.area)
        if not np.all(self.stress_limit >= 0.0):
            raise DomainError("stress_limit", float(np.min(self.stress_limit)), "at least 0")

    @classmethod
    def at(
        cls,
        x: Floats,
        y: Floats,
        *,
        area: Floats | float,
        steel: BarSteel,
        stress_limit: Floats | float = np.inf,
    ) -> BarGroup:
        """Bars at given coordinates [mm]; `area` and `stress_limit` broadcast over the bars."""
        x, y = np.atleast_1d(np.asarray(x, float)), np.atleast_1d(np.asarray(y, float))
        return cls(
            x,
            y,
            np.broadcast_to(np.asarray(area, float), x.shape).copy(),
            steel,
            np.broadcast_to(np.asarray(stress_limit, float), x.shape).copy(),
        )

    @classmethod
    def ring(
        cls,
        count: int,
        *,
        radius: float,
        area: Floats | float,
        steel: BarSteel,
        first_angle: float = 0.0,
        stress_limit: Floats | float = np.inf,
    ) -> BarGroup:
        """Bars at equal spacing on a circle of given radius [mm], the first at an angle [rad]."""
        x, y = bar_ring(count, radius=radius, first_angle=first_angle)
        return cls.at(x, y, area=area, steel=steel, stress_limit=stress_limit)


@dataclass(frozen=True, eq=False)
class CircularSection:
    """A circular section.

    Attributes
    ----------
    zones
        Concrete zones from the inside out; the first one is the confined core.
    bars
        Groups of bars; results list the bars in this order.

    Examples
    --------
    >>> from jacketcheck.mechanics.bar_steel import BarSteel
    >>> from jacketcheck.mechanics.concrete_law import unconfined_concrete_law
    >>> concrete = unconfined_concrete_law(strength=30.0, elastic_modulus=27e3)
    >>> steel = BarSteel(469.0, 655.0, 0.0115, 0.09, 200e3)
    >>> bars = BarGroup.ring(12, radius=420.0, area=645.0, steel=steel)
    >>> section = CircularSection((ConcreteZone("core", 1000.0, concrete),), (bars,))
    >>> section.diameter, section.bar_yields.all().item()
    (1000.0, True)
    """

    zones: tuple[ConcreteZone, ...]
    bars: tuple[BarGroup, ...]

    def __post_init__(self) -> None:
        """Reject zones that are not nested and bars that lie outside the concrete."""
        diameters = np.array([zone.outer_diameter for zone in self.zones])
        if diameters.size == 0:
            raise DomainError("zones", self.zones, "at least one concrete zone")
        require_positive(outer_diameter=diameters)
        if np.any(np.diff(diameters) <= 0.0):
            raise DomainError("outer_diameter", diameters, "increasing from the inside out")
        if self.bars and np.max(self.bar_radius) > 0.5 * self.diameter:
            raise DomainError(
                "bar radius", float(np.max(self.bar_radius)), f"at most {0.5 * self.diameter:g}"
            )

    @property
    def diameter(self) -> float:
        """Outer diameter [mm]."""
        return self.zones[-1].outer_diameter

    @property
    def core_diameter(self) -> float:
        """Diameter of the innermost, confined zone [mm]."""
        return self.zones[0].outer_diameter

    @cached_property
    def bar_x(self) -> Floats:
        """Coordinates x of all bars [mm]."""
        return self._gather("x")

    @cached_property
    def bar_y(self) -> Floats:
        """Coordinates y of all bars [mm]."""
        return self._gather("y")

    @cached_property
    def bar_radius(self) -> Floats:
        """Distance of each bar from the centre [mm]."""
        return np.hypot(self.bar_x, self.bar_y)

    @cached_property
    def bar_area(self) -> Floats:
        """Area of each bar [mm²]."""
        return self._gather("area")

    @cached_property
    def bar_stress_limit(self) -> Floats:
        """Bond-developed stress of each bar [MPa], infinite where fully anchored."""
        return self._gather("stress_limit")

    @cached_property
    def bar_yield_strain(self) -> Floats:
        """Yield strain of each bar [-]."""
        return self._per_bar(lambda steel: steel.yield_strength / steel.elastic_modulus)

    @cached_property
    def bar_yield_strength(self) -> Floats:
        """Yield strength of each bar [MPa]."""
        return self._per_bar(lambda steel: steel.yield_strength)

    @cached_property
    def bar_tensile_strength(self) -> Floats:
        """Tensile strength of each bar [MPa]."""
        return self._per_bar(lambda steel: steel.tensile_strength)

    @cached_property
    def bar_ultimate_strain(self) -> Floats:
        """Strain [-] at which each bar fractures."""
        return self._per_bar(lambda steel: steel.ultimate_strain)

    @cached_property
    def bar_yields(self) -> Flags:
        """Whether bond can develop the yield strength of each bar."""
        return self.bar_stress_limit >= self.bar_yield_strength

    @cached_property
    def bar_anchored(self) -> Flags:
        """Whether bond can develop the tensile strength of each bar, so that it can fracture."""
        return self.bar_stress_limit >= self.bar_tensile_strength

    @cached_property
    def bar_zone(self) -> np.ndarray[tuple[int], np.dtype[np.intp]]:
        """Index of the concrete zone around each bar's centre."""
        radii = 0.5 * np.array([zone.outer_diameter for zone in self.zones])
        index: np.ndarray[tuple[int], np.dtype[np.intp]] = np.searchsorted(radii, self.bar_radius)
        return index

    @property
    def gross_area(self) -> float:
        """Area inside the outer diameter [mm²]."""
        return float(np.pi * self.diameter**2 / 4.0)

    @cached_property
    def squash_load(self) -> float:
        """Sum of concrete strength and bar yield over their gross areas [N], a scale of force."""
        diameters = np.array([0.0, *(zone.outer_diameter for zone in self.zones)])
        areas = np.diff(np.pi * diameters**2 / 4.0)
        strengths = np.array([zone.law.strength for zone in self.zones])
        return float(areas @ strengths + self.bar_area @ self.bar_yield_strength)

    def bar_position(self, angle: float) -> Floats:
        """Distance of each bar from the centre along the bending direction `angle` [rad], [mm]."""
        require_finite(angle=angle)
        return np.asarray(self.bar_x * np.cos(angle) + self.bar_y * np.sin(angle))

    def _gather(self, field: str) -> Floats:
        if not self.bars:
            return np.empty(0)
        return np.concatenate([getattr(group, field) for group in self.bars])

    def _per_bar(self, value: Callable[[BarSteel], float]) -> Floats:
        if not self.bars:
            return np.empty(0)
        return np.concatenate([np.full(group.x.size, value(group.steel)) for group in self.bars])
