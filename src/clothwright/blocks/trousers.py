"""The trouser block, drafted as by hand: front and back, each on its own crease line.

Our own consolidation of common practice (blocks E of our notes, with their
corrections); cm, y down, the crotch line on the crease of the front at the origin. The
front lies with its side at the left, the back at the left of it with its side at the
right.
"""

from collections.abc import Sequence

from clothwright.blocks.trouser_curves import Back, Front, Leg
from clothwright.blocks.trouser_waist import back_widths, front_widths
from clothwright.blocks.waist_line import Dart, Waist
from clothwright.curves import (
    IDENTITY,
    Motion,
    Path,
    Point,
    distance,
    mirror_in,
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
    redraw,
    straight,
)
from clothwright.rules import Numbers

FRONT, BACK = "TF", "TB"
"""Codes of the pieces."""

WAIST = ("waist", "waist mid", "waist side")
"""Names of the stretches of a waist, from the centre to the side."""

_COUNTED = ("", " 2")
"""What is added to the names of the darts' legs, from the centre."""


def waist_names(darts: int) -> tuple[str, ...]:
    """Names of a half's waist edges, from the centre to the side."""
    return {0: WAIST[:1], 1: (WAIST[0], WAIST[2])}.get(darts, WAIST)


def front_of(n: Numbers) -> Front:
    """The front as the numbers have it."""
    return Front(
        *(n.BRe, n.hip_F, n.fork_F, n.cf_in, n.cf_down),
        *(n.yk, n.KW, n.leg, n.HW, n.pl, n.lf_T, n.off_F),
    )


def back_of(n: Numbers) -> Back:
    """The back as the numbers have it."""
    return Back(front_of(n), n.hip_B, n.fork_B, n.tl, n.rq, n.drop, n.lb_T)


def draft(d: Drafting) -> None:
    """Draft the front (piece TF) and the back (piece TB) on the table."""
    _front(d)
    _back(d)


def _front(d: Drafting) -> None:
    n, f = d.n, front_of(d.n)
    leg = f.leg
    d.part = "trouser front"
    d.start("Of", Point(0.0, 0.0), "the crotch line on the crease of the front")
    d.point("Wf", "Of", "the waist level on the crease", up="BRe")
    d.point("Yf", "Of", "the hip level on the crease", up="yh_T")
    d.point("Kf", "Of", "the knee on the crease", down="yk")
    d.point("Mf", "Of", "the hem on the crease", down="leg")
    d.point("Ff", "Of", "fork of the front", right="x_F")
    d.point("Hfc", "Yf", "centre front at the hip", right="xcf")
    d.point("Hfs", "Yf", "side of the front at the hip", left=n.half_F + n.pl)
    cf = d.point(
        "Cf",
        "Wf",
        "centre front at the waist",
        right=n.xcf - n.cf_in,
        down="cf_down",
    )
    crotch = d.draw(
        "front crotch",
        f.crotch(),
        "crotch of the front",
        frm=("Cf", "Hfc", "Ff"),
        detail="ruled to Hfc, then hollowed to Ff, where it lies square to the inseam",
    )
    _at_knee_and_hem(d, "f", "F", "right", "left")
    inseam = d.draw(
        "front inseam",
        leg.inseam(),
        "inseam of the front",
        frm=("Ff", "Kfi", "Mfi"),
        detail="in a slight hollow to the knee, then ruled",
    )
    at = d.found(
        "Wfs",
        Point(n.x_wF, -n.BRe),
        "side of the front at the waist",
        amounts=(("straight from Cf", distance(cf, Point(n.x_wF, -n.BRe))),),
        detail="on the waist level",
    )
    side = _side(d, "f", "front", leg.side(at))
    line = d.draw(
        "front waist",
        f.line(at.x),
        "waist of the front",
        frm=("Cf", "Wfs"),
        detail="square to the centre front and to the side",
    )
    widths = front_widths(n.fd_T_cut, n.nf_T, n.fs_T)
    kind = "pleat" if n.pleated else "dart"
    darts = f.darts(at.x, widths)
    _mark_darts(d, "f", f"front {kind}", line, darts, "plumb below the middle of it")
    hem = Edge("hem", leg.hem_line(), EdgeKind.FINISHED)
    edges = (
        *_waist_edges(line, darts, kind),
        Edge("crotch", crotch),
        Edge("inseam", inseam),
        hem,
        Edge("side", side),
    )
    _lay(d, Piece(FRONT, "Trouser front", edges), f, leg, darts, IDENTITY, kind)
    _true(d, FRONT, "front", darts, f.waist(at.x, widths), IDENTITY, kind)


def _back(d: Drafting) -> None:
    n, b = d.n, back_of(d.n)
    f, leg = b.front, b.leg
    over = mirror_in(Point(-n.apart / 2, 0.0), Point(-n.apart / 2, 1.0))
    d.part = "trouser back"
    d.start(
        "Ob",
        Point(-n.apart, 0.0),
        "the crotch line on the crease of the back, on paper of its own",
    )
    d.point("Wb", "Ob", "the waist level on the crease", up="BRe")
    d.point("Yb", "Ob", "the hip level on the crease", up="yh_T")
    d.point("Kb", "Ob", "the knee on the crease", down="yk")
    d.point("Mb", "Ob", "the hem on the crease", down="leg")
    d.point("Bb", "Ob", "base of the seat line", left="x_K")
    d.point("Cb", "Wb", "centre back at the waist", left=n.x_K - n.tl, up="rq")
    d.found(
        "Hbc",
        over(b.cb_hip),
        "centre back at the hip",
        detail="where the seat line, ruled from Bb to Cb, crosses the hip level",
    )
    d.point("Hbs", "Hbc", "side of the back at the hip", right="hip_B")
    d.point("Fb", "Bb", "fork of the back", left="fork_B", down="drop")
    crotch = d.draw(
        "back crotch",
        b.crotch().moved(over),
        "crotch of the back",
        frm=("Cb", "Hbc", "Fb"),
        detail="ruled to Hbc, then hollowed to Fb, where it lies square to the inseam",
    )
    _at_knee_and_hem(d, "b", "B", "left", "right")
    inseam = d.draw(
        "back inseam",
        leg.inseam().moved(over),
        "inseam of the back",
        frm=("Fb", "Kbi", "Mbi"),
        detail="hollowed a little more than the front's, then ruled",
    )
    at = Point(n.x_wB, -n.y_wB)
    d.found(
        "Wbs",
        over(at),
        "side of the back at the waist",
        amounts=(("straight from Cb", distance(b.cb_waist, at)),),
        detail="so high that the side is as long as the front's",
    )
    side = _side(d, "b", "back", leg.side(at).moved(over))
    line = b.line(at)
    d.draw(
        "back waist",
        line.moved(over),
        "waist of the back",
        frm=("Cb", "Wbs"),
        detail="square to the seat line and to the side",
    )
    widths = back_widths(n.bd_T_cut, n.nb_T)
    darts = b.darts(at, widths)
    _mark_darts(
        d,
        "b",
        "back dart",
        line.moved(over),
        [k.moved(over) for k in darts],
        "square to the waist",
    )
    hem = Edge("hem", leg.hem_line(), EdgeKind.FINISHED)
    edges = (
        *_waist_edges(line, darts),
        Edge("seat", Path(crotch.moved(over).segments[:1])),
        Edge("crotch", Path(crotch.moved(over).segments[1:])),
        Edge("inseam", inseam.moved(over)),
        hem,
        Edge("side", side.moved(over)),
    )
    _lay(d, Piece(BACK, "Trouser back", edges), f, leg, darts, over)
    _true(d, BACK, "back", darts, b.waist(at, widths), over)


def _at_knee_and_hem(d: Drafting, b: str, half: str, inner: str, outer: str) -> None:
    """Marks of the leg to each side of the crease."""
    for level, from_, key in (("knee", f"K{b}", "k"), ("hem", f"M{b}", "m")):
        for name, way, where in (("i", inner, "inseam"), ("s", outer, "side")):
            size = f"{key}{half}_T"
            says = f"{where} at the {level}"
            if way == "right":
                d.point(f"{from_}{name}", from_, says, right=size)
            else:
                d.point(f"{from_}{name}", from_, says, left=size)


def _side(d: Drafting, b: str, half: str, path: Path) -> Path:
    return d.draw(
        f"{half} side",
        path,
        f"side of the {half}",
        frm=(f"W{b}s", f"H{b}s", f"K{b}s", f"M{b}s"),
        detail="in a curve over the hip, upright at the hip, ruled from the knee",
    )


def _mark_darts(
    d: Drafting, b: str, what: str, line: Path, darts: Sequence[Dart], how: str
) -> None:
    for i, dart in enumerate(darts, 1):
        wide = distance(dart.centre, dart.side)
        long = distance(dart.point, _middle(dart))
        which = what if i == 1 else f"second {what}"
        d.found(
            f"D{b}{i}",
            dart.centre,
            f"{which}, centre side",
            frm=(f"C{b}",),
            amounts=(
                (f"from C{b} along the waist", line.length_to_point(dart.centre)),
            ),
        )
        d.found(
            f"E{b}{i}",
            dart.side,
            f"{which}, side",
            frm=(f"D{b}{i}",),
            amounts=((f"on from D{b}{i}", wide),),
        )
        d.found(
            f"P{b}{i}",
            dart.point,
            f"point of the {which}",
            frm=(f"D{b}{i}", f"E{b}{i}"),
            amounts=(("long", long),),
            detail=how,
        )


def _middle(dart: Dart) -> Point:
    return (dart.centre + dart.side) * 0.5


def _waist_edges(line: Path, darts: tuple[Dart, ...], kind: str = "dart") -> list[Edge]:
    """Waist and legs of the darts as they are first drawn, from the side to the
    centre."""
    names = waist_names(len(darts))
    at, starts = [line.start], []
    for k in darts:
        starts.append((at.pop(), k.centre))
        at.append(k.side)
    starts.append((at.pop(), line.end))
    out: list[Edge] = []
    for i, (name, (a, b)) in enumerate(zip(names, starts, strict=True)):
        whole = not darts
        out.append(Edge(name, line) if whole else straight(name, a, b))
        if i < len(darts):
            k, more = darts[i], _COUNTED[i]
            out.append(straight(f"{kind} centre{more}", k.centre, k.point))
            out.append(straight(f"{kind} side{more}", k.point, k.side))
    return [e.along(e.path.reversed()) for e in reversed(out)]


def _lay(
    d: Drafting,
    piece: Piece,
    f: Front,
    leg: Leg,
    darts: tuple[Dart, ...],
    onto: Motion,
    kind: str = "dart",
) -> None:
    """Lay the piece on the table with its level lines and its crease."""
    far = 99.0
    levels = (
        ("hip line", f.hip_level),
        ("crotch line", 0.0),
        ("knee line", leg.knee),
    )
    top = min((k.point.y for k in darts if abs(k.point.x) < 1.0), default=-f.rise)
    grain = Point(0.0, leg.hem - 12.0), Point(0.0, f.hip_level + 1.0)
    half = "front" if piece.code == FRONT else "back"
    whole = Piece(
        piece.code,
        piece.name,
        piece.edges,
        lines=(
            *(
                InnerLine(name, Path.line(Point(-far, y), Point(far, y)))
                for name, y in levels
            ),
            InnerLine("crease", Path.line(Point(0.0, leg.hem), Point(0.0, top))),
        ),
        grain=grain,
    )
    d.lay(
        Verb.OUTLINE,
        d.sheet.put(whole.moved(onto)),
        piece.code,
        f"{half} of the trousers",
        detail="with "
        + (f"the {kind}s ruled to their points, and " if darts else "")
        + "the hem "
        + (
            "ruled"
            if leg.hem_line().straight
            else "in a curve that is square to inseam and side"
        )
        + f"; the crease, from {'Wf' if half == 'front' else 'Wb'} to the hem, is the "
        "straight grain",
    )
    back = piece.code == BACK
    d.sheet = d.sheet.sew(
        *(
            Seam(
                f"trouser {half} {kind}{more}",
                f"trouser {half} {kind}{more}",
                (Run(piece.code, f"{kind} centre{more}", not back),),
                (Run(piece.code, f"{kind} side{more}", back),),
                "waist",
                "point",
                Ease.about(0.0, 0.1),
                kind=SeamKind.DART,
            )
            for more in _COUNTED[: len(darts)]
        )
    )


def _true(
    d: Drafting,
    code: str,
    half: str,
    darts: tuple[Dart, ...],
    new: Waist,
    onto: Motion,
    kind: str = "dart",
) -> None:
    """Redraw the waist over the folded darts."""
    if not darts:
        return
    sheet, drawn = d.sheet, []
    for name, path in zip(waist_names(len(darts)), new.edges, strict=True):
        edge = Edge(name, path.reversed()).moved(onto)
        sheet = redraw(sheet, code, [name], [edge])
        drawn.append(edge.path)
    more = [
        distance(b.centre, b.point) - distance(a.centre, a.point)
        for a, b in zip(darts, new.darts, strict=True)
    ]
    which = (
        (f"at the {kind}",)
        if len(more) == 1
        else (
            f"at the {kind} nearer to the centre",
            f"at the {kind} nearer to the side",
        )
    )
    d.lay(
        Verb.REDRAW,
        sheet,
        f"{code}.waist",
        f"waist of the {half}, the {kind}s folded shut and both legs run on beyond it",
        amounts=tuple(zip(which, more, strict=True)),
        detail="then joined by curves that meet every leg at a right angle",
        lines=tuple(drawn),
    )
