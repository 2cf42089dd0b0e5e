"""Hoop action of the sleeve: yield under dilation and under clamping."""

from __future__ import annotations

import numpy as np

from jacketcheck.analysis.axial_strain import add_axial_strain
from jacketcheck.analysis.clamping import clamping_need
from jacketcheck.analysis.dilation import dilation
from jacketcheck.analysis.hoop_action import hoop_action
from jacketcheck.analysis.lap import lap_hoop_force
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.limit_state import limit_state
from jacketcheck.limit_states.editions import AISC
from jacketcheck.mechanics import hoop
from jacketcheck.mechanics.plate_strength import AISC_TENSION_YIELD_FACTOR
from jacketcheck.results import Result, Steps

__all__ = ["hoop_clamping", "hoop_dilation"]

_FOUND = (
    "the axial strain is the one that a single push to the base demand gives; cycles dilate the core "
    "further: declare actions.axial_strain if the base may be strained more"
)
_DILATION = "Spoelstra and Monti 1999, J. Compos. Constr. 3(3); Mander, Priestley and Park 1988"


@limit_state(
    "hoop-dilation",
    title="Hoop yield of the sleeve under dilation",
    monotonic={"sleeve.steel.yield_strength": -1},
    effort="closed-form",
)
def hoop_dilation(jacket: Jacket) -> list[Result]:
    """Hoop strain of the sleeve at the axial strain of the base, against its yield strain.

    Strains, not stresses, are compared: the stress stops at yield, the strain goes on. The laps'
    hoop force comes on top of the dilation. The specified minimum yield strength counts, with the
    resistance factor for yield in tension; the column's own hoops are not counted.
    """
    steps, sleeve = Steps(), jacket.sleeve
    action, state = hoop_action(jacket), dilation(jacket)
    add_axial_strain(jacket, steps)
    steps.add("f′ce", "expected concrete", jacket.column.concrete.expected, "MPa",
              jacket.column.concrete.expected_source)  # fmt: skip
    steps.add("k_j", "seam", action.seam_stiffness, "MPa", "EN 1993-1-8:2005 6.3 for snug bolts; "
              "splice plates alone while friction holds")  # fmt: skip
    steps.add("du/dp", "R_i²/(E t) + 2 R_i/(2π k_j) + R_i ln(R_i/R_c)/E_g",
              action.radial_compliance, "mm/MPa", "thin shell, two seams, cracked grout")  # fmt: skip
    steps.add("u_0", "play before the sleeve engages", action.initial_play, "mm", "hole clearance")
    steps.add("p", "equilibrium of core and ring", state.minimum.sleeve_pressure, "MPa", _DILATION)
    steps.add("p_c", "p R_i/R_c", state.minimum.core_pressure, "MPa", "cracked grout")
    steps.add("ε_c,y", "axial strain at which the sleeve first yields", state.yield_axial_strain,
              "1", _DILATION)  # fmt: skip
    strain = steps.add("ε_dil", "p R_i/(E t), and what follows yield",
                       state.minimum.sleeve_hoop_strain, "1", _DILATION)  # fmt: skip
    stiffness = np.multiply(sleeve.steel.elastic_modulus, sleeve.thickness)
    laps = steps.add("ε_lap", "N_lap/(E t)", np.divide(lap_hoop_force(jacket), stiffness), "1",
                     "limit state added-bar-lap")  # fmt: skip
    demand = steps.add("ε_h", "ε_dil + ε_lap", np.add(strain, laps), "1", "thin shell")
    steps.add("F_y", sleeve.steel.name, sleeve.steel.yield_strength, "MPa", sleeve.steel.source)
    capacity = steps.add(
        "φε_y",
        "0.90 F_y/E",
        AISC_TENSION_YIELD_FACTOR
        * np.divide(sleeve.steel.yield_strength, sleeve.steel.elastic_modulus),
        "1",
        f"{AISC} J4.1(a)",
    )
    return [
        Result(
            "Hoop yield of the sleeve under dilation",
            "sleeve, over the plastic region of the core",
            demand,
            capacity,
            "1",
            f"Spoelstra and Monti 1999; {AISC} J4.1(a)",
            steps.lines,
            () if jacket.demands.axial_strain is not None else (_FOUND,),
        )
    ]


@limit_state(
    "hoop-clamping",
    title="Hoop yield of the sleeve under clamping",
    monotonic={"sleeve.thickness": -1, "sleeve.steel.yield_strength": -1},
    effort="closed-form",
)
def hoop_clamping(jacket: Jacket) -> list[Result]:
    """Hoop stress from the clamping pressure that the fractured bars need, laps included."""
    steps, sleeve = Steps(), jacket.sleeve
    need = steps.add("p_c", "needed on the core", clamping_need(jacket).largest_core_pressure,
                     "MPa", "limit state clamping")  # fmt: skip
    pressure = steps.add("p", "p_c R_c/R_i", need * jacket.column.radius / sleeve.inner_radius,
                         "MPa", "cracked grout")  # fmt: skip
    lap = steps.add("N_lap", "non-contact laps", lap_hoop_force(jacket), "N/mm",
                    "limit state added-bar-lap")  # fmt: skip
    force = hoop.hoop_force(pressure, inner_radius=sleeve.inner_radius) + lap
    demand = steps.add("σ", "(p R_i + N_lap)/t", force / sleeve.thickness, "MPa", "thin shell")
    steps.add("F_y", sleeve.steel.name, sleeve.steel.yield_strength, "MPa", sleeve.steel.source)
    capacity = steps.add(
        "φF_y",
        "0.90 F_y",
        np.multiply(AISC_TENSION_YIELD_FACTOR, sleeve.steel.yield_strength),
        "MPa",
        f"{AISC} J4.1(a)",
    )
    return [
        Result(
            "Hoop yield of the sleeve under clamping",
            "sleeve",
            demand,
            capacity,
            "MPa",
            f"thin shell; {AISC} J4.1(a)",
            steps.lines,
        )
    ]
