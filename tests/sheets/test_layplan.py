"""The lay plan: to scale, every piece named, the figures printed."""

import re
from dataclasses import replace
from functools import cache
from pathlib import Path

import pdfplumber
import pytest

from clothwright.lay import Budget, Lay, lay
from clothwright.order import Fold
from clothwright.sheets.layplan import write_lay_plan
from finished import made

POINT = 2.54 / 72


@cache
def top(fold: Fold) -> Lay:
    return lay(made("peplum-top"), fold=fold, budget=Budget(layouts=5))


@pytest.mark.parametrize("fold", [Fold.LENGTHWISE, Fold.SINGLE])
@pytest.mark.parametrize("letter", [False, True])
def test_the_page(fold: Fold, letter: bool, tmp_path: Path) -> None:
    target = tmp_path / "lay.pdf"
    done = top(fold)
    assert write_lay_plan([done], "Top, order 1", target, letter=letter) == 1
    with pdfplumber.open(target) as pdf:
        (page,) = pdf.pages
        assert page.width > page.height  # landscape
        words = page.extract_text()
        (scale,) = map(int, re.findall(r"scale 1:(\d+)", words))
        # the cloth, to scale within a tenth of a millimetre
        whole = done.length + 2 * done.spread.end_loss
        wide = [r["width"] * POINT * scale for r in page.rects]
        high = [r["height"] * POINT * scale for r in page.rects]
        assert max(wide) == pytest.approx(whole, abs=0.01 * scale)
        assert max(high) == pytest.approx(done.spread.width, abs=0.01 * scale)
        edge = 0.5 / POINT
        for mark in (*page.chars, *page.curves, *page.lines):
            assert mark["x0"] >= edge
            assert mark["x1"] <= page.width - edge
            assert mark["top"] >= edge
            assert mark["bottom"] <= page.height - edge
    flat = " ".join(words.split())
    for said in ("Lay plan: ink crêpe", "To buy:", "To cut", "of the cloth is used"):
        assert said in flat
    assert ("fold" if fold is Fold.LENGTHWISE else "opened out") in flat
    for shape in done.shapes:
        assert all(word in flat for word in shape.label.split())


def test_fractions_and_what_a_code_stands_for(tmp_path: Path) -> None:
    """The order is in inches; on narrow cloth the scale leaves small pieces no room for
    their names."""
    done = top(Fold.SINGLE)
    tiny = replace(done.shapes[-1], name="A piece of a very long name, indeed very")
    copies = tuple(
        replace(c, shape=tiny) if c.shape.code == tiny.code else c
        for c in done.solved.copies
    )
    named = replace(done, solved=replace(done.solved, copies=copies))
    write_lay_plan([named], "Top", tmp_path / "lay.pdf")
    with pdfplumber.open(tmp_path / "lay.pdf") as pdf:
        said = pdf.pages[0].extract_text()
    assert not re.search(r"\d/\d+ (in|yd)", said)
    assert "55⅛ in wide" in said
    assert f"({tiny.code})" in said


def test_a_page_for_each_cloth(tmp_path: Path) -> None:
    pattern = made("panelled-top")
    lays = [
        lay(pattern, k, fold=Fold.LENGTHWISE, budget=Budget(layouts=2))
        for k in ("shell", "lining", "interlining")
    ]
    assert write_lay_plan(lays, "Top", tmp_path / "lay.pdf") == 3
    with pdfplumber.open(tmp_path / "lay.pdf") as pdf:
        heads = [p.extract_text().splitlines()[0] for p in pdf.pages]
    assert [h.removeprefix("Lay plan: ") for h in heads] == [
        "ink crêpe",
        "Heron lining",
        "web fusible",
    ]
