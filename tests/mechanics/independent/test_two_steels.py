"""Two steels around one core, against one steel that is both."""

from __future__ import annotations

import pytest

from jacketcheck.mechanics.confinement import combined_ultimate_strain, ultimate_strain


@pytest.mark.parametrize("hoops", [0.0, 0.004, 0.012])
@pytest.mark.parametrize("jacket", [0.0, 0.008, 0.03])
def test_hoops_and_jacket_of_the_same_steel_are_one(hoops: float, jacket: float) -> None:
    both = combined_ultimate_strain(
        hoop_volumetric_ratio=hoops,
        hoop_yield_strength=420.0,
        hoop_ultimate_strain=0.09,
        jacket_volumetric_ratio=jacket,
        jacket_yield_strength=420.0,
        jacket_ultimate_strain=0.09,
        confined_strength=50.0,
    )
    one = ultimate_strain(
        volumetric_ratio=hoops + jacket,
        yield_strength=420.0,
        steel_ultimate_strain=0.09,
        confined_strength=50.0,
    )
    assert float(both) == pytest.approx(float(one), rel=1e-12)


def test_twice_the_force_of_half_the_steel_is_the_same() -> None:
    def strain(hoops: float, hoop_yield: float, jacket: float, jacket_yield: float) -> float:
        return float(
            combined_ultimate_strain(
                hoop_volumetric_ratio=hoops,
                hoop_yield_strength=hoop_yield,
                hoop_ultimate_strain=0.09,
                jacket_volumetric_ratio=jacket,
                jacket_yield_strength=jacket_yield,
                jacket_ultimate_strain=0.12,
                confined_strength=50.0,
            )
        )

    assert strain(0.01, 420.0, 0.02, 250.0) == pytest.approx(strain(0.02, 210.0, 0.01, 500.0))
    # hoops fracture first; what both do until then
    assert strain(0.01, 420.0, 0.02, 250.0) - 0.004 == pytest.approx(
        1.4 * 0.09 * (4.2 + 5.0) / 50.0
    )
