"""The table: finished pieces as plain data for the page, laid out as half a body.

Lengths are cm; coordinates are mm in the piece's own frame, y down, with `at` its place
on the table, so that a piece that is moved is not sent again. A piece is finished anew
only when it, or a seam that it stands in, is another one than before.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

import numpy as np
from numpy.typing import NDArray

from clothwright.app.words import Reading
from clothwright.curves import Path, Point, distance
from clothwright.features.base import Pin
from clothwright.findings import Finding
from clothwright.finishing.allowances import check_partners
from clothwright.finishing.drawn import DrawnPiece, Meaning
from clothwright.finishing.finish import Finishing, unlettered
from clothwright.order import Draft
from clothwright.order.pattern import finishing_of
from clothwright.paper import Piece, Seam, SeamKind, Sheet
from clothwright.sheets.dimensions import edge_words
from clothwright.sheets.looks import strokes
from clothwright.sheets.svg import MM
from clothwright.truing import walk

ROWS = (
    ("B", "BC", "BS", "FS", "FC", "F"),
    ("PB", "PBC", "PBS", "PFS", "PFC", "PF"),
    ("SB", "SF"),
    ("TB", "TF"),
)
"""Pieces of half a body side by side, centre back at the left; all others lie in
columns to their right."""

GAP = 3.0
"""Bare table between pieces, cm."""

Data = dict[str, Any]


@dataclass(frozen=True)
class _Kept:
    piece: Piece
    seams: tuple[Seam, ...]
    wish: tuple[object, ...]
    data: Data
    found: tuple[Finding, ...]
    pulled: bool
    """Its name may stand where it stood before a number was pulled."""


@dataclass
class Table:
    """Keeps the pieces as last sent, so that only what changed is finished anew."""

    kept: dict[str, _Kept] = field(default_factory=dict)
    places: Mapping[str, tuple[float, float]] = field(default_factory=dict)

    def lay(self, draft: Draft, *, stay: bool = False) -> Data:
        """All pieces of a draft, with their places, rows and seams, and what finishing
        has found (`found`). Pieces may `stay` where the same ones lay before."""
        f = finishing_of(draft, words=False)
        fresh = {code: self._piece(draft.sheet, code, f, stay) for code in f.order}
        self.kept = fresh
        if not (stay and self.places.keys() == set(f.order)):
            self.places = _places(draft.sheet, f.order)
        return {
            "pieces": {code: k.data for code, k in fresh.items()},
            "places": {code: list(at) for code, at in self.places.items()},
            "rows": [[c for c in row if c in f.order] for row in ROWS],
            "seams": {s.code: _seam(draft.sheet, s) for s in draft.sheet.seams},
            "found": (
                *check_partners(draft.sheet, f.allowances),
                *(x for k in fresh.values() for x in k.found),
            ),
        }

    def _piece(self, sheet: Sheet, code: str, f: Finishing, stay: bool) -> _Kept:
        piece = sheet.piece(code)
        seams = tuple(s for s in sheet.seams if any(r.piece == code for r in s.runs()))
        roles = [f.allowances.role(piece, e.name) for e in piece.edges]
        wish = (f.nap, f.allowances.unit, *roles, f.cuts.get(code), f.order)
        old = self.kept.get(code)
        same = old and old.piece is piece and old.seams == seams and old.wish == wish
        if old and same and (stay or not old.pulled):
            return old
        bare = unlettered(sheet, code, f)
        label = old.data["label"] if old and stay else _label(bare.drawn)
        data = _data(piece, bare.drawn, seams, label)
        return _Kept(piece, seams, wish, data, bare.found, stay)


def _data(
    piece: Piece, drawn: DrawnPiece, seams: tuple[Seam, ...], label: list[float]
) -> Data:
    left, top, right, bottom = drawn.cut_line.bounds()
    sewn: dict[str, list[str]] = {e.name: [] for e in piece.edges}
    for seam in seams:
        for name in dict.fromkeys(r.edge for r in seam.runs() if r.piece == piece.code):
            sewn[name].append(seam.code)
    return {
        "name": piece.name,
        "cuts": [[c.cloth, c.how] for c in drawn.cuts],
        "box": [_mm(v) for v in (left, top, right - left, bottom - top)],
        "cut": _d(drawn.cut_line),
        "label": label,
        "lines": [
            {
                "is": s.meaning.value,
                "d": _d(s.path),
                **({"solid": 1} if s.solid else {}),
            }
            for s in strokes(drawn, figure=0.8)
            if s.note != "cut line"
        ],
        "edges": [
            {
                "id": f"{piece.code}.{e.name}",
                "name": edge_words(e.name),
                "d": _d(e.path),
                "length": round(e.length, 4),
                "is": e.kind.value,
                "seams": sewn[e.name],
            }
            for e in piece.edges
        ],
    }


def _seam(sheet: Sheet, seam: Seam) -> Data:
    w = walk(sheet, seam)
    return {
        "name": seam.name,
        "kind": seam.kind.value,
        "left": [[str(r), int(r.backward)] for r in seam.left],
        "right": [[str(r), int(r.backward)] for r in seam.right],
        "start": seam.start,
        "end": seam.end,
        "lengths": [round(w.left, 4), round(w.right, 4)],
        "ease": round(w.ease, 4),
        "plan": round(seam.ease.plan, 4),
        "holds": w.holds,
        "notches": [[round(n.left, 3), round(n.right, 3)] for n in seam.notches],
        "twin": seam.kind is SeamKind.TWIN,
    }


def pins(r: Reading) -> list[Data]:
    """Points that a sentence names, where a hand may pull."""
    if r.draft is None:
        return []
    out = []
    for f in r.features:
        numbers = f.numbers()
        for pin in f.pins:
            found = stands(r.draft.sheet, pin)
            if found is not None:
                piece, at, way = found
                number = numbers[pin.field]
                out.append(
                    {
                        "of": f"{f.kind}.{pin.field}",
                        "name": number.name,
                        "piece": piece,
                        "at": [_mm(at.x), _mm(at.y)],
                        "way": [round(way.x, 5), round(way.y, 5)],
                        "value": r.draft.numbers[number.key],
                        "low": number.low,
                        "high": number.high,
                    }
                )
    return out


def stands(sheet: Sheet, pin: Pin) -> tuple[str, Point, Point] | None:
    """The piece, the corner and the way of a pin; None when it is not on the table."""
    for code in pin.pieces:
        if code not in sheet.pieces:
            continue
        piece = sheet.piece(code)
        if not all(piece.has(e) for e in pin.edges):
            return None
        a, b = (piece.edge(e).path for e in pin.edges)
        at, way = (b.start, b.start_direction)
        if min(distance(b.start, p) for p in (a.start, a.end)) > min(
            distance(b.end, p) for p in (a.start, a.end)
        ):
            at, way = b.end, b.end_direction * -1
        return code, at, Point(*pin.way) if pin.way else way
    return None


# -- layout --------------------------------------------------------------------------
def _places(sheet: Sheet, order: tuple[str, ...]) -> Mapping[str, tuple[float, float]]:
    """Where each piece lies, mm: half a body with its waists level, the small pieces
    below or at the right, as far as that shows the paper largest."""
    box = {c: sheet.piece(c).outline.bounds() for c in order}
    step = GAP + 2.0
    main: dict[str, tuple[float, float]] = {}
    y = wide = 0.0
    for i, names in enumerate(ROWS):
        row = [c for c in names if c in order]
        tall = max((_tall(box[c]) for c in row), default=-step)
        x = 0.0
        for c in row:
            main[c] = (x, y + (tall - _tall(box[c]) if i == 0 else 0.0))
            x += _wide(box[c]) + step
        wide, y = max(wide, x), y + tall + step
    small = [c for c in order if c not in main]
    below = (_rows(small, box, wide * k, y) for k in FURTHER)
    beside = (_columns(small, box, wide, y * k) for k in FURTHER)
    laid = ({**main, **rest} for rest in (*below, *beside))
    best = max(laid, key=lambda places: _shown(places, box))
    return {c: (_mm(x - box[c][0]), _mm(y - box[c][1])) for c, (x, y) in best.items()}


def _rows(
    small: list[str], box: Mapping[str, "Box"], wide: float, y: float
) -> dict[str, tuple[float, float]]:
    out = {}
    x = tall = 0.0
    for c in small:
        if x > 0 and x + _wide(box[c]) > wide:
            x, y, tall = 0.0, y + tall + GAP, 0.0
        out[c] = (x, y)
        x, tall = x + _wide(box[c]) + GAP + 2.0, max(tall, _tall(box[c]))
    return out


def _columns(
    small: list[str], box: Mapping[str, "Box"], x: float, tall: float
) -> dict[str, tuple[float, float]]:
    out = {}
    y = column = 0.0
    for c in small:
        if y > 0 and y + _tall(box[c]) > tall:
            x, y, column = x + column + GAP + 2.0, 0.0, 0.0
        out[c] = (x, y)
        y, column = y + _tall(box[c]) + GAP, max(column, _wide(box[c]))
    return out


FURTHER = (1.0, 1.25, 1.5, 2.0, 2.5)
"""The small pieces may reach so many times as far as the half body does."""

ASPECT = 0.9
"""Width to height of the table beside a slip, as most screens give it."""


def _shown(laid: Mapping[str, tuple[float, float]], box: Mapping[str, "Box"]) -> float:
    """How large paper laid so is seen."""
    wide = max(x + _wide(box[c]) for c, (x, _) in laid.items())
    tall = max(y + _tall(box[c]) for c, (_, y) in laid.items())
    return min(ASPECT / wide, 1.0 / tall)


Box = tuple[float, float, float, float]


def _wide(box: Box) -> float:
    return box[2] - box[0]


def _tall(box: Box) -> float:
    return box[3] - box[1]


def _label(drawn: DrawnPiece) -> list[float]:
    """Where a piece's name stands, and the room round it, mm."""
    at, *room = _label_at(drawn)
    return [_mm(at.x), _mm(at.y), *map(_mm, room)]


def _label_at(drawn: DrawnPiece) -> tuple[Point, float, float, float]:
    """The place inside a piece that is farthest from its lines, on a grid of 9 by 9,
    how far that is, and how far words reach to both sides and up and down, cm."""
    inner = (
        Meaning.SEW,
        Meaning.GRAIN,
        Meaning.INNER,
        Meaning.PLACEMENT,
        Meaning.DRILL,
        Meaning.DART,
        Meaning.BRACKET,
    )
    paths = [k.path for k in drawn.lines if k.meaning in inner]
    lines = [drawn.cut_line.flatten(0.4), *(p.flatten(0.4) for p in paths)]
    starts = np.array([p for line in lines for p in line[:-1]])
    ends = np.array([p for line in lines for p in line[1:]])
    left, top, right, bottom = drawn.cut_line.bounds()
    step = np.arange(1, 9) / 9
    x, y = left + (right - left) * step, top + (bottom - top) * step
    grid = np.column_stack((np.repeat(x, 8), np.tile(y, 8)))
    around = len(lines[0]) - 1
    grid = grid[_inside(starts[:around], ends[:around], grid)]
    if not len(grid):
        return drawn.cut_line.start, 0.0, 0.0, 0.0
    near = _off(starts, ends, grid)
    best = int(near.argmax())
    at, room = Point(*map(float, grid[best])), float(near[best])
    across = reach(starts, ends, at, room)
    down = reach(starts[:, ::-1], ends[:, ::-1], Point(at.y, at.x), room)
    return at, room, across, down


Places = NDArray[np.float64]
"""Points as rows of x and y."""


def _off(starts: Places, ends: Places, points: Places) -> Places:
    """How far each of some points is from the nearest of some straight lines."""
    way = ends - starts
    long = np.maximum((way * way).sum(axis=1), 1e-12)
    x = points[:, :1] - starts[:, 0]
    y = points[:, 1:] - starts[:, 1]
    t = np.clip((x * way[:, 0] + y * way[:, 1]) / long, 0.0, 1.0)
    x, y = x - t * way[:, 0], y - t * way[:, 1]
    least: Places = np.sqrt((x * x + y * y).min(axis=1))
    return least


def reach(starts: Places, ends: Places, at: Point, room: float) -> float:
    """How far a band half as high as the room goes to both sides of a point before it
    meets a line."""
    low = np.minimum(starts[:, 1], ends[:, 1]) <= at.y + room / 2
    high = np.maximum(starts[:, 1], ends[:, 1]) >= at.y - room / 2
    met = low & high
    (x0, y0), (x1, y1) = starts[met].T, ends[met].T
    rise = np.where(y1 == y0, 1.0, y1 - y0)
    inside = np.stack(((at.y - room / 2 - y0) / rise, (at.y + room / 2 - y0) / rise))
    inside[:, y1 == y0] = np.array([[0.0], [1.0]])
    x = x0 + (x1 - x0) * inside.clip(0.0, 1.0)  # of the part that lies in the band
    return float(np.abs(x - at.x).min(initial=100.0))


def _inside(starts: Places, ends: Places, points: Places) -> NDArray[np.bool_]:
    """Which of some points lie inside a closed outline (even-odd rule)."""
    (x0, y0), (x1, y1) = starts.T, ends.T
    x, y = points[:, :1], points[:, 1:]
    over = (y0 > y) != (y1 > y)
    rise = np.where(y1 == y0, 1.0, y1 - y0)
    hits = over & (x < x0 + (y - y0) * (x1 - x0) / rise)
    odd: NDArray[np.bool_] = hits.sum(axis=1) % 2 == 1
    return odd


class _ScreenPen:
    """Listens to a path and writes SVG path data in mm, to a hundredth."""

    def __init__(self) -> None:
        self.words: list[str] = []

    def moveTo(self, pt: tuple[float, float]) -> None:
        """Lift the pen and set it down."""
        self.words.append(f"M{pt[0] * MM:.2f} {pt[1] * MM:.2f}")

    def lineTo(self, pt: tuple[float, float]) -> None:
        """A straight line."""
        self.words.append(f"L{pt[0] * MM:.2f} {pt[1] * MM:.2f}")

    def curveTo(self, *points: tuple[float, float]) -> None:
        """A cubic."""
        (a, b), (c, d), (e, f) = points
        self.words.append(
            f"C{a * MM:.2f} {b * MM:.2f} {c * MM:.2f} {d * MM:.2f} "
            f"{e * MM:.2f} {f * MM:.2f}"
        )

    def closePath(self) -> None:
        """Close the loop."""
        self.words.append("Z")

    def endPath(self) -> None:
        """Leave the line open."""


def _d(path: Path) -> str:
    pen = _ScreenPen()
    path.draw(pen)
    return "".join(pen.words)


def _mm(cm: float) -> float:
    return round(cm * MM, 3)
