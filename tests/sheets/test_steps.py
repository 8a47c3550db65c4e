"""The drafting sheet and the dimensions sheet of the demo."""

from functools import cache
from importlib import resources
from pathlib import Path

import pdfplumber

from clothwright.order import Draft, draft, read_order
from clothwright.sheets.dimensions import write_dimensions
from clothwright.sheets.drawing import figure
from clothwright.sheets.steps import steps_text, write_steps


@cache
def made(name: str = "peplum-top") -> Draft:
    with resources.as_file(resources.files("clothwright.demo")) as folder:
        return draft(read_order(Path(folder) / f"{name}.toml"))


def test_every_step_is_told_in_the_user_s_unit() -> None:
    lines = steps_text(made())
    assert len(lines) == len(made().steps)
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
        for t in steps_text(made("zip-top"))
    )


def test_a_figure_shows_the_new_mark() -> None:
    steps = made().steps
    index = next(i for i, s in enumerate(steps) if s.makes == "E1")
    svg = figure(steps, index)
    assert svg.startswith("<svg")
    assert ">E1<" in svg
    assert "#1d3a5f" in svg
    drawn = sum(bool(figure(steps, i)) for i in range(len(steps)))
    assert drawn >= len(steps) - 4


def test_the_sheets_print_fractions_and_hold_every_step(tmp_path: Path) -> None:
    write_steps(made(), tmp_path / "steps.pdf")
    with pdfplumber.open(tmp_path / "steps.pdf") as pdf:
        text = "\n".join(p.extract_text() or "" for p in pdf.pages)
    assert "16¼ in" in text
    assert "⁄" in text
    for number in (1, 20, len(made().steps)):
        assert f"\n{number} " in text or f" {number} " in text
    write_dimensions(made(), tmp_path / "dimensions.pdf", letter=True)
    with pdfplumber.open(tmp_path / "dimensions.pdf") as pdf:
        assert abs(float(pdf.pages[0].width) - 612) < 1
        text = "\n".join(p.extract_text() or "" for p in pdf.pages)
    for word in ("slanted edge", "Nf′", "front panel, Qf to waist", "⅛ in eased in"):
        assert word in text
    for code in ("BC.", "FF.", "(S1)", "−"):
        assert code not in text


def test_only_what_the_draft_rests_on_is_printed(tmp_path: Path) -> None:
    write_steps(made("zip-top"), tmp_path / "steps.pdf")
    with pdfplumber.open(tmp_path / "steps.pdf") as pdf:
        text = "\n".join(p.extract_text() or "" for p in pdf.pages)
    assert "bust span" in text
    assert "~" in text
    for word in ("wrist", "head", "thigh", "square neck", "slanted edge"):
        assert word not in text, word


def test_formulas_are_in_the_order_s_unit(tmp_path: Path) -> None:
    write_steps(made(), tmp_path / "steps.pdf")
    with pdfplumber.open(tmp_path / "steps.pdf") as pdf:
        text = "\n".join(p.extract_text() or "" for p in pdf.pages)
    assert " cm" not in text


def test_a_cap_is_eased_in_and_told_by_front_and_back(tmp_path: Path) -> None:
    """A cap's ease is more than a gathered seam's least, but it has its stretch."""
    write_dimensions(made("sleeved-top"), tmp_path / "dimensions.pdf")
    with pdfplumber.open(tmp_path / "dimensions.pdf") as pdf:
        text = "\n".join(p.extract_text() or "" for p in pdf.pages)
    assert "eased in" in text
    assert "gathered in" not in text
    assert "cap, front half" in text
    lines = steps_text(made("sleeved-top"))
    (uf,) = (t for t in lines if "mark Uf" in t)
    assert "towards the front" in uf
