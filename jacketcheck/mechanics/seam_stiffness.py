"""Stiffness of one bolted seam of the sleeve, per unit of height.

Two states are kept apart. Pretensioned bolts that do not slip hand the hoop force over by
friction, and only the splice plates stretch. Snug-tight bolts bear: bolt shear and bearing of the
plates add their flexibility once the play in the holes is taken up (the play itself is dealt with
in `jacketcheck.mechanics.retained_pressure`).
"""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.mechanics._arrays import (
    Real,
    require_at_least,
    require_positive,
    require_positive_or_infinite,
)

__all__ = [
    "bearing_type_seam_stiffness",
    "bolt_bearing_stiffness",
    "bolt_shear_stiffness",
    "splice_plate_stiffness",
]

M16_DIAMETER: Final = 16.0
"""Nominal diameter of an M16 bolt [mm], the reference bolt of EN 1993-1-8 Table 6.11."""


def splice_plate_stiffness(
    *, total_plate_thickness: Real, free_length: Real, elastic_modulus: Real
) -> Real:
    """Axial stiffness of the splice plates of one seam, per unit of height.

    This is also the stiffness of the whole seam when pretensioned bolts do not slip.

    Parameters
    ----------
    total_plate_thickness
        Sum of the thicknesses of inner and outer splice plates [mm], above zero.
    free_length
        Distance between the innermost bolt lines on either side of the seam [mm], above zero.
    elastic_modulus
        Elastic modulus of the plates [MPa], above zero.

    Returns
    -------
    Real
        Stiffness ``E t / L`` [N/mm per mm of height].

    Raises
    ------
    DomainError
        If an argument is not finite and above zero.

    Notes
    -----
    Preloaded bolts have an infinite stiffness coefficient as long as the design force stays below
    the slip resistance. A single splice plate is eccentric and bends as well: this value is then
    an upper bound.

    References
    ----------
    Hooke's law; EN 1993-1-8:2005 Table 6.11 (preloaded bolts), from memory.

    Examples
    --------
    >>> float(splice_plate_stiffness(
    ...     total_plate_thickness=20.0, free_length=100.0, elastic_modulus=200e3))
    40000.0
    """
    require_positive(
        total_plate_thickness=total_plate_thickness,
        free_length=free_length,
        elastic_modulus=elastic_modulus,
    )
    return np.multiply(elastic_modulus, total_plate_thickness) / free_length


def bolt_shear_stiffness(
    bolt_diameter: Real, *, bolt_tensile_strength: Real, shear_planes: Real
) -> Real:
    """Shear stiffness of one snug-tight bolt in bearing.

    Parameters
    ----------
    bolt_diameter
        Nominal diameter [mm], above zero; scalar or array.
    bolt_tensile_strength
        Tensile strength of the bolt ``f_ub`` [MPa], above zero.
    shear_planes
        Number of shear planes, at least one.

    Returns
    -------
    Real
        Shear stiffness [N/mm].

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    Table 6.11 gives ``k11 = 16 n_b d**2 f_ub / (E d_M16)`` for a row of two bolts in single shear;
    one bolt and one plane have half of it, ``E k11 = 8 d**2 f_ub / d_M16``. Planes act in
    parallel.

    References
    ----------
    EN 1993-1-8:2005 Table 6.11, coefficient k11, from memory.

    Examples
    --------
    >>> float(bolt_shear_stiffness(16.0, bolt_tensile_strength=800.0, shear_planes=1))
    102400.0
    """
    require_positive(bolt_diameter=bolt_diameter, bolt_tensile_strength=bolt_tensile_strength)
    require_at_least(1.0, shear_planes=shear_planes)
    one_plane = 8.0 * np.square(bolt_diameter) * bolt_tensile_strength / M16_DIAMETER
    return np.multiply(one_plane, shear_planes)


def bolt_bearing_stiffness(
    bolt_diameter: Real,
    *,
    plate_thickness: Real,
    plate_tensile_strength: Real,
    end_distance: Real,
    line_spacing: Real = np.inf,
) -> Real:
    """Bearing stiffness of one plate against one bolt.

    Parameters
    ----------
    bolt_diameter
        Nominal diameter [mm], above zero; scalar or array.
    plate_thickness
        Thickness of the plate that bears [mm], above zero.
    plate_tensile_strength
        Tensile strength of the plate ``f_u`` [MPa], above zero.
    end_distance
        Distance from the bolt line to the plate's free edge in the direction of the force
        ``e_b`` [mm], above zero.
    line_spacing
        Distance between bolt lines in the direction of the force ``p_b`` [mm], above zero;
        infinite (the default) for a single line.

    Returns
    -------
    Real
        Bearing stiffness [N/mm].

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    Table 6.11 gives ``k12 = 24 n_b k_b k_t d f_u / E`` for a row of two bolts; one bolt has half,
    ``E k12 = 12 k_b k_t d f_u``, with ``k_b = min(0.25 e_b/d + 0.5, 0.25 p_b/d + 0.375, 1.25)``
    and ``k_t = min(1.5 t / d_M16, 2.5)``.

    References
    ----------
    EN 1993-1-8:2005 Table 6.11, coefficient k12, from memory.

    Examples
    --------
    >>> float(bolt_bearing_stiffness(
    ...     20.0, plate_thickness=8.0, plate_tensile_strength=400.0, end_distance=40.0))
    72000.0
    """
    require_positive(
        bolt_diameter=bolt_diameter,
        plate_thickness=plate_thickness,
        plate_tensile_strength=plate_tensile_strength,
        end_distance=end_distance,
    )
    require_positive_or_infinite(line_spacing=line_spacing)
    k_b = np.minimum(0.25 * np.divide(end_distance, bolt_diameter) + 0.5, 1.25)
    k_b = np.minimum(k_b, 0.25 * np.divide(line_spacing, bolt_diameter) + 0.375)
    k_t = np.minimum(np.multiply(1.5, plate_thickness) / M16_DIAMETER, 2.5)
    return 12.0 * k_b * k_t * bolt_diameter * plate_tensile_strength


def bearing_type_seam_stiffness(
    *,
    shear_stiffness: Real,
    sleeve_bearing_stiffness: Real,
    splice_bearing_stiffness: Real,
    plate_stiffness: Real,
    pitch: Real,
    bolt_columns: Real,
) -> Real:
    """Stiffness of one seam with snug-tight bolts in bearing, per unit of height.

    Parameters
    ----------
    shear_stiffness
        Shear stiffness of one bolt, all planes [N/mm], above zero.
    sleeve_bearing_stiffness
        Bearing stiffness of the sleeve against one bolt [N/mm], above zero.
    splice_bearing_stiffness
        Bearing stiffness of all splice plates together against one bolt [N/mm], above zero.
    plate_stiffness
        Stiffness of the splice plates between the innermost bolt lines, from
        `splice_plate_stiffness` [N/mm per mm], above zero.
    pitch
        Vertical spacing of the bolts [mm], above zero.
    bolt_columns
        Vertical lines of bolts on one side of the seam, at least one.

    Returns
    -------
    Real
        Stiffness of the seam after the play in the holes is taken up [N/mm per mm].

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    The two bolt groups and the plates between them act in series; the bolts of a group share
    alike: ``1/k_j = 1/k_plates + 2 s / (n k_bolt)`` with
    ``1/k_bolt = 1/k_shear + 1/k_sleeve + 1/k_splice``.

    References
    ----------
    EN 1993-1-8:2005 6.3.1, springs in series, from memory.

    Examples
    --------
    >>> value = bearing_type_seam_stiffness(
    ...     shear_stiffness=300e3, sleeve_bearing_stiffness=300e3,
    ...     splice_bearing_stiffness=300e3, plate_stiffness=1000.0, pitch=100.0, bolt_columns=2)
    >>> round(float(value), 6)
    500.0
    """
    require_positive(
        shear_stiffness=shear_stiffness,
        sleeve_bearing_stiffness=sleeve_bearing_stiffness,
        splice_bearing_stiffness=splice_bearing_stiffness,
        plate_stiffness=plate_stiffness,
        pitch=pitch,
    )
    require_at_least(1.0, bolt_columns=bolt_columns)
    bolt_flexibility = (
        np.divide(1.0, shear_stiffness)
        + np.divide(1.0, sleeve_bearing_stiffness)
        + np.divide(1.0, splice_bearing_stiffness)
    )
    groups = 2.0 * bolt_flexibility * pitch / bolt_columns
    return np.divide(1.0, np.divide(1.0, plate_stiffness) + groups)
