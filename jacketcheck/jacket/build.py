"""From validated input and catalogue to the built jacket."""

from __future__ import annotations

import numpy as np

from jacketcheck.catalog.catalog import Catalog, built_in_catalog
from jacketcheck.errors import DomainError, InputError, InputProblem
from jacketcheck.inputs.concrete import strength_basis
from jacketcheck.inputs.jacket import Footing
from jacketcheck.inputs.jacket import Grout as GroutInput
from jacketcheck.inputs.repair_file import RepairInput
from jacketcheck.jacket.build_column import build_column
from jacketcheck.jacket.build_reinforcement import build_added_bars
from jacketcheck.jacket.build_steelwork import build_bolts, build_sleeve, build_splice
from jacketcheck.jacket.column_parts import FootingBlock
from jacketcheck.jacket.designs import read_only
from jacketcheck.jacket.geometry_rules import geometry_problems
from jacketcheck.jacket.jacket import Demands, Jacket
from jacketcheck.jacket.jacket_parts import Grout
from jacketcheck.jacket.lookup_rules import lookup_problems
from jacketcheck.mechanics._arrays import Real
from jacketcheck.mechanics.concrete_properties import elastic_modulus_aci_metric
from jacketcheck.mechanics.grout_cubes import (
    CUBE_CONVERSION,
    PRISM_SIDE,
    cylinder_strength_of_cubes,
)

__all__ = ["assemble_jacket", "build_jacket"]


def build_jacket(repair: RepairInput, *, catalog: Catalog | None = None) -> Jacket:
    """Build one design and make sure that its geometry is possible.

    Parameters
    ----------
    repair
        Validated input.
    catalog
        What the input may name; the built-in catalogue by default.

    Returns
    -------
    Jacket
        Numbers in N, mm and MPa.

    Raises
    ------
    InputError
        With every name that is not in the catalogue, or every rule of geometry that is broken.
    """
    jacket = assemble_jacket(repair, catalog=built_in_catalog() if catalog is None else catalog)
    if problems := geometry_problems(jacket):
        raise InputError(problems, source="geometry")
    return jacket


def assemble_jacket(repair: RepairInput, *, catalog: Catalog) -> Jacket:
    """Build a jacket without asking whether its geometry is possible.

    Numbers of the input may be arrays over designs; see
    `jacketcheck.jacket.geometry_rules.buildable` for the question left open.

    Raises
    ------
    InputError
        With every name that is not in the catalogue, and damage records that contradict.
    """
    if problems := lookup_problems(repair, catalog):
        remark = "geometry is checked once these are mended"
        raise InputError(problems, source="look-up", remark=remark)
    sleeve, splice = build_sleeve(repair, catalog), build_splice(repair, catalog)
    jacket = Jacket(
        title=repair.job.title,
        column=build_column(repair, catalog),
        repair_height=repair.repair.height,
        surface=repair.repair.surface,
        column_face=repair.repair.column_face,
        sleeve=sleeve,
        splice=splice,
        bolts=build_bolts(repair, catalog, sleeve=sleeve, splice=splice),
        grout=_grout(repair),
        added_bars=build_added_bars(repair, catalog),
        footing=None if repair.footing is None else _footing(repair.footing),
        demands=Demands(
            axial_load=repair.actions.axial_load,
            axial_strain=repair.actions.axial_strain,
            displacement=repair.actions.displacement_demand,
        ),
        judgement=repair.judgement,
        bond_model=catalog.bond_model(repair.judgement.bond_model),
    )
    return read_only(jacket)


def _footing(written: Footing) -> FootingBlock:
    source = f"input footing.concrete_strength, {strength_basis(written.concrete_strength)}"
    return FootingBlock(
        written.concrete_strength,
        written.depth,
        sources={"concrete_strength": source, "depth": "input footing.depth"},
    )


def _grout(repair: RepairInput) -> Grout:
    written = repair.grout
    strength, basis = _grout_strength(written)
    if written.elastic_modulus is None:
        modulus = elastic_modulus_aci_metric(strength)
        source = "ACI 318-19 19.2.2.1(b)"
    else:
        modulus, source = written.elastic_modulus, "input grout.elastic_modulus"
    thickness = np.subtract(repair.sleeve.inner_diameter, repair.column.diameter) / 2.0
    return Grout(
        thickness=thickness,
        strength=strength,
        elastic_modulus=modulus,
        sources={"strength": f"input grout.strength, {basis}", "elastic_modulus": source},
    )


def _grout_strength(written: GroutInput) -> tuple[Real, str]:
    """Strength of cylinders [MPa], and how it follows from what was written."""
    if written.specimen == "cylinder":
        return written.strength, "cylinder"
    side = PRISM_SIDE if written.specimen == "prism-40" else float(written.specimen[5:])
    try:
        strength = cylinder_strength_of_cubes(written.strength, cube_side=side)
    except DomainError as error:
        problem = InputProblem("grout.strength", "", str(error))
        raise InputError([problem], source="look-up") from error
    return strength, f"of {written.specimen}: as cubes of {side:g} mm, {CUBE_CONVERSION}"
