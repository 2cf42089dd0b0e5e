"""Figures of every variant; one that is the same in two variants stands once."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import Final

from jacketcheck.errors import NotEvaluatedError
from jacketcheck.render.report_parts import Chapter, Paragraph, Picture
from jacketcheck.report import CheckReport, VariantResults
from jacketcheck.units import DisplaySystem

__all__ = ["pictures"]

_PLACEHOLDER: Final = "jacketcheck-picture"
_ALL: Final = "All variants"


@dataclass
class _Gallery:
    """Figures so far, with the number of each by its content."""

    numbers: dict[str, int] = field(default_factory=dict)
    chapters: dict[str, list[Picture | Paragraph]] = field(default_factory=dict)

    def hang(self, variant: str, name: str, picture: tuple[str, str, str, str]) -> None:
        """Add a figure to a variant's chapter, or say where it stands already."""
        title, remark, alt, svg = picture
        own = self.chapters.setdefault(variant, [])
        if svg in self.numbers:
            own.append(Paragraph(f"{title}: as figure {self.numbers[svg]}."))
            return
        number = self.numbers[svg] = len(self.numbers) + 1
        final = svg.replace(_PLACEHOLDER, f"figure-{number}")
        own.append(Picture(f"{number:02d}-{_slug(name)}", number, title, remark, alt, final))

    def excuse(self, variant: str, name: str, reason: str) -> None:
        """Say why a figure is not there."""
        own = self.chapters.setdefault(variant, [])
        own.append(Paragraph(f"{name} is not drawn: {reason}."))


def pictures(report: CheckReport, *, system: DisplaySystem) -> Chapter:
    """Draw every figure of the report.

    Raises
    ------
    MissingExtraError
        If matplotlib is not installed.
    """
    from jacketcheck.figures import FIGURES  # noqa: PLC0415 - only a report with figures draws

    gallery = _Gallery()
    together = [kind for kind in FIGURES.values() if kind.subject == "tables"]
    for kind in together:
        _hang(gallery, _ALL, kind.name, report.tables, system)
    for variant in report.variants:
        tables = tuple(table for table in report.tables if table.variant == variant)
        for kind in FIGURES.values():
            if kind not in together:
                _hang(gallery, variant, kind.name, tables, system)
    chapters = tuple(
        Chapter(name, f"figures-{number}", tuple(blocks))
        for number, (name, blocks) in enumerate(gallery.chapters.items(), start=1)
    )
    return Chapter("Figures", "figures", chapters)


def _hang(
    gallery: _Gallery,
    heading: str,
    name: str,
    tables: tuple[VariantResults, ...],
    system: DisplaySystem,
) -> None:
    from jacketcheck.figures import draw  # noqa: PLC0415 - as above
    from jacketcheck.figures.export import inline_svg  # noqa: PLC0415 - loaded only when asked for

    try:
        for table, drawing in draw(name, tables, system=system):
            title = drawing.title
            if table is not None and len(tables) > 1 and name == "ratios":
                title = f"{title}, provisions {table.provisions}"
            svg = inline_svg(drawing, prefix=_PLACEHOLDER)
            gallery.hang(heading, name, (title, drawing.remark, drawing.alt, svg))
    except NotEvaluatedError as error:
        gallery.excuse(heading, name.replace("-", " "), str(error))


def _slug(name: str) -> str:
    return re.sub(r"[^a-z0-9]+", "-", name.lower()).strip("-")
