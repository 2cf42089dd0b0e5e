"""The check as built against a repair file edited by hand to say what was built."""

from __future__ import annotations

from pathlib import Path

import pytest

from jacketcheck.api import check_input
from jacketcheck.as_built import confirm, read_as_built_text
from jacketcheck.as_built.records import AS_BUILT
from jacketcheck.host.loading import load_host
from jacketcheck.inputs import read_text

REPAIR = Path(__file__).parents[2] / "schedule" / "willow_weir.toml"
RECORD = """
[record]
variant = "turns"
not_yet = ["bolts"]
[holes]
along = "1 in"
[faying]
faying_class = "AISC A"
paint_in_pattern = false
[tightening]
method = "calibrated-wrench"
[sleeve]
thickness = ["0.35 in", "0.36 in"]
diameters = ["54.4 in", "54.2 in"]
seam_gap = "1 in"
[splice]
thickness = "0.47 in"
[grout]
cylinder_strength = ["6 ksi", "6.2 ksi", "5.9 ksi"]
"""
EDITS = (
    ('thickness = "3/8 in"', 'thickness = "0.35 in"'),
    ('inner_diameter = "54 in"', 'inner_diameter = "54.3 in"'),
    ('seam_gap = "3/4 in"', 'seam_gap = "1 in"'),
    # half of a quarter of an inch less
    ('plate_edge_distance = "1-1/2 in"', 'plate_edge_distance = "1-3/8 in"'),
    ('thickness = "1/2 in"', 'thickness = "0.47 in"'),
    ('hole = "standard"', 'hole = "oversized"'),
    ('faying_class = ["AISC B", "AASHTO B"]', 'faying_class = ["AISC A", "AASHTO A"]'),
    # the mean is 6.0333 ksi, and the lowest over 0.9 is 6.556
    ('strength = "7 ksi"', f'strength = "{(6 + 6.2 + 5.9) / 3} ksi"'),
)


def test_same_ratios() -> None:
    text = REPAIR.read_text("utf-8")
    repair = read_text(text)
    for good, bad in EDITS:
        assert text.count(good) == 1, good
        text = text.replace(good, bad)
    host = load_host(installed=False)
    edited = check_input(read_text(text), host=host, variants=["wrench"])
    confirmation = confirm(repair, read_as_built_text(RECORD), host=host)
    (built,) = (one for one in confirmation.report.tables if one.variant == AS_BUILT)
    (by_hand,) = edited.tables

    def table(results: object) -> dict[tuple[str, str, str], float]:
        return {
            (one.limit_state, one.title, one.location): float(one.ratio)
            for one in results  # type: ignore[attr-defined] # a tuple of results
        }

    expected = table(by_hand.results)
    assert len(expected) > 30
    assert table(built.results) == pytest.approx(expected, rel=1e-9, nan_ok=True)
