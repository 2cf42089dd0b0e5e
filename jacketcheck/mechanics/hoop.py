"""Hoop action of the sleeve: forces, stresses and the compliance that confines the core.

The sleeve is a thin shell of two halves joined at two seams. An internal pressure stretches the
sleeve, opens the seams and squeezes the grout; how far the face of the core moves for each unit
of pressure is the radial compliance, which dilation, clamping and retained pressure all share.
Pressures are those at the inner face of the sleeve unless a name says core.
"""

from __future__ import annotations

import numpy as np

from jacketcheck.mechanics._arrays import (
    Real,
    require_at_least,
    require_positive,
    require_positive_or_infinite,
)

__all__ = [
    "bolt_hoop_force",
    "core_pressure",
    "grout_compliance",
    "hoop_force",
    "hoop_stress",
    "pressure_for_hoop_force",
    "radial_compliance",
    "seam_compliance",
    "sleeve_compliance",
    "yield_pressure",
]


def hoop_force(pressure: Real, *, inner_radius: Real) -> Real:
    """Hoop force that each of the two seams carries, per unit of height.

    Parameters
    ----------
    pressure
        Pressure on the inner face of the sleeve [MPa], at least zero; scalar or array.
    inner_radius
        Inner radius of the sleeve [mm], above zero.

    Returns
    -------
    Real
        Hoop force at one seam [N/mm], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    Equilibrium of a half shell: ``N = p R_i``. Exact for any wall thickness.

    References
    ----------
    Equilibrium; no source needed.

    Examples
    --------
    >>> float(hoop_force(2.0, inner_radius=600.0))
    1200.0
    """
    require_at_least(0.0, pressure=pressure)
    require_positive(inner_radius=inner_radius)
    return np.multiply(pressure, inner_radius)


def pressure_for_hoop_force(hoop_force: Real, *, inner_radius: Real) -> Real:
    """Pressure at which the seams carry a given hoop force; the inverse of `hoop_force`.

    Parameters
    ----------
    hoop_force
        Hoop force at one seam [N/mm], at least zero, such as the slip resistance of one bolt
        group divided by its tributary height.
    inner_radius
        Inner radius of the sleeve [mm], above zero.

    Returns
    -------
    Real
        Pressure on the inner face of the sleeve [MPa].

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    References
    ----------
    Equilibrium of a half shell.

    Examples
    --------
    >>> float(pressure_for_hoop_force(1200.0, inner_radius=600.0))
    2.0
    """
    require_at_least(0.0, hoop_force=hoop_force)
    require_positive(inner_radius=inner_radius)
    return np.divide(hoop_force, inner_radius)


def hoop_stress(pressure: Real, *, inner_radius: Real, thickness: Real) -> Real:
    """Mean hoop stress on the gross section of the sleeve.

    Parameters
    ----------
    pressure
        Pressure on the inner face of the sleeve [MPa], at least zero; scalar or array.
    inner_radius
        Inner radius of the sleeve [mm], above zero.
    thickness
        Wall thickness of the sleeve [mm], above zero.

    Returns
    -------
    Real
        Hoop stress [MPa], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``sigma = p R_i / t``. With the inner radius this is the exact mean over the wall; the peak at
    the inner face is higher by about ``t / (2 R_i)``, below 2% for any practical sleeve.

    References
    ----------
    Thin-cylinder theory; Timoshenko and Goodier, Theory of Elasticity, 3rd ed. (1970), for the
    thick-wall (Lamé) solution behind the error estimate.

    Examples
    --------
    >>> float(hoop_stress(2.0, inner_radius=600.0, thickness=10.0))
    120.0
    """
    require_positive(thickness=thickness)
    return np.divide(hoop_force(pressure, inner_radius=inner_radius), thickness)


def yield_pressure(yield_strength: Real, *, thickness: Real, inner_radius: Real) -> Real:
    """Pressure at which the gross section of the sleeve yields in hoop tension.

    Parameters
    ----------
    yield_strength
        Yield strength of the sleeve [MPa], above zero; scalar or array.
    thickness
        Wall thickness [mm], above zero.
    inner_radius
        Inner radius of the sleeve [mm], above zero.

    Returns
    -------
    Real
        Pressure on the inner face of the sleeve [MPa].

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``p_y = f_y t / R_i``. The bolted seam may yield, rupture or slip earlier; those limits are
    checked apart.

    References
    ----------
    Thin-cylinder theory.

    Examples
    --------
    >>> float(yield_pressure(250.0, thickness=6.0, inner_radius=600.0))
    2.5
    """
    require_positive(yield_strength=yield_strength, thickness=thickness, inner_radius=inner_radius)
    return np.multiply(yield_strength, thickness) / inner_radius


def sleeve_compliance(*, inner_radius: Real, thickness: Real, elastic_modulus: Real) -> Real:
    """Radial movement of the sleeve for each unit of pressure, from stretch of the steel alone.

    Parameters
    ----------
    inner_radius
        Inner radius of the sleeve [mm], above zero.
    thickness
        Wall thickness [mm], above zero.
    elastic_modulus
        Elastic modulus of the sleeve [MPa], above zero.

    Returns
    -------
    Real
        Radial compliance ``R_i**2 / (E t)`` [mm/MPa].

    Raises
    ------
    DomainError
        If an argument is not finite and above zero.

    Notes
    -----
    The thick-wall (Lamé) solution moves more at the inner face, by ``(0.5 + nu) t / R_i`` of this:
    some 1% for a practical sleeve.

    References
    ----------
    Thin-cylinder theory; Timoshenko and Goodier, Theory of Elasticity, 3rd ed. (1970).

    Examples
    --------
    >>> float(sleeve_compliance(inner_radius=600.0, thickness=6.0, elastic_modulus=200e3))
    0.3
    """
    require_positive(
        inner_radius=inner_radius, thickness=thickness, elastic_modulus=elastic_modulus
    )
    return np.square(inner_radius) / np.multiply(elastic_modulus, thickness)


def seam_compliance(*, inner_radius: Real, seam_stiffness: Real) -> Real:
    """Radial movement of the sleeve for each unit of pressure, from opening of the two seams.

    Parameters
    ----------
    inner_radius
        Inner radius of the sleeve [mm], above zero.
    seam_stiffness
        Stiffness of one seam per unit of height [N/mm per mm], above zero; infinite for a seam
        that does not open.

    Returns
    -------
    Real
        Radial compliance ``2 R_i / (2 pi k_j)`` [mm/MPa].

    Raises
    ------
    DomainError
        If the radius is not finite and above zero, or the stiffness is not above zero.

    Notes
    -----
    Two seams open by ``p R_i / k_j`` each; the circumference grows by both and the radius by that
    growth over ``2 pi``. The sleeve's own stretch is counted around the full circumference, the
    strip under the splice plates included, which overstates it by less than the ratio of the
    splice's free length to half the circumference.

    References
    ----------
    Equilibrium and compatibility of two springs in series with a ring.

    Examples
    --------
    >>> float(seam_compliance(inner_radius=600.0, seam_stiffness=float("inf")))
    0.0
    """
    require_positive(inner_radius=inner_radius)
    require_positive_or_infinite(seam_stiffness=seam_stiffness)
    return np.divide(inner_radius, np.multiply(np.pi, seam_stiffness))


def grout_compliance(*, inner_radius: Real, core_radius: Real, grout_modulus: Real) -> Real:
    """Shortening of the grout annulus for each unit of pressure on the sleeve.

    Parameters
    ----------
    inner_radius
        Inner radius of the sleeve [mm], at least `core_radius`.
    core_radius
        Radius of the face between core and grout [mm], above zero.
    grout_modulus
        Elastic modulus of the grout [MPa], above zero.

    Returns
    -------
    Real
        Radial compliance ``R_i ln(R_i / R_c) / E_g`` [mm/MPa].

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    The grout is taken as cracked radially: wedges in radial compression without hoop tension, so
    that the radial stress varies as ``p R_i / r``. Uncracked grout would be stiffer.

    References
    ----------
    Equilibrium of a radially cracked ring.

    Examples
    --------
    >>> value = grout_compliance(inner_radius=650.0, core_radius=600.0, grout_modulus=25e3)
    >>> round(float(value), 6)
    0.002081
    """
    require_positive(
        inner_radius=inner_radius, core_radius=core_radius, grout_modulus=grout_modulus
    )
    require_at_least(0.0, annulus=np.subtract(inner_radius, core_radius))
    ratio = np.divide(inner_radius, core_radius)
    return np.multiply(inner_radius, np.log(ratio)) / grout_modulus


def radial_compliance(
    *,
    inner_radius: Real,
    core_radius: Real,
    thickness: Real,
    elastic_modulus: Real,
    seam_stiffness: Real,
    grout_modulus: Real,
) -> Real:
    """Outward movement of the core's face for each unit of pressure on the sleeve.

    Parameters
    ----------
    inner_radius
        Inner radius of the sleeve [mm], at least `core_radius`.
    core_radius
        Radius of the face between core and grout [mm], above zero.
    thickness
        Wall thickness of the sleeve [mm], above zero.
    elastic_modulus
        Elastic modulus of the sleeve [MPa], above zero.
    seam_stiffness
        Stiffness of one seam per unit of height [N/mm per mm], above zero or infinite.
    grout_modulus
        Elastic modulus of the grout [MPa], above zero.

    Returns
    -------
    Real
        Radial compliance [mm per MPa at the inner face of the sleeve].

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    ``du/dp = R_i**2 / (E t) + 2 R_i / (2 pi k_j) + R_i ln(R_i / R_c) / E_g``: sleeve, two seams
    and cracked grout in series. Valid up to yield of the sleeve and while the seams hold.

    References
    ----------
    Sum of `sleeve_compliance`, `seam_compliance` and `grout_compliance`.

    Examples
    --------
    >>> value = radial_compliance(
    ...     inner_radius=600.0,
    ...     core_radius=600.0,
    ...     thickness=6.0,
    ...     elastic_modulus=200e3,
    ...     seam_stiffness=float("inf"),
    ...     grout_modulus=25e3,
    ... )
    >>> float(value)
    0.3
    """
    return (
        sleeve_compliance(
            inner_radius=inner_radius, thickness=thickness, elastic_modulus=elastic_modulus
        )
        + seam_compliance(inner_radius=inner_radius, seam_stiffness=seam_stiffness)
        + grout_compliance(
            inner_radius=inner_radius, core_radius=core_radius, grout_modulus=grout_modulus
        )
    )


def core_pressure(pressure: Real, *, inner_radius: Real, core_radius: Real) -> Real:
    """Pressure on the face of the core that goes with a pressure on the sleeve.

    Parameters
    ----------
    pressure
        Pressure on the inner face of the sleeve [MPa], at least zero; scalar or array.
    inner_radius
        Inner radius of the sleeve [mm], at least `core_radius`.
    core_radius
        Radius of the face between core and grout [mm], above zero.

    Returns
    -------
    Real
        Pressure on the core [MPa], never below `pressure`.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    Radially cracked grout carries no hoop force, so ``p_c = p R_i / R_c``.

    References
    ----------
    Equilibrium of a radially cracked ring.

    Examples
    --------
    >>> float(core_pressure(2.0, inner_radius=660.0, core_radius=600.0))
    2.2
    """
    require_at_least(0.0, pressure=pressure)
    require_positive(inner_radius=inner_radius, core_radius=core_radius)
    require_at_least(0.0, annulus=np.subtract(inner_radius, core_radius))
    return np.multiply(pressure, inner_radius) / core_radius


def bolt_hoop_force(hoop_force: Real, *, pitch: Real, bolt_columns: Real) -> Real:
    """Hoop force that one bolt of a seam carries.

    Parameters
    ----------
    hoop_force
        Hoop force at one seam [N/mm], at least zero; scalar or array.
    pitch
        Vertical spacing of the bolts, their tributary height [mm], above zero.
    bolt_columns
        Vertical lines of bolts on one side of the seam, at least one.

    Returns
    -------
    Real
        Force in the direction of the hoop on one bolt [N].

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    ``F = N s / n``: the lines on one side share alike, the usual assumption for short ductile
    joints.

    References
    ----------
    Equilibrium.

    Examples
    --------
    >>> float(bolt_hoop_force(1200.0, pitch=100.0, bolt_columns=2))
    60000.0
    """
    require_at_least(0.0, hoop_force=hoop_force)
    require_positive(pitch=pitch)
    require_at_least(1.0, bolt_columns=bolt_columns)
    return np.multiply(hoop_force, pitch) / bolt_columns
