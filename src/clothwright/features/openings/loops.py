"""Loops and buttons along the slanted edges (first garment 10)."""

from collections.abc import Callable, Iterable, Mapping
from enum import Enum
from functools import cache
from typing import Annotated, ClassVar, Literal

from clothwright.features.base import Feature, Number, Rank, Shown, Stage
from clothwright.features.notions import Article, Notion
from clothwright.features.openings.loop_numbers import (
    CORD_ALLOWANCE,
    ENDS_APART,
    TIGHTER,
)
from clothwright.features.openings.loops_rules import (
    BALL,
    EVEN,
    EXACT,
    FLAT,
    LACED,
    LOOPS,
)
from clothwright.features.openings.loops_sewing import STRIP, loop_operations
from clothwright.features.operations import Operation
from clothwright.findings import Finding, Severity
from clothwright.paper import Drafting, Mark, MarkKind, Sheet, Verb
from clothwright.rules import Kind, Numbers, RuleTable
from clothwright.units.fields import Length, Ratio

_SRC = "first garment 10"


class Rows(Enum):
    """Which edges carry loops."""

    BOTH = "both edges"
    """The default look; those on the left may be sewn shut."""

    RIGHT = "the right edge"
    """As worn; the left edge is caught to the panel behind."""

    LACING = "both edges, laced"
    """A cord crosses from edge to edge."""

    EYELETS = "both edges, laced through eyelets"
    """The same, through eyelets in place of loops."""


class Spread(Enum):
    """How the loops are spaced."""

    EVEN = "evenly"
    """The wanted spacing is changed a little so that both ends come out."""

    EXACT = "exactly"
    """The wanted spacing is kept; the rest lies at the waist."""


class Loops(Feature):
    """Rouleau loops and ball buttons along the slanted edges."""

    kind: Literal["loops"] = "loops"
    title: ClassVar[str] = "Loops and buttons"
    sentence: ClassVar[str] = (
        "It closes with [loops] on {rows}, {spacing} apart, over buttons of {button}."
    )
    shows: ClassVar[Shown] = {
        "loops": ("BC.slant",),
        "e": ("BC.slant",),
    }
    seams: ClassVar[Mapping[str, str]] = {
        "S17": "loop ends between shell and facing, of an edge with loops",
    }
    gives: ClassVar[frozenset[str]] = frozenset({"closure"})
    needs: ClassVar[dict[str, str]] = {
        "finished back edge": "loops need a slanted edge: add the low open back"
    }
    clashes: ClassVar[dict[str, str]] = {
        "centre back zip": "loops and a zip cannot sit on one edge"
    }

    spacing: Annotated[
        Length | None,
        Number(
            "sp",
            "sp",
            "wanted distance from loop to loop",
            f"{_SRC}.3",
            2.5,
            1.0,
            0.8,
            5.0,
        ),
    ] = None
    first: Annotated[
        Length | None,
        Number(
            "g1", "g1", "first loop below the corner", f"{_SRC}.2", 1.0, 0.375, 0.3, 5.0
        ),
    ] = None
    last: Annotated[
        Length | None,
        Number(
            "g2", "g2", "last loop above the waist", f"{_SRC}.2", 1.0, 0.375, 0.3, 5.0
        ),
    ] = None
    button: Annotated[
        Length | None,
        Number(
            "dia",
            "dia",
            "diameter of the button",
            f"{_SRC}.5",
            1.1,
            0.4375,
            0.5,
            3.0,
        ),
    ] = None
    ends_apart: Annotated[Length | None, ENDS_APART] = None
    cord_allowance: Annotated[Length | None, CORD_ALLOWANCE] = None
    thickness: Annotated[
        Length | None,
        Number(
            "thick",
            "thick",
            "thickness of a flat button; without it the button is a ball",
            f"{_SRC}.5",
            low=0.1,
            high=1.5,
        ),
    ] = None
    tighter: Annotated[Ratio | None, TIGHTER] = None
    rows: Rows = Rows.BOTH
    spread: Spread = Spread.EVEN

    @property
    def laced(self) -> bool:
        """True when a cord closes it, and no buttons."""
        return self.rows in (Rows.LACING, Rows.EYELETS)

    def said(self) -> str:
        if self.rows is Rows.EYELETS:
            return "It is laced through [eyelets] on both edges, {spacing} apart."
        if self.laced:
            return "It is laced through [loops] on both edges, {spacing} apart."
        return self.sentence

    def wants(self) -> dict[str, str]:
        if self.laced:
            return dict(self.needs)
        return {
            **self.needs,
            "panel behind": "buttons sit on a panel behind the opening: add one, or "
            "lace the edges",
        }

    def tables(self) -> tuple[RuleTable, ...]:
        return (
            LOOPS,
            EVEN if self.spread is Spread.EVEN else EXACT,
            BALL if self.thickness is None else FLAT,
            _rows(1.0 if self.rows is Rows.RIGHT else 2.0),
            *((LACED,) if self.laced else ()),
        )

    def stages(self) -> tuple[Stage, ...]:
        return (
            Stage(Rank.CLOSURE, "loops", self._mark),
            Stage(Rank.SKIRT, "loops on the facing", self._mark_facing),
        )

    def _mark(self, d: Drafting) -> None:
        n = d.n
        d.part = "back"
        d.lay(
            Verb.SEW,
            _with_loops(d.sheet, "BC", n),
            "BC.slant",
            f"{n.n_loops:.0f} loops on the slanted edge",
            amounts=self._laid_off(n),
            detail="the first is notched, the others chalked",
        )

    def _mark_facing(self, d: Drafting) -> None:
        """The same marks on the facing, from the waist up (10.4)."""
        if "BF" not in d.sheet.pieces or not d.sheet.piece("BF").has("slant"):
            return
        d.part = "facing"
        d.lay(
            Verb.SEW,
            _with_loops(d.sheet, "BF", d.n),
            "BF.slant",
            "loops on the back facing",
            detail="the same marks as on the back, measured from the waist",
        )

    def _laid_off(self, n: Numbers) -> list[tuple[str, str | float]]:
        """By hand: even loops by dividing what lies between the first and the last,
        so that rounded spaces do not add up; exact ones from the first on."""
        if self.spread is Spread.EXACT:
            return [
                ("the first {} below the corner", "g1"),
                ("then every {}", "spacing"),
            ]
        return [
            ("the first {} below the corner", "g1"),
            ("the last {} above the waist", "g2"),
            (f"the others in {n.n_loops - 1:.0f} even spaces of about {{}}", "spacing"),
        ]

    def notes(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[str]:
        if self.rows is Rows.RIGHT:
            yield (
                "Sew buttons to the right half of the panel only; its left lap line is "
                "sewn under the left edge."
            )

    def notions(self, n: Numbers, sheet: Sheet) -> Iterable[Notion]:
        if self.rows is Rows.EYELETS:
            yield Notion(Article.EYELET, int(n.loops_all), "to lace the back through")
        else:
            yield Notion(
                Article.BIAS,
                int(n.loops_all),
                "for the loops",
                length=n.cord_cut,
                in_all=n.cord_all,
            )
        yield Notion(
            Article.STRIP,
            int(n.rows),
            "under the loops, on the back",
            length=n.edge_net,
            size=STRIP,
        )
        if self.laced:
            yield Notion(Article.LACING, 1, "to lace with and tie", length=n.lacing)
        else:
            yield Notion(
                self.button_kind,
                int(n.buttons),
                "on the panel behind",
                size=n.dia,
                spare=1,
            )
        if _hooked(n):
            where = "to close the slanted edges below the last loop"
            yield Notion(Article.HOOK, 1, where)

    @property
    def button_kind(self) -> Article:
        """Ball or flat buttons."""
        ball = self.thickness is None
        return Article.BALL_BUTTON if ball else Article.FLAT_BUTTON

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        return loop_operations(
            n,
            fmt,
            laced=self.laced,
            eyelets=self.rows is Rows.EYELETS,
            hooked=_hooked(n),
        )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        below = n.rest + n.g2
        if _hooked(n):
            yield Finding(
                "L1",
                Severity.WARN if n.rest > HOOK_FROM + 1e-9 else Severity.NOTE,
                f"The loops end {below:.1f} cm above the waist.",
                "loops",
                "Sew a hook and eye at the waist, or space the loops evenly.",
                {"rest": n.rest, "below": below},
            )
        if self.laced:
            return
        gap = min(n.gap_first, n.gap_last)
        if self.rows is Rows.BOTH and gap < 2 * n.reach + 0.5:
            where = "waist" if n.gap_last <= n.gap_first else "top"
            yield Finding(
                "L2",
                Severity.WARN,
                f"The buttons of the two rows would touch at the {where}: the gap is "
                f"{gap:.1f} cm there, {2 * n.reach + 0.5:.1f} cm are wanted.",
                "loops",
                f"Use one row of loops, or a larger set-in at the {where}.",
                {"gap": gap, "reach": n.reach},
            )
        if gap / 2 < n.button_in:
            yield Finding(
                "L4",
                Severity.WARN,
                "The edges stand so close that buttons lie beyond the centre back.",
                "loops",
                "Use a smaller button (dia), or a larger set-in (e1, e2).",
                {"gap": gap, "button": n.button_in},
            )
        if n.spacing < n.dia + TOUCHING - 1e-9:
            overlap = n.spacing < n.dia
            yield Finding(
                "L3",
                Severity.REFUSE if overlap else Severity.WARN,
                f"Buttons of {n.dia:.1f} cm stand {n.spacing:.2f} cm apart: they "
                f"{'overlap' if overlap else 'touch'}.",
                "loops",
                "Space the loops (sp) wider, or take a smaller button (dia).",
                {"spacing": n.spacing, "dia": n.dia},
            )


HOOK_FROM = 2.0
"""Edge without a loop above the waist that wants a hook, cm (10.3)."""

TOUCHING = 0.2
"""Loops that touch are spaced by the button and this, cm (10.3)."""


@cache
def _rows(count: float) -> RuleTable:
    rows = RuleTable("rows of loops")

    @rows.rule(
        "rows",
        "rows of loops",
        kind=Kind.COUNT,
        source=f"{_SRC}.1",
        key="rows",
        low=1,
        high=2,
    )
    def _count() -> float:
        return count

    return rows


def _hooked(n: Numbers) -> bool:
    """True when a hook closes the edges below the last loop (10.3)."""
    return n.rest + n.g2 > HOOK_FROM + 1e-9


def _with_loops(sheet: Sheet, code: str, n: Numbers) -> Sheet:
    """The sheet with the loops marked on a slanted edge, from the waist up, so that
    shell and facing agree where both begin."""
    piece = sheet.piece(code)
    edge = piece.edge("slant").path  # waist up to the corner
    foot, apart = n.edge_net - n.g1, n.spacing
    marks = [
        Mark(f"loop {i + 1}", edge.at_length(foot - i * apart), MarkKind.LOOP)
        for i in range(int(n.n_loops))
    ]
    return sheet.put(piece.with_marks(*marks))
