"""``jacketcheck report``: what is written, where, and what is returned."""

from __future__ import annotations

import hashlib
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.support.cli_runs import Run


def test_the_report_is_written_whole_and_the_verdict_returned(
    run: Run, case: Path, tmp_path: Path
) -> None:
    target = tmp_path / "report.html"
    found = run("report", case, "-o", target, "--no-figures")
    assert found.code == run("check", case).code
    assert found.out == f"wrote {target}\n"
    page = target.read_text("utf-8")
    assert page.startswith("<!DOCTYPE html>")
    assert page.endswith("</html>\n")
    assert hashlib.sha256(case.read_bytes()).hexdigest() in page
    assert list(tmp_path.iterdir()) == [target]


def test_all_variants_and_figures(run: Run, case: Path, tmp_path: Path) -> None:
    target = tmp_path / "report.html"
    found = run("report", case, "-o", target, "--variant", "all", "--units", "si")
    assert found.code == 1
    page = target.read_text("utf-8")
    for name in ("thick, unchipped", "thin, snug bolts"):
        assert name in page
    assert page.count("<figure>") >= 10
    assert "pressure on the sleeve [MPa]" in page


def test_the_ending_or_the_option_tells_the_form(run: Run, case: Path, tmp_path: Path) -> None:
    for name, options in (("a.md", ()), ("b.txt", ("--format", "markdown"))):
        target = tmp_path / name
        run("report", case, "-o", target, "--no-figures", *options)
        assert target.read_text("utf-8").startswith("# Quarry Road")


def test_figures_of_markdown_stand_beside_it(run: Run, case: Path, tmp_path: Path) -> None:
    run("report", case, "-o", tmp_path / "pier 3.md")
    names = sorted(path.name for path in (tmp_path / "pier 3-figures").iterdir())
    assert names[0] == "01-force-displacement.svg"
    assert len(names) == 10
    assert "(<pier 3-figures/01-force-displacement.svg>)" in (tmp_path / "pier 3.md").read_text(
        "utf-8"
    )


def test_the_date_is_that_of_today_or_as_told(run: Run, case: Path, tmp_path: Path) -> None:
    import datetime as dt

    target = tmp_path / "report.html"
    run("report", case, "-o", target, "--no-figures")
    assert f"<dd>{dt.date.today().isoformat()}</dd>" in target.read_text("utf-8")  # noqa: DTZ011 - the reader's day
    run("report", case, "-o", target, "--no-figures", "--overwrite", "--date", "7 May <b>")
    assert "<dd>7 May &lt;b&gt;</dd>" in target.read_text("utf-8")


def test_without_matplotlib_one_line_says_what_to_install(
    run: Run, case: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(sys.modules, "matplotlib", None)
    target = tmp_path / "report.html"
    found = run("report", case, "-o", target)
    assert found.code == 2
    assert found.err == (
        'jacketcheck: matplotlib is not installed: pip install "jacketcheck[figures]"\n'
    )
    assert not target.exists()
    assert run("report", case, "-o", target, "--no-figures").code == 0
    assert target.exists()


def test_a_folder_that_is_not_there_is_named(run: Run, case: Path, tmp_path: Path) -> None:
    found = run("report", case, "-o", tmp_path / "none" / "report.html", "--no-figures")
    assert found.code == 2
    assert "cannot be written" in found.err


def test_an_unknown_variant_writes_nothing(run: Run, case: Path, tmp_path: Path) -> None:
    target = tmp_path / "report.html"
    found = run("report", case, "-o", target, "--variant", "thicker")
    assert found.code == 2
    assert "thicker" in found.err
    assert not target.exists()


def test_a_hostile_title_stays_a_title(
    run: Run, edited: Callable[..., Path], tmp_path: Path
) -> None:
    path = edited(("Quarry Road overpass, pier 3 (invented)", "<script>x()</script> & co"))
    run("report", path, "-o", tmp_path / "report.html", "--no-figures")
    page = (tmp_path / "report.html").read_text("utf-8")
    assert "<h1>&lt;script&gt;x()&lt;/script&gt; &amp; co</h1>" in page
