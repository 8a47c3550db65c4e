"""Pieces for other cutting-room programs: DXF that follows ASTM D6673-10.

Millimetres, y up, R12 entities only, one block a piece, curves as polylines that stray
at most 0.01 mm. Layers by their bare numbers, as published: 1 boundary and piece
texts, 2 turn points, 3 curve points, 6 mirror line, 7 grain, 8 internal lines, 13
drill holes, 14 sew lines, 15 annotation, 80 T notches. The boundary is the cut line.
"""

import io
import math
from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date
from pathlib import Path as FilePath
from typing import TYPE_CHECKING

from clothwright.curves import (
    Cubic,
    Path,
    Point,
    degrees_between,
    distance,
    heading,
    shift,
)
from clothwright.finishing.drawn import (
    CutCount,
    DrawnPattern,
    DrawnPiece,
    DrawnText,
    Meaning,
)
from clothwright.sheets.looks import divided, moved
from clothwright.sheets.plain import plain
from clothwright.sheets.whole import opened
from clothwright.sheets.write import write_file

if TYPE_CHECKING:
    from ezdxf.layouts.blocklayout import BlockLayout

FLAT = 0.001
"""How far a chord strays from its curve, cm."""

NEAR = 0.005
"""Points closer than this are one point, cm (D6673 readers: 0.05 mm)."""

ONE_MARK = 0.1
"""Drill strokes whose middles are closer than this are one cross, cm."""

CORNER = 1.0
"""A turn of more than this many degrees is a corner (truing 11.5)."""

APART = 5.0
"""Between pieces in the file, cm."""

MM = 10.0
TEXT = 5.0
"""Height of the piece texts, mm."""

UNDATED = date(2000, 1, 1)
"""The date in the file where the measures have none: as in a PDF, the same always."""

SIZE = "OWN"
"""The one size of a pattern made to measure."""

_LAYERS = ("1", "2", "3", "6", "7", "8", "13", "14", "15", "80")

_POLYLINES = {
    Meaning.SEW: "14",
    Meaning.DART: "14",
    Meaning.INNER: "8",
    Meaning.PLACEMENT: "8",
    Meaning.ARROW: "8",
    Meaning.LOOP: "8",
    Meaning.TAPE: "8",
    Meaning.EASE: "8",
}


def write_dxf(
    pattern: DrawnPattern,
    target: FilePath,
    *,
    whole_pieces: bool = True,
    created: date | None = None,
) -> None:
    """Write all pieces as one DXF file.

    `whole_pieces` opens out the halves that lie on the fold; without it they keep a
    mirror line. `created` is the date in the file: that of the measures, unless
    told. Raises SheetError when the file cannot be written.
    """
    text = dxf_of(pattern, whole_pieces=whole_pieces, created=created)
    write_file(target, text.encode("ascii"))


def dxf_of(
    pattern: DrawnPattern, *, whole_pieces: bool = True, created: date | None = None
) -> str:
    """The file's text."""
    pieces = _side_by_side(pattern.pieces, whole_pieces)
    return file_of(pattern, [(SIZE, p) for p in pieces], SIZE, created)


def file_of(
    pattern: DrawnPattern,
    blocks: Sequence[tuple[str, DrawnPiece]],
    sample: str,
    created: date | None = None,
) -> str:
    """A file with a block for each size and piece, where they lie; `sample` is the size
    that the style is made for."""
    from ezdxf._options import options
    from ezdxf.document import Drawing

    before = options.write_fixed_meta_data_for_testing
    options.write_fixed_meta_data_for_testing = True
    try:
        doc = Drawing.new("R12")
        for name in _LAYERS:
            doc.layers.add(name)
        taken: Counter[str] = Counter()
        for i, (size, piece) in enumerate(blocks):
            name = _block_name(piece.code, size, taken)
            block = doc.blocks.new(name)
            _Block(block).piece(piece, pattern.title, size, first=i == 0)
            doc.modelspace().add_blockref(name, (0, 0), dxfattribs={"layer": "1"})
        said = _style_texts(pattern, sample, created or pattern.taken or UNDATED)
        for i, text in enumerate(said):
            doc.modelspace().add_text(
                text,
                height=TEXT,
                dxfattribs={"layer": "1", "insert": (0, (i + 1) * 2 * TEXT)},
            )
        boxes = [p.cut_line.bounds() for _, p in blocks]
        right = max((b[2] for b in boxes), default=0.0) * MM
        low = -max((b[3] for b in boxes), default=0.0) * MM
        doc.modelspace().reset_extents((0.0, low, 0.0), (right, 0.0, 0.0))
        out = io.StringIO()
        doc.write(out)
        return out.getvalue()
    finally:
        options.write_fixed_meta_data_for_testing = before


def _style_texts(pattern: DrawnPattern, sample: str, created: date) -> list[str]:
    """What is said of the style as a whole; the date as ISO 8601 writes it."""
    said = [
        "ASTM D6673-10",
        f"Creation Date: {created.isoformat()}",
        "Author: Clothwright",
        f"Style Name: {plain(pattern.title)}",
        f"Sample Size: {plain(sample)}",
        "Grade Rule Table: ",
        "Units: METRIC",
        f"Annotation: {plain(pattern.whose)}",
        "Annotation: lengths are millimetres, see the 100 mm line on layer 8",
        "Annotation: the boundary is the cut line",
        f"Annotation: {plain(pattern.allowance_note)}",
    ]
    said += [f"Annotation: CHECK FAILED: {plain(f)}" for f in pattern.failures]
    said += [f"Annotation: {plain(f)}" for f in (*pattern.cautions, *pattern.notes)]
    return said


def _block_name(code: str, size: str, taken: Counter[str]) -> str:
    """Letters, digits and hyphens: CF-OWN."""
    base, end = (
        "".join(c if c.isalnum() else "-" for c in plain(word)) or "PIECE"
        for word in (code, size)
    )
    taken[f"{base}-{end}"] += 1
    n = taken[f"{base}-{end}"]
    again = f"-{n}" if n > 1 else ""
    return f"{base}{again}-{end}"


def _side_by_side(pieces: Iterable[DrawnPiece], whole: bool) -> list[DrawnPiece]:
    """The pieces in one row, unturned, so that the grain stays as it was."""
    out, x = [], 0.0
    for piece in pieces:
        p = opened(piece) if whole else piece
        left, top, right, _ = p.cut_line.bounds()
        out.append(moved(p, shift((x - left, -top))))
        x += right - left + APART
    return out


@dataclass(frozen=True)
class _Block:
    """Writes one piece into its block."""

    block: "BlockLayout"

    def piece(self, piece: DrawnPiece, style: str, size: str, *, first: bool) -> None:
        """Everything of a piece."""
        ring = _boundary(piece.cut_line)
        self.polyline([p for p, _ in ring], "1", close=True)
        for p, layer in ring:
            if layer:
                self.block.add_point(_up(p), dxfattribs={"layer": layer})
        for line in piece.lines:
            if line.meaning in _POLYLINES:
                points = _thinned(line.path.flatten(FLAT))
                self.polyline(points, _POLYLINES[line.meaning])
            elif line.meaning is Meaning.GRAIN:
                ends = _up(line.path.start), _up(line.path.end)
                self.block.add_line(*ends, dxfattribs={"layer": "7"})
        for fold in divided(piece)[1]:
            ends = _up(fold.start), _up(fold.end)
            self.block.add_line(*ends, dxfattribs={"layer": "6"})
        for middle in _drilled(piece):
            self.block.add_point(_up(middle), dxfattribs={"layer": "13"})
        self.notches(piece, [p for p, _ in ring])
        for text in piece.texts:
            self.words(text)
        box = piece.cut_line.bounds()
        if first:
            y = (box[1] + box[3]) / 2
            x = (box[0] + box[2]) / 2
            a, b = Point(x - 5.0, y), Point(x + 5.0, y)
            self.block.add_line(_up(a), _up(b), dxfattribs={"layer": "8"})
        for i, said in enumerate(_piece_texts(piece, style, size)):
            at = box[0] * MM, -box[3] * MM - (i + 1) * 2 * TEXT
            self.block.add_text(
                said, height=TEXT, dxfattribs={"layer": "1", "insert": at}
            )

    def polyline(self, points: list[Point], layer: str, *, close: bool = False) -> None:
        """A polyline through points."""
        self.block.add_polyline2d(
            [_up(p) for p in points], close=close, dxfattribs={"layer": layer}
        )

    def notches(self, piece: DrawnPiece, ring: list[Point]) -> None:
        """A point on the boundary for every tick, with its depth and direction."""
        for notch in piece.notches:
            on = _on_ring(notch.outer, ring)
            inward = notch.net - notch.outer
            self.block.add_point(
                _up(on),
                dxfattribs={
                    "layer": "80",
                    "thickness": round(distance(notch.outer, notch.net) * MM, 4),
                    "angle": round(-heading(inward) % 360, 4),
                },
            )

    def words(self, text: DrawnText) -> None:
        """Annotation as it stands on the paper."""
        from ezdxf.enums import TextEntityAlignment

        made = self.block.add_text(
            plain(text.text),
            height=round(text.height * MM, 4),
            rotation=round(-text.degrees % 360, 4),
            dxfattribs={"layer": "15"},
        )
        made.set_placement(_up(text.at), align=TextEntityAlignment.MIDDLE_CENTER)


def _piece_texts(piece: DrawnPiece, style: str, size: str) -> list[str]:
    first = piece.cuts[0] if piece.cuts else CutCount("", 1, "1")
    said = [
        f"Piece Name: {plain(piece.code)} {plain(piece.name)}",
        f"Size: {plain(size)}",
        f"Quantity: {_quantity(first)}",
        f"Material: {plain(first.cloth)}",
        f"Annotation: {plain(style)}",
    ]
    said += [f"Annotation: {plain(c.cloth)}: cut {plain(c.how)}" for c in piece.cuts]
    return said


def _drilled(piece: DrawnPiece) -> list[Point]:
    """The middle of every drill mark; the two strokes of a cross are one mark."""
    out: list[Point] = []
    for line in piece.lines:
        if line.meaning is not Meaning.DRILL:
            continue
        left, top, right, foot = line.path.bounds()
        p = Point((left + right) / 2, (top + foot) / 2)
        if all(distance(p, q) > ONE_MARK for q in out):
            out.append(p)
    return out


def _quantity(cut: CutCount) -> str:
    """As drawn, or as drawn and mirrored."""
    if "pair" in cut.how and cut.count % 2 == 0:
        return f"{cut.count // 2},{cut.count // 2}"
    return str(cut.count)


def _up(p: Point) -> tuple[float, float]:
    """Millimetres, y up."""
    return round(p.x * MM, 5), round(-p.y * MM, 5) + 0.0


def _thinned(points: list[Point]) -> list[Point]:
    """Without points that repeat the one before; the last one stays."""
    out = [points[0]]
    for p in points[1:-1]:
        if distance(p, out[-1]) > NEAR and distance(p, points[-1]) > NEAR:
            out.append(p)
    return [*out, points[-1]]


def _boundary(outline: Path) -> list[tuple[Point, str]]:
    """The vertices of an outline: corners (layer 2), curve points (3), others ("")."""
    ring: list[tuple[Point, str]] = []
    segments = outline.segments
    for i, s in enumerate(segments):
        turn = degrees_between(segments[i - 1].end_direction, s.start_direction)
        ring.append((s.start, "2" if turn > CORNER else "3"))
        if not isinstance(s, Cubic):
            continue
        inner = Path((s,)).flatten(FLAT)[1:-1]
        marked = {len(inner) * k // 4 for k in (1, 2, 3)} if len(inner) > 6 else set()
        ring.extend((p, "3" if j in marked else "") for j, p in enumerate(inner))
    out: list[tuple[Point, str]] = []
    for p, layer in ring:
        if out and distance(p, out[-1][0]) <= NEAR:
            if layer:
                out[-1] = (p, min(layer, out[-1][1] or layer))
            continue
        out.append((p, layer))
    while len(out) > 3 and distance(out[-1][0], out[0][0]) <= NEAR:
        out.pop()
    return out


def _on_ring(p: Point, ring: list[Point]) -> Point:
    """The place on a closed polyline nearest to a point."""
    best, found = math.inf, p
    for a, b in zip(ring, (*ring[1:], ring[0]), strict=True):
        u = b - a
        n = u.x * u.x + u.y * u.y
        t = ((p.x - a.x) * u.x + (p.y - a.y) * u.y) / n if n else 0.0
        q = a + u * min(1.0, max(0.0, t))
        d = distance(p, q)
        if d < best:
            best, found = d, q
    return found
