"""What is added to the column: sleeve, splice plates, bolt group, grout and added bars.

N, mm, MPa. Directions at a seam: *along* the hoop force is horizontal, *across* it is vertical.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from jacketcheck.catalog.records import FayingClass
from jacketcheck.jacket._roles import Figures, label
from jacketcheck.jacket.bolt_fit import BoltFit
from jacketcheck.jacket.column_parts import BarLayer, Rebar
from jacketcheck.mechanics._arguments import (
    BarEnd,
    Exposure,
    HoleMaking,
    HoleType,
    ThreadPosition,
    Tightening,
)
from jacketcheck.mechanics._arrays import Real

__all__ = [
    "AddedBarLayer",
    "AnchorReinforcement",
    "BoltGroup",
    "Grout",
    "Hole",
    "Plate",
    "Sleeve",
    "Splice",
]


@dataclass(frozen=True, slots=True)
class Plate(Figures):
    """Steel of a plate.

    Attributes
    ----------
    yield_strength, tensile_strength
        Specified minimum strengths [MPa].
    expected_yield
        Upper value of the yield strength that what is joined to the plate must survive [MPa].
    elastic_modulus
        Young's modulus [MPa].
    """

    yield_strength: Real
    tensile_strength: Real
    expected_yield: Real
    elastic_modulus: Real
    name: str = label()


@dataclass(frozen=True, slots=True)
class Hole(Figures):
    """Bolt holes of one ply.

    Attributes
    ----------
    kind
        Hole type; slots relative to the hoop force.
    along, across
        Dimension along and across the hoop force [mm].
    clearance
        Dimension along the hoop force less the bolt's diameter [mm].
    min_edge_distance, min_end_distance
        Least distance to a vertical edge, which the force points at, and to a horizontal one
        [mm].
    """

    kind: HoleType
    along: Real
    across: Real
    clearance: Real
    min_edge_distance: Real
    min_end_distance: Real
    field: str = label()


@dataclass(frozen=True, slots=True)
class Sleeve:
    """Two half-shells.

    Attributes
    ----------
    inner_diameter, thickness, height
        Inside diameter, plate thickness and height [mm].
    gap
        Gap between footing and sleeve [mm].
    seam_gap
        Opening between the half-shells at each seam [mm].
    seam_angle
        Angle of the first seam [rad], clockwise from 12 o'clock; the other lies opposite.
    exposure
        ``painted`` or ``weathering``.
    hole
        Bolt holes of the half-shells.
    """

    inner_diameter: Real
    thickness: Real
    height: Real
    gap: Real
    seam_gap: Real
    seam_angle: Real
    exposure: Exposure
    steel: Plate
    hole: Hole

    @property
    def inner_radius(self) -> Real:
        """Inside radius [mm]."""
        return self.inner_diameter / 2.0


@dataclass(frozen=True, slots=True)
class Splice:
    """Splice plates of one seam, as high as the sleeve.

    Attributes
    ----------
    outside_thickness, inside_thickness
        Plate thicknesses [mm]; 0 inside where plates are outside only.
    width
        Horizontal width of a plate [mm].
    shear_planes
        Shear (and slip) planes of each bolt: 1 or 2.
    hole
        Bolt holes of the plates.
    fillers
        Most filler plates between the sleeve and one splice plate.
    filler_thickness
        Thickness of all fillers that a bolt passes through [mm]; they carry no hoop force.
    """

    outside_thickness: Real
    inside_thickness: Real
    width: Real
    shear_planes: Real
    steel: Plate
    hole: Hole
    fillers: Real = 0.0
    filler_thickness: Real = 0.0

    @property
    def total_thickness(self) -> Real:
        """Thickness of all plates that carry the hoop force across a seam [mm]."""
        return np.add(self.outside_thickness, self.inside_thickness)


@dataclass(frozen=True, slots=True)
class BoltGroup(Figures):
    """Bolts on one side of one seam; the other three groups are alike.

    Attributes
    ----------
    diameter, tensile_stress_area
        Nominal diameter [mm] and area in the threads [mm²].
    pretension
        Minimum pretension [N]; 0 where the bolts are only snug-tight.
    specified_pretension
        Minimum pretension the product is meant for [N], whether it is applied or not.
    tensile_strength
        Specified tensile strength [MPa].
    shear_stress
        Nominal shear stress for the threads' position [MPa] (AISC 360 Table J3.2).
    threads
        ``included`` in or ``excluded`` from the shear planes.
    metric
        Whether the product is made in millimetres, so that a code's metric rounding applies.
    rows, columns
        Bolts above one another along the seam, and vertical bolt lines side by side.
    pitch, gauge
        Vertical spacing of the rows and horizontal spacing of the columns [mm].
    seam_edge_distance, plate_edge_distance
        First line to the sleeve's edge at the seam, last line to the plate's vertical edge [mm].
    end_distance
        First and last row to the sleeve's ends [mm].
    hole_making
        ``drilled`` (or subdrilled and reamed) or ``punched``; what the holes are like is said by
        each ply.
    standard_hole
        Standard hole for the bolt [mm], whatever hole the plies have.
    faying_classes
        One class for each code.
    tightening, measured_tension, torque_coefficient
        How the bolts are installed; measured tension of snug bolts [N]; K from a calibrated test.
    fit
        The bolt that is ordered for the grip, and how its thread lies.
    """

    diameter: Real
    tensile_stress_area: Real
    pretension: Real
    specified_pretension: Real
    tensile_strength: Real
    yield_strength: Real
    shear_stress: Real
    tensile_stress: Real
    threads: ThreadPosition
    metric: bool
    rows: Real
    columns: Real
    pitch: Real
    gauge: Real
    seam_edge_distance: Real
    plate_edge_distance: Real
    end_distance: Real
    hole_making: HoleMaking
    standard_hole: Real
    nut_width: Real
    nut_height: Real
    head_height: Real
    washer_diameter: Real
    washer_thickness: Real
    tightening_clearance: Real | None
    entering_clearance: Real | None
    socket_diameter: Real | None
    faying_classes: tuple[FayingClass, ...]
    tightening: Tightening
    measured_tension: Real | None
    torque_coefficient: Real | None
    fit: BoltFit
    product: str = label()
    size: str = label()

    @property
    def pretension_source(self) -> str:
        """Where the minimum pretension stands."""
        return self.source_of("specified_pretension")

    @property
    def clearance_source(self) -> str:
        """Where the room that a wrench needs stands."""
        return self.source_of("tightening_clearance")

    @property
    def area(self) -> Real:
        """Area of the unthreaded shank [mm²]."""
        return np.pi * np.square(self.diameter) / 4.0

    @property
    def pretensioned(self) -> bool:
        """Whether the installation method gives the minimum pretension."""
        return self.tightening != "snug"

    @property
    def tributary_height(self) -> Real:
        """Height of sleeve whose hoop force the hardest-worked row carries [mm].

        An inner row has one pitch, an end row its end distance and half a pitch.
        """
        return np.maximum(self.pitch, np.add(self.end_distance, np.divide(self.pitch, 2.0)))

    @property
    def count(self) -> Real:
        """Bolts in the whole jacket: two seams with two groups each."""
        return 4.0 * np.multiply(self.rows, self.columns)


@dataclass(frozen=True, slots=True)
class Grout(Figures):
    """Grout in the annulus: radial thickness [mm], strength and modulus [MPa]."""

    thickness: Real
    strength: Real
    elastic_modulus: Real

    @property
    def modulus_source(self) -> str:
        """Where the modulus comes from."""
        return self.source_of("elastic_modulus")


@dataclass(frozen=True, slots=True)
class AnchorReinforcement(Figures):
    """Bars of the footing that cross the breakout surface of the added bars.

    Attributes
    ----------
    diameter, area, count
        Of one bar [mm, mm²], and how many cross the surface in all.
    steel
        Their steel.
    angle
        Between them and the added bars [rad].
    distance
        From the added bars to the farthest of them [mm].
    length_above, length_below
        From the breakout surface to their ends, towards the column and the footing's base [mm].
    end_above, end_below
        How these ends are made.
    size
        Name of the bar size.
    """

    diameter: Real
    area: Real
    count: Real
    steel: Rebar
    angle: Real
    distance: Real
    length_above: Real
    length_below: Real
    end_above: BarEnd
    end_below: BarEnd
    size: str = label()


@dataclass(frozen=True, slots=True)
class AddedBarLayer:
    """Bars grouted into holes in the footing.

    Attributes
    ----------
    layer
        Size, steel, count and circle.
    height, embedment
        Length above the footing and in it [mm].
    hole_diameter
        Diameter of the drilled holes [mm].
    bond_strength
        Characteristic bond strength of a qualified adhesive [MPa]; None for grout.
    breakout_precluded
        Whether it is said, without evidence here, that no cone breaks out of the footing.
    anchor_reinforcement
        Bars that take the tension in breakout's place; None where there are none.
    """

    layer: BarLayer
    height: Real
    embedment: Real
    hole_diameter: Real
    bond_strength: Real | None
    breakout_precluded: bool
    anchor_reinforcement: AnchorReinforcement | None = None
