"""Development lengths of straight bars in tension as codes print them.

ACI equations are evaluated in psi, or in MPa with the rounded coefficients of the metric edition,
which come out about 2 % shorter. Lengths hold for the stress that is put in for the yield
strength.
"""

from __future__ import annotations

from typing import Final, Literal, NamedTuple, TypeAlias

import numpy as np

from jacketcheck.mechanics._arguments import choose, require_reduction
from jacketcheck.mechanics._arrays import (
    Real,
    require_at_least,
    require_positive,
    require_within,
)
from jacketcheck.mechanics._customary_units import INCH, KSI, PSI

__all__ = [
    "AciEdition",
    "bar_size_factor",
    "development_length",
    "reinforcement_grade_factor",
    "seismic_anchorage_length",
    "simplified_development_length",
    "transverse_reinforcement_index",
]

AciEdition: TypeAlias = Literal["ACI 318-19", "ACI 318M-19"]
"""The edition in US customary units, or its metric companion."""


class _Edition(NamedTuple):
    stress: float  # unit of the equations [MPa]
    general: float  # coefficient under fy of Eq. 25.4.2.4a
    large_bar: float  # Table 25.4.2.3, No. 7 and larger
    small_bar: float  # No. 6 and smaller
    largest_root: float  # 25.4.1.4, largest square root of f'c [MPa**0.5]
    least: float  # 25.4.2.1 [mm]


_EDITIONS: Final = {
    "ACI 318-19": _Edition(PSI, 40.0 / 3.0, 20.0, 25.0, 100.0 * PSI**0.5, 12.0 * INCH),
    "ACI 318M-19": _Edition(1.0, 1.1, 1.7, 2.1, 8.3, 300.0),
}
_NUMBER_6: Final = 19.1  # mm
_GRADES: Final = (
    (421.0, 1.0),
    (552.0, 1.15),
    (690.0, 1.3),
)  # MPa: Grades 60, 80, 100 in both units


def bar_size_factor(bar_diameter: Real) -> Real:
    """Factor for the size of a bar ``psi_s``.

    Parameters
    ----------
    bar_diameter
        Bar diameter [mm], above zero; scalar or array.

    Returns
    -------
    Real
        0.8 for No. 6 (No. 19, 19.1 mm) and smaller bars, 1 for larger ones [-].

    Raises
    ------
    DomainError
        If the diameter is not finite and above zero.

    References
    ----------
    ACI 318-19 Table 25.4.2.5.

    Examples
    --------
    >>> float(bar_size_factor(19.05)), float(bar_size_factor(20.0))
    (0.8, 1.0)
    """
    require_positive(bar_diameter=bar_diameter)
    return np.where(np.less_equal(bar_diameter, _NUMBER_6), 0.8, 1.0)[()]


def reinforcement_grade_factor(grade: Real) -> Real:
    """Factor for the grade of a bar ``psi_g``.

    Parameters
    ----------
    grade
        Specified yield strength [MPa], above zero, at most 690 (Grade 100); scalar or array.

    Returns
    -------
    Real
        1 to Grade 60, 1.15 to Grade 80, 1.3 to Grade 100 [-].

    Raises
    ------
    DomainError
        If the grade lies outside its range.

    Notes
    -----
    Grades between those of the table count as the next higher one. It is the grade that is asked
    for, not the expected yield strength.

    References
    ----------
    ACI 318-19 Table 25.4.2.5.

    Examples
    --------
    >>> [float(reinforcement_grade_factor(grade)) for grade in (420.0, 500.0, 690.0)]
    [1.0, 1.15, 1.3]
    """
    require_positive(grade=grade)
    limits, factors = zip(*_GRADES, strict=True)
    require_within(0.0, limits[-1], grade=grade)
    factor: Real = np.asarray(factors)[np.searchsorted(limits, grade)]
    return factor


def transverse_reinforcement_index(
    transverse_area: Real, *, spacing: Real, bars_developed: Real
) -> Real:
    """Transverse reinforcement index ``K_tr``, a length that counts like cover.

    Parameters
    ----------
    transverse_area
        Area of all transverse reinforcement within one spacing that crosses the plane of splitting
        ``A_tr`` [mm²], at least zero; scalar or array.
    spacing
        Largest spacing within the development length ``s`` [mm], above zero.
    bars_developed
        Bars developed along the plane of splitting ``n``, at least one.

    Returns
    -------
    Real
        ``40 A_tr / (s n)`` [mm], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    References
    ----------
    ACI 318-19 Eq. 25.4.2.4b.

    Examples
    --------
    >>> round(float(transverse_reinforcement_index(129.0, spacing=100.0, bars_developed=4)), 2)
    12.9
    """
    require_at_least(0.0, transverse_area=transverse_area)
    require_positive(spacing=spacing)
    require_at_least(1.0, bars_developed=bars_developed)
    return 40.0 * np.divide(transverse_area, np.multiply(spacing, bars_developed))


def development_length(
    bar_diameter: Real,
    *,
    yield_strength: Real,
    concrete_strength: Real,
    cover_dimension: Real,
    transverse_index: Real = 0.0,
    location_factor: Real = 1.0,
    coating_factor: Real = 1.0,
    grade_factor: Real = 1.0,
    lightweight_factor: Real = 1.0,
    edition: AciEdition = "ACI 318-19",
) -> Real:
    """Development length by the general equation of ACI 318.

    Parameters
    ----------
    bar_diameter
        Bar diameter ``d_b`` [mm], above zero; scalar or array.
    yield_strength
        Stress to be developed ``f_y`` [MPa], above zero.
    concrete_strength
        Specified compressive strength ``f'_c`` [MPa], above zero.
    cover_dimension
        ``c_b``: the smaller of the distance from the bar's centre to the nearest surface and half
        the spacing of the bars' centres [mm], above zero.
    transverse_index
        ``K_tr`` from `transverse_reinforcement_index` [mm], at least zero.
    location_factor
        ``psi_t`` [-]: 1.3 for horizontal bars with more than 300 mm of concrete cast below, else 1.
    coating_factor
        ``psi_e`` [-]: 1.5 or 1.2 for epoxy-coated bars, else 1.
    grade_factor
        ``psi_g`` from `reinforcement_grade_factor` [-], at least 1.
    lightweight_factor
        ``lambda`` [-], above zero, at most 1.
    edition
        "ACI 318-19" or "ACI 318M-19".

    Returns
    -------
    Real
        Development length ``l_d`` [mm], broadcast over the arguments; at least 12 in (300 mm).

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    ``(3/40) f_y / (lambda sqrt(f'_c)) psi_t psi_e psi_s psi_g / ((c_b + K_tr)/d_b) d_b`` in psi,
    ``f_y / (1.1 lambda sqrt(f'_c))`` in MPa, with ``(c_b + K_tr)/d_b <= 2.5``,
    ``psi_t psi_e <= 1.7`` and the root at most 100 psi (8.3 MPa). For Grade 80 and more with bars
    closer than 6 in, 25.4.2.2 asks for ``K_tr >= 0.5 d_b``, which is not checked here.

    References
    ----------
    ACI 318-19 Eq. 25.4.2.4a with 25.4.1.4, 25.4.2.1 and Table 25.4.2.5; metric coefficient from
    memory.

    Examples
    --------
    >>> length = development_length(
    ...     32.0, yield_strength=420.0, concrete_strength=28.0, cover_dimension=80.0)
    >>> round(float(length))
    918
    """
    require_positive(cover_dimension=cover_dimension)
    require_at_least(0.0, transverse_index=transverse_index)
    chosen = choose(_EDITIONS, edition, name="edition")
    stress = _factored_stress(
        chosen,
        yield_strength=yield_strength,
        concrete_strength=concrete_strength,
        factors=(location_factor, coating_factor, grade_factor, lightweight_factor),
    )
    size = bar_size_factor(bar_diameter)
    confined = np.minimum(np.add(cover_dimension, transverse_index) / bar_diameter, 2.5)
    length = stress / chosen.general * size / confined * bar_diameter
    return np.maximum(length, chosen.least)


def simplified_development_length(
    bar_diameter: Real,
    *,
    yield_strength: Real,
    concrete_strength: Real,
    well_spaced: bool,
    location_factor: Real = 1.0,
    coating_factor: Real = 1.0,
    grade_factor: Real = 1.0,
    lightweight_factor: Real = 1.0,
    edition: AciEdition = "ACI 318-19",
) -> Real:
    """Development length by the table of ACI 318, which needs no cover dimension.

    Parameters
    ----------
    bar_diameter
        Bar diameter ``d_b`` [mm], above zero; scalar or array.
    yield_strength
        Stress to be developed ``f_y`` [MPa], above zero.
    concrete_strength
        Specified compressive strength ``f'_c`` [MPa], above zero.
    well_spaced
        Whether the first row of the table applies: clear spacing and cover of at least one bar
        diameter with minimum stirrups or ties along the length, or clear spacing of at least two
        with a cover of one.
    location_factor, coating_factor, grade_factor, lightweight_factor
        As for `development_length` [-].
    edition
        "ACI 318-19" or "ACI 318M-19".

    Returns
    -------
    Real
        Development length ``l_d`` [mm], broadcast over the arguments; at least 12 in (300 mm).

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    ``f_y psi_t psi_e psi_g / (20 lambda sqrt(f'_c)) d_b`` in psi, 25 for 20 for No. 6 and smaller
    bars; half as much again where the bars are not well spaced. In MPa 1.7 and 2.1.

    References
    ----------
    ACI 318-19 Table 25.4.2.3 with 25.4.1.4 and 25.4.2.1; from memory, metric coefficients too.

    Examples
    --------
    >>> length = simplified_development_length(
    ...     32.0, yield_strength=420.0, concrete_strength=28.0, well_spaced=True)
    >>> round(float(length))
    1529
    """
    chosen = choose(_EDITIONS, edition, name="edition")
    stress = _factored_stress(
        chosen,
        yield_strength=yield_strength,
        concrete_strength=concrete_strength,
        factors=(location_factor, coating_factor, grade_factor, lightweight_factor),
    )
    small = np.less(bar_size_factor(bar_diameter), 1.0)
    divisor = np.where(small, chosen.small_bar, chosen.large_bar)
    length = (1.0 if well_spaced else 1.5) * stress / divisor * bar_diameter
    return np.maximum(length, chosen.least)


def seismic_anchorage_length(
    bar_diameter: Real, *, expected_yield: Real, concrete_strength: Real
) -> Real:
    """Length over which a column's bars are anchored in a cap or footing that stays elastic.

    Parameters
    ----------
    bar_diameter
        Bar diameter ``d_bl`` [mm], above zero; scalar or array.
    expected_yield
        Expected yield strength ``f_ye`` [MPa], above zero.
    concrete_strength
        Specified compressive strength of the cap or footing ``f'_c`` [MPa], above zero.

    Returns
    -------
    Real
        ``l_ac = 0.79 d_bl f_ye / sqrt(f'_c)`` in ksi and in [mm], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    For bars cast into a confined joint; for bars grouted into drilled holes it is taken over on
    judgement. Provisions for shear in the joint are separate.

    References
    ----------
    AASHTO Guide Specifications for LRFD Seismic Bridge Design, 2nd ed. (2011), Eq. 8.8.4-1; the
    same as ``0.3 d_b f_y / sqrt(f'_c)`` in MPa of Priestley, Seible and Calvi (1996); from memory.

    Examples
    --------
    >>> length = seismic_anchorage_length(35.8, expected_yield=469.0, concrete_strength=28.0)
    >>> round(float(length))
    955
    """
    require_positive(
        bar_diameter=bar_diameter,
        expected_yield=expected_yield,
        concrete_strength=concrete_strength,
    )
    root = np.sqrt(np.divide(concrete_strength, KSI))
    return 0.79 * np.multiply(bar_diameter, np.divide(expected_yield, KSI)) / root


def _factored_stress(
    edition: _Edition,
    *,
    yield_strength: Real,
    concrete_strength: Real,
    factors: tuple[Real, Real, Real, Real],
) -> Real:
    """``f_y psi_t psi_e psi_g / (lambda sqrt(f'_c))`` in the unit of the edition."""
    location, coating, grade, lightweight = factors
    require_positive(yield_strength=yield_strength, concrete_strength=concrete_strength)
    require_at_least(1.0, location_factor=location, coating_factor=coating, grade_factor=grade)
    require_reduction(lightweight_factor=lightweight)
    root = np.minimum(np.sqrt(concrete_strength), edition.largest_root) / edition.stress**0.5
    casting = np.minimum(np.multiply(location, coating), 1.7)
    stress = np.divide(yield_strength, edition.stress)
    factored: Real = stress * casting * grade / np.multiply(lightweight, root)
    return factored
