"""The three sections of a repaired column: as built, the repaired base, and above the repair.

Bending directions are given like clock positions: clockwise from 12 o'clock seen from above, to the
side in compression.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Final

import numpy as np

from jacketcheck.analysis.hoop_action import core_concrete, restraint, tie_ratio, ties_effectiveness
from jacketcheck.analysis.memo import remembered, same_where
from jacketcheck.jacket.column_parts import BarLayer, Rebar
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics import confinement, lateral_pressure
from jacketcheck.mechanics._arrays import Floats, Real
from jacketcheck.mechanics.bar_steel import BarSteel
from jacketcheck.mechanics.concrete_law import (
    ConcreteLaw,
    popovics_concrete_law,
    unconfined_concrete_law,
)
from jacketcheck.mechanics.concrete_properties import unconfined_peak_strain
from jacketcheck.mechanics.passive_confinement import PassiveConfinement, passive_confinement
from jacketcheck.mechanics.section import BarGroup, CircularSection, ConcreteZone

__all__ = [
    "SLEEVE_ULTIMATE_STRAIN",
    "bar_steel",
    "bending_angle",
    "column_section",
    "hooped_core",
    "layer_positions",
    "repaired_section",
    "sleeved_core",
]

SLEEVE_ULTIMATE_STRAIN: Final = 0.12
"""Strain at the tensile strength of sleeve plate [-] (Priestley, Seible and Calvi 1996, ch. 7,
from memory)."""

_SPALLING_STRAIN: Final = 0.005
"""AASHTO Guide Spec Seismic 2nd ed. (2011) 8.4.4."""
_TURN: Final = 0.8
"""Share of it from which the stress falls along a straight line: 2 ε_co of ordinary concrete."""


def bar_steel(steel: Rebar) -> BarSteel:
    """Expected stress-strain curve of bars."""
    return BarSteel(
        yield_strength=float(steel.expected_yield),
        tensile_strength=float(steel.expected_tensile),
        hardening_strain=float(steel.hardening_strain),
        ultimate_strain=float(steel.ultimate_strain),
        elastic_modulus=float(steel.elastic_modulus),
    )


def bending_angle(clock_angle: Real) -> Real:
    """Angle of a section analysis (counter-clockwise from the x axis) for a clock angle [rad]."""
    return np.subtract(math.pi / 2.0, clock_angle)


def layer_positions(layer: BarLayer) -> tuple[Floats, Floats]:
    """Coordinates of the bars of a layer [mm]: x to 3 o'clock, y to 12 o'clock."""
    clock = layer.first_angle + 2.0 * np.pi * np.arange(int(layer.count)) / layer.count
    return layer.circle_radius * np.sin(clock), layer.circle_radius * np.cos(clock)


@dataclass(frozen=True, eq=False)
class HoopedCore:
    """Core confined by the column's own hoops, with how it was found.

    Attributes
    ----------
    pressure
        Effective lateral pressure [MPa].
    strength
        Confined strength [MPa].
    ultimate_strain
        Ultimate strain [-].
    """

    pressure: float
    strength: float
    ultimate_strain: float
    law: ConcreteLaw


@remembered
@same_where(lambda jacket: jacket.column)
def hooped_core(jacket: Jacket) -> HoopedCore:
    """Core of the column as it was built."""
    ties, concrete = jacket.column.ties, jacket.column.concrete
    ratio = tie_ratio(jacket)
    pressure = lateral_pressure.effective_hoop_pressure(
        ratio, yield_strength=ties.expected_yield, effectiveness=ties_effectiveness(jacket)
    )
    strength = confinement.confined_strength(concrete.expected, lateral_pressure=pressure)
    ultimate = confinement.ultimate_strain(
        volumetric_ratio=ratio,
        yield_strength=ties.expected_yield,
        steel_ultimate_strain=ties.ultimate_strain,
        confined_strength=strength,
    )
    law = popovics_concrete_law(
        peak_stress=float(strength),
        peak_strain=float(
            confinement.confined_peak_strain(
                strength / concrete.expected,
                unconfined_peak_strain=core_concrete(jacket).unconfined_peak_strain,
            )
        ),
        elastic_modulus=float(concrete.elastic_modulus),
        ultimate_strain=float(ultimate),
    )
    return HoopedCore(float(pressure), float(strength), float(ultimate), law)


@remembered
def sleeved_core(jacket: Jacket) -> PassiveConfinement:
    """The whole column inside the sleeve; its own hoops, maybe broken, are not counted.

    The sleeve counts with its specified minimum yield strength.
    """
    core = core_concrete(jacket)
    ring = restraint(jacket, expected_sleeve=False, column_hoops=False, play=True)
    ratio = lateral_pressure.jacket_volumetric_ratio(
        jacket.sleeve.thickness, diameter=jacket.sleeve.inner_diameter
    )
    strength = confinement.confined_strength(
        jacket.column.concrete.expected, lateral_pressure=ring.largest_core_pressure
    )
    energy = confinement.ultimate_strain(
        volumetric_ratio=ratio,
        yield_strength=jacket.sleeve.steel.yield_strength,
        steel_ultimate_strain=SLEEVE_ULTIMATE_STRAIN,
        confined_strength=strength,
    )
    return passive_confinement(
        core=core,
        restraint=ring,
        energy_ultimate_strain=float(energy),
        hoop_strain_limit=SLEEVE_ULTIMATE_STRAIN,
    )


def column_section(jacket: Jacket, *, stress_limit: Floats | None = None) -> CircularSection:
    """Section of the column without a sleeve.

    Parameters
    ----------
    jacket
        One design.
    stress_limit
        Stress that each bar can develop [MPa]; by default every bar is whole.
    """
    return CircularSection(
        zones=_column_zones(jacket), bars=(_bar_group(jacket.column.layer, stress_limit),)
    )


@remembered
@same_where(lambda jacket: jacket.column)
def _column_zones(jacket: Jacket) -> tuple[ConcreteZone, ...]:
    """Core and cover of the column as it was built."""
    column = jacket.column
    cover = _spalling(column.concrete.expected, column.concrete.elastic_modulus)
    return (
        ConcreteZone("core", float(column.ties.core_diameter), hooped_core(jacket).law),
        ConcreteZone("cover", float(column.diameter), cover),
    )


def repaired_section(
    jacket: Jacket,
    *,
    column_bar_limit: Floats,
    added_bar_limit: Floats | None,
) -> CircularSection:
    """Section through the repair: sleeved column, grout ring, column bars and added bars.

    The grout counts as unconfined, because the ring stands free in the gap below the sleeve. The
    sleeve carries no axial stress.

    Parameters
    ----------
    jacket
        One design.
    column_bar_limit
        Stress that each column bar can develop [MPa].
    added_bar_limit
        Stress that each added bar can develop [MPa]; None without added bars.
    """
    groups = [_bar_group(jacket.column.layer, column_bar_limit)]
    if jacket.added_bars is not None and added_bar_limit is not None:
        groups.append(_bar_group(jacket.added_bars.layer, added_bar_limit))
    return CircularSection(zones=_repaired_zones(jacket), bars=tuple(groups))


def _spalling(strength: Real, elastic_modulus: Real) -> ConcreteLaw:
    """Unconfined concrete or grout: it spalls at 0.005, or later where its peak comes late."""
    peak = float(unconfined_peak_strain(strength, elastic_modulus=elastic_modulus))
    spalls = max(_SPALLING_STRAIN, peak / _TURN)
    return unconfined_concrete_law(
        strength=float(strength),
        elastic_modulus=float(elastic_modulus),
        peak_strain=peak,
        spalling_strain=spalls,
        turning_strain=min(2.0 * peak, _TURN * spalls),
    )


@remembered
def _repaired_zones(jacket: Jacket) -> tuple[ConcreteZone, ...]:
    """Sleeved column, and the grout ring around it."""
    grout = _spalling(jacket.grout.strength, jacket.grout.elastic_modulus)
    return (
        ConcreteZone("column", float(jacket.column.diameter), sleeved_core(jacket).law()),
        ConcreteZone("grout", float(jacket.sleeve.inner_diameter), grout),
    )


def _bar_group(layer: BarLayer, stress_limit: Floats | None) -> BarGroup:
    x, y = layer_positions(layer)
    return BarGroup.at(
        x,
        y,
        area=float(layer.area),
        steel=bar_steel(layer.steel),
        stress_limit=np.inf if stress_limit is None else stress_limit,
    )
