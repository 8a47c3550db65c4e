"""What the facings are sewn to (first garment 21, S8 to S13 and S18)."""

from clothwright.features.chains import BACK_NOTCH, FRONT_NOTCH, Chains
from clothwright.paper import Ease, NotchPair, Run, Seam, SeamKind
from clothwright.rules import Numbers

CORNER = 1.2
"""No notch lies nearer to a corner than this, cm (first garment 19)."""


def facing_seams(t: Chains, n: Numbers) -> list[Seam]:
    faced = Ease(-0.05, -0.15, 0.05)
    out = []
    for code, name, left, right, start, end in (
        (
            "S8",
            "neck, front",
            t.chain(("FC", "neck", False), ("F", "neck", False)),
            t.chain(("FF", "neck", False)),
            "shoulder",
            "centre front",
        ),
        (
            "S9",
            "neck and slanted edge" if t.has("BC", "slant") else "neck, back",
            t.chain(
                ("BC", "neck side", True),
                ("BC", "neck", True),
                ("BC", "slant", True),
                ("B", "neck side", True),
                ("B", "neck", True),
            ),
            t.chain(("BF", "neck", True), ("BF", "slant", True)),
            "shoulder",
            "waist" if t.has("BC", "slant") else "centre back",
        ),
        (
            "S10",
            "armhole, front",
            t.chain(
                ("FC", "armhole", True), ("F", "armhole", True), ("FS", "armhole", True)
            ),
            t.chain(("FF", "armhole", True)),
            "tip",
            "underarm",
        ),
        (
            "S11",
            "armhole, back",
            t.chain(
                ("BC", "armhole", False),
                ("B", "armhole", False),
                ("BS", "armhole", False),
            ),
            t.chain(("BF", "armhole", False)),
            "tip",
            "underarm",
        ),
    ):
        if not (left and right):
            continue
        ease = faced
        if code == "S9" and t.zipped():
            ease = Ease(-0.55, -0.70, 0.05)  # the facing ends 0.5 short of the zip
        out.append(
            Seam(
                code,
                name,
                left,
                right,
                start,
                end,
                ease,
                None,
                _facing_notches(t, code, left, right),
                SeamKind.FACED,
            )
        )
    for code, name, e, aim, tol, start, end in (
        ("S12", "facing shoulder", "shoulder", 0.0, 0.1, "neck", "tip"),
        ("S13", "facing side", "side", 0.0, 0.05, "underarm", "free edge"),
    ):
        left = t.chain(("FF", e, True))
        right = t.chain(("BF", e, False))
        if left and right:
            out.append(Seam(code, name, left, right, start, end, Ease.about(aim, tol)))
    foot = t.chain(("BF", "foot", False))
    waist = t.chain(("BC", "waist", False))
    if foot and waist:
        # the strip is laid on from E2, less the roll of the slanted edge
        whole = t.length(waist)
        over = min(n.sw, whole) - n.rho - whole
        if n.sw > whole - 1.0:
            over = -n.rho
        out.append(
            Seam(
                "S18",
                "facing foot, caught in the waist",
                waist,
                foot,
                "panel",
                "E2",
                Ease(over, over - 0.1, over + 0.1),
                kind=SeamKind.LAPPED,
            )
        )
    return out


def _facing_notches(
    t: Chains, code: str, left: tuple[Run, ...], right: tuple[Run, ...]
) -> tuple[NotchPair, ...]:
    a, c = t.length(left), t.length(right)
    if code == "S10":
        return (NotchPair(a - FRONT_NOTCH, c - FRONT_NOTCH, 1),)
    if code == "S11":
        return (NotchPair(a - BACK_NOTCH, c - BACK_NOTCH, 2),)
    marks = {m.name: m.at for m in t.sheet.piece(left[0].piece).marks}
    if code == "S9" and "loop 1" in marks:
        first = t.upto(left, marks["loop 1"])
        mid = t.length(left[:1]) + t.length(left[1:]) / 2
        back = c - a  # measured from the waist end, where both begin
        pairs = [NotchPair(s, s + back, 2, "loop") for s in (first, mid)]
        corner = t.length(left[:1])
        return tuple(p for p in pairs if p.left > corner + CORNER)
    return ()
