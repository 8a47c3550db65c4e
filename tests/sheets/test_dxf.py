"""The exchange file, read back by ezdxf's recovering reader.

Checks after ASTM D6673-10 as published (layers, one block a piece); areas within
0.1 %, stitch lines within 0.1 mm.
"""

import math
import re
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import Any

import ezdxf.filemanagement
import ezdxf.recover
import pattern_fixture as fx
import pytest
from ezdxf.document import Drawing
from ezdxf.layouts.blocklayout import BlockLayout

from clothwright.finishing.drawn import DrawnPiece, Meaning
from clothwright.sheets import SheetError, write_dxf
from clothwright.sheets.whole import opened
from finished import ORDERS, made

MM = 1.0
XY = tuple[float, float]


def _read(path: Path) -> Drawing:
    doc, auditor = ezdxf.recover.readfile(str(path))
    assert not auditor.has_errors
    return doc


def _written(tmp_path: Path, *pieces: DrawnPiece, whole: bool = True) -> Drawing:
    target = tmp_path / "out.dxf"
    write_dxf(fx.of_pieces(*pieces), target, whole_pieces=whole)
    return _read(target)


def _points(polyline: Any) -> list[XY]:
    return [(v.dxf.location.x, v.dxf.location.y) for v in polyline.vertices]


def _area(points: list[XY]) -> float:
    ring = zip(points, points[1:] + points[:1], strict=True)
    return abs(sum(a[0] * b[1] - a[1] * b[0] for a, b in ring)) / 2


def _length(points: list[XY]) -> float:
    return sum(math.dist(a, b) for a, b in zip(points, points[1:], strict=False))


def _on(block: BlockLayout, layer: str, kind: str) -> list[Any]:
    return [e for e in block if e.dxf.layer == layer and e.dxftype() == kind]


@pytest.mark.parametrize("piece", fx.six(), ids=lambda p: p.code)
def test_area_notches_and_stitch_lines_come_back(
    tmp_path: Path, piece: DrawnPiece
) -> None:
    whole = opened(piece)
    block = _written(tmp_path, piece).blocks.get(f"{piece.code}-OWN")
    (boundary,) = _on(block, "1", "POLYLINE")
    assert boundary.is_closed
    found = _area(_points(boundary)) / 100
    assert found == pytest.approx(whole.cut_line.area, rel=0.001)
    assert len(_on(block, "80", "POINT")) == len(whole.notches)
    sewn = [p for p in whole.lines if p.meaning in (Meaning.SEW, Meaning.DART)]
    found_lengths = [_length(_points(e)) for e in _on(block, "14", "POLYLINE")]
    wanted = [k.path.length * 10 for k in sewn]
    assert found_lengths == pytest.approx(wanted, abs=0.1 * MM)
    assert len(_on(block, "7", "LINE")) == 1


def test_notches_lie_on_the_boundary_and_corners_are_vertices(tmp_path: Path) -> None:
    block = _written(tmp_path, fx.front()).blocks.get("CF-OWN")
    ring = _points(_on(block, "1", "POLYLINE")[0])
    for e in _on(block, "80", "POINT"):
        p = e.dxf.location
        near = min(
            _off((p.x, p.y), a, b)
            for a, b in zip(ring, ring[1:] + ring[:1], strict=True)
        )
        assert near < 0.001 * MM
    have = {(round(x, 4), round(y, 4)) for x, y in ring}
    marked = [*_on(block, "2", "POINT"), *_on(block, "3", "POINT")]
    assert len(_on(block, "2", "POINT")) >= 8  # five corners, three of them twice
    for e in marked:
        p = e.dxf.location
        assert (round(p.x, 4), round(p.y, 4)) in have


def _off(p: XY, a: XY, b: XY) -> float:
    ux, uy = b[0] - a[0], b[1] - a[1]
    n = ux * ux + uy * uy
    t = max(0.0, min(1.0, ((p[0] - a[0]) * ux + (p[1] - a[1]) * uy) / n)) if n else 0
    return math.dist(p, (a[0] + t * ux, a[1] + t * uy))


def test_points_never_repeat(tmp_path: Path) -> None:
    doc = _written(tmp_path, *fx.six())
    for piece in fx.six():
        ring = _points(_on(doc.blocks.get(f"{piece.code}-OWN"), "1", "POLYLINE")[0])
        steps = zip(ring, ring[1:] + ring[:1], strict=True)
        assert min(math.dist(a, b) for a, b in steps) >= 0.05 * MM


def test_a_half_piece_keeps_its_mirror_line_on_request(tmp_path: Path) -> None:
    block = _written(tmp_path, fx.front(), whole=False).blocks.get("CF-OWN")
    (mirror,) = _on(block, "6", "LINE")
    ring = _points(_on(block, "1", "POLYLINE")[0])
    assert _area(ring) / 100 == pytest.approx(fx.front().cut_line.area, rel=0.001)
    at = mirror.dxf
    edges = list(zip(ring, ring[1:] + ring[:1], strict=True))
    for p in (at.start, at.end):
        assert min(_off((p.x, p.y), a, b) for a, b in edges) < 0.001 * MM


def test_texts_units_and_the_test_line(tmp_path: Path) -> None:
    doc = _written(tmp_path, *fx.six())
    style = [e.dxf.text for e in doc.modelspace() if e.dxftype() == "TEXT"]
    assert "Units: METRIC" in style
    assert "Style Name: Peplum top, order 7" in style
    inserts = [e for e in doc.modelspace() if e.dxftype() == "INSERT"]
    assert len(inserts) == 6
    assert all(tuple(e.dxf.insert) == (0, 0, 0) for e in inserts)
    back = doc.blocks.get("BK-OWN")
    texts = [e.dxf.text for e in back if e.dxftype() == "TEXT"]
    assert {"Piece Name: BK Back", "Size: OWN", "Quantity: 1,1"} <= set(texts)
    assert "Annotation: lining: cut 2 (1 pair)" in texts
    lines = _on(doc.blocks.get("CF-OWN"), "8", "LINE")
    spans = [math.dist(e.dxf.start, e.dxf.end) for e in lines]
    assert any(abs(s - 100 * MM) < 0.001 * MM for s in spans)
    for e in lines:
        assert min(e.dxf.start.x, e.dxf.end.x) >= 0  # inside the piece


def test_the_date_of_making_is_told(tmp_path: Path) -> None:
    """Among the style texts (ASTM D6673-10): that of the measures unless another is
    given, so that one order makes the same file on any day."""
    target = tmp_path / "a.dxf"
    taken, told, undated = date(2026, 5, 3), date(2027, 2, 6), date(2000, 1, 1)
    without = replace(fx.pattern(), taken=None)
    for drawn, created, said in (
        (fx.pattern(), None, taken),
        (fx.pattern(), told, told),
        (without, None, undated),
    ):
        write_dxf(drawn, target, created=created)
        texts = [e.dxf.text for e in _read(target).modelspace().query("TEXT")]
        assert f"Creation Date: {said.isoformat()}" in texts


@pytest.mark.parametrize("name", ORDERS)
def test_the_demo_s_files_pass_an_auditor(name: str, tmp_path: Path) -> None:
    """ezdxf reads them plainly, without recovering, and its auditor has nothing to
    mend; every notch is one T, and loops are lines, never cuts."""
    target = tmp_path / "a.dxf"
    drawn = made(name).drawn
    write_dxf(drawn, target)
    doc = ezdxf.filemanagement.readfile(target)
    auditor = doc.audit()
    assert not auditor.errors
    assert not auditor.fixes
    for piece in drawn.pieces:
        code = "".join(c if c.isalnum() else "-" for c in piece.code)
        block = doc.blocks.get(f"{code}-OWN")
        assert len(_on(block, "80", "POINT")) == len(opened(piece).notches)
        loops = [k for k in piece.lines if k.meaning is Meaning.LOOP]
        assert len(_on(block, "8", "POLYLINE")) >= len(loops)


def test_y_points_up(tmp_path: Path) -> None:
    """The neck of the back (small y on the page) lies above the hem in the file."""
    block = _written(tmp_path, fx.back()).blocks.get("BK-OWN")
    grain = _on(block, "7", "LINE")[0].dxf
    assert grain.start.y > grain.end.y  # drawn from the neck down
    assert grain.start.x > 0


def test_only_plain_r12_and_ascii(tmp_path: Path) -> None:
    target = tmp_path / "a.dxf"
    write_dxf(fx.pattern(("Side seams differ by ⅜ in.",)), target)
    text = target.read_bytes().decode("ascii")
    assert "AC1009" in text
    assert "CHECK FAILED: Side seams differ by 3/8 in." in text
    assert "13 3/8 in" in text
    assert "\\U+" not in text
    doc = _read(target)
    kinds = {e.dxftype() for b in doc.blocks for e in b}
    kinds |= {e.dxftype() for e in doc.modelspace()}
    assert kinds <= {"POLYLINE", "POINT", "LINE", "TEXT", "INSERT"}
    layers = {e.dxf.layer for b in doc.blocks for e in b}
    assert all(re.fullmatch(r"\d+", k) for k in layers)


def test_written_twice_the_file_is_the_same(
    tmp_path: Path, capfd: pytest.CaptureFixture[str]
) -> None:
    write_dxf(fx.pattern(), tmp_path / "a.dxf")
    write_dxf(fx.pattern(), tmp_path / "b.dxf")
    assert (tmp_path / "a.dxf").read_bytes() == (tmp_path / "b.dxf").read_bytes()
    assert capfd.readouterr() == ("", "")


def test_a_missing_folder_is_told(tmp_path: Path) -> None:
    with pytest.raises(SheetError, match="no such folder"):
        write_dxf(fx.pattern(), tmp_path / "no" / "a.dxf")
