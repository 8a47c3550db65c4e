"""The peplum: a circle segment, in panels, or gathered (first garment 13).

The circle is exact: with w the stitched waist and f the share of a full circle,
r = w/(2πf), hem = w + 2πf·L; each half's angle is shared as the bodice's waist is, so
that the side seams meet.
"""

import math
from collections.abc import Iterable
from enum import Enum
from typing import Annotated, ClassVar, Literal

from clothwright.features.base import Feature, Number, Rank, Stage
from clothwright.features.peplum_pieces import (
    draw_circle,
    draw_gathered,
    draw_panels,
)
from clothwright.findings import Finding, Severity
from clothwright.paper import Drafting, EdgeKind, Sheet
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
    formula="by full·f",
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
            draw_gathered(d, back_end, kind)
        else:
            draw_circle(d, back_end, kind)
            if self.cut is Cut.PANELLED:
                draw_panels(d)

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
