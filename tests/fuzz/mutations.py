"""Ways to break a file: some leave it possible that it is still good, others cannot.

Each takes tables, or text, and gives them back changed together with the reason why they must be
refused; an empty reason leaves that to the judge.
"""

from __future__ import annotations

import copy
import datetime as dt
import math
import re
from collections.abc import Callable
from dataclasses import dataclass
from random import Random
from typing import Any, Final

from jacketcheck.inputs.fields import quantity_of
from tests.fuzz.fields import choices_at, info_at
from tests.fuzz.repairs import FACTORS
from tests.fuzz.toml_writing import Table, document

__all__ = ["GENTLE_MUTATIONS", "TABLE_MUTATIONS", "TEXT_MUTATIONS", "Broken", "mutated"]

Path = tuple[str | int, ...]
_LOOKED_UP_LATER: Final = ("sizing", "bolts", "diameter")
"""Sizes of the products that a search tries; the search tells those that none is made in."""
_QUANTITY = re.compile(r"(?P<number>[+-]?[0-9][0-9.eE+-]*) (?P<unit>[A-Za-z/0-9]+)")
_DIMENSIONS: Final = {unit: name for name, units in FACTORS.items() for unit in units}


@dataclass(frozen=True)
class Broken:
    """A mutated file.

    Attributes
    ----------
    content
        What stands in it.
    how
        Names of the mutations, in order.
    reason
        Why it must be refused; empty where it may be good.
    """

    content: bytes
    how: tuple[str, ...]
    reason: str


def mutated(random: Random, tables: Table) -> Broken:
    """A file with some mutations of its tables, and perhaps one of its text.

    Half of the files only get values that a file may hold, so that they come as far as geometry
    and the limit states.
    """
    tables = copy.deepcopy(tables)
    if random.random() < 0.5:
        names = [random.choice(list(GENTLE_MUTATIONS)) for _ in range(random.randint(1, 6))]
        for name in names:
            GENTLE_MUTATIONS[name](random, tables)
        return Broken(document(tables).encode(), tuple(names), "")
    how, reasons = [], []
    for _ in range(random.choice([0, 1, 1, 1, 2, 3])):
        name = random.choice(list(TABLE_MUTATIONS))
        how.append(name)
        # a later mutation may take away what an earlier one broke
        reasons = [TABLE_MUTATIONS[name](random, tables)]
    text = document(tables).encode("utf-8", "surrogatepass")
    if not how or random.random() < 0.3:
        name = random.choice(list(TEXT_MUTATIONS))
        how.append(name)
        text, reason = TEXT_MUTATIONS[name](random, text)
        reasons = [reason]
    return Broken(text, tuple(how), reasons[-1])


def _places(value: Any, path: Path = ()) -> list[Path]:
    """Every path below a value."""
    pairs: Any = ()
    if isinstance(value, dict):
        pairs = value.items()
    elif isinstance(value, list):
        pairs = enumerate(value)
    return [place for key, one in pairs for place in ((*path, key), *_places(one, (*path, key)))]


def _at(tables: Any, path: Path) -> Any:
    for key in path:
        tables = tables[key]
    return tables


def _leaf(random: Random, tables: Table, kind: type | tuple[type, ...] = object) -> Path | None:
    """A field of a kind that is no free text and no variant's."""
    found = [
        path
        for path in _places(tables)
        if not isinstance(_at(tables, path), dict | list)
        and isinstance(_at(tables, path), kind)
        and path[0] not in {"job", "variants"}
        and path[:3] != _LOOKED_UP_LATER
    ]
    return random.choice(found) if found else None


def _put(tables: Table, path: Path, value: Any) -> None:
    _at(tables, path[:-1])[path[-1]] = value


def _quantity(random: Random, tables: Table) -> tuple[Path, float, str] | None:
    """A quantity that is not written as zero, its number and unit."""
    found = []
    for path in _places(tables):
        value = _at(tables, path)
        match = _QUANTITY.fullmatch(value) if isinstance(value, str) else None
        if match and path[0] not in {"job", "variants"} and match["unit"] in _DIMENSIONS:
            number = float(match["number"])
            if number and math.isfinite(number):
                found.append((path, number, match["unit"]))
    return random.choice(found) if found else None


# -- mutations of tables; each returns why the file must be refused, or nothing ------------------


def _drop(random: Random, tables: Table) -> str:
    path = random.choice(_places(tables))
    holder = _at(tables, path[:-1])
    del holder[path[-1]]
    return ""


def _drop_table(random: Random, tables: Table) -> str:
    name = random.choice([key for key in _REQUIRED if key in tables] or list(tables))
    tables.pop(name)
    return f"without {name}" if name in _REQUIRED else ""


_REQUIRED = ("job", "column", "repair", "sleeve", "splice", "bolts", "grout", "actions")


def _add_key(random: Random, tables: Table) -> str:
    holders = [path for path in _places(tables) if isinstance(_at(tables, path), dict)]
    holders = [path for path in holders if path[0] != "variants"]
    holder = _at(tables, random.choice([*holders, ()]))
    name = random.choice(["thicknes", "colour", "naïve", "日本", "", "a b", "__class__", "x" * 300])
    holder[name] = random.choice([1, "10 mm", [], {}])
    return f"holds {name[:20]!r}"


def _move(random: Random, tables: Table) -> str:
    path = random.choice(_places(tables))
    value = _at(tables, path[:-1]).pop(path[-1])
    holders = [one for one in _places(tables) if isinstance(_at(tables, one), dict)]
    key = str(path[-1])
    _at(tables, random.choice([*holders, ()]))[key] = value
    return ""


def _swap(random: Random, tables: Table) -> str:
    first, second = _leaf(random, tables), _leaf(random, tables)
    if first is not None and second is not None:
        one, other = _at(tables, first), _at(tables, second)
        _put(tables, first, other)
        _put(tables, second, one)
    return ""


def _other_dimension(random: Random, tables: Table) -> str:
    found = _quantity(random, tables)
    if found is None:
        return ""
    path, number, unit = found
    others = [one for one, dimension in _DIMENSIONS.items() if dimension != _DIMENSIONS[unit]]
    wrong = random.choice([*others, "s", "kg", "mm2", "N*mm", "K", "", "min", "kN/m", "mm^3"])
    _put(tables, path, f"{number!r} {wrong}")
    return f"{'.'.join(map(str, path))} in {wrong or 'no unit'}"


def _other_unit(random: Random, tables: Table) -> str:
    found = _quantity(random, tables)
    if found is not None:
        path, number, unit = found
        alike = list(FACTORS[_DIMENSIONS[unit]])
        _put(tables, path, f"{number!r} {random.choice(alike)}")
    return ""


def _absurd(random: Random, tables: Table) -> str:
    found = _quantity(random, tables)
    if found is None:
        return ""
    path, number, unit = found
    size = abs(number) * FACTORS[_DIMENSIONS[unit]][unit]
    # beyond every range: more than 1e9 N, 80 m, 80 GPa and 720 degrees
    power = random.choice([12, 13, 20, 40, 300, 999, 5000])
    exponent = power - math.floor(math.log10(size))
    _put(tables, path, f"{number:.3f}e{exponent} {unit}" if abs(number) >= 1e-3 else f"1e{power} m")
    return f"{'.'.join(map(str, path))} is absurd"


def _negative(random: Random, tables: Table) -> str:
    found = _quantity(random, tables)
    if found is None:
        return ""
    path, number, unit = found
    _put(tables, path, f"-{abs(number)!r} {unit}")
    return "" if _DIMENSIONS[unit] == "deg" else f"{'.'.join(map(str, path))} is negative"


def _not_finite(random: Random, tables: Table) -> str:
    written = random.choice(
        [math.nan, math.inf, -math.inf, "nan mm", "inf ksi", "NaN", "-inf kN", "1e999 mm", "∞ mm"]
    )
    found = _quantity(random, tables)
    path = found[0] if found and random.random() < 0.7 else _leaf(random, tables)
    if path is None:
        return ""
    _put(tables, path, written)
    return f"{'.'.join(map(str, path))} is not finite"


def _huge_integer(random: Random, tables: Table) -> str:
    path = _leaf(random, tables)
    if path is None:
        return ""
    digits = random.choice([20, 60, 400, 1800])
    _put(tables, path, random.choice([1, -1]) * 10**digits + random.randint(0, 9))
    return f"{'.'.join(map(str, path))} is a huge integer"


def _wrong_type(random: Random, tables: Table) -> str:
    path = _leaf(random, tables)
    if path is None:
        return ""
    value = random.choice(
        [
            {"a": 1}, {}, [{}], [[]], [[1], "a"], dt.date(2031, 5, 6),
            dt.datetime(2031, 5, 6, tzinfo=dt.UTC),
        ]
    )  # fmt: skip
    _put(tables, path, value)
    return f"{'.'.join(map(str, path))} has a wrong type"


def _scalar_for_table(random: Random, tables: Table) -> str:
    names = [key for key in _REQUIRED if key in tables]
    if not names:
        return "without its tables"
    name = random.choice(names)
    tables[name] = random.choice([1, "x", [], [1], True, 2.5, [[]], [{}]])
    return f"{name} is no table"


def _other_scalar(random: Random, tables: Table) -> str:
    path = _leaf(random, tables)
    if path is not None:
        values = [True, False, 0, -1, 1, 7, 1e-30, 0.5, 1e30, "", "0", "0 mm", "x", "No. 9", "3 in"]
        _put(tables, path, random.choice(values))
    return ""


def _text_in_text(random: Random, tables: Table) -> str:
    """A character that looks like nothing, or like another, inside a text."""
    path = _leaf(random, tables, str)
    if path is not None:
        text = str(_at(tables, path))
        place = random.randint(0, len(text))
        odd = random.choice(_ODD_CHARACTERS)
        _put(tables, path, text[:place] + odd + text[place:])
    return ""


_ODD_CHARACTERS = (
    "\u200b", "\u202e", "\ufeff", "\u00a0", "\u0660", "\u0967", "٣", "½", "²", "′", "″", "−", "–",
    "µ", "μ", "K", "Å", "ﬁ", "é", "e\u0301", "🏗", "日", "\x00", "\x07", "\x1b[31m", "\x7f",
    "\r", "\n", "\t", "_", ",", "%", "'", '"', "\\", "$", "{}", "%s", "{0}", "../", "file:///",
)  # fmt: skip


def _long_text(random: Random, tables: Table) -> str:
    path = _leaf(random, tables, str)
    if path is None:
        return ""
    length = random.choice([301, 1000, 1900, 5000, 100_000, 260_000])
    _put(tables, path, random.choice(["x", "9", "é", "mm ", "1/"]) * length)
    return f"{'.'.join(map(str, path))} is {length} long"


def _deep(random: Random, tables: Table) -> str:
    value: Any = "1 mm"
    for _ in range(random.choice([13, 30, 60])):
        value = [value] if random.random() < 0.5 else {"a": value}
    tables[random.choice(list(tables) or ["job"])] = value
    return "nests deep"


def _many_entries(random: Random, tables: Table) -> str:
    count = random.choice([201, 1000, 3000])
    what = random.choice(["damage", "numbers", "clock", "sides", "count"])
    one = {"bars": [1], "state": "intact", "height": "1 mm"}
    if what == "damage":
        tables["damage"] = [copy.deepcopy(one) for _ in range(count)]
    elif what == "numbers":
        tables["damage"] = [{**one, "bars": list(range(1, count + 1))}]
    elif what == "clock":
        tables["damage"] = [{**one, "clock": ["4:30"] * count}]
    elif what == "sides":
        side = {"clock_from": "1:00", "clock_to": "2:00", "surface": "chipped"}
        tables["repair"] = {"sides": [dict(side) for _ in range(count)]}
    else:
        tables["column"] = {"bars": {"count": count * 1000}}
    return f"{count} of {what}"


def _many_variants(random: Random, tables: Table) -> str:
    count = random.choice([150, 201, 2000])
    override = random.choice([{}, {"sleeve.thickness": "10 mm"}, {"remove": ["damage"]}])
    tables["variants"] = {f"v{number}": copy.deepcopy(override) for number in range(count)}
    return f"{count} variants" if count > 200 else ""


def _entangled_variants(random: Random, tables: Table) -> str:
    """Variants that name variants, themselves, the file, or what they take away."""
    base = tables.get("job", {})
    own = base.get("variant", "as written") if isinstance(base, dict) else "as written"
    name, overrides = random.choice(
        [
            ("a", {"variants.a.sleeve.thickness": "10 mm"}),
            ("a", {"variants": {"a": {"variants": {"a": {}}}}}),
            ("a", {"remove": ["variants"]}),
            ("a", {"remove": ["remove"]}),
            ("a", {"remove": ["sleeve"], "sleeve.thickness": "10 mm"}),
            ("a", {"remove": ["column", "column.bars"]}),
            ("a", {"remove": "damage"}),
            ("a", {"remove": [["damage"]]}),
            ("a", {"remove.remove": ["damage"]}),
            (str(own), {"sleeve.thickness": "10 mm"}),
            ("a", {"sleeve": "variants.a.sleeve"}),
            ("a", {"job.variant.a": "b"}),
            ("a", {"..": 1}),
            ("a", {"": {"": 1}}),
            ("a", {"damage.0.height": "1 mm"}),
            ("a", {"damage.99999999999999999999.height": "1 mm"}),
            ("a", {"column.bars.count.x.y": 3}),
            ("", {"sleeve.thickness": "10 mm"}),
            ("a\n", {"sleeve.thickness": "10 mm"}),
            ("x" * 61, {"sleeve.thickness": "10 mm"}),
        ]
    )
    tables["variants"] = {name: overrides}
    return f"variant {name[:10]!r} with {str(overrides)[:60]}"


TABLE_MUTATIONS: Final[dict[str, Callable[[Random, Table], str]]] = {
    "field dropped": _drop,
    "table dropped": _drop_table,
    "unknown field": _add_key,
    "field moved": _move,
    "values exchanged": _swap,
    "unit of another dimension": _other_dimension,
    "another unit": _other_unit,
    "absurd magnitude": _absurd,
    "negative": _negative,
    "not finite": _not_finite,
    "huge integer": _huge_integer,
    "wrong type": _wrong_type,
    "no table": _scalar_for_table,
    "another scalar": _other_scalar,
    "odd character": _text_in_text,
    "long text": _long_text,
    "deep nesting": _deep,
    "many entries": _many_entries,
    "many variants": _many_variants,
    "entangled variants": _entangled_variants,
}


# -- mutations after which each field alone is good ----------------------------------------------


def _scaled(random: Random, tables: Table) -> None:
    found = _quantity(random, tables)
    if found is not None:
        path, number, unit = found
        _put(tables, path, f"{number * 10.0 ** random.uniform(-0.6, 0.6)!r} {unit}")


def _extreme(random: Random, tables: Table) -> None:
    """One end of what a field may be, or just inside it."""
    found = _quantity(random, tables)
    info = info_at(found[0]) if found else None
    quantity = quantity_of(info) if info else None
    if found and quantity:
        end = random.choice([quantity.low, quantity.high])
        inside = end + random.choice([0.0, 0.0, 1e-9, 1e-3]) * (
            quantity.high - end or quantity.low - end
        )
        _put(tables, found[0], f"{inside!r} {quantity.unit}")


def _other_choice(random: Random, tables: Table) -> None:
    paths = [path for path in _places(tables) if path[0] != "variants" and choices_at(path)]
    paths = [path for path in paths if isinstance(_at(tables, path), str)]
    if paths:
        path = random.choice(paths)
        _put(tables, path, random.choice(choices_at(path)))


def _other_count(random: Random, tables: Table) -> None:
    path = _leaf(random, tables, int)
    if path is not None and not isinstance(_at(tables, path), bool):
        number = int(_at(tables, path))
        _put(tables, path, random.choice([1, 2, 6, 200, number + 1, number * 2, number // 2]))


def _optional_dropped(random: Random, tables: Table) -> None:
    paths = [path for path in _places(tables) if path[0] != "variants"]
    paths = [path for path in paths if (info := info_at(path)) and not info.is_required()]
    paths = [path for path in paths if isinstance(path[-1], str)]
    if paths:
        path = random.choice(paths)
        del _at(tables, path[:-1])[path[-1]]


def _optional_added(random: Random, tables: Table) -> None:
    """An optional quantity somewhere within its range, more often small than large."""
    holder, name = random.choice(
        [
            ("column", "concrete_expected"), ("grout", "elastic_modulus"), ("repair", "gap"),
            ("actions", "axial_strain"), ("actions", "displacement_demand"),
            ("judgement", "overstrength"), ("judgement", "crack_friction"),
            ("judgement", "clamping_strain"), ("judgement", "rib_spacing_ratio"),
            ("added_bars", "bond_strength"), ("bolts", "measured_tension"),
            ("bolts", "torque_coefficient"), ("footing", "depth"), ("splice", "inside_thickness"),
        ]
    )  # fmt: skip
    info = info_at((holder, name))
    quantity = quantity_of(info) if info else None
    if quantity and (holder in tables or holder == "judgement"):
        share = random.random() ** 3
        value = quantity.low + share * (quantity.high - quantity.low)
        unit = "" if quantity.unit == "1" else f" {quantity.unit}"
        tables.setdefault(holder, {})[name] = f"{value!r}{unit}"


GENTLE_MUTATIONS: Final[dict[str, Callable[[Random, Table], None]]] = {
    "scaled": _scaled,
    "at an end of its range": _extreme,
    "another choice": _other_choice,
    "another count": _other_count,
    "option dropped": _optional_dropped,
    "option added": _optional_added,
}


# -- mutations of text ---------------------------------------------------------------------------


def _flip_bits(random: Random, text: bytes) -> tuple[bytes, str]:
    changed = bytearray(text)
    for _ in range(random.choice([1, 1, 2, 8])):
        if changed:
            changed[random.randrange(len(changed))] ^= 1 << random.randrange(8)
    return bytes(changed), ""


def _other_bytes(random: Random, text: bytes) -> tuple[bytes, str]:
    place = random.randint(0, len(text))
    junk = bytes(random.randrange(256) for _ in range(random.choice([1, 2, 4, 30])))
    return text[:place] + junk + text[place + random.choice([0, len(junk)]) :], ""


def _cut_off(random: Random, text: bytes) -> tuple[bytes, str]:
    return text[: random.randint(0, len(text))], ""


def _cut_out(random: Random, text: bytes) -> tuple[bytes, str]:
    start = random.randint(0, len(text))
    return text[:start] + text[start + random.randint(1, 80) :], ""


def _line_twice(random: Random, text: bytes) -> tuple[bytes, str]:
    """A key or a table that stands there twice is never TOML; a list's header may."""
    lines = text.split(b"\n")
    at = random.randrange(len(lines))
    line = lines[at].strip()
    twice = b"\n".join([*lines[: at + 1], lines[at], *lines[at + 1 :]])
    single = line and not line.startswith((b"[[", b"#"))
    return twice, "a line that stands twice" if single else ""


def _lines_moved(random: Random, text: bytes) -> tuple[bytes, str]:
    lines = text.split(b"\n")
    line = lines.pop(random.randrange(len(lines)))
    lines.insert(random.randint(0, len(lines)), line)
    return b"\n".join(lines), ""


def _file_twice(_: Random, text: bytes) -> tuple[bytes, str]:
    return text + text, "the file stands twice" if text.strip() else ""


def _other_encoding(random: Random, text: bytes) -> tuple[bytes, str]:
    name = random.choice(["utf-16", "utf-32", "utf-16-be", "utf-8-sig", "cp500"])
    whole = text.decode("utf-8", "replace")
    if not whole.strip():
        return text, ""
    return whole.encode(name, "replace"), f"written as {name}"


def _long_line(random: Random, text: bytes) -> tuple[bytes, str]:
    line = random.choice(
        [
            b"a." * 60_000 + b"a = 1", b"#" * 3000, b"[" * 100_000, b"a = " + b"9" * 4000,
            b"a = " + b"[" * 900 + b"]" * 900 + b"#" * 200, b"a." * 900 + b"a = 1" + b" " * 200,
        ]
    )  # fmt: skip
    return text + b"\n" + line, "a line beyond all use"


def _large(random: Random, text: bytes) -> tuple[bytes, str]:
    filler = random.choice([b"# nothing\n", b"\n", b"a = 1\n"])
    return text + filler * (260_000 // len(filler)), "larger than any file"


def _noise(random: Random, _: bytes) -> tuple[bytes, str]:
    letters = b"[]{}=\"'.,#\n\r\t\\ abcu0123456789-+_:eTZ\x00\x1b\xff\xc3\xa9"
    return bytes(random.choice(letters) for _ in range(random.randint(0, 400))), "noise"


TEXT_MUTATIONS: Final[dict[str, Callable[[Random, bytes], tuple[bytes, str]]]] = {
    "bits flipped": _flip_bits,
    "other bytes": _other_bytes,
    "truncated": _cut_off,
    "piece cut out": _cut_out,
    "line twice": _line_twice,
    "line moved": _lines_moved,
    "file twice": _file_twice,
    "other encoding": _other_encoding,
    "long line": _long_line,
    "large file": _large,
    "noise": _noise,
}
