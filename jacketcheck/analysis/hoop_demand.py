"""Hoop force that the sleeve and its seams must carry."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from jacketcheck.analysis.clamping import clamping_need
from jacketcheck.analysis.dilation import dilation
from jacketcheck.analysis.lap import lap_hoop_force
from jacketcheck.analysis.memo import remembered
from jacketcheck.analysis.shear import add_shear_force, shear_hoop_force
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics._arrays import Real
from jacketcheck.mechanics.hoop import bolt_hoop_force, hoop_force
from jacketcheck.results import Steps

__all__ = [
    "HoopDemand",
    "add_bolt_force",
    "add_hoop_force",
    "add_radii",
    "add_row_force",
    "add_rows",
    "hoop_demand",
    "other_hoop_force",
]

_EQUILIBRIUM = "equilibrium of a half shell"


@dataclass(frozen=True, eq=False)
class HoopDemand:
    """Hoop demand on the sleeve.

    Attributes
    ----------
    dilation_pressure
        From the dilating core, the sleeve with its expected yield strength [MPa].
    clamping_pressure
        That the fractured bars need, carried to the inner face of the sleeve [MPa].
    lap_force
        From the laps of added bars and column bars [N/mm].
    shear_force
        From the shear of the column inside the repair [N/mm].
    force
        Hoop force at each seam: the larger of the first two, the laps' and the shear's [N/mm].
    bolt_force
        Of it, on the hardest-worked bolt [N].
    """

    dilation_pressure: Real
    clamping_pressure: Real
    lap_force: Real
    shear_force: Real
    force: Real
    bolt_force: Real

    @property
    def pressure_force(self) -> Real:
        """Hoop force of the governing pressure alone [N/mm]."""
        return self.force - self.lap_force - self.shear_force


@remembered
def hoop_demand(jacket: Jacket) -> HoopDemand:
    """Hoop force that the sleeve and its seams must carry.

    Dilation and clamping are the same pressure asked for two reasons, so that the larger counts;
    the laps' splitting force comes on top, and the tension by which the sleeve carries shear.
    """
    radius = jacket.sleeve.inner_radius
    from_dilation = dilation(jacket).expected.sleeve_pressure
    need = clamping_need(jacket).largest_core_pressure
    from_clamping = np.multiply(need, jacket.column.radius) / radius
    from_laps = lap_hoop_force(jacket)
    from_shear = shear_hoop_force(jacket)
    pressure = np.maximum(from_dilation, from_clamping)
    force = hoop_force(pressure, inner_radius=radius) + np.add(from_laps, from_shear)
    return HoopDemand(
        dilation_pressure=from_dilation,
        clamping_pressure=from_clamping,
        lap_force=from_laps,
        shear_force=from_shear,
        force=force,
        bolt_force=bolt_hoop_force(
            force, pitch=jacket.bolts.tributary_height, bolt_columns=jacket.bolts.columns
        ),
    )


def other_hoop_force(jacket: Jacket) -> Real:
    """Hoop force that does not press on the core: of laps and of shear [N/mm]."""
    return np.add(lap_hoop_force(jacket), shear_hoop_force(jacket))


def add_radii(jacket: Jacket, steps: Steps) -> None:
    """Write down the radii between which pressure is carried through the grout."""
    sleeve, column = jacket.sleeve, jacket.column
    steps.add("D_i", "inside of the sleeve", sleeve.inner_diameter, "mm",
              "input sleeve.inner_diameter")  # fmt: skip
    steps.add("R_i", "D_i/2", sleeve.inner_radius, "mm", "geometry")
    steps.add("D", "column", column.diameter, "mm", "input column.diameter")
    steps.add("R_c", "D/2", column.radius, "mm", "geometry")


def add_hoop_force(jacket: Jacket, steps: Steps) -> Real:
    """Write down how the hoop force comes about and return it [N/mm]."""
    demand = hoop_demand(jacket)
    add_radii(jacket, steps)
    steps.add("p_dil", "dilation, expected yield", demand.dilation_pressure, "MPa",
              "as limit state hoop-dilation, with the sleeve's expected yield")  # fmt: skip
    steps.add("p_c", "needed on the core", clamping_need(jacket).largest_core_pressure, "MPa",
              "limit state clamping")  # fmt: skip
    steps.add("p_cl", "p_c R_c/R_i", demand.clamping_pressure, "MPa", "cracked grout")
    steps.add("N_lap", "non-contact laps", demand.lap_force, "N/mm", "limit state added-bar-lap")
    add_shear_force(jacket, steps)
    return steps.add("N", "max(p_dil, p_cl) R_i + N_lap + N_V", demand.force, "N/mm", _EQUILIBRIUM)


def add_bolt_force(jacket: Jacket, steps: Steps) -> Real:
    """Write down the force on the hardest-worked bolt and return it [N]."""
    add_hoop_force(jacket, steps)
    bolts = jacket.bolts
    add_rows(jacket, steps)
    steps.add("h_t", "max(s, e_end + s/2)", bolts.tributary_height, "mm", "tributary height")
    steps.add("n_c", "columns", bolts.columns, "1", "input bolts.columns")
    return steps.add("V", "N h_t/n_c", hoop_demand(jacket).bolt_force, "N", _EQUILIBRIUM)


def add_row_force(jacket: Jacket, steps: Steps) -> Real:
    """Write down the hoop force on the hardest-worked row of bolts and return it [N]."""
    add_bolt_force(jacket, steps)
    force = hoop_demand(jacket).bolt_force * jacket.bolts.columns
    return steps.add("N_row", "V n_c", force, "N", _EQUILIBRIUM)


def add_rows(jacket: Jacket, steps: Steps) -> None:
    """Write down the spacing of the bolt rows and their distance to the ends."""
    bolts = jacket.bolts
    steps.add("s", "spacing of the rows", bolts.pitch, "mm", "input bolts.pitch")
    steps.add(
        "e_end",
        "end distance",
        bolts.end_distance,
        "mm",
        "input bolts.end_distance, or bolts.rows and repair.height",
    )
