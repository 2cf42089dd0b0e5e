"""Outcome of a search as JSON and CSV, in N, mm and MPa, kg and hours, with a published schema."""

from __future__ import annotations

import csv
import io
import math
from collections.abc import Mapping
from typing import Any, Literal, TypeAlias

import numpy as np
from pydantic import BaseModel, ConfigDict, Field

from jacketcheck.host.made_by import made_by
from jacketcheck.inputs.variant_text import variant_table
from jacketcheck.render.records import plain_cell
from jacketcheck.sizing.infeasibility import Infeasibility, Obstacle
from jacketcheck.sizing.probing import Relaxation
from jacketcheck.sizing.proof import Proof
from jacketcheck.sizing.report import SizedDesign, SizingReport
from jacketcheck.sizing.way_out import WayOut

__all__ = ["SizingDocument", "sizing_csv", "sizing_document", "sizing_json"]

SCHEMA_VERSION = 1
Number: TypeAlias = float | Literal["infinite"] | None
Value: TypeAlias = float | int | str | None


class _Record(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True)


class AxisRecord(_Record):
    """One field and what was tried for it."""

    field: str
    values: list[Value]
    unit: str = Field(description="mm, 1 for a count, d for bolt diameters, empty for names.")
    source: str


class ProofRecord(_Record):
    """What became of the cheaper designs, by limit state."""

    cheaper: int
    closed_form: dict[str, int]
    bond: dict[str, int]
    sections: dict[str, int]
    not_evaluated: dict[str, int]
    proven: bool
    by_closed_form_alone: bool


class DesignRecord(_Record):
    """A design to choose."""

    number: int
    values: dict[str, Value]
    steel_mass: float = Field(description="kg")
    bolts: int
    field_work: float = Field(description="h")
    sleeve_mass: float
    splice_mass: float
    bolt_mass: float
    added_bar_mass: float
    bolt_rows: int = Field(description="Rows along each seam.")
    holes: int
    drilled_length: float = Field(description="m")
    chipped_bars: int
    chipped_length: float = Field(description="m")
    governing: str = Field(description="Limit state that decides.")
    written_by: str = Field(description="Set of provisions whose rule that is.")
    added_by: str = Field(description="Plug-in that added it to that set; empty for its own.")
    where: str
    ratio: float
    others_alike: int
    proof: ProofRecord
    variant: str = Field(description="The design as the table of a variant.")


class ObstacleRecord(_Record):
    """A limit state that stands in the way."""

    limit_state: str
    smallest_ratio: Number
    evaluated: int
    passed: int
    at_least: bool = Field(description="Whether ratios are those under the least demand.")


class RelaxationRecord(_Record):
    """What passing a bound does."""

    limit_state: str
    field: str
    bound: Value
    value: Value
    ratio_before: Number
    ratio: Number
    governs_then: str
    ratio_then: Number


class MoveRecord(_Record):
    """One field that is led elsewhere."""

    field: str
    before: Value
    value: Value
    bound: Value = Field(description="Bound that is passed; null where none is.")


class WayOutRecord(_Record):
    """Fields that are led elsewhere together, evaluated in full."""

    moves: list[MoveRecord]
    works: bool
    governing: str
    ratio: Number
    exceeded: dict[str, Number]
    follows: dict[str, list[str]] = Field(description="What exceeded limit states follow from.")
    stuck: list[str] = Field(description="Limit states beyond the reach of the fields tried.")


class InfeasibilityRecord(_Record):
    """Why no design works."""

    obstacles: list[ObstacleRecord]
    conflicts: list[tuple[str, str]]
    nearest: dict[str, Value]
    nearest_exceeds: dict[str, Number]
    nearest_follows: dict[str, list[str]] = Field(
        description="What limit states among them follow from that are consequences of others."
    )
    relaxations: list[RelaxationRecord] = Field(
        description="One bound at a time; closed form and bond under the least demand."
    )
    way_out: WayOutRecord | None = Field(
        description="Bounds relaxed together; null where nothing that was tried helps."
    )


class SizingDocument(_Record):
    """The whole search."""

    schema_version: Literal[1]
    made_by: str
    title: str
    source: str
    sha256: str
    variant: str
    provisions: list[str]
    exit_code: int
    designs: int = Field(description="Designs of the grid.")
    fates: dict[str, int]
    refusals: dict[str, int]
    ruled_out: dict[str, dict[str, int]] = Field(
        description="Designs by fate and by the limit state that they exceed most."
    )
    unevaluated: dict[str, str]
    unsettled: int
    analysed: int
    axes: list[AxisRecord]
    front: list[DesignRecord]
    infeasibility: InfeasibilityRecord | None
    not_covered: list[str]
    cautions: list[str]


def sizing_document(report: SizingReport) -> SizingDocument:
    """Turn a search into the published record."""
    why = report.infeasibility
    return SizingDocument(
        schema_version=SCHEMA_VERSION,
        made_by=made_by(report.version, report.plugins, report.switched_off),
        title=report.job.title,
        source=report.source,
        sha256=report.digest,
        variant=report.variant,
        provisions=list(report.provisions_titles),
        exit_code=int(report.exit_code),
        designs=report.count,
        fates={fate.name.lower(): count for fate, count in report.fates.items()},
        refusals=report.refusals,
        ruled_out={fate.name.lower(): found for fate, found in report.ruled_out.items()},
        unevaluated=report.unevaluated,
        unsettled=report.unsettled,
        analysed=report.analysed,
        axes=[
            AxisRecord(
                field=axis.path,
                values=list(axis.values),
                unit="d" if axis.in_diameters else axis.unit,
                source=axis.source,
            )
            for axis in report.axes
        ],
        front=[_design(one, report) for one in report.front],
        infeasibility=None if why is None else _infeasibility(why),
        not_covered=list(report.not_covered),
        cautions=list(report.cautions),
    )


def sizing_json(report: SizingReport) -> str:
    """A search as JSON text."""
    return sizing_document(report).model_dump_json(indent=2) + "\n"


def sizing_csv(report: SizingReport) -> str:
    """The designs to choose from as CSV text, one a line."""
    paths = [axis.path for axis in report.varied]
    fixed = [name for name in DesignRecord.model_fields if name not in {"values", "proof"}]
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(["number", *paths, *fixed[1:-1], "cheaper", "proven"])
    for design in report.front:
        row = _design(design, report)
        values = [row.values.get(path) for path in paths]
        taken = [getattr(row, name) for name in fixed[1:-1]]
        cells = [row.number, *values, *taken, row.proof.cheaper, row.proof.proven]
        writer.writerow(plain_cell(cell) for cell in cells)
    return out.getvalue()


def _design(design: SizedDesign, report: SizingReport) -> DesignRecord:
    taken = design.quantities
    return DesignRecord(
        number=design.number,
        values=_values(design.values),
        steel_mass=design.costs.steel_mass,
        bolts=design.costs.bolt_count,
        field_work=design.costs.field_hours,
        sleeve_mass=float(taken.sleeve_mass),
        splice_mass=float(taken.splice_mass),
        bolt_mass=float(taken.bolt_mass),
        added_bar_mass=float(taken.added_bar_mass),
        bolt_rows=design.bolt_rows,
        holes=round(float(taken.hole_count)),
        drilled_length=float(taken.drilled_length),
        chipped_bars=taken.chipped_bar_count,
        chipped_length=float(taken.chipped_length),
        governing=design.governing.limit_state,
        written_by=design.governing.written_by,
        added_by=design.governing.added_by,
        where=design.governing.location,
        ratio=float(np.max(design.governing.ratio)),
        others_alike=design.alike,
        proof=_proof(design.proof),
        variant=variant_table(
            f"sized {design.number}", report.base, design.repair, system=report.job.units
        ),
    )


def _proof(proof: Proof) -> ProofRecord:
    return ProofRecord(
        cheaper=proof.cheaper,
        closed_form=proof.closed_form,
        bond=proof.bond,
        sections=proof.sections,
        not_evaluated=proof.not_evaluated,
        proven=proof.is_proven,
        by_closed_form_alone=proof.is_closed_form,
    )


def _infeasibility(found: Infeasibility) -> InfeasibilityRecord:
    return InfeasibilityRecord(
        obstacles=[_obstacle(one) for one in found.obstacles],
        conflicts=list(found.conflicts),
        nearest=_values(found.nearest_values),
        nearest_exceeds={name: _number(one) for name, one in found.nearest_exceeds.items()},
        nearest_follows={name: list(causes) for name, causes in found.nearest_follows.items()},
        relaxations=[_relaxation(one) for one in found.relaxations],
        way_out=None if found.way_out is None else _way_out(found.way_out),
    )


def _way_out(found: WayOut) -> WayOutRecord:
    return WayOutRecord(
        moves=[
            MoveRecord(field=one.path, before=one.before, value=one.value, bound=one.bound)
            for one in found.moves
        ],
        works=found.works,
        governing=found.governing,
        ratio=_number(found.ratio),
        exceeded={name: _number(one) for name, one in found.exceeded.items()},
        follows={name: list(causes) for name, causes in found.follows.items()},
        stuck=list(found.stuck),
    )


def _obstacle(one: Obstacle) -> ObstacleRecord:
    return ObstacleRecord(
        limit_state=one.limit_state,
        smallest_ratio=_number(one.smallest_ratio),
        evaluated=one.evaluated,
        passed=one.passed,
        at_least=one.at_least,
    )


def _relaxation(one: Relaxation) -> RelaxationRecord:
    return RelaxationRecord(
        limit_state=one.limit_state,
        field=one.path,
        bound=one.bound,
        value=one.value,
        ratio_before=_number(one.ratio_before),
        ratio=_number(one.ratio),
        governs_then=one.then,
        ratio_then=_number(one.then_ratio),
    )


def _values(values: Mapping[str, Any]) -> dict[str, Value]:
    return dict(values)


def _number(value: float) -> Number:
    if math.isnan(value):
        return None
    return "infinite" if math.isinf(value) else value
