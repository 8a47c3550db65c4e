"""Invented finished pieces: curves, a fold, a wide sector, a long strip.

No garment stands behind them; they have every meaning, every notch count, fractions
in their words, and sizes that force pages to be joined. All lengths cm.
"""

import math
from datetime import date
from functools import cache

from clothwright.curves import Cubic, Line, Path, Point, mix
from clothwright.finishing.drawn import (
    CutCount,
    DrawnLine,
    DrawnNotch,
    DrawnPattern,
    DrawnPiece,
    DrawnText,
    Meaning,
)

P = Point


def _square_in(outer: Path, s: float, depth: float) -> Point:
    """`depth` inside a clockwise outline, square to it at length `s`."""
    d = outer.direction_at_length(s)
    p = outer.at_length(s)
    return Point(p.x - d.y * depth, p.y + d.x * depth)


def _notch(outer: Path, at: float, count: int, note: str) -> list[DrawnNotch]:
    """A set of ticks 1 cm apart, one notch each."""
    places = [at + k - (count - 1) / 2 for k in range(count)]
    return [
        DrawnNotch(_square_in(outer, s, 1.5), outer.at_length(s), count, note)
        for s in places
    ]


def _words(at: Point, *lines: str, degrees: float = 0.0) -> tuple[DrawnText, ...]:
    return tuple(
        DrawnText(
            Meaning.LABEL,
            text,
            Point(at.x, at.y + i * 0.9),
            0.6 if i == 0 else 0.4,
            degrees,
            bold=i == 0,
        )
        for i, text in enumerate(lines)
    )


def front() -> DrawnPiece:
    """Half a front on the fold: 26 × 44, curved neck, armhole and side."""
    neck = Cubic(P(0, 9), P(4.5, 9), P(7, 5), P(7.5, 0))
    shoulder = Line(P(7.5, 0), P(19, 4))
    armhole = Cubic(P(19, 4), P(15.5, 10), P(17, 19), P(26, 21))
    side = Cubic(P(26, 21), P(24.5, 30), P(23, 36), P(24, 44))
    hem = Cubic(P(24, 44), P(16, 44.8), P(8, 45), P(0, 45))
    fold = Line(P(0, 45), P(0, 9))
    cut = Path((neck, shoulder, armhole, side, hem, fold))
    sew = Path.cubic(P(0, 10), P(5, 10), P(8.2, 6), P(8.6, 1.6))
    net_side = Path.cubic(P(24.4, 21.9), P(23, 30), P(21.5, 36), P(22.5, 42.9))
    dart = Path((Line(P(10, 43), P(11.5, 27)), Line(P(11.5, 27), P(13, 43))))
    at_side = Path((neck, shoulder, armhole)).length + 8
    at_arm = Path((neck, shoulder)).length + 9
    at_fold = Path((neck, shoulder, armhole, side, hem)).length
    return DrawnPiece(
        code="CF",
        name="Front",
        number=1,
        total=6,
        cuts=(CutCount("shell", 1, "1 on fold"),),
        cut_line=cut,
        lines=(
            DrawnLine(Meaning.SEW, sew, "CF.neck"),
            DrawnLine(Meaning.SEW, net_side, "CF.side"),
            DrawnLine(Meaning.FOLD, Path.line(P(0, 43.5), P(0, 10)), "CF.fold"),
            DrawnLine(Meaning.BRACKET, Path.line(P(0, 40), P(0, 14)), "bracket"),
            DrawnLine(Meaning.DART, dart, "CF.dart"),
            DrawnLine(Meaning.GRAIN, Path.line(P(5, 38), P(5, 14)), "grain"),
            DrawnLine(Meaning.INNER, Path.line(P(0, 24), P(24, 24)), "bust line"),
            DrawnLine(Meaning.DRILL, Path.line(P(11.2, 28), P(11.8, 28.6)), "dart"),
            DrawnLine(Meaning.DRILL, Path.line(P(11.8, 28), P(11.2, 28.6)), "dart"),
            DrawnLine(
                Meaning.TAPE,
                Path.cubic(P(18, 5), P(14.6, 10.6), P(16, 18), P(24, 20.4)),
                "stay tape",
            ),
            DrawnLine(Meaning.EASE, Path.line(P(23.4, 25), P(22.4, 33)), "ease"),
        ),
        notches=(
            *_notch(cut, at_side, 1, "side"),
            *_notch(cut, at_arm, 2, "armhole"),
            DrawnNotch(P(0, 43.5), cut.at_length(at_fold), 1, "CF"),
        ),
        texts=(
            *_words(P(14, 14), "FRONT", "1 of 6 · CF", "shell: cut 1 on fold"),
            DrawnText(Meaning.DIMENSION, "13⅜ in", P(21.2, 31), 0.3, 97),
            DrawnText(Meaning.LABEL, "ease ¼ in", P(20, 28), 0.3, 97),
        ),
        on_fold=True,
        area=900.0,
    )


def back() -> DrawnPiece:
    """A back, 27 × 43, cut as a pair, with nap."""
    neck = Cubic(P(0, 2), P(4, 2), P(7, 1.5), P(8, 0))
    shoulder = Line(P(8, 0), P(20, 4.5))
    armhole = Cubic(P(20, 4.5), P(18, 9), P(19, 18), P(27, 21))
    side = Cubic(P(27, 21), P(26, 30), P(24, 36), P(25, 43))
    hem = Cubic(P(25, 43), P(18, 42.2), P(8, 42), P(0, 42))
    centre = Line(P(0, 42), P(0, 2))
    cut = Path((neck, shoulder, armhole, side, hem, centre))
    side_net = Path.cubic(P(25.4, 21.9), P(24.4, 30), P(22.5, 36), P(23.5, 41.9))
    at_side = Path((neck, shoulder, armhole)).length + 8
    return DrawnPiece(
        code="BK",
        name="Back",
        number=2,
        total=6,
        cuts=(CutCount("shell", 2, "2 (1 pair)"), CutCount("lining", 2, "2 (1 pair)")),
        cut_line=cut,
        lines=(
            DrawnLine(Meaning.SEW, side_net, "BK.side"),
            DrawnLine(Meaning.SEW, Path.line(P(1.5, 40.5), P(1.5, 3)), "BK.centre"),
            DrawnLine(Meaning.GRAIN, Path.line(P(8, 8), P(8, 36)), "grain"),
        ),
        notches=(
            *_notch(cut, at_side, 1, "side"),
            *_notch(cut, cut.length - 20, 3, "centre back"),
        ),
        texts=_words(P(14, 22), "BACK", "2 of 6 · BK", "shell: cut 2 (1 pair)"),
        area=950.0,
        nap=True,
    )


def side_panel() -> DrawnPiece:
    """A slender side panel, 12 × 40."""
    left = Cubic(P(3, 40), P(-1, 28), P(-1, 14), P(2, 0))
    top = Cubic(P(2, 0), P(5, 1.5), P(8, 3), P(11, 3))
    right = Cubic(P(11, 3), P(9.5, 14), P(9, 30), P(12, 40))
    hem = Line(P(12, 40), P(3, 40))
    cut = Path((left, top, right, hem))
    return DrawnPiece(
        code="SP",
        name="Side panel",
        number=3,
        total=6,
        cuts=(CutCount("shell", 2, "2 (1 pair)"),),
        cut_line=cut,
        lines=(DrawnLine(Meaning.GRAIN, Path.line(P(5.5, 36), P(5.5, 8)), "grain"),),
        notches=(*_notch(cut, 20, 1, "panel"),),
        texts=_words(P(5, 20), "SIDE PANEL", degrees=90),
        area=350.0,
    )


def sector() -> DrawnPiece:
    """A peplum: a flat ring sector, radii 30 and 48, 150 degrees, about 93 wide."""
    c = P(48, 0)
    outer = _arc(c, 48, 15, 165)
    inner = _arc(c, 30, 165, 15)
    cut = Path(
        (
            *inner.segments,
            Line(inner.end, outer.start),
            *outer.segments,
            Line(outer.end, inner.start),
        )
    )
    cut = cut if cut.area > 0 else cut.reversed()
    return DrawnPiece(
        code="PE",
        name="Peplum",
        number=4,
        total=6,
        cuts=(CutCount("shell", 2, "2"),),
        cut_line=cut,
        lines=(
            DrawnLine(Meaning.GRAIN, Path.line(P(48, 46), P(48, 32)), "grain"),
            DrawnLine(Meaning.SEW, _arc(c, 31.5, 20, 160), "PE.waist"),
        ),
        notches=(*_notch(cut, 30, 1, "waist"),),
        texts=_words(P(58, 38), "PEPLUM", "4 of 6 · PE"),
        area=1800.0,
    )


def strip() -> DrawnPiece:
    """A bias strip, 4 × 150."""
    corners = (P(0, 0), P(150, 0), P(150, 4), P(0, 4))
    cut = Path(
        tuple(Line(a, b) for a, b in zip(corners, corners[1:] + corners[:1]))  # noqa: B905
    )
    return DrawnPiece(
        code="ST",
        name="Neck strip",
        number=5,
        total=6,
        cuts=(CutCount("shell", 1, "1"),),
        cut_line=cut,
        lines=(DrawnLine(Meaning.GRAIN, Path.line(P(60, 3), P(90, 3)), "grain"),),
        notches=(*_notch(cut, 75, 3, "centre back"),),
        texts=_words(P(30, 2), "NECK STRIP"),
        area=600.0,
    )


def loop_guide() -> DrawnPiece:
    """A small rectangle, 6 × 8."""
    corners = (P(0, 0), P(6, 0), P(6, 8), P(0, 8))
    cut = Path(
        tuple(Line(a, b) for a, b in zip(corners, corners[1:] + corners[:1]))  # noqa: B905
    )
    return DrawnPiece(
        code="LG",
        name="Loop guide",
        number=6,
        total=6,
        cuts=(CutCount("paper", 1, "1"),),
        cut_line=cut,
        lines=(DrawnLine(Meaning.GRAIN, Path.line(P(1, 7), P(1, 1.5)), "grain"),),
        texts=_words(P(3.4, 4), "GUIDE"),
        area=48.0,
    )


def _arc(c: Point, r: float, from_degrees: float, to_degrees: float) -> Path:
    """An arc of five cubics, 90 degrees being straight down."""
    n = 5
    step = math.radians(to_degrees - from_degrees) / n
    k = 4 / 3 * math.tan(step / 4) * r
    out: list[Cubic] = []
    for i in range(n):
        a = math.radians(from_degrees) + i * step
        b = a + step
        p = P(c.x + r * math.cos(a), c.y + r * math.sin(a))
        q = P(c.x + r * math.cos(b), c.y + r * math.sin(b))
        h1 = P(p.x - k * math.sin(a), p.y + k * math.cos(a))
        h2 = P(q.x + k * math.sin(b), q.y - k * math.cos(b))
        if out:
            p = out[-1].end
        out.append(Cubic(p, h1, h2, q))
    return Path(tuple(out))


def square_piece(side: float = 10.0) -> DrawnPiece:
    """A square piece, for measuring the scale."""
    a, b, c, d = P(0, 0), P(side, 0), P(side, side), P(0, side)
    cut = Path((Line(a, b), Line(b, c), Line(c, d), Line(d, a)))
    return DrawnPiece(
        code="SQ",
        name="Square",
        number=1,
        total=1,
        cuts=(CutCount("paper", 1, "1"),),
        cut_line=cut,
        lines=(
            DrawnLine(
                Meaning.GRAIN,
                Path.line(mix(a, c, 0.2), P(side * 0.2, side * 0.8)),
                "grain",
            ),
        ),
        area=side * side,
    )


def twelve() -> tuple[DrawnPiece, ...]:
    """Twelve pieces: the six twice."""
    return (*six(), *six())


def six() -> tuple[DrawnPiece, ...]:
    """One of each."""
    return front(), back(), side_panel(), sector(), strip(), loop_guide()


@cache
def pattern(failures: tuple[str, ...] = ()) -> DrawnPattern:
    """An invented order with every kind of piece."""
    return DrawnPattern(
        title="Peplum top, order 7",
        client="Frances Example",
        taken=date(2026, 5, 3),
        unit="in",
        pieces=six(),
        allowance_note="1.5 cm (⅝ in) allowances are drawn; the neck has 0.6 (¼).",
        failures=failures,
        cautions=("Make a trial garment first: two measures were estimated.",),
        notes=("Bust span was estimated from the bust girth: 7¼ in ± ⅜ in.",),
    )


def of_pieces(*pieces: DrawnPiece) -> DrawnPattern:
    """An order of the given pieces."""
    base = pattern()
    return DrawnPattern(
        base.title,
        base.client,
        base.taken,
        base.unit,
        pieces,
        base.allowance_note,
    )
