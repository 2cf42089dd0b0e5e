"""The whole estimate: reproducible, bounded, and plain about what it leaves out."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest

from jacketcheck.chance import chance_of_exceedance
from jacketcheck.chance.estimate import DEFAULTS, settings_of
from jacketcheck.chance.events import events_of
from jacketcheck.chance.result import Changes, Settings
from jacketcheck.errors import InputError, NotEvaluatedError
from jacketcheck.host import Host
from jacketcheck.host.loading import load_host
from jacketcheck.inputs import RepairInput
from jacketcheck.inputs.chance import Chance
from jacketcheck.jacket import Jacket, build_jacket
from jacketcheck.limit_state import LimitState, ModelFactor, Scatter
from jacketcheck.results import Result

HostOf = Callable[..., Host]
EVENTS = events_of(load_host(installed=False), ["us"]).asked
SECTIONS = {event.id for event in EVENTS if event.effort == "sections"}


def test_same_seed_same_figures(pier: Jacket, quick: Settings) -> None:
    settings = replace(quick, section_samples=16)
    only = ["hoop-dilation", "bar-length", "base-moment"]
    first = chance_of_exceedance(pier, settings=settings, only=only)
    again = chance_of_exceedance(pier, settings=settings, only=only)
    assert {row.effort for row in first.limits} == {"closed-form", "bond", "sections"}
    assert first.limits == again.limits
    assert first.system == again.system


@pytest.mark.parametrize("method", ["sobol", "latin-hypercube", "random"])
def test_other_seed_other_samples(pier: Jacket, quick: Settings, method: str) -> None:
    chosen = replace(quick, method=method)  # type: ignore[arg-type] # words from a parametrised test
    one, other = (
        chance_of_exceedance(pier, settings=replace(chosen, seed=seed), only=["hoop-dilation"])
        for seed in (1, 2)
    )
    assert one.limits[0].drivers != other.limits[0].drivers
    assert one.limits[0].interval.low < other.limits[0].interval.high
    assert other.limits[0].interval.low < one.limits[0].interval.high


def test_system_lies_between_its_bounds(pier: Jacket, quick: Settings) -> None:
    result = chance_of_exceedance(pier, settings=quick)
    system = result.system
    # the bounds are of other samples than the increments of the bond
    slack = 2.0 * (system.interval.high - system.interval.low)
    assert system.lower_bound - slack <= system.probability <= system.upper_bound + slack
    assert system.interval.low <= system.probability <= system.interval.high
    assert sum(system.increments.values()) == pytest.approx(system.probability)
    assert system.lower_bound == max(row.lowest for row in result.limits)


def test_rows_are_sorted_and_hold_their_estimates(pier: Jacket, quick: Settings) -> None:
    rows = chance_of_exceedance(pier, settings=quick).limits
    assert [row.probability for row in rows] == sorted(
        (row.probability for row in rows), reverse=True
    )
    for row in rows:
        assert row.interval.low <= row.probability <= row.interval.high
        assert row.probability == pytest.approx((row.exceeded + row.unevaluated) / row.samples)
        assert all(abs(driver.correlation) <= 1.0 for driver in row.drivers)
        shifts = [abs(driver.shift) for driver in row.drivers]
        assert shifts == sorted(shifts, reverse=True)


def test_first_order_index_agrees_with_sampling(pier: Jacket) -> None:
    """Where one smooth limit surface counts: within what curvature and kinks leave."""
    from statistics import NormalDist

    settings = replace(DEFAULTS, samples=65_536, section_samples=0, bond_samples=16)
    rows = chance_of_exceedance(pier, settings=settings).limits
    compared = [row for row in rows if row.first_order_index is not None and row.exceeded > 30]
    assert compared
    for row in compared:
        assert row.first_order_index is not None
        sampled = -NormalDist().inv_cdf(row.probability)
        assert row.first_order_index == pytest.approx(sampled, abs=0.2), row.id


def test_without_section_samples_they_are_named_as_left_out(pier: Jacket, quick: Settings) -> None:
    result = chance_of_exceedance(pier, settings=quick)
    assert not SECTIONS & {row.id for row in result.limits}
    assert set(result.without_probability) >= SECTIONS
    assert all("section" in result.without_probability[name] for name in SECTIONS)
    assert any("leaves out everything that needs a section analysis" in n for n in result.notes)


def test_with_section_samples(pier: Jacket, quick: Settings) -> None:
    settings = replace(quick, section_samples=16)
    assert settings.drawn("sections") == "latin-hypercube"
    assert settings.drawn("closed-form") == "sobol"
    result = chance_of_exceedance(pier, settings=settings)
    assert {row.id for row in result.limits} | set(result.not_applicable) >= SECTIONS
    assert set(result.system.increments) == {"closed-form", "bond", "sections"}
    assert all(row.samples == 16 for row in result.limits if row.id in SECTIONS)


def test_what_moves_an_event_is_found_by_moving_it(pier: Jacket, quick: Settings) -> None:
    """Interface friction belongs to its own row; slip takes pressure from that row as well."""
    settings = replace(quick, samples=65_536)
    rows = chance_of_exceedance(pier, settings=settings, only=["seam-slip", "grout-interface"])
    slip, interface = sorted(rows.limits, key=lambda row: row.id != "seam-slip")
    clear = [one for one in slip.drivers if one.clear]
    assert {one.name for one in clear[:2]} == {"axial-strain", "slip-coefficient"}
    assert {one.name: one.shift > 0.0 for one in clear[:2]} == {
        "axial-strain": True,
        "slip-coefficient": False,
    }
    for_slip, for_friction = ({one.name for one in row.drivers} for row in (slip, interface))
    assert "interface-friction" not in for_slip
    assert {"interface-friction", "added-bar-yield", "slip-coefficient"} <= for_friction
    # what stands only in other limit states plays no part
    assert not {"bolted-plate", "bolt-shear", "column-shear", "anchorage"} & for_friction


def test_snug_bolts_always_slip(pier_input: RepairInput, quick: Settings) -> None:
    bolts = pier_input.bolts.model_copy(update={"tightening": "snug"})
    snug = build_jacket(pier_input.model_copy(update={"bolts": bolts}))
    result = chance_of_exceedance(snug, settings=quick, only=["seam-slip", "hoop-dilation"])
    slip = next(row for row in result.limits if row.id == "seam-slip")
    assert slip.probability == 1.0
    assert slip.ratio_at_means == np.inf
    assert result.system.probability == 1.0


def test_what_the_jacket_does_not_have_does_not_apply(
    pier_input: RepairInput, quick: Settings
) -> None:
    bare = build_jacket(pier_input.model_copy(update={"added_bars": None, "damage": ()}))
    result = chance_of_exceedance(bare, settings=quick)
    assert set(result.not_applicable) == {
        "clamping", "bar-length", "grout-interface", "added-bar-anchorage", "added-bar-lap",
        "added-bar-development",
    }  # fmt: skip
    with pytest.raises(NotEvaluatedError, match="none of the limit states"):
        chance_of_exceedance(bare, settings=quick, only=["bar-length"])


def test_only_what_was_asked_for(pier: Jacket, quick: Settings) -> None:
    result = chance_of_exceedance(pier, settings=quick, only=["seam-slip"])
    assert [row.id for row in result.limits] == ["seam-slip"]
    assert result.without_probability["hoop-dilation"] == "was not asked for"
    assert "only what was asked for is counted, for the repair as a whole too" in result.notes


@pytest.mark.parametrize(
    ("name", "told"),
    [("bar-bond", "the same event as bar-length"), ("slip", "known are added-bar-anchorage")],
)
def test_unknown_limit_state(pier: Jacket, name: str, told: str) -> None:
    with pytest.raises(InputError, match=told):
        chance_of_exceedance(pier, only=[name])


def bolt_rule(scatter: Scatter | None) -> LimitState:
    """A local rule: the force that bolts are tested with, over their strength and a factor."""

    def rows(jacket: Jacket) -> list[Result]:
        strength = 0.8 * np.asarray(jacket.bolts.tensile_strength)
        return [
            Result("Local rule", "bolt", 900.0, strength, "MPa", "a code, 1.2", rule="local",
                   resistance_factor=0.8)
        ]  # fmt: skip

    return LimitState("local-rule", "Local rule", "alone", rows, effort="closed-form",
                      scatter=scatter)  # fmt: skip


def test_plug_ins_have_probabilities(pier: Jacket, quick: Settings, host_of: HostOf) -> None:
    """Strength of the bolts scatters; the resistance factor that the row tells is taken out."""
    from scipy.stats import norm

    host = host_of(bolt_rule(Scatter("force exceeds the strength of the bolts")))
    [row] = chance_of_exceedance(pier, settings=quick, host=host, provisions=["alone"]).limits
    strength = 1.20 * float(np.asarray(pier.bolts.tensile_strength))  # A325, variation 0.07
    deviation = np.sqrt(np.log1p(0.07**2))
    index = (np.log(strength / 900.0) - 0.5 * deviation**2) / deviation
    assert row.ratio_at_means == pytest.approx(900.0 / strength)
    assert row.interval.low <= norm.sf(index) <= row.interval.high
    assert row.first_order_index == pytest.approx(index, abs=1e-3)
    assert [driver.name for driver in row.drivers] == ["bolt-strength"]
    assert row.declared


def test_a_model_factor_of_a_plug_in_is_a_variable(
    pier: Jacket, quick: Settings, host_of: HostOf
) -> None:
    model = ModelFactor("local-model", "what the rule leaves open", 0.9, 0.15, "tests of ours")
    host = host_of(bolt_rule(Scatter("force exceeds the strength of the bolts", model=model)))
    result = chance_of_exceedance(pier, settings=quick, host=host, provisions=["alone"])
    [row] = result.limits
    assert {driver.name for driver in row.drivers} == {"bolt-strength", "local-model"}
    assert result.variables.by_name["local-model"].source == "tests of ours"
    strength = 1.20 * float(np.asarray(pier.bolts.tensile_strength))
    assert row.ratio_at_means == pytest.approx(900.0 / strength / 0.9)


def test_undeclared_scatter_is_told(pier: Jacket, quick: Settings, host_of: HostOf) -> None:
    host = host_of(bolt_rule(None))
    [row] = chance_of_exceedance(pier, settings=quick, host=host, provisions=["alone"]).limits
    assert not row.declared
    assert "no declared scatter" in row.event
    assert "nominal" in row.event
    assert 0.0 < row.probability < 1.0


def test_more_confidence_in_a_variable_makes_slip_rarer(pier: Jacket, quick: Settings) -> None:
    """Mean ratio below 1: less scatter of friction lowers the probability of slip."""

    def slip(variation: float) -> float:
        written = Chance.model_validate(
            {"variables": [{"name": "slip-coefficient", "coefficient_of_variation": variation}]}
        )
        found = chance_of_exceedance(pier, written=written, settings=quick, only=["seam-slip"])
        assert found.limits[0].ratio_at_means < 1.0
        return found.limits[0].probability

    probabilities = [slip(variation) for variation in (0.0, 0.1, 0.2, 0.4)]
    assert probabilities == sorted(probabilities)
    assert probabilities[0] < probabilities[-1]


def test_without_scatter_the_ratio_decides(pier: Jacket, quick: Settings) -> None:
    """Every variable held: each probability is zero or one, as the ratio at means says."""
    from jacketcheck.chance.variables import NAMES

    held = Chance.model_validate({"variables": [{"name": name, "held": True} for name in NAMES]})
    result = chance_of_exceedance(pier, written=held, settings=quick)
    for row in result.limits:
        assert row.probability == float(row.ratio_at_means > 1.0), row.id
    assert result.system.probability == max(row.probability for row in result.limits)


def test_settings_of_a_file_and_changes() -> None:
    written = Chance.model_validate({"samples": 500, "method": "random", "seed": 3})
    found = settings_of(written, Changes(seed=9, samples=None))
    assert (found.samples, found.method, found.seed) == (500, "random", 9)
    assert found.section_samples == DEFAULTS.section_samples
    assert settings_of(None) == DEFAULTS
