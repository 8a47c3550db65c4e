"""The drafting sheet: measures, numbers, and numbered hand steps with a figure each."""

import json
import re
from collections.abc import Iterable, Iterator, Sequence
from itertools import groupby
from pathlib import Path
from typing import TypedDict

from clothwright.body.measures import measures
from clothwright.order import Draft
from clothwright.order.telling import show
from clothwright.paper import Step
from clothwright.rules import Hand, Kind, Reason, RuleError
from clothwright.sheets.booklet import compile_to
from clothwright.sheets.figure import SMALL, Frame, figure, svg_of
from clothwright.sheets.telling import tell
from clothwright.sheets.walked import walked
from clothwright.units import Unit, format_angle, pretty_length, retold

WORDS = (
    ("apex, point", "the end of a dart inside the piece"),
    ("bias", "the direction half way between warp and weft, in which cloth gives"),
    ("blend", "to lead two lines into one without a corner"),
    ("block", "the fitted draft before the style is drawn; a mark of it that moves"),
    ("bust line", "the level of the armhole's foot"),
    ("cap", "the upper part of a sleeve, sewn into the armhole"),
    ("dart", "a wedge of cloth folded away to a point; its two edges are its legs"),
    ("ease", "what is longer than its partner and worked in without a fold"),
    ("fold", "an edge that is laid on the fold of the cloth, so that it is cut once"),
    ("gather", "to draw up on two threads"),
    ("grain", "the direction of the warp, marked by the long arrow"),
    ("hb, hf", "shoulder neck points of back and front"),
    ("hollow", "curved towards the inside of the piece"),
    ("leg, legs", "an edge of a dart"),
    ("net line", "the line that is stitched; allowances are added last"),
    ("notch", "a short clip across the edge, to be laid on its like"),
    ("panel", "a piece between two princess lines, or between one and an edge"),
    ("pitch", "where the armhole stands upright beside the arm crease"),
    ("plumb", "straight down, as a weight hangs"),
    ("redraw", "to draw an edge anew; the old line no longer counts"),
    ("roll", "how far an inner layer lies inside the outer, so that it is not seen"),
    ("slash", "to cut the paper along a line, to a point but not through it"),
    ("spread", "to open the paper along a slash"),
    ("square to", "at a right angle to"),
    ("swing, turn, turned", "to move round a point that is held fast"),
    ("take in, taken in, takes in", "what a dart or seam makes the cloth narrower"),
    ("tape", "to join two edges of paper"),
    ("trace", "to copy on to new paper"),
    ("true, trued", "to redraw edges that will be sewn so that they agree"),
    ("walk", "to measure both sides of a seam together, notch by notch"),
)
"""Words of the trade with what they mean; several that are told together, by commas."""


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
    numbers = numbers_of(draft)
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
                        "walked": seams_walked(steps[side], i, unit, SMALL),
                    }
                    for i, _, s, text in group
                ],
            }
        )
    return {
        "title": f"{order.garment}: the draft by hand",
        "subtitle": order.whose,
        "footer": order.footer,
        "paper": "us-letter" if letter else "a4",
        "measures": measures_of(draft),
        "estimated": any(r.hand is Hand.ESTIMATED for r in _taken(draft)),
        "numbers": numbers,
        "parts": parts,
        "words": words_of(
            (
                *(str(s["text"]) for p in parts for s in p["steps"]),
                *(n["name"] for n in numbers),
            )
        ),
    }


def seams_walked(
    steps: Sequence[Step], number: int, unit: Unit, frame: Frame
) -> list[dict[str, str]]:
    """The seams that the step of this number walks, each with its figure."""
    return [
        {
            "number": f"{number}.{k}",
            "text": w.text,
            "svg": svg_of(w.scene, frame),
            "alt": f"{w.seam.name}, walked",
        }
        for k, w in enumerate(walked(steps, number - 1, unit), 1)
    ]


def words_of(texts: Iterable[str]) -> list[tuple[str, str]]:
    """The words that these texts use, with what they mean."""
    text = " ".join(texts)
    return [
        (word, means)
        for word, means in WORDS
        if re.search(rf"\b({'|'.join(word.split(', '))})", text, re.IGNORECASE)
    ]


def numbers_of(draft: Draft) -> list[dict[str, str]]:
    """The numbers that a draft rests on, beside the measures: symbol, name, value, and
    how it comes about."""
    unit = draft.order.unit
    return [
        {
            "symbol": r.symbol,
            "name": r.name,
            "value": _pretty(r, unit),
            "formula": how_of(r, unit),
        }
        for r in _reasons(draft)
        if r.hand not in _BODY and _counts(r)
    ]


def how_of(r: Reason, unit: Unit) -> str:
    """How a number comes about: its formula, or who decided it."""
    return retold(r.formula, unit) or _whose(r.hand)


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
