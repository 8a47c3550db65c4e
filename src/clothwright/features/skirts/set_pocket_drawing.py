"""Patch and welt pockets drawn on a skirt, and their pieces (transformations §9)."""

from clothwright.curves import Cubic, Line, Path, Point, Segment, direction, mix
from clothwright.features.about import About, Place
from clothwright.features.roles import Role
from clothwright.features.skirts.pocket_drawing import OFF_CENTRE
from clothwright.paper import (
    Drafting,
    Edge,
    EdgeKind,
    InnerLine,
    PaperError,
    Piece,
    Verb,
    straight,
)

PATCH, WELT, BAG = "KP", "KW", "KO"
"""Codes of the pieces: a patch, a welt, the bag behind a welt."""

_SHOWN = ("skirt front", "skirt back")

PIECES = (
    About(PATCH, Place.PATCH, _SHOWN, {"mouth": Role.TURNED}, Role.EDGE),
    About(WELT, Place.PATCH, _SHOWN, others=Role.EDGE),
    About(BAG, Place.PATCH, _SHOWN, others=Role.POCKET),
)

FRONTS, BACKS = ("SF", "PF"), ("SB", "PB")
"""Pieces of a skirt, alone or of a dress, that a pocket is set on."""

OPENING = 1.0
"""Between both rows of stitching of a welt pocket, cm (common practice)."""

BESIDE = 2.0
"""The bag of a welt is so much wider than its mouth at each end, cm (common
practice)."""

_ROUND = 0.5523
"""Handles of a quarter circle, of its radius (exact to 0.03 %)."""


def mouth(d: Drafting, code: str) -> tuple[Point, Point]:
    """Both ends of the mouth: level, in from the side. Raises PaperError."""
    n = d.n
    piece = d.sheet.piece(code)
    side = piece.edge("side").path
    down = side if side.start.y < side.end.y else side.reversed()
    s = down.at_length(min(n.k_down, down.length))
    inward = 1.0 if code in FRONTS else -1.0
    d.found("Ks", s, "level of the pocket on the side", amounts=(("down", "k_down"),))
    a = d.found(
        "Ka",
        Point(s.x + inward * n.k_side, s.y),
        "outer end of the pocket's mouth",
        frm=("Ks",),
        amounts=(("in from the side", "k_side"),),
    )
    b = d.found(
        "Kb",
        Point(a.x + inward * n.k_wide, a.y),
        "inner end of the pocket's mouth",
        frm=("Ka",),
        amounts=(("on", "k_wide"),),
    )
    fold = piece.edge("cf" if inward > 0 else "cb").path
    free = abs(fold.start.x - b.x)
    if (fold.start.x - b.x) * inward < OFF_CENTRE + BESIDE:
        raise PaperError(
            f"the pocket comes to {free:.1f} cm from the centre, where "
            f"{OFF_CENTRE + BESIDE:g} cm must stay: make it (kw) narrower, or set it "
            "(ks) nearer to the side"
        )
    return a, b


def patch(d: Drafting, code: str, a: Point, b: Point) -> None:
    """Down from both ends of the mouth, the lower corners rounded; traced as a piece
    of its own."""
    n = d.n
    left, right = sorted((a, b))
    r = min(n.k_round, n.k_wide / 2 - 0.5)
    foot = a.y + n.k_deep
    c, e = Point(right.x, foot), Point(left.x, foot)
    names = ("right", "lower", "left")
    edges = [straight("mouth", left, right, EdgeKind.FINISHED)]
    if r > 0:
        way = _rounded(right, c, e, r)
        way += _rounded(way[-1].end, e, left, r)
        way.append(Line(way[-1].end, left))
        edges.append(Edge("round", Path(tuple(way)), EdgeKind.FINISHED))
    else:
        ends = zip(names, (right, c, e), (c, e, left), strict=True)
        edges += [straight(k, p, q, EdgeKind.FINISHED) for k, p, q in ends]
    around = edges[1].path
    for k in edges[2:]:
        around = around + k.path
    onto = d.sheet.piece(code).with_lines(InnerLine("patch pocket", around))
    grain = (Point(mix(a, b, 0.5).x, foot - 1.5), Point(mix(a, b, 0.5).x, a.y + 1.5))
    d.lay(
        Verb.OUTLINE,
        d.sheet.put(onto, Piece(PATCH, "Patch pocket", tuple(edges), grain=grain)),
        PATCH,
        "patch pocket, a pair",
        frm=("Ka", "Kb"),
        amounts=(("deep", "k_deep"), ("corners rounded", "k_round")),
        detail="plumb down from both ends of the mouth; its place is marked on the "
        + ("front" if code in FRONTS else "back"),
        lines=(around,),
    )


def _rounded(p: Point, corner: Point, q: Point, r: float) -> list[Segment]:
    """From p towards a corner and round it."""
    a = corner + direction(corner, p) * r
    b = corner + direction(corner, q) * r
    return [Line(p, a), Cubic(a, mix(a, corner, _ROUND), mix(b, corner, _ROUND), b)]


def welt(d: Drafting, code: str, a: Point, b: Point) -> None:
    """Both stitch lines of the mouth on the skirt; the welt folded along its upper
    edge; the bag hung from it."""
    n = d.n
    left, right = sorted((a, b))
    up = Point(0.0, OPENING)
    onto = d.sheet.piece(code).with_lines(
        InnerLine("welt pocket", Path.line(left, right)),
        InnerLine("upper stitching", Path.line(left - up, right - up)),
    )
    done = EdgeKind.FINISHED
    tall = Point(0.0, 2 * n.k_welt)
    p, q = Point(left.x, 0.0), Point(right.x, 0.0)
    middle = Point(0.0, n.k_welt)
    stand = Piece(
        WELT,
        "Welt",
        _box(p, q, q + tall, p + tall, done),
        lines=(InnerLine("fold", Path.line(p + middle, q + middle)),),
    )
    deep, wide = Point(0.0, n.k_deep + n.k_welt), Point(BESIDE, 0.0)
    p, q = left - wide - up, right + wide - up
    bag = Piece(BAG, "Bag of the welt pocket", _box(p, q, q + deep, p + deep, done))
    d.lay(
        Verb.OUTLINE,
        d.sheet.put(onto, stand, bag),
        WELT,
        "welt and its bag",
        frm=("Ka", "Kb"),
        amounts=(("welt high, to be folded", "k_welt"), ("bag deep", "k_deep")),
        detail="rectangles; the bag is wider than the mouth at both ends",
        lines=(Path.line(left, right), Path.line(left - up, right - up)),
    )


def _box(a: Point, b: Point, c: Point, e: Point, kind: EdgeKind) -> tuple[Edge, ...]:
    names = ("upper edge", "right end", "foot of pocket", "left end")
    ends = zip(names, (a, b, c, e), (b, c, e, a), strict=True)
    return tuple(straight(k, p, q, kind) for k, p, q in ends)
