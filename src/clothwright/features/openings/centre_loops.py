"""A row of loops and buttons down the whole front or back: edge to edge, over an
underlap (transformations §7)."""

from collections.abc import Callable, Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.torso import in_one
from clothwright.curves import Point
from clothwright.features.about import About, Place
from clothwright.features.base import Number, Rank, Shown, Stage
from clothwright.features.chains import Chains
from clothwright.features.notions import Article, Notion
from clothwright.features.openings.button_sewing import face_edges
from clothwright.features.openings.edge_marks import (
    loops_on,
    marked,
    places,
    spaced,
)
from clothwright.features.openings.loop_numbers import (
    CORD_ALLOWANCE,
    ENDS_APART,
    TIGHTER,
)
from clothwright.features.openings.loops_rules import BALL, LOOPS
from clothwright.features.openings.loops_sewing import (
    STRIP,
    LoopRow,
    edge_strips,
    loops_sewn,
)
from clothwright.features.openings.open_edges import (
    OpenEdge,
    edge_length,
    open_at_centre,
    pieces,
)
from clothwright.features.openings.open_edges import facing as _facing
from clothwright.features.openings.stand_pieces import BACK, FRONT, STAND, Centre
from clothwright.features.openings.stand_seams import (
    long_notches,
    stand_seams,
)
from clothwright.features.operations import (
    Hazard,
    Operation,
    SeamType,
    Stitch,
    Task,
    Work,
    finished_edges,
)
from clothwright.features.roles import Role
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    JOINT,
    Drafting,
    Ease,
    EdgeKind,
    Mark,
    MarkKind,
    NotchPair,
    Piece,
    Seam,
    SeamKind,
    Sheet,
    Verb,
    straight,
)
from clothwright.rules import Numbers, RuleTable
from clothwright.units.fields import Length, Ratio

_SRC = "transformations §7"

UNDERLAP = "LU"
"""Code of the underlap."""

LAPPED = "S155"
"""Code of its seam on the left edge."""

_TOUCHING = 0.2
"""Loops that touch are spaced by the button and this, cm (7)."""

CENTRE_LOOPS = RuleTable("loops down a centre")
CENTRE_LOOPS.rules.update(
    {k: LOOPS.rules[k] for k in ("v_cord", "cord_cut", "reach", "button_in")}
)


class CentreLoops(OpenEdge):
    """Loops on the right edge, buttons on the left, an underlap behind."""

    kind: Literal["centre loops"] = "centre loops"
    title: ClassVar[str] = "Loops down the centre"
    sentence: ClassVar[str] = (
        "It closes {where} edge to edge with [loops] from the neck to the hem, "
        "{spacing} apart, over buttons of {button}, with an underlap {lap} wide."
    )
    shows: ClassVar[Shown] = {
        "cl sp": ("BC.stand", "B.stand", "FC.stand", "F.stand"),
    }
    pieces: ClassVar[tuple[About, ...]] = (
        *pieces("centre {}"),
        About(
            UNDERLAP,
            Place.PLACKET,
            ("front", "back"),
            others=Role.OPENING,
            cloths=("shell", "interlining"),
        ),
    )
    seams: ClassVar[Mapping[str, str]] = {
        **OpenEdge.seams,
        LAPPED: "underlap of a row of loops, in the left edge",
    }
    what: ClassVar[str] = "a row of loops"

    spacing: Annotated[
        Length | None,
        Number(
            "cl_sp",
            "cl sp",
            "wanted distance from loop to loop down the centre",
            _SRC,
            1.5,
            0.625,
            0.8,
            6.0,
            (1.0, 2.54),
        ),
    ] = None
    button: Annotated[
        Length | None,
        Number("dia", "dia", "diameter of the button", _SRC, 1.0, 0.375, 0.5, 3.0),
    ] = None
    lap: Annotated[
        Length | None,
        Number(
            "cl_lap",
            "cl lap",
            "width of the underlap behind the loops",
            _SRC,
            2.75,
            1.125,
            1.5,
            5.0,
            (2.5, 3.05),
        ),
    ] = None
    ends_apart: Annotated[Length | None, ENDS_APART] = None
    cord_allowance: Annotated[Length | None, CORD_ALLOWANCE] = None
    tighter: Annotated[Ratio | None, TIGHTER] = None
    facing: Annotated[Length | None, _facing(6.0, 2.5)] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (*super().tables(), BALL, CENTRE_LOOPS)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.STAND, "the edges of the loops", self._draw),)

    def _draw(self, d: Drafting) -> None:
        n, c = d.n, self.centre
        open_at_centre(d, c, 0.0, _MEET)
        on = c.on(d.sheet, c.upper), c.on(d.sheet, c.lower)
        table, count = d.sheet, 0
        for shell, facing in zip(on, (c.facing, c.low_facing), strict=True):
            if not shell:
                continue
            both = (table.piece(code) for code in (shell, facing))
            shell_on, facing_on = (_looped(p, c, n, count) for p in both)
            table = table.put(_buttoned(shell_on, c, n, count), facing_on)
            count = loops_on(table, c)
        d.part = c.words
        d.lay(
            Verb.SEW,
            table,
            f"{on[0]}.{STAND}",
            f"{count} loops along the edge, and on its facing; the buttons beside them",
            amounts=(
                ("in even spaces of about {}", "cl_sp"),
                ("each button {} inside the edge", "button_in"),
            ),
            detail="the first and the last half a space from the ends of each piece, "
            "so that they go on evenly over a seam",
        )
        long = edge_length(table, c)
        d.lay(
            Verb.OUTLINE,
            d.sheet.put(_underlap(n.cl_lap, long)),
            UNDERLAP,
            "underlap, to be folded lengthwise",
            amounts=(("wide, its long edge on the fold", "cl_lap"), ("long", long)),
        )

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        c = self.centre
        up = c is BACK  # whose loop runs the other way
        upper, lower = (c.on(t.sheet, codes) for codes in (c.upper, c.lower))
        left = t.chain((upper, STAND, up), (lower, STAND, up))
        right = t.chain((UNDERLAP, "side", True))
        at: tuple[NotchPair, ...] = ()
        if len(left) > 1:
            waist = t.length(left[:1])
            at = (NotchPair(waist, waist, 1, JOINT),)
        elif in_one(t.sheet):
            at = long_notches(t, left, right)
        lap = Seam(
            LAPPED,
            "underlap on the left edge",
            left,
            right,
            "neck",
            "hem",
            Ease.about(0.0, 0.1),
            notches=at,
            kind=SeamKind.LAPPED,
        )
        return (*stand_seams(t), lap)

    def notes(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[str]:
        yield (
            f"Right over left: loops on the right edge, buttons on the crosses of the "
            f"left {self.centre.words} alone, the underlap in the left edge."
        )

    def notions(self, n: Numbers, sheet: Sheet) -> Iterable[Notion]:
        c = self.centre
        count, edge = loops_on(sheet, c), edge_length(sheet, c)
        row = _row(n, count, edge)
        yield Notion(
            Article.BIAS, count, "for the loops", length=row.cut, in_all=row.cord
        )
        yield Notion(
            Article.STRIP, 1, f"under the loops, {c.words}", length=edge, size=STRIP
        )
        yield Notion(
            Article.BALL_BUTTON, count + 1, f"for the {c.words}", size=n.dia, spare=1
        )

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        c = self.centre
        count, edge = loops_on(sheet, c), edge_length(sheet, c)
        right = f"the right {c.words} edge"
        yield edge_strips(fmt, right)
        yield loops_sewn(_row(n, count, edge), fmt, right, laced=False)
        yield Operation(
            Work.BAG,
            "Make the underlap",
            (
                "Fold it lengthwise, right sides together; stitch both ends, turn, and "
                "baste the long edges together.",
            ),
            edges=finished_edges(sheet, (UNDERLAP,)),
            stitch=Stitch.LOCK,
            seam_type=SeamType.PLAIN,
            press="flat",
            task=Task.BAG,
        )
        yield Operation(
            Work.EDGE if in_one(sheet) else Work.CENTRE,
            f"Baste the underlap to the left {c.words} edge",
            (
                "On its right side, edge on edge, the fold towards the garment; its "
                "ends lie at the neck and at the hem's line.",
            ),
            seams=(LAPPED,),
            stitch=Stitch.LOCK,
            seam_type=SeamType.PLAIN,
            length=edge,
        )
        yield face_edges(sheet, c)
        yield Operation(
            Work.FASTEN,
            f"Sew on {count} buttons",
            (
                f"On the crosses of the left {c.words}, through cloth and facing, each "
                "with a shank of thread. Close every loop to try it.",
            ),
            stitch=Stitch.HAND,
            task=Task.BUTTON,
            count=float(count),
            hazards=(Hazard.SMALL_PART,),
        )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        c = self.centre
        shell = sheet.piece(c.on(sheet, c.upper))
        apart = spaced(shell.edge(STAND).length, n.cl_sp, n.cl_sp / 2).apart
        if apart < n.dia + _TOUCHING - 1e-9:
            overlap = apart < n.dia
            yield Finding(
                "CL1",
                Severity.REFUSE if overlap else Severity.WARN,
                f"Buttons of {n.dia:.1f} cm stand {apart:.2f} cm apart: they "
                f"{'overlap' if overlap else 'touch'}.",
                "cl sp",
                "Space the loops (cl sp) wider, or take a smaller button (dia).",
                {"spacing": apart, "dia": n.dia},
            )


_MEET = (
    "it is no fold now: the two edges meet, the left over an underlap, and nothing is "
    "taken off"
)


def _row(n: Numbers, count: int, edge: float) -> LoopRow:
    """So many loops, on one edge."""
    return LoopRow(count, n.cord_cut, 1.1 * count * n.cord_cut, n.e_loop, edge)


def _looped(piece: Piece, centre: Centre, n: Numbers, done: int) -> Piece:
    return marked(piece, centre, n.cl_sp, done + 1, n.cl_sp / 2)


def _buttoned(shell: Piece, centre: Centre, n: Numbers, done: int) -> Piece:
    """The shell with a cross for each button, level with its loop."""
    inside = Point(-n.button_in if centre is FRONT else n.button_in, 0.0)
    at = places(shell, centre, n.cl_sp, n.cl_sp / 2)
    return shell.with_marks(
        *(
            Mark(f"button {i}", p + inside, MarkKind.BUTTON)
            for i, p in enumerate(at, done + 1)
        )
    )


def _underlap(wide: float, long: float) -> Piece:
    """Half of the underlap, its other long edge on the fold."""
    a, b, c, e = (Point(x, y) for x, y in ((0, 0), (wide, 0), (wide, long), (0, long)))
    return Piece(
        UNDERLAP,
        "Underlap of the loops",
        (
            straight("top", a, b, EdgeKind.FINISHED),
            straight("folded edge", b, c, EdgeKind.FOLD),
            straight("foot", c, e, EdgeKind.FINISHED),
            straight("side", e, a),
        ),
    )
