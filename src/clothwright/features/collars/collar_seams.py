"""What a collar is sewn to: the trued neck, its undercollar, its stand
(transformations 5, truing 1 and 2)."""

from clothwright.blocks.collar import shorter_by
from clothwright.features.chains import Chains
from clothwright.features.collars.collar_pieces import COLLAR, STAND, UNDER, outside
from clothwright.features.linings.facing_seams import back_neck_chain, front_neck
from clothwright.features.openings.stand_band import BAND
from clothwright.paper import JOINT, Ease, EdgeKind, NotchPair, Run, Seam, SeamKind
from clothwright.rules import Numbers

STRETCH = 0.6
"""A flat collar may be shorter than the neck by so much a half: it is stretched on,
cm."""

_AT_BACK = ("cb", "end back", "end back low")
"""Edges of a collar at the centre back: its neck edge ends there when it runs from the
front."""

EXACT = Ease.about(0.0, 0.1)


def shell_neck(t: Chains) -> tuple[Run, ...]:
    """The shell's neck from the centre back to the centre front."""
    back = back_neck_chain(t)
    turned = (r._replace(backward=not r.backward) for r in reversed(back))
    return (*turned, *front_neck(t), *t.chain((BAND, "neck", False)))


def collar_seams(t: Chains, n: Numbers) -> list[Seam]:
    """The seams of a collar whose pieces are on the table."""
    out: list[Seam] = []
    if STAND in t.sheet.pieces:
        out = [_to_neck(t, n, STAND, backward=True), *_stand(t)]
    elif COLLAR in t.sheet.pieces:
        backward = t.sheet.piece(COLLAR).after("neck").name in _AT_BACK
        out = [_to_neck(t, n, COLLAR, backward=backward)]
    elif UNDER in t.sheet.pieces:  # of a shawl: the collar is one with the facing
        return [_to_neck(t, n, UNDER, backward=True)]
    return [*out, *_under(t, n), *_centre(t), *_tie(t)]


def _to_neck(t: Chains, n: Numbers, piece: str, *, backward: bool) -> Seam:
    """A collar to the neck of the shell, from the centre back."""
    left, right = shell_neck(t), t.chain((piece, "neck", backward))
    ease = EXACT
    if "c_away" in n:
        ease = Ease(-n.c_away - STRETCH / 2, -n.c_away - STRETCH, -n.c_away + 0.05)
    shoulder = t.length(back_neck_chain(t))
    at = t.upto(right, t.sheet.points["Xs"])
    name = t.sheet.piece(piece).name.lower()
    return Seam(
        "S80",
        f"{name} to the neck",
        left,
        right,
        "centre back",
        "centre front",
        ease,
        notches=(NotchPair(shoulder, at, 1, JOINT),),
        stretched="c_away" in n,
    )


def _stand(t: Chains) -> list[Seam]:
    """The upper edge of a stand, and its open end, to the same piece again; a fall
    between them."""
    out = []
    upper = t.chain((STAND, "upper", False))
    for code, chain, name, start, end in (
        ("S83", upper, "upper edge of the stand", "centre back", "centre front"),
        ("S84", t.chain((STAND, "end", False)), "end of the stand", "top", "neck"),
    ):
        if chain:
            ease, twin = EXACT, SeamKind.TWIN
            out.append(Seam(code, name, chain, chain, start, end, ease, kind=twin))
    foot = t.chain((UNDER, "foot", True))
    if foot:
        left = t.chain((STAND, "upper", False))
        half = t.length(left) / 2
        out.append(
            Seam(
                "S86",
                "undercollar to the stand",
                left,
                foot,
                "centre back",
                "centre front",
                Ease(0.1, 0.0, 0.2),
                notches=(NotchPair(half, half * t.length(foot) / t.length(left)),),
            )
        )
    return out


def _under(t: Chains, n: Numbers) -> list[Seam]:
    """The undercollar to the collar round the outside and where both are sewn on, and
    to its other half."""
    if UNDER not in t.sheet.pieces:
        return []
    edges, at_neck = outside(t.sheet.piece(COLLAR))
    left, right = (
        t.chain(*((code, e.name, False) for e in edges)) for code in (UNDER, COLLAR)
    )
    plan = shorter_by([e.path for e in edges], n.c_turn, at_neck)
    a, c = t.length(left), t.length(right)
    notches = (NotchPair(0.55 * a, 0.55 * c),) if len(edges) == 1 else ()
    begin, end = ("neck" if there else "centre back" for there in at_neck)
    ease = Ease.about(plan, 0.1)
    out = [
        Seam(
            "S81",
            "outer edge of the collar",
            left,
            right,
            begin,
            end,
            ease,
            notches=notches,
            turned=True,
        )
    ]
    sewn = "neck" if t.has(UNDER, "neck") else "foot"
    mine, its = t.chain((UNDER, sewn, False)), t.chain((COLLAR, sewn, False))
    name, back, front = f"{sewn} edges of the collar", "centre back", "centre front"
    out.append(Seam("S82", name, mine, its, back, front, EXACT))
    centre = t.chain((UNDER, "cb", False))
    if centre:
        out.append(
            Seam(
                "S85",
                "centre back of the undercollar",
                centre,
                centre,
                "neck",
                "outer edge",
                EXACT,
                kind=SeamKind.TWIN,
            )
        )
    return out


def _centre(t: Chains) -> list[Seam]:
    """A collar of one layer that is too full for the fold."""
    out = []
    for edge, backward in (("cf", False), ("cb", True)):
        chain = t.chain((COLLAR, edge, backward))
        if chain and t.sheet.edge(COLLAR, edge).kind is EdgeKind.SEAM:
            out.append(
                Seam(
                    "S87",
                    "centre of the frill",
                    chain,
                    chain,
                    "neck",
                    "hem",
                    EXACT,
                    kind=SeamKind.TWIN,
                )
            )
    return out


def _tie(t: Chains) -> list[Seam]:
    """A tie folded lengthwise: its ends bagged, its neck edges together."""
    out = []
    for code, name, a, b, start, end in (
        ("S82", "neck edges of the tie", "neck", "inside", "back", "front"),
        ("S88", "long edges of the tie", "tie under", "tie over", "end", "neck"),
        ("S89", "ends of the tie", "end low", "end high", "edge", "fold"),
        ("S84", "tie at the centre back", "end back low", "end back high", "", ""),
    ):
        left, right = t.chain((COLLAR, a, False)), t.chain((COLLAR, b, True))
        if left and right:
            out.append(Seam(code, name, left, right, start, end, EXACT))
    return out
