"""What must hold for bond laws and developed stresses, whatever the numbers."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from jacketcheck.errors import DomainError
from jacketcheck.mechanics.bar_bond_laws import cracked_concrete_bar_law, grouted_bar_law
from jacketcheck.mechanics.bar_steel import BarSteel
from jacketcheck.mechanics.bond_development import bonded_length, developed_stress
from jacketcheck.mechanics.bond_factors import (
    LARGEST_CRACK_WIDTH,
    longitudinal_crack_factor,
    transverse_pressure_factor,
    yielded_bar_factor,
)
from jacketcheck.mechanics.bond_law import (
    BondLaw,
    bond_energy,
    bond_stress,
    scaled_bond_law,
    slip_at_bond_energy,
    weaker_bond_law,
)
from jacketcheck.mechanics.bond_profile import bond_profile
from jacketcheck.mechanics.published_bond_laws import (
    SplittingConfinement,
    pullout_bond_law,
    splitting_bond_law,
    splitting_bond_strength,
)

ERROR = 3e-3  # of the bond solution, both ways together
SLIPS = np.concatenate([[0.0], np.geomspace(1e-6, 40.0, 400)])
STEELS = st.builds(
    lambda fy, ratio, sh, su: BarSteel(fy, fy * ratio, sh, su, 200e3),
    st.floats(300.0, 550.0),
    st.floats(1.1, 1.7),
    st.floats(0.004, 0.015),
    st.floats(0.04, 0.12),
)


@st.composite
def _laws(draw: st.DrawFn) -> BondLaw:
    peak = draw(st.floats(1.0, 25.0))
    one = draw(st.floats(0.05, 2.0))
    two = one * draw(st.floats(1.0, 3.0))
    three = two + draw(st.floats(0.0, 15.0))
    residual = peak * draw(st.sampled_from([0.0, 0.15, 0.4, 1.0]))
    return BondLaw(peak, one, two, three, 0.4, residual)


@st.composite
def _both_laws(draw: st.DrawFn, pressure: float = 0.0) -> tuple[BondLaw, BondLaw]:
    """The same bar chipped free and not, at one pressure."""
    diameter = draw(st.floats(12.0, 57.0))
    ribs = max(0.42 * diameter, 3.6)
    cover = diameter * draw(st.floats(0.5, 5.0))
    confinement: SplittingConfinement = draw(st.sampled_from(["unconfined", "stirrups"]))
    chipped = grouted_bar_law(
        draw(st.floats(1.0, 90.0)), clear_rib_spacing=ribs, confining_pressure=pressure
    )
    unchipped = cracked_concrete_bar_law(
        draw(st.floats(15.0, 90.0)),
        bar_diameter=diameter,
        clear_rib_spacing=ribs,
        minimum_cover=cover,
        maximum_cover=cover * draw(st.floats(1.0, 6.0)),
        confinement=confinement,
        crack_width=draw(st.floats(0.0, 0.5)),
        confining_pressure=pressure,
        transverse_index=draw(st.floats(0.0, 0.05)),
        not_above=chipped,
    )
    return chipped, unchipped


@given(st.floats(0.0, 15.0).flatmap(_both_laws))
def test_unchipped_bond_is_never_above_chipped(laws: tuple[BondLaw, BondLaw]) -> None:
    chipped, unchipped = (np.asarray(bond_stress(SLIPS, law)) for law in laws)
    assert np.all(unchipped <= chipped * (1.0 + 1e-12))


@settings(max_examples=40, deadline=None)
@given(_both_laws(2.0), st.floats(50.0, 2000.0), STEELS)
def test_chipped_never_develops_less_than_unchipped(
    laws: tuple[BondLaw, BondLaw], length: float, steel: BarSteel
) -> None:
    chipped, unchipped = (
        developed_stress(length, bar_diameter=32.0, law=law, steel=steel).stress for law in laws
    )
    assert chipped >= unchipped * (1.0 - ERROR)


@given(_laws(), _laws())
def test_weaker_law_is_never_stronger(one: BondLaw, other: BondLaw) -> None:
    weaker = np.asarray(bond_stress(SLIPS, weaker_bond_law(one, other)))
    for law in (one, other):
        assert np.all(weaker <= np.asarray(bond_stress(SLIPS, law)) * (1.0 + 1e-9) + 1e-12)


@given(_laws())
def test_weaker_of_a_law_and_itself_is_the_law(law: BondLaw) -> None:
    same = bond_stress(SLIPS, weaker_bond_law(law, law))
    np.testing.assert_array_equal(same, bond_stress(SLIPS, law))


@given(_laws(), st.floats(0.0, 30.0), st.floats(0.0, 30.0))
def test_energy_never_falls(law: BondLaw, one: float, other: float) -> None:
    less, more = sorted((one, other))
    assert bond_energy(less, law) <= bond_energy(more, law) + 1e-9


@given(_laws(), st.floats(0.0, 0.999))
def test_slip_and_energy_are_inverse(law: BondLaw, part: float) -> None:
    slip = part * float(law.slip_3)
    assert slip_at_bond_energy(bond_energy(slip, law), law) == pytest.approx(
        slip, rel=1e-5, abs=1e-9
    )


@settings(max_examples=40, deadline=None)
@given(_laws(), STEELS, st.floats(0.0, 1500.0), st.floats(0.0, 1500.0))
def test_more_length_never_develops_less(
    law: BondLaw, steel: BarSteel, one: float, other: float
) -> None:
    found = developed_stress(
        np.sort(np.array([one, other])), bar_diameter=32.0, law=law, steel=steel
    )
    less, more = np.asarray(found.stress)
    assert less <= more * (1.0 + ERROR) + 1e-9
    assert more <= steel.tensile_strength


@settings(max_examples=40, deadline=None)
@given(_laws(), STEELS, st.floats(20.0, 1500.0), st.floats(1.0, 2.0))
def test_more_pressure_never_develops_less(
    law: BondLaw, steel: BarSteel, length: float, factor: float
) -> None:
    weak = developed_stress(length, bar_diameter=32.0, law=law, steel=steel)
    strong = developed_stress(
        length, bar_diameter=32.0, law=scaled_bond_law(law, factor), steel=steel
    )
    assert strong.stress >= weak.stress * (1.0 - ERROR)


@settings(max_examples=40, deadline=None)
@given(_laws(), STEELS, st.floats(0.0, 1.1), st.floats(0.0, 1.1))
def test_more_stress_never_takes_less_length(
    law: BondLaw, steel: BarSteel, one: float, other: float
) -> None:
    targets = np.sort(np.array([one, other])) * steel.tensile_strength
    less, more = np.asarray(bonded_length(targets, bar_diameter=32.0, law=law, steel=steel))
    assert less <= more * (1.0 + ERROR)
    if targets[1] > steel.tensile_strength:
        assert more == np.inf


@settings(max_examples=30, deadline=None)
@given(_laws(), STEELS, st.floats(50.0, 1200.0))
def test_yield_reduction_only_takes_away(law: BondLaw, steel: BarSteel, length: float) -> None:
    with_it = developed_stress(length, bar_diameter=32.0, law=law, steel=steel)
    without = developed_stress(
        length, bar_diameter=32.0, law=law, steel=steel, yield_reduction=False
    )
    assert with_it.stress <= without.stress * (1.0 + ERROR)
    assert not with_it.fractures or without.fractures


def test_scalars_and_arrays_agree() -> None:
    steel = BarSteel(469.0, 655.0, 0.0115, 0.09, 200e3)
    lengths = np.array([[0.0, 120.0, 500.0], [900.0, 1500.0, 4000.0]])
    peaks = np.array([6.0, 12.0, 18.0])
    law = BondLaw(peaks, 1.0, 2.0, 13.0, 0.4, 0.4 * peaks)
    found = developed_stress(lengths, bar_diameter=32.0, law=law, steel=steel)
    needed = bonded_length(np.full((2, 3), 500.0), bar_diameter=32.0, law=law, steel=steel)
    for row, column in np.ndindex(2, 3):
        peak = float(peaks[column])
        one = BondLaw(peak, 1.0, 2.0, 13.0, 0.4, 0.4 * peak)
        alone = developed_stress(
            float(lengths[row, column]), bar_diameter=32.0, law=one, steel=steel
        )
        for name in ("stress", "loaded_end_slip", "free_end_slip", "yields", "fractures"):
            assert np.asarray(getattr(found, name))[row, column] == getattr(alone, name)
        length = bonded_length(500.0, bar_diameter=32.0, law=one, steel=steel)
        assert np.asarray(needed)[row, column] == length
    assert found.stress[0, 0] == 0.0  # type: ignore[index] # an array went in
    assert found.fractures[1, 2]


def test_no_length_for_no_stress() -> None:
    steel = BarSteel(469.0, 655.0, 0.0115, 0.09, 200e3)
    law = BondLaw(10.0, 1.0, 2.0, 13.0, 0.4, 4.0)
    assert bonded_length(0.0, bar_diameter=32.0, law=law, steel=steel) == 0.0


def test_without_hardening_yield_is_all_there_is() -> None:
    steel = BarSteel(469.0, 469.0, 0.0115, 0.09, 200e3)
    law = BondLaw(10.0, 1.0, 2.0, 13.0, 0.4, 4.0)
    found = developed_stress(3000.0, bar_diameter=32.0, law=law, steel=steel)
    assert found.stress == 469.0
    assert found.fractures
    length = bonded_length(469.0, bar_diameter=32.0, law=law, steel=steel)
    assert developed_stress(
        length, bar_diameter=32.0, law=law, steel=steel
    ).stress == pytest.approx(469.0, rel=ERROR)


@pytest.mark.parametrize(
    ("numbers", "name"),
    [
        ((0.0, 1.0, 2.0, 12.0, 0.4, 0.0), "peak_stress"),
        ((10.0, 0.0, 2.0, 12.0, 0.4, 4.0), "slip_1"),
        ((10.0, 3.0, 2.0, 12.0, 0.4, 4.0), "slip_1"),
        ((10.0, 1.0, 2.0, 1.9, 0.4, 4.0), "slip_2"),
        ((10.0, 1.0, 2.0, 12.0, 1.1, 4.0), "exponent"),
        ((10.0, 1.0, 2.0, 12.0, 0.4, 10.1), "residual_stress"),
        ((10.0, 1.0, 2.0, 12.0, 0.4, -1.0), "residual_stress"),
        ((10.0, 1.0, float("nan"), 12.0, 0.4, 4.0), "slip_2"),
    ],
)
def test_numbers_that_make_no_law(numbers: tuple[float, ...], name: str) -> None:
    with pytest.raises(DomainError, match=name):
        BondLaw(*numbers)


def test_laws_of_unlike_exponents_are_not_compared() -> None:
    one = BondLaw(10.0, 1.0, 2.0, 12.0, 0.4, 4.0)
    with pytest.raises(DomainError, match="exponent"):
        weaker_bond_law(one, BondLaw(10.0, 1.0, 2.0, 12.0, 0.3, 4.0))


@pytest.mark.parametrize("bad", [-1.0, float("nan"), float("inf")])
def test_domain_of_law_and_factors(bad: float) -> None:
    law = BondLaw(10.0, 1.0, 2.0, 12.0, 0.4, 4.0)
    steel = BarSteel(469.0, 655.0, 0.0115, 0.09, 200e3)
    for call in (bond_stress, bond_energy, slip_at_bond_energy):
        with pytest.raises(DomainError):
            call(bad, law)
    with pytest.raises(DomainError, match="factor"):
        scaled_bond_law(law, bad)
    with pytest.raises(DomainError, match="pressure"):
        transverse_pressure_factor(bad, concrete_strength=40.0)
    with pytest.raises(DomainError, match="crack_width"):
        longitudinal_crack_factor(bad)
    with pytest.raises(DomainError, match="strain"):
        yielded_bar_factor(bad, steel)
    with pytest.raises(DomainError, match="bonded_length"):
        developed_stress(bad, bar_diameter=32.0, law=law, steel=steel)
    with pytest.raises(DomainError, match="target_stress"):
        bonded_length(bad, bar_diameter=32.0, law=law, steel=steel)
    with pytest.raises(DomainError, match="bonded_length"):
        bond_profile(bad, bar_diameter=32.0, law=law, steel=steel)


def test_edges_of_published_ranges() -> None:
    assert longitudinal_crack_factor(LARGEST_CRACK_WIDTH) == pytest.approx(0.4)
    with pytest.raises(DomainError, match="crack_width"):
        longitudinal_crack_factor(0.51)
    steel = BarSteel(469.0, 655.0, 0.0115, 0.09, 200e3)
    with pytest.raises(DomainError, match="ultimate strain"):
        yielded_bar_factor(0.0901, steel)
    soft = BarSteel(300.0, 610.0, 0.0115, 0.09, 200e3)
    with pytest.raises(DomainError, match="tensile over yield"):
        yielded_bar_factor(0.05, soft)
    law = BondLaw(10.0, 1.0, 2.0, 12.0, 0.4, 4.0)
    with pytest.raises(DomainError, match="loaded_end_stress"):
        bond_profile(100.0, bar_diameter=32.0, law=law, steel=steel, loaded_end_stress=600.0)


@pytest.mark.parametrize(
    ("change", "name"),
    [
        ({"concrete_strength": 14.0}, "concrete_strength"),
        ({"concrete_strength": 111.0}, "concrete_strength"),
        ({"minimum_cover": 12.0}, "cover_over_diameter"),
        ({"maximum_cover": 49.0}, "cover_ratio"),
        ({"transverse_index": 0.051}, "transverse_index"),
        ({"bond_condition": "poor"}, "bond_condition"),
    ],
)
def test_range_of_the_splitting_strength(change: dict[str, float | str], name: str) -> None:
    numbers: dict[str, float | str] = {
        "concrete_strength": 38.0,
        "bar_diameter": 25.0,
        "minimum_cover": 50.0,
        "maximum_cover": 50.0,
        "bond_condition": "good",
    }
    with pytest.raises(DomainError, match=name):
        splitting_bond_strength(**(numbers | change))  # type: ignore[arg-type] # wrong on purpose


def test_more_cover_than_the_source_knows_counts_no_more() -> None:
    def strength(cover: float, diameter: float) -> float:
        return float(
            splitting_bond_strength(
                38.0,
                bar_diameter=diameter,
                minimum_cover=cover,
                maximum_cover=cover,
                bond_condition="good",
            )
        )

    assert strength(300.0, 25.0) == strength(87.5, 25.0)
    assert strength(60.0, 10.0) * 2.5**0.2 > strength(60.0 * 2.5, 25.0)  # size not below 12.5 mm


def test_splitting_law_is_the_weaker_of_both() -> None:
    pullout = pullout_bond_law(38.0, clear_rib_spacing=12.0, bond_condition="good")
    for confinement in ("unconfined", "stirrups"):
        law = splitting_bond_law(pullout, splitting_strength=9.0, confinement=confinement)
        split, pulled = bond_stress(SLIPS, law), bond_stress(SLIPS, pullout)
        assert np.all(np.asarray(split) <= np.asarray(pulled) * (1.0 + 1e-12))
