"""The sleeveless armhole: tips narrowed, armhole redrawn to the new shoulder.

The block is drafted with sleeveless ease, so nothing more is taken in at the side
(first garment 2.1). Here the outlines of front and back get their necks, shoulders
and armholes (first garment 3.3, 4).
"""

from collections.abc import Iterable
from typing import Annotated, ClassVar, Literal

from clothwright.blocks import bodice, bodice_curves
from clothwright.curves import Path, Point, Vector, turned
from clothwright.features.base import Feature, Number, Rank, Shown, Stage
from clothwright.features.bodice.about import SHELL
from clothwright.features.bodice.back_dart import DrawnShoulder, drawn_shoulder
from clothwright.features.bodice.shoulder import SHOULDER, SHOULDER_STAGE
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    Drafting,
    Edge,
    Sheet,
    Verb,
    redraw,
    straight,
)
from clothwright.rules import Numbers, RuleTable
from clothwright.units.fields import Length

_SRC = "first garment 4"


class SleevelessArmhole(Feature):
    """Armhole without a sleeve: shoulder narrowed at the tip, front tightened."""

    kind: Literal["sleeveless armhole"] = "sleeveless armhole"
    title: ClassVar[str] = "Sleeveless armhole"
    sentence: ClassVar[str] = (
        "[Sleeveless], the shoulder {narrowed} narrower at the tip and the front "
        "armhole tightened by {tightened}."
    )
    shows: ClassVar[Shown] = {
        "yB": ("BS.armhole", "FS.armhole", "B.armhole", "F.armhole"),
        "AG": ("BS.armhole", "FS.armhole", "B.armhole", "F.armhole"),
        "A": ("BS.armhole", "FS.armhole", "B.armhole", "F.armhole"),
        "ti": ("FC.armhole", "FS.armhole", "F.armhole"),
        "ta": ("FC.armhole", "FS.armhole", "F.armhole"),
    }
    gives: ClassVar[frozenset[str]] = frozenset({"armhole", "lined arm", "sleeveless"})
    needs: ClassVar[dict[str, str]] = {
        "bodice": "an armhole is drawn on a bodice block; add one"
    }
    clashes: ClassVar[dict[str, str]] = {"armhole": "an order has one kind of armhole"}

    narrowed: Annotated[
        Length | None,
        Number(
            "ti",
            "ti",
            "narrowing of the shoulder at the tip",
            f"{_SRC}.1",
            1.0,
            0.375,
            0.0,
            8.0,
            (0.0, 4.0),
        ),
    ] = None
    tightened: Annotated[
        Length | None,
        Number(
            "ta",
            "ta",
            "tightening of the front armhole",
            f"{_SRC}.3",
            0.0,
            0.0,
            0.0,
            1.5,
            (0.0, 1.0),
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (SHOULDER,)

    def stages(self) -> tuple[Stage, ...]:
        return (SHOULDER_STAGE, Stage(Rank.ARMHOLE, "necks and armholes", outlines))

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        if n.Eb < 3.0:
            yield Finding(
                "A1",
                Severity.WARN,
                "The bust ease is under 3 cm.",
                "Eb",
                "Make a toile first.",
                {"Eb": n.Eb},
            )
        off = n.yB - n.AS - n.d
        if abs(off) > 1.6:
            yield Finding(
                "A3",
                Severity.WARN,
                f"The bust line is {abs(off):.1f} cm {'below' if off > 0 else 'above'}"
                " the measured depth of the armhole.",
                "yB",
                "Measure AS again, or draft the armhole as measured.",
                {"scale": n.yB, "measured": n.AS + n.d},
            )
        yield from pitch_findings(n, sheet)
        if n.ti > CUT_AWAY:
            yield from cover_findings(n, sheet, "ti", "Narrow the shoulder less.")
        length = sum(
            sheet.length(p, e)
            for p in sheet.pieces
            for e in ("armhole", "armhole low")
            if p in SHELL and sheet.piece(p).has(e)
        )
        if length < n.AG - 0.5:
            yield Finding(
                "A2",
                Severity.WARN,
                "The armhole is shorter than the tape round the arm.",
                "AG",
                "Deepen the armhole, or measure AG again.",
                {"A": length, "AG": n.AG},
            )


CUT_AWAY = 1.5
"""An armhole whose shoulder is narrowed by more is cut away, cm (transformations 3)."""

COVER = 1.5
"""A cut-away edge keeps so far outside the cup, of radius BUB, cm (transformations
3)."""


def cover_findings(
    n: Numbers, sheet: Sheet, place: str, to_do: str
) -> Iterable[Finding]:
    """The front armhole covers the brassiere's cup."""
    beside = sheet.lines["armhole front"].nearest(sheet.points["BP"])[1]
    if beside < n.BUB + COVER - 0.05:
        yield Finding(
            "A5",
            Severity.WARN,
            f"The armhole passes {beside:.1f} cm from the bust point; to cover the "
            f"brassiere it wants {n.BUB + COVER:.1f} cm.",
            place,
            to_do,
            {"beside": beside},
        )


MOST_MOVED = 2.0
"""A pitch moved further out than this, cm, lays the armhole over the arm."""


def pitch_findings(n: Numbers, sheet: Sheet) -> Iterable[Finding]:
    """Told when a long shoulder has moved a pitch out over the width of the body."""
    for half, key, moved in (
        ("front", "XC", n.X - sheet.points["pf"].x - n.xfw),
        ("back", "XB", sheet.points["pb"].x - n.xb),
    ):
        if moved < 0.05:
            continue
        yield Finding(
            "A4",
            Severity.REFUSE if moved > MOST_MOVED else Severity.WARN,
            f"The shoulder (SH) of {n.SH:.1f} cm is long for the width across the "
            f"{half} ({key}) of {n[key]:.1f} cm: the {half} armhole stands "
            f"{moved:.1f} cm further out at the pitch than that width.",
            key,
            f"Narrow the shoulder at the tip (ti) by {n.ti + moved:.1f} cm or more, or "
            f"measure SH and {key} again.",
            {"moved": moved},
        )


def outlines(d: Drafting) -> None:
    """Redraw necks, shoulders and armholes of front and back to the new marks."""
    n = d.n
    d.part = "front"
    tip, inward = d["Tf"], bodice_curves.inward_front(n.sigma_f_new)
    at = bodice_curves.front_pitch(tip, inward, n.X, n.xfw, d["G"].y)
    outline_front(d, inward, bodice.mark_pitch(d, bodice.FRONT, "Tf", at), SQUARE)
    d.part = "back"
    shoulder = drawn_shoulder(d)
    at = bodice_curves.back_pitch(shoulder.tip, shoulder.inward, n.xb, n.yB)
    name = back_tip(d, shoulder)
    pb = bodice.mark_pitch(d, bodice.BACK, name, at)
    outline_back(d, shoulder, shoulder.inward, pb, SQUARE)


SQUARE = "square to the new shoulder, upright at the pitch"


def back_tip(d: Drafting, shoulder: DrawnShoulder) -> str:
    """The name of the back's finished tip, where a dart lies open in the shoulder."""
    return "Tb" if shoulder.tip == d["Tb"] else "Tbo"


def _outline(d: Drafting, sheet: Sheet, piece: str, half: str) -> None:
    new = f"outline of the {half}, along its new neck, shoulder and armhole"
    d.lay(Verb.REDRAW, sheet, piece, new)


def outline_front(d: Drafting, inward: Vector, pf: Point, how: str) -> None:
    """The front with a new armhole that leaves the tip along `inward`, told by `how`,
    and goes through the pitch `pf`."""
    n, tip = d.n, d["Tf"]
    q = turned(bodice_curves.side_square_front(d["Gc"], d["wf"]), n.theta)
    armhole = d.draw(
        "armhole front",
        bodice_curves.front_armhole(tip, inward, pf, d["G"], q),
        "armhole of the front",
        frm=("Tf", "pf", "G"),
        detail=how,
    )
    sheet = redraw(
        d.sheet,
        "F",
        ["armhole", "shoulder", "neck"],
        [
            Edge("armhole", armhole.reversed()),
            straight("shoulder", tip, d["Nf′"]),
            Edge("neck", d.line("neck front")),
        ],
    )
    _outline(d, sheet, "F", "front")


def outline_back(
    d: Drafting, shoulder: DrawnShoulder, inward: Vector, pb: Point, how: str
) -> None:
    """The same of the back, its shoulder as drawn."""
    q = bodice_curves.side_square_back(d["ub"], d["wb"])
    armhole = d.draw(
        "armhole back",
        bodice_curves.back_armhole(shoulder.tip, inward, pb, d["ub"], q, d.n.yB - pb.y),
        "armhole of the back",
        frm=(back_tip(d, shoulder), "pb", "ub"),
        detail=how,
    )
    new = [
        Edge("neck", d.line("neck back")),
        *shoulder.edges,
        Edge("armhole", armhole),
    ]
    old = [e.name for e in new]
    if "slant" in d.sheet.lines:
        slant: Path = d.line("slant")
        new = [Edge("slant", slant.reversed()), *new]
        old = ["cb", *old]
    sheet = redraw(d.sheet, "B", old, new)
    _outline(d, sheet, "B", "back")
