"""The facing of the neck alone, for a top with sleeves (first garment 14.7, 17.4).

A band as wide as ordered beside the neck, traced from the shell, its neck edge set
inside by the roll and cut back at the shoulder by what the roll makes it longer (14.4,
14.5).
"""

from collections.abc import Callable, Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.curves import Line, Path, Point, Vector, inset, mix, turned
from clothwright.features.about import About
from clothwright.features.base import Feature, Number, Rank, Shown, Stage
from clothwright.features.bodice.front_dart import as_drafted
from clothwright.features.chains import Chains
from clothwright.features.linings.about import FACED, FACINGS
from clothwright.features.linings.facing import Facing
from clothwright.features.linings.facing_checks import on_shell
from clothwright.features.linings.facing_pieces import at_zip, beside_zip
from clothwright.features.linings.facing_seams import facing_seams
from clothwright.features.linings.facing_sewing import facing_operations
from clothwright.features.linings.sewn_halves import (
    back_neck,
    sewn_back,
    sewn_front,
)
from clothwright.features.necks.cowl import drapes, lay_cut_on
from clothwright.features.necks.wrap_facing import wrap_neck_facing, wraps
from clothwright.features.operations import Operation
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    Drafting,
    Edge,
    EdgeKind,
    Piece,
    Seam,
    Sheet,
    Verb,
    straight,
)
from clothwright.rules import Given, Numbers, RuleTable
from clothwright.units import Unit
from clothwright.units.fields import Length

_SRC = "first garment 14.7"

_REACH = 30.0
"""Lines that are met run on this far, cm."""

_LEAD = 1.0
"""A free edge is bent to the end of the facing's shoulder over so much of it, cm."""

_STEEP = 0.8
"""A neck that goes less than this across for each cm of it comes down steeply."""

_TALLEST = 1.5
"""The curve that leads a facing to the centre is no more than so many times as tall as
wide (our own)."""

_FREE = 1.0
"""Shoulder that stays free beside the facing, cm: the armhole's allowance."""


_NARROWEST = 2.0
"""A facing is nowhere planned narrower at the shoulder, cm (our own)."""

_USUAL = Number(
    "nf_usual",
    "nf usual",
    "usual width of the neck facing at the shoulder",
    _SRC,
    4.0,
    1.5,
)

TIP = RuleTable("neck facing")


@TIP.rule(
    "nf shoulder",
    "width of the neck facing at the shoulder",
    source=_SRC,
    key="nf_tip",
    formula=f"nf usual, or what the neck leaves of the shoulder less {_FREE:g} cm",
    low=2.5,
    high=10.0,
)
def _tip(nf_usual: float, Lr: float) -> float:
    return min(nf_usual, max(_NARROWEST, Lr - _FREE))


class NeckFacing(Feature):
    """Facing of the neck alone."""

    kind: Literal["neck facing"] = "neck facing"
    title: ClassVar[str] = "Neck facing"
    sentence: ClassVar[str] = (
        "The neck is [faced] {width} wide, {shoulder} at the shoulder, the edge rolled "
        "{roll} to the inside."
    )
    shows: ClassVar[Shown] = {
        "ρ": ("FF.neck",),
        "nf shoulder": ("FF.shoulder",),
    }
    pieces: ClassVar[tuple[About, ...]] = FACINGS
    seams: ClassVar[Mapping[str, str]] = FACED
    gives: ClassVar[frozenset[str]] = frozenset({"inside finish"})
    needs: ClassVar[dict[str, str]] = {
        "armhole finish": "a neck facing leaves the armholes open; without sleeves "
        'take an all-in-one "facing", or add an "armhole binding"'
    }
    clashes: ClassVar[dict[str, str]] = {
        "inside finish": "the edges are finished one way only",
        "winding neck": "a neck facing is not yet drawn for a sweetheart or a keyhole; "
        "take another neck, or a sleeveless top with a facing in one",
        "open back": "a neck facing ends at the centre back and leaves the slanted "
        "edges open; close the back",
    }

    width: Annotated[
        Length | None,
        Number("nf", "nf", "width of the neck facing", _SRC, 5.0, 2.0, 3.0, 12.0),
    ] = None
    shoulder: Annotated[
        Length | None,
        Number(
            "nf_tip",
            "nf shoulder",
            "width of the neck facing at the shoulder",
            _SRC,
            low=2.5,
            high=10.0,
        ),
    ] = None
    roll: Annotated[Length | None, Facing.numbers()["roll"]] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (TIP,)

    def given(self, unit: Unit) -> Iterable[Given]:
        yield from super().given(unit)
        yield _USUAL.usually(unit)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.FACING, "the neck facing", draft_neck_facing),)

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        return facing_seams(t, n)

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        return facing_operations(sheet)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        if n.nf_tip > n.Lr - _FREE + 1e-6:
            yield Finding(
                "F1",
                Severity.REFUSE,
                f"The neck facing is {n.nf_tip:.1f} cm wide at the shoulder, of which "
                f"the neck leaves {n.Lr:.1f} cm: it would run into the armhole.",
                "nf shoulder",
                f"Make it {max(0.0, n.Lr - _FREE):.1f} cm or less there, or the neck "
                "narrower (dw).",
                {"nf": n.nf_tip, "Lr": n.Lr},
            )
        for code, half in (("FF", sewn_front), ("BF", sewn_back)):
            if code in sheet.pieces:
                to_do = "Make it (nf) narrower, or the neck less wide (dw)."
                yield from on_shell(half(sheet), sheet.piece(code), to_do)


def draft_neck_facing(d: Drafting) -> None:
    """Trace front facing FF and back facing BF beside the neck."""
    d.part = "facing"
    back = _back(d.sheet, d.n), "back neck facing"
    front = d.sheet.pieces.get("F")
    if front is not None and drapes(front):
        lay_cut_on(d, back[0].edge("shoulder").length)
        found = [back]
    else:
        found = [(_front(d.sheet, d.n), "front neck facing"), back]
    for piece, says in found:
        d.lay(
            Verb.TRACE,
            d.sheet.put(piece),
            piece.code,
            says,
            amounts=(
                ("inside the edge by {}", "rho"),
                ("wide", "nf"),
                ("long at the shoulder", piece.edge("shoulder").length),
            ),
            detail="what the roll adds to the neck edge is cut off at the shoulder",
            over=(sewn_front if piece.code == "FF" else sewn_back)(d.sheet).outlines(),
        )


def _front(sheet: Sheet, n: Numbers) -> Piece:
    shell = sheet.piece("FC") if "FC" in sheet.pieces else as_drafted(sheet)
    if wraps(shell):
        return wrap_neck_facing(shell, n)
    neck = shell.edge("neck").path  # shoulder to centre front
    line = shell.before("neck").path.reversed()  # from the neck to the tip
    rolled = inset(neck, n.rho, 0.0)
    over = max(0.0, rolled.length - neck.length)
    rolled = rolled.between(over, rolled.length).pinned(
        rolled.at_length(over), neck.end
    )
    tip = _beside(line, rolled.start, n.nf_tip - n.rho)
    if len(tip.segments) > 1:
        free = _below_funnel(tip, rolled.end, n.nf)
    else:
        free = _free(inset(neck, n.nf_tip, n.nf), tip, rolled.end)
    return Piece(
        "FF",
        "Front facing",
        (
            Edge("neck", rolled),
            straight("cf", rolled.end, free.end, EdgeKind.FOLD),
            Edge("free", free.reversed(), EdgeKind.FINISHED),
            Edge("shoulder", tip.reversed()),
        ),
    )


def _below_funnel(shoulder: Path, top: Point, wide: float) -> Path:
    """The free edge of a funnel's facing: square to the shoulder, level at the centre
    so far below its upper edge there."""
    start, foot = shoulder.end, Point(top.x, top.y + wide)
    across = foot.x - start.x
    square = turned(shoulder.end_direction, 90)
    if square.x * across < 0:
        square = square * -1.0
    reach = 0.5 * abs(across)
    level = Vector(across / 2, 0.0)
    return Path.cubic(start, start + square * reach, foot - level, foot)


def _beside(line: Path, start: Point, long: float) -> Path:
    """The facing's shoulder: so much of the shell's from where its rolled neck meets
    that, down the side of a funnel and round its corner."""
    at, first = line.length_to_point(start), line.segments[0]
    level = isinstance(first, Line) and Path((first,)).length > at + long
    if level or len(line.segments) == 1:
        return Path.line(start, start + line.start_direction * long)
    part = line.between(at, at + long)
    return part.pinned(start, part.end)


def _back(sheet: Sheet, n: Numbers) -> Piece:
    shell = sheet.piece("BC" if "BC" in sheet.pieces else "B")
    neck, closed = back_neck(shell)
    neck = neck.reversed()  # shoulder to centre back
    line = shell.edge("shoulder").path.moved(closed)
    zipped = shell.edge("cb").kind is EdgeKind.SEAM
    rolled = inset(neck, -n.rho, 0.0)
    over = max(0.0, rolled.length - neck.length)
    end = rolled.length
    if zipped:
        end, _ = at_zip(rolled, beside_zip(shell.edge("cb").path))
    rolled = rolled.between(over, end)
    tip = _beside(line, rolled.start, n.nf_tip - n.rho)
    if len(tip.segments) > 1:
        free = _below_funnel(tip, rolled.end, n.nf)
    else:
        free = _free(inset(neck, -n.nf_tip, -n.nf), tip, rolled.end)
    return Piece(
        "BF",
        "Back facing",
        (
            Edge("neck", rolled.reversed()),
            Edge("shoulder", tip),
            Edge("free", free, EdgeKind.FINISHED),
            straight(
                "cb",
                free.end,
                rolled.end,
                EdgeKind.FINISHED if zipped else EdgeKind.FOLD,
            ),
        ),
    )


def _free(beside: Path, shoulder: Path, top: Point) -> Path:
    """The free edge from the end of the facing's shoulder to the centre line through
    `top`: the line beside the neck. Under a neck that comes down steeply to a point it
    ends before the centre line and is led on to it in a curve that arrives square, from
    half way across on; sooner where a wide one comes down plumb, or away from it."""
    on = 0.3 if abs(beside.end_direction[0]) < _STEEP else 3.0
    wide = Path.of(
        Line(beside.start - beside.start_direction * 3.0, beside.start),
        beside,
        Line(beside.end, beside.end + beside.end_direction * on),
    )
    start = _meeting(wide, shoulder.end, shoulder.start_direction) or 0.0
    run = wide.between(start, wide.length)
    centre = _meeting(run, top, Vector(0.0, 1.0))
    if centre is not None:
        run = run.between(0.0, centre)
    run = _led_from(shoulder.end, run)
    if centre is not None:
        return run
    way, across = run.end_direction, top.x - run.end.x
    down = _TALLEST * abs(across)
    if way[0] * across > 0:
        down = min(down, across / 2 * way[1] / way[0])
    corner = run.end + way * (down / way[1])
    foot = Point(top.x, corner.y)
    return run + Path.cubic(
        run.end, mix(run.end, corner, 2 / 3), mix(foot, corner, 2 / 3), foot
    )


def _led_from(start: Point, run: Path) -> Path:
    """The line begun at the end of the shoulder, a little beside its own beginning: a
    first part that is too short to be bent there is drawn anew."""
    if run.segments[0].length >= _LEAD:
        return run.pinned(start, run.end)
    rest = run.between(_LEAD, run.length)
    third = _LEAD / 3
    a = start + run.start_direction * third
    b = rest.start - rest.start_direction * third
    return Path.cubic(start, a, b, rest.start) + rest


def _meeting(path: Path, at: Point, way: Vector) -> float | None:
    """The length along a path at which it crosses the line through a point; None when
    it ends before."""
    across = Path.line(at - way * _REACH, at + way * _REACH)
    return next((s for s, _ in path.meets(across)), None)
