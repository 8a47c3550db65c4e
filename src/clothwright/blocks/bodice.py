"""The fitted bodice block, drafted as by hand: half back and half front, net lines.

Waist darts in both, a side bust dart in front, a shoulder dart in the back when the
order wants one. Our own consolidation of common practice (blocks A2 and A3 of our
notes, with their corrections); cm, y down, nape at the origin.
"""

from clothwright.blocks.bodice_curves import (
    back_armhole,
    back_neck_curve,
    back_pitch,
    front_armhole,
    front_neck_curve,
    front_pitch,
    inward_back,
    inward_front,
    outwards_back,
    outwards_front,
    side_square_back,
    side_square_front,
)
from clothwright.curves import (
    Path,
    Point,
    Vector,
    dot,
    mix,
    turned,
)
from clothwright.paper import (
    Drafting,
    Ease,
    Edge,
    EdgeKind,
    InnerLine,
    Piece,
    Run,
    Seam,
    SeamKind,
    Verb,
    straight,
)

FRONT, BACK = "front", "back"


def mark_pitch(d: Drafting, half: str, tip: str, at: Point) -> Point:
    """Mark the pitch point of a half, told from its centre line and shoulder tip."""
    name, key, across = "pb", "xb", at.x
    share = "half way from the tip to the bust line"
    if half == FRONT:
        name, key, across = "pf", "xfw", d.n.X - at.x
        share = "a little over half way from the tip to the underarm"
    # where a guard has moved the pitch, the width is no longer the rule's
    size = key if abs(across - d.n[key]) < 1e-9 else across
    return d.found(
        name,
        at,
        f"{half} pitch point",
        amounts=(
            (f"from the centre {half} line", size),
            (f"down from {tip}", at.y - d[tip].y),
        ),
        detail=share,
    )


def draft(d: Drafting) -> None:
    """Draft the back (piece B) and the front (piece F) on the table, as they are before
    any fitting."""
    numbers, d.n = d.n, d.n.unfitted
    lay(d)
    d.n = numbers


def lay(d: Drafting) -> None:
    """Draft the back and the front from the numbers as they are."""
    _back(d)
    _front(d)
    d.sheet = d.sheet.sew(
        Seam(
            "shoulder",
            "shoulder",
            (Run("F", "shoulder", True),),
            tuple(
                Run("B", e)
                for e in ("shoulder neck", "shoulder")
                if d.sheet.piece("B").has(e)
            ),
            "neck",
            "tip",
            Ease.about(d.n.se, 0.05),
        ),
        Seam(
            "side",
            "side",
            (Run("F", "side high", True), Run("F", "side low", True)),
            (Run("B", "side"),),
            "underarm",
            "waist",
            Ease.about(0.0, 0.1),
        ),
    )


def _level(d: Drafting, raised: str) -> str | float:
    """The waist, or how far it lies below the nape where it is raised."""
    return d.n.yW - d.n[raised] if d.n[raised] else "yW"


def _back(d: Drafting) -> None:
    n = d.n
    d.part = "back"
    out, inward = outwards_back(n.sigma_b), inward_back(n.sigma_b)
    o = d.start("O", Point(0.0, 0.0), "the nape, on the centre back line")
    d.point("CBw", "O", "centre back at the waist", down=_level(d, "sway"))
    hb = d.point("hb", "O", "shoulder neck point of the back", right="bw", up="nr")
    neck = d.draw(
        "back neck",
        Path((back_neck_curve(n.bw, n.nr),)),
        "neck of the back",
        frm=("O", "hb"),
        detail="square to the centre back, nearly square to the shoulder",
    )
    tb = d.along("tb", "hb", out, "Ls", "shoulder tip of the back", "the back shoulder")
    ub = d.point("ub", "O", "underarm", right="xs", down="yB")
    wb = d.point("wb", "O", "side waist of the back", right=n.xs - n.a, down="yW")
    pb = mark_pitch(d, BACK, "tb", back_pitch(tb, inward, n.xb, n.yB))
    armhole = d.draw(
        "back armhole",
        back_armhole(tb, inward, pb, ub, side_square_back(ub, wb), n.yB - pb.y),
        "armhole of the back",
        frm=("tb", "pb", "ub"),
        detail="square to the shoulder, upright at the pitch, square to the side",
    )
    pd = d.point("Pd", "O", "point of the back waist dart", right="xd", down="y_Pd")
    w = d["CBw"]
    drop = n.sway - n.sway_dart  # where a sway back has raised the centre
    down = drop if drop else None
    d1b = d.point(
        "D1b",
        "CBw",
        "back dart at the waist, centre side",
        right=n.xd - n.bd_cut / 2,
        down=down,
    )
    d2b = d.point(
        "D2b",
        "CBw",
        "back dart at the waist, side",
        right=n.xd + n.bd_cut / 2,
        down=down,
    )
    shoulder = _back_shoulder(d, hb, tb, out, inward)
    piece = Piece(
        "B",
        "Back",
        (
            Edge("neck", neck),
            *shoulder,
            Edge("armhole", armhole),
            straight("side", ub, wb),
            straight("waist side", wb, d2b),
            straight("leg side", d2b, pd),
            straight("leg cb", pd, d1b),
            straight("waist", d1b, w),
            straight("cb", w, o, EdgeKind.FOLD),
        ),
        lines=(InnerLine("bust line", Path.line(Point(0.0, n.yB), ub)),),
        grain=(Point(3.0, n.yW - 6), Point(3.0, 6.0)),
    )
    d.lay(
        Verb.OUTLINE,
        d.sheet.put(piece),
        "B",
        "back of the block",
        detail="with the shoulder ruled from hb to tb, the side from ub to wb, the "
        "waist from the centre back to wb, and the dart from D1b and D2b to Pd"
        + (", the shoulder dart from D1s and D2s to Ps" if n.sd > 0 else ""),
    )
    seams = [
        Seam(
            "back waist dart",
            "back waist dart",
            (Run("B", "leg cb", True),),
            (Run("B", "leg side"),),
            "waist",
            "point",
            Ease.about(0.0, 0.1),
            kind=SeamKind.DART,
        )
    ]
    if n.sd > 0:
        seams.append(
            Seam(
                "back shoulder dart",
                "back shoulder dart",
                (Run("B", "shoulder dart neck"),),
                (Run("B", "shoulder dart tip", True),),
                "shoulder",
                "point",
                Ease.about(0.0, 0.1),
                kind=SeamKind.DART,
            )
        )
    d.sheet = d.sheet.sew(*seams)


def _back_shoulder(
    d: Drafting, hb: Point, tb: Point, out: Vector, inward: Vector
) -> tuple[Edge, ...]:
    n = d.n
    if n.sd <= 0:
        return (straight("shoulder", hb, tb),)
    line = "the back shoulder"
    d1 = d.along(
        "D1s", "hb", out, n.dart_at - n.sd / 2, "shoulder dart, neck side", line
    )
    d2 = d.along("D2s", "D1s", out, "sd", "shoulder dart, tip side", line)
    at = Point(n.x_Ps, n.y_Ps)
    ps = d.found(
        "Ps",
        at,
        "point of the shoulder dart",
        amounts=(
            ("along the shoulder from D1s", dot(at - d1, out)),
            ("square to it", dot(at - d1, inward)),
        ),
    )
    return (
        straight("shoulder neck", hb, d1),
        straight("shoulder dart neck", d1, ps),
        straight("shoulder dart tip", ps, d2),
        straight("shoulder", d2, tb),
    )


def _front(d: Drafting) -> None:
    n = d.n
    d.part = "front"
    out, inward = outwards_front(n.sigma_f), inward_front(n.sigma_f)
    cfw = d.point("CFw", "O", "centre front at the waist", right="X", down="yW")
    bp = d.found(
        "BP",
        Point(n.x_BP, n.y_BP),
        "bust point",
        amounts=(
            ("from the centre back line", "x_BP"),
            ("down from the nape", "y_BP"),
        ),
    )
    hf = d.found(
        "hf",
        Point(n.x_hf, n.y_hf),
        "shoulder neck point of the front",
        amounts=(("from the centre front line", "fw"), ("from BP", "NBP")),
        detail="up from BP until the tape reads neck to bust point",
    )
    c = d.point(
        "C block", "hf", "front neck point of the block", right="fw", down="dep"
    )
    neck = d.draw(
        "front neck",
        Path((front_neck_curve(n.x_hf, n.y_hf, n.fw, n.dep, n.sigma_f),)),
        "neck of the front",
        frm=("hf", "C block"),
        detail="square to the shoulder and to the centre front",
    )
    tf = d.along(
        "tf", "hf", out, "SH", "shoulder tip of the front", "the front shoulder"
    )
    gc = d.point("Gc", "O", "underarm with the bust dart closed", right="xs", down="yB")
    wf = d.point("wf", "O", "side waist of the front", right=n.xs + n.a, down="yW")
    g = d.turned("G", "Gc", "BP", "theta", "underarm with the bust dart open")
    u2 = d.found(
        "U2",
        mix(gc, wf, (n.yd - gc.y) / (wf.y - gc.y)),
        "side dart, lower end",
        amounts=(("down from the nape", "yd"),),
        detail="on the side seam",
    )
    u1 = d.turned("U1", "U2", "BP", "theta", "side dart, upper end")
    pf = mark_pitch(d, FRONT, "tf", front_pitch(tf, inward, n.X, n.xfw, g.y))
    q = turned(side_square_front(gc, wf), n.theta)
    armhole = d.draw(
        "front armhole",
        front_armhole(tf, inward, pf, g, q),
        "armhole of the front",
        frm=("tf", "pf", "G"),
        detail="square to the shoulder, upright at the pitch, square to the side when "
        "the dart is closed",
    )
    d1 = d.point(
        "D1",
        "CFw",
        "front dart at the waist, centre side",
        left=n.X - n.x_Pf - n.fd_cut / 2,
    )
    d2 = d.point(
        "D2", "CFw", "front dart at the waist, side", left=n.X - n.x_Pf + n.fd_cut / 2
    )
    piece = Piece(
        "F",
        "Front",
        (
            Edge("neck", neck),
            straight("cf", c, cfw, EdgeKind.FOLD),
            straight("waist", cfw, d1),
            straight("leg cf", d1, bp),
            straight("leg side", bp, d2),
            straight("waist side", d2, wf),
            straight("side low", wf, u2),
            straight("dart low", u2, bp),
            straight("dart high", bp, u1),
            straight("side high", u1, g),
            Edge("armhole", armhole.reversed()),
            straight("shoulder", tf, hf),
        ),
        grain=(Point(n.X - 2.5, n.yW - 6), Point(n.X - 2.5, c.y + 5)),
    )
    d.lay(
        Verb.OUTLINE,
        d.sheet.put(piece),
        "F",
        "front of the block",
        detail="with the shoulder ruled from hf to tf, the side from G to U1 and from "
        "U2 to wf, the waist from the centre front to wf, and both darts to BP",
    )
    d.sheet = d.sheet.sew(
        Seam(
            "front waist dart",
            "front waist dart",
            (Run("F", "leg cf"),),
            (Run("F", "leg side", True),),
            "waist",
            "point",
            Ease.about(0.0, 0.1),
            kind=SeamKind.DART,
        ),
        Seam(
            "side dart",
            "side dart",
            (Run("F", "dart low"),),
            (Run("F", "dart high", True),),
            "side",
            "point",
            Ease.about(0.0, 0.1),
            kind=SeamKind.DART,
        ),
    )
