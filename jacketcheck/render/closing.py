"""What stands below every result: who made it, what it does not cover, and the cautions."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Protocol

from jacketcheck.host.host import PluginInfo
from jacketcheck.host.made_by import made_by
from jacketcheck.render.shop_blocks import paragraph
from jacketcheck.render.text_style import TextStyle, bullets, user_text

__all__ = ["Closed", "closing"]


class Closed(Protocol):
    """A report that can be closed so."""

    @property
    def version(self) -> str:
        """Of the package."""

    @property
    def plugins(self) -> Sequence[PluginInfo]:
        """That took part."""

    @property
    def switched_off(self) -> Sequence[str]:
        """Plug-ins that were left out on purpose."""

    @property
    def not_covered(self) -> Sequence[str]:
        """What the engineer must still check."""

    @property
    def cautions(self) -> Sequence[str]:
        """How results are to be taken."""


def closing(report: Closed, style: TextStyle, width: int | None = None) -> str:
    """Close an output; with a width, the names of its makers are wrapped to it."""
    makers = f"Made by {made_by(report.version, report.plugins, report.switched_off)}."
    return "\n\n".join(
        [
            user_text(makers, style) if width is None else paragraph(makers, style, width),
            bullets("Not covered here, for the engineer to check:", report.not_covered, style),
            bullets("Cautions:", report.cautions, style),
        ]
    )
