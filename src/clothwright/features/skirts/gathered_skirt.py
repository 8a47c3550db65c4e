"""Gathered skirt of straight pieces, in one or in tiers (blocks G10, G11)."""

from collections.abc import Callable, Iterable, Mapping
from enum import Enum
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.skirt import BACK, FRONT
from clothwright.curves import Point
from clothwright.features.about import About, Place
from clothwright.features.base import (
    ONE_BLOCK,
    Cuts,
    Feature,
    Number,
    Pin,
    Rank,
    Stage,
    Words,
)
from clothwright.features.chains import Chains, between
from clothwright.features.operations import Operation
from clothwright.features.roles import skirt_hem
from clothwright.features.skirts.about import HALVES, SEAMS
from clothwright.features.skirts.circle_skirt import ROUND_WAIST, fits_cloth, over_hip
from clothwright.features.skirts.skirt_joints import skirt_joints
from clothwright.features.skirts.skirt_seams import skirt_seams
from clothwright.features.skirts.skirt_sewing import gathers
from clothwright.features.skirts.straight_skirt import StraightSkirt, stride
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    Drafting,
    Ease,
    Edge,
    EdgeKind,
    NotchPair,
    Piece,
    Seam,
    SeamKind,
    Sheet,
    Verb,
    straight,
)
from clothwright.rules import Kind, Numbers, RuleTable
from clothwright.truing import Joint
from clothwright.truing.tolerances import NOTCH_ROOM
from clothwright.units.fields import Length, Ratio

_SRC = "blocks G10, G11"

DEEPER = 1.25
"""Each tier is so much deeper than the one above: 1 : 1.25 : 1.6 (G11)."""

GATHERED = RuleTable("gathered skirt")


@GATHERED.rule(
    "hem S",
    "hem of the skirt, all round",
    source=f"{_SRC}, corrections C20",
    key="hem_S",
    formula="(W + Ew)·g·g2 for each tier below the first",
)
def _hem(W: float, Ew: float, g: float, g2: float, tiers: float) -> float:
    return tier_length(W + Ew, g, g2, round(tiers))


def tier_length(w: float, first: float, ratio: float, tier: int) -> float:
    """Length of a tier all round, cm: l1 = w·g1, each next is `ratio` times the one
    above (corrections C20)."""
    return w * first * ratio ** (tier - 1)


def depths(length: float, tiers: int) -> tuple[float, ...]:
    """Depths of the tiers from the waist, together `length` cm."""
    shares = [DEEPER**k for k in range(tiers)]
    return tuple(length * s / sum(shares) for s in shares)


class Tiers(Enum):
    """How many lengths of cloth hang from each other."""

    ONE = "one piece"
    """From the waist to the hem."""

    TWO = "two tiers"
    THREE = "three tiers"
    FOUR = "four tiers"

    @property
    def count(self) -> int:
        return list(Tiers).index(self) + 1


def tier_word(k: int) -> str:
    """What a gathered skirt of so many tiers, or of more, provides."""
    return f"tier {k} of gathered cloth"


_NAMES = {2: "Second tier", 3: "Third tier", 4: "Fourth tier"}

TIERS = ("T2", "T3", "T4")
"""Codes of the tiers below the first."""


class GatheredSkirt(Feature):
    """Gathered skirt."""

    kind: Literal["gathered skirt"] = "gathered skirt"
    title: ClassVar[str] = "Gathered skirt"
    sentence: ClassVar[str] = (
        "A [gathered skirt] of {tiers}, {length} long from the waist, {gathers} times "
        "its waist wide, with {waist_ease} of ease at the waist."
    )
    page: ClassVar[int] = 0
    pins: ClassVar[tuple[Pin, ...]] = (
        Pin("length", ("SF",), ("hem", "cf"), (0.0, 1.0)),
    )
    pieces: ClassVar[tuple[About, ...]] = (
        *HALVES,
        *(About(c, Place.PANEL, ("tiers",), {"hem": skirt_hem}) for c in TIERS),
    )
    seams: ClassVar[Mapping[str, str]] = {
        **SEAMS,
        "S106": "seam above a tier of a tiered skirt",
        "S107": "side of a tier",
    }
    gives: ClassVar[frozenset[str]] = frozenset(
        {"block", "skirt block", "gathered waist", "waist", "level hem"}
    )
    clashes: ClassVar[dict[str, str]] = ONE_BLOCK
    makes_up: ClassVar[dict[str, str]] = StraightSkirt.makes_up

    length: Annotated[
        Length | None,
        Number(
            "L",
            "L",
            "length of the skirt from the waist",
            _SRC,
            65.0,
            26.0,
            20.0,
            125.0,
            (35.0, 110.0),
        ),
    ] = None
    gathers: Annotated[
        Ratio | None,
        Number(
            "g",
            "g",
            "gathered width to finished width",
            _SRC,
            2.0,
            None,
            1.1,
            4.0,
            (1.5, 3.0),
            Kind.RATIO,
        ),
    ] = None
    tier_gathers: Annotated[
        Ratio | None,
        Number(
            "g2",
            "g2",
            "width of a tier to that of the one above",
            _SRC,
            1.5,
            None,
            1.1,
            3.0,
            (1.3, 2.0),
            Kind.RATIO,
        ),
    ] = None
    tiers: Tiers = Tiers.ONE
    waist_ease: Annotated[Length | None, StraightSkirt.numbers()["waist_ease"]] = None

    def provides(self) -> frozenset[str]:
        tiers = {tier_word(k) for k in range(1, self.tiers.count + 1)}
        whole = self.tiers is Tiers.ONE  # the side of a tier is too short
        return self.gives | tiers | ({"pocket in the side"} if whole else set())

    def tables(self) -> tuple[RuleTable, ...]:
        return (ROUND_WAIST, GATHERED, _COUNTED[self.tiers])

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.BLOCK, "the gathered skirt", draft_gathered),)

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        return (*skirt_seams(t, n), *_tiers(t, n))

    def joints(self, sheet: Sheet, n: Numbers, words: Words) -> Iterable[Joint]:
        return skirt_joints(sheet)

    def cuts(self, sheet: Sheet) -> Mapping[str, Cuts]:
        return {c: Cuts("2 on fold", 2) for c in sheet.pieces if c in TIERS}

    def notes(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[str]:
        w = n.W + n.Ew
        if "casing" not in n:
            yield self._gathered(n, fmt)
        for k in range(2, round(n.tiers) + 1):
            above, wide = (tier_length(w, n.g, n.g2, i) for i in (k - 1, k))
            yield f"{_NAMES[k]}: gather {fmt(wide)} into {fmt(above)}."

    def _gathered(self, n: Numbers, fmt: Callable[[float], str]) -> str:
        w = n.W + n.Ew
        return f"Gather {fmt(w * n.g)} of skirt into {fmt(w)} of waist."

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        if "casing" not in n:
            yield gathers(self._gathered(n, fmt), (n.W + n.Ew) * n.g)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        if self.tier_gathers is not None and self.tiers is Tiers.ONE:
            yield Finding(
                "Q5",
                Severity.NOTE,
                "A skirt in one piece has no use for the width of a tier (g2).",
                "g2",
                "Leave it out, or cut the skirt in tiers.",
            )
        yield from over_hip(n, (n.W + n.Ew) * n.g, "g")
        yield from stride(n, n.hem_S, opens=False)
        yield from fits_cloth(n, sheet)


def _counted(tiers: Tiers) -> RuleTable:
    page = RuleTable(f"a skirt of {tiers.value}")

    @page.rule(
        "tiers",
        "tiers",
        source="the order",
        key="tiers",
        kind=Kind.COUNT,
        formula="chosen",
    )
    def _count() -> float:
        return tiers.count

    return page


_COUNTED = {tiers: _counted(tiers) for tiers in Tiers}


def draft_gathered(d: Drafting) -> None:
    """Front (SF) and back (SB) as rectangles, and a strip for each tier below (T2 …)
    that serves front and back alike."""
    n = d.n
    count = round(n.tiers)
    deep = depths(n.L, count)
    kind = EdgeKind.FINISHED if count == 1 else EdgeKind.SEAM
    wide = n.w_SF * n.g
    for code, name, part in (
        (FRONT, "Skirt front", "skirt front"),
        (BACK, "Skirt back", "skirt back"),
    ):
        d.part = part
        _strip(d, code, name, wide, deep[0], kind, n.w_SF)
    for k in range(2, count + 1):
        d.part = "tiers"
        above, wide = wide, wide * n.g2
        kind = EdgeKind.FINISHED if k == count else EdgeKind.SEAM
        _strip(d, f"T{k}", _NAMES[k], wide, deep[k - 1], kind, above)


def _strip(
    d: Drafting,
    code: str,
    name: str,
    wide: float,
    deep: float,
    kind: EdgeKind,
    onto: float,
) -> None:
    """A rectangle, its centre on the fold: the back's at the left, all others' at the
    right."""
    a, b = Point(0.0, 0.0), Point(wide, 0.0)
    c, e = Point(wide, deep), Point(0.0, deep)
    hem = "hem" if kind is EdgeKind.FINISHED else "foot of tier"
    right, left = ("cf", "side") if code != BACK else ("side", "cb")
    kinds = {"cf": EdgeKind.FOLD, "cb": EdgeKind.FOLD, "side": EdgeKind.SEAM}
    edges: tuple[Edge, ...] = (
        straight("waist" if code in (FRONT, BACK) else "top", a, b),
        straight(right, b, c, kinds[right]),
        straight(hem, c, e, kind),
        straight(left, e, a, kinds[left]),
    )
    d.lay(
        Verb.OUTLINE,
        d.sheet.put(Piece(code, name, edges)),
        code,
        name.lower(),
        amounts=(
            ("wide", wide),
            ("deep", deep),
            ("gathered into {} of what is above", onto),
        ),
        detail="a rectangle, its centre on the fold",
    )


def _tiers(t: Chains, n: Numbers) -> list[Seam]:
    """Each tier gathered onto the one above, front and back; its side."""
    out: list[Seam] = []
    above = [("front", (FRONT, "foot of tier", False))]
    above.append(("back", (BACK, "foot of tier", True)))
    zip_left = n.z_S - t.sheet.length(BACK, "side") if "Zs" in t.sheet.points else 0.0
    for k in range(2, 5):
        code = f"T{k}"
        if code not in t.sheet.pieces:
            break
        right = t.chain((code, "top", True))
        tier = t.sheet.piece(code).name.lower()
        for half, run in above:
            onto = t.sheet.piece(run[0]).name.lower()
            left = t.chain(run)
            plan = t.length(right) - t.length(left)
            out.append(
                Seam(
                    f"S106.{k}" + ("b" if half == "back" else ""),
                    f"{tier} to the {onto}",
                    left,
                    right,
                    "centre",
                    "side",
                    Ease.about(plan, 0.15),
                )
            )
        side = t.chain((code, "side", True))
        long = t.length(side)
        places = [zip_left] if NOTCH_ROOM < zip_left < long - NOTCH_ROOM else []
        places += between(places[-1] if places else 0.0, long)
        zip_left -= long
        out.append(
            Seam(
                f"S107.{k}",
                f"side of the {tier}",
                side,
                side,
                "top",
                "foot",
                Ease.about(0.0, 0.05),
                notches=tuple(NotchPair(s, s) for s in places),
                kind=SeamKind.TWIN,
            )
        )
        above = [("above", (code, "foot of tier", False))]
    return out
