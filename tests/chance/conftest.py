"""Jackets, hosts and settings that keep tests quick."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from types import ModuleType

import pytest

from jacketcheck.analysis.axial_strain import CheckedStrain
from jacketcheck.analysis.lap import tension_share
from jacketcheck.analysis.shear import shear_force
from jacketcheck.chance.estimate import DEFAULTS
from jacketcheck.chance.evaluation import strained
from jacketcheck.chance.realisation import realise
from jacketcheck.chance.result import Settings
from jacketcheck.chance.variables import NAMES
from jacketcheck.hookspecs import hookimpl
from jacketcheck.host import Host, PluginInfo, load_host
from jacketcheck.inputs import RepairInput, read_input
from jacketcheck.jacket import Jacket, build_jacket
from jacketcheck.limit_state import LimitState, Provisions
from jacketcheck.mechanics._arrays import Real

_CASE = Path(__file__).parents[2] / "reference_cases" / "quarry-road-pier" / "repair.toml"
HostOf = Callable[..., Host]


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
def as_specified(pier: Jacket) -> Jacket:
    """The pier with every factor at 1, and a strain of 0.0026."""
    ones: dict[str, Real] = dict.fromkeys(NAMES, 1.0)
    sample = realise(pier, ones)
    share = float(tension_share(sample))
    strain = CheckedStrain(0.0026, 0.0, base_holds=True, value=0.0026)
    return strained(sample, strain, share=share, shear=float(shear_force(sample)))


@pytest.fixture
def host_of() -> HostOf:
    """A host with provisions `alone` that has nothing but some limit states of a plug-in."""

    def made(*limit_states: LimitState) -> Host:
        module = ModuleType("made_for_a_test")
        hooks = {
            "jacketcheck_provisions": lambda: [Provisions("alone", "Test", inherits=None)],
            "jacketcheck_limit_states": lambda: list(limit_states),
        }
        for name, hook in hooks.items():
            setattr(module, name, hookimpl(hook))
        info = PluginInfo("alone", "jacketcheck-alone", "1.0")
        return load_host(installed=False, extra=[(info, module)])

    return made
