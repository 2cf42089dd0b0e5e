"""Nominal moment of a circular section by the rectangular stress block of ACI 318.

The block is an exact circle segment, bars are elastic and perfectly plastic, and many sections or
loads are solved at once.  This gives the nominal strengths that codes ask for; the response with
confinement, hardening and bond comes from `moment_curvature`.
"""

from __future__ import annotations

from typing import Final, NamedTuple

import numpy as np

from jacketcheck.errors import DomainError
from jacketcheck.mechanics._arrays import Floats, Real, require_finite, require_positive
from jacketcheck.mechanics._customary_units import PSI
from jacketcheck.mechanics.section_geometry import segment_area, segment_first_moment

__all__ = ["NominalMoment", "block_depth_ratio", "nominal_moment"]

_CONCRETE_STRAIN: Final = 0.003  # ACI 318-19 22.2.2.1
_BLOCK_STRESS: Final = 0.85  # of f'c, ACI 318-19 22.2.2.4.1
_SMALLEST_DEPTH: Final = 1e-6  # neutral axis depth over diameter
_LARGEST_DEPTH: Final = 1e3
_BISECTIONS: Final = 50  # to rounding


class NominalMoment(NamedTuple):
    """Nominal strength of a section under axial load.

    Attributes
    ----------
    moment
        Moment about the column's centre [N mm]; NaN where the section cannot carry the load.
    neutral_axis_depth
        Distance from the extreme compressive fibre to the neutral axis [mm]; NaN likewise.
    extreme_tensile_strain
        Strain of the bar farthest from that fibre [-], tension positive; NaN likewise.
    """

    moment: Real
    neutral_axis_depth: Real
    extreme_tensile_strain: Real


def block_depth_ratio(concrete_strength: Real) -> Real:
    """Depth of the rectangular stress block over that of the neutral axis.

    Parameters
    ----------
    concrete_strength
        Specified strength [MPa], above zero; scalar or array.

    Returns
    -------
    Real
        Ratio ``beta1`` [-] between 0.65 and 0.85.

    Raises
    ------
    DomainError
        If the strength is not finite and above zero.

    Notes
    -----
    0.85 up to 4000 psi, 0.05 less for each 1000 psi above.

    References
    ----------
    ACI 318-19 Table 22.2.2.4.3.

    Examples
    --------
    >>> float(block_depth_ratio(25.0))
    0.85
    """
    require_positive(concrete_strength=concrete_strength)
    above = np.divide(concrete_strength, 1000.0 * PSI) - 4.0
    return np.clip(0.85 - 0.05 * above, 0.65, 0.85)


def nominal_moment(
    axial_load: Real,
    *,
    diameter: Real,
    concrete_strength: Real,
    bar_position: Floats,
    bar_area: Real,
    bar_yield: Real,
    bar_stress_limit: Real = np.inf,
    elastic_modulus: Real = 200e3,
) -> NominalMoment:
    """Nominal moment of a circular section under axial load.

    Parameters
    ----------
    axial_load
        Axial load through the column's centre [N], compression positive; scalar or array.
    diameter
        Diameter of the section [mm], above zero.
    concrete_strength
        Specified strength [MPa], above zero.
    bar_position
        Distance of each bar from the centre [mm], towards the compressed face positive; bars
        along the last axis, other axes broadcast with the loads.
    bar_area, bar_yield, bar_stress_limit
        Area [mm²], yield strength [MPa] and bond-developed stress [MPa] of each bar, bars along
        the last axis where they differ; infinite (default) for bars that are fully anchored.
    elastic_modulus
        Elastic modulus of the bars [MPa], above zero.

    Returns
    -------
    NominalMoment
        Moment, neutral axis depth and strain of the extreme bar.

    Raises
    ------
    DomainError
        If an argument lies outside its range, or a bar outside the section.

    Notes
    -----
    Extreme concrete strain 0.003; concrete stress ``0.85 f'c`` over a depth ``beta1 c``, at most
    the whole disc.  Concrete displaced by bars whose centre lies in the block is deducted; where
    a bar enters the block, equilibrium is met within ``0.85 f'c`` times its area.

    References
    ----------
    ACI 318-19 22.2.1 to 22.2.2.

    Examples
    --------
    >>> from jacketcheck.mechanics.section_geometry import bar_ring
    >>> position, _ = bar_ring(20, radius=500.0)
    >>> strength = nominal_moment(
    ...     3.0e6, diameter=1200.0, concrete_strength=28.0, bar_position=position,
    ...     bar_area=819.0, bar_yield=420.0)
    >>> round(float(strength.moment) / 1e6), round(float(strength.neutral_axis_depth))
    (3998, 365)
    """
    require_finite(axial_load=axial_load, bar_position=bar_position)
    require_positive(diameter=diameter, bar_area=bar_area, bar_yield=bar_yield)
    require_positive(elastic_modulus=elastic_modulus)
    position = np.atleast_1d(np.asarray(bar_position, dtype=float))
    if np.any(2.0 * np.abs(position) > np.asarray(diameter)[..., None]):
        worst = float(np.max(np.abs(position)))
        raise DomainError("bar_position", worst, "within the section")
    limit = np.asarray(bar_stress_limit, dtype=float)
    if not np.all(limit >= 0.0):
        raise DomainError("bar_stress_limit", float(np.min(limit)), "at least 0")
    section = _BlockSection(
        diameter=np.asarray(diameter, dtype=float),
        stress=_BLOCK_STRESS * np.asarray(concrete_strength, dtype=float),
        depth_ratio=np.asarray(block_depth_ratio(concrete_strength)),
        position=position,
        area=np.asarray(bar_area, dtype=float),
        strength=np.minimum(bar_yield, limit),
        modulus=np.asarray(elastic_modulus, dtype=float)[..., None],
    )
    return section.balance(np.asarray(axial_load, dtype=float))


class _BlockSection(NamedTuple):
    """Sections under the stress block; bars along the last axis of the last four fields."""

    diameter: Floats
    stress: Floats
    depth_ratio: Floats
    position: Floats
    area: Floats
    strength: Floats
    modulus: Floats

    def strain(self, depth: Floats) -> Floats:
        """Strain of each bar [-], compression positive, for neutral axis depths [mm]."""
        below = 0.5 * self.diameter[..., None] - self.position
        return np.asarray(_CONCRETE_STRAIN * (1.0 - below / depth[..., None]))

    def forces(self, depth: Floats) -> tuple[Floats, Floats]:
        """Axial force [N] and moment [N mm] for neutral axis depths [mm]."""
        block = np.minimum(self.depth_ratio * depth, self.diameter)
        bar = np.clip(self.modulus * self.strain(depth), -self.strength, self.strength)
        below = 0.5 * self.diameter[..., None] - self.position
        bar = (bar - np.where(below < block[..., None], self.stress[..., None], 0.0)) * self.area
        force = self.stress * segment_area(block, diameter=self.diameter) + bar.sum(axis=-1)
        arm = self.stress * segment_first_moment(block, diameter=self.diameter)
        return np.asarray(force), np.asarray(arm + (bar * self.position).sum(axis=-1))

    def balance(self, load: Floats) -> NominalMoment:
        """Bisect the neutral axis depth, on a logarithmic scale, until the load is balanced."""
        shape = np.broadcast_shapes(load.shape, self.forces(self.diameter)[0].shape)
        low = np.full(shape, np.log(_SMALLEST_DEPTH))
        high = np.full(shape, np.log(_LARGEST_DEPTH))
        weakest, strongest = (
            self.forces(self.diameter * np.exp(bound))[0] for bound in (low, high)
        )
        carried = (weakest <= load) & (load <= strongest)
        for _ in range(_BISECTIONS):
            middle = 0.5 * (low + high)
            above = self.forces(self.diameter * np.exp(middle))[0] > load
            low, high = np.where(above, low, middle), np.where(above, middle, high)
        depth = self.diameter * np.exp(0.5 * (low + high))
        moment = self.forces(depth)[1]
        tension = -np.min(self.strain(depth), axis=-1)
        return NominalMoment(
            *(np.where(carried, value, np.nan)[()] for value in (moment, depth, tension))
        )
