"""Faying classes of the invented code."""

from jacketcheck.plugin import FayingClass

__all__ = ["FAYING_CLASSES"]

FAYING_CLASSES = (
    FayingClass(
        code="Example",
        letter="1",
        slip_coefficient=0.45,
        preparation="blast-cleaned and left unpainted",
        source="Example Code 12:2024 (invented) Table 7",
    ),
    FayingClass(
        code="Example",
        letter="2",
        slip_coefficient=0.25,
        preparation="as rolled, loose scale brushed off",
        source="Example Code 12:2024 (invented) Table 7",
    ),
)
