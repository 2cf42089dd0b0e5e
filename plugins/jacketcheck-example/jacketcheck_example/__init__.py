"""An invented local code: what the plug-in brings, hook by hook."""

from collections.abc import Sequence

from jacketcheck.plugin import FayingClass, LimitState, Provisions, hookimpl
from jacketcheck_example.faying import FAYING_CLASSES
from jacketcheck_example.limit_states import least_sleeve_thickness, seam_slip

__all__ = ["jacketcheck_faying_classes", "jacketcheck_limit_states", "jacketcheck_provisions"]

EXAMPLE = Provisions(
    "example",
    "Example Code 12:2024 (invented), elsewhere as us",
    inherits="us",
    faying_codes=("Example",),
)


@hookimpl
def jacketcheck_provisions() -> Sequence[Provisions]:
    """One set; what it does not word itself it inherits from the built-in one."""
    return (EXAMPLE,)


@hookimpl
def jacketcheck_faying_classes() -> Sequence[FayingClass]:
    """Faying classes, so that an input can name them: ``faying_class = "Example 1"``."""
    return FAYING_CLASSES


@hookimpl
def jacketcheck_limit_states() -> Sequence[LimitState]:
    """One limit state that replaces an inherited one by its id, and a new one."""
    return (seam_slip, least_sleeve_thickness)
