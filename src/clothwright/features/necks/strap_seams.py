"""Seams of straps: one across an open back, and those over the shoulders."""

from clothwright.features.chains import BACK_STRAP, STRAP, TOP, Chains
from clothwright.paper import Ease, Run, Seam, SeamKind
from clothwright.rules import Numbers


def back_strap_seams(t: Chains, n: Numbers) -> list[Seam]:
    """A strap across the back, caught in the neck's edge, and to itself, cut twice."""
    end = t.chain((BACK_STRAP, "strap end", False))
    neck = t.chain(("BC", "neck", True), ("B", "neck", True))
    caught = Ease.about(n.strap_b - t.length(neck), 0.1)
    return [
        Seam(
            "S67",
            "back strap, caught in the neck's edge",
            neck,
            end,
            "shoulder",
            "centre back",
            caught,
            kind=SeamKind.LAPPED,
        ),
        bagged(t, "S68", "back strap, bagged", BACK_STRAP, "neck"),
    ]


def bagged(t: Chains, code: str, name: str, piece: str, end: str) -> Seam:
    """A strap or a band to itself, cut twice: round its long edges and one end."""
    edges = ("band upper", "nape", "band lower")
    around = t.chain(*((piece, e, False) for e in edges))
    return Seam(code, name, around, around, end, end, kind=SeamKind.TWIN)


def strap_seams(t: Chains, n: Numbers) -> list[Seam]:
    """Shoulder straps, caught in the top edge, and folded on themselves."""
    out = []
    for code, words, end, codes in (
        ("S112", "front", "front end", ("FC", "FS", "F")),
        ("S113", "back", "back end", ("BC", "BS", "B")),
    ):
        pieces = (t.sheet.piece(c) for c in codes if t.has(c, TOP))
        marked = next(p for p in pieces if any(m.name == "strap" for m in p.marks))
        top, strap = (Run(marked.code, TOP),), (Run(STRAP, end),)
        caught = Ease.about(2 * n.strap_w - t.length(top), 0.1)
        name = f"strap, caught in the top edge, {words}"
        kind = SeamKind.LAPPED
        out.append(Seam(code, name, top, strap, "side", "centre", caught, kind=kind))
    long = t.chain((STRAP, "strap over", False)), t.chain((STRAP, "strap under", True))
    folded = Seam("S114", "strap, long edges", *long, "front", "back")
    return [*out, folded]
