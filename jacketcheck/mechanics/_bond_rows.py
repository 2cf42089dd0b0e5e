"""Bars and designs of any shape laid out as rows for the bond solution."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, fields
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from jacketcheck.mechanics._arrays import Floats, Real
from jacketcheck.mechanics._bond_march import BondedBars
from jacketcheck.mechanics._bond_records import (
    indexed_law,
    indexed_steel,
    law_quantities,
    mapped_law,
    mapped_steel,
)
from jacketcheck.mechanics.bar_steel import BarSteels, SteelCurve
from jacketcheck.mechanics.bond_law import BlendedBondLaw, LocalBondLaw

__all__ = ["BarRows"]

Indexes = NDArray[np.intp]

_AT_A_TIME: Final = 64  # rows, so that the arrays stay in the processor's cache
_ITSELF: Final = np.empty(0, dtype=np.intp)


@dataclass(frozen=True, eq=False)
class BarRows:
    """Bars in one row each; bars that are alike share one.

    Attributes
    ----------
    asked
        Length or stress asked about, shape (rows,).
    diameter
        Bar diameters [mm], shape (rows,).
    law, steel
        Parameters with one number a row.
    shape
        Shape that results take.
    owner
        Row of each bar, shape (bars,).
    """

    asked: Floats
    diameter: Floats
    law: LocalBondLaw
    steel: BarSteels
    shape: tuple[int, ...]
    owner: Indexes

    @classmethod
    def of(
        cls, asked: Real, *, bar_diameter: Real, law: LocalBondLaw, steel: SteelCurve
    ) -> BarRows:
        """Broadcast everything and lay it out in rows."""
        steels = [getattr(steel, one.name) for one in fields(BarSteels)]
        everything = (asked, bar_diameter, *law_quantities(law), *steels)
        shape = np.broadcast_shapes(*map(np.shape, everything))
        first, owner = _different(everything, shape)

        def row(values: Real) -> Floats:
            return np.ravel(np.broadcast_to(np.asarray(values, dtype=float), shape))[first]

        return cls(
            row(asked),
            row(bar_diameter),
            mapped_law(law, row),
            mapped_steel(steel, row),
            shape,
            owner,
        )

    @property
    def yield_strength(self) -> Floats:
        """Yield strength [MPa] of each row."""
        return np.asarray(self.steel.yield_strength)

    @property
    def tensile_strength(self) -> Floats:
        """Tensile strength [MPa] of each row."""
        return np.asarray(self.steel.tensile_strength)

    def chunks(self) -> Iterator[tuple[Indexes, BarRows]]:
        """Some rows at a time, and which they are.

        Rows that are held all over, or nowhere, go by one law: the slip at an energy of a blend
        takes a search, that of a law does not.
        """
        for law, rows in self._by_law():
            for start in range(0, rows.size, _AT_A_TIME):
                some = rows[start : start + _AT_A_TIME]
                own, steel = indexed_law(law, some), indexed_steel(self.steel, some)
                yield some, BarRows(self.asked[some], self.diameter[some], own, steel, (), _ITSELF)

    def _by_law(self) -> list[tuple[LocalBondLaw, Indexes]]:
        if not isinstance(self.law, BlendedBondLaw):
            return [(self.law, np.arange(self.asked.size))]
        share = np.asarray(self.law.share)
        parts = (
            (self.law.held, share >= 1.0),
            (self.law.loose, share <= 0.0),
            (self.law, (share > 0.0) & (share < 1.0)),
        )
        return [(law, np.flatnonzero(chosen)) for law, chosen in parts if np.any(chosen)]

    def bars(
        self, last_stress: Floats, *, yield_reduction: bool, cells: tuple[int, int] = (20, 16)
    ) -> BondedBars:
        """The rows as bars in bond, with nodes up to a stress [MPa]."""
        return BondedBars.of(
            self.law,
            self.steel,
            bar_diameter=self.diameter,
            last_stress=last_stress,
            yield_reduction=yield_reduction,
            cells=cells,
        )

    def shaped(self, values: NDArray[Any]) -> Any:
        """Values of the rows in the shape of the arguments."""
        return values[self.owner].reshape(self.shape)[()]


def _different(everything: Sequence[Real], shape: tuple[int, ...]) -> tuple[Indexes, Indexes]:
    """First of the bars that are alike in everything, and which of these each bar is like."""
    size = int(np.prod(shape))
    varying = [np.broadcast_to(one, shape).ravel() for one in everything if np.size(one) > 1]
    if size < 2 or not varying:
        # whatever their number, they are alike
        return np.zeros(min(size, 1), dtype=np.intp), np.zeros(size, dtype=np.intp)
    _, first, owner = np.unique(
        np.stack(varying, axis=1), axis=0, return_index=True, return_inverse=True
    )
    return first, owner.ravel()
