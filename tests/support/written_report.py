"""A run and the report on it, for tests in any folder."""

from __future__ import annotations

from dataclasses import dataclass

from jacketcheck.inputs.load import InputFile
from jacketcheck.render.report_markdown import MarkdownReport
from jacketcheck.render.report_parts import Report
from jacketcheck.report import CheckReport

__all__ = ["Written"]


@dataclass(frozen=True)
class Written:
    """A run, its input, and the report in both forms."""

    run: CheckReport
    repair: InputFile
    blocks: Report
    html: str
    markdown: MarkdownReport
