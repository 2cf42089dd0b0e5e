"""What the kit asks of a bond model."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields, replace
from itertools import product

import numpy as np

from jacketcheck.catalog.bond_models import BondConditions, BondModel
from jacketcheck.conformance.bench import Bench
from jacketcheck.conformance.case import check
from jacketcheck.conformance.subjects import Subject
from jacketcheck.errors import JacketcheckError
from jacketcheck.mechanics._arguments import Surface
from jacketcheck.mechanics._arrays import Floats
from jacketcheck.mechanics.bond_law import BondLaw, bond_stress

__all__ = ["BOND_CHECKS"]

_SLIPS: Floats = np.array([1e-4, 1e-3, 0.01, 0.05, 0.1, 0.3, 0.6, 1.0, 2.0, 3.5, 5.0, 10.0, 20.0])
"""Slips at which laws are compared [mm]."""
_PRESSURES = (0.0, 0.5, 2.0, 6.0)
_SURFACES: tuple[Surface, ...] = ("chipped", "unchipped")
_NOISE = 1e-9

_USUAL = BondConditions(
    surface="chipped",
    bar_diameter=28.0,
    clear_rib_spacing=14.0,
    concrete_strength=36.0,
    grout_strength=55.0,
    cover=55.0,
    half_spacing=70.0,
    grout_cover=200.0,
    crack_width=0.2,
    confining_pressure=1.0,
    splitting_held=True,
)


@check("bond model")
def gives_a_law(subject: Subject, _bench: Bench) -> Iterator[str]:
    """There is a law for every usual bar, chipped or not, held together or not."""
    for conditions in _all_conditions():
        law, problem = _law(subject.item, conditions)
        if law is None:
            yield f"{_described(conditions)}: {problem}; give a law, or state its limits here"


@check("bond model")
def same_law_twice(subject: Subject, _bench: Bench) -> Iterator[str]:
    """Equal conditions get equal laws."""
    for conditions in _all_conditions():
        first, _ = _law(subject.item, conditions)
        again, _ = _law(subject.item, replace(conditions))
        if first is not None and (again is None or _numbers(first) != _numbers(again)):
            yield f"{_described(conditions)}: another law when asked again; drop chance and memory"


@check("bond model")
def one_bar_or_many(subject: Subject, _bench: Bench) -> Iterator[str]:
    """Arrays over designs get what each design gets alone."""
    pressures = np.array(_PRESSURES)
    for conditions in _all_conditions():
        together, problem = _law(subject.item, replace(conditions, confining_pressure=pressures))
        if together is None:
            yield f"{_described(conditions)}, pressures as an array: {problem}; use numpy functions"
            continue
        for index, pressure in enumerate(_PRESSURES):
            alone, _ = _law(subject.item, replace(conditions, confining_pressure=pressure))
            if alone is None:
                continue
            ours = _stress(together, trailing=True)
            found = np.broadcast_to(ours, (len(_PRESSURES), _SLIPS.size))[index]
            if not np.allclose(found, _stress(alone), rtol=1e-9):
                yield (
                    f"{_described(conditions)}, {pressure:g} MPa: another law as one of several "
                    "designs than alone"
                )


@check("bond model")
def chipped_is_never_weaker(subject: Subject, _bench: Bench) -> Iterator[str]:
    """At equal pressure a chipped bar holds at least as well as an unchipped one, at every slip."""
    for conditions in _all_conditions():
        if conditions.surface == "chipped":
            other = replace(conditions, surface="unchipped")
            yield from _weaker(subject.item, conditions, other, "than unchipped")


@check("bond model")
def pressure_never_weakens(subject: Subject, _bench: Bench) -> Iterator[str]:
    """More confining pressure never gives less bond stress."""
    for conditions in _all_conditions():
        more = replace(conditions, confining_pressure=conditions.confining_pressure + 1.0)
        yield from _weaker(subject.item, more, conditions, "than with 1 MPa less")


@check("bond model")
def strength_never_weakens(subject: Subject, _bench: Bench) -> Iterator[str]:
    """Stronger grout and concrete never give less bond stress."""
    for conditions in _all_conditions():
        for name in ("grout_strength", "concrete_strength"):
            stronger = replace(conditions, **{name: 1.2 * getattr(conditions, name)})
            yield from _weaker(subject.item, stronger, conditions, f"than with less {name}")


@check("bond model")
def damage_never_strengthens(subject: Subject, _bench: Bench) -> Iterator[str]:
    """A wider crack, less cover or a sleeve whose seams slip never give more bond stress."""
    for conditions in _all_conditions():
        cover = 0.7 * float(conditions.cover)
        for worse, change in (
            (replace(conditions, crack_width=0.4), "a crack of 0.4 mm"),
            (replace(conditions, cover=cover), "less cover"),
            (replace(conditions, splitting_held=False), "seams that slip"),
        ):
            yield from _weaker(subject.item, conditions, worse, f"than with {change}")


BOND_CHECKS = (
    gives_a_law,
    same_law_twice,
    one_bar_or_many,
    chipped_is_never_weaker,
    pressure_never_weakens,
    strength_never_weakens,
    damage_never_strengthens,
)


def _all_conditions() -> Iterator[BondConditions]:
    for surface, pressure, diameter, held in product(
        _SURFACES, _PRESSURES, (12.0, 28.0, 43.0), (True, False)
    ):
        yield replace(
            _USUAL,
            surface=surface,
            confining_pressure=pressure,
            bar_diameter=diameter,
            clear_rib_spacing=0.5 * diameter,
            splitting_held=held,
        )


def _law(model: BondModel, conditions: BondConditions) -> tuple[BondLaw | None, str]:
    """Law of a bar; where there is none, why."""
    try:
        return model.law(conditions), ""
    except JacketcheckError as error:  # of a plug-in's model every error has become one of these
        return None, str(error)


def _weaker(
    model: BondModel, better: BondConditions, worse: BondConditions, than: str
) -> Iterator[str]:
    """Complaint if what should be better has a smaller bond stress at some slip."""
    first, _ = _law(model, better)
    second, _ = _law(model, worse)
    if first is None or second is None:
        return  # told by `gives_a_law`
    strong, weak = _stress(first), _stress(second)
    low = strong < weak * (1.0 - _NOISE) - _NOISE
    if np.any(low):
        slip = int(np.argmax(low))
        yield (
            f"{_described(better)}: {strong[slip]:.4g} MPa at a slip of {_SLIPS[slip]:g} mm is "
            f"less {than}, {weak[slip]:.4g} MPa; take the smaller law for the weaker bar"
        )


def _stress(law: BondLaw, *, trailing: bool = False) -> Floats:
    """Bond stress at the slips; those of several designs along the first axis."""
    if trailing:
        columns = {one.name: np.asarray(getattr(law, one.name)) for one in fields(BondLaw)}
        law = BondLaw(**{name: one[..., np.newaxis] for name, one in columns.items()})
    return np.asarray(bond_stress(_SLIPS, law))


def _numbers(law: BondLaw) -> tuple[float, ...]:
    return tuple(float(getattr(law, one.name)) for one in fields(BondLaw))


def _described(conditions: BondConditions) -> str:
    held = "held" if conditions.splitting_held else "seams slip"
    return (
        f"{conditions.surface} bar of {float(conditions.bar_diameter):g} mm, "
        f"{float(conditions.confining_pressure):g} MPa, {held}"
    )
