"""Strength and displacement of the column before the damage and after the repair."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from jacketcheck.analysis.base_state import CAPACITY_STRAIN
from jacketcheck.analysis.directions import bending_directions, weakest
from jacketcheck.analysis.height import column_bar_stress
from jacketcheck.analysis.hinge import bilinear, original_response
from jacketcheck.analysis.hoop_action import tie_ratio
from jacketcheck.analysis.memo import design_by_design, remembered, same_where
from jacketcheck.analysis.sections import bending_angle, column_section
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics._arrays import Floats, Real
from jacketcheck.mechanics.bar_buckling import bar_buckling_strain
from jacketcheck.mechanics.force_displacement import ForceDisplacement, force_displacement
from jacketcheck.mechanics.hinge_displacement import (
    plastic_displacement,
    plastic_rotation,
    yield_displacement,
)
from jacketcheck.mechanics.hinge_length import hinge_length
from jacketcheck.mechanics.moment_curvature import MomentCurvature, moment_curvature
from jacketcheck.mechanics.section import CircularSection
from jacketcheck.mechanics.section_limits import point_at_bar_strain
from jacketcheck.mechanics.section_strength import moment_at_extreme_strain

__all__ = [
    "ColumnCapacity",
    "above_response",
    "capacity_of_original",
    "capacity_of_repaired",
    "envelope_of_original",
    "envelope_of_repaired",
]


@dataclass(frozen=True, eq=False)
class ColumnCapacity:
    """Lateral strength and displacement of a column with its hinge.

    Attributes
    ----------
    plastic_moment
        Idealised plastic moment of the hinge's section [N mm].
    yield_curvature, ultimate_curvature
        Of that section [1/mm].
    hinges
        Hinges that turn: one, or two in double curvature.
    shear_span
        From each hinge to the point of contraflexure [mm].
    hinge_length
        Length of the hinge [mm].
    shear
        Lateral strength [N].
    neutral_axis_depth
        Extreme fibre to neutral axis at the ultimate curvature [mm].
    yield_displacement, displacement
        Of the column's top relative to the footing [mm].
    buckling_strain, buckling_displacement
        Tensile strain after which the bars buckle on reversal [-], and the displacement that goes
        with it [mm]; infinite where the hinge fails before.
    """

    plastic_moment: Real
    yield_curvature: Real
    ultimate_curvature: Real
    hinges: Real
    shear_span: Real
    hinge_length: Real
    shear: Real
    neutral_axis_depth: Real
    yield_displacement: Real
    displacement: Real
    buckling_strain: Real
    buckling_displacement: Real

    @property
    def ductility(self) -> Real:
        """Displacement ductility [-]."""
        return self.displacement / self.yield_displacement


def _stress_above(jacket: Jacket) -> Floats:
    """Stress that each column bar can develop at the top of the repair [MPa]; one design."""
    return np.asarray(column_bar_stress(jacket, np.array([float(jacket.repair_height)]))[0])


def _weakest_angle(section: CircularSection, axial_load: float) -> float:
    """Direction of bending in which a section has the least plastic moment [rad].

    Directions are ranked where the core is crushed, not where its cover spalls: only then have all
    bars reached the stress that bond can develop. The cover's strain decides where the core's
    cannot carry the load.
    """
    angle = np.asarray(bending_angle(bending_directions()))
    crushed = float(section.zones[0].law.ultimate_strain)
    for strain in (max(crushed, CAPACITY_STRAIN), CAPACITY_STRAIN):
        moments = moment_at_extreme_strain(
            section, strain=strain, axial_load=axial_load, angle=angle
        )
        if np.all(np.isfinite(moments)):
            break
    return float(angle[weakest(moments)])


@remembered
@same_where(
    lambda jacket: (jacket.column, jacket.demands.axial_load, _stress_above(jacket).tobytes())
)
def above_response(jacket: Jacket) -> MomentCurvature:
    """Response of the section right above the repair, in its weakest direction; one design.

    Fractured bars count with what bond develops in them over the height of the repair.
    """
    section = column_section(jacket, stress_limit=_stress_above(jacket))
    axial_load = float(jacket.demands.axial_load)
    return moment_curvature(
        section, axial_load=axial_load, angle=_weakest_angle(section, axial_load)
    )


@remembered
@design_by_design
def capacity_of_original(jacket: Jacket) -> ColumnCapacity:
    """The undamaged column with its hinge at the footing."""
    return _capacity(jacket, original_response(jacket), "original column", repair_height=0.0)


@remembered
@design_by_design
def capacity_of_repaired(jacket: Jacket) -> ColumnCapacity:
    """The repaired column with its hinge above the repair, which is taken as rigid.

    Strength is the least of all directions. Curvature at failure is that of the same direction;
    where bars held by bond are weaker than the others, it is smaller in stronger directions.
    """
    return _capacity(
        jacket,
        above_response(jacket),
        "section above the repair",
        repair_height=float(jacket.repair_height),
    )


@remembered
def envelope_of_original(jacket: Jacket) -> ForceDisplacement:
    """Force-displacement envelope of the undamaged column; one design."""
    return _envelope(jacket, original_response(jacket), repair_height=0.0)


@remembered
def envelope_of_repaired(jacket: Jacket) -> ForceDisplacement:
    """Force-displacement envelope of the repaired column; one design."""
    return _envelope(jacket, above_response(jacket), repair_height=float(jacket.repair_height))


def _spans(jacket: Jacket, repair_height: float) -> tuple[float, float]:
    """Hinge to contraflexure at the repaired end [mm], and number of hinges."""
    hinges = 2.0 if jacket.column.curvature == "double" else 1.0
    return (float(jacket.column.height) - repair_height) / hinges, hinges


def _length(jacket: Jacket, span: float) -> float:
    layer = jacket.column.layer
    return float(
        hinge_length(span, expected_yield=layer.steel.expected_yield, bar_diameter=layer.diameter)
    )


def _capacity(
    jacket: Jacket, response: MomentCurvature, what: str, *, repair_height: float
) -> ColumnCapacity:
    curve = bilinear(response, what)
    span, hinges = _spans(jacket, repair_height)
    length = _length(jacket, span)
    at_yield = float(yield_displacement(curve.yield_curvature, shear_span=span)) * hinges

    def displacement(curvature: float) -> float:
        rotation = plastic_rotation(
            curvature, yield_curvature=curve.yield_curvature, hinge_length=length
        )
        plastic = plastic_displacement(rotation, shear_span=span, hinge_length=length)
        return at_yield + hinges * float(plastic)

    strain = _buckling_strain(jacket)
    buckles = point_at_bar_strain(response, strain=strain).curvature
    return ColumnCapacity(
        plastic_moment=curve.plastic_moment,
        yield_curvature=curve.yield_curvature,
        ultimate_curvature=curve.ultimate_curvature,
        hinges=hinges,
        shear_span=span,
        hinge_length=length,
        shear=curve.plastic_moment / span,
        neutral_axis_depth=_neutral_axis(response, curve.ultimate_curvature),
        yield_displacement=at_yield,
        displacement=displacement(curve.ultimate_curvature),
        buckling_strain=strain,
        buckling_displacement=displacement(buckles)
        if buckles < curve.ultimate_curvature
        else np.inf,
    )


def _buckling_strain(jacket: Jacket) -> float:
    """Tensile strain after which the bars buckle on reversal [-], at least their yield strain."""
    column, layer = jacket.column, jacket.column.layer
    strain = bar_buckling_strain(
        jacket.demands.axial_load,
        concrete_strength=column.concrete.expected,
        gross_area=column.gross_area,
        hoop_ratio=tie_ratio(jacket),
        hoop_yield=column.ties.expected_yield,
        hoop_elastic_modulus=column.ties.elastic_modulus,
    )
    return float(np.maximum(strain, layer.steel.expected_yield / layer.steel.elastic_modulus))


def _neutral_axis(response: MomentCurvature, curvature: float) -> float:
    valid = slice(0, response.valid_count)
    strain = np.interp(
        curvature, response.curvature[valid], response.extreme_compressive_strain[valid]
    )
    return float(np.clip(strain / curvature, 1.0, response.section.diameter))


def _envelope(
    jacket: Jacket, response: MomentCurvature, *, repair_height: float
) -> ForceDisplacement:
    span, _ = _spans(jacket, repair_height)
    return force_displacement(
        response,
        clear_height=float(jacket.column.height),
        hinge_length=_length(jacket, span),
        repair_height=repair_height,
        double_curvature=jacket.column.curvature == "double",
    )
