"""Jackets and settings that keep tests quick."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from jacketcheck.analysis.lap import tension_share
from jacketcheck.chance.base_strain import BaseStrain
from jacketcheck.chance.estimate import DEFAULTS
from jacketcheck.chance.evaluation import with_strain
from jacketcheck.chance.realisation import Realisation, realise
from jacketcheck.chance.result import Settings
from jacketcheck.chance.variables import NAMES
from jacketcheck.inputs import RepairInput, read_input
from jacketcheck.jacket import Jacket, build_jacket
from jacketcheck.mechanics._arrays import Real

_CASE = Path(__file__).parents[2] / "reference_cases" / "quarry-road-pier" / "repair.toml"


@pytest.fixture(scope="session")
def pier_input() -> RepairInput:
    """The invented reference case, which is within its limits."""
    return read_input(_CASE).base


@pytest.fixture
def pier(pier_input: RepairInput) -> Jacket:
    """The same, built."""
    return build_jacket(pier_input)


@pytest.fixture
def quick() -> Settings:
    """Few samples, and none with section analyses."""
    return replace(DEFAULTS, samples=4096, bond_samples=256, section_samples=0)


@pytest.fixture
def as_specified(pier: Jacket) -> Realisation:
    """The pier with every factor at 1, and the strain that its file declares."""
    ones: dict[str, Real] = dict.fromkeys(NAMES, 1.0)
    sample = realise(pier, ones)
    declared = pier.demands.axial_strain
    assert declared is not None
    share = float(tension_share(sample.jacket))
    return with_strain(sample, BaseStrain("declared", float(declared), 0.0, share), pier)
