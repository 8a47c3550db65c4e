"""How a yoke is cut off: along a line to the armhole, or through the shoulder dart."""

from dataclasses import dataclass, replace

from clothwright.curves import Path, Point, mix
from clothwright.features.bodice.back_dart import BLADE_HIGH, BLADE_LOW
from clothwright.features.bodice.panel_lines import joined
from clothwright.features.grain import grained_as
from clothwright.features.hand.hand_seams import off_corners
from clothwright.features.openings.stand_pieces import BANDED, STAND
from clothwright.features.wholes import keep_whole
from clothwright.paper import (
    CornerAfter,
    Drafting,
    Edge,
    NotchPair,
    On,
    PaperError,
    Piece,
    Verb,
    cut,
    meetings,
    redraw,
)


@dataclass(frozen=True)
class Yoke:
    """A yoke of one half, by the names of its pieces and numbers."""

    half: str
    piece: str
    new: tuple[str, str]
    centre: str
    key: str
    slope: str
    bow: str
    marks: tuple[str, str]
    """Names of its ends: at the centre, on the armhole."""

    ticks: int
    """Front and back are told apart by single and double notches (first garment 19)."""


FRONT = Yoke(
    "front",
    "F",
    ("FY", "Front yoke"),
    "cf",
    "Yf",
    "Yf_slope",
    "Yf_bow",
    ("Yc", "Ya"),
    1,
)
BACK = Yoke(
    "back",
    "B",
    ("BY", "Back yoke"),
    "cb",
    "Yb",
    "Yb_slope",
    "Yb_bow",
    ("Ycb", "Yab"),
    2,
)


def divide(d: Drafting, y: Yoke, centre: Point) -> None:
    """Cut the yoke off along a line from the centre to the armhole."""
    d.part = y.half
    p = d.sheet.piece(y.piece)
    arm = p.edge("armhole").path
    edge, line = yoke_line(d, y, centre, p, arm)
    mark_ends(d, y, centre, p, line)
    mid = p.edge(edge).path
    start = On("armhole", arm.length_to_point(line.start))
    end = On(edge, mid.length_to_point(line.end))
    into = (y.new, (p.code, p.name))
    if y.half == "back":  # whose armhole runs down and whose centre runs up
        line, start, end = line.reversed(), end, start
    sheet = cut(
        keep_whole(d.sheet, p.code),
        p.code,
        line,
        start,
        end,
        edge="yoke",
        seam=f"{y.half} yoke",
        seam_name=f"{y.half} yoke",
        into=into,
    )
    seam, at = sheet.seam(f"{y.half} yoke"), 0.4 * line.length
    sheet = sheet.sew(replace(seam, notches=(NotchPair(at, at, y.ticks),)))
    sheet = sheet.put(*(grained_as(sheet.piece(code), p) for code, _ in into))
    d.lay(
        Verb.CUT,
        off_corners(sheet, p.code),
        y.new[0],
        f"{y.half} yoke cut off from {y.marks[1]} to {y.marks[0]}",
        frm=y.marks,
        lines=(line,),
    )


def yoke_line(
    d: Drafting, y: Yoke, centre: Point, p: Piece, arm: Path
) -> tuple[str, Path]:
    """The yoke's seam from the armhole to the centre of the piece `p`, and the edge
    that it ends on there. Raises PaperError where it misses one of them."""
    edge = _centre_edge(p, y)
    mid = p.edge(edge).path
    hits = on_armhole(d, y, centre, arm)
    top, low = mid.bounds()[1::2]
    on_centre = top < centre.y < low
    if not hits or not on_centre:
        raise PaperError(
            f"the seam of the {y.half} yoke misses the "
            f"{'armhole' if on_centre else 'centre below the neck'}: make the yoke "
            f"({y.key}) deeper or less deep, or give its seam another slope "
            f"({_said(y.slope)})"
        )
    if len(hits) > 1:
        raise PaperError(
            f"the seam of the {y.half} yoke runs through the hollow of the armhole "
            f"and meets it twice: make the yoke ({y.key}) less deep, or let its "
            f"seam rise to the armhole ({_said(y.slope)})"
        )
    a, c = arm.at_length(hits[0]), _on_centre(y, mid, edge, centre)
    line = _line(a, c, d.n[y.bow])
    if any(s > _BESIDE for s, _ in line.meets(arm)):
        raise PaperError(
            f"the seam of the {y.half} yoke leaves the piece again through the "
            f"armhole: make its hollow ({_said(y.bow)}) nearer to 0, or the yoke "
            f"({y.key}) less deep"
        )
    return edge, _to_edge(line, mid, c)


_BESIDE = 0.01
"""A line that begins on an edge meets it up to so far from there, cm."""


def _said(key: str) -> str:
    """The symbol of a yoke's number."""
    return key.replace("_", " ")


def mark_ends(d: Drafting, y: Yoke, centre: Point, p: Piece, line: Path) -> None:
    """Mark the ends of the yoke's seam: at the centre of `p` and on the armhole."""
    edge = _centre_edge(p, y)
    deep = centre.y - (d.n.y_hf if y.half == "front" else 0.0)
    ordered = abs(deep - d.n[y.key]) < 1e-9
    d.found(
        y.marks[0],
        _on_centre(y, p.edge(edge).path, edge, centre),
        f"seam of the {y.half} yoke at the centre",
        amounts=((_FROM[y.half], y.key if ordered else deep),),
        detail="" if ordered else "level with Ps",
    )
    d.found(
        y.marks[1],
        line.start,
        f"seam of the {y.half} yoke on the armhole",
        amounts=(("above the level of the centre", y.slope),),
        detail="" if d.n[y.slope] else f"level with {y.marks[0]}",
    )


def _on_centre(y: Yoke, mid: Path, edge: str, centre: Point) -> Point:
    """The end of the seam at the centre: on the centre line, or at its level where the
    half has a stand."""
    return mid.at(mid.nearest(centre)[0]) if edge == y.centre else centre


def on_armhole(d: Drafting, y: Yoke, centre: Point, arm: Path) -> list[float]:
    """Where the level of the seam's end meets an armhole, along that, cm."""
    level = centre.y - d.n[y.slope]
    across = Path.line(Point(centre.x - 60.0, level), Point(centre.x + 60.0, level))
    return [s for s, _ in arm.meets(across)]


def divide_at_dart(d: Drafting, *, level: bool) -> None:
    """Cut the back yoke off along a line from the centre, level with the point of the
    shoulder dart or at the depth ordered, to that point, and on along the dart, which
    lies open on the armhole. Raises PaperError."""
    d.part = "back"
    if d.n[BACK.bow]:
        raise PaperError(
            "the seam of a back yoke that takes the shoulder dart is straight to the "
            "point of the dart: make its bow 0, or set back_shoulder to ease"
        )
    p, ps = d.sheet.piece("B"), d["Ps"]
    edge, depth = _centre_edge(p, BACK), ps.y if level else d.n.Yb
    cb, level_with = p.edge(edge).path, Point(0.0, depth)
    c = d.found(
        "Ycb",
        cb.at(cb.nearest(level_with)[0]) if edge == BACK.centre else level_with,
        "seam of the back yoke at the centre",
        amounts=((_FROM["back"], depth if level else "Yb"),),
        detail="level with Ps" if level else "",
    )
    line = _to_edge(Path.line(ps, c), cb, c)
    sheet = cut(
        keep_whole(d.sheet, "B"),
        "B",
        line,
        CornerAfter(BLADE_HIGH),
        On(edge, cb.length_to_point(line.end)),
        edge="yoke",
        seam="back yoke",
        seam_name="back yoke",
        into=((p.code, p.name), BACK.new),
    )
    lower, upper = sheet.piece("B"), sheet.piece("BY")
    below = joined(lower.edge("yoke").path, lower.edge(BLADE_LOW).path)
    above = joined(upper.edge(BLADE_HIGH).path, upper.edge("yoke").path)
    sheet = redraw(sheet, "B", ["yoke", BLADE_LOW], [Edge("yoke", below)])
    sheet = redraw(sheet, "BY", [BLADE_HIGH, "yoke"], [Edge("yoke", above)])
    arm = Edge("armhole", sheet.edge("BY", "armhole high").path)
    sheet = redraw(sheet, "BY", ["armhole high"], [arm])
    seam, at = sheet.seam("back yoke"), 0.4 * below.length
    sheet = sheet.sew(replace(seam, notches=(NotchPair(at, at, BACK.ticks),)))
    sheet = sheet.put(grained_as(sheet.piece("B"), p), grained_as(sheet.piece("BY"), p))
    d.lay(
        Verb.CUT,
        off_corners(sheet, "B"),
        "BY",
        "back yoke cut off from Ycb to Ps, and along the open dart to the armhole",
        frm=("Ycb", "Ps"),
        lines=(line,),
    )


def _centre_edge(p: Piece, y: Yoke) -> str:
    """The edge that a half has at its centre: that of a stand or the seam of a band,
    where it buttons."""
    return next(e for e in (y.centre, STAND, BANDED) if p.has(e))


def _to_edge(line: Path, edge: Path, centre: Point) -> Path:
    """A yoke's seam that comes to the centre line run on to the edge of a stand beyond
    it, or cut off at the seam of a band."""
    if edge.nearest(centre)[1] < 0.05:
        return line
    on = line + Path.line(line.end, line.end + line.end_direction * _REACH)
    fault = (
        "the seam of the yoke does not come to the edge of the button stand: make the "
        "yoke (Yf, Yb) deeper or less deep, or its bow less"
    )
    return on.between(0.0, meetings(on, edge, fault)[0][0])


_REACH = 30.0
"""A line is run on so far to meet an edge, cm."""


def _line(a: Point, c: Point, bow: float) -> Path:
    """The yoke's seam from the armhole to the centre: straight, or a curve that is so
    much lower at its middle and square to the centre."""
    if abs(bow) < 1e-6:
        return Path.line(a, c)
    beside = Point(mix(a, c, 1 / 3).x, a.y + 8 / 3 * bow)
    return Path.cubic(a, beside, mix(Point(a.x, c.y), c, 0.55), c)


_FROM = {"front": "down from the level of hf", "back": "down from the nape"}
