"""The drafting sheet: measures, numbers, and numbered hand steps with a figure each."""

import json
import re
from collections.abc import Iterator
from itertools import groupby
from pathlib import Path
from typing import TypedDict

from clothwright.body.measures import measures
from clothwright.order import Draft
from clothwright.order.telling import show
from clothwright.paper import Step
from clothwright.rules import Hand, Kind, Reason, RuleError
from clothwright.sheets.booklet import compile_to
from clothwright.sheets.figure import figure
from clothwright.sheets.telling import tell
from clothwright.units import Unit, format_angle, pretty_length, retold

WORDS = (
    ("apex, point", "the end of a dart inside the piece"),
    ("block", "the fitted draft before the style is drawn; a mark of it that moves"),
    ("bust line", "the level of the armhole's foot"),
    ("grain", "the direction of the warp, marked by the long arrow"),
    ("hb, hf", "shoulder neck points of back and front"),
    ("net line", "the line that is stitched; allowances are added last"),
    ("panel", "a piece between two princess lines, or between one and an edge"),
    ("pitch", "where the armhole stands upright beside the arm crease"),
    ("square to", "at a right angle to"),
    ("take in", "what a dart or seam makes the cloth narrower"),
    ("true", "to redraw edges that will be sewn so that they agree"),
    ("walk", "to measure both sides of a seam together, notch by notch"),
)

_OF_SOME = ("block", "bust line", "hb, hf", "panel", "pitch")
"""Words that not every garment has a use for."""


class _Part(TypedDict):
    """The steps of one part of the draft."""

    name: str
    steps: list[dict[str, object]]


def write_steps(draft: Draft, target: Path, *, letter: bool = False) -> None:
    """Write the drafting sheet as PDF (A4, or US Letter). Raises SheetError."""
    compile_to("steps.typ", json.dumps(_data(draft, letter)), target)


def steps_text(draft: Draft) -> list[str]:
    """The steps as plain numbered lines."""
    return [
        f"{i}. {'Left side: ' if side else ''}{text}"
        for i, side, _, text in told(draft)
    ]


def told(draft: Draft) -> Iterator[tuple[int, str, Step, str]]:
    """Every step with its number, whose side it is, and its words; of the left side
    those that are other than the right's."""
    unit, said = draft.order.unit, []
    for i, s in enumerate(draft.steps, 1):
        said.append(tell(s, unit, draft.numbers, draft.sheet))
        yield i, "", s, said[-1]
    if draft.left is not None:
        other = draft.left
        for i, s in enumerate(other.steps, 1):
            text = tell(s, unit, other.numbers, other.sheet)
            if i > len(said) or text != said[i - 1]:
                yield i, "left side", s, text


def _data(draft: Draft, letter: bool) -> dict[str, object]:
    order = draft.order
    unit = order.unit
    reasons = _reasons(draft)
    rules = [r for r in reasons if r.hand not in _BODY and _counts(r)]
    parts: list[_Part] = []
    steps = {"": draft.steps, "left side": draft.left.steps if draft.left else ()}
    for (side, name), group in groupby(told(draft), key=lambda t: (t[1], t[2].part)):
        named = (name or "draft").capitalize()
        parts.append(
            {
                "name": f"{named}, {side}" if side else named,
                "steps": [
                    {
                        "number": i,
                        "text": text,
                        "svg": figure(steps[side], i - 1, order.said),
                        "alt": f"{s.makes}, {s.says}",
                    }
                    for i, _, s, text in group
                ],
            }
        )
    return {
        "title": f"{order.garment}: the draft by hand",
        "subtitle": f"{order.body.client}, order {order.number}".strip(", "),
        "footer": f"{order.garment}, {order.body.client}",
        "paper": "us-letter" if letter else "a4",
        "measures": measures_of(draft),
        "estimated": any(r.hand is Hand.ESTIMATED for r in _taken(draft)),
        "numbers": [
            {
                "symbol": r.symbol,
                "name": r.name,
                "value": _pretty(r, unit),
                "formula": retold(r.formula, unit) or _whose(r.hand),
            }
            for r in rules
        ],
        "parts": parts,
        "words": list(_words(parts, rules)),
    }


def _words(parts: list[_Part], rules: list[Reason]) -> Iterator[tuple[str, str]]:
    """Words with what they mean; those of one garment only where the sheet uses
    them."""
    said = [str(s["text"]) for p in parts for s in p["steps"]]
    text = " ".join((*said, *(r.name for r in rules)))
    for word, means in WORDS:
        if word not in _OF_SOME or any(
            re.search(rf"\b{w}", text, re.IGNORECASE) for w in word.split(", ")
        ):
            yield word, means


def measures_of(draft: Draft) -> list[dict[str, str]]:
    """The measures that a draft used: symbol, name and value."""
    unit = draft.order.unit
    return [
        {
            "symbol": r.symbol,
            "name": _measure_name(r),
            "value": ("~" if r.hand is Hand.ESTIMATED else "") + _pretty(r, unit),
        }
        for r in _taken(draft)
    ]


def _taken(draft: Draft) -> list[Reason]:
    return [r for r in _reasons(draft) if r.hand in _BODY and r.kind in _MEASURED]


def _measure_name(r: Reason) -> str:
    """The standard's term with the trade's."""
    known = measures().get(r.key)
    return known.full_name if known else r.name


def _whose(hand: Hand) -> str:
    """Who decided a number that no formula gives; a rule without one says no more."""
    return "" if hand is Hand.RULE else hand.value


def _counts(r: Reason) -> bool:
    """False for a nought that nobody chose: it changes nothing by hand."""
    return abs(r.value) > 0.005 or r.hand in (Hand.CHOICE, Hand.HOUSE)


_BODY = (Hand.TAKEN, Hand.ESTIMATED, Hand.SIZE_TABLE)
_MEASURED = (Kind.BODY, Kind.ANGLE)


def _pretty(r: Reason, unit: Unit) -> str:
    if r.kind in (Kind.LENGTH, Kind.BODY):
        return pretty_length(r.value, unit, body=r.kind is Kind.BODY)
    if r.kind is Kind.ANGLE:
        return format_angle(r.value)
    return show(r.value, r.kind, unit)


def _reasons(draft: Draft) -> list[Reason]:
    """Every number that the draft used, in the order of the graph's pages."""
    used = set(draft.used)
    out = []
    for key in draft.numbers.keys():  # noqa: SIM118
        if key not in used:
            continue
        try:
            out.append(draft.numbers.why(key))
        except RuleError:
            continue
    return out
