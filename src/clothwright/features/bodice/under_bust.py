"""The contour under the bust: the front drawn in at its panel seam or its waist dart.

A straight dart from the bust point bridges the hollow below the bust. Both its edges
are drawn hollow there, level with the crease, by half of the amount each; at the bust
point and at the waist they stay as they were (transformations 1.8). An empire seam has
its own contour.
"""

from collections.abc import Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.bodice_rules import clip
from clothwright.blocks.torso import FISH_EYE, fish_eye
from clothwright.blocks.torso_width import width_at
from clothwright.curves import Cubic, Path, Point, turned
from clothwright.features.base import Feature, Number, Rank, Shown, Stage
from clothwright.features.chains import on_table
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    Drafting,
    InnerLine,
    PaperError,
    Sheet,
    Verb,
    redraw,
)
from clothwright.rules import Kind, Numbers, RuleTable
from clothwright.units.fields import Length

_SRC = "transformations 1.8"

USUAL, MOST = 1.5, 2.5
"""Taken in before the scale of the cup, and at most, each half, cm (1.0 to 2.5)."""

ROOM = 2.0
"""A bodice is so much wider under the bust than the body, cm (our own)."""

LEAST_BELOW = 3.0
"""The crease lies at least so far above the waist, cm (our own: else no line runs in
and out again)."""

_BEGINS = 0.65
"""The hollow begins so far up from the crease to the bust point, a share (our own: the
side panel is rounded over the bust above that)."""

UNDER_BUST = RuleTable("contour under the bust")


@UNDER_BUST.rule(
    "cu",
    "taken in under the bust, each half",
    key="cu",
    source=_SRC,
    formula=f"{USUAL:g} cm·(0.6 + 0.1·c), at most {MOST:g} cm",
    low=0.0,
    high=3.5,
)
def _amount(c: float) -> float:
    return min(MOST, USUAL * clip(0.6 + 0.1 * c, 0.6, 1.8))


@UNDER_BUST.rule(
    "yU",
    "level of the crease under the bust",
    key="y_U",
    source="measures BUB",
    formula="yBP + BUB",
)
def _level(y_BP: float, BUB: float) -> float:
    return y_BP + BUB


@UNDER_BUST.rule(
    "least U",
    "least girth of the bodice under the bust",
    key="least_U",
    source=_SRC,
    formula=f"UB + {ROOM:g} cm",
    kind=Kind.LENGTH,
)
def _least(UB: float) -> float:
    return UB + ROOM


class UnderBust(Feature):
    """The front drawn in under the bust."""

    kind: Literal["under-bust contour"] = "under-bust contour"
    title: ClassVar[str] = "Contour under the bust"
    sentence: ClassVar[str] = (
        "[Under the bust] each front is drawn in by {amount} at its panel seam or dart."
    )
    shows: ClassVar[Shown] = {"cu": ("FC.panel", "F.leg cf")}
    gives: ClassVar[frozenset[str]] = frozenset({"under-bust contour"})
    needs: ClassVar[Mapping[str, str]] = {
        "front panels": "the front is drawn in at a seam or a dart: add a front "
        "princess line or a side dart"
    }
    clashes: ClassVar[dict[str, str]] = {
        "empire seam": "an empire seam draws the front in itself; set its front there",
        "tent": "a tent hangs loose below the bust; leave one of the two off",
        "laid waist dart": "a waist that is gathered hangs loose below the bust; lead "
        "the bust dart there as a dart, or leave the contour off",
        "waist dart led on": "the waist dart is closed into the corner of the centre "
        "front, and no seam is left under the bust; leave one of the two off",
    }

    amount: Annotated[
        Length | None,
        Number(
            "cu",
            "cu",
            "taken in under the bust, each half",
            _SRC,
            low=0.0,
            high=3.5,
            usual=(1.0, 2.5),
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (UNDER_BUST,)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.UNDER_BUST, "the contour under the bust", _draw_in),)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        kept = sheet.lines.get(_KEPT)
        if kept is None:
            yield Finding(
                "UB1",
                Severity.NOTE,
                "The front waist takes in nothing at a dart, so nothing is drawn in "
                "under the bust.",
                "cu",
                "",
                {"cu": n.cu},
            )
            return
        round_it = 2 * kept.length
        if round_it < n.least_U - 0.05:
            yield Finding(
                "UB2",
                Severity.WARN if round_it > n.least_U - ROOM else Severity.REFUSE,
                f"Under the bust the bodice measures {round_it:.1f} cm; "
                f"{n.least_U:.1f} cm at least is wanted.",
                "cu",
                "Take in less there (cu), or measure UB and BUB again.",
                {"is": round_it, "least": n.least_U},
            )


_KEPT = "half width under the bust"
"""Name of the line that keeps how wide a half bodice is there."""


def _draw_in(d: Drafting) -> None:
    n = d.n
    d.part = "front"
    if n.yW - n.y_U < LEAST_BELOW:
        raise PaperError(
            f"the crease under the bust (BUB) lies only {max(0.0, n.yW - n.y_U):.1f} "
            f"cm above the waist; {LEAST_BELOW:g} cm must stay: measure BUB and NBP "
            "again, or leave the contour off"
        )
    sheet = d.sheet
    drawn: list[Path] = []
    dart = fish_eye(sheet, "F")
    if dart is not None:
        new = _hollow_dart(dart, n)
        lines = sheet.piece("F").with_lines(InnerLine(FISH_EYE, new))
        sheet = sheet.put(lines)
        drawn.append(new)
    for code, name in _EDGES:
        if on_table(sheet, code, name):
            edge = sheet.edge(code, name)
            new = _hollow(edge.path, n)
            sheet = redraw(sheet, code, [name], [edge.along(new)])
            drawn.append(new)
    if not drawn:
        return
    where = "FC.panel, FS.panel" if "FC" in sheet.pieces else "F"
    what = "both edges" if dart is None else "both upper edges of the fish-eye dart"
    half = width_at(sheet, n.y_U)
    kept = Path.line(Point(0.0, n.y_U), Point(half, n.y_U))
    d.lay(
        Verb.REDRAW,
        sheet.drawn(**{_KEPT: kept}),
        where,
        f"{what} drawn hollow under the bust, half of the amount each",
        amounts=(
            ("taken in there in all", "cu"),
            ("below BP", n.y_U - n.y_BP),
        ),
        detail="running out towards the bust point and at the waist",
        lines=tuple(drawn),
        frm=("BP",),
    )


_EDGES = (("FC", "panel"), ("FS", "panel"), ("F", "leg cf"), ("F", "leg side"))
"""Edges that are drawn in: of both panels, or of the waist dart."""


def _hollow_dart(dart: Path, n: Numbers) -> Path:
    """A fish-eye dart, from its upper end round, drawn wider at the crease: its upper
    edges run out there, away from each other."""
    first, *rest, last = dart.segments
    left_first = first.end.x < last.start.x
    down = _hollow(Path((first,)), n, 1.0 if left_first else -1.0)
    up = _hollow(Path((last,)), n, 1.0 if left_first else -1.0)
    return down + Path(tuple(rest)) + up


def _hollow(path: Path, n: Numbers, way_in: float = 1.0) -> Path:
    """An edge drawn in at the crease, into its piece, which lies on its right, or with
    `way_in` −1 on its left."""
    hits = path.meets(_level_line(n.y_U))
    if not hits:
        raise PaperError(
            "the crease under the bust (BUB) lies above the end of the front waist "
            "dart: measure BUB again, or end the dart nearer to the bust point"
        )
    at = hits[0][0]
    below = [s for s, _ in path.meets(_level_line(n.yW))]
    upwards = path.start.y > path.end.y
    waist = below[0] if below else 0.0 if upwards else path.length
    room = path.length - at if upwards else at
    reach = min(room, _BEGINS * (n.y_U - n.y_BP))
    top = at + reach if upwards else at - reach
    frm, to = sorted((waist, top))
    way = path.direction_at_length(at)
    middle = path.at_length(at) + turned(way, 90.0) * (way_in * n.cu / 2)
    a, b = path.at_length(frm), path.at_length(to)
    first, last = (at - frm) * _HANDLE, (to - at) * _HANDLE
    u, v = path.direction_at_length(frm), path.direction_at_length(to)
    curves = Path(
        (
            Cubic(a, a + u * first, middle - way * first, middle),
            Cubic(middle, middle + way * last, b - v * last, b),
        )
    )
    if frm > _CRUMB:
        curves = path.between(0.0, frm).pinned(path.start, a) + curves
    if path.length - to > _CRUMB:
        curves = curves + path.between(to, path.length).pinned(b, path.end)
    return curves


_HANDLE, _CRUMB = 0.4, 0.01
"""Handle of the curves, share of their length; what is shorter is no line, cm."""


def _level_line(y: float) -> Path:
    return Path.line(Point(-60.0, y), Point(200.0, y))
