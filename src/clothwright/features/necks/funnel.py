"""Funnel neck, cut on: front and back run on up the neck (transformations 2).

The sides rise from the neck end of the shoulder, leaning in; the upper edge comes down
to the front as much as the neck leans forward, so that front and back make one line
over the side.
"""

import math
from collections.abc import Iterable
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.bodice_rules import clip
from clothwright.curves import Cubic, Path, Point, Vector, mix, turned
from clothwright.features.base import Feature, Number, Pin, Rank, Shown, Stage
from clothwright.features.necks.neck_shapes import BACK_TABLES, BackShape
from clothwright.findings import Finding, Severity
from clothwright.paper import Drafting, Edge, PaperError, Sheet, Verb
from clothwright.rules import Kind, Numbers, RuleTable
from clothwright.units.fields import Angle, Length

_SRC = "transformations 2"

MOST_LEAN = 12.0
"""The side leans by no more than this, degrees (2)."""

RAISED_FRONT, RAISED_BACK = (3.0, 6.0), (3.0, 5.0)
"""What the centres are raised by, as a rule, cm (2)."""

ROOM = 0.8
"""Half the upper edge is so much longer than half the neck (NK), as that of a stand,
cm (5)."""

_DOWN = 0.8
"""Share of the way down along its first direction that the upper edge of the front
falls in all: it bends one way (our own)."""

_ROUND = 1.5
"""The corner of shoulder and side is rounded over so much of both, cm (our own)."""

_UP = 0.2
"""Share of the way up that that of the back rises in all (our own)."""

FUNNEL = RuleTable("funnel neck")
_rule = FUNNEL.rule


@_rule(
    "dw",
    "width of the neck beyond the standard, along the shoulder",
    key="dw",
    source=_SRC,
    formula="1 cm wider and 0.5 cm out; more where the upper edge, 0.425·N + 2 cm on "
    "the half, is shorter than NK/2 + 0.8 cm",
)
def _width(N: float, NK: float) -> float:
    return 1.5 + clip((NK / 2 + ROOM - (0.425 * N + 1.9)) / 2, 0.0, 2.0)


@_rule(
    "Df", "depth of the front neck", key="Df", source=_SRC, formula="dep, the block's"
)
def _depth(dep: float) -> float:
    return dep


@_rule(
    "fn front",
    "centre front raised above the neck",
    key="fn_front",
    source=_SRC,
    formula="so that the upper edge bends one way: Df + side − 0.8·width·tan(lean + "
    "tilt), kept between 3 and 8 cm",
    low=2.0,
    high=9.0,
)
def _front(
    X: float,
    x_hf: float,
    dw: float,
    Df: float,
    fn_side: float,
    fn_lean: float,
    fn_tilt: float,
) -> float:
    wide = X - x_hf + dw - fn_side * math.sin(math.radians(fn_lean))
    down = math.tan(math.radians(fn_lean + fn_tilt))
    return clip(Df + fn_side - _DOWN * wide * down, 3.0, 8.0)


@_rule(
    "fn back",
    "centre back raised above the neck",
    key="fn_back",
    source=_SRC,
    formula="so that the upper edge goes on as it comes from the front: Db + side + "
    "0.2·width·tan(tilt − lean), kept between 2 and 7 cm",
    low=1.5,
    high=8.0,
)
def _back(
    bw: float, dw: float, Db: float, fn_side: float, fn_lean: float, fn_tilt: float
) -> float:
    wide = bw + dw - fn_side * math.sin(math.radians(fn_lean))
    up = math.tan(math.radians(fn_tilt - fn_lean))
    return clip(Db + fn_side + _UP * wide * up, 2.0, 7.0)


class FunnelNeck(Feature):
    """Funnel neck."""

    kind: Literal["funnel neck"] = "funnel neck"
    title: ClassVar[str] = "Funnel neck"
    sentence: ClassVar[str] = (
        "The neck rises in a [funnel], {front} above it in front, {side} at the sides, "
        "{back} behind."
    )
    page: ClassVar[int] = 2
    pins: ClassVar[tuple[Pin, ...]] = (
        Pin("front", ("FC", "F"), ("neck", "cf"), (0.0, -1.0)),
        Pin("back", ("BC", "B"), ("neck", "cb"), (0.0, -1.0)),
    )
    shows: ClassVar[Shown] = {
        "fn front": ("FC.neck", "F.neck"),
        "fn back": ("BC.neck", "B.neck"),
        "fn side": ("FC.shoulder", "F.shoulder"),
        "fn lean": ("FC.shoulder", "F.shoulder"),
    }
    gives: ClassVar[frozenset[str]] = frozenset({"collar", "funnel neck"})
    needs: ClassVar[dict[str, str]] = {
        "round neck": "a funnel rises from a round neck; add a neckline, its shape "
        '"standard"',
        "high back neck": "a funnel rises from a back neck that is not low; add a back "
        'neckline, its shape "standard"',
    }
    clashes: ClassVar[dict[str, str]] = {
        "collar": "a funnel is its own collar; leave the other off",
        "wrap": "a funnel is closed in front; leave the wrap off",
        "cowl": "a neck stands up or drapes; leave one of the two off",
        "strapless": "a funnel rises from both shoulders, which are cut away",
        "halter": "a funnel rises from both shoulders, which a halter has not",
        "open back": "a funnel needs a back that is closed at the neck",
        "tightened shoulder": "a neck is not tightened under a funnel",
        "upper bust dart": "a bust dart above would be led through the funnel; leave "
        "it at the side or take a princess line",
        "back neck dart": "a dart at the back neck would be led through the funnel; "
        "leave the back shoulder dart at the shoulder, or ease it",
        "shoulder line": "a facing is not yet drawn where panel seams run to the "
        "shoulder below a funnel; start them at the armhole",
        "front yoke": "a yoke is not yet cut below a funnel; leave it off",
        "back yoke": "a yoke is not yet cut below a funnel; leave it off",
    }

    front: Annotated[
        Length | None,
        Number(
            "fn_front",
            "fn front",
            "centre front raised above the neck",
            _SRC,
            low=2.0,
            high=9.0,
            usual=RAISED_FRONT,
        ),
    ] = None
    side: Annotated[
        Length | None,
        Number(
            "fn_side",
            "fn side",
            "side raised above the shoulder",
            "common practice",
            1.5,
            0.625,
            1.0,
            6.0,
            (1.5, 4.0),
        ),
    ] = None
    back: Annotated[
        Length | None,
        Number(
            "fn_back",
            "fn back",
            "centre back raised above the neck",
            _SRC,
            low=1.5,
            high=8.0,
            usual=RAISED_BACK,
        ),
    ] = None
    lean: Annotated[
        Angle | None,
        Number(
            "fn_lean",
            "fn lean",
            "lean of the funnel's side, inwards",
            _SRC,
            0.0,
            None,
            -MOST_LEAN,
            MOST_LEAN,
            kind=Kind.ANGLE,
        ),
    ] = None
    tilt: Annotated[
        Angle | None,
        Number(
            "fn_tilt",
            "fn tilt",
            "tilt of the upper edge to the front, at the side",
            "common practice",
            30.0,
            None,
            0.0,
            40.0,
            kind=Kind.ANGLE,
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (FUNNEL, BACK_TABLES[BackShape.ROUND])

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.FUNNEL, "the funnel", _draft),)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        half = sum(sheet.lines[f"neck {which}"].length for which in ("front", "back"))
        least = n.NK / 2 + ROOM
        if half < least - 0.1:
            yield Finding(
                "FN1",
                Severity.WARN,
                f"The upper edge of the funnel is {2 * half:.1f} cm round; the neck "
                f"(NK) wants {2 * least:.1f} cm.",
                "fn lean",
                "Let it lean in less, or make the neck wider (dw).",
                {"half": half, "least": least},
            )
        if "nf" in n and n.nf < n.fn_front + 1.0:
            yield Finding(
                "FN2",
                Severity.NOTE,
                f"The facing, {n.nf:.1f} cm wide, ends within the funnel, which stands "
                f"{n.fn_front:.1f} cm high in front.",
                "nf",
                f"Make it {n.fn_front + 1.0:.1f} cm wide or more, to support it.",
                {"nf": n.nf, "high": n.fn_front},
            )


def _draft(d: Drafting) -> None:
    """Front, then back, whose side is as long as the front's."""
    n = d.n
    d.part = "front"
    f = d.sheet.piece("F")
    shoulder, neck = f.before("neck"), f.edge("neck").path
    up = turned(Vector(0.0, -1.0), n.fn_lean)
    top = _top(d, "Fs", neck.start, up, n.fn_side)
    centre = d.found(
        "Fc",
        neck.end + Vector(0.0, -n.fn_front),
        "centre front of the funnel",
        amounts=(("up from the neck", "fn_front"),),
    )
    side = _run_on(shoulder.path, neck.start, top)
    level = turned(Vector(1.0, 0.0), n.fn_lean + n.fn_tilt)
    edge = _edge(d, top, level, centre)
    _lay(d, "F", shoulder.name, side, edge, "cf")
    gain = side.length - shoulder.length

    d.part = "back"
    b = d.sheet.piece("B")
    shoulder, neck = b.after("neck"), b.edge("neck").path
    old = shoulder.path.reversed()
    up = turned(Vector(0.0, -1.0), -n.fn_lean)
    high = n.fn_side
    trial = _run_on(old, neck.end, neck.end + up * high)
    high += gain - (trial.length - old.length)
    top = _top(d, "Bs", neck.end, up, high)
    way = b.edge("cb").path.end_direction
    centre = d.found(
        "Bc",
        neck.start + way * n.fn_back,
        "centre back of the funnel",
        amounts=(("up from the neck", "fn_back"),),
    )
    side = _run_on(old, neck.end, top)
    level = turned(Vector(-1.0, 0.0), n.fn_tilt - n.fn_lean)
    _lay(
        d,
        "B",
        shoulder.name,
        side.reversed(),
        _edge(d, top, level, centre).reversed(),
        "cb",
    )


def _top(d: Drafting, name: str, frm: Point, up: Vector, high: float) -> Point:
    return d.found(
        name,
        frm + up * high,
        f"top of the funnel's side, {d.part}",
        amounts=(
            ("up from the neck end of the shoulder by {}", high),
            ("leaning in by {}", "fn_lean"),
        ),
    )


def _run_on(shoulder: Path, neck: Point, top: Point) -> Path:
    """The shoulder line, tip to neck, run on up the side, the corner rounded."""
    side = Path.line(neck, top)
    r = min(_ROUND, 0.7 * side.length, 0.3 * shoulder.length)
    a, b = shoulder.between(0.0, shoulder.length - r), side.between(r, side.length)
    p, q = a.end, b.start
    bend = Cubic(p, mix(p, neck, 2 / 3), mix(q, neck, 2 / 3), q)
    return a + Path((bend,)) + b


def _edge(d: Drafting, top: Point, way: Vector, centre: Point) -> Path:
    """The upper edge from the side to the centre, which it meets level."""
    drop, wide = centre.y - top.y, abs(centre.x - top.x)
    along = drop / way.y if abs(way.y) > 1e-6 else wide / 2
    corner = top + way * along
    if along <= 0 or abs(corner.x - top.x) > 0.95 * wide:
        depth = "Df" if d.part == "front" else "Db"
        mend = f"higher there, or the neck ({depth}) less deep"
        if drop <= 0:
            mend = "lower there, or its tilt (fn tilt) another"
        raise PaperError(
            "the upper edge of the funnel would bend both ways between side and centre "
            f"{d.part}: make it (fn {d.part}) {mend}"
        )
    return Path.cubic(top, mix(top, corner, 0.6), mix(centre, corner, 0.6), centre)


def _lay(
    d: Drafting, code: str, name: str, side: Path, edge: Path, centre: str
) -> None:
    """The piece with its shoulder, upper edge and centre line run on."""
    piece = d.sheet.piece(code)
    half = "front" if code == "F" else "back"
    loop: list[Edge] = []
    for e in piece.edges:
        path = {name: side, "neck": edge}.get(e.name)
        if e.name == centre:
            at = edge.end if half == "front" else edge.start
            path = (
                e.path.pinned(at, e.path.end)
                if half == "front"
                else e.path.pinned(e.path.start, at)
            )
        loop.append(e if path is None else e.along(path))
    new = piece.with_edges(loop)
    d.lay(
        Verb.REDRAW,
        d.sheet.put(new).drawn(**{f"neck {half}": edge}),
        code,
        f"{half} run on into the funnel",
        frm=("Fs", "Fc") if half == "front" else ("Bs", "Bc"),
        amounts=(("the upper edge tilted to the front at the side by {}", "fn_tilt"),),
        detail="the corner of shoulder and side rounded; the back's side as long as "
        "the front's",
        lines=(edge,),
    )
