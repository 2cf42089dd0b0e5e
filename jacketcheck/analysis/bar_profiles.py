"""Stress along a fractured bar, with the concrete around it chipped away and left in place."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from jacketcheck.analysis.bond import bar_bonds, bond_conditions, bond_law_of, held_shares
from jacketcheck.analysis.damaged_bars import (
    anchorage_length,
    anchorage_start,
    debonding_bars,
    target_stress,
)
from jacketcheck.analysis.memo import remembered
from jacketcheck.analysis.sections import bar_steel
from jacketcheck.catalog.bond_models import law_as_held
from jacketcheck.errors import NotEvaluatedError
from jacketcheck.jacket.column_parts import ColumnBar
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics._arguments import Surface
from jacketcheck.mechanics._arrays import Real
from jacketcheck.mechanics.bond_development import developed_stress
from jacketcheck.mechanics.bond_profile import BondProfile, bond_profile

__all__ = ["BarProfile", "BarProfiles", "bar_profiles"]


@dataclass(frozen=True, eq=False)
class BarProfile:
    """One bar with one preparation of its surface.

    Attributes
    ----------
    surface
        ``chipped`` or ``unchipped``.
    along
        Stress, strain, slip and bond stress from the start of the anchorage to the top of the
        repair, when the bar carries its target stress there, or as much of it as it can develop.
    developed
        Stress at the top of the repair [MPa], at most the target.
    reaches_target
        Whether that is the target stress.
    """

    surface: Surface
    along: BondProfile
    developed: float
    reaches_target: bool


@dataclass(frozen=True, eq=False)
class BarProfiles:
    """The group of fractured bars that needs most of the length it has, on both surfaces.

    Attributes
    ----------
    where
        The group as its rows name it.
    surface
        Preparation that the jacket has.
    fracture_height
        Height of the fracture above the footing [mm].
    anchorage_start
        Height from which the bar is anchored again [mm]: its fracture, or the sleeve's lower end
        where that is higher.
    target_stress, yield_strength
        Stress to be reached at the top of the repair, and expected yield strength [MPa].
    profiles
        The jacket's own surface first; a surface that cannot be evaluated is left out.
    left_out
        Why; empty where both are there.
    """

    where: str
    surface: Surface
    fracture_height: float
    anchorage_start: float
    target_stress: float
    yield_strength: float
    profiles: tuple[BarProfile, ...]
    left_out: str


@remembered
def bar_profiles(jacket: Jacket) -> BarProfiles:
    """Stress along the fractured bars that need most of their length; one design.

    The surface that the jacket does not have is evaluated at the same confining pressure.

    Raises
    ------
    NotEvaluatedError
        If no bar is anchored by bond alone, or the jacket's own surface cannot be evaluated.
    """
    bars = debonding_bars(jacket)
    if not len(bars):
        raise NotEvaluatedError("no bar is anchored by bond alone")
    shares = [float(one.needed_length) / float(one.available_length) for one in bar_bonds(jacket)]
    neediest = int(np.argmax(shares))
    bar, share = bars.groups[neediest], held_shares(jacket)[neediest]
    other: Surface = "unchipped" if bar.surface == "chipped" else "chipped"
    profiles, left_out = [_profile(jacket, bar, share)], ""
    try:
        profiles.append(_profile(jacket, replace(bar, surface=other), share))
    except NotEvaluatedError as error:
        left_out = str(error)
    return BarProfiles(
        where=bars.name(neediest),
        surface=bar.surface,
        fracture_height=float(bar.damage_height),
        anchorage_start=float(anchorage_start(bar, jacket)),
        target_stress=float(target_stress(jacket)),
        yield_strength=float(jacket.column.layer.steel.expected_yield),
        profiles=tuple(profiles),
        left_out=left_out,
    )


def _profile(jacket: Jacket, bar: ColumnBar, share: Real) -> BarProfile:
    length = float(anchorage_length(bar, jacket))
    diameter = float(jacket.column.layer.diameter)
    law = law_as_held(bond_law_of(jacket), bond_conditions(jacket, bar), share=float(share))
    steel, target = bar_steel(jacket.column.layer.steel), float(target_stress(jacket))
    most = float(developed_stress(length, bar_diameter=diameter, law=law, steel=steel).stress)
    stress = min(most, target)
    along = bond_profile(
        length, bar_diameter=diameter, law=law, steel=steel, loaded_end_stress=stress
    )
    return BarProfile(bar.surface, along, min(most, target), most >= target)
