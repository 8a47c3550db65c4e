"""The lesson: the draft as a booklet, one step and one figure on a page.

Figures are at half scale, so that a pupil lays her ruler on them; what is too large for
the page is at quarter scale, or as large as it fits, and says so. Every page has room
for the pupil's own figure. It ends with every mark of the draft, its numbers, and the
words that the steps use.
"""

import json
from collections.abc import Iterator
from pathlib import Path
from typing import TypedDict

from clothwright.order import Draft
from clothwright.paper import Step
from clothwright.rules import RuleError
from clothwright.sheets.booklet import compile_to
from clothwright.sheets.drawing import scene
from clothwright.sheets.figure import KEY, Frame, Views, figure, views
from clothwright.sheets.steps import (
    how_of,
    measures_of,
    numbers_of,
    seams_walked,
    told,
    words_of,
)
from clothwright.sheets.telling import NOTHING, amount, mark_name

WIDE = 178.0
"""Width of the room for a figure on the page, mm."""

HIGH = {False: 240.0, True: 222.0}
"""Its height on A4, and on US Letter, mm, below one line of words."""

SOURCE = 5.0
"""Height of a line that says where a number comes from, mm."""

LINE, LETTERS_IN_LINE = 6.0, 76
"""Height of a line of the instruction, mm, and what goes into one."""

AIR = 12.0
"""Of it, what is left round the drawing for the names of marks, mm."""

HALF, QUARTER = 5.0, 2.5
"""Millimetres for a centimetre."""

LETTERS = 3.6

_NET = (
    "Every line is a net line; the grain is marked and allowances are added when the "
    "draft is done."
)
"""Said on the title page."""

_SEAM = Frame(80.0, 58.0)
"""The figure of a seam that is walked; six stand on a page."""


def write_lesson(draft: Draft, target: Path, *, letter: bool = False) -> None:
    """Write the booklet as PDF (A4, or US Letter). Raises SheetError."""
    order = draft.order
    steps = list(_pages(draft, HIGH[letter]))
    texts = [s["text"] for s in steps]
    texts += [w["text"] for s in steps for w in s["walked"]]
    data = {
        "title": order.garment,
        "client": order.body.client,
        "number": order.number,
        "paper": "us-letter" if letter else "a4",
        "measures": measures_of(draft),
        "steps": steps,
        "marks": [
            {"name": mark_name(s.makes), "says": mark_name(s.says), "number": i}
            for i, _, s, _ in told(draft)
            if s.at is not None
        ],
        "numbers": numbers_of(draft),
        "net": _NET,
        "words": words_of((_NET, *texts)),
    }
    compile_to("lesson.typ", json.dumps(data), target)


class _Page(TypedDict):
    """One step as the template takes it."""

    number: int
    part: str
    text: str
    svg: str
    wide: float
    scale: str
    alt: str
    because: list[str]
    walked: list[dict[str, str]]
    blanks: int


def _pages(draft: Draft, high: float) -> Iterator[_Page]:
    sides = {"": draft.steps, "left side": draft.left.steps if draft.left else ()}
    said = draft.order.said
    for number, (index, side, step, text) in enumerate(told(draft), 1):
        steps = sides[side]
        because = list(_because(draft.left if side and draft.left else draft, step))
        below = high - LINE * (len(text) // LETTERS_IN_LINE) - SOURCE * len(because)
        frame, scale = _frame(views(scene(steps, index - 1, said)), below)
        part = (step.part or "draft").capitalize()
        yield {
            "number": number,
            "part": f"{part}, {side}" if side else part,
            "text": text,
            "svg": figure(steps, index - 1, said, frame) if frame else "",
            "wide": frame.width if frame else 0.0,
            "scale": scale,
            "alt": f"{step.makes}, {step.says}",
            "because": because,
            "walked": seams_walked(steps, index, draft.order.unit, _SEAM),
            "blanks": sum(abs(a.value) > 0.005 for a in step.amounts[:3]),
        }


def _because(draft: Draft, step: Step) -> Iterator[str]:
    """Where the numbers of a step come from: "16¼ in is yW, level of the waist:
    NWB"."""
    unit = draft.order.unit
    for a in step.amounts:
        if not a.key or abs(a.value) < NOTHING:
            continue
        try:
            r = draft.numbers.why(a.key)
        except RuleError:
            continue
        how = how_of(r, unit)
        said = amount(a, unit, draft.numbers)
        yield f"{said} is {r.symbol}, {r.name}" + (f": {how}" if how else "")


def _frame(found: Views | None, most: float) -> tuple[Frame | None, str]:
    """The frame of a figure, at most so high, and its scale in words: the whole at half
    scale, else what the step does; where that is too large, at quarter scale."""
    if found is None:
        return None, ""
    for scale, words in ((HALF, "half scale"), (QUARTER, "quarter scale")):
        for box, key in ((found.whole, 0.0), (found.near, KEY)):
            w = max(box.right - box.left, 4.0) * scale + AIR + key
            h = max(box.bottom - box.top, 4.0) * scale + AIR
            if w <= WIDE and h <= most:
                return Frame(max(w, 60.0), max(h, 40.0), scale, LETTERS), words
    return Frame(WIDE, most, 0.0, LETTERS), "not to scale"
