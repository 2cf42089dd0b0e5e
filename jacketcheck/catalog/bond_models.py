"""Bond models: rules that give the local bond law of a bar in the repair."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, fields, replace
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from jacketcheck.catalog.entries import Sourced, require_figures
from jacketcheck.mechanics._arguments import Surface
from jacketcheck.mechanics._arrays import Real
from jacketcheck.mechanics.bar_bond_laws import cracked_concrete_bar_law, grouted_bar_law
from jacketcheck.mechanics.bond_law import (
    BondLaw,
    LocalBondLaw,
    blended_bond_law,
    weaker_bond_law,
)
from jacketcheck.mechanics.published_bond_laws import splitting_bond_law, splitting_bond_strength

__all__ = [
    "BondConditions",
    "BondModel",
    "LawOf",
    "built_in_bond_models",
    "grouted_law",
    "law_as_held",
]


@dataclass(frozen=True, slots=True, kw_only=True)
class BondConditions:
    """What surrounds a bar; N, mm, MPa, numbers or arrays over designs.

    Attributes
    ----------
    surface
        ``chipped``: grout surrounds the bar; ``unchipped``: cracked concrete does.
    bar_diameter
        Bar diameter [mm].
    clear_rib_spacing
        Clear distance between ribs [mm].
    concrete_strength, grout_strength
        Mean compressive strengths [MPa].
    cover
        Clear cover of the original concrete over the bar, less what has spalled [mm].
    half_spacing
        Half of the clear distance to the next bar [mm].
    grout_cover
        Bar to sleeve, over which a chipped bar is covered by grout [mm].
    crack_width
        Width of the crack along the bar [mm].
    confining_pressure
        Pressure on the face of the core that bond may count on [MPa].
    splitting_held
        Whether the sleeve holds splitting cracks together. Where it keeps a part of the pressure
        that the bar needs, a model is asked for both and the laws are blended.
    """

    surface: Surface
    bar_diameter: Real
    clear_rib_spacing: Real
    concrete_strength: Real
    grout_strength: Real
    cover: Real
    half_spacing: Real
    grout_cover: Real
    crack_width: Real
    confining_pressure: Real
    splitting_held: bool


LawOf: TypeAlias = Callable[[BondConditions], BondLaw]


@dataclass(frozen=True, slots=True, kw_only=True)
class BondModel(Sourced):
    """A local bond law that ``judgement.bond_model`` may name.

    Attributes
    ----------
    name
        Catalogue name, e.g. ``fib Model Code 2010``.
    title
        What it is, in a few words.
    law
        Gives the law of a bar. A chipped bar must never come out weaker than an unchipped one at
        equal pressure.
    """

    name: str
    title: str
    law: LawOf

    def __post_init__(self) -> None:
        """Check that there is a name and a source."""
        require_figures("bond model", self.name, self.source, {})


def built_in_bond_models() -> tuple[BondModel, ...]:
    """Bond models that come with the package."""
    return (
        BondModel(
            name="fib Model Code 2010",
            title="local law with factors for pressure, cracks along the bar and yield",
            source="fib Model Code 2010, 6.1.1, Table 6.1-1",
            law=_model_code_law,
            aliases=("fib MC2010", "MC2010"),
        ),
    )


def law_as_held(law_of: LawOf, conditions: BondConditions, *, share: Real) -> LocalBondLaw:
    """Law of a bar of whose surface a share is held by the pressure that the sleeve keeps.

    Parameters
    ----------
    law_of
        Gives the law of a bar.
    conditions
        What surrounds it where it is held; elsewhere nothing presses on it and it may split.
    share
        Share that is held [-]; a number or an array over designs.
    """
    if np.all(np.greater_equal(share, 1.0)):
        return law_of(replace(conditions, splitting_held=True))
    loose = _of_those(conditions, np.less(share, 1.0))
    return blended_bond_law(
        law_of(replace(conditions, splitting_held=True)),
        law_of(replace(loose, splitting_held=False, confining_pressure=0.0)),
        share=share,
    )


def _of_those(conditions: BondConditions, counted: NDArray[np.bool_]) -> BondConditions:
    """Conditions of the designs that count; one of these stands in for each of the others.

    So that a law is not asked beyond its range for designs in which nothing goes by it.
    """
    if np.ndim(counted) == 0 or np.all(counted):
        return conditions
    stands_in = np.where(counted, np.arange(counted.size), np.argmax(counted))
    arrays = {
        one.name: value[stands_in]
        for one in fields(conditions)
        if np.shape(value := getattr(conditions, one.name)) == counted.shape
    }
    return replace(conditions, **arrays)


def grouted_law(bar: BondConditions) -> BondLaw:
    """Pull-out while the sleeve holds the grout together; splitting too where it does not."""
    law = grouted_bar_law(
        bar.grout_strength,
        clear_rib_spacing=bar.clear_rib_spacing,
        confining_pressure=bar.confining_pressure,
    )
    if bar.splitting_held:
        return law
    strength = splitting_bond_strength(
        bar.grout_strength,
        bar_diameter=bar.bar_diameter,
        minimum_cover=np.minimum(bar.grout_cover, bar.half_spacing),
        maximum_cover=np.maximum(bar.grout_cover, bar.half_spacing),
        bond_condition="good",
    )
    split = splitting_bond_law(law, splitting_strength=strength, confinement="unconfined")
    return weaker_bond_law(split, law)


def _model_code_law(bar: BondConditions) -> BondLaw:
    chipped = grouted_law(bar)
    if bar.surface == "chipped":
        return chipped
    return cracked_concrete_bar_law(
        bar.concrete_strength,
        bar_diameter=bar.bar_diameter,
        clear_rib_spacing=bar.clear_rib_spacing,
        minimum_cover=np.minimum(bar.cover, bar.half_spacing),
        maximum_cover=np.maximum(bar.cover, bar.half_spacing),
        confinement="stirrups" if bar.splitting_held else "unconfined",
        not_above=chipped,
        crack_width=bar.crack_width,
        confining_pressure=bar.confining_pressure,
    )
