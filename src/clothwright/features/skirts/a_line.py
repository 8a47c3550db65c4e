"""An A-line of a straight skirt: darts closed, so that its hem opens.

Each half is slashed plumb from the hem to the point of a dart, and what lies outside
turns about the point until the dart is closed; the hem opens by 2·L·sin(θ/2). At the
side half of that is added, so that the hem hangs in balance (transformations 1.7).
"""

import math
from collections.abc import Iterator
from dataclasses import replace
from enum import Enum
from typing import Annotated, ClassVar, Literal

from clothwright.blocks import fitted_dress, skirt
from clothwright.blocks.flare import hem_arc
from clothwright.blocks.skirt_curves import run_out
from clothwright.curves import (
    Cubic,
    Motion,
    Path,
    Point,
    Vector,
    degrees_between,
    distance,
    dot,
    left_normal,
    rotate,
    turned,
)
from clothwright.features.base import Feature, Number, Rank, Shown, Stage
from clothwright.features.bodice.opened_dart import dart_angle_of
from clothwright.features.skirts.about import closed_dart, hem_line
from clothwright.paper import (
    Drafting,
    Edge,
    EdgeKind,
    InnerLine,
    PaperError,
    Piece,
    Verb,
    meetings,
    pivot,
    redraw,
    straight,
)
from clothwright.paper.drafting import Taped
from clothwright.rules import Kind
from clothwright.units.fields import Length, Ratio

_SRC = "transformations 1.7"


class Closes(Enum):
    """Which darts of each half are closed."""

    OUTER = "the outer dart"
    """That nearer to the side; where a half has one dart, that one."""

    ALL = "every dart"


class ALine(Feature):
    """Straight skirt whose darts are closed into the hem."""

    kind: Literal["a-line"] = "a-line"
    title: ClassVar[str] = "A-line of a skirt"
    sentence: ClassVar[str] = (
        "It is an [A-line]: {closes} of each half is closed, and the hem opens; each "
        "side runs out by {share} of that, {most} at most."
    )
    shows: ClassVar[Shown] = {
        "share A": ("SF.side", "PF.side"),
        "side A": ("SF.side", "PF.side"),
    }
    gives: ClassVar[frozenset[str]] = frozenset({"A-line"})
    needs: ClassVar[dict[str, str]] = {
        "pocket side": "an A-line is made of a straight skirt, alone or of a dress"
    }
    clashes: ClassVar[dict[str, str]] = {
        "hip yoke": "a hip yoke closes the darts itself; leave it or the A-line off",
        "wrap skirt": "a wrap laps its fronts by their straight edges; leave it or the "
        "A-line off",
    }

    closes: Closes = Closes.OUTER
    share: Annotated[
        Ratio | None,
        Number(
            "share_A",
            "share A",
            "share of a half's opened hem that is added at its side",
            _SRC,
            0.5,
            low=0.0,
            high=1.0,
            usual=(0.3, 0.7),
            kind=Kind.RATIO,
        ),
    ] = None
    most: Annotated[
        Length | None,
        Number(
            "side_A",
            "side A",
            "added at each side of the hem at most",
            _SRC,
            6.0,
            2.5,
            0.0,
            12.0,
            (5.0, 7.0),
        ),
    ] = None

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.HEM_OPENED, "the A-line", self._apply),)

    def _apply(self, d: Drafting) -> None:
        n = d.n
        halves = [
            _Half(code, back=back)
            for code, back in (
                (skirt.BACK, True),
                (skirt.FRONT, False),
                (fitted_dress.BACK, True),
                (fitted_dress.FRONT, False),
            )
            if code in d.sheet.pieces
        ]
        if n.fl_S != 0.0:
            raise PaperError(
                "the sides of an A-line run out by what its hem gains: leave the flare "
                "of the skirt (fl) blank, and say how much that is (share A, side A)"
            )
        found = [h.darts(d.sheet.piece(h.code), self.closes) for h in halves]
        if not any(found):
            raise PaperError(
                "the skirt has no dart to close: measure W and H again, or leave the "
                "A-line off and flare its sides (fl)"
            )
        gained = [h.open(d, k) for h, k in zip(halves, found, strict=True)]
        for h, own in zip(halves, gained, strict=True):
            h.run_out(d, min(n.side_A, n.share_A * (own or max(gained))))


_COUNTED = ("", " 2")
_LINE = "hip line"
_BESIDE = {"": f"{_LINE}, middle", " 2": f"{_LINE}, side"}
"""Name of the hip line outside the slash below a dart."""


class _Half:
    """Back or front while its darts are closed."""

    def __init__(self, code: str, *, back: bool) -> None:
        self.code, self.back = code, back
        self.says = "back" if back else "front"

    def darts(self, piece: Piece, closes: Closes) -> list[str]:
        """What is added to the names of the legs of those that are closed."""
        there = [k for k in _COUNTED if piece.has(f"dart centre{k}")]
        return there if closes is Closes.ALL else there[-1:]

    def open(self, d: Drafting, darts: list[str]) -> float:
        """Close them; what the hem gains, cm."""
        d.part = f"skirt {self.says}"
        for k in reversed(darts):  # from the side, so that each slash is plumb
            self._slash(d, k)
        return sum(self._close(d, k) for k in darts)

    def _legs(self, k: str) -> tuple[str, str]:
        """Of a dart, in the direction of the loop."""
        legs = f"dart centre{k}", f"dart side{k}"
        return legs if self.back else legs[::-1]

    def _slits(self, k: str) -> tuple[str, str]:
        """Of its slash, in the direction of the loop."""
        slits = f"slit side{k}", f"slit centre{k}"
        return slits if self.back else slits[::-1]

    def _slash(self, d: Drafting, k: str) -> None:
        piece = d.sheet.piece(self.code)
        first = self._legs(k)[0]
        point = piece.edge(first).path.end
        hem = piece.edge("hem").path
        plumb = Path.line(point, point + Vector(0.0, 300.0))
        fault = (
            "the point of a dart does not lie above the hem of the skirt: make the "
            "skirt (L) longer"
        )
        foot = hem.at_length(meetings(hem, plumb, fault)[0][0])
        name = f"Q{self.says[0]}{k.strip() or 1}"
        d.found(
            name,
            foot,
            f"where the hem of the {self.says} is slashed, plumb below the dart",
            amounts=(("below its point", distance(point, foot)),),
        )
        a, b = hem.split_at_length(hem.length_to_point(foot))
        names = (f"hem out{k}", "hem") if self.back else ("hem", f"hem out{k}")
        slits, done = self._slits(k), EdgeKind.FINISHED
        run = [
            Edge(names[0], a, done),
            straight(slits[0], foot, point),
            straight(slits[1], point, foot),
            Edge(names[1], b, done),
        ]
        lines = tuple(cut for line in piece.lines for cut in _cut(line, point.x, k))
        sheet = d.sheet.put(piece.holding(piece.marks, lines, piece.grain))
        d.lay(
            Verb.CUT,
            redraw(sheet, self.code, ["hem"], run),
            self.code,
            f"{self.says} slashed from {name} to the point of the dart",
            lines=(Path.line(foot, point),),
        )

    def _close(self, d: Drafting, k: str) -> float:
        piece = d.sheet.piece(self.code)
        legs, slits = self._legs(k), self._slits(k)
        point = piece.edge(legs[0]).path.end
        by = dart_angle_of(piece, *legs)
        foot = piece.edge(slits[0]).path.start
        gained = 2 * distance(point, foot) * math.sin(math.radians(by) / 2)
        if self.back:
            sheet = pivot(d.sheet, self.code, legs[1], slits[0], -by)
        else:
            sheet = pivot(d.sheet, self.code, slits[1], legs[0], by)
        way = -by if self.back else by
        marks = {
            m: rotate(sheet.points[m], point, way)
            for m in self._outside(k)
            if m in sheet.points
        }
        number = k.strip() or "1"
        about = f"P{self.says[0]}{number}"
        d.lay(
            Verb.MOVE,
            sheet.named(**marks).drawn(
                **{closed_dart(self.code, k): Path.line(point, foot)}
            ),
            self.code,
            f"what lies outside turned about {about} until that dart is closed",
            amounts=(
                ("by {}", Taped(f"θ{self.says[0]}{number}", by, angle=True)),
                ("the hem opens by {}", Taped(f"q{self.says[0]}{number}", gained)),
            ),
            detail="the waist then runs on over the dart",
            frm=(about,),
        )
        self._waist(d, k)
        return gained

    def _outside(self, k: str) -> list[str]:
        b = self.says[0]
        marks = [f"W{b}s", f"H{b}s", f"M{b}s"]
        if not k:
            marks += [f"{m}{b}2" for m in "DEP"]
        return marks

    def _waist(self, d: Drafting, k: str) -> None:
        """The waist in one over the closed dart."""
        piece, legs = d.sheet.piece(self.code), self._legs(k)
        before, after = piece.before(legs[0]), piece.after(legs[1])
        whole = before.path + after.path.pinned(before.path.end, after.path.end)
        name = "waist" if "waist" in (before.name, after.name) else "waist side"
        run = [before.name, *legs, after.name]
        sheet = d.sheet.unsew(f"skirt {self.says} dart{k}")
        d.sheet = redraw(sheet, self.code, run, [Edge(name, whole)])

    def run_out(self, d: Drafting, out: float) -> None:
        """Let the side run out to the hem, and draw the hem in one."""
        d.part = f"skirt {self.says}"
        piece = d.sheet.piece(self.code)
        hip = d[f"H{self.says[0]}s"]
        side = piece.edge("side").path
        down = side if self.back else side.reversed()
        upper, lower = down.split_at_length(down.length_to_point(hip))
        along = lower.start_direction
        outwards = left_normal(along)
        if dot(outwards, hip - d[f"M{self.says[0]}"]) < 0:
            outwards = outwards * -1.0
        onto = Motion(*outwards, *along, *lower.start)
        new = upper + run_out(Point(0.0, 0.0), lower.length, out).moved(onto)
        hem = self._hem(piece, new, outwards)
        edges = [
            Edge("side", new if self.back else new.reversed()),
            Edge("hem", hem.reversed() if self.back else hem, EdgeKind.FINISHED),
        ]
        if not self.back:
            edges.reverse()
        loop = [e.name for e in piece.rolled_to(edges[0].name)]
        old = loop[: loop.index(edges[1].name) + 1]
        sheet = redraw(d.sheet, self.code, old, edges)
        mark = {f"M{self.says[0]}s": new.end}
        d.lay(
            Verb.REDRAW,
            sheet.named(**mark).drawn(**{hem_line(self.code): hem}),
            f"{self.code}.hem",
            f"side of the {self.says} from the hip on, and its hem in one line",
            amounts=(("out at the hem", Taped(f"out {self.says[0]}", out)),),
            detail="over each opening in an arc about the point of the dart, square to "
            "the centre and to the side",
            lines=(new, hem),
        )

    def _hem(self, piece: Piece, side: Path, outwards: Vector) -> Path:
        """From the centre to the foot of the side, square to both."""
        names = sorted(e.name for e in piece.edges if e.name.startswith("hem"))
        parts = [piece.edge(name).path for name in names]
        if self.back:
            parts = [p.reversed() for p in parts]
        last = parts[-1]
        square = turned(side.end_direction, 90.0)
        if dot(square, outwards) < 0:
            square = square * -1.0
        reach = distance(last.start, side.end) / 3
        start, end = last.start, side.end
        over = Cubic(
            start, start + last.start_direction * reach, end - square * reach, end
        )
        parts[-1] = Path((over,))
        path = parts[0]
        for part in parts[1:]:
            by = degrees_between(path.end_direction, part.start_direction)
            radius = distance(path.end, part.start) / (
                2 * math.sin(math.radians(by) / 2)
            )
            path = path + hem_arc(path, part, by, radius) + part
        return path


def _cut(line: InnerLine, x: float, k: str) -> Iterator[InnerLine]:
    """The hip line in two, beside the slash below a dart: the part outside turns with
    the half."""
    if line.name != _LINE:
        yield line
        return
    at = line.path.length_to_point(Point(x, line.path.start.y))
    inner, outer = line.path.split_at_length(at)
    yield replace(line, path=inner)
    yield replace(line, name=_BESIDE[k], path=outer)
