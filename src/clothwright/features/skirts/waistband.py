"""Straight waistband of a skirt or of trousers, cut in one on its own fold
(transformations §8)."""

from collections.abc import Callable, Iterable, Mapping, Sequence
from typing import Annotated, ClassVar, Literal, NamedTuple

from clothwright.blocks import trousers
from clothwright.blocks.skirt import BACK, FRONT
from clothwright.curves import Path, Point
from clothwright.features.about import About, Place
from clothwright.features.base import Cuts, Feature, Number, Rank, Stage
from clothwright.features.chains import Chains
from clothwright.features.notions import Article, Notion
from clothwright.features.operations import Operation
from clothwright.features.roles import Role
from clothwright.features.skirts.about import GORE
from clothwright.features.skirts.skirt_seams import waist_chain
from clothwright.features.skirts.skirt_sewing import band_operations
from clothwright.features.wholes import cloth_at_waist
from clothwright.paper import (
    JOINT,
    Drafting,
    Ease,
    EdgeKind,
    InnerLine,
    Mark,
    MarkKind,
    NotchPair,
    Piece,
    Seam,
    Sheet,
    Verb,
    straight,
)
from clothwright.rules import Numbers, RuleTable
from clothwright.units.fields import Length

_SRC = "transformations §8"

BAND = "WB"
"""Code of the piece."""

_HOOK_IN = 1.2
"""A hook sits so far inside the end of the band, cm (transformations §7)."""

WAISTBAND = RuleTable("waistband")


@WAISTBAND.rule(
    "wb",
    "length of the waistband round the waist",
    source=_SRC,
    key="w_band",
    formula="2·(wSF + wSB) − what is eased on",
)
def _band(w_SF: float, w_SB: float, e_band: float) -> float:
    return 2 * (w_SF + w_SB) - e_band


@WAISTBAND.rule(
    "wb cut",
    "length of the waistband with its underlap",
    source=_SRC,
    key="l_band",
    formula="wb + underlap",
)
def _whole(w_band: float, lap_band: float) -> float:
    return w_band + lap_band


class Stretch(NamedTuple):
    """A stretch of the band, as long as one waist of the skirt."""

    name: str
    piece: str
    outwards: bool
    """True when it runs from the centre to the side."""

    waist: float
    """Waist that it takes, before easing, cm."""

    share: float
    """Its part of the band, to the same scale: as the waist is reckoned straight, so
    that one band serves two sides whose hips lie at different levels."""

    ends: str
    """What lies at its end."""

    over: bool = False
    """True for what of a front lies beyond its centre, in a wrap skirt."""


def stretches(sheet: Sheet, n: Numbers) -> tuple[Stretch, ...]:
    """The stretches of the band from the end that laps over: from the centre back, the
    left side, the right front at a fly, or the gore seam that opens."""
    if GORE in sheet.pieces:
        gores = range(1, round(n.gores) + 1)
        return tuple(
            Stretch(f"{i}", GORE, True, n.w_gore, n.w_gore, "seam") for i in gores
        )
    back, front, net_b, net_f = trousers.BACK, trousers.FRONT, n.w_SB, n.w_SF
    if back not in sheet.pieces:
        back, front, net_b, net_f = BACK, FRONT, n.net_SB, n.net_SF
    quarters = (
        Stretch("back left", back, True, n.w_SB, net_b, "side"),
        Stretch("front left", front, False, n.w_SF, net_f, "CF"),
        Stretch("front right", front, True, n.w_SF, net_f, "side"),
        Stretch("back right", back, False, n.w_SB, net_b, "CB"),
    )
    if front in sheet.pieces and sheet.piece(front).has("waist over"):
        wide = n.wx_S, n.wx_S * net_f / n.w_SF
        return (
            Stretch("front over", front, False, *wide, "CF", True),
            *quarters[2:],
            *quarters[:2],
            Stretch("front under", front, True, *wide, "edge", True),
        )
    first = 1 if "Zs" in sheet.points else 2 if "Ef" in sheet.points else 0
    return quarters[first:] + quarters[:first]


class Waistband(Feature):
    """Straight waistband."""

    kind: Literal["waistband"] = "waistband"
    title: ClassVar[str] = "Waistband"
    sentence: ClassVar[str] = (
        "It is set into a [waistband], {height} high, with {underlap} of underlap."
    )
    pieces: ClassVar[tuple[About, ...]] = (
        About(BAND, Place.BAND, ("waistband",), others=Role.WAIST),
    )
    seams: ClassVar[Mapping[str, str]] = {
        "S30": "waistband to what hangs on it",
    }
    gives: ClassVar[frozenset[str]] = frozenset({"waist finish", "band"})
    needs: ClassVar[dict[str, str]] = {
        "waist": "a waistband needs a skirt or trousers to be set on"
    }
    clashes: ClassVar[dict[str, str]] = {
        "waist finish": "the waist is finished one way only"
    }

    height: Annotated[
        Length | None,
        Number(
            "h_band",
            "hb",
            "height of the waistband",
            _SRC,
            3.0,
            1.25,
            1.5,
            8.0,
            (2.5, 4.0),
        ),
    ] = None
    underlap: Annotated[
        Length | None,
        Number(
            "lap_band", "lap", "underlap of the waistband", _SRC, 3.0, 1.25, 1.5, 6.0
        ),
    ] = None
    eased_on: Annotated[
        Length | None,
        Number(
            "e_band",
            "eb",
            "eased onto the waistband, all round",
            _SRC,
            1.0,
            0.375,
            0.0,
            2.5,
            (0.0, 1.5),
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (WAISTBAND,)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.FACING, "the waistband", _draw),)

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        return onto_band(t, n)

    def cuts(self, sheet: Sheet) -> Mapping[str, Cuts]:
        return {BAND: Cuts("1, right side up", 1, ("shell", "interlining"))}

    def notes(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[str]:
        yield (
            "A hook and eye close the waistband (crosses); its underlap is "
            f"{fmt(n.lap_band)} long and lies below."
        )

    def notions(self, n: Numbers, sheet: Sheet) -> Iterable[Notion]:
        yield Notion(Article.HOOK, 1, "for the waistband")

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        return band_operations(sheet)


def _draw(d: Drafting) -> None:
    n = d.n
    d.part = "waistband"
    h = n.h_band
    marks = (
        Mark("hook", Point(0.5 * h, _HOOK_IN), MarkKind.DRILL),
        Mark("bar", Point(1.5 * h, n.w_band + _HOOK_IN), MarkKind.DRILL),
    )
    lay_band(d, marks)


def lay_band(
    d: Drafting, marks: Sequence[Mark], lines: Sequence[InnerLine] = ()
) -> None:
    """A strip twice as wide as it is high, upright, its outer face at the right: from
    the end that laps over at the top, once round the waist, to the underlap, or to the
    end that a wrap's other front ends in."""
    n = d.n
    h, whole = n.h_band, n.l_band
    lap = whole - n.w_band > 1e-6
    parts = stretches(d.sheet, n)
    scale = n.w_band / sum(part.share for part in parts)
    done = EdgeKind.FINISHED
    edges = [straight("end over", Point(0.0, 0.0), Point(2 * h, 0.0), done)]
    across: list[tuple[str, float]] = []
    y = 0.0
    for i, part in enumerate(parts, 1):
        below = y + scale * part.share
        edges.append(straight(f"band {i}", Point(2 * h, y), Point(2 * h, below)))
        across.append((part.ends, below))
        y = below
    if lap:
        edges.append(straight("underlap", Point(2 * h, y), Point(2 * h, whole), done))
    edges += [
        straight("end under", Point(2 * h, whole), Point(0.0, whole), done),
        straight("inside", Point(0.0, whole), Point(0.0, 0.0), done),
    ]
    piece = Piece(
        BAND,
        "Waistband",
        tuple(edges),
        marks=tuple(marks),
        lines=(
            InnerLine("fold", Path.line(Point(h, whole), Point(h, 0.0))),
            *(
                InnerLine(name, Path.line(Point(h, y), Point(2 * h, y)))
                for name, y in across
                if y < whole - 0.1  # nothing ends where the band does
            ),
            *lines,
        ),
    )
    d.lay(
        Verb.OUTLINE,
        d.sheet.put(piece),
        BAND,
        "waistband",
        amounts=(
            ("wide, to be folded to half", 2 * h),
            ("long", "l_band"),
            *((("of it the underlap", "lap_band"),) if lap else ()),
        ),
        detail="a strip, its length along the warp",
    )


def onto_band(t: Chains, n: Numbers) -> list[Seam]:
    """The waist of a skirt or of trousers, stretch by stretch, into its waistband."""
    out = []
    parts = stretches(t.sheet, n)
    total = sum(part.waist for part in parts)
    scale = n.w_band / sum(part.share for part in parts)
    for i, part in enumerate(parts, 1):
        left = waist_chain(t, part.piece, outwards=part.outwards, over=part.over)
        right = t.chain((BAND, f"band {i}", False))
        a, c = t.length(left), t.length(right)
        stretched = n.by_S if "by_S" in n else 0.0
        plan = scale * part.share - part.waist * (1 - stretched / total)
        notches = () if i == len(parts) else (NotchPair(a, c, 1, JOINT),)
        full = cloth_at_waist(n)
        if full is not None:  # gathers lie on the side that is walked second
            left, right, notches = right, left, ()
            plan = part.waist * full - scale * part.share
        out.append(
            Seam(
                f"S30.{i}",
                f"waistband, {part.name}",
                left,
                right,
                *(("centre", "side") if part.outwards else ("side", "centre")),
                Ease.about(plan, 0.05),
                notches=notches,
            )
        )
    return out
