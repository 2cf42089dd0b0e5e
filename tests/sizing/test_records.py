"""What is written down during a search."""

from __future__ import annotations

import numpy as np

from jacketcheck.sizing.fates import Fate, Fates
from jacketcheck.sizing.proof import prove
from jacketcheck.sizing.tally import Tally


def test_fates_are_counted_by_reason_the_commonest_first() -> None:
    fates = Fates.of(6)
    fates.decide(np.array([0, 1, 2]), Fate.CLOSED_FORM, "slip")
    fates.decide(np.array([3]), Fate.CLOSED_FORM, "yield")
    fates.decide(np.array([4]), Fate.WORKS)
    assert fates.count(Fate.CLOSED_FORM) == 4
    assert fates.having(Fate.OPEN).tolist() == [5]
    assert list(fates.reasons_of(slice(None), Fate.CLOSED_FORM).items()) == [
        ("slip", 3),
        ("yield", 1),
    ]
    assert fates.reasons_of(np.array([2, 3]), Fate.CLOSED_FORM) == {"slip": 1, "yield": 1}
    assert not fates.reasons_of(slice(None), Fate.WORKS)


def test_a_tally_keeps_who_comes_nearest_and_who_goes_together() -> None:
    tally, designs = Tally(), np.array([7, 8, 9])
    never = np.array([3.0, 1.5, 2.0])
    # each passed by one design, never by the same one
    first, second = np.array([0.5, 1.2, 1.3]), np.array([1.4, 0.9, np.nan])
    tally.add(("never", "first", "second"), np.stack([never, first, second]), designs)
    assert tally.never_passed() == ("never",)
    assert (tally.states["never"].smallest_ratio, tally.states["never"].design) == (1.5, 8)
    assert (tally.states["second"].evaluated, tally.states["second"].passed) == (2, 1)
    assert tally.conflicts() == (("first", "second"),)


def test_a_state_that_does_not_apply_is_not_in_the_way() -> None:
    tally = Tally()
    tally.add(("absent",), np.array([[-np.inf, -np.inf]]), np.array([0, 1]))
    assert tally.states["absent"].evaluated == 0
    assert tally.never_passed() == ()


def test_infinite_ratios_count_as_evaluated() -> None:
    tally = Tally()
    tally.add(("hopeless",), np.array([[np.inf]]), np.array([4]))
    assert tally.never_passed() == ("hopeless",)
    assert tally.states["hopeless"].design == 4


def test_a_proof_accounts_for_every_cheaper_design_and_no_other() -> None:
    fates = Fates.of(6)
    fates.costs[:] = [
        [1.0, 1.0, 1.0],
        [2.0, 2.0, 2.0],
        [2.0, 2.0, 2.0],
        [1.0, 3.0, 1.0],
        [2.0, 1.0, 2.0],
        [np.inf, np.inf, np.inf],
    ]
    fates.decide(np.array([0]), Fate.CLOSED_FORM, "slip")
    fates.decide(np.array([1, 2]), Fate.WORKS)
    fates.decide(np.array([3]), Fate.SECTIONS, "moment")
    fates.decide(np.array([4]), Fate.BOND, "bond")
    fates.decide(np.array([5]), Fate.CANNOT_BE_BUILT, "geometry")
    proof = prove(fates.costs[1], fates)
    assert proof.cheaper == 2
    assert (proof.closed_form, proof.bond, proof.sections) == ({"slip": 1}, {"bond": 1}, {})
    assert proof.is_proven
    assert not proof.is_closed_form
    fates.decide(np.array([4]), Fate.NOT_EVALUATED, "bond")
    assert not prove(fates.costs[1], fates).is_proven
