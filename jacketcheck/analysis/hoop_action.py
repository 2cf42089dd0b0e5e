"""How stiff and how strong the sleeve with its seams and its grout is in hoop tension."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from jacketcheck.analysis.memo import remembered
from jacketcheck.analysis.splice import effective_planes
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics import hoop, lateral_pressure, seam_stiffness
from jacketcheck.mechanics._arrays import Real
from jacketcheck.mechanics.concrete_properties import unconfined_peak_strain
from jacketcheck.mechanics.core_concrete import CoreConcrete
from jacketcheck.mechanics.restraint import Restraint
from jacketcheck.mechanics.retained_pressure import radial_play, seam_opening
from jacketcheck.mechanics.slip import aisc_filler_factor
from jacketcheck.mechanics.slip_hole_factors import lowest_hole_size_factor

__all__ = [
    "HoopAction",
    "core_concrete",
    "hoop_action",
    "lowest_hole_factor",
    "restraint",
    "tie_ratio",
    "ties_effectiveness",
]


@dataclass(frozen=True, eq=False)
class HoopAction:
    """Stiffness and limits of the ring around the column.

    Attributes
    ----------
    seam_stiffness
        Stiffness of one seam [N/mm per mm of height].
    sleeve_compliance, seam_compliance, grout_compliance
        Radial movement for each unit of pressure on the sleeve [mm/MPa].
    yield_pressure, expected_yield_pressure
        Pressure at which the gross section of the sleeve yields, with the specified minimum and
        with the expected yield strength [MPa].
    slip_force
        Force at which one bolt slips [N]: smallest slip coefficient of the faying classes, minimum
        pretension, no allowance for pretension above the minimum. Zero for snug-tight bolts.
    slip_pressure
        Pressure on the sleeve at which the hardest-worked row slips [MPa]; infinite for snug-tight
        bolts, which do not hold by friction and whose play is `seam_slip`.
    seam_slip
        Largest opening of one seam, both of its bolt groups slipped into bearing [mm].
    initial_play
        Radial movement before the sleeve engages [mm]: that slip for snug-tight bolts, else zero.
    """

    seam_stiffness: Real
    sleeve_compliance: Real
    seam_compliance: Real
    grout_compliance: Real
    yield_pressure: Real
    expected_yield_pressure: Real
    slip_force: Real
    slip_pressure: Real
    seam_slip: Real
    initial_play: Real

    @property
    def radial_compliance(self) -> Real:
        """Sleeve, seams and grout in series [mm/MPa]."""
        return self.sleeve_compliance + self.seam_compliance + self.grout_compliance


@remembered
def hoop_action(jacket: Jacket) -> HoopAction:
    """Stiffness and limits of the ring around the column."""
    sleeve, bolts = jacket.sleeve, jacket.bolts
    radius = sleeve.inner_radius
    stiffness = _seam_stiffness(jacket)
    smallest = np.min([one.slip_coefficient for one in bolts.faying_classes], axis=0)
    slip_force = np.multiply(
        smallest * lowest_hole_factor(jacket),
        np.multiply(bolts.pretension, effective_planes(jacket)),
    ) * aisc_filler_factor(jacket.splice.fillers)
    hoop_force_at_slip = slip_force * bolts.columns / bolts.tributary_height
    slip_pressure: Real = np.divide(hoop_force_at_slip, radius)
    slip = seam_opening(
        sleeve_clearance=sleeve.hole.clearance, splice_clearance=jacket.splice.hole.clearance
    )
    return HoopAction(
        seam_stiffness=stiffness,
        sleeve_compliance=hoop.sleeve_compliance(
            inner_radius=radius,
            thickness=sleeve.thickness,
            elastic_modulus=sleeve.steel.elastic_modulus,
        ),
        seam_compliance=hoop.seam_compliance(inner_radius=radius, seam_stiffness=stiffness),
        grout_compliance=hoop.grout_compliance(
            inner_radius=radius,
            core_radius=jacket.column.radius,
            grout_modulus=jacket.grout.elastic_modulus,
        ),
        yield_pressure=hoop.yield_pressure(
            sleeve.steel.yield_strength, thickness=sleeve.thickness, inner_radius=radius
        ),
        expected_yield_pressure=hoop.yield_pressure(
            sleeve.steel.expected_yield, thickness=sleeve.thickness, inner_radius=radius
        ),
        slip_force=slip_force,
        slip_pressure=slip_pressure if bolts.pretensioned else np.inf,
        seam_slip=slip,
        initial_play=0.0 if bolts.pretensioned else radial_play(slip),
    )


def lowest_hole_factor(jacket: Jacket) -> float:
    """Hole size factor for slip that no code undercuts, of the ply that clamps least."""
    return lowest_hole_size_factor(jacket.least_hole(lowest_hole_size_factor))


def _seam_stiffness(jacket: Jacket) -> Real:
    """Splice plates alone while friction holds; bolts and bearing in series where it does not."""
    sleeve, splice, bolts = jacket.sleeve, jacket.splice, jacket.bolts
    plates = seam_stiffness.splice_plate_stiffness(
        total_plate_thickness=splice.total_thickness,
        free_length=sleeve.seam_gap + 2.0 * np.asarray(bolts.seam_edge_distance),
        elastic_modulus=splice.steel.elastic_modulus,
    )
    if bolts.pretensioned:
        return plates
    spacing = np.where(np.greater(bolts.columns, 1), bolts.gauge, np.inf)
    return seam_stiffness.bearing_type_seam_stiffness(
        shear_stiffness=seam_stiffness.bolt_shear_stiffness(
            bolts.diameter,
            bolt_tensile_strength=bolts.tensile_strength,
            shear_planes=splice.shear_planes,
        ),
        sleeve_bearing_stiffness=seam_stiffness.bolt_bearing_stiffness(
            bolts.diameter,
            plate_thickness=sleeve.thickness,
            plate_tensile_strength=sleeve.steel.tensile_strength,
            end_distance=bolts.seam_edge_distance,
            line_spacing=spacing,
        ),
        splice_bearing_stiffness=seam_stiffness.bolt_bearing_stiffness(
            bolts.diameter,
            plate_thickness=splice.total_thickness,
            plate_tensile_strength=splice.steel.tensile_strength,
            end_distance=bolts.plate_edge_distance,
            line_spacing=spacing,
        ),
        plate_stiffness=plates,
        pitch=bolts.pitch,
        bolt_columns=bolts.columns,
    )


@remembered
def core_concrete(jacket: Jacket) -> CoreConcrete:
    """Concrete of the column inside the sleeve, with its expected strength."""
    concrete = jacket.column.concrete
    return CoreConcrete(
        unconfined_strength=concrete.expected,
        elastic_modulus=concrete.elastic_modulus,
        unconfined_peak_strain=unconfined_peak_strain(
            concrete.expected, elastic_modulus=concrete.elastic_modulus
        ),
    )


def restraint(
    jacket: Jacket, *, expected_sleeve: bool, column_hoops: bool, play: bool
) -> Restraint:
    """What holds the column's core together inside the sleeve.

    Parameters
    ----------
    jacket
        The jacket.
    expected_sleeve
        Expected instead of specified minimum yield strength of the sleeve: the upper value, for
        what the seams must survive.
    column_hoops
        Whether the column's own hoops are counted. They help the core and relieve the sleeve;
        around damaged bars they may be broken.
    play
        Whether snug-tight bolts use up the whole clearance of their holes before they bear, as
        counts for what the sleeve can give; for what it must survive they bear at once.
    """
    action = hoop_action(jacket)
    ties = _ties(jacket) if column_hoops else (0.0, 0.0)
    return Restraint(
        inner_radius=jacket.sleeve.inner_radius,
        core_radius=jacket.column.radius,
        radial_compliance=action.radial_compliance,
        sleeve_compliance=action.sleeve_compliance,
        yield_pressure=action.expected_yield_pressure if expected_sleeve else action.yield_pressure,
        radial_play=action.initial_play if play else 0.0,
        column_hoop_stiffness=ties[0],
        column_hoop_yield_pressure=ties[1],
    )


def tie_ratio(jacket: Jacket) -> Real:
    """Volume of the column's own hoops over the volume of the core they enclose."""
    ties = jacket.column.ties
    return lateral_pressure.hoop_volumetric_ratio(
        ties.area, core_diameter=ties.core_diameter, spacing=ties.spacing
    )


def ties_effectiveness(jacket: Jacket) -> Real:
    """Confinement effectiveness coefficient of the column's own hoops or spiral."""
    ties, layer = jacket.column.ties, jacket.column.layer
    effectiveness_of = (
        lateral_pressure.spiral_effectiveness
        if ties.kind == "spiral"
        else lateral_pressure.hoop_effectiveness
    )
    return effectiveness_of(
        np.subtract(ties.spacing, ties.diameter),
        core_diameter=ties.core_diameter,
        longitudinal_ratio=layer.total_area / (np.pi * np.square(ties.core_diameter) / 4.0),
    )


def _ties(jacket: Jacket) -> tuple[Real, Real]:
    """Stiffness and yield pressure of the column's own hoops [MPa]."""
    ties, ratio, effectiveness = jacket.column.ties, tie_ratio(jacket), ties_effectiveness(jacket)
    return (
        lateral_pressure.hoop_lateral_stiffness(
            ratio, elastic_modulus=ties.elastic_modulus, effectiveness=effectiveness
        ),
        lateral_pressure.effective_hoop_pressure(
            ratio, yield_strength=ties.expected_yield, effectiveness=effectiveness
        ),
    )
