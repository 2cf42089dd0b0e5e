"""Shear between column and grout, through which the added bars' force enters the column."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.plugin import Jacket, Result, Steps, bond_pressure, not_applicable, pressure_losses
from jacketcheck_europe.editions import EN_1992, EN_1992_2, EN_1998_2
from jacketcheck_europe.limit_states._rows import resistance_row
from jacketcheck_europe.mechanics import interface
from jacketcheck_europe.mechanics.concrete import (
    design_compressive_strength,
    strut_effectiveness,
)
from jacketcheck_europe.partial_factors import PartialFactors

__all__ = ["grout_interface"]

_TITLE: Final = "Shear between column and grout"
_JUDGEMENT: Final = (
    "engineering judgement: half of the added bars pull with overstrength over half of the "
    "column's perimeter, held by friction under the pressure that the sleeve keeps; cohesion is "
    "not counted, and a face that is not roughened counts as very smooth, cast against forms"
)


def grout_interface(jacket: Jacket, factors: PartialFactors) -> list[Result]:
    """Vertical shear from the added bars against friction on the column's face."""
    added, column = jacket.added_bars, jacket.column
    if added is None:
        return [not_applicable(_TITLE, "no added bars")]
    steps, steel, clause = Steps(), added.layer.steel, f"{EN_1992} 6.2.5"
    surface: interface.InterfaceSurface = (
        "rough" if jacket.column_face == "roughened" else "very smooth"
    )
    steps.add("n", "added bars", added.layer.count, "1", "input added_bars.count")
    steps.figure("A_b", added.layer.size, added.layer, "area", "mm2")
    half = steps.add("A_s", "n A_b/2", np.divide(added.layer.total_area, 2.0), "mm2",
                     "half of the added bars")  # fmt: skip
    steps.figure("f_yk", steel.name, steel, "yield_strength", "MPa")
    steps.add("γ_o", "overstrength", factors.overstrength, "1", f"{EN_1998_2} 5.3(4)")
    demand = steps.add("V_Ed", "γ_o f_yk A_s",
                       np.multiply(factors.overstrength, steel.yield_strength) * half, "N",
                       "statics")  # fmt: skip
    top = steps.add("h_a", "added bars above the footing, not above the repair",
                    np.minimum(added.height, jacket.repair_height), "mm",
                    "input added_bars.height")  # fmt: skip
    steps.add("g", "gap, in which nothing presses", jacket.sleeve.gap, "mm", "input repair.gap")
    height = steps.add("h", "max(h_a − g, 0)",
                       np.maximum(np.subtract(top, jacket.sleeve.gap), 0.0), "mm",
                       "geometry")  # fmt: skip
    steps.add("D", "column", column.diameter, "mm", "input column.diameter")
    area = steps.add("A_i", "(π D/2) h", np.pi * np.asarray(column.radius) * height, "mm2",
                     "geometry")  # fmt: skip
    pressure = steps.add("σ_n", "supplied and kept for the next cycle, on the core",
                         bond_pressure(jacket), "MPa",
                         "limit states clamping, retained-pressure")  # fmt: skip
    weaker = steps.add("f_ck", "the weaker of column and grout",
                       np.minimum(column.concrete.specified, jacket.grout.strength), "MPa",
                       f"{column.concrete.source_of('specified')}; "
                       f"{jacket.grout.source_of('strength')}")  # fmt: skip
    steps.add("α_cc", "bridges", factors.compression, "1", f"{EN_1992_2} 3.1.6(101)")
    steps.add("γ_C", "concrete", factors.concrete, "1", f"{EN_1992} 2.4.2.4")
    design = steps.add(
        "f_cd",
        "α_cc f_ck/γ_C",
        design_compressive_strength(
            weaker, coefficient=factors.compression, partial_factor=factors.concrete
        ),
        "MPa",
        f"{EN_1992} 3.1.6(1)",
    )
    friction = steps.add(
        "μ", f"{surface} face", interface.friction_coefficient(surface), "1", clause
    )
    effectiveness = steps.add("ν", "0.6 (1 − f_ck/250 MPa)", strut_effectiveness(weaker), "1",
                              f"{EN_1992} Eq. 6.6N")  # fmt: skip
    strength = interface.interface_shear_strength(
        pressure, friction=friction, design_strength=design, effectiveness=effectiveness
    )
    steps.add(
        "v_Rdi", "min(μ min(σ_n, 0.6 f_cd), 0.5 ν f_cd)", strength, "MPa", f"{clause}, Eq. 6.25"
    )
    capacity = steps.add("V_Rdi", "v_Rdi A_i", strength * area, "N", clause)
    return [
        resistance_row(
            _TITLE,
            f"{jacket.column_face} face of the column",
            steps,
            demand=demand,
            capacity=capacity,
            unit="N",
            clause=clause,
            factors=factors,
            notes=(_JUDGEMENT,),
            follows_from=pressure_losses(jacket),
        )
    ]
