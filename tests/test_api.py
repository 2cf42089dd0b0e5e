"""Checking from Python: variants, provisions, order of the rows and the exit code."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import Path
from types import ModuleType
from typing import Any

import numpy as np
import pytest

from jacketcheck.api import build_variants, check, check_input, choose_variants
from jacketcheck.errors import InputError
from jacketcheck.hookspecs import hookimpl
from jacketcheck.host import Host, PluginInfo, load_host
from jacketcheck.inputs import read_text
from jacketcheck.jacket import Jacket
from jacketcheck.limit_state import LimitState, Provisions
from jacketcheck.report import ExitCode
from jacketcheck.results import Kind, Result, Status

Evaluate = Callable[[Jacket], Sequence[Result]]


def rows(*ratios: float, kind: Kind = Kind.LIMIT) -> list[Result]:
    return [
        Result("Check", f"place {place}", ratio, 1.0, "1", "a clause", kind=kind)
        for place, ratio in enumerate(ratios)
    ]


def thin(jacket: Jacket) -> list[Result]:
    """Exceeds for sleeves thinner than 10 mm."""
    return [Result("Thickness", "sleeve", 10.0, jacket.sleeve.thickness, "mm", "a clause")]


@pytest.fixture
def host_of() -> Callable[..., Host]:
    """A host with provisions `alone` of the given functions."""

    def made(*functions: Evaluate) -> Host:
        states = [
            LimitState(f"check-{index}", f"Check {index}", "alone", function)
            for index, function in enumerate(functions, start=1)
        ]
        module = ModuleType("made_for_a_test")
        hooks: dict[str, Callable[[], list[Any]]] = {
            "jacketcheck_provisions": lambda: [
                Provisions("alone", "Alone", inherits=None),
                Provisions("beside", "Beside", inherits="alone"),
            ],
            "jacketcheck_limit_states": lambda: states,
        }
        for name, hook in hooks.items():
            setattr(module, name, hookimpl(hook))
        return load_host(
            installed=False, extra=[(PluginInfo("north", "jacketcheck-north", "1.2"), module)]
        )

    return made


HostOf = Callable[..., Host]


@pytest.fixture
def path(tmp_path: Path, repair_text: str) -> Path:
    """The test repair as a file."""
    file = tmp_path / "repair.toml"
    file.write_text(repair_text, "utf-8")
    return file


def test_every_variant_under_every_set_of_provisions(path: Path, host_of: HostOf) -> None:
    report = check(path, provisions=["alone", "beside"], host=host_of(thin))
    assert [(one.variant, one.provisions, one.status) for one in report.tables] == [
        ("base", "alone", Status.OK),
        ("base", "beside", Status.OK),
        ("thin and snug", "alone", Status.EXCEEDS),
        ("thin and snug", "beside", Status.EXCEEDS),
        ("plain", "alone", Status.OK),
        ("plain", "beside", Status.OK),
    ]
    assert report.variants == ("base", "thin and snug", "plain")
    assert report.provisions == ("alone", "beside")
    assert report.provisions_titles == {
        "alone": "Alone (plug-in jacketcheck-north 1.2)",
        "beside": "Beside (plug-in jacketcheck-north 1.2)",
    }
    assert report.source == "repair.toml"
    assert len(report.digest) == 64
    assert report.exit_code is ExitCode.EXCEEDS


def test_one_name_need_not_stand_in_a_list(path: Path, host_of: HostOf) -> None:
    report = check(path, provisions="alone", variants="plain", host=host_of(thin))
    assert [(one.variant, one.provisions) for one in report.tables] == [("plain", "alone")]
    assert report.exit_code is ExitCode.WITHIN


def test_rows_come_worst_first(path: Path, host_of: HostOf) -> None:
    host = host_of(
        lambda _: rows(9.0, kind=Kind.REPORTED),
        lambda _: rows(0.2, 0.9),
        lambda _: rows(1.5, 0.2),
        lambda _: rows(np.nan),
        lambda _: rows(np.inf),
    )
    (table,) = check(path, provisions=["alone"], variants=["base"], host=host).tables
    asked = [one for one in table.results if one.limit_state != "judgement"]
    assert [(one.limit_state, one.location) for one in asked] == [
        ("check-4", ""),
        ("check-5", "place 0"),
        ("check-3", "place 0"),
        ("check-2", "place 1"),
        ("check-2", "place 0"),
        ("check-3", "place 1"),
        ("check-1", "place 0"),
    ]
    assert table.governing is table.results[0]
    assert len(table.limits()) == 5


@pytest.mark.parametrize(
    ("functions", "code"),
    [
        ([lambda _: rows(0.5, 1.0)], 0),
        ([lambda _: rows(0.5, 1.0001)], 1),
        ([lambda _: rows(np.inf)], 1),
        ([lambda _: rows(np.nan)], 3),
        ([lambda _: rows(5.0), lambda _: rows(np.nan)], 3),
        ([lambda _: rows(0.5, kind=Kind.REPORTED)], 3),
        ([], 3),
    ],
)
def test_exit_codes(path: Path, host_of: HostOf, functions: list[Evaluate], code: int) -> None:
    report = check(path, provisions=["alone"], variants=["base"], host=host_of(*functions))
    assert report.exit_code == code


def test_unknown_variants(repair_text: str) -> None:
    file = read_text(repair_text, source="repair.toml")
    assert choose_variants(file, None) == ("base", "thin and snug", "plain")
    assert choose_variants(file, ["plain", "base", "plain"]) == ("plain", "base")
    with pytest.raises(InputError) as caught:
        choose_variants(file, ["plane", "base", "\x1b"])
    assert [str(one) for one in caught.value.problems] == [
        'variant = "plane": is not in the file; known are "base", "thin and snug", "plain"',
        'variant = "\\u001b": is not in the file; known are "base", "thin and snug", "plain"',
    ]


def test_unknown_provisions_come_before_any_work(path: Path, host_of: HostOf) -> None:
    with pytest.raises(InputError, match='provisions = "uk": is not known'):
        check(path, provisions=["alone", "uk"], host=host_of(thin))


def test_impossible_geometry_is_told_for_all_variants_and_once(
    repair_text: str, host_of: HostOf
) -> None:
    text = (
        repair_text.replace('pitch = "5 in"', 'pitch = "6 in"')
        + '[variants."gap too wide"]\nrepair.gap = "30 in"\n'
        + "[variants.dense]\ndamage.2.bars = [3, 2]\n"
    )
    file = read_text(text, source="repair.toml")
    with pytest.raises(InputError) as caught:
        build_variants(file, host=host_of(), variants=file.variants)
    assert (caught.value.source, caught.value.remark) == (
        "repair.toml",
        "geometry is checked once these are mended",
    )
    assert [(one.path, one.value) for one in caught.value.problems] == [
        # "thin and snug" has the same
        ("bolts.pitch (rows and two end distances)", "1549.4 mm (61 in)"),
        # without an end distance 54 in of bolts leave - 2 in of a sleeve of 52 in
        ("variants.plain.bolts.end_distance", "-25.4 mm (-1 in)"),
        ('variants."gap too wide".repair.gap', "762 mm (30 in)"),
        (
            'variants."gap too wide".bolts.pitch (rows and two end distances)',
            "1549.4 mm (61 in)",
        ),
        ("variants.dense.damage.2", "bar 2"),
    ]


def test_progress_sees_each_pair_once(repair_text: str, host_of: HostOf) -> None:
    seen: list[tuple[str, str]] = []

    def progress(pairs: Any) -> Any:
        for pair in pairs:
            seen.append(pair)
            yield pair

    check_input(
        read_text(repair_text),
        host=host_of(thin),
        provisions=["alone"],
        variants=["base", "plain"],
        progress=progress,
    )
    assert seen == [("base", "alone"), ("plain", "alone")]
