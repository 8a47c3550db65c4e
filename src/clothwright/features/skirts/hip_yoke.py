"""Hip yoke of a straight skirt: its top cut off with the darts closed, and what is left
of them given to the side (transformations §1.5).

It is cut when everything else is drafted: band, facing and lining are those of the
whole skirt.
"""

from collections.abc import Iterable, Mapping
from dataclasses import replace
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.skirt import BACK, FRONT, waist_names
from clothwright.blocks.trial import by_trial
from clothwright.blocks.waist_line import Meets, waist_curve
from clothwright.curves import Cubic, Path, Point, Vector, distance
from clothwright.features.about import About, Place
from clothwright.features.base import Cuts, Feature, Number, Rank, Stage
from clothwright.features.grain import grained
from clothwright.features.skirts.about import YOKES
from clothwright.features.skirts.closed_top import below, top_of
from clothwright.features.skirts.wrap_skirt_drawing import EDGE
from clothwright.features.skirts.wrap_yoke import (
    FOOT,
    OVER,
    YOKE,
    beside,
    half_of,
    led_over,
)
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    Drafting,
    Ease,
    Edge,
    NotchPair,
    PaperError,
    Piece,
    Run,
    Seam,
    Sheet,
    Verb,
    meetings,
)
from clothwright.rules import Numbers, RuleTable
from clothwright.units.fields import Length

_SRC = "transformations §1.5"

_NAMES = {FRONT: "Front hip yoke", BACK: "Back hip yoke"}

TO_SIDE = 1.0
"""So much of the darts of a half goes to its side below the yoke, cm (§1.5)."""

_BEYOND = 0.8
"""The darts of a yoked skirt end so far below its line, cm (our own: the line runs at
or above their points)."""

_FROM_HIP = 2.5
"""No dart comes nearer to the hip, cm (C8)."""

HIP_YOKE = RuleTable("hip yoke")


def _length(key: str, name: str) -> None:
    @HIP_YOKE.rule(
        key.replace("_", " "),
        name,
        source=f"{_SRC}, blocks C8",
        key=key,
        formula="0.8 cm below the yoke, but ending 2.5 cm above the hip",
        low=5.0,
        high=20.0,
    )
    def _dart(WH: float, db_S: float, hy: float) -> float:
        return min(hy + _BEYOND, WH - _FROM_HIP - db_S)


_length("lb_in", "length of the back dart nearer to the centre")
_length("lb_out", "length of the back dart nearer to the side")
_length("lf", "length of the front darts")


class HipYoke(Feature):
    """Yoke of a skirt over the hip."""

    kind: Literal["hip yoke"] = "hip yoke"
    title: ClassVar[str] = "Hip yoke"
    sentence: ClassVar[str] = (
        "Its top is a [hip yoke], {depth} deep, in which the darts are closed."
    )
    page: ClassVar[int] = 2
    pieces: ClassVar[tuple[About, ...]] = (
        About(YOKES[FRONT], Place.YOKE, ("skirt front",)),
        About(YOKES[BACK], Place.YOKE, ("skirt back",)),
    )
    seams: ClassVar[Mapping[str, str]] = {
        "S56": "hip yoke of a skirt",
    }
    gives: ClassVar[frozenset[str]] = frozenset({"hip yoke"})
    needs: ClassVar[dict[str, str]] = {
        "fitted skirt": "a hip yoke is cut off a straight skirt"
    }
    clashes: ClassVar[dict[str, str]] = {
        "pockets": "a hip yoke cuts through pockets that begin at the waist; take a "
        '"set pocket" below it',
        "shaped band": "a shaped band is such a yoke already; leave one off",
    }

    depth: Annotated[
        Length | None,
        Number(
            "hy",
            "hy",
            "depth of the hip yoke, from the waist",
            _SRC,
            9.0,
            3.5,
            5.0,
            14.0,
            (8.0, 10.0),
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (HIP_YOKE,)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.YOKE, "the hip yoke", _draft),)

    def cuts(self, sheet: Sheet) -> Mapping[str, Cuts]:
        both = ("shell", "interlining")
        return {
            code: Cuts("1 on fold", 1, both)
            if sheet.piece(code).fold
            else Cuts("2 (1 pair)", 2, both)
            for code in YOKES.values()
            if code in sheet.pieces
        }

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        for code, yoke in YOKES.items():
            seam = sheet.seam(_seam_code(code))
            off = sheet.chain_length(seam.right) - sheet.chain_length(seam.left)
            if abs(off) > 0.3:
                yield Finding(
                    "HY1",
                    Severity.WARN,
                    f"The {sheet.piece(yoke).name.lower()} is {abs(off):.1f} cm "
                    f"{'longer' if off > 0 else 'shorter'} than what it is sewn to.",
                    "hy",
                    "Make it (hy) less deep.",
                    {"off": off},
                )


def _seam_code(code: str) -> str:
    return f"S56.{1 if code == FRONT else 2}"


def _draft(d: Drafting) -> None:
    """Trace each yoke with the darts closed, then cut its half back to the line."""
    for code in (FRONT, BACK):
        d.part = "skirt front" if code == FRONT else "skirt back"
        _cut_off(d, code)


def _cut_off(d: Drafting, code: str) -> None:
    n, front = d.n, code == FRONT
    whole, name = d.sheet.piece(code), _NAMES[code]
    wrapped = whole.has(EDGE)
    half = half_of(whole) if wrapped else whole
    yoke = top_of(half, n.hy, YOKES[code], name, square=True)
    foot = yoke.edge("free")
    yoke = yoke.with_edges(
        Edge(FOOT, foot.path) if e is foot else e for e in yoke.edges
    )
    stretches, rest = _lines(half, n.hy)
    if rest > TO_SIDE + 0.005:
        raise PaperError(
            f"below the hip yoke (hy) {rest:.1f} cm of the "
            f"{'front' if front else 'back'} darts is left and {TO_SIDE:g} cm goes to "
            f"the side: make the darts ({'lf' if front else 'lb in, lb out'}) shorter, "
            "or the yoke deeper"
        )
    side = half.edge("side").path
    down = side.reversed() if front else side
    top, new_side = _to_side(stretches, down, rest, n.WH)
    tops = [e.name for e in half.edges if e.name in waist_names(2)]
    order = [e.name for e in half.rolled_to(_first(half, tops))]
    run = order[: max(order.index(t) for t in tops) + 1]
    lower = top.reversed() if front else top
    edges = [Edge(YOKE, lower)]
    if front:
        edges.insert(0, Edge("side", new_side.reversed()))
        run.insert(0, "side")
    else:
        edges.append(Edge("side", new_side))
        run.append("side")
    sewn = (_darts(front), "overlap dart") if wrapped else (_darts(front),)
    darts = [s.code for s in d.sheet.seams if s.code.startswith(sewn)]
    sheet = _sewn_on(d.sheet.unsew(*darts), code, tops)
    loop = list(half.rolled_to(run[0]))[len(run) :]
    loop[0] = loop[0].along(_from(loop[0].path, edges[-1].path.end))
    loop[-1] = loop[-1].along(_upto(loop[-1].path, edges[0].path.start))
    opened = Piece(code, half.name, (*edges, *loop), half.marks, half.lines)
    left: tuple[Run, ...] = (Run(YOKES[code], FOOT, backward=not front),)
    right: tuple[Run, ...] = (Run(code, YOKE, backward=front),)
    at = 0.5 * min(foot.path.length, top.length)
    notches = [NotchPair(at, at, 1 if front else 2)]
    if wrapped:
        yoke, opened = led_over(whole, yoke, opened, n.wx_S)
        left, right = beside(left), beside(right)
        over = opened.edge(YOKE + OVER).length
        notches = [NotchPair(s, s, 1) for s in (over, over + at)]
    sheet = _moved_down(d.sheet, sheet.put(grained(yoke), grained(opened)), code, n.hy)
    seam = Seam(
        _seam_code(code),
        name.lower(),
        left,
        right,
        "front edge" if wrapped else "centre",
        "side",
        Ease.about(0.0, 0.2),
        notches=tuple(notches),
    )
    d.lay(
        Verb.CUT,
        sheet.sew(seam),
        YOKES[code],
        name.lower() + " cut off, its darts closed",
        amounts=(("deep", "hy"), ("left of the darts, taken in at the side", rest)),
        detail="along the waist; below it what is left of the darts is taken in at the "
        "side, running out at the hip"
        + ("; both unfolded at the centre, out to the edge" if wrapped else ""),
        lines=(top, new_side),
    )


def _darts(front: bool) -> str:
    return "skirt front dart" if front else "skirt back dart"


def _first(half: Piece, tops: list[str]) -> str:
    """The waist edge that none comes before."""
    return next(
        t for t in tops if not half.before(t).name.startswith(("waist", "dart"))
    )


def _lines(half: Piece, depth: float) -> tuple[list[Path], float]:
    """The line below each stretch of the waist, from the centre to the side, and what
    the darts take in there, cm. Raises PaperError."""
    front = half.code == FRONT
    lines = []
    for name in (w for w in waist_names(2) if half.has(w)):
        up, down = (e.path for e in (half.before(name), half.after(name)))
        line = below(half.edge(name).path, depth, up, down, square=True)
        if line is None:
            raise PaperError(
                "the hip yoke (hy) is deeper than the darts are long: make it less "
                "deep, or the darts (lf, lb in, lb out) longer"
            )
        lines.append(line.reversed() if front else line)
    gaps = (distance(a.end, b.start) for a, b in zip(lines, lines[1:], strict=False))
    return lines, sum(gaps)


def _to_side(
    lines: list[Path], side: Path, left: float, hip: float
) -> tuple[Path, Path]:
    """One curve over the darts' ends, square to centre and side and as long as the
    lines together: its end moves in from the side; and the side from there, run out at
    the hip. `side` runs down from the waist."""
    whole = lines[0]
    for line in lines[1:]:
        whole = whole + Path.line(whole.end, line.start) + line
    end = side.length_to_point(whole.end)
    aim, down = sum(line.length for line in lines), side.direction_at_length(end)

    def drawn(inwards: float) -> Path:
        centre = Meets(whole.start, Vector(0.0, 1.0))
        at = whole.at_length(whole.length - inwards)
        return waist_curve(centre, Meets(at, down))

    inwards = by_trial(lambda x: drawn(x).length - aim, 0.0, left + 1.5)
    path = drawn(left if inwards is None else inwards)
    level = Path.line(Point(-200.0, hip), Point(300.0, hip))
    fault = (
        "the side ends above the hip: make the skirt (L) longer, or measure WH again"
    )
    at_hip = meetings(side, level, fault)[0][0]
    under = side.between(at_hip, side.length)
    upper = side.between(end, at_hip)
    reach = upper.length / 3
    curve = Cubic(
        path.end,
        path.end + upper.start_direction * reach,
        upper.end - upper.end_direction * reach,
        upper.end,
    )
    return path, Path((curve,)) + under


def _sewn_on(sheet: Sheet, code: str, tops: list[str]) -> Sheet:
    """The seams of the waist on the yoke, those down from it over both."""
    yoke = YOKES[code]

    def where(run: Run) -> tuple[Run, ...]:
        if run.edge in tops:
            return (Run(yoke, "waist", run.backward),)
        if run.edge.startswith("waist" + OVER):
            return (Run(yoke, "waist" + OVER, run.backward),)
        if run.edge not in ("side", "cb", EDGE):
            return (run,)
        both = (Run(yoke, run.edge, run.backward), run)
        rises = run.edge == "cb" or (code == FRONT and run.edge != EDGE)
        return both if run.backward == rises else both[::-1]

    return sheet.with_runs(where, code)


def _moved_down(before: Sheet, sheet: Sheet, code: str, depth: float) -> Sheet:
    """Notches below the yoke of a seam that it cuts, as far from its foot as they
    were."""
    out = []
    for s in sheet.seams:
        if not s.notches or not any(r.piece == code for r in s.runs()):
            continue
        old = before.seam(s.code)
        by = [
            sheet.chain_length(new) - before.chain_length(was)
            for new, was in ((s.left, old.left), (s.right, old.right))
        ]
        moved = tuple(
            k._replace(left=k.left + by[0], right=k.right + by[1])
            if k.left > depth
            else k
            for k in s.notches
        )
        out.append(replace(s, notches=moved))
    return sheet.sew(*out)


def _from(path: Path, p: Point) -> Path:
    """The path from the place nearest to a point of it."""
    return path.between(path.length_to_point(p), path.length).pinned(p, path.end)


def _upto(path: Path, p: Point) -> Path:
    return path.between(0.0, path.length_to_point(p)).pinned(path.start, p)
