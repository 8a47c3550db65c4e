"""The lesson: a step on each page, its figure at the scale that the page says."""

from pathlib import Path

import pdfplumber
import pytest

from clothwright.sheets.lesson import write_lesson
from clothwright.sheets.steps import WORDS, steps_text
from finished import made

CM = 72 / 2.54
MM = CM / 10


@pytest.mark.parametrize("letter", [False, True])
@pytest.mark.parametrize("name", ["peplum-top", "trousers"])
def test_every_step_has_its_page(name: str, letter: bool, tmp_path: Path) -> None:
    draft = made(name).draft
    write_lesson(draft, tmp_path / "lesson.pdf", letter=letter)
    told = steps_text(draft)
    with pdfplumber.open(tmp_path / "lesson.pdf") as pdf:
        assert len(pdf.pages) == len(told) + 2  # the title and the words
        for number in (1, len(told) // 2, len(told)):
            text = " ".join((pdf.pages[number].extract_text() or "").split())
            assert " ".join(told[number - 1].split(". ", 1)[1].split()[:4]) in text
        words = pdf.pages[-1].extract_text()
        assert all(w[0] in words for w in WORDS)


def test_a_figure_at_half_scale_is_half_as_large(tmp_path: Path) -> None:
    """A rule of 6 in down is 3 in long on its page (half scale, exact)."""
    draft = made("peplum-top").draft
    write_lesson(draft, tmp_path / "lesson.pdf")
    seen = 0
    with pdfplumber.open(tmp_path / "lesson.pdf") as pdf:
        for page, step in zip(pdf.pages[1:], draft.steps, strict=False):
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
