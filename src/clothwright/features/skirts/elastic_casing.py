"""Elastic in a casing at the waist, cut in one with what it draws in and turned down
(transformations 8): what skirts and trousers have in common."""

from collections.abc import Callable, Iterable
from typing import Annotated, ClassVar

from clothwright.curves import Path, inset
from clothwright.features.about import About
from clothwright.features.base import Feature, Number
from clothwright.features.notions import Article, Notion
from clothwright.features.operations import (
    Operation,
    SeamType,
    Stitch,
    Task,
    Work,
)
from clothwright.features.roles import Role
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    Drafting,
    Edge,
    EdgeKind,
    InnerLine,
    PaperError,
    Piece,
    Run,
    Sheet,
    Verb,
    redraw,
)
from clothwright.rules import Kind, Numbers, RuleTable
from clothwright.units.fields import Length, Ratio

SRC = "transformations §8"

ROOM = 0.4
"""A casing is so much wider than its elastic, cm (0.3 to 0.6)."""

HIP_ROOM = 2.0
"""What passes the hip is so much wider than it, cm."""

LAPPED = 2.0
"""The ends of the elastic lap by so much, cm (common practice, no source)."""

ELASTIC = RuleTable("elastic waist")


@ELASTIC.rule(
    "casing",
    "depth of the casing below the fold",
    source=SRC,
    key="casing",
    formula="width of the elastic and 0.4 cm",
)
def _casing(elastic_w: float) -> float:
    return elastic_w + ROOM


@ELASTIC.rule(
    "elastic",
    "elastic round the waist",
    source=SRC,
    key="elastic",
    formula="W less 5 to 12 in 100",
    low=30.0,
    high=200.0,
)
def _elastic(W: float, elastic_less: float) -> float:
    return W * (1 - elastic_less / 100)


def top_of_casing(piece: Piece, edge: Edge) -> Role | None:
    """What a waist is that may be the top of a casing."""
    return Role.CASING if edge.kind is EdgeKind.FINISHED else None


def cased(*codes: str) -> tuple[About, ...]:
    """What is said of pieces whose waist is the top of a casing."""
    return tuple(About(code, edges={"waist": top_of_casing}) for code in codes)


class ElasticCasing(Feature):
    """Base of the waists that are drawn in by elastic."""

    codes: ClassVar[tuple[str, ...]]
    """Codes of front and back, or of the piece that is both."""

    wider: ClassVar[tuple[str, str]]
    """The number that makes the casing wider, and what to do with it."""

    stitched: ClassVar[Stitch] = Stitch.LOCK
    """What holds the casing down."""

    clashes: ClassVar[dict[str, str]] = {
        "waist finish": "the waist is finished one way only",
    }

    width: Annotated[
        Length | None,
        Number(
            "elastic_w",
            "we",
            "width of the elastic",
            SRC,
            3.0,
            1.25,
            0.6,
            8.0,
            (1.5, 5.0),
        ),
    ] = None
    shorter: Annotated[
        Ratio | None,
        Number(
            "elastic_less",
            "less",
            "elastic shorter than the waist, per cent",
            SRC,
            8.0,
            None,
            0.0,
            25.0,
            (5.0, 12.0),
            Kind.RATIO,
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (ELASTIC,)

    def notions(self, n: Numbers, sheet: Sheet) -> Iterable[Notion]:
        yield Notion(
            Article.ELASTIC,
            1,
            "for the waist, its ends lapped",
            length=n.elastic + LAPPED,
            size=n.elastic_w,
        )

    def notes(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[str]:
        yield folded_in(n, fmt)

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        yield Operation(
            Work.BAND,
            "Turn the casing down and draw the elastic in",
            (
                "Press the raw edge in, fold the top down along the waist line and "
                "stitch close to its lower edge, but for a hand's width at a side.",
                f"Draw in {fmt(n.elastic + LAPPED)} of elastic, lap its ends by "
                f"{fmt(LAPPED)} and stitch them crosswise; close the casing, spread "
                "the gathers, and stitch through at the sides.",
            ),
            edges=tuple(Run(code, "waist") for code in self.codes),
            stitch=self.stitched,
            seam_type=SeamType.HEM_TWICE,
            task=Task.BAND,
        )

    def least(self, n: Numbers) -> float:
        """What a casing must measure to pass the hip, cm."""
        return n.H + HIP_ROOM

    def girth(self, sheet: Sheet) -> float:
        """The casing all round, cm: its fold."""
        return casing_girth(sheet, self.codes)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from passes_hip(n, self.girth(sheet), self.least(n), self.wider)
        if 2 * n.elastic < n.H + HIP_ROOM:
            yield Finding(
                "EW2",
                Severity.WARN,
                f"The elastic of {n.elastic:.1f} cm must stretch to more than twice "
                f"its length to pass the hip of {n.H:.1f} cm.",
                "less",
                "Cut it less short, or try it on first.",
                {"elastic": n.elastic, "H": n.H},
            )


def folded_in(n: Numbers, fmt: Callable[[float], str]) -> str:
    """What becomes of the top."""
    return (
        f"The top folds in along the waist line, {fmt(n.casing)} deep; its raw edge is "
        "turned in."
    )


def casing_girth(sheet: Sheet, codes: tuple[str, ...]) -> float:
    """A casing all round, cm: its fold, of front and back or of the piece that is
    both."""
    folds = [fold_length(sheet.piece(code)) for code in codes]
    return 4 * sum(folds) / len(folds)


def passes_hip(
    n: Numbers, girth: float, least: float, wider: tuple[str, str]
) -> Iterable[Finding]:
    """A casing that the hip goes through."""
    place, remedy = wider
    if girth < least - 1e-6:
        yield Finding(
            "EW1",
            Severity.REFUSE,
            f"The casing is {girth:.1f} cm round and does not pass the hip: "
            f"{least:.1f} cm is the least.",
            place,
            remedy,
            {"casing": girth, "H": n.H},
        )


_FOLD = "waist line, folded"


def fold_of(piece: Piece) -> Path:
    """The fold of a casing at the waist."""
    return next(k.path for k in piece.lines if k.name == _FOLD)


def fold_length(piece: Piece) -> float:
    """Length of the fold of a casing at the waist, cm; nought without one."""
    return next((k.path.length for k in piece.lines if k.name == _FOLD), 0.0)


def raise_top(d: Drafting, codes: tuple[str, ...], part: str) -> None:
    """Raise the top of front and back by the depth of the casing."""
    n = d.n
    sheet = d.sheet
    drawn: list[Path] = []
    for code in codes:
        waist = sheet.edge(code, "waist").path
        up = _above(sheet, code, n.casing)
        sheet = redraw(sheet, code, ["waist"], [Edge("waist", up, EdgeKind.FINISHED)])
        sheet = sheet.put(sheet.piece(code).with_lines(InnerLine(_FOLD, waist)))
        drawn.append(up)
    d.part = part
    d.lay(
        Verb.REDRAW,
        sheet,
        f"{codes[0]}.waist",
        "top of the casing, on front and back alike",
        amounts=(("above the waist line, which is its fold", "casing"),),
        lines=tuple(drawn),
    )


def _above(sheet: Sheet, code: str, deep: float) -> Path:
    """A line so far above the waist, from one of its neighbours, run on, to the
    other."""
    piece = sheet.piece(code)
    before, after = piece.before("waist").path, piece.after("waist").path
    up = inset(piece.edge("waist").path, -deep, -deep)
    long = up.run_on(deep)
    ends: list[float] = []
    for at, way in (
        (before.end, before.end_direction),
        (after.start, after.start_direction * -1.0),
    ):
        hits = long.meets(Path.line(at, at + way * (2 * deep)))
        if not hits:
            raise PaperError(
                f"the casing is {deep:.1f} cm deep, and its top does not meet the "
                "seams beside it, which lean too far: make the elastic (we) narrower"
            )
        ends.append(hits[0][0])
    return long.between(*ends)
