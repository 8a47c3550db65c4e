"""Pockets at the side of a skirt or of trousers: what is cut off, and the bag behind it
(transformations §9).

The front lies with its side at the left and its centre at the right.
"""

from collections.abc import Iterable

from clothwright.curves import (
    IDENTITY,
    Cubic,
    Path,
    Point,
    Vector,
    mirror_in,
    rotate,
    turn,
)
from clothwright.features.chains import Chains
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    Drafting,
    Ease,
    Edge,
    EdgeKind,
    InnerLine,
    On,
    PaperError,
    Piece,
    Seam,
    SeamKind,
    Sheet,
    Verb,
    cut,
)
from clothwright.rules import Numbers

HIP_PIECE, BAG, PANEL_BAG = "TK", "TP", "TR"
"""Codes of the pieces: what shows in a slanting pocket, with its half of the bag; the
bag; the bag of a pocket in a panel seam."""

_HAND = 2.5
"""The top of the bag is at least so much wider than what is cut away, cm (our own)."""

_BELOW_MOUTH = 4.0
"""The bag reaches so far below a mouth in the side seam, cm (common practice)."""

_ABOVE_MOUTH = 3.0
"""A bag that hangs from the side begins so far above the mouth, cm (common practice, no
source)."""

_LEAST_ABOVE = 1.0
"""And so far above it at least, cm (our own)."""

_BELOW_CASING = 0.5
"""And so far below a casing at least, cm (our own)."""

_ABOVE_END = 2.0
"""A hung bag ends so far above the end of its seam at least, cm (our own)."""

_PLUMB = Vector(0.0, 1.0)

_TICK = Vector(1.5, 0.0)
"""Marks on a hung bag where a mouth ends, from its edge inwards."""

OFF_CENTRE = 2.0
"""A bag stays so far off the centre front, cm (§9)."""


def slant(
    d: Drafting, code: str, waist: Path, top: float, what: str, lean: float = 0.0
) -> None:
    """Cut the corner off a front, and draw the bag to `top` along the waist, which
    begins at the side and runs on over darts that are closed. `lean` is how far the
    side of the front is turned clockwise, degrees: the bag hangs along it."""
    n = d.n
    front = d.sheet.piece(code)
    side, beside_side = front.edge("side").path, front.after("side")
    most = min(top - _HAND, beside_side.length - 0.5)
    if n.pk_top > most + 1e-9:
        before = "the dart" if beside_side.name == "waist side" else "the centre"
        raise PaperError(
            f"{what} {n.pk_top:.1f} cm from the side leaves no room for a hand before "
            f"{before}: make pt {max(0.0, most):.1f} cm or less, or "
            'choose shape = "in the side seam"'
        )
    up = side.length - n.pk_end
    a, b = beside_side.path.at_length(n.pk_top), side.at_length(up)
    d.found("Pa", a, "pocket at the waist", amounts=(("from Wfs", "pk_top"),))
    d.found("Pz", b, "pocket at the side", amounts=(("down from Wfs", "pk_end"),))
    line = Path.line(b, a)
    d.lay(
        Verb.CUT,
        cut(
            d.sheet,
            code,
            line,
            On("side", up),
            On(beside_side.name, n.pk_top),
            edge="pocket",
            seam="S46",
            seam_name="pocket mouth",
            into=((HIP_PIECE, "Hip piece"), (code, front.name)),
        ),
        f"{code}.pocket",
        "corner of the front, along the mouth of the pocket",
        frm=("Pa", "Pz"),
        lines=(line,),
    )
    corner, rest = d.sheet.piece(HIP_PIECE), d.sheet.piece(code)
    below = rest.edge("side").path
    under = waist.between(n.pk_top, top)
    beside = below.between(side.length - n.pk_deep, below.length)
    bag = _bag(d, under.end, beside.start, lean)
    done = EdgeKind.FINISHED
    shared = (Edge("waist under", under, done), Edge("bag", bag))
    hip_piece = Piece(
        HIP_PIECE,
        "Pocket back",
        (
            Edge("side under", beside, done),
            corner.edge("side"),
            Edge("waist side", corner.edge(beside_side.name).path),
            *shared,
        ),
    )
    bag_piece = Piece(
        BAG,
        "Pocket bag",
        (Edge("side under", beside, done), rest.edge("pocket"), *shared),
    )
    d.lay(
        Verb.TRACE,
        d.sheet.in_place_of(HIP_PIECE, put=(hip_piece,)).put(bag_piece).unsew("S46"),
        BAG,
        "pocket back and pocket bag from the front",
        amounts=(("deep", "pk_deep"), ("wide", "pk_wide")),
        detail="the back with the corner that was cut off, the bag without it",
        lines=(bag,),
    )


def in_seam(d: Drafting, code: str, waist: Path, top: float, lean: float = 0.0) -> None:
    """Mark a mouth in the side, and draw the bag to `top` along the waist."""
    n = d.n
    side = d.sheet.edge(code, "side").path
    _mark_mouth(d, side)
    beside = side.between(side.length - n.pk_deep, side.length)
    under = waist.between(0.0, top)
    bag = _bag(d, under.end, beside.start, lean)
    done = EdgeKind.FINISHED
    piece = Piece(
        BAG,
        "Pocket bag",
        (
            Edge("side under", beside, done),
            Edge("waist under", under, done),
            Edge("bag", bag),
        ),
    )
    d.lay(
        Verb.TRACE,
        d.sheet.put(piece),
        BAG,
        "pocket bag from the front",
        amounts=(("deep", "pk_deep"), ("wide", "pk_wide")),
        detail="along waist and side",
        lines=(bag,),
        over=(d.sheet.piece(code).outline,),
    )


def _mark_mouth(d: Drafting, side: Path, what: str = "side") -> None:
    """Both ends of a mouth in a side, or in another seam, which runs up to the
    waist."""
    n = d.n
    begins = "Wfs" in d.sheet.points and what == "side"
    way = "down from Wfs" if begins else f"down the {what}, from the waist"
    for name, key, down in (
        ("Pa", "beginning", n.pk_begin),
        ("Pz", "end", n.pk_begin + n.pk_mouth),
    ):
        d.found(
            name,
            side.at_length(side.length - down),
            f"{key} of the pocket's mouth on the {what}",
            amounts=((way, down),),
        )


def hung(n: Numbers) -> bool:
    """True where the bag hangs from the side alone: a waist that is gathered, or drawn
    in in a casing, does not hold it."""
    return "g" in n or "casing" in n


def hang_from_side(d: Drafting, code: str) -> None:
    """Mark a mouth in the side, and draw a bag that hangs from the side alone. Raises
    PaperError."""
    hang_from_seam(d, code, d.sheet.edge(code, "side").path)


def hang_from_seam(
    d: Drafting,
    code: str,
    side: Path,
    what: str = "side",
    bag_code: str = BAG,
    *,
    at_left: bool = True,
) -> None:
    """The same in any seam that runs up to the level of the waist, its bag to the right
    of the seam or, not `at_left`, to the left of it. Raises PaperError."""
    n = d.n
    _mark_mouth(d, side, what)
    least = n.casing + _BELOW_CASING if "casing" in n else 0.0
    top = max(n.pk_begin - _ABOVE_MOUTH, least)
    if n.pk_begin < top + _LEAST_ABOVE - 1e-9:
        raise PaperError(
            f"the mouth of the pocket begins {n.pk_begin:.1f} cm below the waist, and "
            f"below the casing {top + _LEAST_ABOVE:.1f} cm is the least: begin it "
            "(pb) lower"
        )
    if n.pk_deep > side.length - _ABOVE_END:
        raise PaperError(
            f"the pocket bag (pd) is {n.pk_deep:.1f} cm deep and the seam that it "
            f"hangs from ends {side.length:.1f} cm below the waist: make it less deep, "
            "or the garment longer"
        )
    beside = side.between(side.length - n.pk_deep, side.length - top)
    over = IDENTITY if at_left else mirror_in(beside.start, beside.start + _PLUMB)
    ends = (
        over(side.at_length(side.length - s))
        for s in (n.pk_begin, n.pk_begin + n.pk_mouth)
    )
    beside = beside.moved(over)
    bag = _hung_bag(d, beside.end, beside.start)
    under = "side under" if bag_code == BAG else "panel under"
    piece = Piece(
        bag_code,
        "Pocket bag",
        (Edge(under, beside, EdgeKind.FINISHED), Edge("bag", bag)),
        lines=tuple(
            InnerLine(f"end of mouth {i}", Path.line(p, p + _TICK))
            for i, p in enumerate(ends, 1)
        ),
    ).moved(over)
    d.lay(
        Verb.TRACE,
        d.sheet.put(piece),
        bag_code,
        f"pocket bag, along the {what} of the front",
        amounts=(
            (f"{{}} down the {what}, from the waist", "pk_deep"),
            ("wide", "pk_wide"),
            ("from {} above the mouth", n.pk_begin - top),
        ),
        detail=f"it hangs from the {what} alone",
        lines=(piece.edge("bag").path,),
        over=(d.sheet.piece(code).outline,),
    )


def _hung_bag(d: Drafting, top: Point, foot: Point) -> Path:
    """From the side above the mouth out, round and back to the side."""
    wide = max(top.x, foot.x) + d.n.pk_wide
    low = Point(wide, foot.y - 7.0)
    out = Vector(0.75 * (wide - top.x), 0.0)
    shoulder = Cubic(top, top + out, low - Vector(0.0, 0.55 * (low.y - top.y)), low)
    return Path((shoulder, _round_foot(low, foot)))


def _round_foot(low: Point, foot: Point) -> Cubic:
    return Cubic(
        low,
        low + Vector(0.0, 6.0),
        foot + Vector(0.6 * (low.x - foot.x), 2.0),
        foot,
    )


def _bag(d: Drafting, top: Point, foot: Point, lean: float) -> Path:
    """Inner and lower edge of the bag, from the waist round to the side."""
    if lean:  # drawn with the side upright, and turned back
        upright = _bag(d, rotate(top, foot, -lean), foot, 0.0)
        return upright.moved(turn(foot, lean)).pinned(top, foot)
    wide = max(top.x, foot.x + d.n.pk_wide)
    low = Point(wide, foot.y - 7.0)
    mid = (top.y + low.y) / 2
    return Path(
        (
            Cubic(top, Point(top.x, mid), Point(wide, mid), low),
            _round_foot(low, foot),
        )
    )


def mouth_places(sheet: Sheet, n: Numbers, bag: str = BAG) -> list[float]:
    """Both ends of a mouth in the side seam, or in the one where this bag hangs, cm
    below its top: the waist, or the top of a casing."""
    if bag not in sheet.pieces or HIP_PIECE in sheet.pieces:
        return []
    begin = n.pk_begin + (n.casing if "casing" in n else 0.0)
    return [begin, begin + n.pk_mouth]


def pocket_seams(t: Chains, front: str, code: str = BAG) -> list[Seam]:
    """Mouth and bag of slanting pockets; a bag in the side seam is sewn to its twin."""
    mouth = t.chain((front, "pocket", False))
    bag, back = t.chain((code, "bag", False)), t.chain((HIP_PIECE, "bag", False))
    if not bag or front not in t.sheet.pieces:
        return []
    even = Ease.about(0.0, 0.1)
    if not back:
        twin = SeamKind.TWIN
        last = "side" if code == BAG else "panel seam"
        first = "waist" if t.has(code, "waist under") else f"{last}, above"
        return [Seam("S47", "pocket bag", bag, bag, first, last, even, kind=twin)]
    inner = t.chain((BAG, "pocket", False))
    return [
        Seam("S46", "mouth of the pocket", mouth, inner, "side", "waist", even),
        Seam("S47", "pocket bag", back, bag, "waist", "side", even),
    ]


def bag_findings(n: Numbers, sheet: Sheet, *, slant: bool) -> Iterable[Finding]:
    """A bag deep enough below its mouth (P1)."""
    lowest = n.pk_end if slant else n.pk_begin + n.pk_mouth
    if n.pk_deep < lowest + _BELOW_MOUTH - 0.05:
        yield Finding(
            "P1",
            Severity.WARN,
            f"The pocket bag is {n.pk_deep:.1f} cm deep and the mouth ends "
            f"{lowest:.1f} cm below the waist: things fall out of it.",
            "pd",
            "Make the bag (pd) deeper.",
            {"pd": n.pk_deep, "mouth": lowest},
        )


def off_centre(bag: Piece, centre: float, symbol: str) -> Iterable[Finding]:
    """A bag keeps clear of the centre front (P2); `centre` is its place, cm."""
    clear = centre - bag.outline.bounds()[2]
    if clear < OFF_CENTRE - 0.05:
        yield Finding(
            "P2",
            Severity.REFUSE,
            f"The pocket bag comes to {max(0.0, clear):.1f} cm from the centre front; "
            f"{OFF_CENTRE:g} cm must stay.",
            symbol,
            f"Make the bag ({symbol}) narrower.",
            {"clear": clear},
        )
