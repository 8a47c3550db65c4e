"""What bands of knitted cloth have in common: cut shorter than the edge that they are
stretched onto, folded in half along their length (blocks F6; truing 2)."""

from collections.abc import Mapping
from enum import Enum

from clothwright.curves import Path, Point
from clothwright.features.base import Cuts
from clothwright.paper import (
    Drafting,
    EdgeKind,
    InnerLine,
    Piece,
    Verb,
    straight,
)
from clothwright.rules import Kind, RuleTable

BELOW = 10.0
"""A band is drawn so far below what is on the table, cm."""

FOLD_WORDS = 2.5
"""The crease along a band begins so far from its fold, cm: there it says that it lies
on the fold."""

RIB_STRETCH = 80.0
"""Stretch of rib, per cent, where none is told (common practice, no source)."""

_SRC = "blocks F6"


class BandCloth(Enum):
    """What a band is cut from."""

    SELF = "the same cloth"
    """The shell."""

    RIB = "rib"
    """Rib, a cloth of its own."""

    def cuts(self, code: str, how: str, count: int) -> Mapping[str, Cuts]:
        """How a band's piece is cut."""
        cloth = "shell" if self is BandCloth.SELF else "rib"
        return {code: Cuts(how, count, (cloth,))}


def stretch_of(key: str, symbol: str, what: str) -> dict[BandCloth, RuleTable]:
    """The rule of a band's stretch by its cloth: the shell's own, or rib's."""
    pages = {c: RuleTable(f"stretch of the {what}, {c.value}") for c in BandCloth}
    name = f"stretch of the {what}, per cent"

    def of_cloth(s_knit: float) -> float:
        return s_knit

    def of_rib() -> float:
        return RIB_STRETCH

    for cloth, compute, formula, source in (
        (BandCloth.SELF, of_cloth, "s: it is cut of the same cloth", _SRC),
        (
            BandCloth.RIB,
            of_rib,
            f"{RIB_STRETCH:g} for rib, where it is not told",
            "common practice, no source",
        ),
    ):
        pages[cloth].rule(
            symbol,
            name,
            kind=Kind.RATIO,
            source=source,
            key=key,
            formula=formula,
            low=10.0,
            high=250.0,
        )(compute)
    return pages


NECK: dict[BandCloth, RuleTable] = {
    c: RuleTable(f"neck band of {c.value}") for c in BandCloth
}
"""Its share of the neckline, by what it is cut from."""


@NECK[BandCloth.SELF].rule(
    "r",
    "length of the neck band, share of the neckline",
    kind=Kind.RATIO,
    source=_SRC,
    key="band_share",
    formula="0.92 where the cloth stretches 25 per cent or less, to 0.85 at 65",
    low=0.6,
    high=1.0,
)
def _self_share(s_knit: float) -> float:
    return max(0.85, min(0.92, 0.92 - 0.07 * (s_knit - 25.0) / 40.0))


@NECK[BandCloth.RIB].rule(
    "r",
    "length of the neck band, share of the neckline",
    kind=Kind.RATIO,
    source=_SRC,
    key="band_share",
    formula="0.80",
    low=0.6,
    high=1.0,
)
def _rib_share() -> float:
    return 0.80


def lay_band(
    d: Drafting,
    code: str,
    name: str,
    marks: tuple[str, str],
    at: Point,
    length: str,
    width: str,
    edge: str,
    *,
    folded: bool,
    at_end: str = "centre back",
) -> None:
    """Draw a band from a mark at its upper left: whole, or half of it (`folded`), its
    centre front on the fold and its end `at_end`. `length` and `width` are the keys of
    its numbers."""
    n, w = d.n, d.n[width]
    first, last = marks
    end = "the fold of the centre front" if folded else "its front end"
    a = d.start(first, at, f"{name.lower()}, {end}")
    if folded:
        b = d.point(last, first, f"its end at the {at_end}", right=n[length] / 2)
    else:
        b = d.point(last, first, "its back end", right=length)
    down, fold = Point(0.0, 2 * w), Point(0.0, w)
    words = Point(FOLD_WORDS if folded else 0.0, 0.0)
    kind = EdgeKind.FOLD if folded else EdgeKind.SEAM
    piece = Piece(
        code,
        name,
        (
            straight(edge, a, b),
            straight("end" if folded else "end back", b, b + down),
            straight("inside", b + down, a + down),
            straight("cf" if folded else "end front", a + down, a, kind),
        ),
        lines=(InnerLine("crease", Path.line(a + fold + words, b + fold)),),
    )
    d.lay(
        Verb.OUTLINE,
        d.sheet.put(piece),
        code,
        f"{name.lower()}, double",
        amounts=(("wide on either side of its fold", width),),
        detail="the greatest stretch of the cloth along it",
    )


def below_hem(d: Drafting, place: int) -> Point:
    """Where the bands of a knit bodice are drawn, one below the other."""
    foot = max(d["Mb"].y, d["Mf"].y)
    return Point(0.0, foot + BELOW + 2.5 * BELOW * place)
