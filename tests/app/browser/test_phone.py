"""The app on a phone: the paper in two fingers, what is out of sight found."""

import pytest
from playwright.sync_api import Browser, Page, expect

from ..browsing import IN_BROWSER, failing_slip, new_slip, painted, watched

pytestmark = IN_BROWSER


def test_on_a_phone(chromium: Browser, home: str) -> None:
    context = chromium.new_context(
        viewport={"width": 390, "height": 844}, has_touch=True, is_mobile=True
    )
    page = context.new_page()
    wrong = watched(page)
    new_slip(page, home)
    assert page.evaluate("document.documentElement.scrollWidth") <= 390
    page.locator("[data-of='neckline.depth']").first.tap()
    expect(page.locator(".strip")).to_be_visible()
    expect(page.locator("[data-code=FC]")).to_be_visible()
    for name in ("Measures", "Seams", "Steps", "Style"):
        page.locator(f".words [data-to={name}]").tap()
        shown = ".lesson" if name == "Steps" else f".para[data-name={name}]"
        expect(page.locator(shown)).to_be_visible()
    for path in ("/", "/cards", "/cards/1", "/shelf", "/slips/1/print"):
        page.goto(home + path)
        assert page.evaluate("document.documentElement.scrollWidth") <= 390, path
    assert wrong == []
    context.close()


def tall(page: Page, code: str) -> float:
    """Height of a piece on the screen, px."""
    box = page.locator(f"[data-code='{code}'] .cutout").bounding_box()
    assert box
    return box["height"]


def test_a_phone_frames_the_piece_in_hand(phone: Page, home: str) -> None:
    page = phone
    new_slip(page, home)
    framed = page.locator("#framed")
    expect(framed).to_have_text("Centre front")
    one = tall(page, "FC")
    framed.tap()
    expect(framed).to_have_text("All pieces")
    assert one > 2.2 * tall(page, "FC")
    page.get_by_role("button", name="The next piece").tap()
    expect(framed).to_have_text("Side front")
    page.locator("[data-of='peplum.length']").first.tap()
    expect(framed).to_have_text("Front peplum")
    box = page.locator("[data-code=PF] .cutout").bounding_box()
    sheet = page.locator("#sheet").bounding_box()
    assert box and sheet
    assert box["width"] > 0.7 * sheet["width"]
    page.keyboard.press("Escape")
    # its slip is drawn to its head when an edge is touched, and back again
    page.evaluate("room.paper.select('PF.hem')")
    expect(page.locator(".paras")).to_be_hidden()
    note, piece = (
        page.locator(".note.a").bounding_box(),
        page.locator("[data-code=PF] .cutout").bounding_box(),
    )
    assert note and piece and note["y"] >= piece["y"] + piece["height"] - 1
    page.locator("#handle").tap()
    expect(page.locator(".paras")).to_be_visible()
    page.locator("#handle").press("ArrowUp")
    expect(page.locator("body")).to_have_attribute("data-rest", "full")


def test_a_phone_unfolds_the_whole_body(phone: Page, home: str) -> None:
    """Both halves in sight, as wide as the screen has room; a piece can be framed, and
    what is on the bar at a desk is in reach."""
    page = phone
    new_slip(page, home)
    button = page.get_by_role("button", name="Whole body", exact=True)
    expect(button).to_have_attribute("aria-pressed", "false")
    button.tap()
    expect(button).to_have_attribute("aria-pressed", "true")
    expect(page.locator("#framed")).to_have_text("The whole body")
    expect(page.locator(".paras")).to_be_hidden()
    boxes = [
        box
        for part in page.locator(
            "[data-code=BC] .cutout, [data-code=FC] .cutout, .other-half .cutout"
        ).all()
        if (box := part.bounding_box())
    ]
    left = min(b["x"] for b in boxes)
    right = max(b["x"] + b["width"] for b in boxes)
    assert left >= 0 and right <= 390
    assert right - left > 0.85 * 390
    page.get_by_role("button", name="The next piece").tap()
    expect(page.locator("#framed")).not_to_have_text("The whole body")
    button.tap()
    expect(page.locator(".other-half .piece")).to_have_count(0)
    expect(page.locator("#framed")).to_have_text("Centre front")
    page.get_by_role("button", name="Dimensions").tap()
    expect(page.locator(".dim").first).to_be_attached()
    page.get_by_role("button", name="Baste").tap()
    expect(page.locator("#basted")).to_be_visible()


def test_two_fingers_enlarge_and_move_the_paper(phone: Page, home: str) -> None:
    page = phone
    new_slip(page, home)
    before = tall(page, "FC")
    touch = page.context.new_cdp_session(page)

    def fingers(kind: str, *at: tuple[float, float]) -> None:
        points = [{"x": x, "y": y, "id": i} for i, (x, y) in enumerate(at)]
        touch.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": points})

    fingers("touchStart", (180, 180))
    fingers("touchStart", (180, 180), (220, 180))
    for i in range(1, 9):
        fingers("touchMove", (180 - 5 * i, 180), (220 + 5 * i, 180))
    painted(page)
    wide = tall(page, "FC")
    assert wide == pytest.approx(3 * before, rel=0.02)  # 40 px became 120
    x = page.locator("[data-code=FC] .cutout").bounding_box()
    for i in range(1, 9):
        fingers("touchMove", (140 + 4 * i, 180), (260 + 4 * i, 180))
    fingers("touchEnd")
    painted(page)
    moved = page.locator("[data-code=FC] .cutout").bounding_box()
    assert x and moved
    assert moved["x"] - x["x"] == pytest.approx(32, abs=4)
    assert tall(page, "FC") == pytest.approx(wide, rel=0.01)
    assert page.locator(".note.a").count() == 0  # no edge was touched


def test_what_is_marked_out_of_sight_is_found_on_a_phone(
    phone: Page, home: str
) -> None:
    page = phone
    failing_slip(page, home)
    page.get_by_role("button", name="5 to look at").tap()
    remark = page.locator("#remark")
    expect(remark).to_be_visible()
    box, ticket = (
        remark.bounding_box(),
        page.locator(".ticket[aria-expanded=true]").bounding_box(),
    )
    assert box and ticket
    assert not (
        ticket["y"] < box["y"] + box["height"]
        and box["y"] < ticket["y"] + ticket["height"] / 2
    ), "the slip hides its ticket"
