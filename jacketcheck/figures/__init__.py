"""Figures: each module draws one from what the analyses found, and says in words what it shows.

matplotlib comes with the extra ``figures`` and is imported only when something is drawn.
"""

from __future__ import annotations

import contextlib
import os
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from importlib import import_module
from typing import TYPE_CHECKING, Any, Final, Literal

from jacketcheck.errors import MissingExtraError
from jacketcheck.report import VariantResults
from jacketcheck.units import DisplaySystem

if TYPE_CHECKING:
    from jacketcheck.figures.drawing import Drawing

_BACKEND: Final = "MPLBACKEND"

__all__ = ["FIGURES", "FigureKind", "draw", "require_matplotlib"]


@dataclass(frozen=True, slots=True)
class FigureKind:
    """A figure that can be asked for.

    Attributes
    ----------
    name
        What it is called on the command line; its module and function have underscores instead.
    help
        What it shows, in one line.
    subject
        What it is drawn from: one ``jacket``, the ``table`` of one variant, or all ``tables``.
    """

    name: str
    help: str
    subject: Literal["jacket", "table", "tables"]


FIGURES: Final = {
    kind.name: kind
    for kind in (
        FigureKind("ratios", "demand over capacity of every limit state", "table"),
        FigureKind("plan", "plan of the jacket with bars by state", "jacket"),
        FigureKind("seam-detail", "section through a seam, to scale", "jacket"),
        FigureKind("seam-elevation", "elevation of a seam and its bolts with dimensions", "jacket"),
        FigureKind("pressure", "pressure against axial strain, with yield and slip", "jacket"),
        FigureKind("vertical-section", "vertical section through the repair", "jacket"),
        FigureKind("bar-stress", "stress along a fractured bar, chipped and unchipped", "jacket"),
        FigureKind("moment-curvature", "moment-curvature of the three sections", "jacket"),
        FigureKind("moment-height", "moment demand and capacity along the repair", "jacket"),
        FigureKind("force-displacement", "original column and variants", "tables"),
    )
}
"""Every figure by name, in the order of the report."""


def draw(
    name: str, tables: Sequence[VariantResults], *, system: DisplaySystem
) -> Iterator[tuple[VariantResults | None, Drawing]]:
    """Draw one figure for each variant, or for all variants together.

    Parameters
    ----------
    name
        One of `FIGURES`.
    tables
        Results of a run; one design each.
    system
        Units of axes and dimensions.

    Yields
    ------
    tuple
        The variant's results, None where the figure is about all of them, and the drawing. A
        figure of the jacket is drawn once for each variant, whatever the provisions.

    Raises
    ------
    MissingExtraError
        If matplotlib is not installed.
    NotEvaluatedError
        If the jacket has nothing to draw, or an analysis lacks something.
    """
    kind = FIGURES[name]
    make = _function(kind)
    if kind.subject == "tables":
        yield None, make(tables, system=system)
        return
    seen: set[str] = set()
    for table in tables:
        if kind.subject == "jacket":
            if table.variant in seen:
                continue
            seen.add(table.variant)
        yield table, make(table if kind.subject == "table" else table.jacket, system=system)


def require_matplotlib() -> None:
    """Fail with what to install if matplotlib is missing.

    A backend that the environment names and that is not there does not matter: figures are drawn
    into files, and matplotlib would refuse to be imported.
    """
    asked = os.environ.pop(_BACKEND, None)
    try:
        matplotlib = import_module("matplotlib")
        if asked:
            with contextlib.suppress(ValueError):
                matplotlib.rcParams["backend"] = asked
    except ModuleNotFoundError as error:
        raise MissingExtraError("figures", "matplotlib") from error
    finally:
        if asked is not None:
            os.environ[_BACKEND] = asked


def _function(kind: FigureKind) -> Any:
    require_matplotlib()
    name = kind.name.replace("-", "_")
    return getattr(import_module(f"jacketcheck.figures.{name}"), name)
