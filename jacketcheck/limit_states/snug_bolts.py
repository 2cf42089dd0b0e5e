"""What snug-tight bolts with a measured tension would probably hold, as any code reports it."""

from __future__ import annotations

from jacketcheck.analysis.hoop_demand import add_bolt_force
from jacketcheck.analysis.splice import effective_planes
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics._arrays import Real
from jacketcheck.mechanics.slip import probable_slip_load
from jacketcheck.results import Kind, Result, Steps

__all__ = ["probable_slip_row"]


def probable_slip_row(
    jacket: Jacket, *, slip_coefficient: Real, surface: str, source: str, note: str
) -> Result:
    """Probable slip load of snug bolts by their measured tension; never a design value.

    Parameters
    ----------
    jacket
        One design or many; without a measured tension the load is zero.
    slip_coefficient
        Mean slip coefficient of the faying surfaces [-].
    surface, source
        What surface that is, and where the coefficient stands.
    note
        What the code says of snug bolts.
    """
    steps, bolts, planes = Steps(), jacket.bolts, effective_planes(jacket)
    demand = add_bolt_force(jacket, steps)
    tension = 0.0 if bolts.measured_tension is None else bolts.measured_tension
    steps.add("T", "measured", tension, "N", "input bolts.measured_tension")
    steps.add("μ", surface, slip_coefficient, "1", source)
    steps.add("n_s", "slip planes, by the largest share", planes, "1", "statics of the plates")
    load = probable_slip_load(slip_coefficient, bolt_tension=tension, slip_planes=planes)
    steps.add("P_slip", "μ T n_s", load, "N", "friction; a probable value, not a resistance")
    return Result(
        title="Probable slip load of snug bolts",
        location="hardest-worked row",
        demand=demand,
        capacity=load,
        unit="N",
        clause="no clause: tension of snug bolts is not controlled",
        steps=steps.lines,
        notes=(note,),
        kind=Kind.REPORTED,
    )
