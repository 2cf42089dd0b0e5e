"""What is taken over from an earlier run, and what is done anew."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pyarrow.parquet as pq
import pytest

from jacketcheck.batch import BatchRun, BatchState, run_batch
from tests.support.inventories import (
    install_bench,
    lines_of,
    write_inventory,
    write_pier,
)

pytestmark = pytest.mark.usefixtures("bench")


def checked(inventory: Path, **options: Any) -> BatchRun:
    """A run of the fast plug-in in one process."""
    given = {"provisions": ("bench",), "workers": 1, **options}
    return run_batch(inventory, inventory.with_name("output"), **given)


def counts(state: BatchState) -> tuple[int, int]:
    return state.evaluated, state.kept


def test_only_what_is_new_or_changed_is_done(inventory: Path) -> None:
    names = write_inventory(inventory, [600, 610, 620])
    assert counts(checked(inventory).state) == (3, 0)
    assert counts(checked(inventory).state) == (0, 3)
    write_pier(inventory / names[0], kips=660)
    write_pier(inventory / "new.toml", kips=605)
    (inventory / names[1]).unlink()
    run = checked(inventory)
    assert counts(run.state) == (2, 1)
    # 660 kip over 650 kip; the file that is gone is in no table
    assert run.summary.files == {"EXCEEDS": 1, "ok": 2}
    piers = lines_of(inventory.with_name("output") / "piers.csv")
    assert [line["file"] for line in piers] == [names[0], names[2], "new.toml"]
    assert float(piers[0]["ratio"]) == pytest.approx(660 / 650, rel=1e-12)


def test_other_settings_are_another_check(inventory: Path) -> None:
    write_inventory(inventory, [600])
    assert counts(checked(inventory).state) == (1, 0)
    everything = checked(inventory, variants="all")
    assert counts(everything.state) == (1, 0)
    assert everything.summary.jackets == 4
    assert counts(checked(inventory, provisions=("us",)).state) == (1, 0)
    # and the first is still known
    assert counts(checked(inventory).state) == (0, 1)
    # forms and units only say how results are shown
    assert counts(checked(inventory, forms=("parquet",), system="us").state) == (0, 1)
    assert counts(checked(inventory, fresh=True).state) == (1, 0)


def test_another_version_of_a_plug_in_checks_anew(inventory: Path, bench: Path) -> None:
    write_inventory(inventory, [600])
    assert counts(checked(inventory).state) == (1, 0)
    for path in (bench / "bench_of_tests-1.0.dist-info").iterdir():
        path.unlink()
    (bench / "bench_of_tests-1.0.dist-info").rmdir()
    install_bench(bench, version="1.1")
    assert counts(checked(inventory).state) == (1, 0)


def test_parquet_holds_what_the_csv_holds(inventory: Path) -> None:
    write_inventory(inventory, [600, 660])
    (inventory / "torn.toml").write_text("[job\n")
    checked(inventory, forms=("csv", "parquet"), system="us")
    output = inventory.with_name("output")
    for table, numbers in (
        ("results", {"demand", "capacity", "ratio"}),
        ("piers", {"ratio", "within", "exceed", "follow", "not_evaluated"}),
    ):
        kept = pq.read_table(output / f"{table}.parquet").to_pylist()
        written = lines_of(output / f"{table}.csv")
        assert len(kept) == len(written) >= 3
        for one, other in zip(kept, written, strict=True):
            assert list(one) == list(other)
            for name, value in one.items():
                assert isinstance(value, float | int | None) == (name in numbers)
                expected: Any = other[name]
                if name in numbers:
                    expected = float(expected) if expected else None
                assert value == expected
    loads = [line["demand"] for line in kept_of(output) if line["limit_state"] == "bench-load"]
    assert loads == pytest.approx([600.0, 660.0], rel=1e-12)  # kip, as written in the files
    # tables in a form that is not asked for would tell of an earlier inventory
    checked(inventory, forms=("csv",))
    assert not list(output.glob("*.parquet"))


def kept_of(output: Path) -> list[dict[str, Any]]:
    rows: list[dict[str, Any]] = pq.read_table(output / "results.parquet").to_pylist()
    return rows


def test_a_cluster_of_processes_gives_the_same(inventory: Path, tmp_path: Path) -> None:
    pytest.importorskip("distributed")
    write_inventory(inventory, [600, 660])
    here = checked(inventory)
    there = run_batch(inventory, tmp_path / "cluster", provisions=("bench",), scheduler="local:2")
    assert counts(there.state) == (2, 0)
    assert there.summary.files == {"ok": 1, "EXCEEDS": 1} == here.summary.files
    for name in ("piers.csv", "results.csv", "summary.txt"):
        expected = (inventory.with_name("output") / name).read_bytes()
        assert (tmp_path / "cluster" / name).read_bytes() == expected
    # and a run on this machine takes over what the cluster did
    resumed = run_batch(inventory, tmp_path / "cluster", provisions=("bench",), workers=1)
    assert counts(resumed.state) == (0, 2)
