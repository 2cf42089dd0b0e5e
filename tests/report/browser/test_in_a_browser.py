"""The report in a browser: nothing loaded, nothing run, accessible, and fit to print."""

from __future__ import annotations

from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, Page

MILLIMETRE = 96.0 / 25.4
# width of the sheet less the margins of the style sheet
SHEETS = {"A4": 210.0 - 32.0, "letter": 215.9 - 32.0}


def test_it_opens_without_a_network_and_without_complaints(
    browser: Browser, report_file: Path
) -> None:
    page = browser.new_page()
    asked: list[str] = []
    said: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.on("console", lambda message: said.append(message.text))
    page.on("pageerror", lambda error: said.append(str(error)))
    page.goto(report_file.as_uri())
    assert asked == [report_file.as_uri()]
    assert said == []
    page.close()


@pytest.mark.parametrize("width", [1100, 390])
def test_the_accessibility_checker_finds_nothing(
    browser: Browser, short_file: Path, width: int
) -> None:
    page = browser.new_page(viewport={"width": width, "height": 900})
    page.goto(short_file.as_uri())
    page.evaluate(
        "[...document.querySelectorAll('details')].slice(0, 8).forEach(d => d.open = true)"
    )
    found = Axe().run(page)
    assert found.violations_count == 0, found.generate_report()
    page.close()


def test_it_fits_a_narrow_screen(opened: Page) -> None:
    opened.set_viewport_size({"width": 390, "height": 800})
    assert opened.evaluate("document.documentElement.scrollWidth") <= 390


def test_a_link_to_a_calculation_unfolds_it(opened: Page) -> None:
    link = opened.locator("#results-1").locator("xpath=..").locator("a").first
    anchor = (link.get_attribute("href") or "").removeprefix("#")
    assert not opened.locator(f"#{anchor}").is_visible()
    link.click()
    assert opened.locator(f"#{anchor}").is_visible()


@pytest.mark.parametrize("sheet", SHEETS)
def test_everything_is_printed_and_nothing_is_wider_than_the_sheet(
    opened: Page, sheet: str
) -> None:
    width = SHEETS[sheet] * MILLIMETRE
    opened.emulate_media(media="print")
    opened.set_viewport_size({"width": int(width), "height": 1000})
    widest = opened.evaluate(
        "Math.max(...[...document.querySelectorAll('body *')]"
        ".filter(one => !one.closest('.hidden') && !one.closest('svg *'))"
        ".map(one => one.getBoundingClientRect().right))"
    )
    assert widest <= width + 1.0
    folded = opened.evaluate(
        "[...document.querySelectorAll('.worked')]"
        ".filter(one => one.getBoundingClientRect().height < 5).length"
    )
    assert folded == 0


@pytest.mark.parametrize("sheet", SHEETS)
def test_it_prints_to_pdf(opened: Page, sheet: str) -> None:
    content = opened.pdf(format=sheet)
    assert content.startswith(b"%PDF")
    pages = content.count(b"/Type /Page\n") + content.count(b"/Type /Page/")
    assert 20 <= pages <= 200


def test_no_figure_is_taller_than_a_letter_page(opened: Page) -> None:
    opened.emulate_media(media="print")
    opened.set_viewport_size({"width": int(SHEETS["letter"] * MILLIMETRE), "height": 1000})
    tallest = opened.evaluate(
        "Math.max(...[...document.querySelectorAll('figure')]"
        ".map(one => one.getBoundingClientRect().height))"
    )
    assert tallest <= (279.4 - 36.0) * MILLIMETRE


def test_a_screenshot_shows_ink(opened: Page) -> None:
    for anchor in ("summary", "figures", "calculations"):
        opened.goto(f"{opened.url.partition('#')[0]}#{anchor}")
        # a page of one colour compresses to next to nothing
        assert len(opened.screenshot()) > 20_000


def test_hostile_texts_do_not_run(browser: Browser, tmp_path: Path, report_file: Path) -> None:
    from jacketcheck.render.html import element

    attack = "<img src=x onerror='document.title=1'><script>document.title='run'</script>"
    text = report_file.read_text("utf-8")
    spoilt = text.replace("<main>", f"<main>{element('p', attack)}")
    # even what were not escaped could not run: the policy stops it
    spoilt = spoilt.replace("<main>", f"<main>{attack}")
    path = tmp_path / "spoilt.html"
    path.write_text(spoilt, "utf-8")
    page = browser.new_page()
    page.goto(path.as_uri())
    page.wait_for_timeout(200)
    assert page.title().startswith("Quarry Road")
    assert attack in page.locator("main > p").first.inner_text()
    page.close()
