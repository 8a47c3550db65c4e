"""What the sleeve is sewn to (first garment 17.4, blocks B7 and B8)."""

from clothwright.blocks.sleeve import EASE_BACK, EASE_FRONT
from clothwright.curves import Path, Point
from clothwright.features.chains import BACK_NOTCH, FRONT_NOTCH, Chains
from clothwright.features.linings.facing_seams import back_armhole, front_armhole
from clothwright.paper import JOINT, JOINT_RIGHT, Ease, NotchPair, Run, Seam, meetings
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
    front, back = front_armhole(t), back_armhole(t)
    cap_f = t.chain(
        ("SL", "cap front", False),
        ("SLF", "cap first", False),
        ("SLF", "cap front", False),
        ("ST", "cap front", False),
        ("SU", "cap front", False),
    )
    cap_b = t.chain(
        ("SL", "cap back", True),
        ("SLB", "cap last", True),
        ("SLB", "cap back", True),
        ("ST", "cap back", True),
        ("SU", "cap back", True),
    )
    if not (cap_f and cap_b):
        return []
    a, c = t.length(front), t.length(cap_f)
    b, e = t.length(back), t.length(cap_b)
    gathered = n.puff > 0
    f, f_note = FRONT_NOTCH, ""
    k, k_note = BACK_NOTCH, ""
    if t.has("SU", "cap front"):  # the sleeve's own seams are its marks
        f, f_note = t.length(cap_f[1:]), JOINT_RIGHT
        k, k_note = t.length(cap_b[1:]), JOINT_RIGHT
    return [
        Seam(
            "S23",
            "sleeve, front",
            front,
            cap_f,
            "shoulder",
            "underarm",
            Ease.about(c - a if gathered else EASE_FRONT * n.E_cap, _OFF),
            (0.0, a - f),
            (
                NotchPair(0.0, 0.0, 1, JOINT),  # the shoulder seam is its own mark
                NotchPair(a - f, c - f, 1, f_note),
            ),
            drawn_up=gathered,
        ),
        Seam(
            "S24",
            "sleeve, back",
            back,
            cap_b,
            "shoulder",
            "underarm",
            Ease.about(e - b if gathered else EASE_BACK * n.E_cap, _OFF),
            (0.0, b - k),
            (NotchPair(b - k, e - k, 2, k_note),),
            drawn_up=gathered,
        ),
        *_under_the_arm(t, n),
    ]


def petal_seams(t: Chains) -> list[Seam]:
    """Each petal on the other, from the shoulder seam to the end of its own cap."""
    behind = t.chain(("SLB", "cap last", True)), t.chain(("SLF", "cap lap", True))
    before = t.chain(("SLF", "cap first", False)), t.chain(("SLB", "cap lap", False))
    return [
        Seam(
            code,
            name,
            *sides,
            "shoulder",
            "edge of the petal",
            notches=(
                NotchPair(t.length(sides[0]), t.length(sides[1]), 1, JOINT_RIGHT),
            ),
        )
        for code, name, sides in (
            ("S104", "front petal on the back one", behind),
            ("S105", "back petal under the front one", before),
        )
    ]


def band_seams(t: Chains) -> list[Seam]:
    """The hem gathered into its band, and the ends of that."""
    band, hem = t.chain(("BA", "upper", False)), t.chain(("SL", "hem", True))
    halves = t.length(band) / 2, t.length(hem) / 2
    ends = t.chain(("BA", "end back", True)), t.chain(("BA", "end front", False))
    return [
        _gathered(t, band, hem, "band to the sleeve", (NotchPair(*halves),)),
        Seam("S27", "ends of the band", *ends, "upper edge", "inner edge"),
    ]


def cuff_seams(t: Chains) -> list[Seam]:
    """The hem gathered into its cuff, and the ends of that."""
    cuff = t.chain(("CU", "upper", False))
    hem = t.chain(("SL", "hem", True), ("SL", "hem back", True))
    net, whole = t.length(cuff), t.length(hem)
    seam = t.length(hem[:1])
    low, high = t.chain(("CU", "end high", True)), t.chain(("CU", "end low", False))
    over = t.chain(("CU", "lap end", True), ("CU", "lap", True))
    under = t.chain(("CU", "lap end low", False), ("CU", "lap low", False))
    notches = (
        NotchPair(net * seam / whole / 2, seam / 2),
        NotchPair(net * seam / whole, seam, 1, JOINT_RIGHT),
    )
    return [
        _gathered(t, cuff, hem, "cuff to the sleeve", notches),
        Seam("S28", "end of the cuff", low, high, "upper edge", "fold"),
        Seam("S29", "underlap of the cuff", over, under, "fold", "slit"),
    ]


def _gathered(
    t: Chains,
    band: tuple[Run, ...],
    hem: tuple[Run, ...],
    name: str,
    notches: tuple[NotchPair, ...],
) -> Seam:
    """A hem into its band, evenly; what it is longer is the gathers."""
    plan = t.length(hem) - t.length(band)
    where = "slit" if len(hem) > 1 else "seam"
    ease = Ease.about(plan, 0.1)
    return Seam("S26", name, band, hem, where, where, ease, None, notches)


def _under_the_arm(t: Chains, n: Numbers) -> list[Seam]:
    """The sleeve's own seam; what the back is longer at a bent elbow is eased in over
    5 cm above and below it, unless a dart takes it in (B11)."""
    front = t.chain(("SL", "underarm front", False), ("SLF", "underarm front", False))
    back = t.chain(
        ("SL", "underarm back", True),
        ("SL", "underarm back low", True),
        ("SLB", "underarm back", True),
    )
    if not front:
        return []
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
    return [
        Seam(
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
    ]


def two_piece_seams(t: Chains, n: Numbers) -> list[Seam]:
    """The two seams of a two-piece sleeve; the top sleeve is eased onto the under at
    the elbow behind (truing 2)."""
    front = t.chain(("SU", "front seam", True)), t.chain(("ST", "front seam", False))
    under, top = t.chain(("SU", "back seam", False)), t.chain(("ST", "back seam", True))
    path = t.sheet.run_path(under[0])
    elbow = Path.line(Point(-99.0, n.y_E), Point(99.0, n.y_E))
    fault = "a two-piece sleeve ends below the elbow: make it (lh) longer"
    at = meetings(path, elbow, fault)[0][0]
    low, high = at - _BY_ELBOW, min(at + _BY_ELBOW, path.length - NOTCH_ROOM)
    quarter = t.length(front[0]) / 3
    return [
        Seam(
            "S32",
            "front seam of the sleeve",
            *front,
            "cap",
            "hem",
            notches=(NotchPair(quarter, quarter),),
        ),
        Seam(
            "S33",
            "back seam of the sleeve",
            under,
            top,
            "cap",
            "hem",
            Ease.about(n.two_ease, 0.1),
            (low, high),
            (NotchPair(low, low, 2), NotchPair(high, high + n.two_ease, 2)),
        ),
    ]
