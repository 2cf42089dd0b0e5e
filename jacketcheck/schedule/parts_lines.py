"""The schedule's lines on the bolt itself, its washers, the holes and the faying surfaces."""

from __future__ import annotations

from typing import Final

from jacketcheck.jacket.jacket import Jacket
from jacketcheck.schedule.assembly import Assembly
from jacketcheck.schedule.counts import designation
from jacketcheck.schedule.records import ScheduleLine, ScheduleSection, Verdict

__all__ = ["bolt_section", "faying_section", "hole_section", "washer_section"]

_FILE: Final = "repair file"
_CUSTOM: Final = "common practice, no published source"
_GEOMETRY: Final = "geometry"
_LEAST_RUN: Final = 20.0
_SLOPE_SOURCE: Final = (
    "RCSC 2020 Section 6 and Table 8.1 (from memory): faces that slope by more than 1 in 20"
)


def bolt_section(assembly: Assembly) -> ScheduleSection:
    """What to order, and how to know it when it comes."""
    product, rules = assembly.product, assembly.rules
    lines = [
        ScheduleLine("bolt", designation(assembly), "", product.source),
        ScheduleLine("tensile strength at least", product.tensile_strength, "MPa", product.source),
    ]
    if rules is None:
        note = "the catalogue names no nut, washer, marks or method for this product"
        lines.append(
            ScheduleLine("nut, washer and marks", "not known", "", product.source, note=note,
                         verdict=Verdict.NOT_EVALUATED)
        )  # fmt: skip
        return ScheduleSection("Bolt", tuple(lines))
    if assembly.weathering:
        lines.append(_weathering_line(assembly))
    if rules.max_tensile_strength is not None:
        lines.append(
            ScheduleLine("tensile strength at most", rules.max_tensile_strength, "MPa",
                         rules.source_of("max_tensile_strength"))
        )  # fmt: skip
    galvanized = product.galvanizing_allowed and not assembly.weathering
    lines += [
        ScheduleLine("nut", rules.nut, "", rules.source_of("nut")),
        ScheduleLine("marks", rules.marks, "", rules.source_of("marks")),
        ScheduleLine(
            "hot-dip galvanizing",
            "allowed" if galvanized else "not allowed",
            "",
            product.source,
            note=_galvanizing_note(assembly, allowed=galvanized),
        ),
        ScheduleLine("using a bolt again", rules.reuse, "", rules.source_of("reuse")),
    ]
    if rules.ordering:
        lines.append(ScheduleLine("order", rules.ordering, "", rules.source_of("ordering")))
    return ScheduleSection("Bolt", tuple(lines))


def _weathering_line(assembly: Assembly) -> ScheduleLine:
    """Bolts in unpainted weathering steel: of the same kind of steel, and not zinc-coated."""
    item, source = "for unpainted weathering steel", assembly.product.source
    if not assembly.bolt_type:
        note = "no weathering version of these assemblies is in the catalogue: ask the maker"
        return ScheduleLine(item, "not known", "", source, note=note, verdict=Verdict.NOT_EVALUATED)
    note = "bolts, nuts, washers and indicators alike: plainer steel beside it rusts first"
    return ScheduleLine(item, assembly.bolt_type, "", source, note=note)


def _galvanizing_note(assembly: Assembly, *, allowed: bool) -> str:
    if allowed:
        return (
            "galvanized nuts are tapped oversize and lubricated; order all parts of one finish, "
            "and coat bare steel around zinc: the couple eats the zinc"
        )
    return "the couple with bare weathering steel eats the zinc" if assembly.weathering else ""


def washer_section(jacket: Jacket, assembly: Assembly) -> ScheduleSection:
    """Each washer with its reason, and the curvature that it bears on."""
    if assembly.washers is None:
        line = ScheduleLine(
            "washers", "not known", "", assembly.product.source,
            note="the catalogue has no rules for this product; none is counted in the length",
            verdict=Verdict.NOT_EVALUATED,
        )  # fmt: skip
        return ScheduleSection("Washers", (line,))
    lines = []
    for place in ("head", "nut"):
        here = assembly.washers_at(place)
        lines += [
            ScheduleLine(
                f"under the {place}",
                washer.description,
                "",
                washer.source,
                note=washer.reason,
            )
            for washer in here
        ]
        if not here:
            lines.append(
                ScheduleLine(f"under the {place}", "none", "", "no rule asks for one here")
            )
    lines.append(_slope_line(jacket, assembly))
    return ScheduleSection("Washers", tuple(lines))


def _slope_line(jacket: Jacket, assembly: Assembly) -> ScheduleLine:
    """How curved the face is under head and nut; it slopes alike on both sides of the bolt."""
    radius = float(jacket.sleeve.inner_radius) - float(jacket.splice.inside_thickness)
    run = 2.0 * radius / assembly.size.nut_width
    flat = run >= _LEAST_RUN
    return ScheduleLine(
        "inside radius over half the nut's width",
        run,
        "1",
        _SLOPE_SOURCE,
        f"at least {_LEAST_RUN:g}, a slope of 1 in {_LEAST_RUN:g} at the nut's edge",
        "counts as normal to the bolt" if flat else "needs washers with a curved or bevelled seat",
        Verdict.OK if flat else Verdict.PROBLEM,
    )


def _hole_sizes(jacket: Jacket) -> list[ScheduleLine]:
    """Type and size of the holes, of each ply where they differ."""
    return [
        ScheduleLine(f"{item}, {ply}" if ply else item, value, unit, source)
        for ply, hole in jacket.holes.items()
        for item, value, unit, source in (
            ("hole type", hole.kind.replace("-", " "), "", f"{_FILE} {hole.field}"),
            ("hole along the hoop force", float(hole.along), "mm", hole.source),
            ("hole along the seam", float(hole.across), "mm", hole.source),
        )
    ]


def hole_section(jacket: Jacket, assembly: Assembly) -> ScheduleSection:
    """Holes in all plies."""
    bolts = jacket.bolts
    rows, columns = int(bolts.rows), int(bolts.columns)
    lines = [
        *_hole_sizes(jacket),
        ScheduleLine(
            "made by",
            bolts.hole_making,
            "",
            f"{_FILE} bolts.hole_making",
            note="remove burrs that keep plates apart; no flame-cut holes",
        ),
        ScheduleLine(
            "holes in each half-shell",
            float(4 * rows * columns / 2),
            "1",
            _GEOMETRY,
            f"{rows} rows × {columns} on both edges",
        ),
        ScheduleLine(
            "holes in each splice plate",
            float(2 * rows * columns),
            "1",
            _GEOMETRY,
            f"{rows} rows × {columns} on both sides of the seam",
        ),
        ScheduleLine("pitch of the rows", float(bolts.pitch), "mm", _FILE),
        ScheduleLine("end row to end of plate", float(bolts.end_distance), "mm", _FILE),
        ScheduleLine("first line to sleeve's edge", float(bolts.seam_edge_distance), "mm", _FILE),
    ]
    if columns > 1:
        lines.append(
            ScheduleLine("gauge of the lines", float(bolts.gauge), "mm", _FILE,
                         note="on the sleeve; a little more on outside and less on inside plates, "
                         "see the flat patterns")
        )  # fmt: skip
    if len(assembly.plies) > 1:
        lines.append(
            ScheduleLine("matching", "drill or ream through all plies bolted together, or mark "
                         "plates and sleeve as pairs", "", _CUSTOM)
        )  # fmt: skip
    return ScheduleSection("Holes", tuple(lines))


def faying_section(jacket: Jacket) -> ScheduleSection:
    """Where plates slide on each other if the bolts let them, and how these faces must be."""
    both = float(jacket.splice.inside_thickness) > 0.0
    faces = "sleeve outside, outside plate inside"
    if both:
        faces += "; sleeve inside, inside plate outside"
    lines = [
        ScheduleLine("faces", faces, "", _GEOMETRY),
        ScheduleLine(
            "width of the strip on each seam",
            float(jacket.splice.width),
            "mm",
            _GEOMETRY,
            "width of the splice plate",
            "over the whole height; nothing but the prepared surface within it",
        ),
    ]
    if float(jacket.splice.filler_thickness) > 0.0:
        lines.append(
            ScheduleLine("fillers", "both faces like the faces that they lie on; as high and as "
                         "wide as the splice plates, of steel no weaker", "", _CUSTOM)
        )  # fmt: skip
    for faying in jacket.bolts.faying_classes:
        lines += [
            ScheduleLine(f"class {faying.name}", faying.preparation, "", faying.source),
            ScheduleLine(
                f"class {faying.name}: slip coefficient",
                float(faying.slip_coefficient),
                "1",
                faying.source,
            ),
        ]
        if faying.keep_unpainted:
            lines.append(
                ScheduleLine(
                    f"class {faying.name}: not to be painted",
                    faying.keep_unpainted,
                    "",
                    faying.source,
                )
            )
    lines.append(
        ScheduleLine(
            "coated faces",
            "not thicker than the tested coat, and cured as long as in the test before bolting",
            "",
            "RCSC 2020 Section 3.2.2 (from memory)",
        )
    )
    return ScheduleSection("Faying surfaces", tuple(lines))
