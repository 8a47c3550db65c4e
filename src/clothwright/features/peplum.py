"""The peplum: a circle segment, in panels, or gathered (first garment 13).

The circle is exact: with w the stitched waist and f the share of a full circle,
r = w/(2πf), hem = w + 2πf·L; each half's angle is shared as the bodice's waist is, so
that the side seams meet.
One file, for its three cuts share one set of numbers.
"""

import math
from collections.abc import Iterable
from enum import Enum
from typing import Annotated, ClassVar, Literal

from clothwright.curves import Cubic, Line, Path, Point, bearing, turned
from clothwright.features.base import Feature, Number, Rank, Stage
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    Drafting,
    Edge,
    EdgeKind,
    Piece,
    Sheet,
    Verb,
    cut,
    spot_on,
    straight,
)
from clothwright.rules import Kind, Numbers, RuleError, RuleTable
from clothwright.units.fields import Length, Ratio

_SRC = "first garment 13"

PEPLUM = RuleTable("peplum")
AT_EDGE = RuleTable("peplum ends where the bodice ends")
TO_CENTRE = RuleTable("peplum runs on to the centre back")
_rule = PEPLUM.rule


@AT_EDGE.rule(
    "wPB",
    "waist of the back peplum, half",
    source=f"{_SRC}.4",
    key="w_PB",
    formula="wB",
)
def _pb_edge(w_B: float) -> float:
    return w_B


@AT_EDGE.rule(
    "tl",
    "tail of the panel below the waist",
    source="first garment 11.2",
    key="tl",
    formula="as chosen",
)
def _tail(tail_full: float) -> float:
    return tail_full


@TO_CENTRE.rule(
    "tl",
    "tail of the panel below the waist",
    key="tl",
    source="first garment 11.2",
    formula="none: sewn in at the waist",
)
def _no_tail() -> float:
    return 0.0


@TO_CENTRE.rule(
    "wPB",
    "waist of the back peplum, half",
    source=f"{_SRC}.4",
    key="w_PB",
    formula="wB + e2",
)
def _pb_centre(w_B: float, x_back: float) -> float:
    return w_B + x_back


@_rule(
    "by",
    "bias yield of the waist, all round",
    source=f"{_SRC}.1.1",
    formula="0.6 cm (1/4 in) a full circle",
)
def by(by_full: float, f: float) -> float:
    return by_full * f


@_rule(
    "wc",
    "waist of the peplum as cut, all round",
    source=f"{_SRC}.1.1",
    formula="2·(wF + wPB) − 2·ew − by",
)
def wc(w_F: float, w_PB: float, ew: float, by: float) -> float:
    return 2 * (w_F + w_PB) - 2 * ew - by


@_rule(
    "r", "radius of the waist arc", source=f"{_SRC}.1.1, blocks G1", formula="wc/(2πf)"
)
def r(wc: float, f: float) -> float:
    radius = wc / (2 * math.pi * f)
    if radius < 2:
        raise RuleError(
            f"the peplum's waist arc has a radius of only {radius:.1f} cm: "
            "choose a smaller share of a circle"
        )
    return radius


@_rule("r + L", "radius of the hem arc", source=f"{_SRC}.1.1", key="r_hem")
def _r_hem(r: float, L: float) -> float:
    return r + L


@_rule(
    "hem",
    "hem of the peplum, all round",
    source=f"{_SRC}.1.1, blocks G2",
    formula="wc + 2πf·L",
)
def hem(wc: float, f: float, L: float) -> float:
    return wc + 2 * math.pi * f * L


@_rule(
    "φF",
    "angle of the front peplum, half",
    kind=Kind.ANGLE,
    source=f"{_SRC}.1.2",
    key="phi_F",
    formula="180°·f·wF/(wF + wPB)",
)
def _phi_front(f: float, w_F: float, w_PB: float) -> float:
    return 180 * f * w_F / (w_F + w_PB)


@_rule(
    "φB",
    "angle of the back peplum, half",
    kind=Kind.ANGLE,
    source=f"{_SRC}.1.2",
    key="phi_B",
    formula="180°·f·wPB/(wF + wPB)",
)
def _phi_back(f: float, w_F: float, w_PB: float) -> float:
    return 180 * f * w_PB / (w_F + w_PB)


@_rule(
    "room",
    "peplum at the high hip, all round",
    source=f"{_SRC}.5",
    formula="w + 2πf·WHH",
)
def room(w: float, f: float, WHH: float) -> float:
    return w + 2 * math.pi * f * WHH


class Cut(Enum):
    """How the peplum is cut."""

    CIRCLE = "flared"
    """A segment of a circle, front and back."""

    PANELLED = "in panels"
    """The same, divided where the princess lines meet the waist."""

    GATHERED = "gathered"
    """Straight, gathered into the waist."""


class Ends(Enum):
    """Where the back peplum ends."""

    AT_EDGE = "at the edges"
    """Where the bodice ends."""

    TO_CENTRE = "to the centre back"
    """On behind the opening to the centre back."""


class Peplum(Feature):
    """Peplum at the waist seam."""

    kind: Literal["peplum"] = "peplum"
    title: ClassVar[str] = "Peplum"
    sentence: ClassVar[str] = (
        "A {cut} peplum, {length} long, {fullness} of a full circle, ends {ends}."
    )
    gives: ClassVar[frozenset[str]] = frozenset({"skirt"})
    needs: ClassVar[dict[str, str]] = {"waist seam": "a peplum needs a waist seam"}
    clashes: ClassVar[dict[str, str]] = {
        "skirt": "only one thing hangs on a waist seam"
    }

    length: Annotated[
        Length | None,
        Number(
            "L", "L", "length of the peplum", _SRC, 15.0, 6.0, 2.0, 60.0, (8.0, 25.0)
        ),
    ] = None
    fullness: Annotated[
        Ratio | None,
        Number(
            "f",
            "f",
            "share of a full circle",
            _SRC,
            0.5,
            None,
            0.1,
            1.0,
            (0.25, 1.0),
            Kind.RATIO,
        ),
    ] = None
    bias_yield: Annotated[
        Length | None,
        Number(
            "by_full",
            "by full",
            "bias yield of a full circle",
            f"{_SRC}.1.1",
            0.6,
            0.25,
            0.0,
            2.0,
        ),
    ] = None
    gathers: Annotated[
        Ratio | None,
        Number(
            "g",
            "g",
            "gathered width to finished width",
            f"{_SRC}.3",
            1.6,
            None,
            1.1,
            3.0,
            (1.3, 2.5),
            Kind.RATIO,
        ),
    ] = None
    cut: Cut = Cut.CIRCLE
    ends: Ends = Ends.AT_EDGE

    def provides(self) -> frozenset[str]:
        return self.gives | (
            {"closed peplum"} if self.ends is Ends.TO_CENTRE else {"peplum at edges"}
        )

    def wants(self) -> dict[str, str]:
        if self.ends is Ends.TO_CENTRE:
            return {
                **self.needs,
                "panel behind": "a peplum that runs on behind the opening needs the "
                "panel behind it",
            }
        return dict(self.needs)

    def tables(self) -> tuple[RuleTable, ...]:
        return (PEPLUM, AT_EDGE if self.ends is Ends.AT_EDGE else TO_CENTRE)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.SKIRT, "the peplum", self._draft),)

    def _draft(self, d: Drafting) -> None:
        d.part = "peplum"
        back_end = "cb" if self.ends is Ends.TO_CENTRE or d.n.x_back < 1e-9 else "open"
        kind = EdgeKind.FINISHED if back_end == "open" else EdgeKind.SEAM
        if "slant" not in {e.name for p in d.sheet.pieces.values() for e in p.edges}:
            back_end, kind = "cb", EdgeKind.SEAM
        if self.ends is Ends.TO_CENTRE:
            kind = EdgeKind.FINISHED
        if self.cut is Cut.GATHERED:
            _gathered(d, back_end, kind)
        else:
            _circle(d, back_end, kind)
            if self.cut is Cut.PANELLED:
                _panels(d)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        if self.cut is not Cut.GATHERED:
            yield from _circle_findings(n)


def _circle_findings(n: Numbers) -> Iterable[Finding]:
    if n.r < 5:
        yield Finding(
            "Q1",
            Severity.WARN,
            "The peplum's waist arc is very tight.",
            "r",
            "Choose a smaller share of a circle.",
            {"r": n.r},
        )
    if "HH" in n and "WHH" in n:
        for y in (0.5 * n.WHH, n.WHH):
            if y > n.L:
                continue
            body = n.W + (n.HH - n.W) * y / n.WHH
            wide = n.w + 2 * math.pi * n.f * y
            if wide < body + 2:
                yield Finding(
                    "Q2",
                    Severity.WARN,
                    f"The peplum does not clear the body {y:.0f} cm below the waist.",
                    "f",
                    "Choose a larger share of a circle.",
                    {"peplum": wide, "body": body},
                )
                return


def arc(centre: Point, radius: float, start: float, end: float) -> Path:
    """A circular arc between two bearings (degrees clockwise from +x), in cubics of at
    most 22.5°, each within 1e-7 of its radius."""
    n = max(1, math.ceil(abs(end - start) / 22.5))
    step = (end - start) / n
    h = 4 / 3 * math.tan(math.radians(step) / 4) * radius
    parts: list[Cubic] = []
    for i in range(n):
        a, b = bearing(start + i * step), bearing(start + (i + 1) * step)
        p, q = centre + a * radius, centre + b * radius
        parts.append(Cubic(p, p + turned(a, 90) * h, q - turned(b, 90) * h, q))
    return Path(tuple(parts))


def _circle(d: Drafting, back_end: str, back_kind: EdgeKind) -> None:
    """Front and back peplum as sectors; the straight grain edge hangs plumb."""
    n = d.n
    o = d.start("centre of the front peplum", Point(0.0, 0.0), "centre of the arcs")
    r, outer = n.r, n.r + n.L
    # front: the fold on the right, plumb; the sector spreads to the left
    side = 90 + n.phi_F
    waist = arc(o, r, side, 90)
    hem = arc(o, outer, 90, side)
    front = Piece(
        "PF",
        "Front peplum",
        (
            Edge("waist", waist),
            Edge("cf", Path((Line(waist.end, hem.start),)), EdgeKind.FOLD),
            Edge("hem", hem, EdgeKind.FINISHED),
            straight("side", hem.end, waist.start),
        ),
    )
    d.lay(
        Verb.TRACE,
        d.sheet.put(front),
        "PF",
        "front peplum",
        amounts=(
            ("with the radius", "r"),
            ("and again with", "r_hem"),
            ("over an angle of", "phi_F"),
        ),
        frm=("centre of the front peplum",),
        detail="two arcs from one centre, joined by straight lines to it",
    )
    # back: the open edge on the left, plumb; the sector spreads to the right
    side = 90 - n.phi_B
    waist = arc(o, r, 90, side)
    hem = arc(o, outer, side, 90)
    back = Piece(
        "PB",
        "Back peplum",
        (
            *_back_waist(waist, n.x_back if n.w_PB > n.w_B + 1e-6 else 0.0, n.w_PB),
            straight("side", waist.end, hem.start),
            Edge("hem", hem, EdgeKind.FINISHED),
            straight(back_end, hem.end, waist.start, back_kind),
        ),
    )
    d.lay(
        Verb.TRACE,
        d.sheet.put(back),
        "PB",
        "back peplum",
        amounts=(
            ("with the radius", "r"),
            ("and again with", "r_hem"),
            ("over an angle of", "phi_B"),
        ),
        frm=("centre of the front peplum",),
        detail="two arcs from one centre, joined by straight lines to it",
    )


def _back_waist(waist: Path, on: float, whole: float) -> tuple[Edge, ...]:
    """The waist of the back peplum from the centre; what runs on behind the opening
    is an edge of its own, for it is sewn to the panel there."""
    if on <= 1e-6:
        return (Edge("waist", waist),)
    a, b = waist.split_at_length(waist.length * on / whole)
    return (Edge("waist on", a), Edge("waist", b))


def _panels(d: Drafting) -> None:
    """Divide both peplums on the rays that meet the bodice's panel seams."""
    n, sheet = d.n, d.sheet
    for code, parts, inner in (
        (
            "PF",
            (("PFC", "Front peplum"), ("PFS", "Side front peplum")),
            n.X - n.x_BP - n.fd / 2,
        ),
        (
            "PB",
            (("PBC", "Back peplum"), ("PBS", "Side back peplum")),
            n.w_PB - (n.xs - n.a - n.xd - n.bd_net / 2),
        ),
    ):
        p = sheet.piece(code)
        total = n.w_F if code == "PF" else n.w_PB
        share = inner / total
        waist, hem = p.edge("waist").path, p.edge("hem").path
        # the front's waist runs from the side to the centre, the back's from centre
        t = 1 - share if code == "PF" else share
        on = n.x_back if p.has("waist on") else 0.0
        a = waist.at_length((t * total - on) / (total - on) * waist.length)
        b = hem.at_length((1 - t) * hem.length)
        first, second = (parts[0], parts[1]) if code == "PF" else (parts[1], parts[0])
        sheet = cut(
            sheet,
            code,
            Path.line(a, b),
            spot_on(p, "waist", a),
            spot_on(p, "hem", b),
            edge="panel",
            seam="S19" if code == "PF" else "S20",
            seam_name=f"{p.name} panel",
            into=(first, second),
        )
    d.lay(
        Verb.CUT,
        sheet,
        "PFC, PFS, PBC, PBS",
        "peplum divided into panels",
        detail="on the rays that meet the panel seams of the bodice",
    )


def _gathered(d: Drafting, back_end: str, back_kind: EdgeKind) -> None:
    n = d.n
    for code, name, width, fold in (
        ("PF", "Front peplum", n.w_F * n.g, True),
        ("PB", "Back peplum", n.w_PB * n.g, False),
    ):
        a, b = Point(0.0, 0.0), Point(width, 0.0)
        c, e = Point(width, n.L), Point(0.0, n.L)
        on = 0.0 if fold or n.w_PB <= n.w_B + 1e-6 else n.x_back
        right = ("cf", EdgeKind.FOLD) if fold else ("side", EdgeKind.SEAM)
        left = ("side", EdgeKind.SEAM) if fold else (back_end, back_kind)
        piece = Piece(
            code,
            name,
            (
                *_back_waist(Path.line(a, b), on, n.w_PB),
                straight(right[0], b, c, right[1]),
                straight("hem", c, e, EdgeKind.FINISHED),
                straight(left[0], e, a, left[1]),
            ),
        )
        d.lay(
            Verb.TRACE,
            d.sheet.put(piece),
            code,
            name.lower(),
            amounts=(("wide", width), ("deep", "L")),
            detail="a rectangle, gathered into its part of the waist",
        )
