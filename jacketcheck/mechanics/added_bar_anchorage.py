"""Anchorage of added bars in holes drilled in the footing.

Two ways are open, by what fills the hole. Bars in cementitious grout are anchored by development
length. Bars in a qualified adhesive may also be designed as anchors, by bond and breakout. A cone
of concrete that breaks out of the footing limits a ring of bars far below its yield strength unless
the footing resists it: the bars lap with the footing's or column's own bars, or struts from the
bars' ends are balanced by the compression side of the column. Whether that holds is for the
engineer to show by struts and ties (ACI 318-19 ch. 23); both figures are always given.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from jacketcheck.mechanics._arrays import Real, require_at_least, require_positive
from jacketcheck.mechanics.adhesive_anchors import (
    UNCRACKED_BOND_RATIO,
    adhesive_bond_strength,
    bond_influence_distance,
    breakout_influence_distance,
    breakout_strength,
    edge_factor,
    ring_area_share,
)
from jacketcheck.mechanics.development_length import development_length, seismic_anchorage_length

__all__ = [
    "AdhesiveAnchorage",
    "GroutedAnchorage",
    "adhesive_anchorage",
    "grouted_anchorage",
]


@dataclass(frozen=True, eq=False)
class GroutedAnchorage:
    """Embedment that bars grouted into drilled holes need; lengths [mm] share one shape.

    Attributes
    ----------
    guide_specification_length
        AASHTO Guide Specifications, for bars in a footing that stays elastic.
    development_length
        ACI 318-19, general equation.
    required_length
        The longer of the two.
    governed_by
        "AASHTO Guide Spec 8.8.4" or "ACI 318-19 25.4.2".
    least_tested_length
        Shortest embedment, in tests of well confined grouted ducts, over which bars reached the
        stress: six bar diameters at yield, ten at fracture. A sanity bound, no design value.
    """

    guide_specification_length: Real
    development_length: Real
    required_length: Real
    governed_by: NDArray[np.str_]
    least_tested_length: Real


def grouted_anchorage(
    bar_diameter: Real,
    *,
    bar_stress: Real,
    yield_strength: Real,
    footing_strength: Real,
    grout_strength: Real,
    cover_dimension: Real,
    transverse_index: Real = 0.0,
    grade_factor: Real = 1.0,
) -> GroutedAnchorage:
    """Embedment of bars grouted into holes drilled in the footing.

    Parameters
    ----------
    bar_diameter
        Bar diameter [mm], above zero; scalar or array.
    bar_stress
        Stress to be anchored, overstrength included [MPa], above zero.
    yield_strength
        Expected yield strength [MPa], above zero; tells which of the tested lengths compares.
    footing_strength
        Specified compressive strength of the footing [MPa], above zero.
    grout_strength
        Compressive strength of the grout in the holes [MPa], above zero; the weaker of grout and
        footing counts.
    cover_dimension
        ``c_b`` of ACI 318: the smaller of the distance from the bar's centre to the nearest surface
        and half the spacing of the bars' centres [mm], above zero.
    transverse_index
        ``K_tr`` of ACI 318 [mm], at least zero.
    grade_factor
        ``psi_g`` of ACI 318 [-], at least 1.

    Returns
    -------
    GroutedAnchorage
        Lengths by both sources and the longer one, broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    Both equations are for bars that are cast in. That a roughened, cleaned and grouted hole wider
    than the bar holds as well is engineering judgement, borne out by pull-out tests in ducts, whose
    corrugation a drilled hole lacks. Breakout of a cone is not in these equations.

    References
    ----------
    AASHTO Guide Specifications for LRFD Seismic Bridge Design, 2nd ed. (2011), 8.8.4; ACI 318-19
    25.4.2.4; Steuck, Eberhard and Stanton, Anchorage of Large-Diameter Reinforcing Bars in Ducts,
    ACI Struct. J. 106(4) (2009), title 106-S48, abstract.

    Examples
    --------
    >>> found = grouted_anchorage(
    ...     32.0,
    ...     bar_stress=590.0,
    ...     yield_strength=469.0,
    ...     footing_strength=28.0,
    ...     grout_strength=50.0,
    ...     cover_dimension=100.0,
    ... )
    >>> round(float(found.required_length)), str(found.governed_by)
    (1289, 'ACI 318-19 25.4.2')
    """
    require_positive(
        yield_strength=yield_strength,
        footing_strength=footing_strength,
        grout_strength=grout_strength,
    )
    weaker = np.minimum(footing_strength, grout_strength)
    guide = seismic_anchorage_length(
        bar_diameter, expected_yield=bar_stress, concrete_strength=weaker
    )
    code = development_length(
        bar_diameter,
        yield_strength=bar_stress,
        concrete_strength=weaker,
        cover_dimension=cover_dimension,
        transverse_index=transverse_index,
        grade_factor=grade_factor,
    )
    guide, code = np.broadcast_arrays(guide, code)
    names = np.array(["AASHTO Guide Spec 8.8.4", "ACI 318-19 25.4.2"])
    diameters = np.where(np.greater(bar_stress, yield_strength), 10.0, 6.0)
    return GroutedAnchorage(
        guide_specification_length=guide[()],
        development_length=code[()],
        required_length=np.maximum(guide, code),
        governed_by=names[np.greater(code, guide).astype(int)],
        least_tested_length=np.broadcast_to(diameters * bar_diameter, guide.shape)[()],
    )


@dataclass(frozen=True, eq=False)
class AdhesiveAnchorage:
    """Nominal tension strength of each of a ring of bars in adhesive; [N] unless said otherwise.

    Attributes
    ----------
    single_bond_strength
        Bond of one bar alone.
    bond_influence_distance
        How far around a bar its bond reaches ``c_Na`` [mm].
    bond_share
        Share of its influence area that each bar has to itself [-].
    bond_strength
        Bond of each bar of the ring.
    single_breakout_strength
        Breakout of one bar alone.
    breakout_share
        Share of its cone that each bar has to itself [-].
    breakout_strength
        Breakout of each bar of the ring.
    nominal_strength
        The smaller of bond and breakout; bond alone where breakout is precluded.
    governed_by
        "bond" or "breakout".
    outside_method
        Whether the embedment lies outside 4 to 20 bar diameters, the range of the anchor method.
    """

    single_bond_strength: Real
    bond_influence_distance: Real
    bond_share: Real
    bond_strength: Real
    single_breakout_strength: Real
    breakout_share: Real
    breakout_strength: Real
    nominal_strength: Real
    governed_by: NDArray[np.str_]
    outside_method: NDArray[np.bool_]


def adhesive_anchorage(
    bond_stress: Real,
    *,
    bar_diameter: Real,
    embedment: Real,
    footing_strength: Real,
    circle_radius: Real,
    count: Real,
    breakout_precluded: bool,
    uncracked_bond_stress: Real | None = None,
    edge_distance: Real = np.inf,
) -> AdhesiveAnchorage:
    """Nominal tension strength of each of a ring of bars in adhesive.

    Parameters
    ----------
    bond_stress
        Characteristic bond stress in cracked concrete ``tau_cr`` [MPa], above zero; scalar or
        array.
    bar_diameter
        Bar diameter [mm], above zero.
    embedment
        Effective embedment [mm], above zero.
    footing_strength
        Specified compressive strength of the footing [MPa], above zero.
    circle_radius
        Radius of the circle through the bar centres [mm], above zero.
    count
        Number of bars on the circle, at least one.
    breakout_precluded
        Whether struts and ties show that no cone can break out. Engineering judgement.
    uncracked_bond_stress
        Characteristic bond stress in uncracked concrete ``tau_uncr`` [MPa], at least `bond_stress`;
        None for `jacketcheck.mechanics.adhesive_anchors.UNCRACKED_BOND_RATIO` times that.
    edge_distance
        Least distance from a bar to an edge of the footing [mm], above zero or infinite.

    Returns
    -------
    AdhesiveAnchorage
        Both strengths and the one that counts, broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    ``N = A_N / (n A_N0) psi_ed N_basic`` with the ring's area for the group's, cracked concrete,
    no eccentricity. Strength reduction 0.65 and the earthquake factor 0.75 are left to the check.

    References
    ----------
    ACI 318-19 17.6.2 and 17.6.5.

    Examples
    --------
    >>> found = adhesive_anchorage(
    ...     8.0,
    ...     bar_diameter=32.0,
    ...     embedment=600.0,
    ...     footing_strength=28.0,
    ...     circle_radius=650.0,
    ...     count=16,
    ...     breakout_precluded=False,
    ... )
    >>> round(float(found.bond_strength) / 1e3), round(float(found.breakout_strength) / 1e3)
    (133, 81)
    """
    if uncracked_bond_stress is None:
        uncracked_bond_stress = np.multiply(UNCRACKED_BOND_RATIO, bond_stress)
    require_at_least(0.0, bond_stress_gain=np.subtract(uncracked_bond_stress, bond_stress))
    single_bond = adhesive_bond_strength(
        bond_stress, bar_diameter=bar_diameter, embedment=embedment
    )
    reach = bond_influence_distance(bar_diameter, uncracked_bond_stress=uncracked_bond_stress)
    single_breakout = breakout_strength(footing_strength, embedment=embedment)
    cone = breakout_influence_distance(embedment)
    bond_share, breakout_share = (
        ring_area_share(
            distance, circle_radius=circle_radius, count=count, edge_distance=edge_distance
        )
        for distance in (reach, cone)
    )
    bond = bond_share * edge_factor(edge_distance, influence_distance=reach) * single_bond
    breakout = breakout_share * edge_factor(edge_distance, influence_distance=cone)
    breakout = np.multiply(breakout, single_breakout)
    bond, breakout = np.broadcast_arrays(bond, breakout)
    diameters = np.divide(embedment, bar_diameter)
    by_breakout = np.less(breakout, bond) & (not breakout_precluded)
    return AdhesiveAnchorage(
        single_bond_strength=single_bond,
        bond_influence_distance=reach,
        bond_share=bond_share,
        bond_strength=bond[()],
        single_breakout_strength=single_breakout,
        breakout_share=breakout_share,
        breakout_strength=breakout[()],
        nominal_strength=np.where(by_breakout, breakout, bond)[()],
        governed_by=np.array(["bond", "breakout"])[by_breakout.astype(int)],
        outside_method=np.less(diameters, 4.0) | np.greater(diameters, 20.0),
    )
