"""A halter at work: strap, outlines cut away, wedge, band (transformations 1.8, 2)."""

from clothwright.blocks.bodice_curves import (
    inward_front,
    outwards_front,
    side_square_back,
    side_square_front,
)
from clothwright.curves import Cubic, Path, Point, turn, turned
from clothwright.features.bodice.opened_dart import one_way_each
from clothwright.features.necks.halter_rules import HALTER_BAND, cut_away
from clothwright.features.necks.neck_contour import AT
from clothwright.paper import (
    Drafting,
    Edge,
    InnerLine,
    Piece,
    Verb,
    pivot,
    redraw,
    straight,
)


def mark_strap(d: Drafting) -> None:
    """Both ends of the strap on the front shoulder."""
    out = outwards_front(d.n.sigma_f)
    d.part = "front"
    d.along("Nf", "hf", out, "dw", "inner end of the strap", "the front shoulder")
    d.also("Nf′", "Nf")
    d.along("Tf", "hf", out, "S", "outer end of the strap", "the front shoulder")


def cut_both(d: Drafting) -> None:
    """Draw front and back to the new edges."""
    n, f = d.n, d.sheet.piece("F")
    d.part = "front"
    up = f.edge("side high").path.end_direction
    g = d.found(
        "Gr",
        d["G"] + up * n.ur,
        "underarm of the front, raised",
        amounts=(("up along the side", "ur"),),
    )
    square = turned(side_square_front(d["Gc"], d["wf"]), n.theta)
    arm = d.draw(
        "armhole front",
        cut_away(g, square, d["Tf"], inward_front(n.sigma_f_new)),
        "armhole of the halter",
        frm=("Gr", "Tf"),
        detail="square to the side and to the end of the strap",
    )
    new = [
        Edge("armhole", arm),
        straight("shoulder", d["Tf"], d["Nf′"]),
        Edge("neck", d.line("neck front")),
    ]
    sheet = redraw(d.sheet, "F", [e.name for e in new], new)
    d.lay(Verb.REDRAW, sheet, "F", "outline of the front, along strap and armhole")
    d.part = "back"
    b = d.sheet.piece("B")
    u = d.found(
        "ubr",
        d["ub"] - b.edge("side").path.start_direction * n.ur,
        "underarm of the back, raised",
        amounts=(("up along the side", "ur"),),
    )
    c = d.found(
        "Cb",
        Point(0.0, n.y_top),
        "centre of the back's upper edge",
        amounts=(("below the bust line", "bt"),),
        detail="on the centre back line",
    )
    q, wide = side_square_back(d["ub"], d["wb"]), u.x - c.x
    across = Cubic(c, Point(c.x + 0.45 * wide, c.y), u + q * (0.35 * wide), u)
    top = d.draw(
        "neck back",
        Path(one_way_each(across)),
        "upper edge of the back",
        frm=("Cb", "ubr"),
        detail="square to the centre back and to the side",
    )
    names = [e.name for e in b.rolled_to("neck")]
    old = names[: names.index("side")]
    sheet = redraw(d.sheet, "B", old, [Edge("neck", top)])
    d.lay(Verb.REDRAW, sheet, "B", "back cut away along its upper edge")


_SLIT = ("armhole", "wedge a", "wedge b", "armhole high")


def draw_in(d: Drafting) -> None:
    """Fold a wedge out of the armhole towards BP; the side dart opens by it."""
    n = d.n
    if n.phi_n <= 0:
        return
    d.part = "front"
    arm, bp = d.sheet.edge("F", "armhole").path, d["BP"]
    at = d.found(
        "Mn",
        arm.at_length((1 - AT) * arm.length),
        "where the armhole is drawn in",
        amounts=(("along the armhole from the strap", AT * arm.length),),
    )
    low, high = arm.split_at_length(arm.length_to_point(at))
    slit = [
        Edge(_SLIT[0], low),
        straight(_SLIT[1], at, bp),
        straight(_SLIT[2], bp, at),
        Edge(_SLIT[3], high),
    ]
    sheet = redraw(d.sheet, "F", ["armhole"], slit)
    sheet = pivot(sheet, "F", "dart high", _SLIT[1], n.phi_n)
    m = turn(bp, n.phi_n)
    square = m.direction(turned(side_square_front(d["Gc"], d["wf"]), n.theta))
    whole = cut_away(m(d["Gr"]), square, d["Tf"], inward_front(n.sigma_f_new))
    sheet = redraw(sheet, "F", list(_SLIT), [Edge("armhole", whole)])
    moved = {k: m(sheet.points[k]) for k in ("G", "Gr", "U1")}
    d.lay(
        Verb.MOVE,
        sheet.named(**moved).drawn(**{"armhole front": whole}),
        "F.armhole",
        "wedge folded out of the armhole at Mn, to nothing at BP",
        amounts=(
            ("by {} at the armhole", "cn"),
            ("the side dart opens by {}", "phi_n"),
        ),
        frm=("BP",),
        detail="the armhole redrawn in one line over the fold",
        lines=(whole,),
    )


def draw_band(d: Drafting) -> None:
    """Half of the band: as wide as the strap, with half of the overlap at the nape."""
    n = d.n
    d.part = "band"
    w, top = n.strap, -n.lap_n / 2
    a, b, c, e = Point(0.0, top), Point(w, top), Point(w, n.nh), Point(0.0, n.nh)
    band = Piece(
        HALTER_BAND,
        "Halter band",
        (
            straight("nape", a, b),
            straight("band lower", b, c),
            straight("strap end", c, e),
            straight("band upper", e, a),
        ),
        lines=(InnerLine("nape", Path.line(Point(0.0, 0.0), Point(w, 0.0))),),
    )
    d.lay(
        Verb.OUTLINE,
        d.sheet.put(band),
        HALTER_BAND,
        "half of the band behind the neck, from beyond the nape to the strap",
        amounts=(
            ("long, from the nape to the strap", "nh"),
            ("wide", "strap"),
            ("and half of the overlap beyond it, {} in all", "lap_n"),
        ),
    )
