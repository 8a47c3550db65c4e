"""Patch, welt and jetted pockets drawn where they are set on a garment, and their
pieces (transformations §9)."""

from dataclasses import dataclass

from clothwright.curves import (
    Cubic,
    Line,
    Motion,
    Path,
    Point,
    Segment,
    Vector,
    direction,
    distance,
    dot,
    mix,
    polyline,
    turned,
)
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
    Sheet,
    Verb,
    straight,
)

OPENING = 1.0
"""Between both rows of stitching of a welt pocket; of a jetted one both jets, cm (§9:
jet 0.5)."""

BESIDE = 2.0
"""Bag, facing and jets are so much longer than the mouth at each end, cm (common
practice)."""

FACED = 6.0
"""Depth of the facing behind the mouth, cm (common practice, no source)."""

_FORKS = 1.0
"""The slash forks so far from each end, cm (common practice, no source)."""

_ROUND = 0.5523
"""Handles of a quarter circle, of its radius (exact to 0.03 %)."""


_NOUGHT = Point(0.0, 0.0)


@dataclass(frozen=True)
class Kit:
    """What one kind of pockets calls its numbers, marks and pieces."""

    key: str
    """Begins its numbers: "k" of "k_wide"."""

    mark: str
    """Begins its marks: "Pk" of "Pka"."""

    patch: str
    welt: str
    jet: str
    facing: str
    bag: str
    what: str = ""
    """Begins its word: "breast " of "breast pocket"."""

    def ends(self) -> tuple[str, str]:
        """Marks at both ends of the mouth, the outer first."""
        return f"{self.mark}a", f"{self.mark}b"

    def abouts(self, shown: tuple[str, ...]) -> tuple[About, ...]:
        """What is said of its pieces."""
        return (
            About(self.patch, Place.PATCH, shown, {"mouth": Role.TURNED}, Role.EDGE),
            About(self.welt, Place.PATCH, shown, others=Role.POCKET),
            About(self.jet, Place.PATCH, shown, others=Role.POCKET),
            About(self.facing, Place.PATCH, shown, others=Role.POCKET),
            About(self.bag, Place.PATCH, shown, others=Role.POCKET),
        )


HIP = Kit("k", "Pk", "KP", "KW", "KJ", "KZ", "KO")
"""A pair below the waist."""


@dataclass(frozen=True)
class Beyond:
    """The piece that a pocket lies on beyond a seam."""

    code: str
    onto: Motion
    """Lays it beside that seam, where the pocket is drawn."""

    seam: str = "panel"
    """Edge of both pieces that is sewn before the pocket is set."""


@dataclass(frozen=True)
class Mouth:
    """Where a pocket opens, on which piece."""

    code: str
    outer: Point
    inner: Point
    beyond: Beyond | None = None

    def marked(self, sheet: Sheet, *lines: InnerLine) -> tuple[Piece, ...]:
        """What it is set on, with these lines; what of them lies beyond a seam is drawn
        on the other piece."""
        on = sheet.piece(self.code).with_lines(*lines)
        if self.beyond is None:
            return (on,)
        back = self.beyond.onto.inverse()
        other = sheet.piece(self.beyond.code)
        return on, other.with_lines(*(k.moved(back) for k in lines))

    @property
    def line(self) -> Path:
        """From left to right."""
        return Path.line(*sorted((self.outer, self.inner)))

    @property
    def down(self) -> Vector:
        """Unit direction into the pocket, square to the mouth."""
        u = direction(self.line.start, self.line.end)
        return turned(u, 90) if dot(turned(u, 90), Vector(0, 1)) > 0 else turned(u, -90)

    def below(self, by: float) -> Path:
        """A line beside the mouth, `by` cm further down; above where it is negative."""
        return Path.line(
            self.line.start + self.down * by, self.line.end + self.down * by
        )

    def around(self, deep: float) -> Path:
        """All round a pocket so deep, back to where it begins."""
        low = self.below(deep)
        a, b = self.line.start, self.line.end
        return polyline((a, b, low.end, low.start, a))

    def stitched(self) -> Path:
        """Both rows of stitching of a slit, one after the other."""
        high = self.below(-OPENING)
        return polyline((self.line.start, self.line.end, high.end, high.start))


def from_side(
    d: Drafting,
    kit: Kit,
    code: str,
    s: Point,
    way: Vector,
    centre: Path,
    detail: str = "",
) -> Mouth:
    """The mouth `way` (a unit direction) from a point of the side, clear of the centre.
    Raises PaperError."""
    n = d.n
    side, wide = f"{kit.key}_side", f"{kit.key}_wide"
    first, last = kit.ends()
    a = d.found(
        first,
        s + way * n[side],
        "outer end of the pocket's mouth",
        frm=(f"{kit.mark}s",),
        amounts=(("in from the side", side),),
        detail=detail,
    )
    b = d.found(
        last,
        a + way * n[wide],
        "inner end of the pocket's mouth",
        frm=(first,),
        amounts=(("on", wide),),
    )
    free = 0.0 if centre.meets(Path.line(a, b)) else centre.nearest(b)[1]
    if free < OFF_CENTRE + BESIDE - 1e-6:
        raise PaperError(
            f"the pocket comes to {free:.1f} cm from the centre, where "
            f"{OFF_CENTRE + BESIDE:g} cm must stay: make it ({kit.key}w) narrower, or "
            f"set it ({kit.key}s) nearer to the side"
        )
    return Mouth(code, a, b)


def patch(d: Drafting, kit: Kit, m: Mouth, how_many: str) -> None:
    """Down from both ends of the mouth, the lower corners rounded; traced as a piece
    of its own."""
    n = d.n
    deep, wide, radius = (n[f"{kit.key}_{k}"] for k in ("deep", "wide", "round"))
    left, right = m.line.start, m.line.end
    one = _on_which(how_many)
    r = min(radius, wide / 2 - 0.5)
    foot = m.below(deep)
    c, e = foot.end, foot.start
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
    onto = d.sheet.piece(m.code)
    # as the grain of what it lies on
    middle = mix(mix(left, right, 0.5), mix(c, e, 0.5), 0.5)
    half = Vector(0.0, deep / 2 - 1.5)
    d.lay(
        Verb.OUTLINE,
        d.sheet.put(
            *m.marked(d.sheet, InnerLine(f"patch {kit.what}pocket{one}", around)),
            Piece(
                kit.patch,
                f"Patch {kit.what}pocket",
                tuple(edges),
                grain=(middle + half, middle - half),
            ),
        ),
        kit.patch,
        f"patch {kit.what}pocket, {how_many}",
        frm=kit.ends(),
        amounts=(
            ("deep", f"{kit.key}_deep"),
            ("corners rounded", f"{kit.key}_round"),
        ),
        detail=("plumb" if _level(m) else "square")
        + " down from both ends of the mouth; its place is marked on "
        + ("the " + _half(onto) if m.beyond is None else "both panels"),
        lines=(around,),
    )


def _on_which(how_many: str) -> str:
    """Where it is alone, for its mark: ", on the left", of "one, on the left"."""
    _, _, where = how_many.partition(", ")
    return f", {where}" if where else ""


def _half(piece: Piece) -> str:
    name = piece.name.lower()
    return "back" if "back" in name and "front" not in name else "front"


def _level(m: Mouth) -> bool:
    return abs(m.outer.y - m.inner.y) < 0.01


def _rounded(p: Point, corner: Point, q: Point, r: float) -> list[Segment]:
    """From p towards a corner and round it."""
    a = corner + direction(corner, p) * r
    b = corner + direction(corner, q) * r
    return [Line(p, a), Cubic(a, mix(a, corner, _ROUND), mix(b, corner, _ROUND), b)]


def welt(d: Drafting, kit: Kit, m: Mouth, how_many: str) -> None:
    """Both stitch lines of the mouth on the garment; the welt folded along its upper
    edge; facing and bag hung from it."""
    n = d.n
    high, deep, wide = (n[f"{kit.key}_{k}"] for k in ("welt", "deep", "wide"))
    stand = Piece(
        kit.welt,
        f"{kit.what}welt".capitalize(),
        _box(wide, 2 * high),
        lines=(InnerLine("fold", Path.line(Point(0, high), Point(wide, high))),),
    )
    marks = _marks(kit, m, "welt", how_many)
    d.lay(
        Verb.OUTLINE,
        d.sheet.put(
            *m.marked(d.sheet, *marks),
            stand,
            *_behind(kit, m, deep + high, "welt"),
        ),
        kit.welt,
        f"welt, its facing and its bag, {how_many}",
        frm=kit.ends(),
        amounts=(
            ("the welt {} high when folded", f"{kit.key}_welt"),
            ("the bag {} deep below it", f"{kit.key}_deep"),
        ),
        detail="rectangles; facing and bag are wider than the mouth at both ends",
        lines=tuple(k.path for k in marks[:2]),
    )


def jetted(d: Drafting, kit: Kit, m: Mouth, how_many: str) -> None:
    """Both stitch lines of the mouth on the garment, a jet above and below, each folded
    along its middle; facing and bag hung from them."""
    n = d.n
    deep, wide = n[f"{kit.key}_deep"], n[f"{kit.key}_wide"]
    jet, long = OPENING / 2, wide + 2 * BESIDE
    fold, ends = Path.line(Point(jet, 0), Point(jet, long)), (BESIDE, long - BESIDE)
    strip = Piece(
        kit.jet,
        f"{kit.what}jet".capitalize(),
        _box(2 * jet, long),
        lines=(
            InnerLine("fold", fold),
            *(
                InnerLine(f"end of mouth {i}", _across(2 * jet, y))
                for i, y in enumerate(ends, 1)
            ),
        ),
        grain=(Point(1.5 * jet, ends[1] - 1.0), Point(1.5 * jet, ends[0] + 1.0)),
    )
    marks = _marks(kit, m, "jetted", how_many)
    d.lay(
        Verb.OUTLINE,
        d.sheet.put(
            *m.marked(d.sheet, *marks),
            strip,
            *_behind(kit, m, deep + OPENING, "jetted"),
        ),
        kit.jet,
        f"jets, facing and bag, {how_many}",
        frm=kit.ends(),
        amounts=(
            ("jets {} high when folded", jet),
            ("all {} longer than the mouth at each end", BESIDE),
            ("the bag {} deep below it", f"{kit.key}_deep"),
        ),
        detail="rectangles; the jets lie along the straight grain",
        lines=tuple(k.path for k in marks[:2]),
    )


def _across(wide: float, y: float) -> Path:
    return Path.line(Point(0, y), Point(wide, y))


def _marks(kit: Kit, m: Mouth, shape: str, how_many: str) -> tuple[InnerLine, ...]:
    """Both rows of stitching, and the slash between them with its forks."""
    low, high, mid = m.line, m.below(-OPENING), m.below(-OPENING / 2)
    u = direction(low.start, low.end) * _FORKS
    p, q = mid.start + u, mid.end - u
    one = _on_which(how_many)
    return (
        InnerLine(f"{shape} {kit.what}pocket{one}", low),
        InnerLine(f"{kit.what}upper stitching{one}", high),
        InnerLine(f"{kit.what}slash{one} 1", Path.line(p, q)),
        InnerLine(f"{kit.what}slash{one} 2", _fork(low.start, p, high.start)),
        InnerLine(f"{kit.what}slash{one} 3", _fork(low.end, q, high.end)),
    )


def _fork(a: Point, p: Point, b: Point) -> Path:
    return Path((Line(a, p), Line(p, b)))


def _behind(kit: Kit, m: Mouth, deep: float, of: str) -> tuple[Piece, Piece]:
    """Facing and bag, from the upper stitching down, wider than the mouth."""
    wide = distance(m.outer, m.inner) + 2 * BESIDE
    at = m.below(-OPENING).start - Vector(BESIDE, 0)
    faced = min(FACED, deep - 2.0)
    return (
        Piece(
            kit.facing, f"Facing of the {of} {kit.what}pocket", _box(wide, faced, at)
        ),
        Piece(kit.bag, f"Bag of the {of} {kit.what}pocket", _box(wide, deep, at)),
    )


def _box(wide: float, deep: float, at: Point = _NOUGHT) -> tuple[Edge, ...]:
    """A rectangle down from its upper left corner."""
    a, b, c, e = (
        at + Vector(x, y) for x, y in ((0, 0), (wide, 0), (wide, deep), (0, deep))
    )
    names = ("upper edge", "right end", "foot of pocket", "left end")
    ends = zip(names, (a, b, c, e), (b, c, e, a), strict=True)
    return tuple(straight(k, p, q, EdgeKind.FINISHED) for k, p, q in ends)
