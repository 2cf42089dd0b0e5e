"""What the trace says of where an input was written."""

from __future__ import annotations

from jacketcheck import check
from jacketcheck.inputs import read_input
from jacketcheck.inputs.origin import with_origins
from tests.support.jackets import CASE

FILE = read_input(CASE)


def test_a_field_of_the_file_is_named_alone() -> None:
    assert with_origins("input sleeve.thickness", FILE, "chipped") == "input sleeve.thickness"


def test_a_field_that_a_variant_replaces_names_it() -> None:
    text = with_origins("input sleeve.thickness", FILE, "thin")
    assert text == 'input sleeve.thickness (variant "thin")'


def test_a_default_is_named_as_such() -> None:
    text = with_origins("input judgement.rib_spacing_ratio", FILE, "chipped")
    assert text == "input judgement.rib_spacing_ratio (default)"


def test_entries_of_lists_count_from_one() -> None:
    assert with_origins("input damage.1.height", FILE, "chipped") == "input damage.1.height"


def test_what_is_no_field_and_what_has_no_value_stay() -> None:
    text = "input grout.nothing, bolts.measured_tension, damage.99.height"
    assert with_origins(text, FILE, "chipped") == text


def test_a_report_says_which_inputs_a_variant_changed() -> None:
    report = check(CASE, variants=["thin"])
    sources = {
        step.symbol: step.source
        for row in report.tables[0].results
        if row.limit_state == "hoop-dilation"
        for step in row.steps
    }
    assert sources["t"] == 'input sleeve.thickness (variant "thin")'
    assert sources["D"] == "input column.diameter"
