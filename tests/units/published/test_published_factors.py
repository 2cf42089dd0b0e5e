"""Conversion factors of NIST Special Publication 811 (2008), Appendix B.8, all digits printed."""

from __future__ import annotations

import pytest

from jacketcheck.units import display, parse_quantity


@pytest.mark.parametrize(
    ("text", "target", "printed", "digits"),
    [
        pytest.param("1 in", "m", 2.54e-2, 16, id="inch"),
        pytest.param("1 ft", "m", 3.048e-1, 16, id="foot"),
        pytest.param("1 mil", "m", 2.54e-5, 16, id="mil"),
        pytest.param("1 lbf", "N", 4.448222, 7, id="pound-force"),
        pytest.param("1 kip", "N", 4.448222e3, 7, id="kip"),
        pytest.param("1 psi", "Pa", 6.894757e3, 7, id="psi"),
        pytest.param("1 ksi", "Pa", 6.894757e6, 7, id="ksi"),
        pytest.param("1 lbf*ft", "N*m", 1.355818, 7, id="pound-force foot"),
        pytest.param("1 lbf/ft", "N/m", 1.459390e1, 7, id="pound-force per foot"),
        pytest.param("1 in**2", "m**2", 6.4516e-4, 16, id="square inch"),
        pytest.param("1 in**4", "m**4", 4.162314e-7, 7, id="inch to the fourth power"),
        pytest.param("1 ft**3", "m**3", 2.831685e-2, 7, id="cubic foot"),
        pytest.param("1 lbm", "kg", 4.535924e-1, 7, id="pound"),
        pytest.param("1 pcf", "kg/m**3", 1.601846e1, 7, id="pound per cubic foot"),
        pytest.param("1 deg", "rad", 1.745329e-2, 7, id="degree"),
        pytest.param("1 bar", "Pa", 1.0e5, 16, id="bar"),
    ],
)
def test_factor(text: str, target: str, printed: float, digits: int) -> None:
    assert parse_quantity(text, target) == pytest.approx(printed, rel=0.5 * 10.0 ** (1 - digits))


@pytest.mark.parametrize(
    ("unit", "shown", "printed"),
    [
        pytest.param("N", "kip", 1.0 / 4.448222e3, id="kip"),
        pytest.param("MPa", "ksi", 1.0 / 6.894757, id="ksi"),
        pytest.param("N mm", "kip·ft", 1.0 / 1.355818e6, id="kip foot"),
        pytest.param("mm", "in", 1.0 / 25.4, id="inch"),
        pytest.param("mm3", "ft³", 1.0 / 2.831685e7, id="cubic foot"),
        pytest.param("kg", "lb", 1.0 / 0.4535924, id="pound"),
    ],
)
def test_factor_of_output(unit: str, shown: str, printed: float) -> None:
    factor, text = display(unit, "us")
    assert factor == pytest.approx(printed, rel=2e-7)
    assert text == shown
