"""Walks among passing inputs towards their extremes, and prints the strangest that still pass.

    python tests/extremes/walk.py --walks 40 --seed 1

Each field by itself is pushed down and up as far as the verdict stays ok; then several fields at
once, drawn at random, are pushed along a random direction. Whatever passes is no proof of an error,
but somebody should be able to say why it is acceptable: the list, with a sentence on each, stands
in the README beside this file.
"""

from __future__ import annotations

import argparse
import math
import sys
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Final

import numpy as np

ROOT: Final = Path(__file__).parents[2]
sys.path.insert(0, str(ROOT))

from jacketcheck.engine import evaluate  # noqa: E402 - found by the line above
from jacketcheck.engine.judgement_rows import judgement_rows  # noqa: E402
from jacketcheck.errors import InputError  # noqa: E402
from jacketcheck.host import load_host  # noqa: E402
from jacketcheck.inputs.fields import field_at, field_paths, value_at  # noqa: E402
from jacketcheck.inputs.load import read_input  # noqa: E402
from jacketcheck.inputs.quantity import Quantity  # noqa: E402
from jacketcheck.inputs.repair_file import RepairInput  # noqa: E402
from jacketcheck.inputs.replaced import replaced  # noqa: E402
from jacketcheck.jacket.build import build_jacket  # noqa: E402
from jacketcheck.results import Status, worst_status  # noqa: E402
from jacketcheck.units import in_both_systems  # noqa: E402

CASE: Final = ROOT / "reference_cases" / "quarry-road-pier" / "repair.toml"
HOST: Final = load_host(installed=False)
HALVINGS: Final = 8


@dataclass(frozen=True)
class Field:
    """A measured field: where it starts, and how far it may be written at all."""

    path: str
    start: float
    quantity: Quantity

    def moved(self, share: float) -> float:
        """Value on the way to the end of what may be written: 0 the start, -1 and 1 the ends."""
        end = self.quantity.low if share < 0.0 else self.quantity.high
        if self.start > 0.0 and end > 0.0:
            return float(self.start * (end / self.start) ** abs(share))
        return float(self.start + (end - self.start) * abs(share))


@dataclass(frozen=True)
class Extreme:
    """The farthest passing input of one walk."""

    values: Mapping[Field, float]
    share: float
    next_row: str

    @property
    def strangeness(self) -> float:
        """Largest factor by which a field moved, as a logarithm."""
        return max(abs(math.log(max(value, 1e-9) / max(field.start, 1e-9)))
                   for field, value in self.values.items())  # fmt: skip


def fields_of(repair: RepairInput) -> tuple[Field, ...]:
    """Every measured field that the input writes."""
    found = []
    for path in field_paths(repair):
        quantity, value = field_at(path, repair).quantity, value_at(path, repair)
        if quantity is not None and isinstance(value, float):
            found.append(Field(path, value, quantity))
    return tuple(found)


def refusal(repair: RepairInput, values: Mapping[Field, float]) -> str:
    """What stops an input from passing; empty where it passes."""
    changed = replaced(repair, {field.path: value for field, value in values.items()})
    try:
        jacket = build_jacket(changed, catalog=HOST.catalog)
    except InputError as error:
        return f"input: {error.problems[0].path}"
    results = evaluate(jacket, host=HOST)
    results += judgement_rows(changed, results, host=HOST, provisions="us")
    if worst_status(results) is Status.OK:
        return ""
    return max(results, key=lambda row: row.severity).title


def walk(repair: RepairInput, directions: Mapping[Field, float]) -> Extreme:
    """Farthest passing input along a direction, found by halving."""
    low, high, why = 0.0, 1.0, ""
    for _ in range(HALVINGS):
        middle = high if not why else (low + high) / 2.0
        refused = refusal(repair, {one: one.moved(middle * way) for one, way in directions.items()})
        if refused:
            high, why = middle, refused
        elif middle == high:
            return Extreme({one: one.moved(way) for one, way in directions.items()}, 1.0, "nothing")
        else:
            low = middle
    return Extreme({one: one.moved(low * way) for one, way in directions.items()}, low, why)


def walks(repair: RepairInput, *, count: int, seed: int) -> Iterator[Extreme]:
    """Each field both ways, then fields drawn together."""
    fields = fields_of(repair)
    for field in fields:
        yield walk(repair, {field: -1.0})
        yield walk(repair, {field: 1.0})
    draw = np.random.default_rng(seed)
    for _ in range(count):
        chosen = draw.choice(len(fields), size=int(draw.integers(2, 6)), replace=False)
        yield walk(repair, {fields[index]: float(draw.uniform(-1.0, 1.0)) for index in chosen})


def shown(extreme: Extreme) -> str:
    """One line of the list."""
    moved = ", ".join(
        f"{field.path} {in_both_systems(field.start, field.quantity.unit)} → "
        f"{in_both_systems(value, field.quantity.unit)}"
        for field, value in extreme.values.items()
    )
    return f"| {math.exp(min(extreme.strangeness, 50.0)):.3g} | {moved} | {extreme.next_row} |"


def main() -> int:
    """Walk and print."""
    parser = argparse.ArgumentParser(description=str(__doc__).partition("\n")[0])
    parser.add_argument("--case", type=Path, default=CASE, help="a repair file that passes")
    parser.add_argument("--walks", type=int, default=40, help="walks along several fields at once")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--most", type=int, default=60, help="lines to print")
    options = parser.parse_args()
    repair = read_input(options.case, catalog=HOST.catalog).base
    if refused := refusal(repair, {}):
        parser.error(f"{options.case} does not pass: {refused}")
    found = sorted(
        walks(repair, count=options.walks, seed=options.seed), key=lambda one: -one.strangeness
    )
    print("| factor | what still passes | what comes next |\n|---|---|---|")
    for extreme in found[: options.most]:
        print(shown(extreme))
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
