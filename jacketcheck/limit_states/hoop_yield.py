"""Hoop action of the sleeve: yield under dilation and under clamping."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.analysis.axial_strain import add_axial_strain
from jacketcheck.analysis.clamping import clamping_need
from jacketcheck.analysis.dilation import dilation
from jacketcheck.analysis.hoop_action import hoop_action
from jacketcheck.analysis.hoop_demand import add_radii
from jacketcheck.analysis.lap import lap_hoop_force
from jacketcheck.analysis.shear import add_shear_force
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.limit_state import Scatter, limit_state
from jacketcheck.limit_states.editions import AISC
from jacketcheck.mechanics import hoop
from jacketcheck.mechanics._arrays import Real
from jacketcheck.mechanics.plate_strength import AISC_TENSION_YIELD_FACTOR
from jacketcheck.results import Result, Steps

__all__ = ["hoop_clamping", "hoop_dilation"]

_DILATION: Final = (
    "Spoelstra and Monti 1999, J. Compos. Constr. 3(3); Mander, Priestley and Park 1988"
)
_LAPS: Final = "limit state added-bar-lap"
_YIELD: Final = f"{AISC} J4.1(a)"
_AT_BASE: Final = (
    "engineering judgement: the core is looked at where the base strains it, with grout and added "
    "bars acting in full; the hinge above the repair strains its top as well"
)
_FOUND: Final = (
    "the axial strain is the one that a single push to the base demand gives; cycles dilate the "
    "core further: declare actions.axial_strain if the base may be strained more"
)


@limit_state(
    "hoop-dilation",
    title="Hoop yield of the sleeve under dilation",
    monotonic={"sleeve.steel.yield_strength": -1},
    effort="closed-form",
    scatter=Scatter(
        "hoop strain at the checked axial strain, laps included, exceeds the actual yield strain",
        rules=("hoop-strain",),
    ),
)
def hoop_dilation(jacket: Jacket) -> list[Result]:
    """Hoop strain of the sleeve at the axial strain of the base, against its yield strain.

    Strains, not stresses, are compared: the stress stops at yield, the strain goes on. The laps'
    hoop force comes on top of the dilation. The specified minimum yield strength counts, with the
    resistance factor for yield in tension; the column's own hoops are not counted.
    """
    steps, state = Steps(), dilation(jacket)
    add_axial_strain(jacket, steps)
    concrete = jacket.column.concrete
    steps.figure("f′ce", "expected concrete", concrete, "expected", "MPa")
    _add_ring(jacket, steps)
    steps.add("p", "equilibrium of core and ring at ε_c", state.minimum.sleeve_pressure, "MPa",
              _DILATION)  # fmt: skip
    steps.add("p_c", "p R_i/R_c", state.minimum.core_pressure, "MPa", "cracked grout")
    steps.add("ε_c,y", "axial strain at which the sleeve first yields", state.yield_axial_strain,
              "1", _DILATION)  # fmt: skip
    steps.add("ε_pl", "hoop strain beyond yield", state.minimum.sleeve_plastic_strain, "1",
              _DILATION)  # fmt: skip
    steps.add("ε_dil", "p R_i/(E t) + ε_pl", state.minimum.sleeve_hoop_strain, "1", "thin shell")
    stiffness = np.multiply(jacket.sleeve.steel.elastic_modulus, jacket.sleeve.thickness)
    steps.add("N_lap", "non-contact laps", lap_hoop_force(jacket), "N/mm", _LAPS)
    laps = steps.add("ε_lap", "N_lap/(E t)", lap_hoop_force(jacket) / stiffness, "1", "thin shell")
    shear = steps.add("ε_V", "N_V/(E t)", add_shear_force(jacket, steps) / stiffness, "1",
                      "thin shell")  # fmt: skip
    demand = steps.add("ε_h", "ε_dil + ε_lap + ε_V",
                       np.add(state.minimum.sleeve_hoop_strain, laps) + shear, "1",
                       "thin shell")  # fmt: skip
    strength = _add_yield(jacket, steps)
    capacity = steps.add("φε_y", "φ F_y/E", strength / jacket.sleeve.steel.elastic_modulus, "1",
                         _YIELD)  # fmt: skip
    return [
        Result(
            "Hoop yield of the sleeve under dilation",
            "sleeve, over the plastic region of the core",
            demand,
            capacity,
            "1",
            f"Spoelstra and Monti 1999; {_YIELD}",
            steps.lines,
            (_AT_BASE,) if jacket.demands.axial_strain is not None else (_AT_BASE, _FOUND),
            rule="hoop-strain",
            resistance_factor=AISC_TENSION_YIELD_FACTOR,
        )
    ]


def _add_ring(jacket: Jacket, steps: Steps) -> None:
    """Write down how far the core's face moves for each unit of pressure on the sleeve."""
    action, sleeve = hoop_action(jacket), jacket.sleeve
    add_radii(jacket, steps)
    steps.add("t", "sleeve", sleeve.thickness, "mm", "input sleeve.thickness")
    steps.figure("E", "sleeve", sleeve.steel, "elastic_modulus", "MPa")
    steps.figure("E_g", "grout", jacket.grout, "elastic_modulus", "MPa")
    if jacket.bolts.pretensioned:
        plates = jacket.splice
        steps.figure("E_p", "splice plates", plates.steel, "elastic_modulus", "MPa")
        steps.add("t_p", "splice plates together", plates.total_thickness, "mm",
                  "input splice.thickness")  # fmt: skip
        steps.add("g_s", "opening of the seam", sleeve.seam_gap, "mm", "input sleeve.seam_gap")
        steps.add("e", "first bolt line to the sleeve's edge", jacket.bolts.seam_edge_distance,
                  "mm", "input bolts.seam_edge_distance")  # fmt: skip
        steps.add("k_j", "E_p t_p/(g_s + 2 e)", action.seam_stiffness, "MPa",
                  "splice plates alone while friction holds")  # fmt: skip
    else:
        steps.add("k_j", "seam with bolts in bearing", action.seam_stiffness, "MPa",
                  "EN 1993-1-8:2005 6.3")  # fmt: skip
    steps.add(
        "du/dp",
        "R_i²/(E t) + 2 R_i/(2 π k_j) + R_i ln(R_i/R_c)/E_g",
        action.radial_compliance,
        "mm/MPa",
        "thin shell, two seams, cracked grout",
    )
    steps.add("u_0", "no play relieves the sleeve: snug bolts may bear from the start", 0.0, "mm",
              "bound of the holes' clearance")  # fmt: skip


def _add_yield(jacket: Jacket, steps: Steps) -> Real:
    """Write down the factored yield strength of the sleeve and return it [MPa]."""
    steel = jacket.sleeve.steel
    steps.figure("F_y", steel.name, steel, "yield_strength", "MPa")
    factor = steps.add("φ", "yield in tension", AISC_TENSION_YIELD_FACTOR, "1", _YIELD)
    return np.multiply(factor, steel.yield_strength)


@limit_state(
    "hoop-clamping",
    title="Hoop yield of the sleeve under clamping",
    monotonic={"sleeve.thickness": -1, "sleeve.steel.yield_strength": -1},
    effort="closed-form",
    scatter=Scatter(
        "hoop stress of the clamping that fractured bars need, laps included, "
        "exceeds the actual yield strength",
        rules=("hoop-stress",),
    ),
)
def hoop_clamping(jacket: Jacket) -> list[Result]:
    """Hoop stress from the clamping pressure that the fractured bars need, laps included."""
    steps, sleeve = Steps(), jacket.sleeve
    add_radii(jacket, steps)
    need = steps.add("p_c", "needed on the core", clamping_need(jacket).largest_core_pressure,
                     "MPa", "limit state clamping")  # fmt: skip
    pressure = steps.add("p", "p_c R_c/R_i", need * jacket.column.radius / sleeve.inner_radius,
                         "MPa", "cracked grout")  # fmt: skip
    lap = steps.add("N_lap", "non-contact laps", lap_hoop_force(jacket), "N/mm", _LAPS)
    force = hoop.hoop_force(pressure, inner_radius=sleeve.inner_radius) + lap
    steps.add("t", "sleeve", sleeve.thickness, "mm", "input sleeve.thickness")
    force = force + add_shear_force(jacket, steps)
    demand = steps.add("σ", "(p R_i + N_lap + N_V)/t", force / sleeve.thickness, "MPa",
                       "thin shell")  # fmt: skip
    capacity = steps.add("φF_y", "φ F_y", _add_yield(jacket, steps), "MPa", _YIELD)
    return [
        Result(
            "Hoop yield of the sleeve under clamping",
            "sleeve",
            demand,
            capacity,
            "MPa",
            f"thin shell; {_YIELD}",
            steps.lines,
            rule="hoop-stress",
            resistance_factor=AISC_TENSION_YIELD_FACTOR,
        )
    ]
