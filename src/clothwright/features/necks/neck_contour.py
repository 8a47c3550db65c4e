"""Contouring: a low or wide neck drawn in, what is taken out sent to the working dart.

The hollows of the body are bridged by the block, so that a cut-away edge gapes. A wedge
is folded out of the edge towards the bust point in front, towards the point of the
waist dart behind, and the dart there opens by its angle (transformations 1.8).
"""

from collections.abc import Callable
from dataclasses import dataclass

from clothwright.blocks.bodice_curves import (
    inward_back,
    inward_front,
    outwards_back,
    outwards_front,
)
from clothwright.blocks.bodice_rules import clip
from clothwright.blocks.trial import by_trial
from clothwright.curves import Cubic, Path, Point, distance, turn, wedge_angle
from clothwright.features.bodice.back_dart import has_dart
from clothwright.features.bodice.side_dart import NO_DART
from clothwright.features.necks.neck_shapes import (
    FRONT_CURVES,
    MORE,
    BackShape,
    FrontShape,
    back_curve,
)
from clothwright.paper import (
    Drafting,
    Edge,
    PaperError,
    Verb,
    pivot,
    redraw,
    straight,
)
from clothwright.rules import Kind, RuleTable

_SRC = "transformations 1.8"

MOST_FOLDED = 2.0
"""More than this folded out at one place wrinkles, cm (1.3)."""

AT = 0.6
"""The wedge lies at this share of the neck's side, from the shoulder."""

NO_CONTOUR = RuleTable("necks not contoured")


@NO_CONTOUR.rule(
    "φn", "turn of the contoured front neck", kind=Kind.ANGLE, key="phi_n", source=_SRC
)
def _front_plain() -> float:
    return 0.0


def _scaled(amount: float, c: float) -> float:
    return amount * clip(0.6 + 0.1 * c, 0.6, 1.8)


_FRONT_PLACE = ("X", "x_hf", "y_hf", "S", "sigma_f", "sigma_f_new", "Lr", "Df", "tau")


def front_contour(shape: FrontShape) -> RuleTable:
    """The rules of a contoured front neck: its usual amount, its angle."""
    table = RuleTable(f"contour of a {shape.value} neck, front")

    def side(
        X: float,
        x_hf: float,
        y_hf: float,
        S: float,
        sigma_f: float,
        sigma_f_new: float,
        Lr: float,
        Df: float,
        tau: float,
        *more: float,
    ) -> Path:
        p = neck_end(x_hf, y_hf, S, sigma_f, sigma_f_new, Lr)
        slope = sigma_f_new - tau
        path = FRONT_CURVES[shape](
            p, Point(X, y_hf + Df), inward_front(slope), slope, *(more or (0.0,))
        )
        return Path((path.segments[0],))

    usual = 1.2 if shape is FrontShape.SWEETHEART else 0.0
    drawn_in(table, usual, (*_FRONT_PLACE, *MORE.get(shape, ())), side)
    return table


def neck_end(
    x_hf: float, y_hf: float, S: float, sigma_f: float, sigma_f_new: float, Lr: float
) -> Point:
    """Neck end of the front shoulder, tightened or not."""
    tip = Point(x_hf, y_hf) + outwards_front(sigma_f) * S
    return tip - outwards_front(sigma_f_new) * Lr


def drawn_in(
    table: RuleTable,
    usual: float,
    needs: tuple[str, ...],
    side: Callable[..., Path],
    most: float = MOST_FOLDED,
) -> None:
    """Add the rules of a front edge drawn in: the amount usual for it, before the scale
    of the cup, and the angle. `side` draws the edge's side, from the shoulder, of the
    numbers named in `needs`."""

    @table.rule(
        "cn",
        "contour of the front neck",
        key="cn",
        source=_SRC,
        formula=f"{usual:g} cm·(0.6 + 0.1·c), kept between 0.6 and 1.8 of it"
        if usual
        else "none",
        low=0.0,
        high=most,
    )
    def _amount(c: float) -> float:
        return min(MOST_FOLDED, _scaled(usual, c))

    @table.rule(
        "|BP Mn|",
        "bust point to the wedge on the front neck",
        key="reach_n",
        source=_SRC,
        needs=(*needs, "x_BP", "y_BP"),
    )
    def _reach(*place: float) -> float:
        path = side(*place[:-2])
        return distance(Point(*place[-2:]), path.at_length(AT * path.length))

    @table.rule(
        "φn",
        "turn of the contoured front neck",
        kind=Kind.ANGLE,
        key="phi_n",
        source=_SRC,
        formula="2·asin(cn/(2·|BP Mn|))",
    )
    def _turn(cn: float, reach_n: float) -> float:
        return wedge_angle(cn, reach_n)


_BACK_PLACE = (
    *("bw", "nr", "Sb", "sigma_bs", "sigma_b_new", "Lrb", "Db", "tau"),
    *("xd", "y_Pd"),
)


def back_contour(shape: BackShape) -> RuleTable:
    """The rules of a contoured back neck."""
    table = RuleTable(f"contour of a {shape.value} neck, back")

    @table.rule(
        "cnb",
        "contour of the back neck",
        key="cnb",
        source=_SRC,
        formula="none",
        low=0.0,
        high=MOST_FOLDED,
    )
    def _amount() -> float:
        return 0.0

    @table.rule(
        "|Pd Mnb|",
        "point of the back waist dart to the wedge on the back neck",
        key="reach_nb",
        source=_SRC,
        needs=_BACK_PLACE,
    )
    def _reach(
        bw: float,
        nr: float,
        Sb: float,
        sigma_bs: float,
        sigma_b_new: float,
        Lrb: float,
        Db: float,
        tau: float,
        xd: float,
        y_Pd: float,
    ) -> float:
        tip = Point(bw, -nr) + outwards_back(sigma_bs) * Sb
        p = tip - outwards_back(sigma_b_new) * Lrb
        path = back_curve(shape, p, Point(0.0, Db - nr), inward_back(sigma_b_new + tau))
        return distance(Point(xd, y_Pd), path.at_length((1 - AT) * path.length))

    @table.rule(
        "φnb",
        "turn of the contoured back neck",
        kind=Kind.ANGLE,
        key="phi_nb",
        source=_SRC,
        formula="2·asin(cnb/(2·|Pd Mnb|))",
    )
    def _turn(cnb: float, reach_nb: float) -> float:
        return wedge_angle(cnb, reach_nb)

    return table


FRONT_CONTOUR = {shape: front_contour(shape) for shape in FrontShape}
BACK_CONTOUR = {shape: back_contour(shape) for shape in BackShape}


# -- folding it out --------------------------------------------------------------------
@dataclass(frozen=True)
class _Half:
    piece: str
    about: str
    line: str
    amount: str
    angle: str
    clockwise: float
    dart: str
    marks: tuple[str, ...]
    """What lies on the part that turns."""


_FRONT = _Half(
    "F",
    "BP",
    "neck front",
    "cn",
    "phi_n",
    1.0,
    "side dart",
    ("Nf", "Nf′", "Tf", "pf", "G", "U1"),
)
_BACK = _Half(
    "B",
    "Pd",
    "neck back",
    "cnb",
    "phi_nb",
    -1.0,
    "back waist dart",
    ("Nb", "Nb′", "Tb", "pb", "ub", "wb", "D2b"),
)
Redrawn = Callable[[Point], Path]

_WEDGE = ("wedge a", "wedge b")

_FISH_EYE = "fl_T"
"""A number by which a torso is known: its waist darts cannot open down to the hem."""

_UPPER = "armhole high"

_ABOVE = ("Nb", "Nb′", "Tb", "Tbe")
"""What lies on the shoulder, above the pitch."""


def contour_front(d: Drafting, curve: Redrawn) -> None:
    """Fold the wedge out of the front neck; the side dart opens by it. `curve` draws
    the neck to its shoulder end as that lies then."""
    if d.n.phi_n > 0:
        d.part = "front"
        _fold(d, _FRONT, curve)


def contour_back(d: Drafting, curve: Callable[[Point, float], Path]) -> None:
    """Fold the wedge out of the back neck; the back waist dart opens by it, where there
    is one and it is no fish-eye. `curve` draws the neck to its shoulder end, the
    shoulder less steep by so many degrees."""
    if d.n.cnb <= 0:
        return
    if has_dart(d.sheet):
        raise PaperError(
            "a contoured back neck and a back shoulder dart both turn the shoulder: "
            'set back_shoulder = "ease", or the contour to 0'
        )
    d.part = "back"
    if _FISH_EYE in d.n or d.n.bd_net < NO_DART:
        _fold_to_armhole(d, curve)
    else:
        _fold(d, _BACK, lambda end: curve(end, d.n.phi_nb))


def _fold(d: Drafting, h: _Half, curve: Redrawn) -> None:
    apex, front = d[h.about], h.piece == "F"
    at, slit = _slit(d, h, apex)
    sheet = redraw(d.sheet, h.piece, ["neck"], slit)
    turning = ("dart high", _WEDGE[0]) if front else (_WEDGE[1], "leg side")
    degrees = h.clockwise * d.n[h.angle]
    sheet = pivot(sheet, h.piece, *turning, degrees)
    m = turn(apex, degrees)
    neck = d.sheet.edge(h.piece, "neck").path
    whole = curve(m(neck.start if front else neck.end))
    sheet = redraw(sheet, h.piece, [e.name for e in slit], [Edge("neck", whole)]).drawn(
        **{h.line: whole}
    )
    moved = {k: m(sheet.points[k]) for k in h.marks if k in sheet.points}
    d.lay(
        Verb.MOVE,
        sheet.named(**moved),
        f"{h.piece}.neck",
        f"wedge folded out of the neck at {at}, to nothing at {h.about}",
        amounts=(
            ("by {} at the neck", h.amount),
            (f"the {h.dart} opens by {{}}", h.angle),
        ),
        frm=(h.about,),
        detail="the neck redrawn in one line over the fold",
        lines=(whole,),
    )


def _fold_to_armhole(d: Drafting, curve: Callable[[Point, float], Path]) -> None:
    """The same to nothing at the pitch of the armhole: shoulder and upper armhole turn
    about it, and the armhole is redrawn over the corner (common practice, no source).
    """
    h = _BACK
    arm = d.sheet.edge("B", "armhole").path
    high, low = arm.split_at_length(arm.length_to_point(d["pb"]))
    hinge = high.end
    at, slit = _slit(d, h, hinge)
    degrees = wedge_angle(d.n.cnb, distance(hinge, d[at]))
    parts = [Edge(_UPPER, high), Edge("armhole", low)]
    sheet = redraw(d.sheet, "B", ["neck"], slit)
    sheet = redraw(sheet, "B", ["armhole"], parts)
    sheet = pivot(sheet, "B", _WEDGE[1], _UPPER, h.clockwise * degrees)
    m = turn(hinge, h.clockwise * degrees)
    neck = curve(m(d.sheet.edge("B", "neck").path.end), degrees)
    armhole = _run_into(high.moved(m), low)
    for old, new in (
        (parts, Edge("armhole", armhole)),
        (slit, Edge("neck", neck)),
    ):
        sheet = redraw(sheet, "B", [e.name for e in old], [new])
    sheet = sheet.drawn(**{h.line: neck, "armhole back": armhole})
    moved = {k: m(sheet.points[k]) for k in _ABOVE if k in sheet.points}
    d.lay(
        Verb.MOVE,
        sheet.named(**moved),
        "B.neck",
        f"wedge folded out of the neck at {at}, to nothing at pb",
        amounts=(("by {} at the neck", h.amount),),
        frm=("pb",),
        detail="neck and armhole redrawn, each in one line over the fold",
        lines=(neck, armhole),
    )


def _run_into(upper: Path, lower: Path) -> Path:
    """Two lines in one, the lower leaving as the upper arrives and as long as it was:
    a sleeve was cut to it."""
    first, *rest = lower.segments
    assert isinstance(first, Cubic)
    start, way = first.start, upper.end_direction

    def bent(reach: float) -> Cubic:
        return Cubic(start, start + way * reach, first.handle2, first.end)

    usual = distance(start, first.handle1)
    reach = by_trial(lambda r: bent(r).length - first.length, usual / 3, usual * 3)
    run = bent(usual if reach is None else reach)
    return Path((*upper.pinned(upper.start, start).segments, run, *rest))


def _slit(d: Drafting, h: _Half, apex: Point) -> tuple[str, list[Edge]]:
    """Mark where the neck is drawn in; the neck slit from there to `apex`."""
    neck, front = d.sheet.edge(h.piece, "neck").path, h.piece == "F"
    side = neck.segments[0].length if front else neck.length
    at = neck.at_length(side * AT if front else side * (1 - AT))
    mark = "Mn" if front else "Mnb"
    d.found(
        mark,
        at,
        f"where the {'front' if front else 'back'} neck is drawn in",
        amounts=(("along the neck from the shoulder", side * AT),),
    )
    a, b = neck.split_at_length(neck.length_to_point(at))
    outer, inner = ("neck out", "neck in") if front else ("neck in", "neck out")
    return mark, [
        Edge(outer, a),
        straight(_WEDGE[0], at, apex),
        straight(_WEDGE[1], apex, at),
        Edge(inner, b),
    ]
