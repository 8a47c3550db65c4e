"""Fly of trousers: the right front laps over the left (transformations §7)."""

import math
from collections.abc import Callable, Iterable, Iterator, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.trousers import FRONT
from clothwright.curves import (
    Cubic,
    Line,
    Path,
    Point,
    degrees_between,
    from_pair,
    mirror_in,
    turned,
)
from clothwright.features.about import About, Place
from clothwright.features.base import Cuts, Feature, Number, Rank, Stage
from clothwright.features.chains import Chains
from clothwright.features.notions import Article, Notion
from clothwright.features.openings.openings import too_short
from clothwright.features.operations import Operation
from clothwright.features.roles import Role
from clothwright.features.skirts.waistband import BAND
from clothwright.features.trousers.trouser_sewing import fly_operations
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    Drafting,
    Ease,
    Edge,
    EdgeKind,
    InnerLine,
    Piece,
    Seam,
    Sheet,
    Verb,
    redraw,
    straight,
)
from clothwright.rules import Given, Hand, Kind, Numbers, RuleTable
from clothwright.units import Unit
from clothwright.units.fields import Length

_SRC = "transformations §7"

FACING, SHIELD = "FL", "SH"
"""Codes of the pieces."""

BELOW = 1.5
"""The shield reaches so far below the end of the fly, cm (common practice)."""

_TOPSTITCH = 1.0
"""The fly is stitched so far inside the edge of its facing, cm (common practice)."""

_STRAIGHT = 1.0
"""The fly ends so far above the crotch curve, cm: a zip lies straight."""

_MOST_BENT = 12.0
"""A fly that bends by more is none: its zip and its facing would not lie, degrees (our
own)."""

_PASSES = 0.5
"""The fly is so much longer than it must be for the waist to pass the hip, cm."""

FLY = RuleTable("fly")


@FLY.rule(
    "zf",
    "length of the fly from the waist",
    source=_SRC,
    key="z_fly",
    formula="17 cm, or what the waist needs to pass the hip, but ending 1 cm above the "
    "crotch curve",
    low=9.0,
    high=26.0,
)
def _length(
    BRe: float, cf_in: float, cf_down: float, H: float, W: float, Ew: float
) -> float:
    down = BRe * 2 / 3 - cf_down
    passing = (H - W - Ew) / 2 + _PASSES
    return min(max(17.0, passing), math.hypot(down, cf_in) - _STRAIGHT)


class Fly(Feature):
    """Fly with a zip in the centre front."""

    kind: Literal["fly"] = "fly"
    title: ClassVar[str] = "Fly"
    sentence: ClassVar[str] = (
        "They close with a [fly] in the centre front, {length} long and {width} wide."
    )
    page: ClassVar[int] = 2
    pieces: ClassVar[tuple[About, ...]] = (
        About(FRONT, shown=("fly",)),
        About(
            FACING,
            Place.FLY,
            ("fly",),
            edges={"top": Role.WAIST},
        ),
        About(
            SHIELD,
            Place.FLY,
            ("fly",),
            edges={"top": Role.WAIST, "top under": Role.WAIST},
        ),
    )
    seams: ClassVar[Mapping[str, str]] = {
        "S43": "fly to its facing",
        "S44": "fly to its shield",
        "S45": "waistband on the shield of a fly",
    }
    gives: ClassVar[frozenset[str]] = frozenset({"trouser opening", "fly"})
    needs: ClassVar[dict[str, str]] = {"trouser block": "a fly is for trousers"}
    clashes: ClassVar[dict[str, str]] = {"trouser opening": "trousers open once"}

    length: Annotated[
        Length | None,
        Number(
            "z_fly",
            "zf",
            "length of the fly from the waist",
            _SRC,
            low=9.0,
            high=26.0,
            usual=(14.0, 20.0),
        ),
    ] = None
    width: Annotated[
        Length | None,
        Number(
            "w_fly",
            "wf",
            "width of the fly facing",
            _SRC,
            4.5,
            1.75,
            2.5,
            6.0,
            (3.5, 5.0),
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (FLY,)

    def given(self, unit: Unit) -> Iterable[Given]:
        yield from super().given(unit)
        value = 1.5 * 2.54 if unit is Unit.IN else 3.75
        yield Given(
            "lap_band",
            "lap",
            "underlap of the waistband and width of the fly shield",
            Kind.LENGTH,
            value,
            Hand.DEFAULT,
            _SRC,
        )

    def stages(self) -> tuple[Stage, ...]:
        return (
            Stage(Rank.CLOSURE, "the end of the fly", _mark),
            Stage(Rank.SKIRT, "the fly's facing and shield", _pieces),
        )

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        return _fly_seams(t, n)

    def cuts(self, sheet: Sheet) -> Mapping[str, Cuts]:
        return {
            FACING: Cuts("1, right side up", 1, ("shell", "interlining")),
            SHIELD: Cuts("1, right side up", 1, ("shell",)),
        }

    def notes(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[str]:
        yield (
            "Fly, right over left: the facing is "
            "sewn to the right front and turned in, the shield with the zip to the "
            f"left; topstitch {fmt(n.w_fly - _TOPSTITCH)} from the edge. Sew the "
            "crotch from the notch at the end of the fly."
        )

    def notions(self, n: Numbers, sheet: Sheet) -> Iterable[Notion]:
        long = sheet.length(FRONT, "fly")
        yield Notion(Article.TROUSER_ZIP, 1, "for the fly", length=long)

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        return fly_operations(n, sheet, fmt)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        straight_part = _straight_part(n)
        if n.z_fly > straight_part - 0.25:
            fly = sheet.edge(FRONT, "fly").path
            bend = degrees_between(fly.start_direction, fly.end_direction)
            yield Finding(
                "Y1",
                Severity.REFUSE if bend > _MOST_BENT else Severity.WARN,
                f"The fly is {n.z_fly:.1f} cm long and reaches into the crotch curve, "
                f"which begins {straight_part:.1f} cm below the waist.",
                "zf",
                "Make the fly (zf) shorter.",
                {"zf": n.z_fly, "straight": straight_part},
            )
        yield from too_short(n, n.z_fly, "fly", "zf")


def _straight_part(n: Numbers) -> float:
    """The centre front from the waist to where the crotch curve begins, cm."""
    return math.hypot(n.BRe * 2 / 3 - n.cf_down, n.cf_in)


def _mark(d: Drafting) -> None:
    """The end of the fly divides the centre front from the crotch seam."""
    d.part = "fly"
    path = d.sheet.edge(FRONT, "crotch").path
    top, rest = path.split_at_length(d.n.z_fly)
    d.found(
        "Ef",
        rest.start,
        "end of the fly",
        frm=("Cf",),
        amounts=(("from Cf down the centre front", "z_fly"),),
    )
    edges = (Edge("fly", top), Edge("crotch", rest))
    d.lay(
        Verb.REDRAW,
        redraw(d.sheet, FRONT, ["crotch"], edges),
        f"{FRONT}.fly",
        "centre front, divided at the end of the fly",
        frm=("Ef",),
        lines=(top,),
    )


def _pieces(d: Drafting) -> None:
    n = d.n
    d.part = "fly"
    front = d.sheet.piece(FRONT)
    fly, waist = front.edge("fly").path, front.edge("waist").path
    a, b = fly.start, fly.end
    top = waist.between(waist.length - n.w_fly, waist.length)
    outer = _beside(fly, top.start, n.w_fly)
    over = mirror_in(a, b)
    plumb = from_pair(a, b, Point(0.0, 0.0), Point(0.0, fly.length))
    facing = Piece(
        FACING,
        "Fly facing",
        (
            Edge("top", top, EdgeKind.FINISHED),
            Edge("fly", fly),
            Edge("free", outer, EdgeKind.FINISHED),
        ),
    ).moved(plumb @ over)
    wide = n.w_fly - _TOPSTITCH
    stitched = _beside(fly, waist.at_length(waist.length - wide), wide)
    right = front.with_lines(InnerLine("topstitch the right front", stitched))
    d.lay(
        Verb.TRACE,
        d.sheet.put(facing, right),
        FACING,
        "facing of the fly from the front",
        amounts=(("wide", "w_fly"), ("long", fly.length)),
        detail="its free edge beside the centre front, rounded to Ef; turned over, "
        "since it lies face down on the right front; the topstitching is marked "
        "inside its edge",
        lines=(outer,),
    )
    wide, long = n.lap_band, fly.length + BELOW
    corner, end = Point(2 * wide, 0.0), Point(2 * wide, fly.length)
    foot, middle = Point(2 * wide, long), Point(wide, 0.0)
    left, done = Point(0.0, long), EdgeKind.FINISHED
    shield = Piece(
        SHIELD,
        "Fly shield",
        (
            straight("top under", Point(0.0, 0.0), middle, done),
            straight("top", middle, corner, done),
            straight("fly", corner, end),
            straight("fly below", end, foot, done),
            straight("free", foot, left, done),
            straight("fly under", left, Point(0.0, 0.0), done),
        ),
        lines=(InnerLine("fold", Path.line(Point(wide, long), middle)),),
    )
    d.lay(
        Verb.OUTLINE,
        d.sheet.put(shield),
        SHIELD,
        "fly shield",
        amounts=(("wide, to be folded to half", 2 * wide), ("long", long)),
        detail="straight; folded, it is as wide as the underlap of the waistband",
    )


def _beside(fly: Path, top: Point, wide: float) -> Path:
    """A line `wide` beside the fly, from its end, which it rounds, straight up to the
    waist."""
    down = fly.end_direction
    inward, end = turned(down, 90), fly.end
    turn = top + down * (fly.length - 1.1 * wide)
    return Path(
        (
            Cubic(end, end + inward * (0.5 * wide), turn + down * (0.6 * wide), turn),
            Line(turn, top),
        )
    )


def _fly_seams(t: Chains, n: Numbers) -> Iterator[Seam]:
    """Each front to what lies behind its edge; the shield to the band above."""
    left = t.chain((FRONT, "fly", False))
    even = Ease.about(0.0, 0.1)
    for code, name, piece, backward in (
        ("S43", "fly, right front to its facing", FACING, True),
        ("S44", "fly, left front to its shield", SHIELD, False),
    ):
        right = t.chain((piece, "fly", backward))
        yield Seam(code, name, left, right, "waist", "end of the fly", even)
    top = t.chain((SHIELD, "top", False))
    under = t.chain((BAND, "underlap", False), ("WCF", "underlap", False))
    if top and under:
        over = Ease.about(n.lap_band - t.length(top), 0.1)
        says = "waistband on the fly shield"
        yield Seam("S45", says, top, under, "centre front", "end", over)
