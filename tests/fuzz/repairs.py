"""Repairs that must be accepted, drawn at random over what an input may ask for.

Everything is drawn from a `random.Random`, so that the long run and hypothesis share one generator.
"""

from __future__ import annotations

import math
from random import Random
from typing import Any, Final

from jacketcheck.catalog.catalog import Catalog, built_in_catalog
from jacketcheck.catalog.records import Bar, BoltSize, RebarSteel
from jacketcheck.errors import DomainError
from tests.fuzz.toml_writing import Table

__all__ = ["FACTORS", "in_some_unit", "valid_repair"]

FACTORS: Final[dict[str, dict[str, float]]] = {
    "mm": {"mm": 1.0, "cm": 10.0, "m": 1000.0, "in": 25.4, "ft": 304.8},
    "N": {"N": 1.0, "kN": 1e3, "MN": 1e6, "lbf": 4.4482216152605, "kip": 4448.2216152605},
    "MPa": {
        "MPa": 1.0, "N/mm2": 1.0, "kPa": 1e-3, "GPa": 1e3,
        "psi": 4.4482216152605 / 25.4**2, "ksi": 4448.2216152605 / 25.4**2,
    },
    "deg": {"deg": 1.0, "rad": 180.0 / math.pi},
}  # fmt: skip
"""Units by dimension, with their size in the internal one: definitions, not the package's own."""

_LETTERS = "abcdefghij KLMNOPQRST 0123456789 äöüßéñçøå 日本橋 Ωμ≤°½ '\"\\#[]{}=,.;:<>|&%"


def in_some_unit(random: Random, value: float, internal: str) -> str:
    """A quantity written in one of the units of its dimension."""
    unit = random.choice(list(FACTORS[internal]))
    return f"{value / FACTORS[internal][unit]!r} {unit}"


def valid_repair(random: Random, catalog: Catalog | None = None) -> Table:
    """Tables of a repair that breaks no rule."""
    return _Drawing(random, built_in_catalog() if catalog is None else catalog).tables()


class _Drawing:
    """One repair, drawn from the column outwards; each part leaves room for the next."""

    def __init__(self, random: Random, catalog: Catalog) -> None:
        self.random = random
        self.catalog = catalog
        self.diameter = random.uniform(400.0, 2600.0)
        double = random.random() < 0.3
        span = self.diameter * random.uniform(3.0, 10.0)
        self.column_height = 2.0 * span if double else span
        self.curvature = "double" if double else "single"
        self.repair_height = min(self.diameter * random.uniform(0.8, 2.0), 0.9 * span, 9000.0)
        self.gap = random.uniform(0.0, min(100.0, 0.3 * self.repair_height))
        self.bar_count = 0

    def tables(self) -> Table:
        column = self._column()
        bolts, splice, inside = self._bolts_and_splice()
        added, annulus = self._added_bars(inside)
        sleeve = self._sleeve(self.diameter + 2.0 * annulus)
        found: Table = {
            "job": self._job(),
            "column": column,
            "damage": self._damage(),
            "repair": self._repair(),
            "sleeve": sleeve,
            "splice": splice,
            "bolts": self._narrow_enough(bolts, self.diameter + 2.0 * annulus),
            "grout": {"strength": self._stress(15.0, 130.0)},
            "actions": self._actions(),
        }
        if added is not None:
            found["added_bars"] = added
            footing = {"concrete_strength": self._stress(15.0, 70.0)}
            self._perhaps(footing, "depth", lambda: self._length(4000.0, 9000.0))
            found["footing"] = footing
        if judgement := self._judgement():
            found["judgement"] = judgement
        if variants := self._variants():
            found["variants"] = variants
        return found

    def _length(self, low: float, high: float) -> str:
        return in_some_unit(self.random, self.random.uniform(low, high), "mm")

    def _stress(self, low: float, high: float) -> str:
        return in_some_unit(self.random, self.random.uniform(low, high), "MPa")

    def _perhaps(self, table: Table, key: str, draw: Any, chance: float = 0.4) -> None:
        """Fill in an optional field, or leave it out."""
        if self.random.random() < chance:
            table[key] = draw()

    def _job(self) -> Table:
        text = "".join(self.random.choice(_LETTERS) for _ in range(self.random.randint(1, 30)))
        table: Table = {"title": f"Invented {text}", "units": self.random.choice(["si", "us"])}
        self._perhaps(table, "variant", lambda: "as drawn")
        self._perhaps(table, "note", lambda: "two\nlines", chance=0.1)
        return table

    def _bar_and_steel(self, low: float, high: float) -> tuple[Bar, RebarSteel]:
        """A size within a range, and a steel that has figures for it."""
        bars = [one for one in self.catalog.bars.values() if low <= one.diameter <= high]
        bar = self.random.choice(bars)
        return bar, self.random.choice(
            [one for one in self.catalog.rebar_steels.values() if _has_figures(one, bar)]
        )

    def _column(self) -> Table:
        random = self.random
        bar, steel = self._bar_and_steel(12.0, min(45.0, self.diameter / 25.0))
        tie, tie_steel = self._bar_and_steel(6.0, 20.0)
        cover = random.uniform(15.0, min(100.0, self.diameter / 10.0))
        circle = self.diameter / 2.0 - cover - tie.diameter - bar.diameter / 2.0
        most = min(200, int(2.0 * math.pi * circle / (2.0 * bar.diameter)))
        self.bar_count = random.randint(6, max(6, most))
        bars: Table = {"size": bar.name, "count": self.bar_count, "steel": steel.name}
        # neither at a clock position that a damage record could name midway between two bars
        self._perhaps(bars, "first_angle", lambda: f"{random.uniform(-360, 360):.3f} deg")
        strength = random.uniform(15.0, 70.0)
        table: Table = {
            "diameter": in_some_unit(random, self.diameter, "mm"),
            "height": in_some_unit(random, self.column_height, "mm"),
            "curvature": self.curvature,
            "cover": in_some_unit(random, cover, "mm"),
            "concrete_strength": in_some_unit(random, strength, "MPa"),
            "bars": bars,
            "hoops": {
                "kind": random.choice(["hoops", "spiral"]),
                "size": tie.name,
                "spacing": self._length(2.0 * tie.diameter, 350.0),
                "steel": tie_steel.name,
            },
        }
        self._perhaps(table, "concrete_expected", lambda: self._stress(1.01 * strength, 90.0))
        return table

    def _damage(self) -> list[Table]:
        random = self.random
        numbers = random.sample(range(1, self.bar_count + 1), self.bar_count - 2)
        records = []
        for _ in range(random.randint(0, 4)):
            if not numbers:
                break
            group = [numbers.pop() for _ in range(random.randint(1, min(3, len(numbers))))]
            record: Table = {
                "bars": group,
                "state": random.choice(["fractured", "buckled", "yielded", "intact"]),
                "height": self._length(0.0, 0.5 * self.repair_height),
            }
            self._perhaps(record, "crack_width", lambda: self._length(0.0, 1.0))
            self._perhaps(record, "spalling_depth", lambda: self._length(0.0, 100.0))
            self._perhaps(record, "surface", lambda: random.choice(["chipped", "unchipped"]))
            records.append(record)
        return records

    def _repair(self) -> Table:
        random = self.random
        table: Table = {
            "height": in_some_unit(random, self.repair_height, "mm"),
            "gap": in_some_unit(random, self.gap, "mm"),
            "surface": random.choice(["chipped", "unchipped"]),
        }
        self._perhaps(table, "column_face", lambda: random.choice(["roughened", "smooth"]))
        side = {"clock_from": "11:00", "clock_to": "4:30", "surface": "unchipped"}
        self._perhaps(table, "sides", lambda: [side], chance=0.2)
        return table

    def _sleeve(self, inner_diameter: float) -> Table:
        table: Table = {
            "inner_diameter": in_some_unit(self.random, inner_diameter, "mm"),
            **self._plate(),
            "seam_gap": self._length(0.0, 40.0),
        }
        self._perhaps(table, "seam_angle", lambda: f"{self.random.uniform(-180, 180):.2f} deg")
        self._perhaps(table, "exposure", lambda: self.random.choice(["painted", "weathering"]))
        return table

    def _plate(self) -> Table:
        steel = self.random.choice(list(self.catalog.plate_steels.values()))
        most = min(40.0, 0.99 * steel.max_thickness)
        return {"thickness": self._length(3.0, most), "steel": steel.name}

    def _bolts_and_splice(self) -> tuple[Table, Table, float]:
        """Bolts, splice plates, and what stands inside the sleeve [mm]."""
        random = self.random
        product = random.choice(list(self.catalog.bolts.values()))
        size = random.choice([one for one in product.sizes.values() if self._fits(one)])
        kinds = ["snug"]
        if size.pretension is not None:
            kinds += ["turn-of-nut", "calibrated-wrench", "direct-tension-indicator"]
            kinds += ["twist-off"] if product.assembly == "twist-off" else []
        codes: dict[str, str] = {}
        for one in random.sample(
            list(self.catalog.faying_classes.values()), len(self.catalog.faying_classes)
        ):
            codes.setdefault(one.code, one.name)
        named = random.sample(list(codes.values()), random.randint(1, len(codes)))
        across = max(size.nut_width, *size.holes.values())
        height = self.repair_height - self.gap
        end = across * random.uniform(0.6, 1.2)
        pitch = min(across * random.uniform(1.05, 2.5), height - 2.0 * end - 1.0)
        bolts: Table = {
            "product": product.name,
            "diameter": size.name,
            "columns": random.randint(1, 4),
            "pitch": f"{pitch!r} mm",
            "gauge": f"{across * random.uniform(1.05, 2.0)!r} mm",
            "seam_edge_distance": f"{across * random.uniform(0.55, 1.5)!r} mm",
            "plate_edge_distance": f"{across * random.uniform(0.55, 1.5)!r} mm",
            "hole": self._hole(),
            "threads": random.choice(["included", "excluded"]),
            "faying_class": named[0] if len(named) == 1 and random.random() < 0.5 else named,
            "tightening": random.choice(kinds),
        }
        if random.random() < 0.5:
            bolts["end_distance"] = f"{end!r} mm"
        else:
            bolts["rows"] = int((height - 2.0 * end) / pitch) + 1
        self._perhaps(bolts, "hole_making", lambda: random.choice(["drilled", "punched"]))
        self._perhaps(bolts, "torque_coefficient", lambda: round(random.uniform(0.1, 0.3), 3))
        splice: Table = {"sides": random.choice(["outside", "both"]), **self._plate()}
        stack = max(size.head_height, size.nut_height)
        return bolts, splice, stack + (45.0 if splice["sides"] == "both" else 0.0)

    def _fits(self, size: BoltSize) -> bool:
        across = max(size.nut_width, *size.holes.values())
        return 5.0 * across < self.repair_height - self.gap and size.diameter < self.diameter / 15.0

    def _hole(self) -> str:
        slots = [f"{kind}-{way}" for kind in ("short-slot", "long-slot") for way in _WAYS]
        return self.random.choice(["standard", "standard", "oversized", *slots])

    def _narrow_enough(self, bolts: Table, inner_diameter: float) -> Table:
        """With fewer columns, if the plates of the two seams would meet."""
        half = math.pi * inner_diameter / 2.0
        gauge = float(bolts["gauge"].split()[0])
        edges = sum(float(bolts[f"{one}_edge_distance"].split()[0]) for one in ("seam", "plate"))
        room = int((half / 2.0 - edges - 25.0) / gauge) + 1
        return {**bolts, "columns": max(1, min(bolts["columns"], room))}

    def _added_bars(self, inside: float) -> tuple[Table | None, float]:
        """Added bars, if any, and the annulus [mm]."""
        random = self.random
        annulus = inside + random.uniform(10.0, 120.0)
        if random.random() < 0.3:
            return None, annulus
        bar, steel = self._bar_and_steel(12.0, 40.0)
        annulus = max(annulus, 2.5 * bar.diameter)
        hole = bar.diameter * random.uniform(1.1, 2.0)
        circle = self.diameter + annulus
        most = min(200, int(math.pi * circle / hole * 0.99))
        table: Table = {
            "size": bar.name,
            "count": random.randint(1, most),
            "steel": steel.name,
            "circle_diameter": f"{circle!r} mm",
            "height": in_some_unit(random, self.repair_height * random.uniform(0.5, 0.99), "mm"),
            "embedment": self._length(120.0, 3500.0),
            "hole_diameter": f"{hole!r} mm",
        }
        self._perhaps(table, "bond_strength", lambda: self._stress(2.0, 20.0))
        self._perhaps(table, "breakout_precluded", lambda: random.choice([True, False]))
        return table, annulus

    def _actions(self) -> Table:
        area = math.pi * self.diameter**2 / 4.0
        share = self.random.uniform(0.0, 0.3)
        table: Table = {"axial_load": in_some_unit(self.random, share * area * 28.0, "N")}
        self._perhaps(table, "axial_strain", lambda: self.random.uniform(5e-4, 0.02))
        self._perhaps(table, "displacement_demand", lambda: self._length(0.0, 400.0))
        return table

    def _judgement(self) -> Table:
        table: Table = {}
        random = self.random
        self._perhaps(table, "clamping_strain", lambda: random.uniform(1e-4, 5e-3), 0.1)
        self._perhaps(table, "crack_friction", lambda: random.uniform(0.3, 2.0), 0.1)
        self._perhaps(table, "rib_spacing_ratio", lambda: "50 %", 0.1)
        self._perhaps(table, "bar_target", lambda: random.choice(["tensile", "yield"]), 0.2)
        self._perhaps(table, "overstrength", lambda: random.uniform(1.0, 1.6), 0.1)
        self._perhaps(
            table, "buckled_bars", lambda: random.choice(["as-fractured", "as-intact"]), 0.2
        )
        return table

    def _variants(self) -> Table:
        choices: list[tuple[str, Table]] = [
            ("strong grout", {"grout": {"strength": "100 MPa"}}),
            ("thin, dotted", {"sleeve.thickness": "4 mm"}),
            ("no damage", {"remove": ["damage"]}),
            ("chipped", {"repair": {"surface": "chipped"}}),
        ]
        return dict(self.random.sample(choices, self.random.choice([0, 0, 0, 1, 2])))


_WAYS = ("parallel", "perpendicular")


def _has_figures(steel: RebarSteel, bar: Bar) -> bool:
    try:
        steel.ultimate_strain_at(bar.diameter)
        steel.hardening_strain_at(bar.diameter)
    except DomainError:
        return False
    return True
