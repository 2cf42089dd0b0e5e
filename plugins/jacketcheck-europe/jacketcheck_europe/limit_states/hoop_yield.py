"""Hoop action of the sleeve: yield under dilation and under clamping."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.plugin import (
    Jacket,
    Result,
    Steps,
    add_axial_strain,
    add_shear_force,
    clamping_need,
    dilation,
    hoop_action,
    lap_hoop_force,
)
from jacketcheck_europe.editions import EN_1993
from jacketcheck_europe.limit_states._rows import add_design_yield, add_radii, resistance_row
from jacketcheck_europe.partial_factors import PartialFactors

__all__ = ["hoop_clamping", "hoop_dilation"]

_DILATION: Final = (
    "Spoelstra and Monti 1999, J. Compos. Constr. 3(3); Mander, Priestley and Park 1988"
)
_LAPS: Final = "limit state added-bar-lap"
_YIELD: Final = f"{EN_1993} 6.2.3(2)a"
_AT_BASE: Final = (
    "engineering judgement: the core is looked at where the base strains it; the hinge above the "
    "repair strains its top as well"
)
_FOUND: Final = (
    "the axial strain is the one that a single push to the base demand gives; cycles dilate the "
    "core further: declare actions.axial_strain if the base may be strained more"
)


def hoop_dilation(jacket: Jacket, factors: PartialFactors) -> list[Result]:
    """Hoop strain of the sleeve at the axial strain of the base, against design yield.

    Strains, not stresses, are compared: the stress stops at yield, the strain goes on.
    """
    steps, sleeve, state = Steps(), jacket.sleeve, dilation(jacket)
    concrete, modulus = jacket.column.concrete, sleeve.steel.elastic_modulus
    add_axial_strain(jacket, steps)
    steps.figure("f_cm", "expected concrete", concrete, "expected", "MPa")
    add_radii(jacket, steps)
    steps.add("t", "sleeve", sleeve.thickness, "mm", "input sleeve.thickness")
    steps.figure("E", "sleeve", sleeve.steel, "elastic_modulus", "MPa")
    steps.add("du/dp", "sleeve, two seams and cracked grout", hoop_action(jacket).radial_compliance,
              "mm/MPa", "limit state hoop-dilation of the built-in provisions")  # fmt: skip
    steps.add("p", "equilibrium of core and ring at ε_c", state.minimum.sleeve_pressure, "MPa",
              _DILATION)  # fmt: skip
    steps.add("ε_c,y", "axial strain at which the sleeve first yields", state.yield_axial_strain,
              "1", _DILATION)  # fmt: skip
    strain = steps.add("ε_dil", "p R_i/(E t), and what follows yield",
                       state.minimum.sleeve_hoop_strain, "1", "thin shell")  # fmt: skip
    steps.add("N_lap", "non-contact laps", lap_hoop_force(jacket), "N/mm", _LAPS)
    laps = np.divide(lap_hoop_force(jacket), np.multiply(modulus, sleeve.thickness))
    steps.add("ε_lap", "N_lap/(E t)", laps, "1", "thin shell")
    steps.add("D", "column", jacket.column.diameter, "mm", "input column.diameter")
    shear = steps.add("ε_V", "N_V/(E t)", add_shear_force(jacket, steps)
                      / np.multiply(modulus, sleeve.thickness), "1", "thin shell")  # fmt: skip
    demand = steps.add("ε_h", "ε_dil + ε_lap + ε_V", np.add(strain, laps) + shear, "1",
                       "thin shell")  # fmt: skip
    stress = add_design_yield(sleeve.steel, factors, steps)
    capacity = steps.add("ε_yd", "f_yd/E", np.divide(stress, modulus), "1", _YIELD)
    return [
        resistance_row(
            "Hoop yield of the sleeve under dilation",
            "sleeve, over the plastic region of the core",
            steps,
            demand=demand,
            capacity=capacity,
            unit="1",
            clause=f"Spoelstra and Monti 1999; {_YIELD}",
            rule="hoop-strain",
            partial_factor=factors.section,
            factors=factors,
            notes=(_AT_BASE,) if jacket.demands.axial_strain is not None else (_AT_BASE, _FOUND),
        )
    ]


def hoop_clamping(jacket: Jacket, factors: PartialFactors) -> list[Result]:
    """Hoop stress from the clamping pressure that the fractured bars need, laps included."""
    steps, sleeve = Steps(), jacket.sleeve
    add_radii(jacket, steps)
    need = clamping_need(jacket).largest_core_pressure
    steps.add("p_c", "needed on the core", need, "MPa", "limit state clamping")
    pressure = steps.add("p", "p_c R_c/R_i",
                         np.multiply(need, jacket.column.radius) / sleeve.inner_radius, "MPa",
                         "cracked grout")  # fmt: skip
    lap = steps.add("N_lap", "non-contact laps", lap_hoop_force(jacket), "N/mm", _LAPS)
    steps.add("t", "sleeve", sleeve.thickness, "mm", "input sleeve.thickness")
    force = np.add(pressure * sleeve.inner_radius, lap)
    force = force + add_shear_force(jacket, steps)
    demand = steps.add("σ", "(p R_i + N_lap + N_V)/t", force / sleeve.thickness, "MPa",
                       "thin shell")  # fmt: skip
    return [
        resistance_row(
            "Hoop yield of the sleeve under clamping",
            "sleeve",
            steps,
            demand=demand,
            capacity=add_design_yield(sleeve.steel, factors, steps),
            unit="MPa",
            clause=f"thin shell; {_YIELD}",
            rule="hoop-stress",
            partial_factor=factors.section,
            factors=factors,
        )
    ]
