"""Strength of one bolt in shear, in tension, and in both."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.plugin import Real, require_at_least, require_positive, require_within
from jacketcheck_australasia.mechanics._tables import choose

__all__ = [
    "BOLT_CAPACITY_FACTOR",
    "THICKEST_FILLER",
    "bolt_shear_capacity",
    "bolt_tension_capacity",
    "combined_bolt_ratio",
    "core_area",
    "ductility_factor",
    "lap_length_factor",
]

BOLT_CAPACITY_FACTOR: Final = 0.80
"""Capacity factor of bolts in shear, in tension and in both (AS 4100:2020 Table 3.4, from memory;
NZS 3404:1997 Table 3.3(1))."""

_METRIC_THREAD: Final = (0.9382, 1.2269)
_UNIFIED_THREAD: Final = (0.9743, 1.2990)
"""Pitches from the nominal to the stress diameter, and to the root."""

_CLASS_8_8: Final = 830.0
_LEAST_DUCTILITY_FACTOR: Final = 0.83

THICKEST_FILLER: Final = 20.0
"""Thickest filler plates that the rule covers [mm] (AS 4100:2020 9.2.2.5, from memory)."""

_SHORT_LAP: Final = 300.0
_LONG_LAP: Final = 1300.0


def core_area(diameter: Real, *, tensile_stress_area: Real, metric: bool = True) -> Real:
    """Area at the root of the thread, A_c.

    Parameters
    ----------
    diameter
        Nominal diameter of the bolt d_f [mm], above zero; scalar or array.
    tensile_stress_area
        Tensile stress area A_s [mm²], above zero and below that of the shank.
    metric
        Whether the thread is a metric one; False for unified inch threads.

    Returns
    -------
    Real
        Core area A_c [mm²].

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    The codes count this area, not the tensile stress area, where threads lie in the shear plane.
    The pitch follows from ``A_s = pi/4 (d - 0.9382 P)**2``, and then
    ``A_c = pi/4 (d - 1.2269 P)**2``; unified threads have 0.9743 and 1.2990. The areas printed for
    coarse metric threads are met within 0.5%.

    References
    ----------
    AS 1275-1985, Metric screw threads for fasteners, A_c and A_s, as AS 4100:2020 cl. 9.2.2.1
    refers to them, from memory; thread geometry of ISO 724 and ISO 898-1, and of ASME B1.1-2003.

    Examples
    --------
    >>> round(float(core_area(20.0, tensile_stress_area=245.0)))
    225
    """
    require_positive(diameter=diameter, tensile_stress_area=tensile_stress_area)
    stress_diameter = np.sqrt(4.0 * np.asarray(tensile_stress_area) / np.pi)
    require_positive(thread_depth=np.subtract(diameter, stress_diameter))
    to_stress, to_root = _METRIC_THREAD if metric else _UNIFIED_THREAD
    pitch = np.subtract(diameter, stress_diameter) / to_stress
    return np.pi / 4.0 * np.square(np.subtract(diameter, to_root * pitch))


def lap_length_factor(joint_length: Real) -> Real:
    """Reduction factor for the length of a bolted lap connection, k_r.

    Parameters
    ----------
    joint_length
        Length of the joint l_j [mm], at least zero: between the outermost bolts on one side of a
        splice, along the force; scalar or array.

    Returns
    -------
    Real
        Factor k_r [-].

    Raises
    ------
    DomainError
        If the length is not finite and at least zero.

    Notes
    -----
    1.0 up to 300 mm, ``1.075 - l_j/4000`` to 1300 mm, 0.75 beyond.

    References
    ----------
    AS 4100:2020, Steel structures, Table 9.2.2.1 (9.3.2.1 in the 1998 edition); NZS 3404:Part
    1:1997, Table 9.3.2.1; both from memory.

    Examples
    --------
    >>> float(lap_length_factor(500.0))
    0.95
    """
    require_at_least(0.0, joint_length=joint_length)
    within = np.clip(joint_length, _SHORT_LAP, _LONG_LAP)
    return 1.075 - within / 4000.0


def ductility_factor(tensile_strength: Real, *, threads: str) -> Real:
    """Reduction factor for the low ductility of strong bolts in shear, k_rd.

    Parameters
    ----------
    tensile_strength
        Minimum tensile strength of the bolt f_uf [MPa], above zero; scalar or array.
    threads
        ``included`` in all shear planes, or ``excluded`` from all of them.

    Returns
    -------
    Real
        Factor k_rd [-].

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    0.83 for property class 10.9 with threads in the shear plane, 1.0 for all other cases. Bolts
    between class 8.8 (830 MPa) and 10.9 (1000 MPa) count with the strength of class 8.8, so that a
    stronger bolt never loses.

    References
    ----------
    AS 4100:2020, Steel structures, cl. 9.2.2.1, from memory. The 1998 edition and NZS 3404:Part
    1:1997 have no such factor.

    Examples
    --------
    >>> float(ductility_factor(1040.0, threads="included"))
    0.83
    """
    require_positive(tensile_strength=tensile_strength)
    if choose({"included": 1.0, "excluded": 0.0}, threads, name="threads") == 0.0:
        return np.ones_like(np.asarray(tensile_strength, dtype=float))
    return np.clip(_CLASS_8_8 / np.asarray(tensile_strength), _LEAST_DUCTILITY_FACTOR, 1.0)


def filler_plate_factor(filler_thickness: Real) -> Real:
    """Reduction factor for bolt shear through filler plates.

    Parameters
    ----------
    filler_thickness
        Thickness of the filler plates [mm], at least zero and at most 20; scalar or array.

    Returns
    -------
    Real
        Factor [-].

    Raises
    ------
    DomainError
        If the thickness is not finite or lies outside its range.

    Notes
    -----
    0.85 for more than 6 mm, else 1.0. Thicker fillers than 20 mm are not covered by the rule.

    References
    ----------
    AS 4100:2020, Steel structures, 9.2.2.5 (9.3.2.5 in the 1998 edition); NZS 3404:Part 1:1997,
    9.3.2.5; both from memory.

    Examples
    --------
    >>> float(filler_plate_factor(8.0))
    0.85
    """
    require_within(0.0, THICKEST_FILLER, filler_thickness=filler_thickness)
    return np.where(np.greater(filler_thickness, 6.0), 0.85, 1.0)


def bolt_shear_capacity(
    tensile_strength: Real,
    *,
    shank_area: Real,
    core_area: Real,
    threads: str,
    shear_planes: Real,
    lap_length_factor: Real = 1.0,
    ductility_factor: Real = 1.0,
) -> Real:
    """Nominal shear capacity of one bolt.

    Parameters
    ----------
    tensile_strength
        Minimum tensile strength of the bolt f_uf [MPa], above zero; scalar or array.
    shank_area
        Nominal area of the plain shank A_o [mm²], above zero.
    core_area
        Area from `core_area` A_c [mm²], above zero.
    threads
        ``included`` in all shear planes, or ``excluded`` from all of them.
    shear_planes
        Number of shear planes, n_n with threads or n_x without, at least one.
    lap_length_factor
        Factor k_r from `lap_length_factor` [-].
    ductility_factor
        Factor k_rd from `ductility_factor` [-]: 1, the default, by NZS 3404.

    Returns
    -------
    Real
        Nominal capacity V_f [N]; the capacity factor is `BOLT_CAPACITY_FACTOR`.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``V_f = 0.62 f_uf k_r k_rd (n_n A_c + n_x A_o)``.

    References
    ----------
    AS 4100:2020, Steel structures, cl. 9.2.2.1 (9.3.2.1 in the 1998 edition), from memory, its
    values as tabulated by a bolt maker; NZS 3404:Part 1:1997, cl. 9.3.2.1, from memory.

    Examples
    --------
    >>> capacity = bolt_shear_capacity(
    ...     830.0, shank_area=314.0, core_area=225.0, threads="included", shear_planes=2)
    >>> round(float(capacity))
    231570
    """
    require_positive(tensile_strength=tensile_strength, shank_area=shank_area, core_area=core_area)
    require_at_least(1.0, shear_planes=shear_planes)
    require_within(0.75, 1.0, lap_length_factor=lap_length_factor)
    require_within(_LEAST_DUCTILITY_FACTOR, 1.0, ductility_factor=ductility_factor)
    counts_core = choose({"included": 1.0, "excluded": 0.0}, threads, name="threads") == 1.0
    area = core_area if counts_core else shank_area
    reduced = np.multiply(lap_length_factor, ductility_factor)
    return 0.62 * np.multiply(tensile_strength, area) * shear_planes * reduced


def bolt_tension_capacity(tensile_strength: Real, *, tensile_stress_area: Real) -> Real:
    """Nominal tension capacity of one bolt.

    Parameters
    ----------
    tensile_strength
        Minimum tensile strength of the bolt f_uf [MPa], above zero; scalar or array.
    tensile_stress_area
        Tensile stress area A_s [mm²], above zero.

    Returns
    -------
    Real
        Nominal capacity N_tf [N]; the capacity factor is `BOLT_CAPACITY_FACTOR`.

    Raises
    ------
    DomainError
        If an argument is not finite and above zero.

    Notes
    -----
    ``N_tf = A_s f_uf``.

    References
    ----------
    AS 4100:2020, Steel structures, cl. 9.2.2.2 (9.3.2.2 in the 1998 edition), from memory, its
    values as tabulated by a bolt maker; NZS 3404:Part 1:1997, cl. 9.3.2.2, from memory.

    Examples
    --------
    >>> float(bolt_tension_capacity(830.0, tensile_stress_area=245.0))
    203350.0
    """
    require_positive(tensile_strength=tensile_strength, tensile_stress_area=tensile_stress_area)
    return np.multiply(tensile_strength, tensile_stress_area)


def combined_bolt_ratio(
    shear: Real, *, design_shear_capacity: Real, tension: Real, design_tension_capacity: Real
) -> Real:
    """Demand over capacity of a bolt in shear and tension, as a ratio of loads.

    Parameters
    ----------
    shear, tension
        Design forces on the bolt [N], at least zero; scalars or arrays.
    design_shear_capacity, design_tension_capacity
        Design capacities, capacity factor included [N], above zero.

    Returns
    -------
    Real
        Ratio [-]; both forces divided by it are just carried.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    The root of ``(V/phi V_f)**2 + (N/phi N_tf)**2 <= 1``. The seam's bolts are not pulled, so no
    limit state of this package asks for it.

    References
    ----------
    AS 4100:2020, Steel structures, cl. 9.2.2.3 (9.3.2.3 in the 1998 edition); NZS 3404:Part
    1:1997, cl. 9.3.2.3; both from memory.

    Examples
    --------
    >>> ratio = combined_bolt_ratio(
    ...     30e3, design_shear_capacity=50e3, tension=80e3, design_tension_capacity=100e3)
    >>> round(float(ratio), 12)
    1.0
    """
    require_at_least(0.0, shear=shear, tension=tension)
    require_positive(
        design_shear_capacity=design_shear_capacity,
        design_tension_capacity=design_tension_capacity,
    )
    return np.hypot(
        np.divide(shear, design_shear_capacity), np.divide(tension, design_tension_capacity)
    )
