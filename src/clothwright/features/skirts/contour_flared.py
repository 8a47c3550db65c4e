"""Contour band of a skirt without darts: over a circle skirt drafted as the body
tapers, over a gored one as its gores do (transformations §8)."""

import math
from itertools import pairwise

from clothwright.blocks import circle
from clothwright.blocks.skirt import BACK, FRONT
from clothwright.features.skirts.about import GORE
from clothwright.paper import (
    Drafting,
    Edge,
    EdgeKind,
    PaperError,
    Piece,
    Sheet,
    Verb,
)
from clothwright.rules import Kind, Numbers, RuleError, RuleTable

_SRC = "transformations §8"

GORE_BAND = "WCG"
"""Code of the band of a gored skirt, half of it."""

HIGH_HIP_ROOM = 1.0
"""Room over the high hip, cm (blocks C9)."""

_LEAST = 0.5
"""The foot of the band is so much wider than its top at least, cm (our own)."""

FLARED_BAND = RuleTable("shaped band over a flared skirt")
_rule = FLARED_BAND.rule


@_rule(
    "Wb2",
    "girth at the foot of the shaped band",
    source=_SRC,
    key="w_foot",
    formula="between W + Ew and HH + 1 cm, as far as hc is of WHH",
)
def _foot(W: float, Ew: float, HH: float, WHH: float, h_contour: float) -> float:
    more = max(0.0, HH + HIGH_HIP_ROOM - W - Ew) * h_contour / WHH
    return W + Ew + max(_LEAST, more)


@_rule(
    "rb",
    "radius of the upper edge of the shaped band",
    source=_SRC,
    key="r_band",
    formula="(W + Ew)·hc/(Wb2 − W − Ew)",
)
def _radius(W: float, Ew: float, h_contour: float, w_foot: float) -> float:
    return (W + Ew) * h_contour / (w_foot - W - Ew)


@_rule(
    "φb",
    "angle of each quarter of the shaped band",
    kind=Kind.ANGLE,
    source=_SRC,
    key="phi_band",
    formula="(W + Ew)/(4·rb), in degrees",
)
def _angle(W: float, Ew: float, r_band: float) -> float:
    return math.degrees((W + Ew) / 4 / r_band)


@_rule(
    "wc",
    "waist of the skirt as cut, all round",
    source=_SRC,
    key="wc_S",
    formula="Wb2 − by",
)
def _as_cut(w_foot: float, by_S: float) -> float:
    return w_foot - by_S


@_rule(
    "r + L",
    "radius of the hem arc",
    source="blocks G1",
    key="r_hem",
    formula="r + L − hc",
)
def _r_hem(r_circle: float, L: float, h_contour: float) -> float:
    return r_circle + L - h_contour


@_rule(
    "hem S",
    "hem of the skirt, all round",
    source="blocks G2",
    key="hem_S",
    formula="wc + 2πf·(L − hc)",
)
def _hem(wc_S: float, f: float, L: float, h_contour: float) -> float:
    return circle.hem(wc_S, f, L - h_contour)


BY_HEM_BELOW = RuleTable("share of the circle by the wanted hem, below a shaped band")


@BY_HEM_BELOW.rule(
    "f",
    "share of a full circle",
    source="blocks G3",
    kind=Kind.RATIO,
    formula="(M − Wb2)/(2π(L − hc))",
)
def f(M: float, w_foot: float, L: float, h_contour: float) -> float:
    share = circle.share_for_hem(w_foot, M, L - h_contour)
    if not 0.05 <= share <= 1.75:
        raise RuleError(
            f"a hem (M) of {M:.0f} cm takes {share:.2f} of a circle; 0.05 to 1.75 can "
            "be cut: choose another hem, or another length (L)"
        )
    return share


def draft_over_circle(d: Drafting) -> None:
    """Front and back band (WCF, WCB), sectors whose centres lie plumb."""
    n = d.n
    d.part = "waistband"
    for code, of, name in (
        ("WCF", FRONT, "Front band"),
        ("WCB", BACK, "Back band"),
    ):
        front = of == FRONT
        outer = n.r_band + n.h_contour
        half = circle.Sector.half(n.r_band, outer, n.phi_band, at_right=front)
        side = ("side", EdgeKind.SEAM)
        mid = "cf" if front else "cb"
        centre = (mid, d.sheet.edge(of, mid).kind)
        edges = half.edges(
            ("waist", EdgeKind.SEAM),
            centre if front else side,
            ("foot of band", EdgeKind.SEAM),
            side if front else centre,
        )
        d.lay(
            Verb.OUTLINE,
            d.sheet.put(Piece(code, name, edges)),
            code,
            name.lower(),
            amounts=(
                ("with an upper arc of radius {}", "r_band"),
                ("and a lower arc {} further out", "h_contour"),
                ("over an angle of {}", "phi_band"),
            ),
            detail="both arcs from one centre, joined by lines that run to it; the "
            "centre is plumb",
        )


def draft_over_gores(d: Drafting) -> None:
    """Half the shaped band (WCG) over gores that are cut back to its foot: a sector as
    long above as their waists were and below as their tops are now; the fold lies
    opposite the seam that opens. Raises PaperError."""
    n, gore = d.n, d.sheet.piece(GORE)
    d.part = "waistband"
    foot, many = gore.edge("waist").length, round(n.gores) // 2
    more = foot - n.w_gore
    if more < _LEAST / n.gores:
        raise PaperError(
            "the gores are no wider at the foot of the shaped band than at the waist: "
            "take a straight waistband"
        )
    r = n.w_gore * n.h_contour / more
    angle = math.degrees(many * n.w_gore / r)
    half = circle.Sector.half(r, r + n.h_contour, angle, at_right=True)
    waist, fold, low, end = half.edges(
        ("waist", EdgeKind.SEAM),
        ("fold", EdgeKind.FOLD),
        ("foot", EdgeKind.SEAM),
        ("end", EdgeKind.FINISHED),
    )
    steps = [low.path.length * i / many for i in range(many + 1)]
    parts = [low.path.between(a, b) for a, b in pairwise(steps)]
    feet = [Edge(f"foot {many - i}", p) for i, p in enumerate(parts)]
    piece = Piece(GORE_BAND, "Shaped band", (waist, fold, *feet, end))
    d.lay(
        Verb.OUTLINE,
        d.sheet.put(piece),
        GORE_BAND,
        "half of the shaped band",
        amounts=(
            ("with an upper arc of radius {}", r),
            ("and a lower arc {} further out", "h_contour"),
            ("{} round the waist", many * n.w_gore),
        ),
        detail="both arcs from one centre, joined by lines that run to it; the fold is "
        "plumb, opposite the seam that opens, and the lower arc is as long as the tops "
        "of the gores",
    )


def feet(sheet: Sheet) -> int:
    """How many gores are sewn to each half of their band."""
    return sum(e.name.startswith("foot ") for e in sheet.piece(GORE_BAND).edges)


def above(n: Numbers, sheet: Sheet) -> float:
    """How far below the waist a flared or gored skirt begins, for its band, cm."""
    return n.h_contour if GORE_BAND in sheet.pieces or "w_foot" in n else 0.0
