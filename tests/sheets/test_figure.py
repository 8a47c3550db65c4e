"""Figures of steps: what a step names is shown and named, near enough to be seen."""

import re
from itertools import combinations
from typing import NamedTuple

import pytest

from clothwright.order import Draft
from clothwright.paper import Verb
from clothwright.sheets.drawing import Hand
from clothwright.sheets.figure import SMALL, figure
from clothwright.sheets.steps import told
from clothwright.sheets.telling import mark_name
from finished import ORDERS, made

SEEN = 3.0
"""What is measured in a step is drawn so long at the least, mm (our own choice)."""


class _Name(NamedTuple):
    x: float
    y: float
    size: float
    text: str

    @property
    def box(self) -> tuple[float, float, float, float]:
        wide = 0.55 * self.size * len(self.text)
        return self.x, self.y - 0.7 * self.size, self.x + wide, self.y


_TEXT = re.compile(
    r'<text x="([\d.-]+)" y="([\d.-]+)" font-size="([\d.]+)"[^>]*>([^<]+)'
)


def names(svg: str) -> list[_Name]:
    return [
        _Name(float(x), float(y), float(size), text)
        for x, y, size, text in _TEXT.findall(svg)
    ]


def figures(draft: Draft) -> list[tuple[str, str, str]]:
    """Of every step: what it makes, its words, and its figure."""
    said = draft.order.said
    return [
        (s.makes, text, figure(draft.steps, i - 1, said))
        for i, side, s, text in told(draft)
        if not side
    ]


@pytest.mark.parametrize("name", ORDERS)
def test_a_mark_that_a_step_names_stands_in_its_figure(name: str) -> None:
    draft = made(name).draft
    marks = {mark_name(s.makes) for s in draft.steps if s.at is not None}
    longest = sorted(marks, key=len, reverse=True)  # "C block" is no C
    known = re.compile(rf"(?<![\w′])({'|'.join(map(re.escape, longest))})(?![\w′])")
    for makes, text, svg in figures(draft):
        shown = {n.text for n in names(svg)}
        spoken = set(known.findall(text))
        assert not svg or spoken <= shown, (makes, text, spoken - shown)


@pytest.mark.parametrize("name", ["peplum-top", "sleeved-top", "trousers"])
def test_no_name_lies_over_another_or_outside(name: str) -> None:
    for makes, _, svg in figures(made(name).draft):
        found = names(svg)
        for n in found:
            a, b, c, d = n.box
            assert a >= 0, (makes, n)
            assert b >= -0.1, (makes, n)
            assert c <= SMALL.width, (makes, n)
            assert d <= SMALL.height, (makes, n)
        for p, q in combinations(found, 2):
            (a, b, c, d), (e, f, g, h) = p.box, q.box
            assert a >= g or e >= c or b >= h or f >= d, (makes, p, q)


@pytest.mark.parametrize("name", ["peplum-top", "straight-skirt", "trousers"])
def test_what_is_measured_is_long_enough_to_be_seen(name: str) -> None:
    """A step of 1 cm on a front of 45 was under a millimetre long in its figure."""
    draft = made(name).draft
    ink = re.compile(rf'<path d="M([^"A-Z]+)L([^"A-Z]+)"[^>]*{Hand.INK.value[0]}')
    seen = 0
    for i, s in enumerate(draft.steps):
        if s.verb not in (Verb.MEASURE, Verb.ALONG) or not s.frm:
            continue
        long = max(abs(a.value) for a in s.amounts)
        if long < 0.8:
            continue
        svg = figure(draft.steps, i, draft.order.said)
        drawn = 0.0
        for ends in ink.findall(svg):
            (a, b), (c, d) = (tuple(map(float, e.split())) for e in ends)
            drawn = max(drawn, abs(a - c) + abs(b - d))
        assert drawn >= SEEN, (s.makes, long, drawn)
        seen += 1
    assert seen > 8


def test_a_corner_has_a_key_of_the_whole() -> None:
    """The shoulder is shown by itself, with the front beside it, small."""
    draft = made("sleeved-top").draft
    i = next(i for i, s in enumerate(draft.steps) if s.makes == "Nf")
    svg = figure(draft.steps, i, draft.order.said)
    assert svg.count("<rect") == 2  # of the key, and what the corner is cut off by
    first = figure(draft.steps, 0, draft.order.said)
    assert "<rect" not in first
