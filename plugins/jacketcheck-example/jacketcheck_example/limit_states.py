"""Limit states of the invented code."""

from jacketcheck.plugin import (
    Jacket,
    NoScatter,
    Result,
    Scatter,
    Steps,
    add_bolt_force,
    faying_class_of,
    limit_state,
)

__all__ = ["least_sleeve_thickness", "seam_slip"]

CODE = "Example Code 12:2024 (invented)"
SLIP_FACTOR = 0.8
"""Resistance factor of slip (Example Code 12:2024 (invented) 7.3)."""
LEAST_THICKNESS_RATIO = 1.0 / 200.0
"""Least thickness of a sleeve over its inside diameter (Example Code 12:2024 (invented) 5.2)."""


@limit_state(
    "seam-slip",
    title="Slip of the seam bolts",
    provisions="example",
    monotonic={"bolts.pretension": -1},
    effort="closed-form",
    scatter=Scatter("force on a bolt exceeds friction under its pretension", rules=("slip",)),
)
def seam_slip(jacket: Jacket) -> list[Result]:
    """Slip of the hardest-worked bolt, in place of the inherited limit state of the same id."""
    steps, clause = Steps(), f"{CODE} 7.3"
    demand = add_bolt_force(jacket, steps)
    bolts, faying = jacket.bolts, faying_class_of(jacket, "Example")
    friction = steps.figure("μ", f"class {faying.name}", faying, "slip_coefficient", "1")
    pretension = steps.figure("F_p", bolts.tightening, bolts, "pretension", "N")
    planes = steps.add("n", "slip planes", jacket.splice.shear_planes, "1", "input splice.sides")
    capacity = steps.add(
        "F_s", "0.8 μ F_p n", SLIP_FACTOR * friction * pretension * planes, "N", clause
    )
    return [
        Result(
            "Slip of the seam bolts",
            "hardest-worked row",
            demand,
            capacity,
            "N",
            clause,
            steps.lines,
            rule="slip",
            resistance_factor=SLIP_FACTOR,
        )
    ]


@limit_state(
    "least-sleeve-thickness",
    title="Least thickness of the sleeve",
    provisions="example",
    monotonic={"sleeve.thickness": -1, "sleeve.inner_diameter": +1},
    effort="closed-form",
    scatter=NoScatter("a rule for handling, which the sleeve meets as drawn or not"),
)
def least_sleeve_thickness(jacket: Jacket) -> list[Result]:
    """Thickness below which a half-shell bends when it is handled; a check of the code's own."""
    steps, clause = Steps(), f"{CODE} 5.2"
    sleeve = jacket.sleeve
    steps.add("D_i", "sleeve", sleeve.inner_diameter, "mm", "input sleeve.inner_diameter")
    least = steps.add(
        "t_min", "D_i/200", sleeve.inner_diameter * LEAST_THICKNESS_RATIO, "mm", clause
    )
    thickness = steps.add("t", "sleeve", sleeve.thickness, "mm", "input sleeve.thickness")
    return [
        Result(
            "Least thickness of the sleeve", "sleeve", least, thickness, "mm", clause, steps.lines
        )
    ]
