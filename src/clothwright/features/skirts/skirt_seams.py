"""What is sewn to what on a skirt in halves, with its notches (truing 6; blocks K3)."""

from clothwright.blocks import trousers
from clothwright.blocks.skirt import BACK, FRONT
from clothwright.features.chains import WAISTS, Chains, between, clear_of
from clothwright.features.skirts.pocket_drawing import HIP_PIECE, mouth_places
from clothwright.features.skirts.slit_edges import SLIT
from clothwright.paper import JOINT, Ease, EdgeKind, NotchPair, Run, Seam, SeamKind
from clothwright.rules import Numbers
from clothwright.truing.tolerances import NOTCH_ROOM


def waist_chain(
    t: Chains, code: str, *, outwards: bool, over: bool = False
) -> tuple[Run, ...]:
    """The waist of a half from the centre to the side, or back; with `over` that of a
    wrap's front beyond its centre, out to its edge, or back."""
    names = WAISTS if outwards else WAISTS[::-1]
    if over:
        return t.chain(
            *((code, w.replace("waist", "waist over"), not outwards) for w in names)
        )
    backward = (code in (FRONT, trousers.FRONT)) == outwards
    runs = [(code, name, backward) for name in names]
    if code in (FRONT, trousers.FRONT):  # a slanting pocket takes the corner
        runs.insert(len(runs) if outwards else 0, (HIP_PIECE, "waist side", backward))
    return t.chain(*runs)


def skirt_seams(t: Chains, n: Numbers) -> list[Seam]:
    """The side of a skirt, and its centre back where that is a seam."""
    return [*_side(t, n), *_centre_back(t, n)]


def _side(t: Chains, n: Numbers) -> list[Seam]:
    left = t.chain(
        ("WCF", "side", True), (HIP_PIECE, "side", True), (FRONT, "side", True)
    )
    right = t.chain(("WCB", "side", False), (BACK, "side", False))
    if not (left and right):
        return []
    places = []
    if "Hbs" in t.sheet.points:
        places.append(t.upto(right, t.sheet.points["Hbs"]))
    whole = t.length(right)
    if "Zs" in t.sheet.points and n.z_S < whole - NOTCH_ROOM:
        places = [p for p in places if abs(n.z_S - p) > NOTCH_ROOM]
        places.append(n.z_S)
    joint = t.length(left[:1]) if left[0].piece == HIP_PIECE else -1.0
    pocket = [joint] if joint > 0 else mouth_places(t.sheet, n)
    places = sorted(clear_of(places, pocket))
    places += between(places[-1] if places else 0.0, whole)
    if t.has(FRONT, "slit"):
        places.append(whole)
    return [
        Seam(
            "S34",
            "skirt side",
            left,
            right,
            "waist",
            "slit" if t.has(FRONT, SLIT) else "hem",
            Ease.about(0.0, 0.05),
            notches=tuple(
                NotchPair(s, s, 1, JOINT if s == joint else "") for s in places
            ),
        )
    ]


def _centre_back(t: Chains, n: Numbers) -> list[Seam]:
    chain = t.chain(("WCB", "cb", True), (BACK, "cb", True))
    if not chain or t.sheet.edge(BACK, "cb").kind is not EdgeKind.SEAM:
        return []
    whole = t.length(chain)
    places = [n.z_S] if "Zb" in t.sheet.points else []
    places = [p for p in places if p < whole - NOTCH_ROOM]
    places += between(places[-1] if places else 0.0, whole)
    return [
        Seam(
            "S35",
            "centre back of the skirt",
            chain,
            chain,
            "waist",
            "vent" if t.has(BACK, "vent") else "hem",
            Ease.about(0.0, 0.05),
            notches=tuple(NotchPair(s, s, 1) for s in places),
            kind=SeamKind.TWIN,
        )
    ]
