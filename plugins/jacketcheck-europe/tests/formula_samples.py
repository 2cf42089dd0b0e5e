"""An ordinary call of every formula, so that properties can be asked of all of them."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from jacketcheck_europe.mechanics import (
    anchorage,
    bearing,
    bolts,
    column_shear,
    concrete,
    detailing,
    fastenings,
    hinges,
    interface,
    jackets,
    plates,
    slip,
)

from jacketcheck.mechanics.block_shear import BlockShearAreas

__all__ = ["MODULES", "NOT_NUMERIC", "SAMPLES"]

MODULES = (
    anchorage,
    bearing,
    bolts,
    column_shear,
    concrete,
    detailing,
    fastenings,
    hinges,
    interface,
    jackets,
    plates,
    slip,
)

NOT_NUMERIC = {slip.hole_factor, bearing.hole_reduction, interface.friction_coefficient}
"""Tables entered with a word."""

AREAS = BlockShearAreas(gross_shear=1800.0, net_shear=1250.0, net_tension=290.0)

SAMPLES: dict[Callable[..., Any], dict[str, Any]] = {
    anchorage.size_coefficient: {"diameter": 36.0},
    anchorage.bond_strength: {"tensile_strength": 2.0, "diameter": 25.0, "partial_factor": 1.5},
    anchorage.basic_anchorage_length: {
        "diameter": 25.0,
        "bar_stress": 500.0,
        "bond_strength": 3.0,
    },
    anchorage.cover_coefficient: {"cover": 45.0, "diameter": 25.0},
    anchorage.confinement_coefficient: {"transverse_ratio": 1.5, "position": 0.05},
    anchorage.pressure_coefficient: {"pressure": 2.0},
    anchorage.design_anchorage_length: {
        "basic_length": 1000.0,
        "diameter": 25.0,
        "form": 1.0,
        "cover": 0.9,
        "confinement": 0.95,
        "welded": 1.0,
        "pressure": 0.95,
    },
    anchorage.lap_coefficient: {"lapped_share": 0.4},
    anchorage.design_lap_length: {
        "basic_length": 1000.0,
        "diameter": 25.0,
        "lap": 1.4,
        "form": 1.0,
        "cover": 0.9,
        "confinement": 0.95,
        "pressure": 0.95,
    },
    bearing.end_bolt_coefficient: {
        "end_distance": 40.0,
        "hole": 22.0,
        "bolt_strength": 800.0,
        "plate_strength": 470.0,
    },
    bearing.inner_bolt_coefficient: {
        "spacing": 60.0,
        "hole": 22.0,
        "bolt_strength": 800.0,
        "plate_strength": 470.0,
    },
    bearing.transverse_coefficient: {"edge_distance": 30.0, "spacing": 60.0, "hole": 22.0},
    bearing.bearing_resistance: {
        "diameter": 20.0,
        "thickness": 10.0,
        "plate_strength": 470.0,
        "along": 0.6,
        "across": 2.1,
        "partial_factor": 1.25,
        "reduction": 0.8,
    },
    bearing.single_lap_bearing_limit: {
        "diameter": 20.0,
        "thickness": 10.0,
        "plate_strength": 470.0,
        "partial_factor": 1.25,
    },
    bolts.high_strength_class: {"tensile_strength": 830.0, "threads": "included"},
    bolts.bolt_shear_resistance: {
        "area": 245.0,
        "tensile_strength": 800.0,
        "shear_coefficient": 0.6,
        "partial_factor": 1.25,
        "joint_factor": 0.9,
    },
    bolts.bolt_tension_resistance: {
        "stress_area": 245.0,
        "tensile_strength": 800.0,
        "partial_factor": 1.25,
    },
    bolts.shear_and_tension: {"shear_ratio": 0.5, "tension_ratio": 0.3},
    bolts.long_joint_factor: {"joint_length": 500.0, "diameter": 20.0},
    bolts.packing_factor: {"packing": 12.0, "diameter": 20.0},
    bolts.small_bolt_factor: {"diameter": 12.0, "hole": 14.0},
    column_shear.circular_hoop_shear: {
        "hoop_area": 201.0,
        "yield_strength": 400.0,
        "hoop_diameter": 1100.0,
        "spacing": 100.0,
    },
    column_shear.existing_concrete_shear: {
        "core_area": 0.6e6,
        "concrete_strength": 20.0,
        "bar_ratio": 0.015,
        "diameter": 1000.0,
        "shear_span": 4000.0,
    },
    column_shear.existing_axial_shear: {
        "axial_load": 2.0e6,
        "core_area": 0.6e6,
        "concrete_strength": 20.0,
        "diameter": 1000.0,
        "compression_depth": 300.0,
        "shear_span": 4000.0,
    },
    column_shear.existing_column_shear: {
        "axial_shear": 1.5e5,
        "concrete_shear": 2.5e5,
        "hoop_shear": 8.0e5,
        "plastic_ductility": 2.0,
        "member_factor": 1.15,
    },
    column_shear.pier_section: {"concrete_radius": 520.0, "bar_circle_radius": 480.0},
    column_shear.pier_hoop_shear: {
        "hoop_area": 201.0,
        "yield_strength": 435.0,
        "spacing": 100.0,
        "lever_arm": 800.0,
    },
    column_shear.pier_crushing_shear: {
        "design_strength": 17.0,
        "effectiveness": 0.53,
        "lever_arm": 800.0,
        "web_width": 850.0,
    },
    concrete.characteristic_tensile_strength: {"concrete_strength": 30.0},
    concrete.design_compressive_strength: {
        "concrete_strength": 30.0,
        "coefficient": 0.85,
        "partial_factor": 1.5,
    },
    concrete.strut_effectiveness: {"concrete_strength": 30.0},
    detailing.least_spacing_along: {"hole": 22.0},
    detailing.least_spacing_across: {"hole": 22.0},
    detailing.least_edge_distance: {"hole": 22.0},
    detailing.largest_spacing: {"thickness": 10.0, "exposure": "weathering"},
    detailing.largest_edge_distance: {"thickness": 18.0, "exposure": "weathering"},
    fastenings.cone_resistance: {
        "concrete_strength": 30.0,
        "embedment": 400.0,
        "coefficient": 7.7,
    },
    fastenings.cone_reach: {"embedment": 400.0},
    fastenings.bond_resistance: {"bond_stress": 8.0, "diameter": 25.0, "embedment": 400.0},
    fastenings.bond_reach: {
        "diameter": 25.0,
        "uncracked_bond_stress": 16.0,
        "embedment": 400.0,
    },
    hinges.plastic_hinge_length: {
        "span": 6000.0,
        "yield_strength": 500.0,
        "bar_diameter": 28.0,
    },
    hinges.largest_hoop_spacing: {"bar_diameter": 28.0, "strength_ratio": 1.15},
    hinges.design_plastic_rotation: {
        "ultimate_curvature": 6.0e-5,
        "yield_curvature": 4.0e-6,
        "hinge_length": 800.0,
        "span": 6000.0,
        "effective_depth": 1100.0,
        "partial_factor": 1.4,
    },
    interface.interface_shear_strength: {
        "normal_stress": 2.0,
        "friction": 0.7,
        "design_strength": 17.0,
        "effectiveness": 0.53,
        "cohesion_stress": 0.1,
    },
    jackets.lap_clamping_stress: {
        "bar_area": 490.0,
        "yield_strength": 500.0,
        "bar_count": 16.0,
        "perimeter": 4000.0,
        "bar_diameter": 25.0,
        "cover": 80.0,
        "lap_length": 1000.0,
    },
    jackets.lap_clamping_thickness: {
        "clamping_stress": 1.5,
        "diameter": 1600.0,
        "elastic_modulus": 210e3,
        "hoop_stress": 0.2,
    },
    plates.plastic_resistance: {
        "yield_strength": 355.0,
        "gross_area": 2000.0,
        "partial_factor": 1.0,
    },
    plates.rupture_resistance: {
        "tensile_strength": 470.0,
        "net_area": 1500.0,
        "partial_factor": 1.25,
    },
    plates.net_yield_resistance: {
        "yield_strength": 355.0,
        "net_area": 1500.0,
        "partial_factor": 1.0,
    },
    plates.block_tearing_resistance: {
        "areas": AREAS,
        "yield_strength": 355.0,
        "tensile_strength": 470.0,
        "section_factor": 1.0,
        "rupture_factor": 1.25,
        "tension_share": 0.5,
    },
    slip.preload: {"tensile_strength": 1000.0, "stress_area": 353.0},
    slip.slip_resistance: {
        "slip_factor": 0.4,
        "bolt_preload": 247e3,
        "friction_surfaces": 2.0,
        "hole_factor": 0.85,
        "partial_factor": 1.25,
        "bolt_tension": 10e3,
    },
}
