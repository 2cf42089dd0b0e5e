"""A jacket with actual values in place of specified ones: one sample, or many at once."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

import numpy as np

from jacketcheck.catalog.bond_models import LawOf
from jacketcheck.jacket.designs import with_values
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics._arrays import Real
from jacketcheck.mechanics.bond_law import scaled_bond_law

__all__ = ["Realisation", "one_sample", "realise", "some_samples"]


@dataclass(frozen=True, eq=False)
class Realisation:
    """Actual values of a jacket.

    Attributes
    ----------
    jacket
        The jacket with them; every specified minimum and every expected strength is the actual
        one. Numbers, or arrays over samples.
    factors
        Factor of every random variable, those of models among them.
    """

    jacket: Jacket
    factors: Mapping[str, Real]


def some_samples(factors: Mapping[str, Real], part: slice) -> dict[str, Real]:
    """Factors of some of the samples."""
    arrays = {name: np.asarray(value) for name, value in factors.items()}
    return {name: value[part] if value.ndim else float(value) for name, value in arrays.items()}


def one_sample(factors: Mapping[str, Real], index: int) -> dict[str, float]:
    """Factors of one of the samples, as plain numbers."""
    arrays = {name: np.asarray(value) for name, value in factors.items()}
    return {name: float(value[index] if value.ndim else value) for name, value in arrays.items()}


def realise(jacket: Jacket, factors: Mapping[str, Real]) -> Realisation:
    """Put the factors of all random variables into a jacket.

    Parameters
    ----------
    jacket
        One design with specified and expected values.
    factors
        Factor of every variable: numbers, or arrays over samples.
    """
    values = {
        **_bolts(jacket, factors),
        **_plates(jacket, factors),
        **_column(jacket, factors),
        **_bars(jacket, factors),
        **_around(jacket, factors),
        **_judgement(jacket, factors),
    }
    return Realisation(with_values(jacket, values), factors)


def _bolts(jacket: Jacket, factors: Mapping[str, Real]) -> dict[str, Any]:
    bolts, strength = jacket.bolts, factors["bolt-strength"]
    # classes of several codes describe one surface
    smallest = min(one.slip_coefficient for one in bolts.faying_classes)
    friction = np.multiply(smallest, factors["slip-coefficient"])
    return {
        "bolts.pretension": np.multiply(bolts.pretension, factors["bolt-pretension"]),
        "bolts.tensile_strength": np.multiply(bolts.tensile_strength, strength),
        "bolts.shear_stress": np.multiply(bolts.shear_stress, strength) * factors["bolt-shear"],
        **{
            f"bolts.faying_classes.{index}.slip_coefficient": friction
            for index in range(1, len(bolts.faying_classes) + 1)
        },
    }


def _plates(jacket: Jacket, factors: Mapping[str, Real]) -> dict[str, Any]:
    values: dict[str, Any] = {}
    for name, steel in (("sleeve", jacket.sleeve.steel), ("splice", jacket.splice.steel)):
        strength = np.multiply(steel.yield_strength, factors[f"{name}-yield"])
        values[f"{name}.steel.yield_strength"] = strength
        values[f"{name}.steel.expected_yield"] = strength
        values[f"{name}.steel.tensile_strength"] = np.multiply(
            steel.tensile_strength, factors[f"{name}-tensile"]
        )
    thickness, splice = factors["splice-thickness"], jacket.splice
    values["sleeve.thickness"] = np.multiply(jacket.sleeve.thickness, factors["sleeve-thickness"])
    values["splice.outside_thickness"] = np.multiply(splice.outside_thickness, thickness)
    values["splice.inside_thickness"] = np.multiply(splice.inside_thickness, thickness)
    return values


def _column(jacket: Jacket, factors: Mapping[str, Real]) -> dict[str, Any]:
    """Concrete, hoops, and the cage that moves inwards as the cover grows."""
    column, concrete = jacket.column, jacket.column.concrete
    strength = np.multiply(concrete.expected, factors["column-concrete"])
    modulus = _modulus(concrete.elastic_modulus, factors["column-concrete"])
    hoops = np.multiply(column.ties.expected_yield, factors["column-hoop-yield"])
    cover = np.multiply(column.cover, factors["column-cover"])
    inwards = np.subtract(cover, column.cover)
    return {
        "column.concrete.expected": strength,
        "column.concrete.specified": strength,
        "column.concrete.elastic_modulus": modulus,
        "column.ties.expected_yield": hoops,
        "column.ties.yield_strength": hoops,
        "column.cover": cover,
        "column.layer.circle_radius": np.subtract(column.layer.circle_radius, inwards),
        "column.ties.core_diameter": np.subtract(column.ties.core_diameter, 2.0 * inwards),
        # in place of a code's factor; the largest moment is never below the idealised one
        "column.layer.steel.overstrength": np.maximum(factors["hinge-moment"], 1.0),
    }  # fmt: skip


def _bars(jacket: Jacket, factors: Mapping[str, Real]) -> dict[str, Any]:
    layers = [("column.layer.steel", "column-bar", jacket.column.layer.steel)]
    if jacket.added_bars is not None:
        steel = jacket.added_bars.layer.steel
        layers.append(("added_bars.layer.steel", "added-bar", steel))
    values: dict[str, Any] = {}
    for path, name, steel in layers:
        actual = np.multiply(steel.expected_yield, factors[f"{name}-yield"])
        tensile = np.multiply(steel.expected_tensile, factors[f"{name}-tensile"])
        values |= {
            f"{path}.yield_strength": actual,
            f"{path}.expected_yield": actual,
            f"{path}.tensile_strength": tensile,
            f"{path}.expected_tensile": tensile,
        }
    return values


def _around(jacket: Jacket, factors: Mapping[str, Real]) -> dict[str, Any]:
    grout, footing, strength = jacket.grout, jacket.footing, factors["grout-strength"]
    values: dict[str, Any] = {
        "grout.strength": np.multiply(grout.strength, strength),
        "grout.elastic_modulus": _modulus(grout.elastic_modulus, strength),
        "demands.axial_load": np.multiply(jacket.demands.axial_load, factors["axial-load"]),
    }
    if footing is not None:
        values["footing.concrete_strength"] = np.multiply(
            footing.concrete_strength, factors["footing-concrete"]
        )
    return values


def _judgement(jacket: Jacket, factors: Mapping[str, Real]) -> dict[str, Any]:
    friction = np.multiply(jacket.judgement.crack_friction, factors["clamping-friction"])
    return {
        "judgement": jacket.judgement.model_copy(update={"crack_friction": friction}),
        "bond_model.law": _scaled(jacket.bond_model.law, factors["bond-stress"]),
    }


def _scaled(law_of: LawOf, factor: Real) -> LawOf:
    """A bond model's law with its stresses times a factor."""
    return lambda conditions: scaled_bond_law(law_of(conditions), factor)


def _modulus(modulus: Real, strength_factor: Real) -> Real:
    """Elastic modulus of concrete or grout [MPa], which follows the root of its strength."""
    return np.multiply(modulus, np.sqrt(strength_factor))
