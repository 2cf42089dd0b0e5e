"""Sleeve and splice plates at the seam: yield, net section, block shear and bending."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import partial
from typing import Final, NamedTuple

import numpy as np

from jacketcheck.analysis.hoop_demand import add_hoop_force, add_row_force, add_rows
from jacketcheck.analysis.splice import (
    add_splice_strength,
    effective_splice_thickness,
    splice_eccentricity,
)
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.jacket.jacket_parts import Hole, Plate
from jacketcheck.limit_state import NoScatter, Scatter, limit_state
from jacketcheck.limit_states._us_codes import US_CODES, SteelCode
from jacketcheck.limit_states.editions import AASHTO
from jacketcheck.mechanics import block_shear, plate_strength
from jacketcheck.mechanics._arrays import Real
from jacketcheck.mechanics.block_shear import BlockShearAreas, SeamBlock
from jacketcheck.results import Result, Steps

__all__ = [
    "seam_block_shear",
    "sleeve_gross_yield",
    "sleeve_net_rupture",
    "splice_gross_yield",
    "splice_net_rupture",
]

_SEAM: Final = "seam, per height"
_ONE_SIDED: Final = (
    "plates outside only: the hoop force bends them, and all of the couple is taken by the plate "
    "(engineering judgement, lower bound); plates on both sides avoid it"
)


@limit_state(
    "sleeve-gross-yield",
    title="Gross yield of the sleeve at the seam",
    monotonic={"sleeve.steel.yield_strength": 0},
    effort="closed-form",
    scatter=NoScatter(
        "hoop-dilation and hoop-clamping count every sample that exceeds it",
    ),
)
def sleeve_gross_yield(jacket: Jacket) -> list[Result]:
    """Yield of the sleeve's gross section under the seam force."""
    return [_sleeve_yield(jacket, code) for code in US_CODES]


def _sleeve_yield(jacket: Jacket, code: SteelCode) -> Result:
    steps, sleeve = Steps(), jacket.sleeve
    clause = f"{code.name} {code.yield_clause}"
    demand = add_hoop_force(jacket, steps)
    steps.figure("F_y", sleeve.steel.name, sleeve.steel, "yield_strength", "MPa")
    steps.add("t", "sleeve", sleeve.thickness, "mm", "input sleeve.thickness")
    nominal = plate_strength.gross_yield_strength(
        sleeve.steel.yield_strength, gross_area=sleeve.thickness
    )
    steps.add("R_n", "F_y t", nominal, "N/mm", clause)
    capacity = _factored(steps, nominal, code, code.tension_yield, unit="N/mm", clause=clause)
    return Result("Gross yield of the sleeve at the seam", _SEAM, demand, capacity, "N/mm", clause,
                  steps.lines, rule=f"{code.key}-gross-yield",
                  resistance_factor=code.tension_yield)  # fmt: skip


@limit_state(
    "sleeve-net-rupture",
    title="Net section of the sleeve at the bolts",
    effort="closed-form",
    scatter=Scatter(
        "hoop force exceeds the net section at the actual tensile strength",
        rules=("aisc-net-rupture",),
        model="bolted-plate",
    ),
)
def sleeve_net_rupture(jacket: Jacket) -> list[Result]:
    """Rupture of the sleeve along the bolt line farthest from the seam, where it carries all."""
    return [_sleeve_net(jacket, code) for code in US_CODES]


def _sleeve_net(jacket: Jacket, code: SteelCode) -> Result:
    steps, sleeve = Steps(), jacket.sleeve
    clause = f"{code.name} {code.rupture_clause}"
    demand = add_hoop_force(jacket, steps)
    steps.figure("F_u", sleeve.steel.name, sleeve.steel, "tensile_strength", "MPa")
    steps.add("t", "sleeve", sleeve.thickness, "mm", "input sleeve.thickness")
    ratio = _add_net_ratio(jacket, steps, code, splice_plate=False)
    factor = _add_hole_factor(jacket, steps, code)
    nominal = plate_strength.net_rupture_strength(
        sleeve.steel.tensile_strength,
        effective_net_area=ratio * sleeve.thickness,
        hole_factor=factor,
    )
    steps.add("R_n", "F_u t (A_e/A_g) R_p", nominal, "N/mm", clause)
    capacity = _factored(steps, nominal, code, code.rupture, unit="N/mm", clause=clause)
    return Result("Net section of the sleeve at the bolts", _SEAM, demand, capacity, "N/mm",
                  clause, steps.lines, rule=f"{code.key}-net-rupture",
                  resistance_factor=code.rupture)  # fmt: skip


@limit_state(
    "splice-gross-yield",
    title="Yield of the splice plates over the seam",
    effort="closed-form",
    scatter=Scatter(
        "hoop force, with the bending of one-sided plates, exceeds the gross section "
        "at the actual yield strength",
        rules=("aisc-gross-yield",),
        model="bolted-plate",
    ),
)
def splice_gross_yield(jacket: Jacket) -> list[Result]:
    """Yield of the splice plates' gross section over the seam, with their bending if one-sided."""
    return [_splice(jacket, code, rupture=False) for code in US_CODES]


@limit_state(
    "splice-net-rupture",
    title="Net section of the splice plates",
    effort="closed-form",
    scatter=Scatter(
        "hoop force, with the bending of one-sided plates, exceeds the net section "
        "at the actual tensile strength",
        rules=("aisc-net-rupture",),
        model="bolted-plate",
    ),
)
def splice_net_rupture(jacket: Jacket) -> list[Result]:
    """Rupture of the splice plates through the bolt line next to the seam."""
    return [_splice(jacket, code, rupture=True) for code in US_CODES]


def _splice(jacket: Jacket, code: SteelCode, *, rupture: bool) -> Result:
    steps = Steps()
    clause = f"{code.name} {code.rupture_clause if rupture else code.yield_clause}"
    demand = add_hoop_force(jacket, steps)
    stress = _add_plate_stress(jacket, steps, code, rupture=rupture)
    nominal = add_splice_strength(jacket, steps, stress=stress, symbol="R_n", clause=clause)
    factor = code.rupture if rupture else code.tension_yield
    capacity = _factored(steps, nominal, code, factor, unit="N/mm", clause=clause)
    title = (
        "Net section of the splice plates"
        if rupture
        else "Yield of the splice plates over the seam"
    )
    one_sided = np.any(np.greater(splice_eccentricity(jacket), 0.0))
    notes = (_ONE_SIDED,) if one_sided else ()
    rule = f"{code.key}-{'net-rupture' if rupture else 'gross-yield'}"
    return Result(title, _SEAM, demand, capacity, "N/mm", clause, steps.lines, notes, rule=rule,
                  resistance_factor=factor)  # fmt: skip


def _add_plate_stress(jacket: Jacket, steps: Steps, code: SteelCode, *, rupture: bool) -> Real:
    """Write down the strength of the splice plates on their gross section and return it [MPa]."""
    steel = jacket.splice.steel
    if not rupture:
        steps.figure("F_y", steel.name, steel, "yield_strength", "MPa")
        return steps.add("f", "F_y", steel.yield_strength, "MPa", "gross section")
    steps.figure("F_u", steel.name, steel, "tensile_strength", "MPa")
    ratio = _add_net_ratio(jacket, steps, code, splice_plate=True)
    factor = _add_hole_factor(jacket, steps, code)
    stress = np.multiply(steel.tensile_strength, ratio) * factor
    return steps.add("f", "F_u (A_e/A_g) R_p", stress, "MPa", "net section, on the gross one")


@limit_state(
    "seam-block-shear",
    title="Block shear at the seam",
    effort="closed-form",
    scatter=Scatter(
        "hoop force on a row exceeds block shear by AISC with actual strengths, sleeve or plates",
        rules=("aisc-block-shear",),
        model="bolted-plate",
    ),
)
def seam_block_shear(jacket: Jacket) -> list[Result]:
    """Block shear of the sleeve and of each splice plate, per bolt row."""
    return [row for code in US_CODES for row in _block_rows(jacket, code)]


def _block_rows(jacket: Jacket, code: SteelCode) -> list[Result]:
    splice, bolts = jacket.splice, jacket.bolts
    plates = (
        ("sleeve", jacket.sleeve.steel, jacket.sleeve.thickness, bolts.seam_edge_distance,
         jacket.sleeve.hole),
        ("splice plates", splice.steel, effective_splice_thickness(jacket),
         bolts.plate_edge_distance, splice.hole),
    )  # fmt: skip
    return [_block_row(jacket, code, _TornPlate(*plate)) for plate in plates]


class _TornPlate(NamedTuple):
    """A plate: name, steel, thickness, distance of bolts to its vertical edge [mm], holes."""

    name: str
    steel: Plate
    thickness: Real
    edge_distance: Real
    hole: Hole


def _block_row(jacket: Jacket, code: SteelCode, plate: _TornPlate) -> Result:
    steps, steel = Steps(), plate.steel
    clause = f"{code.name} {code.block_clause}"
    demand = add_row_force(jacket, steps)
    steps.figure("F_y", steel.name, steel, "yield_strength", "MPa")
    steps.figure("F_u", steel.name, steel, "tensile_strength", "MPa")
    steps.add(
        "t",
        plate.name,
        plate.thickness,
        "mm",
        "input sleeve.thickness; splice.thickness, smallest over its share",
    )
    blocks = _blocks(jacket, code, plate)
    strength = _block_strength(jacket, code, steel)
    per_row = [np.divide(strength(block.areas), block.rows) for block in blocks.values()]
    for name, value in zip(blocks, per_row, strict=True):
        steps.add(f"R_n ({name})", "by the same rule, for this block alone", value, "N", clause)
    _add_weakest(steps, blocks, per_row)
    nominal = block_shear.seam_block_shear_strength(blocks, strength)
    if code.is_aashto:
        _add_hole_factor(jacket, steps, code)
        expression = "R_p (0.58 min(F_u A_nv, F_y A_gv) + F_u A_nt)/n_r"
    else:
        expression = "(0.60 min(F_u A_nv, F_y A_gv) + F_u A_nt)/n_r"
    steps.add("R_n", expression, nominal, "N", f"{clause}, per row; U_bs = 1")
    capacity = _factored(steps, nominal, code, code.block, unit="N", clause=clause)
    return Result("Block shear at the seam", plate.name, demand, capacity, "N", clause, steps.lines,
                  rule=f"{code.key}-block-shear", resistance_factor=code.block)  # fmt: skip


def _blocks(jacket: Jacket, code: SteelCode, plate: _TornPlate) -> dict[str, SeamBlock]:
    bolts = jacket.bolts
    return block_shear.seam_blocks(
        rows=bolts.rows,
        columns=bolts.columns,
        pitch=bolts.pitch,
        gauge=bolts.gauge,
        edge_distance=plate.edge_distance,
        end_distance=bolts.end_distance,
        thickness=plate.thickness,
        hole_along=plate.hole.along,
        hole_across=plate.hole.across,
        damage=code.hole_damage(jacket),
    )


def _block_strength(
    jacket: Jacket, code: SteelCode, steel: Plate
) -> Callable[[BlockShearAreas], Real]:
    if code.is_aashto:
        return partial(
            block_shear.aashto_block_shear_resistance,
            yield_strength=steel.yield_strength,
            tensile_strength=steel.tensile_strength,
            hole_factor=code.hole_factor(jacket),
        )
    return partial(
        block_shear.aisc_block_shear_strength,
        yield_strength=steel.yield_strength,
        tensile_strength=steel.tensile_strength,
    )


def _add_weakest(steps: Steps, blocks: dict[str, SeamBlock], per_row: Sequence[Real]) -> None:
    """Write down the areas of the block that is weakest for each of its rows."""
    weakest = np.argmin(np.stack(np.broadcast_arrays(*per_row)), axis=0)

    def chosen(values: Sequence[Real]) -> Real:
        picked: Real = np.choose(weakest, np.broadcast_arrays(*values, weakest)[:-1])
        return picked

    areas = [block.areas for block in blocks.values()]
    names = "; ".join(sorted({list(blocks)[index] for index in np.ravel(weakest)}))
    steps.add("block", "weakest for each of its rows", names, "", "geometry")
    steps.add("A_gv", "gross, in shear", chosen([one.gross_shear for one in areas]), "mm2",
              "geometry")  # fmt: skip
    steps.add("A_nv", "net, in shear", chosen([one.net_shear for one in areas]), "mm2", "geometry")
    steps.add("A_nt", "net, in tension", chosen([one.net_tension for one in areas]), "mm2",
              "geometry")  # fmt: skip
    rows = chosen([block.rows for block in blocks.values()])
    steps.add("n_r", "rows in the block", rows, "1", "geometry")


def _factored(
    steps: Steps, nominal: Real, code: SteelCode, factor: float, *, unit: str, clause: str
) -> Real:
    steps.add("φ", "resistance factor", factor, "1", code.factor_source(clause))
    return steps.add("φR_n", "φ R_n", np.multiply(factor, nominal), unit, clause)


def _add_hole_factor(jacket: Jacket, steps: Steps, code: SteelCode) -> float:
    making = jacket.bolts.hole_making
    source = f"{code.name} {code.rupture_clause}"
    return steps.add("R_p", f"{making} holes", code.hole_factor(jacket), "1", source)


def _add_net_ratio(jacket: Jacket, steps: Steps, code: SteelCode, *, splice_plate: bool) -> Real:
    """Write down net over gross height of the weakest strip with one row and return it [-]."""
    bolts, hole = jacket.bolts, (jacket.splice if splice_plate else jacket.sleeve).hole
    add_rows(jacket, steps)
    strip = plate_strength.seam_strip_width(pitch=bolts.pitch, end_distance=bolts.end_distance)
    steps.add("h", "min(s, e_end + s/2)", strip, "mm", "geometry")
    steps.figure("h_c", f"{hole.kind} hole across the force", hole, "across", "mm")
    damage = steps.add("Δh", "damage allowance", code.hole_damage(jacket), "mm",
                       f"{code.name} {'6.8.3' if code.is_aashto else 'B4.3b'}")  # fmt: skip
    net = plate_strength.net_width(strip, hole_count=1, hole=hole.across, damage=damage)
    if splice_plate:
        net = plate_strength.effective_net_area(net, gross_area=strip)
    limit = " ≤ 0.85" if splice_plate else ""
    source = f"{AASHTO} 6.13.5.2" if splice_plate else "geometry"
    return steps.add("A_e/A_g", f"(h − h_c − Δh)/h{limit}", net / strip, "1", source)
