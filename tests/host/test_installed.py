"""Broken distributions, really installed: what the command line makes of each."""

from __future__ import annotations

import importlib
import json
import subprocess
import sys
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

from jacketcheck.cli.main import main
from jacketcheck.conformance import standard_repairs
from jacketcheck.host import load_host
from tests.support.distributions import Site

ROOT = Path(__file__).parents[2]

NORTH = """
from jacketcheck.plugin import *

CLAUSE = "North Code 1:2024 2.1"

def row(demand=1.0, capacity=2.0):
    return Result("Slip by the north", "seam", demand, capacity, "N", CLAUSE)

def answer(jacket):
    {answer}

@hookimpl
def jacketcheck_provisions():
    return [Provisions("north", "North Code 1:2024")]

@hookimpl
def jacketcheck_limit_states():
    return [LimitState("seam-slip", "Slip by the north", "north", answer)]
"""
"""Provisions that inherit everything but slip from the built-in ones."""

WHO = "plug-in north (jacketcheck-north 1.2), "

Checked = Callable[..., tuple[int, dict[str, Any]]]


@pytest.fixture
def site(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Site]:
    """A folder on the path; what was imported from it is forgotten afterwards."""
    found = Site(tmp_path / "site")
    found.path.mkdir()
    monkeypatch.syspath_prepend(str(found.path))
    importlib.invalidate_caches()
    before = set(sys.modules)
    yield found
    for name in set(sys.modules) - before:
        if name.startswith("jacketcheck_"):
            del sys.modules[name]


@pytest.fixture(scope="session")
def repair(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A standard repair as a file."""
    path = tmp_path_factory.mktemp("repair") / "repair.toml"
    path.write_text(standard_repairs()["customary"], "utf-8")
    return path


@pytest.fixture
def checked(repair: Path, capsys: pytest.CaptureFixture[str]) -> Checked:
    """Exit code and tables of ``jacketcheck check --format json``, by set of provisions."""

    def run(provisions: str, *options: str) -> tuple[int, dict[str, Any]]:
        arguments = ["check", str(repair), "--provisions", provisions, "--format", "json"]
        code = main([*arguments, *options])
        document = json.loads(capsys.readouterr().out)
        assert document["exit_code"] == code
        return code, {table["provisions"]: table for table in document["tables"]} | {
            "plug-ins": document["plugins"]
        }

    return run


def rows_but_slip(table: dict[str, Any]) -> list[tuple[Any, ...]]:
    """What stands whatever the plug-in does: every row but the one it replaces."""
    keys = ("limit_state", "where", "demand", "capacity", "verdict", "clause")
    return sorted(
        tuple(str(row[key]) for key in keys)
        for row in table["rows"]
        if row["limit_state"] not in {"seam-slip", "plug-in-problem"}
    )


def slip_of(table: dict[str, Any]) -> dict[str, Any]:
    (row,) = [row for row in table["rows"] if row["limit_state"] == "seam-slip"]
    return dict(row)


def test_a_sound_one(site: Site, checked: Checked) -> None:
    site.install("jacketcheck-north", NORTH.format(answer="return [row()]"))
    code, found = checked("us,north")
    alone, by_us = checked("us", "--without", "north")
    assert code == alone
    assert rows_but_slip(found["north"]) == rows_but_slip(found["us"]) == rows_but_slip(by_us["us"])
    row = slip_of(found["north"])
    assert (row["verdict"], row["ratio"], row["origin"]) == ("ok", 0.5, "jacketcheck-north")
    assert [
        (one["name"], one["distribution"], one["version"]) for one in found["plug-ins"][1:]
    ] == [("north", "jacketcheck-north", "1.2")]


@pytest.mark.parametrize(
    ("answer", "told"),
    [
        ("raise ValueError('no good')", "limit state seam-slip: raised ValueError: no good ("),
        ("raise SystemExit(0)", "limit state seam-slip: raised SystemExit: 0 ("),
        ("raise KeyboardInterrupt", "limit state seam-slip: raised KeyboardInterrupt ("),
        ("import time; time.sleep(30)", "limit state seam-slip: did not return within 0.3 s"),
        ("return [row(float('nan'))]", "limit state seam-slip: demand is not a number (NaN)"),
        ("return [row(0.0, float('nan'))]", "limit state seam-slip: capacity is not a number"),
        ("return None", "limit state seam-slip: returned nothing"),
        ("return []", "limit state seam-slip: returned an empty sequence"),
        ("return 0.5", "limit state seam-slip: returned a float, not a sequence of Results"),
        ("return [0.5]", "limit state seam-slip: returned a float among its results"),
        ("return [row(1.0, -2.0)]", "limit state seam-slip: capacity is negative: -2"),
        ("return [row(-1.0)]", "limit state seam-slip: demand is negative: -1"),
        ("return [row(1.0, float('inf'))]", "limit state seam-slip: capacity is infinite"),
        ("return [row(), row()]", "limit state seam-slip: returned the same title, location"),
        ("jacket.sleeve.thickness = 99.0", "limit state seam-slip: raised FrozenInstanceError"),
    ],
)
def test_a_broken_answer_is_an_error_row_and_the_others_stand(
    site: Site, checked: Checked, answer: str, told: str
) -> None:
    site.install("jacketcheck-north", NORTH.format(answer=answer))
    code, found = checked("us,north", "--plugin-seconds", "0.3")
    assert code == 3
    row = slip_of(found["north"])
    assert row["verdict"] == "NOT EVALUATED"
    assert row["ratio"] is None
    assert row["origin"] == "jacketcheck-north"
    assert row["notes"][0].startswith(WHO + told)
    assert found["north"]["verdict"] == "NOT EVALUATED"
    assert found["north"]["governing"] == "seam-slip"
    assert rows_but_slip(found["north"]) == rows_but_slip(found["us"])
    # a limit state of its own provisions is none of the built-in ones' business
    code_of_us, by_us = checked("us")
    alone, _ = checked("us", "--without", "north")
    assert code_of_us == alone
    assert "NOT EVALUATED" not in {row["verdict"] for row in by_us["us"]["rows"]}


BROKEN_LOADS = [
    pytest.param("import no_such_module", "import: raised ModuleNotFoundError", id="import"),
    pytest.param("raise SystemExit(0)", "import: raised SystemExit: 0", id="leaves at import"),
    pytest.param("def", "import: raised SyntaxError", id="syntax"),
    pytest.param("import time; time.sleep(30)", "import: did not return within 0.3 s", id="hangs"),
    pytest.param(
        """
        from jacketcheck.plugin import hookimpl
        @hookimpl
        def jacketcheck_limit_states():
            raise ValueError("no good")
        """,
        "jacketcheck_limit_states: raised ValueError: no good",
        id="hook raises",
    ),
    pytest.param(
        """
        from jacketcheck.plugin import hookimpl
        @hookimpl
        def jacketcheck_bars():
            return None
        """,
        "jacketcheck_bars: returned nothing, not a sequence of records",
        id="hook returns nothing",
    ),
    pytest.param(
        """
        from jacketcheck.plugin import hookimpl
        @hookimpl
        def jacketcheck_bolt():
            return []
        """,
        "registration: raised PluginValidationError",
        id="unknown hook",
    ),
    pytest.param(
        """
        from dataclasses import replace
        from jacketcheck.plugin import built_in_catalog, hookimpl
        @hookimpl
        def jacketcheck_bars():
            return [replace(built_in_catalog().bar("No. 9"), area=1.0)]
        """,
        "catalogue: bar size 'No. 9' is taken already, by No. 9",
        id="bar that is there already",
    ),
    pytest.param(
        """
        from jacketcheck.plugin import LimitState, Result, hookimpl
        @hookimpl
        def jacketcheck_limit_states():
            lenient = lambda jacket: [Result("Slip", "", 0.0, 1.0, "N", "none")]
            return [LimitState("seam-slip", "Lenient", "us", lenient)]
        """,
        "limit state seam-slip: id is already taken in provisions us by built-in (jacketcheck ",
        id="limit state that is there already",
    ),
    pytest.param(
        """
        from jacketcheck.plugin import Provisions, hookimpl
        @hookimpl
        def jacketcheck_provisions():
            return [Provisions("us", "Ours now", inherits=None)]
        """,
        "provisions us: id is already taken",
        id="provisions that are there already",
    ),
]


@pytest.mark.parametrize(("code", "told"), BROKEN_LOADS)
def test_what_cannot_be_loaded_is_named_and_all_rows_stand(
    site: Site, checked: Checked, code: str, told: str
) -> None:
    site.install("jacketcheck-north", code)
    exit_code, found = checked("us", "--plugin-seconds", "0.3")
    assert exit_code == 3
    (problem,) = [row for row in found["us"]["rows"] if row["limit_state"] == "plug-in-problem"]
    assert problem["title"] == "Plug-in north"
    assert problem["verdict"] == "NOT EVALUATED"
    assert problem["notes"][0].startswith(WHO + told)
    assert problem["notes"][0].endswith("; switch it off with --without north")
    off, without = checked("us", "--without", "jacketcheck-north")
    assert off in {0, 1}
    assert rows_but_slip(found["us"]) == rows_but_slip(without["us"])
    assert "plug-in-problem" not in {row["limit_state"] for row in without["us"]["rows"]}


def test_other_plug_ins_stand(site: Site, checked: Checked) -> None:
    site.install("jacketcheck-broken", "import no_such_module")
    site.install("jacketcheck-north", NORTH.format(answer="return [row()]"))
    code, found = checked("north")
    assert code == 3
    assert slip_of(found["north"])["verdict"] == "ok"
    (problem,) = [row for row in found["north"]["rows"] if row["limit_state"] == "plug-in-problem"]
    assert "plug-in broken (jacketcheck-broken 1.2), import: raised Module" in problem["notes"][0]
    off, found = checked("north", "--without", "broken")
    assert off in {0, 1}


def test_order_of_plug_ins_is_that_of_their_names(site: Site, tmp_path: Path) -> None:
    record = tmp_path / "called.txt"
    code = f"""
    from pathlib import Path
    from jacketcheck.plugin import Provisions, hookimpl

    def note(hook):
        with Path({str(record)!r}).open("a") as file:
            file.write(f"{{__name__.split('_')[1]}} {{hook}}\\n")

    @hookimpl
    def jacketcheck_limit_states():
        note("limit_states")
        return []

    @hookimpl
    def jacketcheck_provisions():
        note("provisions")
        return []
    """
    for distribution in ("jacketcheck-beta", "jacketcheck-alpha", "jacketcheck-gamma"):
        site.install(distribution, code)
    # two entry points of one distribution follow one another by their names
    site.install("jacketcheck-alpha", code, plug_in="aardvark")
    host = load_host()
    assert [(one.name, one.distribution) for one in host.plugins] == [
        ("built-in", "jacketcheck"),
        ("aardvark", "jacketcheck-alpha"),
        ("alpha", "jacketcheck-alpha"),
        ("beta", "jacketcheck-beta"),
        ("gamma", "jacketcheck-gamma"),
    ]
    assert record.read_text().split("\n")[:-1] == [
        f"{name} {hook}"
        for name in ("alpha", "alpha", "beta", "gamma")
        for hook in ("provisions", "limit_states")
    ]


def test_the_first_of_two_claims_holds(site: Site, checked: Checked) -> None:
    site.install("jacketcheck-north", NORTH.format(answer="return [row()]"))
    site.install("jacketcheck-south", NORTH.format(answer="return [row(0.0)]"))
    code, found = checked("north")
    assert code == 3
    assert slip_of(found["north"])["origin"] == "jacketcheck-north"
    told = [row["notes"][0] for row in found["north"]["rows"] if row["origin"].endswith("south")]
    who = "plug-in south (jacketcheck-south 1.2), "
    assert [text.partition(" by north")[0] for text in told] == [
        f"{who}provisions north: id is already taken; switch it off with --without south",
        f"{who}limit state seam-slip: id is already taken in provisions north",
    ]


OUTPUTS: list[tuple[str, ...]] = [
    ("check",),
    ("check", "--format", "markdown"),
    ("check", "--format", "csv"),
    ("check", "--format", "json"),
    ("explain", "seam-slip"),
    ("bolts",),
    ("bolts", "--format", "json"),
]


@pytest.mark.parametrize("command", OUTPUTS, ids=" ".join)
def test_each_output_names_the_plug_ins_and_their_versions(
    site: Site, repair: Path, capsys: pytest.CaptureFixture[str], command: tuple[str, ...]
) -> None:
    site.install("jacketcheck-north", NORTH.format(answer="return [row()]"), version="7.8.9")
    name, *options = command
    provisions = ["--provisions", "us,north"] if name != "bolts" else []
    main([name, str(repair), *options, *provisions])
    printed = capsys.readouterr().out
    assert "jacketcheck-north" in printed
    assert "7.8.9" in printed


def test_switched_off_is_told_as_well(
    site: Site, repair: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    site.install("jacketcheck-north", "import no_such_module")
    for command in ("check", "bolts"):
        main([command, str(repair), "--without", "north"])
        assert "switched off: north." in capsys.readouterr().out


def test_codes_side_by_side_in_one_table(
    site: Site, repair: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    site.install("jacketcheck-north", NORTH.format(answer="return [row(1.0, 0.0)]"))
    code = main(["check", str(repair), "--provisions", "us,north"])
    assert code == 1
    printed = capsys.readouterr().out
    table = printed.partition("Side by side: ratio of demand to capacity")[2]
    header = next(line for line in table.splitlines() if line.startswith("limit state"))
    assert header.split() == ["limit", "state", "where", "us", "north"]
    slip = next(line for line in table.splitlines() if line.startswith("Slip by the north"))
    assert slip.split()[-3:] == ["»", "∞", "!"]
    verdict = next(line for line in table.splitlines() if line.startswith("verdict"))
    assert len(verdict.split()) == 3
    assert verdict.split()[-1] == "EXCEEDS"


def test_the_list_of_plug_ins(site: Site, capsys: pytest.CaptureFixture[str]) -> None:
    site.install("jacketcheck-broken", "import no_such_module", version="0.1")
    site.install("jacketcheck-north", NORTH.format(answer="return [row()]"))
    code = main(["plugins"])
    printed = capsys.readouterr().out
    lines = [line.split() for line in printed.splitlines()]
    assert code == 3
    assert [
        "broken",
        "jacketcheck-broken",
        "0.1",
        "–",
        "0",
        "0",
        "1",
        "problem,",
        "see",
        "below",
    ] in (lines)
    assert ["north", "jacketcheck-north", "1.2", "north", "1", "0", "ok"] in lines
    assert "Provisions north\n----------------\nNorth Code 1:2024\n" in printed
    assert "seam-slip      Slip by the north  replaces that of us  north" in printed
    assert "inherited from us (list them with --inherited)." in printed
    assert (
        "- plug-in broken (jacketcheck-broken 0.1), import: raised ModuleNotFoundError" in printed
    )
    assert main(["plugins", "--inherited", "--without", "broken"]) == 0
    printed = capsys.readouterr().out
    assert "Switched off: broken." in printed
    assert printed.count("inherited from us") > 20


def test_entries_of_plug_ins_are_listed_with_their_origin(
    site: Site, capsys: pytest.CaptureFixture[str]
) -> None:
    site.install(
        "jacketcheck-north",
        """
        from jacketcheck.plugin import Bar, hookimpl
        @hookimpl
        def jacketcheck_bars():
            return [Bar(name="N 29", diameter=29.0, area=660.5, source="North Code 1:2024 Table 3")]
        """,
    )
    assert main(["catalog", "bars"]) == 0
    line = next(one for one in capsys.readouterr().out.splitlines() if one.startswith("N 29"))
    assert line.split() == [
        "N",
        "29",
        "29.00",
        "660.5",
        "north",
        "North",
        "Code",
        "1:2024",
        "Table",
        "3",
    ]
    assert main(["catalog", "bars", "n 29"]) == 0
    assert "bar size, from north" in capsys.readouterr().out
    site.install("jacketcheck-broken", "import no_such_module")
    importlib.invalidate_caches()
    assert main(["catalog", "bars"]) == 3
    assert "entries may be missing: plug-ins with problems are broken;" in capsys.readouterr().err


HANGING_BOND_MODEL = """
    import time
    from jacketcheck.plugin import BondModel, hookimpl

    def law(bar):
        time.sleep(30)

    @hookimpl
    def jacketcheck_bond_models():
        return [BondModel(name="N bond", title="slow", law=law, source="North Code 1:2024")]
"""


def test_a_bond_model_that_hangs_costs_its_time_once(
    site: Site, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    site.install("jacketcheck-north", HANGING_BOND_MODEL)
    text = standard_repairs()["customary"]
    head, _, variants = text.partition("[variants.")
    path = tmp_path / "repair.toml"
    path.write_text(f'{head}[judgement]\nbond_model = "N bond"\n\n[variants.{variants}', "utf-8")
    arguments = ["check", str(path), "--format", "json", "--plugin-seconds", "0.3"]
    assert main([*arguments, "--variant", "all"]) == 3
    document = json.loads(capsys.readouterr().out)
    who = "plug-in north (jacketcheck-north 1.2), bond model N bond: did not return within 0.3 s"
    for table in document["tables"]:
        rows = [row for row in table["rows"] if row["limit_state"] == "bar-bond"]
        assert [row["verdict"] for row in rows] == ["NOT EVALUATED"]
        assert who in rows[0]["notes"][0]
        assert any(row["verdict"] == "ok" for row in table["rows"])
    notes = [note for table in document["tables"] for row in table["rows"] for note in row["notes"]]
    # every row that needs it names it; only the first one waited
    assert sum(who in note for note in notes) > len(document["tables"])
    assert any(note.endswith("when it was asked before") for note in notes)


def test_a_process_of_its_own_prints_clean_json_and_ends(site: Site, repair: Path) -> None:
    answer = "import sys, time; print('noise'); print('more', file=sys.stderr); time.sleep(60)"
    site.install("jacketcheck-north", NORTH.format(answer=answer))
    command = f"""
import sys
sys.path.insert(0, {str(site.path)!r})
from jacketcheck.cli.main import main
sys.exit(main(["check", {str(repair)!r}, "--provisions", "north", "--format", "json",
               "--plugin-seconds", "0.3"]))
"""
    ran = subprocess.run(
        [sys.executable, "-c", command],
        capture_output=True,
        text=True,
        check=False,
        cwd=ROOT,
        timeout=50,
    )
    assert ran.returncode == 3
    document = json.loads(ran.stdout)
    assert ran.stderr == ""
    notes = slip_of(document["tables"][0])["notes"]
    assert notes == [
        f"{WHO}limit state seam-slip: did not return within 0.3 s",
        "plug-in north printed noise more",
    ]
