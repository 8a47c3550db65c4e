"""The pictures of the app in docs/pictures: every place, at a desk and on a phone.

python bench/pictures.py [FOLDER]
"""

import io
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent.parent / "tests"))

from PIL import Image
from playwright.sync_api import Page

from app.browsing import browser, served

FOLDER = Path(__file__).parent.parent / "docs" / "pictures"
SIZES = {"desktop": (1440, 900), "phone": (390, 844)}


def places(page: Page, home: str) -> Iterator[str]:
    """Every place, with something in hand."""
    page.goto(home)
    page.get_by_role("button", name="try it with a made-up client").click()
    page.wait_for_selector("[data-code=FC]", state="attached")
    page.wait_for_timeout(1200)
    slip = page.url
    yield "slip"
    page.evaluate("room.slip.show('neckline.depth')")
    page.wait_for_selector(".strip")
    yield "tape"
    page.evaluate("room.paper.select('FC.panel')")
    page.evaluate("room.why('FC.panel')")
    page.wait_for_selector(".chain li")
    yield "edge"
    page.evaluate("room.slip.close(); room.paper.select(null)")
    page.evaluate("room.unfold(true)")
    yield "whole"
    page.evaluate("room.unfold(false)")
    for of, to in (
        ("sleeveless armhole.narrowed", "1 1/2"),
        ("low open back.top", "0"),
    ):
        page.evaluate(
            "([of, to]) => room.change({do: 'set', of, to, unit: 'in'})", [of, to]
        )
    page.wait_for_selector(".ticket", state="attached")
    page.evaluate("room.paper.marks.next()")
    yield "checks"
    page.evaluate("room.paper.marks.close(); room.slip.stand('Steps')")
    page.wait_for_selector(".lesson")
    page.evaluate("room.steps.i = 29; room.steps.show()")
    yield "steps"
    page.evaluate("room.steps.teach(true)")
    yield "teach"
    page.evaluate("room.steps.teach(false)")
    for _ in range(2):
        page.evaluate("room.change({do: 'unpick'})")
    page.evaluate("room.slip.stand('Cloth')")
    page.wait_for_selector("[data-key=keep]", state="attached", timeout=120000)
    page.evaluate("room.cloth.nodes[1].g.focus()")
    page.evaluate("room.cloth.move(1, {by: [-4, 3]})")
    page.wait_for_selector(".laid.wrong")
    yield "cloth"
    page.evaluate("room.cloth.hand('back')")
    page.evaluate("room.slip.stand('Making')")
    page.wait_for_selector(".ops li")
    for title in ("Cut the shell", "Mark notches, darts and points"):
        page.evaluate("of => room.change({do: 'tick', of, to: true})", title)
    yield "making"
    page.evaluate("room.slip.stand('Cost')")
    page.wait_for_selector("#cost table", timeout=120000)
    yield "cost"
    for name, path in (
        ("slips", home),
        ("card", f"{home}/cards/1"),
        ("states", f"{slip}/past"),
        ("forget", f"{home}/forget/figure/1?back=/cards/1"),
        ("shelf", f"{home}/shelf"),
        ("print", f"{slip}/print"),
        ("quote", f"{slip}/print?sheet=quote.pdf"),
    ):
        page.goto(path)
        if name in ("print", "quote"):
            page.wait_for_selector("#pages img", timeout=30000)
        yield name


def main() -> None:
    """Take them all."""
    folder = Path(sys.argv[1]) if len(sys.argv) > 1 else FOLDER
    folder.mkdir(parents=True, exist_ok=True)
    with browser() as chromium:
        for size, (width, height) in SIZES.items():
            with (
                tempfile.TemporaryDirectory() as book,
                served(Path(book) / "book.db") as home,
            ):
                phone = size == "phone"
                page = chromium.new_page(
                    viewport={"width": width, "height": height},
                    has_touch=phone,
                    is_mobile=phone,
                )
                for name in places(page, home):
                    page.wait_for_timeout(700)
                    seen = Image.open(io.BytesIO(page.screenshot()))
                    small = seen.convert("RGB").quantize(256, kmeans=2)
                    small.save(folder / f"{name}-{size}.png", optimize=True)
                page.close()


if __name__ == "__main__":
    main()
