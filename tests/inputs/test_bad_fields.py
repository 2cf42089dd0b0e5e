"""What is wrong with a field is told with its path, its value as written and what is allowed."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from jacketcheck.errors import InputError
from jacketcheck.inputs import read_text

Problems = Callable[..., list[tuple[str, str, str]]]

THICKNESS = (
    "must be a thickness from 1 mm (0.03937 in) to 150 mm (5.906 in), "
    'e.g. "10 mm" or "3/8 in"'
)  # fmt: skip
TIGHTENINGS = (
    'must be "snug", "turn-of-nut", "calibrated-wrench", "direct-tension-indicator" or "twist-off"'
)
FRICTION = 'must be a friction coefficient from 0.1 to 3, e.g. "1.4"'


@pytest.fixture
def problems_after(repair_text: str) -> Problems:
    """Problems found after replacing pieces of the valid file."""

    def after(*replacements: tuple[str, str]) -> list[tuple[str, str, str]]:
        text = repair_text
        for old, new in replacements:
            assert text.count(old) >= 1, old
            text = text.replace(old, new, 1)
        with pytest.raises(InputError) as caught:
            read_text(text)
        return [(one.path, one.value, one.message) for one in caught.value.problems]

    return after


@pytest.mark.parametrize(
    ("written", "shown", "reason"),
    [
        ('"5 kN"', '"5 kN"', "unit 'kN' has the wrong dimension"),
        ('"-12 mm"', '"-12 mm"', "is negative"),
        ('"0 mm"', '"0 mm"', "is zero"),
        ('"10 m"', '"10 m"', "is outside the plausible range"),
        ('"0.1 mm"', '"0.1 mm"', "is outside the plausible range"),
        ('"nan mm"', '"nan mm"', "is not a finite number"),
        ('"inf mm"', '"inf mm"', "is not a finite number"),
        ('"1e400 mm"', '"1e400 mm"', "is not a finite number"),
        ('"12"', '"12"', "has no unit"),
        ("12", "12", "has no unit"),
        ("12.5", "12.5", "has no unit"),
        ("nan", "nan", "has no unit"),
        ('"twelve mm"', '"twelve mm"', "is not a number followed by a unit"),
        ('"12 mn"', '"12 mn"', "unit 'mn' is not known; did you mean MN?"),
        ('""', '""', "is not a number followed by a unit"),
        ("true", "true", "is not a text in quotes"),
        ('["12 mm"]', '["12 mm"]', "is not a text in quotes"),
        ("{mm = 12}", "{mm = 12}", "is not a text in quotes"),
        ("2001-02-03", "2001-02-03", "is not a text in quotes"),
    ],
)  # fmt: skip
def test_a_thickness(problems_after: Problems, written: str, shown: str, reason: str) -> None:
    found = problems_after(('thickness = "1/2 in"', f"thickness = {written}"))
    assert found == [("sleeve.thickness", shown, f"{reason}; {THICKNESS}")]


@pytest.mark.parametrize(
    ("written", "shown", "reason"),
    [
        ("nan", "nan", "is not a finite number"),
        ("-inf", "-inf", "is not a finite number"),
        ("0", "0", "is zero"),
        ("-1.4", "-1.4", "is negative"),
        ("14", "14", "is outside the plausible range"),
        ("true", "true", "is not a number"),
        ("[1.4]", "[1.4]", "is not a number"),
        ('"1.4 mm"', '"1.4 mm"', "unit 'mm' has the wrong dimension"),
        ("1" + "0" * 400, "an integer of 1329 bits", "is not a finite number"),
        ("0x" + "f" * 400, "an integer of 1600 bits", "is not a finite number"),
    ],
)
def test_a_coefficient(problems_after: Problems, written: str, shown: str, reason: str) -> None:
    found = problems_after(("crack_friction = 1.4", f"crack_friction = {written}"))
    assert found == [("judgement.crack_friction", shown, f"{reason}; {FRICTION}")]


@pytest.mark.parametrize(
    ("written", "shown", "message"),
    [
        ("5", "5", "must be at least 6"),
        ("0", "0", "must be at least 6"),
        ("-20", "-20", "must be at least 6"),
        ("201", "201", "must be at most 200"),
        ("1" + "0" * 400, "an integer of 1329 bits", "must be at most 200"),
        ("20.0", "20.0", "must be a whole number, without quotes"),
        ('"20"', '"20"', "must be a whole number, without quotes"),
        ("true", "true", "must be a whole number, without quotes"),
        ("nan", "nan", "must be a whole number, without quotes"),
        ("[20]", "[20]", "must be a whole number, without quotes"),
    ],
)
def test_a_count(problems_after: Problems, written: str, shown: str, message: str) -> None:
    found = problems_after(("count = 20", f"count = {written}"))
    assert found == [("column.bars.count", shown, message)]


@pytest.mark.parametrize(
    ("old", "new", "found"),
    [
        pytest.param(
            'tightening = "turn-of-nut"',
            'tightening = "tight"',
            (
                "bolts.tightening",
                '"tight"',
                TIGHTENINGS,
            ),
            id="choice",
        ),
        pytest.param(
            'tightening = "turn-of-nut"',
            "tightening = [1]",
            (
                "bolts.tightening",
                "[1]",
                TIGHTENINGS,
            ),
            id="choice of another type",
        ),
        pytest.param(
            "breakout_precluded = false",
            'breakout_precluded = "false"',
            ("added_bars.breakout_precluded", '"false"', "must be true or false, without quotes"),
            id="text for a truth value",
        ),
        pytest.param(
            "[sleeve]",
            "[[sleeve]]",
            (
                "sleeve",
                '[{inner_diameter = "62 in", thickness = "1/2 in", steel = "A…',
                "must be a table",
            ),
            id="list where a table is expected",
        ),
        pytest.param(
            "[[repair.sides]]",
            "[repair.sides]",
            (
                "repair.sides",
                '{clock_from = "11:00", clock_to = "4:30", surface = "chipped…',
                "must be a list of tables, each written [[repair.sides]]",
            ),
            id="table where a list is expected",
        ),
        pytest.param(
            'clock = ["6:18"]',
            'clock = "6:18"',
            ("damage.1.clock", '"6:18"', "must be a list"),
            id="text where a list is expected",
        ),
        pytest.param(
            'title = "Fallow Lane viaduct, column C2 (invented)"',
            "title = 7",
            ("job.title", "7", "must be a text in quotes"),
            id="number where a text is expected",
        ),
        pytest.param(
            'title = "Fallow',
            'title = "\\u001b[31m\\u202e',
            (
                "job.title",
                '"\\u001b[31m\\u202e Lane viaduct, column C2 (invented)"',
                "holds characters that cannot be printed",
            ),
            id="control characters",
        ),
        pytest.param(
            'number = "FL-12"',
            f'''number = "{"x" * 301}"''',
            ("job.number", f""""{"x" * 59}…""", "must have at most 300 characters"),
            id="long text",
        ),
        pytest.param(
            'product = "ASTM F3125 A325"',
            'product = "ASTM A325X"',
            ("bolts.product", '"ASTM A325X"', "is not known; did you mean ASTM F3125 A325"),
            id="unknown bolt",
        ),
        pytest.param(
            'steel = "ASTM A572 Grade 50"',
            'steel = ""',
            ("sleeve.steel", '""', "is empty"),
            id="empty name",
        ),
        pytest.param(
            '["AISC B", "AASHTO B"]',
            '"B"',
            ("bolts.faying_class.1", '"B"', "needs its code: AISC B or AASHTO B or RCSC B"),
            id="faying class without its code",
        ),
        pytest.param(
            '"6:18"',
            '"13:00"',
            (
                "damage.1.clock.1",
                '"13:00"',
                'must be a clock position from 1:00 to 12:59, e.g. "4:30"',
            ),
            id="clock",
        ),
        pytest.param(
            'clock_to = "4:30"',
            'clock_to = "11:00"',
            (
                "repair.sides.1",
                '{clock_from = "11:00", clock_to = "11:00", surface = "chippe…',
                "clock_from and clock_to must differ",
            ),
            id="side without extent",
        ),
        pytest.param(
            'thickness = "1/2 in"',
            'thickness = "1/2 in"\nthicknes = 3',
            ("sleeve.thicknes", "3", "is not a known field; did you mean thickness?"),
            id="misspelt field",
        ),
        pytest.param(
            'strength = "8 ksi"',
            'strength = "8 ksi"\n"\\u001b[2J" = 3',
            (
                'grout."\\u001b[2J"',
                "3",
                "is not a known field; known are strength, specimen, elastic_modulus",
            ),
            id="hostile field",
        ),
        pytest.param('gap = "2 in"', "", ("repair.gap", "", "is missing"), id="missing field"),
    ],
)
def test_one_bad_field(
    problems_after: Problems, old: str, new: str, found: tuple[str, str, str]
) -> None:
    path, shown, message = found
    (problem,) = [one for one in problems_after((old, new)) if not one[0].startswith("variants.")]
    assert problem[:2] == (path, shown)
    # which other names of the catalogue are near is the catalogue's business
    assert problem[2].startswith(message) if "did you mean" in message else problem[2] == message


def test_every_wrong_field_is_told_at_once(problems_after: Problems) -> None:
    found = problems_after(
        ('thickness = "1/2 in"', 'thickness = "10 m"'),
        ('strength = "8 ksi"', 'strength = "8"'),
        ('cover = "2 in"', 'cover = "0 in"'),
        ("count = 20", "count = 2"),
        ("bars = [1, 2]", 'bars = [1.5, true, "a", 0, 201]'),
        ("[footing]", "[foot]"),
    )
    assert [path for path, _, _ in found] == [
        "column.cover",
        "column.bars.count",
        "damage.1.bars.1",
        "damage.1.bars.2",
        "damage.1.bars.3",
        "damage.1.bars.4",
        "damage.1.bars.5",
        "sleeve.thickness",
        "grout.strength",
        "foot",
    ]


def test_what_could_not_be_checked_is_said_in_one_line(repair_text: str) -> None:
    # the pitch would not fit the height either
    text = repair_text.replace('thickness = "1/2 in"', "thickness = 1").replace('"5 in"', '"6 in"')
    with pytest.raises(InputError) as caught:
        read_text(text, source="repair.toml")
    assert str(caught.value).splitlines() == [
        "repair.toml: 1 problem",
        f"  sleeve.thickness = 1: has no unit; {THICKNESS}",
        "  (look-ups and geometry are checked once these are mended)",
    ]
