"""Flat collar, drafted on the shoulders laid over each other (transformations 5)."""

from collections.abc import Callable, Iterable
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.collar import overlap_angle
from clothwright.curves import Path
from clothwright.features.base import Number, Rank, Stage
from clothwright.features.collars.collar import SRC, TURN, Collar
from clothwright.features.collars.collar_fall import lay_under
from clothwright.features.collars.collar_neck import (
    closed_neck,
    opens_behind,
    papers,
)
from clothwright.features.collars.collar_pieces import (
    COLLAR,
    CollarEnd,
    flat_edges,
    grained,
    roll_line,
)
from clothwright.features.collars.collar_sewing import collar_operations
from clothwright.features.operations import Operation, Task
from clothwright.findings import Finding, Severity
from clothwright.paper import Drafting, PaperError, Piece, Sheet, Verb
from clothwright.rules import Numbers, RuleTable
from clothwright.truing.tolerances import WRONG_WAY
from clothwright.units.fields import Length

ROLLS = ((0.0, 0.0), (1.3, 0.0), (2.5, 0.8), (4.5, 1.35), (8.75, 2.25), (10.0, 2.5))
"""Overlap of the shoulders and the stand that it gives, cm: the middles of the book's
ranges."""

MOST = 0.95
"""The shoulders overlap by at most this share of what the neck leaves of them: beyond
it the neck edge of the collar bends the wrong way (our own)."""

FLAT = RuleTable("flat collar")


@FLAT.rule(
    "collar stand",
    "stand that the overlap gives the collar behind",
    source=SRC,
    key="c_roll",
    formula="none up to 1.3 cm, 0.8 cm at 2.5 cm, 1.35 cm at 4.5 cm, "
    "2.25 cm at 8.75 cm",
)
def _roll(c_lap: float) -> float:
    for (a, low), (b, high) in zip(ROLLS, ROLLS[1:], strict=False):
        if c_lap <= b:
            return low + (high - low) * (c_lap - a) / (b - a)
    return ROLLS[-1][1]


OVERLAP = Number(
    "c_lap",
    "collar overlap",
    "overlap of the shoulders at the tip, for the collar",
    SRC,
    2.5,
    1.0,
    0.0,
    10.0,
)
RAISED = Number(
    "c_up",
    "collar raised",
    "neck edge of the collar above the centre back",
    SRC,
    0.3,
    0.125,
    0.0,
    1.0,
)
AWAY = Number(
    "c_away",
    "collar away",
    "collar short of the centre front",
    SRC,
    0.6,
    0.25,
    0.0,
    2.0,
)


def overlap_findings(n: Numbers, sheet: Sheet) -> Iterable[Finding]:
    """The neck of a collar whose shoulders overlap still bends one way (C16), and is
    not shorter than can be stretched on."""
    worst = min(sheet.edge(COLLAR, "neck").path.turning())
    (neck,) = (s for s in sheet.seams if s.code == "S80")
    left, right = (
        sum(sheet.length(*r[:2]) for r in side) for side in (neck.left, neck.right)
    )
    short = left - right + neck.ease.low
    if WRONG_WAY.severity(worst) is Severity.REFUSE:
        says = f"turns the wrong way by {worst:.1f}°"
    elif short > 0:
        says = f"is {short * 10:.1f} mm shorter than can be stretched on"
    else:
        return
    yield Finding(
        "KO1",
        Severity.REFUSE,
        f"With its shoulders overlapped by {n.c_lap:.1f} cm, the neck of the collar "
        f"{says}.",
        "collar overlap",
        "Make the overlap (collar overlap) less, or the back neck (Db) rounder.",
        {"c_lap": n.c_lap, "worst": worst, "short": short},
    )


class FlatCollar(Collar):
    """Flat collar of one width."""

    kind: Literal["flat collar"] = "flat collar"
    title: ClassVar[str] = "Flat collar"
    sentence: ClassVar[str] = (
        "A flat [collar] with {end} ends is {width} wide; its shoulders overlap by "
        "{overlap}."
    )

    end: CollarEnd = CollarEnd.ROUND
    width: Annotated[
        Length | None,
        Number(
            "c_wide",
            "collar width",
            "width of the collar",
            SRC,
            6.5,
            2.5,
            3,
            12,
            (5, 8),
        ),
    ] = None
    overlap: Annotated[Length | None, OVERLAP] = None
    raised: Annotated[Length | None, RAISED] = None
    away: Annotated[Length | None, AWAY] = None
    turn: Annotated[Length | None, TURN] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (FLAT,)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.COLLAR, "the flat collar", self._draft),)

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        return collar_operations(sheet, Task.FLAT_COLLAR)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        return overlap_findings(n, sheet)

    def _draft(self, d: Drafting) -> None:
        neck = neck_of_collar(d)
        behind = opens_behind(d.sheet)
        edges = flat_edges(neck, d.n.c_wide, self.end, behind=behind)
        lay_collar(d, Piece(COLLAR, "Collar", edges), "flat collar", "c_wide")


def neck_of_collar(d: Drafting) -> Path:
    """Lay front on back at the shoulder, overlap the tips, draw the collar's neck.

    Raises PaperError when the shoulders are too short for the overlap.
    """
    n = d.n
    d.part = "collar"
    if n.c_lap > MOST * n.Lr:
        raise PaperError(
            f"the shoulders overlap by {n.c_lap:.1f} cm for the collar, and the neck "
            f"leaves only {n.Lr:.1f} cm of them: overlap them by {MOST * n.Lr:.1f} cm "
            "or less (collar overlap), or make the neck narrower"
        )
    laid = closed_neck(d.sheet, n.Lr)
    d.under = papers(d.sheet, laid)
    d.found(
        "Xs",
        laid.shoulder,
        "neck end of both shoulders, laid together",
        detail="the front's paper on the back's, darts at the neck closed",
    )
    over = laid.overlapped(overlap_angle(n.c_lap, n.Lr))
    d.under = papers(d.sheet, over)
    d.found(
        "Xt",
        over.tip,
        "tip of the front shoulder, laid over the back's",
        frm=("Xs",),
        amounts=(("turn the front about Xs until the tips overlap by {}", "c_lap"),),
    )
    neck = over.edge(n.c_up, n.c_away)
    d.found(
        "Xb",
        neck.start,
        "centre back of the collar",
        amounts=(("above the neck by {}", "c_up"),),
        detail="on the centre back line",
    )
    d.found(
        "Xf",
        neck.end,
        "front end of the collar",
        amounts=(("short of the centre front by {}", "c_away"),),
        detail="on the front neck",
    )
    return d.draw(
        "collar neck",
        neck,
        "neck edge of the collar",
        frm=("Xb", "Xs", "Xf"),
        detail="along both necks, blended over the shoulder",
    )


def lay_collar(d: Drafting, upper: Piece, says: str, width: str) -> None:
    """Lay the collar CO and its undercollar CN on the table."""
    n = d.n
    lines = roll_line(upper.edge("neck").path, n.c_roll)
    upper = grained(upper.with_lines(*lines))
    d.lay(
        Verb.OUTLINE,
        d.sheet.put(upper),
        COLLAR,
        says,
        amounts=(
            ("wide", width),
            *((("rolling over {} above the neck behind", "c_roll"),) if lines else ()),
        ),
        frm=("Xb", "Xf"),
    )
    d.under = ()
    lay_under(d, upper)
