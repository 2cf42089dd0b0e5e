"""A jacket with actual values in place of specified ones: one sample, or many at once."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import numpy as np

from jacketcheck.analysis.interface import SHEAR_FACTOR
from jacketcheck.jacket.designs import with_values
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics._arrays import Real

__all__ = ["one_sample", "realise", "some_samples"]


def some_samples(factors: Mapping[str, Real], part: slice) -> dict[str, Real]:
    """Factors of some of the samples."""
    arrays = {name: np.asarray(value) for name, value in factors.items()}
    return {name: value[part] if value.ndim else float(value) for name, value in arrays.items()}


def one_sample(factors: Mapping[str, Real], index: int) -> dict[str, float]:
    """Factors of one of the samples, as plain numbers."""
    arrays = {name: np.asarray(value) for name, value in factors.items()}
    return {name: float(value[index] if value.ndim else value) for name, value in arrays.items()}


def realise(jacket: Jacket, factors: Mapping[str, Real]) -> Jacket:
    """Put the factors of random variables into a jacket.

    Parameters
    ----------
    jacket
        One design with specified and expected values.
    factors
        Factor of every variable: numbers, or arrays over samples.

    Returns
    -------
    Jacket
        With actual values: every specified minimum and every expected strength is the actual one.
        Factors on the capacity of single limit states are no part of it.
    """
    values = {
        **_bolts(jacket, factors),
        **_plates(jacket, factors),
        **_column(jacket, factors),
        **_bars(jacket, factors),
        **_around(jacket, factors),
        **_models(factors),
    }
    return with_values(jacket, values)


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
        # no bar breaks before it yields
        tensile = np.maximum(
            np.multiply(steel.expected_tensile, factors[f"{name}-tensile"]), actual
        )
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


def _models(factors: Mapping[str, Real]) -> dict[str, Any]:
    """Factors on what the analyses predict."""
    return {
        "models.axial_strain": factors["axial-strain"],
        "models.section_strength": factors["section-strength"],
        "models.bond_stress": factors["bond-stress"],
        "models.crack_friction": factors["clamping-friction"],
        # the analysis holds a resistance factor, which is taken out
        "models.interface_resistance": np.divide(factors["interface-friction"], SHEAR_FACTOR),
    }


def _modulus(modulus: Real, strength_factor: Real) -> Real:
    """Elastic modulus of concrete or grout [MPa], which follows the root of its strength."""
    return np.multiply(modulus, np.sqrt(strength_factor))
