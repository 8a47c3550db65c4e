"""Both halves of a pleated skirt of a dress, as their pleats lie and open
(transformations 10)."""

from clothwright.curves import Point, mirror_in, shift
from clothwright.features.grain import grained
from clothwright.features.skirts.folds import pleat_seam
from clothwright.features.skirts.half_pleats import (
    SIDE,
    HalfPleats,
    half_pleats,
    opened_half,
)
from clothwright.features.skirts.hanging_seams import lining_fuller
from clothwright.features.skirts.peplum_pieces import closed_end
from clothwright.features.skirts.pleated_skirt_drawing import SEAM, seen_at_waist
from clothwright.paper import (
    UNDER,
    Drafting,
    EdgeKind,
    PaperError,
    Piece,
    Run,
    Verb,
    straight,
)
from clothwright.rules import Numbers

FRONT, BACK = "PF", "PB"

HALVES = ((BACK, "B", "back", "sb"), (FRONT, "F", "front", "sf"))
"""Code, key, word, and end of the names of its marks, of each half."""

_GAP = 4.0
"""Bare paper between back and front, cm."""

_OVER = mirror_in(Point(0.0, 0.0), Point(0.0, 1.0))


def draw_closed(d: Drafting, *, box: bool) -> None:
    """Back and front as their pleats lie."""
    n = d.n
    if n.pg > 0 and not box:
        raise PaperError(
            "knife pleats lie edge to edge: leave the gap (pg) out, or choose box "
            "pleats"
        )
    end = closed_end(d.sheet)
    for code, key, half, k in HALVES:
        seen_at_waist(n[f"pv_{key}"], n[f"pt_{key}"])
        d.part = f"skirt {half}"
        if code == BACK:
            d.start(f"O{k}", Point(0.0, 0.0), "centre back of the skirt at the waist")
        else:
            at = Point(n.x_SB + n.x_SF + _GAP, 0.0)
            d.start(f"O{k}", at, "centre front of the skirt at the waist")
        _closed_half(d, code, f"S{key}", half, k, end.kind)


def _closed_half(
    d: Drafting, code: str, key: str, half: str, k: str, back_kind: EdgeKind
) -> None:
    """A half as its pleats lie below the hip: a rectangle. Above, its pleats will take
    the waist in."""
    front = code == FRONT
    way, o = "left" if front else "right", f"O{k}"
    foot = d.point(f"M{k}", o, f"centre {half} at the hem", down="L")
    w = _out(d, f"W{k}", o, "side at the waist", way, f"x_{key}")
    e = _out(d, f"E{k}", f"M{k}", "side at the hem", way, f"x_{key}")
    top, done = d[o], EdgeKind.FINISHED
    edges = (
        straight("waist", top, w),
        straight("side", w, e),
        straight("hem", e, foot, done),
        straight("cb", foot, top, back_kind),
    )
    if front:
        edges = (
            straight("waist", w, top),
            straight("cf", top, foot, EdgeKind.FOLD),
            straight("hem", foot, e, done),
            straight("side", e, w),
        )
    d.lay(
        Verb.OUTLINE,
        d.sheet.put(Piece(code, f"{half.capitalize()} skirt", edges)),
        code,
        f"{half} of the skirt as its pleats lie below the hip",
        detail="a rectangle; above the hip its pleats will take the waist in",
    )


def _out(d: Drafting, name: str, frm: str, says: str, way: str, across: str) -> Point:
    """Out to the side."""
    if way == "right":
        return d.point(name, frm, says, right=across)
    return d.point(name, frm, says, left=across)


def take_in_lining(d: Drafting) -> None:
    """The lining hangs straight, its waist laid in small pleats."""
    n = d.n
    more = {s: n[f"x_S{k}"] - n[f"w_S{k}"] for s, k in (("LS5", "F"), ("LS6", "B"))}
    d.sheet = lining_fuller(d.sheet, more)


def pleats_of_half(n: Numbers, key: str, *, box: bool) -> HalfPleats:
    """The pleats of the front ("F") or the back ("B") as the numbers have them."""
    k = HalfPleats(
        round(n[f"pn_{key}"]),
        n[f"pv_{key}"],
        n.pu,
        n.pg,
        n[f"pt_{key}"] / (2 if box else 1),
        box,
        n.WH,
        n.L,
        key == "F",
    )
    return half_pleats(k, n[f"w_S{key}"])


def lay_open(d: Drafting, *, box: bool) -> None:
    """Draw both halves with their pleats open, their upper edges as the folded paper
    gives them."""
    n = d.n
    head: float | None = None
    for code, key, half, _ in reversed(HALVES):
        d.part = f"skirt {half}"
        k = pleats_of_half(n, key, box=box)
        closed = d.sheet.piece(code)
        front = code == FRONT
        centre = closed.edge("cf" if front else "cb")
        piece, names = opened_half(closed, k, n.p_down, centre, head)
        head = piece.edge("side").path.start.y  # of both halves, for they are sewn
        if front:
            piece = piece.moved(shift((d["Osf"].x, 0.0)) @ _OVER)
        piece = grained(piece)

        def where(
            run: Run, code: str = code, names: list[str] = names, front: bool = front
        ) -> tuple[Run, ...]:
            if run.edge != "waist":
                return (run,)
            runs = [Run(code, name, run.backward) for name in names]
            return tuple(reversed(runs) if front ^ run.backward else runs)

        sheet = d.sheet.put(piece).with_runs(where, code)
        seams = [
            pleat_seam(
                f"{SEAM}{half} {j}",
                f"pleat {j} of the {half}",
                Run(code, f"{UNDER} {j}", backward=front),
                Run(code, f"{UNDER} {j} over", backward=not front),
            )
            for j in range(1, len(k.strips()))
        ]
        d.lay(
            Verb.REDRAW,
            sheet.sew(*seams),
            code,
            f"{half} with its pleats laid open, {round(n[f'pn_{key}'])} beside the "
            "face at the centre",
            amounts=(
                ("each wide at the hip", f"pv_{key}"),
                ("folded under", "pu"),
                ("taken in at the waist by each", f"pt_{key}"),
                ("wide in all", f"cloth_{key}"),
            ),
            detail="half a face from the centre first; ruled plumb below the hip and "
            "slanting to the waist; fold the paper, draw the waist across, cut, and "
            "open it: so every edge is trued",
            lines=(piece.outline,),
        )
    if not box:
        side = pleat_seam(
            f"{SEAM}side", "pleat at the side", Run(FRONT, SIDE, True), Run(BACK, SIDE)
        )
        d.sheet = d.sheet.sew(side)
