"""The waist seam of a bodice (first garment 21, S5 and S6), and the corners that meet
in it (22)."""

from collections.abc import Iterator
from itertools import accumulate

from clothwright.features.chains import WAISTS, Chains, on_table
from clothwright.features.wholes import cloth_at_waist, waist_in_band
from clothwright.paper import JOINT, Ease, NotchPair, Run, Seam, Sheet
from clothwright.rules import Numbers
from clothwright.truing import Corner, End, Joint
from clothwright.truing.tolerances import NOTCH_ROOM, PANEL

SEAMS = {
    "S5": "waist in front, where a peplum or a skirt is sewn to the bodice",
    "S6": "waist behind, where a peplum or a skirt is sewn to the bodice",
}
"""What the codes of a waist seam stand for; that of a torso may lie lower."""


def waist_seams(t: Chains, n: Numbers) -> Iterator[Seam | None]:
    """Each half of the bodice to what hangs on it."""
    yield _front(t, n)
    yield _back(t, n)


def _front(t: Chains, n: Numbers) -> Seam | None:
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


def _back(t: Chains, n: Numbers) -> Seam | None:
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


def hangs_gathered(n: Numbers) -> bool:
    """True when what hangs on the waist is gathered, it has a girth below the waist and
    fills no circle; or when a pleater pleats it together."""
    return "pr" in n or ("w_below" in n and "phi_F" not in n)


def _hangs_pleated(n: Numbers) -> bool:
    """True when what hangs on the waist is pleated there: it has no room for a notch
    between its folds."""
    return "pn_F" in n


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
    if hangs_gathered(n):  # the ratio is the plan
        full = cloth_at_waist(n) or 1.0
        eased = n.ew * share / (n.w_F + n.w_PB) if "pr" in n else 0.0
        plan, tolerance = share * (full - 1) - full * eased, 0.15
    else:
        yields = n.by / 2 if "by" in n else 0.0
        plan, tolerance = -(n.ew + yields) * share / (n.w_F + n.w_PB), 0.05
    ease = Ease.about(plan, tolerance)
    before, after = (waist_in_band(t.sheet, half) for half in ("front", "back"))
    before, after = (before, 0.0) if left[0].piece[0] == "F" else (0.0, after)

    joints = list(accumulate(t.length((run,)) for run in left[:-1]))
    meets = list(accumulate(t.length((run,)) for run in right[:-1]))
    c = t.length(right)
    if "dd" in n and (joints or meets):  # below the waist a dart is cut as it comes
        first, share = (joints[0], t.length(left)) if joints else (meets[0], c)
        first, share = first + before, share + before + after

    def at_share(length: float) -> float:
        return (length + before + after) * first / share - before

    if meets:
        if right[0].piece in ("PF", "PB"):  # of two darts the inner one meets
            meets = meets[:1] if right[0].piece == "PF" else meets[-1:]
        if not joints:  # a waist that takes in nothing has no dart there: a notch
            place = at_share(t.length(left))
            return ease, (NotchPair(place, meets[0], ticks),)
        pairs = zip(joints, meets, strict=True)
        return ease, tuple(NotchPair(s, r, 0, JOINT) for s, r in pairs)
    at = at_share(c)
    if _hangs_pleated(n) or len(joints) != 1 or not NOTCH_ROOM < at < c - NOTCH_ROOM:
        return ease, ()
    return ease, (NotchPair(joints[0], at, ticks, JOINT),)


def waist_joints(sheet: Sheet) -> Iterator[Joint]:
    """The waist runs on over panels and side, where something is sewn to it."""
    if not any(s.code in ("S5", "S6") for s in sheet.seams):
        return
    for name, a, b in (
        ("waist over the front panel", ("FC", End.END), ("FS", End.START)),
        ("waist over the back panel", ("BS", End.END), ("BC", End.START)),
    ):
        if on_table(sheet, a[0], "waist") and on_table(sheet, b[0], "waist"):
            corners = (Corner(a[0], "waist", a[1]), Corner(b[0], "waist", b[1]))
            yield Joint(name, corners, 180.0, PANEL)
    # a half without a dart has its waist in one
    front, back = (
        next((c for c in choices if on_table(sheet, *c)), None)
        for choices in (
            (("FS", "waist"), ("F", "waist side"), ("F", "waist")),
            (("BS", "waist"), ("B", "waist side"), ("B", "waist")),
        )
    )
    if front and back:
        corners = (Corner(*front, End.END), Corner(*back, End.START))
        yield Joint("waist over the side", corners, 180.0, PANEL)
