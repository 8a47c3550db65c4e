"""The panel behind an open back, on the fold at the centre back (first garment 11)."""

import math
from collections.abc import Callable, Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.curves import Path, Point, distance
from clothwright.features.about import About, Place
from clothwright.features.base import Feature, Number, Rank, Shown, Stage
from clothwright.features.bodice.waist_seams import hangs_gathered
from clothwright.features.chains import Chains
from clothwright.features.openings.open_back_findings import narrower_strip
from clothwright.features.operations import Operation, SeamType, Stitch, Task, Work
from clothwright.features.roles import Role
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    Drafting,
    Ease,
    Edge,
    EdgeKind,
    InnerLine,
    Mark,
    MarkKind,
    Piece,
    Seam,
    SeamKind,
    Sheet,
    Verb,
    straight,
)
from clothwright.rules import Numbers, RuleTable
from clothwright.units.fields import Length

_SRC = "first garment 11"

PANEL = RuleTable("panel behind")
_rule = PANEL.rule


@_rule(
    "e1 + ov",
    "half width of the panel at the top",
    source=f"{_SRC}.1",
    key="up_top",
    formula="e1 + ov",
)
def _top(e1: float, ov: float) -> float:
    return e1 + ov


@_rule(
    "e2 + ov",
    "half width of the panel at the waist",
    source=f"{_SRC}.1",
    key="up_waist",
    formula="e2 + ov",
)
def _waist(e2: float, ov: float) -> float:
    return e2 + ov


@_rule(
    "yUP",
    "level of the panel's top",
    source=f"{_SRC}.1",
    key="y_up",
    formula="yW − √((slant − te)² − (e1 − e2)²)",
)
def _level(yW: float, slant: float, te: float, e1: float, e2: float) -> float:
    # the notes lower the top by te; on a leaning edge that is a little too little
    return yW - math.sqrt((slant - te) ** 2 - (e1 - e2) ** 2)


@_rule(
    "height",
    "height of the panel at the centre back",
    source=f"{_SRC}.1",
    key="up_height",
    formula="yW − yUP − dip + tl",
)
def _height(yW: float, y_up: float, dip: float, tl: float) -> float:
    return yW - y_up - dip + tl


class UnderPanel(Feature):
    """Separate panel behind the open back."""

    kind: Literal["panel behind"] = "panel behind"
    title: ClassVar[str] = "Panel behind"
    sentence: ClassVar[str] = (
        "A [panel] lies behind the opening, {overlap} under the edges and {tail} below "
        "the waist."
    )
    shows: ClassVar[Shown] = {
        "ov": ("UP.outer",),
    }
    pieces: ClassVar[tuple[About, ...]] = (
        About(
            "UP",
            Place.BEHIND,
            ("panel behind",),
            others=Role.SMALL,
            cloths=("shell", "lining", "interlining"),
        ),
    )
    seams: ClassVar[Mapping[str, str]] = {
        "S14": "panel behind an open back, bagged out with its lining",
        "S15": "left lap line of a panel behind an open back, under the slanted edge",
        "S16": "buttons of a panel behind an open back, at the loops",
        "S22": "panel behind to the peplum, where that runs to the centre back",
    }
    gives: ClassVar[frozenset[str]] = frozenset({"panel behind"})
    needs: ClassVar[dict[str, str]] = {
        "open back": "a panel behind needs an open back to lie behind"
    }

    overlap: Annotated[
        Length | None,
        Number(
            "ov",
            "ov",
            "overlap of the panel",
            f"{_SRC}.1",
            2.0,
            0.75,
            1.2,
            5.0,
            (1.2, 2.54),
        ),
    ] = None
    dip: Annotated[
        Length | None,
        Number("dip", "dip", "dip of the panel's top", f"{_SRC}.1", 0.0, 0.0, 0.0, 3.0),
    ] = None
    tail: Annotated[
        Length | None,
        Number(
            "tail_full",
            "tl full",
            "tail of the panel below the waist when the peplum hangs open",
            f"{_SRC}.2",
            4.0,
            1.5,
            0.0,
            12.0,
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (PANEL,)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.CLOSURE, "the panel behind", self._draft),)

    def _draft(self, d: Drafting) -> None:
        n = d.n
        d.part = "panel behind"
        top = d.point(
            "UP1", "O", "centre of the panel's top", right=0.0, down=n.y_up + n.dip
        )
        out = d.point(
            "UP2", "O", "corner of the panel's top", right="up_top", down="y_up"
        )
        waist = d.point("UP3", "O", "panel at the waist", right="up_waist", down="yW")
        tail = d.point("UP4", "UP3", "corner of the tail", down="tl")
        foot = Point(0.0, tail.y)
        outer = [straight("outer", out, waist, EdgeKind.SEAM)]
        if n.tl > 1e-9:
            outer = [
                straight("outer", out, waist),
                straight("outer tail", waist, tail),
            ]
        # the top is square to the centre back when it dips
        top_path = (
            Path.line(top, out)
            if n.dip == 0
            else Path.cubic(
                top,
                Point(top.x + 0.5 * out.x, top.y),
                Point(out.x - 0.25 * out.x, out.y + 0.25 * n.dip),
                out,
            )
        )
        lap = Path.line(Point(n.e1, n.y_up), Point(n.e2, n.yW))
        marks = []
        if "buttons" in n and n.buttons > 0:
            across = lap.start_direction
            inwards = Point(-across.y, across.x) * n.button_in
            for i in range(int(n.n_loops)):
                at = lap.at_length(n.T_round + n.g1 + i * n.spacing) + inwards
                if at.x > 0:  # beyond the fold it is no mark of this half
                    marks.append(Mark(f"button {i + 1}", at, MarkKind.BUTTON))
        piece = Piece(
            "UP",
            "Panel behind",
            (
                Edge("top", top_path),
                *outer,
                straight("tail", tail if n.tl > 1e-9 else waist, foot),
                straight("cb", foot, top, EdgeKind.FOLD),
            ),
            marks=tuple(marks),
            lines=(InnerLine("lap line", lap),),
        )
        d.lay(
            Verb.OUTLINE,
            d.sheet.put(piece),
            "UP",
            "panel behind the opening",
            frm=("UP1", "UP2", "UP3", "UP4"),
            detail="joined in this order, the centre back on the fold; copy the "
            "slanted edge on it as the lap line, a cross for each button beside it",
        )

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam | None]:
        return (_bagged(t), _to_peplum(t, n))

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        yield Operation(
            Work.BEHIND,
            "Sew the panel behind to the left edge",
            (
                "Lay its left lap line under the left slanted edge, as worn, and fell "
                "it to the facing; its right side stays free.",
            ),
            stitch=Stitch.HAND,
            seam_type=SeamType.PLACED,
            length=n.slant,
            task=Task.BY_HAND,
        )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        up = sheet.piece("UP")
        outer, panel = up.edge("outer").path, sheet.edge("BC", "panel").path
        room = narrower_strip(outer, panel, 0.6)
        if room is not None:
            yield Finding(
                "U1",
                Severity.REFUSE,
                "The panel behind reaches beyond the panel seam of the back.",
                "UP",
                "Make its overlap (ov) smaller.",
                {"room": room},
            )
        if 2 * n.up_waist > 14:
            yield Finding(
                "U2",
                Severity.WARN,
                "The panel behind is wider than 14 cm at the waist.",
                "UP",
                f"Let its tail flare by {0.15 * n.tl:.1f} cm at each side, or make the "
                "set-in smaller."
                if n.tl > 0
                else "Make the set-in smaller, or the overlap.",
                {"width": 2 * n.up_waist},
            )
        # a dip at the centre takes the lap line's upper end off the paper
        lap = distance(Point(n.e1, n.y_up), up.lines[0].path.end)
        slant = sheet.length("BC", "slant")
        if abs(lap - n.T_round - slant) > 0.1:
            yield Finding(
                "S15",
                Severity.REFUSE,
                "The lap line of the panel behind and the slanted edge differ.",
                "UP",
                "Redraw the panel.",
                {"lap": lap, "slant": slant},
            )


def _bagged(t: Chains) -> Seam:
    """The panel is bagged out with the same piece cut in lining."""
    edges = ("top", "outer", "outer tail", "tail")
    chain = t.chain(*(("UP", e, False) for e in edges))
    end, ease, twin = "centre back", Ease(0.0, -0.2, 0.0), SeamKind.TWIN
    return Seam("S14", "panel behind, bagged", chain, chain, end, end, ease, kind=twin)


def _to_peplum(t: Chains, n: Numbers) -> Seam | None:
    """A back peplum that runs on behind the opening is sewn to the panel there."""
    left = t.chain(("PB", "waist on", False), ("PBC", "waist on", False))
    right = t.chain(("UP", "tail", True))
    if not (left and right):
        return None
    full = n.g if hangs_gathered(n) else n.wc / (2 * (n.w_F + n.w_PB))
    plan = n.up_waist - n.x_back * full  # the overlap is caught in the waist seam
    return Seam(
        "S22",
        "waist, panel behind",
        left,
        right,
        "centre back",
        "E2",
        Ease.about(plan, 0.1),
        kind=SeamKind.LAPPED,
    )
