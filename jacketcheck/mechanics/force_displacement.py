"""Lateral force against displacement of a column, from the moment-curvature of its hinge.

The column bends elastically and rotates in a plastic hinge of fixed length, at the footing or at
the top of a repair.  Shear deformation is left out: it is small in slender columns, and leaving
it out understates the displacement capacity.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from jacketcheck.errors import DomainError
from jacketcheck.mechanics._arrays import Floats, require_at_least, require_positive
from jacketcheck.mechanics.hinge_displacement import plastic_displacement, yield_displacement
from jacketcheck.mechanics.moment_curvature import MomentCurvature
from jacketcheck.mechanics.section_limits import first_yield, ultimate_point

__all__ = ["ForceDisplacement", "force_displacement"]


@dataclass(frozen=True, eq=False)
class ForceDisplacement:
    """Envelope of a column's response, from rest to the ultimate curvature of its hinge.

    Attributes
    ----------
    displacement
        Displacement of the column's top relative to the footing [mm], shape (n,).
    force
        Lateral force [N], less what the axial load takes up by its offset if P-Delta is counted.
    curvature, moment
        Curvature [1/mm] and moment [N mm] in the hinge.
    """

    displacement: Floats
    force: Floats
    curvature: Floats
    moment: Floats

    @property
    def ultimate_displacement(self) -> float:
        """Displacement at the ultimate curvature [mm]."""
        return float(self.displacement[-1])

    @property
    def peak_force(self) -> float:
        """Largest lateral force [N]."""
        return float(np.max(self.force))


def force_displacement(
    response: MomentCurvature,
    *,
    clear_height: float,
    hinge_length: float,
    repair_height: float = 0.0,
    double_curvature: bool = False,
    stiffness_ratio: float = 0.0,
    strain_penetration: float = 0.0,
    p_delta: bool = True,
) -> ForceDisplacement:
    """Envelope of lateral force and displacement of a column.

    Parameters
    ----------
    response
        Moment-curvature response of the section in the hinge.
    clear_height
        Footing to the lateral force of a cantilever, or to the soffit of the cap in double
        curvature [mm], above `repair_height`.
    hinge_length
        Plastic hinge length [mm], above zero; see `hinge_length`.
    repair_height
        Footing to the relocated hinge [mm]; zero (default) for a hinge at the footing.
    double_curvature
        Whether a second hinge with the same section forms at the top.
    stiffness_ratio
        Flexural stiffness of the column over that of the repaired part [-]; zero (default) takes
        the repaired part as rigid.
    strain_penetration
        Length by which the elastic curvature extends beyond each hinge [mm]; zero by default.
    p_delta
        Whether the axial load's moment on the displaced column is deducted from the force.

    Returns
    -------
    ForceDisplacement
        The envelope, which starts at rest.

    Raises
    ------
    DomainError
        If a length lies outside its range, or the section does not yield before it fails.

    Notes
    -----
    With the span ``L'`` from a hinge to the point of contraflexure, first yield
    ``(phi_y, M_y)`` and ``phi_e = phi_y M / M_y``:
    up to first yield ``D = phi (L' + Lsp)**2 / 3``, beyond it
    ``D = phi_e (L' + Lsp)**2 / 3 + (phi - phi_e) Lp (L' - Lp / 2)``, for each hinge; the repaired
    part adds elastic bending if it is not rigid.  The force is ``(n M - P D) / (n L')`` with
    ``n`` hinges.

    References
    ----------
    Priestley, Calvi and Kowalsky, Displacement-Based Seismic Design of Structures (2007),
    sec. 4.2.7 and 4.2.8; lever of the hinge as in Caltrans SDC 1.4 (2006), Eq. 3.3.

    Examples
    --------
    >>> from jacketcheck.mechanics.bar_steel import BarSteel
    >>> from jacketcheck.mechanics.concrete_law import popovics_concrete_law
    >>> from jacketcheck.mechanics.moment_curvature import moment_curvature
    >>> from jacketcheck.mechanics.section import BarGroup, CircularSection, ConcreteZone
    >>> core = popovics_concrete_law(
    ...     peak_stress=47.0, peak_strain=0.0077, elastic_modulus=27e3, ultimate_strain=0.02)
    >>> steel = BarSteel(469.0, 655.0, 0.0115, 0.09, 200e3)
    >>> bars = BarGroup.ring(20, radius=420.0, area=645.0, steel=steel)
    >>> section = CircularSection((ConcreteZone("core", 1000.0, core),), (bars,))
    >>> response = moment_curvature(section, axial_load=2e6)
    >>> envelope = force_displacement(
    ...     response, clear_height=6000.0, hinge_length=700.0, repair_height=1000.0)
    >>> round(envelope.peak_force / 1e3), round(envelope.ultimate_displacement)
    (584, 312)
    """
    require_positive(clear_height=clear_height, hinge_length=hinge_length)
    require_at_least(0.0, repair_height=repair_height)
    hinges = 2 if double_curvature else 1
    span = (clear_height - repair_height) / hinges
    start, ultimate = first_yield(response), ultimate_point(response)
    if not start.curvature < ultimate.curvature:
        raise DomainError("first yield", start.curvature, f"below {ultimate.curvature:g}")
    inside = response.curvature < ultimate.curvature
    curvature = np.concatenate([[0.0], response.curvature[inside], [ultimate.curvature]])
    moment = np.concatenate([[0.0], response.moment[inside], [ultimate.moment]])
    elastic = np.minimum(curvature, start.curvature * moment / start.moment)
    elastic[curvature <= start.curvature] = curvature[curvature <= start.curvature]
    flexible = np.asarray(
        yield_displacement(1.0, shear_span=span, strain_penetration=strain_penetration)
    )
    repaired = yield_displacement(
        1.0,
        shear_span=span + repair_height,
        repair_height=repair_height,
        stiffness_ratio=stiffness_ratio,
    ) - yield_displacement(1.0, shear_span=span)
    plastic = plastic_displacement(
        hinge_length * (curvature - elastic), shear_span=span, hinge_length=hinge_length
    )
    displacement = hinges * (elastic * flexible + plastic) + elastic * repaired
    offset = response.axial_load * displacement if p_delta else 0.0
    force = (hinges * moment - offset) / (hinges * span)
    return ForceDisplacement(displacement, force, curvature, moment)
