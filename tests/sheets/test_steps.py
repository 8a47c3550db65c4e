"""The drafting sheet and the dimensions sheet of the demo."""

from pathlib import Path

import pdfplumber
import pytest

from clothwright.order import Draft
from clothwright.paper import Verb
from clothwright.sheets.dimensions import write_dimensions
from clothwright.sheets.drawing import Hand
from clothwright.sheets.figure import figure
from clothwright.sheets.steps import steps_text, write_steps
from clothwright.sheets.telling import mark_name
from finished import ORDERS, made


def drafted(name: str = "peplum-top") -> Draft:
    return made(name).draft


def test_every_step_is_told_in_the_user_s_unit() -> None:
    lines = steps_text(drafted())
    assert len(lines) == len(drafted().steps)
    for line in lines:
        assert line.endswith(".")
        assert " cm" not in line
        assert "None" not in line
    assert any("From hb measure 5¼ in along the back shoulder" in t for t in lines)
    assert any(
        "Swing Nf down about Tf until it has moved ½ in (12.4°); mark Nf′" in t
        for t in lines
    )
    assert any("Swing Gc up about BP" in t for t in lines)  # opens the bust dart
    assert all(
        " in " not in t or "cm" in t or "measure" not in t
        for t in steps_text(drafted("zip-top"))
    )


def test_a_figure_shows_the_new_mark() -> None:
    steps, said = drafted().steps, drafted().order.said
    index = next(i for i, s in enumerate(steps) if s.makes == "E1")
    svg = figure(steps, index, said)
    assert svg.startswith("<svg")
    assert ">E1<" in svg
    assert "#1d3a5f" in svg
    drawn = sum(bool(figure(steps, i, said)) for i in range(len(steps)))
    assert drawn >= len(steps) - 4


def _lines(svg: str) -> tuple[int, int, int]:
    """How many lines are in ink, dashed, and in pencil."""
    ink = svg.count(f'stroke="{Hand.INK.value[0]}"')
    dashed = svg.count("stroke-dasharray")
    return ink, dashed, svg.count(f'stroke="{Hand.PENCIL.value[0]}"') - dashed


@pytest.mark.parametrize("name", ORDERS)
def test_every_figure_shows_what_its_step_does(name: str) -> None:
    """A line or a mark in ink in each, but where the whole table is walked."""
    draft = made(name).draft
    for i, step in enumerate(draft.steps):
        svg = figure(draft.steps, i, draft.order.said)
        if svg:
            assert Hand.INK.value[0] in svg, (i + 1, step.verb, step.makes)
        else:
            assert step.verb in (Verb.SEW, Verb.OUTLINE, Verb.TRACE), (i + 1, step)


def test_what_a_redraw_does_away_with_is_dashed() -> None:
    """The open back: new edge in ink, the old neck and centre back dashed, the rest in
    pencil. A cut shows the new edge twice; a swing its old and its new place."""
    draft = made("peplum-top").draft
    by_verb: dict[tuple[Verb, str], str] = {}
    for i, s in enumerate(draft.steps):
        svg = figure(draft.steps, i, draft.order.said)
        by_verb.setdefault((s.verb, s.part), svg)
    ink, dashed, pencil = _lines(by_verb[Verb.REDRAW, "back"])
    assert ink
    assert dashed
    assert pencil
    ink, dashed, pencil = _lines(by_verb[Verb.CUT, "front"])
    assert (ink, dashed) == (2, 0)
    assert pencil
    ink, dashed, _ = _lines(by_verb[Verb.TURN, "front"])
    assert ink == 2  # the way and the new place
    assert dashed == 1


def test_no_two_marks_differ_by_a_capital_alone() -> None:
    """As the sheets show them; the figures keep the symbols of the notes."""
    for name in ORDERS:
        shown = [mark_name(p) for p in made(name).draft.sheet.points]
        assert len({p.lower() for p in shown}) == len(shown)
    assert any("mark tf block, shoulder tip" in t for t in steps_text(drafted()))


def test_the_sheets_print_fractions_and_hold_every_step(tmp_path: Path) -> None:
    write_steps(drafted(), tmp_path / "steps.pdf")
    with pdfplumber.open(tmp_path / "steps.pdf") as pdf:
        text = "\n".join(p.extract_text() or "" for p in pdf.pages)
    assert "16¼ in" in text
    assert "⁄" in text
    for number in (1, 20, len(drafted().steps)):
        assert f"\n{number} " in text or f" {number} " in text
    write_dimensions(drafted(), tmp_path / "dimensions.pdf", letter=True)
    with pdfplumber.open(tmp_path / "dimensions.pdf") as pdf:
        assert abs(float(pdf.pages[0].width) - 612) < 1
        text = "\n".join(p.extract_text() or "" for p in pdf.pages)
    for word in ("slanted edge", "Nf′", "front panel, Qf to waist", "⅛ in eased in"):
        assert word in text
    for code in ("BC.", "FF.", "(S1)", "−"):
        assert code not in text


def test_only_what_the_draft_rests_on_is_printed(tmp_path: Path) -> None:
    write_steps(drafted("zip-top"), tmp_path / "steps.pdf")
    with pdfplumber.open(tmp_path / "steps.pdf") as pdf:
        text = "\n".join(p.extract_text() or "" for p in pdf.pages)
    assert "bust span" in text
    assert "~" in text
    for word in ("wrist", "head", "thigh", "square neck", "slanted edge"):
        assert word not in text, word


def test_formulas_are_in_the_order_s_unit(tmp_path: Path) -> None:
    write_steps(drafted(), tmp_path / "steps.pdf")
    with pdfplumber.open(tmp_path / "steps.pdf") as pdf:
        text = "\n".join(p.extract_text() or "" for p in pdf.pages)
    assert " cm" not in text


def test_a_cap_is_eased_in_and_told_by_front_and_back(tmp_path: Path) -> None:
    """A cap's ease is more than a gathered seam's least, but it has its stretch."""
    write_dimensions(drafted("sleeved-top"), tmp_path / "dimensions.pdf")
    with pdfplumber.open(tmp_path / "dimensions.pdf") as pdf:
        text = "\n".join(p.extract_text() or "" for p in pdf.pages)
    assert "eased in" in text
    assert "gathered in" not in text
    assert "cap, front half" in text
    lines = steps_text(drafted("sleeved-top"))
    (uf,) = (t for t in lines if "mark Uf" in t)
    assert "towards the front" in uf
