"""What the sleeve is sewn to (first garment 17.4, blocks B7 and B8)."""

from clothwright.blocks.sleeve import EASE_BACK, EASE_FRONT
from clothwright.features.chains import BACK_NOTCH, FRONT_NOTCH, Chains
from clothwright.paper import JOINT, Ease, NotchPair, Seam
from clothwright.rules import Numbers
from clothwright.truing.tolerances import NOTCH_ROOM

_BY_ELBOW = 5.0
"""The elbow's ease lies so far above and below it, cm (B11)."""

_OFF = 0.05
"""Each half of the cap takes its share of the ease within this, cm (blocks S1)."""


def sleeve_seams(t: Chains, n: Numbers) -> list[Seam]:
    """Cap to armhole, front and back, from the shoulder seam; the seam under the arm.

    The ease lies between the shoulder notch and the notch below: the lower third goes
    in flat (B7).
    """
    if not t.has("SL", "cap front"):
        return []
    front = t.chain(
        ("FC", "armhole", True), ("F", "armhole", True), ("FS", "armhole", True)
    )
    back = t.chain(
        ("BC", "armhole", False), ("B", "armhole", False), ("BS", "armhole", False)
    )
    cap_f = t.chain(("SL", "cap front", False))
    cap_b = t.chain(("SL", "cap back", True))
    a, c = t.length(front), t.length(cap_f)
    b, e = t.length(back), t.length(cap_b)
    return [
        Seam(
            "S23",
            "sleeve, front",
            front,
            cap_f,
            "shoulder",
            "underarm",
            Ease.about(EASE_FRONT * n.E_cap, _OFF),
            (0.0, a - FRONT_NOTCH),
            (
                NotchPair(0.0, 0.0, 1, JOINT),  # the shoulder seam is its own mark
                NotchPair(a - FRONT_NOTCH, c - FRONT_NOTCH, 1),
            ),
        ),
        Seam(
            "S24",
            "sleeve, back",
            back,
            cap_b,
            "shoulder",
            "underarm",
            Ease.about(EASE_BACK * n.E_cap, _OFF),
            (0.0, b - BACK_NOTCH),
            (NotchPair(b - BACK_NOTCH, e - BACK_NOTCH, 2),),
        ),
        _under_the_arm(t, n),
    ]


def _under_the_arm(t: Chains, n: Numbers) -> Seam:
    """The sleeve's own seam; what the back is longer at a bent elbow is eased in over
    5 cm above and below it, unless a dart takes it in (B11)."""
    front = t.chain(("SL", "underarm front", False))
    back = t.chain(("SL", "underarm back", True), ("SL", "underarm back low", True))
    zone: tuple[float, float] | None = None
    notches: tuple[NotchPair, ...] = ()
    if n.elbow_ease > 1e-6:
        whole = t.length(front)
        at = t.upto(front, t.sheet.points["Ef"])
        zone = at - _BY_ELBOW, min(at + _BY_ELBOW, whole - NOTCH_ROOM)
        notches = (
            NotchPair(zone[0], zone[0]),
            NotchPair(zone[1], zone[1] + n.elbow_ease),
        )
    return Seam(
        "S25",
        "seam under the arm",
        front,
        back,
        "underarm",
        "hem",
        Ease.about(n.elbow_ease, 0.1),
        zone,
        notches,
    )
