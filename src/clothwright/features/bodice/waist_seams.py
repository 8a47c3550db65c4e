"""The waist seam, and the seams of what hangs on it (first garment 21, S5 to S7)."""

import math
from itertools import accumulate

from clothwright.features.chains import Chains, hanging
from clothwright.features.linings.sewn_halves import OVER
from clothwright.features.skirts.pocket_drawing import mouth_places, pocket_seams
from clothwright.features.skirts.wrap_dress import crosses, waist_over
from clothwright.features.wholes import down_to_seam, waist_in_band
from clothwright.paper import JOINT, Ease, NotchPair, Run, Seam, SeamKind
from clothwright.rules import Numbers
from clothwright.truing.tolerances import NOTCH_ROOM

SEAMS = {
    "S5": "waist in front, where a peplum or a skirt is sewn to the bodice",
    "S6": "waist behind, where a peplum or a skirt is sewn to the bodice",
    "S7": "side seam of a peplum or of a skirt on a bodice",
}
"""What the codes of a waist seam stand for; that of a torso may lie lower."""

WAISTS = ("waist", "waist mid", "waist side")
"""Edges of a waist with darts in it, from the centre."""


def waist_seams(t: Chains, n: Numbers) -> list[Seam | None]:
    """Bodice to peplum or skirt, and the peplum's own seams, as far as they are on the
    table."""
    return [
        _waist_front(t, n),
        _waist_back(t, n),
        _waist_on(t, n),
        _waist_over(t, n),
        waist_over(t, n, gathered=_gathered(n)),
        _peplum_side(t, n),
        *_peplum_panels(t),
        *pocket_seams(t, "PF"),
    ]


def _waist_front(t: Chains, n: Numbers) -> Seam | None:
    left = t.chain(
        ("FC", "waist", False),
        ("F", "waist", False),
        ("F", "waist side", False),
        ("FS", "waist", False),
    )
    right = t.chain(
        ("PFC", "waist", True),
        *(("PF", name, True) for name in WAISTS),
        ("PFS", "waist", True),
    )
    if not (left and right):
        return None
    dart = n.fd_s if "dd" in n else n.fd
    inner = n.X - n.x_Pf - dart / 2  # of the waist, from the fold to the panel
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
        ("PBS", "waist", True),
        *(("PB", name, True) for name in WAISTS[::-1]),
        ("PBC", "waist", True),
    )
    if not (left and right):
        return None
    side, dart = (n.x_seam, n.bd_s) if "dd" in n else (n.xs - n.a, n.bd_net)
    outer = side - n.xd - dart / 2  # of the waist, from the side
    ease, notches = _onto_peplum(t, n, left, right, n.w_B, outer, 2)
    if t.has(right[-1].piece, "waist on"):  # the back ends where this edge runs on
        notches = (*notches, NotchPair(t.length(left), t.length(right), 1, JOINT))
    return Seam(
        "S6", "waist, back", left, right, "side", "centre back", ease, None, notches
    )


def _gathered(n: Numbers) -> bool:
    """True when what hangs on the waist is gathered: it grows, and fills no circle."""
    return "w_below" in n and "phi_F" not in n


def _waist_on(t: Chains, n: Numbers) -> Seam | None:
    """A back peplum that runs on behind the opening is sewn to the panel there."""
    left = t.chain(("PB", "waist on", False), ("PBC", "waist on", False))
    right = t.chain(("UP", "tail", True))
    if not (left and right):
        return None
    full = n.g if _gathered(n) else n.wc / (2 * (n.w_F + n.w_PB))
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


def _waist_over(t: Chains, n: Numbers) -> Seam | None:
    """What of a wrap lies beyond the centre, on the waist of the other front."""
    left = t.chain(("F", "waist", False), ("F", "waist side", False))
    right = t.chain(("F", OVER, True))
    if not (left and right) or crosses(t.sheet):
        return None
    return Seam(
        "S61",
        "waist, one front on the other",
        left,
        right,
        "centre front",
        "side",
        Ease.about(n.wx - t.length(left), 0.1),
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
    if _gathered(n):  # the ratio is the plan
        plan, tolerance = share * (n.g - 1), 0.15
    else:
        yields = n.by / 2 if "by" in n else 0.0
        plan, tolerance = -(n.ew + yields) * share / (n.w_F + n.w_PB), 0.05
    ease = Ease.about(plan, tolerance)
    hidden = waist_in_band(t.sheet) if left[0].piece[0] == "F" else 0.0

    joints = list(accumulate(t.length((run,)) for run in left[:-1]))
    meets = list(accumulate(t.length((run,)) for run in right[:-1]))
    c = t.length(right)
    if "dd" in n and (joints or meets):  # below the waist a dart is cut as it comes
        first, share = (joints[0], t.length(left)) if joints else (meets[0], c)
        first, share = first + hidden, share + hidden

    def at_share(length: float) -> float:
        return (length + hidden) * first / share - hidden

    if meets:
        if right[0].piece in ("PF", "PB"):  # of two darts the inner one meets
            meets = meets[:1] if right[0].piece == "PF" else meets[-1:]
        if not joints:  # a waist that takes in nothing has no dart there: a notch
            place = at_share(t.length(left))
            return ease, (NotchPair(place, meets[0], ticks),)
        pairs = zip(joints, meets, strict=True)
        return ease, tuple(NotchPair(s, r, 0, JOINT) for s, r in pairs)
    at = at_share(c)
    if len(joints) != 1 or not NOTCH_ROOM < at < c - NOTCH_ROOM:
        return ease, ()
    return ease, (NotchPair(joints[0], at, ticks, JOINT),)


def _peplum_side(t: Chains, n: Numbers) -> Seam | None:
    left = t.chain(("PF", "side", True), ("PFS", "side", True))
    right = t.chain(("PB", "side", False), ("PBS", "side", False))
    if not (left and right):
        return None
    notches = _down(t, left, right, 1) if t.length(left) >= LONG else ()
    z = n.z - down_to_seam(n) if "z_top" in n else 0.0
    if NOTCH_ROOM < z < t.length(left) - NOTCH_ROOM:
        end = NotchPair(z, z, 2)  # of a zip in the side
        notches = (end, *(k for k in notches if k.left > z + NOTCH_ROOM))
    pocket = mouth_places(t.sheet, n)
    notches = (
        *(NotchPair(s, s, 1) for s in pocket),
        *(k for k in notches if not pocket or k.left > pocket[-1] + NOTCH_ROOM),
    )
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
    return tuple(NotchPair(a * s, c * s, ticks) for s in shares(a))


def shares(length: float) -> list[float]:
    """Where the notches of a long seam stand, as shares of its length."""
    count = math.ceil(length / FAR)
    return [(i + 0.4) / count for i in range(count)]
