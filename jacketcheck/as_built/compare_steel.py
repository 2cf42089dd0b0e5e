"""Half-shells and splice plates as delivered and set up."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Final

from jacketcheck.as_built.models import SleeveRecord, SpliceRecord
from jacketcheck.as_built.plate_tolerances import thickness_tolerance
from jacketcheck.as_built.records import Change, Comparison, Outcome
from jacketcheck.as_built.specified import Specified
from jacketcheck.jacket.jacket_parts import Plate
from jacketcheck.units import in_both_systems

__all__ = ["compare_sleeve", "compare_splice"]

_CUSTOM: Final = "common practice, no published source"
_OVALITY: Final = 0.01
_OVALITY_SOURCE: Final = (
    "as ASME BPVC Section VIII Division 1 (2023) UG-80(a)(1), 1 % of the nominal diameter "
    "(engineering judgement: a jacket is no vessel)"
)
_GIRTH: Final = 0.0025
"""Mean diameter over nominal that counts as nominal; more is checked again."""
_GAP_STEP: Final = 3.0
"""Gaps that differ by less than this count as specified [mm]; more is checked again."""


def compare_sleeve(record: SleeveRecord, specified: Specified) -> Iterator[Comparison]:
    """Plate, roundness and gaps."""
    sleeve = specified.jacket.sleeve
    yield _thickness(
        "sleeve", "thickness", record.thickness, float(sleeve.thickness), sleeve.steel.name,
        "sleeve.thickness",
    )  # fmt: skip
    yield from _plate_steel("sleeve", record.steel, record.yield_strength, sleeve.steel)
    if record.diameters is not None:
        yield _mean_diameter(record.diameters, specified)
        yield _ovality(record.diameters, specified)
    if record.seam_gap is not None:
        yield _seam_gap(record.seam_gap, specified)
    if record.gap is not None:
        yield _gap(record.gap, specified)


def compare_splice(
    record: SpliceRecord, specified: Specified, *, in_contact: bool | None, tightened: bool
) -> Iterator[Comparison]:
    """Outside and inside plates, and fillers; `in_contact` as recorded of all plies when snug."""
    splice = specified.jacket.splice
    yield _thickness(
        "splice", "thickness of outside plates", record.thickness, float(splice.outside_thickness),
        splice.steel.name, "splice.thickness",
    )  # fmt: skip
    inside = float(splice.inside_thickness)
    if inside > 0.0:
        item = "thickness of inside plates"
        if record.inside_thickness is None:
            yield _missing("splice", item, inside)
        else:
            yield _thickness(
                "splice", item, record.inside_thickness, inside, splice.steel.name,
                "splice.inside_thickness",
            )  # fmt: skip
    yield from _plate_steel("splice", record.steel, record.yield_strength, splice.steel)
    yield from _fillers(record, specified)
    if record.radius is not None:
        yield _radius(record.radius, specified, in_contact=in_contact, tightened=tightened)


def _fillers(record: SpliceRecord, specified: Specified) -> Iterator[Comparison]:
    """Fillers put in, where there are any or should be."""
    splice = specified.jacket.splice
    number, thick = int(splice.fillers), float(splice.filler_thickness)
    if record.fillers is None:
        if number:
            yield _missing("splice", "thickness of fillers", thick)
        return
    found = max(record.filler_thickness or (0.0,))
    line = Comparison(
        part="splice",
        item="thickness of fillers",
        specified=thick,
        measured=found,
        unit="mm",
        rule="as specified, else checked again",
        source="AISC 360-22 J3.9 and J5.2; AASHTO LRFD 9th ed. (2020) 6.13.6.1.4 (from memory)",
        outcome=Outcome.MEETS,
    )
    if record.fillers <= number and found <= thick + 1e-6:
        yield line
        return
    change = Change({"splice.fillers": record.fillers, "splice.filler_thickness": found})
    note = f"checked with {record.fillers} fillers at most between sleeve and plate"
    yield replace(line, outcome=Outcome.DEVIATES, rechecks=(change,), as_built=change, note=note)


def _radius(
    radii: Sequence[float], specified: Specified, *, in_contact: bool | None, tightened: bool
) -> Comparison:
    """Gap that outside plates of another radius leave, which the bolts have to close."""
    sleeve, width = specified.jacket.sleeve, float(specified.jacket.splice.width)
    face = float(sleeve.inner_radius) + float(sleeve.thickness)
    worst = max(radii, key=lambda radius: abs(1.0 / radius - 1.0 / face))
    gap = width**2 / 8.0 * abs(1.0 / worst - 1.0 / face)
    outcome = Outcome.UNKNOWN if tightened else Outcome.NOT_YET
    if in_contact is not None:
        outcome = Outcome.MEETS if in_contact else Outcome.FAILS
    return Comparison(
        part="splice",
        item="inside radius of outside plates",
        specified=face,
        measured=worst,
        unit="mm",
        rule="plates in firm contact when snug",
        source=f"geometry; {_CUSTOM}",
        outcome=outcome,
        note=f"leaves {in_both_systems(gap, 'mm')} before snugging; plies_in_contact decides",
    )


def _missing(part: str, item: str, specified: float) -> Comparison:
    return Comparison(
        part=part,
        item=item,
        specified=specified,
        measured="not recorded",
        unit="mm",
        rule="as specified",
        source="repair file",
        outcome=Outcome.UNKNOWN,
        note="record it",
    )


def _thickness(  # noqa: PLR0917 - one line, filled in twice
    part: str, item: str, found: Sequence[float], nominal: float, steel: str, path: str
) -> Comparison:
    tolerance = thickness_tolerance(steel, nominal)
    thinnest, thickest = min(found), max(found)
    line = Comparison(
        part=part,
        item=item,
        specified=nominal,
        measured=thinnest,
        unit="mm",
        rule="nominal within the mill's tolerance",
        source=tolerance.source,
        outcome=Outcome.MEETS,
    )
    if thinnest < nominal - tolerance.below - 1e-6:
        change = Change({path: thinnest})
        note = "checked with the thinnest reading"
    elif thickest > nominal + tolerance.above + 1e-6:
        change = Change({path: thickest})
        line = replace(line, measured=thickest)
        note = "thicker than ordered: a stiffer sleeve draws more force; bolts may be too short"
    else:
        return line
    return replace(line, outcome=Outcome.DEVIATES, rechecks=(change,), as_built=change, note=note)


def _plate_steel(
    part: str, steel: str | None, strengths: Sequence[float] | None, plate: Plate
) -> Iterator[Comparison]:
    if steel is not None:
        same = steel == plate.name
        change = Change({f"{part}.steel": steel})
        yield Comparison(
            part=part,
            item="steel",
            specified=plate.name,
            measured=steel,
            unit="",
            rule="as specified",
            source=f"repair file {part}.steel",
            outcome=Outcome.MEETS if same else Outcome.DEVIATES,
            rechecks=() if same else (change,),
            as_built=None if same else change,
        )
    if strengths is not None:
        least, weakest = float(plate.yield_strength), min(strengths)
        weak = weakest < least * (1.0 - 1e-6)
        change = Change(leaves={f"{part}.steel.yield_strength": weakest})
        yield Comparison(
            part=part,
            item="yield strength on certificates",
            specified=least,
            measured=weakest,
            unit="MPa",
            rule="at least specified; more is not counted",
            source=plate.source,
            outcome=Outcome.DEVIATES if weak else Outcome.MEETS,
            rechecks=(change,) if weak else (),
            as_built=change if weak else None,
            note="the plate is not what was ordered" if weak else "",
        )


def _mean_diameter(diameters: Sequence[float], specified: Specified) -> Comparison:
    nominal = float(specified.jacket.sleeve.inner_diameter)
    mean = sum(diameters) / len(diameters)
    off = abs(mean - nominal) > _GIRTH * nominal
    change = Change({"sleeve.inner_diameter": mean})
    return Comparison(
        part="sleeve",
        item="inside diameter, mean",
        specified=nominal,
        measured=mean,
        unit="mm",
        rule=f"within {_GIRTH:.2%} of nominal, else checked again",
        source=_CUSTOM,
        outcome=Outcome.DEVIATES if off else Outcome.MEETS,
        rechecks=(change,) if off else (),
        as_built=change if off else None,
    )


def _ovality(diameters: Sequence[float], specified: Specified) -> Comparison:
    nominal = float(specified.jacket.sleeve.inner_diameter)
    line = Comparison(
        part="sleeve",
        item="ovality",
        specified=_OVALITY,
        measured="one diameter recorded",
        unit="1",
        rule="largest less smallest diameter over nominal; beyond, both are checked",
        source=_OVALITY_SOURCE,
        outcome=Outcome.UNKNOWN,
        note="measure across the seams and at right angles to them at least",
    )
    if len(diameters) < 2:
        return line
    ovality = (max(diameters) - min(diameters)) / nominal
    line = replace(line, measured=ovality, outcome=Outcome.MEETS, note="")
    if ovality <= _OVALITY * (1.0 + 1e-9):
        return line
    extremes = (min(diameters), max(diameters))
    return replace(
        line,
        outcome=Outcome.DEVIATES,
        rechecks=tuple(Change({"sleeve.inner_diameter": one}) for one in extremes),
        note="checked as a round sleeve of the smallest, and of the largest diameter",
    )


def _seam_gap(gaps: Sequence[float], specified: Specified) -> Comparison:
    nominal, widest = float(specified.jacket.sleeve.seam_gap), max(gaps)
    wide = widest > nominal + _GAP_STEP
    edge = float(specified.jacket.bolts.plate_edge_distance) - (widest - nominal) / 2.0
    change = Change({"sleeve.seam_gap": widest, "bolts.plate_edge_distance": edge})
    line = Comparison(
        part="sleeve",
        item="opening of the seams",
        specified=nominal,
        measured=widest,
        unit="mm",
        rule="as specified; beyond, plates reach less far over the sleeve",
        source=_CUSTOM,
        outcome=Outcome.MEETS,
    )
    if not wide:
        return line
    if edge <= 0.0:
        note = "the plates no longer cover the holes"
        return replace(line, outcome=Outcome.FAILS, note=note)
    return replace(
        line,
        outcome=Outcome.DEVIATES,
        rechecks=(change,),
        as_built=change,
        note="checked with half of the difference taken from the plates' edge distance",
    )


def _gap(gaps: Sequence[float], specified: Specified) -> Comparison:
    nominal, least = float(specified.jacket.sleeve.gap), min(gaps)
    less = least < nominal - _GAP_STEP
    change = Change(leaves={"sleeve.gap": least})
    return Comparison(
        part="sleeve",
        item="gap under the sleeve",
        specified=nominal,
        measured=least,
        unit="mm",
        rule="as specified, else checked again",
        source=_CUSTOM,
        outcome=Outcome.DEVIATES if less else Outcome.MEETS,
        rechecks=(change,) if less else (),
        as_built=change if less else None,
    )
