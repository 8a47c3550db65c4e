"""A browser tab's messages: what is told, what is refused, and floods of nonsense."""

import asyncio
import gc
import json
import random
import tracemalloc
from typing import Any

import pytest

from clothwright.app.changes import change
from clothwright.app.room import Room
from clothwright.app.tabs import Desk, Tab
from clothwright.units import Unit


class Page:
    """A page that keeps what it is told, as the script in the browser does."""

    def __init__(self) -> None:
        self.heard: list[dict[str, Any]] = []
        self.parts: dict[str, Any] = {}

    async def send(self, text: str) -> None:
        message = json.loads(text)
        self.heard.append(message)
        if message["is"] == "state":
            for name, value in message["parts"].items():
                if value is None:
                    self.parts.pop(name, None)
                else:
                    self.parts[name] = value


def at(room: Room, unit: Unit = Unit.IN) -> tuple[Desk, Tab, Page]:
    desk = Desk(room, lambda: {"client": "Brida Hollin"})
    page = Page()
    tab = Tab(desk, page.send, unit)
    desk.tabs.append(tab)
    return desk, tab, page


async def hear(tab: Tab, page: Page, message: dict[str, Any]) -> dict[str, Any]:
    """Give a message and let the tab tell its news; the last thing it said."""
    await tab.hear(json.dumps(message))
    if tab.news.is_set():
        tab.news.clear()
        await tab.send(tab.changes())
    return page.heard[-1]


def test_a_new_page_gets_everything_and_then_only_what_changed(room: Room) -> None:
    async def go() -> None:
        _, tab, page = at(room)
        first = json.loads(tab.changes())
        assert {"head", "places", "slip Style", "piece FC", "seam S1"} <= set(
            first["parts"]
        )
        op = {"n": 1, "do": "set", "of": "peplum.length", "to": "7"}
        told = await hear(tab, page, op)
        pieces = {p for p in told["parts"] if p.startswith("piece ")}
        assert pieces == {"piece PF", "piece PB"}
        assert told["answer"] == 1

    asyncio.run(go())


def test_the_paper_is_told_before_the_words(room: Room) -> None:
    """In one message with all its pieces, unanswered; then all else with the answer;
    nothing of it twice, and no word of paper where none changed."""

    async def go() -> None:
        _, tab, page = at(room)
        telling = asyncio.create_task(tab.tell())
        tab.news.set()
        op = {"n": 1, "do": "set", "of": "peplum.length", "cm": 20.0, "live": True}
        turn = {"n": 2, "do": "unit", "to": "cm"}
        for message, said in ((None, 2), (op, 4), (turn, 5)):
            if message:
                await tab.hear(json.dumps(message))
            while len(page.heard) < said:
                await asyncio.sleep(0.01)
        telling.cancel()
        first, rest, paper, words, turned = page.heard
        assert [m["is"] for m in page.heard] == [*["paper", "state"] * 2, "state"]
        assert {"piece FC", "seam S1", "places", "pins"} <= set(first["parts"])
        assert "slip Style" in rest["parts"] and not set(first["parts"]) & set(
            rest["parts"]
        )
        assert {"piece PF", "piece PB"} <= set(paper["parts"])
        assert "places" not in paper["parts"], "nothing is moved aside in a pull"
        assert "answer" not in paper and words["answer"] == 1
        assert not any(p.startswith("piece ") for p in turned["parts"])

    asyncio.run(asyncio.wait_for(go(), 30))


def test_two_tabs_of_one_slip_end_up_the_same(room: Room) -> None:
    async def go() -> None:
        desk, a, one = at(room)
        two = Page()
        b = Tab(desk, two.send, Unit.IN)
        desk.tabs.append(b)
        for tab in (a, b):
            await tab.send(tab.changes())
        await hear(a, one, {"n": 1, "do": "set", "of": "neckline.depth", "to": "4"})
        assert b.news.is_set()
        await b.send(b.changes())
        await hear(b, two, {"n": 1, "do": "leave", "kind": "tightening"})
        await a.send(a.changes())
        assert one.parts == two.parts

    asyncio.run(go())


def test_a_late_change_to_a_slip_that_moved_on_is_asked_about(room: Room) -> None:
    async def go() -> None:
        _, tab, page = at(room)
        old = room.revision
        await hear(tab, page, {"n": 1, "do": "set", "of": "peplum.length", "to": "7"})
        late = {"do": "set", "of": "peplum.length", "to": "8", "late": True, "on": old}
        told = await hear(tab, page, {"n": 2, **late})
        assert "meanwhile" in told["refused"]["say"]
        assert told["refused"]["nearest"]["say"] == "Keep mine"
        told = await hear(tab, page, {"n": 3, **told["refused"]["nearest"]})
        assert "refused" not in told

    asyncio.run(go())


@pytest.mark.parametrize(
    "text",
    [
        "",
        "null",
        "[]",
        "{",
        '"set"',
        "NaN",
        '{"do": null}',
        '{"do": "set"}',
        '{"do": "set", "of": "neckline.depth"}',
        '{"do": "set", "of": "neckline.depth", "cm": "wide"}',
        '{"do": "set", "of": "neckline.depth", "cm": NaN}',
        '{"do": "set", "of": "neckline.depth", "cm": 1e400}',
        '{"do": "set", "of": "neckline.shape", "cm": 3}',
        '{"do": "set", "of": ".", "cm": 3}',
        '{"do": "set", "of": ["neckline.depth"], "cm": 3}',
        '{"do": "choose", "of": "neckline.shape", "to": {"a": 1}}',
        '{"do": "choose", "of": "neckline.shape", "to": null}',
        '{"do": "add", "kind": "neckline"}',
        '{"do": "add", "kind": "lining", "with": 5}',
        '{"do": "add", "kind": "lining", "with": {"mode": [1]}}',
        '{"do": "measure", "of": "m:ZZ", "to": "3"}',
        '{"do": "measure", "of": "m:W", "to": "a hand"}',
        '{"ask": "behind", "of": "nothing"}',
        '{"ask": "behind", "of": 7}',
        '{"ask": "why", "of": ""}',
        '{"ask": "why", "of": "../../etc"}',
        '{"ask": "write", "text": "🪡🧵 \\u0000"}',
        '{"n": "seven", "ask": "why", "of": "Dm"}',
        '{"n": 1e300, "ask": "why", "of": "Dm"}',
    ],
)
def test_every_message_is_answered(room: Room, text: str) -> None:
    async def go() -> None:
        _, tab, page = at(room)
        await tab.hear(text)
        assert page.heard or tab.news.is_set()
        for said in page.heard:
            assert "Traceback" not in json.dumps(said)
        tab.news.clear()
        told = await hear(tab, page, {"n": 5, "ask": "why", "of": "Dm"})
        assert told["is"] == "why"  # the tab still answers

    asyncio.run(go())


def test_ten_thousand_random_messages_leave_it_whole(room: Room) -> None:
    """No traceback, no wedge, memory flat: most are nonsense, some are real changes."""
    chance = random.Random(11)
    dos = ["set", "choose", "rule", "baste", "stitch", "unpick", "again", "measure", ""]
    ofs = ["neckline.depth", "neckline.shape", "peplum.length", "m:W", "x.y", "", "FC"]
    values = ["4", "3 1/8", "", "V", -1, 1e9, None, [], {}, "∞", "a" * 500, True]
    asks = ["behind", "why", "write", "steps?", None]

    def message() -> str:
        if chance.random() < 0.6:
            return "".join(chr(chance.randrange(32, 0x2FF)) for _ in range(20))
        body: dict[str, Any] = {"n": chance.choice([1, 2, -5, "x", None, 1.5])}
        if chance.random() < 0.5:
            body["ask"] = chance.choice(asks)
        else:
            body["do"] = chance.choice(dos)
            body["live"] = chance.random() < 0.9
        body["of"] = chance.choice(ofs if chance.random() < 0.08 else ["x.y", "", 3])
        body[chance.choice(["to", "cm", "text", "kind", "with"])] = chance.choice(
            values
        )
        return json.dumps(body)

    async def go() -> None:
        desk, tab, page = at(room)
        tracemalloc.start()
        sizes = []
        for i in range(10_000):
            page.heard.clear()
            await tab.hear(message())
            tab.news.clear()
            if i in (3_000, 9_999):
                gc.collect()
                sizes.append(tracemalloc.get_traced_memory()[0])
        tracemalloc.stop()
        assert sizes[1] - sizes[0] < 3_000_000
        change(desk.room, {"do": "stitch"})
        told = await hear(tab, page, {"n": 9, "ask": "why", "of": "Dm"})
        assert told["is"] == "why"

    asyncio.run(go())
