"""The button that closes the stand of a collar over a button stand (transformations 5
and 7): a collar's stand runs on as far as the button stand, and laps over as that does.
"""

from clothwright.curves import Path, Point, Vector
from clothwright.features.openings.button_rules import SHANK
from clothwright.paper import InnerLine, Mark, MarkKind, Piece, Sheet
from clothwright.rules import Numbers

HOLE = "buttonhole of the stand"
"""Name of its line on the stand."""

FASTENED = "fastener of the stand"
"""Name of the mark there where press studs or hooks close the front."""


def laps_for_button(n: Numbers, more: float) -> bool:
    """True where a row of buttons stands on the centre line and the stand of the collar
    runs on beyond it by so much, cm."""
    return "b_hole" in n and n.b_row == 0 and more > SHANK


def with_button(n: Numbers, stand: Piece, at: Point, way: Vector, high: float) -> Piece:
    """The stand with its button on the centre line, half way up; `at` is its foot
    there, `way` runs along the foot to the end that laps over, `high` its height, cm.
    The buttonhole lies along the stand and begins beyond the line, as one that lies
    across a button stand."""
    up = Vector(way.y, -way.x) if way.x > 0 else Vector(-way.y, way.x)
    p = at + up * (high / 2)
    if "f_apart" in n:
        return stand.with_marks(Mark(FASTENED, p, MarkKind.BUTTON))
    begin = p + way * SHANK
    hole = InnerLine(HOLE, Path.line(begin, begin - way * n.b_hole))
    button = Mark("button of the stand", p, MarkKind.BUTTON)
    return stand.with_marks(button).with_lines(hole)


def on_stand(sheet: Sheet) -> int:
    """Buttons on the stand of a collar."""
    return sum(k.name == HOLE for p in sheet.pieces.values() for k in p.lines)
