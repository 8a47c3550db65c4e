"""Bias strips that bind an edge of woven cloth in place of a facing: what those of the
neck and of the armholes have in common (transformations 3; cutting and costing 5).

Terminology
    stretch   what the strip binds between two places that are marked across it.
    mitre     what of the strip is folded away over the point of a neck.

A strip is four times as wide as it is seen: its first quarter lies on the cloth, its
edge level with the edge that it binds; it is turned over that, and its last quarter is
turned in. It is cut shorter than the edge and stretched on, so that it draws it flat.
"""

import math
from collections.abc import Callable, Iterable, Iterator, Sequence
from itertools import pairwise
from typing import NamedTuple

from clothwright.curves import Path, Point, Vector, degrees_between, polyline
from clothwright.features.about import About
from clothwright.features.base import Number
from clothwright.features.bodice.about import PIECES
from clothwright.features.chains import Chains
from clothwright.features.operations import Operation, SeamType, Stitch, Task, Work
from clothwright.features.roles import Role
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    JOINT,
    Drafting,
    Ease,
    Edge,
    EdgeKind,
    InnerLine,
    NotchPair,
    Piece,
    Run,
    Seam,
    Sheet,
    Verb,
    straight,
)
from clothwright.rules import Kind

SRC = "transformations 3"

_PRACTICE = "common practice, no source"

_PLIES = 4
"""A strip is so many times as wide as it is seen."""

_MITRE, _ON = "mitre", "run on"
"""Names of edges of a strip that no edge of the garment meets: over a point, and at an
end that comes to the centre at a point."""

_GIVES = 0.15
"""A strip on the bias may be stretched so much more or less than planned, cm."""

_SQUARE = 80.0
"""A neck that meets the centre at less comes to a point there, degrees."""

_CORNER = 15.0
"""A strip is not led round a sharper turn of an edge, degrees (common practice)."""


def width_of(key: str, symbol: str, what: str) -> Number:
    """The number of a binding's finished width."""
    name = f"finished width of the {what} binding"
    return Number(key, symbol, name, _PRACTICE, 0.7, 0.25, 0.4, 2.0, (0.5, 1.2))


def short_of(key: str, symbol: str, what: str) -> Number:
    """The number of what a strip is cut shorter than its edge, per cent."""
    name = f"{what} binding shorter than its edge, per cent"
    return Number(key, symbol, name, SRC, 3.5, None, 0.0, 8.0, (3.0, 4.0), Kind.RATIO)


def cut_net(*names: str) -> tuple[About, ...]:
    """What is said of the shell's edges that a strip binds: they have no allowance."""
    codes = [*(a.code for a in PIECES if a.place is not None), "SLF", "SLB"]
    return tuple(About(c, edges=dict.fromkeys(names, Role.BOUND)) for c in codes)


def strip_edge(piece: Piece, edge: Edge) -> Role:
    """Its long edges are raw as what they bind; its ends are joined to each other, or
    run to the raw edges of the centre back."""
    if edge.name not in ("end back", "end front"):
        return Role.BOUND
    return Role.EDGE if edge.kind is EdgeKind.SEAM else Role.CENTRE_ZIP


class Bound(NamedTuple):
    """What of a garment's edge lies between two marks of its strip."""

    name: str
    chain: tuple[Run, ...]
    start: str
    end: str
    first: float = 90.0
    """Angle at which it leaves the centre where it begins there, degrees."""

    last: float = 90.0
    """The same where it ends at the centre."""


class Strip(NamedTuple):
    """A strip: its piece, and how it is told."""

    code: str
    edge: str
    """What is bound; the strip's edges along it are called so, and numbered."""

    seam: str
    """Code of its seams with the garment."""

    pair: bool
    """True for one on either side."""

    joint: str
    """Where its ends are joined to each other."""

    width: float
    """As it is seen, cm."""

    short: float
    """Per cent of the edge that it is cut shorter."""

    @property
    def what(self) -> str:
        """What is bound, in the number in which the garment has it."""
        return f"{self.edge}s" if self.pair else self.edge

    def on(self, length: float) -> float:
        """What of the strip is stretched on to so much of an edge, cm."""
        return length * (1 - self.short / 100)

    def mitre(self, angle: float) -> float:
        """What a mitre takes beyond the end of a stretch that comes to the centre at an
        angle (degrees): the line of stitches, a width inside, is so much longer."""
        if angle > _SQUARE:
            return 0.0
        return self.width / math.tan(math.radians(angle))

    def seams(self, sheet: Sheet) -> tuple[Seam, ...]:
        """Its seams with the garment."""
        return tuple(s for s in sheet.seams if s.code.startswith(f"{self.seam}."))

    def ring(self, sheet: Sheet) -> bool:
        """True when its ends are joined to each other."""
        return sheet.edge(self.code, "end back").kind is EdgeKind.SEAM


def meets_centre(t: Chains, run: Run) -> float:
    """Angle off the centre line at which a run ends there, degrees: 90 is square, a
    point is less."""
    piece, way = t.sheet.piece(run.piece), t.sheet.run_path(run).end_direction
    if run.backward:
        return degrees_between(way, piece.before(run.edge).path.end_direction * -1.0)
    return degrees_between(way, piece.after(run.edge).path.start_direction)


def backwards(chain: Sequence[Run]) -> tuple[Run, ...]:
    """A chain walked from its other end."""
    return tuple(r._replace(backward=not r.backward) for r in reversed(chain))


def lay_strip(
    d: Drafting, strip: Strip, parts: Sequence[Bound], mark: str, *, ring: bool
) -> None:
    """Draw the strip from its left end on: each stretch so much shorter than the edge
    that it binds; across it where the stretches end."""
    d.part = "band"
    t, w, at = Chains(d.sheet), strip.width, Point(0.0, 0.0)
    deep = _PLIES * w
    down = Vector(-deep if ring else 0.0, deep)
    top: list[Edge] = []
    lines: list[InnerLine] = []

    def edge(name: str, long: float, kind: EdgeKind = EdgeKind.SEAM) -> None:
        start = top[-1].path.end if top else at
        top.append(straight(name, start, start + Vector(long, 0.0), kind))

    spare = strip.mitre(parts[0].first)
    for k, part in enumerate(parts, 1):
        if k > 1:
            lines.append(_across(top[-1].path.end, part.start, spare / 2, w))
        if spare > 0:
            edge(f"{_MITRE if k > 1 else _ON} {k}", spare, EdgeKind.FINISHED)
        edge(f"{strip.edge} {k}", strip.on(t.length(part.chain)))
        spare = strip.mitre(part.last) * (2 if k < len(parts) else 1)
    if spare > 0:
        edge(f"{_ON} end", spare, EdgeKind.FINISHED)
    long = top[-1].path.end.x
    a = d.start(mark, at, f"binding of the {strip.edge}, left end of its upper edge")
    b = d.point(f"{mark}e", mark, "right end of its upper edge", right=long)
    kind = EdgeKind.SEAM if ring else EdgeKind.FINISHED
    piece = Piece(
        strip.code,
        f"{strip.edge.capitalize()} binding",
        (
            *top,
            straight("end back", b, b + down, kind),
            straight("inside", b + down, a + down, EdgeKind.FINISHED),
            straight("end front", a + down, a, kind),
        ),
        lines=(
            *lines,
            InnerLine("fold", Path.line(a + down * 0.5, b + down * 0.5)),
        ),
        grain=_on_bias(a, b, deep),
    )
    ends = "its ends along the thread, " if ring else ""
    d.lay(
        Verb.OUTLINE,
        d.sheet.put(piece),
        strip.code,
        f"strip that binds the {strip.edge}",
        amounts=(("wide, four times what is seen of it", deep), ("long", long)),
        detail=f"on the bias, {ends}each stretch {strip.short:g} in 100 shorter than "
        "the edge that it binds",
    )


def _across(at: Point, name: str, mitre: float, w: float) -> InnerLine:
    """The mark across the strip where two stretches meet; over a point the mitre, which
    takes most at the fold."""
    down, aside = Vector(0.0, w), Vector(mitre, 0.0)
    if mitre <= 0:
        return InnerLine(name, Path.line(at, at + down * _PLIES))
    head, middle = at + aside + down, at + aside + down * 2
    loop = (head, middle + aside, middle + down, middle - aside, head)
    return InnerLine(_MITRE, polyline(loop))


def _on_bias(a: Point, b: Point, deep: float) -> tuple[Point, Point]:
    """The straight grain, at 45° to the strip, in its middle."""
    foot = a + (b - a) * 0.45 + Vector(-0.4 * deep, 0.9 * deep)
    return foot, foot + Vector(0.8 * deep, -0.8 * deep)


def strip_seams(t: Chains, strip: Strip, parts: Sequence[Bound]) -> Iterator[Seam]:
    """The strip stretched on, stretch by stretch, and its ends joined."""
    if strip.code not in t.sheet.pieces:
        return
    for k, part in enumerate(parts, 1):
        right = t.chain((strip.code, f"{strip.edge} {k}", False))
        a, c = t.length(part.chain), t.length(right)
        yield Seam(
            f"{strip.seam}.{k}",
            f"{strip.edge} binding, {part.name}",
            part.chain,
            right,
            part.start,
            part.end,
            Ease.about(strip.on(a) - a, _GIVES),
            notches=() if k == len(parts) else (NotchPair(a, c, 1, JOINT),),
            stretched=True,
        )
    if strip.ring(t.sheet):
        yield Seam(
            f"{strip.seam}a",
            f"ends of the {strip.edge} binding, at the {strip.joint}",
            t.chain((strip.code, "end back", False)),
            t.chain((strip.code, "end front", True)),
            "raw edge",
            "turned edge",
        )


def strip_operations(
    sheet: Sheet, fmt: Callable[[float], str], strip: Strip, work: Work
) -> Iterable[Operation]:
    """The strip closed, stretched on, turned over and felled."""
    seams, ring = strip.seams(sheet), strip.ring(sheet)
    net = sum(sheet.chain_length(s.left) for s in seams)
    long = sum(sheet.chain_length(s.right) for s in seams)
    marks = ", ".join(s.start for s in seams[1:])
    meet = f"; its marks meet, from the left, {marks}" if marks else ""
    says = [
        f"Stretch {fmt(long)} of a strip onto {fmt(net)}, right sides together and the "
        f"edges level{meet}; stitch {fmt(strip.width)} from the edge."
    ]
    if ring:
        says.insert(0, f"Close a strip to a ring; its joint meets the {strip.joint}.")
    else:
        says.append(
            "It runs to the raw edges of the centre back and is turned in with their "
            "allowances."
        )
    names = [e.name for e in sheet.piece(strip.code).edges]
    beyond = [name for name in names if name.startswith((_MITRE, _ON))]
    if any(name.startswith(_MITRE) for name in beyond):
        says.append(
            "At a point clip the cloth to the line of stitches and spread it straight; "
            "then sew the mitre across the fold, right sides together."
        )
    closed = [s.code for s in sheet.seams if s.code == f"{strip.seam}a"]
    yield Operation(
        work,
        f"Bind the {strip.what}",
        tuple(says),
        seams=(*closed, *(s.code for s in seams)),
        stitch=Stitch.LOCK,
        seam_type=SeamType.BOUND,
        press="the strip away from the garment",
        task=Task.FACE,
    )
    loose = ["inside", *beyond, *(() if ring else ("end back", "end front"))]
    yield Operation(
        Work.LINED,
        f"Fell the binding of the {strip.what} inside",
        (
            f"Turned over the edge, {fmt(strip.width)} wide on both sides; its own "
            "edge turned in onto the line of stitches.",
        ),
        edges=tuple(Run(strip.code, name) for name in loose),
        stitch=Stitch.HAND,
        seam_type=SeamType.PLACED,
        task=Task.BY_HAND,
    )


def strip_findings(sheet: Sheet, strip: Strip) -> Iterator[Finding]:
    """A strip lies flat round a curve, not round a corner."""
    runs = dict.fromkeys(r[:2] for s in strip.seams(sheet) for r in s.left)
    for run in runs:
        sharp = max(
            (
                degrees_between(a.end_direction, b.start_direction)
                for a, b in pairwise(sheet.edge(*run).path.segments)
            ),
            default=0.0,
        )
        if sharp > _CORNER:
            yield Finding(
                "BN1",
                Severity.REFUSE,
                f"The edge that is bound turns a corner of {sharp:.0f}°, round which a "
                "strip is not led yet.",
                ".".join(run),
                f"Draw the {strip.edge} in one curve, or face it.",
                {"corner": sharp},
            )
