"""The app in a real browser: a newcomer's path, live words, hands on the paper."""

import re
from collections.abc import Iterator
from pathlib import Path
from urllib.parse import urlsplit

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, FilePayload, Page, expect

from books import picture

from .browsing import CHROMIUM, Line, browser, served, watched

HERE = Path(__file__).parent

pytestmark = [
    pytest.mark.skipif(
        not Path(CHROMIUM).exists(),
        reason="no browser here; install Debian's package chromium",
    ),
    pytest.mark.xdist_group("browser"),
]


@pytest.fixture(scope="module")
def chromium() -> Iterator[Browser]:
    with browser() as opened:
        yield opened


@pytest.fixture(scope="module")
def home(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    with served(tmp_path_factory.mktemp("book") / "book.db") as address:
        yield address


@pytest.fixture
def page(chromium: Browser) -> Iterator[Page]:
    context = chromium.new_context(viewport={"width": 1440, "height": 900})
    page = context.new_page()
    wrong = watched(page)
    yield page
    context.close()
    assert wrong == []


def new_slip(page: Page, home: str) -> str:
    """A slip of the made-up client, open; its address."""
    page.goto(home)
    page.get_by_role("button", name="try it with a made-up client").click()
    page.wait_for_selector("[data-code=FC]", state="attached")
    expect(page.locator("#edge-live")).to_contain_text("seams meet")
    return page.url


def word(page: Page, of: str) -> str:
    return page.locator(f"[data-of='{of}']").first.inner_text()


def settled(page: Page, text: str) -> None:
    """Wait until the table's line says so."""
    expect(page.locator("#edge-live")).to_contain_text(text)


def outline(page: Page, code: str) -> str:
    found = page.locator(f"[data-code={code}] .cutout").get_attribute("d")
    assert found
    return found


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
        expect(page.locator("#count")).to_have_text(
            re.compile(r"\d+ sheets"), timeout=20000
        )
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
    expect(page.locator(".flag")).to_contain_text("1/8 in to ease", timeout=8000)
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


def test_two_windows_at_one_slip(page: Page, home: str) -> None:
    address = new_slip(page, home)
    other = page.context.new_page()
    other.goto(address)
    other.wait_for_selector("[data-code=FC]", state="attached")
    page.locator("[data-of='peplum.length']").first.click()
    page.locator(".pull .typed").fill("9")
    page.locator(".pull .typed").press("Enter")
    expect(other.locator("[data-of='peplum.length']").first).to_have_text("9 in")
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
    expect(page.locator("[data-of='peplum.length']").first).to_have_text(
        "71⁄2 in", timeout=15000
    )
    context.close()
    line.close()


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
    page.wait_for_timeout(300)
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
    page.wait_for_timeout(500)
    found = Axe().run(page).response["violations"]
    assert [(v["id"], [n["html"][:90] for n in v["nodes"]][:3]) for v in found] == []


def failing_slip(page: Page, home: str) -> None:
    """A slip with things to mend: at a shoulder, at the open back, behind."""
    new_slip(page, home)
    for of, to in (
        ("sleeveless armhole.narrowed", "1 1/2"),
        ("low open back.top", "0"),
        ("panel behind.overlap", "1 7/8"),
    ):
        page.evaluate(
            "([of, to]) => room.change({do: 'set', of, to, unit: 'in'})", [of, to]
        )
    settled(page, "to mend")


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


@pytest.fixture
def phone(chromium: Browser) -> Iterator[Page]:
    context = chromium.new_context(
        viewport={"width": 390, "height": 844}, has_touch=True, is_mobile=True
    )
    page = context.new_page()
    wrong = watched(page)
    yield page
    context.close()
    assert wrong == []


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
    page.wait_for_timeout(150)  # until the last of them is heard
    wide = tall(page, "FC")
    assert wide == pytest.approx(3 * before, rel=0.02)  # 40 px became 120
    x = page.locator("[data-code=FC] .cutout").bounding_box()
    for i in range(1, 9):
        fingers("touchMove", (140 + 4 * i, 180), (260 + 4 * i, 180))
    fingers("touchEnd")
    page.wait_for_timeout(150)
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
