"""What is sewn to what on the finished table, with notches (first garment 19, 21).

Stated once, after all shapes are final; walk, notches, making order and checks are
read from it. Only seams whose pieces are on the table are stated.
"""

import math
from itertools import accumulate

from clothwright.features.base import Rank, Stage
from clothwright.features.chains import Chains, hanging
from clothwright.features.facing_seams import facing_seams
from clothwright.features.grain import with_grain
from clothwright.features.skirt_seams import band_seams, contour_seams, skirt_seams
from clothwright.features.sleeve_seams import sleeve_seams
from clothwright.features.trouser_seams import trouser_seams
from clothwright.paper import (
    JOINT,
    Drafting,
    Ease,
    EdgeKind,
    NotchPair,
    Run,
    Seam,
    SeamKind,
    Sheet,
    Verb,
)
from clothwright.rules import Numbers
from clothwright.truing.tolerances import NOTCH_ROOM


def state(d: Drafting) -> None:
    """State every seam of the garment and give side panels their grain."""
    d.part = "seams"
    sheet = with_grain(d.sheet)
    kept = {s.code for s in sheet.seams if s.kind is SeamKind.DART and _open(s)}
    sheet = sheet.unsew(*(s.code for s in sheet.seams if s.code not in kept))
    seams = [s for s in _seams(sheet, d.n) if s is not None]
    d.lay(
        Verb.SEW,
        sheet.sew(*seams),
        "seams",
        "every seam walked and notched",
        detail="both partners together, from the end named first",
    )


STAGE = Stage(Rank.SEAMS, "the seams", state)


def _open(dart: Seam) -> bool:
    """True for a dart that no panel line has taken up."""
    words = ("leg", "dart", "pleat")
    return all(any(w in r.edge for w in words) for r in dart.runs())


def _seams(sheet: Sheet, n: Numbers) -> list[Seam | None]:
    t = Chains(sheet)
    return [
        _front_panel(t, n),
        _back_panel(t, n),
        *_shoulders(t, n),
        _side(t),
        _waist_front(t, n),
        _waist_back(t, n),
        _waist_on(t, n),
        _peplum_side(t),
        *_peplum_panels(t),
        _centre_back(t, n),
        _panel_behind(t),
        *sleeve_seams(t, n),
        *facing_seams(t, n),
        *band_seams(t, n),
        *contour_seams(t),
        *skirt_seams(t, n),
        *trouser_seams(t, n),
    ]


def _front_panel(t: Chains, n: Numbers) -> Seam | None:
    left = t.chain(("FC", "panel", True))
    right = t.chain(("FS", "panel", False))
    if not (left and right):
        return None
    bp = t.sheet.points["BP"]
    at = t.upto(left, bp)
    total_l, total_r = t.length(left), t.length(right)
    a, b = at - 5.0, at + 5.0
    return Seam(
        "S1",
        "front panel",
        left,
        right,
        "Qf",
        "waist",
        Ease.about(n.ep, 0.1),
        (a, b),
        (NotchPair(a, a, 1), NotchPair(b, total_r - (total_l - b), 1)),
    )


def _back_panel(t: Chains, n: Numbers) -> Seam | None:
    left = t.chain(("BC", "panel", False))
    right = t.chain(("BS", "panel", True))
    if not (left and right):
        return None
    at = t.upto(left, t.sheet.points["Pd"])
    first, second = min(6.0, at - 2.0), at + 4.0
    rest = t.length(left) - second
    return Seam(
        "S2",
        "back panel",
        left,
        right,
        "Qb",
        "waist",
        Ease.about(0.0, 0.1),
        None,
        (
            NotchPair(first, first, 2),
            NotchPair(second, t.length(right) - rest, 2),
        ),
    )


def _shoulders(t: Chains, n: Numbers) -> list[Seam]:
    out = []
    split = bool(t.chain(("FS", "shoulder", True)))
    if split:
        for code, name, f, b, start, end in (
            ("S3", "shoulder, neck side", "FC", "BC", "neck", "panel"),
            ("S3a", "shoulder, tip side", "FS", "BS", "panel", "tip"),
        ):
            left = t.chain((f, "shoulder", True))
            right = t.chain((b, "shoulder", False))
            if left and right:
                out.append(
                    Seam(
                        code,
                        name,
                        left,
                        right,
                        start,
                        end,
                        Ease.about(n.se_left * t.length(left) / n.Lr, 0.05),
                    )
                )
        return out
    left = t.chain(
        ("FC", "shoulder", True), ("F", "shoulder neck", True), ("F", "shoulder", True)
    )
    right = t.chain(("BC", "shoulder", False), ("B", "shoulder", False))
    if not (left and right):
        return []
    a, c = t.length(left), t.length(right)
    notch = (NotchPair(a / 2, c / 2, 1),) if a >= 8 else ()
    return [
        Seam(
            "S3",
            "shoulder",
            left,
            right,
            "neck",
            "tip",
            Ease.about(n.se_left, 0.05),
            None,
            notch,
        )
    ]


def _side(t: Chains) -> Seam | None:
    left = t.chain(
        ("FS", "side", True),
        ("F", "side high", True),
        ("F", "side mid", True),
        ("F", "side low", True),
        ("F", "side", True),
    )
    right = t.chain(("BS", "side", False), ("B", "side", False))
    if not (left and right):
        return None
    at = 0.4 * t.length(left)
    if len(left) > 1:  # the notch keeps clear of the side darts
        at = t.length(left) - 0.4 * t.length(left[-1:])
    other = t.length(right) - (t.length(left) - at)
    return Seam(
        "S4",
        "side",
        left,
        right,
        "underarm",
        "waist",
        Ease.about(0.0, 0.1),
        None,
        (NotchPair(at, other, 1),),
    )


def _waist_front(t: Chains, n: Numbers) -> Seam | None:
    left = t.chain(
        ("FC", "waist", False),
        ("F", "waist", False),
        ("F", "waist side", False),
        ("FS", "waist", False),
    )
    right = t.chain(
        ("PFC", "waist", True), ("PF", "waist", True), ("PFS", "waist", True)
    )
    if not (left and right):
        return None
    inner = n.X - n.x_BP - n.fd / 2  # of the waist, from the fold to the panel
    ease, notches = _onto_peplum(t, n, left, right, n.w_F, inner, 1)
    return Seam(
        "S5",
        "waist, front",
        left,
        right,
        "centre front",
        "side",
        ease,
        None,
        notches,
    )


def _waist_back(t: Chains, n: Numbers) -> Seam | None:
    left = t.chain(
        ("BS", "waist", False),
        ("B", "waist side", False),
        ("BC", "waist", False),
        ("B", "waist", False),
    )
    right = t.chain(
        ("PBS", "waist", True), ("PB", "waist", True), ("PBC", "waist", True)
    )
    if not (left and right):
        return None
    outer = n.xs - n.a - n.xd - n.bd_net / 2  # of the waist, from the side
    ease, notches = _onto_peplum(t, n, left, right, n.w_B, outer, 2)
    if t.has(right[-1].piece, "waist on"):  # the back ends where this edge runs on
        notches = (*notches, NotchPair(t.length(left), t.length(right), 1, JOINT))
    return Seam(
        "S6", "waist, back", left, right, "side", "centre back", ease, None, notches
    )


def _gathered(t: Chains) -> bool:
    """True when the peplum is a straight piece: its hem is as long as its waist."""
    if "PF" not in t.sheet.pieces:
        return False
    front = t.sheet.piece("PF")
    return abs(front.edge("hem").length - front.edge("waist").length) < 0.01


def _waist_on(t: Chains, n: Numbers) -> Seam | None:
    """A back peplum that runs on behind the opening is sewn to the panel there."""
    left = t.chain(("PB", "waist on", False), ("PBC", "waist on", False))
    right = t.chain(("UP", "tail", True))
    if not (left and right):
        return None
    full = n.g if _gathered(t) else n.wc / (2 * (n.w_F + n.w_PB))
    plan = n.up_waist - n.x_back * full  # the overlap is caught in the waist seam
    return Seam(
        "S22",
        "waist, panel behind",
        left,
        right,
        "centre back",
        "E2",
        Ease.about(plan, 0.1),
        kind=SeamKind.LAPPED,
    )


def _onto_peplum(
    t: Chains,
    n: Numbers,
    left: tuple[Run, ...],
    right: tuple[Run, ...],
    share: float,
    first: float,
    ticks: int,
) -> tuple[Ease, tuple[NotchPair, ...]]:
    """How a half's waist goes onto the peplum: its ease, and a notch where its panel
    seam or dart meets a peplum in one piece; of a peplum in panels the seams meet
    there, and need none.

    `share` is the half's stitched waist and `first` the part of it before that seam, as
    the rules have them: on the peplum the notch stands at that share, on the bodice
    where the edges meet, so that the walk compares the two (21).
    """
    if _gathered(t):  # the ratio is the plan
        plan, tolerance = share * (n.g - 1), 0.15
    else:
        plan, tolerance = -(n.ew + n.by / 2) * share / (n.w_F + n.w_PB), 0.05
    ease = Ease.about(plan, tolerance)
    joints = list(accumulate(t.length((run,)) for run in left[:-1]))
    if len(right) > 1:
        meets = list(accumulate(t.length((run,)) for run in right[:-1]))
        if not joints:  # a waist that takes in nothing has no dart there: a notch
            place = t.length(left) * first / share
            return ease, (NotchPair(place, meets[0], ticks),)
        pairs = zip(joints, meets, strict=True)
        return ease, tuple(NotchPair(s, r, 0, JOINT) for s, r in pairs)
    c = t.length(right)
    at = c * first / share
    if len(joints) != 1 or not NOTCH_ROOM < at < c - NOTCH_ROOM:
        return ease, ()
    return ease, (NotchPair(joints[0], at, ticks, JOINT),)


def _peplum_side(t: Chains) -> Seam | None:
    left = t.chain(("PF", "side", True), ("PFS", "side", True))
    right = t.chain(("PB", "side", False), ("PBS", "side", False))
    if not (left and right):
        return None
    notches = _down(t, left, right, 1) if t.length(left) >= LONG else ()
    return Seam(
        "S7",
        f"{hanging(t.sheet)} side",
        left,
        right,
        "waist",
        "hem",
        Ease.about(0.0, 0.05),
        notches=notches,
    )


def _peplum_panels(t: Chains) -> list[Seam]:
    out = []
    for code, name, a, b in (
        ("S19", "front peplum panel", ("PFC", "panel"), ("PFS", "panel")),
        ("S20", "back peplum panel", ("PBC", "panel"), ("PBS", "panel")),
    ):
        left = t.chain((*a, code == "S19"))
        right = t.chain((*b, code == "S20"))
        if left and right:
            ticks = 1 if code == "S19" else 2
            out.append(
                Seam(
                    code,
                    name,
                    left,
                    right,
                    "waist",
                    "hem",
                    Ease.about(0.0, 0.05),
                    notches=_down(t, left, right, ticks),
                )
            )
    return out


LONG, FAR = 25.0, 40.0
"""A seam from here on is notched; no stretch of it without a notch is longer than the
second, cm (truing 6)."""


def _down(
    t: Chains, left: tuple[Run, ...], right: tuple[Run, ...], ticks: int
) -> tuple[NotchPair, ...]:
    """Notches down a seam from the waist: one for each 40 cm, nearer to the waist than
    to the hem, so that no piece can be sewn in upside down."""
    a, c = t.length(left), t.length(right)
    return tuple(NotchPair(a * s, c * s, ticks) for s in _shares(a))


def _shares(length: float) -> list[float]:
    """Where the notches of a long seam stand, as shares of its length."""
    count = math.ceil(length / FAR)
    return [(i + 0.4) / count for i in range(count)]


def _centre_back(t: Chains, n: Numbers) -> Seam | None:
    chain = t.chain(
        ("BC", "cb", True), ("B", "cb", True), ("PB", "cb", True), ("PBC", "cb", True)
    )
    chain = tuple(
        r for r in chain if t.sheet.edge(r.piece, r.edge).kind is EdgeKind.SEAM
    )
    if not chain:
        return None
    stop = t.length(chain[:1]) + n.z  # the zip ends below the waist
    rest = t.length(chain) - stop
    places = [stop] if rest > NOTCH_ROOM else []
    places += [stop + rest * s for s in _shares(rest)] if rest >= LONG else []
    return Seam(
        "S21",
        "centre back",
        chain,
        chain,
        "neck",
        "hem",
        Ease.about(0.0, 0.05),
        notches=tuple(NotchPair(s, s) for s in places),
        kind=SeamKind.TWIN,
    )


def _panel_behind(t: Chains) -> Seam | None:
    """The panel is bagged out with the same piece cut in lining."""
    chain = t.chain(
        ("UP", "top", False),
        ("UP", "outer", False),
        ("UP", "outer tail", False),
        ("UP", "tail", False),
    )
    if not chain:
        return None
    ease = Ease(0.0, -0.2, 0.0)
    return Seam(
        "S14",
        "panel behind, bagged",
        chain,
        chain,
        "centre back",
        "centre back",
        ease,
        kind=SeamKind.TWIN,
    )
