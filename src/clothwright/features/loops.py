"""Loops and buttons along the slanted edges (first garment 10)."""

import math
from collections.abc import Callable, Iterable
from enum import Enum
from itertools import pairwise
from typing import Annotated, ClassVar, Literal

from clothwright.features.base import Feature, Number, Rank, Stage
from clothwright.findings import Finding, Severity
from clothwright.paper import Drafting, Mark, MarkKind, Sheet, Verb
from clothwright.rules import Kind, Numbers, RuleError, RuleTable
from clothwright.units.fields import Length

_SRC = "first garment 10"

LOOPS = RuleTable("loops")
EVEN = RuleTable("loops spaced evenly")
EXACT = RuleTable("loops at the wanted spacing")
_rule = LOOPS.rule


@_rule(
    "u",
    "edge that the loops can use",
    source=f"{_SRC}.2",
    formula="slanted edge − rounding − g1 − g2",
)
def u(edge_net: float, g1: float, g2: float) -> float:
    left = edge_net - g1 - g2
    if left <= 0:
        raise RuleError(
            "the slanted edge is too short for loops: make the back less low at the "
            "waist, or the distances at the ends of the row smaller"
        )
    return left


@EVEN.rule(
    "n",
    "loops in a row",
    kind=Kind.COUNT,
    source=f"{_SRC}.3",
    key="n_loops",
    low=2,
    high=80,
    formula="1 + u/sp, to the nearest",
)
def _n_even(u: float, sp: float) -> float:
    return _at_least_two(1 + math.floor(u / sp + 0.5))


@EVEN.rule(
    "spacing",
    "distance from loop to loop",
    source=f"{_SRC}.3",
    key="spacing",
    low=0.8,
    high=10,
    formula="u/(n − 1)",
)
def _spacing_even(u: float, n_loops: float) -> float:
    return u / (n_loops - 1)


@EXACT.rule(
    "n",
    "loops in a row",
    kind=Kind.COUNT,
    source=f"{_SRC}.3",
    key="n_loops",
    low=2,
    high=80,
    formula="1 + u/sp, whole",
)
def _n_exact(u: float, sp: float) -> float:
    return _at_least_two(1 + math.floor(u / sp + 1e-9))


@EXACT.rule(
    "spacing",
    "distance from loop to loop",
    source=f"{_SRC}.3",
    key="spacing",
    low=0.8,
    high=10,
    formula="sp",
)
def _spacing_exact(sp: float) -> float:
    return sp


def _at_least_two(n: int) -> float:
    if n < 2:
        raise RuleError("the edge holds fewer than two loops: set them closer together")
    return float(n)


@_rule(
    "Cb",
    "girth of the button",
    source=f"{_SRC}.5",
    key="C_button",
    formula="π·diameter for a ball",
)
def _girth(dia: float) -> float:
    return math.pi * dia


@_rule(
    "v", "cord that shows in a loop", source=f"{_SRC}.5", key="v_cord", formula="Cb − e"
)
def _cord(C_button: float, e_loop: float) -> float:
    v = C_button - e_loop
    if v <= e_loop:
        raise RuleError(
            "the button is too small for loop ends this far apart: "
            "set the ends closer, or take a larger button"
        )
    return v


@_rule("v + 2·SA", "cord cut for a loop", source=f"{_SRC}.5", key="cord_cut")
def _cord_cut(v_cord: float, SA_loop: float) -> float:
    return v_cord + 2 * SA_loop


@_rule(
    "reach",
    "reach of a loop beyond the edge",
    source=f"{_SRC}.5",
    formula="√((v/2)² − (e/2)²)",
)
def reach(v_cord: float, e_loop: float) -> float:
    return math.sqrt((v_cord / 2) ** 2 - (e_loop / 2) ** 2)


@_rule("rows·n", "loops in all", kind=Kind.COUNT, source=f"{_SRC}.5", key="loops_all")
def _all(n_loops: float, rows: float) -> float:
    return rows * n_loops


@_rule(
    "cord",
    "loop cord in all, with a tenth more",
    source=f"{_SRC}.5",
    key="cord_all",
    formula="rows·n·(v + 2·SA)·1.1",
)
def _cord_all(loops_all: float, cord_cut: float) -> float:
    return loops_all * cord_cut * 1.1


@_rule("buttons", "buttons, with one to spare", kind=Kind.COUNT, source=f"{_SRC}.5")
def buttons(loops_all: float) -> float:
    return loops_all + 1


LACED = RuleTable("loops laced")
TO_TIE = 35.0
"""Cord left at either end of a lacing, cm (10.6)."""


@LACED.rule("buttons", "buttons", kind=Kind.COUNT, source=f"{_SRC}.6", key="buttons")
def _no_buttons() -> float:
    return 0.0


@LACED.rule(
    "lacing",
    "cord to lace with",
    source=f"{_SRC}.6",
    key="lacing",
    formula="one cross for each pair of loops, and the ends to tie",
)
def _lacing(
    e1: float, e2: float, slant: float, g1: float, n_loops: float, spacing: float
) -> float:
    gaps = [
        2 * (e1 + (e2 - e1) * (g1 + i * spacing) / slant) for i in range(int(n_loops))
    ]
    crosses = (math.hypot((a + b) / 2, spacing) for a, b in pairwise(gaps))
    return gaps[0] + 2 * sum(crosses) + 2 * TO_TIE


class Rows(Enum):
    """Which edges carry loops."""

    BOTH = "both edges"
    """The default look; those on the left may be sewn shut."""

    RIGHT = "the right edge"
    """As worn; the left edge is caught to the panel behind."""

    LACING = "both edges, laced"
    """A cord crosses from edge to edge."""


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
        "It closes with loops on {rows}, {spacing} apart, over buttons of {button}."
    )
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
            "diameter of the ball button",
            f"{_SRC}.5",
            1.1,
            0.4375,
            0.5,
            3.0,
        ),
    ] = None
    ends_apart: Annotated[
        Length | None,
        Number("e_loop", "e", "ends of a loop apart", f"{_SRC}.5", 0.6, 0.25, 0.2, 1.5),
    ] = None
    cord_allowance: Annotated[
        Length | None,
        Number(
            "SA_loop",
            "SA",
            "allowance of a loop's end",
            f"{_SRC}.5",
            1.2,
            0.5,
            0.5,
            2.5,
        ),
    ] = None
    rows: Rows = Rows.BOTH
    spread: Spread = Spread.EVEN

    def tables(self) -> tuple[RuleTable, ...]:
        rows = RuleTable("rows of loops")
        count = 1.0 if self.rows is Rows.RIGHT else 2.0

        @rows.rule(
            "rows",
            "rows of loops",
            kind=Kind.COUNT,
            source=f"{_SRC}.1",
            key="rows",
            low=1,
            high=2,
        )
        def _rows() -> float:
            return count

        laced = (LACED,) if self.rows is Rows.LACING else ()
        return (LOOPS, EVEN if self.spread is Spread.EVEN else EXACT, rows, *laced)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.CLOSURE, "loops", self._mark),)

    def _mark(self, d: Drafting) -> None:
        d.part = "back"
        n = d.n
        bc = d.sheet.piece("BC")
        edge = bc.edge("slant").path  # waist up to the corner
        marks = []
        for i in range(int(n.n_loops)):
            s = n.g1 + i * n.spacing
            marks.append(
                Mark(f"loop {i + 1}", edge.at_length(edge.length - s), MarkKind.LOOP)
            )
        d.lay(
            Verb.SEW,
            d.sheet.put(bc.with_marks(*marks)),
            "BC.slant",
            f"{n.n_loops:.0f} loops on the slanted edge",
            amounts=self._laid_off(n),
            detail="the first is notched, the others chalked",
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
        sheet: Sheet,  # noqa: ARG002
        fmt: Callable[[float], str],
    ) -> Iterable[str]:
        if self.rows is Rows.LACING:
            cord = f"a cord of {fmt(n.lacing)} to lace with"
        else:
            cord = f"{n.buttons:.0f} ball buttons of {fmt(n.dia)} (one to spare)"
        yield (
            f"{n.loops_all:.0f} loops of {fmt(n.cord_cut)} each: {fmt(n.cord_all)} of "
            f"bias cord in all; {cord}."
        )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        rest = n.u - (n.n_loops - 1) * n.spacing + n.g2
        if rest > 2.0 + 1e-9:
            yield Finding(
                "L1",
                Severity.NOTE,
                "The loops end more than 2 cm above the waist.",
                "loops",
                "Sew a hook and eye at the waist.",
                {"rest": rest},
            )
        if self.rows is Rows.BOTH and 2 * n.e2 < 2 * n.reach + 0.5:
            yield Finding(
                "L2",
                Severity.WARN,
                "The buttons of the two rows would touch at the waist.",
                "loops",
                "Use one row of loops, or a larger set-in at the waist.",
                {"gap": 2 * n.e2, "reach": n.reach},
            )
