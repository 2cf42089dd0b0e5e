"""A file gets the form that its name says, or none at all."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.support.cli_runs import Run


@pytest.mark.parametrize(
    ("arguments", "allowed"),
    [
        (
            ("report", "-o", "calculation.pdf"),
            "must end in .html or .htm or .md or .markdown or .txt",
        ),
        (("report", "-o", "calculation"), "must end in .html or .htm or .md or .markdown or .txt"),
        (("report", "-o", "calculation.pdf", "--format", "html"), "must end in .html or .htm for"),
        (("report", "-o", "calculation.md", "--format", "html"), "must end in .html or .htm for"),
        (("draw", "plan", "-o", "plan.pdf"), "must end in .svg or .png"),
        (("draw", "plan", "-o", "plan.svg", "--format", "png"), "must end in .png for png"),
        (
            ("sweep", "--vary", "repair.gap=2 in, 3 in", "--plot", "sweep.pdf"),
            "must end in .svg or .png",
        ),
    ],
)
def test_an_unknown_or_contrary_ending_is_refused(
    run: Run, case: Path, tmp_path: Path, arguments: tuple[str, ...], allowed: str
) -> None:
    command, *others = arguments
    place = others.index("-o") if "-o" in others else others.index("--plot")
    others[place + 1] = str(tmp_path / others[place + 1])
    ran = run(command, case, *others)
    assert ran.code == 2
    assert allowed in ran.err
    assert list(tmp_path.iterdir()) == []


def test_a_report_without_an_ending_takes_the_form_asked_for(
    run: Run, case: Path, tmp_path: Path
) -> None:
    path = tmp_path / "calculation"
    run("report", case, "-o", path, "--format", "markdown", "--no-figures")
    assert path.read_text("utf-8").startswith("# ")
