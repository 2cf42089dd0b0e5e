"""Slip and hoop yield of many samples at once, without an equilibrium for each.

Dilation calls up more hoop force the more the core is strained, so that a hoop force is exceeded
exactly where the checked axial strain exceeds the one that goes with it; and that strain follows
from the force in closed form. Only comparisons are left. What comes out is, sample by sample, what
the analyses of `jacketcheck.analysis` say.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from jacketcheck.analysis.hoop_action import hoop_action
from jacketcheck.analysis.hoop_demand import hoop_demand
from jacketcheck.chance.limit import bar_target
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics._arrays import Floats, Real
from jacketcheck.mechanics.concrete_properties import unconfined_peak_strain
from jacketcheck.mechanics.confinement import PRESSURE_RATIO_LIMIT
from jacketcheck.mechanics.core_concrete import CoreConcrete

__all__ = ["DIRECT", "RingFigures", "exceeded", "ring_figures"]

DIRECT: Final = ("hoop-dilation", "hoop-clamping", "seam-slip")
"""Limit states that are evaluated in this way."""

Flags = NDArray[np.bool_]


@dataclass(frozen=True, slots=True)
class RingFigures:
    """The ring around the column with every variable at factor 1; forces per unit of height.

    Attributes
    ----------
    inner_radius, core_radius
        Radii [mm].
    sleeve_compliance, other_compliance
        Of the sleeve, and of seams and grout together [mm/MPa].
    yield_force, slip_force
        Hoop force at which the sleeve yields, and at which the hardest-worked row slips [N/mm].
    clamping_force, lap_force, shear_force
        Hoop force from clamping, from laps and from shear [N/mm].
    concrete_strength, concrete_modulus
        Of the core [MPa].
    """

    inner_radius: float
    core_radius: float
    sleeve_compliance: float
    other_compliance: float
    yield_force: float
    slip_force: float
    clamping_force: float
    lap_force: float
    shear_force: float
    concrete_strength: float
    concrete_modulus: float


def ring_figures(jacket: Jacket, factors: Mapping[str, Real]) -> RingFigures | None:
    """Figures of a jacket realised with mean values, brought back to factor 1.

    None for bolts that are only snug: they always slip, and their seams are no simple spring.
    """
    if not jacket.bolts.pretensioned:
        return None
    action, demand, bolts = hoop_action(jacket), hoop_demand(jacket), jacket.bolts
    radius = float(jacket.sleeve.inner_radius)
    mean = {name: float(np.asarray(value)) for name, value in factors.items()}
    target = bar_target(jacket)
    friction = mean["slip-coefficient"] * mean["bolt-pretension"]
    height = float(bolts.tributary_height / bolts.columns)
    concrete = jacket.column.concrete
    return RingFigures(
        inner_radius=radius,
        core_radius=float(jacket.column.radius),
        sleeve_compliance=float(action.sleeve_compliance) * mean["sleeve-thickness"],
        other_compliance=float(action.seam_compliance + action.grout_compliance),
        yield_force=float(action.yield_pressure) * radius
        / (mean["sleeve-yield"] * mean["sleeve-thickness"]),
        slip_force=float(action.slip_force) / height / friction,
        clamping_force=float(demand.clamping_pressure) * radius
        * mean["clamping-friction"] / mean[target],
        lap_force=float(demand.lap_force) / mean["added-bar-tensile"],
        shear_force=float(demand.shear_force),
        concrete_strength=float(concrete.expected) / mean["column-concrete"],
        concrete_modulus=float(concrete.elastic_modulus) / mean["column-concrete"] ** 0.5,
    )  # fmt: skip


def exceeded(
    ring: RingFigures, jacket: Jacket, factors: Mapping[str, Real], axial_strain: Real
) -> tuple[dict[str, Flags], Flags]:
    """Which samples exceed each limit state, and which lie outside the confinement model.

    Parameters
    ----------
    ring
        Figures at factor 1.
    jacket
        The jacket, for its choices only.
    factors
        Factors of the variables: numbers, or arrays over samples.
    axial_strain
        Checked axial strain [-], its factor included.
    """
    yields = _product(ring.yield_force, factors["sleeve-yield"], factors["sleeve-thickness"])
    slips = _product(ring.slip_force, factors["slip-coefficient"], factors["bolt-pretension"])
    laps = _product(ring.lap_force, factors["added-bar-tensile"]) + ring.shear_force
    clamping = np.divide(
        _product(ring.clamping_force, factors[bar_target(jacket)]), factors["clamping-friction"]
    )
    core, outside = _core(ring, factors["column-concrete"], yields)
    movement = np.divide(ring.sleeve_compliance, factors["sleeve-thickness"])
    movement = movement + ring.other_compliance

    def dilation_exceeds(force: Real) -> Flags:
        """Whether dilation calls up more than a hoop force below yield."""
        pressure = np.maximum(force, 0.0) / ring.core_radius
        # the sleeve's pressure is force / R_i, the core moves by du/dp times it
        lateral = pressure * movement
        lateral /= ring.inner_radius
        return np.greater(axial_strain, core.axial_strain(lateral, pressure=pressure))

    room = slips - laps
    found = {
        "hoop-dilation": dilation_exceeds(yields - laps),
        "hoop-clamping": np.greater(clamping + laps, yields),
        "seam-slip": (clamping > room) | ((room < yields) & dilation_exceeds(room)),
    }
    return found, outside


def _product(constant: float, *factors: Real) -> Floats:
    value: Real = constant
    for factor in factors:
        value = np.multiply(value, factor)
    return np.asarray(value)


def _core(ring: RingFigures, factor: Real, yield_force: Floats) -> tuple[CoreConcrete, Flags]:
    """Concrete of the core; samples outside the model are put right inside it and flagged."""
    strength = np.multiply(ring.concrete_strength, factor)
    modulus = np.multiply(ring.concrete_modulus, np.sqrt(factor))
    outside = yield_force > PRESSURE_RATIO_LIMIT * ring.core_radius * strength
    # a secant at the peak that is stiffer than the modulus leaves no crack to dilate
    brittle = np.asarray(strength > _PEAK_STRAIN * modulus * _ALMOST)
    if np.any(brittle):
        outside = outside | brittle
        strength = np.where(brittle, ring.concrete_strength, strength)
        modulus = np.where(brittle, ring.concrete_modulus, modulus)
    peak_strain = unconfined_peak_strain(strength, elastic_modulus=modulus)
    return CoreConcrete(strength, modulus, peak_strain), outside


_PEAK_STRAIN: Final = CoreConcrete(
    unconfined_strength=30.0, elastic_modulus=27e3
).unconfined_peak_strain
_ALMOST: Final = 1.0 - 1e-9
