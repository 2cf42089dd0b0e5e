"""What section, hinge and shear formulas refuse."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import numpy as np
import pytest

from jacketcheck.errors import DomainError
from jacketcheck.mechanics.aci_column_shear import (
    aci_concrete_shear,
    aci_hoop_shear,
    aci_light_hoop_concrete_shear,
    aci_minimum_hoop_area,
)
from jacketcheck.mechanics.bar_buckling import bar_buckling_drift, bar_buckling_strain
from jacketcheck.mechanics.bar_steel import BarSteel
from jacketcheck.mechanics.concrete_law import elastic_concrete_law
from jacketcheck.mechanics.degrading_column_shear import (
    degrading_axial_shear,
    degrading_concrete_shear,
    degrading_hoop_shear,
)
from jacketcheck.mechanics.guide_spec_column_shear import (
    guide_spec_concrete_factor,
    guide_spec_concrete_shear,
    guide_spec_hoop_shear,
)
from jacketcheck.mechanics.hinge_displacement import (
    plastic_displacement,
    plastic_rotation,
    yield_displacement,
)
from jacketcheck.mechanics.hinge_length import (
    guide_spec_hinge_length,
    guide_spec_jacketed_hinge_length,
    hardening_hinge_length,
    hinge_length,
    jacketed_hinge_length,
)
from jacketcheck.mechanics.interface_shear import (
    aashto_interface_shear,
    aashto_interface_shear_limit,
    aci_friction_coefficient,
    aci_interface_shear,
    aci_interface_shear_limit,
)
from jacketcheck.mechanics.jacket_shear import jacket_shear
from jacketcheck.mechanics.moment_curvature import curvature_range, moment_curvature
from jacketcheck.mechanics.nominal_moment import block_depth_ratio, nominal_moment
from jacketcheck.mechanics.relocated_hinge import (
    moment_at_height,
    overstrength_moment,
    p_delta_ratio,
    relocated_hinge,
)
from jacketcheck.mechanics.section import BarGroup, CircularSection, ConcreteZone
from jacketcheck.mechanics.section_geometry import (
    bar_ring,
    chord_strips,
    segment_area,
    segment_centroid,
)
from jacketcheck.mechanics.section_limits import (
    core_strain_at_moment,
    point_at_core_strain,
    ultimate_point,
)
from jacketcheck.mechanics.strain_penetration import (
    penetration_length,
    slip_at_stress,
    slip_at_yield,
    slip_rotation,
)

STEEL = BarSteel(475.0, 655.0, 0.0115, 0.09, 200e3)
HINGE = relocated_hinge(1e9, clear_height=3000.0, repair_height=500.0)

CALLS: list[tuple[Callable[..., Any], dict[str, Any]]] = [
    (hinge_length, {"shear_span": 5e3, "expected_yield": 475.0, "bar_diameter": 32.0}),
    (guide_spec_hinge_length, {"shear_span": 5e3, "expected_yield": 475.0, "bar_diameter": 32.0}),
    (
        hardening_hinge_length,
        {
            "shear_span": 5e3,
            "expected_yield": 475.0,
            "expected_tensile": 600.0,
            "bar_diameter": 32.0,
        },
    ),
    (jacketed_hinge_length, {"gap": 50.0, "expected_yield": 475.0, "bar_diameter": 32.0}),
    (
        guide_spec_jacketed_hinge_length,
        {"gap": 50.0, "expected_yield": 475.0, "bar_diameter": 32.0},
    ),
    (
        relocated_hinge,
        {
            "hinge_moment": 1e9,
            "clear_height": 3e3,
            "repair_height": 500.0,
            "top_moment": 1e8,
            "top_depth": 10.0,
        },
    ),
    (moment_at_height, {"height": 100.0}),
    (overstrength_moment, {"plastic_moment": 1e9, "overstrength_factor": 1.2}),
    (p_delta_ratio, {"axial_load": 1e6, "displacement": 100.0, "hinge_moment": 1e9}),
    (
        yield_displacement,
        {
            "yield_curvature": 1e-6,
            "shear_span": 5e3,
            "repair_height": 500.0,
            "stiffness_ratio": 0.5,
            "strain_penetration": 100.0,
        },
    ),
    (plastic_rotation, {"curvature": 1e-5, "yield_curvature": 1e-6, "hinge_length": 500.0}),
    (
        plastic_displacement,
        {"rotation": 0.01, "shear_span": 5e3, "hinge_length": 500.0, "repair_height": 500.0},
    ),
    (penetration_length, {"expected_yield": 475.0, "bar_diameter": 32.0}),
    (
        slip_at_yield,
        {
            "yield_strength": 475.0,
            "bar_diameter": 32.0,
            "concrete_strength": 30.0,
            "bond_exponent": 0.4,
        },
    ),
    (slip_rotation, {"slip": 0.5, "distance_to_neutral_axis": 700.0}),
    (
        bar_buckling_strain,
        {
            "axial_load": 1e6,
            "concrete_strength": 30.0,
            "gross_area": 1e6,
            "hoop_ratio": 0.01,
            "hoop_yield": 400.0,
            "hoop_elastic_modulus": 200e3,
        },
    ),
    (
        bar_buckling_drift,
        {
            "axial_load": 1e6,
            "concrete_strength": 30.0,
            "gross_area": 1e6,
            "hoop_ratio": 0.01,
            "hoop_yield": 400.0,
            "hoop_spacing": 100.0,
            "bar_diameter": 32.0,
            "column_diameter": 1128.0,
            "shear_span": 5e3,
        },
    ),
    (
        aci_hoop_shear,
        {
            "hoop_area": 400.0,
            "hoop_yield": 400.0,
            "diameter": 1200.0,
            "spacing": 100.0,
            "concrete_strength": 28.0,
        },
    ),
    (
        aci_minimum_hoop_area,
        {"diameter": 1200.0, "spacing": 100.0, "concrete_strength": 28.0, "hoop_yield": 400.0},
    ),
    (guide_spec_concrete_factor, {"ductility": 3.0, "hoop_ratio": 0.01, "hoop_yield": 400.0}),
    (
        guide_spec_hoop_shear,
        {
            "bar_area": 200.0,
            "hoop_yield": 400.0,
            "core_diameter": 1100.0,
            "spacing": 100.0,
            "concrete_strength": 28.0,
            "gross_area": 1e6,
        },
    ),
    (
        degrading_concrete_shear,
        {
            "gross_area": 1e6,
            "concrete_strength": 28.0,
            "aspect_ratio": 4.0,
            "bar_ratio": 0.02,
            "curvature_ductility": 5.0,
        },
    ),
    (
        degrading_axial_shear,
        {"axial_load": 1e6, "diameter": 1e3, "neutral_axis_depth": 300.0, "shear_span": 5e3},
    ),
    (
        degrading_hoop_shear,
        {
            "bar_area": 200.0,
            "hoop_yield": 400.0,
            "diameter": 1e3,
            "neutral_axis_depth": 300.0,
            "hoop_cover": 50.0,
            "spacing": 100.0,
        },
    ),
    (
        jacket_shear,
        {"hoop_stress": 250.0, "thickness": 10.0, "jacket_diameter": 1e3, "crack_angle": 0.8},
    ),
    (block_depth_ratio, {"concrete_strength": 28.0}),
]
ARGUMENTS = [
    pytest.param(call, given, name, id=f"{call.__name__}-{name}")
    for call, given in CALLS
    for name in given
]


def _call(call: Callable[..., Any], given: dict[str, Any]) -> Any:
    first, *rest = given
    extra: dict[str, Any] = {"hinge": HINGE} if call is moment_at_height else {}
    return call(given[first], **{name: given[name] for name in rest}, **extra)


@pytest.mark.parametrize("bad", [np.nan, np.inf, -1.0], ids=["nan", "infinite", "negative"])
@pytest.mark.parametrize(("call", "given", "name"), ARGUMENTS)
def test_every_argument_is_checked(
    call: Callable[..., Any], given: dict[str, Any], name: str, bad: float
) -> None:
    assert np.all(np.isfinite(_call(call, given)))
    with pytest.raises(DomainError):
        _call(call, given | {name: bad})
    with pytest.raises(DomainError):
        _call(call, given | {name: np.array([given[name], bad])})


@pytest.mark.parametrize(("call", "given"), CALLS, ids=lambda one: getattr(one, "__name__", ""))
def test_arrays_give_what_scalars_give(call: Callable[..., Any], given: dict[str, Any]) -> None:
    first = next(iter(given))
    values = np.array([given[first], 1.01 * given[first]])
    many = _call(call, given | {first: values})
    singles = [_call(call, given | {first: float(value)}) for value in values]
    if isinstance(many, tuple):
        many, singles = many[0], [single[0] for single in singles]
    assert np.asarray(many) == pytest.approx(singles)


@pytest.mark.parametrize(
    "call",
    [
        pytest.param(
            lambda: relocated_hinge(1e9, clear_height=3e3, repair_height=3e3), id="H-equals-L"
        ),
        pytest.param(
            lambda: relocated_hinge(1e9, clear_height=3e3, repair_height=np.array([1e3, 4e3])),
            id="H-above-L",
        ),
        pytest.param(
            lambda: relocated_hinge(1e9, clear_height=3e3, repair_height=2e3, top_depth=1e3),
            id="hinges-meet",
        ),
        pytest.param(
            lambda: yield_displacement(1e-6, shear_span=3e3, repair_height=3e3), id="no-span"
        ),
        pytest.param(
            lambda: plastic_displacement(0.01, shear_span=1e3, hinge_length=2e3), id="long-hinge"
        ),
        pytest.param(lambda: overstrength_moment(1e9, overstrength_factor=0.9), id="understrength"),
        pytest.param(
            lambda: hardening_hinge_length(
                5e3, expected_yield=475.0, expected_tensile=400.0, bar_diameter=32.0
            ),
            id="softening",
        ),
        pytest.param(
            lambda: slip_at_stress(500.0, yield_strength=475.0, slip_at_yield=0.7),
            id="beyond-yield",
        ),
        pytest.param(
            lambda: bar_buckling_drift(
                50e6,
                concrete_strength=30.0,
                gross_area=1e6,
                hoop_ratio=0.01,
                hoop_yield=400.0,
                hoop_spacing=100.0,
                bar_diameter=32.0,
                column_diameter=1128.0,
                shear_span=5e3,
            ),
            id="crushed",
        ),
        pytest.param(
            lambda: degrading_axial_shear(
                1e6, diameter=1e3, neutral_axis_depth=1100.0, shear_span=5e3
            ),
            id="deep-compression",
        ),
        pytest.param(
            lambda: jacket_shear(
                250.0, thickness=10.0, jacket_diameter=1e3, crack_angle=0.5 * np.pi
            ),
            id="level-cracks",
        ),
        pytest.param(
            lambda: guide_spec_concrete_factor(0.9, hoop_ratio=0.01, hoop_yield=400.0),
            id="ductility-below-one",
        ),
        pytest.param(
            lambda: guide_spec_concrete_shear(
                1e6, concrete_strength=28.0, axial_load=1e6, concrete_factor=0.2
            ),
            id="factor-below-its-range",
        ),
        pytest.param(
            lambda: guide_spec_concrete_shear(
                1e6, concrete_strength=28.0, axial_load=np.nan, concrete_factor=1.0
            ),
            id="guide-spec-nan-load",
        ),
        pytest.param(
            lambda: aci_concrete_shear(1200.0, concrete_strength=28.0, axial_load=np.nan),
            id="aci-nan-load",
        ),
        pytest.param(
            lambda: aci_concrete_shear(
                1200.0,
                concrete_strength=28.0,
                edition="318-63",  # type: ignore[arg-type] # on purpose
            ),
            id="unknown-edition",
        ),
        pytest.param(
            lambda: aci_light_hoop_concrete_shear(
                1200.0, concrete_strength=28.0, tension_bar_area=0.0
            ),
            id="no-tension-bars",
        ),
        pytest.param(
            lambda: aci_friction_coefficient("polished"),  # type: ignore[arg-type] # on purpose
            id="unknown-surface",
        ),
        pytest.param(
            lambda: aci_interface_shear_limit(-1.0, concrete_strength=30.0, surface="smooth"),
            id="negative-interface",
        ),
        pytest.param(
            lambda: aashto_interface_shear_limit(1.0, concrete_strength=np.nan, surface="smooth"),
            id="nan-strength",
        ),
        pytest.param(
            lambda: aci_interface_shear(
                1.0,
                bar_yield=400.0,
                area=1.0,
                concrete_strength=30.0,
                surface="smooth",
                clamping_force=np.nan,
            ),
            id="aci-nan-clamping",
        ),
        pytest.param(
            lambda: aashto_interface_shear(
                1.0,
                bar_yield=400.0,
                area=1.0,
                concrete_strength=30.0,
                surface="smooth",
                clamping_force=-1.0,
            ),
            id="aashto-net-tension",
        ),
        pytest.param(lambda: segment_area(1001.0, diameter=1000.0), id="segment-too-deep"),
        pytest.param(lambda: segment_area(np.nan, diameter=1000.0), id="segment-nan"),
        pytest.param(lambda: segment_centroid(0.0, diameter=1000.0), id="empty-segment"),
        pytest.param(lambda: chord_strips(100.0, edges=np.array([0.0, np.nan])), id="nan-edges"),
        pytest.param(lambda: bar_ring(0, radius=100.0), id="no-bars"),
        pytest.param(lambda: bar_ring(4, radius=np.nan), id="nan-radius"),
    ],
)
def test_out_of_range(call: Callable[[], object]) -> None:
    with pytest.raises(DomainError):
        call()


def _bars(**changes: Any) -> BarGroup:
    given: dict[str, Any] = {"radius": 400.0, "area": 500.0, "steel": STEEL} | changes
    return BarGroup.ring(8, **given)


def _zone(diameter: float) -> ConcreteZone:
    return ConcreteZone("core", diameter, elastic_concrete_law(30e3))


@pytest.mark.parametrize(
    "build",
    [
        pytest.param(lambda: CircularSection((), ()), id="no-concrete"),
        pytest.param(
            lambda: CircularSection((_zone(1000.0), _zone(900.0)), ()), id="zones-not-nested"
        ),
        pytest.param(lambda: CircularSection((_zone(np.nan),), ()), id="nan-diameter"),
        pytest.param(lambda: CircularSection((_zone(700.0),), (_bars(),)), id="bars-outside"),
        pytest.param(lambda: _bars(area=0.0), id="no-area"),
        pytest.param(lambda: _bars(area=np.nan), id="nan-area"),
        pytest.param(lambda: _bars(stress_limit=-1.0), id="negative-limit"),
        pytest.param(lambda: _bars(stress_limit=np.nan), id="nan-limit"),
        pytest.param(
            lambda: BarGroup.at(np.array([np.nan]), np.array([0.0]), area=1.0, steel=STEEL),
            id="nan-position",
        ),
        pytest.param(
            lambda: BarGroup(np.zeros(2), np.zeros(3), np.ones(2), STEEL, np.ones(2)),
            id="unequal-lengths",
        ),
    ],
)
def test_sections_that_make_no_sense(build: Callable[[], object]) -> None:
    with pytest.raises(DomainError):
        build()


def _section() -> CircularSection:
    return CircularSection((_zone(1000.0),), (_bars(),))


@pytest.mark.parametrize(
    "changes",
    [
        {"axial_load": np.nan},
        {"angle": np.inf},
        {"curvature": np.array([-1e-6])},
        {"curvature": np.array([np.nan])},
        {"curvature": np.array([1e-6, 1e-6])},
        {"curvature": np.empty(0)},
        {"strips": 9},
    ],
    ids=["load", "angle", "negative", "nan", "not-increasing", "empty", "strips"],
)
def test_analyses_that_make_no_sense(changes: dict[str, Any]) -> None:
    with pytest.raises(DomainError):
        moment_curvature(_section(), **({"axial_load": 1e6} | changes))


def test_other_refusals() -> None:
    with pytest.raises(DomainError):
        curvature_range(_section(), count=1)
    response = moment_curvature(_section(), axial_load=1e6)
    for bad in (np.nan, 0.0, -1.0):
        with pytest.raises(DomainError):
            point_at_core_strain(response, strain=bad)
        with pytest.raises(DomainError):
            ultimate_point(response, moment_loss=bad)
    for bad in (np.nan, -1.0):
        with pytest.raises(DomainError):
            core_strain_at_moment(response, bad)
    stretchy = BarSteel(475.0, 655.0, 0.0115, 0.2, 200e3)
    section = CircularSection((_zone(1000.0),), (_bars(steel=stretchy),))
    with pytest.raises(DomainError, match="ultimate_strain"):
        moment_curvature(section, axial_load=1e6)


@pytest.mark.parametrize(
    "changes",
    [
        {"axial_load": np.nan},
        {"diameter": 0.0},
        {"concrete_strength": -1.0},
        {"bar_position": np.array([600.0])},
        {"bar_position": np.array([np.nan])},
        {"bar_area": 0.0},
        {"bar_yield": np.nan},
        {"bar_stress_limit": -1.0},
        {"elastic_modulus": 0.0},
    ],
    ids=lambda changes: next(iter(changes)),
)
def test_nominal_moment_refuses(changes: dict[str, Any]) -> None:
    given: dict[str, Any] = {
        "axial_load": 1e6,
        "diameter": 1000.0,
        "concrete_strength": 30.0,
        "bar_position": np.array([-400.0, 400.0]),
        "bar_area": 1000.0,
        "bar_yield": 420.0,
    } | changes
    with pytest.raises(DomainError):
        nominal_moment(given.pop("axial_load"), **given)


def test_a_section_without_bars_is_plain_concrete() -> None:
    section = CircularSection((_zone(1000.0),), ())
    response = moment_curvature(section, axial_load=1e6)
    assert response.converged[0]
    assert response.bar_strain.shape == (100, 0)
    assert np.all(response.extreme_tensile_strain[response.converged] == 0.0)
