"""The report of a run as blocks, the same for every form of output."""

from __future__ import annotations

from jacketcheck.inputs.load import InputFile
from jacketcheck.render.chapters.closing import cautions, judgement, plugins, review
from jacketcheck.render.chapters.damage import damage
from jacketcheck.render.chapters.inputs import inputs
from jacketcheck.render.chapters.pictures import pictures
from jacketcheck.render.chapters.results import results_and_calculations
from jacketcheck.render.chapters.summary import cover, running_line, summary
from jacketcheck.render.report_parts import Chapter, Report
from jacketcheck.report import CheckReport
from jacketcheck.units import DisplaySystem

__all__ = ["report_blocks"]


def report_blocks(
    report: CheckReport,
    repair: InputFile,
    *,
    system: DisplaySystem,
    figures: bool = True,
    date: str = "",
) -> Report:
    """Put a report together.

    Parameters
    ----------
    report
        Outcome of the run.
    repair
        The input that was checked.
    system
        Units of results and figures.
    figures
        Whether to draw figures, which takes matplotlib.
    date
        Date for the cover, as it is to be printed; nothing else in a report depends on the day.

    Returns
    -------
    Report
        For `jacketcheck.render.report_html` and `jacketcheck.render.report_markdown`.

    Raises
    ------
    MissingExtraError
        If figures are asked for and matplotlib is not installed.
    """
    tables, calculations = results_and_calculations(report, system=system)
    drawn: tuple[Chapter, ...] = (pictures(report, system=system),) if figures else ()
    chapters = (
        summary(report, system=system),
        inputs(repair, report.variants),
        damage(report, system=system),
        tables,
        *drawn,
        calculations,
        judgement(report, repair),
        plugins(report),
        cautions(report),
        review(report),
    )
    return Report(
        cover=cover(report, repair, system=system, date=date),
        chapters=chapters,
        running=running_line(report),
    )
