"""A laced opening down the whole front or back, over a panel (transformations §7)."""

import math
from collections.abc import Callable, Iterable, Mapping
from enum import Enum
from typing import Annotated, ClassVar, Literal

from clothwright.curves import Path, Point
from clothwright.features.about import About, Place
from clothwright.features.base import Number, Rank, Shown, Stage
from clothwright.features.bodice.torso_length import usual_length
from clothwright.features.chains import Chains
from clothwright.features.notions import Article, Notion
from clothwright.features.openings.button_sewing import face_edges
from clothwright.features.openings.edge_marks import (
    loops_on,
    marked,
    nearest_to_yoke,
    spaced,
)
from clothwright.features.openings.loops_rules import TO_TIE
from clothwright.features.openings.loops_sewing import (
    STRIP,
    LoopRow,
    edge_strips,
    eyelets_set,
    loops_sewn,
)
from clothwright.features.openings.open_edges import (
    OpenEdge,
    edge_length,
    open_at_centre,
    pieces,
)
from clothwright.features.openings.open_edges import (
    facing as _facing,
)
from clothwright.features.openings.stand_pieces import BACK, FRONT, STAND, Centre
from clothwright.features.openings.stand_seams import stand_seams
from clothwright.features.operations import Operation, SeamType, Stitch, Task, Work
from clothwright.features.roles import Role
from clothwright.features.wholes import reach
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    Drafting,
    Ease,
    Edge,
    EdgeKind,
    InnerLine,
    Piece,
    Seam,
    SeamKind,
    Sheet,
    Verb,
    straight,
)
from clothwright.rules import Given, Numbers, RuleTable
from clothwright.units import Unit
from clothwright.units.fields import Length

_SRC = "transformations §7"

PANEL = "MP"
"""Code of the panel behind the lacing."""

BAGGED = "S154"
"""Code of the seam that bags it out."""

_BELOW_TOP, _ABOVE_FOOT = 0.5, 1.0
"""The panel begins so far below the top of the edges, and ends so far above their foot,
cm (7)."""

_SHOWS, _ALLOWED, _ENDS = 2.0, 1.2, 0.6
"""Cord that shows in a loop to be laced through (common practice, no source), the
allowance of each of its ends, and how far these lie apart, cm (first garment 10.5)."""

_TOP = 30.0, 12.0
"""Length of a laced torso from the waist where the order does not say it, cm and inches
(common practice, no source)."""

_SKIRT = 35.0
"""What is so long below the waist is a skirt, and not worn open, cm (first garment
16)."""


SET_BACK = RuleTable("front set back for a lacing")


@SET_BACK.rule(
    "cf off",
    "edges of the front set back from the centre",
    source=_SRC,
    key="cf_off",
    formula="half the gap",
)
def _set_back(lace_gap: float) -> float:
    return lace_gap / 2


class Through(Enum):
    """What the cord goes through."""

    LOOPS = "loops"
    EYELETS = "eyelets"


class Lacing(OpenEdge):
    """Laced front or back, with a panel behind."""

    kind: Literal["lacing"] = "lacing"
    title: ClassVar[str] = "Laced opening"
    sentence: ClassVar[str] = (
        "It is [laced] {where} through {through}, {spacing} apart, over a gap of {gap} "
        "with a panel behind."
    )
    shows: ClassVar[Shown] = {
        "lg": ("BC.stand", "B.stand", "FC.stand", "F.stand"),
    }
    pieces: ClassVar[tuple[About, ...]] = (
        *pieces("laced {} edge"),
        About(
            PANEL,
            Place.BEHIND,
            ("front", "back"),
            others=Role.SMALL,
            cloths=("shell", "lining", "interlining"),
        ),
    )
    seams: ClassVar[Mapping[str, str]] = {
        **OpenEdge.seams,
        BAGGED: "panel behind a lacing, bagged out with its lining",
    }
    needs: ClassVar[Mapping[str, str]] = {
        **OpenEdge.needs,
        "inside finish": 'its facing joins that of the neck; add a "neck facing" or a '
        '"facing"',
    }
    what: ClassVar[str] = "a lacing"
    page: ClassVar[int] = 3

    through: Through = Through.LOOPS
    gap: Annotated[
        Length | None,
        Number(
            "lace_gap",
            "lg",
            "gap between the laced edges",
            _SRC,
            6.0,
            2.5,
            2.0,
            16.0,
            (5.0, 10.2),
        ),
    ] = None
    spacing: Annotated[
        Length | None,
        Number(
            "lace_sp",
            "l sp",
            "wanted distance along a laced edge",
            _SRC,
            2.5,
            1.0,
            1.0,
            6.0,
            (2.0, 2.54),
        ),
    ] = None
    under: Annotated[
        Length | None,
        Number(
            "lace_under",
            "l ov",
            "panel under either laced edge",
            _SRC,
            4.5,
            1.75,
            1.5,
            9.0,
            (4.0, 5.1),
        ),
    ] = None
    facing: Annotated[Length | None, _facing(3.0, 1.25)] = None

    def forbids(self) -> Mapping[str, str]:
        words = self.centre.words
        return {
            **super().forbids(),
            "funnel neck": "a funnel neck does not run over the gap of a lacing; take "
            f'a collar in two parts, or open the {words} with an "open zip"',
        }

    def given(self, unit: Unit) -> Iterable[Given]:
        """Its own numbers, and the length of a torso that is laced as a top."""
        yield from super().given(unit)
        yield usual_length(unit, _TOP)

    def tables(self) -> tuple[RuleTable, ...]:
        set_back = (SET_BACK,) if self.centre is FRONT else ()
        return (*super().tables(), *set_back)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.STAND, "the laced edges", self._draw),)

    def _draw(self, d: Drafting) -> None:
        n, c = d.n, self.centre
        open_at_centre(d, c, n.lace_gap / 2, _APART)
        shell, facing = c.on(d.sheet, c.upper), c.facing
        both = [marked(d.sheet.piece(code), c, n.lace_sp) for code in (shell, facing)]
        count = loops_on(d.sheet.put(*both), c)
        d.part = c.words
        d.lay(
            Verb.SEW,
            d.sheet.put(*both),
            f"{shell}.{STAND}",
            f"{count} {self.through.value} along the edge, and on its facing",
            amounts=(("in even spaces of about {}", "lace_sp"),),
            detail="the first and the last 1 cm from its ends",
        )
        d.lay(
            Verb.OUTLINE,
            d.sheet.put(_panel(d.sheet.piece(shell), c, n)),
            PANEL,
            "panel behind the lacing",
            amounts=(
                ("wide, half the gap and what lies under the edge", _half(n)),
                ("below the top of the edge", _BELOW_TOP),
                ("above its foot", _ABOVE_FOOT),
            ),
            detail=f"straight, on the fold at the centre {c.words}; the edge is copied "
            "on it",
        )

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        chain = t.chain(*((PANEL, e, False) for e in _AROUND[self.centre]))
        end = f"centre {self.centre.words}"
        bagged = Seam(
            BAGGED,
            "panel behind, bagged",
            chain,
            chain,
            end,
            end,
            Ease(0.0, -0.2, 0.0),
            kind=SeamKind.TWIN,
        )
        return (*stand_seams(t), bagged)

    def notes(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[str]:
        yield (
            f"The edges stand {fmt(n.lace_gap)} apart when it is laced: the "
            f"{self.centre.words} is cut smaller by that. The left edge of the panel, "
            "as worn, is sewn down, the right one is free."
        )

    def notions(self, n: Numbers, sheet: Sheet) -> Iterable[Notion]:
        c = self.centre
        count, edge = 2 * loops_on(sheet, c), edge_length(sheet, c, below=False)
        if self.through is Through.EYELETS:
            yield Notion(Article.EYELET, count, f"to lace the {c.words} through")
        else:
            row = _loops(count, edge)
            yield Notion(
                Article.BIAS, count, "for the loops", length=row.cut, in_all=row.cord
            )
        yield Notion(
            Article.STRIP,
            2,
            f"along both laced edges, {c.words}",
            length=edge,
            size=STRIP,
        )
        cord = _cord(n.lace_gap, edge, n.lace_sp)
        yield Notion(Article.LACING, 1, "to lace with and tie", length=cord)

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        c = self.centre
        count, edge = 2 * loops_on(sheet, c), edge_length(sheet, c, below=False)
        edges = f"both {c.words} edges"
        yield edge_strips(fmt, edges, self.through.value)
        if self.through is Through.EYELETS:
            yield eyelets_set(count, fmt, edges)
        else:
            yield loops_sewn(_loops(count, edge), fmt, edges, laced=True)
        yield face_edges(sheet, c)
        yield Operation(
            Work.BEHIND,
            "Sew the panel behind to the left edge",
            (
                "Lay its left line under the left edge, as worn, "
                f"{fmt(_BELOW_TOP)} below the top, and fell its side to the facing "
                "alone; the right side stays free.",
            ),
            stitch=Stitch.HAND,
            seam_type=SeamType.PLACED,
            length=sheet.length(PANEL, "outer"),
            task=Task.BY_HAND,
        )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        near = nearest_to_yoke(sheet, self.centre)
        if near < _OFF_SEAM:
            yield Finding(
                "LC2",
                Severity.WARN,
                f"One of the {self.through.value} lies {near:.1f} cm from the seam of "
                f"the yoke; {_OFF_SEAM:g} cm keep it off the allowances.",
                "l sp",
                "Set them a little nearer or further apart (l sp), or the yoke's seam "
                "a little higher or lower.",
                {"near": near},
            )
        long = reach(n)
        if long > _SKIRT:
            yield Finding(
                "LC1",
                Severity.REFUSE,
                f"The edges would stand {n.lace_gap:.1f} cm apart down to a hem "
                f"{long:.1f} cm below the waist.",
                "lg",
                f"Lace a top, or make what hangs below its waist (L) {_SKIRT:.0f} cm "
                "long or less.",
                {"reach": long},
            )


_OFF_SEAM = 0.6
"""A loop or an eyelet keeps so far off the seam of a yoke, cm (common practice, no
source)."""

_APART = (
    "it is no fold now: the edges are laced, and stand so far apart that the gap is as "
    "much as is cut off; below the waist they hang open"
)

_AROUND: Mapping[Centre, tuple[str, ...]] = {
    FRONT: ("tail", "outer", "top"),
    BACK: ("top", "outer", "tail"),
}
"""Edges of the panel, clockwise, from its fold to its fold."""


def _half(n: Numbers) -> float:
    """Half the width of the panel, cm."""
    return n.lace_gap / 2 + n.lace_under


def _loops(count: int, edge: float) -> LoopRow:
    """So many loops to be laced through, on both edges."""
    cut = _SHOWS + 2 * _ALLOWED
    return LoopRow(count, cut, 1.1 * count * cut, _ENDS, 2 * edge)


def _cord(gap: float, edge: float, wanted: float) -> float:
    """Cord to lace with, cm: across at the first pair, twice across at every other, and
    the ends to tie (first garment 10.6)."""
    row = spaced(edge, wanted)
    return gap + 2 * (row.many - 1) * math.hypot(gap, row.apart) + 2 * TO_TIE


def _panel(shell: Piece, centre: Centre, n: Numbers) -> Piece:
    """Half of the panel, where it lies behind the shell's edge."""
    edge = shell.edge(STAND).path
    front = centre is FRONT
    x, half = edge.start.x, n.lace_gap / 2
    middle = x + half if front else x - half
    out = middle - _half(n) if front else middle + _half(n)
    top = min(edge.start.y, edge.end.y) + _BELOW_TOP
    foot = max(edge.start.y, edge.end.y) - _ABOVE_FOOT
    a, b = Point(middle, top), Point(out, top)
    d, e = Point(middle, foot), Point(out, foot)
    ring: tuple[Edge, ...]
    if front:
        ring = (
            straight("top", b, a),
            straight("cf", a, d, EdgeKind.FOLD),
            straight("tail", d, e),
            straight("outer", e, b),
        )
    else:
        ring = (
            straight("top", a, b),
            straight("outer", b, e),
            straight("tail", e, d),
            straight("cb", d, a, EdgeKind.FOLD),
        )
    line = InnerLine("edge of the opening", Path.line(Point(x, top), Point(x, foot)))
    return Piece(PANEL, "Panel behind the lacing", ring, lines=(line,))
