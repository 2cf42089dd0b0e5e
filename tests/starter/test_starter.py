from __future__ import annotations

import re
import tomllib
from collections.abc import Iterator

import pytest
from pydantic import BaseModel

from jacketcheck.inputs.load import read_text
from jacketcheck.inputs.repair_file import RepairInput
from jacketcheck.jacket import build_jacket
from jacketcheck.starter import starter_text
from jacketcheck.starter.write import _model_in
from jacketcheck.units import DisplaySystem

SYSTEMS: tuple[DisplaySystem, ...] = ("us", "si")


def field_names(model: type[BaseModel]) -> Iterator[str]:
    for name, field in model.model_fields.items():
        inner = _model_in(field.annotation)
        if inner is None or name in {"sides", "variables", "correlations"}:
            yield name
        else:
            yield from field_names(inner)


@pytest.mark.parametrize("system", SYSTEMS)
def test_every_variant_builds(system: DisplaySystem) -> None:
    for repair in read_text(starter_text(system)).variants.values():
        build_jacket(repair)


# at the beginning of a line, or in a table within it
_WRITTEN = r"(^(#: )?|^#: .*[{{,] ){} = "


@pytest.mark.parametrize("system", SYSTEMS)
def test_every_field_is_there_with_a_comment(system: DisplaySystem) -> None:
    lines = starter_text(system).splitlines()
    for name in field_names(RepairInput):
        if name in {"sizing", "chance"}:
            continue
        written = [i for i, line in enumerate(lines) if re.search(_WRITTEN.format(name), line)]
        assert written, name
        assert lines[written[0] - 1].startswith("# "), name


@pytest.mark.parametrize("system", SYSTEMS)
def test_optional_examples_are_valid_when_put_to_use(system: DisplaySystem) -> None:
    """Each optional line alone, uncommented, gives a file that can be read."""
    lines = starter_text(system).splitlines()
    conflicts = {"measured_tension", "surface", "measured_yield", "measured_tensile"}
    for index, line in enumerate(lines):
        if line.startswith("#: ") and line.split()[1] not in conflicts:
            text = "\n".join([*lines[:index], line.removeprefix("#: "), *lines[index + 1 :]])
            read_text(text, source=line)


def test_both_files_write_the_same_fields() -> None:
    us, si = (tomllib.loads(starter_text(system)) for system in SYSTEMS)
    # no clearance is published for metric bolts: the file says which socket there is
    assert si["bolts"].pop("socket_diameter")
    assert _shape(us) == _shape(si)


def _shape(value: object) -> object:
    if isinstance(value, dict):
        return {key: _shape(inner) for key, inner in value.items()}
    return (
        [_shape(entry) for entry in value]
        if isinstance(value, list) and value and isinstance(value[0], dict)
        else None
    )
