"""``jacketcheck draw``: files, names and refusals."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from jacketcheck.figures import FIGURES
from tests.support.cli_runs import Run


def test_one_figure_goes_to_one_file(run: Run, case: Path, tmp_path: Path) -> None:
    found = run("draw", case, "plan", "-o", tmp_path / "plan.svg")
    assert (found.code, found.out) == (0, f"wrote {tmp_path / 'plan.svg'}\n")
    text = (tmp_path / "plan.svg").read_text("utf-8")
    assert text.startswith('<?xml version="1.0" encoding="UTF-8"?>\n<svg ')
    run("draw", case, "plan", "-o", tmp_path / "plan.PNG")
    assert (tmp_path / "plan.PNG").read_bytes().startswith(b"\x89PNG")


def test_all_figures_go_to_a_folder(run: Run, case: Path, tmp_path: Path) -> None:
    found = run("draw", case, "all", "-o", tmp_path / "figures")
    assert found.code == 0
    names = {path.name for path in (tmp_path / "figures").iterdir()}
    assert names == {f"{name}.svg" for name in FIGURES}


def test_variants_have_names_of_their_own(run: Run, case: Path, tmp_path: Path) -> None:
    run("draw", case, "seam-detail", "-o", tmp_path, "--variant", "all", "--format", "png")
    assert sorted(path.name for path in tmp_path.iterdir()) == [
        "seam-detail-chipped.png",
        "seam-detail-thick-unchipped.png",
        "seam-detail-thin-snug-bolts.png",
        "seam-detail-thin.png",
    ]


def test_names_that_a_file_cannot_have(
    run: Run, edited: Callable[..., Path], tmp_path: Path
) -> None:
    path = edited(('[variants."thin"]', '[variants."../../Thin!"]'))
    target = tmp_path / "figures"
    run("draw", path, "plan", "-o", target, "--variant", "../../Thin!", "--variant", "chipped")
    assert sorted(one.name for one in target.iterdir()) == ["plan-chipped.svg", "plan-thin.svg"]


def test_names_that_look_alike_are_told_apart(
    run: Run, edited: Callable[..., Path], tmp_path: Path
) -> None:
    path = edited(('[variants."thin"]', '[variants."chipped!"]'))
    run("draw", path, "plan", "-o", tmp_path / "f", "--variant", "chipped", "--variant", "chipped!")
    names = sorted(one.name for one in (tmp_path / "f").iterdir())
    assert names == ["plan-chipped-2.svg", "plan-chipped.svg"]


def test_several_figures_need_a_folder(run: Run, case: Path, tmp_path: Path) -> None:
    for asked in (("all",), ("plan", "--variant", "all")):
        found = run("draw", case, *asked, "-o", tmp_path / "plan.svg")
        assert found.code == 2
        assert "must be a folder" in found.err
    assert not list(tmp_path.iterdir())


def test_a_figure_that_is_not_there_is_refused(run: Run, case: Path, tmp_path: Path) -> None:
    found = run("draw", case, "photograph", "-o", tmp_path / "a.svg")
    assert found.code == 2
    assert "photograph" in found.err


def test_what_cannot_be_drawn_says_why(
    run: Run, edited: Callable[..., Path], tmp_path: Path
) -> None:
    whole = edited(('[variants."thin"]', '[variants."whole"]\ndamage = []\n\n[variants."thin"]'))
    found = run("draw", whole, "bar-stress", "-o", tmp_path / "a.svg", "--variant", "whole")
    assert found.code == 3
    assert "no bar is anchored by bond alone" in found.err
    found = run("draw", whole, "all", "-o", tmp_path / "f", "--variant", "whole")
    assert found.code == 0
    assert "bar-stress is not drawn: no bar is anchored by bond alone" in found.err
    assert len(list((tmp_path / "f").iterdir())) == len(FIGURES) - 1
