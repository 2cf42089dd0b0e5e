"""Hoop action of the sleeve: yield under dilation and under clamping."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.plugin import (
    Jacket,
    Real,
    Result,
    Steps,
    add_axial_strain,
    clamping_need,
    dilation,
    hoop_action,
    lap_hoop_force,
)
from jacketcheck_europe.editions import EN_1993
from jacketcheck_europe.limit_states._rows import resistance_row
from jacketcheck_europe.mechanics.plates import plastic_resistance
from jacketcheck_europe.partial_factors import PartialFactors

__all__ = ["hoop_clamping", "hoop_dilation"]

_DILATION: Final = (
    "Spoelstra and Monti 1999, J. Compos. Constr. 3(3); Mander, Priestley and Park 1988"
)
_YIELD: Final = f"{EN_1993} 6.2.3(2)a"


def hoop_dilation(jacket: Jacket, factors: PartialFactors) -> list[Result]:
    """Hoop strain of the sleeve at the axial strain of the base, against design yield."""
    steps, sleeve = Steps(), jacket.sleeve
    state = dilation(jacket)
    add_axial_strain(jacket, steps)
    steps.add("f_cm", "expected concrete", jacket.column.concrete.expected, "MPa",
              jacket.column.concrete.expected_source)  # fmt: skip
    steps.add("du/dp", "sleeve, two seams and cracked grout", hoop_action(jacket).radial_compliance,
              "mm/MPa", "thin shell")  # fmt: skip
    steps.add("p", "equilibrium of core and ring", state.minimum.sleeve_pressure, "MPa", _DILATION)
    steps.add("ε_c,y", "axial strain at which the sleeve first yields", state.yield_axial_strain,
              "1", _DILATION)  # fmt: skip
    strain = steps.add("ε_dil", "p R_i/(E t), and what follows yield",
                       state.minimum.sleeve_hoop_strain, "1", _DILATION)  # fmt: skip
    stiffness = np.multiply(sleeve.steel.elastic_modulus, sleeve.thickness)
    laps = steps.add("ε_lap", "N_lap/(E t)", np.divide(lap_hoop_force(jacket), stiffness), "1",
                     "limit state added-bar-lap")  # fmt: skip
    demand = steps.add("ε_h", "ε_dil + ε_lap", np.add(strain, laps), "1", "thin shell")
    stress = _add_design_yield(jacket, factors, steps)
    capacity = steps.add(
        "ε_y,d", "f_y/(γ_M0 E)", stress / sleeve.steel.elastic_modulus, "1", _YIELD
    )
    return [
        resistance_row(
            "Hoop yield of the sleeve under dilation",
            "sleeve, over the plastic region of the core",
            steps,
            demand=demand,
            capacity=capacity,
            unit="1",
            clause=f"{_DILATION}; {_YIELD}",
            factors=factors,
        )
    ]


def hoop_clamping(jacket: Jacket, factors: PartialFactors) -> list[Result]:
    """Hoop stress from the clamping pressure that the fractured bars need, laps included."""
    steps, sleeve = Steps(), jacket.sleeve
    need = steps.add(
        "p_c",
        "needed on the core",
        clamping_need(jacket).largest_core_pressure,
        "MPa",
        "limit state clamping",
    )
    pressure = steps.add("p", "p_c R_c/R_i",
                         np.multiply(need, jacket.column.radius) / sleeve.inner_radius, "MPa",
                         "cracked grout")  # fmt: skip
    lap = steps.add("N_lap", "non-contact laps", lap_hoop_force(jacket), "N/mm",
                    "limit state added-bar-lap")  # fmt: skip
    force = np.add(pressure * sleeve.inner_radius, lap)
    demand = steps.add("σ", "(p R_i + N_lap)/t", force / sleeve.thickness, "MPa", "thin shell")
    capacity = _add_design_yield(jacket, factors, steps)
    return [
        resistance_row(
            "Hoop yield of the sleeve under clamping",
            "sleeve",
            steps,
            demand=demand,
            capacity=capacity,
            unit="MPa",
            clause=f"thin shell; {_YIELD}",
            factors=factors,
        )
    ]


def _add_design_yield(jacket: Jacket, factors: PartialFactors, steps: Steps) -> Real:
    """Design yield strength of the sleeve [MPa]."""
    steel = jacket.sleeve.steel
    steps.add("f_y", steel.name, steel.yield_strength, "MPa", steel.source)
    steps.add("γ_M0", "section", factors.section, "1", f"{EN_1993} 6.1(1)")
    design = plastic_resistance(
        steel.yield_strength, gross_area=1.0, partial_factor=factors.section
    )
    return steps.add("f_yd", "f_y/γ_M0", design, "MPa", _YIELD)
