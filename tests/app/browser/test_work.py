"""Cloth, making and cost in a real browser: from a slip to a lay and a quote."""

import re
from pathlib import Path

from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, Page, expect

from ..browsing import IN_BROWSER, served, watched

pytestmark = IN_BROWSER


def stand(page: Page, name: str) -> None:
    page.evaluate("name => room.slip.stand(name)", name)


def clean(page: Page) -> None:
    """Nothing that axe finds against what is seen."""
    found = Axe().run(page).response["violations"]
    assert [(v["id"], v["nodes"][0]["html"][:200]) for v in found] == []


def laid(page: Page) -> None:
    """The cloth with a lay, its search ended."""
    stand(page, "Cloth")
    expect(page.locator(".laid").first).to_be_attached()
    page.evaluate("room.cloth.hand('stop')")  # the button may be gone by now
    expect(page.get_by_role("button", name="Keep this lay")).to_be_visible()


def test_a_flaw_is_drawn_round_on_the_cloth(chromium: Browser, tmp_path: Path) -> None:
    with served(tmp_path / "book.db") as home:
        context = chromium.new_context(viewport={"width": 1440, "height": 900})
        page = context.new_page()
        wrong = watched(page)
        page.goto(home)
        page.get_by_role("button", name="try it with a made-up client").click()
        page.wait_for_selector("[data-code=FC]", state="attached")
        laid(page)
        page.get_by_role("button", name="Mark a flaw").click()
        clean(page)
        piece = page.locator(".laid .cutout").nth(1).bounding_box()
        assert piece
        x, y = piece["x"] + piece["width"] / 2, piece["y"] + piece["height"] / 2
        page.mouse.move(x, y)
        page.mouse.down()
        page.mouse.move(x + 20, y + 15, steps=4)
        page.mouse.up()
        expect(page.locator(".cloth .flaw").first).to_be_attached()
        expect(page.get_by_role("button", name="Mark a flaw")).to_be_visible()
        assert page.locator(".laid.in-hand").count() == 0, "no piece was taken"
        box = page.locator(".cloth .flaw").first.bounding_box()
        assert box
        assert abs(box["width"] / box["height"] - 20 / 15) < 0.15
        assert wrong == []


def test_from_a_slip_to_a_lay_a_list_and_a_quote(
    chromium: Browser, tmp_path: Path
) -> None:
    with served(tmp_path / "book.db") as home:
        context = chromium.new_context(viewport={"width": 1440, "height": 900})
        page = context.new_page()
        wrong = watched(page)
        page.goto(home)
        page.get_by_role("button", name="try it with a made-up client").click()
        page.wait_for_selector("[data-code=FC]", state="attached")
        slip = page.url
        laid(page)
        clean(page)
        note = page.get_by_role("article", name="The lay")

        # a piece is dragged over another; the checker answers at once
        first, other = page.locator(".laid").nth(1), page.locator(".laid").nth(3)
        a, b = (n.locator(".cutout").bounding_box() for n in (first, other))
        assert a and b
        page.mouse.move(a["x"] + a["width"] / 2, a["y"] + a["height"] / 2)
        page.mouse.down()
        page.mouse.move(b["x"] + b["width"] / 2, b["y"] + b["height"] / 2, steps=5)
        page.mouse.up()
        expect(note).to_contain_text("This must not be cut yet")
        expect(page.locator(".cloth .remark")).to_contain_text(
            re.compile(r"Overlaps the .* by [\d.]+ square inches")
        )
        expect(page.get_by_role("button", name="Keep this lay")).to_have_count(0)
        clean(page)
        page.keyboard.press("Control+z")
        expect(page.get_by_role("button", name="Keep this lay")).to_be_visible()

        # with the keys, and the cloth to buy follows
        first.focus()
        bought = note.locator(".big").inner_text()
        for _ in range(70):  # inches: past the end of the first lay that is found
            page.keyboard.press("Shift+ArrowRight")
        expect(note.locator(".big")).not_to_have_text(bought)
        page.evaluate("room.wire.queue.length")
        back = page.get_by_role("button", name="Take the move back")
        while back.is_visible():
            page.evaluate("room.cloth.hand('back')")  # the button may be gone by now
            page.wait_for_timeout(60)
        page.get_by_role("button", name="Keep this lay").click()
        expect(note).to_contain_text("This lay is kept with the order")

        # ticked, and still ticked after a reload
        stand(page, "Making")
        page.get_by_label("Cut the shell").check()
        expect(page.locator("[data-name=Making]")).to_contain_text("one done")
        clean(page)
        page.reload()
        page.wait_for_selector("[data-code=FC]", state="attached")
        stand(page, "Making")
        expect(page.get_by_label("Cut the shell")).to_be_checked()
        stand(page, "Cloth")
        expect(note).to_contain_text("This lay is kept with the order")

        # the cost, and the quote as PDF
        stand(page, "Cost")
        expect(page.locator("#cost table").first).to_be_visible()
        high, all_of_it = page.locator("#cost .broad").evaluate(
            "lines => [lines.clientHeight, lines.scrollHeight]"
        )
        assert high >= all_of_it > 100  # every line of it is shown
        expect(page.locator("[data-name=Cost]")).to_contain_text("It comes to")
        clean(page)
        page.get_by_role("link", name="Print the quote").click()
        expect(page.locator("#count")).to_have_text("1 sheet.")
        clean(page)
        quote = page.request.get(f"{slip}/sheets/quote.pdf")
        assert quote.body().startswith(b"%PDF")
        plan = page.request.get(f"{slip}/sheets/lay.pdf")
        assert plan.body().startswith(b"%PDF")
        assert wrong == []
        context.close()


def test_on_a_phone_a_piece_is_moved_with_a_finger(
    chromium: Browser, tmp_path: Path
) -> None:
    with served(tmp_path / "book.db") as home:
        context = chromium.new_context(
            viewport={"width": 390, "height": 844}, has_touch=True, is_mobile=True
        )
        page = context.new_page()
        wrong = watched(page)
        page.goto(home)
        page.get_by_role("button", name="try it with a made-up client").click()
        page.wait_for_selector("[data-code=FC]", state="attached")
        laid(page)
        box = page.locator(".laid").nth(1).locator(".cutout").bounding_box()
        assert box
        x, y = box["x"] + box["width"] / 2, box["y"] + box["height"] / 2
        cdp = context.new_cdp_session(page)

        def touch(kind: str, *at: float) -> None:
            points = [{"x": at[0], "y": at[1]}] if at else []
            send = {"type": kind, "touchPoints": points}
            cdp.send("Input.dispatchTouchEvent", send)

        touch("touchStart", x, y)
        for i in range(1, 5):
            touch("touchMove", x, y + i * 100)
        touch("touchEnd")
        note = page.get_by_role("article", name="The lay")
        expect(note).to_contain_text(re.compile("lies off the cloth by"))
        assert page.evaluate("document.documentElement.scrollWidth") <= 390
        note.get_by_role("button", name="Take the move back").click()
        expect(page.get_by_role("button", name="Keep this lay")).to_be_visible()
        assert wrong == []
        context.close()
