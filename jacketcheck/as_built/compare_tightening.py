"""Tightening: method, verification, and what shows that the bolts have their tension."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Final, NamedTuple

from jacketcheck.as_built.bolt_as_built import BoltAsBuilt
from jacketcheck.as_built.models import TighteningRecord
from jacketcheck.as_built.records import Change, Comparison, Outcome
from jacketcheck.as_built.specified import Specified
from jacketcheck.catalog.assembly_rules import RCSC
from jacketcheck.catalog.installation_rules import InstallationRules
from jacketcheck.errors import DomainError
from jacketcheck.mechanics._customary_units import KIP
from jacketcheck.mechanics.bolt_installation import (
    ACCEPTANCE_TORQUE_COEFFICIENT,
    OVER_ROTATION,
    UNDER_ROTATION,
    bridge_turn_tolerance,
    turn_of_nut_rotation,
)
from jacketcheck.mechanics.en_tightening import combined_method_rotation
from jacketcheck.mechanics.indicator_gaps import open_gaps_at_verification
from jacketcheck.mechanics.slip import AISC_PRETENSION_RATIO
from jacketcheck.schedule.installation_rcsc import BRIDGE_TOLERANCE, TURNS
from jacketcheck.schedule.length import native_length

__all__ = ["compare_tightening"]

_PART: Final = "tightening"
_LEAST_TRIALS: Final = 3
_VERIFICATION: Final = "RCSC 2020 Section 7 (from memory): three assemblies of each lot, 1.05 T_b"
_EN_TEST: Final = "EN 1090-2:2018 8.5 (from memory)"
_ACCEPTANCE: Final = (
    "AASHTO LRFD Bridge Construction Specifications, 4th ed. (2017), 11.5.6.4 (from memory)"
)
_TORQUE: Final = "T = K d P with the highest calibrated K"
_TURNS: Final = f"{TURNS}: tolerance -30° +60°; {BRIDGE_TOLERANCE}: 30° up to 1/2 turn, then 45°"
_OPENINGS: Final = "RCSC 2020 Section 7.2 (from memory)"
_EN_TURNS: Final = "EN 1090-2:2018 Table 21; tolerance -15° +30° of 12.5.2.6 (from memory)"
_EN_UNDER, _EN_OVER = 15.0, 30.0
_METHODS: Final = "RCSC 2020 Section 8.2 (from memory); EN 1090-2:2018 8.5"
_WORD_EVIDENCE: Final = {
    "direct-tension-indicator": ("indicators_closed", "feeler gauge refused as required"),
    "twist-off": ("splines_sheared", "splined ends sheared off"),
}


def compare_tightening(
    record: TighteningRecord, specified: Specified, *, bolt: BoltAsBuilt
) -> Iterator[Comparison]:
    """Method first; where the bolts are said to be pretensioned, proof that they are.

    Tensions, torques and turns are those of the bolt that was delivered, whatever was specified.
    """
    yield _method(record, specified, bolt)
    if record.method == "snug":
        return
    if bolt.pretension <= 0.0:
        yield _no_pretension(bolt)
        return
    if bolt.installation is None:
        yield _verification(record, bolt)
    elif record.method in bolt.installation.ruled_out:
        yield _ruled_out(record, bolt.installation)
    elif record.verification_tension is not None:
        yield _verification(record, bolt)
    if record.method == "direct-tension-indicator" and bolt.by_rcsc:
        yield _open_gaps(record)
    coefficients = _coefficients(record, bolt)
    if coefficients:
        yield _coefficient(coefficients, specified, bolt)
    evidence = [
        *_calibrated_torque(record, bolt, coefficients),
        *_rotation(record, bolt),
        *_words(record, bolt),
        *_tension(record, bolt),
    ]
    yield from evidence or [_no_evidence(record, bolt)]


def _method(record: TighteningRecord, specified: Specified, bolt: BoltAsBuilt) -> Comparison:
    wanted = specified.jacket.bolts.tightening
    same = record.method == wanted
    # a method goes with the bolt: a spline, or a standard that rules it out
    change = bolt.change | Change({"bolts.tightening": record.method})
    return Comparison(
        part=_PART,
        item="method",
        specified=wanted.replace("-", " "),
        measured=record.method.replace("-", " "),
        unit="",
        rule="as specified",
        source="repair file bolts.tightening",
        outcome=Outcome.MEETS if same else Outcome.DEVIATES,
        rechecks=() if same else (change,),
        as_built=None if same else change,
        note="" if same or record.method != "snug" else "snug-tight bolts do not hold by friction",
    )


def _ruled_out(record: TighteningRecord, rules: InstallationRules) -> Comparison:
    return Comparison(
        part=_PART,
        item="method by the standard of the bolts",
        specified="allowed",
        measured="not allowed",
        unit="",
        rule=f"a method of {rules.name}",
        source=rules.source,
        outcome=Outcome.FAILS,
        note=rules.ruled_out[record.method],
    )


def _verification(record: TighteningRecord, bolt: BoltAsBuilt) -> Comparison:
    needed = bolt.verification_tension
    # the specification's table prints whole kips, or whole kilonewtons for metric bolts
    unit = 1000.0 if bolt.metric else KIP
    accepted = min(needed, round(needed / unit) * unit)
    line = Comparison(
        part=_PART,
        item="tension in verification",
        specified=needed,
        measured="not recorded",
        unit="N",
        rule=f"at least that, in {_LEAST_TRIALS} assemblies or more of each lot",
        source=_by_standard(bolt, european=_EN_TEST, other=_VERIFICATION),
        outcome=Outcome.UNKNOWN,
        note="without it nobody knows that the method works with this lot",
    )
    found = record.verification_tension
    if found is None:
        return line
    if min(found) < accepted * (1.0 - 1e-6):
        note = "the method does not reach it: find out why before any bolt is installed"
        return replace(line, measured=min(found), outcome=Outcome.FAILS, note=note)
    if len(found) < _LEAST_TRIALS:
        note = f"{len(found)} of {_LEAST_TRIALS} assemblies recorded"
        return replace(line, measured=min(found), note=note)
    return replace(line, measured=min(found), outcome=Outcome.MEETS, note="")


def _open_gaps(record: TighteningRecord) -> Comparison:
    """Whether indicators showed no tension that the bolts did not have."""
    line = Comparison(
        part=_PART,
        item="gaps still open in verification",
        specified="more than half",
        measured="not recorded",
        unit="",
        rule="at 1.05 times the pretension, in every assembly tried",
        source=_OPENINGS,
        outcome=Outcome.UNKNOWN,
        note="record indicator_gaps and open_gaps: an early indicator passes slack bolts",
    )
    gaps, found = record.indicator_gaps, record.open_gaps
    if gaps is None or found is None:
        return line
    needed = int(open_gaps_at_verification(gaps))
    line = replace(
        line,
        specified=f"{needed} of {gaps}",
        measured=f"{min(found)} of {gaps}",
        rule=line.rule + f", in {_LEAST_TRIALS} or more",
    )
    if min(found) < needed:
        note = "the indicators close too early: refuse the lot"
        return replace(line, outcome=Outcome.FAILS, note=note)
    if len(found) < _LEAST_TRIALS:
        return replace(line, note=f"{len(found)} of {_LEAST_TRIALS} assemblies recorded")
    return replace(line, outcome=Outcome.MEETS, note="")


def _by_standard(bolt: BoltAsBuilt, *, european: str, other: str) -> str:
    """Source of a rule, for the standard by which the bolts are tightened."""
    if bolt.installation is not None:
        return bolt.installation.source
    return european if bolt.european else other


def _coefficients(record: TighteningRecord, bolt: BoltAsBuilt) -> list[float]:
    """K of each assembly in the calibrator."""
    diameter = bolt.diameter
    return [
        reading.torque / (diameter * reading.tension)
        for reading in record.calibration
        if reading.tension > 0.0
    ]


def _calibrated_torque(
    record: TighteningRecord, bolt: BoltAsBuilt, coefficients: list[float]
) -> Iterator[Comparison]:
    """Tension that the job's lowest torque gives with the highest coefficient."""
    if record.torque is None:
        return
    least = bolt.pretension
    line = Comparison(
        part=_PART,
        item="tension by torque and calibrated K",
        specified=least,
        measured="not recorded",
        unit="N",
        rule="at least the minimum pretension",
        source=f"{_TORQUE}; {bolt.pretension_source} for P",
        outcome=Outcome.UNKNOWN,
        note="torques without a calibration of the same day and lot prove nothing",
    )
    if len(coefficients) < _LEAST_TRIALS:
        if coefficients:
            count = f"{len(coefficients)} of {_LEAST_TRIALS}"
            line = replace(line, note=f"{count} calibrations recorded")
        yield line
        return
    reached = min(record.torque) / (max(coefficients) * bolt.diameter)
    yield _against_pretension(replace(line, note=""), reached, least)


def _coefficient(coefficients: list[float], specified: Specified, bolt: BoltAsBuilt) -> Comparison:
    rules = bolt.assembly.rules
    highest = max(coefficients)
    limit: float | None = ACCEPTANCE_TORQUE_COEFFICIENT
    source = _ACCEPTANCE
    if rules is not None and rules.standard != RCSC:
        limit = rules.torque_coefficient_high
        source = rules.source_of("torque_coefficient_high")
    good = limit is None or highest <= limit * (1.0 + 1e-9)
    expected = specified.jacket.bolts.torque_coefficient
    note = "lubrication is not good enough: lubricate and test again, or refuse the lot"
    if good and expected is not None and highest > float(expected):
        note = f"above the K of {float(expected):g} in the repair file: torques go by this one"
    elif good:
        note = ""
    return Comparison(
        part=_PART,
        item="torque coefficient K, highest",
        specified="not given" if expected is None else float(expected),
        measured=highest,
        unit="1",
        rule="no limit is given" if limit is None else f"at most {limit:g}",
        source=source,
        outcome=Outcome.MEETS if good else Outcome.FAILS,
        note=note,
    )


def _rotation(record: TighteningRecord, bolt: BoltAsBuilt) -> Iterator[Comparison]:
    if record.rotation is None:
        return
    turn, by_table = _tabulated_turn(bolt)
    line = Comparison(
        part=_PART,
        item="turn of the nut",
        specified="not known",
        measured=min(record.rotation),
        unit="deg",
        rule="the tabulated turn within its tolerance",
        source=by_table,
        outcome=Outcome.UNKNOWN,
    )
    if isinstance(turn, str):
        yield replace(line, note=f"no turn is tabulated: {turn}")
        return
    line = replace(line, specified=turn.needed, note=_of_which_bolt(bolt))
    if min(record.rotation) < turn.needed - turn.under - 1e-6:
        note = f"{line.note}; turn these nuts on, from their marks"
        yield replace(line, outcome=Outcome.FAILS, note=note)
    elif max(record.rotation) > turn.needed + turn.over + 1e-6:
        note = "turned too far: never turned back; replace the bolts, or ask the engineer"
        if bolt.by_rcsc and max(record.rotation) <= turn.needed + OVER_ROTATION:
            note = f"within RCSC's +{OVER_ROTATION:g}°, beyond what bridges allow: ask the engineer"
        note = f"{line.note}; {note}"
        yield replace(line, measured=max(record.rotation), note=note)
    else:
        yield replace(line, outcome=Outcome.MEETS)


def _of_which_bolt(bolt: BoltAsBuilt) -> str:
    """Length that the turn belongs to."""
    length = native_length(bolt.assembly, bolt.counted_length())
    delivered = "as delivered" if bolt.length is not None else "as ordered: no delivery recorded"
    return f"for {length} long bolts, {delivered}"


class _Turn(NamedTuple):
    """Turn of the nut, and what it may fall short of that and exceed it [°]."""

    needed: float
    under: float
    over: float


def _tabulated_turn(bolt: BoltAsBuilt) -> tuple[_Turn | str, str]:
    """Turn by the standard of the bolts, or why there is none, and the source."""
    assembly, diameter = bolt.assembly, bolt.diameter
    brought = bolt.installation
    source = _EN_TURNS if bolt.european else _TURNS
    try:
        if brought is not None:
            source = brought.source_of("turns")
            band = brought.turn(bolt.counted_length() / diameter)
            if band is None:
                return "the bolt is longer than the table goes, or there is no table", source
            return _Turn(band.rotation, band.under, band.over), source
        if bolt.european:
            turn = float(combined_method_rotation(assembly.clamp_length, diameter=diameter))
            return _Turn(turn, _EN_UNDER, _EN_OVER), source
        turn = float(turn_of_nut_rotation(bolt.counted_length(), diameter=diameter))
    except DomainError as error:
        return str(error), source
    on_bridges = float(bridge_turn_tolerance(turn))
    return _Turn(turn, min(UNDER_ROTATION, on_bridges), min(OVER_ROTATION, on_bridges)), source


def _words(record: TighteningRecord, bolt: BoltAsBuilt) -> Iterator[Comparison]:
    """Evidence that is a yes or a no."""
    if record.method not in _WORD_EVIDENCE:
        return
    field, item = _WORD_EVIDENCE[record.method]
    answer: bool | None = getattr(record, field)
    if answer is None:
        return
    yield Comparison(
        part=_PART,
        item=item,
        specified="everywhere",
        measured="everywhere" if answer else "not everywhere",
        unit="",
        rule="at every bolt",
        source=_by_standard(bolt, european=_METHODS, other=_METHODS),
        outcome=Outcome.MEETS if answer else Outcome.FAILS,
        note="" if answer else "tighten on, or replace the bolts",
    )


def _tension(record: TighteningRecord, bolt: BoltAsBuilt) -> Iterator[Comparison]:
    if record.tension is None:
        return
    least = bolt.pretension
    line = Comparison(
        part=_PART,
        item="tension measured in installed bolts",
        specified=least,
        measured="not recorded",
        unit="N",
        rule="at least the minimum pretension in every bolt",
        source=bolt.pretension_source,
        outcome=Outcome.UNKNOWN,
    )
    yield _against_pretension(line, min(record.tension), least)


def _against_pretension(line: Comparison, reached: float, least: float) -> Comparison:
    """A tension against the code's minimum; below it, the check as built counts what is there."""
    if reached >= least * (1.0 - 1e-6):
        return replace(line, measured=reached, outcome=Outcome.MEETS)
    # the mean that the codes' D_u reckons with is not there either
    counted = reached / AISC_PRETENSION_RATIO
    return replace(
        line,
        measured=reached,
        outcome=Outcome.FAILS,
        as_built=Change(leaves={"bolts.pretension": counted}),
        note="tighten on, and measure again; the check as built counts the lowest tension over "
        f"D_u = {AISC_PRETENSION_RATIO:g}",
    )


def _no_pretension(bolt: BoltAsBuilt) -> Comparison:
    product, size = bolt.assembly.product, bolt.assembly.size
    return Comparison(
        part=_PART,
        item="pretension",
        specified="not known",
        measured="see record",
        unit="",
        rule="a minimum pretension by the product's standard",
        source=bolt.pretension_source,
        outcome=Outcome.UNKNOWN,
        note=f"no pretension is published for {product.name} {size.name}",
    )


def _no_evidence(record: TighteningRecord, bolt: BoltAsBuilt) -> Comparison:
    return Comparison(
        part=_PART,
        item="proof of the pretension",
        specified="recorded",
        measured="not recorded",
        unit="",
        rule="turns, torques with calibration, indicators, splines or measured tensions",
        source=_by_standard(bolt, european=_METHODS, other=_METHODS),
        outcome=Outcome.UNKNOWN,
        note=f"nothing shows that {record.method.replace('-', ' ')} gave the bolts their tension",
    )
