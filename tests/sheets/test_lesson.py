"""The lesson: a step on each page, its figure at the scale that the page says."""

import re
from pathlib import Path

import pdfplumber
import pytest

from clothwright.sheets.lesson import write_lesson
from clothwright.sheets.steps import WORDS, steps_text
from clothwright.sheets.telling import mark_name
from finished import made

CM = 72 / 2.54
MM = CM / 10


@pytest.mark.parametrize("letter", [False, True])
@pytest.mark.parametrize("name", ["peplum-top", "trousers"])
def test_every_step_has_its_page(name: str, letter: bool, tmp_path: Path) -> None:
    """In their order, each with its own words; a step that walks seams goes on."""
    draft = made(name).draft
    write_lesson(draft, tmp_path / "lesson.pdf", letter=letter)
    told = steps_text(draft)
    with pdfplumber.open(tmp_path / "lesson.pdf") as pdf:
        pages = [" ".join((p.extract_text() or "").split()) for p in pdf.pages]
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


def test_the_contents_name_the_page_of_each_part(tmp_path: Path) -> None:
    draft = made("peplum-top").draft
    write_lesson(draft, tmp_path / "lesson.pdf")
    with pdfplumber.open(tmp_path / "lesson.pdf") as pdf:
        pages = [p.extract_text() or "" for p in pdf.pages]
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


def test_a_step_says_where_its_numbers_come_from(tmp_path: Path) -> None:
    """The level of the waist is the back waist length (blocks A2); what is named so
    stands among the measures or the numbers of the draft."""
    draft = made("peplum-top").draft
    write_lesson(draft, tmp_path / "lesson.pdf")
    with pdfplumber.open(tmp_path / "lesson.pdf") as pdf:
        pages = [p.extract_text() or "" for p in pdf.pages]
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


def test_every_mark_is_listed_with_its_step(tmp_path: Path) -> None:
    """A pupil looks up any mark that a step names."""
    draft = made("peplum-top").draft
    write_lesson(draft, tmp_path / "lesson.pdf")
    with pdfplumber.open(tmp_path / "lesson.pdf") as pdf:
        pages = [p.extract_text() or "" for p in pdf.pages]
    listed = next(t for t in pages[2:] if t.startswith("Marks of the draft"))
    for i, s in enumerate(draft.steps, 1):
        if s.at is not None:
            assert f"{mark_name(s.makes)} " in listed
            assert f"step {i}" in listed


def test_a_figure_at_half_scale_is_half_as_large(tmp_path: Path) -> None:
    """A rule of 6 in down is 3 in long on its page (half scale, exact)."""
    draft = made("peplum-top").draft
    write_lesson(draft, tmp_path / "lesson.pdf")
    seen = 0
    with pdfplumber.open(tmp_path / "lesson.pdf") as pdf:
        first = next(
            i for i, p in enumerate(pdf.pages) if "Mark O, the nape" in p.extract_text()
        )
        for page, step in zip(pdf.pages[first:], draft.steps, strict=False):
            if "half scale" not in (page.extract_text() or ""):
                continue
            downs = [abs(a.value) for a in step.amounts if a.how == "down"]
            if len(downs) != 1 or downs[0] < 2 or step.verb.value != "measure":
                continue
            lengths = [abs(k["bottom"] - k["top"]) for k in (*page.lines, *page.curves)]
            wanted = downs[0] / 2 * CM
            assert min(abs(n - wanted) for n in lengths) < 0.2 * MM, step
            seen += 1
    assert seen >= 3
