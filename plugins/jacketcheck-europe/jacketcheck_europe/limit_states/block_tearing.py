"""Block tearing at the seam: rows of bolts that tear a block out of a plate's edge."""

from __future__ import annotations

from typing import Final, NamedTuple

import numpy as np

from jacketcheck.mechanics.block_shear import SeamBlock, seam_blocks
from jacketcheck.plugin import (
    Hole,
    Jacket,
    Plate,
    Real,
    Result,
    Steps,
    add_bolt_force,
    effective_splice_thickness,
    hoop_demand,
)
from jacketcheck_europe.editions import EN_1993_8
from jacketcheck_europe.limit_states._rows import resistance_row
from jacketcheck_europe.mechanics.plates import block_tearing_resistance
from jacketcheck_europe.partial_factors import PartialFactors

__all__ = ["seam_block_shear"]

_CLAUSE: Final = f"{EN_1993_8} 3.10.2"
_ECCENTRIC: Final = frozenset({"end row"})
"""Blocks whose tension lies to one side of the force: the end row by itself. A block of all rows
has it spread over the rows, whether it has a shear plane at one end or at both (engineering
judgement)."""


class _TornPlate(NamedTuple):
    """A plate, its steel and thickness [mm], edge distance along the force [mm], and holes."""

    name: str
    steel: Plate
    thickness: Real
    edge_distance: Real
    hole: Hole


def seam_block_shear(jacket: Jacket, factors: PartialFactors) -> list[Result]:
    """Block tearing of the sleeve and of each splice plate, per bolt row."""
    sleeve, splice, bolts = jacket.sleeve, jacket.splice, jacket.bolts
    thickness = effective_splice_thickness(jacket)
    torn = (
        _TornPlate("sleeve", sleeve.steel, sleeve.thickness, bolts.seam_edge_distance, sleeve.hole),
        _TornPlate(
            "splice plates", splice.steel, thickness, bolts.plate_edge_distance, splice.hole
        ),
    )
    return [_block(jacket, plate, factors) for plate in torn]


def _block(jacket: Jacket, plate: _TornPlate, factors: PartialFactors) -> Result:
    steps = Steps()
    add_bolt_force(jacket, steps)
    demand = steps.add("N_row", "V n_c", hoop_demand(jacket).bolt_force * jacket.bolts.columns, "N",
                       "equilibrium of a half shell")  # fmt: skip
    steel = plate.steel
    steps.figure("f_y", steel.name, steel, "yield_strength", "MPa")
    steps.figure("f_u", steel.name, steel, "tensile_strength", "MPa")
    steps.add(
        "t",
        plate.name,
        plate.thickness,
        "mm",
        "input sleeve.thickness; splice.thickness, smallest over its share",
    )
    steps.add("γ_M0", "section", factors.section, "1", f"{EN_1993_8} Table 2.1")
    steps.add("γ_M2", "rupture", factors.rupture, "1", f"{EN_1993_8} Table 2.1")
    per_row = [
        _add_block(name, block, steel, factors, steps)
        for name, block in _blocks(jacket, plate).items()
    ]
    weakest = np.min(np.broadcast_arrays(*per_row), axis=0)
    capacity = steps.add("V_eff,Rd", "smallest", weakest, "N", _CLAUSE)
    return resistance_row(
        "Block shear at the seam",
        plate.name,
        steps,
        demand=demand,
        capacity=capacity,
        unit="N",
        clause=_CLAUSE,
        factors=factors,
        rule="block-tearing",
        # of its two partial factors the smaller is taken out: the safe side
        partial_factor=min(factors.section, factors.rupture),
    )


def _blocks(jacket: Jacket, plate: _TornPlate) -> dict[str, SeamBlock]:
    bolts = jacket.bolts
    return seam_blocks(
        rows=bolts.rows,
        columns=bolts.columns,
        pitch=bolts.pitch,
        gauge=bolts.gauge,
        edge_distance=plate.edge_distance,
        end_distance=bolts.end_distance,
        thickness=plate.thickness,
        hole_along=plate.hole.along,
        hole_across=plate.hole.across,
        damage=0.0,
    )


def _add_block(
    name: str, block: SeamBlock, steel: Plate, factors: PartialFactors, steps: Steps
) -> Real:
    """Write down the resistance of a block for each of its rows and return it [N]."""
    eccentric = name in _ECCENTRIC
    steps.add("A_nv", f"{name}: net area in shear", block.areas.net_shear, "mm2", "geometry")
    steps.add("A_nt", f"{name}: net area in tension", block.areas.net_tension, "mm2", "geometry")
    steps.add("k", f"{name}: rows that push on it", block.rows, "1", "geometry")
    resistance = block_tearing_resistance(
        block.areas,
        yield_strength=steel.yield_strength,
        tensile_strength=steel.tensile_strength,
        section_factor=factors.section,
        rupture_factor=factors.rupture,
        tension_share=0.5 if eccentric else 1.0,
    )
    tension = "0.5 f_u A_nt/γ_M2" if eccentric else "f_u A_nt/γ_M2"
    rule = "Eq. 3.10, eccentric" if eccentric else "Eq. 3.9"
    return steps.add(
        f"V_eff,Rd ({name})",
        f"[{tension} + f_y A_nv/(√3 γ_M0)]/k",
        np.divide(resistance, block.rows),
        "N",
        f"{_CLAUSE}, {rule}",
    )
