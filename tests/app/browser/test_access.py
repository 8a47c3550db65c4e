"""The app in a real browser: by keyboard, and nothing that axe finds."""

from urllib.parse import urlsplit

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page, expect

from ..browsing import IN_BROWSER, failing_slip, new_slip, painted

pytestmark = IN_BROWSER


def test_all_of_it_by_keyboard(page: Page, home: str) -> None:
    new_slip(page, home)
    page.keyboard.press("F6")
    page.keyboard.press("F6")
    expect(page.locator("#sheet")).to_be_focused()
    page.keyboard.press("ArrowRight")
    page.keyboard.press("Enter")
    expect(page.locator(".note.a .big")).to_be_visible()
    page.keyboard.press("ArrowRight")
    page.keyboard.press("y")
    expect(page.locator(".chain li").first).to_be_visible()
    page.keyboard.press("d")
    expect(page.locator("#dims")).to_have_attribute("aria-pressed", "true")
    page.keyboard.press("F6")
    page.keyboard.press("PageDown")
    expect(page.locator("[data-name=Seams] .subject")).to_be_focused()


@pytest.mark.parametrize(
    "path",
    [
        "/",
        "/cards",
        "/cards/1",
        "/cards/1/forget",
        "/forget/figure/1",
        "/shelf",
        "/slips/1/print",
        "/slips/1/past",
        "/door",
    ],
)
def test_pages_are_accessible(page: Page, home: str, path: str) -> None:
    slip = urlsplit(new_slip(page, home)).path
    page.goto(home + path.replace("/slips/1", slip))
    painted(page)
    found = Axe().run(page).response["violations"]
    assert [(v["id"], [n["html"][:90] for n in v["nodes"]][:3]) for v in found] == []


@pytest.mark.parametrize(
    "state", ["plain", "tape", "choice", "edge", "steps", "basted", "failing"]
)
def test_the_slip_is_accessible(page: Page, home: str, state: str) -> None:
    new_slip(page, home)
    if state in ("tape", "choice"):
        of = "neckline.depth" if state == "tape" else "neckline.shape"
        page.locator(f"[data-of='{of}']").first.click()
        page.wait_for_selector(".pull")
    elif state == "edge":
        page.evaluate("room.paper.select('FC.panel')")
        page.evaluate("room.why('FC.panel')")
    elif state == "steps":
        page.locator("[data-name=Steps] .subject").click()
        page.wait_for_selector(".lesson")
    elif state == "failing":
        failing_slip(page, home)
        page.locator(".ticket").first.click()
    elif state == "basted":
        page.get_by_role("button", name="Baste").click()
    painted(page)
    found = Axe().run(page).response["violations"]
    assert [(v["id"], [n["html"][:90] for n in v["nodes"]][:3]) for v in found] == []
