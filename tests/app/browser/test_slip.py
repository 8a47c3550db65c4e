"""The app in a real browser: a newcomer's path, live words, what an order says."""

import re
from pathlib import Path
from urllib.parse import urlsplit

from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, Page, expect

from ..browsing import (
    IN_BROWSER,
    Line,
    new_slip,
    outline,
    served,
    settled,
    watched,
    word,
)

pytestmark = IN_BROWSER


HERE = Path(__file__).parent


def test_from_an_empty_book_to_a_printed_pattern(
    chromium: Browser, tmp_path: Path
) -> None:
    with served(tmp_path / "book.db") as home:
        context = chromium.new_context(accept_downloads=True)
        page = context.new_page()
        wrong = watched(page)
        page.goto(home)
        expect(page.get_by_text("Who is it for?")).to_be_visible()
        page.get_by_role("link", name="A new client").click()
        page.get_by_label("Her name").fill("Thea Marsh")
        page.get_by_role("button", name="Write it").click()
        for code, figure in (
            ("B", "36 1/2"),
            ("W", "29"),
            ("H", "39 1/2"),
            ("HT", "65 1/2"),
            ("NWB", "16 1/4"),
        ):
            page.locator(f"#m-{code}").fill(figure)
        page.get_by_role("button", name="Write them on the card").click()
        page.get_by_label("The style to start from").select_option("peplum-top")
        page.get_by_role("button", name="Write the slip").click()
        page.wait_for_selector("[data-code=FC]", state="attached")
        settled(page, "seams meet")
        expect(page.locator("#sentences")).to_contain_text("Estimated, not measured")
        page.get_by_role("link", name="Print the pattern").click()
        expect(page.locator("#count")).to_have_text(re.compile(r"\d+ sheets"))
        with page.expect_download() as got:
            page.get_by_role("button", name="Save it").click()
        assert got.value.path().read_bytes().startswith(b"%PDF")
        assert wrong == []
        context.close()


def test_the_tape_is_pulled_stepped_and_written(page: Page, home: str) -> None:
    new_slip(page, home)
    before = outline(page, "FC")
    page.locator("[data-of='neckline.depth']").first.click()
    strip = page.locator(".strip")
    expect(strip).to_be_focused()
    box = strip.bounding_box()
    assert box
    page.mouse.move(box["x"] + 100, box["y"] + 20)
    page.mouse.down()
    page.mouse.move(box["x"] + 69, box["y"] + 20, steps=4)
    page.mouse.up()
    settled(page, "was 3 1/8 in")
    assert word(page, "neckline.depth") != "3 1/8 in"
    assert outline(page, "FC") != before
    strip.press("ArrowRight")
    strip.press("Home")
    settled(page, "as the rule says")
    page.locator(".pull .typed").fill("3 1/2")
    page.locator(".pull .typed").press("Enter")
    settled(page, "3 1/2 in")
    page.keyboard.press("Escape")
    expect(strip).to_have_count(0)
    for _ in range(3):
        page.locator("#unpick").click()
    page.get_by_role("button", name="Again", exact=True).click()
    settled(page, "Made again")


def test_each_live_word_opens(page: Page, home: str) -> None:
    new_slip(page, home)
    names = page.locator("[data-name=Style] [data-opens=rest]")
    for i in range(names.count()):
        names.nth(i).click()
    words = page.locator(
        "[data-name=Style] [data-opens=tape], [data-name=Style] [data-opens=choice]"
    )
    count = words.count()
    assert count > 25
    for i in range(count):
        words.nth(i).click()
        expect(page.locator(".pull")).to_have_count(1)
        page.keyboard.press("Escape")
        expect(page.locator(".pull")).to_have_count(0)
    page.locator("[data-name=Measures] .subject").click()
    page.locator("[data-of=card]").first.click()
    page.locator("[data-of='m:W']").first.click()
    page.locator(".pull .typed").fill("29 1/4")
    page.locator(".pull .typed").press("Enter")
    settled(page, "Waist 29 1/4 in")


def test_a_choice_is_a_drawing(page: Page, home: str) -> None:
    new_slip(page, home)
    page.locator("[data-of='neckline.shape']").first.click()
    before = outline(page, "FC")
    page.locator(".choose button", has_text="round").click()
    settled(page, "round, was boat")
    expect(page.locator(".choose [aria-pressed=true]")).to_have_text("round")
    assert outline(page, "FC") != before


def test_what_cannot_be_drawn_offers_the_nearest(page: Page, home: str) -> None:
    new_slip(page, home)
    before = outline(page, "BC")
    page.locator("[data-of='low open back.depth']").first.click()
    page.locator(".pull .typed").fill("14")
    page.locator(".pull .typed").press("Enter")
    refusal = page.locator("#refusal")
    expect(refusal).to_be_visible()
    assert outline(page, "BC") == before
    refusal.get_by_role("button", name="Make it").click()
    settled(page, "seams meet")
    expect(refusal).to_be_hidden()
    assert outline(page, "BC") != before


def test_baste_stitch_unpick(page: Page, home: str) -> None:
    address = new_slip(page, home)
    page.get_by_role("button", name="Baste").click()
    page.locator("[data-of='peplum.length']").first.click()
    page.locator(".pull .typed").fill("8")
    page.locator(".pull .typed").press("Enter")
    expect(page.locator("#basted")).to_contain_text("One change is basted")
    expect(page.locator("[data-of='peplum.length']").first).to_have_class("w thread")
    expect(page.locator("[data-code=PF] .beneath")).to_have_count(1)
    page.goto(address)
    expect(page.locator("#basted")).to_contain_text("One change is basted")
    page.get_by_role("button", name="Stitch it").click()
    expect(page.locator("#basted")).to_be_hidden()
    expect(page.locator("[data-of='peplum.length']").first).to_have_class("w ink")
    expect(page.locator(".beneath")).to_have_count(0)


def test_a_feature_is_added_left_off_and_written(page: Page, home: str) -> None:
    new_slip(page, home)
    page.keyboard.press("/")
    page.keyboard.type("lining to the edge")
    expect(page.locator(".heard")).to_contain_text("Enter adds: lining, to the edge")
    page.keyboard.press("Enter")
    expect(page.locator("[data-id=lining]")).to_be_visible()
    said = page.locator("[data-name=Style] .said").first
    expect(said).to_be_visible()  # lined to the edge and faced do not go together
    said.get_by_role("button", name="Leave off the facing").click()
    settled(page, "seams meet")
    page.locator("[data-of=lining]").first.click()
    page.locator("[data-id=lining] .rest").get_by_role(
        "button", name="Leave it off"
    ).click()
    expect(page.locator("[data-id=lining]")).to_have_count(0)


def test_all_that_could_be_added_is_seen_and_searched(page: Page, home: str) -> None:
    """The writing line stands in sight; what there is lies in parts, with what does not
    go; what is typed is asked about, and added with its word."""
    new_slip(page, home)
    line = page.locator(".more")
    expect(line).to_be_in_viewport()
    page.get_by_role("button", name="See all there is").click()
    backs = page.locator(".shelf details", has_text="Open backs and closings")
    backs.locator("summary").click()
    lacing = backs.locator("li", has_text="lacing").first
    expect(lacing).to_contain_text("Not with the loops")
    assert Axe().run(page).response["violations"] == []
    line.fill("patch pocket")
    expect(page.locator(".shelf")).to_be_hidden()
    expect(page.locator(".heard")).to_contain_text("Which of these?")
    page.locator(".heard").get_by_role("button", name="top pocket").click()
    expect(page.locator("[data-id='top pocket']")).to_be_visible()
    expect(page.locator(".heard")).to_have_text("")


def test_what_stands_against_the_order_comes_into_sight(page: Page, home: str) -> None:
    """The change is made at the head of a long slip, what it breaks stands further
    down: it is scrolled to, with its ways out. Settings stand one on a line."""
    page.set_viewport_size({"width": 1024, "height": 600})
    new_slip(page, home)
    page.evaluate("room.change({do: 'leave', kind: 'loops'})")
    settled(page, "cannot be drawn yet")
    said = page.locator("[data-name=Style] .said").first
    expect(said).to_contain_text("loops")
    expect(said).to_be_in_viewport()
    said.get_by_role("button", name="Add the loops").click()
    settled(page, "seams meet")
    page.locator("[data-of=neckline]").click()
    tops = page.locator("[data-id=neckline] .setting").evaluate_all(
        "lines => lines.map((line) => line.getBoundingClientRect().top)"
    )
    assert len(tops) > 4 and tops == sorted(set(tops))


def test_she_cuts_by_hand(page: Page, home: str) -> None:
    new_slip(page, home)
    page.keyboard.press("/")
    page.keyboard.type("by hand")
    expect(page.locator(".heard")).to_contain_text("Enter adds")
    page.keyboard.press("Enter")
    page.locator("[data-of='by hand']").click()
    page.locator("[data-of='by hand.step']").click()
    own = page.locator(".own")
    own.get_by_label("Piece", exact=True).select_option("FC")
    own.get_by_label("From, how far").fill("half")
    page.evaluate("room.paper.select('FC.panel')")  # an edge touched on the table
    expect(own.get_by_label("From, edge or mark")).to_have_value("e:panel")
    own.get_by_label("To, edge or mark").select_option("e:cf")
    own.get_by_label("To, how far").fill("6")
    own.get_by_label("The part that stays").select_option("waist")
    own.get_by_label("Code of the new piece").fill("FY")
    own.get_by_label("Name of the new piece").fill("Front yoke")
    own.get_by_role("button", name="Take this step").click()
    page.wait_for_selector("[data-code=FY]", state="attached")
    expect(own.locator(".taken")).to_contain_text("Cut the paper")
    assert Axe().run(page).response["violations"] == []
    own.get_by_role("button", name="Take out step 1").click()
    expect(page.locator("[data-code=FY]")).to_have_count(0)


def test_two_windows_at_one_slip(page: Page, home: str) -> None:
    address = new_slip(page, home)
    other = page.context.new_page()
    other.goto(address)
    other.wait_for_selector("[data-code=FC]", state="attached")
    page.locator("[data-of='peplum.length']").first.click()
    page.locator(".pull .typed").fill("9")
    page.locator(".pull .typed").press("Enter")
    for window in (page, other):  # each is told by its own line
        expect(window.locator("[data-of='peplum.length']").first).to_have_text("9 in")
    assert outline(other, "PF") == outline(page, "PF")


def test_the_line_is_lost_and_nothing_else(chromium: Browser, home: str) -> None:
    line = Line(urlsplit(home).port or 0)
    context = chromium.new_context()
    page = context.new_page()
    new_slip(page, f"http://127.0.0.1:{line.port}")
    line.cut()
    settled(page, "does not answer")
    page.evaluate("void room.change({do: 'set', of: 'peplum.length', to: '7 1/2'})")
    expect(page.locator("[data-of='peplum.length']").first).to_have_text("6 in")
    line.join()
    expect(page.locator("[data-of='peplum.length']").first).to_have_text("71⁄2 in")
    context.close()
    line.close()
