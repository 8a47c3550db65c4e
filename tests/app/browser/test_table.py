"""The table in a real browser: edges, pins, marks and steps, in hand and seen."""

import re
from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import FilePayload, Page, expect

from books import picture

from ..browsing import (
    IN_BROWSER,
    failing_slip,
    new_slip,
    settled,
    word,
)

pytestmark = IN_BROWSER

HERE = Path(__file__).parent


def test_an_edge_in_hand_its_mate_walk_and_why(page: Page, home: str) -> None:
    new_slip(page, home)
    page.evaluate("room.paper.select('FC.panel')")
    note = page.locator(".note.a")
    expect(note).to_contain_text("Centre front, panel")
    expect(page.locator(".glow.mate")).to_have_count(1)
    expect(page.locator(".tape .n")).to_have_count(12)  # whole inches of 12 15/16
    note.get_by_role("button", name="Why?").click()
    expect(note.locator(".chain li")).not_to_have_count(0)
    note.locator(".chain button").first.click()
    expect(page.locator(".chain li").first).to_be_visible()
    page.evaluate("room.paper.select('FC.panel')")
    page.emulate_media(reduced_motion="reduce")
    page.locator(".note.a").get_by_role("button", name="Walk it").click()
    expect(page.locator(".flag")).to_contain_text("1/8 in to ease")
    moved = page.locator("[data-code=FS]").get_attribute("transform")
    assert moved and "rotate" in moved
    page.keyboard.press("Escape")
    expect(page.locator(".flag")).to_have_count(0)
    assert "rotate" not in (
        page.locator("[data-code=FS]").get_attribute("transform") or ""
    )


def test_a_walk_lays_both_stitch_lines_together(page: Page, home: str) -> None:
    """At every point of a walk the two edges touch and run the same way."""
    new_slip(page, home)
    page.emulate_media(reduced_motion="reduce")
    worst = page.evaluate(
        """async () => {
          const { paper, walker } = room; let worst = 0;
          for (const [code, s] of paper.seams) {
            if (s.twin) continue;
            walker.go(code);
            const { fixed, moving, self } = walker.now;
            if (!self) for (const u of [0, .25, .5, .75, 1]) {
              const at = u * Math.min(fixed.length, moving.length);
              walker.show(at, 1);
              const a = fixed.at(at), b = moving.at(at);
              const g = paper.pieces.get(b.run.code).g;
              const m = g.transform.baseVal.consolidate().matrix;
              const p = new DOMPoint(b.x, b.y).matrixTransform(m);
              const [dx, dy] = [p.x - a.x - a.run.x, p.y - a.y - a.run.y];
              worst = Math.max(worst, Math.hypot(dx, dy));
            }
            walker.stop();
          }
          return worst;
        }"""
    )
    assert worst < 0.1  # mm


def test_a_pin_is_pulled(page: Page, home: str) -> None:
    new_slip(page, home)
    pin = page.locator("[data-pin='peplum.length']")
    box = pin.locator(".head").bounding_box()
    assert box
    x, y = box["x"] + box["width"] / 2, box["y"] + box["height"] / 2
    page.mouse.move(x, y)
    page.mouse.down()
    page.mouse.move(x, y + 20, steps=5)
    page.mouse.up()
    settled(page, "Length of the peplum")
    assert word(page, "peplum.length") != "6 in"
    page.locator("[data-pin='peplum.length']").focus()
    page.keyboard.press("ArrowUp")
    settled(page, "Length of the peplum")


def test_dimensions_units_and_steps(page: Page, home: str) -> None:
    new_slip(page, home)
    page.get_by_role("button", name="Dimensions").click()
    expect(page.locator("[data-code=FC] .dim")).to_have_count(6)
    page.locator("#unit").click()
    expect(page.locator("[data-of='peplum.length']").first).to_have_text("15.2 cm")
    expect(page.locator("[data-code=FC] .dim", has_text="32.8")).to_have_count(1)
    page.locator("#unit").click()
    page.locator("[data-name=Steps] .subject").click()
    lesson = page.locator(".lesson")
    expect(lesson).to_contain_text("Step 1 of")
    lesson.get_by_role("button", name="Next step").click()
    expect(lesson).to_contain_text("Step 2 of")
    lesson.get_by_role("button", name="From here by yourself").click()
    expect(lesson.get_by_role("button", name="Tell me")).to_be_visible()


def test_the_whole_body_unfolds_on_the_centre_front(page: Page, home: str) -> None:
    """The other half is the mirror image, and the fold lies on itself."""
    new_slip(page, home)
    page.get_by_role("button", name="half the body").click()
    expect(page.locator("#whole")).to_have_text("the whole body")
    found = page.evaluate((HERE / "mirrored.js").read_text())
    assert {f["code"] for f in found} >= {"BC", "BS", "FS", "FC", "PB", "PF"}
    for f in found:
        assert max(f["axes"]) - min(f["axes"]) < 0.1  # mm
        assert f["level"] < 0.1
        if f["fold"] is not None:
            assert f["axes"][0] == pytest.approx(f["fold"], abs=0.1)
    before = page.locator(".other-half .cutout").nth(0).get_attribute("d")
    page.evaluate(
        "room.change({do: 'set', of: 'low open back.depth', to: '7', unit: 'in'})"
    )
    settled(page, "7 in")
    assert page.locator(".other-half .cutout").nth(0).get_attribute("d") != before
    page.get_by_role("button", name="the whole body").click()
    expect(page.locator(".other-half .piece")).to_have_count(0)


def test_what_fails_is_marked_at_its_place(page: Page, home: str) -> None:
    failing_slip(page, home)
    tickets = page.locator(".ticket")
    expect(tickets).to_have_count(5)
    shoulder = page.get_by_role("button", name=re.compile("turns the shoulder"))
    box, edge = (
        shoulder.locator(".string").bounding_box(),
        page.locator("[data-edge='FC.shoulder']").bounding_box(),
    )
    assert box and edge  # the string is tied to the edge
    assert edge["x"] - 1 <= box["x"] <= edge["x"] + edge["width"] + 1
    assert edge["y"] - 1 <= box["y"] <= edge["y"] + edge["height"] + 1
    remark = page.locator("#remark")
    shoulder.focus()
    expect(remark).to_contain_text("Not to be cut so")
    page.keyboard.press("Enter")
    expect(remark).to_be_focused()
    page.keyboard.press("Escape")
    expect(remark).to_be_hidden()
    expect(shoulder).to_be_focused()
    shoulder.hover()
    expect(remark).to_contain_text("turns the shoulder too far")
    shoulder.click()
    remark.get_by_role("button", name="Take the edge in hand").click()
    expect(page.locator(".note.a h3")).to_have_text("Centre front, shoulder")
    shoulder.click()
    remark.get_by_role("button", name="Change it").click()
    expect(page.locator(".pull .strip")).to_be_visible()
    page.get_by_role("button", name="Show me one by one").click()
    expect(remark).to_be_focused()
    for _ in range(3):
        page.locator("#unpick").click()
    expect(tickets).to_have_count(0)
    expect(remark).to_be_hidden()


def test_an_edge_of_a_lining_is_taken_in_hand(page: Page, home: str) -> None:
    new_slip(page, home)
    to_edge = "{do: 'add', kind: 'lining', with: {mode: 'to the edge'}}"
    page.evaluate(f"room.change({to_edge})")
    page.evaluate("room.change({do: 'leave', kind: 'facing'})")
    page.wait_for_selector("[data-code='L.FC']", state="attached")
    page.evaluate("room.paper.select('L.FC.waist')")
    expect(page.locator(".note.a h3")).to_contain_text("lining, waist")
    count = page.locator(".piece").count()
    expect(page.locator("#on")).to_contain_text(f"{count} pieces")
    page.evaluate("room.why('L.FC.waist')")
    expect(page.locator(".chain li").first).to_be_visible()


def test_photos_and_notes_are_seen_beside_the_table(page: Page, home: str) -> None:
    address = new_slip(page, home)
    page.goto(f"{address}/past")
    page.get_by_label("A note").fill("<b>close</b> at the waist")
    page.get_by_role("button", name="Write it down").click()
    photo = FilePayload(name="a.png", mimeType="image/png", buffer=picture("PNG"))
    page.get_by_label("A photo").set_input_files(photo)
    page.get_by_label("What it shows").fill("the back gapes")
    page.get_by_role("button", name="Lay it here").click()
    page.goto(address)
    page.get_by_role("button", name="Photos and notes").click()
    note = page.locator(".note.b")
    expect(note).to_be_focused()
    expect(note).to_contain_text("<b>close</b> at the waist")
    note.get_by_role("button", name="the back gapes").click()
    large = page.locator("#print img")
    expect(large).to_have_attribute("alt", "the back gapes")
    assert large.evaluate("i => i.decode().then(() => i.naturalWidth)") == 48
    assert Axe().run(page).response["violations"] == []
    page.keyboard.press("Escape")
    expect(page.locator("#print")).to_be_hidden()
    note.get_by_role("button", name="Put them away").click()
    expect(note).to_have_count(0)


def test_steps_are_taught_in_large_type(page: Page, home: str) -> None:
    new_slip(page, home)
    page.locator("[data-name=Steps] .subject").click()
    told = page.locator(".lesson .told")
    size = "e => parseFloat(getComputedStyle(e).fontSize)"
    usual = told.evaluate(size)
    page.get_by_role("button", name="Teach it").click()
    expect(page.locator("#slip")).to_be_hidden()
    assert told.evaluate(size) >= 1.9 * usual
    ratio = "e => e.getBoundingClientRect().height / innerHeight"
    assert page.locator("#steps .figure").evaluate(ratio) > 0.9
    expect(page.locator(".lesson .next")).to_be_focused()
    first = told.inner_text()
    for key, step in (("ArrowRight", 2), ("PageDown", 3), ("PageUp", 2)):
        page.keyboard.press(key)
        expect(page.locator(".lesson .of")).to_contain_text(f"Step {step} of")
    assert told.inner_text() != first
    page.locator(".jump input").fill("40")
    page.locator(".jump input").press("Enter")
    expect(page.locator(".lesson .of")).to_contain_text("Step 40 of")
    cut = "e => e.scrollWidth > e.clientWidth + 1"
    assert not page.locator(".lesson").evaluate(cut)
    assert Axe().run(page).response["violations"] == []
    page.locator(".lesson .next").focus()
    page.keyboard.press("Escape")
    expect(page.locator("#slip")).to_be_visible()
    expect(page.get_by_role("button", name="Teach it")).to_be_focused()
