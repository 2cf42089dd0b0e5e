"""Numbers by hand, for a standard jacket of the kit."""

import jacketcheck_example
import pytest

from jacketcheck import evaluate
from jacketcheck.chance import chance_of_exceedance
from jacketcheck.chance.result import Settings
from jacketcheck.conformance import host_with, standard_jackets
from jacketcheck.plugin import Result

HOST = host_with(jacketcheck_example)


def row_of(limit_state: str, jacket: str) -> Result:
    """The one row of a limit state on a standard jacket."""
    jackets = standard_jackets(HOST.catalog)
    (row,) = evaluate(jackets[jacket], host=HOST, provisions="example", only={limit_state})
    return row


def test_slip_of_two_planes() -> None:
    # M24 of class 10.9, F_p = 0.7 × 1000 × 353 N; 0.8 × 0.45 × 247.1 kN × 2 planes = 177.9 kN
    assert row_of("seam-slip", "metric").capacity == pytest.approx(177.9e3, abs=50.0)


def test_snug_bolts_hold_nothing() -> None:
    row = row_of("seam-slip", "metric, snug bolts in oversized holes")
    assert row.capacity == 0.0
    assert row.ratio == float("inf")


def test_least_thickness() -> None:
    # 1620 mm / 200 = 8.1 mm, of 16 mm
    assert row_of("least-sleeve-thickness", "metric").ratio == pytest.approx(8.1 / 16.0)


def test_everything_else_is_inherited() -> None:
    own = {
        one.limit_state.id for one in HOST.registered if one.plugin.name == "jacketcheck_example"
    }
    inherited = {one.limit_state.id for one in HOST.limit_states("us")}
    assert own - inherited == {"least-sleeve-thickness"}
    assert {one.limit_state.id for one in HOST.limit_states("example")} == own | inherited


def test_slip_has_a_probability() -> None:
    """The resistance factor of 0.8 is taken out: friction is what it is."""
    jacket = standard_jackets(HOST.catalog)["metric"]
    row = row_of("seam-slip", "metric")
    assert row.ratio_between_actual_values == pytest.approx(0.8 * float(row.ratio))
    settings = Settings(samples=256, bond_samples=16, section_samples=0, method="sobol", seed=1)
    result = chance_of_exceedance(
        jacket, settings=settings, host=HOST, provisions=["example"], only=["seam-slip"]
    )
    [slip] = result.limits
    assert slip.declared
    assert "slip-coefficient" in {driver.name for driver in slip.drivers}
    assert "as drawn" in result.without_probability["least-sleeve-thickness"]
