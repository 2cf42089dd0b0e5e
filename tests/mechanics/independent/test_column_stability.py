"""Euler's load against a finite-difference solution of the buckling problem."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.linalg import eigh_tridiagonal

from jacketcheck.errors import DomainError
from jacketcheck.mechanics.column_stability import aci_effective_stiffness, critical_load


def _cantilever_by_differences(stiffness: float, height: float, points: int = 2000) -> float:
    """Least load of ``EI y'' = -P y`` over the free top's deflection: y = 0 there, y' = 0 at foot.

    Measured from the deflected top, y vanishes at the top and has no slope at the foot, where a
    mirrored half closes the beam: a string of twice the height with both ends held.
    """
    step = 2.0 * height / (points + 1)
    diagonal, beside = np.full(points, 2.0), np.full(points - 1, -1.0)
    least = eigh_tridiagonal(diagonal, beside, eigvals_only=True, select="i", select_range=(0, 0))
    return float(stiffness * least[0] / step**2)


@pytest.mark.parametrize(("stiffness", "height"), [(2.0e14, 6000.0), (9.0e14, 15_000.0)])
def test_cantilever(stiffness: float, height: float) -> None:
    found = critical_load(stiffness, effective_length=2.0 * height)
    assert found == pytest.approx(_cantilever_by_differences(stiffness, height), rel=1e-5)


def test_stiffness_by_fibers() -> None:
    # 0.4 E I_g with the inertia summed over strips of the circle
    edges = np.linspace(-500.0, 500.0, 20_001)
    middle = (edges[1:] + edges[:-1]) / 2.0
    inertia = float(np.sum(2.0 * np.sqrt(500.0**2 - middle**2) * middle**2 * np.diff(edges)))
    assert aci_effective_stiffness(30_000.0, diameter=1000.0) == pytest.approx(
        0.4 * 30_000.0 * inertia, rel=1e-6
    )


def test_arrays_and_errors() -> None:
    loads = critical_load(np.array([1e14, 2e14]), effective_length=1e4)
    assert np.asarray(loads)[1] == pytest.approx(2.0 * np.asarray(loads)[0])
    with pytest.raises(DomainError, match="effective_length"):
        critical_load(1e14, effective_length=0.0)
    with pytest.raises(DomainError, match="diameter"):
        aci_effective_stiffness(3e4, diameter=-1.0)
