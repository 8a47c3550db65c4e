"""The lesson: a step on each page, its figure at the scale that the page says."""

import re
from functools import cache
from io import BytesIO
from pathlib import Path
from tempfile import TemporaryDirectory

import pdfplumber
import pytest

from clothwright.sheets.lesson import write_lesson
from clothwright.sheets.steps import WORDS, steps_text
from clothwright.sheets.telling import mark_name
from finished import made

CM = 72 / 2.54
MM = CM / 10


@cache
def booklet(name: str, letter: bool) -> bytes:
    """The lesson of a demo's order, written once."""
    with TemporaryDirectory() as folder:
        target = Path(folder) / "lesson.pdf"
        write_lesson(made(name).draft, target, letter=letter)
        return target.read_bytes()


@cache
def texts(name: str, letter: bool) -> tuple[str, ...]:
    """What its pages say, read once."""
    with pdfplumber.open(BytesIO(booklet(name, letter))) as pdf:
        return tuple(p.extract_text() or "" for p in pdf.pages)


@pytest.mark.parametrize("letter", [False, True])
@pytest.mark.parametrize("name", ["peplum-top", "trousers"])
def test_every_step_has_its_page(name: str, letter: bool) -> None:
    """In their order, each with its own words; a step that walks seams goes on."""
    draft = made(name).draft
    told = steps_text(draft)
    pages = [" ".join(text.split()) for text in texts(name, letter)]
    words = pages[-1]
    at = -1
    for line in told:
        begins = " ".join(line.split(". ", 1)[1].split()[:4])
        at = next(i for i, text in enumerate(pages) if i > at and begins in text)
    assert at < len(pages) - 2
    for word in ("Words", "net line", "walk"):
        assert word in words
    text = " ".join(told)
    for word, means in WORDS:
        if any(re.search(rf"\b{w}", text, re.IGNORECASE) for w in word.split(", ")):
            assert " ".join(means.split()[:3]) in words, word


def test_the_contents_name_the_page_of_each_part() -> None:
    draft = made("peplum-top").draft
    pages = texts("peplum-top", False)
    lines = re.findall(
        r"(?m)^(.+?)[ .]+ steps? (\d+)(?: to (\d+))?, page (\d+)", pages[1]
    )
    parts = list(dict.fromkeys(s.part for s in draft.steps))
    assert [name.lower() for name, *_ in lines][:2] == parts[:2]
    last = 0
    for name, first, end, page in lines:
        assert int(first) == last + 1
        last = int(end or first)
        text = pages[int(page) - 1].splitlines()
        assert text[0].startswith(name)
        assert any(line.split()[0] == first for line in text[1:4]), text[:4]
    assert last == len(draft.steps)


def test_a_step_says_where_its_numbers_come_from() -> None:
    """The level of the waist is the back waist length (blocks A2); what is named so
    stands among the measures or the numbers of the draft."""
    draft = made("peplum-top").draft
    pages = texts("peplum-top", False)
    assert any("16¼ in is yW, level of the waist: NWB" in t for t in pages)
    at = next(i for i, t in enumerate(pages) if t.startswith("Numbers of the draft"))
    listed = " ".join(" ".join(pages[at:-1]).split()) + pages[0]
    used = {
        draft.numbers.why(a.key).symbol
        for s in draft.steps
        for a in s.amounts
        if a.key and abs(a.value) > 0.005
    }
    assert len(used) > 20
    for symbol in (s for s in used if " " not in s):  # a long one is broken
        assert symbol in listed, symbol


def test_every_mark_is_listed_with_its_step() -> None:
    """A pupil looks up any mark that a step names."""
    draft = made("peplum-top").draft
    pages = texts("peplum-top", False)
    listed = next(t for t in pages[2:] if t.startswith("Marks of the draft"))
    for i, s in enumerate(draft.steps, 1):
        if s.at is not None:
            assert f"{mark_name(s.makes)} " in listed
            assert f"step {i}" in listed


def test_a_figure_at_half_scale_is_half_as_large() -> None:
    """A rule of 6 in down is 3 in long on its page (half scale, exact)."""
    draft = made("peplum-top").draft
    first = next(
        i
        for i, text in enumerate(texts("peplum-top", False))
        if "Mark O, the nape" in text
    )
    seen = 0
    with pdfplumber.open(BytesIO(booklet("peplum-top", False))) as pdf:
        told = zip(
            pdf.pages[first:],
            texts("peplum-top", False)[first:],
            draft.steps,
            strict=False,
        )
        for page, text, step in told:
            if "half scale" not in text:
                continue
            downs = [abs(a.value) for a in step.amounts if a.how == "down"]
            if len(downs) != 1 or downs[0] < 2 or step.verb.value != "measure":
                continue
            lengths = [abs(k["bottom"] - k["top"]) for k in (*page.lines, *page.curves)]
            wanted = downs[0] / 2 * CM
            assert min(abs(n - wanted) for n in lengths) < 0.2 * MM, step
            seen += 1
    assert seen >= 3
