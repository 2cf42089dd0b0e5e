"""Bond stress-slip laws of a column's bars inside a grouted jacket, chipped free or not.

Where the cracked concrete around a bar was chipped away, grout surrounds it; where it was left,
the bar is held by cracked concrete. Both laws count the pressure that the jacket puts across the
bar once, by the factor on the bond stress: neither adds friction for it, and neither counts the
sleeve as transverse reinforcement as well. The clamping check
(`jacketcheck.mechanics.clamping`) looks at the same anchorage in another way; the two stand beside
each other and are never multiplied.
"""

from __future__ import annotations

import numpy as np

from jacketcheck.mechanics._arrays import Real
from jacketcheck.mechanics.bond_factors import (
    longitudinal_crack_factor,
    transverse_pressure_factor,
)
from jacketcheck.mechanics.bond_law import BondLaw, scaled_bond_law, weaker_bond_law
from jacketcheck.mechanics.published_bond_laws import (
    SplittingConfinement,
    pullout_bond_law,
    splitting_bond_law,
    splitting_bond_strength,
)

__all__ = ["cracked_concrete_bar_law", "grouted_bar_law"]


def grouted_bar_law(
    grout_strength: Real, *, clear_rib_spacing: Real, confining_pressure: Real = 0.0
) -> BondLaw:
    """Law of a bar that was chipped free and grouted in: good bond, pull-out.

    Parameters
    ----------
    grout_strength
        Mean compressive strength of the grout [MPa], above zero; scalar or array.
    clear_rib_spacing
        Clear distance between the ribs of the bar [mm], at least 2 mm.
    confining_pressure
        Pressure of the jacket on the face of the core [MPa], at least zero.

    Returns
    -------
    BondLaw
        Parameters, broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    The pull-out law for good bond with the grout's strength for the concrete's, times the factor
    for pressure across the bar. That grout bonds like concrete of the same strength, and that the
    jacket keeps it from splitting, is engineering judgement: the latter fails with a seam that
    slips. Mean values; the surface of the bar must be cleaned.

    References
    ----------
    fib Model Code for Concrete Structures 2010 (2013), Table 6.1-1 and 6.1.1.3.

    Examples
    --------
    >>> law = grouted_bar_law(50.0, clear_rib_spacing=13.0, confining_pressure=3.0)
    >>> round(float(law.peak_stress), 2)
    19.79
    """
    law = pullout_bond_law(
        grout_strength, clear_rib_spacing=clear_rib_spacing, bond_condition="good"
    )
    factor = transverse_pressure_factor(confining_pressure, concrete_strength=grout_strength)
    return scaled_bond_law(law, factor)


def cracked_concrete_bar_law(
    concrete_strength: Real,
    *,
    bar_diameter: Real,
    clear_rib_spacing: Real,
    minimum_cover: Real,
    maximum_cover: Real,
    confinement: SplittingConfinement,
    not_above: BondLaw,
    crack_width: Real = 0.0,
    confining_pressure: Real = 0.0,
    transverse_index: Real = 0.0,
    transverse_effectiveness: Real = 12.0,
) -> BondLaw:
    """Law of a bar whose cracked concrete was left in place: the weaker of all that can fail.

    Parameters
    ----------
    concrete_strength
        Mean compressive strength of the column's concrete [MPa], 15 to 110; scalar or array.
    bar_diameter
        Bar diameter [mm], above zero.
    clear_rib_spacing
        Clear distance between the ribs [mm], at least 3.6 mm.
    minimum_cover, maximum_cover
        As for `jacketcheck.mechanics.published_bond_laws.splitting_bond_strength` [mm]; of the
        original concrete, not counting grout.
    confinement
        "stirrups" where hoops or a jacket that does not slip hold splitting cracks together,
        "unconfined" elsewhere.
    not_above
        Law that the same bar would have if chipped free, from `grouted_bar_law` at the same
        pressure.
    crack_width
        Width of the crack along the bar [mm], 0 to 0.5.
    confining_pressure
        Pressure of the jacket on the face of the core [MPa], at least zero.
    transverse_index, transverse_effectiveness
        Index of the column's own hoops where they are still closed, without the sleeve [-].

    Returns
    -------
    BondLaw
        Parameters, broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    The weaker, at each slip, of pull-out and splitting, both with other than good bond conditions;
    times the factors for a crack along the bar and for pressure across it. The result is then held
    at or below `not_above` at each slip, so that a bar left in cracked concrete never comes out
    better than one chipped free: with grout much weaker than the concrete the tables alone would
    say so.

    "Other" bond conditions for concrete that was good when cast but has cracked is engineering
    judgement.

    References
    ----------
    fib Model Code for Concrete Structures 2010 (2013), Table 6.1-1, Eq. 6.1-5 and 6.1.1.3.

    Examples
    --------
    >>> chipped = grouted_bar_law(50.0, clear_rib_spacing=13.0)
    >>> law = cracked_concrete_bar_law(
    ...     35.0,
    ...     bar_diameter=32.0,
    ...     clear_rib_spacing=13.0,
    ...     minimum_cover=50.0,
    ...     maximum_cover=60.0,
    ...     confinement="stirrups",
    ...     crack_width=0.3,
    ...     not_above=chipped,
    ... )
    >>> round(float(law.peak_stress), 2)
    3.56
    """
    pullout = pullout_bond_law(
        concrete_strength, clear_rib_spacing=clear_rib_spacing, bond_condition="other"
    )
    splitting = splitting_bond_strength(
        concrete_strength,
        bar_diameter=bar_diameter,
        minimum_cover=minimum_cover,
        maximum_cover=maximum_cover,
        bond_condition="other",
        transverse_index=transverse_index,
        transverse_effectiveness=transverse_effectiveness,
    )
    law = splitting_bond_law(pullout, splitting_strength=splitting, confinement=confinement)
    factor = np.multiply(
        longitudinal_crack_factor(crack_width),
        transverse_pressure_factor(confining_pressure, concrete_strength=concrete_strength),
    )
    return weaker_bond_law(scaled_bond_law(law, factor), not_above)
