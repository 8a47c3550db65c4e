"""The pieces of a peplum: circle segments, panels, or straight pieces to gather
(first garment 13).
"""

import math
from collections.abc import Iterable
from dataclasses import dataclass

from clothwright.blocks.circle import arc
from clothwright.blocks.torso import fish_eye
from clothwright.curves import Line, Path, Point, bearing, midpoint
from clothwright.features.chains import Chains
from clothwright.paper import (
    Drafting,
    Edge,
    EdgeKind,
    InnerLine,
    Mark,
    MarkKind,
    Piece,
    Sheet,
    Verb,
    cut,
    spot_on,
    straight,
)


@dataclass(frozen=True)
class BackEnd:
    """How the back peplum ends: its last edge, and what lies before that."""

    edge: str = "open"
    """"open" is finished and hangs free, "cb" is sewn to its twin or on the fold."""

    fold: bool = False
    """True for a centre back on the fold."""

    on: float = 0.0
    """What of the stitched waist runs on behind the opening, cm."""

    lap: float = 0.0
    """Underlap beyond the centre back, cm: flat on the right half, folded under on
    the left."""

    @property
    def kind(self) -> EdgeKind:
        """On the fold, sewn to its twin, or finished by itself."""
        if self.fold:
            return EdgeKind.FOLD
        return EdgeKind.SEAM if self.edge == "cb" else EdgeKind.FINISHED

    def finished(self, piece: Piece, hooks: Iterable[Point]) -> Piece:
        """The piece with its hooks, and with the centre back drawn where an underlap
        runs on beyond it."""
        hem = piece.edge("hem").path
        marks = (Mark(f"hook {i}", at, MarkKind.DRILL) for i, at in enumerate(hooks, 1))
        piece = piece.with_marks(*marks)
        if not self.lap:
            return piece
        top = piece.edge("waist lap").path.end
        foot = max(y for _, y in hem.flatten(0.01))
        down = Path.line(top, Point(top.x, foot))
        return piece.with_lines(InnerLine("centre back", down))


def closed_end(sheet: Sheet) -> BackEnd:
    """The end of what hangs on a closed back: a seam below a zip, else on the fold."""
    return BackEnd("cb", fold=not Chains(sheet).zipped())


HOOK_IN = 0.5
"""A hook sits this far inside both edges of its corner, cm (common practice)."""

SECOND_HOOK = 4.0
"""Level of the second hook of a peplum that laps, cm below the waist (common
practice)."""


def _hooks(end: BackEnd, waist: Point) -> list[Point]:
    """Where the peplum is hooked: at the waist end of its free edge, and once more
    below it where it laps (10.7, 13.4)."""
    if end.edge != "open":
        return []
    first = waist + Point(HOOK_IN, HOOK_IN)
    return [first, first + Point(0.0, SECOND_HOOK)] if end.lap else [first]


def draw_circle(d: Drafting, end: BackEnd, called: str = "peplum") -> None:
    """Front and back peplum, or what it is called, as sectors; the straight grain edge
    hangs plumb."""
    n = d.n
    o = d.start("Op", Point(0.0, 0.0), f"centre of the {called}'s arcs")
    r, outer = n.r, n.r + n.L
    # front: the fold on the right, plumb; the sector spreads to the left
    side = 90 + n.phi_F
    waist = arc(o, r, side, 90)
    hem = arc(o, outer, 90, side)
    front = Piece(
        "PF",
        f"Front {called}",
        (
            Edge("waist", waist),
            Edge("cf", Path((Line(waist.end, hem.start),)), EdgeKind.FOLD),
            Edge("hem", hem, EdgeKind.FINISHED),
            straight("side", hem.end, waist.start),
        ),
    )
    _lay_sector(
        d,
        front,
        waist,
        "phi_F",
        "both arcs from Op, joined by lines that run to Op; the centre front is "
        "plumb and lies on the fold",
    )
    # back: the open edge on the left, plumb; the sector spreads to the right
    side = 90 - n.phi_B
    waist = arc(o, r, 90, side)
    lap = [math.degrees(math.asin(end.lap / radius)) for radius in (r, outer)]
    hem = arc(o, outer, side, 90 + lap[1])
    edges = _back_waist(waist, end, n.w_PB)
    if end.lap:
        before = arc(o, r, 90 + lap[0], 90)
        edges = (Edge("waist lap", before, EdgeKind.FINISHED), *edges)
    back = Piece(
        "PB",
        f"Back {called}",
        (
            *edges,
            straight("side", waist.end, hem.start),
            Edge("hem", hem, EdgeKind.FINISHED),
            straight(end.edge, hem.end, edges[0].path.start, end.kind),
        ),
    )
    _lay_sector(
        d,
        end.finished(back, _hooks(end, waist.start)),
        waist,
        "phi_B",
        "both arcs from Op, joined by lines that run to Op; the centre back is plumb"
        + _LAPPED * bool(end.lap),
        (("with an underlap of {} beyond the centre back", "lap_P"),) * bool(end.lap),
    )


_LAPPED = (
    ", and both arcs run on beyond it to the underlap's edge, which is plumb too; fold "
    "it under on the left half, leave it flat on the right"
)


def _lay_sector(
    d: Drafting,
    piece: Piece,
    waist: Path,
    angle: str,
    detail: str,
    more: tuple[tuple[str, str], ...] = (),
) -> None:
    d.lay(
        Verb.OUTLINE,
        d.sheet.put(piece),
        piece.code,
        piece.name.lower(),
        amounts=(
            ("with a waist arc of radius {}", "r"),
            ("along it", waist.length),
            ("and a hem arc of radius {}", "r_hem"),
            ("over an angle of {}", angle),
            *more,
        ),
        frm=("Op",),
        detail=detail,
        over=tuple(Path.line(d["Op"], end) for end in (waist.start, waist.end)),
    )


def _back_waist(waist: Path, end: BackEnd, whole: float) -> tuple[Edge, ...]:
    """The waist of the back peplum from the centre; what runs on behind the opening
    is an edge of its own, for it is sewn to the panel there."""
    if end.on <= 1e-6:
        return (Edge("waist", waist),)
    a, b = waist.split_at_length(waist.length * end.on / whole)
    return (Edge("waist on", a), Edge("waist", b))


def share_to_panel(sheet: Sheet, half: str) -> float:
    """What of a half's stitched waist lies between the centre and its panel seam or
    dart, by the trued edges of the bodice (13.3)."""
    f = half == "front"
    centre, side = ("FC", "FS") if f else ("BC", "BS")
    if centre in sheet.pieces:
        inner, outer = sheet.length(centre, "waist"), sheet.length(side, "waist")
    elif sheet.piece("F" if f else "B").has("waist side"):
        whole = "F" if f else "B"
        inner, outer = sheet.length(whole, "waist"), sheet.length(whole, "waist side")
    else:  # nothing is taken in: the waist is in one, CF to side or side to CB
        code, dart = ("F", "D1") if f else ("B", "D1b")
        waist, place = sheet.edge(code, "waist").path, sheet.points[dart]
        if fish_eye(sheet, code) is not None:  # below a dart that ends above it
            place = midpoint(place, sheet.points[dart.replace("1", "2")])
        at = waist.length_to_point(place)
        inner, outer = (at, waist.length - at) if f else (waist.length - at, at)
    return inner / (inner + outer)


def draw_panels(d: Drafting, end: BackEnd) -> None:
    """Divide both peplums on the rays that meet the bodice's panel seams."""
    n, sheet, o = d.n, d.sheet, Point(0.0, 0.0)
    places: list[float] = []
    back = end.on + share_to_panel(sheet, "back") * (n.w_PB - end.on)
    for code, parts, ray in (
        (
            "PF",
            (("PFC", "Centre front peplum"), ("PFS", "Side front peplum")),
            90 + n.phi_F * share_to_panel(sheet, "front"),
        ),
        (
            "PB",
            (("PBS", "Side back peplum"), ("PBC", "Centre back peplum")),
            90 - n.phi_B * back / n.w_PB,
        ),
    ):
        p = sheet.piece(code)
        places.append(n.r * math.radians(abs(ray - 90)))
        a, b = o + bearing(ray) * n.r, o + bearing(ray) * n.r_hem
        sheet = cut(
            sheet,
            code,
            Path.line(a, b),
            spot_on(p, "waist", a),
            spot_on(p, "hem", b),
            edge="panel",
            seam="S19" if code == "PF" else "S20",
            seam_name=f"{p.name} panel",
            into=parts,
        )
    d.lay(
        Verb.CUT,
        sheet,
        "PFC, PFS, PBC, PBS",
        "peplum divided into panels, on lines to the centre of their arcs",
        amounts=[
            (f"along the waist from the centre {half}", along)
            for half, along in zip(("front", "back"), places, strict=True)
        ],
        detail="where the panel seams of the bodice meet it",
    )


def draw_gathered(d: Drafting, end: BackEnd, called: str = "peplum") -> None:
    """Front and back peplum, or what it is called, as rectangles, g times as wide as
    their waist."""
    n = d.n
    for code, name, waist, fold in (
        ("PF", f"Front {called}", n.w_F, True),
        ("PB", f"Back {called}", n.w_PB, False),
    ):
        width, lap = waist * n.g, 0.0 if fold else end.lap
        a, b = Point(0.0, 0.0), Point(width, 0.0)
        c, e = Point(width, n.L), Point(-lap, n.L)
        edges: tuple[Edge, ...] = (Edge("waist", Path.line(a, b)),)
        if not fold:
            edges = _back_waist(Path.line(a, b), end, n.w_PB)
        if lap:
            before = Path.line(Point(-lap, 0.0), a)
            edges = (Edge("waist lap", before, EdgeKind.FINISHED), *edges)
        right = ("cf", EdgeKind.FOLD) if fold else ("side", EdgeKind.SEAM)
        left = ("side", EdgeKind.SEAM) if fold else (end.edge, end.kind)
        piece = Piece(
            code,
            name,
            (
                *edges,
                straight(right[0], b, c, right[1]),
                straight("hem", c, e, EdgeKind.FINISHED),
                straight(left[0], e, edges[0].path.start, left[1]),
            ),
        )
        if not fold:
            piece = end.finished(piece, _hooks(end, a))
        d.lay(
            Verb.OUTLINE,
            d.sheet.put(piece),
            code,
            name.lower(),
            amounts=(
                ("wide", width),
                ("deep", "L"),
                ("gathered into {} of the waist", waist),
                *((("and an underlap of {} beside it", "lap_P"),) if lap else ()),
            ),
            detail="a rectangle",
        )
