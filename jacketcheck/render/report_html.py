"""The report as one HTML file that opens anywhere: no network, no other file.

A content security policy lets the browser load nothing and run nothing but the few lines below,
which unfold the calculations before printing where the style sheet alone cannot.
"""

from __future__ import annotations

import base64
import hashlib
from collections.abc import Iterable, Sequence
from importlib.resources import files
from typing import Final

from jacketcheck.render.html import Markup, element, escaped, joined, void
from jacketcheck.render.report_parts import (
    Block,
    Bullets,
    Calculation,
    Cell,
    Chapter,
    Column,
    Cover,
    Facts,
    Paragraph,
    Picture,
    Report,
    Row,
    SignOff,
    Table,
)

__all__ = ["report_html"]

_UNFOLD: Final = (
    'addEventListener("beforeprint",()=>{for(const one of document.querySelectorAll('
    '"details:not([open])")){one.open=true;one.dataset.folded=""}});'
    'addEventListener("afterprint",()=>{for(const one of document.querySelectorAll('
    '"details[data-folded]")){one.open=false;delete one.dataset.folded}});'
)
_FRESH_PAGE: Final = frozenset({"results", "figures", "calculations"})


def report_html(report: Report) -> str:
    """Write a report as HTML.

    Parameters
    ----------
    report
        From `jacketcheck.render.report_blocks`.

    Returns
    -------
    str
        A document in itself; every text of the input is escaped.
    """
    chapters = (
        _chapter(chapter, level=2, number=f"{number}")
        for number, chapter in enumerate(report.chapters, start=1)
    )
    body = element("body", element("main", _cover(report.cover), _contents(report), *chapters))
    document = element("html", joined(_head(report), body), lang="en")
    return f"<!DOCTYPE html>\n{document}\n"


def _head(report: Report) -> Markup:
    style = files("jacketcheck.render").joinpath("report.css").read_text("utf-8")
    digest = base64.b64encode(hashlib.sha256(_UNFOLD.encode()).digest()).decode()
    policy = f"default-src 'none'; style-src 'unsafe-inline'; script-src 'sha256-{digest}'"
    return element(
        "head",
        joined(
            void("meta", charset="utf-8"),
            void("meta", http_equiv="Content-Security-Policy", content=policy),
            void("meta", name="viewport", content="width=device-width, initial-scale=1"),
            element("title", " ".join(report.cover.title.split())),
            element("style", Markup("\n" + style + _page_rule(report.running))),
            element("script", Markup(_UNFOLD)),
        ),
    )


def _page_rule(running: str) -> str:
    """Margins that suit A4 and letter alike, with one line that identifies every page."""
    small = 'font: 7.5pt "Helvetica Neue", Helvetica, Arial, sans-serif; color: #4d5862;'
    return (
        "\n@page {\n  margin: 17mm 16mm 19mm;\n"
        f"  @bottom-left {{ content: {_css_string(running)}; {small} }}\n"
        f'  @bottom-right {{ content: counter(page) " / " counter(pages); {small} }}\n}}\n'
    )


def _css_string(text: str) -> str:
    """A string for a style sheet in which every character but letters and digits is a number."""
    parts = (one if one.isascii() and one.isalnum() else f"\\{ord(one):06x}" for one in text[:120])
    return '"' + "".join(parts) + '"'


def _cover(cover: Cover) -> Markup:
    return element(
        "header",
        element("p", cover.kind, class_="kind"),
        element("h1", cover.title),
        _facts(cover.facts),
        _table(cover.verdicts),
    )


def _contents(report: Report) -> Markup:
    entries = (
        element("li", element("a", f"{number} {chapter.title}", href=f"#{chapter.anchor}"))
        for number, chapter in enumerate(report.chapters, start=1)
    )
    heading = element("h2", "Contents", id="contents")
    return element(
        "nav", heading, element("ol", *entries), class_="contents", aria_labelledby="contents"
    )


def _chapter(chapter: Chapter, *, level: int, number: str = "") -> Markup:
    heading = element(f"h{level}", f"{number} {chapter.title}".lstrip(), id=chapter.anchor)
    kind = " ".join(
        word
        for word, holds in (
            ("fresh", chapter.anchor in _FRESH_PAGE),
            ("review", chapter.anchor == "review"),
        )
        if holds
    )
    blocks = (_block(block, level) for block in chapter.blocks)
    return element("section", heading, *blocks, class_=kind or None)


def _block(block: Block, level: int) -> Markup:  # noqa: PLR0911 - one for each kind of block
    match block:
        case Chapter():
            return _chapter(block, level=level + 1)
        case Table():
            return _table(block)
        case Facts():
            return _facts(block)
        case Paragraph():
            kind = "alarm" if block.alarm else "strong" if block.strong else None
            return element("p", block.text, class_=kind)
        case Bullets():
            return _bullets(block)
        case Picture():
            return _picture(block)
        case Calculation():
            return _calculation(block)
        case SignOff():
            return _sign_off(block)


def _facts(facts: Facts) -> Markup:
    pairs = (
        joined(element("dt", term), element("dd", _inside(what))) for term, what in facts.pairs
    )
    return element("dl", *pairs)


def _table(table: Table) -> Markup:
    caption = element("caption", table.caption, class_="hidden" if table.plain else None)
    head = element("tr", *(_heading(column) for column in table.columns))
    rows = (_row(row, table.columns) for row in table.rows)
    shares = [void("col", style=f"width: {share}%") for share in table.widths]
    columns = [element("colgroup", *shares)] if shares else []
    kind = "shared" if shares else None
    whole = element(
        "table", caption, *columns, element("thead", head), element("tbody", *rows), class_=kind
    )
    # wide tables scroll by themselves on a narrow screen, with the keyboard too
    framed = element(
        "div", whole, class_="scroll", tabindex="0", role="group", aria_label=table.caption
    )
    if not table.notes:
        return framed
    notes = (
        element("li", f"[{number}] {note}") for number, note in enumerate(table.notes, start=1)
    )
    return joined(framed, element("ul", *notes, class_="notes"))


def _heading(column: Column) -> Markup:
    return element("th", column.heading, scope="col", class_=_side(column))


def _row(row: Row, columns: Sequence[Column]) -> Markup:
    first, *others = (
        (_inside(cell), " ".join(filter(None, (_side(column), _kind(cell)))) or None)
        for cell, column in zip(row, columns, strict=True)
    )
    return element(
        "tr",
        element("th", first[0], scope="row", class_=first[1]),
        *(element("td", inside, class_=kind) for inside, kind in others),
    )


def _side(column: Column) -> str | None:
    return "right" if column.align == "right" else None


def _kind(cell: str | Cell) -> str | None:
    if isinstance(cell, str):
        return None
    return "alarm" if cell.alarm else "strong" if cell.strong else None


def _inside(cell: str | Cell) -> Markup:
    if isinstance(cell, str):
        return escaped(cell)
    return element("a", cell.text, href=f"#{cell.link}") if cell.link else escaped(cell.text)


def _bullets(bullets: Bullets) -> Markup:
    def item(lead: str, text: str) -> Markup:
        parts: Iterable[str] = (element("strong", lead), text) if lead else (text,)
        return element("li", joined(*parts, gap=""))

    return element("ul", *(item(lead, text) for lead, text in bullets.items), class_="bullets")


def _picture(picture: Picture) -> Markup:
    caption = element("strong", f"Figure {picture.number}. {picture.title}")
    remark = element("p", picture.remark) if picture.remark else Markup("")
    # our own drawing, its texts escaped when it was written
    return element("figure", Markup(picture.svg), element("figcaption", joined(caption, remark)))


def _calculation(one: Calculation) -> Markup:
    outcome = element("span", one.verdict, class_="outcome alarm" if one.alarm else "outcome")
    head = element("summary", element("span", one.title, class_="name"), outcome)
    inside = [element("p", one.clause)]
    if one.steps is not None:
        inside.append(_table(one.steps))
    inside += [element("p", f"Note: {note}") for note in one.notes]
    # the anchor is inside, so that following a link to it unfolds the whole
    worked = element("div", joined(*inside), class_="worked", id=one.anchor)
    return element("details", head, worked, open=one.alarm)


def _sign_off(sign: SignOff) -> Markup:
    ticks = element("ul", *(element("li", text) for text in sign.ticks), class_="ticks")
    rows = (
        element(
            "tr",
            element("th", text, scope="row"),
            element("td"),
            class_="tall" if text in {"Remarks", "Signature"} else None,
        )
        for text in sign.lines
    )
    caption = element("caption", "To be filled in by the engineer")
    return joined(ticks, element("table", caption, element("tbody", *rows), class_="sign"))
