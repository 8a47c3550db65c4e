"""The lesson: the draft as a booklet, one step and one figure on a page.

Figures are at half scale, so that a pupil lays her ruler on them; what is too large for
the page is at quarter scale, or as large as it fits, and says so. Every page has room
for the pupil's own figure. It ends with the words that the steps use.
"""

import json
from collections.abc import Iterator
from pathlib import Path

from clothwright.order import Draft
from clothwright.sheets.booklet import compile_to
from clothwright.sheets.drawing import scene
from clothwright.sheets.figure import Frame, figure, room_of
from clothwright.sheets.steps import WORDS, measures_of, told

WIDE = 178.0
"""Width of the room for a figure on the page, mm."""

HIGH = {False: 240.0, True: 222.0}
"""Its height on A4, and on US Letter, mm, below one line of words."""

LINE, LETTERS_IN_LINE = 6.0, 76
"""Height of a line of the instruction, mm, and what goes into one."""

AIR = 12.0
"""Of it, what is left round the drawing for the names of marks, mm."""

HALF, QUARTER = 5.0, 2.5
"""Millimetres for a centimetre."""

LETTERS = 3.6


def write_lesson(draft: Draft, target: Path, *, letter: bool = False) -> None:
    """Write the booklet as PDF (A4, or US Letter). Raises SheetError."""
    order = draft.order
    data = {
        "title": order.garment,
        "client": order.body.client,
        "number": order.number,
        "paper": "us-letter" if letter else "a4",
        "measures": measures_of(draft),
        "steps": list(_pages(draft, HIGH[letter])),
        "words": WORDS,
    }
    compile_to("lesson.typ", json.dumps(data), target)


def _pages(draft: Draft, high: float) -> Iterator[dict[str, object]]:
    sides = {"": draft.steps, "left side": draft.left.steps if draft.left else ()}
    said = draft.order.said
    for number, (index, side, step, text) in enumerate(told(draft), 1):
        steps = sides[side]
        below = high - LINE * (len(text) // LETTERS_IN_LINE)
        frame, scale = _frame(room_of(scene(steps, index - 1, said)), below)
        part = (step.part or "draft").capitalize()
        yield {
            "number": number,
            "part": f"{part}, {side}" if side else part,
            "text": text,
            "svg": figure(steps, index - 1, said, frame) if frame else "",
            "wide": frame.width if frame else 0.0,
            "scale": scale,
            "alt": f"{step.makes}, {step.says}",
            "blanks": sum(abs(a.value) > 0.005 for a in step.amounts[:3]),
        }


def _frame(room: tuple[float, float] | None, most: float) -> tuple[Frame | None, str]:
    """The frame of a figure, at most so high, and its scale in words."""
    if room is None:
        return None, ""
    wide, high = (max(side, 4.0) for side in room)
    for scale, words in ((HALF, "half scale"), (QUARTER, "quarter scale")):
        w, h = wide * scale + AIR, high * scale + AIR
        if w <= WIDE and h <= most:
            return Frame(max(w, 60.0), max(h, 40.0), scale, LETTERS), words
    return Frame(WIDE, most, 0.0, LETTERS), "not to scale"
