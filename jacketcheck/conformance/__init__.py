"""The conformance kit: what every plug-in must keep to, as tests that its author runs.

>>> from jacketcheck.conformance import conformance_cases
>>> for case in conformance_cases("us"):
...     if case.check.name == "loads":
...         case()  # raises ConformanceError where something is wrong

With pytest, see `conformance_checks`; the kit itself does not need it.
"""

from jacketcheck.conformance.case import Case, Check
from jacketcheck.conformance.cases import ALL_CHECKS, conformance_cases, host_with
from jacketcheck.conformance.parametrize import conformance_checks
from jacketcheck.conformance.standard import standard_jackets, standard_repairs
from jacketcheck.conformance.subjects import Subject
from jacketcheck.errors import ConformanceError

__all__ = [
    "ALL_CHECKS",
    "Case",
    "Check",
    "ConformanceError",
    "Subject",
    "conformance_cases",
    "conformance_checks",
    "host_with",
    "standard_jackets",
    "standard_repairs",
]
