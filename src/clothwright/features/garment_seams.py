"""What is sewn to what on the finished table, with notches (first garment 19, 21).

Stated once, after all shapes are final; walk, notches, making order and checks are
read from it. Only seams whose pieces are on the table are stated.
"""

from clothwright.features.base import Rank, Stage
from clothwright.features.chains import Chains
from clothwright.features.collar_seams import collar_seams
from clothwright.features.facing_seams import facing_seams
from clothwright.features.grain import with_grain
from clothwright.features.skirt_seams import band_seams, contour_seams, skirt_seams
from clothwright.features.sleeve_seams import sleeve_seams
from clothwright.features.trouser_seams import trouser_seams
from clothwright.features.waist_seams import LONG, shares, waist_seams
from clothwright.paper import (
    Drafting,
    Ease,
    EdgeKind,
    NotchPair,
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
        *waist_seams(t, n),
        _centre_back(t, n),
        _panel_behind(t),
        *sleeve_seams(t, n),
        *facing_seams(t, n),
        *band_seams(t, n),
        *contour_seams(t),
        *skirt_seams(t, n),
        *trouser_seams(t, n),
        *collar_seams(t, n),
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
    places += [stop + rest * s for s in shares(rest)] if rest >= LONG else []
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
