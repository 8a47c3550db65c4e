"""Yokes: the upper part of front or back cut off and sewn on again as its own piece
(transformations 1.5).

The yoke is cut when everything else is drafted, so that what is sewn to the half is
sewn to both its parts; facings and linings are traced from the half as it was.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Annotated, ClassVar, Literal

from clothwright.curves import Path, Point, direction, distance, mix
from clothwright.features.back_dart import BLADE_HIGH, BLADE_LOW
from clothwright.features.base import Feature, Number, Rank, Stage
from clothwright.features.grain import longest_line
from clothwright.features.hand_seams import off_corners
from clothwright.features.panel_lines import corner, rounded
from clothwright.features.wholes import keep_whole
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    CornerAfter,
    Drafting,
    Edge,
    NotchPair,
    On,
    PaperError,
    Piece,
    Sheet,
    Verb,
    cut,
    redraw,
)
from clothwright.rules import Numbers, RuleTable
from clothwright.truing import Fillet
from clothwright.units.fields import Length

_SRC = "transformations 1.5"

LEAST_DEEP = 2.5
"""What a yoke has at least between the neck and its seam at the centre, cm (our own
choice: two allowances and a hand's hold)."""

CLEAR_OF_BP = 4.0
"""A front yoke ends at least so far above the bust point, cm (our own choice: the dart
below it needs length)."""

FRONT_YOKE = RuleTable("front yoke")
BACK_YOKE = RuleTable("back yoke")


@FRONT_YOKE.rule(
    "Yf",
    "seam of the front yoke at the centre, from the level of hf",
    key="Yf",
    source=_SRC,
    formula="7 cm above the bust line",
    low=5.0,
    high=30.0,
)
def _front_depth(yB: float, y_hf: float) -> float:
    return yB - 7.0 - y_hf


@BACK_YOKE.rule(
    "Yb",
    "seam of the back yoke at the centre, from the nape",
    key="Yb",
    source=_SRC,
    formula="9 cm",
    low=4.0,
    high=25.0,
)
def _back_depth() -> float:
    return 9.0


@dataclass(frozen=True)
class _Yoke:
    """A yoke of one half, by the names of its pieces and numbers."""

    half: str
    piece: str
    new: tuple[str, str]
    centre: str
    slope: str
    bow: str
    marks: tuple[str, str]
    """Names of its ends: at the centre, on the armhole."""


_FRONT = _Yoke(
    "front", "F", ("FY", "Front yoke"), "cf", "Yf_slope", "Yf_bow", ("Yc", "Ya")
)
_BACK = _Yoke(
    "back", "B", ("BY", "Back yoke"), "cb", "Yb_slope", "Yb_bow", ("Ycb", "Yab")
)


def _slope(key: str) -> Number:
    return Number(
        key,
        key.replace("_", " "),
        "end of the yoke's seam on the armhole above its end at the centre",
        _SRC,
        0.0,
        0.0,
        -6.0,
        8.0,
        (-2.0, 4.0),
    )


def _bow(key: str) -> Number:
    return Number(
        key,
        key.replace("_", " "),
        "hollow of the yoke's seam at its middle, below the straight",
        _SRC,
        0.0,
        0.0,
        -4.0,
        4.0,
        (-2.0, 2.0),
    )


def _divide(d: Drafting, y: _Yoke, centre: Point) -> None:
    """Cut the yoke off along a line from the centre to the armhole."""
    d.part = y.half
    p = d.sheet.piece(y.piece)
    arm, mid = p.edge("armhole").path, p.edge(y.centre).path
    level = Point(centre.x, centre.y - d.n[y.slope])
    across = Path.line(Point(level.x - 60.0, level.y), Point(level.x + 60.0, level.y))
    hits = [s for s, _ in arm.meets(across)]
    on_centre = mid.nearest(centre)[1] < 0.05
    if not hits or not on_centre:
        raise PaperError(
            f"the seam of the {y.half} yoke misses the "
            f"{'armhole' if on_centre else 'centre below the neck'}: make the yoke "
            "deeper or less deep, or give its seam another slope"
        )
    c = d.found(
        y.marks[0],
        mid.at(mid.nearest(centre)[0]),
        f"seam of the {y.half} yoke at the centre",
        amounts=((_FROM[y.half], _KEY[y.half]),),
    )
    a = d.found(
        y.marks[1],
        arm.at_length(hits[0]),
        f"seam of the {y.half} yoke on the armhole",
        amounts=(("above the level of the centre", y.slope),),
    )
    line = _line(a, c, d.n[y.bow])
    start, end = On("armhole", hits[0]), On(y.centre, mid.length_to_point(c))
    into = (y.new, (p.code, p.name))
    if y.half == "back":  # whose armhole runs down and whose centre runs up
        line, start, end = line.reversed(), end, start
    sheet = cut(
        keep_whole(d.sheet, p.code),
        p.code,
        line,
        start,
        end,
        edge="yoke",
        seam=f"{y.half} yoke",
        seam_name=f"{y.half} yoke",
        into=into,
    )
    seam, at = sheet.seam(f"{y.half} yoke"), 0.4 * line.length
    sheet = sheet.sew(replace(seam, notches=(NotchPair(at, at, _TICKS[y.half]),)))
    sheet = sheet.put(*(_grained(sheet.piece(code), p) for code, _ in into))
    d.lay(
        Verb.CUT,
        off_corners(sheet, p.code),
        y.new[0],
        f"{y.half} yoke cut off from {y.marks[1]} to {y.marks[0]}",
        frm=y.marks,
        lines=(line,),
    )


def _divide_at_dart(d: Drafting, *, level: bool) -> None:
    """Cut the back yoke off along a line from the centre, level with the point of the
    shoulder dart or at the depth ordered, to that point, and on along the dart, which
    lies open on the armhole. Raises PaperError."""
    d.part = "back"
    if d.n[_BACK.bow]:
        raise PaperError(
            "the seam of a back yoke that takes the shoulder dart is straight to the "
            "point of the dart: make its bow 0, or set back_shoulder to ease"
        )
    p, ps = d.sheet.piece("B"), d["Ps"]
    cb, depth = p.edge("cb").path, ps.y if level else d.n.Yb
    c = d.found(
        "Ycb",
        cb.at(cb.nearest(Point(0.0, depth))[0]),
        "seam of the back yoke at the centre",
        amounts=((_FROM["back"], depth if level else "Yb"),),
        detail="level with Ps" if level else "",
    )
    line = Path.line(ps, c)
    sheet = cut(
        keep_whole(d.sheet, "B"),
        "B",
        line,
        CornerAfter(BLADE_HIGH),
        On("cb", cb.length_to_point(c)),
        edge="yoke",
        seam="back yoke",
        seam_name="back yoke",
        into=((p.code, p.name), _BACK.new),
    )
    lower, upper = sheet.piece("B"), sheet.piece("BY")
    below = _joined(lower.edge("yoke").path, lower.edge(BLADE_LOW).path)
    above = _joined(upper.edge(BLADE_HIGH).path, upper.edge("yoke").path)
    sheet = redraw(sheet, "B", ["yoke", BLADE_LOW], [Edge("yoke", below)])
    sheet = redraw(sheet, "BY", [BLADE_HIGH, "yoke"], [Edge("yoke", above)])
    arm = Edge("armhole", sheet.edge("BY", "armhole high").path)
    sheet = redraw(sheet, "BY", ["armhole high"], [arm])
    seam, at = sheet.seam("back yoke"), 0.4 * below.length
    sheet = sheet.sew(replace(seam, notches=(NotchPair(at, at, _TICKS["back"]),)))
    sheet = sheet.put(_grained(sheet.piece("B"), p), _grained(sheet.piece("BY"), p))
    d.lay(
        Verb.CUT,
        off_corners(sheet, "B"),
        "BY",
        "back yoke cut off from Ycb to Ps, and along the open dart to the armhole",
        frm=("Ycb", "Ps"),
        lines=(line,),
    )


def _joined(first: Path, second: Path) -> Path:
    return rounded(first, second, Fillet.of(corner(first, second)))


def _line(a: Point, c: Point, bow: float) -> Path:
    """The yoke's seam from the armhole to the centre: straight, or a curve that is so
    much lower at its middle and square to the centre."""
    if abs(bow) < 1e-6:
        return Path.line(a, c)
    beside = Point(mix(a, c, 1 / 3).x, a.y + 8 / 3 * bow)
    return Path.cubic(a, beside, mix(Point(a.x, c.y), c, 0.55), c)


_FROM = {"front": "down from the level of hf", "back": "down from the nape"}
_KEY = {"front": "Yf", "back": "Yb"}
_TICKS = {"front": 1, "back": 2}
"""Front and back are told apart by single and double notches (first garment 19)."""


def _grained(part: Piece, whole: Piece) -> Piece:
    """A part with the grain of the whole."""
    if whole.grain is None:
        return part
    return replace(part, grain=longest_line(part, direction(*whole.grain)))


class FrontYoke(Feature):
    """Yoke of the front."""

    kind: Literal["front yoke"] = "front yoke"
    title: ClassVar[str] = "Front yoke"
    sentence: ClassVar[str] = (
        "The front has a [yoke], its seam {depth} below the shoulder at the centre."
    )
    gives: ClassVar[frozenset[str]] = frozenset({"front yoke"})
    clashes: ClassVar[dict[str, str]] = {
        "front yoke": "a front has one yoke; leave one off",
        "front panel seam": "a yoke is cut from a front in one piece; take a side dart "
        'or a "bust dart" in place of the princess line',
        "upper bust dart": "the yoke's seam would cut the bust dart in two; lead the "
        'dart to the "yoke", to the waist or to the side',
    }

    depth: Annotated[
        Length | None,
        Number(
            "Yf",
            "Yf",
            "seam of the front yoke at the centre, from the level of hf",
            _SRC,
            low=5.0,
            high=30.0,
        ),
    ] = None
    slope: Annotated[Length | None, _slope("Yf_slope")] = None
    bow: Annotated[Length | None, _bow("Yf_bow")] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (FRONT_YOKE,)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.YOKE, "the front yoke", self._apply),)

    def _apply(self, d: Drafting) -> None:
        n = d.n
        y = n.y_hf + n.Yf
        low = d.line("neck front").bounds()[3]
        lowest = y - max(0.0, n.Yf_slope) + max(0.0, n.Yf_bow)
        if y - low < LEAST_DEEP:
            raise PaperError(
                f"the front yoke would be only {max(0.0, y - low):.1f} cm deep below "
                f"the neck; {LEAST_DEEP:g} cm must stay: make the yoke (Yf) deeper, or "
                "the neck (Df) less deep"
            )
        if max(y, lowest) > n.y_BP - CLEAR_OF_BP:
            raise PaperError(
                f"the front yoke reaches to {max(0.0, n.y_BP - y):.1f} cm above the "
                f"bust point; {CLEAR_OF_BP:g} cm must stay: make it (Yf) less deep"
            )
        _divide(d, _FRONT, Point(n.X, y))

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from _narrow(sheet, "FY")


class BackYoke(Feature):
    """Yoke of the back."""

    kind: Literal["back yoke"] = "back yoke"
    title: ClassVar[str] = "Back yoke"
    sentence: ClassVar[str] = "The back has a [yoke], its seam {depth} below the nape."
    gives: ClassVar[frozenset[str]] = frozenset({"back yoke"})
    clashes: ClassVar[dict[str, str]] = {
        "back yoke": "a back has one yoke; leave one off",
        "back panel seam": "a yoke is cut from a back in one piece; take a back waist "
        "dart in place of the princess line",
        "open back": "an open back leaves no paper for a yoke",
        "back neck dart": "the yoke's seam would cut the neck dart in two; set "
        'back_shoulder = "ease"',
    }

    depth: Annotated[
        Length | None,
        Number(
            "Yb",
            "Yb",
            "seam of the back yoke at the centre, from the nape",
            _SRC,
            low=4.0,
            high=25.0,
            usual=(8.0, 10.0),
        ),
    ] = None
    slope: Annotated[Length | None, _slope("Yb_slope")] = None
    bow: Annotated[Length | None, _bow("Yb_bow")] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (BACK_YOKE,)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.YOKE, "the back yoke", self._apply),)

    def _apply(self, d: Drafting) -> None:
        n = d.n
        low = d.line("neck back").bounds()[3]
        level = self.depth is None and d.sheet.piece("B").has(BLADE_LOW)
        deep = d["Ps"].y if level else n.Yb
        if deep - low < LEAST_DEEP:
            raise PaperError(
                f"the back yoke would be only {max(0.0, deep - low):.1f} cm deep below "
                f"the neck; {LEAST_DEEP:g} cm must stay: make the yoke (Yb) deeper, or "
                "the neck (Db) less deep"
            )
        if d.sheet.piece("B").has(BLADE_LOW):
            _divide_at_dart(d, level=level)
        else:
            _divide(d, _BACK, Point(0.0, n.Yb))

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from _narrow(sheet, "BY")
        if "Yab′" not in sheet.points:
            return
        wide = distance(sheet.points["Yab"], sheet.points["Yab′"])
        if not 0.6 - 0.05 <= wide <= 1.2 + 0.05:
            yield Finding(
                "Y2",
                Severity.WARN,
                f"The yoke's seam opens by {wide:.1f} cm at the armhole; 0.6 cm to "
                "1.2 cm is usual.",
                "sd",
                "Give the back shoulder dart another width (back_shoulder_dart).",
                {"wide": wide},
            )


def _narrow(sheet: Sheet, code: str) -> Iterable[Finding]:
    """The seam keeps clear of the ends of the armhole."""
    least = min(sheet.length(c, "armhole") for c in (code, code[0]))
    if least < 4.0:
        yield Finding(
            "Y1",
            Severity.WARN,
            f"The seam of the {sheet.piece(code).name.lower()} meets the armhole only "
            f"{least:.1f} cm from its end.",
            code,
            "Give it another depth, or another slope.",
            {"least": least},
        )
