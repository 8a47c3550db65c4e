"""How a half in one piece is divided below the bust, its waist dart taped shut in the
midriff.
"""

from dataclasses import dataclass, replace

from clothwright.curves import Path, Point, direction, distance, turned
from clothwright.features.bodice.waist_rules import waist_curve
from clothwright.features.grain import grained_as
from clothwright.features.hand.hand_seams import off_corners
from clothwright.features.wholes import keep_whole
from clothwright.paper import (
    Drafting,
    Ease,
    Edge,
    NotchPair,
    On,
    PaperError,
    Piece,
    Run,
    Seam,
    Sheet,
    Verb,
    cut,
    redraw,
    tape,
)

BELOW_POINT, ABOVE_WAIST = 2.5, 4.0
"""The seam keeps so far below the points of the waist darts and above the waist, cm
(our own choice: what can be sewn)."""


@dataclass(frozen=True)
class Half:
    """A half by the names of its edges; legs and waists from the centre outwards."""

    half: str
    piece: str
    new: tuple[str, str]
    centre: str
    legs: tuple[str, str]
    waists: tuple[str, str]
    dart: str
    number: str
    ticks: int
    clockwise: bool
    """The loop meets the centre before the side."""


FRONT = Half(
    "front",
    "F",
    ("FM", "Front midriff"),
    "cf",
    ("leg cf", "leg side"),
    ("waist", "waist side"),
    "front waist dart",
    "ce_f",
    1,
    True,
)
BACK = Half(
    "back",
    "B",
    ("BM", "Back midriff"),
    "cb",
    ("leg cb", "leg side"),
    ("waist", "waist side"),
    "back waist dart",
    "ce_b",
    2,
    False,
)


def level_line(y: float) -> Path:
    """A level line `y` cm down the table, from left to right beyond every piece."""
    return Path.line(Point(-60.0, y), Point(160.0, y))


def divide(d: Drafting, h: Half, level: float, up: float) -> None:
    """Cut a half across below the bust, `up` above the waist at its side, and tape its
    waist dart shut below."""
    d.part = h.half
    table = keep_whole(d.sheet, h.piece)
    p = table.piece(h.piece)
    c, s, down, side = ends(d, h, p, p, level, up)
    if not p.has(h.legs[0]):
        sheet = _straight_across(table, h, c, s, down, side)
    else:
        sheet = _over_dart(d, table, h, c, s, down, side)
    sheet = _sewn(sheet, h)
    parts = [sheet.piece(code) for code in (h.piece, h.new[0])]
    sheet = sheet.put(*(grained_as(part, p) for part in parts))
    d.lay(
        Verb.CUT,
        off_corners(off_corners(sheet, h.piece), h.new[0]),
        h.new[0],
        f"{h.half} cut across below the bust, its waist dart taped shut in the midriff",
        amounts=(("at the side, up from the waist", up),),
        detail="square to every seam that the line meets",
        lines=(sheet.edge(h.new[0], "under").path,),
    )


def ends(
    d: Drafting, h: Half, p: Piece, outer: Piece, level: float, up: float
) -> tuple[Point, Point, Point, str]:
    """The ends of the seam: at the centre of the piece `p`, level, and at the side of
    the piece `outer`, `up` above its waist, with the direction down and the edge there.
    Raises PaperError."""
    centre = p.edge(h.centre).path
    hits = centre.meets(level_line(level))
    side = next(e.name for e in outer.edges if e.name in ("side", "side low"))
    if not hits:
        raise PaperError("the empire seam misses the centre: make it another depth")
    c = d.found(
        f"Em{h.piece.lower()}",
        centre.at_length(hits[0][0]),
        f"empire seam at the centre {h.half}",
        amounts=(("below the level of BP", "ue"),),
    )
    path = outer.edge(side).path
    if path.length - up < 1.0 if h.clockwise else path.length < up + 1.0:
        raise PaperError(
            "the empire seam comes too near to the side dart: make it deeper (ue), or "
            "lead the bust dart elsewhere"
        )
    at = up if h.clockwise else path.length - up
    down = path.direction_at_length(at) * (-1.0 if h.clockwise else 1.0)
    return c, path.at_length(at), down, side


def drawn_in(
    d: Drafting, h: Half, a: Point, b: Point, down: Point
) -> tuple[Point, Point]:
    """Two places of a dart or a panel seam, the centre's first, each moved into its
    paper by half of what the seam takes in more."""
    apart = direction(b, a) if distance(a, b) > 1e-6 else turned(down, -90)
    more = d.n[h.number] / 2
    return a + apart * more, b - apart * more


def across(h: Half, a: Point, b: Point, at_a: Point | None, at_b: Point | None) -> Path:
    """A part of the seam from the centre's side to the side's, square to the seams
    that it meets there, whose directions down are given; level at the centre."""
    if h.clockwise:
        return Path((waist_curve(a, b, at_a, at_b, 0.0, 0.0),))
    return Path((waist_curve(b, a, at_b, at_a, 0.0, 0.0),)).reversed()


def _straight_across(
    table: Sheet, h: Half, c: Point, s: Point, down: Point, side: str
) -> Sheet:
    """A half without a waist dart in one cut."""
    line = across(h, c, s, None, down)
    p = table.piece(h.piece)
    return cut_across(table, p, line, h.centre, side, "under", h.new, h)


def _over_dart(
    d: Drafting,
    table: Sheet,
    h: Half,
    c: Point,
    s: Point,
    down: Point,
    side: str,
) -> Sheet:
    p = table.piece(h.piece)
    inner, outer = (p.edge(name).path for name in h.legs)
    inner = inner.reversed() if h.clockwise else inner  # both from the point down
    outer = outer if h.clockwise else outer.reversed()
    hits = inner.meets(level_line(c.y))
    reach = hits[0][0] if hits else 0.0
    if reach < BELOW_POINT or reach > inner.length - ABOVE_WAIST / 2:
        raise PaperError(
            f"the empire seam comes within {BELOW_POINT:g} cm of the point of the "
            f"{h.dart}: make it deeper (ue)"
        )
    a, b = inner.at_length(reach), outer.at_length(reach)
    a, b = drawn_in(d, h, a, b, inner.end_direction)
    bent = [
        Path.line(leg.start, at) + Path.line(at, leg.end)
        for leg, at in ((inner, a), (outer, b))
    ]
    names = list(h.legs) if h.clockwise else list(reversed(h.legs))
    drawn = (
        [bent[0].reversed(), bent[1]] if h.clockwise else [bent[1].reversed(), bent[0]]
    )
    table = redraw(
        table, h.piece, names, [Edge(n, q) for n, q in zip(names, drawn, strict=True)]
    )
    first = across(h, c, a, None, direction(a, inner.end))
    second = across(h, b, s, direction(b, outer.end), down)
    table = cut_across(
        table, table.piece(h.piece), first, h.centre, h.legs[0], "under", h.new, h
    )
    flank = (f"{h.new[0]} side", f"{h.new[1]}, side")
    table = cut_across(
        table, table.piece(h.piece), second, h.legs[1], side, "under side", flank, h
    )
    code = h.new[0]
    left, right = Run(code, h.legs[0]), Run(flank[0], h.legs[1], True)
    table = _upper_dart(table, h)
    table = tape(
        table.sew(Seam("midriff", "midriff", (left,), (right,))),
        "midriff",
        code=code,
        name=h.new[1],
    )
    q = table.piece(code)
    pair = ["under side", "under"] if h.clockwise else ["under", "under side"]
    top = q.edge(pair[0]).path + q.edge(pair[1]).path
    return redraw(table, code, pair, [Edge("under", top)])


def cut_across(
    table: Sheet,
    p: Piece,
    line: Path,
    start: str,
    end: str,
    edge: str,
    new: tuple[str, str],
    h: Half,
) -> Sheet:
    """Cut along a line from the edge `start` to the edge `end`, the centre's first."""
    if not h.clockwise:
        line, start, end = line.reversed(), end, start
    spots = [
        On(name, p.edge(name).path.length_to_point(at))
        for name, at in ((start, line.start), (end, line.end))
    ]
    return cut(
        table,
        p.code,
        line,
        *spots,
        edge=edge,
        seam=f"{edge} of {p.code}",
        seam_name="empire seam",
        into=(new, (p.code, p.name)),
    )


def _upper_dart(table: Sheet, h: Half) -> Sheet:
    """The waist dart as it is sewn above the seam."""
    for s in table.seams:
        if s.code == h.dart:
            left, right = (
                tuple(r for r in chain if r.piece == h.piece)
                for chain in (s.left, s.right)
            )
            return table.sew(replace(s, left=left, right=right, start="empire seam"))
    return table


def _sewn(table: Sheet, h: Half) -> Sheet:
    """Both parts sewn in one seam from the centre."""
    p, code = table.piece(h.piece), f"{h.half} empire"
    upper = tuple(
        Run(h.piece, e, not h.clockwise) for e in ("under", "under side") if p.has(e)
    )
    lower = (Run(h.new[0], "under", h.clockwise),)
    at = 0.55 * table.chain_length(lower)
    seam = Seam(
        code,
        f"{h.half} empire seam",
        upper,
        lower,
        f"centre {h.half}",
        "side",
        Ease.about(0.0, 0.1),
        notches=(NotchPair(at, at, h.ticks),),
    )
    return table.unsew(f"under of {h.piece}", f"under side of {h.piece}").sew(seam)
