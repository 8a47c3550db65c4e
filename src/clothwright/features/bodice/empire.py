"""The empire seam: front and back divided below the bust, the waist darts closed in the
midriff (transformations 1.5, 1.8).

Above the seam the darts stay and take in a little more than the block, so that the seam
lies close under the bust. It is cut when everything else is drafted, as a yoke is.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Annotated, ClassVar, Literal

from clothwright.curves import Path, Point, direction, distance, turned
from clothwright.features.base import Feature, Number, Rank, Stage
from clothwright.features.bodice.waist_rules import waist_curve
from clothwright.features.grain import grained_as
from clothwright.features.hand.hand_seams import off_corners
from clothwright.features.wholes import keep_whole
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    Drafting,
    Ease,
    Edge,
    NotchPair,
    On,
    PaperError,
    Piece,
    Run,
    Seam,
    Sheet,
    Verb,
    cut,
    redraw,
    tape,
)
from clothwright.rules import Numbers, RuleTable
from clothwright.units.fields import Length

_SRC = "transformations 1.5, 1.8"

BELOW_POINT, ABOVE_WAIST = 2.5, 4.0
"""The seam keeps so far below the points of the waist darts and above the waist, cm
(our own choice: what can be sewn)."""

EMPIRE = RuleTable("empire seam")


@EMPIRE.rule(
    "ue",
    "empire seam below the bust point",
    key="ue",
    source=_SRC,
    formula="BUB",
    low=4.0,
    high=14.0,
)
def _under_bust(BUB: float) -> float:
    return BUB


@dataclass(frozen=True)
class _Half:
    """A half by the names of its edges; legs and waists from the centre outwards."""

    half: str
    piece: str
    new: tuple[str, str]
    centre: str
    legs: tuple[str, str]
    waists: tuple[str, str]
    dart: str
    number: str
    ticks: int
    clockwise: bool
    """The loop meets the centre before the side."""


_FRONT = _Half(
    "front",
    "F",
    ("FM", "Front midriff"),
    "cf",
    ("leg cf", "leg side"),
    ("waist", "waist side"),
    "front waist dart",
    "ce_f",
    1,
    True,
)
_BACK = _Half(
    "back",
    "B",
    ("BM", "Back midriff"),
    "cb",
    ("leg cb", "leg side"),
    ("waist", "waist side"),
    "back waist dart",
    "ce_b",
    2,
    False,
)


def _contour(key: str, half: str, cm: float, inch: float) -> Number:
    return Number(
        key,
        key.replace("_", " "),
        f"what the {half} waist dart takes in more at the empire seam, each half",
        "transformations 1.8",
        cm,
        inch,
        0.0,
        1.5,
        (0.2, 1.0),
    )


class EmpireSeam(Feature):
    """Seam below the bust, front and back."""

    kind: Literal["empire seam"] = "empire seam"
    title: ClassVar[str] = "Empire seam"
    sentence: ClassVar[str] = (
        "Below the bust there is an [empire seam], {depth} under the bust point, drawn "
        "in by {front} in front and {back} behind."
    )
    gives: ClassVar[frozenset[str]] = frozenset({"empire seam"})
    needs: ClassVar[dict[str, str]] = {
        "bodice": "an empire seam is drawn on a bodice block; add one"
    }
    clashes: ClassVar[dict[str, str]] = {
        "front panel seam": "an empire seam is cut through a front in one piece; take "
        'a side dart or a "bust dart" in place of the princess line',
        "back panel seam": "an empire seam is cut through a back in one piece; take a "
        "back waist dart in place of the princess line",
        "open back": "an open back leaves no paper for an empire seam",
        "front yoke": "a front is cut across once only; leave the yoke or the empire "
        "seam off",
        "back yoke": "a back is cut across once only; leave the yoke or the empire "
        "seam off",
        "laid waist dart": "the empire seam lies above the waist, where the bust dart "
        "would be gathered; lead it to the waist as a dart",
    }

    depth: Annotated[
        Length | None,
        Number(
            "ue",
            "ue",
            "empire seam below the bust point",
            _SRC,
            low=4.0,
            high=14.0,
            usual=(5.5, 10.0),
        ),
    ] = None
    front: Annotated[Length | None, _contour("ce_f", "front", 0.6, 0.25)] = None
    back: Annotated[Length | None, _contour("ce_b", "back", 0.3, 0.125)] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (EMPIRE,)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.YOKE, "the empire seam", self._apply),)

    def _apply(self, d: Drafting) -> None:
        level = d.n.y_BP + d.n.ue
        if d.n.yW - level < ABOVE_WAIST:
            raise PaperError(
                f"the empire seam lies only {max(0.0, d.n.yW - level):.1f} cm above "
                f"the waist; {ABOVE_WAIST:g} cm must stay: make it less deep"
            )
        side = d.sheet.piece("B").edge("side").path
        at = side.meets(_level(level))
        if not at:
            raise PaperError(
                "the empire seam misses the side: make it deeper, or take NBP again"
            )
        up = side.length - at[0][0]
        for h in (_BACK, _FRONT):
            _divide(d, h, level, up)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        total = 2 * (n.ce_f + n.ce_b)
        if total > 2.5 + 1e-6:
            yield Finding(
                "E1",
                Severity.WARN,
                f"The empire seam is drawn in by {total:.1f} cm in all; 1.5 cm to "
                "2.5 cm is usual.",
                "ce",
                "Pin it on a toile first.",
                {"in all": total},
            )


def _level(y: float) -> Path:
    return Path.line(Point(-60.0, y), Point(160.0, y))


def _divide(d: Drafting, h: _Half, level: float, up: float) -> None:
    """Cut a half across below the bust, `up` above the waist at its side, and tape its
    waist dart shut below."""
    d.part = h.half
    table = keep_whole(d.sheet, h.piece)
    p = table.piece(h.piece)
    centre = p.edge(h.centre).path
    hits = centre.meets(_level(level))
    side = next(e.name for e in p.edges if e.name in ("side", "side low"))
    if not hits:
        raise PaperError("the empire seam misses the centre: make it another depth")
    c = centre.at_length(hits[0][0])
    d.found(
        f"Em{h.piece.lower()}",
        c,
        f"empire seam at the centre {h.half}",
        amounts=(("below the level of BP", "ue"),),
    )
    path = p.edge(side).path
    if path.length - up < 1.0 if h.clockwise else path.length < up + 1.0:
        raise PaperError(
            "the empire seam comes too near to the side dart: make it deeper (ue), or "
            "lead the bust dart elsewhere"
        )
    s = path.at_length(up if h.clockwise else path.length - up)
    away = path.direction_at_length(up if h.clockwise else path.length - up)
    down = away * (-1.0 if h.clockwise else 1.0)
    if not p.has(h.legs[0]):
        sheet = _straight_across(table, h, c, s, down, side)
    else:
        sheet = _over_dart(d, table, h, c, s, down, side)
    sheet = _sewn(sheet, h)
    parts = [sheet.piece(code) for code in (h.piece, h.new[0])]
    sheet = sheet.put(*(grained_as(part, p) for part in parts))
    d.lay(
        Verb.CUT,
        off_corners(off_corners(sheet, h.piece), h.new[0]),
        h.new[0],
        f"{h.half} cut across below the bust, its waist dart taped shut in the midriff",
        amounts=(("at the side, up from the waist", up),),
        detail="square to every seam that the line meets",
        lines=(sheet.edge(h.new[0], "under").path,),
    )


def _across(
    h: _Half, a: Point, b: Point, at_a: Point | None, at_b: Point | None
) -> Path:
    """A part of the seam from the centre's side to the side's, square to the seams
    that it meets there, whose directions down are given; level at the centre."""
    if h.clockwise:
        return Path((waist_curve(a, b, at_a, at_b, 0.0, 0.0),))
    return Path((waist_curve(b, a, at_b, at_a, 0.0, 0.0),)).reversed()


def _straight_across(
    table: Sheet, h: _Half, c: Point, s: Point, down: Point, side: str
) -> Sheet:
    """A half without a waist dart in one cut."""
    line = _across(h, c, s, None, down)
    p = table.piece(h.piece)
    return _cut(table, p, line, h.centre, side, "under", h.new, h)


def _over_dart(
    d: Drafting,
    table: Sheet,
    h: _Half,
    c: Point,
    s: Point,
    down: Point,
    side: str,
) -> Sheet:
    p = table.piece(h.piece)
    inner, outer = (p.edge(name).path for name in h.legs)
    inner = inner.reversed() if h.clockwise else inner  # both from the point down
    outer = outer if h.clockwise else outer.reversed()
    hits = inner.meets(_level(c.y))
    reach = hits[0][0] if hits else 0.0
    if reach < BELOW_POINT or reach > inner.length - ABOVE_WAIST / 2:
        raise PaperError(
            f"the empire seam comes within {BELOW_POINT:g} cm of the point of the "
            f"{h.dart}: make it deeper"
        )
    a, b = inner.at_length(reach), outer.at_length(reach)
    apart = (
        direction(b, a) if distance(a, b) > 1e-6 else turned(inner.end_direction, -90)
    )
    more = d.n[h.number] / 2
    a, b = a + apart * more, b - apart * more
    bent = [
        Path.line(leg.start, at) + Path.line(at, leg.end)
        for leg, at in ((inner, a), (outer, b))
    ]
    names = list(h.legs) if h.clockwise else list(reversed(h.legs))
    drawn = (
        [bent[0].reversed(), bent[1]] if h.clockwise else [bent[1].reversed(), bent[0]]
    )
    table = redraw(
        table, h.piece, names, [Edge(n, q) for n, q in zip(names, drawn, strict=True)]
    )
    first = _across(h, c, a, None, direction(a, inner.end))
    second = _across(h, b, s, direction(b, outer.end), down)
    table = _cut(
        table, table.piece(h.piece), first, h.centre, h.legs[0], "under", h.new, h
    )
    flank = (f"{h.new[0]} side", f"{h.new[1]}, side")
    table = _cut(
        table, table.piece(h.piece), second, h.legs[1], side, "under side", flank, h
    )
    code = h.new[0]
    left, right = Run(code, h.legs[0]), Run(flank[0], h.legs[1], True)
    table = _upper_dart(table, h)
    table = tape(
        table.sew(Seam("midriff", "midriff", (left,), (right,))),
        "midriff",
        code=code,
        name=h.new[1],
    )
    q = table.piece(code)
    pair = ["under side", "under"] if h.clockwise else ["under", "under side"]
    top = q.edge(pair[0]).path + q.edge(pair[1]).path
    return redraw(table, code, pair, [Edge("under", top)])


def _cut(
    table: Sheet,
    p: Piece,
    line: Path,
    start: str,
    end: str,
    edge: str,
    new: tuple[str, str],
    h: _Half,
) -> Sheet:
    """Cut along a line from the edge `start` to the edge `end`, the centre's first."""
    if not h.clockwise:
        line, start, end = line.reversed(), end, start
    spots = [
        On(name, p.edge(name).path.length_to_point(at))
        for name, at in ((start, line.start), (end, line.end))
    ]
    return cut(
        table,
        p.code,
        line,
        *spots,
        edge=edge,
        seam=f"{h.half} {edge}",
        seam_name="empire seam",
        into=(new, (p.code, p.name)),
    )


def _upper_dart(table: Sheet, h: _Half) -> Sheet:
    """The waist dart as it is sewn above the seam."""
    for s in table.seams:
        if s.code == h.dart:
            left, right = (
                tuple(r for r in chain if r.piece == h.piece)
                for chain in (s.left, s.right)
            )
            return table.sew(replace(s, left=left, right=right, start="empire seam"))
    return table


def _sewn(table: Sheet, h: _Half) -> Sheet:
    """Both parts sewn in one seam from the centre."""
    p, code = table.piece(h.piece), f"{h.half} empire"
    upper = tuple(
        Run(h.piece, e, not h.clockwise) for e in ("under", "under side") if p.has(e)
    )
    lower = (Run(h.new[0], "under", h.clockwise),)
    at = 0.55 * table.chain_length(lower)
    seam = Seam(
        code,
        f"{h.half} empire seam",
        upper,
        lower,
        f"centre {h.half}",
        "side",
        Ease.about(0.0, 0.1),
        notches=(NotchPair(at, at, h.ticks),),
    )
    return table.unsew(f"{h.half} under", f"{h.half} under side").sew(seam)
