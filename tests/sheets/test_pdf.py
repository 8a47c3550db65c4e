"""Pages measured from the file itself, by pdfplumber and pypdfium2."""

from pathlib import Path

import pattern_fixture as fx
import pdfplumber
import pytest

from clothwright.sheets import PageFormat, Scale, write_pdf

MM = 72 / 25.4
FORMATS = list(PageFormat)


@pytest.mark.parametrize("page", FORMATS)
def test_scale_is_exact(tmp_path: Path, page: PageFormat) -> None:
    """A piece of 100 × 100 mm, and the test squares, within 0.05 mm."""
    target = tmp_path / "square.pdf"
    assert write_pdf(fx.of_pieces(fx.square_piece()), target, page=page) == 1
    with pdfplumber.open(target) as pdf:
        first = pdf.pages[0]
        squares = [r for r in first.rects if r["width"] > 95 * MM]
        for side in ("width", "height"):
            found = sorted(r[side] / MM for r in squares)
            assert found == pytest.approx([100, 100, 101.6], abs=0.05)


@pytest.mark.parametrize("scale", list(Scale))
def test_smaller_scales(tmp_path: Path, scale: Scale) -> None:
    target = tmp_path / "square.pdf"
    write_pdf(fx.of_pieces(fx.square_piece(12)), target, scale=scale)
    want = 120 * scale.value
    with pdfplumber.open(target) as pdf:
        first = pdf.pages[0]
        shapes = [(k["width"] / MM, k["height"] / MM) for k in first.curves]
        shapes += [(k["width"] / MM, k["height"] / MM) for k in first.rects]
    assert any(abs(w - want) < 0.05 and abs(h - want) < 0.05 for w, h in shapes)
    assert any(abs(w - 100) < 0.05 and abs(h - 100) < 0.05 for w, h in shapes)
