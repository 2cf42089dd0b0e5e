"""An invented pier with European materials: as input, built, and some of its rows."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import HealthCheck, settings
from jacketcheck_europe.limit_states.seam_slip import seam_slip
from jacketcheck_europe.partial_factors import RECOMMENDED

from jacketcheck.api import build_variants
from jacketcheck.host import Host, load_host
from jacketcheck.inputs import read_input
from jacketcheck.plugin import Jacket, Result

# no test depends on how fast or how busy the machine is
settings.register_profile(
    "any machine", deadline=None, suppress_health_check=[HealthCheck.too_slow]
)
settings.load_profile("any machine")

REPAIR = Path(__file__).parent / "repair_en.toml"


@pytest.fixture(scope="session")
def repair_path() -> Path:
    """The repair file."""
    return REPAIR


@pytest.fixture(scope="session")
def host() -> Host:
    """With this plug-in as it is installed, by its entry point."""
    return load_host()


@pytest.fixture(scope="session")
def jackets(host: Host) -> dict[str, Jacket]:
    """Every variant, built."""
    repair = read_input(REPAIR, catalog=host.catalog)
    return dict(build_variants(repair, host=host, variants=repair.variants))


@pytest.fixture
def jacket(jackets: dict[str, Jacket]) -> Jacket:
    """The base variant."""
    return jackets["preloaded"]


@pytest.fixture
def slip_row(jacket: Jacket) -> Result:
    """Slip of its seam bolts."""
    return seam_slip(jacket, RECOMMENDED)[0]
