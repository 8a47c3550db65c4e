"""The pattern as one picture: SVG in millimetres, every curve a true cubic.

One user unit is one millimetre of paper. Each piece is a group whose id is its code,
each line in it has an id too, so that the parts can be found in any drawing program.
"""

import re
from collections import Counter
from collections.abc import Sequence
from html import escape
from pathlib import Path as FilePath

from clothwright.curves import Path, Point
from clothwright.finishing.drawn import (
    DrawnPattern,
    DrawnPiece,
    DrawnText,
    Meaning,
)
from clothwright.sheets.arrange import arrange
from clothwright.sheets.formats import ROLL_WIDTH, PageFormat, Scale, frame_of
from clothwright.sheets.letters import CAPITAL
from clothwright.sheets.looks import Stroke, scaled, strokes
from clothwright.sheets.write import write_file

MM = 10.0
"""Millimetres in a centimetre."""

AIR = 1.0
"""Empty paper round the drawing, cm."""


class SvgPen:
    """Listens to a path and writes SVG path data in mm."""

    def __init__(self) -> None:
        self.words: list[str] = []

    def moveTo(self, pt: tuple[float, float]) -> None:
        """Lift the pen and set it down."""
        self.words.append("M" + _pair(pt))

    def lineTo(self, pt: tuple[float, float]) -> None:
        """A straight line."""
        self.words.append("L" + _pair(pt))

    def curveTo(self, *points: tuple[float, float]) -> None:
        """A cubic."""
        self.words.append("C" + " ".join(map(_pair, points)))

    def closePath(self) -> None:
        """Close the loop."""
        self.words.append("Z")

    def endPath(self) -> None:
        """Leave the line open."""


def write_svg(pattern: DrawnPattern, target: FilePath) -> None:
    """Write all pieces at full scale, laid side by side, as one SVG file.

    Raises SheetError when the file cannot be written.
    """
    write_file(target, svg_of(pattern).encode())


def svg_of(pattern: DrawnPattern, scale: Scale = Scale.FULL) -> str:
    """The picture as text, laid as on a roll of the usual width."""
    frame = frame_of(PageFormat.ROLL, ROLL_WIDTH)
    pieces = [scaled(p, scale.value) for p in pattern.pieces]
    laid = arrange(pieces, frame, whole=True).pieces
    out = headed(pattern.title, about(pattern, scale), laid)
    taken: Counter[str] = Counter()
    for piece in laid:
        name = id_of(piece.code, taken)
        out.append(f'<g id="{name}"><title>{escape(piece.name, quote=False)}</title>')
        for stroke in strokes(piece, figure=scale.value):
            key = id_of(f"{name}.{stroke.meaning.name}.{stroke.note}", taken)
            out.append(stroke_of(stroke, key))
        out.extend(text_of(t) for t in piece.texts)
        out.append("</g>")
    out.append("</svg>\n")
    return "\n".join(out)


def headed(title: str, described: str, laid: Sequence[DrawnPiece]) -> list[str]:
    """The first lines of a picture on which these pieces lie."""
    boxes = [p.cut_line.bounds() for p in laid]
    wide = max((b[2] for b in boxes), default=1.0) + 2 * AIR
    tall = max((b[3] for b in boxes), default=1.0) + 2 * AIR
    size = f'width="{_n(wide)}mm" height="{_n(tall)}mm"'
    box = f"{_n(-AIR)} {_n(-AIR)} {_n(wide)} {_n(tall)}"
    return [
        f'<svg xmlns="http://www.w3.org/2000/svg" {size} viewBox="{box}">',
        f"<title>{escape(title, quote=False)}</title>",
        f"<desc>{escape(described, quote=False)}</desc>",
    ]


def about(pattern: DrawnPattern, scale: Scale) -> str:
    """What is told of a pattern as a whole."""
    said = [
        pattern.whose,
        f"scale {scale.value:g}, 1 unit = 1 mm",
        pattern.allowance_note,
        *(f"FAILED: {f}" for f in pattern.failures),
        *pattern.cautions,
        *pattern.notes,
    ]
    return "\n".join(said)


def stroke_of(stroke: Stroke, key: str) -> str:
    """A stroke as a path with an id."""
    look = stroke.look
    dashes = " ".join(f"{d:g}" for d in look.dashes)
    dash = f' stroke-dasharray="{dashes}"' if dashes else ""
    if look.phase:
        dash += f' stroke-dashoffset="{look.phase:.3f}"'
    fill = "black" if stroke.solid else "none"
    kind = escape(stroke.meaning.value)
    return (
        f'<path id="{key}" class="{kind}" d="{path_data(stroke.path)}" fill="{fill}" '
        f'stroke="black" stroke-width="{look.width:g}"{dash}/>'
    )


def text_of(t: DrawnText, *, halo: bool = False) -> str:
    """Words of a piece; with a `halo`, on white paper of their own."""
    x, y = _n(t.at.x), _n(t.at.y)
    turn = f' transform="rotate({t.degrees:g} {x} {y})"' if t.degrees else ""
    weight = ' font-weight="bold"' if t.bold else ""
    light = ' fill="#444"' if t.meaning is Meaning.DIMENSION else ""
    if halo:
        white = f"{t.height * MM * 0.3:.2f}"
        light = f' stroke="white" stroke-width="{white}" paint-order="stroke"'
    size = _n(t.height / CAPITAL)
    drop = _n(t.height / 2)
    return (
        f'<text x="{x}" y="{y}" dy="{drop}" font-size="{size}" text-anchor="middle" '
        f"font-family=\"'DejaVu Sans', sans-serif\"{weight}{light}{turn}>"
        f"{escape(t.text, quote=False)}</text>"
    )


def path_data(path: Path) -> str:
    """A path as SVG writes it, mm."""
    pen = SvgPen()
    path.draw(pen)
    return "".join(pen.words)


def id_of(words: str, taken: Counter[str]) -> str:
    """A name that is unique in the file and legal as an id."""
    base = re.sub(r"[^A-Za-z0-9_.-]+", "-", words).strip("-.") or "line"
    if not base[0].isalpha():
        base = f"p{base}"
    taken[base] += 1
    return base if taken[base] == 1 else f"{base}.{taken[base]}"


def _pair(p: tuple[float, float] | Point) -> str:
    return f"{_n(p[0])},{_n(p[1])}"


def _n(cm: float) -> str:
    """Millimetres to a ten-thousandth, without trailing noughts."""
    text = f"{cm * MM:.4f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text
