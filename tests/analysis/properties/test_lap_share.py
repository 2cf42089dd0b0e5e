"""Laps pull with what their bars have, so that the hoop force has no steps."""

from __future__ import annotations

import numpy as np

from jacketcheck.analysis.lap import tension_share
from tests.support.jackets import built


def test_the_share_has_no_steps_with_axial_load() -> None:
    loads = np.linspace(400.0, 900.0, 26)
    shares = [float(tension_share(built(f'actions.axial_load = "{one} kip"'))) for one in loads]
    assert np.all(np.diff(shares) <= 1e-3)
    assert np.max(np.abs(np.diff(shares))) < 0.5 / 20.0
