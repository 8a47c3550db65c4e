"""Type twice as large, colours of the reader's own, narrow screens: nothing is lost."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from ..browsing import CHROMIUM, IN_BROWSER, QUIET, painted, watched

pytestmark = IN_BROWSER

TWICE = "--blink-settings=defaultFontSize=32"
"""Chromium as it is when its user asks for type of twice the size."""

WRONG = (Path(__file__).parent / "overlaps.js").read_text()


@pytest.fixture(scope="module")
def large(chromium: Browser) -> Iterator[Browser]:
    opened = chromium.browser_type.launch(
        executable_path=CHROMIUM, args=[*QUIET, TWICE]
    )
    yield opened
    opened.close()


def places(page: Page, home: str) -> Iterator[str]:
    """Every place of the app, one after the other, with things to see in each."""
    page.goto(home)
    yield "slips"
    page.get_by_role("button", name="try it with a made-up client").click()
    page.wait_for_selector("[data-code=FC]", state="attached")
    slip = page.url.removeprefix(home)
    change = "to => room.change({do: 'set', of: 'sleeveless armhole.narrowed', to})"
    page.evaluate(change, "1 1/2 in")
    page.wait_for_selector(".ticket", state="attached")
    yield "slip"
    page.evaluate("room.slip.show('neckline.depth')")
    page.wait_for_selector(".strip")
    yield "tape"
    page.evaluate("room.paper.select('FC.panel')")
    yield "edge"
    page.evaluate("room.why('FC.panel')")
    page.wait_for_selector(".chain li")
    yield "why"
    page.evaluate("room.paper.marks.next()")
    page.wait_for_selector("#remark")
    yield "mark"
    page.evaluate("room.paper.marks.close()")
    page.evaluate("room.slip.stand('Steps')")
    page.wait_for_selector(".lesson")
    yield "steps"
    page.evaluate("room.steps.teach(true)")
    yield "teach"
    for path in ("/cards/1", f"{slip}/past", f"{slip}/print", "/shelf", "/cards"):
        page.goto(home + path)
        yield path


@pytest.mark.parametrize("size", [(1440, 900), (1920, 1080), (390, 844)])
def test_type_twice_as_large(large: Browser, home: str, size: tuple[int, int]) -> None:
    context = large.new_context(viewport={"width": size[0], "height": size[1]})
    page = context.new_page()
    faults = watched(page)
    found = {}
    for place in places(page, home):
        painted(page)
        if wrong := page.evaluate(WRONG):
            found[place] = wrong
    assert page.evaluate("parseFloat(getComputedStyle(document.body).fontSize)") > 34
    assert found == {}
    assert faults == []
    context.close()


@pytest.mark.parametrize("size", [(1440, 900), (320, 640)])
def test_usual_type(chromium: Browser, home: str, size: tuple[int, int]) -> None:
    """320 px is a screen of 1280 px that its reader enlarges by four."""
    context = chromium.new_context(viewport={"width": size[0], "height": size[1]})
    page = context.new_page()
    found = {}
    for place in places(page, home):
        painted(page)
        if wrong := page.evaluate(WRONG):
            found[place] = wrong
    assert found == {}
    context.close()


def test_a_narrow_window_gives_the_paper_its_width(
    chromium: Browser, home: str
) -> None:
    page = chromium.new_page(viewport={"width": 900, "height": 700})
    stops = places(page, home)
    next(stops)
    next(stops)
    shares = "e => e.getBoundingClientRect().width / e.parentElement.clientWidth"
    assert page.eval_on_selector("#sheet", shares) > 0.85
    assert page.evaluate(WRONG) == []
    page.evaluate("room.slip.stand('Steps')")
    page.wait_for_selector(".lesson")
    assert page.eval_on_selector(".steps .figure", shares) > 0.95
    assert page.evaluate(WRONG) == []
    page.close()


def test_the_search_finds_what_lies_over_something(
    chromium: Browser, home: str
) -> None:
    page = chromium.new_page(viewport={"width": 1440, "height": 900})
    stops = places(page, home)
    next(stops)
    next(stops)
    assert page.evaluate(WRONG) == []
    page.evaluate("document.querySelector('.acts').style.right = '700px'")
    assert any("lies over" in wrong for wrong in page.evaluate(WRONG))
    page.close()


def test_the_readers_own_colours(chromium: Browser, home: str) -> None:
    """With colours forced, edges and states are told by lines that stay."""
    context = chromium.new_context(
        viewport={"width": 1440, "height": 900},
        forced_colors="active",
        color_scheme="dark",
    )
    page = context.new_page()
    stroke = "e => getComputedStyle(e).stroke"
    ground = "e => getComputedStyle(e).backgroundColor"
    for place in places(page, home):
        if place == "edge":
            for edged in (".slip", ".note.a", ".pull", ".strip", ".rule"):
                border = "e => getComputedStyle(e).borderTopWidth"
                assert page.locator(edged).first.evaluate(border) == "1px", edged
            paper = page.locator("[data-code=FC] .cutout")
            assert paper.evaluate(stroke) == "rgb(255, 255, 255)"
            line = page.locator("[data-code=FC] .line").first
            assert line.evaluate(stroke) == "rgb(255, 255, 255)"
            assert page.locator("body").evaluate(ground) == "rgb(0, 0, 0)"
            inked, mate = (
                page.locator(".glow.on"),
                page.locator(".glow.mate").first,
            )
            dashes = "e => getComputedStyle(e).strokeDasharray"
            assert inked.evaluate(dashes) != mate.evaluate(dashes)
        elif place == "tape":
            outline = "e => getComputedStyle(e).outlineStyle"
            word = page.locator(".w[aria-expanded=true]").first
            assert word.evaluate(outline) == "solid"
    context.close()
