"""Strength of the seam bolts, and of the plates at their holes, once friction is overcome."""

from __future__ import annotations

import numpy as np

from jacketcheck.plugin import (
    Jacket,
    Real,
    Result,
    Steps,
    add_bolt_force,
    hoop_demand,
    splice_shares,
)
from jacketcheck_europe.editions import EN_1993_8
from jacketcheck_europe.limit_states._bolt_holes import (
    PlateAtBolts,
    add_bearing,
    add_bolt_shear,
    foreign_bolts,
    sleeve_at_bolts,
    splice_at_bolts,
)
from jacketcheck_europe.limit_states._rows import resistance_row
from jacketcheck_europe.partial_factors import PartialFactors

__all__ = ["seam_bolt_row", "seam_bolt_shear", "sleeve_bearing", "splice_bearing"]

_PLACE = "hardest-worked row"


def seam_bolt_shear(jacket: Jacket, factors: PartialFactors) -> list[Result]:
    """Shear of one bolt, in the plane that takes most."""
    steps = Steps()
    demand = add_bolt_force(jacket, steps)
    plane = add_bolt_shear(jacket, factors, steps)
    share = _add_plane(jacket, steps)
    capacity = steps.add("F_v", "F_v,Rd/k_p, for the whole bolt", plane / share, "N", "statics")
    return [
        resistance_row(
            "Shear of the seam bolts",
            _PLACE,
            steps,
            demand=demand,
            capacity=capacity,
            unit="N",
            clause=f"{EN_1993_8} 3.6.1, Table 3.4",
            factors=factors,
            notes=foreign_bolts(jacket),
            rule="bolt-shear",
            partial_factor=factors.rupture,
        )
    ]


def sleeve_bearing(jacket: Jacket, factors: PartialFactors) -> list[Result]:
    """Bearing of the sleeve at the weakest bolt of a row."""
    return [_bearing(jacket, sleeve_at_bolts(jacket), factors)]


def splice_bearing(jacket: Jacket, factors: PartialFactors) -> list[Result]:
    """Bearing of the splice plate that takes most for its thickness, at the weakest bolt."""
    return [_bearing(jacket, splice_at_bolts(jacket), factors)]


def _bearing(jacket: Jacket, plate: PlateAtBolts, factors: PartialFactors) -> Result:
    steps = Steps()
    demand = add_bolt_force(jacket, steps)
    found = add_bearing(jacket, plate, factors, steps)
    alone = np.less_equal(jacket.bolts.columns, 1)
    weakest = np.where(alone, found.end, np.minimum(found.end, found.inner))
    expression = "F_b,end" if np.all(alone) else "min(F_b,end, F_b,in)"
    capacity = steps.add("F_b,Rd", expression, weakest, "N",
                         f"{EN_1993_8} Table 3.2, category C: each bolt")  # fmt: skip
    return resistance_row(
        f"Bearing and tear-out of the {plate.name} at the bolts",
        _PLACE,
        steps,
        demand=demand,
        capacity=capacity,
        unit="N",
        clause=f"{EN_1993_8} 3.6.1, Table 3.4",
        factors=factors,
        notes=foreign_bolts(jacket),
        rule="bearing",
        partial_factor=factors.rupture,
    )


def seam_bolt_row(jacket: Jacket, factors: PartialFactors) -> list[Result]:
    """A row of bolts as a group of fasteners: bearing adds up where no bolt shears first."""
    steps, columns = Steps(), jacket.bolts.columns
    clause = f"{EN_1993_8} 3.7(1)"
    add_bolt_force(jacket, steps)
    demand = steps.add("N_row", "V n_c", np.multiply(hoop_demand(jacket).bolt_force, columns), "N",
                       "equilibrium of a half shell")  # fmt: skip
    plane = add_bolt_shear(jacket, factors, steps)
    share = _add_plane(jacket, steps)
    shear = steps.add("F_v", "F_v,Rd/k_p, for the whole bolt", plane / share, "N", "statics")
    smallest, largest, total = _row_bearing(jacket, factors, steps)
    each = "smaller of sleeve and plates at each bolt"
    steps.add("F_b,min", f"least, {each}", smallest, "N", clause)
    steps.add("F_b,max", f"greatest, {each}", largest, "N", clause)
    steps.add("ΣF_b", f"sum over the row, {each}", total, "N", clause)
    bearing_governs = np.greater_equal(shear, largest)
    group = np.where(bearing_governs, total, columns * np.minimum(shear, smallest))
    capacity = steps.add("F_row", "ΣF_b if F_v ≥ F_b,max, else n_c min(F_v, F_b,min)", group, "N",
                         clause)  # fmt: skip
    return [
        resistance_row(
            "Strength of a bolt row",
            _PLACE,
            steps,
            demand=demand,
            capacity=capacity,
            unit="N",
            clause=clause,
            factors=factors,
            notes=foreign_bolts(jacket),
            rule="bolt-row",
            partial_factor=factors.rupture,
        )
    ]


def _add_plane(jacket: Jacket, steps: Steps) -> Real:
    """Share of a bolt's force in the shear plane that takes most."""
    outside, inside = splice_shares(jacket)
    return steps.add("k_p", "share of a bolt's force in the harder-worked shear plane",
                     np.maximum(outside, inside), "1", "statics, no bending")  # fmt: skip


def _row_bearing(jacket: Jacket, factors: PartialFactors, steps: Steps) -> tuple[Real, Real, Real]:
    """Smallest, largest and summed bearing resistance of the bolts of a row [N].

    The sleeve tears towards the seam at the bolt nearest to it, a splice plate towards its own
    edge at the bolt farthest from it; with two columns or more these are different bolts.
    """
    columns = np.asarray(jacket.bolts.columns)
    sleeve = add_bearing(jacket, sleeve_at_bolts(jacket), factors, steps)
    plates = add_bearing(jacket, splice_at_bolts(jacket), factors, steps)
    single = np.minimum(sleeve.end, plates.end)
    nearest = np.minimum(sleeve.end, plates.inner)
    farthest = np.minimum(sleeve.inner, plates.end)
    between = np.minimum(sleeve.inner, plates.inner)
    # with two columns no bolt stands between two others
    inner = np.where(columns > 2, between, nearest)
    lowest = np.minimum(np.minimum(nearest, farthest), inner)
    highest = np.maximum(np.maximum(nearest, farthest), inner)
    several = nearest + farthest + (columns - 2.0) * between
    alone = columns < 2
    return (
        np.where(alone, single, lowest),
        np.where(alone, single, highest),
        np.where(alone, single, several),
    )
