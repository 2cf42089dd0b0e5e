"""The plug-in keeps to what jacketcheck asks of every plug-in."""

import jacketcheck_example

from jacketcheck.conformance import Case, conformance_checks


@conformance_checks(jacketcheck_example)
def test_keeps_to_the_kit(case: Case) -> None:
    case()
