"""Bars that must be anchored again by bond, and what state asks that of them.

What an inspector records means for a bar:

``intact``
    Full strength and strain capacity, anchored in the footing.
``yielded``
    Full strength. Part of its strain capacity is used up; how much is not known without tests, so
    low-cycle fatigue stands on the list of what is not covered.
``buckled``
    By default (``judgement.buckled_bars = "as-fractured"``) counted as fractured: a bar that
    buckled and was straightened by the next half cycle has cracks at the root of its ribs and
    fractures soon after (Goodnight, Kowalsky and Nau 2016, J. Struct. Eng. 142(2), 04015107, from
    memory). ``"as-intact"`` is engineering judgement.
``fractured``
    Ends at the recorded height; above it the bar is anchored by bond alone, below it it is not
    counted.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from jacketcheck.analysis.memo import remembered
from jacketcheck.jacket.column_parts import ColumnBar
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics._arrays import Real
from jacketcheck.results import Steps

__all__ = [
    "DebondingBars",
    "add_anchorage_length",
    "anchorage_length",
    "anchorage_start",
    "counts_as_fractured",
    "debonding_bars",
    "target_figure",
    "target_stress",
]


@dataclass(frozen=True, eq=False)
class DebondingBars:
    """Bars that must be anchored again, those that are alike in one group.

    Attributes
    ----------
    groups
        One bar for each group, the first of it.
    members
        Numbers of the bars in each group.
    """

    groups: tuple[ColumnBar, ...]
    members: tuple[tuple[int, ...], ...]

    def __len__(self) -> int:
        return len(self.groups)

    def name(self, index: int) -> str:
        """Where a group is, as printed in a row."""
        bar = self.groups[index]
        numbers = ", ".join(str(number) for number in self.members[index])
        plural = "s" if len(self.members[index]) > 1 else ""
        return f"bar{plural} {numbers} ({bar.state})"


def counts_as_fractured(bar: ColumnBar, jacket: Jacket) -> bool:
    """Whether a bar is anchored by bond alone."""
    buckled = bar.state == "buckled" and jacket.judgement.buckled_bars == "as-fractured"
    return bar.state == "fractured" or buckled


@remembered
def debonding_bars(jacket: Jacket) -> DebondingBars:
    """Bars of the column that must be anchored again, grouped by what matters to bond."""
    groups: dict[tuple[object, ...], list[ColumnBar]] = {}
    for bar in jacket.column.bars:
        if counts_as_fractured(bar, jacket):
            key = (
                bar.state,
                bar.surface,
                _key(bar.damage_height),
                _key(bar.crack_width),
                _key(bar.spalling_depth),
            )
            groups.setdefault(key, []).append(bar)
    return DebondingBars(
        groups=tuple(bars[0] for bars in groups.values()),
        members=tuple(tuple(bar.number for bar in bars) for bars in groups.values()),
    )


def _key(value: Real) -> object:
    """Equal for equal numbers, and for equal arrays over designs."""
    return value if np.ndim(value) == 0 else np.asarray(value).tobytes()


def anchorage_start(bar: ColumnBar, jacket: Jacket) -> Real:
    """Height from which a fractured bar is anchored again [mm].

    Its fracture, or the lower end of the sleeve where that is higher: nothing clamps the bar in the
    gap below.
    """
    return np.maximum(bar.damage_height, jacket.sleeve.gap)


def anchorage_length(bar: ColumnBar, jacket: Jacket) -> Real:
    """Length over which a fractured bar is anchored again, up to the top of the repair [mm]."""
    return np.subtract(jacket.repair_height, anchorage_start(bar, jacket))


def add_anchorage_length(jacket: Jacket, steps: Steps, bar: ColumnBar) -> Real:
    """Write down where a fractured bar's anchorage lies and return its length [mm]."""
    steps.add("H", "height of repair", jacket.repair_height, "mm", "input repair.height")
    steps.add("z_f", f"{bar.state} at", bar.damage_height, "mm", f"input {bar.record or 'damage'}")
    steps.add("g", "gap, in which nothing clamps the bar", jacket.sleeve.gap, "mm",
              "input repair.gap")  # fmt: skip
    return steps.add("l", "H − max(z_f, g)", anchorage_length(bar, jacket), "mm", "geometry")


def target_stress(jacket: Jacket) -> Real:
    """Stress that a fractured bar must reach again [MPa], see ``judgement.bar_target``."""
    stress: Real = getattr(jacket.column.layer.steel, target_figure(jacket))
    return stress


def target_figure(jacket: Jacket) -> str:
    """Name of that stress among the figures of the bars' steel."""
    return f"expected_{jacket.judgement.bar_target}"
