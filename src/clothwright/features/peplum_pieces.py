"""The pieces of a peplum: circle segments, panels, or straight pieces to gather
(first garment 13).
"""

import math

from clothwright.curves import Cubic, Line, Path, Point, bearing, turned
from clothwright.paper import (
    Drafting,
    Edge,
    EdgeKind,
    Piece,
    Verb,
    cut,
    spot_on,
    straight,
)


def arc(centre: Point, radius: float, start: float, end: float) -> Path:
    """A circular arc between two bearings (degrees clockwise from +x), in cubics of at
    most 22.5°, each within 1e-7 of its radius."""
    n = max(1, math.ceil(abs(end - start) / 22.5))
    step = (end - start) / n
    h = 4 / 3 * math.tan(math.radians(step) / 4) * radius
    parts: list[Cubic] = []
    for i in range(n):
        a, b = bearing(start + i * step), bearing(start + (i + 1) * step)
        p, q = centre + a * radius, centre + b * radius
        parts.append(Cubic(p, p + turned(a, 90) * h, q - turned(b, 90) * h, q))
    return Path(tuple(parts))


def draw_circle(d: Drafting, back_end: str, back_kind: EdgeKind) -> None:
    """Front and back peplum as sectors; the straight grain edge hangs plumb."""
    n = d.n
    o = d.start("Op", Point(0.0, 0.0), "centre of the peplum's arcs")
    r, outer = n.r, n.r + n.L
    # front: the fold on the right, plumb; the sector spreads to the left
    side = 90 + n.phi_F
    waist = arc(o, r, side, 90)
    hem = arc(o, outer, 90, side)
    front = Piece(
        "PF",
        "Front peplum",
        (
            Edge("waist", waist),
            Edge("cf", Path((Line(waist.end, hem.start),)), EdgeKind.FOLD),
            Edge("hem", hem, EdgeKind.FINISHED),
            straight("side", hem.end, waist.start),
        ),
    )
    d.lay(
        Verb.OUTLINE,
        d.sheet.put(front),
        "PF",
        "front peplum",
        amounts=(
            ("with a waist arc of radius {}", "r"),
            ("along it", waist.length),
            ("and a hem arc of radius {}", "r_hem"),
            ("over an angle of {}", "phi_F"),
        ),
        frm=("Op",),
        detail="both arcs from Op, joined by lines that run to Op; the centre front is "
        "plumb and lies on the fold",
    )
    # back: the open edge on the left, plumb; the sector spreads to the right
    side = 90 - n.phi_B
    waist = arc(o, r, 90, side)
    hem = arc(o, outer, side, 90)
    back = Piece(
        "PB",
        "Back peplum",
        (
            *_back_waist(waist, n.x_back if n.w_PB > n.w_B + 1e-6 else 0.0, n.w_PB),
            straight("side", waist.end, hem.start),
            Edge("hem", hem, EdgeKind.FINISHED),
            straight(back_end, hem.end, waist.start, back_kind),
        ),
    )
    d.lay(
        Verb.OUTLINE,
        d.sheet.put(back),
        "PB",
        "back peplum",
        amounts=(
            ("with a waist arc of radius {}", "r"),
            ("along it", waist.length),
            ("and a hem arc of radius {}", "r_hem"),
            ("over an angle of {}", "phi_B"),
        ),
        frm=("Op",),
        detail="both arcs from Op, joined by lines that run to Op; the centre back is "
        "plumb",
    )


def _back_waist(waist: Path, on: float, whole: float) -> tuple[Edge, ...]:
    """The waist of the back peplum from the centre; what runs on behind the opening
    is an edge of its own, for it is sewn to the panel there."""
    if on <= 1e-6:
        return (Edge("waist", waist),)
    a, b = waist.split_at_length(waist.length * on / whole)
    return (Edge("waist on", a), Edge("waist", b))


def draw_panels(d: Drafting) -> None:
    """Divide both peplums on the rays that meet the bodice's panel seams."""
    n, sheet = d.n, d.sheet
    for code, parts, inner in (
        (
            "PF",
            (("PFC", "Front peplum"), ("PFS", "Side front peplum")),
            n.X - n.x_BP - n.fd / 2,
        ),
        (
            "PB",
            (("PBC", "Back peplum"), ("PBS", "Side back peplum")),
            n.w_PB - (n.xs - n.a - n.xd - n.bd_net / 2),
        ),
    ):
        p = sheet.piece(code)
        total = n.w_F if code == "PF" else n.w_PB
        share = inner / total
        waist, hem = p.edge("waist").path, p.edge("hem").path
        # the front's waist runs from the side to the centre, the back's from centre
        t = 1 - share if code == "PF" else share
        on = n.x_back if p.has("waist on") else 0.0
        a = waist.at_length((t * total - on) / (total - on) * waist.length)
        b = hem.at_length((1 - t) * hem.length)
        first, second = (parts[0], parts[1]) if code == "PF" else (parts[1], parts[0])
        sheet = cut(
            sheet,
            code,
            Path.line(a, b),
            spot_on(p, "waist", a),
            spot_on(p, "hem", b),
            edge="panel",
            seam="S19" if code == "PF" else "S20",
            seam_name=f"{p.name} panel",
            into=(first, second),
        )
    d.lay(
        Verb.CUT,
        sheet,
        "PFC, PFS, PBC, PBS",
        "peplum divided into panels",
        detail="on the rays that meet the panel seams of the bodice",
    )


def draw_gathered(d: Drafting, back_end: str, back_kind: EdgeKind) -> None:
    n = d.n
    for code, name, width, fold in (
        ("PF", "Front peplum", n.w_F * n.g, True),
        ("PB", "Back peplum", n.w_PB * n.g, False),
    ):
        a, b = Point(0.0, 0.0), Point(width, 0.0)
        c, e = Point(width, n.L), Point(0.0, n.L)
        on = 0.0 if fold or n.w_PB <= n.w_B + 1e-6 else n.x_back
        right = ("cf", EdgeKind.FOLD) if fold else ("side", EdgeKind.SEAM)
        left = ("side", EdgeKind.SEAM) if fold else (back_end, back_kind)
        piece = Piece(
            code,
            name,
            (
                *_back_waist(Path.line(a, b), on, n.w_PB),
                straight(right[0], b, c, right[1]),
                straight("hem", c, e, EdgeKind.FINISHED),
                straight(left[0], e, a, left[1]),
            ),
        )
        d.lay(
            Verb.OUTLINE,
            d.sheet.put(piece),
            code,
            name.lower(),
            amounts=(
                ("wide", width),
                ("deep", "L"),
                ("gathered into {} of the waist", width / n.g),
            ),
            detail="a rectangle",
        )
