"""What holds of every formula: scalars and arrays agree, and nothing passes for a number."""

from __future__ import annotations

import importlib.util
from collections.abc import Callable
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from jacketcheck.plugin import DomainError

_SPEC = importlib.util.spec_from_file_location(
    "formula_samples", Path(__file__).parents[1] / "formula_samples.py"
)
assert _SPEC is not None
assert _SPEC.loader is not None
samples = importlib.util.module_from_spec(_SPEC)
_SPEC.loader.exec_module(samples)

SAMPLES: dict[Callable[..., Any], dict[str, Any]] = samples.SAMPLES
NUMBERS = [
    pytest.param(function, name, id=f"{function.__name__}-{name}")
    for function, arguments in SAMPLES.items()
    for name, value in arguments.items()
    if isinstance(value, float)
]
FORMULAS = [pytest.param(function, id=function.__name__) for function in SAMPLES]


def call(function: Callable[..., Any], **changes: Any) -> np.ndarray[Any, Any]:
    """Result with some arguments replaced, as one array."""
    arguments = {**SAMPLES[function], **changes}
    first = next(iter(arguments))
    if function.__name__ in {"pier_section", "transverse_coefficient", "existing_column_shear"}:
        found = function(**arguments)
    else:
        found = function(arguments.pop(first), **arguments)
    return np.asarray(found, dtype=float)


def test_no_formula_is_left_out() -> None:
    public = {
        getattr(module, name)
        for module in samples.MODULES
        for name in module.__all__
        if callable(getattr(module, name)) and not isinstance(getattr(module, name), type)
    }
    aliases = {one for one in public if not hasattr(one, "__name__") or "Literal" in repr(one)}
    assert public - aliases - samples.NOT_NUMERIC == set(SAMPLES)


@pytest.mark.parametrize(("function", "name"), NUMBERS)
@pytest.mark.parametrize("bad", [np.nan, -1.0, -np.inf])
def test_no_number_is_taken_for_one(function: Callable[..., Any], name: str, bad: float) -> None:
    with pytest.raises(DomainError):
        call(function, **{name: bad})


@pytest.mark.parametrize(("function", "name"), NUMBERS)
def test_one_bad_design_is_told(function: Callable[..., Any], name: str) -> None:
    good = SAMPLES[function][name]
    with pytest.raises(DomainError):
        call(function, **{name: np.array([good, np.nan, good])})


@pytest.mark.parametrize("function", FORMULAS)
def test_infinity_is_no_quantity(function: Callable[..., Any]) -> None:
    first = next(name for name, value in SAMPLES[function].items() if isinstance(value, float))
    if function.__name__ == "transverse_coefficient":
        return  # an edge or a bolt that is not there is infinitely far away
    with pytest.raises(DomainError):
        call(function, **{first: np.inf})


@pytest.mark.parametrize(("function", "name"), NUMBERS)
def test_arrays_give_what_scalars_give(function: Callable[..., Any], name: str) -> None:
    good = SAMPLES[function][name]
    several = good * np.array([1.0, 0.98, 0.96])
    if name in {"friction_surfaces", "bar_count"}:
        several = np.array([1.0, 2.0, 3.0])
    if name in {"form", "welded", "lap", "pressure", "joint_factor"}:
        several = good * np.array([1.0, 0.999, 0.99])
    if name == "hole" and function.__name__ == "small_bolt_factor":
        several = np.array([13.0, 13.9, 14.0])
    if name == "tensile_strength" and function.__name__ == "high_strength_class":
        several = np.array([800.0, 999.0, 1000.0])
    if name == "concrete_radius":
        several = np.array([520.0, 500.0, 480.0])
    if name == "joint_length":
        several = np.array([100.0, 700.0, 9000.0])
    together = call(function, **{name: several})
    alone = [call(function, **{name: float(one)}) for one in several]
    expected = np.stack(alone, axis=-1)
    assert together == pytest.approx(np.broadcast_to(expected, together.shape), rel=1e-12)


@pytest.mark.parametrize(
    "function", [pytest.param(one, id=one.__name__) for one in samples.NOT_NUMERIC]
)
def test_words_are_checked(function: Callable[..., Any]) -> None:
    with pytest.raises(DomainError, match="one of"):
        function("unknown")
