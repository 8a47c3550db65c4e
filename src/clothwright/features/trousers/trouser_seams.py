"""What is sewn to what on trousers, and how its corners meet (truing 2, 4, 6; blocks
T3 to T10)."""

from clothwright.blocks.trousers import BACK, FRONT, WAIST, back_of, front_of
from clothwright.curves import Point
from clothwright.features.chains import Chains, clear_of, spaced
from clothwright.features.skirts.pocket_drawing import (
    HIP_PIECE,
    mouth_places,
)
from clothwright.features.trousers.trouser_sewing import stretched
from clothwright.paper import JOINT, Ease, NotchPair, Run, Seam, SeamKind, Sheet
from clothwright.rules import Numbers
from clothwright.truing import Corner, End, Joint
from clothwright.truing.tolerances import NOTCH_ROOM, Band

_WAIST = Band(3.0, 8.0, "the waist of trousers runs on across dart or side, degrees")
_HEM = Band(3.0, 8.0, "the hem of trousers runs on across a seam, degrees")
_FORK = Band(3.0, 6.0, "the crotch runs on smooth across the inseam, degrees (T7)")


def trouser_seams(t: Chains, n: Numbers) -> list[Seam]:
    """Every seam of trousers whose pieces are on the table."""
    return [
        _side(t, n),
        _inseam(t, n),
        _crotch(t),
    ]


def _side(t: Chains, n: Numbers) -> Seam:
    left = t.chain(
        ("WCF", "side", True), (HIP_PIECE, "side", True), (FRONT, "side", True)
    )
    right = t.chain(("WCB", "side", False), (BACK, "side", False))
    front = front_of(n)
    whole = t.length(left)
    waist = Point(n.x_wF, -n.BRe)
    hip = front.leg.side(waist).length - front.leg.side_to_hip().length
    cased = n.casing if "casing" in n else 0.0
    hip += cased
    knee = hip + front.leg.side_to_hip().segments[1].length
    places = [cased, hip, knee] if cased else [hip, knee]
    if "Zs" in t.sheet.points:
        places.append(n.z_S)
    joint = -1.0
    if HIP_PIECE in t.sheet.pieces:
        joint = t.length(left[:1])
        places.append(joint)
    places = clear_of(places, mouth_places(t.sheet, n))
    return Seam(
        "S40",
        "trouser side",
        left,
        right,
        "waist",
        "hem",
        Ease.about(0.0, 0.1),
        notches=tuple(
            NotchPair(s, s, 1, JOINT if s == joint else "")
            for s in spaced(places, whole)
        ),
    )


def _inseam(t: Chains, n: Numbers) -> Seam:
    """The back is stretched onto the front above the knee (T3)."""
    left = t.chain((FRONT, "inseam", False))
    right = t.chain((BACK, "inseam", True))
    a, c = (
        leg.inseam().segments[0].length for leg in (front_of(n).leg, back_of(n).leg)
    )
    whole = t.length(left)
    if whole <= a + NOTCH_ROOM:  # short legs
        return _short_inseam(t, n, left, right)
    below = [s for s in spaced([a], whole) if s > a]
    return Seam(
        "S41",
        "inseam",
        left,
        right,
        "crotch",
        "hem",
        Ease.about(-n.st, 0.1),
        (0.0, a),
        (
            NotchPair(a, c, 2),
            *(NotchPair(s, s + c - a, 2) for s in below),
        ),
        stretched=True,
    )


def _short_inseam(
    t: Chains, n: Numbers, left: tuple[Run, ...], right: tuple[Run, ...]
) -> Seam:
    """The inseam of short legs, which ends above the knee."""
    a, c = t.length(left), t.length(right)
    notches = (NotchPair(a / 2, c / 2, 2),) if a >= 6.0 else ()
    return Seam(
        "S41",
        "inseam",
        left,
        right,
        "crotch",
        "hem",
        Ease.about(-stretched(n), 0.1),
        notches=notches,
        stretched=True,
    )


def _crotch(t: Chains) -> Seam:
    """From the centre front, or the end of its fly, through the fork to the centre
    back."""
    curves = t.chain((FRONT, "crotch", False), (BACK, "crotch", False))
    chain = (
        *t.chain(("WCF", "crotch", False)),
        *curves,
        *t.chain((BACK, "seat", False), ("WCB", "seat", False)),
    )
    seat = t.length(chain[: chain.index(curves[-1]) + 1])
    notches = [NotchPair(seat, seat, 1)]
    fly = t.has(FRONT, "fly")
    if fly:
        notches.insert(0, NotchPair(0.0, 0.0, 1))
    return Seam(
        "S42",
        "crotch",
        chain,
        chain,
        "end of the fly" if fly else "centre front",
        "centre back",
        Ease.about(0.0, 0.05),
        notches=tuple(notches),
        kind=SeamKind.TWIN,
    )


def trouser_joints(sheet: Sheet) -> list[Joint]:
    """Every joint of trousers (T7, T8, T10)."""
    if not {FRONT, BACK} <= set(sheet.pieces):
        return []
    out = [
        Joint(
            "crotch over the inseam",
            (Corner(FRONT, "crotch", End.END), Corner(BACK, "crotch", End.START)),
            180.0,
            _FORK,
            code="T7",
        ),
    ]
    for seam, ends in (
        ("side", (End.END, End.START)),
        ("inseam", (End.START, End.END)),
    ):
        if not sheet.piece(FRONT).has("hem"):  # turn-ups end as they begin
            break
        both = Corner(FRONT, "hem", ends[0]), Corner(BACK, "hem", ends[1])
        out.append(Joint(f"trouser hem over the {seam}", both, 180.0, _HEM))
    for half, code in (("front", FRONT), ("back", BACK)):
        piece = sheet.piece(code)
        names = [w for w in WAIST if piece.has(w)]
        inner = End.END if code == BACK else End.START
        outer = End.START if code == BACK else End.END
        for a, b in zip(names, names[1:], strict=False):
            corners = (Corner(code, a, inner), Corner(code, b, outer))
            which = (
                ""
                if len(names) == 2
                else " nearer to the " + ("centre" if a == "waist" else "side")
            )
            what = "pleat" if piece.has("pleat side") else "dart"
            name = f"waist over the {half} {what}{which}"
            out.append(Joint(name, corners, 180.0, _WAIST))
        where = f"waist at the centre {half}"
        out.append(Joint.fold(where, Corner(code, "waist", outer)))
    at_side = HIP_PIECE if HIP_PIECE in sheet.pieces else FRONT
    last = [
        next(w for w in reversed(WAIST) if sheet.piece(c).has(w))
        for c in (at_side, BACK)
    ]
    corners = (Corner(at_side, last[0], End.START), Corner(BACK, last[1], End.END))
    out.append(Joint("trouser waist over the side", corners, 180.0, _WAIST))
    return out
