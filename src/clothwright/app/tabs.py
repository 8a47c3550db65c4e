"""A browser tab at a slip: one message in flight, the newest state wins.

The page sends one change at a time and waits for its answer; the tab has one sender
that always tells the newest state, so a slow tab skips what came between. Only what
differs from what the tab has already is sent. Messages are JSON objects.

To the page
    {"is": "paper", "revision": …, "parts": {the paper's that changed}}, and then
    {"is": "state", "answer": n, "revision": …, "parts": {all others that changed}}
    {"is": "behind" | "why" | "steps" | "making" | "cost" | "understood" | "shelf" |
     "refused", "answer": n, …}
From the page
    {"n": 7, "do": "set", "of": "neckline.depth", "to": "3 1/4"}, see `room`;
    {"n": 8, "ask": "behind" | "why" | "steps" | "making" | "cost" | "write" | "shelf",
     "of": …}
    {"n": 9, "do": "lay", "hand": "look" | "find" | "move" | "keep" …}, see `bolt`;
    {"n": 10, "do": "tick", "of": "Cut the shell", "to": true}
"""

import asyncio
import contextlib
import json
from collections.abc import Awaitable, Callable, Mapping
from dataclasses import dataclass, field
from typing import Any

from clothwright.app import costing
from clothwright.app.behind import behind_field, behind_measure, why
from clothwright.app.cloth_words import behind_cloth
from clothwright.app.keeper import Refusal
from clothwright.app.marks import whereabouts
from clothwright.app.offers import shelf
from clothwright.app.replay import steps_of_draft
from clothwright.app.room import Room
from clothwright.app.table import pins
from clothwright.app.words import paragraphs
from clothwright.app.work import Work
from clothwright.app.writing import understood
from clothwright.order import OrderError
from clothwright.units import Unit

Send = Callable[[str], Awaitable[None]]

LONGEST = 20_000
"""Characters of one message from a page."""


@dataclass
class Desk:
    """A room with the tabs that look at it, and a lock: one change at a time."""

    room: Room
    head: Callable[[], dict[str, Any]]
    """Number, client, garment, dates: what heads the slip."""

    work: Work = field(init=False)
    loop: asyncio.AbstractEventLoop | None = None
    tabs: list["Tab"] = field(default_factory=list)
    lock: asyncio.Lock = field(default_factory=asyncio.Lock)

    def __post_init__(self) -> None:
        self.work = Work(self.room)
        self.work.bolt.news = self.wake_soon

    def wake_soon(self) -> None:
        """The same from another thread, as soon as the loop comes to it."""
        if self.loop is not None:
            with contextlib.suppress(RuntimeError):  # the app is being closed
                self.loop.call_soon_threadsafe(self.wake)

    def wake(self) -> None:
        """Let every tab tell the newest state."""
        for tab in self.tabs:
            tab.news.set()


@dataclass
class Tab:
    """One connection of one page."""

    desk: Desk
    send: Send
    unit: Unit
    news: asyncio.Event = field(default_factory=asyncio.Event)
    gone: asyncio.Event = field(default_factory=asyncio.Event)
    """Set when the slip is no longer there."""

    had: dict[str, tuple[Any, str]] = field(default_factory=dict)
    """What the page has, by part, and as it was sent."""

    answered: int = 0
    refused: Refusal | None = None

    async def tell(self) -> None:
        """Send the newest state whenever there is news, until cancelled."""
        while True:
            await self.news.wait()
            self.news.clear()
            if said := self.paper():
                await self.send(said)
            await self.send(self.changes())

    def paper(self) -> str:
        """What changed of the paper, which is told first: a hand that pulls waits for
        the line, not for the sentences. Blank when nothing did."""
        out = self._fresh(paper(self.desk, self.unit))
        if not out:
            return ""
        revision = self.desk.room.revision
        return f'{{"is": "paper", "revision": {revision}, "parts": {_joined(out)}}}'

    def changes(self) -> str:
        """The parts of the state that this page does not have yet, as a message."""
        parts = paper(self.desk, self.unit) | words(self.desk, self.unit)
        out = self._fresh(parts)
        for name in [n for n in self.had if n not in parts]:
            del self.had[name]
            out.append(f"{json.dumps(name)}: null")
        head: dict[str, Any] = {
            "is": "state",
            "answer": self.answered,
            "revision": self.desk.room.revision,
        }
        if self.refused is not None:
            head["refused"] = self.refused.plain()
            self.refused = None
        said = json.dumps(head, ensure_ascii=False).removesuffix("}")
        return f'{said}, "parts": {_joined(out)}}}'

    def _fresh(self, parts: Mapping[str, Any]) -> list[str]:
        """Those of some parts that the page does not have so, as JSON members."""
        out: list[str] = []
        for name, value in parts.items():
            old, had = self.had.get(name, (None, ""))
            if value is old and had:  # a piece that stands is the very same thing
                continue
            text = json.dumps(value, ensure_ascii=False)
            self.had[name] = value, text
            if text != had:
                out.append(f"{json.dumps(name)}: {text}")
        return out

    async def hear(self, text: str) -> None:
        """Do what a message asks; whatever it holds, it is answered with a sentence."""
        number = 0
        try:
            message = _message(text)
            number = int(message.get("n", 0))
            if "ask" in message:
                answer = await self._ask(message)
                await self._answer(number, answer)
                return
            if message.get("do") == "unit":
                self.unit = Unit.IN if message.get("to") == "in" else Unit.CM
                self.answered = number
                self.news.set()
                return
            async with self.desk.lock:
                self.refused = await asyncio.to_thread(self._change, message)
            self.answered = number
            self.desk.wake()
        except (OrderError, ValueError, TypeError, OverflowError) as e:
            said = str(e) if isinstance(e, OrderError) else "This cannot be read."
            await self._answer(number, {"is": "refused", "of": "", "say": said})

    def _change(self, message: Mapping[str, Any]) -> Refusal | None:
        """Make a change, unless it comes late to a slip that moved on."""
        room = self.desk.room
        if message.get("late") and message.get("on") != room.revision:
            mine = {k: v for k, v in message.items() if k not in ("n", "late", "on")}
            changed = self.desk.head().get("changed", "")
            when = f", at {changed}" if changed else ""
            return Refusal(
                str(message.get("of", "")),
                f"This slip was changed meanwhile{when}.",
                {**mine, "say": "Keep mine"},
            )
        return self.desk.work.change(message)

    async def _ask(self, message: Mapping[str, Any]) -> dict[str, Any]:
        async with self.desk.lock:
            return await asyncio.to_thread(self._found, message)

    def _found(self, message: Mapping[str, Any]) -> dict[str, Any]:
        reading = self.desk.room.reading(self.unit)
        of, ask = str(message.get("of", "")), message.get("ask")
        if ask == "behind":
            if of.startswith("m:"):
                found = behind_measure(reading, of.removeprefix("m:"))
            elif of.startswith("cloth:"):
                found = behind_cloth(reading, self.desk.room.order.cloths, of)
            elif of.startswith("cost:"):
                found = costing.behind_cost(self.desk.work.wish(), of)
            else:
                kind, _, name = of.rpartition(".")
                found = behind_field(reading, kind, name)
            return {"is": "behind", "of": of, **found}
        if ask == "why":
            return {"is": "why", **why(reading, of)}
        if ask == "steps":
            return {"is": "steps", "steps": steps_of_draft(reading)}
        if ask == "making":
            return {"is": "making", **self.desk.work.making_data()}
        if ask == "cost":
            found = self.desk.work.cost_data()
            self.desk.wake_soon()
            return {"is": "cost", **found}
        if ask == "shelf":
            return {"is": "shelf", "parts": shelf(reading.features)}
        if ask == "write":
            return {"is": "understood", **understood(reading, str(message.get("text")))}
        raise OrderError(f"the slip cannot be asked for {ask}")

    async def _answer(self, number: int, message: dict[str, Any]) -> None:
        message["answer"] = number
        await self.send(json.dumps(message, ensure_ascii=False))


def _joined(members: list[str]) -> str:
    return f"{{{', '.join(members)}}}"


def _message(text: str) -> Mapping[str, Any]:
    if len(text) > LONGEST:
        raise OrderError("a message is longer than any change can be")
    found = json.loads(text)
    if not isinstance(found, dict):
        raise OrderError("a message is an object")
    return found


def paper(desk: Desk, unit: Unit) -> dict[str, Any]:
    """What lies on the table, by part."""
    room = desk.room
    reading = room.reading(unit)
    parts: dict[str, Any] = {
        "places": room.paper["places"],
        "rows": room.paper["rows"],
        "pins": pins(reading),
        "lifted": reading.draft is None,
    }
    for kind, things in (
        ("piece", room.paper["pieces"]),
        ("seam", room.paper["seams"]),
        ("under", room.under),
    ):
        parts.update({f"{kind} {code}": thing for code, thing in things.items()})
    return parts


def words(desk: Desk, unit: Unit) -> dict[str, Any]:
    """All else that a page shows of a slip, by part."""
    room = desk.room
    reading = room.reading(unit)
    undo, redo = room.keeper.can()
    parts: dict[str, Any] = {
        "head": {**desk.head(), "unit": unit.value},
        "hand": {
            "basting": room.basting,
            "tried": len(room.tried),
            "unpick": undo or bool(room.tried) or room.basting,
            "again": redo and not room.tried,
            "said": room.said,
        },
        "findings": []
        if reading.draft is None
        else whereabouts(reading.draft, (*reading.draft.findings, *reading.found)),
    }
    told = {**paragraphs(reading), **desk.work.paragraphs(reading)}
    for name, sentences in told.items():
        parts[f"slip {name}"] = sentences
    parts.update(desk.work.parts(unit))
    return parts
