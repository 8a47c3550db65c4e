"""The straight skirt block, drafted as by hand: half back and half front, net lines.

Our own consolidation of common practice (blocks C of our notes); cm, y down, the waist
level of the centre back at the origin.
"""

from dataclasses import dataclass

from clothwright.blocks.skirt_curves import Half, Plan, drafted, trued
from clothwright.blocks.skirt_darts import back_plan, front_plan
from clothwright.blocks.waist_line import Waist
from clothwright.curves import IDENTITY, Motion, Path, Point, distance, mirror_in
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

BACK, FRONT = "SB", "SF"
"""Codes of the pieces."""

_COUNTED = ("", " 2")
"""What is added to the names of the darts' legs, from the centre."""


def waist_names(darts: int) -> tuple[str, ...]:
    """Names of a half's waist edges from the centre to the side."""
    return (
        ("waist", "waist mid", "waist side")
        if darts > 1
        else (("waist", "waist side") if darts else ("waist",))
    )


@dataclass(frozen=True)
class Side:
    """What tells the drafting of one half from that of the other."""

    code: str
    name: str
    half: Half
    plan: Plan
    onto: Motion
    """From the half's own place onto the page."""

    o: str
    """Mark of the waist level at the centre."""

    way: str
    """The way from the centre to the side, as a constructor names it."""

    centre: str
    """Mark of the waist at the centre."""

    rise: str = "r_S"
    """Key of the rise of the side waist."""

    @property
    def back(self) -> bool:
        """True for the back."""
        return self.way == "right"


def back_half(n: Numbers) -> Half:
    """The back as the numbers have it."""
    return Half(n.xs_S, n.a_S, n.r_S, n.db_S, n.WH, n.fl_S, n.L)


def front_half(n: Numbers) -> Half:
    """The front as the numbers have it."""
    return Half(n.xf_S, n.a_S, n.r_S, n.df_S, n.WH, n.fl_S, n.L)


def back_darts(n: Numbers) -> Plan:
    """The back's darts as cut."""
    return back_plan(n.bd_S_cut, n.nb_S, n.lb_in, n.lb_out)


def front_darts(n: Numbers) -> Plan:
    """The front's darts as cut."""
    return front_plan(n.fd_S_cut, n.nf_S, n.lf)


def draft(d: Drafting) -> None:
    """Draft the back (piece SB) and the front (piece SF) on the table."""
    n = d.n
    lay(
        d,
        Side(
            *(BACK, "Skirt back", back_half(n), back_darts(n), IDENTITY),
            *("Os", "right", "Cb"),
        ),
        Side(
            *(FRONT, "Skirt front", front_half(n), front_darts(n), onto_front(n)),
            *("Fs", "left", "Cf"),
        ),
    )


def onto_front(n: Numbers) -> Motion:
    """The motion that turns a front over onto the page."""
    return mirror_in(Point(n.half_S / 2, 0.0), Point(n.half_S / 2, 1.0))


def lay(d: Drafting, back: Side, front: Side) -> None:
    """Draft both halves on the table."""
    d.part = "skirt back"
    d.start(back.o, Point(0.0, 0.0), "the waist level on the centre back line")
    _half(d, back)
    d.part = "skirt front"
    d.point(front.o, back.o, "the waist level on the centre front line", right="half_S")
    _half(d, front)


def _half(d: Drafting, s: Side) -> None:
    n = d.n
    back = s.back
    half, onto = s.half, s.onto
    b = "b" if back else "f"
    side_name = "back" if back else "front"
    centre = f"centre {side_name}"
    drop, width = ("db_S", "xs_S") if back else ("df_S", "xf_S")
    if n[drop] != 0:
        cw = d.point(s.centre, s.o, f"{centre} at the waist", down=drop)
    else:
        d.also(s.centre, s.o)
        cw = d[s.centre]
    ch = d.point(f"M{b}", s.o, f"{centre} at the hem", down="L")
    hip = _out(d, s, f"H{b}s", width, "side at the hip", down="WH")
    level = Path.line(onto(Point(0.0, n.WH)), hip)
    d.draw(
        f"{side_name} hip line",
        level,
        f"hip line of the {side_name}",
        detail="level, from the side to the centre",
    )
    _out(
        d,
        s,
        f"W{b}s",
        half.width - half.intake,
        f"side waist of the {side_name}",
        up=s.rise,
    )
    _out(d, s, f"M{b}s", half.width + half.out, "side at the hem", down="y_hem")
    way = "plumb" if half.out == 0 else "from plumb turning straight"
    side = d.draw(
        f"{side_name} side",
        half.side().moved(onto),
        f"side of the {side_name}",
        frm=(f"W{b}s", f"H{b}s", f"M{b}s"),
        detail=f"in a curve over the hip, {way} from the hip to the hem",
    )
    curve = d.draw(
        f"{side_name} waist",
        half.waist().moved(onto),
        f"waist of the {side_name}",
        frm=(s.centre, f"W{b}s"),
        detail="square to the centre and to the side",
    )
    flat = drafted(half, s.plan)
    names = waist_names(len(flat.darts))
    for i, (dart, wide, long) in enumerate(
        zip(flat.darts, s.plan.widths, s.plan.lengths, strict=True)
    ):
        a, p, e = (onto(q) for q in (dart.centre, dart.point, dart.side))
        k = f"{b}{i + 1}"
        so_far = curve.length_to_point(a)
        d.found(
            f"D{k}",
            a,
            f"{side_name} dart, centre side",
            amounts=((f"from {s.centre} along the waist", so_far),),
        )
        d.found(
            f"E{k}",
            e,
            f"{side_name} dart, side",
            amounts=((f"on from D{k} along the waist", wide),),
        )
        d.found(
            f"P{k}",
            p,
            f"point of the {side_name} dart",
            amounts=(("long", long),),
            detail=f"square to the waist half way between D{k} and E{k}, so that both "
            "legs are of one length",
        )
    hem = Edge("hem", half.hem().moved(onto), EdgeKind.FINISHED)
    loop = _loop(s, flat, hem, Edge("side", side), (cw, ch))
    lines = (InnerLine("hip line", level),)
    d.lay(
        Verb.OUTLINE,
        d.sheet.put(Piece(s.code, s.name, loop, lines=lines)),
        s.code,
        f"{side_name} of the skirt",
        detail="with the darts ruled to their points, and the hem "
        + (
            "square to the centre"
            if half.out == 0
            else "square to the centre and to the side"
        ),
    )
    if flat.darts:
        _true(d, s, side_name, names)
    d.sheet = d.sheet.sew(
        *(
            Seam(
                f"skirt {side_name} dart{k}",
                f"skirt {side_name} dart{k}",
                (Run(s.code, f"dart centre{k}", not back),),
                (Run(s.code, f"dart side{k}", back),),
                "waist",
                "point",
                Ease.about(0.0, 0.1),
                kind=SeamKind.DART,
            )
            for k in _COUNTED[: len(flat.darts)]
        )
    )


def _out(
    d: Drafting,
    s: Side,
    name: str,
    across: str | float,
    says: str,
    *,
    down: str | None = None,
    up: str | None = None,
) -> Point:
    """From the waist level, out towards the side, and down or up."""
    if s.way == "right":
        return d.point(name, s.o, says, right=across, down=down, up=up)
    return d.point(name, s.o, says, left=across, down=down, up=up)


def _loop(
    s: Side, waist: Waist, hem: Edge, side: Edge, centre: tuple[Point, Point]
) -> tuple[Edge, ...]:
    """The half's edges, clockwise as they lie on the page."""
    names = waist_names(len(waist.darts))
    top: list[Edge] = []
    for i, path in enumerate(waist.edges):
        top.append(Edge(names[i], path))
        if i < len(waist.darts):
            dart, k = waist.darts[i], _COUNTED[i]
            top.append(straight(f"dart centre{k}", dart.centre, dart.point))
            top.append(straight(f"dart side{k}", dart.point, dart.side))
    top = [e.moved(s.onto) for e in top]
    cw, ch = centre
    if s.back:
        cb = straight("cb", ch, cw, EdgeKind.FOLD)
        return (*top, side, hem, cb)
    cf = straight("cf", cw, ch, EdgeKind.FOLD)
    over = Edge("hem", hem.path.reversed(), hem.kind)
    return (*reversed(top), cf, over, Edge("side", side.path.reversed()))


def _true(d: Drafting, s: Side, side_name: str, names: tuple[str, ...]) -> None:
    """Redraw the waist over the folded darts."""
    new = trued(s.half, s.plan)
    sheet, drawn = d.sheet, []
    for name, path in zip(names, new.edges, strict=True):
        edge = Edge(name, path).moved(s.onto)
        sheet = redraw(sheet, s.code, [name], [edge])
        drawn.append(edge.path)
    flat = drafted(s.half, s.plan)
    more = [
        _reach(b.centre, b.point) - _reach(a.centre, a.point)
        for a, b in zip(flat.darts, new.darts, strict=True)
    ]
    which = (
        ("at the dart",)
        if len(more) == 1
        else (
            "at the dart nearer to the centre",
            "at the dart nearer to the side",
        )
    )
    d.lay(
        Verb.REDRAW,
        sheet,
        f"{s.code}.waist",
        f"waist of the {side_name}, with the darts folded and their legs run on",
        amounts=tuple(zip(which, more, strict=True)),
        detail="then joined by curves that meet every leg at a right angle",
        lines=tuple(drawn),
    )


def _reach(a: Point, b: Point) -> float:
    return distance(a, b)
