"""What the four variants of the reference case must fail by, as its README says."""

from __future__ import annotations

import math

import pytest

from jacketcheck.causes import causes_first, roots_of
from jacketcheck.results import Kind, Result
from tests.support.jackets import VARIANTS, built, rows

SLEEVE = {
    "hoop-dilation",
    "sleeve-gross-yield",
    "sleeve-net-rupture",
    "seam-block-shear",
}


def _limits(variant: str) -> list[Result]:
    """Rows with a verdict: causes before what follows from them, each worst first."""
    found = [one for one in rows(built(variant=variant)) if one.kind is Kind.LIMIT]
    return list(causes_first(found))


def _exceeded(variant: str) -> set[str]:
    """What exceeds on its own, not as a consequence of another row that does."""
    found = _limits(variant)
    return {
        one.limit_state
        for one, roots in zip(found, roots_of(found), strict=True)
        if not float(one.ratio) <= 1.0 and not roots
    }


@pytest.mark.parametrize("variant", VARIANTS)
def test_everything_is_evaluated(variant: str) -> None:
    found = rows(built(variant=variant))
    assert not [one for one in found if one.kind is Kind.NOT_EVALUATED]
    assert not [one for one in found if math.isnan(float(one.ratio))]


def test_chipped_and_thick_nothing_exceeds() -> None:
    assert _exceeded("chipped") == set()


def test_unchipped_only_the_fractured_bars_exceed() -> None:
    assert _exceeded("thick, unchipped") == {"bar-bond", "bar-length"}


def test_thin_the_sleeve_yields_as_the_core_dilates() -> None:
    exceeded = _exceeded("thin")
    assert exceeded <= SLEEVE
    assert _limits("thin")[0].limit_state == "hoop-dilation"
    blocks = [one for one in _limits("thin") if one.limit_state == "seam-block-shear"]
    assert all(one.location == "sleeve" for one in blocks if float(one.ratio) > 1.0)


def test_snug_bolts_slip_first() -> None:
    worst = _limits("thin, snug bolts")[0]
    assert worst.limit_state == "seam-slip"
    assert math.isinf(float(worst.ratio))


def test_the_hinge_forms_above_the_repair() -> None:
    strengths = {
        step.symbol: float(step.value)
        for one in _limits("chipped")
        if one.limit_state == "load-capacity"
        for step in one.steps
    }
    assert strengths["V_above"] < strengths["V_base"]
