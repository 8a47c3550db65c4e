"""Pages measured from the file itself, by pdfplumber and pypdfium2."""

from dataclasses import replace
from pathlib import Path

import numpy as np
import pattern_fixture as fx
import pdfplumber
import pikepdf
import pypdfium2
import pytest

from clothwright.curves import Line, Point
from clothwright.curves import Path as Outline
from clothwright.finishing.drawn import DrawnPiece
from clothwright.sheets import PageFormat, Scale, SheetError, write_pdf
from clothwright.sheets.arrange import arrange
from clothwright.sheets.formats import frame_of
from clothwright.sheets.letters import in_order

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


def _rectangle(width: float, height: float) -> DrawnPiece:
    """A plain piece, cm."""
    p = Point(0, 0), Point(width, 0), Point(width, height), Point(0, height)
    ring = Outline(tuple(Line(a, b) for a, b in zip(p, (*p[1:], p[0]), strict=True)))
    return replace(fx.square_piece(), cut_line=ring)


def _picture(pdf: pypdfium2.PdfDocument, number: int, dpi: float) -> np.ndarray:
    """A page as grey values, 255 white."""
    return np.asarray(pdf[number].render(scale=dpi / 72, grayscale=True).to_numpy())


@pytest.mark.parametrize("page", FORMATS)
def test_nothing_is_printed_within_5_mm_of_the_edge(
    tmp_path: Path, page: PageFormat
) -> None:
    """Truing 11, item 14; seen on the rendered page."""
    target = tmp_path / "a.pdf"
    count = write_pdf(fx.pattern(("A check failed.",)), target, page=page)
    pdf = pypdfium2.PdfDocument(target)
    assert len(pdf) == count
    dpi = 50.8  # two pixels a millimetre
    for number in range(count):
        seen = _picture(pdf, number, dpi)
        edge = 10
        assert (seen < 250).any()
        for strip in (seen[:edge], seen[-edge:], seen[:, :edge], seen[:, -edge:]):
            assert (strip > 250).all()
    pdf.close()


@pytest.mark.parametrize(
    ("page", "size"),
    [
        (PageFormat.A4, (210, 297)),
        (PageFormat.LETTER, (215.9, 279.4)),
        (PageFormat.A0, (841, 1189)),
        (PageFormat.ROLL, (914, None)),
    ],
)
def test_pages_have_their_sizes(
    tmp_path: Path, page: PageFormat, size: tuple[float, float | None]
) -> None:
    """ISO 216; ANSI A; the roll's own width."""
    target = tmp_path / "a.pdf"
    write_pdf(fx.pattern(), target, page=page)
    with pikepdf.open(target) as pdf:
        assert pdf.Root.ViewerPreferences.PrintScaling == pikepdf.Name("/None")
        for sheet in pdf.pages:
            _, _, width, height = (float(x) / MM for x in sheet.mediabox)
            assert width == pytest.approx(size[0], abs=0.01)
            if size[1]:
                assert height == pytest.approx(size[1], abs=0.01)
            assert height <= 5080


def test_tiles_show_one_drawing(tmp_path: Path) -> None:
    """On every tile each line lies at the same place of the joined sheet, 0.01 mm."""
    target = tmp_path / "a.pdf"
    pattern = fx.of_pieces(fx.sector(), fx.strip())
    count = write_pdf(pattern, target)
    f = frame_of(PageFormat.A4)
    with pdfplumber.open(target) as pdf:
        assert len(pdf.pages) == count > 8
        found = []
        for page in pdf.pages:
            letter, number = page.extract_text_lines()[0]["text"].split()[0]
            x = f.left - (int(number) - 1) * f.live_width
            y = f.top - (ord(letter) - ord("A")) * f.live_height
            wide = max(page.curves, key=lambda k: k["width"] * k["height"])
            found.append((wide["x0"] / MM - x * 10, wide["top"] / MM - y * 10))
        for place in found[1:]:
            assert place == pytest.approx(found[0], abs=0.01)


def test_neighbours_show_the_same_strip_along_their_trim_line(tmp_path: Path) -> None:
    """The 4 mm that both pages print, compared as pictures: the clip is right."""
    target = tmp_path / "a.pdf"
    write_pdf(fx.of_pieces(_rectangle(30, 10)), target)
    pdf = pypdfium2.PdfDocument(target)
    dpi = 254.0  # ten pixels a millimetre
    left, right = _picture(pdf, 0, dpi), _picture(pdf, 1, dpi)
    a = left[1500:, 1980:2020]  # 2 mm either side of the trim line at 200 mm
    b = right[1500:, 80:120]  # and of the one at 10 mm
    assert (a < 128).any()
    assert (np.abs(a.astype(int) - b) > 128).mean() < 0.002
    pdf.close()


def test_no_blank_page_is_printed(tmp_path: Path) -> None:
    target = tmp_path / "a.pdf"
    count = write_pdf(fx.pattern(), target)
    laid = arrange(
        fx.six(), frame_of(PageFormat.A4), whole=False, keep_clear=(19.0, 12.0)
    )
    assert abs(count - len(laid.tiles)) <= 2
    with pdfplumber.open(target) as pdf:
        heads = [p.crop((0, 0, p.width, 14 * MM)).extract_text() for p in pdf.pages]
    names = [h.split()[0] for h in heads]
    assert names[0] == "A1"
    assert len(set(names)) == len(names) == count


def test_failures_stand_on_the_first_page(tmp_path: Path) -> None:
    target = tmp_path / "a.pdf"
    said = "Side seams: 38.4 cm against 39.1 cm, 0.7 cm apart; allowed 0.2 cm."
    write_pdf(fx.pattern((said,)), target)
    with pdfplumber.open(target) as pdf:
        first = " ".join(pdf.pages[0].extract_text().split())
        assert "Do not cut cloth" in first
        assert said in first
        assert "Make a trial garment first" in first
        assert "Bust span was estimated" in first
        for page in pdf.pages:
            assert "CHECKS FAILED" in page.extract_text()


def test_headers_say_whose_and_how(tmp_path: Path) -> None:
    target = tmp_path / "a.pdf"
    count = write_pdf(fx.pattern(), target, scale=Scale.HALF)
    with pdfplumber.open(target) as pdf:
        for i, page in enumerate(pdf.pages, start=1):
            text = page.extract_text()
            assert "Frances Example · measured 3 May 2026" in text
            assert "half scale: 4 in here are 8 in of the garment" in text
            assert "Print at 100 %, do not fit to page." in text
            assert f"page {i} of {count}" in text
            assert "CHECKS FAILED" not in text


def test_many_notes_run_on_to_a_page_of_their_own(tmp_path: Path) -> None:
    target = tmp_path / "a.pdf"
    notes = tuple(f"Note {i}: a measure was estimated, see there." for i in range(90))
    pattern = replace(fx.of_pieces(fx.square_piece()), notes=notes)
    write_pdf(pattern, target)
    with pdfplumber.open(target) as pdf:
        text = "".join(p.extract_text() for p in pdf.pages)
    assert all(f"Note {i}:" in text for i in range(90))


@pytest.mark.parametrize("count", [40, 120])
def test_many_failures_are_all_printed(tmp_path: Path, count: int) -> None:
    """Within the page, smaller, and what is left on a page of its own."""
    target = tmp_path / "a.pdf"
    said = tuple(f"Seam {i} is 0.{i} cm too long." for i in range(100, 100 + count))
    pattern = replace(fx.of_pieces(fx.square_piece()), failures=said)
    write_pdf(pattern, target)
    with pdfplumber.open(target) as pdf:
        inner = [
            p.crop((5 * MM, 5 * MM, p.width - 5 * MM, p.height - 5 * MM))
            for p in pdf.pages
        ]
        text = "".join(p.extract_text() for p in inner)
        first = pdf.pages[0]
        assert "Do not cut cloth" in first.extract_text()
        assert "Seam 100 is" in first.extract_text()
        square = min(
            r["bottom"] for r in first.rects if 95 * MM < r["width"] < 102 * MM
        )
        assert square < first.height - 5 * MM
    assert all(f"Seam {i} is" in text for i in range(100, 100 + count))


def test_a_long_roll_is_split(tmp_path: Path) -> None:
    """A PDF page ends at 14,400 pt = 5.08 m."""
    target = tmp_path / "a.pdf"
    pieces = [_rectangle(60, 200) for _ in range(4)]
    assert write_pdf(fx.of_pieces(*pieces), target, page=PageFormat.ROLL) == 2
    long = fx.of_pieces(_rectangle(10, 700))
    assert write_pdf(long, target, page=PageFormat.ROLL) == 2
    with pikepdf.open(target) as pdf:
        heights = [float(p.mediabox[3]) for p in pdf.pages]
    assert max(heights) <= 14_400
    assert sum(heights) / MM > 7000


def test_a_roll_is_as_wide_as_it_is_told(tmp_path: Path) -> None:
    target = tmp_path / "a.pdf"
    write_pdf(fx.pattern(), target, page=PageFormat.ROLL, roll_width=106.7)
    with pikepdf.open(target) as pdf:
        assert float(pdf.pages[0].mediabox[2]) / MM == pytest.approx(1067, abs=0.01)
    with pytest.raises(SheetError, match=r"^Roll width: 3 cm is outside 30 to 250 cm"):
        write_pdf(fx.pattern(), target, page=PageFormat.ROLL, roll_width=3)


def test_dimensions_can_be_left_out(tmp_path: Path) -> None:
    target = tmp_path / "a.pdf"
    pattern = fx.of_pieces(replace(fx.front(), texts=fx.front().texts[-2:]))
    for wanted in (True, False):
        write_pdf(pattern, target, page=PageFormat.A0, dimensions=wanted)
        pdf = pypdfium2.PdfDocument(target)
        text = pdf[0].get_textpage().get_text_bounded()
        pdf.close()
        assert ("13⅜ in" in text) is wanted


def test_layers_can_be_switched(tmp_path: Path) -> None:
    target = tmp_path / "a.pdf"
    count = write_pdf(fx.pattern(), target, layers=True)
    with pikepdf.open(target) as pdf:
        groups = [str(g.Name) for g in pdf.Root.OCProperties.OCGs]
        assert groups == ["cut lines", "stitch lines", "marks", "words", "dimensions"]
        assert pdf.Root.ViewerPreferences.PrintScaling == pikepdf.Name("/None")
        assert len(pdf.pages) == count
    again = tmp_path / "b.pdf"
    write_pdf(fx.pattern(), again, layers=True)
    assert target.read_bytes() == again.read_bytes()
    write_pdf(fx.pattern(), again)
    one, other = pypdfium2.PdfDocument(target), pypdfium2.PdfDocument(again)
    for number in range(count):
        a, b = _picture(one, number, 50), _picture(other, number, 50)
        assert (np.abs(a.astype(int) - b) > 128).mean() < 0.001
    one.close()
    other.close()


def test_a_layer_that_is_off_is_not_seen(tmp_path: Path) -> None:
    """pdfium honours the file's own list of layers that are off."""
    target, other = tmp_path / "a.pdf", tmp_path / "b.pdf"
    write_pdf(fx.of_pieces(_rectangle(15, 10)), target, layers=True)
    with pikepdf.open(target) as pdf:
        shown = pdf.Root.OCProperties.D
        cut = shown.ON[0]
        assert str(cut.Name) == "cut lines"
        shown.OFF.append(cut)
        del shown.ON[0]
        pdf.save(other)
    inks = []
    for path in (target, other):
        doc = pypdfium2.PdfDocument(path)
        inks.append(int((_picture(doc, 0, 100)[700:] < 128).sum()))
        doc.close()
    assert inks[1] < inks[0] / 2


def test_layers_and_pages_of_notes_go_together(tmp_path: Path) -> None:
    notes = tuple(f"Note {i}: a measure was estimated, see there." for i in range(90))
    pattern = replace(fx.of_pieces(fx.square_piece()), notes=notes)
    target = tmp_path / "a.pdf"
    count = write_pdf(pattern, target, layers=True)
    with pikepdf.open(target) as pdf:
        assert len(pdf.pages) == count > 1


@pytest.mark.parametrize("page", FORMATS)
def test_written_twice_the_file_is_the_same(tmp_path: Path, page: PageFormat) -> None:
    write_pdf(fx.pattern(), tmp_path / "a.pdf", page=page)
    write_pdf(fx.pattern(), tmp_path / "b.pdf", page=page)
    assert (tmp_path / "a.pdf").read_bytes() == (tmp_path / "b.pdf").read_bytes()


def test_a_character_without_a_glyph_is_a_box_and_told(tmp_path: Path) -> None:
    """DejaVu Sans has no CJK; the first page says what the boxes mean."""
    target = tmp_path / "a.pdf"
    pattern = replace(fx.of_pieces(fx.square_piece()), client="山田 Hana \U0001f9f5")
    write_pdf(pattern, target)
    with pdfplumber.open(target) as pdf:
        said = " ".join((pdf.pages[0].extract_text() or "").split())
    assert "□□ Hana □" in said
    assert "A box (□) stands for a character that the printing font lacks" in said


def test_words_of_the_trade_have_glyphs() -> None:
    for text in ("⅛¼⅜½⅝¾⅞⅓⅔ × ° ′ ″ ↑↓ ≤ ± € é ř ß Ж ✂ ✗",):
        assert in_order(text) == in_order(text, bold=True) == text
