"""How a kimono sleeve is drawn on front and back, and its gusset (transformations
4)."""

import math
from dataclasses import dataclass, replace

from clothwright.curves import (
    Path,
    Point,
    Vector,
    degrees_between,
    direction,
    left_normal,
)
from clothwright.features.grain import longest_line
from clothwright.features.roles import Role
from clothwright.features.sleeves.kimono_lines import (
    STRAIGHT,
    TOO_SHORT,
    Arm,
    Round,
    Slash,
    apart,
    evened,
    rounded,
    slashed,
)
from clothwright.features.wholes import keep_whole
from clothwright.paper import (
    Drafting,
    Ease,
    Edge,
    EdgeKind,
    NotchPair,
    PaperError,
    Piece,
    Run,
    Seam,
    Verb,
    redraw,
    straight,
)
from clothwright.rules import Numbers
from clothwright.truing.tolerances import NOTCH_ROOM

STEEP = 40.0
"""A steeper overarm line needs a gusset, degrees (transformations 4)."""

GUSSET = "GU"
"""Code of the gusset."""

LEFT_OF_SIDE = 2.0
"""What is left of the side below the round, or above a dart, cm (our own choice)."""

_CLEAR = 5.0
"""The seam under the arm is so long beside a gusset at least: its allowances lie in the
wedge, cm (our own choice)."""

_LEGS = ("dart gusset side", "dart gusset arm")
"""Legs of the slash: towards the side, and towards the seam under the arm."""


@dataclass(frozen=True)
class _Half:
    code: str
    words: str
    side: int
    marks: tuple[str, str, str]
    """The raised tip, the corner under the arm, the hem under it."""

    ends: str
    """The hem over the arm."""

    seams: tuple[str, str]
    """Seams of the gusset, along both legs."""


_FRONT = _Half("F", "front", -1, ("Kf", "Kfu", "Kfh"), "Kfe", ("S57", "S58"))
_BACK = _Half("B", "back", 1, ("Kbk", "Kbu", "Kbh"), "Kbe", ("S59", "S60"))


def has_gusset(n: Numbers) -> bool:
    """True when the overarm line is so steep that the arm needs a gusset."""
    return n.km_angle > STEEP


def draw_kimono(d: Drafting) -> None:
    """Draw the sleeves on both halves; the gusset; state what they are sewn to."""
    halves = _FRONT, _BACK
    side = d.sheet.seam("S4")
    was = d.sheet.chain_length(side.left), d.sheet.chain_length(side.right)
    front, back = (_down(d, h) for h in halves)
    less = apart(front, back)
    arms = tuple(_arm(d, h, d.n.km_angle + less * h.side) for h in halves)
    longer = _evened(d.n, arms)
    for h, arm, more in zip(halves, arms, (-longer, longer), strict=True):
        _draw(d, h, arm, more)
    if has_gusset(d.n):
        _gusset(d)
    _sew(d, side, was)


def _evened(n: Numbers, arms: tuple[Arm, ...]) -> float:
    """How much longer under the arm the back is drawn, and the front shorter, so that
    both are of one length down to the waist, cm."""

    for arm in arms:
        least = _CLEAR if has_gusset(n) else STRAIGHT
        if arm.straight > least and not has_gusset(n):
            least += Round.of(arm, arm.under(0.0)[0], n.km_R).reach
        if arm.straight < least:
            raise PaperError(TOO_SHORT)

    found = evened(arms, None if has_gusset(n) else n.km_R)
    if found is None:
        raise PaperError(
            "front and back of the sleeve cannot be drawn of one length under the arm: "
            "the fronts are too much longer or shorter at the side; measure the front "
            "and the back length again, or take a set-in sleeve"
        )
    if has_gusset(n):
        for arm, more in zip(arms, (-found, found), strict=True):
            _check_wedge(arm, more)
    return found


def _check_wedge(arm: Arm, more: float) -> None:
    """The allowances of the seam under the arm and of the side, which stand a wedge
    apart, end before the seam does. Raises PaperError."""
    foot, reach = arm.under(more)
    wedge = degrees_between(direction(arm.corner, foot), arm.down)
    w = math.radians(wedge)
    taken = (Role.SIDE.widest + Role.UNDERARM.widest * math.cos(w)) / math.sin(w)
    if taken > reach:
        raise PaperError(
            f"under the arm the sleeve stands {wedge:.0f}° from the side, whose "
            f"allowances take {taken:.1f} cm there, and its seam is {reach:.1f} cm "
            "long: hold the overarm (km angle) less steep, or make the sleeve (lk) "
            "longer"
        )


def _side(d: Drafting, h: _Half) -> Path:
    """The side of a half from the underarm down."""
    p = d.sheet.piece(h.code)
    if h.side > 0:
        return p.after("armhole").path
    return p.before("armhole").path.reversed()


def _down(d: Drafting, h: _Half) -> Vector:
    return _side(d, h).start_direction


def _arm(d: Drafting, h: _Half, angle: float) -> Arm:
    """The marks of half a sleeve, its overarm line `angle` below the level."""
    n, p = d.n, d.sheet.piece(h.code)
    d.part = h.words
    shoulder = p.edge("shoulder").path
    side = _side(d, h)
    if h.side > 0:
        shoulder = shoulder.reversed()
    up = left_normal(direction(shoulder.end, shoulder.start)) * float(h.side)
    tip = d.found(
        h.marks[0],
        shoulder.start + up * n.km_raise,
        f"tip of the {h.words}, raised for the arm",
        amounts=(("square to the shoulder", "km_raise"),),
    )
    down = side.start_direction
    corner = d.found(
        h.marks[1],
        side.start + down * n.km_drop,
        f"underarm of the {h.words}, lowered",
        amounts=(("down along the side", "km_drop"),),
    )
    return Arm(
        side=h.side,
        neck=shoulder.end,
        shoulder=direction(shoulder.end, shoulder.start),
        tip=tip,
        corner=corner,
        down=down,
        angle=angle,
        length=n.lk,
        hem=n.km_hem / 2,
    )


def _draw(d: Drafting, h: _Half, arm: Arm, more: float) -> None:
    """Draw half a sleeve on its half of the body."""
    n = d.n
    d.part = h.words
    foot, _ = arm.under(more)
    tip, end = h.marks[0], h.ends
    d.found(
        end,
        arm.overarm.end,
        f"hem of the {h.words} sleeve, over the arm",
        frm=(tip,),
        amounts=(("down the arm", "lk"),),
        detail=f"the line {arm.angle:.0f}° below the level, so that front and back "
        "stand alike to their sides",
    )
    d.found(
        h.marks[2],
        foot,
        f"hem of the {h.words} sleeve, under the arm",
        frm=(end,),
        amounts=(("square to the overarm line", n.km_hem / 2),),
        detail="moved along the seam under the arm until front and back are of one "
        "length",
    )
    overarm, hem = arm.overarm, arm.hem_to(foot)
    d.draw(
        f"overarm {h.words}",
        overarm,
        f"overarm line of the {h.words}",
        frm=(tip, end),
        detail=f"along the shoulder from the neck, rounded over {tip}, then straight",
    )
    d.draw(
        f"sleeve hem {h.words}",
        hem,
        f"hem of the {h.words} sleeve",
        frm=(end, h.marks[2]),
    )
    slash: Slash | None = None
    if has_gusset(n):
        slash = slashed(arm, foot, n.gs)
        under, low = Path.line(foot, slash.on_under), slash.on_side
    else:
        under = rounded(arm, foot, n.km_R)
        low = under.end
    _check_side(d, h, low)
    edges = [
        Edge("overarm", overarm),
        Edge("sleeve hem", hem, EdgeKind.FINISHED),
        Edge("underarm", under),
    ]
    if slash is not None:
        edges += [
            straight(_LEGS[1], slash.on_under, slash.point),
            straight(_LEGS[0], slash.point, slash.on_side),
        ]
    run = ["shoulder", "armhole"]
    if h.side < 0:
        edges = [e.along(e.path.reversed()) for e in reversed(edges)]
        run.reverse()
    sheet = redraw(keep_whole(d.sheet, h.code), h.code, run, edges)
    p = sheet.piece(h.code)
    up = Vector(0.0, -1.0) if p.grain is None else direction(*p.grain)
    d.lay(
        Verb.REDRAW,
        sheet.put(replace(p, grain=longest_line(p, up))),
        h.code,
        f"{h.words} with its sleeve, and the seam under the arm from {h.marks[2]}",
        frm=h.marks,
        amounts=(
            ("rounded into the side by an arc of radius {}", "km_R")
            if slash is None
            else (
                f"straight to {h.marks[1]}, and slashed there for the gusset by {{}}",
                "gs",
            ),
        ),
        lines=tuple(e.path for e in edges),
    )


def _check_side(d: Drafting, h: _Half, low: Point) -> None:
    """The sleeve leaves something of the side it ends on."""
    p, path = d.sheet.piece(h.code), _side(d, h)
    edge = p.before("armhole") if h.side < 0 else p.after("armhole")
    place, gap = path.nearest(low)
    if gap < 0.01 and path.length - path.length_to(place) > LEFT_OF_SIDE:
        return
    if edge.name in ("side high", "side mid"):
        raise PaperError(
            "under the arm the sleeve (km drop) comes down upon the side dart: lead "
            "the bust dart to the waist"
        )
    raise PaperError(
        "under the arm the sleeve runs into the side near its end: lower the underarm "
        "(km drop) less, or give the overarm (km angle) more than 40° and with it a "
        "gusset"
    )


def _gusset(d: Drafting) -> None:
    """The gusset: a rhomb, its sides as long as the legs of the slash."""
    n = d.n
    d.part = "gusset"
    half = n.gw / 2
    high = math.sqrt(n.gs**2 - half**2)
    top, right, foot, left = (
        Point(0.0, -high),
        Point(half, 0.0),
        Point(0.0, high),
        Point(-half, 0.0),
    )
    piece = Piece(
        GUSSET,
        "Gusset",
        (
            straight("front side", top, right),
            straight("back side", right, foot),
            straight("back arm", foot, left),
            straight("front arm", left, top),
        ),
        grain=(Point(0.0, 0.75 * high), Point(0.0, -0.75 * high)),
    )
    d.lay(
        Verb.OUTLINE,
        d.sheet.put(piece),
        GUSSET,
        "gusset, a rhomb",
        amounts=(("each side", "gs"), ("across", "gw")),
    )


def _sew(d: Drafting, side: Seam, was: tuple[float, float]) -> None:
    """State the seams over and under the arm, at the side, and of the gusset; `side` is
    the side as it was, `was` its two lengths."""
    n, sheet = d.n, d.sheet
    under = (Run("F", "underarm", True),), (Run("B", "underarm"),)
    whole = sheet.chain_length(under[0])
    middle = (NotchPair(whole / 2, whole / 2),) if whole > 4 * NOTCH_ROOM else ()
    gusset = GUSSET in sheet.pieces
    chains = (side.left, side.right)
    if not gusset:
        chains = (under[0] + side.left, under[1] + side.right)
    less = tuple(w - sheet.chain_length(c) for w, c in zip(was, chains, strict=True))
    rest = min(sheet.chain_length(side.left), sheet.chain_length(side.right))
    still = tuple(  # as far from the lower end as they were
        NotchPair(k.left - less[0], k.right - less[1], k.ticks)
        for k in side.notches
        if was[0] - k.left < rest - NOTCH_ROOM
    )
    seams = [
        Seam(
            "S3",
            "overarm",
            (Run("F", "overarm", True),),
            (Run("B", "overarm"),),
            "neck",
            "hem",
            Ease.about(n.se_left, 0.1),
            (0.0, n.Lr),
            (NotchPair(n.Lr, n.Lrb),),
        )
    ]
    if gusset:
        seams += [
            Seam("S25", "seam under the arm", *under, "hem", "gusset", notches=middle),
            replace(side, notches=still, start="gusset"),
            *_gusset_seams(),
        ]
    else:
        seams.append(
            replace(
                side,
                name="side and seam under the arm",
                left=chains[0],
                right=chains[1],
                start="hem of the sleeve",
                notches=middle + still,
            )
        )
    d.lay(
        Verb.SEW,
        sheet.sew(*seams),
        "sleeve seams",
        "the seams over and under the arm walked and notched",
        detail="both partners together, from the end named first",
    )


def _gusset_seams() -> list[Seam]:
    """Each side of the gusset on its leg of the slash, from the point outwards."""
    return [
        Seam(
            code,
            f"gusset, {h.words}, {what}",
            (Run(h.code, leg, (what == "arm") is (h.side > 0)),),
            (Run(GUSSET, f"{h.words} {what}", _from_point(h, what)),),
            "point",
            "side" if what == "side" else "seam under the arm",
        )
        for h in (_FRONT, _BACK)
        for code, leg, what in zip(h.seams, _LEGS, ("side", "arm"), strict=True)
    ]


def _from_point(h: _Half, what: str) -> bool:
    """True when the gusset's edge is walked against its loop from the point of the
    slash outwards."""
    return (h.side > 0) is (what == "side")
