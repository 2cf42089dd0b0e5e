"""What holds a dilating core together: the sleeve, and the column's own hoops.

Both are linear up to yield and hold their pressure from there. The sleeve may start late, when
slip at the seams has left play that must close first.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from jacketcheck.mechanics._arrays import Real, require_at_least, require_positive

__all__ = ["Restraint"]


@dataclass(frozen=True, eq=False)
class Restraint:
    """Elastic, then perfectly plastic restraint of a circular core; fields broadcast.

    Attributes
    ----------
    inner_radius
        Inner radius of the sleeve [mm], at least `core_radius`.
    core_radius
        Radius of the face between core and grout [mm], above zero.
    radial_compliance
        Outward movement of the core's face for each unit of pressure on the sleeve, from
        `jacketcheck.mechanics.hoop.radial_compliance` [mm/MPa], at least `sleeve_compliance`.
    sleeve_compliance
        The part of it that is stretch of the sleeve, from
        `jacketcheck.mechanics.hoop.sleeve_compliance` [mm/MPa], above zero.
    yield_pressure
        Pressure on the sleeve at which it yields in hoop tension [MPa], above zero.
    radial_play
        Outward movement of the core's face before the sleeve engages [mm], at least zero; see
        `jacketcheck.mechanics.retained_pressure.radial_play`.
    column_hoop_stiffness
        Effective pressure of the column's own hoops for each unit of lateral strain, from
        `jacketcheck.mechanics.lateral_pressure.hoop_lateral_stiffness` [MPa], at least zero;
        zero where they are not counted.
    column_hoop_yield_pressure
        Effective pressure of those hoops at yield [MPa], at least zero.

    Raises
    ------
    DomainError
        If a field is not finite or lies outside its range.

    References
    ----------
    Thin-cylinder theory and radially cracked grout, see `jacketcheck.mechanics.hoop`.
    """

    inner_radius: Real
    core_radius: Real
    radial_compliance: Real
    sleeve_compliance: Real
    yield_pressure: Real
    radial_play: Real = 0.0
    column_hoop_stiffness: Real = 0.0
    column_hoop_yield_pressure: Real = 0.0

    def __post_init__(self) -> None:
        """Reject fields outside their range."""
        require_positive(
            inner_radius=self.inner_radius,
            core_radius=self.core_radius,
            radial_compliance=self.radial_compliance,
            sleeve_compliance=self.sleeve_compliance,
            yield_pressure=self.yield_pressure,
        )
        require_at_least(
            0.0,
            annulus=np.subtract(self.inner_radius, self.core_radius),
            compliance_of_seams_and_grout=np.subtract(
                self.radial_compliance, self.sleeve_compliance
            ),
            radial_play=self.radial_play,
            column_hoop_stiffness=self.column_hoop_stiffness,
            column_hoop_yield_pressure=self.column_hoop_yield_pressure,
        )

    @property
    def yield_strain(self) -> Real:
        """Hoop strain of the sleeve at yield [-]."""
        return np.multiply(self.yield_pressure, self.sleeve_compliance) / self.inner_radius

    @property
    def largest_core_pressure(self) -> Real:
        """Pressure on the core when sleeve and column hoops both yield [MPa]."""
        from_sleeve = np.multiply(self.yield_pressure, self.inner_radius) / self.core_radius
        hoops_counted = np.greater(self.column_hoop_stiffness, 0.0)
        return from_sleeve + np.where(hoops_counted, self.column_hoop_yield_pressure, 0.0)

    @property
    def engagement_lateral_strain(self) -> Real:
        """Lateral strain of the core at which the play has closed [-]."""
        return np.divide(self.radial_play, self.core_radius)

    @property
    def sleeve_yield_lateral_strain(self) -> Real:
        """Lateral strain of the core at which the sleeve first yields [-]."""
        return self.lateral_strain_at_hoop_strain(self.yield_strain)

    @property
    def column_hoop_yield_strain(self) -> Real:
        """Lateral strain of the core at which its own hoops yield [-]; zero without hoops."""
        stiffness = np.asarray(self.column_hoop_stiffness, dtype=float)
        divisor = np.where(stiffness > 0.0, stiffness, np.inf)
        return np.divide(self.column_hoop_yield_pressure, divisor)

    def sleeve_pressure(self, lateral_strain: Real) -> Real:
        """Pressure on the inner face of the sleeve [MPa] at a lateral strain of the core [-]."""
        movement = np.multiply(lateral_strain, self.core_radius) - self.radial_play
        elastic = np.maximum(movement, 0.0) / self.radial_compliance
        return np.minimum(elastic, self.yield_pressure)

    def column_hoop_pressure(self, lateral_strain: Real) -> Real:
        """Effective pressure of the column's own hoops [MPa] at a lateral strain [-]."""
        elastic = np.multiply(lateral_strain, self.column_hoop_stiffness)
        return np.minimum(elastic, self.column_hoop_yield_pressure)

    def core_pressure(self, lateral_strain: Real) -> Real:
        """Pressure on the core [MPa] at a lateral strain [-], sleeve and column hoops together."""
        from_sleeve = np.multiply(self.sleeve_pressure(lateral_strain), self.inner_radius)
        return from_sleeve / self.core_radius + self.column_hoop_pressure(lateral_strain)

    def sleeve_plastic_strain(self, lateral_strain: Real) -> Real:
        """Hoop strain of the sleeve beyond yield [-] at a lateral strain of the core [-]."""
        beyond = np.subtract(lateral_strain, self.sleeve_yield_lateral_strain) * self.core_radius
        return np.maximum(beyond, 0.0) / self.inner_radius

    def sleeve_hoop_strain(self, lateral_strain: Real) -> Real:
        """Hoop strain of the sleeve [-], elastic ``p R_i / (E t)`` and plastic part together."""
        elastic = np.multiply(self.sleeve_pressure(lateral_strain), self.sleeve_compliance)
        return elastic / self.inner_radius + self.sleeve_plastic_strain(lateral_strain)

    def lateral_strain_at_hoop_strain(self, hoop_strain: Real) -> Real:
        """Lateral strain of the core [-] at which the sleeve reaches a hoop strain [-].

        Inverse of `sleeve_hoop_strain` for a sleeve that has engaged; at zero hoop strain it is
        the strain at which the play has closed.
        """
        require_at_least(0.0, hoop_strain=hoop_strain)
        elastic = np.minimum(hoop_strain, self.yield_strain)
        pressure = elastic * np.divide(self.inner_radius, self.sleeve_compliance)
        plastic = np.subtract(hoop_strain, elastic) * self.inner_radius
        movement = self.radial_play + pressure * self.radial_compliance + plastic
        return movement / self.core_radius
