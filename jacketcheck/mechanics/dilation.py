"""How far a passively confined core dilates, and the pressure that this calls up.

The axial strain of the core is given. Its lateral strain follows from a secant dilation model on
Mander's curve at the current pressure; the pressure follows from the lateral strain through the
restraint. Both must agree, and the equilibrium is found by a bracketed iteration on all designs at
once. The axial strain at which the sleeve reaches a given hoop strain needs no iteration.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from jacketcheck.mechanics._arrays import Floats, Real, reject, require_at_least
from jacketcheck.mechanics._bracketed_root import bracketed_roots
from jacketcheck.mechanics.confinement import PRESSURE_RATIO_LIMIT
from jacketcheck.mechanics.core_concrete import CoreConcrete
from jacketcheck.mechanics.restraint import Restraint

__all__ = [
    "DilationEquilibrium",
    "axial_strain_at_hoop_strain",
    "axial_strain_at_sleeve_yield",
    "dilation_equilibrium",
]

_STRAIN_TOLERANCE: Final = 1.0e-12


@dataclass(frozen=True, eq=False)
class DilationEquilibrium:
    """State of core, sleeve and column hoops at a given axial strain; attributes share one shape.

    Attributes
    ----------
    axial_strain
        Axial strain of the core that was asked for [-].
    lateral_strain
        Lateral strain of the core [-].
    core_pressure
        Pressure on the core [MPa], sleeve and column hoops together.
    sleeve_pressure
        Pressure on the inner face of the sleeve [MPa], at most its yield pressure.
    column_hoop_pressure
        Effective pressure of the column's own hoops [MPa].
    sleeve_hoop_strain
        Hoop strain of the sleeve [-]: ``p R_i / (E t)`` and, beyond yield, the plastic part.
    sleeve_plastic_strain
        The part of it beyond yield [-].
    concrete_stress
        Axial stress of the core [MPa].
    sleeve_engaged
        Whether the play has closed.
    sleeve_yielded
        Whether the sleeve has yielded.
    column_hoops_yielded
        Whether the column's own hoops have yielded.
    axial_strain_at_sleeve_yield
        Axial strain at which the sleeve first yields [-], whatever was asked for.
    """

    axial_strain: Real
    lateral_strain: Real
    core_pressure: Real
    sleeve_pressure: Real
    column_hoop_pressure: Real
    sleeve_hoop_strain: Real
    sleeve_plastic_strain: Real
    concrete_stress: Real
    sleeve_engaged: NDArray[np.bool_]
    sleeve_yielded: NDArray[np.bool_]
    column_hoops_yielded: NDArray[np.bool_]
    axial_strain_at_sleeve_yield: Real


def _require_pressure_in_range(core: CoreConcrete, restraint: Restraint) -> None:
    """Reject a restraint so strong that Mander's curve ends before it yields."""
    ratio = np.asarray(np.divide(restraint.largest_core_pressure, core.unconfined_strength))
    allowed = f"at most {PRESSURE_RATIO_LIMIT:.3f} (core pressure at yield over f'co)"
    reject(ratio > PRESSURE_RATIO_LIMIT, allowed, pressure_ratio=ratio)


def _lateral_strain(axial_strain: Real, core: CoreConcrete, restraint: Restraint) -> Floats:
    """Lateral strain at which core and restraint agree: the first one on the way out from zero.

    Inside each stretch between engagement of the sleeve and the two yield points the residual is
    smooth; the stretch is found first, then the root in it.
    """

    def residual(lateral_strain: Real) -> Floats:
        pressure = restraint.core_pressure(lateral_strain)
        return np.asarray(core.lateral_strain(axial_strain, pressure=pressure) - lateral_strain)

    corners = np.sort(
        np.stack(
            np.broadcast_arrays(
                restraint.engagement_lateral_strain,
                restraint.sleeve_yield_lateral_strain,
                restraint.column_hoop_yield_strain,
            )
        ),
        axis=0,
    )
    beyond = core.lateral_strain(axial_strain, pressure=restraint.largest_core_pressure)
    upper = np.asarray(np.maximum(beyond, corners[-1]))
    lower = np.zeros_like(upper)
    open_ended = np.ones(upper.shape, dtype=bool)
    for corner in corners:
        outward = residual(corner) > 0.0
        upper = np.where(open_ended & ~outward, corner, upper)
        lower = np.where(open_ended & outward, corner, lower)
        open_ended &= outward
    return bracketed_roots(residual, lower, upper, tolerance=_STRAIN_TOLERANCE)


def dilation_equilibrium(
    axial_strain: Real, *, core: CoreConcrete, restraint: Restraint
) -> DilationEquilibrium:
    """Pressure and hoop strain that an axially strained core calls up.

    Parameters
    ----------
    axial_strain
        Axial strain of the core [-], compression positive, at least zero; scalar or array.
    core
        Concrete of the core.
    restraint
        Sleeve and column hoops around it.

    Returns
    -------
    DilationEquilibrium
        State of core and restraint, broadcast over axial strain, core and restraint.

    Raises
    ------
    DomainError
        If the strain is negative or not finite, or the restraint is so strong that its pressure
        at yield exceeds `jacketcheck.mechanics.confinement.PRESSURE_RATIO_LIMIT` times the
        unconfined strength.

    Notes
    -----
    Solved for the lateral strain ``e``: ``eps_l(eps_c, p(e)) = e``, where ``p`` is the restraint's
    pressure at ``e``, between zero and yield. At zero strain the core dilates more than the
    restraint has moved, at the upper end less, so a root is always bracketed; it is found to a
    strain of 1e-12. Monotonic loading, evenly strained core.

    Doubling the thickness cuts the hoop strain of an elastic sleeve by about a fifth only, because
    the core pushes harder against a stiffer sleeve: by less with stiff seams, by up to a quarter
    where seams and grout give way as well. The yield strain of the sleeve therefore matters as much
    as its thickness.

    Well below the strain at the unconfined peak a stiffer sleeve may even be strained a little
    more, because Mander's curve rises more slowly under pressure, and a very stiff one can have
    several equilibria: the one with the smallest lateral strain is returned. The sleeve is far from
    yield there.

    References
    ----------
    Spoelstra and Monti, FRP-Confined Concrete Model, J. Compos. Constr. 3(3) (1999), 143-150;
    Mander, Priestley and Park, J. Struct. Eng. 114(8) (1988), 1804-1826.

    Examples
    --------
    >>> from jacketcheck.mechanics.core_concrete import CoreConcrete
    >>> from jacketcheck.mechanics.restraint import Restraint
    >>> core = CoreConcrete(unconfined_strength=30.0, elastic_modulus=27386.0)
    >>> sleeve = Restraint(
    ...     inner_radius=600.0, core_radius=600.0, radial_compliance=0.3, sleeve_compliance=0.3,
    ...     yield_pressure=2.5)
    >>> state = dilation_equilibrium(0.002, core=core, restraint=sleeve)
    >>> round(float(state.sleeve_pressure), 3), bool(state.sleeve_yielded)
    (1.659, False)
    """
    require_at_least(0.0, axial_strain=axial_strain)
    _require_pressure_in_range(core, restraint)
    lateral = _lateral_strain(axial_strain, core, restraint)[()]
    at_yield = axial_strain_at_sleeve_yield(core=core, restraint=restraint)
    return DilationEquilibrium(
        axial_strain=np.broadcast_to(axial_strain, np.shape(lateral))[()],
        lateral_strain=lateral,
        core_pressure=restraint.core_pressure(lateral),
        sleeve_pressure=restraint.sleeve_pressure(lateral),
        column_hoop_pressure=restraint.column_hoop_pressure(lateral),
        sleeve_hoop_strain=restraint.sleeve_hoop_strain(lateral),
        sleeve_plastic_strain=restraint.sleeve_plastic_strain(lateral),
        concrete_stress=core.axial_stress(axial_strain, lateral_strain=lateral),
        sleeve_engaged=lateral > restraint.engagement_lateral_strain,
        sleeve_yielded=lateral >= restraint.sleeve_yield_lateral_strain,
        column_hoops_yielded=_hoops_yielded(lateral, restraint),
        axial_strain_at_sleeve_yield=np.broadcast_to(at_yield, np.shape(lateral))[()],
    )


def _hoops_yielded(lateral_strain: Floats, restraint: Restraint) -> NDArray[np.bool_]:
    """Whether the column's own hoops have yielded; never where they are not counted."""
    counted = np.greater(restraint.column_hoop_stiffness, 0.0)
    return counted & np.greater_equal(lateral_strain, restraint.column_hoop_yield_strain)


def axial_strain_at_hoop_strain(
    hoop_strain: Real, *, core: CoreConcrete, restraint: Restraint
) -> Real:
    """Axial strain of the core at which the sleeve reaches a given hoop strain.

    Parameters
    ----------
    hoop_strain
        Hoop strain of the sleeve [-], at least zero, beyond yield too; scalar or array.
    core
        Concrete of the core.
    restraint
        Sleeve and column hoops around it.

    Returns
    -------
    Real
        Axial strain [-], broadcast over hoop strain, core and restraint.

    Raises
    ------
    DomainError
        If the hoop strain is negative or not finite, or the restraint is out of range as in
        `dilation_equilibrium`.

    Notes
    -----
    A hoop strain fixes movement and pressure; the dilation model then gives the axial strain in
    closed form: ``eps_c = eps_cc [2 beta (r - 1) eps_l]**(1/r)``.

    References
    ----------
    As `dilation_equilibrium`.

    Examples
    --------
    >>> from jacketcheck.mechanics.core_concrete import CoreConcrete
    >>> from jacketcheck.mechanics.restraint import Restraint
    >>> core = CoreConcrete(unconfined_strength=30.0, elastic_modulus=27386.0)
    >>> sleeve = Restraint(
    ...     inner_radius=600.0, core_radius=600.0, radial_compliance=0.3, sleeve_compliance=0.3,
    ...     yield_pressure=2.5)
    >>> round(float(axial_strain_at_hoop_strain(0.001, core=core, restraint=sleeve)), 5)
    0.00235
    """
    require_at_least(0.0, hoop_strain=hoop_strain)
    _require_pressure_in_range(core, restraint)
    lateral = restraint.lateral_strain_at_hoop_strain(hoop_strain)
    return core.axial_strain(lateral, pressure=restraint.core_pressure(lateral))


def axial_strain_at_sleeve_yield(*, core: CoreConcrete, restraint: Restraint) -> Real:
    """Axial strain of the core at which the sleeve first yields in hoop tension.

    Parameters
    ----------
    core
        Concrete of the core.
    restraint
        Sleeve and column hoops around it.

    Returns
    -------
    Real
        Axial strain [-], broadcast over core and restraint.

    Raises
    ------
    DomainError
        If the restraint is out of range as in `dilation_equilibrium`.

    References
    ----------
    `axial_strain_at_hoop_strain` at the yield strain.

    Examples
    --------
    >>> from jacketcheck.mechanics.core_concrete import CoreConcrete
    >>> from jacketcheck.mechanics.restraint import Restraint
    >>> core = CoreConcrete(unconfined_strength=30.0, elastic_modulus=27386.0)
    >>> sleeve = Restraint(
    ...     inner_radius=600.0, core_radius=600.0, radial_compliance=0.3, sleeve_compliance=0.3,
    ...     yield_pressure=2.5)
    >>> round(float(axial_strain_at_sleeve_yield(core=core, restraint=sleeve)), 5)
    0.00288
    """
    return axial_strain_at_hoop_strain(restraint.yield_strain, core=core, restraint=restraint)
