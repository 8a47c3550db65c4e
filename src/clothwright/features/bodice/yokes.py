"""Yokes: the upper part of front or back cut off and sewn on again as its own piece
(transformations 1.5).

The yoke is cut when everything else is drafted, so that what is sewn to the half is
sewn to both its parts; facings and linings are traced from the half as it was.
"""

from collections.abc import Iterable
from typing import Annotated, ClassVar, Literal

from clothwright.curves import Point, distance
from clothwright.features.base import Feature, Number, Rank, Stage
from clothwright.features.bodice.back_dart import BLADE_LOW
from clothwright.features.bodice.yoke_cut import (
    BACK,
    FRONT,
    Yoke,
    divide,
    divide_at_dart,
)
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    Drafting,
    PaperError,
    Sheet,
)
from clothwright.rules import Numbers, RuleTable
from clothwright.units.fields import Length

_SRC = "transformations 1.5"

LEAST_DEEP = 2.5
"""What a yoke has at least between the neck and its seam at the centre, cm (our own
choice: two allowances and a hand's hold)."""

CLEAR_OF_BP = 4.0
"""A front yoke ends at least so far above the bust point, cm (our own choice: the dart
below it needs length)."""

MOST_BEYOND = 2.5
"""A bowed seam of a yoke goes beyond both its ends by so much unremarked, cm (our own
choice: more is a wave from armhole to armhole)."""

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


class FrontYoke(Feature):
    """Yoke of the front."""

    kind: Literal["front yoke"] = "front yoke"
    title: ClassVar[str] = "Front yoke"
    sentence: ClassVar[str] = (
        "The front has a [yoke], its seam {depth} below the shoulder at the centre."
    )
    gives: ClassVar[frozenset[str]] = frozenset({"front yoke"})
    needs: ClassVar[dict[str, str]] = {
        "bodice": "a front yoke is drawn on a bodice block; add one"
    }
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
        divide(d, FRONT, Point(n.X, y))

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from _narrow(sheet, "FY")
        yield from _waving(n, sheet, FRONT)


class BackYoke(Feature):
    """Yoke of the back."""

    kind: Literal["back yoke"] = "back yoke"
    title: ClassVar[str] = "Back yoke"
    sentence: ClassVar[str] = "The back has a [yoke], its seam {depth} below the nape."
    gives: ClassVar[frozenset[str]] = frozenset({"back yoke"})
    needs: ClassVar[dict[str, str]] = {
        "bodice": "a back yoke is drawn on a bodice block; add one"
    }
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
            divide_at_dart(d, level=level)
        else:
            divide(d, BACK, Point(0.0, n.Yb))

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from _narrow(sheet, "BY")
        yield from _waving(n, sheet, BACK)
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


def _waving(n: Numbers, sheet: Sheet, y: Yoke) -> Iterable[Finding]:
    """A seam square to the centre and bowed by more than its rise goes beyond both its
    ends and back."""
    seam = sheet.edge(y.piece, "yoke").path
    ends = seam.start.y, seam.end.y
    _, top, _, low = seam.bounds()
    beyond = max(low - max(ends), min(ends) - top)
    if beyond > MOST_BEYOND and n[y.bow]:
        rise, bow = y.slope.replace("_", " "), y.bow.replace("_", " ")
        yield Finding(
            "Y3",
            Severity.WARN,
            f"The seam of the {y.half} yoke waves: it goes {beyond:.1f} cm beyond both "
            "its ends and comes back.",
            bow,
            f"Bow it less ({bow}), or give it more rise to the armhole ({rise}).",
            {"beyond": beyond},
        )
