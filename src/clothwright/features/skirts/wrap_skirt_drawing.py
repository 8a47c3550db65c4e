"""The fronts of a wrap skirt: the half unfolded at the centre and cut plumb where the
edge lies; the facing beside it; its band and ties."""

from dataclasses import dataclass

from clothwright.blocks.skirt import FRONT, waist_names
from clothwright.curves import Motion, Path, Point, Vector, mirror_in
from clothwright.features.chains import Chains, spaced
from clothwright.features.skirts.waistband import lay_band
from clothwright.features.wholes import before_yoke, is_kept, keep_whole
from clothwright.paper import (
    MIRRORED,
    Drafting,
    Ease,
    Edge,
    EdgeKind,
    InnerLine,
    Mark,
    MarkKind,
    NotchPair,
    PaperError,
    Piece,
    Run,
    Seam,
    SeamKind,
    Sheet,
    Verb,
    meetings,
    straight,
)

EDGE = "front edge"
"""Name of the edge of a front that crosses."""

CENTRE = "centre front"
"""Name of the line of the centre on a front that crosses."""

FACING = "SWF"
HOLDS = 8.0
"""Fronts that cross by less open at a step, cm (common practice, no source)."""

TIE_OVER, TIE_UNDER = "WT", "WU"

_CLEAR = 1.0
"""The edge keeps so far from a dart along the waist, cm (common practice, no source).
"""

_COUNTED = ("", " 2")
_REACH = 300.0


@dataclass(frozen=True)
class _Over:
    """What of a front lies beyond its centre: its upper edges from there, and the foot
    of its edge on the hem, a length along that from the other side."""

    top: tuple[Edge, ...]
    foot: float


def _over(f: Piece, m: Motion, wide: float) -> _Over:
    """The waist of the other half, its darts in it, as far as the edge."""
    names = [w for w in waist_names(2) if f.has(w)]
    top: list[Edge] = []
    left = wide
    for i, name in enumerate(names):
        path = f.edge(name).moved(m).path
        called = name.replace("waist", "waist over")
        last = i == len(names) - 1
        if left < path.length - (0.5 if last else 0.0):
            if (i and left < _CLEAR) or (not last and left > path.length - _CLEAR):
                break
            top.append(Edge(called, path.between(0.0, left)))
            return _Over(tuple(top), _foot(f, m, top[-1].path.end, i))
        if last:
            raise PaperError(
                f"the fronts of the wrap cross by {wide:.1f} cm, and half the front "
                f"waist is {wide - left + path.length:.1f} cm: make the crossing "
                "(wx S) less"
            )
        left -= path.length
        k = _COUNTED[i]
        top.append(Edge(called, path))
        for leg in (f"dart centre{k}", f"dart side{k}"):
            top.append(Edge(leg + MIRRORED, f.edge(leg).moved(m).path))
        if left <= 0:
            break
    raise PaperError(
        f"the edge of the wrap, {wide:.1f} cm beyond the centre, runs into a dart of "
        f"the other front: make the crossing (wx S) less, or so much more that it runs "
        f"{_CLEAR:g} cm clear of it"
    )


def _foot(f: Piece, m: Motion, at: Point, passed: int) -> float:
    """Where the edge meets the hem plumb below its top, the darts that it has not
    passed clear of it."""
    down = Path.line(at, at + Vector(0.0, _REACH))
    for k in _COUNTED[passed:]:
        for leg in (f"dart centre{k}", f"dart side{k}"):
            if f.has(leg) and f.edge(leg).moved(m).path.meets(down):
                raise PaperError(
                    "the edge of the wrap runs down into a dart of the other front: "
                    "cross (wx S) further, or not so far"
                )
    hits = f.edge("hem").moved(m).path.meets(down)
    if not hits:
        raise PaperError(
            "the edge of the wrap does not come down to the hem: make the crossing "
            "(wx S) less, or taper the skirt (fl) less"
        )
    return hits[0][0]


def cross(d: Drafting, *, faced: bool) -> None:
    """Unfold the front at its centre and cut it plumb along its edge."""
    n, f = d.n, d.sheet.piece(FRONT)
    d.part = "skirt front"
    fold = f.edge("cf").path
    m = mirror_in(fold.start, fold.end)
    over = _over(f, m, n.wx_S)
    hem = f.edge("hem")
    beyond = hem.moved(m).path.between(over.foot, hem.length)
    edge = straight(
        EDGE,
        over.top[-1].path.end,
        beyond.start,
        EdgeKind.SEAM if faced else EdgeKind.FINISHED,
    )
    beside = (*over.top, edge, hem.along(beyond.pinned(edge.path.end, hem.path.start)))
    lines = (*f.lines, InnerLine(CENTRE, fold))
    sheet = d.sheet.put(Piece(f.code, f.name, _unfolded(f, beside), f.marks, lines))
    if is_kept(sheet, FRONT):  # as it was before a pocket was cut from it
        kept = before_yoke(d.sheet, FRONT)
        sheet = keep_whole(sheet, FRONT, kept.with_edges(_unfolded(kept, beside)))
    for k in _COUNTED:
        centre, side = (f"dart {leg}{k}{MIRRORED}" for leg in ("centre", "side"))
        if sheet.piece(FRONT).has(centre):
            sheet = sheet.sew(_dart(f"overlap dart{k}", centre, side))
    d.lay(
        Verb.UNFOLD,
        sheet,
        FRONT,
        "front unfolded at the centre and cut plumb along its edge",
        amounts=(("across the centre along the waist", "wx_S"),),
        detail="the darts of the other half that it passes are sewn in it too",
        lines=(edge.path,),
    )
    if faced:
        _lay_facing(d, over.top[-1].path, edge.path, beyond)


def _unfolded(half: Piece, beside: tuple[Edge, ...]) -> tuple[Edge, ...]:
    """The loop of a half, with what lies beyond its centre in place of the fold: the
    upper edges, the edge, and the hem back to the centre."""
    *above, hem = beside
    rest = [e for e in half.rolled_to("cf")[1:] if e.name != "hem"]
    whole = hem.along(hem.path + half.edge("hem").path)
    return (*above, whole, *rest)


def covered(sheet: Sheet, inner: Point) -> float:
    """How far the right front lies over a point of the left one, cm, in a wrap skirt;
    nought or less where it does not, or where nothing wraps."""
    front = sheet.pieces.get(FRONT)
    if front is None or not front.has(EDGE):
        return 0.0
    centre = next(k.path.start.x for k in front.lines if k.name == CENTRE)
    return inner.x - (2 * centre - front.edge(EDGE).path.start.x)


def _dart(code: str, centre: str, side: str) -> Seam:
    return Seam(
        code,
        code,
        (Run(FRONT, centre),),
        (Run(FRONT, side, True),),
        "waist",
        "point",
        Ease.about(0.0, 0.1),
        kind=SeamKind.DART,
    )


def _lay_facing(d: Drafting, waist: Path, edge: Path, hem: Path) -> None:
    """A strip beside the edge, from the waist to the hem."""
    wide = d.n.wf_S
    if wide > waist.length - 0.2:
        raise PaperError(
            f"the facing beside the edge of the wrap, {wide:.1f} cm wide, reaches over "
            "a dart or the centre: make it (wf S) narrower"
        )
    top = waist.between(waist.length - wide, waist.length)
    down = Path.line(top.start, top.start + Vector(0.0, _REACH))
    fault = (
        "the facing beside the edge of the wrap does not reach the hem: make it (wf S) "
        "narrower"
    )
    foot = hem.between(0.0, meetings(hem, down, fault)[0][0])
    done = EdgeKind.FINISHED
    piece = Piece(
        FACING,
        "Front edge facing",
        (
            Edge("waist over", top, done),
            Edge(EDGE, edge),
            Edge("hem", foot.pinned(edge.end, foot.end), done),
            straight("free", foot.end, top.start, done),
        ),
    )
    d.part = "facing"
    d.lay(
        Verb.TRACE,
        d.sheet.put(piece),
        FACING,
        "facing beside the front edge",
        amounts=(("wide", "wf_S"),),
        detail="a strip of the front, from the waist to the hem",
    )


# -- the band --------------------------------------------------------------------------
def lay_tied(d: Drafting) -> None:
    """The band with the slit through which the tie of the under end goes, and both
    ties."""
    n = d.n
    d.part = "waistband"
    h, wide = n.h_band, n.tie_w + 0.3
    at = n.wx_S + n.w_SF + 1.0  # behind the right side, where no seam lies
    slits = [
        InnerLine(name, Path.line(Point(x - wide / 2, at), Point(x + wide / 2, at)))
        for name, x in (("slit for the tie", 1.5 * h), ("slit, inner half", 0.5 * h))
    ]
    lay_band(d, (), slits)
    for code, name, key in (
        (TIE_OVER, "Short tie", "tie_over"),
        (TIE_UNDER, "Long tie", "tie_under"),
    ):
        lay_tie(d, code, name, key)


def lay_tie(d: Drafting, code: str, name: str, key: str) -> None:
    """A tie, to be folded lengthwise, as long as the number of this key."""
    n = d.n
    w, long = n.tie_w, n[key]
    done = EdgeKind.FINISHED
    piece = Piece(
        code,
        name,
        (
            straight("end in the band", Point(0.0, 0.0), Point(2 * w, 0.0), done),
            straight("long edge", Point(2 * w, 0.0), Point(2 * w, long), done),
            straight("free end", Point(2 * w, long), Point(0.0, long), done),
            straight("other long edge", Point(0.0, long), Point(0.0, 0.0), done),
        ),
        lines=(InnerLine("fold", Path.line(Point(w, long), Point(w, 0.0))),),
    )
    d.lay(
        Verb.OUTLINE,
        d.sheet.put(piece),
        code,
        name.lower(),
        amounts=(("wide, to be folded to half", 2 * w), ("long", key)),
        detail="a strip, its length along the warp",
    )


HOLE_IN = 1.5
"""A buttonhole begins so far inside the end of the band, cm (common practice, no
source)."""


def lay_buttoned(d: Drafting) -> None:
    """The band with a button at each end: that of the over end outside, that of the
    under end inside."""
    n = d.n
    d.part = "waistband"
    h, long = n.h_band, n.d_wrap + 0.3
    under = n.w_band
    holes = [
        InnerLine(name, Path.line(Point(x, y), Point(x, y + long)))
        for name, x, y in (
            ("buttonhole, over end", 1.5 * h, HOLE_IN),
            ("buttonhole, under end", 1.5 * h, under - HOLE_IN - long),
        )
    ]
    # the over end lies wx beyond the centre of the other front, and so does the under
    marks = (
        Mark(
            "button outside",
            Point(1.5 * h, under - 2 * n.wx_S + HOLE_IN),
            MarkKind.BUTTON,
        ),
        Mark("button inside", Point(0.5 * h, 2 * n.wx_S - HOLE_IN), MarkKind.BUTTON),
    )
    lay_band(d, marks, holes)


# -- its seam --------------------------------------------------------------------------
def wrapped(t: Chains) -> list[Seam]:
    """The front edge to its facing, notched so that no stretch is too long."""
    left, right = (t.chain((code, EDGE, False)) for code in (FRONT, FACING))
    if not right:
        return []
    at = tuple(NotchPair(s, s) for s in spaced((), t.length(left)))
    return [
        Seam(
            "S123",
            "front edge",
            left,
            right,
            "waist",
            "hem",
            Ease.about(0.0, 0.05),
            notches=at,
            kind=SeamKind.FACED,
        )
    ]
