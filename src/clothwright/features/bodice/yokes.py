"""Yokes: the upper part of front or back cut off and sewn on again as its own piece
(transformations 1.5).

The yoke is cut when everything else is drafted, so that what is sewn to the half is
sewn to both its parts; facings and linings are traced from the half as it was.
"""

from collections.abc import Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.curves import Point, distance
from clothwright.features.base import Feature, Number, Rank, Stage
from clothwright.features.bodice.back_dart import BLADE_LOW
from clothwright.features.bodice.yoke_cut import (
    BACK,
    FRONT,
    Yoke,
    divide_at_dart,
)
from clothwright.features.bodice.yoke_panels import (
    LEAST_OF_SEAM,
    PANEL_IN_YOKE,
    YokePanels,
    crosses,
    divide_half,
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
    seams: ClassVar[Mapping[str, str]] = PANEL_IN_YOKE
    gives: ClassVar[frozenset[str]] = frozenset({"front yoke"})
    needs: ClassVar[dict[str, str]] = {
        "bodice": "a front yoke is drawn on a bodice block; add one"
    }
    clashes: ClassVar[dict[str, str]] = {
        "front yoke": "a front has one yoke; leave one off",
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
    panels: YokePanels = YokePanels.TAPED

    def said(self) -> str:
        return _said(self.sentence, self.panels)

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
        divide_half(d, FRONT, Point(n.X, y), self.panels)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from _narrow(sheet, FRONT)
        yield from _waving(n, sheet, FRONT)
        yield from _near_panel(sheet, FRONT)
        yield from _no_panels(sheet, FRONT, self.panels)


class BackYoke(Feature):
    """Yoke of the back."""

    kind: Literal["back yoke"] = "back yoke"
    title: ClassVar[str] = "Back yoke"
    sentence: ClassVar[str] = "The back has a [yoke], its seam {depth} below the nape."
    seams: ClassVar[Mapping[str, str]] = PANEL_IN_YOKE
    gives: ClassVar[frozenset[str]] = frozenset({"back yoke"})
    needs: ClassVar[dict[str, str]] = {
        "bodice": "a back yoke is drawn on a bodice block; add one"
    }
    clashes: ClassVar[dict[str, str]] = {
        "back yoke": "a back has one yoke; leave one off",
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
    panels: YokePanels = YokePanels.TAPED

    def said(self) -> str:
        return _said(self.sentence, self.panels)

    def tables(self) -> tuple[RuleTable, ...]:
        return (BACK_YOKE,)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.YOKE, "the back yoke", self._apply),)

    def _apply(self, d: Drafting) -> None:
        n = d.n
        low = d.line("neck back").bounds()[3]
        at_dart = "B" in d.sheet.pieces and d.sheet.piece("B").has(BLADE_LOW)
        level = self.depth is None and (at_dart or _seam_takes_dart(d.sheet, n))
        deep = d["Ps"].y if level else n.Yb
        if deep - low < LEAST_DEEP:
            raise PaperError(
                f"the back yoke would be only {max(0.0, deep - low):.1f} cm deep below "
                f"the neck; {LEAST_DEEP:g} cm must stay: make the yoke (Yb) deeper, or "
                "the neck (Db) less deep"
            )
        if at_dart:
            divide_at_dart(d, level=level)
        else:
            divide_half(d, BACK, Point(0.0, deep), self.panels)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from _narrow(sheet, BACK)
        yield from _waving(n, sheet, BACK)
        yield from _near_panel(sheet, BACK)
        yield from _no_panels(sheet, BACK, self.panels)
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


def _said(sentence: str, panels: YokePanels) -> str:
    if panels is YokePanels.TAPED:
        return sentence
    return f"{sentence[:-1]}, over panels that are {{panels}} in the yoke too."


def _seam_takes_dart(sheet: Sheet, n: Numbers) -> bool:
    """True where a panel line from the shoulder has taken the shoulder dart up."""
    return n.sd > 0 and "BS" in sheet.pieces and sheet.piece("BS").has("shoulder")


def _narrow(sheet: Sheet, y: Yoke) -> Iterable[Finding]:
    """The seam keeps clear of the ends of the armhole."""
    code = y.new[0]
    parts = [
        [p.edge("armhole").length for p in pieces if p.has("armhole")]
        for pieces in (
            [p for c, p in sheet.pieces.items() if c in (code, f"{code}S")],
            [p for c, p in sheet.pieces.items() if c in _LOWER[y.half]],
        )
    ]
    least = min(sum(lengths) for lengths in parts)
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


_LOWER = {"front": ("F", "FC", "FS"), "back": ("B", "BC", "BS")}
"""What lies below a yoke."""


def _near_panel(sheet: Sheet, y: Yoke) -> Iterable[Finding]:
    """A seam that ends on the centre panel's armhole keeps clear of the panel seam."""
    centre = f"{y.piece}C"
    if centre not in sheet.pieces or not sheet.piece(centre).has("armhole"):
        return
    rest = sheet.length(centre, "armhole")
    if rest < LEAST_OF_SEAM:
        yield Finding(
            "Y4",
            Severity.WARN,
            f"The seam of the {y.half} yoke ends only {rest:.1f} cm above the panel "
            "seam: both make a lump in the armhole.",
            y.key,
            f"Make the yoke ({y.key}) less deep, or so much deeper that it goes over "
            "the panel seam.",
            {"rest": rest},
        )


def _no_panels(sheet: Sheet, y: Yoke, panels: YokePanels) -> Iterable[Finding]:
    """A note on a panel seam in a yoke that goes over none."""
    if panels is YokePanels.SEAMED and not crosses(sheet, y):
        yield Finding(
            "Y5",
            Severity.NOTE,
            f"The {y.half} yoke goes over no panel seam: none is sewn in it.",
            y.key,
            "Leave panels out of the yoke, or make it deeper below a princess line.",
        )


def _waving(n: Numbers, sheet: Sheet, y: Yoke) -> Iterable[Finding]:
    """A seam square to the centre and bowed by more than its rise goes beyond both its
    ends and back."""
    kept = sheet.lines.get(f"{y.half} yoke, seam")
    seam = kept or sheet.edge(y.new[0], "yoke").path
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
