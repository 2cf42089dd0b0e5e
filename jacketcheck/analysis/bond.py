"""Bond of the fractured bars above their fracture: stress developed, and length needed."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, fields

import numpy as np

from jacketcheck.analysis.clamping import clamping_need
from jacketcheck.analysis.damaged_bars import (
    anchorage_length,
    anchorage_start,
    debonding_bars,
    target_stress,
)
from jacketcheck.analysis.kept import held_share
from jacketcheck.analysis.memo import remembered_for_all
from jacketcheck.analysis.retained import bond_pressure
from jacketcheck.catalog.bond_models import BondConditions, LawOf, law_as_held
from jacketcheck.errors import NotEvaluatedError
from jacketcheck.jacket.column_parts import ColumnBar
from jacketcheck.jacket.designs import has_designs
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics._arrays import Floats, Real
from jacketcheck.mechanics._bond_records import indexed_law, law_quantities
from jacketcheck.mechanics.bar_steel import BarSteels
from jacketcheck.mechanics.bond_development import (
    DevelopmentCurve,
    bonded_length,
    developed_stress,
    development_curve,
)
from jacketcheck.mechanics.bond_law import BlendedBondLaw, BondLaw, LocalBondLaw, scaled_bond_law

__all__ = [
    "BarBond",
    "bar_bonds",
    "bar_steels",
    "bond_conditions",
    "bond_law_of",
    "held_shares",
    "stacked_law",
    "stress_at_height",
]

_WIDEST_CRACK = 0.5


@dataclass(frozen=True, eq=False)
class BarBond:
    """Bond of one group of fractured bars.

    Attributes
    ----------
    conditions
        What surrounds the bar where it is held.
    held_share
        Share of its surface that the pressure kept by the sleeve holds [-].
    law
        Local law, of the rest too.
    available_length
        From where the bar is anchored again to the top of the repair [mm].
    developed_stress
        Stress at the top of the repair [MPa], at most the tensile strength.
    target_stress
        Stress to be reached there [MPa].
    needed_length
        Shortest length that develops the target stress [mm]; infinite where none does.
    loaded_end_slip
        Slip at the top of the repair when the developed stress is reached [mm].
    """

    conditions: BondConditions
    held_share: Real
    law: LocalBondLaw
    available_length: Real
    developed_stress: Real
    target_stress: Real
    needed_length: Real
    loaded_end_slip: Real


def bar_steels(jacket: Jacket) -> BarSteels:
    """Expected stress-strain curve of the column's bars, over designs."""
    steel = jacket.column.layer.steel
    return BarSteels(
        steel.expected_yield,
        steel.expected_tensile,
        steel.hardening_strain,
        steel.ultimate_strain,
        steel.elastic_modulus,
    )


def bond_conditions(jacket: Jacket, bar: ColumnBar) -> BondConditions:
    """What surrounds a fractured bar."""
    column, layer = jacket.column, jacket.column.layer
    if bar.surface == "unchipped" and np.any(np.greater(bar.crack_width, _WIDEST_CRACK)):
        width = f"{float(np.max(bar.crack_width)):g} mm"
        reason = (
            f"crack of {width} along bar {bar.number}: bond is covered up to {_WIDEST_CRACK} mm"
        )
        raise NotEvaluatedError(f"{reason}; chip the bar free")
    cover = np.add(column.cover, column.ties.diameter) - bar.spalling_depth
    return BondConditions(
        surface=bar.surface,
        bar_diameter=layer.diameter,
        clear_rib_spacing=np.multiply(jacket.judgement.rib_spacing_ratio, layer.diameter),
        concrete_strength=column.concrete.expected,
        grout_strength=jacket.grout.strength,
        # where all cover has spalled, grout takes its place: half a bar diameter is the least that
        # the splitting equation knows
        cover=np.maximum(cover, np.multiply(0.5, layer.diameter)),
        grout_cover=np.subtract(
            jacket.sleeve.inner_radius, np.add(layer.circle_radius, np.divide(layer.diameter, 2.0))
        ),
        half_spacing=np.subtract(layer.spacing, layer.diameter) / 2.0,
        crack_width=bar.crack_width,
        confining_pressure=bond_pressure(jacket),
        splitting_held=True,
    )


def held_shares(jacket: Jacket) -> tuple[Real, ...]:
    """Share of its surface over which each group of fractured bars is held [-].

    What the sleeve keeps of its pressure over what the bars need, whatever took the rest.
    """
    pressure = bond_pressure(jacket)
    return tuple(held_share(pressure, need) for need in clamping_need(jacket).core_pressure)


def bond_law_of(jacket: Jacket) -> LawOf:
    """Local law of the jacket's bond model, its stresses times what the model leaves open."""
    law_of, factor = jacket.bond_model.law, jacket.models.bond_stress
    if isinstance(factor, float) and factor == 1.0:
        return law_of
    return lambda conditions: scaled_bond_law(law_of(conditions), factor)


@remembered_for_all
def bar_bonds(jacket: Jacket) -> tuple[BarBond, ...]:
    """Bond of every group of fractured bars, solved together."""
    bars = debonding_bars(jacket)
    if not len(bars):
        return ()
    conditions = [bond_conditions(jacket, bar) for bar in bars.groups]
    shares, law_of = held_shares(jacket), bond_law_of(jacket)
    laws = [
        law_as_held(law_of, one, share=share) for one, share in zip(conditions, shares, strict=True)
    ]
    lengths = [anchorage_length(bar, jacket) for bar in bars.groups]
    law = _over_designs(stacked_law(laws), jacket)
    length = np.stack(np.broadcast_arrays(*lengths))
    steel, diameter, target = (
        bar_steels(jacket),
        jacket.column.layer.diameter,
        target_stress(jacket),
    )
    length = _over(length, law)
    found = developed_stress(length, bar_diameter=diameter, law=law, steel=steel)
    needed = np.asarray(bonded_length(target, bar_diameter=diameter, law=law, steel=steel))
    return tuple(
        BarBond(
            conditions=conditions[index],
            held_share=shares[index],
            law=laws[index],
            available_length=lengths[index],
            developed_stress=_row(found.stress, index),
            target_stress=target,
            needed_length=_row(needed, index),
            loaded_end_slip=_row(found.loaded_end_slip, index),
        )
        for index in range(len(bars))
    )


def stress_at_height(jacket: Jacket, heights: Floats) -> Floats:
    """Stress that each group of fractured bars develops at some heights [MPa]; one design.

    Returns
    -------
    ndarray
        Shape (groups, heights); zero at and below the start of its anchorage.
    """
    bars = debonding_bars(jacket)
    if not len(bars):
        return np.empty((0, heights.size))
    rows = [
        curve.stress_over(heights[None, :] - float(anchorage_start(bar, jacket)))
        for bar, curve in zip(bars.groups, _development(jacket), strict=True)
    ]
    return np.concatenate(rows)


@remembered_for_all
def _development(jacket: Jacket) -> tuple[DevelopmentCurve, ...]:
    """Stress that each group of fractured bars develops over any length, over designs."""
    laws = [one.law for one in bar_bonds(jacket)]
    curves = development_curve(
        bar_diameter=jacket.column.layer.diameter,
        law=_over_designs(stacked_law(laws), jacket),
        steel=bar_steels(jacket),
    )
    length, stress = (np.split(rows, len(laws)) for rows in (curves.length, curves.stress))
    return tuple(DevelopmentCurve(*group) for group in zip(length, stress, strict=True))


def stacked_law(laws: Sequence[LocalBondLaw]) -> LocalBondLaw:
    """One law with the laws along its first axis, and designs along the second."""
    if not all(isinstance(law, BondLaw) for law in laws):
        blends = [_as_blend(law) for law in laws]
        shape = _shape(blends)
        return BlendedBondLaw(
            _stacked([law.held for law in blends], shape),
            _stacked([law.loose for law in blends], shape),
            np.stack([np.broadcast_to(law.share, shape) for law in blends]),
        )
    plain = [law for law in laws if isinstance(law, BondLaw)]
    return _stacked(plain, _shape(plain))


def _shape(laws: Sequence[LocalBondLaw]) -> tuple[int, ...]:
    """Shape of all quantities of some laws together."""
    return np.broadcast_shapes(*(np.shape(one) for law in laws for one in law_quantities(law)))


def _as_blend(law: LocalBondLaw) -> BlendedBondLaw:
    return BlendedBondLaw(law, law, 1.0) if isinstance(law, BondLaw) else law


def _stacked(laws: Sequence[BondLaw], shape: tuple[int, ...]) -> BondLaw:
    names = [one.name for one in fields(BondLaw)]
    return BondLaw(
        *(np.stack([np.broadcast_to(getattr(law, name), shape) for law in laws]) for name in names)
    )


def _over_designs(law: LocalBondLaw, jacket: Jacket) -> LocalBondLaw:
    """A stacked law with an axis for designs where there are any, though it is one for all."""
    if np.ndim(law.peak_stress) > 1 or not has_designs(jacket):
        return law
    return indexed_law(law, (slice(None), None))


def _over(length: Floats, law: LocalBondLaw) -> Floats:
    """Lengths with the axes of a stacked law."""
    missing = np.ndim(law.peak_stress) - length.ndim
    return length.reshape(length.shape + (1,) * missing)


def _row(values: Real, index: int) -> Real:
    row = np.asarray(values)[index]
    return row if row.ndim else float(row)
