from __future__ import annotations

from pathlib import Path

from tests.support.cli_runs import Run


def test_explain_prints_each_step_with_value_unit_and_source(run: Run, case: Path) -> None:
    ran = run("explain", case, "seam-slip")
    assert ran.code == 0
    line = next(line for line in ran.out.splitlines() if line.startswith("T_b"))
    assert "39.00 kip" in line
    assert "AISC 360-22 Table J3.1" in line
    assert "demand" in ran.out
    assert "capacity" in ran.out


def test_explain_governing_shows_the_row_that_decides(run: Run, case: Path) -> None:
    ran = run("explain", case, "governing", "--variant", "thin")
    assert ran.code == 1
    assert "limit state hoop-dilation" in ran.out


def test_an_unknown_check_suggests_near_ones(run: Run, case: Path) -> None:
    ran = run("explain", case, "seam-slp")
    assert ran.code == 2
    assert "seam-slip" in ran.err


def test_a_reported_row_has_no_verdict_and_gives_zero(run: Run, case: Path) -> None:
    ran = run("explain", case, "retained-pressure")
    assert ran.code == 0
    assert "reported" in ran.out


def test_markdown_has_a_table(run: Run, case: Path) -> None:
    ran = run("explain", case, "seam-slip", "--markdown")
    assert "| symbol" in ran.out
