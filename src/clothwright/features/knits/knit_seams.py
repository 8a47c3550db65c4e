"""What is sewn to what on a knit bodice, and how its corners meet (blocks F, N2 to N4;
truing 2, 4)."""

from clothwright.blocks.knit import BACK, FRONT
from clothwright.features.chains import (
    BACK_NOTCH,
    FRONT_NOTCH,
    Chains,
    clear_of,
    spaced,
)
from clothwright.features.skirts.pocket_drawing import mouth_places
from clothwright.paper import JOINT, Ease, NotchPair, Run, Seam, SeamKind, Sheet
from clothwright.rules import Numbers
from clothwright.truing import Corner, End, Joint
from clothwright.truing.tolerances import NECK_SUM, NOTCH_ROOM, TIP, Band

_HEM = Band(3.0, 8.0, "the hem of a knit top runs on across its side, degrees")

_OVER_BUST = 3.0, 15.0
"""The front's side is eased in from so far below the underarm to there, cm (F1: over
the bust zone)."""


def knit_seams(t: Chains, n: Numbers) -> list[Seam]:
    """Shoulder and side of a knit bodice."""
    front, back = t.chain((FRONT, "shoulder", True)), t.chain((BACK, "shoulder", False))
    even = Ease.about(0.0, 0.05)
    return [Seam("S90", "shoulder", front, back, "neck", "tip", even), _side(t, n)]


def _side(t: Chains, n: Numbers) -> Seam:
    """The front is eased onto the back over the bust of a full cup (F1, N3)."""
    back, front = t.chain((BACK, "side", False)), t.chain((FRONT, "side", True))
    path = t.sheet.run_path(back[0])
    waist = path.segments[0].length
    more = n.cup_long
    zone, first = None, []
    if more > 0:
        zone = _OVER_BUST[0], min(_OVER_BUST[1], waist - 2 * NOTCH_ROOM)
        first = [NotchPair(zone[0], zone[0]), NotchPair(zone[1], zone[1] + more)]
    places = [waist]
    if n.knit_below > n.WH_knit:
        places.append(waist + path.segments[1].length)
    places = clear_of(places, [waist + s for s in mouth_places(t.sheet, n)])
    rest = spaced(places, path.length)
    return Seam(
        "S91",
        "side",
        back,
        front,
        "underarm",
        "hem",
        Ease.about(more, 0.1),
        zone,
        (*first, *(NotchPair(s, s + more) for s in rest)),
    )


def stretched_band(
    t: Chains, code: str, piece: str, edge: str, onto: tuple[Run, ...], plan: float
) -> list[Seam]:
    """A band stretched onto a chain of edges: the seam, its ends, its two layers."""
    name = t.sheet.piece(piece).name.lower()
    band = t.chain((piece, edge, False))
    first, whole, net = t.length(onto[:1]), t.length(onto), t.length(band)
    share = net / whole
    notches = [NotchPair(first / 2, share * first / 2)]
    if len(onto) > 1:
        notches.append(NotchPair(first, share * first, 1, JOINT))
    end = t.chain((piece, "end", False))
    if end:
        ends, places = (end, end), ("centre front", "centre back")
        kind = SeamKind.TWIN
    else:
        ends = t.chain((piece, "end back", False)), t.chain((piece, "end front", True))
        places, kind = ("seam", "seam"), SeamKind.PLAIN
    layers = band, t.chain((piece, "inside", True))
    ease = Ease.about(plan, 0.1)
    return [
        Seam(
            code,
            f"{name} on its edge",
            onto,
            band,
            *places,
            ease,
            None,
            tuple(notches),
            stretched=True,
        ),
        Seam(
            f"{code}a",
            f"ends of the {name}",
            *ends,
            "upper edge",
            "inner edge",
            kind=kind,
        ),
        Seam(f"{code}b", f"{name}, folded in half", *layers, "front", "back"),
    ]


def knit_sleeve_seams(t: Chains, n: Numbers, code: str) -> list[Seam]:
    """The cap in the armhole with hardly any ease, its part under the arm flat (N4)."""
    front, back = t.chain((FRONT, "armhole", True)), t.chain((BACK, "armhole", False))
    cap_f = t.chain((code, "cap front", False))
    cap_b = t.chain((code, "cap back", True))
    a, b = t.length(front), t.length(back)
    c, e = t.length(cap_f), t.length(cap_b)
    under = t.chain((code, "underarm front", False))
    other = t.chain((code, "underarm back", True))
    f, k = FRONT_NOTCH, BACK_NOTCH
    return [
        Seam(
            "S93",
            "sleeve, front",
            front,
            cap_f,
            "shoulder",
            "underarm",
            Ease.about(n.E_cap / 2, 0.1),
            (0.0, a - f),
            (NotchPair(0.0, 0.0, 1, JOINT), NotchPair(a - f, c - f)),
        ),
        Seam(
            "S94",
            "sleeve, back",
            back,
            cap_b,
            "shoulder",
            "underarm",
            Ease.about(n.E_cap / 2, 0.1),
            (0.0, b - k),
            (NotchPair(b - k, e - k, 2),),
        ),
        Seam(
            "S95",
            "seam under the arm",
            under,
            other,
            "underarm",
            "hem",
            notches=tuple(NotchPair(s, s) for s in spaced([], t.length(under))),
        ),
    ]


def knit_joints(sheet: Sheet) -> list[Joint]:
    """Every joint of a knit bodice; its sleeve's are those of any sleeve."""
    if not {FRONT, BACK} <= set(sheet.pieces):
        return []
    start, end = End.START, End.END
    both = (
        ("neck over the shoulder", ("neck", start), ("neck", end), NECK_SUM, True),
        (
            "armhole over the shoulder",
            ("armhole", end),
            ("armhole", start),
            NECK_SUM,
            True,
        ),
        ("underarm", ("armhole", start), ("armhole", end), NECK_SUM, False),
        ("hem over the side", ("hem", end), ("hem", start), _HEM, False),
    )
    out = [
        Joint(
            name,
            (Corner(FRONT, *f), Corner(BACK, *b)),
            180.0,
            band,
            (90.0, 90.0) if square else (),
            TIP,
        )
        for name, f, b, band, square in both
    ]
    for half, code, at in (("front", FRONT, end), ("back", BACK, start)):
        out.append(Joint.fold(f"neck at the centre {half}", Corner(code, "neck", at)))
        other = start if at is end else end
        out.append(Joint.fold(f"hem at the centre {half}", Corner(code, "hem", other)))
    return out
