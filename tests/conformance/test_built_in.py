"""Our own limit states, catalogue entries and bond models keep to the kit like anyone's."""

from __future__ import annotations

from jacketcheck.conformance import Case, conformance_checks

SPLITTING = (
    "where seams slip, the Model Code's law for splitting without confinement falls to nothing at "
    "1.2 times the slip at which the bar splits; a stiffer law gets there at a smaller slip"
)


@conformance_checks(
    "us",
    expected_failures={
        "bond model fib Model Code 2010: pressure_never_weakens": SPLITTING,
        "bond model fib Model Code 2010: strength_never_weakens": SPLITTING,
    },
)
def test_the_built_in_plug_in_keeps_to_the_kit(case: Case) -> None:
    case()
