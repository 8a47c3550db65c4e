"""The picture: millimetres, true cubics, ids; read back by an outside library."""

import io
from pathlib import Path
from xml.etree import ElementTree

import pattern_fixture as fx
import svgpathtools

from clothwright.sheets import write_svg
from clothwright.sheets.svg import svg_of

MM = 1.0
NS = "{http://www.w3.org/2000/svg}"


def test_a_square_of_100_mm_is_100_units() -> None:
    root = ElementTree.fromstring(svg_of(fx.of_pieces(fx.square_piece())))
    width = float(root.attrib["width"].removesuffix("mm"))
    assert width == float(root.attrib["viewBox"].split()[2])  # one unit is one mm
    cut = root.find(f".//{NS}path[@class='cut line']")
    assert cut is not None
    box = svgpathtools.parse_path(cut.attrib["d"]).bbox()
    assert abs(box[1] - box[0] - 100 * MM) < 0.001 * MM
    assert abs(box[3] - box[2] - 100 * MM) < 0.001 * MM


def test_curves_keep_their_length() -> None:
    """Every stitch line is as long in the picture as on the piece, within 0.01 mm."""
    pattern = fx.pattern()
    root = ElementTree.parse(io.StringIO(svg_of(pattern))).getroot()
    assert root is not None
    for piece in pattern.pieces:
        group = root.find(f".//{NS}g[@id='{piece.code}']")
        assert group is not None
        drawn = group.findall(f"{NS}path[@class='stitch line']")
        wanted = [k.path.length for k in piece.lines if k.meaning.name == "SEW"]
        found = [svgpathtools.parse_path(d.attrib["d"]).length() for d in drawn]
        for cm, mm in zip(wanted, found, strict=True):
            assert abs(cm * 10 - mm) < 0.01 * MM


def test_ids_are_unique_and_repeats_identical(tmp_path: Path) -> None:
    write_svg(fx.pattern(), tmp_path / "a.svg")
    write_svg(fx.pattern(), tmp_path / "b.svg")
    text = (tmp_path / "a.svg").read_text()
    assert text == (tmp_path / "b.svg").read_text()
    ids = [
        e.attrib["id"] for e in ElementTree.fromstring(text).iter() if "id" in e.attrib
    ]
    assert len(ids) == len(set(ids))
    assert {"CF", "CF.SEW.CF.neck", "BK.CUT.cut-line"} <= set(ids)


def test_words_are_escaped() -> None:
    piece = fx.square_piece()
    pattern = fx.of_pieces(piece)
    odd = type(pattern)(
        "A <b> & co", "x", None, "cm", pattern.pieces, pattern.allowance_note
    )
    root = ElementTree.fromstring(svg_of(odd))
    assert root.findtext(f"{NS}title") == "A <b> & co"
